import { describe } from 'vitest'
import { massHandbook } from './mass.js'

describe('published values: mass', () => {
  for (const entry of massHandbook) entry.check()
})
