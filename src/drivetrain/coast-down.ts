/**
 * A coast-down: rolling resistance and drag area of a car from a log of its speed while it rolls out of gear.
 *
 * Rests on the equation of motion that SAE J1263 and ISO 10521-1 fit, here integrated: every reading of speed is compared
 * with the speed that the two figures give at its time, so that no reading is differentiated. Uncertainties by the
 * linear theory of least squares, as JCGM 100:2008 has them for a fitted straight line (H.3).
 */
import * as z from 'zod/mini'
import { cautions, check, type Findings } from '../findings/index.js'
import { section, standardGravity } from '../formula/index.js'
import { CalculationError, InputError, type InputIssue, type Quantity, quantity } from '../quantity/index.js'
import { about, given, procedure, type Read } from '../structure/index.js'
import { rollingResistance } from './road-load.js'

/** What a coast-down tells. */
export interface CoastDown extends Findings {
  readonly rollingResistance: Quantity<'ratio'>
  readonly dragArea: Quantity<'area'>
  /** Standard uncertainties from the scatter of the readings alone. */
  readonly uncertainty: { readonly rollingResistance: Quantity<'ratio'>; readonly dragArea: Quantity<'area'> }
  /** Correlation of the two: near −1, since a little more of one does much as a little less of the other. */
  readonly correlation: number
  /** The same as coefficients of the road load, as `car.roadLoad` takes them. */
  readonly roadLoad: {
    readonly constant: Quantity<'force'>
    readonly linear: Quantity<'forcePerSpeed'>
    readonly quadratic: Quantity<'forcePerSpeedSquared'>
    readonly airDensity: Quantity<'density'>
  }
  /** Of each run, each reading less the speed that was fitted. */
  readonly residuals: readonly (readonly Quantity<'speed'>[])[]
  /** Standard deviation of the readings about what was fitted. */
  readonly scatter: Quantity<'speed'>
}

const coastDownGiven = /*@__PURE__*/ (() =>
  about(
    'the log of a coast-down',
    z.strictObject({
      runs: about(
        'a list of runs, each a list of [time, speed]',
        z.readonly(
          z
            .array(
              about(
                'a run, points [time, speed]',
                z.readonly(
                  z
                    .array(
                      z.readonly(
                        z.tuple([given('time', 'Time of the reading'), given('speed', 'Road speed', { min: 0 })]),
                      ),
                    )
                    .check(z.minLength(3)),
                ),
              ),
            )
            .check(z.minLength(1)),
        ),
      ),
      mass: given('mass', 'Mass of the car as it rolled', { above: 0 }),
      rotatingFactor: z.optional(given('ratio', 'Mass with that of the turning parts over mass', { min: 1 })),
      airDensity: given('density', 'Density of the air', { above: 0 }),
      grade: about(
        'the grade of each run, rise over run',
        z.optional(z.readonly(z.array(given('ratio', 'Grade of the run, rise over run')))),
      ),
      headwind: about(
        'the head wind of each run',
        z.optional(z.readonly(z.array(given('speed', 'Head wind of the run, negative for a tail wind')))),
      ),
    }),
  ))()
type Log = Read<typeof coastDownGiven>

/** What four wheels add to the mass out of gear: 3 %, UN Regulation No. 154, from memory. */
const WHEELS = 1.03
/** The most that a figure may be uncertain by, as a share of it, to be of use: good practice. */
const USEFUL = 0.1

/**
 * Finds the rolling resistance coefficient and the drag area of a car from logged runs in which it rolled out of gear,
 * with their uncertainties.
 *
 * Roll on a closed road, with someone else to log, and keep the brakes and the steering live; local rules come first.
 *
 * - `runs`: a list of runs, each a list of at least 3 readings [time, speed] in rising order of time, such as
 *   `[['0 s', '90 km/h'], ['1 s', '88.6 km/h']]`. Take runs in both directions, and log from high speed down to low: only
 *   together do they tell rolling and drag apart
 * - `mass` (kg), above 0, with driver and load
 * - `rotatingFactor`, at least 1: 1.03 unless given, which is that of four wheels
 * - `airDensity` (kg/m³), above 0: see {@link airDensity}
 * - `grade`, rise over run, and `headwind` (km/h): one figure for each run, in the direction of the run; level and still
 *   unless given
 *
 * The equation of motion is integrated by the classical Runge–Kutta method in steps of at most half a second, and
 * the two figures and the first speed of each run are fitted by least squares (Gauss–Newton). Uncertainties are standard
 * ones, from the scatter of the readings. What is the same for all readings (mass, density, an unseen grade, a steady wind)
 * comes on top: use `propagate` for these.
 *
 * @returns The two figures, as coefficients too, with uncertainties, correlation and residuals, and a check that each is
 * known to a tenth of itself.
 * @throws InputError for input that cannot be used, by its path; CalculationError where the readings give a negative
 * figure or do not tell the two apart.
 * Source: SAE J1263 and ISO 10521-1 (equation of motion); JCGM 100:2008, H.3 (uncertainty of a fit).
 *
 * @example
 * ```ts
 * const { rollingResistance, dragArea } = coastDown({
 *   runs: [
 *     [['0 s', '100 km/h'], ['20 s', '73.7 km/h'], ['40 s', '55.1 km/h'], ['60 s', '40.9 km/h'], ['80 s', '29.1 km/h']],
 *   ],
 *   mass: '900 kg',
 *   airDensity: '1.2 kg/m³',
 * })
 * `${rollingResistance.format({ digits: 2 })}, ${dragArea.format({ digits: 2 })}` // '0.013, 0.65 m²'
 * ```
 */
export const coastDown = /*@__PURE__*/ procedure('coastDown', coastDownGiven, (log): CoastDown => {
  refuseLog(log)
  const factor = log.rotatingFactor?.si ?? WHEELS
  const runs = log.runs.map((run, i) => runOf(run, log.grade?.[i]?.si ?? 0, log.headwind?.[i]?.si ?? 0, factor))
  const fit = fitted(runs)
  const perCoefficient = factor / standardGravity.value.si
  const perArea = (2 * factor * log.mass.si) / log.airDensity.si
  const coefficient = quantity('ratio', fit.rolling * perCoefficient)
  const dragArea = quantity('area', fit.drag * perArea, 'm²')
  refuseNegative(coefficient, dragArea)
  const uncertainty = {
    rollingResistance: quantity('ratio', fit.rollingDeviation * perCoefficient),
    dragArea: quantity('area', fit.dragDeviation * perArea, 'm²'),
  }
  return {
    rollingResistance: coefficient,
    dragArea,
    uncertainty,
    correlation: fit.correlation,
    roadLoad: section('As coefficients of the road load', () => ({
      constant: rollingResistance({ mass: log.mass, coefficient }),
      linear: quantity('forcePerSpeed', '0 N/(m/s)'),
      quadratic: quantity('forcePerSpeedSquared', (dragArea.si * log.airDensity.si) / 2, 'N/(m/s)²'),
      airDensity: log.airDensity,
    })),
    residuals: fit.residuals.map((run) => run.map((each) => quantity('speed', each, 'm/s').as('km/h'))),
    scatter: quantity('speed', fit.scatter, 'm/s').as('km/h'),
    checks: [
      check(
        'Uncertainty of the rolling resistance',
        uncertainty.rollingResistance,
        'at most',
        coefficient.times(USEFUL),
        GOOD,
      ),
      check('Uncertainty of the drag area', uncertainty.dragArea, 'at most', dragArea.times(USEFUL), GOOD),
    ],
    assumptions: [
      'The car rolls out of gear with its wheels free, and rolling resistance is the same at every speed.',
      'The readings scatter independently of each other, all alike.',
      ...(log.rotatingFactor === undefined
        ? [
            `Turning wheels add 3 % to the mass (rotatingFactor ${WHEELS} by default; UN Regulation No. 154, from memory).`,
          ]
        : []),
      ...(log.grade === undefined ? ['The road is level (grade by default).'] : []),
      ...(log.headwind === undefined ? ['The air is still (headwind by default).'] : []),
    ],
    cautions: [cautions.brakesAndSteering],
  }
})

const GOOD = 'good practice: a tenth of the figure'

function refuseLog({ runs, grade, headwind }: Log): void {
  const issues: InputIssue[] = runs.flatMap((run, i) => {
    const [first, last] = [run[0], run.at(-1)] as const
    const late = run.flatMap(([time], k) => {
      const before = run[k - 1]?.[0]
      if (before === undefined || time.si > before.si) return []
      return [{ path: `runs[${i}][${k}][0]`, expected: `a time after ${before}`, received: String(time) }]
    })
    const fell = first !== undefined && last !== undefined && last[1].si < first[1].si
    const expected = `a speed below that at the start, ${first?.[1]}: the car slows down`
    return fell ? late : [...late, { path: `runs[${i}][${run.length - 1}][1]`, expected, received: String(last?.[1]) }]
  })
  for (const [path, list] of [
    ['grade', grade],
    ['headwind', headwind],
  ] as const) {
    if (list === undefined || list.length === runs.length) continue
    issues.push({ path, expected: `one for each of ${runs.length} runs`, received: `${list.length}` })
  }
  if (issues.length > 0) throw new InputError('coastDown', issues)
}

function refuseNegative(coefficient: Quantity<'ratio'>, dragArea: Quantity<'area'>): void {
  if (coefficient.si >= 0 && dragArea.si >= 0) return
  const figures = { rollingResistance: String(coefficient), dragArea: String(dragArea) }
  const message = `the readings give a rolling resistance coefficient of ${coefficient} and a drag area of ${dragArea}: a grade, a wind, a dragging brake or a gear, or too narrow a range of speeds`
  throw new CalculationError('coastDown', message, figures)
}

/** One run on plain SI numbers. */
interface Run {
  readonly times: readonly number[]
  readonly speeds: readonly number[]
  /** What part of the rolling resistance is left on the grade. */
  readonly cosine: number
  /** Deceleration by the grade. */
  readonly slope: number
  readonly headwind: number
}

function runOf(
  readings: readonly (readonly [Quantity<'time'>, Quantity<'speed'>])[],
  grade: number,
  headwind: number,
  factor: number,
): Run {
  const angle = Math.atan(grade)
  return {
    times: readings.map(([time]) => time.si),
    speeds: readings.map(([, speed]) => speed.si),
    cosine: Math.cos(angle),
    slope: (standardGravity.value.si * Math.sin(angle)) / factor,
    headwind,
  }
}

/** The longest step of the integration, in s. */
const STEP = 0.5

/** A speed, and how it changes with rolling resistance, drag and the first speed. */
type State = readonly [speed: number, byRolling: number, byDrag: number, byStart: number]

/** The speed at every reading of a run, with its derivatives: a rolls (m/s²) and b drags (1/m). */
function rolled({ times, cosine, slope, headwind }: Run, a: number, b: number, start: number): State[] {
  const rate = ([v, da, db, dv]: State): State => {
    const air = v + headwind
    const damping = -2 * b * Math.abs(air)
    return [
      -(a * cosine + slope + b * air * Math.abs(air)),
      -cosine + damping * da,
      -air * Math.abs(air) + damping * db,
      damping * dv,
    ]
  }
  const states: State[] = [[start, 0, 0, 1]]
  for (let i = 1; i < times.length; i++) {
    const span = (times[i] as number) - (times[i - 1] as number)
    const count = Math.ceil(span / STEP)
    let state = states[i - 1] as State
    for (let k = 0; k < count; k++) state = stepOf(rate, state, span / count)
    states.push(state)
  }
  return states
}

/** One step of the classical Runge–Kutta method. */
function stepOf(rate: (state: State) => State, state: State, h: number): State {
  const k1 = rate(state)
  const k2 = rate(moved(state, k1, h / 2))
  const k3 = rate(moved(state, k2, h / 2))
  const k4 = rate(moved(state, k3, h))
  return moved(moved(moved(moved(state, k1, h / 6), k2, h / 3), k3, h / 3), k4, h / 6)
}

function moved([v, da, db, dv]: State, by: State, h: number): State {
  return [v + h * by[0], da + h * by[1], db + h * by[2], dv + h * by[3]]
}

interface Fit {
  readonly rolling: number
  readonly drag: number
  readonly rollingDeviation: number
  readonly dragDeviation: number
  readonly correlation: number
  readonly residuals: readonly (readonly number[])[]
  readonly scatter: number
}

/** After so many steps a fit that has not settled will not. */
const ITERATIONS = 60
/** A step this small, as a share of the figures, settles it. */
const SETTLED = 1e-12

/**
 * Gauss–Newton on all readings. The first speed of a run touches the readings of that run alone, so that it is eliminated
 * there, and two equations are left for the two figures.
 */
function fitted(runs: readonly Run[]): Fit {
  let [a, b] = firstGuess(runs)
  let starts = runs.map(({ speeds }) => speeds[0] as number)
  let last = sumOf(runs, a, b, starts)
  for (let i = 0; i < ITERATIONS; i++) {
    const { da, db, dv } = last.step
    let share = 1
    let next = sumOf(
      runs,
      a + da,
      b + db,
      starts.map((each, k) => each + (dv[k] as number)),
    )
    // A step that does not come closer went too far.
    while (!(next.sum <= last.sum * (1 + SETTLED)) && share > SETTLED) {
      share /= 2
      next = sumOf(
        runs,
        a + share * da,
        b + share * db,
        starts.map((each, k) => each + share * (dv[k] as number)),
      )
    }
    a += share * da
    b += share * db
    starts = starts.map((each, k) => each + share * (dv[k] as number))
    const isSettled = Math.abs(da) <= SETTLED * Math.abs(a) + 1e-15 && Math.abs(db) <= SETTLED * Math.abs(b) + 1e-15
    last = next
    if (isSettled) break
  }
  const count = runs.reduce((total, { times }) => total + times.length, 0)
  const free = count - 2 - runs.length
  const variance = last.sum / Math.max(free, 1)
  const { aa, ab, bb } = last.normal
  const determinant = aa * bb - ab * ab
  if (!(determinant > 0) || free < 1) {
    const message =
      free < 1
        ? `${count} readings of ${runs.length} runs leave nothing to tell their scatter by: log more of them`
        : 'the readings do not tell rolling resistance and drag apart: log over a wider range of speeds'
    throw new CalculationError('coastDown', message, { readings: String(count) })
  }
  return {
    rolling: a,
    drag: b,
    rollingDeviation: Math.sqrt((variance * bb) / determinant),
    dragDeviation: Math.sqrt((variance * aa) / determinant),
    correlation: -ab / Math.sqrt(aa * bb),
    residuals: last.residuals,
    scatter: Math.sqrt(variance),
  }
}

/** The sum of squares at some figures, and the Gauss–Newton step from there. */
function sumOf(runs: readonly Run[], a: number, b: number, starts: readonly number[]) {
  const normal = { aa: 0, ab: 0, bb: 0, ra: 0, rb: 0 }
  let sum = 0
  const parts = runs.map((run, k) => {
    const states = rolled(run, a, b, starts[k] as number)
    const residuals = states.map(([speed], i) => (run.speeds[i] as number) - speed)
    const dot = (f: (state: State, residual: number) => number) =>
      states.reduce((total, state, i) => total + f(state, residuals[i] as number), 0)
    const vv = dot(([, , , dv]) => dv * dv)
    const av = dot(([, da, , dv]) => da * dv)
    const bv = dot(([, , db, dv]) => db * dv)
    const rv = dot(([, , , dv], residual) => residual * dv)
    normal.aa += dot(([, da]) => da * da) - (av * av) / vv
    normal.ab += dot(([, da, db]) => da * db) - (av * bv) / vv
    normal.bb += dot(([, , db]) => db * db) - (bv * bv) / vv
    normal.ra += dot(([, da], residual) => residual * da) - (av * rv) / vv
    normal.rb += dot(([, , db], residual) => residual * db) - (bv * rv) / vv
    sum += dot((_, residual) => residual * residual)
    return { residuals, vv, av, bv, rv }
  })
  const determinant = normal.aa * normal.bb - normal.ab * normal.ab
  const da = (normal.ra * normal.bb - normal.rb * normal.ab) / determinant
  const db = (normal.rb * normal.aa - normal.ra * normal.ab) / determinant
  const dv = parts.map(({ vv, av, bv, rv }) => (rv - av * da - bv * db) / vv)
  return { sum, normal, step: { da, db, dv }, residuals: parts.map(({ residuals }) => residuals) }
}

/** A first guess from the ends of the runs: half of the mean deceleration to each of the two. */
function firstGuess(runs: readonly Run[]): [number, number] {
  const [run] = runs as readonly [Run]
  const [v, u] = [run.speeds[0] as number, run.speeds.at(-1) as number]
  const span = (run.times.at(-1) as number) - (run.times[0] as number)
  const deceleration = (v - u) / span
  return [deceleration / 2, deceleration / 2 / ((v + u) / 2) ** 2]
}
