/**
 * Logs of speed over time, as a recorder in the car writes them: text in two columns, read piece by piece.
 */
import { onTheRoad } from '../../drivetrain/vehicle.js'
import { definition, standardGravity } from '../../formula/index.js'
import {
  assumed,
  type Findings,
  given,
  type Note,
  optional,
  procedure,
  text,
  type Unfinished,
  unusualIn,
} from '../../procedure/index.js'
import {
  commaHint,
  Lines,
  LONGEST_LINE,
  logField,
  piecesOf,
  readCell,
  separatorIn,
  unitIn,
} from '../../procedure/log.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { issueWith, listed, scaleFor, symbolsOf } from '../../quantity/read.js'
import { type Cycle, cycleOf } from './cycle.js'
import { Flicker, type Spike, Spikes } from './spikes.js'

/** What stands in front of the rows, for messages. */
const HEADER = "'time (s),speed (km/h)'"
/** No car changes its speed so fast, in g: a fault of the log. */
const IMPOSSIBLE = 3
/** So much rolling resistance is told: a tenth of that of good tyres. Common practice, no source. */
const LITTLE = 0.001
const fastestField = /*@__PURE__*/ (() => given('speed', 'Highest speed of the log', onTheRoad))()

type OnPoint = (seconds: number, metresPerSecond: number) => void

/** What describes a log: its text, which is read as it is driven, and when it has a gap. @internal */
export const logFields = /*@__PURE__*/ (() => ({
  log: logField,
  longestGap: given('time', 'Longest time between two rows that is not yet a gap', {
    above: 0,
    default: '10 s',
    because: 'common practice, no source',
  }),
}))()

/**
 * Takes the text of a log as it comes, in pieces of any length, and hands on each of its points in SI numbers.
 * @internal
 */
export class TraceReader {
  readonly #where: string
  readonly #onPoint: OnPoint
  readonly #longestGap: number
  readonly #lines = new Lines((line, number) => this.#readLine(line, number))
  #line = 0
  #separator = ''
  #units: readonly [time: string, speed: string] = ['', '']
  /** The line of the first empty line behind the header, where there was one. */
  #emptyLine = 0
  #points = 0
  #start = 0
  #last = 0
  readonly #spikes = new Spikes()
  #decimals = -1
  #flicker = new Flicker(0)

  constructor(where: string, longestGap: Quantity<'time'>, onPoint: OnPoint) {
    this.#where = where
    this.#onPoint = onPoint
    this.#longestGap = longestGap.si
  }

  /** Takes the next piece of the text. */
  take(text: string): void {
    if (typeof text !== 'string') this.#refuse('', 'pieces of text', shown(text))
    this.#lines.take(text)
    if (this.#lines.pending.length > LONGEST_LINE) {
      this.#refuse(`line ${this.#line + 1}`, 'two columns, a line for each row', shown(this.#lines.pending))
    }
  }

  /** The hardest change of speed so far. */
  get hardest(): Spike {
    return this.#spikes.hardest
  }

  /** Notes on a highest speed that is unusual, and on what the last digit of the speed could add. */
  get notes(): Note[] {
    return [...this.#fast(), ...this.#noise()]
  }

  #fast(): Note[] {
    return unusualIn(fastestField, fromSi('speed', this.#spikes.fastest, 'km/h'), ['log'])
  }

  /** What the last digit of the speed could add, where it is more than a little. */
  #noise(): Note[] {
    const resistance = this.#flicker.resistance
    if (resistance <= LITTLE) return []
    const ratio = (value: number) => quantity('ratio', Number(value.toPrecision(2)))
    return [
      {
        id: 'log.noise',
        path: 'log',
        text: `The last digit of the speed goes up and down: it could add as much as ${ratio(resistance)} more of rolling resistance. Let readCycle smooth the log, such as over '2 s'.`,
        value: ratio(resistance),
        usual: [ratio(0), ratio(LITTLE)],
      },
    ]
  }

  /** Says that the text has ended. */
  end(): void {
    this.#lines.end()
    if (this.#line === 0) this.#refuse('line 1', `a header such as ${HEADER}`, 'nothing')
    if (this.#points < 2) {
      this.#refuse(`line ${this.#line + 1}`, 'at least two rows behind the header', `${this.#points || 'none'}`)
    }
  }

  #readLine(line: string, number: number): void {
    this.#line = number
    if (number === 1) this.#readHeader(line)
    else if (line.trim() === '') this.#emptyLine ||= number
    else this.#readRow(line)
  }

  #readHeader(line: string): void {
    this.#separator = separatorIn(line)
    const titles = line.split(this.#separator)
    if (titles.length !== 2) {
      this.#refuse('line 1', `a header of two columns such as ${HEADER}`, shown(line))
    }
    const [time, speed] = titles as [string, string]
    this.#units = [this.#unitOf('time', time), this.#unitOf('speed', speed)]
  }

  #unitOf(kind: 'time' | 'speed', title: string): string {
    const unit = unitIn(title)
    const place = kind === 'time' ? 'first' : 'second'
    const expected = `in the ${place} column a ${kind} with its unit in brackets, ${listed(symbolsOf(kind))}, such as ${HEADER}`
    if (unit === undefined) return this.#refuse('line 1', expected, shown(title.trim()))
    if (scaleFor(kind, unit) !== undefined) return unit
    const other = kind === 'time' ? 'speed' : 'time'
    const isSwapped = scaleFor(other, unit) !== undefined
    const hint = isSwapped
      ? `${unit} is a unit of ${other}: the columns are the other way round`
      : issueWith('', kind, `1 ${unit}`).hint
    return this.#refuse('line 1', expected, shown(title.trim()), hint)
  }

  #readRow(line: string): void {
    const place = `line ${this.#line}`
    if (this.#emptyLine > 0) {
      this.#refuse(`line ${this.#emptyLine}`, 'a row: only the end may be empty', 'an empty line, and rows behind it')
    }
    const cells = line.split(this.#separator)
    if (cells.length !== 2) {
      const columns = cells.length === 1 ? 'one column' : `${cells.length} columns`
      const { hint } = commaHint(this.#separator, cells.length, 2)
      this.#refuse(place, 'two columns, time and speed, as in the header', `${columns}, ${shown(line)}`, hint)
    }
    const [timeCell, speedCell] = cells as [string, string]
    const time = this.#read('time', timeCell, this.#units[0])
    const speed = this.#read('speed', speedCell, this.#units[1])
    if (speed < 0) this.#refuse(place, 'a speed at least 0', shown(speedCell.trim()))
    if (this.#points === 0) this.#start = time
    else {
      const lasts = time - this.#last
      const before = `the row before, ${this.#timeText(this.#last)}`
      if (!(lasts > 0)) this.#refuse(place, `a time after that of ${before}`, this.#timeText(time))
      // A row on the limit is no gap for the last digit of a difference.
      if (lasts > this.#longestGap * (1 + 1e-9)) {
        const longest = quantity('time', this.#longestGap, 's')
        const hint = 'the log has a gap: drive its parts apart, or give longestGap where speed was steady'
        this.#refuse(place, `a time at most ${longest} after that of ${before}`, this.#timeText(time), hint)
      }
    }
    const change = this.#spikes.take(time - this.#start, speed) / standardGravity.value.si
    if (change > IMPOSSIBLE) {
      const expected = `a change of speed of at most ${IMPOSSIBLE} g over a second`
      this.#refuse(place, expected, `${change.toFixed(1)} g`, 'a spike of the recorder')
    }
    this.#readDigit(speedCell)
    this.#flicker.take(time - this.#start, speed)
    this.#points++
    this.#last = time
    this.#onPoint(time - this.#start, speed)
  }

  #read(kind: 'time' | 'speed', cell: string, unit: string): number {
    const read = readCell(kind, cell, unit)
    if (typeof read === 'number') return read
    return this.#refuse(`line ${this.#line}`, read.expected, read.received, read.hint)
  }

  /** What the last digit of the speeds stands for: that of the cell with the most decimals so far. */
  #readDigit(cell: string): void {
    const decimals = /\.(\d+)/.exec(cell)?.[1]?.length ?? 0
    if (decimals <= this.#decimals) return
    this.#decimals = decimals
    this.#flicker = new Flicker(this.#read('speed', `1e-${decimals}`, this.#units[1]))
  }

  #timeText(seconds: number): string {
    return quantity('time', seconds, 's')
      .as(this.#units[0] as never)
      .format({ digits: 12 })
  }

  #refuse(path: string, expected: string, received: string, hint?: string): never {
    const issue = { path, expected, received }
    throw new InputError(this.#where, [hint === undefined ? issue : { ...issue, hint }])
  }
}

/** A cycle that was read from a log. */
export interface ReadCycle extends Cycle, Findings {}

/**
 * Reads a cycle from a log of time and speed: text in two columns, the first line naming them with their units in
 * brackets.
 *
 * ```text
 * time (s),speed (km/h)
 * 0,0
 * 1,3.2
 * ```
 *
 * Columns are separated by comma, semicolon or tab. Rows stand in order of time, which need not be even; the cycle begins
 * at the first. Between rows the speed changes evenly. Where the last digit of the speed goes up and down, a note tells what
 * that could add to a drive: each rise is paid for. With `smoothing`, the speed of each row is the mean over so long a time
 * around it; nearer to the start or the end than half of it, over what lies evenly on both sides.
 *
 * Answers: which drive cycle does a log of time and speed hold?
 *
 * - `log`: the text of the log, whole or in pieces of any length
 * - `longestGap`: longest time between two rows that is not yet a gap, in s, above 0 s, 10 s by default (common
 *   practice, no source)
 * - `smoothing`: time over which the speed is averaged, in s, above 0 s, optional
 * - `name`: what the cycle is called, text, optional
 *
 * @returns The cycle, with what was noticed in the log.
 * @throws InputError that names the line: a header without units or in a wrong one, a cell that is no number, a speed
 * below zero, a time not after the one before it, a gap.
 * Source: by definition.
 *
 * @example
 * ```ts
 * const { distance, maximumSpeed } = readCycle({ log: 'time (s),speed (km/h)\n0,0\n8,36\n18,36\n' })
 * String(distance) // '0.14 km'
 * String(maximumSpeed) // '36 km/h'
 * ```
 */
export const readCycle = /*@__PURE__*/ (() =>
  procedure({
    name: 'readCycle',
    title: 'Cycle from a log',
    answers: 'Which drive cycle does a log of time and speed hold?',
    input: {
      ...logFields,
      smoothing: optional(
        given('time', 'Time over which the speed is averaged', { above: 0, usual: ['0.5 s', '10 s'] }),
      ),
      name: optional(text('What the cycle is called')),
    },
    source: [definition],
    work: ({ log, longestGap, smoothing, name = 'trace' }): Unfinished<ReadCycle> => {
      const seconds: number[] = []
      const metresPerSecond: number[] = []
      const reader = new TraceReader('readCycle', longestGap, (time, speed) => {
        seconds.push(time)
        metresPerSecond.push(speed)
      })
      for (const piece of piecesOf(log)) reader.take(piece)
      reader.end()
      const asRead = cycleOf(name, seconds, metresPerSecond)
      if (smoothing === undefined) return { ...asRead, checks: [], notes: reader.notes }
      const smooth = cycleOf(name, seconds, averaged(seconds, metresPerSecond, smoothing.si / 2))
      const text = `The speed is the mean over ${smoothing} around each row: the distance is ${smooth.distance}, ${asRead.distance} as written.`
      return { ...smooth, checks: [], assumptions: [assumed('log.smoothing', text)] }
    },
  }))()

/** The mean speed around each row, over so long a time before and behind it as lies within the log on both sides. */
function averaged(seconds: readonly number[], metresPerSecond: readonly number[], half: number): number[] {
  const distances = [0]
  const between = (i: number, time: number) => {
    const [from, to] = [seconds[i] as number, seconds[i + 1] as number]
    const [slow, fast] = [metresPerSecond[i] as number, metresPerSecond[i + 1] as number]
    return (time - from) * (slow + ((fast - slow) * (time - from)) / (to - from) / 2)
  }
  for (let i = 0; i + 1 < seconds.length; i++) {
    distances.push((distances[i] as number) + between(i, seconds[i + 1] as number))
  }
  const end = seconds.at(-1) as number
  /** The distance at times that only rise. */
  const reader = () => {
    let i = 0
    return (time: number) => {
      while (i + 2 < seconds.length && (seconds[i + 1] as number) < time) i++
      return (distances[i] as number) + between(i, time)
    }
  }
  const [behind, ahead] = [reader(), reader()]
  return seconds.map((time, i) => {
    const reach = Math.min(half, time, end - time)
    if (reach === 0) return metresPerSecond[i] as number
    return (ahead(time + reach) - behind(time - reach)) / (2 * reach)
  })
}
