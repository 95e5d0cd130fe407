/** The examples of weight and balance, run as their reader runs them. */
import { describe, expect, it } from 'vitest'
import { outputOf } from '../example.js'

describe('the example', () => {
  it('of placing modules places all eight and proves that nothing is nearer', async () => {
    const lines = await outputOf('where-do-the-modules-go')
    const counts = lines.flatMap((line) => (/^\d+ .*kg\)$/.test(line) ? [Number.parseInt(line, 10)] : []))
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(8)
    expect(lines.at(-1)).toMatch(/^off target by .* %, proven to be the least$/)
  }, 30_000)
  it('of springs keeps the frequency of each axle and leaves its seats alone', async () => {
    expect(await outputOf('which-springs-after-the-swap')).toEqual([
      // 19 · 262 / 296 and 22 · 348 / 262.
      'front: 16.82 N/mm, 1.66 Hz, seat 0 mm',
      'rear: 29.22 N/mm, 2.06 Hz, seat 0 mm',
    ])
  }, 30_000)
})
