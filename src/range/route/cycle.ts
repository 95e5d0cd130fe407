/**
 * Drive cycles: speed over time in pieces of steady acceleration, as regulations publish them.
 *
 * Rests on UN Regulations No. 83 and No. 101 (ECE-15, EUDC and NEDC; the rows from memory, their durations held to the
 * regulation's own break-down) and on the Japanese 10-mode cycle (rows from memory, held to its published distance).
 */
import { definition } from '../../formula/index.js'
import { given, own, procedure } from '../../procedure/index.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'

/** A drive cycle: corners of speed over time, joined by straight lines. */
export interface Cycle {
  readonly name: string
  readonly duration: Quantity<'time'>
  /** Exact for the pieces as published: nothing is sampled. */
  readonly distance: Quantity<'length'>
  /** Over all the time, stops too. */
  readonly meanSpeed: Quantity<'speed'>
  readonly maximumSpeed: Quantity<'speed'>
  /** Time at a stand. */
  readonly standing: Quantity<'time'>
  /** The corners as plain numbers, for loops: from 0 s, in rising order. */
  readonly corners: {
    readonly seconds: readonly number[]
    readonly metresPerSecond: readonly number[]
  }
}

/** Makes a cycle from its corners, which are sound. @internal */
export function cycleOf(name: string, seconds: readonly number[], metresPerSecond: readonly number[]): Cycle {
  let [distance, standing, fastest] = [0, 0, 0]
  for (let i = 1; i < seconds.length; i++) {
    const lasts = (seconds[i] as number) - (seconds[i - 1] as number)
    const both = (metresPerSecond[i] as number) + (metresPerSecond[i - 1] as number)
    distance += (both / 2) * lasts
    if (both === 0) standing += lasts
  }
  for (const speed of metresPerSecond) if (speed > fastest) fastest = speed
  const duration = seconds.at(-1) as number
  return {
    name,
    duration: fromSi('time', duration, 's'),
    distance: fromSi('length', distance, 'km'),
    meanSpeed: fromSi('speed', distance / duration, 'km/h'),
    maximumSpeed: fromSi('speed', fastest, 'km/h'),
    standing: fromSi('time', standing, 's'),
    corners: { seconds, metresPerSecond },
  }
}

/** The pieces of a cycle that starts at a stand: the speed at the end of each in km/h, and how many seconds it takes. */
type Pieces = readonly (readonly [speed: number, seconds: number])[]

function cycleOfPieces(name: string, pieces: Pieces): Cycle {
  const seconds = [0]
  const metresPerSecond = [0]
  for (const [speed, lasts] of pieces) {
    seconds.push((seconds.at(-1) as number) + lasts)
    metresPerSecond.push(quantity('speed', speed, 'km/h').si)
  }
  return cycleOf(name, seconds, metresPerSecond)
}

/** Speed that a gear change holds for its 2 s makes a piece of its own. */
const ece15: Pieces = [
  [0, 11],
  [15, 4],
  [15, 8],
  [10, 2],
  [0, 3],
  [0, 21],
  [15, 5],
  [15, 2],
  [32, 5],
  [32, 24],
  [10, 8],
  [0, 3],
  [0, 21],
  [15, 5],
  [15, 2],
  [35, 9],
  [35, 2],
  [50, 8],
  [50, 12],
  [35, 8],
  [35, 13],
  [35, 2],
  [10, 7],
  [0, 3],
  [0, 7],
]

const eudc: Pieces = [
  [0, 20],
  [15, 5],
  [15, 2],
  [35, 9],
  [35, 2],
  [50, 8],
  [50, 2],
  [70, 13],
  [70, 50],
  [50, 8],
  [50, 69],
  [70, 13],
  [70, 50],
  [100, 35],
  [100, 30],
  [120, 20],
  [120, 10],
  [80, 16],
  [50, 8],
  [0, 10],
  [0, 20],
]

const japan10Mode: Pieces = [
  [0, 20],
  [20, 7],
  [20, 15],
  [0, 7],
  [0, 16],
  [40, 14],
  [40, 15],
  [20, 10],
  [20, 2],
  [40, 12],
  [20, 10],
  [0, 7],
]

/**
 * Drive cycles as they are published, by name.
 *
 * - `'ECE-15'`: a town, 195 s, at most 50 km/h
 * - `'EUDC'`: out of town, 400 s, at most 120 km/h
 * - `'NEDC'`: the first four times and the second once, 1180 s
 * - `'Japan 10-mode'`: a town, 135 s, at most 40 km/h
 *
 * They hold what the regulation writes, second for second; a test drive is allowed to differ by some km/h, and other
 * prints of ECE-15 come to distances up to 2.5 % shorter, depending on how they count the gear changes. They are gentle:
 * traffic takes more.
 *
 * Source: UN Regulations No. 83 and No. 101; the Japanese 10-mode cycle. Rows from memory.
 *
 * @example
 * ```ts
 * String(cycles.NEDC.distance) // '11.03 km'
 * String(cycles.NEDC.meanSpeed) // '33.64 km/h'
 * ```
 */
export const cycles: { readonly [name in 'ECE-15' | 'EUDC' | 'NEDC' | 'Japan 10-mode']: Cycle } =
  /*@__PURE__*/ (() => ({
    'ECE-15': cycleOfPieces('ECE-15', ece15),
    EUDC: cycleOfPieces('EUDC', eudc),
    NEDC: cycleOfPieces('NEDC', [...ece15, ...ece15, ...ece15, ...ece15, ...eudc]),
    'Japan 10-mode': cycleOfPieces('Japan 10-mode', japan10Mode),
  }))()

/** A cycle: one that was made here, or the name of a published one. @internal */
export const cycleField = /*@__PURE__*/ (() =>
  own<Cycle | keyof typeof cycles, Cycle>(
    'The drive cycle',
    (value) => {
      if (typeof value === 'string' && Object.hasOwn(cycles, value))
        return { value: cycles[value as keyof typeof cycles] }
      if (isCycle(value)) return { value }
      const names = Object.keys(cycles).map((name) => `'${name}'`)
      const expected = `a cycle from readCycle or from kerbwatt/cycles, or the name of one: ${names.join(', ')}`
      return { issue: { expected, received: shown(value) } }
    },
    { enum: Object.keys(cycles) },
  ))()

/** Whether a value has the corners of a cycle: what is driven is only them, so that a copy of this package may read it. */
function isCycle(value: unknown): value is Cycle {
  const { seconds, metresPerSecond } = ((value as Partial<Cycle> | null)?.corners ?? {}) as Partial<Cycle['corners']>
  if (!Array.isArray(seconds) || !Array.isArray(metresPerSecond)) return false
  if (seconds.length < 2 || seconds.length !== metresPerSecond.length || seconds[0] !== 0) return false
  return seconds.every(
    (time: number, i) => (i === 0 || time > seconds[i - 1]) && metresPerSecond[i] >= 0 && metresPerSecond[i] < Infinity,
  )
}

/**
 * Gives the speed of a cycle at even steps of time, as a log or a drawing has it.
 *
 * Answers: how fast does the cycle go at each moment, at even steps of time?
 *
 * - `cycle`: the drive cycle
 * - `every`: step of time, in s, above 0 s, 1 s by default (as regulations print their cycles)
 *
 * @returns Pairs of time and speed, from the start to the end; the last step may be shorter.
 * @throws InputError for input that cannot be used, by its path.
 * Source: by definition.
 *
 * @example
 * ```ts
 * const [time, speed] = sampleCycle({ cycle: 'ECE-15' })[13]
 * `${time}: ${speed}` // '13 s: 7.5 km/h'
 * ```
 */
export const sampleCycle = /*@__PURE__*/ (() =>
  procedure({
    name: 'sampleCycle',
    title: 'Speeds of a drive cycle',
    answers: 'How fast does the cycle go at each moment, at even steps of time?',
    input: {
      cycle: cycleField,
      every: given('time', 'Step of time', { above: 0, default: '1 s', because: 'as regulations print their cycles' }),
    },
    source: [definition],
    work: ({ cycle, every }): (readonly [time: Quantity<'time'>, speed: Quantity<'speed'>])[] => {
      const { seconds, metresPerSecond } = cycle.corners
      const step = every.si
      const end = seconds.at(-1) as number
      const count = Math.ceil(end / step)
      if (count > MOST_SAMPLES) {
        const expected = `a step of at least ${fromSi('time', end / MOST_SAMPLES, 's')}, for at most ${MOST_SAMPLES} samples`
        throw new InputError('sampleCycle', [{ path: 'every', expected, received: String(every) }])
      }
      let piece = 1
      return Array.from({ length: count + 1 }, (_, i) => {
        const time = i === count ? end : i * step
        while ((seconds[piece] as number) < time) piece++
        const [from, to] = [seconds[piece - 1] as number, seconds[piece] as number]
        const [slow, fast] = [metresPerSecond[piece - 1] as number, metresPerSecond[piece] as number]
        const speed = slow + ((fast - slow) * (time - from)) / (to - from)
        return [fromSi('time', time, 's'), fromSi('speed', speed, 'km/h')]
      })
    },
  }))()

/** More samples than this are a mistake in the step. */
const MOST_SAMPLES = 1e6
