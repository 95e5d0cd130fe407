/** The example of the range of a van, against the closed form of a steady speed. */
import { describe, expect, it } from 'vitest'
import { outputOf } from '../example.js'

/** Kilometres at 80 km/h from the road load, the efficiencies and the energy; air of 101.325 kPa, R 287.05287 J/(kg·K). */
function kilometres(kelvin: number, rolling: number, watts: number, wattHours: number): number {
  const speed = 80 / 3.6
  const density = 101325 / (287.05287 * kelvin)
  const force = 0.5 * density * 0.62 * speed ** 2 + 780 * 9.80665 * rolling
  return (wattHours * 3.6) / (force / (0.93 * 0.86) + watts / speed)
}

describe('the examples of range', () => {
  it('how-far-in-january agrees with the closed form in both seasons', () => {
    expect(outputOf('how-far-in-january')).toEqual([
      `July: ${kilometres(298.15, 0.012, 250, 12000).toPrecision(4)} km`,
      `January: ${kilometres(268.15, 0.0144, 1450, 10800).toPrecision(4)} km`,
    ])
  })
})
