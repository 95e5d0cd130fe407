/** Sheets as a slip, a program or malice may make them. */
import fc from 'fast-check'

type Path = readonly (string | number)[]

/** Every place in a sheet. */
function placesIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path]
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value)
  return [path, ...keys.flatMap((key) => placesIn((value as { [key: string]: unknown })[key], [...path, key]))]
}

/** How a sheet is changed at a place. */
type Change = (present: unknown) => unknown

const numbers = fc.oneof(
  fc.constantFrom(0, -1, 1e-9, 1e-3, 0.1, 10, 1000, 1e9, 1e300, 5e-324, -1e300, 1.7e308),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
)

/** A figure of another size in its unit; a plain number where there is no unit. */
const sized: fc.Arbitrary<Change> = fc.tuple(numbers, fc.boolean()).map(([number, isFactor]) => (present) => {
  if (typeof present === 'number') return isFactor ? present * number : number
  if (typeof present !== 'string') return number
  const [written, ...unit] = present.split(' ')
  const before = Number(written)
  const after = isFactor && Number.isFinite(before) ? before * number : number
  return Number.isFinite(after) ? [after, ...unit].join(' ') : present
})

/** What is of no form that is wanted. */
const odd: fc.Arbitrary<Change> = fc
  .oneof(
    fc.constantFrom<unknown>(
      undefined,
      null,
      true,
      '',
      ' ',
      'NaN A',
      'Infinity V',
      '0 m',
      '-5 kg',
      '1e300 V',
      '0 %',
      '101 %',
      '0 K',
      '5',
      '12,5 kg',
      'x'.repeat(1e6),
      Number.NaN,
      Number.POSITIVE_INFINITY,
      [],
      {},
      [[]],
      [null],
      () => 1,
      10n,
      Symbol('odd'),
      new Map([['a', 1]]),
      new Date(0),
    ),
    fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true }),
  )
  .map((value) => () => value)

const names = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '',
  'a b',
  'x'.repeat(1e5),
  '0',
  'ä',
]

/** One of its names is another. */
const renamed: fc.Arbitrary<Change> = fc
  .tuple(fc.nat(), fc.oneof(fc.constantFrom(...names), fc.string()))
  .map(([at, name]) => (present) => {
    if (typeof present !== 'object' || present === null || Array.isArray(present)) return { [name]: present }
    const entries = Object.entries(present)
    // Unlike an assignment, this keeps `__proto__`.
    return Object.fromEntries(entries.map(([key, each], i) => [i === at % entries.length ? name : key, each]))
  })

/** A name or a field too many. */
const added: fc.Arbitrary<Change> = fc
  .tuple(fc.constantFrom(...names), fc.constantFrom<unknown>(1, '1 m', null, {}, []))
  .map(([name, value]) => (present) => {
    const isOpen = typeof present === 'object' && present !== null && !Array.isArray(present)
    return isOpen ? Object.fromEntries([...Object.entries(present), [name, value]]) : present
  })

/** So many of what stands there. */
const many: fc.Arbitrary<Change> = fc.constantFrom(2, 10, 1000, 40_000, 1e6).map((count) => (present) => {
  if (Array.isArray(present)) return Array.from({ length: count }, (_, i) => present[i % Math.max(1, present.length)])
  if (typeof present !== 'object' || present === null) return Array(count).fill(present)
  const [one] = Object.values(present)
  return Object.fromEntries(Array.from({ length: Math.min(count, 2e5) }, (_, i) => [`n${i}`, one]))
})

/** What stands there, far down. */
const deep: fc.Arbitrary<Change> = fc
  .tuple(fc.constantFrom(1, 5, 1000, 20_000), fc.boolean())
  .map(([depth, isList]) => (present) => {
    let nested = present
    for (let i = 0; i < depth; i++) nested = isList ? [nested] : { at: nested }
    return nested
  })

/** What stands there put where it does not belong. */
const elsewhere = (sheet: object): fc.Arbitrary<Change> =>
  fc
    .constantFrom(...placesIn(sheet))
    .map((path) => () => path.reduce<unknown>((outer, key) => Object(outer)[key], sheet))

function changedAt(value: unknown, [key, ...rest]: Path, change: Change): unknown {
  if (key === undefined) return change(value)
  if (Array.isArray(value)) return value.map((each, i) => (i === key ? changedAt(each, rest, change) : each))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, name === key ? changedAt(each, rest, change) : each]),
  )
}

/** A sheet with one to three such changes. */
export function mutationsOf(sheet: object): fc.Arbitrary<unknown> {
  const change = fc.oneof(
    { weight: 8, arbitrary: sized },
    { weight: 4, arbitrary: odd },
    { weight: 2, arbitrary: renamed },
    { weight: 1, arbitrary: added },
    { weight: 1, arbitrary: many },
    { weight: 1, arbitrary: deep },
    { weight: 1, arbitrary: elsewhere(sheet) },
  )
  const places = placesIn(sheet)
  return fc
    .array(fc.tuple(fc.constantFrom(...places), change), { minLength: 1, maxLength: 3 })
    .map((changes) => changes.reduce<unknown>((value, [path, each]) => changedAt(value, path, each), sheet))
}
