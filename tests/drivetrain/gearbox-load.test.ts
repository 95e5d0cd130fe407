/** What the old box and the old shaft bear of the new motor. */
import { describe, expect, it } from 'vitest'
import { criticalSpeed, gearboxLoad, propshaftSpeed, tractionCurves } from '../../src/drivetrain/index.js'
import { car, driveline, motor } from './sheet.js'

const box = { ...driveline, motor, ratedInputTorque: '100 N·m' } as const

describe('gearboxLoad', () => {
  it('has full torque in every gear from standstill, and more than the box was made for', () => {
    const { rows, torqueLimit, checks } = gearboxLoad(box)
    expect(rows.map(({ inputTorque }) => inputTorque.si)).toEqual([120, 120, 120, 120])
    expect(rows[0]?.outputTorque.si).toBeCloseTo(120 * 3.8, 9)
    expect(rows[0]?.margin.si).toBeCloseTo(-0.2, 12)
    expect(torqueLimit?.si).toBe(100)
    expect(checks.map(({ verdict }) => verdict)).toEqual(Array(4).fill('fail'))
  })
  it('is spared in first gear by tyres that slip', () => {
    const { rows } = gearboxLoad({ ...box, car, friction: 0.7 })
    expect(rows[0]?.limitedBy).toBe('grip of the driven wheels')
    expect(rows[2]?.limitedBy).toBe('peak torque of the motor')
    const { curves, grip } = tractionCurves({ car, motor, ...driveline, friction: 0.7 })
    const share = (grip?.si as number) / (curves[0]?.start.si as number)
    expect(rows[0]?.inputTorque.si).toBeCloseTo(120 * share, 9)
  })
  it('needs no limit where the box bears the motor', () => {
    const { torqueLimit, checks } = gearboxLoad({ ...box, ratedInputTorque: '150 N·m' })
    expect(torqueLimit).toBeUndefined()
    expect(checks.every(({ verdict }) => verdict === 'pass')).toBe(true)
  })
  it('takes the torque of a curve at standstill', () => {
    const curve = [
      ['0 rpm', '90 N·m'],
      ['8000 rpm', '30 N·m'],
    ] as const
    const { rows } = gearboxLoad({ ...box, motor: { curve, maximumSpeed: '8000 rpm' } })
    expect(rows[3]?.inputTorque.si).toBe(90)
  })
  it('refuses friction without a car', () => {
    expect(() => gearboxLoad({ ...box, friction: 0.8 })).toThrow(
      'car and friction: expected both, to work out where the tyres slip, or neither, got friction alone',
    )
  })
})

describe('propshaftSpeed', () => {
  const { efficiency: _, ...gearing } = driveline
  const shaft = { length: '1.2 m', outerDiameter: '50.8 mm', innerDiameter: '47.5 mm' } as const
  it('is that of the road speed and the final drive, against three quarters of the critical speed', () => {
    const { speed, critical, checks, roadSpeed } = propshaftSpeed({ ...gearing, motor, shaft, topSpeed: '130 km/h' })
    const radius = (3.05 * (0.3302 + 2 * 0.145 * 0.8)) / (2 * Math.PI)
    expect(speed.si).toBeCloseTo(((130 / 3.6) * 4.375) / radius, 9)
    expect(roadSpeed.in('km/h')).toBe(130)
    expect(critical.si).toBe(criticalSpeed({ ...shaft, elasticModulus: '205 GPa', density: '7850 kg/m³' }).si)
    expect(checks[0]?.limit.si).toBeCloseTo(0.75 * critical.si, 9)
  })
  it('without a top speed is that of the motor through the highest gear', () => {
    expect(propshaftSpeed({ ...gearing, motor, shaft }).speed.in('rpm')).toBeCloseTo(8000, 9)
    const over = propshaftSpeed({ ...gearing, gears: [3.8, 0.8], motor, shaft })
    expect(over.speed.in('rpm')).toBeCloseTo(10_000, 9)
  })
  it('fails a shaft that is too long, and says what was taken for granted', () => {
    const { checks, assumptions } = propshaftSpeed({
      ...gearing,
      motor,
      shaft: { length: '1.8 m', outerDiameter: '50 mm' },
    })
    expect(checks[0]?.verdict).toBe('fail')
    expect(assumptions).toContain('The shaft is a solid bar (shaft.innerDiameter 0 by default).')
    expect(assumptions).toContain('The shaft is of steel: 205 GPa, 7850 kg/m³ by default.')
  })
  it('needs the highest speed of the motor, and a tube that is narrower inside than out', () => {
    const { maximumSpeed: __, ...slow } = motor
    expect(() => propshaftSpeed({ ...gearing, motor: slow, shaft })).toThrow(
      "motor.maximumSpeed: expected a speed such as '8000 rpm', got nothing",
    )
    expect(() => propshaftSpeed({ ...gearing, motor, shaft: { ...shaft, innerDiameter: '60 mm' } })).toThrow(
      /innerDiameter \/ outerDiameter/,
    )
  })
})
