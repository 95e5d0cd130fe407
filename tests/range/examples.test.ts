/** The example of the range of a van, against the closed form of a steady speed. */
import { describe, expect, it } from 'vitest'
import { outputOf } from '../example.js'

/** Tyres over those at 20 °C: UN GTR No. 15, Annex 4, from memory. */
const tyres = (celsius: number) => 1 / (1 + 0.0086 * (celsius - 20))
/** Kilometres at 80 km/h from the road load, the efficiencies and the energy; air of 101.325 kPa, R 287.05287 J/(kg·K). */
function kilometres(airAt: number, tyresAt: number, watts: number, wattHours: number): number {
  const speed = 80 / 3.6
  const density = 101325 / (287.05287 * (airAt + 273.15))
  const force = 0.5 * density * 0.62 * speed ** 2 + 780 * 9.80665 * 0.012 * tyres(tyresAt)
  return (wattHours * 3.6) / (force / (0.93 * 0.86) + watts / speed)
}

const july = [25, 25, 250, 12000] as const
const january = [-5, -5, 1450, 10800] as const

/** What the change at a place takes, its mean over the 24 orders in which the four places can change. */
function lostBy(place: number): number {
  let sum = 0
  const change = (now: readonly number[], left: readonly number[]) => {
    for (const next of left) {
      const changed = now.with(next, january[next] as number)
      const others = left.filter((each) => each !== next)
      // Orders in which those that are left can follow.
      const orders = [1, 1, 2, 6][others.length] as number
      if (next === place)
        sum += orders * (kilometres(...(now as typeof july)) - kilometres(...(changed as never as typeof july)))
      change(changed, others)
    }
  }
  change(july, [0, 1, 2, 3])
  return sum / 24
}

describe('the examples of range', () => {
  it('how-far-in-january agrees with the closed form in both seasons, and with the parts worked out order by order', async () => {
    const [air, rolling, heater, pack] = [0, 1, 2, 3].map((place) => lostBy(place).toPrecision(4))
    expect(await outputOf('how-far-in-january')).toEqual([
      `July: ${kilometres(...july).toPrecision(4)} km, January: ${Number(kilometres(...january).toPrecision(4))} km`,
      `Denser air takes ${air} km, harder tyres ${rolling} km`,
      `The heater takes ${heater} km, the cold pack ${pack} km`,
    ])
  })
})
