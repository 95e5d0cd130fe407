/**
 * A coast-down: rolling resistance and drag area of a car from a log of its speed while it rolls out of gear.
 *
 * Rests on the equation of motion that SAE J1263 and ISO 10521-1 fit, here integrated: every reading of speed is compared
 * with the speed that the two figures give at its time, so that no reading is differentiated. Uncertainties by the
 * linear theory of least squares, as JCGM 100:2008 has them for a fitted straight line (H.3).
 */
import { cite, section, standardGravity } from '../../formula/index.js'
import { brakesAndSteering } from '../../procedure/cautions.js'
import {
  assumed,
  check,
  type Findings,
  given,
  list,
  optional,
  pairs,
  procedure,
  type Read,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { onTheRoad, spareParts } from '../vehicle.js'
import { airDensity, rollingResistance, rollingTemperatureFactor } from './road-load.js'

/** What a coast-down tells. */
export interface CoastDown extends Findings {
  readonly rollingResistance: Quantity<'ratio'>
  readonly dragArea: Quantity<'area'>
  /** Standard uncertainties from the scatter of the readings alone. */
  readonly uncertainty: { readonly rollingResistance: Quantity<'ratio'>; readonly dragArea: Quantity<'area'> }
  /** What each run shows of a grade, beyond the one given, that is not in the mean of the runs. */
  readonly unseenGrade: readonly Quantity<'ratio'>[]
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

const coastDownFields = /*@__PURE__*/ (() => ({
  ...spareParts,
  runs: list(
    'Runs, each a list of [time, speed]',
    pairs(
      'A run, points [time, speed]',
      given('time', 'Time of the reading'),
      given('speed', 'Road speed', { above: 0, ...onTheRoad }),
      { least: 3 },
    ),
    { least: 1 },
  ),
  mass: given('mass', 'Mass of the car as it rolled', { above: 0, usual: ['450 kg', '2400 kg'] }),
  rotatingFactor: given('ratio', 'Mass with that of the turning parts over mass', {
    min: 1,
    usual: [1.02, 1.1],
    default: 1.03,
    because: 'that of four wheels out of gear: UN Regulation No. 154, from memory',
  }),
  airDensity: optional(
    given('density', 'Density of the air of the runs', { above: 0, usual: ['0.9 kg/m³', '1.4 kg/m³', 'meteorology'] }),
  ),
  temperature: optional(given('temperature', 'Temperature of the air of the runs', { min: '-40 °C', max: '50 °C' }), {
    absent: 'The rolling resistance is that of the day of the runs, and not corrected to 20 °C: give temperature.',
  }),
  pressure: optional(given('pressure', 'Pressure of the air of the runs', { min: '50 kPa', max: '110 kPa' })),
  grade: optional(
    list('Grade of each run, rise over run', given('ratio', 'Grade of the run, rise over run', { usual: [-0.2, 0.2] })),
    { absent: 'The road is level (no grade of the runs).' },
  ),
  headwind: optional(list('Head wind of each run', given('speed', 'Head wind of the run, negative for a tail wind')), {
    absent: 'The air is still (no headwind of the runs).',
  }),
}))()
type Log = Read<typeof coastDownFields>

/** The most that a figure may be uncertain by, as a share of it, to be of use: good practice. */
const USEFUL = 0.1

/**
 * Finds the rolling resistance coefficient and the drag area of a car from logged runs in which it rolled out of gear,
 * with their uncertainties.
 *
 * Roll on a closed road, with someone else to log, and keep the brakes and the steering live; local rules come first.
 *
 * A run is a list of at least 3 readings [time, speed] in rising order of time, such as
 * `[['0 s', '90 km/h'], ['1 s', '88.6 km/h']]`; without those of the car at a stand. Log from high speed down to low: only
 * together do they tell rolling and drag apart. Roll as often one way as the other: what a grade or a wind that nobody saw
 * gives one run, it takes from the other. For `airDensity` see {@link airDensity}.
 *
 * The equation of motion is integrated by the classical Runge–Kutta method in steps of at most half a second, and
 * one drag, and for each run its own rolling and first speed, are fitted by least squares (Gauss–Newton); the rolling
 * resistance is the mean over the runs, as the standards take the mean of both directions. Uncertainties are standard
 * ones, from the scatter of the readings. What is the same for all readings (mass, density, a grade or a wind that the runs
 * do not meet from both sides) comes on top: use `propagate` for these.
 *
 * Answers: what are the rolling resistance and the drag area of the car, from logs of its speed as it rolls out of
 * gear?
 *
 * - `runs`: runs, each a list of [time, speed], a list of at least 1, each pairs of time of the reading and road
 *   speed
 * - `mass`: mass of the car as it rolled, in kg, above 0 kg
 * - `rotatingFactor`: mass with that of the turning parts over mass, a plain number, at least 1, 1.03 by default
 *   (that of four wheels out of gear: UN Regulation No. 154, from memory)
 * - `airDensity`: density of the air of the runs, in kg/m³, above 0 kg/m³, optional
 * - `temperature`: temperature of the air of the runs, in °C, at least -40 °C and at most 50 °C, optional
 * - `pressure`: pressure of the air of the runs, in kPa, at least 50 kPa and at most 110 kPa, optional
 * - `grade`: grade of each run, rise over run, a list, each a plain number, optional
 * - `headwind`: head wind of each run, a list, each in km/h, optional
 * - `car`, `gearbox`, `motor`, `controller`, `pack`, `auxiliaries`, `air`: may stand beside, as parts of a vehicle;
 *   not used
 * - always assumed: the car rolls out of gear with its wheels free, and rolling resistance is the same at every speed
 * - always assumed: the readings scatter independently of each other, all alike
 *
 * @returns The two figures, as coefficients too, with uncertainties, correlation and residuals, and a check that each is
 * known to a tenth of itself.
 * @throws InputError for input that cannot be used, by its path; CalculationError where the readings give a negative
 * figure or do not tell the two apart.
 * Source: SAE J1263 and ISO 10521-1, equation of motion; JCGM 100:2008, H.3.
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
export const coastDown = /*@__PURE__*/ procedure({
  name: 'coastDown',
  title: 'Coast-down',
  answers:
    'What are the rolling resistance and the drag area of the car, from logs of its speed as it rolls out of gear?',
  input: coastDownFields,
  source: [cite('SAE J1263 and ISO 10521-1', 'equation of motion'), cite('JCGM 100:2008', 'H.3')],
  assumes: [
    'The car rolls out of gear with its wheels free, and rolling resistance is the same at every speed.',
    'The readings scatter independently of each other, all alike.',
  ],
  work: (log): Unfinished<CoastDown> => {
    refuseLog(log)
    const factor = log.rotatingFactor.si
    const runs = log.runs.map((run, i) => runOf(run, log.grade?.[i]?.si ?? 0, log.headwind?.[i]?.si ?? 0, factor))
    const fit = fitted(runs)
    const perCoefficient = factor / standardGravity.value.si
    const { density, told } = airOfRuns(log)
    const perArea = (2 * factor * log.mass.si) / density.si
    // Tyres roll harder in the cold: what they would do at 20 °C is a share of what they did.
    const cold = log.temperature === undefined ? 1 : rollingTemperatureFactor({ temperature: log.temperature }).si
    const coefficient = quantity('ratio', (fit.rolling * perCoefficient) / cold)
    const dragArea = quantity('area', fit.drag * perArea, 'm²')
    refuseNegative(coefficient, dragArea)
    const uncertainty = {
      rollingResistance: quantity('ratio', (fit.rollingDeviation * perCoefficient) / cold),
      dragArea: quantity('area', fit.dragDeviation * perArea, 'm²'),
    }
    return {
      rollingResistance: coefficient,
      dragArea,
      uncertainty,
      unseenGrade: fit.rollings.map((each) => quantity('ratio', (each - fit.rolling) * perCoefficient).as('%')),
      correlation: fit.correlation,
      roadLoad: section('As coefficients of the road load', () => ({
        constant: rollingResistance({ mass: log.mass, coefficient }),
        linear: quantity('forcePerSpeed', '0 N/(m/s)'),
        quadratic: quantity(
          'forcePerSpeedSquared',
          (dragArea.si * (log.temperature === undefined ? density : REFERENCE).si) / 2,
          'N/(m/s)²',
        ),
        airDensity: log.temperature === undefined ? density : REFERENCE,
      })),
      residuals: fit.residuals.map((run) => run.map((each) => quantity('speed', each, 'm/s').as('km/h'))),
      scatter: quantity('speed', fit.scatter, 'm/s').as('km/h'),
      checks: [
        check(
          'rollingResistance.uncertainty',
          'Uncertainty of the rolling resistance',
          uncertainty.rollingResistance,
          'at most',
          coefficient.times(USEFUL),
          GOOD,
          'runs',
        ),
        check(
          'dragArea.uncertainty',
          'Uncertainty of the drag area',
          uncertainty.dragArea,
          'at most',
          dragArea.times(USEFUL),
          GOOD,
          'runs',
        ),
      ],
      assumptions: [
        ...told,
        ...(log.runs.length > 1
          ? [assumed('runs', 'The runs meet an unseen grade or wind as often from one side as from the other.')]
          : []),
      ],
      cautions: [brakesAndSteering],
    }
  },
})

/** The air to which road loads are corrected: dry, 20 °C, 101.325 kPa. */
const REFERENCE = /*@__PURE__*/ (() => airDensity({ pressure: '101.325 kPa', temperature: '20 °C' }))()

/** The density of the air of the runs, as it is given or as its temperature and pressure make it. */
function airOfRuns({ airDensity: given, temperature, pressure }: Log) {
  if (given !== undefined) {
    if (pressure !== undefined) {
      const expected = 'nothing beside airDensity, which holds the pressure already'
      throw new InputError('coastDown', [{ path: 'pressure', expected, received: String(pressure) }])
    }
    return { density: given, told: [] }
  }
  if (temperature === undefined) {
    const expected = "the density of the air, such as '1.2 kg/m³', or its temperature, such as '15 °C'"
    throw new InputError('coastDown', [{ path: 'airDensity and temperature', expected, received: 'neither' }])
  }
  const density = airDensity({ pressure: pressure ?? '101.325 kPa', temperature })
  const told =
    pressure === undefined
      ? [assumed('pressure.default', 'The air of the runs had 101.325 kPa (pressure by default).')]
      : []
  return { density, told }
}

/** Between two readings, in s: no car rolls longer. */
const LONGEST_GAP = 600

const GOOD = 'good practice: a tenth of the figure'

function refuseLog({ runs, grade, headwind }: Log): void {
  const issues: InputIssue[] = runs.flatMap((run, i) => {
    const [first, last] = [run[0], run.at(-1)] as const
    const late = run.flatMap(([time], k) => {
      const before = run[k - 1]?.[0]
      const isClose = before === undefined || (time.si > before.si && time.si - before.si <= LONGEST_GAP)
      if (isClose) return []
      const expected = `a time after ${before}, by at most ${LONGEST_GAP} s`
      return [{ path: `runs[${i}][${k}][0]`, expected, received: String(time) }]
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
  /** Of each run. */
  readonly rollings: readonly number[]
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

/** What is fitted: one drag, and for each run its rolling and its first speed. */
interface Figures {
  readonly drag: number
  readonly rollings: readonly number[]
  readonly starts: readonly number[]
}

/**
 * Gauss–Newton on all readings. Rolling and first speed of a run touch the readings of that run alone, so that both are
 * eliminated there, and one equation is left for the drag. The rolling resistance is the mean over the runs: an unseen
 * grade or wind of one run is taken back by that of a run the other way.
 */
function fitted(runs: readonly Run[]): Fit {
  const [rolling, drag] = firstGuess(runs)
  const count = runs.reduce((total, { times }) => total + times.length, 0)
  const free = count - 1 - 2 * runs.length
  if (free < 1) {
    const message = `${count} readings of ${runs.length} runs leave nothing to tell their scatter by: log more of them`
    throw new CalculationError('coastDown', message, { readings: String(count) })
  }
  let figures: Figures = {
    drag,
    rollings: runs.map(() => rolling),
    starts: runs.map(({ speeds }) => speeds[0] as number),
  }
  let last = sumOf(runs, figures)
  for (let i = 0, isSettled = false; !isSettled; i++) {
    if (i === ITERATIONS) throw unclear(count, `no figures fit the readings within ${ITERATIONS} steps`)
    const { step } = last
    let share = 1
    let next = sumOf(runs, along(figures, step, share))
    // A step that does not come closer went too far.
    while (!(next.sum <= last.sum * (1 + SETTLED)) && share > SETTLED) {
      share /= 2
      next = sumOf(runs, along(figures, step, share))
    }
    figures = along(figures, step, share)
    const isSmall = (part: number, whole: number) => Math.abs(part) <= SETTLED * Math.abs(whole) + 1e-15
    isSettled =
      isSmall(step.drag, figures.drag) && step.rollings.every((each, k) => isSmall(each, figures.rollings[k] as number))
    last = next
  }
  const { perDrag, blocks } = last
  const variance = last.sum / free
  const inverses = blocks.reduce((sum, { byRolling }) => sum + byRolling, 0)
  const slopes = blocks.reduce((sum, { slope }) => sum + slope, 0) / runs.length
  const dragVariance = variance / perDrag
  const rollingVariance = (variance * inverses) / runs.length ** 2 + slopes ** 2 * dragVariance
  if (!(perDrag > 0 && rollingVariance < Infinity))
    throw unclear(count, 'the readings do not tell rolling resistance and drag apart')
  return {
    rollings: figures.rollings,
    rolling: figures.rollings.reduce((sum, each) => sum + each, 0) / runs.length,
    drag: figures.drag,
    rollingDeviation: Math.sqrt(rollingVariance),
    dragDeviation: Math.sqrt(dragVariance),
    correlation: (-slopes * Math.sqrt(dragVariance)) / Math.sqrt(rollingVariance),
    residuals: last.residuals,
    scatter: Math.sqrt(variance),
  }
}

function unclear(count: number, what: string): CalculationError {
  return new CalculationError('coastDown', `${what}: log over a wider range of speeds`, { readings: String(count) })
}

function along({ drag, rollings, starts }: Figures, step: Figures, share: number): Figures {
  const to = (from: readonly number[], by: readonly number[]) => from.map((each, k) => each + share * (by[k] as number))
  return { drag: drag + share * step.drag, rollings: to(rollings, step.rollings), starts: to(starts, step.starts) }
}

/** The sum of squares at some figures, and the Gauss–Newton step from there. */
function sumOf(runs: readonly Run[], { drag, rollings, starts }: Figures) {
  let [sum, perDrag, rest] = [0, 0, 0]
  const parts = runs.map((run, k) => {
    const states = rolled(run, rollings[k] as number, drag, starts[k] as number)
    const residuals = states.map(([speed], i) => (run.speeds[i] as number) - speed)
    const dot = (f: (state: State, residual: number) => number) =>
      states.reduce((total, state, i) => total + f(state, residuals[i] as number), 0)
    const [aa, av, vv] = [dot(([, a]) => a * a), dot(([, a, , v]) => a * v), dot(([, , , v]) => v * v)]
    const [ab, vb, bb] = [dot(([, a, b]) => a * b), dot(([, , b, v]) => v * b), dot(([, , b]) => b * b)]
    const [ra, rv] = [dot(([, a], residual) => residual * a), dot(([, , , v], residual) => residual * v)]
    const rb = dot(([, , b], residual) => residual * b)
    const determinant = aa * vv - av * av
    /** The two figures of the run that make up for something in all its readings. */
    const made = (forA: number, forV: number) =>
      [(vv * forA - av * forV) / determinant, (aa * forV - av * forA) / determinant] as const
    const [slope, slopeV] = made(ab, vb)
    perDrag += bb - (ab * slope + vb * slopeV)
    const [own, ownV] = made(ra, rv)
    rest += rb - (ab * own + vb * ownV)
    sum += dot((_, residual) => residual * residual)
    return { residuals, slope, slopeV, own, ownV, byRolling: vv / determinant }
  })
  const byDrag = rest / perDrag
  return {
    sum,
    perDrag,
    blocks: parts,
    step: {
      drag: byDrag,
      rollings: parts.map(({ own, slope }) => own - slope * byDrag),
      starts: parts.map(({ ownV, slopeV }) => ownV - slopeV * byDrag),
    },
    residuals: parts.map(({ residuals }) => residuals),
  }
}

/** A first guess from the ends of the runs: half of the mean deceleration to each of the two. */
function firstGuess(runs: readonly Run[]): [number, number] {
  const [run] = runs as readonly [Run]
  const [v, u] = [run.speeds[0] as number, run.speeds.at(-1) as number]
  const span = (run.times.at(-1) as number) - (run.times[0] as number)
  const deceleration = (v - u) / span
  return [deceleration / 2, deceleration / 2 / ((v + u) / 2) ** 2]
}
