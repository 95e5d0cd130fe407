/** Lines over two axes, each with its own dashes and its name at the line. */
import { ticks } from 'd3-array'
import { line } from 'd3-shape'
import {
  type Box,
  boxOf,
  fitted,
  isCrossed,
  isInside,
  isOverlapping,
  type Label,
  type Point,
  TEXT,
  widthOf,
} from './box.js'
import { at, lineOf, svgOf, textOf } from './svg.js'

/** A line: numbers in the units of the axes. @internal */
export interface Series {
  readonly name: string
  readonly points: readonly Point[]
  /** A limit or a load: thinner than what is the drawing's own. */
  readonly isBeside?: boolean
}

/** What lies along an axis. @internal */
export interface Axis {
  /** What is measured, and the unit. */
  readonly name: string
  /** Whether it begins at zero. */
  readonly fromZero?: boolean
  /** What is left free at its ends, as a share of what is drawn. */
  readonly margin?: number
}

/** A drawing of lines. @internal */
export interface Plot {
  /** What is drawn, for those who cannot see it. */
  readonly name: string
  readonly x: Axis
  readonly y: Axis
  readonly series: readonly Series[]
  /** Whether it stands beside another. */
  readonly isBeside?: boolean
}

/** Sizes of a drawing, in its own units, alone and beside another: on a small screen its text is still read. */
const [ALONE, BESIDE, HEIGHT] = [400, 320, 250]
const [TOP, RIGHT, BOTTOM] = [24, 12, 36]
/** About how many numbers stand along an axis. */
const NUMBERS = 5
/** Dashes of lines, one after the other; the class of a line tells its own. */
const DASHES = 6
/** How far a name stands from its line, and how far from others the line must be where it stands. */
const [APART, ALONENESS] = [4, 9]

/** Draws lines. @internal */
export function plot({ name, x, y, series, isBeside = false }: Plot): string {
  const all = series.flatMap(({ points }) => points)
  const { width, height, frame, toX, toY, axes } = frameOf(x, y, all, isBeside)
  const lines = series.map(({ points }) => points.map(([one, other]): Point => [toX(one), toY(other)]))
  const path = line<Point>()
    .x(([one]) => Number(at(one)))
    .y(([, other]) => Number(at(other)))
  const named = names(series, lines, frame)
  return svgOf(
    width,
    height,
    name,
    axes,
    ...lines.map((points, i) => `<path class="${lineClass(series[i] as Series, i)}" d="${path(points as Point[])}"/>`),
    ...named.labels.map((each) => textOf(each, 'name')),
    ...(named.left.length === 0 ? [] : [keyOf(named.left, frame)]),
  )
}

/** Two axes around points: where these are drawn, and the axes themselves. @internal */
export function frameOf(x: Axis, y: Axis, points: readonly Point[], isBeside = false) {
  const width = isBeside ? BESIDE : ALONE
  const across = rangeOf(
    x,
    points.map(([one]) => one),
    false,
  )
  const up = rangeOf(
    y,
    points.map(([, other]) => other),
    true,
  )
  const numbers = up.ticks.map(numberText)
  const left = Math.ceil(Math.max(...numbers.map((text) => widthOf(text)))) + 8
  const frame: Box = { left, top: TOP, right: width - RIGHT, bottom: HEIGHT - BOTTOM }
  const toX = (value: number) =>
    frame.left + ((value - across.from) / (across.to - across.from)) * (frame.right - frame.left)
  const toY = (value: number) => frame.bottom - ((value - up.from) / (up.to - up.from)) * (frame.bottom - frame.top)
  const middle = (frame.left + frame.right) / 2
  const labels: Label[] = [
    ...numbers.map(
      (text, i): Label => ({ text, x: frame.left - 6, y: toY(up.ticks[i] as number) + TEXT * 0.34, anchor: 'end' }),
    ),
    ...alongX(across.ticks, toX, frame),
    { text: fitted(x.name, 2 * (width - middle) - 4), x: middle, y: HEIGHT - 5, anchor: 'middle' },
    { text: fitted(y.name, width - 8), x: 2, y: TEXT + 1, anchor: 'start' },
  ]
  const axes = [
    ...up.ticks.map((value) => lineOf(frame.left, toY(value), frame.right, toY(value), value === 0 ? 'axis' : 'grid')),
    ...across.ticks.map((value) => lineOf(toX(value), frame.bottom, toX(value), frame.bottom + 3, 'axis')),
    ...(up.from === 0 ? [] : [lineOf(frame.left, frame.bottom, frame.right, frame.bottom, 'axis')]),
    ...labels.map((each) => textOf(each)),
  ].join('')
  return { width, height: HEIGHT, frame, toX, toY, axes }
}

function lineClass({ isBeside = false }: Series, i: number): string {
  return `line d${i % DASHES}${isBeside ? ' beside' : ''}`
}

/** Where an axis begins and ends, with the numbers along it. */
function rangeOf({ fromZero = false, margin = 0 }: Axis, values: readonly number[], toNumbers: boolean) {
  const [least, most] = [Math.min(...values, ...(fromZero ? [0] : [])), Math.max(...values)]
  const free = margin * (most - least)
  const [low, high] = least === most ? [least - 1, most + 1] : [least - free, most + free]
  const apart = stepOf(low, high)
  // The lines fill the width, and upwards they end at a number.
  const [from, to] = toNumbers ? [Math.floor(low / apart) * apart, Math.ceil(high / apart) * apart] : [low, high]
  return { from, to, ticks: ticks(from, to, NUMBERS) }
}

function stepOf(low: number, high: number): number {
  const [first = 0, second = 1] = ticks(low, high, NUMBERS)
  return Math.abs(second - first)
}

/** A number of an axis, with thousands apart from each other. */
function numberText(value: number): string {
  const rounded = Number(value.toPrecision(12))
  const [whole = '', ...rest] = String(rounded).replace('-', '−').split('.')
  return [whole.replace(/\B(?=(\d{3})+$)/g, '\u202f'), ...rest].join('.')
}

/** The numbers under the axis; what would touch the one before it is left out. */
function alongX(values: readonly number[], toX: (value: number) => number, frame: Box): Label[] {
  const labels: Label[] = []
  let end = Number.NEGATIVE_INFINITY
  for (const value of values) {
    const label: Label = { text: numberText(value), x: toX(value), y: frame.bottom + 15, anchor: 'middle' }
    const { left, right } = boxOf(label)
    if (left < end + 4 || right > frame.right + RIGHT) continue
    labels.push(label)
    end = right
  }
  return labels
}

/** The name of each line at the line, where it is free of all lines and names; what finds no place is left for the key. */
function names(series: readonly Series[], lines: readonly (readonly Point[])[], frame: Box) {
  const labels: Label[] = []
  const left: number[] = []
  const boxes: Box[] = []
  series.forEach(({ name }, i) => {
    const own = lines[i] as readonly Point[]
    const others = lines.filter((_, j) => j !== i)
    // Where two lines run as one, a name would be that of either.
    const alone = ([x, y]: Point) => {
      const around = { left: x - ALONENESS, top: y - ALONENESS, right: x + ALONENESS, bottom: y + ALONENESS }
      return !others.some((points) => isCrossed(around, points))
    }
    const free = candidates(name, own, alone).find((label) => {
      const box = grown(boxOf(label))
      return (
        isInside(box, frame) &&
        !boxes.some((other) => isOverlapping(box, other)) &&
        !lines.some((points) => isCrossed(box, points))
      )
    })
    if (free === undefined) left.push(i)
    else {
      labels.push(free)
      boxes.push(grown(boxOf(free)))
    }
  })
  return { labels, left: left.map((i) => ({ series: series[i] as Series, i })) }
}

function grown({ left, top, right, bottom }: Box): Box {
  return { left: left - 1, top: top - 1, right: right + 1, bottom: bottom + 1 }
}

/** Places for the name of a line, the best first: above or below it, where it runs alone, towards its end and then farther back. */
function candidates(text: string, points: readonly Point[], alone: (point: Point) => boolean): Label[] {
  const places = [0.82, 0.7, 0.9, 0.58, 0.46, 0.97, 0.34, 0.22, 0.12, 0.04, 1].map((share) => {
    const point = along(points, share)
    return { share, point, isAlone: alone(point) }
  })
  const ordered = [...places.filter(({ isAlone }) => isAlone), ...places.filter(({ isAlone }) => !isAlone)]
  return ordered.flatMap(({ share, point: [x, y] }) =>
    [0, 5, 11].flatMap((more) =>
      anchorsAt(share).flatMap((anchor): Label[] => [
        { text, x, y: y - APART - more, anchor },
        { text, x, y: y + TEXT + APART / 2 + more, anchor },
      ]),
    ),
  )
}

function anchorsAt(share: number): readonly Label['anchor'][] {
  if (share > 0.9) return ['end', 'middle', 'start']
  return share < 0.15 ? ['start', 'middle'] : ['middle', 'start', 'end']
}

/** The point at a share of the way along a line. */
function along(points: readonly Point[], share: number): Point {
  const [first, last] = [points[0] as Point, points.at(-1) as Point]
  const x = first[0] + share * (last[0] - first[0])
  const after = points.findIndex((point) => point[0] >= x)
  const [one, other] = [points[Math.max(0, after - 1)] as Point, points[Math.max(0, after)] as Point]
  const part = other[0] === one[0] ? 0 : (x - one[0]) / (other[0] - one[0])
  return [x, one[1] + part * (other[1] - one[1])]
}

/** The names that found no place at their lines, with a piece of the line before each, over the drawing. */
function keyOf(left: readonly { readonly series: Series; readonly i: number }[], frame: Box): string {
  return left
    .map(({ series, i }, j) => {
      const y = frame.top + 8 + j * (TEXT + 4)
      const end = frame.right - widthOf(series.name) - 6
      return `${lineOf(end - 26, y - TEXT / 3, end, y - TEXT / 3, lineClass(series, i))}${textOf({ text: series.name, x: frame.right, y, anchor: 'end' }, 'name')}`
    })
    .join('')
}
