/** What was worked out as a piece of HTML for a page or a notebook. */
import type { Comparison } from '../conversion/index.js'
import { isFormulaStep, lineOf } from '../formula/explain.js'
import type { Propagated, Step, SweepRow, Working } from '../formula/index.js'
import type { Kind, Quantity } from '../quantity/index.js'
import { isQuantity } from '../quantity/read.js'
import { plot } from './drawing/plot.js'
import { attribute, figureHtml, html } from './markup.js'
import { mathOf } from './math.js'
import { verdictWords } from './outline.js'
import { style } from './style.js'
import type { Telling } from './telling.js'

/** A row of a sweep, whatever was varied. */
export type Row = SweepRow<Record<never, never>, Record<never, never>, Kind>

/** A piece of HTML with the look of a report. @internal */
export function framed(inner: string): string {
  return `<section class="kerbwatt"><style>${style}</style>${inner}</section>`
}

/** A table with its caption. @internal */
export function captioned(caption: string, heads: readonly string[], rows: readonly string[]): string {
  const [first = '', ...others] = heads
  const corner = first === '' ? '<td></td>' : `<th scope="col">${html(first)}</th>`
  const head = `<tr>${corner}${others.map((each) => `<th scope="col">${html(each)}</th>`).join('')}</tr>`
  return `<div class="scroll" tabindex="0" role="region" aria-label="${attribute(caption)}"><table><caption>${html(caption)}</caption><thead>${head}</thead><tbody>${rows.join('')}</tbody></table></div>`
}

/** A row of a table, its head first. @internal */
export function rowOf(head: string, cells: readonly string[], id = ''): string {
  const own = id === '' ? '' : ` id="${attribute(id)}"`
  return `<tr${own}><th scope="row">${html(head)}</th>${cells.map((each) => `<td>${figureHtml(each)}</td>`).join('')}</tr>`
}

/** @internal */
export function workingHtml({ steps }: Working<unknown>): string {
  const results = new Map<Quantity, string>()
  const list = (all: readonly Step[]): string =>
    all
      .map((step) => {
        if (!isFormulaStep(step))
          return `<p><b>${html(step.heading)}</b></p><div class="step">${list(step.steps)}</div>`
        const { title, symbol, formula, numbers, result, source } = lineOf(step, results)
        const parts = [symbol, ...(numbers === formula ? [] : [numbers])].map(html).join(' = ')
        return `<p>${html(title)}</p><div class="formula" tabindex="0">${mathOf(step.formula)}</div><p class="numbers">${parts} = <b>${figureHtml(result)}</b></p><p class="basis">${html(source)}</p>`
      })
      .join('')
  return framed(list(steps))
}

/** @internal */
export function propagatedHtml(found: Propagated<Kind>, telling: Telling): string {
  const { value, standardUncertainty, expanded, interval, contributions } = found
  const [low, high] = interval.map((each) => telling.within(each, expanded)) as [string, string]
  const told = telling.sure(value, expanded)
  const rows = contributions.map(({ input, uncertainty, share, sensitivity }) =>
    rowOf(input, [
      telling.shown(uncertainty),
      `${(share * 100).toFixed(1)} %`,
      String(Number(sensitivity.toPrecision(4))),
    ]),
  )
  const heads = ['input', 'uncertainty of the result from it', 'share of the variance', 'sensitivity, SI units']
  return framed(
    `<p><b>${figureHtml(told)}</b> (k = 2), standard uncertainty ${figureHtml(telling.shown(standardUncertainty))}, about 95 % within ${figureHtml(low)} to ${figureHtml(high)}</p>${captioned('What each input adds, the most first', heads, rows)}`,
  )
}

/** So many rows of a table are told. @internal */
export const MOST_ROWS = 200

/** @internal */
export function sweepHtml(rows: readonly Row[], telling: Telling): string {
  const told = rows as readonly { readonly [key: string]: Quantity }[]
  const keys = Object.keys(told[0] ?? {}).filter((key) => key !== 'result')
  const [key] = keys
  const drawn = keys.length === 1 && key !== undefined && told.length > 1 ? sweepPlot(told, key, telling) : ''
  const shown = told.slice(0, MOST_ROWS).map((row) => {
    const [head = '', ...cells] = [...keys, 'result'].map((each) => telling.shown(row[each] as Quantity))
    return rowOf(head, cells)
  })
  const more = told.length > MOST_ROWS ? `, the first ${MOST_ROWS} of ${told.length} rows` : ''
  return framed(`${drawn}${captioned(`Sweep of ${keys.join(' and ')}${more}`, [...keys, 'result'], shown)}`)
}

function sweepPlot(rows: readonly { readonly [key: string]: Quantity }[], key: string, telling: Telling): string {
  const [first] = rows as [{ readonly [key: string]: Quantity }]
  const [x, y] = [first[key], first.result].map((value) => telling.unitOf(value as Quantity)) as [string, string]
  const number = (value: Quantity | undefined, unit: string) => (value as Quantity).in(unit as never)
  const points = rows
    .map((row) => [number(row[key], x), number(row.result, y)] as const)
    .toSorted(([one], [other]) => one - other)
  return `<div class="pictures">${plot({
    name: `Result against ${key}`,
    x: { name: named(key, x) },
    y: { name: named('result', y) },
    series: [{ name: 'result', points }],
  })}</div>`
}

function named(name: string, unit: string): string {
  return unit === '1' ? name : `${name}, ${unit}`
}

/** @internal */
export function comparisonHtml({ variants, figures, checks }: Comparison, telling: Telling): string {
  const names = variants.map(({ name }) => name)
  const verdicts = rowOf(
    'verdict',
    variants.map((each) => ('error' in each ? `not sound: ${each.error}` : each.verdict)),
  )
  // What is the same in all is told by its absence.
  const different = figures.filter(({ differences }) => differences.some((each, i) => i > 0 && each?.si !== 0))
  const cells = (values: readonly (Quantity | undefined)[]) =>
    values.map((value) => (value === undefined ? 'none' : telling.shown(value)))
  const same = figures.length - different.length
  return framed(
    [
      captioned(
        `Sheets side by side: ${different.length} figures that differ, ${same} that are the same in all`,
        ['', ...names],
        [verdicts, ...different.slice(0, MOST_ROWS).map(({ name, values }) => rowOf(name, cells(values)))],
      ),
      ...(checks.length === 0
        ? []
        : [
            captioned(
              'Checks that do not come out the same',
              ['', ...names],
              checks.map(({ name, to }) =>
                rowOf(
                  name,
                  to.map((verdict) => (verdict === undefined ? 'none' : verdictWords[verdict])),
                ),
              ),
            ),
          ]),
    ].join(''),
  )
}

/** Whether a value is the rows of a sweep. @internal */
export function isSweep(value: unknown): value is readonly Row[] {
  return Array.isArray(value) && value.length > 0 && value.every((row) => isQuantity(Object(row).result))
}
