/**
 * How uncertain the values of a sheet are: what follows ± in its texts, what the sheet says apart, and what is typical of a
 * field of which nobody says anything.
 *
 * What is written is an expanded uncertainty, k = 2 (JCGM 100:2008, 7.2.3).
 */
import type { AnyField, QuantityField } from '../../procedure/index.js'
import { formsOf, type Part, partsAt, pathText, type Step } from '../../procedure/path.js'
import { type InputIssue, shown } from '../../quantity/errors.js'
import type { Quantity } from '../../quantity/index.js'
import { readMeasured, valueText } from '../../quantity/measured.js'
import { isQuantity } from '../../quantity/read.js'

/** A value of a build with its standard uncertainty. @internal */
export interface UncertainValue {
  readonly path: string
  readonly keys: readonly Step[]
  readonly about: string
  readonly value: Quantity
  /** In SI units, one standard deviation. */
  readonly deviation: number
  /** On what ground, where the sheet says nothing. */
  readonly because?: string
}

/** A sheet without what follows ±, what did, by path, and what of it cannot be read. @internal */
export function withoutUncertainties(
  field: AnyField,
  sheet: unknown,
): {
  readonly sheet: unknown
  readonly uncertain: { readonly [path: string]: string }
  readonly faults: readonly InputIssue[]
} {
  const uncertain: { [path: string]: string } = {}
  const faults: InputIssue[] = []
  const plain = (parts: readonly Part[], value: unknown, path: readonly Step[]): unknown => {
    if (typeof value === 'string' && parts.some(isMeasurable)) {
      const text = valueText(value)
      if (text === undefined) return value
      const fault = faultOf(parts, value)
      if (fault !== undefined) faults.push({ ...fault, path: pathText(path) })
      uncertain[pathText(path)] = value.slice(text.length).replace(/^[\s]*(?:±|\+\/-)[\s]*/u, '')
      return text
    }
    if (typeof value !== 'object' || value === null || isQuantity(value)) return value
    const inner = (step: Step, each: unknown) => plain(innerOf(parts, step), each, [...path, step])
    if (Array.isArray(value)) return value.map((each, i) => inner(i, each))
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, inner(key, each)]))
  }
  return { sheet: plain([field], sheet, []), uncertain, faults }
}

/** Why a value with its uncertainty cannot be read, where it is none of the kinds that it may be. */
function faultOf(parts: readonly Part[], value: string): InputIssue | undefined {
  const forms = parts.flatMap(formsOf).filter((form) => form.sort === 'quantity')
  const read = forms.map(({ kind }) => readMeasured(kind, value))
  return read.some((each) => each !== undefined && 'value' in each)
    ? undefined
    : (read.find((each) => each !== undefined) as InputIssue | undefined)
}

const isMeasurable = (part: Part): boolean => formsOf(part).some(({ sort }) => sort === 'quantity')

function innerOf(parts: readonly Part[], step: Step): readonly Part[] {
  return parts.flatMap((part) => partsAt(part, step))
}

/** The values of a build that carry an uncertainty or typically have one, and what is wrong with those that are given. @internal */
export function uncertaintiesIn(
  field: AnyField,
  build: object,
  given: { readonly [path: string]: string },
): { readonly values: readonly UncertainValue[]; readonly issues: readonly InputIssue[] } {
  const values: UncertainValue[] = []
  const issues: InputIssue[] = []
  const open = new Map(Object.entries(given))
  const look = (parts: readonly Part[], value: unknown, keys: readonly Step[]): void => {
    if (isQuantity(value)) {
      const path = pathText(keys)
      const text = open.get(path)
      open.delete(path)
      const leaf = parts.flatMap(formsOf).find((each) => each.sort === 'quantity' && each.kind === value.kind)
      if (leaf?.sort !== 'quantity') return
      const typical = text === undefined ? typicalOf(leaf) : undefined
      const said = text ?? typical?.text
      if (said === undefined) return
      const quantity = value as unknown as Quantity
      const read = readMeasured(leaf.kind, `${written(quantity)} ± ${said}`)
      if (read === undefined) return
      if (!('value' in read)) {
        if (typical === undefined) issues.push({ ...read, path: `uncertain.${path}`, received: shown(said) })
        return
      }
      // What is typical is a standard uncertainty; what is written is expanded.
      const deviation = read.standardUncertainty.si * (typical === undefined ? 1 : 2)
      const because = typical === undefined ? {} : { because: typical.because }
      values.push({ path, keys, about: leaf.about, value: quantity, deviation, ...because })
      return
    }
    if (typeof value !== 'object' || value === null) return
    for (const [key, each] of Object.entries(value)) {
      const at = Array.isArray(value) ? Number(key) : key
      look(innerOf(parts, at), each, [...keys, at])
    }
  }
  look([field], build, [])
  for (const [path, text] of open) {
    const expected = 'the path of a value of the sheet, such as car.dragArea'
    issues.push({ path: `uncertain.${path}`, expected, received: shown(text) })
  }
  return { values, issues }
}

function typicalOf({ uncertain }: QuantityField): { readonly text: string; readonly because: string } | undefined {
  if (uncertain === undefined) return undefined
  const [text, because] = typeof uncertain === 'string' ? [uncertain, 'common practice, no source'] : uncertain
  return { text, because }
}

/** A value as it is written before ±: a ratio as a plain number, so that a share is one of it. */
function written(value: Quantity): string {
  return value.kind === 'ratio' ? String(value.si) : value.format({ digits: 17 })
}
