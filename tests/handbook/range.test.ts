import { describe } from 'vitest'
import { rangeHandbook } from './range.js'

describe('published values: range', () => {
  for (const entry of rangeHandbook) entry.check()
})
