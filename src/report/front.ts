/** The results of a study, drawn two objectives at a time, with a table that the numbers in the drawing lead to. */
import { type Exploration, quantityOf, resultOf, type Study, type VariantResult } from '../conversion/index.js'
import { sha256 } from './digest.js'
import { scatter } from './drawing/scatter.js'
import { captioned, framed, MOST_ROWS, rowOf } from './fragment.js'
import { html } from './markup.js'
import type { Telling } from './telling.js'

/** So many results are drawn beside the front. */
const MOST_DRAWN = 2000

/** @internal */
export function frontHtml(found: Exploration, study: Study, telling: Telling): string {
  const ids = Object.keys(study.objectives)
  const { front, results, setAside, unsound } = found
  const numbers = new Set(front.map(({ number }) => number))
  const aside = new Set(setAside.map(({ number }) => number))
  // The sheet as it is, by which every variant is judged.
  const asIs = resultOf(study, { number: 0, values: {}, sheet: study.sheet })
  const isWhole = ({ objectives }: VariantResult) => ids.every((id) => objectives[id] !== undefined)
  const own = `k${sha256(JSON.stringify([ids, front.map(({ number, values }) => [number, values])])).slice(0, 8)}`
  const drawn = [...front, ...results.filter(({ number }) => !numbers.has(number)).slice(0, MOST_DRAWN)].filter(isWhole)
  const [first, ...others] = ids
  const pictures = others.map((other) =>
    scatter({
      name: `Variants by ${first} and ${other}`,
      x: axisOf(first as string, study, drawn),
      y: axisOf(other, study, drawn),
      marks: [
        ...drawn.map((each) => ({
          ...placeOf(each, first as string, other),
          sort: numbers.has(each.number)
            ? ('front' as const)
            : aside.has(each.number)
              ? ('aside' as const)
              : ('rest' as const),
          ...(numbers.has(each.number) ? { text: String(each.number), link: `#${own}-${each.number}` } : {}),
        })),
        ...(isWhole(asIs)
          ? [{ ...placeOf(asIs, first as string, other), sort: 'own' as const, text: 'the sheet' }]
          : []),
      ],
      // Over two objectives the front is a line; over more, what two of them show is its shadow.
      isJoined: ids.length === 2,
      better: [study.objectives[first as string] as 'most' | 'least', study.objectives[other] as 'most' | 'least'],
    }),
  )
  const paths = Object.keys(study.vary)
  const rows = [
    ...(asIs.error === undefined ? [resultRow('the sheet', asIs, paths, ids, telling, `${own}-0`)] : []),
    ...front
      .slice(0, MOST_ROWS)
      .map((each) => resultRow(String(each.number), each, paths, ids, telling, `${own}-${each.number}`)),
  ]
  const says = `${front.length} of ${results.length} variants stand on the front: none is better in one objective and as good in the others. ${setAside.length} do not hold what the study asks, or lack an objective, and ${unsound.length} are not sound. Filled marks are the front, rings the rest, crosses what does not hold, the square is the sheet as it is.`
  return framed(
    `<p>${html(says)}</p><div class="pictures">${pictures.join('')}</div>${captioned('The front', ['no.', ...paths, ...ids.map((id) => `${id}, ${study.objectives[id]}`)], rows)}`,
  )
}

function resultRow(
  name: string,
  { values, objectives }: VariantResult,
  paths: readonly string[],
  ids: readonly string[],
  telling: Telling,
  id: string,
): string {
  return rowOf(
    name,
    [
      ...paths.map((path) => textOf(values[path])),
      ...ids.map((each) => {
        const amount = objectives[each]
        return amount === undefined ? 'none' : telling.shown(quantityOf(amount))
      }),
    ],
    id,
  )
}

function textOf(value: unknown): string {
  if (value === undefined) return 'as it is'
  return typeof value === 'string' ? value : JSON.stringify(value)
}

function placeOf(result: VariantResult, x: string, y: string) {
  return { x: numberOf(result, x), y: numberOf(result, y) }
}

function numberOf({ objectives }: VariantResult, id: string): number {
  const value = quantityOf(objectives[id] as NonNullable<(typeof objectives)[string]>)
  return value.in(value.unit as never)
}

function axisOf(id: string, { objectives }: Study, drawn: readonly VariantResult[]): string {
  const amount = drawn[0]?.objectives[id]
  const unit = amount?.unit ?? ''
  return [id, unit, objectives[id]].filter((part) => part !== '' && part !== '1').join(', ')
}
