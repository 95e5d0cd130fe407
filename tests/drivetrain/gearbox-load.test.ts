/** What the old box and the old shaft bear of the new motor. */
import { describe, expect, it } from 'vitest'
import { criticalSpeed, gearboxLoad, propshaftSpeed, tractionCurves } from '../../src/drivetrain/index.js'
import type { Given } from '../../src/quantity/index.js'
import { said } from '../said.js'
import { car, drive, gearbox, gripping, motor } from './sheet.js'

type Motor = Parameters<typeof gearboxLoad>[0]['motor']
const rated = { ...gearbox, ratedInputTorque: '100 N·m' } as const
const box = { ...drive, gearbox: rated } as const

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
    const { rows } = gearboxLoad({ ...box, car: { ...car, friction: 0.7 } })
    expect(rows[0]?.limitedBy).toBe('grip of the driven wheels')
    expect(rows[2]?.limitedBy).toBe('peak torque of the motor')
    const { curves, grip } = tractionCurves(gripping(0.7))
    const share = (grip?.si as number) / (curves[0]?.start.si as number)
    expect(rows[0]?.inputTorque.si).toBeCloseTo(120 * share, 9)
  })
  it('needs no limit where the box bears the motor', () => {
    const { torqueLimit, checks } = gearboxLoad({ ...box, gearbox: { ...rated, ratedInputTorque: '150 N·m' } })
    expect(torqueLimit).toBeUndefined()
    expect(checks.every(({ verdict }) => verdict === 'pass')).toBe(true)
  })
  it('takes the most torque of a curve, wherever it is', () => {
    const loadOf = (curve: readonly (readonly [Given<'angularSpeed'>, Given<'torque'>])[], more: Partial<Motor> = {}) =>
      gearboxLoad({ ...box, motor: { curve, maximumSpeed: '8000 rpm', ...more } })
    const falling = loadOf([
      ['0 rpm', '90 N·m'],
      ['8000 rpm', '30 N·m'],
    ])
    expect(falling.rows[3]?.inputTorque.si).toBe(90)
    expect(falling.rows[3]?.limitedBy).toBe('torque curve of the motor')
    const points = [
      ['0 rpm', '80 N·m'],
      ['2000 rpm', '120 N·m'],
      ['8000 rpm', '30 N·m'],
    ] as const
    const rising = loadOf(points)
    expect(rising.rows[0]?.inputTorque.si).toBe(120)
    expect(rising.rows[0]?.margin.si).toBeCloseTo(-0.2, 12)
    expect(rising.torqueLimit?.si).toBe(100)
    expect(rising.checks.every(({ verdict }) => verdict === 'fail')).toBe(true)
    // The motor never turns faster than its highest speed, and never beyond its figures.
    const short = loadOf(points, { maximumSpeed: '1000 rpm' })
    expect(short.rows[0]?.inputTorque.si).toBeCloseTo(100, 9)
    expect(loadOf(points, { peakTorque: '110 N·m' }).rows[0]?.inputTorque.si).toBe(110)
    // Rises by 0.2 N·m in each rad/s: 110 N·m at 150 rad/s, which is 16.5 kW, and less torque beyond.
    const steep = [
      ['0 rad/s', '80 N·m'],
      ['200 rad/s', '120 N·m'],
      ['840 rad/s', '30 N·m'],
    ] as const
    const held = loadOf(steep, { peakPower: '16.5 kW' })
    expect(held.rows[0]?.inputTorque.si).toBeCloseTo(110, 9)
  })
  it('refuses friction of a car that does not tell its grip', () => {
    const { wheelbase: _, ...short } = car
    expect(() => gearboxLoad({ ...box, car: { ...short, friction: 0.8 } })).toThrow(
      "car.wheelbase: expected a length such as '2.1 m', for the grip, got nothing",
    )
  })
  it('needs the torque for which the box was made', () => {
    expect(() => gearboxLoad(drive as never)).toThrow('gearbox.ratedInputTorque: expected a torque')
  })
})

describe('propshaftSpeed', () => {
  const gearing = { car, gearbox } as const
  const shaft = { length: '1.2 m', outerDiameter: '50.8 mm', innerDiameter: '47.5 mm' } as const
  it('is that of the road speed and the final drive, against three quarters of the critical speed', () => {
    const { speed, critical, checks, roadSpeed } = propshaftSpeed({ ...gearing, motor, shaft, topSpeed: '130 km/h' })
    const radius = (3.05 * (0.3302 + 2 * 0.145 * 0.8)) / (2 * Math.PI)
    expect(speed.si).toBeCloseTo(((130 / 3.6) * 4.375) / radius, 9)
    expect(roadSpeed.in('km/h')).toBe(130)
    expect(critical.si).toBe(criticalSpeed({ ...shaft, elasticModulus: '205 GPa', density: '7850 kg/m³' }).si)
    expect(checks[0]?.limit?.si).toBeCloseTo(0.75 * critical.si, 9)
  })
  it('without a top speed is that of the motor through the highest gear', () => {
    expect(propshaftSpeed({ ...gearing, motor, shaft }).speed.in('rpm')).toBeCloseTo(8000, 9)
    const over = propshaftSpeed({ car, gearbox: { ...gearbox, gears: [3.8, 0.8] }, motor, shaft })
    expect(over.speed.in('rpm')).toBeCloseTo(10_000, 9)
  })
  it('fails a shaft that is too long, and says what was taken for granted', () => {
    const { checks, assumptions } = propshaftSpeed({
      ...gearing,
      motor,
      shaft: { length: '1.8 m', outerDiameter: '50 mm' },
    })
    expect(checks[0]?.verdict).toBe('fail')
    const told = assumptions.map(said)
    expect(told).toContain('Inner diameter of the tube: 0 mm (shaft.innerDiameter by default; a solid bar).')
    const steel = 'steel for shafts, from memory of handbooks'
    expect(told).toContain(`Elastic modulus: 205 GPa (shaft.elasticModulus by default; ${steel}).`)
    expect(told).toContain(`Density: 7850 kg/m³ (shaft.density by default; ${steel}).`)
    expect(told).toContain('The car reaches the speed that its highest gear allows (no topSpeed).')
  })
  it('needs the highest speed of the motor, and a tube that is narrower inside than out', () => {
    const { maximumSpeed: __, ...slow } = motor
    expect(() => propshaftSpeed({ ...gearing, motor: slow as never, shaft })).toThrow(
      /motor\.maximumSpeed: expected an angular speed such as '3000 rpm', got nothing/,
    )
    expect(() => propshaftSpeed({ ...gearing, motor, shaft: { ...shaft, innerDiameter: '60 mm' } })).toThrow(
      /innerDiameter \/ outerDiameter/,
    )
  })
})
