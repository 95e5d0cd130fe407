/** What is kept of the assessment of a variant. */
import type { Verdict } from '../../procedure/index.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type Kind, type Quantity } from '../../quantity/index.js'
import { nearestName } from '../../quantity/nearest.js'
import { fromSi } from '../../quantity/quantity.js'
import type { Assessment } from '../assess.js'
import type { SheetCheck } from '../chapters/section.js'
import type { BuildVerdict } from '../summary.js'
import { attempt } from './attempt.js'
import { LONGEST } from './path.js'
import { asRead, type Study, type Variant } from './study.js'

/** A quantity as plain JSON. */
export interface Amount {
  readonly kind: Kind
  /** Its value in SI units. */
  readonly si: number
  /** The unit in which it is shown. */
  readonly unit: string
}

/** A quantity from plain JSON. */
export function quantityOf({ kind, si, unit }: Amount): Quantity {
  return fromSi(kind, si, unit)
}

/** What of a study's `hold` does not hold in a variant. What is not known does not hold. */
export interface NotHeld {
  /** The entry of `hold`. */
  readonly hold: string
  /** The check, by its id; none where nothing in the assessment is checked under the entry. */
  readonly check?: string
  readonly verdict: Verdict
  /** What came of it, in words. */
  readonly text: string
}

/** What is kept of a variant: plain JSON, so that it may be written as a line and come from another machine. */
export interface VariantResult {
  /** Its place in the order of all, from 1. */
  readonly number: number
  /** The value at each path. */
  readonly values: { readonly [path: string]: unknown }
  /** The figures of the objectives by their ids, as far as the variant has them. */
  readonly objectives: { readonly [id: string]: Amount }
  /** Why the others are missing, by their ids. */
  readonly missing: { readonly [id: string]: string }
  /** What of `hold` does not hold. */
  readonly notHeld: readonly NotHeld[]
  /** What comes of the whole; none where the sheet is not sound. */
  readonly verdict?: BuildVerdict
  /** Why the sheet is not sound. */
  readonly error?: string
}

/** So many characters are kept of a text. */
const MOST_CHARACTERS = 1000

function kept(text: string): string {
  return text.length > MOST_CHARACTERS ? `${text.slice(0, MOST_CHARACTERS - 1)}…` : text
}

/**
 * Assesses a variant, and keeps of it what the study asks for.
 *
 * @param study - The study.
 * @param variant - One of its variants.
 * @returns Its figures, what does not hold, or why its sheet is not sound.
 * @throws InputError that lists everything wrong with the study, and for what is no variant.
 */
export function resultOf(study: Study, variant: Variant): VariantResult {
  const { objectives, hold = [] } = asRead('resultOf', study)
  const { number, values, sheet } = Object(variant) as Partial<Variant>
  if (number === undefined || values === undefined) {
    const expected = 'one of variantsOf(study): { number, values, sheet }'
    throw new InputError('resultOf', [{ path: 'variant', expected, received: shown(variant) }])
  }
  const found = attempt(sheet)
  if ('error' in found) {
    return { number, values, objectives: {}, missing: {}, notHeld: [], error: kept(found.error) }
  }
  const figures = new Map(found.figures.map(({ id, value }) => [id, value]))
  const ids = Object.keys(objectives)
  return {
    number,
    values,
    objectives: Object.fromEntries(
      ids.flatMap((id) => {
        const value = figures.get(id)
        return value === undefined ? [] : [[id, amountOf(value)]]
      }),
    ),
    missing: Object.fromEntries(ids.flatMap((id) => (figures.has(id) ? [] : [[id, kept(whyMissing(id, found))]]))),
    notHeld: hold.flatMap((each) => notHeld(each, found.checks)),
    verdict: found.verdict,
  }
}

/** A quantity as plain JSON. @internal */
export function amountOf({ kind, si, unit }: Quantity): Amount {
  // A zero is without a sign, as in JSON.
  return { kind, si: si + 0, unit }
}

function whyMissing(id: string, { figures, unassessed }: Assessment): string {
  const [section] = id.split('.')
  const why = unassessed.find((each) => each.id === section)?.why
  return (
    why ??
    `there is no such figure${meaning(
      id,
      figures.map((each) => each.id),
    )}`
  )
}

function notHeld(hold: string, checks: readonly SheetCheck[]): readonly NotHeld[] {
  const meant = checks.filter(({ id, of }) => id === hold || of === hold)
  if (meant.length === 0) {
    const known = checks.flatMap(({ id, of = id }) => [id, of])
    return [{ hold, verdict: 'unknown', text: `nothing is checked under it${meaning(hold, known)}` }]
  }
  return meant
    .filter(({ verdict }) => verdict === 'fail' || verdict === 'unknown')
    .map(({ id, name, verdict, text }) => ({ hold, check: id, verdict, text: kept(`${name}: ${text}`) }))
}

function meaning(name: string, known: readonly string[]): string {
  const near = name.length > LONGEST ? undefined : nearestName(name, known)
  return near === undefined || near.length > LONGEST ? '' : `; did you mean ${near}?`
}
