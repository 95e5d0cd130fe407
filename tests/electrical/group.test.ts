/** Groups of unequal modules against trying all, and honesty about what is proven. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { groupModules } from '../../src/electrical/index.js'
import { evenest } from '../../src/electrical/pack/even.js'
import { strongestWeakest } from '../../src/electrical/pack/group.js'
import { quantity } from '../../src/quantity/index.js'
import { runs } from '../runs.js'
import { said } from '../said.js'

/** The greatest least sum over all groupings, by trying all. */
function bestByTryingAll(capacities: readonly number[], size: number): number {
  if (capacities.length === 0) return Infinity
  const [first, ...rest] = capacities as [number, ...number[]]
  const choose = (from: number, taken: readonly number[]): number => {
    if (taken.length === size - 1) {
      const left = rest.filter((_, i) => !taken.includes(i))
      const sum = first + taken.reduce((all, i) => all + (rest[i] as number), 0)
      return Math.min(sum, bestByTryingAll(left, size))
    }
    let best = -Infinity
    for (let i = from; i < rest.length; i++) best = Math.max(best, choose(i + 1, [...taken, i]))
    return best
  }
  return choose(0, [])
}

const falling = (list: readonly number[]) => [...list].sort((a, b) => b - a)
const capacities = (count: number) => fc.array(fc.integer({ min: 20, max: 60 }), { minLength: count, maxLength: count })
const leastOf = (list: readonly number[], groups: readonly (readonly number[])[]) =>
  Math.min(...groups.map((group) => group.reduce((sum, i) => sum + (list[i] as number), 0)))
const ah = (value: number) => quantity('charge', value, 'Ah')

describe('the weakest group', () => {
  it.each([
    [4, 2],
    [2, 3],
    [3, 3],
    [2, 5],
    [4, 3],
  ])('of %d groups of %d is as strong as trying all makes it', (count, size) => {
    fc.assert(
      fc.property(capacities(count * size), (drawn) => {
        const list = falling(drawn)
        const { groups, proven, bound } = strongestWeakest(list, count, size)
        expect(proven).toBe(true)
        expect(leastOf(list, groups)).toBe(bestByTryingAll(list, size))
        expect(bound).toBe(leastOf(list, groups))
        expect(groups.flat().sort((a, b) => a - b)).toEqual(list.map((_, i) => i))
      }),
      { numRuns: runs(count * size > 10 ? 15 : 60) },
    )
  })

  it('never lies above its bound, which is the mean where the search was broken off', () => {
    const real = fc.array(fc.double({ min: 30, max: 42, noNaN: true }), { minLength: 60, maxLength: 60 })
    fc.assert(
      fc.property(real, (drawn) => {
        const list = falling(drawn)
        const { groups, proven, bound } = strongestWeakest(list, 15, 4)
        const least = leastOf(list, groups)
        expect(least).toBeLessThanOrEqual(bound * (1 + 1e-12))
        if (!proven) expect(bound).toBeCloseTo(list.reduce((sum, each) => sum + each, 0) / 15, 9)
      }),
      { numRuns: runs(5) },
    )
  })
})

/** Every grouping of some indices, by trying all. */
function everyGrouping(left: readonly number[], size: number): number[][][] {
  if (left.length === 0) return [[]]
  const [first, ...rest] = left as [number, ...number[]]
  const withFirst = (from: number, taken: readonly number[]): number[][][] =>
    taken.length === size
      ? everyGrouping(
          rest.filter((i) => !taken.includes(i)),
          size,
        ).map((others) => [[...taken], ...others])
      : rest.slice(from).flatMap((next, i) => withFirst(from + i + 1, [...taken, next]))
  return withFirst(0, [first])
}

describe('the share of the hardest module', () => {
  // By the definition: 1/R over the sum of 1/R of its group.
  const shareIn = (resistances: readonly number[], groups: readonly (readonly number[])[]) =>
    Math.max(
      ...groups.map((group) => {
        const conductances = group.map((i) => 1 / (resistances[i] as number))
        return Math.max(...conductances) / conductances.reduce((sum, each) => sum + each, 0)
      }),
    )
  it.each([
    [3, 2],
    [4, 2],
    [2, 3],
    [3, 3],
    [2, 4],
  ])('in %d groups of %d is as small as trying all makes it, and then the weakest as strong', (count, size) => {
    const each = fc.record({ capacity: fc.integer({ min: 30, max: 42 }), resistance: fc.integer({ min: 10, max: 25 }) })
    fc.assert(
      fc.property(
        fc.array(each, { minLength: count * size, maxLength: count * size }),
        fc.constantFrom(0, 0.01, 0.05, 0.2),
        (drawn, tolerance) => {
          const list = [...drawn].sort((one, other) => other.capacity - one.capacity)
          const held = list.map(({ capacity }) => capacity)
          const resistances = list.map(({ resistance }) => resistance)
          const all = everyGrouping(
            list.map((_, i) => i),
            size,
          )
          const floor = Math.max(...all.map((groups) => leastOf(held, groups))) * (1 - tolerance)
          const enough = all.filter((groups) => leastOf(held, groups) >= floor - 1e-9)
          const share = Math.min(...enough.map((groups) => shareIn(resistances, groups)))
          const even = enough.filter((groups) => shareIn(resistances, groups) < share + 1e-9)
          const members = list.map(({ capacity, resistance }) => ({ capacity, conductance: 1 / resistance }))
          const { groups, proven } = evenest(members, strongestWeakest(held, count, size).groups, floor)
          expect(proven).toBe(true)
          expect(groups.flat().sort((a, b) => a - b)).toEqual(list.map((_, i) => i))
          expect(shareIn(resistances, groups)).toBeCloseTo(share, 12)
          expect(leastOf(held, groups)).toBe(Math.max(...even.map((some) => leastOf(held, some))))
        },
      ),
      { numRuns: runs(40) },
    )
  })
})

describe('groupModules', () => {
  const modules = [
    { name: 'A', capacity: '41 Ah' },
    { name: 'B', capacity: '39.5 Ah' },
    { name: 'C', capacity: '36 Ah' },
    { name: 'D', capacity: '38 Ah' },
  ] as const

  it('gives what its documentation shows', () => {
    const { groups, capacity, proven, lostCapacity, energy } = groupModules({
      modules,
      series: 2,
      parallel: 2,
      nominalVoltage: '44.4 V',
    })
    expect(groups).toEqual([
      ['A', 'C'],
      ['B', 'D'],
    ])
    expect(String(capacity)).toBe('77 Ah')
    expect(proven).toBe(true)
    expect(String(lostCapacity)).toBe('0.25 Ah')
    expect(energy?.in('kWh')).toBeCloseTo(2 * 0.0444 * 77, 9)
  })

  it('leaves out the weakest where there are more than are needed', () => {
    const { groups, spare } = groupModules({ modules, series: 3, parallel: 1 })
    expect(groups).toEqual([['D'], ['B'], ['A']])
    expect(spare).toEqual(['C'])
  })

  it('says that a large set is not proven, and how much better it could be', () => {
    const many = Array.from({ length: 60 }, (_, i) => ({ name: `m${i}`, capacity: ah(36 + 5 * Math.sin(i * i)) }))
    const { proven, capacity, bound } = groupModules({ modules: many, series: 15, parallel: 4 })
    expect(proven).toBe(false)
    expect(bound.si).toBeGreaterThan(capacity.si)
  })

  it('names the module that works hardest by its resistance, or says that it cannot', () => {
    const measured = [
      { name: 'old', capacity: '36 Ah', resistance: '14 mΩ' },
      { name: 'new', capacity: '40 Ah', resistance: '10 mΩ' },
    ] as const
    const { assumptions } = groupModules({ modules: measured, series: 1, parallel: 2 })
    const sharing = (all: typeof assumptions) => all.find(({ id }) => id === 'groups.sharing')?.text
    expect(sharing(assumptions)).toBe(
      'By its resistance new takes 58.33 % of the current of its group at first, and holds 52.63 % of its capacity: of all modules it works hardest.',
    )
    expect(sharing(groupModules({ modules, series: 2, parallel: 2 }).assumptions)).toContain(
      'not all resistances are given',
    )
  })

  it('gives up the stated share of the capacity, and no more, for an even current', () => {
    // 8 strong modules of 10 mΩ and 8 weaker ones of 20 mΩ: mixed they are strongest, apart they share evenly.
    const mixed = Array.from({ length: 8 }, (_, i) => ({
      name: `m${i}`,
      capacity: ah(i % 2 === 0 ? 40 : 38),
      resistance: quantity('resistance', i % 2 === 0 ? 10 : 20, 'mΩ'),
    }))
    const of = (more: object) =>
      groupModules({ modules: mixed, series: 4, parallel: 2, current: '150 A', continuousCurrent: '80 A', ...more })
    const [strict, even] = [of({}), of({ capacityTolerance: '3 %' })]
    expect(strict.checks[0]).toMatchObject({ id: 'group.current', verdict: 'fail' })
    // 20 / 30 of 150 A; half of it where both are alike.
    expect(strict.checks[0]?.text).toMatch(/^100 A go through m\d, more than/)
    expect(String(strict.capacity)).toBe('78 Ah')
    expect(even.checks[0]?.text).toMatch(/^75 A go through m\d, at most/)
    expect(String(even.capacity)).toBe('76 Ah')
    expect([String(even.bound), even.proven]).toEqual(['78 Ah', true])
  })
  it('says where the search for an even current was broken off', () => {
    const many = Array.from({ length: 60 }, (_, i) => ({
      name: `m${i}`,
      capacity: ah(36 + 5 * Math.sin(i * i)),
      resistance: quantity('resistance', 16 + 6 * Math.cos(3 * i * i), 'mΩ'),
    }))
    const { assumptions, capacity, bound } = groupModules({ modules: many, series: 15, parallel: 4 })
    expect(assumptions.map(said)).toContain(
      'The search for an even current was broken off: another grouping may share it more evenly.',
    )
    expect(capacity.si).toBeLessThanOrEqual(bound.si)
  })

  it('warns of modules that are joined at different voltages, where any are joined', () => {
    const hazards = (parallel: number) =>
      groupModules({ modules, series: 2, parallel }).cautions.map(({ hazard }) => hazard)
    expect(hazards(2)).toContain('joining modules in parallel')
    expect(hazards(1)).not.toContain('joining modules in parallel')
  })

  it('refuses too few modules, and two of one name', () => {
    expect(() =>
      groupModules({ modules: [...modules, { name: 'A', capacity: '40 Ah' }], series: 3, parallel: 2 }),
    ).toThrow(
      "groupModules: 2 inputs cannot be used\n  modules[4].name: expected another name than that of modules[0], got 'A'\n  modules: expected at least 6, for 3 groups of 2, got 5",
    )
    expect(() => groupModules({ modules: [{ name: 'A', capacity: '0 Ah' }], series: 1, parallel: 1 })).toThrow(
      'modules[0].capacity: expected a charge above 0 Ah',
    )
  })
})
