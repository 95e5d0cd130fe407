/** What is told of an assessment in any form: figures as far as they are sure, the lines of the summary, what came of a check. */
import { calledBy } from '../conversion/chapters/section.js'
import type { Assessment, Band, SheetCheck, Summary, WorstCheck } from '../conversion/index.js'
import { unknownKey } from '../formula/formula.js'
import { toldApart } from '../procedure/index.js'
import { shown } from '../quantity/errors.js'
import { InputError, type InputIssue, type Quantity } from '../quantity/index.js'
import { refuseUnits, type Shown, shownIn, type Units, unitFor } from './figure.js'

/** A line of the summary: what it is about, and what is told. @internal */
export type Line = readonly [name: string, text: string]

/** What comes of the whole, in a sentence. @internal */
export const verdictSentences = {
  holds: 'HOLDS: every check is met.',
  near: 'NEAR: every check is met, and some are near their limits.',
  fails: 'FAILS: not every check is met.',
  open: 'OPEN: nothing fails, and not everything could be judged.',
} as const

/** How many digits of the largest figure of a row a difference may reach down to. */
const DIFFERENCE_DIGITS = 4
/** How many checks of a verdict the summary tells. @internal */
export interface OfEach {
  readonly fails: number
  readonly unknown: number
  readonly near: number
}

const OF_EACH: OfEach = { fails: 3, unknown: 2, near: 1 }

/** Refuses what is no assessment, and options that there are not. @internal */
export function refuseOthers(
  where: string,
  assessment: unknown,
  options: object,
  known: readonly string[],
  issuesOf: (key: string, value: unknown) => readonly InputIssue[] = () => [],
): void {
  if (!Array.isArray(Object(assessment).sections)) {
    const expected = `what assess has found, such as ${where}(assess(readBuild(sheet)))`
    throw new InputError(where, [{ path: '', expected, received: shown(assessment) }])
  }
  refuseOptions(where, options, known, issuesOf)
}

/** Refuses options that there are not, and units that are none. @internal */
export function refuseOptions(
  where: string,
  options: object,
  known: readonly string[],
  issuesOf: (key: string, value: unknown) => readonly InputIssue[] = () => [],
): void {
  const issues = Object.entries(options).flatMap(([key, value]) =>
    known.includes(key) ? issuesOf(key, value) : [unknownKey(key, value, known, 'option')],
  )
  if (issues.length > 0) throw new InputError(where, issues)
  refuseUnits(where, (options as { readonly units?: unknown }).units)
}

/** Tells figures in some units, each as far as its band goes. @internal */
export class Telling {
  readonly #how: Shown
  readonly #units: Units | undefined
  /** The bands of figures, wherever these are shown. */
  readonly #bands: ReadonlyMap<Quantity, Band>

  constructor(units: Units | undefined, bands: readonly Band[] = []) {
    this.#how = shownIn(units)
    this.#units = units
    this.#bands = new Map(bands.map((band) => [band.value, band]))
  }

  /** A figure, as far as its band goes. */
  shown(value: Quantity, finest?: number): string {
    return this.#sure(value)[0] ?? this.#how.alone(value, finest)
  }

  /** The unit in which a figure is shown, and others beside it on an axis. */
  unitOf(value: Quantity): string {
    return unitFor(value, this.#units)
  }

  /** A cell of a table: a word, or a figure. */
  cell(value: Quantity | string, finest: number): string {
    return typeof value === 'string' ? value : this.shown(value, finest)
  }

  /** A figure with what it is sure to, where that is known. */
  withBand(value: Quantity): string {
    return this.#sure(value).join(' ± ') || this.#how.alone(value)
  }

  /** A figure and its expanded uncertainty, as far as two digits of the latter go. */
  sure(value: Quantity, expanded: Quantity): string {
    return expanded.si === 0 ? this.#how.alone(value) : this.#how.sure(value, expanded).join(' ± ')
  }

  /** A figure alone, as far as two digits of an expanded uncertainty go. */
  within(value: Quantity, expanded: Quantity): string {
    return expanded.si === 0 ? this.#how.alone(value) : (this.#how.sure(value, expanded)[0] as string)
  }

  #sure(value: Quantity): readonly string[] {
    const band = this.#bands.get(value)
    return band === undefined || band.standardUncertainty.si === 0
      ? []
      : this.#how.sure(value, band.standardUncertainty.times(2))
  }

  /** What stands against the build, and the figures that everybody asks for. */
  summary({ summary, unassessed }: Assessment, ofEach: OfEach = OF_EACH): Line[] {
    const asked = unassessed.filter(({ isAsked }) => isAsked).map(({ title }) => title)
    return [
      ...(Object.keys(OF_EACH) as (keyof OfEach)[]).flatMap((key) => this.#against(summary, key, ofEach[key])),
      ...(asked.length === 0 ? [] : [['not assessed', asked.join(', ')] as const]),
      ...this.#key(summary),
    ]
  }

  /** The worst checks of a verdict, a line each, and how many more there are. */
  #against(summary: Summary, key: keyof OfEach, most: number): Line[] {
    const all = summary[key]
    const told = all.slice(0, most)
    const more = all.length - told.length
    return told.map((worst, i) => {
      const rest = i === told.length - 1 && more > 0 ? `; and ${more} more` : ''
      return [i === 0 ? key : '', `${this.#worst(worst)}${rest}`]
    })
  }

  #worst({ check, ids }: WorstCheck): string {
    const alike = ids.length > 1 ? ` (and ${ids.length - 1} alike)` : ''
    return `${check.name}: ${this.outcome(check)}${alike}`
  }

  /** The figures that everybody asks for. */
  #key({ figures, binds }: Summary): Line[] {
    const valueOf = (id: string) => figures.find((each) => each.id === id)?.value
    const of = (id: string) => {
      const value = valueOf(id)
      return value === undefined ? undefined : this.withBand(value)
    }
    const change = (id: string) => {
      const before = valueOf(`weight.before.${id}`)
      return [before && this.shown(before), of(`weight.after.${id}`)].join(' → ')
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
    const line = (name: string, ...parts: (string | undefined)[]): Line[] => {
      const told = parts.filter((part) => part !== undefined)
      return told.length === 0 ? [] : [[name, told.join('; ')]]
    }
    return [
      ...line('weight', change('mass'), `front ${change('frontShare')}`, `cross ${change('crossShare')}`),
      ...line('energy', of('pack.energy')),
      ...line('range', ...ranges.map(({ id, value }) => `${inWords(id, ranges)} ${this.withBand(value)}`)),
      ...line('goes', speed && `up to ${speed}`, start && `starts on ${start}`, sprint && `0 to 80 km/h in ${sprint}`),
      ...line('charges', of('charging.time')),
      ...line('held by', ...held),
    ]
  }

  /** The figure of a check and its limit, with as many digits as it takes to tell the two apart. */
  figureAndLimit({ actual, limit }: SheetCheck): readonly [figure: string, limit: string] | undefined {
    if (actual === undefined || limit === undefined) return undefined
    const [figure, bound] = [actual, limit].map((each) => this.#how.alone(each)) as [string, string]
    return figure === bound ? toldApart(actual, limit) : [figure, bound]
  }

  /** What came of a check, in words. */
  outcome(check: SheetCheck): string {
    const told = this.figureAndLimit(check)
    if (told === undefined || check.margin === undefined) return check.text
    return `${told[0]}, ${check.sense} ${told[1]}; ${leftOf(check.margin)}`
  }
}

/** What is left of a limit, or how far beyond it a figure is. @internal */
export function leftOf(margin: number): string {
  if (margin > 1) return `${Number((1 + margin).toPrecision(2))} times the limit`
  return margin < 0 ? `${percent(-margin)} beyond` : `${percent(margin)} left`
}

/** What is to be said of a band that does not tell all. @internal */
export function roughIn({ id, name, jumps, steps }: Band): readonly string[] {
  const band = `The band of ${name} (${id})`
  return [
    ...(jumps.length === 0
      ? []
      : [`${band} leaves out ${jumps.join(', ')}: the figure jumps, or cannot be worked out, as that changes.`]),
    ...(steps.length === 0 ? [] : [`${band} is rough: the figure goes in steps as ${steps.join(', ')} changes.`]),
  ]
}

/** The finest step of a row, in SI units: of a difference no more is told than of what it is the difference of. @internal */
export function finestOf(values: readonly (Quantity | string)[]): number {
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

function percent(share: number): string {
  return `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`
}
