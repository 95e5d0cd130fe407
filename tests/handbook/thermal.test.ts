import { describe } from 'vitest'
import { thermalHandbook } from './thermal.js'

describe('published values: thermal', () => {
  for (const entry of thermalHandbook) entry.check()
})
