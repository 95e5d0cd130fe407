/** What a car can hold and where its gears end, against published examples, closed forms and facts of the trade. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bestGear,
  climbingAbility,
  shiftSpeeds,
  topSpeed,
  tractionCurves,
  tractionLimitRear,
} from '../../src/drivetrain/index.js'
import { packAt } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { car, drive, gearbox, gripping, motor, pack } from './sheet.js'

/** A car without resistance but the air's, on one gear of 1 m radius: power and torque stand out. */
const bare = {
  car: { mass: '1000 kg', rollingResistance: 0, dragArea: '1 m²', rollingRadius: '1 m' },
  motor: { peakTorque: '2000 N·m', peakPower: '40 kW', maximumSpeed: '2000 rpm' },
  gearbox: { gears: [1], finalDrive: 1, efficiency: 1 },
} as const
const radius = (3.05 * (0.3302 + 2 * 0.145 * 0.8)) / (2 * Math.PI)

describe('tractionCurves', () => {
  const result = tractionCurves({ ...gripping(0.9) })

  it('is torque at low speed and power at high speed, less what the driveline loses', () => {
    const third = result.curves[2]
    const at = (speed: number) => third?.points.find((point) => Math.round(point.speed.in('km/h')) === speed)
    expect(at(20)?.force.si).toBeCloseTo((120 * 1.45 * 4.375 * 0.94) / radius, 6)
    expect(at(20)?.limitedBy).toBe('peak torque of the motor')
    expect(at(100)?.force.si).toBeCloseTo((50_000 * 0.94) / (100 / 3.6), 6)
    expect(at(100)?.limitedBy).toBe('peak power of the motor')
    // 8000 rpm in third are 129.7 km/h.
    expect(at(125)?.force.si).toBeCloseTo((50_000 * 0.94) / (125 / 3.6), 6)
    expect(at(130)).toBeUndefined()
  })

  // Common practice, no source: in first gear such a light car spins its wheels on dry asphalt, and in third it does not.
  // The car, its motor and its gears are those that all tests here share, made as plausible for an old light car and not
  // for this test; a friction of 0.8 to 1 is that of dry asphalt (common practice, no source). The other ranges are some
  // tenth about the shared car, and were drawn knowing where the statement ends: with the shared car third spins below a
  // friction of 0.61, and at 0.9 first grips below 74 N·m and third spins above 194 N·m. Lighter cars with the centre of
  // gravity further forward, less friction and more torque than here can spin in third.
  it('spins the wheels of a light car in first gear on dry asphalt, and not in third', () => {
    fc.assert(
      fc.property(
        between(0.8, 1),
        between(700, 850),
        between(0.9, 1.1),
        between(0.45, 0.55),
        (friction, mass, aft, up) => {
          const centreOfGravity = { aft: quantity('length', aft, 'm'), up: quantity('length', up, 'm') }
          const { curves } = tractionCurves({
            ...drive,
            car: { ...car, mass: quantity('mass', mass, 'kg'), centreOfGravity, friction },
            grades: [],
            speeds: [],
          })
          expect(curves[0]?.spins).toBe(true)
          expect(curves[2]?.spins).toBe(false)
        },
      ),
    )
  })

  // Second is under the grip by 2 % alone: that it does not spin is arithmetic on these figures, and no fact of the trade.
  it('holds a start to the grip of the driven axle', () => {
    const limit = tractionLimitRear({ friction: 0.9, mass: '760 kg', aft: '1 m', height: '0.5 m', wheelbase: '2.03 m' })
    expect(result.grip?.si).toBeCloseTo(limit.si, 9)
    expect(result.curves.map(({ spins }) => spins)).toEqual([true, false, false, false])
    expect(result.curves[0]?.points[0]?.force.si).toBeCloseTo(limit.si, 9)
    expect(result.curves[0]?.points[0]?.limitedBy).toBe('grip of the driven wheels')
    expect(result.curves[0]?.start.si).toBeCloseTo((120 * 3.8 * 4.375 * 0.94) / radius, 6)
  })

  it('crosses the road load where topSpeed says', () => {
    for (const grade of [0, 0.1, 0.2]) {
      const { gears } = topSpeed({ ...gripping(0.9), grade })
      result.curves.forEach(({ gear, crossings }, i) => {
        const crossing = crossings.find((each) => each.grade.si === grade)
        expect(gears[i]?.gear).toBe(gear)
        expect(crossing?.speed?.si).toBe(gears[i]?.speed?.si)
        expect(crossing?.limitedBy).toBe(gears[i]?.limitedBy)
      })
    }
  })

  it('draws the road load of a steeper hill above that of the level by the force of the grade', () => {
    const [level, tenth] = result.roadLoads
    const cosine = Math.cos(Math.atan(0.1))
    tenth?.points.forEach(({ force }, i) => {
      const rise = 760 * 9.80665 * (0.1 * cosine + 0.013 * (cosine - 1))
      expect(force.si - (level?.points[i]?.force.si as number)).toBeCloseTo(rise, 8)
    })
  })

  it('is held by what the pack gives, at the voltage that it leaves', () => {
    const held = tractionCurves({ ...drive, pack, controller: { batteryCurrent: '150 A' }, stateOfCharge: 0.1 })
    const point = held.curves[2]?.points.find(({ speed }) => Math.round(speed.in('km/h')) === 100)
    expect(point?.limitedBy).toBe('battery current of the controller')
    const { power } = packAt({ pack, stateOfCharge: 0.1, current: '150 A' })
    expect((point?.force.si as number) * (100 / 3.6)).toBeCloseTo(power.si * 0.88 * 0.94, 4)
  })

  it('sags with the pack: torque, current and voltage belong together', () => {
    const rated = { ...drive, motor: { ...motor, ratedVoltage: '190 V' } } as const
    const { curves } = tractionCurves({ ...rated, pack, stateOfCharge: 0.3 })
    const point = curves[2]?.points.find(({ speed }) => Math.round(speed.in('km/h')) === 90)
    expect(point?.limitedBy).toBe('voltage that the pack leaves')
    const shaft = ((point?.force.si as number) * (90 / 3.6)) / 0.94
    const { terminal } = packAt({ pack, stateOfCharge: 0.3, power: quantity('power', shaft / 0.88, 'W') })
    // In the range of constant power the power is that of the voltage.
    expect(shaft / 50_000).toBeCloseTo(terminal.si / 190, 9)
  })

  it('shows how it comes about', () => {
    const text = explain(() => tractionCurves({ ...gripping(0.9), grades: [0.12] })).toText()
    expect(text).toContain('Pull from standstill in third')
    expect(text).toContain('Road load on a grade of 12 %')
  })

  it('refuses a controller or a state of charge without a pack, and a pack without losses of the motor', () => {
    expect(() => tractionCurves({ ...drive, stateOfCharge: 0.5, controller: { batteryCurrent: '200 A' } })).toThrow(
      /controller\.batteryCurrent: expected a pack beside it, or nothing, got no pack[\s\S]*stateOfCharge: expected a pack/,
    )
    const { efficiency: _, ...lossless } = motor
    expect(() => tractionCurves({ ...drive, motor: lossless, pack })).toThrow(
      /motor\.efficiency and motor\.loss: expected one of them/,
    )
  })
})

describe('topSpeed', () => {
  it('says by a check where no speed is held all day', () => {
    const hill = { ...drive, motor: { ...motor, continuousTorque: '9 N·m' }, grade: 0.3 } as const
    const { continuous, checks } = topSpeed(hill)
    expect(continuous).toBeUndefined()
    const [allDay] = checks
    expect(`${allDay?.name}: ${allDay?.verdict}`).toBe('Pull that the motor holds all day: fail')
    // 760 kg × g × (sin + 0.013 cos) of atan 0.3.
    const angle = Math.atan(0.3)
    expect(allDay?.limit?.si).toBeCloseTo(760 * 9.80665 * (Math.sin(angle) + 0.013 * Math.cos(angle)), 8)
    expect(topSpeed(drive).checks).toEqual([])
  })

  it('of a car that only the air resists is that of its power', () => {
    fc.assert(
      fc.property(between(5, 200), between(0.2, 2), (kilowatts, area) => {
        const dragArea = quantity('area', area, 'm²')
        const peakPower = quantity('power', kilowatts, 'kW')
        const { speed, power } = topSpeed({
          ...bare,
          car: { ...bare.car, dragArea },
          motor: { ...bare.motor, peakPower, peakTorque: '50 kN·m' as never },
        })
        // P = ½ ρ A v³ with the air of 20 °C at sea level.
        const density = 101_325 / (287.05287 * 293.15)
        expect(speed.si).toBeCloseTo(Math.cbrt((2000 * kilowatts) / (density * area)), 8)
        expect(power.in('kW')).toBeCloseTo(kilowatts, 6)
      }),
    )
  })

  it('ends where the motor turns no faster, or where its power does', () => {
    expect(topSpeed(drive)).toMatchObject({ gear: 'fourth', limitedBy: 'peak power of the motor' })
    const { gears } = topSpeed(drive)
    expect(gears.slice(0, 3).map(({ limitedBy }) => limitedBy)).toEqual(Array(3).fill('highest speed of the motor'))
    expect(gears[2]?.speed?.si).toBeCloseTo((((8000 * Math.PI) / 30) * radius) / (1.45 * 4.375), 9)
  })

  it('all day is lower, and is not told without figures for it', () => {
    const { continuous, speed } = topSpeed(drive)
    expect(continuous?.limitedBy).toBe('continuous power of the motor')
    const v = continuous?.speed.si as number
    const density = 101_325 / (287.05287 * 293.15)
    expect((0.5 * density * 0.7 * v ** 2 + 760 * 9.80665 * 0.013) * v).toBeCloseTo(22_000 * 0.94, 4)
    expect(v).toBeLessThan(speed.si)
    const { continuousPower: _, continuousTorque: __, ...short } = motor
    expect(topSpeed({ ...drive, motor: short })).not.toHaveProperty('continuous')
  })

  it('falls with a head wind, a hill, and a pack that gives less', () => {
    const { speed } = topSpeed(drive)
    expect(topSpeed({ ...drive, air: { headwind: '30 km/h' } }).speed.si).toBeLessThan(speed.si)
    expect(topSpeed({ ...drive, grade: 0.05 }).speed.si).toBeLessThan(speed.si)
    const low = topSpeed({ ...drive, pack, stateOfCharge: 0.1, controller: { batteryCurrent: '120 A' } })
    expect(low.speed.si).toBeLessThan(speed.si)
    expect(low.limitedBy).toBe('battery current of the controller')
  })

  it('on a grade that the car does not climb says what is missing', () => {
    expect(() => topSpeed({ ...gripping(0.5), grade: 0.4 })).toThrow(
      /^topSpeed: the car does not climb a grade of 40 %: it needs 28\d\d N and pulls 19\d\d N in first, held by the grip of the driven wheels$/,
    )
  })
})

describe('climbingAbility', () => {
  it('is that of a course exercise', () => {
    // 200 N·m, ratio over radius 15 /m, 1262 kg: 25 % (read; 9.8 m/s², rolling resistance left out).
    const { start } = climbingAbility({
      car: { mass: '1262 kg', rollingResistance: 0, dragArea: '0.5 m²', rollingRadius: '0.3 m' },
      motor: { peakTorque: '200 N·m', peakPower: '118.1 kW', maximumSpeed: '9000 rpm' },
      gearbox: { gears: [1], finalDrive: 4.5, efficiency: 1 },
    })
    expect(Math.abs(start.grade.si - 0.25)).toBeLessThan(0.0005)
  })

  it('at 70 mph is that of a textbook', () => {
    // Mannering et al., Principles of Highway Engineering, example 2.2 (read): 255 lbf less 86.22 and 33.97 of 2000 lb,
    // 6.74 % with sine and tangent alike. Rolling resistance grows with the speed: 0.01 (1 + v / 147 ft/s).
    const { climbs } = climbingAbility({
      car: {
        mass: '2000 lb',
        rollingRadius: '1 ft',
        roadLoad: {
          constant: '20 lbf',
          linear: quantity('forcePerSpeed', (20 / 147) * (4.4482216152605 / 0.3048), 'N/(m/s)'),
          quadratic: quantity('forcePerSpeedSquared', 0.5 * 1.05395 * 0.4 * 20 * 0.09290304, 'N/(m/s)²'),
          airDensity: '1.05395 kg/m³',
        },
      },
      motor: { peakTorque: '255 lbf·ft', peakPower: '100 kW', maximumSpeed: '2000 rpm' },
      gearbox: { gears: [1], finalDrive: 1, efficiency: 1 },
      // At 20 °C, the height of the air of 0.002045 slug/ft³.
      air: { altitude: '1109 m' },
      speeds: ['70 mph'],
    })
    expect(Math.abs((climbs[0]?.grade.si as number) - 0.0674)).toBeLessThan(0.0005)
  })

  it('is the grade on which topSpeed still holds the speed', () => {
    const { climbs } = climbingAbility({ ...gripping(0.9), pack, speeds: ['30 km/h', '60 km/h', '100 km/h'] })
    for (const { speed, grade } of climbs) {
      const held = (share: number) => topSpeed({ ...gripping(0.9), pack, grade: grade.si * share }).speed.si
      expect(held(0.9999)).toBeGreaterThanOrEqual(speed.si)
      expect(held(1.0001)).toBeLessThan(speed.si)
    }
  })

  it('is held by the grip where the motor could do more', () => {
    const { start, gears, checks } = climbingAbility({ ...gripping(0.9), grade: 0.3 })
    expect(start.limitedBy).toBe('grip of the driven wheels')
    // Level load of the rear axle, with what moves on to it: 0.9 · 1 / (2.03 − 0.9 · 0.5), less the rolling coefficient.
    expect(start.grade.si).toBeCloseTo(0.9 / (2.03 - 0.45) - 0.013, 10)
    // On such a slope the wheels hold less than on the level, and second gear spins them too.
    expect(gears.map(({ limitedBy }) => limitedBy).slice(2)).toEqual(Array(2).fill('peak torque of the motor'))
    expect(checks[0]?.verdict).toBe('pass')
    expect(start.continuous?.grade.si).toBeLessThan(start.grade.si)
  })

  it('refuses a speed that no gear does, and a pull that lifts the car', () => {
    expect(() => climbingAbility({ ...drive, speeds: ['200 km/h'] })).toThrow(
      'climbingAbility: no gear does 200 km/h: at most 188.1 km/h in fourth, at the highest speed of the motor',
    )
    expect(() => climbingAbility({ ...drive, motor: { ...motor, peakTorque: '400 N·m' } })).toThrow(
      /is more than the weight of the car: only grip bounds the grade, and no car\.friction is given/,
    )
  })
})

describe('shiftSpeeds', () => {
  it('shifts at the base speed of the next gear where both have one efficiency', () => {
    const { shifts } = shiftSpeeds(drive)
    const base = 50_000 / 120
    shifts.forEach(({ speed, after, reason }, i) => {
      const ratio = ([2.3, 1.45, 1][i] as number) * 4.375
      expect(speed.si).toBeCloseTo((base * radius) / ratio, 6)
      expect(after.si).toBeCloseTo(base, 6)
      expect(reason).toMatch(/pulls as hard$/)
    })
  })
  it('holds a gear to the highest speed of the motor where the next never pulls as hard', () => {
    const { shifts } = shiftSpeeds({
      ...drive,
      gearbox: { ...gearbox, efficiency: { first: 0.96, second: 0.95, third: 0.94, fourth: 0.93 } },
    })
    expect(shifts.map(({ reason }) => reason)).toEqual(Array(3).fill('highest speed of the motor'))
    expect(shifts.map(({ before }) => before.in('rpm'))).toEqual([8000, 8000, 8000].map((each) => expect.closeTo(each)))
  })
  it('is where the falling curve of the motor crosses in two gears', () => {
    // Torque falls in a straight line from 100 N·m to nothing at 6000 rpm: i (1 − i v / w) is alike in gears 2 and 1 at
    // v = w / (2 + 1), two thirds of the highest speed of the lower gear.
    const { shifts } = shiftSpeeds({
      ...drive,
      motor: {
        curve: [
          ['0 rpm', '100 N·m'],
          ['6000 rpm', '0 N·m'],
        ],
        maximumSpeed: '6000 rpm',
      },
      gearbox: { ...gearbox, gears: [2, 1] },
    })
    expect(shifts[0]?.before.in('rpm')).toBeCloseTo(4000, 4)
    expect(shifts[0]?.after.in('rpm')).toBeCloseTo(2000, 4)
  })
})

describe('bestGear', () => {
  it('is refused where the tyres do not hold what a hill asks', () => {
    expect(() => bestGear({ ...gripping(0.2), speed: '30 km/h', grade: 0.15 })).toThrow(
      'no gear holds 30 km/h: first, grip of the driven wheels; second, grip of the driven wheels',
    )
  })

  const loss = { lossPerTorqueSquared: '0.3 W/(N·m)²', lossPerSpeed: '0.4 W/(rad/s)', constant: '80 W' } as const

  const { efficiency: _, ...rest } = motor
  const lossy = { ...drive, motor: { ...rest, loss } } as const

  it('keeps the power: what goes in is what the road takes and what is lost', () => {
    const { rows } = bestGear({ ...lossy, speed: '60 km/h', grade: 0.03 })
    const density = 101_325 / (287.05287 * 293.15)
    const slope = Math.atan(0.03)
    const v = 60 / 3.6
    const force = 760 * 9.80665 * (0.013 * Math.cos(slope) + Math.sin(slope)) + 0.5 * density * 0.7 * v ** 2
    for (const row of rows) {
      expect(row.electricalPower.si - row.loss.si).toBeCloseTo(force * v, 6)
      const shaft = row.motorTorque.si * row.motorSpeed.si
      const heat = 0.3 * row.motorTorque.si ** 2 + 0.4 * row.motorSpeed.si + 80
      expect(row.loss.si).toBeCloseTo(shaft * 0.06 + heat, 6)
    }
  })
  it('turns slowly on the level, and gears down on a hill', () => {
    expect(bestGear({ ...lossy, speed: '40 km/h' }).gear).toBe('fourth')
    // By hand on the hill: 495 W in the motor in first gear, 637 W in second, for 1254 N.
    expect(bestGear({ ...lossy, speed: '40 km/h', grade: 0.15 }).gear).toBe('first')
  })
  it('tells why a gear cannot do it', () => {
    const { rows } = bestGear({ ...lossy, speed: '90 km/h', grade: 0.1 })
    expect(rows.map(({ refused }) => refused)).toEqual([
      'highest speed of the motor',
      'highest speed of the motor',
      undefined,
      undefined,
    ])
  })
  it('takes the highest gear where one efficiency stands for all, and loses also while it holds the car back', () => {
    expect(bestGear({ ...drive, speed: '50 km/h' }).gear).toBe('fourth')
    const { rows } = bestGear({ ...lossy, speed: '50 km/h', grade: -0.1 })
    for (const { loss: lost, motorTorque } of rows) {
      expect(motorTorque.si).toBeLessThan(0)
      expect(lost.si).toBeGreaterThan(0)
    }
  })
  it('refuses a speed that no gear holds, with the reasons', () => {
    expect(() => bestGear({ ...lossy, speed: '150 km/h', grade: 0.1 })).toThrow(
      'bestGear: no gear holds 150 km/h: first, highest speed of the motor; second, highest speed of the motor; third, highest speed of the motor; fourth, peak power of the motor',
    )
  })
})
