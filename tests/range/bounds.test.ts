/** Where a drive and its range end, and that they do: the limits of pack and motor by hand, journeys and ranges of every length. */
import { describe, expect, it } from 'vitest'
import { InputError, quantity } from '../../src/quantity/index.js'
import { driveCycle, energyAtSpeed, rangeAtSpeed, readCycle } from '../../src/range/index.js'
import { least, module, whole } from './cars.js'

type Given = Parameters<typeof driveCycle>[0]

const { cycle: _, ...car } = least
const { cycle: __, ...van } = whole

const speedOf = (kmh: number) => quantity('speed', kmh, 'km/h')
const failed = ({ checks }: ReturnType<typeof driveCycle>) =>
  checks.filter(({ verdict }) => verdict === 'fail').map(({ name }) => name)

describe('a weak pack ends the range', () => {
  // Two in series: at rest 80 V + 16 V · s, 28 mΩ; the controller works from 86 V.
  const straight = {
    ...module,
    openCircuit: [
      [0, '40 V'],
      [1, '48 V'],
    ],
  } as const
  const given = {
    ...car,
    pack: { module: straight, series: 2, parallel: 1 },
    controller: { minimumVoltage: '86 V' },
  } as const
  const [floor, ohms, coulombs] = [86, 0.028, 41 * 3600]
  // 72 km/h: tyres 91.8 N, air ½ · 1.2041 kg/m³ · 0.62 m² · (20 m/s)², both efficiencies.
  const force = 780 * 9.80665 * 0.012 + 0.5 * (101325 / (287.05287 * 293.15)) * 0.62 * 20 ** 2
  const power = (force * 20) / (0.93 * 0.86)
  // At the floor I = P / U, and 80 V + 16 V · s = U + I R.
  const state = (floor + (power / floor) * ohms - 80) / 16
  /** From full to there ds/dt = −I / C: the way is v C ∫ ds / I, by the midpoint rule. */
  const way = (() => {
    const parts = 1e4
    let sum = 0
    for (let k = 0; k < parts; k++) {
      const volts = 80 + 16 * (state + ((1 - state) * (k + 0.5)) / parts)
      sum += (2 * ohms) / (volts - Math.sqrt(volts ** 2 - 4 * power * ohms))
    }
    return (20 * coulombs * (1 - state) * sum) / parts
  })()

  it.each([1, 0.1])(
    'at the state of charge where the voltage under load comes to the lowest, in steps of %f s',
    (step) => {
      // Well before it is empty.
      expect(state).toBeGreaterThan(0.4)
      const cycle = readCycle({ log: 't (s),v (km/h)\n0,72\n10,72' })
      const { range, rangeEndedBy } = driveCycle({ ...given, cycle, step: quantity('time', step, 's') })
      expect(rangeEndedBy).toBe('lowest voltage under load')
      // It is seen at the end of the step in which it comes to it, or of the one behind that: at most 2 steps of 20 m/s late;
      // and where the car is slower by a millionth of a metre per second, which is some 0.1 N of 260 N: 2 m of 22 km.
      expect(Math.abs((range?.si ?? 0) - way)).toBeLessThan(2 * step * 20 + 2)
    },
  )
  it('at a steady speed at the same', () => {
    const [found] = rangeAtSpeed({ ...given, speed: '72 km/h' }).speeds
    expect(found?.endedBy).toBe('lowest voltage under load')
    expect((found?.range?.si ?? 0) / way).toBeCloseTo(1, 3)
  })
})

describe('a car at the highest speed of its motor', () => {
  // 4500 rpm on a tyre of 0.3 m, through 5: 471.24 rad/s · 0.3 m / 5 = 28.27 m/s, 101.8 km/h.
  const fastest = (((4500 * 2 * Math.PI) / 60) * 0.3) / 5
  const slow = {
    ...car,
    car: { ...car.car, rollingRadius: '0.3 m' },
    gearbox: { gears: [5], finalDrive: 1, efficiency: 0.93 },
    motor: { peakTorque: '200 N·m', peakPower: '80 kW', maximumSpeed: '4500 rpm', efficiency: 0.86 },
  } as const

  it.each(['1 s', '0.3 s', '10 s'] as const)('holds just that, with cold brakes, in steps of %s', (step) => {
    const cycle = readCycle({ log: 't (s),v (km/h)\n0,0\n40,120\n640,120', longestGap: '1 h' })
    const { series, losses, missed } = driveCycle({ ...slow, cycle, step })
    expect(losses.brakes.si).toBe(0)
    expect(missed.map(({ limitedBy }) => limitedBy)).toEqual(['highest speed of the motor'])
    expect(missed[0]?.reached.si).toBeCloseTo(fastest, 6)
    const [steady] = energyAtSpeed({ ...slow, speed: quantity('speed', fastest, 'm/s') }).speeds
    const tail = series.filter(({ time }) => time.si > 60)
    expect(tail.length).toBeGreaterThan(50)
    for (const { speed, power } of tail) {
      expect(Math.abs(speed.si - fastest)).toBeLessThan(1e-6)
      expect(power.si / (steady?.batteryPower.si ?? 0)).toBeCloseTo(1, 6)
    }
  })
  it('cannot begin a cycle that is faster', () => {
    const cycle = readCycle({ log: 't (s),v (km/h)\n0,200\n9,150\n18,40' })
    let thrown: unknown
    try {
      driveCycle({ ...slow, cycle })
    } catch (error) {
      thrown = error
    }
    expect(thrown).toBeInstanceOf(InputError)
    expect((thrown as InputError).issues.map(({ path }) => path)).toEqual(['cycle'])
    expect((thrown as InputError).message).toContain('101.8 km/h')
  })
})

describe('a journey is driven to its end', () => {
  it('with a stop in its middle, at any speed from 20 to 120 km/h', () => {
    const wrong: number[] = []
    for (let i = 0; i <= 2000; i++) {
      const kmh = 20 + i * 0.05
      const driven = driveCycle({
        ...car,
        journey: [{ distance: '2 km', speed: speedOf(kmh), stops: 2, standing: '5 s' }],
      })
      if (Math.abs(driven.distance.si - 2000) > 1e-6 || driven.checks.length > 0) wrong.push(kmh)
    }
    expect(wrong).toEqual([])
  })
  it('in one stretch of 1 to 60 km, at any speed from 20 to 120 km/h', () => {
    const wrong: string[] = []
    for (const kilometres of [1, 2.6, 5, 10, 17, 31, 60]) {
      for (let kmh = 20; kmh <= 120; kmh += 3.8) {
        const { distance, duration } = driveCycle({
          ...car,
          journey: [{ distance: quantity('length', kilometres, 'km'), speed: speedOf(kmh) }],
        })
        // To v and back at 1 and 1.2 m/s² it takes v / 2 · (1 + 1 / 1.2) longer than at v all the way.
        const v = kmh / 3.6
        const lasts = (kilometres * 1000) / v + (v / 2) * (1 + 1 / 1.2)
        const isDriven = Math.abs(distance.si / kilometres - 1000) < 1e-6 && Math.abs(duration.si - lasts) < 1e-3
        if (!isDriven) wrong.push(`${kilometres} km at ${kmh} km/h`)
      }
    }
    expect(wrong).toEqual([])
  })
  it('up a hill on which a weak motor cannot gain the speed, however long, in steps of 10 s', () => {
    const weak = { ...van.motor, peakPower: '8 kW', continuousTorque: '10 N·m' } as const
    const wrong: number[] = []
    for (let metres = 20; metres < 760; metres += 3.7) {
      const distance = quantity('length', metres, 'm')
      const journey = [{ distance, speed: '90 km/h', grade: 0.12 }] as const
      const driven = driveCycle({ ...van, motor: weak, step: '10 s', journey })
      if (!(Math.abs(driven.distance.si - metres) < 1e-6)) wrong.push(metres)
    }
    expect(wrong).toEqual([])
  })
  it('in steps of 0.05 s, down a hill and up the next, with a stop', () => {
    const { distance } = driveCycle({
      ...car,
      step: '0.05 s',
      pace: { acceleration: '0.7039295875 m/s²', braking: '0.69905253965 m/s²' },
      journey: [
        { distance: '2198.0605697259307 m', speed: '19.505809848196805 m/s', grade: -0.03712856605648995 },
        {
          distance: '2579.014032892883 m',
          speed: '12.100652498193085 m/s',
          grade: 0.046567314416170125,
          stops: 1,
          standing: '25 s',
        },
      ],
    })
    expect(distance.si).toBeCloseTo(2198.0605697259307 + 2579.014032892883, 6)
  })
})

describe('a range', () => {
  const large = { module, series: 4, parallel: 4 } as const
  /** Four modules by four at rest, by the trapezium between the points of the curve, in joules. */
  const atRest = (() => {
    let volts = 0
    for (let i = 1; i < module.openCircuit.length; i++) {
      const [[from, low], [to, high]] = [module.openCircuit[i - 1], module.openCircuit[i]] as [
        readonly [number, string],
        readonly [number, string],
      ]
      volts += ((to - from) * (Number.parseFloat(low) + Number.parseFloat(high))) / 2
    }
    return 4 * volts * 4 * 41 * 3600
  })()

  it.each(['1 s', '0.05 s'] as const)('of a short journey ends, in steps of %s', (step) => {
    const { range, net, packHeat, distance } = driveCycle({
      ...car,
      pack: large,
      step,
      journey: [{ distance: '2.6 km', speed: '44 km/h' }],
    })
    // All that the pack has at rest, but for its heat, which grows somewhat as its voltage falls.
    const wanted = (atRest * distance.si) / (net.si + (packHeat?.si ?? 0))
    expect((range?.si ?? 0) / wanted).toBeCloseTo(1, 2)
  })
  it('of a log of 260 m is that of thousands of its kind', () => {
    const log = readCycle({ log: 't (s),v (km/h)\n0,0\n10,30\n31,30\n42,0', longestGap: '30 s' })
    expect(log.distance.in('km')).toBeCloseTo(0.2625, 9)
    const { range, rangeEndedBy, net, packHeat, distance } = driveCycle({ ...car, pack: large, cycle: log })
    const wanted = (atRest * distance.si) / (net.si + (packHeat?.si ?? 0))
    expect((range?.si ?? 0) / wanted).toBeCloseTo(1, 2)
    // Empty, the modules have at rest the lowest voltage that they may have under load: it ends a hair before.
    expect(rangeEndedBy).toBe('lowest voltage under load')
  })
  it('is none, and says so, where a round gives back what it takes', () => {
    // Full, it brakes the first descent away; every later one fills it again: 6 km down 8 % hold more than 1 km up.
    const { range, rangeEndedBy, net } = driveCycle({
      ...van,
      controller: { regeneration: 1 },
      journey: [
        { distance: '1 km', speed: '50 km/h', grade: 0.08 },
        { distance: '6 km', speed: '50 km/h', grade: -0.08 },
        { distance: '1 km', speed: '50 km/h' },
      ],
    })
    expect(net.si).toBeGreaterThan(0)
    expect(range).toBeUndefined()
    expect(rangeEndedBy).toBe('nothing: a round gives the pack back what it takes')
  })
  it('ends where a pack that held the car back from the start gives nothing any more', () => {
    const { range, rangeEndedBy, missed, consumption } = driveCycle({
      ...van,
      auxiliaries: '0 W',
      motor: { peakTorque: '110 N·m', peakPower: '60 kW', maximumSpeed: '8000 rpm', efficiency: 0.9 },
      controller: { minimumVoltage: '165 V', batteryCurrent: '90 A' },
      cycle: 'EUDC',
    })
    expect(missed[0]?.limitedBy).toBe('current of the pack')
    expect(rangeEndedBy).toBe('lowest voltage under load')
    // At rest the pack is down to 165 V, 41.25 V a module, at 5 % + 25 % · (41.25 − 40.5) / (43.4 − 40.5): 11.5 %.
    // Above, the trapezia of its curve hold 7.84 + 8.79 + 13.8 + 9.77 = 40.2 V a module: 40.2 V · 4 · 82 Ah = 13.19 kWh.
    // Its heat takes some percent of that, and the last rounds, slower, take less for a kilometre than the first.
    expect((range?.in('km') ?? 0) / (13190 / consumption.in('Wh/km'))).toBeGreaterThan(0.9)
    expect((range?.in('km') ?? 0) / (13190 / consumption.in('Wh/km'))).toBeLessThan(1.1)
  })
})

describe('an energy that may be used', () => {
  it('fails the check of a drive that takes more, and passes that of one that takes less', () => {
    const drive = (usableEnergy: Given['usableEnergy']) => driveCycle({ ...least, usableEnergy } as Given)
    // 11.03 km at some 98 Wh/km: 1.08 kWh.
    expect(failed(drive('0.2 kWh'))).toEqual(['Net energy of the drive'])
    expect(failed(drive('1.2 kWh'))).toEqual([])
    expect(drive('1.2 kWh').checks.map(({ name }) => name)).toEqual(['Net energy of the drive'])
  })
})
