/**
 * Tyre sizes: from the mark on the sidewall to the distance of one turn.
 *
 * Rests on UN Regulation No. 30 (dimensions and marking) and the ETRTO Standards Manual (rolling circumference).
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'

const marking = /*@__PURE__*/ cite('UN Regulation No. 30')

/** Rolling circumference over diameter: ETRTO, from memory. */
const rollingFactors = { radial: 3.05, bias: 2.99 } as const

/**
 * Height of a tyre from rim to tread, the aspect being this height over the width.
 *
 * `H = S * Ra`
 *
 * - `width` (`S`, m): nominal section width, above 0 m
 * - `aspect` (`Ra`, a plain number): nominal aspect, height over width, above 0
 * - gives `H`: section height, in mm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Regulation No. 30.
 *
 * @example
 * ```ts
 * sectionHeight({ width: '155 mm', aspect: '80%' })
 * // 124 mm
 * // by definition (exact): 124 mm
 * ```
 */
export const sectionHeight = /*@__PURE__*/ formula({
  name: 'sectionHeight',
  title: 'Section height of a tyre',
  inputs: {
    width: input('length', 'S', 'Nominal section width', { above: 0 }),
    aspect: input('ratio', 'Ra', 'Nominal aspect, height over width', { above: 0 }),
  },
  result: output('length', 'H', 'Section height', 'mm'),
  expression: 'S * Ra',
  source: marking,
  compute: ({ width, aspect }) => width * aspect,
})

/**
 * Outer diameter of an unloaded tyre by its mark. A worn tyre is up to a centimetre or so smaller.
 *
 * `D = d + 2 * S * Ra`
 *
 * - `rim` (`d`, m): nominal rim diameter, above 0 m
 * - `width` (`S`, m): nominal section width, above 0 m
 * - `aspect` (`Ra`, a plain number): nominal aspect, height over width, above 0
 * - gives `D`: outer diameter, in mm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Regulation No. 30.
 *
 * @example
 * ```ts
 * tyreDiameter({ rim: '13 in', width: '155 mm', aspect: '80%' })
 * // 578.2 mm
 * // UN Regulation No. 30, outer diameter, rim diameter 330 mm for code 13 (from memory): 578 mm
 * ```
 */
export const tyreDiameter = /*@__PURE__*/ formula({
  name: 'tyreDiameter',
  title: 'Outer diameter of a tyre',
  inputs: {
    rim: input('length', 'd', 'Nominal rim diameter', { above: 0 }),
    width: input('length', 'S', 'Nominal section width', { above: 0 }),
    aspect: input('ratio', 'Ra', 'Nominal aspect, height over width', { above: 0 }),
  },
  result: output('length', 'D', 'Outer diameter', 'mm'),
  expression: 'd + 2 * S * Ra',
  source: marking,
  compute: ({ rim, width, aspect }) => rim + 2 * width * aspect,
})

/**
 * Distance that a tyre rolls in one turn. It is less than pi diameters, since the loaded tyre is flattened where it
 * stands: the factor is 3.05 for radial and 2.99 for bias-ply tyres (from memory).
 *
 * `U = F * D`
 *
 * - `diameter` (`D`, m): outer diameter, above 0 m
 * - `factor` (`F`, a plain number): rolling circumference over diameter, above 0, 3.05 unless given
 * - gives `U`: distance of one turn, in mm
 * - Assumes: the tyre carries its rated load at its rated pressure and does not slip
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ETRTO Standards Manual, dynamic rolling circumference.
 *
 * @example
 * ```ts
 * rollingCircumference({ diameter: '578 mm' })
 * // 1763 mm
 * // ETRTO Standards Manual, factor 3.05 (from memory): 1763 mm
 * ```
 */
export const rollingCircumference = /*@__PURE__*/ formula({
  name: 'rollingCircumference',
  title: 'Rolling circumference of a tyre',
  inputs: {
    diameter: input('length', 'D', 'Outer diameter', { above: 0 }),
    factor: input('ratio', 'F', 'Rolling circumference over diameter', { above: 0, default: rollingFactors.radial }),
  },
  result: output('length', 'U', 'Distance of one turn', 'mm'),
  expression: 'F * D',
  assumes: ['The tyre carries its rated load at its rated pressure and does not slip.'],
  source: cite('ETRTO Standards Manual', 'dynamic rolling circumference'),
  compute: ({ diameter, factor }) => factor * diameter,
})

/**
 * Radius that turns rotation into distance, less than half of the diameter.
 *
 * `r = U / (2 * pi)`
 *
 * - `circumference` (`U`, m): rolling circumference, above 0 m
 * - gives `r`: rolling radius, in mm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * rollingRadius({ circumference: '2.00916854 m' })
 * // 319.8 mm
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, example 1 (from memory): 12.589 in
 * ```
 */
export const rollingRadius = /*@__PURE__*/ formula({
  name: 'rollingRadius',
  title: 'Rolling radius of a tyre',
  inputs: {
    circumference: input('length', 'U', 'Rolling circumference', { above: 0 }),
  },
  result: output('length', 'r', 'Rolling radius', 'mm'),
  expression: 'U / (2 * pi)',
  source: definition,
  compute: ({ circumference }) => circumference / (2 * Math.PI),
})

/** What the mark of a tyre says, and the sizes that follow from it. */
export interface TyreSize {
  /** Nominal section width. */
  readonly width: Quantity<'length'>
  /** Section height over width. */
  readonly aspect: Quantity<'ratio'>
  /** Nominal rim diameter. */
  readonly rim: Quantity<'length'>
  readonly construction: 'radial' | 'bias'
  readonly sectionHeight: Quantity<'length'>
  /** Outer diameter, unloaded. */
  readonly diameter: Quantity<'length'>
  /** Distance of one turn. */
  readonly rollingCircumference: Quantity<'length'>
  readonly rollingRadius: Quantity<'length'>
  /** What the mark does not say and was taken for granted; empty when it says all. */
  readonly assumptions: readonly string[]
}

/**
 * Aspect of a tyre that has none in its mark. UN R30 tables 596 mm for the 165 R13 (from memory), which is 80 % to the
 * nearest whole number; two tyre guides give 80 % and 82 %.
 */
const unmarkedAspect = 80
const otherAspect = 82

/** `155/80 R13`, `155/80-13`, `165 SR 13`, `P175/70 R13 82T M+S`, `175 R14 C`, `190/65 R390`. */
const metricMark =
  /^P?(?<width>[1-3]\d[05])(?: ?\/ ?(?<aspect>[2-9]\d|100))? ?(?<construction>[QSTUHVWZ]?R|D|-) ?(?<rim>[89]|[12]\d|30|[34]\d[05])(?: ?C)?(?: \(?\d{2,3}(?:\/\d{2,3})? ?[A-Z]\)?)?(?: (?:XL|RF|REINFORCED|TL|TT|M\+S))*$/

/** Cross-ply, its width in inches to two decimals: `5.20-13`, `5.60 x 15`, `6.15-13 4PR TL`, `5.20 S 10`. */
const inchMark = /^(?<width>[3-9]\.\d\d) ?(?:[-X]|[SH](?: ?-)?) ?(?<rim>[89]|1\d|2[01])(?: (?:\d ?PR|TL|TT))*$/

/**
 * Aspect of cross-ply tyres by the width of their marks: common practice, no source. Widths were made in series, each of a
 * height. Those of other widths are not known well enough, nor are whole and half inches on rims of 15 inches, where they
 * were high before the war and low after it.
 */
const inchSeries = [
  { aspect: 95, rims: 15, widths: ['4.80', '5.20', '5.60', '5.90', '6.40', '6.70', '7.10', '7.60'] },
  { aspect: 88, rims: 14, widths: ['5.50', '6.00', '6.50', '7.00', '7.50'] },
  { aspect: 82, rims: 15, widths: ['6.15', '6.45', '6.95', '7.35', '7.75'] },
]
/** In inches: no car of that time ran on less. */
const LEAST_RIM = 10
/** How far tyres of one such mark differ in height, as a share of the width. */
const inchSpread = 3

/**
 * Reads the size mark of a car tyre: `'155/80 R13'`, `'155/80R13 79T'`, `'185/70 HR 14'`, bias-ply `'155/80-13'`, and
 * older marks without an aspect, `'165 R13'`, `'145-13'`, and in inches `'5.20-13'`, `'5.60 x 15'`, whose aspect is
 * assumed and said to be: 80 % where the width is in millimetres, and what cross-ply tyres of that width mostly had
 * where it is in inches.
 *
 * A rim figure of 100 or more is in millimetres, one below in inches.
 *
 * @param mark - The mark as it stands on the sidewall.
 * @returns Width, aspect, rim and construction, and the height, diameter, rolling circumference and rolling radius that
 *   follow; `assumptions` says what the mark left open.
 * @throws InputError when it is not such a mark, or one in inches of which the height is not known.
 */
export function readTyre(mark: string): TyreSize {
  const text = typeof mark === 'string' ? mark.normalize('NFKC').replace(/[\u2010-\u2015\u2212]/g, '-') : ''
  const plain = text.trim().replace(/\s+/g, ' ').toUpperCase().replace('×', 'X')
  const inches = inchMark.exec(plain)?.groups
  if (inches !== undefined) return inchTyre(mark, inches.width as string, Number(inches.rim))
  const parts = metricMark.exec(plain)?.groups
  if (parts === undefined) throw notAMark(mark, plain)
  const construction = parts.construction?.endsWith('R') ? 'radial' : 'bias'
  const rimFigure = Number(parts.rim)
  const width = quantity('length', Number(parts.width), 'mm')
  return sizeOf({
    width,
    aspect: quantity('ratio', Number(parts.aspect ?? unmarkedAspect), '%'),
    rim: quantity('length', rimFigure, rimFigure < 100 ? 'in' : 'mm'),
    construction,
    assumptions: parts.aspect === undefined ? [unmarkedAspectText(mark, width, construction)] : [],
  })
}

function inchTyre(mark: string, figure: string, rim: number): TyreSize {
  const known = inchSeries.filter(({ rims }) => rim >= LEAST_RIM && rim <= rims)
  const series = known.find(({ widths }) => widths.includes(figure))
  if (series === undefined) {
    const widths = known.flatMap((each) => each.widths).toSorted()
    const which =
      widths.length === 0 ? `a rim of ${LEAST_RIM} to 15` : `on a rim of ${rim} a width of ${widths.join(', ')}`
    const expected = `a mark in inches of which the height is known: ${which}`
    throw new InputError('readTyre', [{ path: 'mark', expected, received: shown(mark), hint: measureIt }])
  }
  const width = quantity('length', Number(figure), 'in')
  const differ = width.times((2 * inchSpread) / 100).as('mm')
  const text =
    `'${mark}' has no aspect: ${series.aspect} % is assumed, as cross-ply tyres of this width mostly had (common practice, ` +
    `no source). They differ by about ${inchSpread} %, ${differ.format({ digits: 2 })} in diameter: measure how far one rolls in one turn.`
  return sizeOf({
    width,
    aspect: quantity('ratio', series.aspect, '%'),
    rim: quantity('length', rim, 'in'),
    construction: 'bias',
    assumptions: [text],
  })
}

function sizeOf(mark: Pick<TyreSize, 'width' | 'aspect' | 'rim' | 'construction' | 'assumptions'>): TyreSize {
  const { width, aspect, rim, construction, assumptions } = mark
  const diameter = tyreDiameter({ rim, width, aspect })
  const circumference = rollingCircumference({ diameter, factor: rollingFactors[construction] })
  return {
    width,
    aspect,
    rim,
    construction,
    sectionHeight: sectionHeight({ width, aspect }),
    diameter,
    rollingCircumference: circumference,
    rollingRadius: rollingRadius({ circumference }),
    assumptions,
  }
}

function unmarkedAspectText(mark: string, width: Quantity<'length'>, construction: TyreSize['construction']): string {
  const more = width.times((2 * (otherAspect - unmarkedAspect)) / 100)
  const text = `'${mark}' has no aspect: ${unmarkedAspect} % is assumed. Some guides give ${otherAspect} %, ${more} more in diameter.`
  if (construction === 'radial') return text
  return `${text} It is read as cross-ply: a radial with such a mark rolls 2 % further.`
}

/** What to give in place of a mark that does not tell the radius. */
const measureIt =
  'measure how far the tyre rolls in one turn: give it as rollingCircumference, or divided by 2π as rollingRadius, in place of the mark'

function notAMark(mark: unknown, plain: string): InputError {
  const expected =
    "a tyre mark such as '155/80 R13', '155/80-13' (cross-ply), '165 R13' (no aspect) or '5.60-13' (inches)"
  const inches = /^\d{1,2}[.,]\d+ ?(?:[-X]|[A-Z]{1,2})? ?\d\d/.test(plain)
  const hint = `a width in inches has a point and two decimals, and no R; or ${measureIt}`
  const issue = { path: 'mark', expected, received: shown(mark) }
  return new InputError('readTyre', [inches ? { ...issue, hint } : issue])
}
