import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  centreOfGravityAft,
  centreOfGravityHeight,
  crossShare,
  lateralTransfer,
  longitudinalTransfer,
  parallelAxis,
  raisedAngle,
  rateInSeries,
  rearAxleMass,
  rideFrequency,
  rideHeightChange,
  rollRate,
  springRateForFrequency,
  staticStabilityFactor,
  wheelRate,
} from '../../src/mass/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'

const kg = (value: number) => quantity('mass', value, 'kg')
const m = (value: number) => quantity('length', value, 'm')

describe('axle loads', () => {
  it('give back the place of the centre of gravity from which they came', () => {
    fc.assert(
      fc.property(between(1, 5000), between(0, 1), between(0.5, 5), (mass, share, wheelbase) => {
        const onRear = rearAxleMass({ mass: kg(mass), aft: m(share * wheelbase), wheelbase: m(wheelbase) })
        fc.pre(onRear.isAtMost(kg(mass)))
        const aft = centreOfGravityAft({ rearAxleMass: onRear, mass: kg(mass), wheelbase: m(wheelbase) })
        expect(aft.in('m')).toBeCloseTo(share * wheelbase, 10)
      }),
    )
  })
  it('of two parts are those of one part of both masses at their common centre of gravity', () => {
    fc.assert(
      fc.property(between(0, 500), between(1, 500), between(-2, 5), between(-2, 5), (one, two, here, there) => {
        const wheelbase = '2.1 m'
        const apart =
          rearAxleMass({ mass: kg(one), aft: m(here), wheelbase }).si +
          rearAxleMass({ mass: kg(two), aft: m(there), wheelbase }).si
        const aft = m((one * here + two * there) / (one + two))
        expect(rearAxleMass({ mass: kg(one + two), aft, wheelbase }).si).toBeCloseTo(apart, 8)
      }),
    )
  })
  it('of a part behind the rear axle are more than its own mass', () => {
    expect(String(rearAxleMass({ mass: '30 kg', aft: '2.5 m', wheelbase: '2 m' }))).toBe('37.5 kg')
  })
  it('of a part ahead of the front axle are less than none', () => {
    expect(String(rearAxleMass({ mass: '30 kg', aft: '-0.5 m', wheelbase: '2 m' }))).toBe('-7.5 kg')
  })
  it('refuse a rear axle that carries more than the car', () => {
    expect(() => centreOfGravityAft({ rearAxleMass: '900 kg', mass: '800 kg', wheelbase: '2 m' })).toThrow(
      /rearAxleMass \/ mass: expected at most 1.*got 1\.125/,
    )
  })
  it('refuse a mass where a length belongs, and say which', () => {
    expect(() => centreOfGravityAft({ rearAxleMass: '400 kg', mass: '800 kg', wheelbase: '2030 kg' as never })).toThrow(
      /wheelbase: expected a length such as '2\.4 m', got '2030 kg' \(kg measures a mass\)/,
    )
  })
})

describe('height of the centre of gravity', () => {
  it('is found again from the loads of a car stood on its front wheels by statics', () => {
    fc.assert(
      fc.property(
        between(300, 3000),
        between(1.5, 3.5),
        between(0.2, 0.8),
        between(0.1, 1.2),
        between(0.2, 0.4),
        between(0.05, 0.5),
        (mass, wheelbase, share, height, axleHeight, riseShare) => {
          const rise = riseShare * wheelbase
          // In the plane of the raised car: the front wheel centre is the origin, x points to the rear.
          const aft = share * wheelbase
          const level = Math.sqrt(wheelbase ** 2 - rise ** 2)
          const x = (aft * level - (height - axleHeight) * rise) / wheelbase
          const raisedFront = mass * (1 - x / level)
          fc.pre(raisedFront >= 0 && raisedFront <= mass)
          const found = centreOfGravityHeight({
            mass: kg(mass),
            wheelbase: m(wheelbase),
            levelFrontMass: kg(mass * (1 - share)),
            raisedFrontMass: kg(raisedFront),
            angle: raisedAngle({ rise: m(rise), wheelbase: m(wheelbase) }),
            axleHeight: m(axleHeight),
          })
          expect(found.in('m')).toBeCloseTo(height, 8)
        },
      ),
    )
  })
  it('is that of the wheel centres where raising the axle moves no load', () => {
    const height = centreOfGravityHeight({
      mass: '700 kg',
      wheelbase: '2 m',
      levelFrontMass: '350 kg',
      raisedFrontMass: '350 kg',
      angle: '12 °',
      axleHeight: '270 mm',
    })
    expect(String(height)).toBe('270 mm')
  })
  it('refuses an axle that was raised by the wheelbase or more', () => {
    expect(() => raisedAngle({ rise: '2.4 m', wheelbase: '2.4 m' })).toThrow(/rise \/ wheelbase: expected below 1/)
  })
  it('refuses a car that was not raised', () => {
    const readings = { mass: '700 kg', wheelbase: '2 m', levelFrontMass: '350 kg', raisedFrontMass: '352 kg' } as const
    expect(() => centreOfGravityHeight({ ...readings, angle: '0 °', axleHeight: '270 mm' })).toThrow(
      /angle: expected an angle above 0 ° and below 90 °, got '0 °'/,
    )
  })
})

describe('cross weight', () => {
  it('of the two diagonals is the whole', () => {
    const corner = between(0, 800)
    fc.assert(
      fc.property(corner, corner, corner, between(1, 800), (frontLeft, frontRight, rearLeft, rearRight) => {
        const mass = kg(frontLeft + frontRight + rearLeft + rearRight)
        const cross = crossShare({ frontRight: kg(frontRight), rearLeft: kg(rearLeft), mass })
        const other = crossShare({ frontRight: kg(frontLeft), rearLeft: kg(rearRight), mass })
        expect(cross.si + other.si).toBeCloseTo(1, 12)
      }),
    )
  })
})

describe('load transfer', () => {
  it('under braking is that under acceleration, the other way', () => {
    const car = { mass: '800 kg', height: '0.5 m', wheelbase: '2 m' } as const
    expect(longitudinalTransfer({ ...car, acceleration: '-4 m/s²' }).in('N')).toBe(-800)
    expect(longitudinalTransfer({ ...car, acceleration: '4 m/s²' }).in('N')).toBe(800)
  })
  it('takes all load off the inner wheels at the static stability factor', () => {
    fc.assert(
      fc.property(between(100, 3000), between(0.8, 2), between(0.2, 1.5), (mass, track, height) => {
        const factor = staticStabilityFactor({ track: m(track), height: m(height) })
        const acceleration = quantity('acceleration', factor.si, 'g')
        const moved = lateralTransfer({ mass: kg(mass), acceleration, height: m(height), track: m(track) })
        expect(moved.in('kgf')).toBeCloseTo(mass / 2, 8)
      }),
    )
  })
})

describe('moment of inertia', () => {
  it('of two halves, each moved from its own centre, is that of a rod twice as long', () => {
    fc.assert(
      fc.property(between(0.1, 100), between(0.1, 5), (mass, length) => {
        const about = (own: number, rod: number) => quantity('inertia', (own * rod ** 2) / 12, 'kg·m²')
        const half = parallelAxis({ inertia: about(mass, length), mass: kg(mass), distance: m(length / 2) })
        expect(half.times(2).ratioTo(about(2 * mass, 2 * length))).toBeCloseTo(1, 12)
      }),
    )
  })
})

describe('springs', () => {
  const newtonsPerMetre = (value: number) => quantity('springRate', value, 'N/m')
  it('for a frequency give that frequency', () => {
    fc.assert(
      fc.property(between(0.5, 4), between(50, 600), between(0.3, 2), (hertz, sprung, motionRatio) => {
        const frequency = quantity('frequency', hertz, 'Hz')
        const springRate = springRateForFrequency({ frequency, sprungMass: kg(sprung), motionRatio })
        const rate = wheelRate({ springRate, motionRatio })
        expect(rideFrequency({ rate, sprungMass: kg(sprung) }).in('Hz')).toBeCloseTo(hertz, 10)
      }),
    )
  })
  it('in series are as soft in either order, and two alike half as stiff as one', () => {
    fc.assert(
      fc.property(between(1e3, 1e6), between(1e3, 1e6), (one, two) => {
        const [first, second] = [newtonsPerMetre(one), newtonsPerMetre(two)]
        expect(rateInSeries({ first, second }).si).toBe(rateInSeries({ first: second, second: first }).si)
        expect(rateInSeries({ first, second: first }).ratioTo(first)).toBeCloseTo(0.5, 12)
        expect(rateInSeries({ first, second }).isAtMost(first)).toBe(true)
      }),
    )
  })
  it('give as a wheel rate the work that the spring takes', () => {
    fc.assert(
      fc.property(between(1e3, 1e6), between(0.3, 2), between(0.001, 0.1), (rate, motionRatio, travel) => {
        const atWheel = wheelRate({ springRate: newtonsPerMetre(rate), motionRatio }).si
        const workAtSpring = (rate * (motionRatio * travel) ** 2) / 2
        expect((atWheel * travel ** 2) / 2 / workAtSpring).toBeCloseTo(1, 12)
      }),
    )
  })
  it('let a car sink by the deflection from which its ride frequency follows', () => {
    // A mass that sinks by z on its springs bounces at sqrt(g / z) / 2π.
    fc.assert(
      fc.property(between(50, 600), between(5e3, 1e5), (mass, rate) => {
        const sunk = -rideHeightChange({ massChange: kg(mass), rate: newtonsPerMetre(rate) }).in('m')
        const frequency = rideFrequency({ rate: newtonsPerMetre(rate), sprungMass: kg(mass) }).in('Hz')
        expect(Math.sqrt(9.80665 / sunk) / (2 * Math.PI) / frequency).toBeCloseTo(1, 12)
      }),
    )
  })
  it('let a car rise when mass is taken out', () => {
    expect(rideHeightChange({ massChange: '-60 kg', rate: '30 N/mm' }).in('mm')).toBeCloseTo(19.61, 2)
  })
  it('hold an axle against roll with the moment of the two deflections', () => {
    const perDegree = rollRate({ rate: '20 N/mm', track: '1.2 m' }).in('N·m/°')
    const rise = 0.6 * Math.sin(Math.PI / 180)
    expect(perDegree / (2 * 20000 * rise * 0.6)).toBeCloseTo(1, 3)
  })
  it('refuse a motion ratio of zero', () => {
    expect(() => wheelRate({ springRate: '30 N/mm', motionRatio: 0 })).toThrow(
      'motionRatio: expected a ratio above 0, got 0 (Motion ratio, spring travel over wheel travel)',
    )
  })
})
