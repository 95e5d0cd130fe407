/** An assessment as plain text, in the order in which a builder would read it. */
import type { Assessment, Section, Table } from '../conversion/index.js'
import { type Caution, type Check, toldApart } from '../procedure/index.js'
import type { Quantity } from '../quantity/index.js'

/** The widest line of running text. */
const WIDTH = 100

/**
 * Writes an assessment as plain text.
 *
 * @param assessment - What assess found.
 * @returns Lines of at most about 100 characters: each section with its figures, tables, checks and assumptions;
 *   what was not assessed and why; the cautions, each once.
 */
export function toText(assessment: Assessment): string {
  const { title, note, notes, sections, unassessed } = assessment
  const cautions = new Map(sections.flatMap((section) => section.cautions.map((caution) => [caution.id, caution])))
  const blocks = [
    [title, '='.repeat(title.length), ...(note === undefined ? [] : wrapped(note, ''))],
    ...(notes.length === 0
      ? []
      : [['Unusual', '-------', ...notes.flatMap(({ path, text }) => wrapped(`${path}: ${text}`, '  '))]]),
    ...sections.map(sectionText),
    ...unassessed.map(({ title: name, why }) => [
      name,
      '-'.repeat(name.length),
      ...wrapped(`Not assessed: ${why}`, ''),
    ]),
    ['Cautions', '--------', ...[...cautions.values()].flatMap(cautionText)],
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

function sectionText({ title, figures, tables, checks, assumptions, notes }: Section): string[] {
  return [
    title,
    '-'.repeat(title.length),
    ...aligned(figures.map(({ name, value }) => [name, shownFigure(value)])),
    ...tables.flatMap((table, i) => [...(i === 0 && figures.length === 0 ? [] : ['']), ...tableText(table)]),
    ...(checks.length === 0 ? [] : ['', ...checks.flatMap(checkText)]),
    ...(notes.length === 0 ? [] : ['', ...notes.flatMap(({ text }) => wrapped(text, '  unusual: '))]),
    ...(assumptions.length === 0 ? [] : ['', ...assumptions.flatMap((each) => wrapped(each.text, '  assumed: '))]),
  ]
}

function tableText({ title, columns, rows, notes = [] }: Table): string[] {
  const cells = [
    ['', ...columns.map(({ name }) => name)],
    ...rows.map(({ name, values }) => [name, ...values.map(shownFigure)]),
  ]
  return [title, ...(rows.length === 0 ? [] : aligned(cells)), ...notes.flatMap((note) => wrapped(note, '  '))]
}

/** Rows with the first column to the left and the others to the right, each as wide as its widest cell. */
function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => (row[column] ?? '').length)))
  return rows.map((row) =>
    row
      .map((cell, i) => (i === 0 ? `  ${cell.padEnd(widths[0] as number)}` : cell.padStart((widths[i] as number) + 3)))
      .join(''),
  )
}

/** A figure to four digits, with a minus sign that can be seen. */
function shownFigure(value: Quantity | string): string {
  return String(value).replace(/^-/, '−')
}

const verdicts = { pass: 'ok', near: 'NEAR', fail: 'FAILS', unknown: 'UNKNOWN' } as const

function checkText(check: Check): string[] {
  const { name, verdict, actual, limit, sense, margin, basis } = check
  const mark = `  ${verdicts[verdict].padEnd(5)} `
  if (actual === undefined || limit === undefined || margin === undefined) {
    return wrapped(`${name}: ${check.text} (${basis})`, mark)
  }
  const left = margin < 0 ? `${percent(-margin)} beyond` : `${percent(margin)} left`
  const [figure, bound] = toldApart(actual, limit).map(shownFigure)
  const text = `${name}: ${figure}, ${sense} ${bound}; ${left} (${basis})`
  return wrapped(text, mark)
}

function percent(share: number): string {
  return `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`
}

function cautionText({ hazard, text }: Caution): string[] {
  return wrapped(`${hazard.charAt(0).toUpperCase()}${hazard.slice(1)}. ${text}`, '  ! ')
}

/** Text in lines of at most the width, the first after a mark and the others in line with it. */
function wrapped(text: string, mark: string): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && mark.length + line.length + 1 + word.length > WIDTH) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line].map((each, i) => `${i === 0 ? mark : ' '.repeat(mark.length)}${each}`)
}
