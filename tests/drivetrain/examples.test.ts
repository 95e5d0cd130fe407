/** The examples of questions about gears, run as their reader runs them. */
import { describe, expect, it } from 'vitest'
import { outputOf } from '../example.js'

describe('the example', () => {
  it('of the final drive turns the motor in proportion, and climbs less the taller it is', async () => {
    const lines = await outputOf('what-does-a-taller-final-drive-do')
    // 3.05 diameters of 562.2 mm a turn: 90 km/h are 14.58 turns a second, times 1.45 and the final drive.
    const turns = 90 / 3.6 / (3.05 * (0.3302 + 2 * 0.8 * 0.145))
    for (const [i, finalDrive] of [5.1, 4.375, 3.7].entries()) {
      expect(Number(lines[i]?.match(/: (\d+) rpm/)?.[1])).toBeCloseTo(turns * 60 * 1.45 * finalDrive, -1)
    }
    const climbs = lines.map((line) => Number(line.match(/starts on ([\d.]+) %/)?.[1]))
    expect(climbs).toEqual([...climbs].sort((a, b) => b - a))
    // 100 N·m through 2.3 and 5.1 at 92 % against 805 kg: a slope whose sine and cosine times 0.013 make up the pull.
    const pull = (100 * 2.3 * 5.1 * 0.92) / ((3.05 * (0.3302 + 2 * 0.8 * 0.145)) / (2 * Math.PI)) / (805 * 9.80665)
    const angle = Math.asin(pull / Math.hypot(1, 0.013)) - Math.atan(0.013)
    expect(climbs[0]).toBeCloseTo(100 * Math.tan(angle), 1)
  }, 30_000)
  it('of the gear for town takes a low gear on a hill and a high one on the level', async () => {
    const lines = await outputOf('which-gear-for-town')
    expect(lines.filter((line) => line.startsWith('on '))).toEqual(['on 0 %: fourth', 'on 8 %: third'])
    const lost = lines.map((line) => Number(line.match(/([\d.]+) kW lost/)?.[1]))
    expect(Math.min(...lost.slice(1, 5))).toBe(lost[4])
    expect(Math.min(...lost.slice(6, 10))).toBe(lost[8])
  }, 30_000)
  it('of the one ratio takes its window from speed and hill, and loses at the start what the low gears give', async () => {
    const [fits, misses, ...starts] = await outputOf('would-one-ratio-do')
    const radius = (3.05 * (0.3302 + 2 * 0.8 * 0.145)) / (2 * Math.PI)
    const weight = 805 * 9.80665
    // 8000 rpm set the greatest ratio; 100 N·m at 95 % against the weight on the hill and the tyres the least.
    const greatest = (speed: number) => ((8000 * Math.PI) / 30) * (radius / (speed / 3.6))
    const least = (grade: number) => ((weight * (grade + 0.013)) / Math.hypot(1, grade)) * (radius / (100 * 0.95))
    expect(fits).toBe(`110 km/h and a start on 20 %: yes, from ${least(0.2).toFixed(3)} to ${greatest(110).toFixed(3)}`)
    expect(misses).toContain('140 km/h and a start on 30 %: no, ')
    expect(misses).toContain(
      `at least ${least(0.3).toFixed(3)}, and 140 km/h allows at most ${greatest(140).toFixed(3)}`,
    )
    // Through one gear: torque, then power, then the drag of air of 101 325 Pa and 20 °C; or the grip, on the car alone.
    const grip = (0.8 * weight * 0.99) / (2.03 - 0.8 * 0.52)
    const drag = (0.5 * 0.74 * 101_325) / (287.05287 * 293.15)
    const secondsIn = (ratio: number, efficiency: number, to: number) => {
      const steps = 100_000
      const step = to / 3.6 / steps
      if (ratio > greatest(to)) return Infinity
      return Array.from({ length: steps }, (_, i) => (i + 0.5) * step).reduce((time, speed) => {
        const pull = Math.min((100 * ratio) / radius, 50_000 / speed) * efficiency
        const load = 0.013 * weight + drag * speed ** 2
        return time + step / Math.min((pull - load) / (1.05 * 805), (grip - load) / 805)
      }, 0)
    }
    for (const [i, to] of [45, 80].entries()) {
      const [, one, four, gear] = starts[i]?.match(/after ([\d.]+) s with .* after ([\d.]+) s in (\w+)$/) ?? []
      const box = { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }
      const times = Object.entries(box).map(([name, each]) => [secondsIn(each * 4.375, 0.92, to), name] as const)
      // No shift pays up to here: the soonest is a gear alone.
      const [soonest, inGear] = times.reduce((best, each) => (each[0] < best[0] ? each : best))
      expect(Number(one)).toBeCloseTo(secondsIn(7, 0.95, to), 3)
      expect([gear, Number(four)]).toEqual([inGear, expect.closeTo(soonest, 3)])
    }
  }, 30_000)
})
