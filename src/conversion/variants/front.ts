/** The Pareto front of variants: those than which no other is better in one objective without being worse in another. */
import { shown } from '../../quantity/errors.js'
import { InputError, kinds, type Quantity } from '../../quantity/index.js'
import { canonical, isRecord } from './json.js'
import { kindOfFigure } from './kind.js'
import { nonDominated } from './pareto.js'
import { type Amount, amountOf, quantityOf, type VariantResult } from './result.js'
import { asRead, type ReadStudy, type Study, variantsOf } from './study.js'

/** What a member of a front has against one of its neighbours. */
export interface Against {
  /** The number of the neighbour. */
  readonly number: number
  /** How far the member stands from it where the neighbour is better, by objective: member less neighbour. */
  readonly givesUp: { readonly [id: string]: Amount }
  /** The same where the member is better. */
  readonly gains: { readonly [id: string]: Amount }
}

/** A variant on the front. */
export interface Member extends VariantResult {
  /**
   * Its neighbours: for each objective the member that is next better in it, where there is one; of several alike the one
   * with the lowest number.
   */
  readonly against: readonly Against[]
}

/**
 * The Pareto front of results: those than which none is better in one objective and as good in the others.
 *
 * Results whose sheet is not sound, which do not hold what the study says, or which lack an objective, do not stand on it.
 * Equal results stand on it together. Figures are held against each other to 12 digits, so that none is better by what
 * rounding leaves. The front is the same in any order of the results, and a front of fronts is that of all their results.
 *
 * @param study - The study.
 * @param results - Results of its variants, all or some, each once or more often.
 * @returns The members in the order of their numbers, each with what it gives up against its neighbours.
 * @throws InputError that lists everything wrong with the study, or for what is no result of it.
 */
export function frontOf(study: Study, results: Iterable<VariantResult>): readonly Member[] {
  const { objectives } = asRead('frontOf', study)
  const ids = Object.keys(objectives)
  const standing = inOrder(study, results).filter((each) => stands(each, ids))
  const costs = new Map(standing.map((each) => [each, ids.map((id) => costOf(each, id, objectives))]))
  const alike = new Map<string, { readonly costs: readonly number[]; readonly all: VariantResult[] }>()
  for (const [each, cost] of costs) {
    const known = alike.get(String(cost))
    if (known === undefined) alike.set(String(cost), { costs: cost, all: [each] })
    else known.all.push(each)
  }
  const members = nonDominated([...alike.values()])
    .flatMap(({ all }) => all)
    .sort((one, other) => one.number - other.number)
  return withNeighbours(members, ids, (member, i) => costs.get(member)?.[i] as number)
}

/** Whether a result may stand on a front. @internal */
export function stands({ objectives, notHeld, error }: VariantResult, ids: readonly string[]): boolean {
  return error === undefined && notHeld.length === 0 && ids.every((id) => objectives[id] !== undefined)
}

/** What is given for an objective: less of it is better. To 12 digits, which rounding does not reach. */
function costOf({ objectives }: VariantResult, id: string, wanted: ReadStudy['objectives']): number {
  const figure = Number((objectives[id] as Amount).si.toPrecision(12))
  // A zero is without a sign.
  return (wanted[id] === 'least' ? figure : -figure) + 0
}

/** The results in the order of their numbers, each once. @internal */
export function inOrder(study: Study, results: Iterable<VariantResult>): readonly VariantResult[] {
  const { count } = variantsOf(study)
  const byNumber = new Map<number, VariantResult>()
  let i = 0
  for (const each of results) {
    const result = soundResult(each, `results[${i++}]`, count)
    const before = byNumber.get(result.number)
    if (before !== undefined && canonical(before) !== canonical(result)) {
      throw notOfStudy(`results[${i - 1}].number`, 'one result for each variant', `another of number ${result.number}`)
    }
    byNumber.set(result.number, result)
  }
  return [...byNumber.values()].sort((one, other) => one.number - other.number)
}

/** A result, without its neighbours where it comes from a front. */
function soundResult(given: unknown, path: string, count: number): VariantResult {
  const { number, values, objectives, missing, notHeld, verdict, error } = Object(given) as VariantResult
  if (!Number.isInteger(number) || number < 1 || number > count) {
    throw notOfStudy(`${path}.number`, `a number from 1 to ${count}`, shown(number))
  }
  for (const [key, value] of Object.entries({ values, objectives, missing })) {
    if (!isRecord(value)) throw notOfStudy(`${path}.${key}`, 'an object', shown(value))
  }
  if (!Array.isArray(notHeld)) throw notOfStudy(`${path}.notHeld`, 'a list', shown(notHeld))
  for (const [id, value] of Object.entries(objectives)) {
    const { kind, si, unit } = Object(value) as Amount
    if (
      kind === undefined ||
      kind !== kindOfFigure(id) ||
      !Number.isFinite(si) ||
      !Object.hasOwn(kinds[kind].units, unit)
    ) {
      throw notOfStudy(`${path}.objectives.${id}`, 'its kind, its value in SI units and its unit', shown(si))
    }
  }
  return {
    number,
    values,
    objectives,
    missing,
    notHeld,
    ...(verdict === undefined ? {} : { verdict }),
    ...(error === undefined ? {} : { error }),
  }
}

function notOfStudy(path: string, expected: string, received: string): InputError {
  return new InputError('frontOf', [{ path, expected, received }])
}

function withNeighbours(
  members: readonly VariantResult[],
  ids: readonly string[],
  cost: (member: VariantResult, i: number) => number,
): readonly Member[] {
  const neighbours = new Map(members.map((member) => [member, new Set<VariantResult>()]))
  for (const i of ids.keys()) {
    let [better, best]: (VariantResult | undefined)[] = []
    // Those that are alike in it have the same neighbour: the first of those before them.
    for (const member of members.toSorted((one, other) => cost(one, i) - cost(other, i))) {
      if (best === undefined || cost(best, i) < cost(member, i)) [better, best] = [best, member]
      if (better !== undefined) neighbours.get(member)?.add(better)
    }
  }
  const difference = (member: VariantResult, other: VariantResult, id: string) => {
    const [mine, its] = [member, other].map(({ objectives }) => quantityOf(objectives[id] as Amount)) as [
      Quantity,
      Quantity,
    ]
    return amountOf(mine.minus(its as never))
  }
  const between = (member: VariantResult, other: VariantResult, sign: number) =>
    Object.fromEntries(
      ids.flatMap((id, i) =>
        Math.sign(cost(member, i) - cost(other, i)) === sign ? [[id, difference(member, other, id)]] : [],
      ),
    )
  return members.map((member) => ({
    ...member,
    against: [...(neighbours.get(member) ?? [])].map((other) => ({
      number: other.number,
      givesUp: between(member, other, 1),
      gains: between(member, other, -1),
    })),
  }))
}
