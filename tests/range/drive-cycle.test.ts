/** Driving a cycle or a journey: closed forms, an integration apart from the library, the balance of every step, limits. */
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { cableDuty, packAt, rmsCurrent, sizeCable } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { CalculationError, quantity } from '../../src/quantity/index.js'
import { cycles, driveCycle, readCycle } from '../../src/range/index.js'
import { packTemperature } from '../../src/thermal/index.js'
import { runs } from '../runs.js'
import { byHand, van } from './by-hand.js'
import { drives, flat, gears, least, module, motor, whole } from './cars.js'

type Given = Parameters<typeof driveCycle>[0]
type Driven = ReturnType<typeof driveCycle>

const steady = (kmh: number, seconds = 600) =>
  readCycle({ log: `t (s),v (km/h)\n0,${kmh}\n${seconds},${kmh}`, longestGap: '1 h' })

/** Wheels, losses and stored energy less what came from the pack, as a share of all that passed. */
function imbalance({ net, losses, stored, drawn, regenerated }: Driven): number {
  const sum = [...Object.values(losses), ...Object.values(stored)].reduce((all, { si }) => all + si, 0)
  const all = [...Object.values(losses), ...Object.values(stored)].reduce((size, { si }) => size + Math.abs(si), 0)
  return Math.abs(net.si - sum) / (all + drawn.si + regenerated.si + 1)
}

describe('driveCycle, against closed forms', () => {
  it('takes at a steady speed what road load, efficiencies and auxiliaries ask', () => {
    // 1.20412 kg/m³ (101.325 kPa, 20 °C, R 287.05287); 90 km/h is 25 m/s.
    const density = 101325 / (287.05287 * 293.15)
    const force = 780 * 9.80665 * 0.012 + 0.5 * density * 0.62 * 25 ** 2
    const wanted = force / (0.93 * 0.86) + 400 / 25
    const { consumption, range, distance, drawn, regenerated } = driveCycle({
      ...least,
      cycle: steady(90),
      auxiliaries: '400 W',
      usableEnergy: '20 kWh',
    })
    expect(consumption.si / wanted).toBeCloseTo(1, 12)
    expect((range?.si ?? 0) / ((20 * 3.6e6) / wanted)).toBeCloseTo(1, 12)
    expect(distance.in('km')).toBeCloseTo(15, 10)
    expect(drawn.si).toBeGreaterThan(0)
    expect(regenerated.si).toBe(0)
  })

  it('takes nothing for a hill up and down again without losses, and mass times g times height for one up', () => {
    const frictionless = {
      car: { mass: '780 kg', rotatingFactor: 1, rollingResistance: 0, dragArea: '0 m²' },
      gearbox: { efficiency: 1 },
      motor: { efficiency: 1 },
      controller: { regeneration: 1 },
    } as const
    const up = { distance: '2 km', speed: '60 km/h', grade: 0.08 } as const
    const height = 2000 * Math.sin(Math.atan(0.08))
    const there = driveCycle({ ...frictionless, journey: [up] })
    const back = driveCycle({ ...frictionless, journey: [up, { ...up, grade: -0.08 }] })
    expect(there.net.si / (780 * 9.80665 * height)).toBeCloseTo(1, 9)
    expect(there.stored.height.si / (780 * 9.80665 * height)).toBeCloseTo(1, 9)
    expect(back.net.si / back.drawn.si).toBeCloseTo(0, 9)
    expect(back.drawn.si).toBeGreaterThan(780 * 9.80665 * height * 0.999)
    expect(back.range).toBeUndefined()
  })

  it('returns of a stop what both efficiencies leave twice', () => {
    const trace = readCycle({ log: 't (s),v (m/s)\n0,0\n10,20\n20,0' })
    const { net, regenerated, losses } = driveCycle({
      ...least,
      car: { mass: '780 kg', rotatingFactor: 1, rollingResistance: 0, dragArea: '0 m²' },
      controller: { regeneration: 1 },
      cycle: trace,
    })
    const kinetic = (780 * 20 ** 2) / 2
    expect(regenerated.si / (kinetic * 0.93 * 0.86)).toBeCloseTo(1, 12)
    expect(net.si / (kinetic / (0.93 * 0.86) - kinetic * 0.93 * 0.86)).toBeCloseTo(1, 12)
    expect(losses.brakes.si).toBeCloseTo(0, 6)
  })

  it('goes as far as the energy of a pack of steady voltage lets it', () => {
    const { range, rangeEndedBy, consumption } = driveCycle({
      ...least,
      cycle: steady(60),
      pack: { module: { ...flat, resistance: '1 µΩ' }, series: 2, parallel: 2 },
    })
    expect((range?.si ?? 0) / ((88 * 82 * 3600) / consumption.si)).toBeCloseTo(1, 5)
    expect(rangeEndedBy).toBe('state of charge of 0 %')
  })

  it('gives the current and the heat that packAt gives at the same load', () => {
    const pack = { module, series: 4, parallel: 2 } as const
    const { peakCurrent, packHeat, lowestVoltage, duration, consumption } = driveCycle({
      ...least,
      cycle: steady(100, 10),
      pack,
    })
    const power = quantity('power', consumption.si * (100 / 3.6), 'W')
    const wanted = packAt({ pack, stateOfCharge: 0.9995, power })
    expect((peakCurrent?.si ?? 0) / wanted.current.si).toBeCloseTo(1, 3)
    expect((lowestVoltage?.si ?? 0) / wanted.terminal.si).toBeCloseTo(1, 3)
    expect((packHeat?.si ?? 0) / duration.si / wanted.heat.si).toBeCloseTo(1, 3)
  })
})

/** The least form over a cycle, its turning parts 3 % of its mass, by the midpoint rule in steps of a hundredth of a second. */
function integrated(cycle: { readonly corners: (typeof cycles)['NEDC']['corners'] }, share: number) {
  const { seconds, metresPerSecond } = cycle.corners
  const density = 101325 / (287.05287 * 293.15)
  let energy = 0
  for (let i = 1; i < seconds.length; i++) {
    const lasts = (seconds[i] as number) - (seconds[i - 1] as number)
    const [from, to] = [metresPerSecond[i - 1] as number, metresPerSecond[i] as number]
    const acceleration = (to - from) / lasts
    const count = Math.round(lasts * 100)
    for (let k = 0; k < count; k++) {
      const v = from + acceleration * ((k + 0.5) / count) * lasts
      const rolling = v > 0 ? 780 * 9.80665 * 0.012 : 0
      const power = v * (rolling + 0.5 * density * 0.62 * v ** 2 + 1.03 * 780 * acceleration)
      energy += (power > 0 ? power / (0.93 * 0.86) : power * share * 0.93 * 0.86) * (lasts / count)
    }
  }
  return energy
}

describe('driveCycle, against an integration apart from it', () => {
  it('keeps the same books as one loop that drives NEDC in four gears', () => {
    const { net, drawn, losses, stored, peakPower } = driveCycle({ ...van, cycle: 'NEDC' })
    const { air, tyres, brakes, driveline, motor, auxiliaries } = losses
    const { kinetic, loads, ...books } = byHand()
    for (const [name, each] of Object.entries({
      net,
      drawn,
      air,
      tyres,
      brakes,
      driveline,
      motor,
      auxiliaries,
      peakPower,
    })) {
      expect(each.si / books[name as keyof typeof books], name).toBeCloseTo(1, 9)
    }
    expect(stored.speed.si).toBeCloseTo(kinetic, 6)
    // The motor remembers its load over 5 min, beginning at the mean of the drive: dm/dt = (x² − m) / τ, step by step.
    const motorWithRating = { ...van.motor, continuousTorque: '109 N·m' } as const
    const { checks } = driveCycle({ ...van, motor: motorWithRating, cycle: 'NEDC' })
    let memory = loads.reduce((sum, [load, time]) => sum + load ** 2 * time, 0) / 1180
    let worst = memory
    for (const [load, time] of loads) {
      memory = load ** 2 + (memory - load ** 2) * Math.exp(-time / 300)
      worst = Math.max(worst, memory)
    }
    expect(checks.find(({ id }) => id === 'motor.load')?.actual?.si).toBeCloseTo(Math.sqrt(worst), 9)
  })
  it.each(['ECE-15', 'EUDC', 'NEDC', 'Japan 10-mode'] as const)('over %s', (cycle) => {
    const { net } = driveCycle({ ...least, cycle, controller: { regeneration: 0.7 } })
    expect(net.si / integrated(cycles[cycle], 0.7)).toBeCloseTo(1, 5)
  })
})

/** The drives at random that were driven, and those in which it stands from start to end. */
let [driven, held] = [0, 0]
function drivenOrHeld(given: Given): Driven | undefined {
  try {
    const done = driveCycle(given)
    driven++
    return done
  } catch (error) {
    if (!(error instanceof CalculationError) || !/cannot give|never moves/.test(error.message)) throw error
    held++
    return undefined
  }
}

describe('the books of driveCycle', () => {
  // Else the laws would hold of cars that stand.
  afterAll(() => expect(driven / (driven + held)).toBeGreaterThan(0.8))
  it('balance in every step, and over the whole, for cars and roads of every sort', () => {
    fc.assert(
      fc.property(drives, (given) => {
        const driven = drivenOrHeld(given)
        if (driven === undefined) return
        expect(imbalance(driven)).toBeLessThan(1e-9)
        let [worst, least] = [0, 0]
        for (const { power, shares } of driven.series) {
          const all = Object.values(shares).map(({ si }) => si)
          const size = all.reduce((sum, share) => sum + Math.abs(share), 1e-3)
          const sum = all.reduce((total, share) => total + share, 0)
          worst = Math.max(worst, Math.abs(power.si - sum) / size)
          const { brakes, driveline, motor, shifts, auxiliaries } = shares
          for (const loss of [brakes, driveline, motor, shifts, auxiliaries]) least = Math.min(least, loss.si / size)
        }
        expect(worst).toBeLessThan(1e-9)
        expect(least).toBeGreaterThan(-1e-9)
      }),
      { numRuns: runs(60) },
    )
  })
  it('hold all limits in every step', () => {
    fc.assert(
      fc.property(drives, (given) => {
        if (given.pack === undefined) return
        const driven = drivenOrHeld(given)
        if (driven === undefined) return
        const { parallel } = given.pack
        const most = (figure: (step: Driven['series'][number]) => number) => Math.max(...driven.series.map(figure))
        expect(most(({ current }) => current?.si ?? 0)).toBeLessThanOrEqual(200 * parallel * (1 + 1e-9))
        expect(most(({ current }) => -(current?.si ?? 0))).toBeLessThanOrEqual(60 * parallel * (1 + 1e-9))
        expect(most(({ voltage }) => voltage?.si ?? 0)).toBeLessThanOrEqual(4 * 50.4 * (1 + 1e-9))
        const loaded = driven.series.filter(({ current }) => (current?.si ?? 0) > 0)
        const lowest = Math.min(...loaded.map(({ voltage }) => voltage?.si ?? 0))
        expect(lowest).toBeGreaterThanOrEqual(4 * 36 * (1 - 1e-9))
      }),
      { numRuns: runs(60) },
    )
  })
  it('leave the speed of a car that ends where it began at nothing, also with a rotor that is geared up and down', () => {
    const { stored } = driveCycle(whole)
    expect(Math.abs(stored.speed.si)).toBeLessThan(1e-6)
    expect(stored.height.si).toBe(0)
  })
  it('change by the square when the step is halved', () => {
    const at = (step: `${number} s`) => driveCycle({ ...whole, step }).net.si
    const fine = at('0.0625 s')
    expect(Math.abs(at('1 s') / fine - 1)).toBeLessThan(1e-4)
    expect(Math.abs(at('0.5 s') / fine - 1)).toBeLessThan(3e-5)
    // Where no step turns from driving to braking, and no gear changes.
    const smooth = readCycle({ log: 't (s),v (m/s)\n0,5\n8,17' })
    const part = (step: `${number} s`) =>
      driveCycle({ ...whole, gearbox: { ...whole.gearbox, gears: [1.4] }, cycle: smooth, step }).net.si
    const [coarse, half, quarter] = [part('4 s'), part('2 s'), part('1 s')]
    expect((coarse - half) / (half - quarter)).toBeCloseTo(4, 0)
  })
  it('change a journey by next to nothing, though where it holds its speed ten count as one', () => {
    const journey = [
      { distance: '6 km', speed: '70 km/h', stops: 2, standing: '40 s' },
      { distance: '3 km', speed: '45 km/h', grade: 0.05 },
    ] as const
    const pack = { module, series: 4, parallel: 2 } as const
    const { cycle: _, ...car } = least
    const at = (step: `${number} s`) => driveCycle({ ...car, pack, journey, step })
    // At 50 ms a speed is held for half a second at once.
    const [usual, fine] = [at('1 s'), at('0.05 s')]
    expect(usual.series.length).toBeLessThan(fine.series.length / 10)
    for (const key of ['net', 'packHeat', 'range', 'rmsCurrent', 'stateOfCharge'] as const) {
      expect(Math.abs((usual[key]?.si ?? 0) / (fine[key]?.si ?? 0) - 1), key).toBeLessThan(1e-3)
    }
  })
  it('agree with what is told of the steps', () => {
    const driven = driveCycle(whole)
    const seconds = driven.currents?.map(([, time]) => time.si) ?? []
    expect(seconds.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1180, 9)
    const heat = driven.heats?.reduce((sum, [power, time]) => sum + power.si * time.si, 0) ?? 0
    expect(heat / (driven.packHeat?.si ?? 0)).toBeCloseTo(1, 9)
    const net = driven.series.reduce((sum, { power }, i) => sum + power.si * (seconds[i] ?? 0), 0)
    expect(net / driven.net.si).toBeCloseTo(1, 9)
    expect(driven.series).toHaveLength(1180)
    expect(driven.series).toBe(driven.series)
  })
})

describe('a car that cannot follow', () => {
  it('gains speed as its motor alone lets it: by force, then by power', () => {
    const force = (100 * 5) / 0.3
    const bare = {
      car: { mass: '1000 kg', rotatingFactor: 1, rollingResistance: 0, dragArea: '0 m²', rollingRadius: '0.3 m' },
      gearbox: { gears: [5], finalDrive: 1, efficiency: 1 },
      motor: { peakTorque: '100 N·m', peakPower: '20 kW', maximumSpeed: '9000 rpm', efficiency: 1 },
      cycle: readCycle({ log: 't (s),v (m/s)\n0,0\n4,100\n20,100', longestGap: '20 s' }),
      step: '0.01 s',
    } as const
    const { series, missed } = driveCycle(bare)
    const speedAt = (seconds: number) => series.find(({ time }) => time.si >= seconds - 1e-9)?.speed.si ?? 0
    // To 12 m/s with a steady force, 7.2 s; from there with a steady power: v² = 144 + 2 P t / m.
    expect(speedAt(5)).toBeCloseTo((force * 5) / 1000, 6)
    expect(speedAt(15)).toBeCloseTo(Math.sqrt(144 + (2 * 20e3 * (15 - 7.2)) / 1000), 3)
    expect(missed).toHaveLength(1)
    expect(missed[0]?.limitedBy).toBe('torque of the motor')
    expect(missed[0]?.from.si).toBe(0)
    expect(missed[0]?.until.si).toBeCloseTo(20, 6)
  })
  it('is told of, with the check that fails, and still balanced', () => {
    const driven = driveCycle({ ...whole, motor: { ...motor, peakPower: '15 kW', peakTorque: '60 N·m' } })
    expect(driven.missed.length).toBeGreaterThan(0)
    expect(driven.distance.si).toBeLessThan(cycles.NEDC.distance.si)
    expect(driven.checks[0]).toMatchObject({ name: 'Time in which the car falls behind', verdict: 'fail' })
    expect(imbalance(driven)).toBeLessThan(1e-9)
    for (const { asked, reached, from, until } of driven.missed) {
      expect(asked.si).toBeGreaterThan(reached.si)
      expect(until.si).toBeGreaterThan(from.si)
    }
  })
  it('is held by its grip on ice', () => {
    // A rear axle with 0.1: 0.1 · 780 · g · 1 / (2.1 − 0.05) = 373 N.
    const { series, missed } = driveCycle({ ...whole, car: { ...whole.car, friction: 0.1 }, cycle: 'EUDC' })
    expect(missed[0]?.limitedBy).toBe('grip of the driven wheels')
    const force = (0.1 * 780 * 9.80665 * 1) / (2.1 - 0.1 * 0.5)
    for (const { speed, shares } of series) {
      const wheel = shares.air.si + shares.tyres.si + shares.kinetic.si + shares.shifts.si
      // The rotor, speeded up from the pack, is in the kinetic share as well.
      if (shares.brakes.si === 0 && speed.si > 20) expect(wheel).toBeLessThan(force * speed.si * 1.02)
    }
  })
  it('is held by the highest speed of its motor', () => {
    const { missed, series } = driveCycle({ ...whole, motor: { ...motor, maximumSpeed: '3500 rpm' }, cycle: 'EUDC' })
    expect(missed.map(({ limitedBy }) => limitedBy)).toEqual(['highest speed of the motor'])
    const fastest = Math.max(...series.map(({ speed }) => speed.in('km/h')))
    expect(fastest).toBeLessThan(100)
    expect(fastest).toBeGreaterThan(80)
  })
  it('is held by a weak pack', () => {
    const weak = { ...module, peakCurrent: '80 A', continuousCurrent: '40 A' } as const
    const { missed, peakCurrent, range } = driveCycle({
      ...whole,
      pack: { module: weak, series: 4, parallel: 1 },
      cycle: 'EUDC',
    })
    expect(missed[0]?.limitedBy).toBe('current of the pack')
    expect(peakCurrent?.si).toBeCloseTo(80, 6)
    expect(range?.in('km')).toBeGreaterThan(40)
  })
  it('is told of alike at every step, by where the pace would have brought it', () => {
    const at = (step: `${number} s`) =>
      driveCycle({
        ...whole,
        cycle: undefined,
        motor: { ...motor, continuousTorque: undefined, peakPower: '20 kW' },
        journey: [
          { distance: '1 km', speed: '80 km/h' },
          { distance: '800 m', speed: '80 km/h', grade: 0.12 },
          { distance: '1 km', speed: '80 km/h' },
        ],
        step,
      } as Given).missed
    const [coarse, fine] = [at('1 s'), at('0.02 s')]
    expect(coarse).toHaveLength(fine.length)
    const [hill, slowest] = [coarse[1], fine[1]]
    expect(hill?.asked.in('km/h')).toBeCloseTo(80, 6)
    expect(slowest?.asked.in('km/h')).toBeCloseTo(80, 6)
    expect(hill?.reached.in('km/h')).toBeCloseTo(slowest?.reached.in('km/h') as number, 1)
    // It nears the speed at which 93 % of 20 kW are what resists: (911.3 N + 91.2 N) v + 0.3733 kg/m v³, at 60.3 km/h.
    const v = 60.3 / 3.6
    const [sine, cosine] = [Math.sin(Math.atan(0.12)), Math.cos(Math.atan(0.12))]
    const needs = 780 * 9.80665 * (sine + 0.012 * cosine) * v + 0.5 * (101325 / (287.05287 * 293.15)) * 0.62 * v ** 3
    expect(needs / 18_600).toBeCloseTo(1, 2)
    expect(slowest?.reached.in('km/h')).toBeGreaterThan(60.3)
    expect(slowest?.reached.in('km/h')).toBeLessThan(61.5)
  })
  it('ends its journey on a hill that is too steep', () => {
    const driven = driveCycle({
      ...whole,
      gearbox: { ...whole.gearbox, gears: [1] },
      journey: [
        { distance: '500 m', speed: '50 km/h' },
        { distance: '2 km', speed: '40 km/h', grade: '35 %' },
      ],
      cycle: undefined,
    } as Given)
    expect(driven.distance.in('km')).toBeLessThan(0.6)
    expect(driven.checks.find(({ name }) => name === 'Speed on the hill')?.verdict).toBe('fail')
    expect(driven.range).toBeUndefined()
  })
  it('runs empty on the way, and the check of its state of charge says so', () => {
    const driven = driveCycle({
      ...whole,
      stateOfCharge: 0.14,
      reserve: 0.1,
      cycle: 'NEDC',
      controller: { regeneration: 0 },
    })
    expect(driven.distance.in('km')).toBeLessThan(11)
    expect(driven.range?.si).toBeLessThanOrEqual(driven.distance.si)
    expect(driven.checks.find(({ name }) => name === 'State of charge at the end')?.verdict).toBe('fail')
    expect(driven.rangeEndedBy).toBe('state of charge of 10 %')
  })
})

describe('regeneration', () => {
  const brought = (given: Partial<Given>) => driveCycle({ ...whole, ...given } as Given).regenerated.si
  it('grows with its share, and is nothing without', () => {
    expect(brought({ controller: { regeneration: 0 } })).toBe(0)
    expect(brought({ controller: { regeneration: 0.5 } })).toBeGreaterThan(0)
    expect(brought({ controller: { regeneration: 1 } })).toBeGreaterThan(brought({ controller: { regeneration: 0.5 } }))
  })
  it('is less with little grip, a weak motor, and a pack that takes little or nothing', () => {
    const all = brought({ controller: { regeneration: 1 } })
    expect(
      brought({ car: { ...whole.car, friction: 0.12 }, controller: { regeneration: 1 }, cycle: 'ECE-15' }),
    ).toBeLessThan(brought({ controller: { regeneration: 1 }, cycle: 'ECE-15' }))
    const gentle = { ...module, chargeCurrent: '5 A' } as const
    expect(brought({ controller: { regeneration: 1 }, pack: { module: gentle, series: 4, parallel: 2 } })).toBeLessThan(
      all * 0.7,
    )
    const cold = {
      ...module,
      temperatures: {
        charge: { minimum: '0 °C', maximum: '45 °C' },
        discharge: { minimum: '-20 °C', maximum: '60 °C' },
      },
    } as const
    expect(
      brought({
        controller: { regeneration: 1 },
        pack: { module: cold, series: 4, parallel: 2 },
        cellTemperature: '-5 °C',
      }),
    ).toBeCloseTo(0, 9)
    expect(
      brought({ controller: { regeneration: 1 }, motor: { ...motor, peakTorque: '61 N·m', peakPower: '42 kW' } }),
    ).toBeLessThanOrEqual(all)
  })
  it('takes no more from the wheels than there is', () => {
    const { series } = driveCycle({ ...whole, controller: { regeneration: 1 } })
    for (const { shares } of series) expect(shares.brakes.si).toBeGreaterThanOrEqual(-1e-9)
  })
})

describe('a journey', () => {
  it('is as long as its stretches, and as high as their grades', () => {
    fc.assert(
      fc.property(drives, (given) => {
        if (given.journey === undefined) return
        const driven = drivenOrHeld(given)
        if (driven === undefined) return
        const wanted = given.journey.reduce((sum, { distance }) => sum + quantity('length', distance).si, 0)
        if (driven.checks.some(({ name, verdict }) => verdict === 'fail' && /hill|charge/.test(name))) {
          expect(driven.distance.si).toBeLessThanOrEqual(wanted * (1 + 1e-9))
        } else expect(driven.distance.si / wanted).toBeCloseTo(1, 8)
      }),
      { numRuns: runs(80) },
    )
  })
  it('stands as long and as often as it is told to, and holds its speed between', () => {
    const { duration, meanSpeed, series, distance } = driveCycle({
      ...least,
      cycle: undefined,
      journey: [{ distance: '4 km', speed: '72 km/h', stops: 4, standing: '25 s' }],
    } as Given)
    // Each kilometre: 20 s to 20 m/s over 200 m, 16.67 s from it over 166.7 m, 633.3 m at 20 m/s, 25 s at a stand.
    expect(duration.si).toBeCloseTo(4 * (20 + 20 / 1.2 + (1000 - 200 - 400 / 2.4) / 20 + 25), 6)
    expect(distance.in('km')).toBeCloseTo(4, 9)
    expect(meanSpeed.si).toBeCloseTo(distance.si / duration.si, 9)
    expect(Math.max(...series.map(({ speed }) => speed.in('km/h')))).toBeCloseTo(72, 9)
  })
  it('creeps over the least stretches, speeding up and slowing down in the time of the closed form', () => {
    const [a, b] = [1, 1.2]
    for (let metres = 0.01; metres < 8; metres += 0.013) {
      const distance = quantity('length', metres, 'm')
      const { duration, distance: driven } = driveCycle({
        ...least,
        cycle: undefined,
        journey: [{ distance, speed: '40 km/h' }],
      })
      // Up to the speed v and down again: v²/2a + v²/2b = metres. The last nanometre takes up to 41 µs: sqrt(2 × 1e-9 / 1.2).
      const speed = Math.sqrt((2 * metres * a * b) / (a + b))
      expect(duration.si).toBeCloseTo(speed / a + speed / b, 4)
      expect(driven.si).toBeCloseTo(metres, 8)
    }
  })

  it('slows down in time for a stretch that is too short to do it', () => {
    const { series, missed } = driveCycle({
      ...least,
      cycle: undefined,
      journey: [
        { distance: '1 km', speed: '90 km/h' },
        { distance: '10 m', speed: '60 km/h' },
        { distance: '300 m', speed: '30 km/h' },
      ],
    } as Given)
    const at = (metres: number) =>
      series
        .filter(({ distance }) => distance.si <= metres + 1e-6)
        .at(-1)
        ?.speed.in('km/h')
    expect(at(1010)).toBeCloseTo(30, 6)
    expect(at(1000)).toBeLessThan(60)
    expect(missed).toEqual([])
  })
})

describe('what driveCycle hands on', () => {
  const driven = driveCycle(whole)
  it('sizes a cable and follows its heat', () => {
    const profile = driven.currents ?? []
    expect(rmsCurrent(profile).si / (driven.rmsCurrent?.si ?? 0)).toBeCloseTo(1, 12)
    const { section } = sizeCable({ profile, length: '3 m' })
    expect(section.area.in('mm²')).toBeGreaterThan(0)
    const { peak, rms } = cableDuty({ profile, area: '16 mm²', ambient: '30 °C' })
    expect(peak.in('°C')).toBeGreaterThan(30)
    expect(rms.si / (driven.rmsCurrent?.si ?? 0)).toBeCloseTo(1, 12)
  })
  it('warms a pack by all its heat', () => {
    const { energies } = packTemperature({
      heatCapacity: '92 kJ/K',
      conductance: '5 W/K',
      surroundings: '20 °C',
      initial: '20 °C',
      heat: driven.heats ?? [],
    })
    expect(energies.made.si / (driven.packHeat?.si ?? 0)).toBeCloseTo(1, 9)
  })
  it('shows consumption and range in its working', () => {
    const text = explain(() => driveCycle({ ...least, usableEnergy: '12 kWh' })).toText()
    expect(text).toContain('Density of air')
    expect(text).toContain('Energy per distance at a steady speed')
    expect(text).toContain('Range from energy and consumption')
  })
})

describe('driveCycle refuses', () => {
  it.each<[string, object, string]>([
    [
      'neither a cycle nor a journey',
      { cycle: undefined },
      "cycle and journey: expected one of them: cycle such as 'NEDC', or journey such as [{ distance: '12 km', speed: '70 km/h' }], got neither",
    ],
    ['both', { journey: [{ distance: '1 km', speed: '30 km/h' }] }, 'cycle and journey: expected one of them'],
    [
      'an unknown cycle',
      { cycle: 'WLTC' },
      "cycle: expected a cycle from readCycle or from kerbwatt/cycles, or the name of one: 'ECE-15', 'EUDC', 'NEDC', 'Japan 10-mode', got 'WLTC'",
    ],
    [
      'a pace for a cycle',
      { pace: { braking: '2 m/s²' } },
      'pace: expected a journey to which it belongs: a cycle has its own pace, got a cycle',
    ],
    [
      'an efficiency above 1',
      { motor: { efficiency: 1.2 } },
      'motor.efficiency: expected a ratio above 0 and at most 1, got 1.2',
    ],
    [
      'a share above 1',
      { controller: { regeneration: '150 %' } },
      'controller.regeneration: expected a ratio at least 0 and at most 1',
    ],
    [
      'a pack and an energy',
      { pack: whole.pack, usableEnergy: '20 kWh' },
      'pack and usableEnergy: expected one of them: the pack tells its energy, got both',
    ],
    [
      'a state of charge without a pack',
      { stateOfCharge: 0.9 },
      'stateOfCharge: expected a pack to which it belongs, or nothing, got no pack',
    ],
    [
      'a reserve without a pack',
      { reserve: 0.2 },
      'reserve: expected a pack to which it belongs, or nothing, got no pack',
    ],
    [
      'a limit of the controller without a pack',
      { controller: { regeneration: 0.5, batteryCurrent: '200 A' } },
      'controller.batteryCurrent: expected a pack to which it belongs, or nothing, got no pack',
    ],
    [
      'states of charge the wrong way round',
      { pack: whole.pack, stateOfCharge: 0.2, reserve: 0.9 },
      'reserve: expected a state of charge below that at the start, 0.2, got 0.9',
    ],
    [
      'losses of a motor without gears',
      { motor: { loss: { lossPerTorqueSquared: '0.2 W/(N·m)²' } } },
      'gearbox.finalDrive: expected the ratio of the final drive, such as 4.1, or without gears that of motor to wheels, for motor.loss, got nothing',
    ],
    [
      'gears without a final drive',
      { gearbox: { gears, efficiency: 0.9 } },
      'gearbox.finalDrive: expected a ratio such as 4.1',
    ],
    [
      'gears that rise',
      { gearbox: { ...whole.gearbox, gears: [1, 2] } },
      'gearbox.gears.second: expected a ratio below that of first',
    ],
    ['grip without a centre of gravity', { car: { ...least.car, friction: 0.7 } }, 'car.wheelbase: expected a length'],
    ['a step of minutes', { step: '2 min' }, 'step: expected a time at least 0.001 s and at most 10 s'],
  ])('%s', (_, given, message) => {
    expect(() => driveCycle({ ...least, ...given } as Given)).toThrow(message)
  })
  it('stops without their time, and a time without stops', () => {
    const journey = [
      { distance: '1 km', speed: '30 km/h', stops: 2 },
      { distance: '1 km', speed: '30 km/h', standing: '10 s' },
    ]
    expect(() => driveCycle({ ...least, cycle: undefined, journey } as never)).toThrow(
      "journey[0].standing: expected how long each stop lasts, such as '20 s', got nothing\n  journey[1].stops: expected how often the car comes to a stand on the stretch, such as 3, got nothing",
    )
  })
  it('auxiliaries beyond the pack, and says how much it can give', () => {
    expect(() => driveCycle({ ...whole, auxiliaries: '90 kW' })).toThrow(
      /driveCycle: the pack cannot give 90 kW: at most \d\d\.\d+ kW at 100 % state of charge/,
    )
  })
  it('a car that never moves, and says what holds it', () => {
    const stands = readCycle({ log: 't (s),v (km/h)\n0,0\n10,0' })
    expect(() => driveCycle({ ...least, cycle: stands })).toThrow('driveCycle: the car never moves')
    const cold = {
      ...module,
      temperatures: {
        charge: { minimum: '0 °C', maximum: '45 °C' },
        discharge: { minimum: '-20 °C', maximum: '60 °C' },
      },
    } as const
    const frozen = {
      ...whole,
      pack: { module: cold, series: 4, parallel: 2 },
      cellTemperature: '-30 °C',
      auxiliaries: '0 W',
      motor: { ...motor, loss: { lossPerTorqueSquared: '0.2 W/(N·m)²' } },
    } as const
    expect(() => driveCycle(frozen)).toThrow(
      'driveCycle: the car never moves: what holds it is the current of the pack',
    )
  })
})
