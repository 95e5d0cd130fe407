import { describe, expect, it } from 'vitest'
import { exchangeMasses, planOf } from '../../src/mass/index.js'

const car = {
  scales: { frontLeft: '182 kg', frontRight: '174 kg', rearLeft: '161 kg', rearRight: '165 kg' },
  wheelbase: '2030 mm',
  track: { front: '1220 mm', rear: '1190 mm' },
} as const
const { wheelbase, track } = car
const motor = { name: 'motor', mass: '46 kg', at: { aft: '-350 mm', left: '40 mm' } } as const
const pack = { name: 'pack', mass: '192 kg', at: { aft: '1.5 m', left: '-700 mm' } } as const
const { before, after } = exchangeMasses({ car, removed: [], added: [motor] })

describe('planOf', () => {
  it('puts every wheel at its place, with what it carries and carried', () => {
    const { wheels } = planOf({ wheelbase, track, stance: after, before })
    expect(wheels.map(({ wheel, at }) => `${wheel} ${at.aft} ${at.left}`)).toEqual([
      'frontLeft 0 mm 610 mm',
      'frontRight 0 mm -610 mm',
      'rearLeft 2030 mm 595 mm',
      'rearRight 2030 mm -595 mm',
    ])
    for (const { wheel, mass, before: old } of wheels) {
      expect(mass.si).toBe(after.corners[wheel].si)
      expect(old?.si).toBe(before.corners[wheel].si)
    }
  })
  it('reaches as far as its outermost places', () => {
    const stance = before
    const { extent } = planOf({ wheelbase, track, stance, masses: [motor, pack] })
    expect([extent.front, extent.rear, extent.width].map(String)).toEqual(['-350 mm', '2030 mm', '1400 mm'])
    const bare = planOf({ wheelbase, track, stance }).extent
    expect([bare.front, bare.rear, bare.width].map(String)).toEqual(['0 mm', '2030 mm', '1220 mm'])
  })
  it('shows masses at their places, and both centres of gravity', () => {
    const plan = planOf({ wheelbase, track, stance: after, before, masses: [motor] })
    expect(plan.masses.map(({ name, mass, at }) => `${name} ${mass} ${at.aft} ${at.left}`)).toEqual([
      'motor 46 kg -350 mm 40 mm',
    ])
    expect(plan.centreOfGravity).toEqual(after.centreOfGravity)
    expect(plan.before).toEqual(before.centreOfGravity)
    expect(planOf({ wheelbase, track, stance: after })).not.toHaveProperty('before')
  })
  it('refuses what has no place across the car, by its path', () => {
    const lost = { name: 'charger', mass: '6 kg', at: { aft: '2 m' } } as const
    expect(() => planOf({ wheelbase, track, stance: after, masses: [motor, lost] })).toThrow(
      "masses[1].at.left: expected a length such as '-120 mm', or '0 mm' on the centre line, got nothing",
    )
  })
})
