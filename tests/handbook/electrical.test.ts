import { describe } from 'vitest'
import { electricalHandbook } from './electrical.js'

describe('published values: electrical', () => {
  for (const entry of electricalHandbook) entry.check()
})
