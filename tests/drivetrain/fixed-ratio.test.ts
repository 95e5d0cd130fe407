/** One ratio for all: its window against closed forms, and against what the car then does. */
import { describe, expect, it } from 'vitest'
import { accelerate, climbingAbility, fixedRatio, topSpeed } from '../../src/drivetrain/index.js'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { car, motor, pack } from './sheet.js'

const gearbox = { efficiency: 0.96 } as const
const asked = { car, gearbox, motor } as const
/** The same on a road of some friction. */
const gripping = (friction: number) => ({ ...asked, car: { ...car, friction } }) as const
const radius = (3.05 * (0.3302 + 2 * 0.145 * 0.8)) / (2 * Math.PI)
const weight = 760 * 9.80665

describe('fixedRatio', () => {
  it('is bounded above by the highest speed of the motor and below by grade and launch', () => {
    const { limits, least, greatest, fits } = fixedRatio({
      ...asked,
      topSpeed: '110 km/h',
      grade: 0.2,
      launch: '2 m/s²',
    })
    const [fast, steep, launch] = limits
    expect(fast?.greatest?.si).toBeCloseTo((((8000 * Math.PI) / 30) * radius) / (110 / 3.6), 9)
    const slope = Math.atan(0.2)
    const pull = weight * (Math.sin(slope) + 0.013 * Math.cos(slope))
    expect(steep?.least?.si).toBeCloseTo((pull * radius) / (120 * 0.96), 9)
    expect(steep).not.toHaveProperty('greatest')
    const push = weight * 0.013 + 1.05 * 760 * 2
    expect(launch?.least?.si).toBeCloseTo((push * radius) / (120 * 0.96), 9)
    expect(least?.si).toBe(launch?.least?.si)
    expect(greatest?.si).toBe(fast?.greatest?.si)
    expect(fits).toBe(true)
  })

  it('holds a start on a hill to the grip that the hill leaves', () => {
    // On the level the tyres hold 0.306 of the weight, on 30 % that times the cosine, 0.293; the start needs 0.2998.
    const friction = (0.306 * 2.03) / (1 + 0.306 * 0.5)
    const { fits, limits } = fixedRatio({ ...gripping(friction), topSpeed: '60 km/h', grade: 0.3 })
    expect(fits).toBe(false)
    const [needed, held] = [0.2998, 0.306 * Math.cos(Math.atan(0.3))].map((share) => Math.round(share * weight))
    expect(limits[1]?.refused).toBe(`it needs ${needed} N, and the tyres hold ${held} N`)
    expect(fixedRatio({ ...gripping(friction * 1.05), topSpeed: '60 km/h', grade: 0.3 }).fits).toBe(true)
  })

  it('does at both ends of the window what was asked, and outside it does not', () => {
    const given = { ...gripping(0.9), pack, stateOfCharge: 0.3 } as const
    const { least, greatest } = fixedRatio({ ...given, topSpeed: '115 km/h', grade: 0.2, launch: '1.5 m/s²' })
    const does = (ratio: number) => {
      const with_ = { ...given, gearbox: { ...gearbox, gears: [ratio], finalDrive: 1 } } as const
      return (
        topSpeed(with_).speed.in('km/h') >= 115 * (1 - 1e-9) &&
        climbingAbility(with_).start.grade.si >= 0.2 * (1 - 1e-9) &&
        (accelerate({ ...with_, to: '10 km/h' }).series[0]?.acceleration.si as number) >= 1.5 * (1 - 1e-9)
      )
    }
    const [low, high] = [least?.si as number, greatest?.si as number]
    expect([low, high].map(does)).toEqual([true, true])
    expect([low * 0.999, high * 1.001].map(does)).toEqual([false, false])
    expect(does((low + high) / 2)).toBe(true)
  })

  it('with a rotor that must be spun up has too high a ratio for a launch', () => {
    const { rotatingFactor: _, ...plain } = car
    const heavy = { ...asked, car: plain, motor: { ...motor, inertia: '0.4 kg·m²' } } as const
    const { limits } = fixedRatio({ ...heavy, topSpeed: '60 km/h', launch: '3 m/s²' })
    const launch = limits[1]
    // 120 · 0.96 i / r = load + (m + I i² / r²) a: the two roots.
    const [a, b, c] = [(0.4 * 3) / radius ** 2, -(120 * 0.96) / radius, weight * 0.013 + 760 * 3]
    const root = Math.sqrt(b ** 2 - 4 * a * c)
    expect(launch?.least?.si).toBeCloseTo((-b - root) / (2 * a), 8)
    expect(launch?.greatest?.si).toBeCloseTo((-b + root) / (2 * a), 8)
  })

  it('says which two demands part when no ratio meets both', () => {
    const { fits, reason, least, greatest, checks } = fixedRatio({ ...asked, topSpeed: '150 km/h', grade: 0.35 })
    expect(fits).toBe(false)
    expect(reason).toBe(`a start on 35 % needs at least ${least}, and 150 km/h allows at most ${greatest}`)
    expect(checks[0]?.verdict).toBe('fail')
  })

  it('says what no ratio can do: more than grip, and more than power', () => {
    const wet = fixedRatio({ ...gripping(0.3), topSpeed: '100 km/h', grade: 0.25 })
    expect(wet.fits).toBe(false)
    expect(wet.reason).toMatch(/^no ratio does a start on 25 %: it needs 19\d\d N, and the tyres hold 11\d\d N$/)
    expect(wet).not.toHaveProperty('least')
    const fast = fixedRatio({ ...asked, topSpeed: '200 km/h' })
    expect(fast.reason).toMatch(/^no ratio does 200 km\/h: the pull is \d+(\.\d+)? N short in the best, \d/)
  })

  it('shows the speed of the motor at the end of the window', () => {
    expect(explain(() => fixedRatio({ ...asked, topSpeed: '110 km/h' })).toText()).toContain('= 8000 rpm')
  })

  it('leaves out the gears and the final drive of the vehicle', () => {
    const box = { ...gearbox, gears: [3, 2], finalDrive: 4 } as const
    const { least, greatest } = fixedRatio({ ...asked, gearbox: box, topSpeed: '110 km/h' })
    const alone = fixedRatio({ ...asked, topSpeed: '110 km/h' })
    expect([least?.si, greatest?.si]).toEqual([alone.least?.si, alone.greatest?.si])
  })

  it('refuses gears out of their place, an efficiency for each gear, and one above 1', () => {
    expect(() => fixedRatio({ ...asked, topSpeed: '110 km/h', gears: [3, 2] } as never)).toThrow(
      /gears: expected no such field.*\(gears belongs in gearbox\)/,
    )
    expect(() => fixedRatio({ ...asked, gearbox: { efficiency: [0.9, 0.92] }, topSpeed: '110 km/h' })).toThrow(
      'gearbox.efficiency: expected one figure for the one ratio, such as 0.95, got one for each gear',
    )
    expect(() =>
      fixedRatio({ ...asked, gearbox: { efficiency: quantity('ratio', 1.1) }, topSpeed: '110 km/h' }),
    ).toThrow('efficiency: expected a ratio above 0 and at most 1, got 1.1')
  })
})
