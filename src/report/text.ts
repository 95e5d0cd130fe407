/** An assessment as plain text: what it comes to first, then section by section as the job is done. */
import { calledBy, familiesOf } from '../conversion/chapters/section.js'
import type { Assessment, Band, Section, SheetCheck, Summary, Table, WorstCheck } from '../conversion/index.js'
import { unknownKey } from '../formula/formula.js'
import { type Caution, toldApart } from '../procedure/index.js'
import { shown } from '../quantity/errors.js'
import { InputError, type Quantity } from '../quantity/index.js'
import { refuseUnits, type Shown, shownIn, type Units } from './figure.js'

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
/** How many digits of the largest figure of a row a difference may reach down to. */
const DIFFERENCE_DIGITS = 4
/** How many lines the summary has at most, and of each verdict. */
const [LINES, OF_EACH] = [12, { fails: 3, unknown: 2, near: 1 }] as const

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
  const { brief = false, width = WIDTH, units } = options
  refuseOthers(assessment, options)
  refuseUnits('toText', units)
  if (!Number.isInteger(width) || width < NARROWEST) {
    const expected = `a whole number of characters, at least ${NARROWEST}`
    throw new InputError('toText', [{ path: 'width', expected, received: shown(width) }])
  }
  return new Writer(width, shownIn(units), assessment.bands).whole(assessment, brief)
}

/** Refuses what is no assessment, and options that there are not. */
function refuseOthers(assessment: unknown, options: TextOptions): void {
  if (!Array.isArray(Object(assessment).sections)) {
    const expected = 'what assess has found, such as toText(assess(readBuild(sheet)))'
    throw new InputError('toText', [{ path: '', expected, received: shown(assessment) }])
  }
  const known = ['brief', 'width', 'units']
  const issues = Object.entries(options).flatMap(([key, value]) => {
    if (!known.includes(key)) return [unknownKey(key, value, known, 'option')]
    const isWrong = key === 'brief' && value !== undefined && typeof value !== 'boolean'
    return isWrong ? [{ path: key, expected: 'true or false', received: shown(value) }] : []
  })
  if (issues.length > 0) throw new InputError('toText', issues)
}

const verdicts = { pass: 'ok', near: 'NEAR', fail: 'FAILS', unknown: 'UNKNOWN' } as const

/** Writes in lines of a width, with figures as they are shown. */
class Writer {
  readonly #width: number
  readonly #how: Shown
  /** The bands of figures, wherever these are shown. */
  readonly #bands: ReadonlyMap<Quantity, Band>

  constructor(width: number, how: Shown, bands: readonly Band[] = []) {
    this.#width = width
    this.#how = how
    this.#bands = new Map(bands.map((band) => [band.value, band]))
  }

  /** A figure, as far as its band goes. */
  #shown(value: Quantity, finest?: number): string {
    return this.#sure(value)[0] ?? this.#how.alone(value, finest)
  }

  /** A figure with what it is sure to, where that is known. */
  #withBand(value: Quantity): string {
    return this.#sure(value).join(' ± ') || this.#how.alone(value)
  }

  #sure(value: Quantity): readonly string[] {
    const band = this.#bands.get(value)
    return band === undefined || band.standardUncertainty.si === 0
      ? []
      : this.#how.sure(value, band.standardUncertainty.times(2))
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
    return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
  }

  #summary({ verdict, summary, unassessed }: Assessment): string[] {
    const asked = unassessed.filter(({ isAsked }) => isAsked).map(({ title }) => title)
    const said = {
      holds: 'HOLDS: every check is met.',
      near: 'NEAR: every check is met, and some are near their limits.',
      fails: 'FAILS: not every check is met.',
      open: 'OPEN: nothing fails, and not everything could be judged.',
    }[verdict]
    const against = (Object.keys(OF_EACH) as (keyof typeof OF_EACH)[]).flatMap((key) => this.#against(summary, key))
    const open = asked.length === 0 ? [] : [['not assessed', asked.join(', ')] as const]
    const lines = [...against, ...open, ...this.#key(summary)]
    const widest = Math.max(...lines.map(([name]) => name.length))
    const marked = lines.map(([name, text]) => [`  ${name.padEnd(widest)}  `, text] as const)
    const whole = marked.flatMap(([mark, text]) => this.#wrapped(text, mark))
    // Figures give way to what stands against the build.
    const cut = marked.slice(0, LINES - 1).map(([mark, text]) => this.#cut(`${mark}${text}`))
    return [said, ...(whole.length < LINES ? whole : cut)]
  }

  /** The worst checks of a verdict, a line each, and how many more there are. */
  #against(summary: Summary, key: keyof typeof OF_EACH): (readonly [string, string])[] {
    const all = summary[key]
    const told = all.slice(0, OF_EACH[key])
    const more = all.length - told.length
    return told.map((worst, i) => {
      const rest = i === told.length - 1 && more > 0 ? `; and ${more} more` : ''
      return [i === 0 ? key : '', `${this.#worst(worst)}${rest}`] as const
    })
  }

  #worst({ check, ids }: WorstCheck): string {
    const alike = ids.length > 1 ? ` (and ${ids.length - 1} alike)` : ''
    return `${check.name}: ${this.#outcome(check)}${alike}`
  }

  /** The figures that everybody asks for. */
  #key({ figures, binds }: Summary): (readonly [string, string])[] {
    const valueOf = (id: string) => figures.find((each) => each.id === id)?.value
    const of = (id: string) => {
      const value = valueOf(id)
      return value === undefined ? undefined : this.#withBand(value)
    }
    const change = (id: string) => {
      const before = valueOf(`weight.before.${id}`)
      return [before && this.#shown(before), of(`weight.after.${id}`)].join(' → ')
    }
    const ranges = figures.filter(({ id }) => id.startsWith('journeys.'))
    const start = of('road.startGrade')
    const sprint = of('road.to80.time')
    const speed = of('road.topSpeed')
    const moments = [
      ['pulling away', binds.start],
      ['on the hill', binds.hill],
      ['at top speed', binds.topSpeed],
    ] as const
    const holders = [...new Set(moments.flatMap(([, what]) => what ?? []))]
    const held = holders.map((holder) => {
      const when = moments.filter(([, what]) => what === holder).map(([moment]) => moment)
      return `${holder} (${when.join(', ')})`
    })
    const line = (name: string, ...parts: (string | undefined)[]) => {
      const told = parts.filter((part) => part !== undefined)
      return told.length === 0 ? [] : [[name, told.join('; ')] as const]
    }
    return [
      ...line('weight', change('mass'), `front ${change('frontShare')}`, `cross ${change('crossShare')}`),
      ...line('energy', of('pack.energy')),
      ...line('range', ...ranges.map(({ id, value }) => `${inWords(id, ranges)} ${this.#withBand(value)}`)),
      ...line('goes', speed && `up to ${speed}`, start && `starts on ${start}`, sprint && `0 to 80 km/h in ${sprint}`),
      ...line('charges', of('charging.time')),
      ...line('held by', ...held),
    ]
  }

  #section({ title, figures, tables, checks, notes }: Section): string[] {
    return [
      ...underlined(title),
      ...aligned(figures.map(({ name, value }) => [name, this.#shown(value)])),
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
        ...values.map((value) => this.#value(value, measures === 'rows' ? finestOf(values) : 0)),
      ]),
    ]
    return [
      ...this.#wrapped(title, ''),
      ...(rows.length === 0 ? [] : aligned(cells)),
      ...notes.flatMap((note) => this.#wrapped(note, '  ')),
    ]
  }

  #value(value: Quantity | string, finest: number): string {
    return typeof value === 'string' ? value : this.#shown(value, finest)
  }

  /** The same check of several runs, gears or seasons in one line: the worst, and how many there are. */
  #checks([worst, ...others]: readonly [SheetCheck, ...SheetCheck[]]): string[] {
    const same = others.filter(({ verdict }) => verdict === worst.verdict).length
    const [many, all] = [same + 1, others.length + 1]
    const count = all === 1 ? '' : many === all ? `, the worst of ${all}` : `, ${many} of ${all}`
    const mark = `  ${verdicts[worst.verdict].padEnd(5)} `
    return this.#wrapped(`${worst.name}: ${this.#outcome(worst)}${count} (${worst.basis})`, mark)
  }

  #outcome({ text, actual, limit, sense, margin }: SheetCheck): string {
    if (actual === undefined || limit === undefined || margin === undefined) return text
    const left = margin < 0 ? `${percent(-margin)} beyond` : `${percent(margin)} left`
    const [figure, bound] = [actual, limit].map((each) => this.#how.alone(each))
    // With as many digits as it takes to tell the two apart.
    const [exact, exactBound] = figure === bound ? toldApart(actual, limit) : [figure, bound]
    return `${exact}, ${sense} ${exactBound}; ${left}`
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

/** What is to be said of a band that does not tell all. */
function roughIn({ id, name, jumps, steps }: Band): readonly string[] {
  const band = `The band of ${name} (${id})`
  return [
    ...(jumps.length === 0
      ? []
      : [`${band} leaves out ${jumps.join(', ')}: the figure jumps, or cannot be worked out, as that changes.`]),
    ...(steps.length === 0 ? [] : [`${band} is rough: the figure goes in steps as ${steps.join(', ')} changes.`]),
  ]
}

/** The finest step of a row, in SI units: of a difference no more is told than of what it is the difference of. */
function finestOf(values: readonly (Quantity | string)[]): number {
  const sizes = values.flatMap((value) => (typeof value === 'string' ? [] : [Math.abs(value.si)]))
  return Math.max(0, ...sizes) / 10 ** DIFFERENCE_DIGITS
}

/** Of which journey and season a range is, by the keys of the sheet; the only journey goes without saying. */
function inWords(id: string, all: readonly { readonly id: string }[]): string {
  const [, journey, season] = id.split('.') as [string, string, string]
  const isOnly = all.every((each) => each.id.startsWith(`journeys.${journey}.`))
  const words = isOnly ? season : `${journey} ${season}`
  return calledBy(words, {})
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

function percent(share: number): string {
  return `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`
}
