import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { tally } from '../../src/mass/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { said } from '../said.js'

const kg = (value: number) => quantity('mass', value, 'kg')
const m = (value: number) => quantity('length', value, 'm')

const anyPart = fc
  .record({
    mass: between(0.1, 300),
    aft: between(-1, 4),
    left: between(-0.9, 0.9),
    up: between(0, 1.5),
    count: fc.integer({ min: 1, max: 12 }),
    size: fc.option(fc.record({ length: between(0, 2), width: between(0, 1.5) }), { nil: undefined }),
  })
  .map(({ mass, aft, left, up, count, size }) => ({
    name: 'part',
    mass: kg(mass),
    at: { aft: m(aft), left: m(left), up: m(up) },
    count,
    ...(size === undefined ? {} : { size: { length: m(size.length), width: m(size.width) } }),
  }))
const anyParts = fc.array(anyPart, { minLength: 1, maxLength: 12 })

describe('tally', () => {
  it('gives the mass, centre and inertia of four masses at the corners of a rectangle', () => {
    // By definition: four masses m at ±1.5 m and ±0.5 m have 4 m (1.5² + 0.5²) about their middle.
    const corner = (aft: '0 m' | '3 m', left: '-0.5 m' | '0.5 m') =>
      ({ name: 'corner', mass: '10 kg', at: { aft, left, up: '300 mm' } }) as const
    const { mass, centreOfGravity, yawInertia } = tally([
      corner('0 m', '0.5 m'),
      corner('0 m', '-0.5 m'),
      corner('3 m', '0.5 m'),
      corner('3 m', '-0.5 m'),
    ])
    expect(mass.si).toBe(40)
    expect(centreOfGravity.aft.in('m')).toBeCloseTo(1.5, 12)
    expect(centreOfGravity.left.in('m')).toBeCloseTo(0, 12)
    expect(centreOfGravity.up?.in('mm')).toBeCloseTo(300, 9)
    expect(yawInertia.in('kg·m²')).toBeCloseTo(100, 9)
  })
  it('takes a part with a size as a uniform box', () => {
    // Meriam & Kraige, Engineering Mechanics: Dynamics, appendix D (formula from memory): m (l² + w²) / 12.
    const box = { name: 'pack', mass: '12 kg', at: { aft: '1 m', left: '0 m' } } as const
    expect(tally([{ ...box, size: { length: '3 m', width: '4 m' } }]).yawInertia.in('kg·m²')).toBeCloseTo(25, 12)
    expect(tally([box]).yawInertia.si).toBe(0)
  })
  it('has a box of two halves turn as the two halves side by side', () => {
    const at = (aft: '1 m' | '1.5 m' | '2 m') => ({ aft, left: '0.2 m' }) as const
    const whole = tally([{ name: 'whole', mass: '40 kg', at: at('1.5 m'), size: { length: '2 m', width: '0.6 m' } }])
    const half = { mass: '20 kg', size: { length: '1 m', width: '0.6 m' } } as const
    const halves = tally([
      { ...half, name: 'front half', at: at('1 m') },
      { ...half, name: 'rear half', at: at('2 m') },
    ])
    expect(halves.yawInertia.ratioTo(whole.yawInertia)).toBeCloseTo(1, 12)
  })
  it('does not depend on the order of the parts', () => {
    fc.assert(
      fc.property(
        anyParts.chain((parts) =>
          fc.tuple(fc.constant(parts), fc.shuffledSubarray(parts, { minLength: parts.length })),
        ),
        ([parts, shuffled]) => {
          const [one, other] = [tally(parts), tally(shuffled)]
          expect(other.mass.ratioTo(one.mass)).toBeCloseTo(1, 12)
          expect(other.centreOfGravity.aft.si).toBeCloseTo(one.centreOfGravity.aft.si, 10)
          expect(other.centreOfGravity.left.si).toBeCloseTo(one.centreOfGravity.left.si, 10)
          expect(other.centreOfGravity.up?.si).toBeCloseTo(one.centreOfGravity.up?.si ?? Number.NaN, 10)
          expect(other.yawInertia.si).toBeCloseTo(one.yawInertia.si, 7)
        },
      ),
    )
  })
  it('balances: moments about the centre of gravity cancel', () => {
    fc.assert(
      fc.property(anyParts, (parts) => {
        const { centreOfGravity: centre } = tally(parts)
        const moment = parts.reduce(
          (sum, { mass, count, at }) => sum + mass.si * count * (at.aft.si - centre.aft.si),
          0,
        )
        expect(moment).toBeCloseTo(0, 8)
      }),
    )
  })
  it('counts parts as if each were listed', () => {
    fc.assert(
      fc.property(anyPart, (part) => {
        const { count, ...each } = part
        const [counted, listed] = [tally([part]), tally(Array.from({ length: count }, () => each))]
        expect(listed.mass.ratioTo(counted.mass)).toBeCloseTo(1, 12)
        expect(listed.yawInertia.si).toBeCloseTo(counted.yawInertia.si, 9)
      }),
    )
  })
  it('turns the most easily about the centre of gravity', () => {
    fc.assert(
      fc.property(anyParts, between(-2, 2), between(-2, 2), (parts, aft, left) => {
        const { mass, centreOfGravity, yawInertia } = tally(parts)
        // About any other axis it is more, by the mass times the distance squared (Steiner).
        const about = parts.reduce((sum, part) => {
          const own = part.size ? (part.size.length.si ** 2 + part.size.width.si ** 2) / 12 : 0
          const away = (part.at.aft.si - aft) ** 2 + (part.at.left.si - left) ** 2
          return sum + part.mass.si * part.count * (own + away)
        }, 0)
        const distance = (centreOfGravity.aft.si - aft) ** 2 + (centreOfGravity.left.si - left) ** 2
        expect(Math.abs(yawInertia.si + mass.si * distance - about)).toBeLessThanOrEqual(1e-12 * about)
      }),
    )
  })
  it('leaves out a height that cannot be known, and says whose is missing', () => {
    const { centreOfGravity, assumptions } = tally([
      { name: 'motor', mass: '46 kg', at: { aft: '150 mm', left: '0 mm', up: '320 mm' } },
      { name: 'modules', mass: '24 kg', count: 8, at: { aft: '1.6 m', left: '50 mm' } },
    ])
    expect(centreOfGravity).not.toHaveProperty('up')
    expect(assumptions.map(said)).toContain(
      'The height of the centre of gravity is left out: none is given for modules.',
    )
    expect(String(centreOfGravity.aft)).toBe('1320 mm')
  })
  it('refuses parts whose place across the car is unknown, each by its path', () => {
    expect(() =>
      tally([
        { name: 'motor', mass: '46 kg', at: { aft: '150 mm' } },
        { name: 'charger', mass: '6 kg', at: { aft: '2 m', left: '0 mm' } },
        { name: 'modules', mass: '24 kg', count: 8, at: { aft: '1.6 m' } },
      ]),
    ).toThrow(
      'tally: 2 inputs cannot be used\n' +
        "  [0].at.left: expected a length such as '-120 mm', or '0 mm' on the centre line, got nothing (the yaw inertia " +
        'cannot be worked out without it)\n' +
        "  [2].at.left: expected a length such as '-120 mm', or '0 mm' on the centre line, got nothing",
    )
  })
  it.each([
    [
      'half a part',
      { count: 1.5 },
      '[0].count: expected a whole number (how many there are, all at this place), got 1.5',
    ],
    ['no part', { count: 0 }, '[0].count: expected a number at least 1, got 0'],
    ['a part without mass', { mass: '0 kg' }, "[0].mass: expected a mass above 0 kg, got '0 kg' (Mass of one)"],
    [
      'a part under the road',
      { at: { aft: '1 m', left: '0 m', up: '-1 m' } },
      '[0].at.up: expected a length at least 0 m',
    ],
    ['a part without a name', { name: '' }, "[0].name: expected text (what it is called), got ''"],
  ])('refuses %s', (_, wrong, message) => {
    const part = { name: 'motor', mass: '46 kg', at: { aft: '150 mm', left: '0 mm' } }
    expect(() => tally([{ ...part, ...wrong } as never])).toThrow(message)
  })
  it('refuses a list without parts', () => {
    expect(() => tally([])).toThrow(/tally: one input cannot be used\n {2}expected a list .*at least 1/)
  })
})
