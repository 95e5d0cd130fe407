/** The envelope of a motor: figures and curve, the voltage that is left, and power in both directions. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { conversionOf, envelopeOf } from '../../src/drivetrain/motor/envelope.js'
import { type Motor, motorField, type Vehicle } from '../../src/drivetrain/vehicle.js'
import { readField } from '../../src/procedure/reading.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { said } from '../said.js'
import { motor } from './sheet.js'

const rpm = (turns: number) => (turns * Math.PI) / 30
type Given = NonNullable<Vehicle['motor']>
const read = (given: Given) => readField('test', motorField, given) as Motor
const envelope = (given: Given) => envelopeOf('test', read(given))
const conversion = (given: Given) => conversionOf('test', read(given))

const curve = [
  ['0 rpm', '120 N·m'],
  ['4000 rpm', '120 N·m'],
  ['8000 rpm', '50 N·m'],
] as const

describe('the envelope of a motor', () => {
  const { torqueAt, limitAt } = envelope(motor)
  it('is flat up to the base speed and then falls as one over the speed', () => {
    // 50 kW at 120 N·m: 3978.9 rpm.
    expect(torqueAt(0, 160, 'peak')).toBe(120)
    expect(torqueAt(rpm(3978), 160, 'peak')).toBe(120)
    expect(torqueAt(rpm(8000), 160, 'peak') * rpm(8000)).toBeCloseTo(50_000, 6)
    expect(torqueAt(rpm(8001), 160, 'peak')).toBe(0)
    expect(limitAt(rpm(1000), 160, 'peak')).toBe('peak torque of the motor')
    expect(limitAt(rpm(6000), 160, 'peak')).toBe('peak power of the motor')
    expect(limitAt(rpm(8001), 160, 'peak')).toBe('highest speed of the motor')
  })
  it('all day is lower', () => {
    expect(torqueAt(0, 160, 'continuous')).toBe(60)
    expect(torqueAt(rpm(7000), 160, 'continuous') * rpm(7000)).toBeCloseTo(22_000, 6)
    expect(limitAt(rpm(1000), 160, 'continuous')).toBe('continuous torque of the motor')
    expect(limitAt(rpm(7000), 160, 'continuous')).toBe('continuous power of the motor')
  })
  it('at three quarters of the voltage has the torque, and three quarters of base speed and power', () => {
    expect(torqueAt(rpm(2900), 120, 'peak')).toBe(120)
    expect(torqueAt(rpm(3100), 120, 'peak')).toBeLessThan(120)
    expect(torqueAt(rpm(7000), 120, 'peak') * rpm(7000)).toBeCloseTo(37_500, 6)
    expect(torqueAt(rpm(7000), 0, 'peak')).toBe(0)
  })
  it('gains nothing from more than its voltage', () => {
    expect(torqueAt(rpm(6000), 200, 'peak')).toBe(torqueAt(rpm(6000), 160, 'peak'))
  })
  it('from a curve is drawn together along the speed, with its last power kept beyond', () => {
    const drawn = envelope({ curve, maximumSpeed: '8000 rpm', ratedVoltage: '160 V' })
    expect(drawn.torqueAt(rpm(6000), 160, 'peak')).toBeCloseTo(85, 9)
    expect(drawn.torqueAt(rpm(4500), 120, 'peak')).toBeCloseTo(85, 9)
    expect(drawn.torqueAt(rpm(8000), 120, 'peak')).toBeCloseTo((50 * 6000) / 8000, 9)
    expect(drawn.limitAt(rpm(6000), 160, 'peak')).toBe('torque curve of the motor')
  })
  it('of a curve of points is that of the figures from which they are', () => {
    const points = Array.from({ length: 801 }, (_, i) => [
      quantity('angularSpeed', i * 10, 'rpm'),
      quantity('torque', torqueAt(rpm(i * 10), 160, 'peak'), 'N·m'),
    ])
    const drawn = envelope({ curve: points as never, maximumSpeed: '8000 rpm', ratedVoltage: '160 V' })
    fc.assert(
      fc.property(between(0, 8000), between(100, 170), (turns, volts) => {
        const [one, other] = [drawn, { torqueAt }].map((each) => each.torqueAt(rpm(turns), volts, 'peak'))
        expect(Math.abs((one as number) - (other as number))).toBeLessThan(0.2)
      }),
    )
  })
  it('never gives more at less voltage or more speed', () => {
    for (const each of [envelope(motor), envelope({ ...motor, curve })]) {
      fc.assert(
        fc.property(between(0, 8000), between(0, 8000), between(1, 200), between(1, 200), (a, b, u, v) => {
          const slow = each.torqueAt(rpm(Math.min(a, b)), Math.max(u, v), 'peak')
          expect(slow).toBeGreaterThanOrEqual(each.torqueAt(rpm(Math.max(a, b)), Math.min(u, v), 'peak'))
        }),
      )
    }
  })
  it('refuses figures that do not make one, all at once', () => {
    expect(() => envelope({ peakTorque: '120 N·m' })).toThrow(
      [
        'test: 2 inputs cannot be used',
        "  motor.maximumSpeed: expected a speed such as '8000 rpm', got nothing",
        "  motor: expected peakTorque and peakPower, such as '120 N·m' and '45 kW', or a curve such as [['0 rpm', '120 N·m'], ['8000 rpm', '40 N·m']], got peakTorque alone",
      ].join('\n'),
    )
    expect(() => envelope({ ...motor, continuousPower: '60 kW' })).toThrow(
      'motor.continuousPower: expected at most the peak, 50 kW, got 60 kW',
    )
    const backwards = [
      ['500 rpm', '120 N·m'],
      ['400 rpm', '100 N·m'],
    ] as const
    expect(() => envelope({ curve: backwards, maximumSpeed: '8000 rpm' })).toThrow(
      [
        'test: 3 inputs cannot be used',
        "  motor.curve[0][0]: expected the first point at standstill, '0 rpm', got 500 rpm",
        '  motor.curve[1][0]: expected more than the speed before it, 500 rpm, got 400 rpm',
        '  motor.curve[1][0]: expected points up to the highest speed, 8000 rpm; nothing is extrapolated, got 400 rpm',
      ].join('\n'),
    )
  })
})

describe('the electrical power of a motor', () => {
  // The induction motor of Larminie & Lowry, chapter 6, its coefficients from memory.
  const loss = {
    lossPerTorqueSquared: '0.3 W/(N·m)²',
    lossPerSpeed: '0.01 W/(rad/s)',
    lossPerSpeedCubed: '5e-6 W/(rad/s)³',
    constant: '600 W',
  } as const
  it('is that of the shaft and what is lost, in both directions', () => {
    const { electricalPower } = conversion({ loss })
    expect(electricalPower(100, 400)).toBeCloseTo(43_924, 6)
    expect(electricalPower(-100, 400)).toBeCloseTo(-36_076, 6)
    // So slow, the motor draws power to brake.
    expect(electricalPower(-100, 5)).toBeGreaterThan(0)
  })
  it.each([
    ['loss', { loss }],
    ['efficiency', { efficiency: '88 %' }],
  ] as const)('by %s turns back into the torque', (_, given) => {
    const { electricalPower, drivingTorque, brakingTorque } = conversion(given)
    fc.assert(
      fc.property(between(0, 200), between(100, 800), (torque, speed) => {
        expect(drivingTorque(electricalPower(torque, speed), speed)).toBeCloseTo(torque, 7)
        // On the near side of the torque w / 2kc at which a braking motor gives back the most.
        fc.pre(torque < (0.95 * speed) / 0.6)
        expect(brakingTorque(-electricalPower(-torque, speed), speed)).toBeCloseTo(torque, 6)
      }),
    )
  })
  it('is never less than the shaft gives, nor gives back more than it takes', () => {
    for (const { electricalPower } of [conversion({ loss }), conversion({ efficiency: '88 %' })]) {
      fc.assert(
        fc.property(between(-300, 300), between(0, 900), (torque, speed) => {
          expect(electricalPower(torque, speed)).toBeGreaterThanOrEqual(torque * speed)
        }),
      )
    }
  })
  it('feeds no torque while it does not cover the losses that come without any', () => {
    const { drivingTorque, brakingTorque } = conversion({ loss })
    expect(drivingTorque(500, 100)).toBe(0)
    expect(drivingTorque(1200, 0)).toBeCloseTo(Math.sqrt(600 / 0.3), 9)
    expect(brakingTorque(50_000, 100)).toBe(Infinity)
    expect(conversion({ efficiency: 0.9 }).drivingTorque(10, 0)).toBe(Infinity)
    expect(conversion({ efficiency: 0.9 }).drivingTorque(0, 0)).toBe(0)
  })
  it('says which losses were taken as zero, and refuses none and both', () => {
    expect(conversion({ loss: { lossPerTorqueSquared: '0.3 W/(N·m)²' } }).assumptions.map(said)).toEqual([
      'Losses that are not given are taken as zero: motor.loss.lossPerSpeed, motor.loss.lossPerSpeedCubed, motor.loss.constant.',
    ])
    expect(() => conversion({})).toThrow(/motor\.efficiency and motor\.loss: expected one of them, .*, got neither/)
    expect(() => conversion({ loss, efficiency: 0.9 })).toThrow(/got both/)
    expect(() => conversion({ efficiency: 1.2 })).toThrow(
      'efficiency: expected a ratio above 0 and at most 1, got 1.2 (Efficiency of motor and controller)',
    )
  })
})
