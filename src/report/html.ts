/** What was worked out as HTML: an assessment as a page, anything else as a fragment for a page. */
import type { Assessment, Comparison, Exploration, Study } from '../conversion/index.js'
import type { Propagated, Working } from '../formula/index.js'
import { shown } from '../quantity/errors.js'
import { InputError, type Kind } from '../quantity/index.js'
import type { Units } from './figure.js'
import { comparisonHtml, isSweep, propagatedHtml, type Row, sweepHtml, workingHtml } from './fragment.js'
import { frontHtml } from './front.js'
import { pageOf } from './page.js'
import { refuseOptions, Telling } from './telling.js'

/** How something is written as HTML. */
export interface HtmlOptions {
  /** Units in which figures are shown, in place of those that they come in. */
  readonly units?: Units
}

/** What a fragment shows. */
export type Showable = Working<unknown> | Propagated<Kind> | readonly Row[] | Comparison

/**
 * Writes an assessment as one page, complete in itself: no script, nothing loaded from elsewhere.
 *
 * @param assessment - What assess found.
 * @param options - `units` in which figures are shown: 'imperial', or by kind, such as `{ length: 'mi' }`.
 * @returns The page. The same sheet gives the same page.
 * @throws InputError for what assess has not found, and for options that cannot be used.
 *
 * @example
 * ```ts
 * toHtml(assess(readBuild(sheet))).slice(0, 15) // '<!DOCTYPE html>'
 * ```
 */
export function toHtml(assessment: Assessment, options?: HtmlOptions): string
/**
 * Writes a working, a result with its uncertainty, a sweep or a comparison as a piece of HTML.
 *
 * @param found - What `explain`, `propagate`, `sweep` or `compare` gave.
 * @param options - `units` in which figures are shown.
 * @returns A `section` with the look of a report, without a script.
 */
export function toHtml(found: Showable, options?: HtmlOptions): string
/**
 * Writes what came of a study as a piece of HTML: its variants drawn by two objectives at a time, and the front as a table
 * that the numbers in the drawing lead to.
 *
 * @param found - What `explore` gave.
 * @param options - `study`, of which it came: its sheet as it is stands in the drawing too; `units`.
 */
export function toHtml(found: Exploration, options: HtmlOptions & { readonly study: Study }): string
export function toHtml(
  found: Assessment | Showable | Exploration,
  options: HtmlOptions & { readonly study?: Study } = {},
): string {
  const has = (...keys: readonly string[]) => keys.every((key) => Object.hasOwn(Object(found), key))
  if (has('sections')) return pageOf(found as Assessment, options)
  const isStudied = has('front', 'results')
  refuseOptions('toHtml', options, isStudied ? ['units', 'study'] : ['units'])
  const telling = new Telling(options.units)
  if (isStudied) {
    if (options.study !== undefined) return frontHtml(found as Exploration, options.study, telling)
    const expected = 'the study of which it came: toHtml(explore(study), { study })'
    throw new InputError('toHtml', [{ path: 'study', expected, received: 'nothing' }])
  }
  if (has('steps', 'result')) return workingHtml(found as Working<unknown>)
  if (has('standardUncertainty', 'contributions')) return propagatedHtml(found as Propagated<Kind>, telling)
  if (has('variants', 'figures')) return comparisonHtml(found as Comparison, telling)
  if (isSweep(found)) return sweepHtml(found, telling)
  const expected = 'what assess, explain, propagate, sweep, compare or explore has found'
  throw new InputError('toHtml', [{ path: '', expected, received: shown(found) }])
}

/** What a notebook asks a value for how it is shown (Jupyter, Deno's kernel). */
const display = /*@__PURE__*/ Symbol.for('Jupyter.display')

/**
 * Wraps HTML so that a notebook shows it when it is the last value of a cell.
 *
 * @param html - What {@link toHtml} gave.
 * @returns An object with the display symbol of Jupyter.
 *
 * @example
 * ```ts
 * forNotebook(toHtml(explain(() => cableVoltageDrop(run))))
 * ```
 */
export function forNotebook(html: string): object {
  return { [display]: () => ({ 'text/html': html }) }
}
