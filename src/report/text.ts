/** An assessment as plain text: what it comes to first, then section by section as the job is done. */
import { familiesOf } from '../conversion/chapters/section.js'
import type { Assessment, Section, SheetCheck, Table } from '../conversion/index.js'
import type { Caution } from '../procedure/index.js'
import { shown } from '../quantity/errors.js'
import type { Units } from './figure.js'
import { linesSeen } from './markup.js'
import { finestOf, refuseOthers, roughIn, Telling, verdictSentences } from './telling.js'

/** How an assessment is written as text. */
export interface TextOptions {
  /** Leaves out the assumptions. */
  readonly brief?: boolean
  /** The widest line of running text, 100 characters unless given; at least 40. */
  readonly width?: number
  /** Units in which figures are shown, in place of those that they come in. */
  readonly units?: Units
}

/** The widest line, and the least that leaves room for words. */
const [WIDTH, NARROWEST] = [100, 40]
/** How many lines the summary has at most. */
const LINES = 12

/**
 * Writes an assessment as plain text.
 *
 * @param assessment - What assess found.
 * @param options - `brief`: no assumptions; `width` of the lines; `units` in which figures are shown: 'imperial', or by kind,
 *   such as `{ length: 'mi' }`, which leaves millimetres be.
 * @returns Lines of text: the verdict with what stands against it and the figures that everybody asks for, in at most
 *   twelve lines; each section with its figures, tables and checks; what was not assessed and why; the assumptions,
 *   numbered; the cautions, each once.
 * @throws InputError for what assess has not found, and for options that cannot be used.
 */
export function toText(assessment: Assessment, options: TextOptions = {}): string {
  refuseOthers('toText', assessment, options, ['brief', 'width', 'units'], (path, value) => {
    if (path === 'brief' && value !== undefined && typeof value !== 'boolean') {
      return [{ path, expected: 'true or false', received: shown(value) }]
    }
    const isNoWidth =
      path === 'width' && value !== undefined && !(Number.isInteger(value) && (value as number) >= NARROWEST)
    const expected = `a whole number of characters, at least ${NARROWEST}`
    return isNoWidth ? [{ path, expected, received: shown(value) }] : []
  })
  const { brief = false, width = WIDTH, units } = options
  return new Writer(width, new Telling(units, assessment.bands)).whole(assessment, brief)
}

const verdicts = { pass: 'ok', near: 'NEAR', fail: 'FAILS', unknown: 'UNKNOWN' } as const

/** Writes in lines of a width, with figures as they are shown. */
class Writer {
  readonly #width: number
  readonly #telling: Telling

  constructor(width: number, telling: Telling) {
    this.#width = width
    this.#telling = telling
  }

  whole(assessment: Assessment, isBrief: boolean): string {
    const { title, note, notes, sections, unassessed, assumptions, cautions, bands = [], measureNext = [] } = assessment
    const rough = bands.flatMap((band) => roughIn(band))
    const blocks = [
      [...underlined(title, '='), ...(note === undefined ? [] : this.#wrapped(note, ''))],
      this.#summary(assessment),
      ...(measureNext.length === 0
        ? []
        : [[...underlined('Measure next'), ...measureNext.flatMap(({ text }) => this.#wrapped(text, '  '))]]),
      ...(rough.length === 0
        ? []
        : [[...underlined('Rough bands'), ...rough.flatMap((text) => this.#wrapped(text, '  '))]]),
      ...(notes.length === 0
        ? []
        : [[...underlined('Unusual'), ...notes.flatMap(({ path, text }) => this.#wrapped(`${path}: ${text}`, '  '))]]),
      ...sections.map((section) => this.#section(section)),
      ...(unassessed.length === 0
        ? []
        : [
            [
              ...underlined('Not assessed'),
              ...unassessed.flatMap(({ title: name, why }) => this.#wrapped(`${name}: ${why}`, '  ')),
            ],
          ]),
      ...(isBrief || assumptions.length === 0
        ? []
        : [
            [
              ...underlined('Taken for granted'),
              ...assumptions.flatMap(({ text }, i) => this.#wrapped(text, `${`${i + 1}`.padStart(5)}  `)),
            ],
          ]),
      [...underlined('Cautions'), ...cautions.flatMap((caution) => this.#caution(caution))],
    ]
    return linesSeen(`${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`)
  }

  #summary(assessment: Assessment): string[] {
    const lines = this.#telling.summary(assessment)
    const widest = Math.max(...lines.map(([name]) => name.length))
    const marked = lines.map(([name, text]) => [`  ${name.padEnd(widest)}  `, text] as const)
    const whole = marked.flatMap(([mark, text]) => this.#wrapped(text, mark))
    // Figures give way to what stands against the build.
    const cut = marked.slice(0, LINES - 1).map(([mark, text]) => this.#cut(`${mark}${text}`))
    return [verdictSentences[assessment.verdict], ...(whole.length < LINES ? whole : cut)]
  }

  #section({ title, figures, tables, checks, notes }: Section): string[] {
    return [
      ...underlined(title),
      ...aligned(figures.map(({ name, value }) => [name, this.#telling.shown(value)])),
      ...tables.flatMap((table, i) => [...(i === 0 && figures.length === 0 ? [] : ['']), ...this.#table(table)]),
      ...(checks.length === 0 ? [] : ['', ...alike(checks).flatMap((family) => this.#checks(family))]),
      ...(notes.length === 0 ? [] : ['', ...notes.flatMap(({ text }) => this.#wrapped(text, '  unusual: '))]),
    ]
  }

  #table({ title, columns, rows, measures, notes = [] }: Table): string[] {
    const cells = [
      ['', ...columns.map(({ name }) => name)],
      ...rows.map(({ name, values }) => [
        name,
        ...values.map((value) => this.#telling.cell(value, measures === 'rows' ? finestOf(values) : 0)),
      ]),
    ]
    return [
      ...this.#wrapped(title, ''),
      ...(rows.length === 0 ? [] : aligned(cells)),
      ...notes.flatMap((note) => this.#wrapped(note, '  ')),
    ]
  }

  /** The same check of several runs, gears or seasons in one line: the worst, and how many there are. */
  #checks([worst, ...others]: readonly [SheetCheck, ...SheetCheck[]]): string[] {
    const same = others.filter(({ verdict }) => verdict === worst.verdict).length
    const [many, all] = [same + 1, others.length + 1]
    const count = all === 1 ? '' : many === all ? `, the worst of ${all}` : `, ${many} of ${all}`
    const mark = `  ${verdicts[worst.verdict].padEnd(5)} `
    return this.#wrapped(`${worst.name}: ${this.#telling.outcome(worst)}${count} (${worst.basis})`, mark)
  }

  #caution({ hazard, text }: Caution): string[] {
    return this.#wrapped(`${hazard.charAt(0).toUpperCase()}${hazard.slice(1)}. ${text}`, '  ! ')
  }

  #cut(line: string): string {
    return line.length <= this.#width ? line : `${line.slice(0, this.#width - 1)}…`
  }

  /** Text in lines of at most the width, the first after a mark and the others in line with it. */
  #wrapped(text: string, mark: string): string[] {
    const lines: string[] = []
    let line = ''
    // A number keeps its unit beside it.
    for (const word of text.split(/(?<!\d) | (?=\S{7})/)) {
      if (line !== '' && mark.length + line.length + 1 + word.length > this.#width) {
        lines.push(line)
        line = word
      } else line = line === '' ? word : `${line} ${word}`
    }
    return [...lines, line].map((each, i) => `${i === 0 ? mark : ' '.repeat(mark.length)}${each}`)
  }
}

/** Checks of one thing together, the worst first. */
function alike(checks: readonly SheetCheck[]): (readonly [SheetCheck, ...SheetCheck[]])[] {
  const rank = { fail: 0, unknown: 1, near: 2, pass: 3 } as const
  return familiesOf(checks).map(
    (all) =>
      all.toSorted(
        (one, other) => rank[one.verdict] - rank[other.verdict] || (one.margin ?? 0) - (other.margin ?? 0),
      ) as [SheetCheck, ...SheetCheck[]],
  )
}

function underlined(title: string, line = '-'): string[] {
  return [title, line.repeat(title.length)]
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
