import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import { placeMasses } from '../../src/mass/index.js'
import { isMet } from '../../src/procedure/index.js'
import { quantity } from '../../src/quantity/index.js'
import { isDeep, runs } from '../runs.js'
import { said } from '../said.js'
import { type Case, solvedByHighs } from './integer-program.js'

const kg = (value: number) => quantity('mass', value, 'kg')
const m = (value: number) => quantity('length', value, 'm')

/** A case as this library takes it. */
const givenOf = ({ base, groups, bays, wheelbase, track, target }: Case) => ({
  base: { mass: kg(base.mass), centreOfGravity: { aft: m(base.aft), left: m(base.left), up: m(base.up) } },
  groups: groups.map(({ mass, count }, i) => ({ name: `group ${i}`, mass: kg(mass), count })),
  bays: bays.map(({ aft, left, up, capacity, accepts }, i) => ({
    name: `bay ${i}`,
    at: { aft: m(aft), left: m(left), up: m(up) },
    capacity,
    accepts: accepts.map((group) => `group ${group}`),
  })),
  wheelbase: m(wheelbase),
  track: { front: m(track), rear: m(track) },
  target: {
    ...(target.frontShare === undefined ? {} : { frontShare: target.frontShare }),
    ...(target.leftShare === undefined ? {} : { leftShare: target.leftShare }),
    ...(target.up === undefined ? {} : { up: m(target.up) }),
  },
})

/** Every way to put all modules into the bays, as counts by bay and group. */
function everyPlacement({ groups, bays }: Case): number[][][] {
  const within = (room: readonly number[], capacity: number, accepts: readonly number[]): number[][] =>
    room.reduce<number[][]>(
      (ways, count, group) =>
        ways.flatMap((way) => {
          const left = accepts.includes(group)
            ? Math.min(count, capacity - way.reduce((sum, each) => sum + each, 0))
            : 0
          return Array.from({ length: left + 1 }, (_, each) => [...way, each])
        }),
      [[]],
    )
  const place = (bay: number, rest: readonly number[]): number[][][] => {
    const { capacity, accepts } = bays[bay] ?? { capacity: 0, accepts: [] }
    if (bay === bays.length) return rest.every((count) => count === 0) ? [[]] : []
    return within(rest, capacity, accepts).flatMap((counts) =>
      place(
        bay + 1,
        rest.map((count, group) => count - (counts[group] ?? 0)),
      ).map((others) => [counts, ...others]),
    )
  }
  return place(
    0,
    groups.map(({ count }) => count),
  )
}

/** A case with all that a solver of linear programs is not asked: steps within bays, weights, unequal tracks, a target aft. */
interface WideCase extends Case {
  readonly pitches: readonly ({ readonly aft: number; readonly left: number; readonly up: number } | undefined)[]
  readonly weights: { readonly [key in 'frontShare' | 'leftShare' | 'aft' | 'up']?: number }
  readonly rearTrack: number
  readonly aft: number | undefined
}

const wideGivenOf = (given: WideCase) => {
  const { bays, target, ...rest } = givenOf(given)
  return {
    ...rest,
    bays: bays.map((bay, b) => {
      const pitch = given.pitches[b]
      return pitch === undefined ? bay : { ...bay, pitch: { aft: m(pitch.aft), left: m(pitch.left), up: m(pitch.up) } }
    }),
    track: { front: m(given.track), rear: m(given.rearTrack) },
    target: { ...target, ...(given.aft === undefined ? {} : { aft: m(given.aft) }) },
    weights: given.weights,
  }
}

/** The moment of what is in a bay, module by module: each a step on from the one before, group by group. */
function momentIn(
  { groups, bays, pitches }: WideCase,
  bay: number,
  counts: readonly number[],
  direction: 'aft' | 'left' | 'up',
) {
  const masses = counts.flatMap((count, g) => Array.from({ length: count }, () => groups[g]?.mass ?? 0))
  const [at, step] = [bays[bay]?.[direction] ?? 0, pitches[bay]?.[direction] ?? 0]
  return masses.reduce((sum, mass, slot) => sum + mass * (at + slot * step), 0)
}

/** The best of all placements, from the definitions of deviation and of ties. */
function bestByEnumeration(given: WideCase) {
  const { base, groups, wheelbase, track, rearTrack, target, aft, weights } = given
  const mass = base.mass + groups.reduce((sum, group) => sum + group.mass * group.count, 0)
  const { frontShare: front = 1, leftShare: left = 1, aft: back = 1, up: high = 1 } = weights
  // Weights count beside one another: the greatest says what is a tie.
  const tie =
    1e-9 *
    Math.max(
      target.frontShare === undefined ? 0 : front,
      target.leftShare === undefined ? 0 : left,
      aft === undefined ? 0 : back,
      target.up === undefined ? 0 : high,
    )
  const all = everyPlacement(given).map((placement) => {
    const along = (direction: 'aft' | 'left' | 'up') =>
      placement.reduce((sum, counts, b) => sum + momentIn(given, b, counts, direction), base.mass * base[direction]) /
      mass
    const terms = [
      target.frontShare === undefined ? 0 : front * Math.abs(1 - along('aft') / wheelbase - target.frontShare),
      target.leftShare === undefined
        ? 0
        : left * Math.abs(0.5 + along('left') / ((track + rearTrack) / 2) - target.leftShare),
      aft === undefined ? 0 : (back * Math.abs(along('aft') - aft)) / wheelbase,
      target.up === undefined ? 0 : (high * Math.max(0, along('up') - target.up)) / wheelbase,
    ]
    const used = placement.filter((counts) => counts.some((count) => count > 0)).length
    const yaw = placement.reduce((sum, counts, b) => sum + yawIn(given, b, counts), 0) / mass
    return { deviation: terms.reduce((sum, each) => sum + each, 0), up: along('up'), yaw, used }
  })
  const heightCounts = target.up !== undefined && high > 0
  const ties = [
    ['deviation', tie],
    ...(heightCounts ? [['up', 1e-9 * wheelbase] as const] : []),
    ['yaw', 1e-9 * wheelbase ** 2],
    ['up', 1e-9 * wheelbase],
  ] as const
  const best = ties.reduce((left, [key, same]) => {
    const least = Math.min(...left.map((each) => each[key]))
    return left.filter((each) => each[key] <= least + same)
  }, all)
  const least = (key: 'deviation' | 'up' | 'yaw' | 'used') => Math.min(...best.map((each) => each[key]))
  return { tie, deviation: Math.min(...all.map(({ deviation }) => deviation)), up: least('up'), used: least('used') }
}

/** The second moment of what is in a bay about the upright axis through the centre that is aimed at, module by module. */
function yawIn(given: WideCase, bay: number, counts: readonly number[]) {
  const { base, groups, bays, pitches, wheelbase, track, rearTrack, target, aft } = given
  const masses = counts.flatMap((count, g) => Array.from({ length: count }, () => groups[g]?.mass ?? 0))
  const centre = {
    aft: aft ?? (target.frontShare === undefined ? base.aft : (1 - target.frontShare) * wheelbase),
    left: target.leftShare === undefined ? base.left : ((target.leftShare - 0.5) * (track + rearTrack)) / 2,
  }
  return masses.reduce((sum, mass, slot) => {
    const apart = (['aft', 'left'] as const).map(
      (each) => (bays[bay]?.[each] ?? 0) + slot * (pitches[bay]?.[each] ?? 0) - centre[each],
    )
    return sum + mass * (apart as [number, number]).reduce((squares, each) => squares + each ** 2, 0)
  }, 0)
}

/** Places on a grid, so that many placements tie, or anywhere. */
const place = (min: number, max: number) =>
  fc.oneof(
    fc.integer({ min: min * 4, max: max * 4 }).map((quarters) => quarters / 4),
    fc.integer({ min: min * 1000, max: max * 1000 }).map((millimetres) => millimetres / 1000),
    fc.double({ min, max, noNaN: true }),
  )
/** Heights to a micrometre: of two that differ by less the lower is taken, too little to be told from rounding here. */
const height = place(0, 1).map((metres) => Math.round(metres * 1e6) / 1e6)
const anyTarget = fc.record(
  {
    frontShare: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
    leftShare: fc.constantFrom(0.5, 0.48, 0.6),
    up: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
  },
  { requiredKeys: [] },
)
const anyCase = (bays: number, count: number): fc.Arbitrary<Case> =>
  fc
    .record({
      base: fc.record({ mass: fc.constantFrom(400, 561.3), aft: place(0, 2), left: place(-1, 1), up: height }),
      groups: fc.array(
        fc.record({ mass: fc.constantFrom(24, 12, 24, 17.3), count: fc.integer({ min: 1, max: count }) }),
        { minLength: 1, maxLength: 2 },
      ),
      bays: fc.array(
        fc.record({
          aft: place(-1, 3),
          left: place(-1, 1),
          up: height,
          capacity: fc.integer({ min: 0, max: 4 }),
          accepts: fc.constantFrom([0], [0, 1], [1], [0, 1]),
        }),
        { minLength: 1, maxLength: bays },
      ),
      wheelbase: fc.constantFrom(2, 2.03),
      track: fc.constantFrom(1.2, 1.25),
      target: anyTarget,
    })
    .map(({ bays: drawn, ...rest }) => ({
      ...rest,
      bays: drawn.map((bay) => ({ ...bay, accepts: bay.accepts.filter((group) => group < rest.groups.length) })),
    }))

const anyPitch = fc.option(
  fc.record({
    aft: fc.constantFrom(0, 0.09, -0.1, 0.0931),
    left: fc.constantFrom(0, 0.2, -0.127),
    // The last of four modules is not to be below the ground.
    up: fc.constantFrom(0, 0.1, 0.033),
  }),
  { nil: undefined },
)
const anyWeight = fc.constantFrom(1, 2, 0.3, 0, 1e-3)
const anyWideCase = (bays: number, count: number): fc.Arbitrary<WideCase> =>
  fc
    .record({
      given: anyCase(bays, count),
      pitches: fc.array(anyPitch, { minLength: bays, maxLength: bays }),
      weights: fc.record(
        { frontShare: anyWeight, leftShare: anyWeight, aft: anyWeight, up: anyWeight },
        { requiredKeys: [] },
      ),
      rearTrack: fc.constantFrom(1.2, 1.19, 1.31),
      aft: fc.option(fc.double({ min: 0.5, max: 1.5, noNaN: true }), { nil: undefined }),
    })
    .map(({ given, weights, aft, ...rest }) => {
      const targets = [...Object.keys(given.target), ...(aft === undefined ? [] : ['aft'])]
      const kept = Object.fromEntries(Object.entries(weights).filter(([key]) => targets.includes(key)))
      return { ...given, ...rest, aft, weights: kept }
    })
    .filter(({ target, aft, weights }) => {
      const keys = (['frontShare', 'leftShare', 'aft', 'up'] as const).filter((key) =>
        key === 'aft' ? aft !== undefined : target[key] !== undefined,
      )
      return keys.some((key) => weights[key] !== 0)
    })

/** Whether there is anything to aim at, and the modules find room, tried out. */
const hasRoom = (given: Case & { readonly aft?: number | undefined }) =>
  (Object.keys(given.target).length > 0 || given.aft !== undefined) && everyPlacement(given).length > 0

/** Whether there is a target and bays that accept any of some groups hold as many, for every choice of groups. */
const isFillable = ({ groups, bays, target }: Case) =>
  Object.keys(target).length > 0 &&
  [[0], [1], [0, 1]].every((choice) => {
    const open = bays.filter(({ accepts }) => accepts.some((group) => choice.includes(group)))
    const modules = choice.reduce((sum, group) => sum + (groups[group]?.count ?? 0), 0)
    return modules <= open.reduce((sum, { capacity }) => sum + capacity, 0)
  })

describe('placeMasses, against others,', () => {
  it('finds the best of all placements of small cases, ties and all, and proves it', () => {
    fc.assert(
      fc.property(anyWideCase(4, 4).filter(hasRoom), (given) => {
        const wanted = bestByEnumeration(given)
        const { deviation, centreOfGravity, placements, proven } = placeMasses(wideGivenOf(given))
        expect(proven).toBe(true)
        // What ties may deviate by so much more, and its sum is rounded.
        expect(Math.abs(deviation.si - wanted.deviation)).toBeLessThanOrEqual(wanted.tie * (1 + 1e-5))
        expect(centreOfGravity.up?.si).toBeCloseTo(wanted.up, 8)
        expect(new Set(placements.map(({ bay }) => bay)).size).toBe(wanted.used)
      }),
      { numRuns: runs(200, 2000) },
    )
  }, 60_000)
  it('places each module once, in bays that accept it and hold it', () => {
    fc.assert(
      fc.property(anyCase(5, 6).filter(hasRoom), (given) => {
        const { placements, mass } = placeMasses(givenOf(given))
        given.groups.forEach(({ count }, g) => {
          const placed = placements.filter(({ group }) => group === `group ${g}`)
          expect(placed.reduce((sum, each) => sum + each.count, 0)).toBe(count)
        })
        given.bays.forEach(({ capacity, accepts }, b) => {
          const within = placements.filter(({ bay }) => bay === `bay ${b}`)
          expect(within.reduce((sum, each) => sum + each.count, 0)).toBeLessThanOrEqual(capacity)
          for (const { group } of within) expect(accepts.map((g) => `group ${g}`)).toContain(group)
        })
        const total = given.base.mass + given.groups.reduce((sum, group) => sum + group.mass * group.count, 0)
        expect(mass.si).toBeCloseTo(total, 9)
      }),
    )
  }, 60_000)
  it('does not depend on the order of bays and groups', () => {
    fc.assert(
      fc.property(anyCase(5, 5).filter(hasRoom), (given) => {
        const whole = givenOf(given)
        const one = placeMasses(whole)
        const other = placeMasses({ ...whole, bays: whole.bays.toReversed(), groups: whole.groups.toReversed() })
        expect(Math.abs(other.deviation.si - one.deviation.si)).toBeLessThanOrEqual(1e-9 + 1e-14)
        expect(other.centreOfGravity.up?.si).toBeCloseTo(one.centreOfGravity.up?.si ?? Number.NaN, 8)
      }),
    )
  }, 60_000)
  it('agrees with HiGHS on larger cases', () => {
    // HiGHS, a solver of mixed-integer linear programs, on the same deviation with its absolute values linearised.
    fc.assert(
      fc.property(anyCase(8, 9).filter(isFillable), (given) => {
        const { deviation } = placeMasses(givenOf(given))
        // The solver holds its constraints to 1e-6.
        expect(Math.abs(deviation.si - (solvedByHighs(given) ?? Number.NaN))).toBeLessThan(1e-6)
      }),
      { numRuns: runs(30, 300) },
    )
  }, 120_000)
  it('agrees with HiGHS on 60 modules in 12 bays, within the balance that they can reach and beyond it', () => {
    for (const [frontShare, up] of [
      [0.52, 0.3],
      [0.3, 0.42],
      [0.75, 0.42],
    ] as const) {
      const given: Case = { ...twelveBays, target: { frontShare, leftShare: 0.5, up } }
      const { deviation, proven } = placeMasses(givenOf(given))
      expect(proven).toBe(true)
      expect(Math.abs(deviation.si - (solvedByHighs(given) ?? Number.NaN))).toBeLessThan(1e-6)
    }
  }, 120_000)
  it('proves the best placement of 60 modules in 12 bays', () => {
    const { deviation, proven, explored } = placeMasses(givenOf(twelveBays))
    expect(proven).toBe(true)
    expect(deviation.si).toBeLessThan(1e-4)
    expect(explored).toBeGreaterThan(1000)
  }, 30_000)
  it.runIf(isDeep)('says so when there is too much to see, and still finds a near one', () => {
    const bays = Array.from({ length: 14 }, (_, i) => ({
      aft: -0.4 + 0.197 * i,
      left: ((i * 37) % 11) / 10 - 0.5,
      up: 0.3 + ((i * 29) % 13) / 40,
      capacity: 9,
      accepts: [0, 1],
    }))
    const groups = [
      { mass: 7.43, count: 40 },
      { mass: 11.17, count: 25 },
    ]
    const { deviation, proven, assumptions } = placeMasses(givenOf({ ...twelveBays, groups, bays }))
    expect(proven).toBe(false)
    expect(deviation.si).toBeLessThan(1e-3)
    expect(assumptions.map(said)).toContainEqual(expect.stringMatching(notAllSeen))
  })
  it.runIf(isDeep)('ends its work with a good placement however many kinds, modules and bays there are', () => {
    const parts = (kinds: number, count: number) =>
      Array.from({ length: kinds }, (_, i) => ({ mass: 7.3 + 1.37 * i, count }))
    const rooms = (bays: number, capacity: number, kinds: number) =>
      Array.from({ length: bays }, (_, i) => ({
        aft: -0.41237 + (2.6 / bays) * i,
        left: ((i % 3) - 1) * 0.4037,
        up: 0.3 + ((i * 29) % 13) / 40,
        capacity,
        accepts: Array.from({ length: kinds }, (_, kind) => kind),
      }))
    for (const [kinds, count, bays, capacity] of [
      [2, 30, 12, 8],
      [3, 20, 12, 8],
      [6, 4, 6, 6],
      [20, 1, 5, 5],
      [60, 1, 12, 6],
    ] as const) {
      const groups = parts(kinds, count)
      const target = { frontShare: 0.57, leftShare: 0.5 }
      const given = givenOf({ ...twelveBays, groups, bays: rooms(bays, capacity, kinds), target })
      const { deviation, proven, explored, assumptions } = placeMasses(given)
      expect(explored).toBeLessThan(1.5e8)
      expect(deviation.si).toBeLessThan(1e-3)
      expect(proven).toBe(!assumptions.map(said).some((text) => notAllSeen.test(text)))
    }
  })
  it('proves what parts that all differ, and many that do not, can reach', () => {
    const four = (capacity: number, accepts: number[]) =>
      [-0.4, 0.35, 1.3, 2.1].map((aft, i) => ({ aft, left: [0.2, -0.3, 0.1, 0][i] ?? 0, up: 0.4, capacity, accepts }))
    const [all, count] = isDeep ? [16, 1000] : [12, 400]
    const parts = Array.from({ length: all }, (_, i) => ({ mass: 3.1 + 0.73 * i, count: 1 }))
    const kinds = parts.map((_, kind) => kind)
    const single = { ...twelveBays, groups: parts, bays: four(all / 4, kinds) }
    const cells = { ...twelveBays, groups: [{ mass: 110 / count, count }], bays: four(count, [0]) }
    for (const given of [single, cells]) {
      const { proven, deviation, explored } = placeMasses(givenOf(given))
      expect(proven).toBe(true)
      expect(explored).toBeLessThan(1.5e8)
      expect(Math.abs(deviation.si - (solvedByHighs(given) ?? Number.NaN))).toBeLessThan(1e-6)
    }
  }, 120_000)
  it('takes single parts that are alike as one kind', () => {
    const bays = [0, 0.7, 1.3, 2].map((aft) => ({ aft, left: 0, up: 0.4, capacity: 12, accepts: [0] }))
    const together = { ...twelveBays, groups: [{ mass: 9, count: 24 }], bays }
    const groups = Array.from({ length: 24 }, () => ({ mass: 9, count: 1 }))
    const accepts = groups.map((_, group) => group)
    const apart = { ...twelveBays, groups, bays: bays.map((bay) => ({ ...bay, accepts })) }
    const [one, other] = [placeMasses(givenOf(together)), placeMasses(givenOf(apart))]
    expect(other.proven).toBe(true)
    expect(other.deviation.si).toBe(one.deviation.si)
    expect(new Set(other.placements.map(({ group }) => group)).size).toBe(24)
  })
  it('shows which of many groups find no room', () => {
    const groups = Array.from({ length: 40 }, (_, i) => ({ mass: 5 + i / 8, count: 1 }))
    const accepts = groups.map((_, group) => group)
    const bays = [
      { aft: 0, left: 0, up: 0.4, capacity: 40, accepts: accepts.slice(0, 38) },
      { aft: 2, left: 0, up: 0.4, capacity: 1, accepts },
    ]
    expect(() => placeMasses(givenOf({ ...twelveBays, groups, bays }))).toThrow(
      'groups: expected at most 1 of group 38 and group 39, as many as the bays that accept them hold, got 2',
    )
  })
})

const notAllSeen = /^There are too many placements to see them all: \d+ partial and whole ones were looked at\./

const twelveBays: Case = {
  base: { mass: 590, aft: 0.88, left: 0.012, up: 0.46 },
  groups: [{ mass: 7.4, count: 60 }],
  bays: [
    [-0.21, 0.33, 0.62],
    [-0.21, -0.33, 0.62],
    [0.355, 0.52, 0.31],
    [0.355, -0.52, 0.31],
    [0.84, 0.0, 0.27],
    [1.215, 0.41, 0.24],
    [1.215, -0.41, 0.24],
    [1.6, 0.155, 0.38],
    [1.6, -0.155, 0.38],
    [2.08, 0.46, 0.51],
    [2.08, -0.46, 0.51],
    [2.37, 0.0, 0.44],
  ].map(([aft = 0, left = 0, up = 0]) => ({ aft, left, up, capacity: 8, accepts: [0] })),
  wheelbase: 2.03,
  track: 1.205,
  target: { frontShare: 0.52, leftShare: 0.5 },
}

const van = {
  base: { mass: '560 kg', centreOfGravity: { aft: '880 mm' } },
  groups: [{ name: 'module', mass: '24 kg', count: 5 }],
  bays: [
    { name: 'under the bonnet', at: { aft: '-50 mm' }, capacity: 4 },
    { name: 'behind the seats', at: { aft: '1.5 m' }, capacity: 4 },
  ],
  wheelbase: '2030 mm',
  track: { front: '1220 mm', rear: '1190 mm' },
  target: { frontShare: '56 %' },
} as const

describe('placeMasses on a small van', () => {
  it('gives the placement of a small case that can be worked out by hand', () => {
    // By moments: (560 · 880 + 24 (2 · -50 + 3 · 1500)) / 680 = 880 mm from 5 modules at a mean of 880 mm.
    const { placements, frontShare, centreOfGravity } = placeMasses(van)
    expect(placements.map(({ bay, count, totalMass }) => `${count} ${bay}, ${totalMass}`)).toEqual([
      '2 under the bonnet, 48 kg',
      '3 behind the seats, 72 kg',
    ])
    expect(centreOfGravity.aft.in('mm')).toBeCloseTo((560 * 880 + 24 * (2 * -50 + 3 * 1500)) / 680, 9)
    expect(frontShare.si).toBeCloseTo(1 - centreOfGravity.aft.in('mm') / 2030, 12)
    expect(centreOfGravity).not.toHaveProperty('left')
  })
  it('takes, of placements that balance alike, the one that turns most readily, though it is higher', () => {
    const [ahead, middle, behind] = ['0.4 m', '1 m', '1.6 m'].map(
      (aft) =>
        ({ name: aft, at: { aft, left: '0 mm', up: aft === '1 m' ? '600 mm' : '300 mm' }, capacity: 2 }) as never,
    ) as [never, never, never]
    const asked = {
      ...van,
      base: { mass: '560 kg', centreOfGravity: { aft: '1 m', left: '0 mm', up: '480 mm' } },
      groups: [{ name: 'module', mass: '24 kg', count: 2 }],
      target: { aft: '1 m' },
    } as const
    const one = placeMasses({ ...asked, bays: [ahead, middle, behind] })
    expect(one.placements.map(({ bay, count }) => [bay, count])).toEqual([['1 m', 2]])
    expect(one.yawInertia.si).toBe(0)
    // Apart, 24 kg at 0.6 m each: 2 · 24 · 0.36 = 17.28 kg·m².
    const apart = placeMasses({ ...asked, bays: [ahead, behind] })
    expect(apart.yawInertia.si).toBeCloseTo(17.28, 9)
    expect(apart.deviation.si).toBeCloseTo(one.deviation.si, 12)
    // Where the height is aimed at, and the middle is too high, it decides.
    const low = placeMasses({ ...asked, bays: [ahead, middle, behind], target: { aft: '1 m', up: '400 mm' } })
    expect(low.placements.map(({ bay, count }) => [bay, count])).toEqual([
      ['0.4 m', 1],
      ['1.6 m', 1],
    ])
  })
  it('puts no more into a bay than it carries and has room for, as long as the others take the rest', () => {
    // Without a limit two go under the bonnet and three behind the seats.
    const [front, rear] = van.bays
    const placedIn = (bays: unknown, size?: unknown) => {
      const groups = [{ name: 'module', mass: '24 kg', count: 5, ...(size === undefined ? {} : { size }) }]
      const { placements, checks } = placeMasses({ ...van, groups, bays } as never)
      return [
        placements.map(({ bay, count }) => [bay, count]),
        checks.filter(({ id }) => id.startsWith('bay.')).map(isMet),
      ]
    }
    const behind = (count: number) => [
      ['under the bonnet', 5 - count],
      ['behind the seats', count],
    ]
    expect(placedIn(van.bays)).toEqual([behind(3), []])
    expect(placedIn([front, { ...rear, maximumMass: '50 kg' }])).toEqual([behind(2), [true]])
    expect(placedIn([front, { ...rear, maximumMass: '110 lb' }])).toEqual([behind(2), [true]])
    const size = { length: '0.4 m', width: '0.3 m', height: '0.1 m' }
    expect(
      placedIn([front, { ...rear, inside: { length: '0.42 m', width: '0.3 m', height: '0.25 m' } }], size),
    ).toEqual([behind(2), [true]])
    expect(
      placedIn([front, { ...rear, inside: { length: '0.39 m', width: '0.39 m', height: '0.39 m' } }], size),
    ).toEqual([behind(3), [false]])
    // Neither bay takes them all: they are placed by capacity, and the check fails.
    expect(placedIn([front, { ...rear, maximumMass: '20 kg' }])).toEqual([behind(3), [false]])
  })
  it('takes the lower of two bays that balance alike, and then the fewer bays', () => {
    const bays = [
      { name: 'floor', at: { aft: '1 m', up: '300 mm' }, capacity: 2 },
      { name: 'shelf', at: { aft: '1 m', up: '600 mm' }, capacity: 9 },
      { name: 'tunnel', at: { aft: '1 m', up: '300 mm' }, capacity: 3 },
      { name: 'well', at: { aft: '1 m', up: '300 mm' }, capacity: 5 },
    ] as const
    const base = { mass: '560 kg', centreOfGravity: { aft: '880 mm', up: '480 mm' } } as const
    const { placements } = placeMasses({ ...van, base, bays })
    expect(placements.map(({ bay, count }) => [bay, count])).toEqual([['well', 5]])
  })
  it('takes the lower bay also where the height of the base is unknown', () => {
    const bays = [
      { name: 'shelf', at: { aft: '1 m', up: '600 mm' }, capacity: 9 },
      { name: 'floor', at: { aft: '1 m', up: '300 mm' }, capacity: 9 },
    ] as const
    const { placements, centreOfGravity } = placeMasses({ ...van, bays })
    expect(placements.map(({ bay }) => bay)).toEqual(['floor'])
    expect(centreOfGravity).not.toHaveProperty('up')
  })
  it('fills a bay with a pitch from its first place on', () => {
    // Five modules from 1 m at steps of 0.2 m have their middle at 1.4 m; two of one kind then three of another.
    const rack = { name: 'rack', at: { aft: '1 m', up: '0.3 m' }, capacity: 5, pitch: { aft: '0.2 m' } } as const
    const groups = [
      { name: 'old', mass: '20 kg', count: 2 },
      { name: 'new', mass: '30 kg', count: 3 },
    ] as const
    const { placements, centreOfGravity } = placeMasses({ ...van, groups, bays: [rack] })
    expect(placements.map(({ group, at }) => [group, at.aft.in('m')])).toEqual([
      ['old', 1.1],
      ['new', 1.6],
    ])
    expect(centreOfGravity.aft.in('m')).toBeCloseTo((560 * 0.88 + 40 * 1.1 + 90 * 1.6) / 690, 12)
  })
  it('takes a bay with a pitch to be as large as it says, however large', () => {
    const shelf = { ...van.bays[1], capacity: Number.MAX_SAFE_INTEGER, pitch: { aft: '0.1 m' } } as const
    const { placements } = placeMasses({ ...van, bays: [shelf] })
    // Five modules from 1.5 m at steps of 0.1 m.
    expect(placements.map(({ count, at }) => [count, at.aft.in('m')])).toEqual([[5, 1.7]])
  })
  it('tells the yaw inertia about the common centre, module by module, and hands on its parts', () => {
    // 400 kg at 1 m, and four modules of 20 kg from 1.5 m on, at steps of 0.2 m: all about their common centre.
    const placed = placeMasses({
      base: { mass: '400 kg', centreOfGravity: { aft: '1 m', left: '0 m' } },
      groups: [{ name: 'module', mass: '20 kg', count: 4 }],
      bays: [{ name: 'shelf', at: { aft: '1.5 m', left: '0.1 m' }, capacity: 4, pitch: { aft: '0.2 m' } }],
      wheelbase: '2 m',
      track: { front: '1.2 m', rear: '1.2 m' },
      target: { frontShare: '50 %' },
    })
    const all = [[400, 1, 0], ...[1.5, 1.7, 1.9, 2.1].map((aft) => [20, aft, 0.1])] as [number, number, number][]
    const mean = (k: 1 | 2) => all.reduce((sum, each) => sum + each[0] * each[k], 0) / 480
    const inertia = all.reduce((sum, [m, aft, left]) => sum + m * ((aft - mean(1)) ** 2 + (left - mean(2)) ** 2), 0)
    expect(placed.yawInertia.si).toBeCloseTo(inertia, 9)
    expect(placed.parts.map(({ name, mass, count, at }) => [name, mass.si, count, at.aft.si])).toEqual([
      ['module, shelf', 20, 4, 1.8],
    ])
  })
  it('counts a target by its weight', () => {
    const bays = [
      { name: 'front left', at: { aft: '0 m', left: '0.5 m' }, capacity: 1 },
      { name: 'rear', at: { aft: '2 m', left: '0 m' }, capacity: 1 },
    ] as const
    const base = { mass: '560 kg', centreOfGravity: { aft: '1.015 m', left: '0 m' } } as const
    const groups = [{ name: 'module', mass: '24 kg', count: 1 }] as const
    const target = { frontShare: '53 %', leftShare: '50 %' } as const
    const bayWith = (weights: { frontShare: number; leftShare: number }) =>
      placeMasses({ ...van, base, groups, bays, target, weights }).placements[0]?.bay
    expect(bayWith({ frontShare: 1, leftShare: 0 })).toBe('front left')
    const weights = { frontShare: 1, leftShare: 0 }
    const { checks } = placeMasses({ ...van, base, groups, bays, target: { ...target, leftShare: '20 %' }, weights })
    expect(checks.map(({ name }) => name)).toEqual(['Front share from its target'])
    expect(bayWith({ frontShare: 0.1, leftShare: 1 })).toBe('rear')
  })
  it('places alike however small or large all weights are', () => {
    const placed = (weight: number) => placeMasses({ ...van, weights: { frontShare: weight } })
    const one = placed(1)
    for (const weight of [1e-9, 1e6]) {
      const { placements, deviation } = placed(weight)
      expect(placements).toEqual(one.placements)
      expect(deviation.si / weight).toBeCloseTo(one.deviation.si, 12)
    }
  })
  it('reaches the same with aft as with the front share that it stands for', () => {
    const { target, ...rest } = van
    const aft = quantity('length', 2030 * 0.44, 'mm')
    const [one, other] = [placeMasses({ ...rest, target }), placeMasses({ ...rest, target: { aft } })]
    expect(other.placements).toEqual(one.placements)
    expect(other.deviation.si).toBeCloseTo(one.deviation.si, 12)
  })
  it('says how near it comes and which bay binds when the target is out of reach', () => {
    const { checks, limitedBy, deviation, frontShare, assumptions } = placeMasses({
      ...van,
      target: { frontShare: '65 %' },
    })
    expect(frontShare.in('%')).toBeCloseTo(62.0, 1)
    expect(deviation.in('%')).toBeCloseTo(65 - frontShare.in('%'), 9)
    expect(limitedBy).toBe('under the bonnet')
    expect(checks).toMatchObject([{ name: 'Front share from its target', verdict: 'fail' }])
    expect(assumptions.map(said)).toContain(
      'The bay that binds is under the bonnet: one place more in it would come nearer.',
    )
  })
  it('says which bay binds however small the modules are', () => {
    const groups = [{ name: 'cell', mass: '48 g', count: 2000 }] as const
    const bays = [
      { ...van.bays[0], capacity: 800 },
      { ...van.bays[1], capacity: 2000 },
    ]
    const { limitedBy, deviation } = placeMasses({ ...van, groups, bays, target: { frontShare: '65 %' } })
    // One cell from the rear bay to the front moves 48 g by 1.55 m: six parts in 100 000 of the front share.
    expect(limitedBy).toBe('under the bonnet')
    expect(deviation.si).toBeGreaterThan(0.01)
  })
  it('has no bay bind where the target is met as nearly as whole modules can', () => {
    const { checks, limitedBy } = placeMasses(van)
    expect(limitedBy).toBeUndefined()
    expect(checks).toMatchObject([{ verdict: 'pass' }])
  })
  it('asks of a base and bays that lie outside the car, at their last places too', () => {
    const { assumptions } = placeMasses({
      ...van,
      base: { mass: '560 kg', centreOfGravity: { aft: '880 mm', up: '3 m' } },
      bays: [
        ...van.bays,
        { name: 'trailer', at: { aft: '4 m' }, capacity: 2 },
        { name: 'tail', at: { aft: '2.8 m' }, pitch: { aft: '100 mm' }, capacity: 9 },
      ],
    })
    expect(assumptions.map(said).filter((text) => text.includes('taken as given'))).toEqual([
      'The base was taken as given, 3 m above the ground: is that inside the car?',
      'trailer was taken as given, 1.97 m behind the rear axle: is that inside the car?',
      // Five modules are all that there are: 2.8 m + 4 · 0.1 m − 2.03 m.
      'The last place of tail was taken as given, 1.17 m behind the rear axle: is that inside the car?',
    ])
  })
  it('fails where a car would tip off its wheels', () => {
    const behind = [{ name: 'trailer', at: { aft: '12 m', left: '4 m' }, capacity: 5 }] as const
    const base = { mass: '560 kg', centreOfGravity: { aft: '880 mm', left: '0 m' } } as const
    const { checks, frontShare, leftShare } = placeMasses({ ...van, base, bays: behind })
    // 1 − (560 · 0.88 + 120 · 12) / 680 / 2.03, and 0.5 + 120 · 4 / 680 / 1.205.
    expect(frontShare.si).toBeCloseTo(1 - (560 * 0.88 + 120 * 12) / 680 / 2.03, 12)
    expect(leftShare?.si).toBeCloseTo(0.5 + (120 * 4) / 680 / 1.205, 12)
    expect(checks.slice(1)).toMatchObject([
      { name: 'Share on the front wheels', verdict: 'fail' },
      { name: 'Share on the right wheels', verdict: 'fail' },
    ])
  })
  it('shows the balance of what it chose', () => {
    const text = explain(() => placeMasses(van)).toText()
    expect(text).toContain('The car with its modules')
    expect(text).toMatch(/X_f = 1 − a \/ L = 1 − 880 mm \/ 2030 mm/)
  })
  it.each([
    [
      'more modules than the bays hold',
      { groups: [{ name: 'module', mass: '24 kg', count: 9 }] },
      'groups: expected at most 8 of module, as many as the bays that accept them hold, got 9',
    ],
    [
      'a group without room among others with room',
      {
        groups: [
          { name: 'large', mass: '24 kg', count: 5 },
          { name: 'small', mass: '12 kg', count: 1 },
        ],
        bays: [
          { name: 'front', at: { aft: '0 m' }, capacity: 4 },
          { name: 'rear', at: { aft: '2 m' }, capacity: 4, accepts: ['small'] },
        ],
      },
      'groups: expected at most 4 of large, as many as the bays that accept them hold, got 5',
    ],
    [
      'a bay that accepts nobody knows what',
      { bays: [{ name: 'front', at: { aft: '0 m' }, capacity: 9, accepts: ['modul'] }] },
      "bays[0].accepts[0]: expected a group: 'module', got 'modul'",
    ],
    [
      'two bays of one name',
      {
        bays: [
          { name: 'front', at: { aft: '0 m' }, capacity: 4 },
          { name: 'front', at: { aft: '2 m' }, capacity: 4 },
        ],
      },
      "bays[1].name: expected a name of its own, got 'front', as bays[0]",
    ],
    [
      'a left share where places across the car are unknown',
      { target: { leftShare: 0.5 } },
      "base.centreOfGravity.left: expected a length such as '0 mm', got nothing (target.leftShare needs it)",
    ],
    [
      'a height where heights are unknown',
      { target: { up: '400 mm' } },
      "bays[1].at.up: expected a length such as '350 mm', got nothing (target.up needs it)",
    ],
    [
      'nothing to aim at',
      { target: {} },
      'target: expected at least one of frontShare, leftShare, aft, up, got none of them',
    ],
    [
      'weights that count nothing',
      { weights: { frontShare: 0 } },
      'weights: expected at least one above 0, such as 1, got none above 0',
    ],
    [
      'a weight without its target',
      { weights: { leftShare: 2 } },
      'weights.leftShare: expected no weight, or target.leftShare as well, got 2',
    ],
    [
      'a step to the left from nobody knows where',
      { bays: [{ name: 'front', at: { aft: '0 m' }, capacity: 9, pitch: { left: '90 mm' } }] },
      'bays[0].pitch.left: expected no step, or bays[0].at.left as well, got 90 mm',
    ],
    [
      'a step down into the ground',
      { bays: [{ name: 'front', at: { aft: '0 m', up: '300 mm' }, capacity: 9, pitch: { up: '-80 mm' } }] },
      'bays[0].pitch.up: expected at least -75 mm, so that the last of 5 modules is not below the ground, got -80 mm',
    ],
    [
      'a bay that no car reaches',
      { bays: [{ name: 'front', at: { aft: '1e300 m' }, capacity: 9 }] },
      'bays[0].at.aft: expected a length on a car, at most 1000000 m, got 1e300 m',
    ],
    [
      'half a module',
      { groups: [{ name: 'module', mass: '24 kg', count: 2.5 }] },
      'groups[0].count: expected a whole number (how many there are), got 2.5',
    ],
    [
      'a share above all',
      { target: { frontShare: '101 %' } },
      'target.frontShare: expected a ratio at least 0 and at most 1',
    ],
  ])('refuses %s', (_, wrong, message) => {
    expect(() => placeMasses({ ...van, ...wrong } as never)).toThrow(message)
  })
})
