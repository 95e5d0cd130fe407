/** The temperature of a pack: against closed forms, a published two-body case, fine steps, and its own heat balance. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import { CalculationError, quantity } from '../../src/quantity/index.js'
import { lumpedTemperature, packTemperature, resistanceAtTemperature } from '../../src/thermal/index.js'
import { responseOf } from '../../src/thermal/pack/lumps.js'
import { between } from '../between.js'
import { runs } from '../runs.js'
import { said } from '../said.js'

type Given = Parameters<typeof packTemperature>[0]
const celsius = (value: number) => quantity('temperature', value, '°C')
const seconds = (value: number) => quantity('time', value, 's')
const watts = (value: number) => quantity('power', value, 'W')
const wattsPerKelvin = (value: number) => quantity('thermalConductance', value, 'W/K')

const night = {
  heatCapacity: '150 kJ/K',
  conductance: '8 W/K',
  surroundings: '-10 °C',
  initial: '25 °C',
  heat: [['0 W', '8 h']],
} as const satisfies Given

const measured = {
  coldTemperature: '-10 °C',
  coldResistance: '90 mΩ',
  warmTemperature: '25 °C',
  warmResistance: '28 mΩ',
} as const

/** The same as given, or undefined for a pack that would be cooled below absolute zero, which is refused. */
function followed(given: Given) {
  try {
    return packTemperature(given)
  } catch (error) {
    if (error instanceof CalculationError && error.message.includes('below absolute zero')) return undefined
    throw error
  }
}

/** What the heat put in exceeds that taken out and stored, as a share of all that passed, or of 80 kJ, a kelvin of the cells. */
function imbalance({ energies }: ReturnType<typeof packTemperature>): number {
  const { made, coolantHeat, heater, cooling, lost, stored } = energies
  const all = [made, coolantHeat, heater, cooling, lost, stored].reduce((sum, { si }) => sum + Math.abs(si), 0)
  return Math.abs(made.si + coolantHeat.si + heater.si - cooling.si - lost.si - stored.si) / Math.max(all, 80e3)
}

describe('packTemperature', () => {
  it('cools a pack over a night as the closed form does', () => {
    // −10 °C + 35 K exp(−28800 s / 18750 s) = −2.467 °C, worked out apart from this library.
    const { final, maximum, minimum, series, energies } = packTemperature(night)
    expect(final.in('°C')).toBeCloseTo(-2.467, 3)
    expect(maximum.in('°C')).toBeCloseTo(25, 12)
    expect(minimum.si).toBe(final.si)
    expect(series.map(([time]) => time.in('h'))).toEqual([0, 8])
    expect(energies.lost.in('kWh')).toBeCloseTo((150e3 * (25 - final.in('°C'))) / 3.6e6, 12)
  })

  it('is in the end where heat and loss are equal', () => {
    // 400 W over 8 W/K is 50 K above −10 °C.
    const { final } = packTemperature({ ...night, heat: [['400 W', '2000 h']] })
    expect(final.in('°C')).toBeCloseTo(40, 9)
  })

  it('warms straight where nothing is lost', () => {
    // 1500 W into 150 kJ/K for 1000 s is 10 K.
    const { final, energies } = packTemperature({ ...night, conductance: '0 W/K', heat: [['1500 W', '1000 s']] })
    expect(final.in('°C')).toBeCloseTo(35, 12)
    expect(energies.lost.si).toBe(0)
  })

  it('comes to the same in many steps as in one', () => {
    const one = packTemperature({ ...night, heat: [['700 W', '2 h']] })
    const many = packTemperature({ ...night, heat: Array.from({ length: 720 }, () => ['700 W', '10 s'] as const) })
    expect(many.final.si).toBeCloseTo(one.final.si, 10)
    expect(many.series).toHaveLength(721)
  })

  // A motor of two bodies, worked out apart from this library by a matrix exponential: 2 kJ/K and 15 kJ/K, 0.08 K/W
  // between them, 0.03 K/W to the surroundings, 800 W and 400 W, all at 60 °C at the start.
  it.each([
    ['120 s', 94.992, 64.39],
    ['1800 s', 157.858, 94.498],
    ['40 h', 160, 96],
  ] as const)('follows two bodies as a matrix exponential does, to %s', (time, inner, outer) => {
    const { final, coolant } = packTemperature({
      heatCapacity: '2 kJ/K',
      conductance: '0 W/K',
      surroundings: '60 °C',
      initial: '60 °C',
      heat: [['800 W', time]],
      coolant: {
        heatCapacity: '15 kJ/K',
        fromCells: wattsPerKelvin(1 / 0.08),
        toSurroundings: wattsPerKelvin(1 / 0.03),
        heat: '400 W',
      },
    })
    expect(Math.abs(final.in('°C') - inner)).toBeLessThan(1e-3)
    expect(Math.abs((coolant?.final.in('°C') ?? 0) - outer)).toBeLessThan(1e-3)
  })

  it('has for those two bodies the time constants worked out with them, and shows them', () => {
    const bodies = [
      { heatCapacity: 2000, rate: 1, conductance: 0 },
      { heatCapacity: 15000, rate: 0, conductance: 1 / 0.03 },
    ] as const
    const response = responseOf(bodies, 1 / 0.08)
    expect(response.decays.map((decay) => 1 / decay)).toEqual([expect.closeTo(134.44, 2), expect.closeTo(535.56, 2)])
    // Late, only the slow one is left.
    const left = (time: number) => (response.warmed(1e6)[0] as number) - (response.warmed(time)[0] as number)
    expect(1000 / Math.log(left(4000) / left(5000))).toBeCloseTo(535.56, 2)
    const working = explain(() =>
      packTemperature({
        ...night,
        heatCapacity: '2 kJ/K',
        conductance: '0 W/K',
        coolant: { heatCapacity: '15 kJ/K', fromCells: '12.5 W/K', toSurroundings: wattsPerKelvin(1 / 0.03) },
      }),
    )
    expect(working.toText()).toBe('Cells and coolant as two bodies, of time constants 134.4 s and 535.6 s')
  })

  it('switches a heater at the moments that the closed form gives', () => {
    // From 10 °C down to 5 °C: τ ln(20 / 15). Up to 8 °C with 1 kW, which would lead to 115 °C: τ ln(110 / 107).
    const tau = 18750
    const down = tau * Math.log(20 / 15)
    const up = tau * Math.log(110 / 107)
    const again = tau * Math.log(18 / 15)
    const { series, energies } = packTemperature({
      ...night,
      initial: '10 °C',
      heat: [['0 W', seconds(down + up + again + 1)]],
      heater: { power: '1 kW', on: '5 °C', off: '8 °C' },
    })
    expect(series.map(([, at]) => at.in('°C')).slice(1, 4)).toEqual([5, 8, 5].map((at) => expect.closeTo(at, 10)))
    const times = [down, down + up, down + up + again].map((time) => expect.closeTo(time, 6))
    expect(series.map(([time]) => time.si).slice(1, 4)).toEqual(times)
    expect(energies.heater.si).toBeCloseTo(1000 * (up + 1), 3)
  })

  it('switches cooling, by power and by conductance, at the moments that the closed form gives', () => {
    // 25 °C with 2 kW into 150 kJ/K and no loss: 30 °C after 375 s. Then 2 kW less: back at 28 °C after 300 s of 3 kW taken.
    const chilled = packTemperature({
      ...night,
      conductance: '0 W/K',
      heat: [['2 kW', '700 s']],
      cooling: { power: '3 kW', on: '30 °C', off: '28 °C' },
    })
    expect(chilled.series.map(([time]) => time.si)).toEqual([0, 375, 675, 700].map((time) => expect.closeTo(time, 6)))
    // A fan of 100 W/K to 20 °C from 30 °C on, with 500 W: it leads to 25 °C, so 28 °C after τ ln(5 / 3), τ = 1500 s.
    const blown = packTemperature({
      ...night,
      conductance: '0 W/K',
      surroundings: '20 °C',
      initial: '30 °C',
      heat: [['500 W', '1000 s']],
      cooling: { conductance: '100 W/K', on: '30 °C', off: '28 °C' },
    })
    expect(blown.series[1]?.[0].si).toBeCloseTo(1500 * Math.log(5 / 3), 6)
  })

  it('shows for a short course the same formula that the closed form is', () => {
    const given = { ...night, heat: [['700 W', '2 h'] as const, ['0 W', '6 h'] as const] }
    const { result, steps } = explain(() => packTemperature(given))
    const shown = steps.flatMap((step) => ('heading' in step ? step.steps : [step]))
    const last = shown.at(-1)
    if (last === undefined || 'heading' in last) throw new Error('a formula was expected')
    expect(last.formula).toBe(lumpedTemperature)
    expect(last.result.si).toBeCloseTo(result.final.si, 10)
    expect(explain(() => packTemperature(given)).toText()).toContain('From 0 s to 7200 s')
  })

  it('shows what the cells make at the start of a current', () => {
    const working = explain(() =>
      packTemperature({
        ...night,
        heat: undefined,
        current: [['100 A', '10 min']],
        resistance: measured,
      } as unknown as Given),
    )
    // At 25 °C the resistance is the 28 mΩ measured there: 280 W at 100 A.
    expect(working.toText()).toContain(
      'P = I² · R − I · T · dUdT = (100 A)² · 28 mΩ − 100 A · 298.15 K · 0 mV/K = 280 W',
    )
  })

  it('gives points for a drawing at the times asked for', () => {
    const { series } = packTemperature({
      ...night,
      heat: [
        ['0 W', '100 s'],
        ['500 W', '150 s'],
      ],
      every: '60 s',
    })
    expect(series.map(([time]) => time.si)).toEqual([0, 60, 100, 120, 180, 240, 250])
  })

  it('finds a highest temperature of the cells that lies within a step', () => {
    // Warm cells beside cold coolant, then heat: they fall first, and rise later.
    const { minimum, series, coolant } = packTemperature({
      ...night,
      surroundings: '30 °C',
      heat: [['500 W', '3 h']],
      coolant: { heatCapacity: '10 kJ/K', fromCells: '100 W/K', toSurroundings: '20 W/K', initial: '0 °C' },
    })
    expect(minimum.si).toBeLessThan(Math.min(...series.map(([, at]) => at.si)) - 0.5)
    expect(coolant?.minimum.in('°C')).toBeCloseTo(0, 12)
  })
})

/** Everything at once: a thermostat, a fan, a coolant, currents and a resistance that falls with the temperature. */
const anyPack = fc.record({
  surroundings: between(-20, 30),
  initial: between(-20, 35),
  conductance: between(0, 20),
  currents: fc.array(fc.tuple(between(-150, 300), between(30, 1800)), { minLength: 1, maxLength: 6 }),
  isCurrent: fc.boolean(),
  heater: fc.option(fc.record({ power: between(200, 3000), on: between(-15, 8), width: between(0.5, 8) })),
  cooling: fc.option(
    fc.record({ power: between(100, 3000), conductance: between(1, 80), on: between(25, 40), width: between(0.5, 8) }),
  ),
  coolant: fc.option(
    fc.record({
      heatCapacity: between(2, 40),
      fromCells: between(0, 200),
      toSurroundings: between(0, 80),
      heat: between(0, 1500),
      initial: between(-15, 40),
    }),
  ),
})

type Drawn = typeof anyPack extends fc.Arbitrary<infer T> ? T : never

function givenFrom({ currents, isCurrent, heater, cooling, coolant, ...rest }: Drawn): Given {
  return {
    heatCapacity: '80 kJ/K',
    conductance: wattsPerKelvin(rest.conductance),
    surroundings: celsius(rest.surroundings),
    initial: celsius(rest.initial),
    ...(isCurrent
      ? {
          current: currents.map(([amperes, time]) => [quantity('current', amperes, 'A'), seconds(time)] as const),
          resistance: measured,
        }
      : { heat: currents.map(([amperes, time]) => [watts(amperes * 10), seconds(time)] as const) }),
    ...(heater === null
      ? {}
      : { heater: { power: watts(heater.power), on: celsius(heater.on), off: celsius(heater.on + heater.width) } }),
    ...(cooling === null
      ? {}
      : {
          cooling: {
            power: watts(cooling.power),
            conductance: wattsPerKelvin(cooling.conductance),
            on: celsius(cooling.on),
            off: celsius(cooling.on - cooling.width),
          },
        }),
    ...(coolant === null
      ? {}
      : {
          coolant: {
            heatCapacity: quantity('heatCapacity', coolant.heatCapacity, 'kJ/K'),
            fromCells: wattsPerKelvin(coolant.fromCells),
            toSurroundings: wattsPerKelvin(coolant.toSurroundings),
            heat: watts(coolant.heat),
            initial: celsius(coolant.initial),
          },
        }),
  }
}

/**
 * The same pack by the classical method of Runge and Kutta, in steps of a fifth of a second, straight from the equations.
 * A step in which a thermostat would switch is halved until it ends there.
 */
function byFineSteps(drawn: Drawn): readonly [cells: number, coolant: number, wrongWay: number] {
  const { heater, cooling, coolant, isCurrent } = drawn
  const ambient = drawn.surroundings + 273.15
  const cold = { coldTemperature: 263.15, coldResistance: 0.09, warmTemperature: 298.15, warmResistance: 0.028 }
  const between = coolant?.fromCells ?? 0
  let state: readonly [number, number] = [drawn.initial + 273.15, (coolant?.initial ?? drawn.initial) + 273.15]
  let on = { heater: false, cooling: false }
  // Heat that comes to the cells through the cooling, since it switched on and at most.
  let [sinceOn, wrongWay] = [0, 0]
  const warming = ([cell, fluid]: readonly [number, number]) => {
    if (!on.cooling) return 0
    if (coolant) return Math.max(0, between * (fluid - cell))
    return Math.max(0, (cooling?.conductance ?? 0) * (ambient - cell) - (cooling?.power ?? 0))
  }
  const switched = ([cell]: readonly [number, number]) => ({
    heater: !!heater && (cell <= heater.on + 273.15 || (on.heater && cell < heater.on + heater.width + 273.15)),
    cooling: !!cooling && (cell >= cooling.on + 273.15 || (on.cooling && cell > cooling.on - cooling.width + 273.15)),
  })
  const after = (value: number, step: number): readonly [number, number] => {
    const put = (on.heater ? (heater?.power ?? 0) : 0) - (on.cooling ? (cooling?.power ?? 0) : 0)
    const fan = on.cooling ? (cooling?.conductance ?? 0) : 0
    const rates = (a: number, b: number): [number, number] => {
      const made = isCurrent ? value ** 2 * resistanceAtTemperature.compute({ ...cold, temperature: a }) : value * 10
      const loss = drawn.conductance * (a - ambient)
      if (!coolant) return [(made + put - loss - fan * (a - ambient)) / 80e3, 0]
      const passed = between * (a - b)
      const out = (coolant.toSurroundings + fan) * (b - ambient)
      return [(made - loss - passed) / 80e3, (coolant.heat + put + passed - out) / (coolant.heatCapacity * 1e3)]
    }
    const [cell, fluid] = state
    const [a1, b1] = rates(cell, fluid)
    const [a2, b2] = rates(cell + (step / 2) * a1, fluid + (step / 2) * b1)
    const [a3, b3] = rates(cell + (step / 2) * a2, fluid + (step / 2) * b2)
    const [a4, b4] = rates(cell + step * a3, fluid + step * b3)
    return [cell + (step / 6) * (a1 + 2 * a2 + 2 * a3 + a4), fluid + (step / 6) * (b1 + 2 * b2 + 2 * b3 + b4)]
  }
  const switches = (value: number, step: number) => {
    const next = switched(after(value, step))
    return next.heater !== on.heater || next.cooling !== on.cooling
  }
  on = switched(state)
  for (const [value, duration] of drawn.currents) {
    for (let left = duration; left > 0; ) {
      let step = Math.min(0.2, left)
      if (switches(value, step)) {
        let [early, late] = [0, step]
        while (late - early > 1e-9) {
          const middle = (early + late) / 2
          if (switches(value, middle)) late = middle
          else early = middle
        }
        step = late
      }
      const next = after(value, step)
      // By Simpson's rule.
      const sum = warming(state) + 4 * warming(after(value, step / 2)) + warming(next)
      sinceOn = on.cooling ? sinceOn + (step / 6) * sum : 0
      wrongWay = Math.max(wrongWay, sinceOn)
      state = next
      on = switched(state)
      left -= step
    }
  }
  return [...state, wrongWay]
}

describe('a pack with everything at once', () => {
  it('conserves energy to 1e-9', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyPack, (drawn) => {
        const found = followed(givenFrom(drawn))
        fc.pre(found !== undefined)
        expect(imbalance(found)).toBeLessThan(1e-9)
      }),
      { numRuns: runs(300) },
    )
  })

  it('agrees with fine steps where nothing switches', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyPack, (drawn) => {
        const free = { ...drawn, heater: null, cooling: null, isCurrent: false }
        const [cells, coolant] = byFineSteps(free)
        const found = packTemperature(givenFrom(free))
        expect(Math.abs(found.final.si - cells)).toBeLessThan(1e-7)
        if (found.coolant !== undefined) expect(Math.abs(found.coolant.final.si - coolant)).toBeLessThan(1e-7)
      }),
      { numRuns: runs(10, 100) },
    )
  })

  it('agrees with fine steps on the law of Arrhenius itself within what its straight pieces are off', {
    timeout: 60_000,
  }, () => {
    fc.assert(
      fc.property(anyPack, (drawn) => {
        const free = { ...drawn, heater: null, cooling: null, isCurrent: true }
        const [cells] = byFineSteps(free)
        const found = packTemperature(givenFrom(free))
        // Straight pieces lie above the law by up to 6e-5 of the heat made, at −20 °C.
        const off = (6e-5 * found.energies.made.si) / 80e3
        expect(found.final.si - cells).toBeGreaterThan(-1e-7)
        expect(found.final.si - cells).toBeLessThan(off + 1e-7)
      }),
      { numRuns: runs(6, 100) },
    )
  })

  it('agrees with fine steps with thermostats too', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyPack, (drawn) => {
        const found = followed(givenFrom(drawn))
        fc.pre(found !== undefined)
        const [cells, coolant] = byFineSteps(drawn)
        // The straight pieces of the resistance shift the moments of switching a little.
        const within = drawn.isCurrent ? 0.01 : 1e-5
        expect(Math.abs(found.final.si - cells)).toBeLessThan(within)
        if (found.coolant !== undefined) expect(Math.abs(found.coolant.final.si - coolant)).toBeLessThan(2 * within)
      }),
      // The same packs in each run: of some pack the end could fall between a switching here and there.
      { numRuns: runs(8, 200), seed: 1 },
    )
  })

  it('tells the heat that comes the wrong way through its cooling as fine steps do, whatever the points drawn', {
    timeout: 60_000,
  }, () => {
    const hot = fc.record({
      surroundings: between(30, 48),
      initial: between(25, 40),
      cooling: fc.record({
        power: between(1, 800),
        conductance: between(1, 80),
        on: between(25, 40),
        width: between(0.5, 8),
      }),
      every: between(20, 900),
    })
    const unfelt = 0.1 * 80e3
    const wrongWay = (given: Given) =>
      packTemperature(given).checks.find(({ id }) => id === 'cooling.direction')?.actual?.si
    fc.assert(
      fc.property(anyPack, hot, (pack, { every, ...rest }) => {
        const drawn = { ...pack, ...rest, heater: null, isCurrent: false }
        const given = givenFrom(drawn)
        fc.pre(followed(given) !== undefined)
        const [, , expected] = byFineSteps(drawn)
        const found = wrongWay(given)
        if (found === undefined) expect(expected).toBeLessThan(unfelt * (1 + 1e-5))
        else expect(Math.abs(found - expected)).toBeLessThan(1e-5 * expected)
        const drawnPoints = wrongWay({ ...given, every: seconds(every) })
        if (found === undefined) expect(drawnPoints).toBeUndefined()
        else expect(drawnPoints).toBeCloseTo(found, 5)
      }),
      { numRuns: runs(20, 200), seed: 1 },
    )
  })

  it('keeps between its maximum and minimum, which it reaches', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyPack, (drawn) => {
        const found = followed({ ...givenFrom(drawn), every: '20 s' })
        fc.pre(found !== undefined)
        const { series, maximum, minimum } = found
        for (const [, at] of series) {
          expect(at.si).toBeLessThanOrEqual(maximum.si)
          expect(at.si).toBeGreaterThanOrEqual(minimum.si)
        }
        // A turn between two points 20 s apart rises by less than what 4 kW, or 200 W/K over 60 K, do in 20 s.
        const reached = Math.max(...series.map(([, at]) => at.si))
        expect(maximum.si - reached).toBeLessThan((16000 * 20) / 80e3)
        expect(found.final.si).toBeCloseTo(packTemperature(givenFrom(drawn)).final.si, 8)
      }),
      { numRuns: runs(50) },
    )
  })

  it('is never warmer with more conductance to colder surroundings', () => {
    fc.assert(
      fc.property(anyPack, between(0, 30), (drawn, more) => {
        const free = { ...drawn, heater: null, cooling: null, initial: Math.max(drawn.initial, drawn.surroundings) }
        const warm = { ...free, coolant: free.coolant && { ...free.coolant, initial: free.initial }, isCurrent: true }
        const cooled = packTemperature(givenFrom({ ...warm, conductance: warm.conductance + more }))
        expect(cooled.final.si).toBeLessThanOrEqual(packTemperature(givenFrom(warm)).final.si + 1e-9)
      }),
      { numRuns: runs(50) },
    )
  })
})

describe('a heater that is too weak', () => {
  const weak = { ...night, initial: '0 °C', heater: { power: '120 W', on: '5 °C', off: '8 °C' } } as const
  it('fails a check that says where it ends', () => {
    // −10 °C + 120 W / (8 W/K) = 5 °C.
    const { checks, final } = packTemperature({ ...weak, heat: [['0 W', '1000 h']] })
    expect(checks).toHaveLength(1)
    expect(checks[0]).toMatchObject({ verdict: 'fail', sense: 'at least' })
    expect(checks[0]?.actual?.in('°C')).toBeCloseTo(5, 9)
    expect(final.in('°C')).toBeCloseTo(5, 9)
    expect(packTemperature({ ...weak, heater: { ...weak.heater, power: '150 W' } }).checks).toEqual([])
  })

  it('ends, where it warms the coolant, where the cells end after a long time', () => {
    const coolant = { heatCapacity: '9 kJ/K', fromCells: '20 W/K', toSurroundings: '3 W/K' } as const
    const { checks, final } = packTemperature({ ...weak, coolant, heat: [['0 W', '2000 h']] })
    expect(checks[0]?.verdict).toBe('fail')
    expect(checks[0]?.actual?.in('°C')).toBeCloseTo(final.in('°C'), 9)
  })

  it('and never warms cells to which nothing leads from the coolant', () => {
    const coolant = { heatCapacity: '9 kJ/K', fromCells: '0 W/K', toSurroundings: '3 W/K' } as const
    expect(packTemperature({ ...weak, coolant }).checks[0]?.actual?.in('°C')).toBeCloseTo(-10, 9)
  })
})

describe('a cooling that warms the cells', () => {
  const fan = {
    heatCapacity: '92 kJ/K',
    conductance: '5 W/K',
    surroundings: '39 °C',
    initial: '34 °C',
    heat: [['250 W', '3 h']],
    cooling: { conductance: '40 W/K', on: '36 °C', off: '33 °C' },
  } as const satisfies Given
  const direction = (given: Given) => packTemperature(given).checks.find(({ id }) => id === 'cooling.direction')

  it.each([undefined, '10 min', '7 s'] as const)(
    'does so until they are as warm as the air, drawn every %s',
    (every) => {
      // From 36 °C to 39 °C, with u the kelvins below the air: the integral of 40 W/K · u over time, which is that of
      // 40 W/K · u · 92 kJ/K / (250 W + 45 W/K · u) over u. What the fan takes out later is not set off against it.
      const heat = 40 * 92e3 * (3 / 45 - (250 / 45 ** 2) * Math.log((250 + 45 * 3) / 250))
      const found = direction({ ...fan, ...(every === undefined ? {} : { every }) })
      expect(found?.verdict).toBe('fail')
      expect(found?.actual?.si).toBeCloseTo(heat, 5)
      expect(found?.text).toBe(
        'while the cooling runs, 0.01366 kWh of heat comes to the cells through it, more than the 0.002556 kWh that warms them by 0.1 K',
      )
    },
  )

  it('does so however its steps are cut', () => {
    const cut = Array.from({ length: 1080 }, () => ['250 W', '10 s'] as const)
    expect(direction({ ...fan, heat: cut })?.actual?.si).toBeCloseTo(direction(fan)?.actual?.si as number, 5)
  })

  it('is not told of coolant that is warm for some seconds as it switches on', () => {
    const day = {
      heatCapacity: '120 kJ/K',
      conductance: '6 W/K',
      surroundings: '38 °C',
      humidity: '25 %',
      initial: '30 °C',
      heat: [['900 W', '3 h']],
      cooling: { power: '3.5 kW', on: '33 °C', off: '29 °C' },
      coolant: { heatCapacity: '20 kJ/K', fromCells: '200 W/K', toSurroundings: '10 W/K', heat: '1 kW' },
    } as const satisfies Given
    expect(packTemperature(day).checks.map(({ id, verdict }) => [id, verdict])).toEqual([['cooling.dryness', 'pass']])
    expect(direction({ ...day, cooling: { ...day.cooling, power: '1.1 kW' } })?.verdict).toBe('fail')
  })
})

describe('the hottest point of cells', () => {
  // Two bodies, solved apart from this library: of 100 kJ/K with 5 W/K to air of 20 °C, 1 kW for 20 min, the pack is at
  // 20 + 200 (1 − exp(−0.06)) = 31.647 °C; a core of 5 min at 1000/100000 · 300 (1 − exp(−4)) = 2.945 K above it.
  const drive = {
    heatCapacity: '100 kJ/K',
    conductance: '5 W/K',
    surroundings: '20 °C',
    initial: '20 °C',
    heat: [['1 kW', '20 min']],
  } as const satisfies Given

  it('is the core of the warmest one', () => {
    expect(packTemperature(drive).hottest.in('°C')).toBeCloseTo(31.647 + 2.945 + 5, 2)
    const even = packTemperature({ ...drive, hottest: { core: '0 s', spread: '0 K' } })
    expect(even.hottest.si).toBe(even.maximum.si)
  })

  it('is hardly felt in a short pull, and not at all without heat', () => {
    const pull = packTemperature({ ...drive, heat: [['20 kW', '5 s']], hottest: { spread: '0 K' } })
    // 20 kW · 5 s into 100 kJ/K: the pack warms by 1 K, and the core by as much more, not by 60 K.
    expect(pull.hottest.si - pull.maximum.si).toBeCloseTo(60 * (1 - Math.exp(-5 / 300)), 3)
    const still = packTemperature({ ...drive, heat: [['0 W', '5 h']] })
    expect(still.hottest.si).toBe(still.maximum.si)
  })
})

describe('the limits of cells', () => {
  it('are the usual ones where cells become too hot and no limit was given', () => {
    const hot = packTemperature({ ...night, heat: [['2 kW', '2 h']] })
    expect(hot.maximum.in('°C')).toBeGreaterThan(60)
    expect(hot.checks).toHaveLength(1)
    expect(hot.checks[0]).toMatchObject({
      name: 'Highest cell temperature',
      verdict: 'fail',
      basis: 'the usual limit of lithium cells (common practice); that of the maker counts',
    })
    expect(hot.checks[0]?.limit?.in('°C')).toBe(60)
  })

  it('are checked over the whole course', () => {
    const { checks } = packTemperature({
      ...night,
      heat: [
        ['400 W', '2 h'],
        ['0 W', '20 h'],
      ],
      limits: { low: '-20 °C', high: '45 °C' },
    })
    expect(checks.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Highest cell temperature', 'pass'],
      ['Lowest cell temperature', 'pass'],
    ])
    const { checks: cold } = packTemperature({ ...night, limits: { low: '0 °C' } })
    expect(cold.map(({ verdict }) => verdict)).toEqual(['fail'])
  })

  it('forbid charging in the cold: below 0 °C unless the maker of the cells says otherwise', () => {
    const charge = { ...night, heat: undefined, resistance: measured, initial: '-5 °C' } as const
    const cold = packTemperature({
      ...charge,
      current: [
        ['50 A', '10 min'],
        ['-20 A', '10 min'],
      ],
    } as unknown as Given)
    expect(cold.checks[0]).toMatchObject({
      name: 'Lowest cell temperature while charging',
      verdict: 'fail',
      basis: 'the usual limit of lithium cells (common practice); that of the maker counts',
    })
    // It is the temperature while charging that counts, not the cold start.
    expect(cold.checks[0]?.actual?.si).toBeGreaterThan(celsius(-5).si)
    expect(cold.assumptions.map(said)).toContain(
      'The cells may be charged from 0 °C on, unless their maker says otherwise.',
    )
    expect(cold.cautions[0]?.text).toContain('charged below the limit of their maker (commonly 0 °C)')
    const allowed = packTemperature({
      ...charge,
      current: [['-20 A', '10 min']],
      limits: { charge: '-10 °C' },
    } as unknown as Given)
    expect(allowed.checks.map(({ verdict, basis }) => [verdict, basis])).toEqual([
      ['pass', 'the limit given for the cells'],
    ])
  })
})

describe('wrong input to packTemperature', () => {
  it.each([
    [
      'neither heat nor current',
      { heat: undefined },
      "heat: expected either heat, such as [['1.2 kW', '20 min']], or current, such as [['90 A', '20 min']], got neither",
    ],
    [
      'a current without a resistance',
      { heat: undefined, current: [['90 A', '20 min']] },
      'resistance: expected the resistance of the pack at two temperatures with a current, and only then, got nothing',
    ],
    [
      'a resistance that falls in the cold',
      {
        heat: undefined,
        current: [['90 A', '20 min']],
        resistance: { ...measured, coldResistance: '20 mΩ', coldTemperature: '30 °C' },
      },
      'resistance.warmTemperature: expected a temperature above the colder one, 30 °C, got 25 °C\n' +
        '  resistance.coldResistance: expected at least the resistance in the warm, 28 mΩ, got 20 mΩ (cells resist more ' +
        'in the cold: were the two exchanged?)',
    ],
    [
      'a heater that switches off where it switches on',
      { heater: { power: '500 W', on: '5 °C', off: '5 °C' } },
      'heater.off: expected a temperature above that at which it switches on, 5 °C, got 5 °C',
    ],
    [
      'cooling that does nothing, the wrong way round',
      { cooling: { on: '30 °C', off: '32 °C' } },
      'cooling.off: expected a temperature below that at which it switches on, 30 °C, got 32 °C\n' +
        "  cooling: expected a power such as '800 W', a conductance such as '12 W/K', or both, got neither",
    ],
    [
      'heater and cooling that work against each other',
      {
        heater: { power: '500 W', on: '5 °C', off: '20 °C' },
        cooling: { power: '500 W', on: '15 °C', off: '10 °C' },
      },
      'cooling.on: expected at least the temperature at which the heater switches off, 20 °C, got 15 °C (they would work ' +
        'against each other)',
    ],
    [
      'a step without duration',
      { heat: [['500 W', '0 s']] },
      "heat[0][1]: expected a time above 0 s, got '0 s' (Duration)",
    ],
    [
      'a pack without heat capacity',
      { heatCapacity: '0 kJ/K' },
      "heatCapacity: expected a heat capacity above 0 kJ/K, got '0 kJ/K'",
    ],
  ])('%s is refused by its path', (_, wrong, message) => {
    expect(() => packTemperature({ ...night, ...wrong } as unknown as Given)).toThrow(message)
  })

  it('a pack out of which more heat is taken than there is is refused', () => {
    expect(() => packTemperature({ ...night, heat: [['-10 kW', '10 h']] })).toThrow(
      'packTemperature: the cells would cool below absolute zero, from 0 h on: more heat is taken out than there is',
    )
  })

  it('a pack that would glow is refused at once, whatever the slip', { timeout: 5000 }, () => {
    const slip = { ...night, heat: undefined, resistance: measured, current: [['90000000 kA', '1000 h']] }
    for (const given of [slip, { ...night, heat: [['400 MW', '1 h']] }]) {
      expect(() => packTemperature(given as unknown as Given)).toThrow(
        /the cells would be hotter than 1000 °C by [\d.e-]+ h: look at the units of current, heat and heat capacity/,
      )
    }
  })

  it('a thermostat that chatters is refused with the mend', { timeout: 60_000 }, () => {
    const chattering = {
      ...night,
      heat: [['0 W', '1000 h']],
      heater: { power: '2 kW', on: '5 °C', off: '5.0001 °C' },
    } as const
    const refused = (() => {
      try {
        return packTemperature(chattering)
      } catch (error) {
        return error
      }
    })()
    expect(refused).toBeInstanceOf(CalculationError)
    expect((refused as Error).message).toMatch(
      /more than 100000 times by [\d.]+ h: set the temperatures at which they switch on and off farther apart/,
    )
  })
})
