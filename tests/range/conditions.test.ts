/**
 * What the road, the air, the motor and the pack do to a drive: each by a closed form or by hand, in a car so bare that
 * nothing else is left.
 */
import { describe, expect, it } from 'vitest'
import { quantity } from '../../src/quantity/index.js'
import { driveCycle, energyAtSpeed, readCycle } from '../../src/range/index.js'
import { flat, least } from './cars.js'

type Given = Parameters<typeof driveCycle>[0]

/** A car of a tonne without resistance, with one gear of 5 on a tyre of 0.3 m: a newton at the road is 0.06 N·m. */
const bare = {
  car: { mass: '1000 kg', rotatingFactor: 1, rollingResistance: 0, dragArea: '0 m²', rollingRadius: '0.3 m' },
  gearbox: { gears: [5], finalDrive: 1, efficiency: 1 },
} as const
const strong = { peakTorque: '300 N·m', peakPower: '200 kW', maximumSpeed: '9000 rpm', efficiency: 0.9 } as const

/** Four in series and two in parallel have 176 V at any state of charge and 28 mΩ. */
const pack = { module: flat, series: 4, parallel: 2 } as const
const [volts, ohms] = [176, 0.028]

/** The current that a power (W) draws from that pack: of V I − R I² = P the smaller root. */
const currentAt = (power: number) => (volts - Math.sqrt(volts ** 2 - 4 * power * ohms)) / (2 * ohms)

/** ρ = p / (R T), R 287.05287 J/(kg·K), p by ISO 2533: 101.325 kPa (1 − 0.0065 h / 288.15)^5.25588. */
const densityAt = (celsius: number, metres = 0) =>
  (101325 * (1 - (0.0065 * metres) / 288.15) ** 5.25588) / (287.05287 * (celsius + 273.15))

/** A check that is met exactly is 'near': a pass, with less than 5 % left. */
const verdictOf = ({ checks }: ReturnType<typeof driveCycle>, name: string) =>
  checks.find((each) => each.name === name)?.verdict

describe('a head wind', () => {
  // Drag coefficient 0.3 on 3 m² at 1.25 kg/m³, 120 km/h against 10 km/h: 733.5 N and 24 450 W, from a course exercise.
  const exercise = {
    car: { mass: '780 kg', rotatingFactor: 1, rollingResistance: 0, dragArea: '0.9 m²' },
    gearbox: { efficiency: 1 },
    motor: { efficiency: 1 },
    // 101 325 Pa / (287.05287 J/(kg·K) · 1.25 kg/m³).
    air: { temperature: quantity('temperature', 101325 / (287.05287 * 1.25), 'K'), headwind: '10 km/h' },
  } as const
  it('adds to the speed in the force, and not to that in the power', () => {
    const [found] = energyAtSpeed({ ...exercise, speed: '120 km/h' }).speeds
    expect(found?.batteryPower.in('W')).toBeCloseTo(24450, -1)
    expect(found?.shares.air.in('J/m')).toBeCloseTo(733.5, 1)
  })
  it('does so at the faster end of a step', () => {
    // From 20 to 30 m/s in 10 s: at the end 780 N and 0.5 · 1.25 · 0.9 · (30 + 10 / 3.6)² = 604.34 N, times 30 m/s.
    const cycle = readCycle({ log: 't (s),v (m/s)\n0,20\n10,30' })
    const force = 780 + 0.5 * 1.25 * 0.9 * (30 + 10 / 3.6) ** 2
    expect(driveCycle({ ...exercise, cycle }).peakPower.si / (force * 30)).toBeCloseTo(1, 9)
  })
})

describe('a stretch has its own', () => {
  /** The steady steps of two stretches of 2 km at 72 km/h, in their middles. */
  const middles = (own: object, other: object = {}, air: object = {}) => {
    const stretch = { distance: '2 km', speed: '72 km/h' } as const
    const journey = [
      { ...stretch, ...own },
      { ...stretch, ...other },
    ]
    const { series } = driveCycle({ ...least, cycle: undefined, auxiliaries: '100 W', air, journey } as Given)
    return [1000, 3000].map((metres) => {
      const step = series.find(({ distance }) => distance.si >= metres)
      expect(step?.speed.si).toBeCloseTo(20, 9)
      return step?.power.si ?? Number.NaN
    }) as [number, number]
  }
  /** At 20 m/s, in 780 kg · g · 0.012 = 91.79 N and air. */
  const powerIn = (density: number, headwind = 0, auxiliaries = 100) =>
    ((780 * 9.80665 * 0.012 + 0.5 * density * 0.62 * (20 + headwind) ** 2) * 20) / (0.93 * 0.86) + auxiliaries

  it.each<[string, object, number]>([
    ['altitude', { altitude: '1500 m' }, powerIn(densityAt(20, 1500))],
    ['head wind', { headwind: '5 m/s' }, powerIn(densityAt(20), 5)],
    ['temperature', { temperature: '-10 °C' }, powerIn(densityAt(-10))],
    ['auxiliaries', { auxiliaries: '900 W' }, powerIn(densityAt(20), 0, 900)],
  ])('%s, first or last', (_, own, wanted) => {
    const plain = powerIn(densityAt(20))
    expect(Math.abs(wanted / plain - 1)).toBeGreaterThan(0.05)
    for (const [found, other] of [middles(own), middles({}, own).reverse() as [number, number]]) {
      expect(found / wanted).toBeCloseTo(1, 6)
      expect(other / plain).toBeCloseTo(1, 9)
    }
  })
  it('air, before that of the whole drive', () => {
    const air = { altitude: '1000 m', headwind: '-3 m/s', temperature: '30 °C' }
    const own = { altitude: '0 m', headwind: '0 m/s', temperature: '15 °C' }
    const [inOwn, inAll] = middles(own, {}, air)
    // ISO 2533 has 1.2250 kg/m³ at sea level.
    expect(inOwn / powerIn(1.225)).toBeCloseTo(1, 6)
    expect(inAll / powerIn(densityAt(30, 1000), -3)).toBeCloseTo(1, 6)
  })
})

describe('the motor', () => {
  it.each([
    ['torque', 10, 50 * ((10 * 5) / 0.3)],
    ['power', 30, 20e3],
  ] as const)('brakes with no more than its %s', (_, metresPerSecond, shaft) => {
    // 20 % down, a tonne gives 1923 N: 19 kW at 10 m/s, 58 kW at 30 m/s. 400 rad/s, 24 m/s, part torque from power.
    const { series } = driveCycle({
      ...bare,
      motor: { peakTorque: '50 N·m', peakPower: '20 kW', maximumSpeed: '9000 rpm', efficiency: 0.9 },
      controller: { regeneration: 1 },
      journey: [{ distance: '3 km', speed: quantity('speed', metresPerSecond, 'm/s'), grade: -0.2 }],
    })
    const step = series.find(({ distance }) => distance.si >= 1500)
    const hill = 1000 * 9.80665 * Math.sin(Math.atan(0.2)) * metresPerSecond
    expect(step?.power.si).toBeCloseTo(-shaft * 0.9, 6)
    expect(step?.shares.brakes.si).toBeCloseTo(hill - shaft, 6)
  })
  it('has the power that the voltage of the sagging pack leaves it', () => {
    // P = 40 kW · V / 200 V at the shaft and V I = P / 0.9 at the terminals: I = 40 kW / (200 V · 0.9) at any voltage.
    const current = 40e3 / (200 * 0.9)
    const { series } = driveCycle({
      ...bare,
      motor: { ...strong, peakPower: '40 kW', ratedVoltage: '200 V' },
      pack,
      cycle: readCycle({ log: 't (s),v (m/s)\n0,0\n10,90\n20,90' }),
    })
    const step = series.at(-1)
    expect(step?.current?.si).toBeCloseTo(current, 6)
    expect(step?.voltage?.si).toBeCloseTo(volts - current * ohms, 6)
  })
  it('turns in the higher of two gears that draw the same', () => {
    // By one efficiency and without inertia every gear does; ratios by powers of two keep the last digit the same.
    const { series } = driveCycle({
      ...bare,
      gearbox: { ...bare.gearbox, gears: { first: 4, second: 2, third: 1 } },
      motor: strong,
      cycle: readCycle({ log: 't (s),v (m/s)\n0,10\n10,10' }),
    })
    expect(new Set(series.map(({ gear }) => gear))).toEqual(new Set(['third']))
  })
  it('remembers its torque, and is held to what it holds all day', () => {
    // 1 m/s² for 10 s takes 1000 N, 60 N·m; 0.5 m/s² for 20 s 30 N·m. The mean of the squares is 1800; from there on
    // 3600 for 10 s through 300 s.
    const cycle = readCycle({ log: 't (s),v (m/s)\n0,0\n10,10\n30,20', longestGap: '20 s' })
    const load = (motor: object) => {
      const { checks } = driveCycle({ ...bare, motor: { ...strong, ...motor }, cycle })
      return checks.find(({ id }) => id === 'motor.load')
    }
    const worst = (seconds: number) => Math.sqrt(3600 - 1800 * Math.exp(-10 / seconds))
    expect(load({ continuousTorque: '42 N·m' })?.actual?.si).toBeCloseTo(worst(300) / 42, 9)
    expect(load({ continuousTorque: '42 N·m' })?.verdict).toBe('fail')
    expect(load({ continuousTorque: '44 N·m' })?.verdict).toBe('near')
    expect(load({ continuousTorque: '44 N·m', timeConstant: '20 s' })?.actual?.si).toBeCloseTo(worst(20) / 44, 9)
    expect(load({})?.verdict).toBe('unknown')
  })
  it('warms as fast as its short-time rating says', () => {
    // 5 min of 1.8782 times the continuous load: t/τ = 1/3 (Subrahmanyam, Electric Drives, ch. 5, short-time duty, recomputed).
    const rated = { ...strong, peakTorque: '187.82 N·m', continuousTorque: '100 N·m', peakTime: '5 min' } as const
    const cycle = readCycle({ log: 't (s),v (m/s)\n0,0\n10,10\n30,20', longestGap: '20 s' })
    const { assumptions } = driveCycle({ ...bare, motor: rated, cycle })
    expect(assumptions.find(({ id }) => id === 'motor.memory')?.text).toContain('a time constant of 15 min')
  })
})

describe('a pack that is charged downhill', () => {
  /** 1 km down 20 % at 72 km/h: 780 kg give 1500 N, less 92 N and 149 N, 25 kW at the wheels and 20 kW behind them. */
  const down = (given: Partial<Given>) =>
    driveCycle({
      ...least,
      cycle: undefined,
      pack,
      controller: { regeneration: 1 },
      journey: [{ distance: '1 km', speed: '72 km/h', grade: -0.2 }],
      ...given,
    } as Given)

  it.each([0, 900])('takes what its highest voltage lets in, whatever is on: %d W', (watts) => {
    // (178 V − 176 V) / 28 mΩ = 71.4 A: 12.7 kW at the terminals.
    const capped = { ...flat, maximumVoltage: '44.5 V', chargeCurrent: '400 A' } as const
    const { series } = down({
      pack: { ...pack, module: capped },
      stateOfCharge: 0.5,
      auxiliaries: quantity('power', watts, 'W'),
    })
    const step = series.find(({ distance }) => distance.si >= 500)
    expect(step?.voltage?.si).toBeCloseTo(178, 9)
    expect(step?.current?.si).toBeCloseTo(-2 / ohms, 6)
    expect(step?.power.si).toBeCloseTo((-178 * 2) / ohms, 4)
  })
  it('takes nothing when it is full: the motor then feeds what is on, and no more', () => {
    const { drawn, regenerated, losses, duration, stateOfCharge } = down({ auxiliaries: '150 W' })
    expect(drawn.si).toBeLessThan(0.1)
    expect(regenerated.si).toBeLessThan(0.1)
    expect(losses.auxiliaries.si / (150 * duration.si)).toBeCloseTo(1, 9)
    expect(stateOfCharge?.si).toBeCloseTo(1, 9)
    // All but that goes into the brakes: 150 W at the terminals are 150 W / (0.93 · 0.86) at the wheels.
    const wheels = 780 * 9.80665 * Math.sin(Math.atan(0.2)) * 1000 - losses.air.si - losses.tyres.si
    expect(losses.brakes.si / (wheels - (150 * duration.si) / (0.93 * 0.86))).toBeCloseTo(1, 6)
  })
  it.each(['10 s', '1 s', '0.1 s'] as const)('never gets beyond full, in steps of %s', (step) => {
    const { series } = down({
      step,
      journey: [
        { distance: '500 m', speed: '72 km/h' },
        { distance: '3 km', speed: '72 km/h', grade: -0.2 },
      ],
    })
    const most = Math.max(...series.map(({ stateOfCharge }) => stateOfCharge?.si ?? Number.NaN))
    expect(most).toBeLessThanOrEqual(1 + 1e-12)
    expect(series.at(-1)?.stateOfCharge?.si).toBeCloseTo(1, 9)
  })
})

describe('the most that a drive asks', () => {
  // From a stand to 20 m/s in 10 s, on at 5 m/s: at 20 m/s 2 m/s² · 780 kg and 3 % for what turns, tyres and air.
  const cycle = readCycle({ log: 't (s),v (m/s)\n0,0\n10,20\n20,5\n30,5' })
  const force = 1.03 * 780 * 2 + 780 * 9.80665 * 0.012 + 0.5 * densityAt(20) * 0.62 * 20 ** 2
  const most = (force * 20) / (0.93 * 0.86) + 200
  const drive = (given: Partial<Given>) =>
    driveCycle({ ...least, cycle, pack, auxiliaries: '200 W', ...given } as Given)

  it.each(['10 s', '1 s', '0.1 s'] as const)('is that of the faster end, in steps of %s', (step) => {
    const { peakPower, peakCurrent, lowestVoltage } = drive({ step })
    expect(peakPower.si / most).toBeCloseTo(1, 9)
    expect((peakCurrent?.si ?? 0) / currentAt(most)).toBeCloseTo(1, 9)
    // The lowest, not the last: at 5 m/s the pack gives next to nothing.
    expect((lowestVoltage?.si ?? 0) / (volts - currentAt(most) * ohms)).toBeCloseTo(1, 9)
  })
  it('goes back into the pack at the faster end of a braking, and not at all where nothing is taken back', () => {
    const { peakChargeCurrent, currents = [] } = drive({ step: '0.1 s', controller: { regeneration: '40 %' } })
    const back = Math.max(...currents.map(([current]) => -current.si))
    expect(back).toBeGreaterThan(1)
    expect((peakChargeCurrent?.si ?? 0) / back).toBeGreaterThanOrEqual(1)
    expect((peakChargeCurrent?.si ?? 0) / back).toBeLessThan(1.02)
    expect(drive({ step: '0.1 s' }).peakChargeCurrent?.si).toBe(0)
  })
  it.each(['10 s', '1 s', '0.1 s'] as const)('is within what the controller draws, in steps of %s', (step) => {
    const held = drive({ step, controller: { batteryCurrent: '120 A' } })
    expect(held.missed.map(({ limitedBy }) => limitedBy)).toContain('current of the pack')
    expect(held.peakCurrent?.si).toBeCloseTo(120, 9)
    expect(held.lowestVoltage?.si).toBeCloseTo(volts - 120 * ohms, 9)
    expect(verdictOf(held, 'Peak current')).toBe('near')
  })
  it.each(['10 s', '1 s', '0.1 s'] as const)('is within the lowest voltage, in steps of %s', (step) => {
    // (176 V − 173 V) / 28 mΩ = 107.1 A.
    const held = drive({ step, controller: { minimumVoltage: '173 V' } })
    expect(held.missed.map(({ limitedBy }) => limitedBy)).toContain('lowest voltage under load')
    expect(held.lowestVoltage?.si).toBeCloseTo(173, 9)
    expect(held.peakCurrent?.si).toBeCloseTo(3 / ohms, 6)
    expect(verdictOf(held, 'Lowest voltage under load')).toBe('near')
  })
})

describe('what is missed', () => {
  it('begins where the car falls behind, and is told where it is furthest behind', () => {
    // 120 N·m are 2000 N, 2 m/s². After 10 s and 50 m 2.9 m/s² are asked up to 39 m/s at 20 s, where the car has 30 m/s.
    // It has 38 m/s at 24 s, and in the second behind it 39 m/s.
    const { missed, checks } = driveCycle({
      ...bare,
      motor: { ...strong, peakTorque: '120 N·m' },
      cycle: readCycle({ log: 't (s),v (m/s)\n0,0\n10,10\n20,39\n30,39' }),
    })
    expect(missed).toHaveLength(1)
    const [miss] = missed
    expect(miss?.limitedBy).toBe('torque of the motor')
    expect(miss?.from.si).toBeCloseTo(10, 9)
    expect(miss?.at.si).toBeCloseTo(50, 9)
    expect(miss?.asked.si).toBeCloseTo(39, 9)
    expect(miss?.reached.si).toBeCloseTo(30, 9)
    expect(miss?.until.si).toBeCloseTo(24, 9)
    expect(checks[0]?.actual?.si).toBeCloseTo(14, 9)
  })
})

describe('the standing of a cycle', () => {
  it('is where it stands, not where it creeps', () => {
    const { standing } = readCycle({ log: 't (s),v (m/s)\n0,0\n5,0\n10,0.4\n15,0.4\n20,0\n23,0' })
    expect(standing.si).toBe(8)
  })
})
