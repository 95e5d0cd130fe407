/** An assessment as a table for a spreadsheet. */

import { figuresIn } from '../conversion/chapters/section.js'
import type { Assessment, Figure, Section, SheetCheck } from '../conversion/index.js'
import type { Quantity } from '../quantity/index.js'
import { cleaned } from './markup.js'
import { refuseOthers } from './telling.js'

const heads = ['section', 'id', 'name', 'value', 'unit', 'verdict', 'limit', 'margin', 'basis']

/**
 * Writes the figures and the checks of an assessment as CSV (RFC 4180), a row each, section by section.
 *
 * Numbers stand as they were worked out, in the unit beside them, with all their digits and a plain minus. A text that a
 * spreadsheet would take for a formula has an apostrophe before it.
 *
 * @param assessment - What assess found.
 * @returns Rows of section, id, name, value, unit, verdict, limit, margin and basis, under their heads.
 * @throws InputError for what assess has not found.
 *
 * @example
 * ```ts
 * toCsv(assess(readBuild(sheet))).split('\r\n')[1] // 'weight,weight.before.mass,before: mass,650,kg,,,,'
 * ```
 */
export function toCsv(assessment: Assessment): string {
  refuseOthers('toCsv', assessment, {}, [])
  const rows = assessment.sections.flatMap((section) => [
    ...figuresIn(section).map((figure) => figureRow(section, figure)),
    ...section.checks.map((check) => checkRow(section, check)),
  ])
  return [heads, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('')
}

function figureRow({ id: section }: Section, { id, name, value }: Figure): string[] {
  return [guarded(section), guarded(id), guarded(name), numberOf(value, value.unit), value.unit, '', '', '', '']
}

function checkRow(
  { id: section }: Section,
  { id, name, actual, limit, margin, verdict, basis, text }: SheetCheck,
): string[] {
  const unit = actual?.unit ?? ''
  // What has no figure says in words what came of it.
  const told = actual === undefined ? `${basis}: ${text}` : basis
  return [
    guarded(section),
    guarded(id),
    guarded(name),
    actual === undefined ? '' : numberOf(actual, unit),
    unit,
    verdict,
    limit === undefined ? '' : numberOf(limit, unit),
    margin === undefined ? '' : String(margin),
    guarded(told),
  ]
}

function numberOf(value: Quantity, unit: string): string {
  return String(value.in(unit as never) + 0)
}

/** A text that no spreadsheet takes for a formula. */
function guarded(text: string): string {
  const seen = cleaned(text)
  return /^[=+\-@]/.test(seen) || /^[\t\r=+\-@]/.test(text) ? `'${seen}` : seen
}

function field(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
