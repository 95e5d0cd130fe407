/** The log of a test of a module: time, current, voltage, and what else a tester writes, in any order of columns. */
import {
  commaHint,
  type Fault,
  Lines,
  LONGEST_LINE,
  piecesOf,
  readCell,
  separatorIn,
  unitIn,
} from '../../procedure/log.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type InputIssue, type Kind, quantity } from '../../quantity/index.js'
import { kindInWords, listed, scaleFor, symbolsOf } from '../../quantity/read.js'

/** A row that cannot be read. */
export interface UnreadableRow {
  /** Its line in the text, the header being line 1. */
  readonly line: number
  /** What was expected there, and what stands there. */
  readonly why: string
}

/** What was read of a log, row by row, in SI units. @internal */
export interface TestLog {
  readonly lines: readonly number[]
  readonly times: readonly number[]
  /** As the tester writes them. */
  readonly currents: readonly number[]
  readonly voltages: readonly number[]
  /** Absent where no column tells it. */
  readonly temperatures?: readonly number[]
  /** The lowest and the highest cell of each row; absent where no column is of a cell. */
  readonly cells?: readonly (readonly [lowest: number, highest: number])[]
  readonly unreadable: readonly UnreadableRow[]
  /** Titles of columns that nothing is made of. */
  readonly ignored: readonly string[]
}

const HEADER = "'time (s),current (A),voltage (V)'"
/** So many rows that cannot be read are listed in an error; the others are counted. */
const LISTED = 20

interface Column {
  readonly place: number
  readonly kind: Kind
  readonly unit: string
}

/** The columns of a log by what they are. */
interface Columns {
  readonly separator: string
  readonly count: number
  readonly time: Column
  readonly current: Column
  readonly voltage: Column
  readonly temperature?: Column
  readonly cells: readonly Column[]
  readonly ignored: readonly string[]
}

/** Reads the log of a test. What is wrong with the header is refused; a row that cannot be read is left out and told. @internal */
export function readTestLog(where: string, log: string | Iterable<string>): TestLog {
  const refuse = (path: string, fault: Fault): never => {
    throw new InputError(where, [{ path, ...fault }])
  }
  const rows = {
    lines: [] as number[],
    times: [] as number[],
    currents: [] as number[],
    voltages: [] as number[],
    temperatures: [] as number[],
    cells: [] as (readonly [number, number])[],
  }
  const issues: InputIssue[] = []
  let columns: Columns | undefined
  /** Empty lines at the end are none; between rows they are lines that cannot be read. */
  let empty: number[] = []
  const tell = (line: number, fault: Fault) => issues.push({ path: `line ${line}`, ...fault })
  const reader = new Lines((line, number) => {
    if (columns === undefined) {
      columns = columnsOf(line, (fault) => refuse('line 1', fault))
      return
    }
    if (line.trim() === '') {
      empty.push(number)
      return
    }
    for (const each of empty) tell(each, { expected: 'a row', received: 'an empty line' })
    empty = []
    const read = rowOf(line, columns, rows.times.at(-1))
    if ('expected' in read) {
      tell(number, read)
      return
    }
    rows.lines.push(number)
    rows.times.push(read.time)
    rows.currents.push(read.current)
    rows.voltages.push(read.voltage)
    if (read.temperature !== undefined) rows.temperatures.push(read.temperature)
    if (read.cells !== undefined) rows.cells.push(read.cells)
  })
  for (const piece of piecesOf(log)) {
    if (typeof piece !== 'string') refuse('log', { expected: 'pieces of text', received: shown(piece) })
    reader.take(piece)
    if (reader.pending.length > LONGEST_LINE) {
      refuse(`line ${reader.count + 1}`, { expected: 'columns, a line for each row', received: shown(reader.pending) })
    }
  }
  reader.end()
  if (columns === undefined) {
    return refuse('line 1', { expected: `a header such as ${HEADER}`, received: 'nothing' })
  }
  const { ignored, temperature, cells } = columns as Columns
  if (rows.times.length < 2 || issues.length > rows.times.length) {
    const readable = rows.times.length
    const most = { path: 'log', expected: 'at least two rows behind the header, most of them readable' }
    const more = issues.length > LISTED ? `, of them ${issues.length - LISTED} not listed here` : ''
    const received = `${readable} that can be read, ${issues.length} that cannot${more}`
    throw new InputError(where, [{ ...most, received }, ...issues.slice(0, LISTED)])
  }
  return {
    lines: rows.lines,
    times: rows.times,
    currents: rows.currents,
    voltages: rows.voltages,
    ...(temperature === undefined ? {} : { temperatures: rows.temperatures }),
    ...(cells.length === 0 ? {} : { cells: rows.cells }),
    unreadable: issues.map(({ path, expected, received, hint }) => ({
      line: Number(path.slice('line '.length)),
      why: `expected ${expected}, got ${received}${hint === undefined ? '' : ` (${hint})`}`,
    })),
    ignored,
  }
}

/** Which column is what: by the unit in its title, and a voltage whose title begins with `cell` is that of a cell. */
function columnsOf(header: string, refuse: (fault: Fault) => never): Columns {
  const separator = separatorIn(header)
  const titles = header.split(separator).map((title) => title.trim())
  const found = titles.flatMap((title, place) => {
    const unit = unitIn(title)
    const kind = (['time', 'current', 'voltage', 'temperature'] as const).find(
      (each) => unit !== undefined && scaleFor(each, unit) !== undefined,
    )
    return kind === undefined ? [] : [{ title, place, kind, unit: unit as string, isCell: /^"?cell\b/i.test(title) }]
  })
  const cells = found.filter(({ kind, isCell }) => kind === 'voltage' && isCell)
  const others = found.filter((each) => !cells.includes(each))
  const of = (kind: Kind) => others.filter((each) => each.kind === kind)
  const one = (kind: Kind) => {
    const [first, ...more] = of(kind)
    const name = kindInWords(kind)
    const expected = `one column with ${name} and its unit in brackets, ${listed(symbolsOf(kind))}, such as ${HEADER}`
    if (first === undefined) return refuse({ expected, received: shown(header) })
    if (more.length > 0) {
      const hint = kind === 'voltage' ? { hint: 'the voltage of a cell has a title that begins with cell' } : {}
      return refuse({
        expected,
        received: of(kind)
          .map(({ title }) => shown(title))
          .join(' and '),
        ...hint,
      })
    }
    return first
  }
  const [time, current, voltage] = [one('time'), one('current'), one('voltage')]
  const temperature = of('temperature').length === 0 ? undefined : one('temperature')
  const used = [time, current, voltage, temperature, ...cells]
  return {
    separator,
    count: titles.length,
    time,
    current,
    voltage,
    ...(temperature === undefined ? {} : { temperature }),
    cells,
    ignored: titles.filter((_, place) => !used.some((each) => each?.place === place)),
  }
}

interface Row {
  readonly time: number
  readonly current: number
  readonly voltage: number
  readonly temperature?: number
  readonly cells?: readonly [lowest: number, highest: number]
}

function rowOf(line: string, columns: Columns, before: number | undefined): Row | Fault {
  const { separator, count } = columns
  const cells = line.split(separator)
  if (cells.length !== count) {
    const received = `${cells.length === 1 ? 'one' : cells.length}, ${shown(line)}`
    return { expected: `${count} columns as in the header`, received, ...commaHint(separator, cells.length, count) }
  }
  let fault: Fault | undefined
  const read = ({ place, kind, unit }: Column) => {
    const value = readCell(kind, cells[place] as string, unit)
    if (typeof value === 'number') return value
    fault ??= value
    return Number.NaN
  }
  const [time, current, voltage] = [read(columns.time), read(columns.current), read(columns.voltage)]
  const temperature = columns.temperature === undefined ? undefined : read(columns.temperature)
  const each = columns.cells.map(read)
  if (fault !== undefined) return fault
  if (voltage < 0)
    return { expected: 'a voltage at least 0', received: shown((cells[columns.voltage.place] as string).trim()) }
  if (before !== undefined && !(time > before)) {
    const text = (seconds: number) =>
      quantity('time', seconds, 's')
        .as(columns.time.unit as never)
        .format({ digits: 12 })
    return { expected: `a time after that of the last row that can be read, ${text(before)}`, received: text(time) }
  }
  return {
    time,
    current,
    voltage,
    ...(temperature === undefined ? {} : { temperature }),
    ...(each.length === 0 ? {} : { cells: [Math.min(...each), Math.max(...each)] as const }),
  }
}
