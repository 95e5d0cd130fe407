/** What the thermal formulas must have among themselves, and the answers to wrong input. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  biotNumber,
  heatToWarm,
  lumpedTemperature,
  lumpedTime,
  thermalTimeConstant,
  warmUpTime,
} from '../src/thermal/index.js'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Numbers near the least that a double can hold have fewer digits: 1e-300 lets them pass. */
function near(actual: number, wanted: number, relative = 1e-9): void {
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + 1e-300)
}

describe('bodies of one temperature', () => {
  const body = fc.record({
    initial: between(230, 370),
    surroundings: between(230, 370),
    timeConstant: between(10, 1e5),
    power: between(-500, 5000),
    conductance: between(1, 100),
  })

  it('come to the same temperature in two stages as in one', () => {
    fc.assert(
      fc.property(body, between(0, 1e5), between(0, 1e5), (si, first, second) => {
        const middle = lumpedTemperature.compute({ ...si, time: first })
        near(
          lumpedTemperature.compute({ ...si, initial: middle, time: second }),
          lumpedTemperature.compute({ ...si, time: first + second }),
        )
      }),
    )
  })

  it('start at their own temperature and end where the heat lost is the heat put in', () => {
    fc.assert(
      fc.property(body, (si) => {
        near(lumpedTemperature.compute({ ...si, time: 0 }), si.initial)
        const end = lumpedTemperature.compute({ ...si, time: 100 * si.timeConstant })
        expect(Math.abs(si.conductance * (end - si.surroundings) - si.power)).toBeLessThan(1e-6)
      }),
    )
  })

  it('follow the heat balance, step by small step', () => {
    // Heun's method on C dT/dt = P − G (T − Ta), 20 000 steps.
    const [heatCapacity, conductance, power, surroundings, initial, time] = [150e3, 8, 1500, 263.15, 293.15, 3600]
    const rate = (temperature: number) => (power - conductance * (temperature - surroundings)) / heatCapacity
    const step = time / 20000
    let temperature = initial
    for (let i = 0; i < 20000; i++) {
      const first = rate(temperature)
      temperature += (step / 2) * (first + rate(temperature + step * first))
    }
    const timeConstant = thermalTimeConstant.compute({ heatCapacity, conductance })
    near(
      lumpedTemperature.compute({ initial, surroundings, time, timeConstant, power, conductance }),
      temperature,
      1e-10,
    )
  })

  it('are at the target after the time for it, with and without a heater', () => {
    fc.assert(
      fc.property(body, between(0.01, 1), (si, share) => {
        fc.pre(Math.abs(si.initial - si.surroundings) > 0.1)
        const target = si.surroundings + share * (si.initial - si.surroundings)
        const time = lumpedTime.compute({ ...si, target })
        near(lumpedTemperature.compute({ ...si, power: 0, time }), target)
      }),
    )
    fc.assert(
      fc.property(
        between(230, 300),
        between(230, 300),
        between(0, 0.99),
        between(1, 100),
        (from, ambient, share, G) => {
          const end = 320
          const to = from + share * (end - from)
          const given = { heatCapacity: 1e5, conductance: G, power: G * (end - ambient) }
          const time = warmUpTime.compute({ ...given, from, to, surroundings: ambient })
          const timeConstant = thermalTimeConstant.compute(given)
          near(lumpedTemperature.compute({ ...given, initial: from, surroundings: ambient, timeConstant, time }), to)
        },
      ),
    )
  })

  it('need, when hardly any heat is lost, the time in which the heater makes the heat', () => {
    const heat = heatToWarm({ mass: '150 kg', specificHeat: '1000 J/(kg·K)', from: '-10 °C', to: '10 °C' })
    const time = warmUpTime({
      heatCapacity: '150 kJ/K',
      conductance: '0.0001 W/K',
      power: '1500 W',
      from: '-10 °C',
      to: '10 °C',
      surroundings: '-10 °C',
    })
    near(time.si, heat.si / 1500, 1e-6)
  })

  it('need a Biot number that does not change with the unit of length', () => {
    const given = { coefficient: '12 W/(m²·K)', conductivity: '0.2 W/(m·K)' } as const
    near(biotNumber({ ...given, length: '5.25 mm' }).si, 0.315)
    near(biotNumber({ ...given, length: '0.00525 m' }).si, 0.315)
  })
})

describe('wrong thermal input', () => {
  const heater = {
    heatCapacity: '150 kJ/K',
    conductance: '8 W/K',
    from: '-10 °C',
    to: '10 °C',
    surroundings: '-10 °C',
  } as const

  it('tells by how much a heater that is too weak ends short of the target', () => {
    // 100 W over 8 W/K is 12.5 K: the body ends at 2.5 °C.
    expect(() => warmUpTime({ ...heater, power: '100 W' })).toThrow(
      'temperature reached in the end (surroundings + power / conductance) less to, in kelvins: expected above 0',
    )
    expect(() => warmUpTime({ ...heater, power: '100 W' })).toThrow('got -7.5')
  })

  it('refuses to warm downwards', () => {
    expect(() => warmUpTime({ ...heater, power: '1 kW', to: '-20 °C' })).toThrow('to - from: expected at least 0')
    expect(() => heatToWarm({ mass: '150 kg', specificHeat: '1000 J/(kg·K)', from: '10 °C', to: '-10 °C' })).toThrow(
      'to - from: expected at least 0',
    )
  })

  it('refuses a target that is not on the way, and no difference at all', () => {
    const given = { initial: '25 °C', timeConstant: '1 h' } as const
    expect(() => lumpedTime({ ...given, surroundings: '20 °C', target: '15 °C' })).toThrow(
      '(target - surroundings) / (initial - surroundings): expected above 0 and at most 1',
    )
    expect(() => lumpedTime({ ...given, surroundings: '25 °C', target: '25 °C' })).toThrow(
      'abs(initial - surroundings): expected above 0',
    )
  })

  it('refuses a resistance for a conductance', () => {
    // @ts-expect-error a thermal resistance is not a conductance
    expect(() => thermalTimeConstant({ heatCapacity: '150 kJ/K', conductance: '0.1 K/W' })).toThrow(
      'K/W measures a thermal resistance',
    )
  })
})
