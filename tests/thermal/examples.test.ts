/** The examples of heat, run as their reader runs them. */
import { describe, expect, it } from 'vitest'
import { outputOf } from '../example.js'

describe('the example', () => {
  it('of the pack heater starts it as long before seven as the closed form says', async () => {
    // −12 + 18 exp(−36000 · 5 / 92000) = −9.456 °C; 18400 s · ln(117.456 / 100) = 49.34 min, at 600 W 0.4934 kWh.
    expect((await outputOf('when-to-switch-on-the-pack-heater')).slice(0, 2)).toEqual([
      'after a night at -12 °C the pack is at -9.456 °C',
      'start the heater 49.34 min before seven: 0.4934 kWh, 3.389 % of the pack',
    ])
  }, 30_000)
  it('of two pumps finds the small one too weak, and divides either flow alike', async () => {
    const lines = await outputOf('which-pump-for-the-coolant')
    expect(lines.map((line) => line.trim().split(':')[0])).toEqual([
      'small',
      ...Array(3).fill('fail'),
      'large',
      ...Array(3).fill('pass'),
    ])
    for (const line of [lines[0], lines[4]]) {
      const [whole, part] = [...(line ?? '').matchAll(/([\d.]+) L\/min/g)].map((match) => Number(match[1]))
      // 6 kPa at 8 L/min beside 4 kPa at 4 L/min, both as the square of the flow.
      const share = 8 / Math.sqrt(6) / (8 / Math.sqrt(6) + 4 / Math.sqrt(4))
      expect((part as number) / (whole as number)).toBeCloseTo(share, 3)
    }
  }, 30_000)
})
