/**
 * How sure the key figures of a build are, and what to measure next.
 *
 * Each input that carries an uncertainty is moved up and down, and the whole build assessed again. A figure that moves evenly
 * has the uncertainty of JCGM 100:2008, 5.1, to first order; for one that bends the two moved values and the middle one are
 * weighed as Gauss and Hermite weigh three points (Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.46), which
 * is right to the third order.
 */
import { placed } from '../procedure/path.js'
import { lowerFirst } from '../procedure/reading.js'
import { CalculationError, InputError, type Kind, type Quantity } from '../quantity/index.js'
import { differenceOf, kinds } from '../quantity/kinds.js'
import { fromSi } from '../quantity/quantity.js'
import type { Figure } from './chapters/section.js'
import { type Build, sheetField, withoutOwn } from './sheet/build.js'
import { type UncertainValue, uncertaintiesIn } from './sheet/uncertain.js'

/** How sure a key figure is. */
export interface Band {
  /** The id of the figure. */
  readonly id: string
  readonly name: string
  readonly value: Quantity
  /** One standard deviation. */
  readonly standardUncertainty: Quantity
  /** About 95 % of what to expect: the value less and plus twice the standard uncertainty. */
  readonly interval: readonly [Quantity, Quantity]
  /** What each input adds, the largest share of the variance first; those that add nothing are left out. */
  readonly contributions: readonly {
    readonly path: string
    readonly about: string
    readonly share: number
    /** The uncertainty of the figure from this input alone. */
    readonly uncertainty: Quantity
    /** On what ground its uncertainty stands, where the sheet says nothing. */
    readonly because?: string
  }[]
  /**
   * Inputs by which the figure jumps, as where another section is chosen, or with which it cannot be worked out: the band says
   * nothing of them.
   */
  readonly jumps: readonly string[]
  /**
   * Inputs by which the figure goes in steps, as a range does that ends on a hill or just behind it: they are in the band, and
   * make it rough.
   */
  readonly steps: readonly string[]
}

/** A single measurement that would narrow a figure. */
export interface Measurement {
  /** What to measure, by its path on the sheet. */
  readonly path: string
  /** The figure that it would narrow most. */
  readonly figure: string
  readonly text: string
}

/** A value that is measured with care is so many times surer than before. Common practice, no source. */
const SURER = 3
/** A band that shrinks by this share of itself is worth a measurement. */
const WORTH_IT = 0.05
/** How many measurements are told. */
const MOST_TOLD = 3

/** What an input does to the figures, by their ids. */
interface Effect {
  readonly input: UncertainValue
  readonly deviations: ReadonlyMap<string, number>
  readonly jumps: ReadonlySet<string>
  readonly steps: ReadonlySet<string>
}

/** The bands of figures and what to measure next, by assessing changed builds. @internal */
export function bandsFrom(
  build: Build,
  figures: readonly Figure[],
  figuresOf: (changed: Build) => readonly Figure[],
): { readonly bands: readonly Band[]; readonly measureNext: readonly Measurement[] } {
  const { values } = uncertaintiesIn(sheetField, withoutOwn(build), build.uncertain ?? {})
  const effects = values.map((input) => effectOf(input, build, figures, figuresOf))
  const bands = figures.map((each) => bandOf(each, effects))
  return { bands, measureNext: nextOf(bands, effects) }
}

function effectOf(
  input: UncertainValue,
  build: Build,
  figures: readonly Figure[],
  figuresOf: (changed: Build) => readonly Figure[],
): Effect {
  const at = (sign: 1 | -1): ReadonlyMap<string, number> | undefined => {
    const { value, deviation, keys } = input
    const moved = fromSi<Kind>(value.kind, value.si + sign * REACH * deviation, value.unit)
    try {
      return new Map(figuresOf(placed(build, keys, moved) as Build).map(({ id, value: each }) => [id, each.si]))
    } catch (error) {
      // Beyond a bound there is no such build: the other side alone tells the slope.
      if (error instanceof InputError || error instanceof CalculationError) return undefined
      throw error
    }
  }
  const sides = [at(1), at(-1)].filter((side) => side !== undefined)
  const deviations = new Map<string, number>()
  const [jumps, steps] = [new Set<string>(), new Set<string>()]
  const bendable = bendOf(input)
  for (const { id, value } of figures) {
    const moves = sides.map((side) => (side.get(id) ?? Number.NaN) - value.si)
    // Of one side alone the other is as far.
    const [one = 0, other = -one] = moves
    // A smooth figure moves about as far either way.
    const bend = Math.abs(one + other)
    const isSmooth = bend <= Math.abs(one - other) || bend <= ROUNDING * Math.abs(value.si)
    const variance = (one ** 2 + other ** 2) / (2 * REACH ** 2) - ((one + other) / (2 * REACH ** 2)) ** 2
    if (moves.length > 0 && isSmooth) deviations.set(id, Math.sqrt(variance))
    else jumps.add(id)
    if (bend > bendable * Math.abs(one - other)) steps.add(id)
  }
  return { input, deviations, jumps, steps }
}

/**
 * How far a smooth figure may bend over the reach of an input: the sum of its moves to either side, as a share of their
 * difference. A figure that goes with any power of the input from −2 to 4 bends by at most 3/2 · √3 · u, with u the
 * uncertainty as a share of the input; where that is little, one side may still move half as far again as the other.
 */
function bendOf({ value, deviation }: UncertainValue): number {
  const share = value.kind === 'temperature' || value.si === 0 ? 0 : deviation / Math.abs(value.si)
  return Math.max(LEAST_BEND, 1.5 * REACH * share)
}

/** One side moves half as far again as the other: (3 − 2) / (3 + 2). */
const LEAST_BEND = 0.2

/** Of an input that adds less than this share of the variance no step matters. */
const COUNTS = 0.01

/** How many standard deviations an input is moved, so that two assessments tell its part to the third order. */
const REACH = Math.sqrt(3)

/** What rounding may do to a figure, as a share of it. */
const ROUNDING = 1e-9

/** A difference of a figure, shown in its unit where that is one of differences. */
function differenceIn({ kind, unit }: Quantity, si: number): Quantity {
  const difference = differenceOf(kind)
  return fromSi<Kind>(difference, si, Object.hasOwn(kinds[difference].units, unit) ? (unit as never) : ('K' as never))
}

function bandOf({ id, name, value }: Figure, effects: readonly Effect[]): Band {
  const parts = effects
    .map(({ input, deviations }) => ({ input, deviation: deviations.get(id) ?? 0 }))
    .filter(({ deviation }) => Math.abs(deviation) > ROUNDING * Math.abs(value.si))
  const variance = parts.reduce((sum, { deviation }) => sum + deviation ** 2, 0)
  const deviation = Math.sqrt(variance)
  const at = (si: number) => fromSi<Kind>(value.kind, si, value.unit)
  return {
    id,
    name,
    value,
    standardUncertainty: differenceIn(value, deviation),
    interval: [at(value.si - 2 * deviation), at(value.si + 2 * deviation)],
    contributions: parts
      .map(({ input, deviation: own }) => ({
        path: input.path,
        about: input.about,
        share: own ** 2 / variance,
        uncertainty: differenceIn(value, Math.abs(own)),
        ...(input.because === undefined ? {} : { because: input.because }),
      }))
      .sort((one, other) => other.share - one.share),
    jumps: effects.filter(({ jumps }) => jumps.has(id)).map(({ input }) => input.path),
    steps: effects
      .filter(({ steps, deviations }) => steps.has(id) && (deviations.get(id) ?? 0) ** 2 > COUNTS * variance)
      .map(({ input }) => input.path),
  }
}

/** The measurements that narrow a figure most, each for the figure that gains most by it. */
function nextOf(bands: readonly Band[], effects: readonly Effect[]): Measurement[] {
  const narrowed = effects.flatMap(({ input }) => {
    const gains = bands.filter(isWide).map((band) => {
      const share = band.contributions.find(({ path }) => path === input.path)?.share ?? 0
      return { input, band, gain: 1 - Math.sqrt(1 - share * (1 - 1 / SURER ** 2)) }
    })
    const [best] = gains.sort((one, other) => other.gain - one.gain)
    return best === undefined || best.gain < WORTH_IT ? [] : [best]
  })
  return narrowed
    .sort((one, other) => other.gain - one.gain)
    .slice(0, MOST_TOLD)
    .map(({ input, band, gain }) => ({ path: input.path, figure: band.id, text: textOf(input, band, gain) }))
}

/** A figure that is known to a hundredth is known well enough. */
function isWide({ value, standardUncertainty }: Band): boolean {
  return standardUncertainty.si > 0.01 * Math.abs(value.si)
}

function textOf({ about, path, value, deviation }: UncertainValue, band: Band, gain: number): string {
  const within = (uncertainty: Quantity, share: number) => uncertainty.times(2 * share).format({ digits: 2 })
  const { standardUncertainty: sure, name } = band
  const surer = within(differenceIn(value, deviation), 1 / SURER)
  return `Measure ${lowerFirst(about)} (${path}) to ±${surer}: ${name} is known to ±${within(sure, 1)}, and would then be to ±${within(sure, 1 - gain)}.`
}
