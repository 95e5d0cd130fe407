/**
 * Logs of speed over time, as a recorder in the car writes them: text in columns, read piece by piece.
 */
import { onTheRoad } from '../../drivetrain/vehicle.js'
import { definition, standardGravity } from '../../formula/index.js'
import {
  type Assumption,
  assumed,
  type Findings,
  given,
  group,
  type Note,
  optional,
  procedure,
  type Read,
  text,
  type Unfinished,
  unusualIn,
} from '../../procedure/index.js'
import {
  commaHint,
  type Fault,
  Lines,
  LONGEST_LINE,
  logField,
  piecesOf,
  readCell,
  separatorIn,
  unitIn,
} from '../../procedure/log.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type InputIssue, quantity } from '../../quantity/index.js'
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

/** What describes a log: its text, which is read as it is driven, which columns count, and when it has a gap. @internal */
export const logFields = /*@__PURE__*/ (() => ({
  log: logField,
  columns: optional(
    group('The titles of the columns that count, where several could', {
      time: optional(text('Title of the column of time, as it stands in the log')),
      speed: optional(text('Title of the column of speed, as it stands in the log')),
    }),
  ),
  longestGap: given('time', 'Longest time between two rows that is not yet a gap', {
    above: 0,
    default: '10 s',
    because: 'common practice, no source',
  }),
}))()

/** What is read of a log before its text. */
type LogRead = Pick<Read<typeof logFields>, 'columns' | 'longestGap'>

/** So many rows that cannot be used are listed in an error; the others are counted. */
const LISTED = 20

/** A column that counts. */
interface Column {
  readonly place: number
  /** Empty for times of the clock or of the calendar. */
  readonly unit: string
}

interface Columns {
  readonly count: number
  readonly time: Column
  readonly speed: Column
}

/** Satellite receivers write knots: the international nautical mile is 1852 m. */
const KNOT = 1852 / 3600
const knots = ['kn', 'kt', 'kts', 'knots']

/**
 * Takes the text of a log as it comes, in pieces of any length, and hands on each of its points in SI numbers. Rows that
 * cannot be used are collected: at the end, all of them are refused by their lines.
 * @internal
 */
export class TraceReader {
  readonly #where: string
  readonly #onPoint: OnPoint
  readonly #longestGap: number
  readonly #asked: LogRead['columns']
  readonly #lines = new Lines((line, number) => this.#readLine(line, number))
  readonly #faults: InputIssue[] = []
  #faulty = 0
  #line = 0
  #separator = ''
  #columns: Columns | undefined
  /** The line of the first empty line behind the rows so far, where there is one. */
  #emptyLine = 0
  #points = 0
  #start = 0
  /** The first whole second of a calendar: what counts from it has more decimals. */
  #epoch: number | undefined
  /** The last row, with those of the same time, of which the mean counts. */
  #row: { readonly time: number; readonly cell: string; readonly line: number; sum: number; count: number } | undefined
  #merged = 0
  /** What stands before the decimals of this log. */
  #decimalSign = ''
  readonly #spikes = new Spikes()
  #decimals = -1
  #flicker = new Flicker(0)

  constructor(where: string, { longestGap, columns }: LogRead, onPoint: OnPoint) {
    this.#where = where
    this.#onPoint = onPoint
    this.#longestGap = longestGap.si
    this.#asked = columns
  }

  /** Takes the next piece of the text. */
  take(text: string): void {
    if (typeof text !== 'string') this.#refuse('', 'pieces of text', shown(text))
    this.#lines.take(text)
    if (this.#lines.pending.length > LONGEST_LINE) {
      this.#refuse(`line ${this.#line + 1}`, 'columns, a line for each row', shown(this.#lines.pending))
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

  /** What was taken for granted of rows of the same time. */
  get assumptions(): Assumption[] {
    if (this.#merged === 0) return []
    const rows = this.#merged === 1 ? '1 row has' : `${this.#merged} rows have`
    return [assumed('log.repeated', `${rows} the time of the row before: the mean of their speeds counts.`)]
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

  /** Says that the text has ended, and refuses all rows that cannot be used. */
  end(): void {
    this.#lines.end()
    if (this.#columns === undefined) this.#refuse(`line ${this.#line || 1}`, `a header such as ${HEADER}`, 'nothing')
    this.#handRow()
    if (this.#faulty > 0) {
      const more = this.#faulty - this.#faults.length
      const expected = 'a log of which every row can be used'
      const rest = { path: 'log', expected, received: `${more} more rows that cannot` }
      throw new InputError(this.#where, more === 0 ? this.#faults : [...this.#faults, rest])
    }
    if (this.#points < 2) {
      this.#refuse(`line ${this.#line + 1}`, 'at least two rows behind the header', `${this.#points || 'none'}`)
    }
  }

  #readLine(line: string, number: number): void {
    this.#line = number
    if (line.startsWith('#')) return
    if (line.trim() === '') {
      if (this.#columns !== undefined) this.#emptyLine ||= number
    } else if (this.#columns === undefined) this.#readHeader(line)
    else this.#readRow(line)
  }

  #readHeader(line: string): void {
    this.#separator = separatorIn(line.replace(/"[^"]*"/g, ''))
    const titles = cellsOf(line, this.#separator)
    this.#columns = { count: titles.length, time: this.#column('time', titles), speed: this.#column('speed', titles) }
  }

  /** The column of time or of speed: that of the title that is asked for, or the only one with such a unit. */
  #column(kind: 'time' | 'speed', titles: readonly string[]): Column {
    const place = `line ${this.#line}`
    const asked = this.#asked?.[kind]
    const all = titles.map((title, at) => ({ title, place: at, unit: unitOf(kind, title) }))
    const known = all.filter(({ unit }) => unit !== undefined)
    if (asked !== undefined) {
      const found = all.filter(({ title }) => title === asked.trim())
      const [only] = found
      if (only === undefined || found.length > 1) {
        const received = found.length > 1 ? `${found.length} columns of that title` : titles.map(shown).join(', ')
        this.#refuse(`columns.${kind}`, `the title of one column, such as ${shown(all[0]?.title)}`, received)
      }
      if (kind === 'time' || only.unit !== undefined) return { place: only.place, unit: only.unit ?? '' }
      return this.#refuse(place, columnOf(kind), shown(only.title), this.#unitHint(kind, only.title))
    }
    const found = known.length > 0 ? known : kind === 'time' ? all.filter(({ title }) => isClock(title)) : []
    const [first] = found
    if (first === undefined) {
      const suspect = all.find(({ title }) => unitIn(title) !== undefined && unitOf(other(kind), title) === undefined)
      const hint = suspect === undefined ? undefined : this.#unitHint(kind, suspect.title)
      return this.#refuse(place, columnOf(kind), titles.map(shown).join(', '), hint)
    }
    if (found.length > 1) {
      const received = found.map(({ title }) => shown(title)).join(', ')
      this.#refuse(place, `one column of ${kind}`, received, `choose one with columns.${kind}`)
    }
    return { place: first.place, unit: first.unit ?? '' }
  }

  #unitHint(kind: 'time' | 'speed', title: string): string | undefined {
    const unit = unitIn(title)
    return unit === undefined ? undefined : issueWith('', kind, `1 ${unit}`).hint
  }

  #readRow(line: string): void {
    const columns = this.#columns as Columns
    if (this.#emptyLine > 0) {
      const received = 'an empty line, and rows behind it'
      this.#fault(`line ${this.#emptyLine}`, { expected: 'a row: only the end may be empty', received })
      this.#emptyLine = 0
    }
    const place = `line ${this.#line}`
    const cells = cellsOf(line, this.#separator)
    if (cells.length !== columns.count) {
      const wanted = columns.count === 2 ? 'two columns, time and speed' : `${columns.count} columns`
      const received = `${cells.length === 1 ? 'one column' : `${cells.length} columns`}, ${shown(line)}`
      const hint = commaHint(this.#separator, cells.length, columns.count)
      this.#fault(place, { expected: `${wanted}, as in the header`, received, ...hint })
      return
    }
    const [timeCell, speedCell] = [cells[columns.time.place] as string, cells[columns.speed.place] as string]
    const { unit } = columns.time
    const time = unit === '' ? this.#clockTime(timeCell) : this.#read('time', timeCell, unit)
    const speed = this.#read('speed', speedCell, columns.speed.unit)
    if (typeof time !== 'number') this.#fault(place, time)
    if (typeof speed !== 'number') this.#fault(place, speed)
    if (typeof time !== 'number' || typeof speed !== 'number') return
    if (speed < 0) {
      this.#fault(place, { expected: 'a speed at least 0', received: shown(speedCell) })
      return
    }
    const before = this.#row
    if (before !== undefined && time === before.time) {
      before.sum += speed
      before.count++
      this.#merged++
      this.#readDigit(speedCell)
      return
    }
    if (before !== undefined && !this.#follows(place, before, time, timeCell)) return
    this.#handRow()
    this.#row = { time, cell: timeCell, line: this.#line, sum: speed, count: 1 }
    this.#readDigit(speedCell)
  }

  /** Whether a time may stand behind that of the row before. */
  #follows(place: string, before: { readonly time: number; readonly cell: string }, time: number, cell: string) {
    const lasts = time - before.time
    const row = `the row before, ${this.#timeText(before.time, before.cell)}`
    const received = this.#timeText(time, cell)
    if (lasts < 0) {
      this.#fault(place, { expected: `a time not before that of ${row}`, received })
      return false
    }
    // A row on the limit is no gap for the last digit of a difference.
    if (lasts > this.#longestGap * (1 + 1e-9)) {
      const longest = quantity('time', this.#longestGap, 's')
      const hint = 'the log has a gap: drive its parts apart, or give longestGap where speed was steady'
      this.#fault(place, { expected: `a time at most ${longest} after that of ${row}`, received, hint })
    }
    return true
  }

  /** Hands on the last row, when no other of its time comes. */
  #handRow(): void {
    if (this.#row === undefined) return
    const { time, sum, count, line } = this.#row
    if (this.#points === 0) this.#start = time
    const [from, speed] = [time - this.#start, sum / count]
    const g = standardGravity.value.si
    const change = this.#spikes.take(from, speed, IMPOSSIBLE * g) / g
    if (change > IMPOSSIBLE) {
      const expected = `a change of speed of at most ${IMPOSSIBLE} g over a second`
      this.#fault(`line ${line}`, { expected, received: `${change.toFixed(1)} g`, hint: 'a spike of the recorder' })
      return
    }
    this.#flicker.take(from, speed)
    this.#points++
    // Behind a row that cannot be used the log is read for its faults alone.
    if (this.#faulty === 0) this.#onPoint(from, speed)
  }

  /** A number in a cell, its decimals behind a point or, where all of the log has it so, behind a comma. */
  #read(kind: 'time' | 'speed', cell: string, unit: string): number | Fault {
    const sign = /^[-+]?\d*([.,])\d+$/.exec(cell)?.[1]
    if (sign !== undefined) {
      this.#decimalSign ||= sign
      if (sign !== this.#decimalSign) {
        const received = `${shown(cell)}, with ${this.#decimalSign} in the rows before`
        return { expected: 'one sign before the decimals in the whole log', received }
      }
    }
    const number = sign === ',' ? cell.replace(',', '.') : cell
    if (!knots.includes(unit)) return readCell(kind, number, unit)
    const read = readCell(kind, number, 'm/s')
    return typeof read === 'number' ? read * KNOT : { ...read, expected: read.expected.replace('m/s', unit) }
  }

  /** A time of the calendar or of the clock, ISO 8601, in seconds from the day of the first. */
  #clockTime(cell: string): number | Fault {
    const iso = /^(?:(\d{4}-\d\d-\d\d)[T ])?(\d\d?):([0-5]\d):([0-5]\d)(?:[.,](\d{1,12}))?(Z|[+-]\d\d:?\d\d)?$/.exec(
      cell,
    )
    const [, date, hours = '', minutes = '', seconds = '', fraction = '0', zone = 'Z'] = iso ?? []
    const days = date === undefined ? 0 : Date.parse(`${date}T00:00:00Z`) / 1000
    const isDay = date === undefined || (Number.isFinite(days) && new Date(days * 1000).toISOString().startsWith(date))
    if (iso === null || !isDay || Number(hours) > 23) {
      const expected = "a time of ISO 8601 such as '2026-05-01T07:30:00.5Z' or '07:30:00'"
      return { expected, received: cell === '' ? 'an empty cell' : shown(cell) }
    }
    const [, side, ahead, beside] = /^([+-])(\d\d):?(\d\d)$/.exec(zone) ?? []
    const shift = (Number(ahead ?? 0) * 60 + Number(beside ?? 0)) * (side === '-' ? -60 : 60)
    const whole = days + Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) - shift
    this.#epoch ??= whole
    return whole - this.#epoch + Number(`0.${fraction}`)
  }

  /** What the last digit of the speeds stands for: that of the cell with the most decimals so far. */
  #readDigit(cell: string): void {
    const decimals = /[.,](\d+)/.exec(cell)?.[1]?.length ?? 0
    if (decimals <= this.#decimals) return
    this.#decimals = decimals
    const digit = this.#read('speed', `1e-${decimals}`, this.#columns?.speed.unit ?? '')
    if (typeof digit === 'number') this.#flicker = new Flicker(digit)
  }

  #timeText(seconds: number, cell: string): string {
    const unit = this.#columns?.time.unit
    if (unit === undefined || unit === '') return cell
    return quantity('time', seconds, 's')
      .as(unit as never)
      .format({ digits: 12 })
  }

  /** Keeps what is wrong with a row until the end. */
  #fault(path: string, fault: Fault): void {
    this.#faulty++
    if (this.#faults.length < LISTED) this.#faults.push({ path, ...fault })
  }

  #refuse(path: string, expected: string, received: string, hint?: string): never {
    const issue = { path, expected, received }
    throw new InputError(this.#where, [hint === undefined ? issue : { ...issue, hint }])
  }
}

/** The cells of a line, without the quotes and the blanks around them; a quote inside quotes stands twice. */
function cellsOf(line: string, separator: string): string[] {
  if (!line.includes('"')) return line.split(separator).map((cell) => cell.trim())
  const cells = ['']
  let isQuoted = false
  for (const [i, sign] of [...line].entries()) {
    const last = cells.length - 1
    if (sign === '"') {
      if (!isQuoted && i > 0 && line[i - 1] === '"') cells[last] += sign
      isQuoted = !isQuoted
    } else if (sign === separator && !isQuoted) cells.push('')
    else cells[last] += sign
  }
  return cells.map((cell) => cell.trim())
}

/** The unit in a title, in brackets or as its last word, where it is one of that kind. */
function unitOf(kind: 'time' | 'speed', title: string): string | undefined {
  const unit = unitIn(title) ?? /[\s_](\S+)$/.exec(title)?.[1]
  if (unit === undefined) return undefined
  if (kind === 'speed' && knots.includes(unit)) return unit
  return scaleFor(kind, unit) === undefined ? undefined : unit
}

/** Whether a title without a unit is that of times of the clock or of the calendar. */
function isClock(title: string): boolean {
  return unitIn(title) === undefined && /^(?:date|time|timestamp|utc|clock)/i.test(title)
}

function other(kind: 'time' | 'speed') {
  return kind === 'time' ? 'speed' : 'time'
}

function columnOf(kind: 'time' | 'speed'): string {
  const also = kind === 'time' ? ', or of ISO times under the title time' : ', or in kn'
  return `a column of ${kind} with its unit in brackets, ${listed(symbolsOf(kind))}, such as ${HEADER}${also}`
}

/** A cycle that was read from a log. */
export interface ReadCycle extends Cycle, Findings {}

/**
 * Reads a cycle from a log of time and speed: text in columns, the first line naming them with their units in
 * brackets.
 *
 * ```text
 * time (s),speed (km/h)
 * 0,0
 * 1,3.2
 * ```
 *
 * Columns are separated by comma, semicolon or tab; further columns are left alone, and cells may stand in quotes. Lines that
 * begin with # are remarks. Decimals stand behind a point or, all of them, behind a comma. Times of ISO 8601, with or without
 * the date, stand under a title such as time. Rows stand in order of time, which need not be even; the cycle begins at the
 * first. Of rows of the same time the mean counts, and `assumptions` say so. What cannot be used is refused, each row by its
 * line. Between rows the speed changes evenly. Where the last digit of the speed goes up and down, a note tells what
 * that could add to a drive: each rise is paid for. With `smoothing`, the speed of each row is the mean over so long a time
 * around it; nearer to the start or the end than half of it, over what lies evenly on both sides.
 *
 * Answers: which drive cycle does a log of time and speed hold?
 *
 * - `log`: the text of the log, whole or in pieces of any length
 * - `columns`: the titles of the columns that count, where several could, optional
 *   - `time`: title of the column of time, as it stands in the log, text, optional
 *   - `speed`: title of the column of speed, as it stands in the log, text, optional
 * - `longestGap`: longest time between two rows that is not yet a gap, in s, above 0 s, 10 s by default (common
 *   practice, no source)
 * - `smoothing`: time over which the speed is averaged, in s, above 0 s, optional
 * - `name`: what the cycle is called, text, optional
 *
 * @returns The cycle, with what was noticed in the log.
 * @throws InputError that names the lines: a header without units or in a wrong one, a cell that is no number, a speed
 * below zero, a time before that of the row before, a gap, a spike.
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
    work: ({ log, longestGap, columns, smoothing, name = 'trace' }): Unfinished<ReadCycle> => {
      const seconds: number[] = []
      const metresPerSecond: number[] = []
      const reader = new TraceReader('readCycle', { longestGap, columns }, (time, speed) => {
        seconds.push(time)
        metresPerSecond.push(speed)
      })
      for (const piece of piecesOf(log)) reader.take(piece)
      reader.end()
      const asRead = cycleOf(name, seconds, metresPerSecond)
      if (smoothing === undefined) {
        return { ...asRead, checks: [], assumptions: reader.assumptions, notes: reader.notes }
      }
      const smooth = cycleOf(name, seconds, averaged(seconds, metresPerSecond, smoothing.si / 2))
      const text = `The speed is the mean over ${smoothing} around each row: the distance is ${smooth.distance}, ${asRead.distance} as written.`
      return { ...smooth, checks: [], assumptions: [...reader.assumptions, assumed('log.smoothing', text)] }
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
