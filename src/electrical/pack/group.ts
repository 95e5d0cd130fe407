/**
 * Salvaged modules of unequal capacity: which go in parallel with which, so that the weakest group, which ends the
 * discharge of the whole string, is as strong as can be.
 *
 * Rests on combinatorial search: the modules left over are the weakest; pairs go weakest with strongest; larger groups are
 * searched by branch and bound from the best that exchanges can reach.
 */
import { definition } from '../../formula/index.js'
import { joiningModules, lithiumCells, shortCircuit } from '../../procedure/cautions.js'
import {
  assumed,
  type Check,
  type Findings,
  given,
  group,
  list,
  type Note,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  text,
  trial,
  type Unfinished,
  whole,
} from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { evenest, STEPS } from './even.js'
import { packEnergy, seriesVoltage } from './pack.js'

/** Modules put in parallel groups, and the groups in series. */
export interface ModuleGroups extends Findings {
  /** The names in each group, the strongest module first; the groups from the weakest to the strongest. */
  readonly groups: readonly (readonly string[])[]
  /** Modules that are not used. */
  readonly spare: readonly string[]
  /** Capacity of the weakest group: that of the string. */
  readonly capacity: Quantity<'charge'>
  /** Energy of the string at that capacity, where the nominal voltage of a module is given. */
  readonly energy?: Quantity<'energy'>
  /** What the stronger groups hold more than the weakest, on average, and the string cannot use. */
  readonly lostCapacity: Quantity<'charge'>
  /** Whether the search shows that no grouping has a stronger weakest group than `bound`. */
  readonly proven: boolean
  /**
   * No grouping has a weakest group above this. Where it is proven, one has just this, and `capacity` is less by at most
   * `capacityTolerance`.
   */
  readonly bound: Quantity<'charge'>
}

const groupFields = /*@__PURE__*/ (() => ({
  modules: list(
    'The modules',
    group('A module', {
      name: text('What the module is called, unlike any other'),
      capacity: given('charge', 'Capacity of the module, measured at one current and temperature', {
        above: 0,
        usual: ['20 Ah', '200 Ah'],
      }),
      resistance: optional(given('resistance', 'Measured resistance of the module', { above: 0 })),
    }),
    { least: 1 },
  ),
  series: whole('How many groups are in series', { min: 1, max: 1000 }),
  parallel: whole('How many modules are in parallel in each group', { min: 1, max: 1000 }),
  nominalVoltage: optional(given('voltage', 'Nominal voltage of a module, for the energy', { above: 0 })),
  current: optional(given('current', 'Current of the pack, all day', { above: 0 }), {
    absent: 'How the modules of a group share the current is not held to a limit: give current and continuousCurrent.',
  }),
  continuousCurrent: optional(given('current', 'Current that each module bears all day', { above: 0 })),
  capacityTolerance: given('ratio', 'Share of the best capacity that may be given up for a more even current', {
    min: 0,
    max: 0.5,
    usual: ['0 %', '10 %'],
    default: '1 %',
    because: 'capacities are measured no better, common practice, no source',
  }),
}))()

type Given = Read<typeof groupFields>

/**
 * Puts salvaged modules of unequal capacity in parallel groups so that the weakest group is as strong as can be, and the
 * modules of a group share the current evenly.
 *
 * Where all resistances are given, up to `capacityTolerance` of that capacity is given up for the grouping whose hardest
 * module takes the least share of the current of its group: a strong module with little resistance would else be put with
 * a weak one that resists much. `capacityTolerance: 0` keeps all the capacity.
 *
 * One and two in parallel are always solved exactly. Larger groups are solved exactly where the search ends within
 * 200 000 steps, as it does up to about 15 modules and often beyond; else `proven` is false and `bound` tells how much better
 * another grouping could be at most.
 *
 * Answers: which modules go in parallel with which, so that the weakest group is as strong as can be?
 *
 * - `modules`: the modules, a list of at least 1
 *   - `name`: what the module is called, unlike any other, text
 *   - `capacity`: capacity of the module, measured at one current and temperature, in Ah, above 0 Ah
 *   - `resistance`: measured resistance of the module, in mΩ, above 0 mΩ, optional
 * - `series`: how many groups are in series, a whole number, at least 1 and at most 1000
 * - `parallel`: how many modules are in parallel in each group, a whole number, at least 1 and at most 1000
 * - `nominalVoltage`: nominal voltage of a module, for the energy, in V, above 0 V, optional
 * - `current`: current of the pack, all day, in A, above 0 A, optional
 * - `continuousCurrent`: current that each module bears all day, in A, above 0 A, optional
 * - `capacityTolerance`: share of the best capacity that may be given up for a more even current, a plain number, at
 *   least 0 and at most 0.5, 1 % by default (capacities are measured no better, common practice, no source)
 * - always assumed: the weakest group ends the discharge of the string; no balancing during the drive moves charge
 *   between groups
 *
 * @returns The groups, the capacity of the string, and whether it is proven to be the best.
 * @throws InputError for too few modules or two of one name, by their path.
 * Source: by definition.
 *
 * @example
 * ```ts
 * const { groups, capacity } = groupModules({
 *   modules: [
 *     { name: 'A', capacity: '41 Ah' },
 *     { name: 'B', capacity: '39.5 Ah' },
 *     { name: 'C', capacity: '36 Ah' },
 *     { name: 'D', capacity: '38 Ah' },
 *   ],
 *   series: 2,
 *   parallel: 2,
 * })
 * groups // [['A', 'C'], ['B', 'D']]
 * String(capacity) // '77 Ah'
 * ```
 */
export const groupModules = /*@__PURE__*/ procedure({
  name: 'groupModules',
  title: 'Groups of unequal modules',
  answers: 'Which modules go in parallel with which, so that the weakest group is as strong as can be?',
  input: groupFields,
  source: [definition],
  assumes: [
    'The weakest group ends the discharge of the string; no balancing during the drive moves charge between groups.',
  ],
  work: (asked): Unfinished<ModuleGroups> => {
    refuseGiven(asked)
    const { modules, series, parallel, nominalVoltage } = asked
    const ranked = [...modules].sort((one, other) => other.capacity.si - one.capacity.si)
    const used = ranked.slice(0, series * parallel)
    const capacities = used.map(({ capacity }) => capacity.si)
    const strongest = strongestWeakest(capacities, series, parallel)
    const { proven, bound } = strongest
    const { groups, isEvenest } = evened(asked, used, strongest.groups)
    const sumOf = (group: readonly number[]) => group.reduce((sum, i) => sum + (capacities[i] as number), 0)
    const inOrder = [...groups].sort((one, other) => sumOf(one) - sumOf(other))
    const weakest = sumOf(inOrder[0] as readonly number[])
    const charge = (coulombs: number) => quantity('charge', coulombs, 'C').as('Ah')
    const capacity = charge(weakest)
    const whole = inOrder.reduce((sum, group) => sum + sumOf(group), 0)
    return {
      groups: inOrder.map((group) => group.map((i) => (used[i] as Given['modules'][number]).name)),
      spare: ranked.slice(used.length).map(({ name }) => name),
      capacity,
      ...(nominalVoltage === undefined
        ? {}
        : { energy: packEnergy({ voltage: seriesVoltage({ count: series, voltage: nominalVoltage }), capacity }) }),
      lostCapacity: charge(Math.max(0, whole / series - weakest)),
      proven,
      bound: charge(bound),
      checks: currentTrials(asked, inOrder, used),
      assumptions: [
        ...(isEvenest
          ? []
          : [
              assumed(
                'groups.search',
                'The search for an even current was broken off: another grouping may share it more evenly.',
              ),
            ]),
        assumed('groups.sharing', sharing(inOrder, used)),
      ],
      notes: unlikeNotes(used),
      cautions: [...(parallel === 1 ? [] : [joiningModules]), lithiumCells, shortCircuit],
    }
  },
})

/** Modules that hold less than this share of the best are at the end of their life, or of another sort. */
const ALIKE = /*@__PURE__*/ (() => quantity('ratio', '80 %'))()

/** That modules are put together that are not alike. */
function unlikeNotes(used: Given['modules']): Note[] {
  const [best, worst] = [used[0], used.at(-1)] as [Given['modules'][number], Given['modules'][number]]
  const value = quantity('ratio', worst.capacity.ratioTo(best.capacity)).as('%')
  if (value.si >= ALIKE.si) return []
  const text =
    `Modules in one pack: ${worst.name} holds ${value} of what ${best.name} holds, which is unusual; modules of one pack hold ` +
    `${ALIKE} or more of the best (the common end of life; common practice, no source).`
  return [{ id: 'modules.unusual', path: 'modules', text, value, usual: [ALIKE, quantity('ratio', '100 %')] }]
}

/**
 * The grouping that shares the current most evenly among those whose weakest group is as strong as can be, within the
 * tolerance; the strongest one where not all resistances are known.
 */
function evened(
  { parallel, capacityTolerance }: Given,
  used: Given['modules'],
  strongest: Grouping['groups'],
): { readonly groups: Grouping['groups']; readonly isEvenest: boolean } {
  const members = used.flatMap(({ capacity, resistance }) =>
    resistance === undefined ? [] : [{ capacity: capacity.si, conductance: 1 / resistance.si }],
  )
  if (parallel === 1 || members.length < used.length) return { groups: strongest, isEvenest: true }
  const most = leastSum(
    used.map(({ capacity }) => capacity.si),
    strongest,
  )
  const { groups, proven } = evenest(members, strongest, most * (1 - capacityTolerance.si))
  return { groups: groups.map((group) => [...group].sort((one, other) => one - other)), isEvenest: proven }
}

function refuseGiven({ modules, series, parallel }: Given): void {
  const seen = new Map<string, number>()
  const issues = modules.flatMap(({ name }, i) => {
    const first = seen.get(name)
    seen.set(name, first ?? i)
    if (first === undefined) return []
    return [
      { path: `modules[${i}].name`, expected: `another name than that of modules[${first}]`, received: `'${name}'` },
    ]
  })
  if (modules.length < series * parallel) {
    const expected = `at least ${series * parallel}, for ${series} groups of ${parallel}`
    issues.push({ path: 'modules', expected, received: String(modules.length) })
  }
  if (issues.length > 0) throw new InputError('groupModules', issues)
}

/** The module that takes most of the current of its group, held to what a module bears. */
function currentTrials(
  { current, continuousCurrent }: Given,
  groups: readonly (readonly number[])[],
  used: Given['modules'],
): Check[] {
  if (current === undefined) return []
  const told = (says: Told) =>
    trial(
      'group.current',
      'Current of the hardest module',
      says,
      'continuousCurrent, as given',
      'current',
      'modules',
      'continuousCurrent',
    )
  const shares = sharesOf(groups, used)
  if (continuousCurrent === undefined || shares === undefined) {
    const lacks = [
      ...(shares === undefined ? ['the resistance of every module'] : []),
      ...(continuousCurrent === undefined ? ['continuousCurrent'] : []),
    ]
    return [
      told({ unknown: `whether a module takes too much of the current is not known: give ${lacks.join(' and ')}` }),
    ]
  }
  const most = shares.reduce((one, other) => (other.current > one.current ? other : one))
  return [
    told(
      says`${current.times(most.current)} go through ${most.name}, at most the ${continuousCurrent} that a module bears`,
    ),
  ]
}

/** What share of the current of its group each module takes, and of its capacity it holds; undefined without resistances. */
function sharesOf(groups: readonly (readonly number[])[], used: Given['modules']) {
  const shares = groups.flatMap((group) => {
    const members = group.map((i) => used[i] as Given['modules'][number])
    if (members.some(({ resistance }) => resistance === undefined)) return []
    const conductance = ({ resistance }: Given['modules'][number]) => 1 / (resistance as Quantity<'resistance'>).si
    const whole = members.reduce((sum, member) => sum + conductance(member), 0)
    const held = members.reduce((sum, { capacity }) => sum + capacity.si, 0)
    return members.map((member) => ({
      name: member.name,
      current: conductance(member) / whole,
      capacity: member.capacity.si / held,
    }))
  })
  return shares.length < groups.length * (groups[0]?.length ?? 0) ? undefined : shares
}

/** How unevenly the modules of a group share the current, where their resistances are known. */
function sharing(groups: readonly (readonly number[])[], used: Given['modules']): string {
  const shares = sharesOf(groups, used)
  if (shares === undefined) {
    return 'The modules of a group share the current by their capacity: not all resistances are given.'
  }
  const hardest = shares.reduce((one, other) =>
    other.current / other.capacity > one.current / one.capacity ? other : one,
  )
  const percent = (share: number) => String(quantity('ratio', share).as('%'))
  return (
    `By its resistance ${hardest.name} takes ${percent(hardest.current)} of the current of its group at first, and holds ` +
    `${percent(hardest.capacity)} of its capacity: of all modules it works hardest.`
  )
}

/** Indices of modules in groups, the least sum of a group being as great as was found. */
interface Grouping {
  readonly groups: readonly (readonly number[])[]
  readonly proven: boolean
  /** No grouping has a least sum above this. */
  readonly bound: number
}

/**
 * Groups capacities in falling order, all of one size, so that the least sum of a group is as great as can be.
 * @internal
 */
export function strongestWeakest(capacities: readonly number[], count: number, size: number): Grouping {
  const whole = capacities.reduce((sum, each) => sum + each, 0)
  const bound = whole / count
  if (size === 1) return { groups: capacities.map((_, i) => [i]), proven: true, bound: capacities.at(-1) as number }
  if (size === 2) {
    // Exchange two pairs to weakest with strongest, and the lesser of their sums never falls.
    const groups = Array.from({ length: count }, (_, i) => [i, capacities.length - 1 - i])
    return { groups, proven: true, bound: leastSum(capacities, groups) }
  }
  const start = exchanged(capacities, dealt(capacities, count, size))
  const search = branchAndBound(capacities, count, size, start)
  return { ...search, bound: search.proven ? leastSum(capacities, search.groups) : bound }
}

function sumOf(capacities: readonly number[], group: readonly number[]): number {
  return group.reduce((sum, i) => sum + (capacities[i] as number), 0)
}

function leastSum(capacities: readonly number[], groups: readonly (readonly number[])[]): number {
  return Math.min(...groups.map((group) => sumOf(capacities, group)))
}

/** Each module in turn, the strongest first, to the weakest group that still has room. */
function dealt(capacities: readonly number[], count: number, size: number): number[][] {
  const groups: number[][] = Array.from({ length: count }, () => [])
  const sums = groups.map(() => 0)
  capacities.forEach((capacity, i) => {
    let to = -1
    groups.forEach((group, g) => {
      if (group.length < size && (to === -1 || (sums[g] as number) < (sums[to] as number))) to = g
    })
    ;(groups[to] as number[]).push(i)
    sums[to] = (sums[to] as number) + capacity
  })
  return groups
}

/** Exchanges a module of the weakest group for a stronger one while the lesser of the two sums rises. */
function exchanged(capacities: readonly number[], start: number[][]): number[][] {
  const groups = start.map((group) => [...group])
  for (;;) {
    const sums = groups.map((group) => sumOf(capacities, group))
    const least = Math.min(...sums)
    const weakest = sums.indexOf(least)
    let best: { readonly gain: number; readonly swap: () => void } | undefined
    groups.forEach((other, g) => {
      if (g === weakest) return
      other.forEach((theirs, t) => {
        ;(groups[weakest] as number[]).forEach((ours, o) => {
          const moved = (capacities[theirs] as number) - (capacities[ours] as number)
          const gain = Math.min(least + moved, (sums[g] as number) - moved) - least
          if (gain <= 1e-12 * least || gain <= (best?.gain ?? 0)) return
          best = {
            gain,
            swap: () => {
              ;(groups[weakest] as number[])[o] = theirs
              other[t] = ours
            },
          }
        })
      })
    })
    if (best === undefined) return groups
    best.swap()
  }
}

/**
 * Looks for groupings better than a first one, group by group: each is built around the strongest module left, so that
 * no grouping is met twice, and must leave enough for the others.
 */
function branchAndBound(
  capacities: readonly number[],
  count: number,
  size: number,
  start: readonly (readonly number[])[],
): Pick<Grouping, 'groups' | 'proven'> {
  let best = start
  let wanted = leastSum(capacities, start)
  let steps = 0
  // A sum that is greater by rounding alone is no better.
  const better = (sum: number) => sum > wanted * (1 + 1e-12)
  const search = (left: readonly number[], done: readonly (readonly number[])[], least: number): void => {
    if (left.length === 0) {
      best = done
      wanted = least
      return
    }
    const whole = sumOf(capacities, left)
    const others = count - done.length - 1
    const choose = (group: readonly number[], from: number, sum: number): void => {
      if (++steps > STEPS) return
      const missing = size - group.length
      if (missing === 0) {
        const remaining = whole - sum
        if (!better(Math.min(sum, least)) || (others > 0 && !better(remaining / others))) return
        search(
          left.filter((i) => !group.includes(i)),
          [...done, group],
          Math.min(sum, least),
        )
        return
      }
      for (let at = from; at + missing <= left.length; at++) {
        const strongest = capacities[left[at] as number] as number
        // Even with as many of this one as are missing, the group would be too weak: the later ones are weaker still.
        if (!better(sum + missing * strongest)) return
        choose([...group, left[at] as number], at + 1, sum + strongest)
        if (steps > STEPS) return
      }
    }
    const first = left[0] as number
    choose([first], 1, capacities[first] as number)
  }
  if (better(capacities.reduce((sum, each) => sum + each, 0) / count)) {
    search(
      capacities.map((_, i) => i),
      [],
      Infinity,
    )
  }
  return { groups: best, proven: steps <= STEPS }
}
