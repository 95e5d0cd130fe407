/** Groups of unequal modules against trying all, and honesty about what is proven. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { groupModules } from '../../src/electrical/index.js'
import { strongestWeakest } from '../../src/electrical/pack/group.js'
import { quantity } from '../../src/quantity/index.js'
import { runs } from '../runs.js'

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
