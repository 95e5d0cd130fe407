/** The examples of questions about gears, run as their reader runs them. */
import { describe, expect, it } from 'vitest'
import { outputOf } from '../example.js'

describe('the example', () => {
  it('of the final drive turns the motor in proportion, and climbs less the taller it is', () => {
    const lines = outputOf('what-does-a-taller-final-drive-do')
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
  it('of the gear for town takes a low gear on a hill and a high one on the level', () => {
    const lines = outputOf('which-gear-for-town')
    expect(lines.filter((line) => line.startsWith('on '))).toEqual(['on 0 %: fourth', 'on 8 %: third'])
    const lost = lines.map((line) => Number(line.match(/([\d.]+) kW lost/)?.[1]))
    expect(Math.min(...lost.slice(1, 5))).toBe(lost[4])
    expect(Math.min(...lost.slice(6, 10))).toBe(lost[8])
  }, 30_000)
})
