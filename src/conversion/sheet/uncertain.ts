/**
 * How uncertain the values of a sheet are: what follows ± in its texts, what the sheet says apart, and what is typical of a
 * field of which nobody says anything.
 *
 * What is written is an expanded uncertainty, k = 2 (JCGM 100:2008, 7.2.3).
 */
import type { AnyField, QuantityField } from '../../procedure/index.js'
import { pathText } from '../../procedure/reading.js'
import { type InputIssue, shown } from '../../quantity/errors.js'
import type { Quantity } from '../../quantity/index.js'
import { readMeasured, valueText } from '../../quantity/measured.js'
import { isQuantity } from '../../quantity/read.js'

/** A value of a build with its standard uncertainty. @internal */
export interface UncertainValue {
  readonly path: string
  readonly keys: readonly (string | number)[]
  readonly about: string
  readonly value: Quantity
  /** In SI units, one standard deviation. */
  readonly deviation: number
  /** On what ground, where the sheet says nothing. */
  readonly because?: string
}

/** A sheet without what follows ±, and what did, by path. @internal */
export function withoutUncertainties(
  field: AnyField,
  sheet: unknown,
): { readonly sheet: unknown; readonly uncertain: { readonly [path: string]: string } } {
  const uncertain: { [path: string]: string } = {}
  const plain = (inner: AnyField | undefined, value: unknown, path: readonly (string | number)[]): unknown => {
    if (typeof value === 'string' && inner !== undefined && isMeasurable(inner)) {
      const text = valueText(value)
      if (text === undefined) return value
      uncertain[pathText(path)] = value.slice(text.length).replace(/^[\s]*(?:±|\+\/-)[\s]*/u, '')
      return text
    }
    if (typeof value !== 'object' || value === null || isQuantity(value)) return value
    if (Array.isArray(value)) return value.map((each, i) => plain(innerAt(inner, i), each, [...path, i]))
    return Object.fromEntries(
      Object.entries(value).map(([key, each]) => [key, plain(innerAt(inner, key), each, [...path, key])]),
    )
  }
  return { sheet: plain(field, sheet, []), uncertain }
}

const isMeasurable = (field: AnyField): boolean =>
  field.sort === 'quantity' || (field.sort === 'either' && field.of.some(isMeasurable))

function innerAt(field: AnyField | undefined, key: string | number): AnyField | undefined {
  switch (field?.sort) {
    case 'group':
      return Object.hasOwn(field.fields, key) ? field.fields[key] : undefined
    case 'list':
    case 'byName':
      return field.of
    case 'pairs':
      return { ...field.of[0], sort: 'list', of: field.of[typeof key === 'number' ? 0 : 1], least: 0 } as AnyField
    default:
      return undefined
  }
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
  const look = (inner: AnyField | undefined, value: unknown, keys: readonly (string | number)[]): void => {
    if (isQuantity(value)) {
      const path = pathText(keys)
      const text = open.get(path)
      open.delete(path)
      const leaf = leafOf(inner, value as unknown as Quantity)
      if (leaf === undefined) return
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
      look(innerAt(inner, at), each, [...keys, at])
    }
  }
  look(field, build, [])
  for (const [path, text] of open) {
    const expected = 'the path of a value of the sheet, such as car.dragArea'
    issues.push({ path: `uncertain.${path}`, expected, received: shown(text) })
  }
  return { values, issues }
}

function leafOf(field: AnyField | undefined, value: Quantity): QuantityField | undefined {
  if (field?.sort === 'quantity') return field
  if (field?.sort !== 'either') return undefined
  return field.of.map((each) => leafOf(each, value)).find((each) => each?.kind === value.kind)
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
