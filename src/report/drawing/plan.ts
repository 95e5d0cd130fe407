/** The car seen from above, front at the top. */
import type { DrawnBay } from '../../conversion/courses.js'
import type { Plan, PlanPlace } from '../../mass/plan.js'
import type { Quantity } from '../../quantity/index.js'
import { fitted, type Label, TEXT, widthOf } from './box.js'
import { at, lineOf, svgOf, textOf } from './svg.js'

/** Size of the drawing, and what lies between car and edge for the words. */
const [WIDTH, CAR] = [400, 130]
/** Size of a wheel, in m: that of a light car. */
const [WHEEL_LENGTH, WHEEL_WIDTH] = [0.52, 0.15]
/** What the car reaches beyond its axles, in m, where nothing tells it. */
const OVERHANG = 0.42

interface Scale {
  readonly x: (left: Quantity<'length'>) => number
  readonly y: (aft: Quantity<'length'>) => number
  readonly perMetre: number
  readonly height: number
}

function scaleOf({ wheels, extent }: Plan): Scale {
  const track = 2 * Math.max(...wheels.map(({ at: place }) => Math.abs(place.left.si)))
  const perMetre = CAR / Math.max(track, extent.width.si)
  const [front, rear] = [Math.min(0, extent.front.si) - OVERHANG, extent.rear.si + OVERHANG]
  return {
    x: (left) => WIDTH / 2 - left.si * perMetre,
    y: (aft) => 12 + (aft.si - front) * perMetre,
    perMetre,
    height: 24 + (rear - front) * perMetre,
  }
}

/** The outline, the wheels, the axles and the centre line. */
function body({ wheels }: Plan, { x, y, perMetre, height }: Scale): string {
  const half = (Math.max(...wheels.map(({ at: place }) => Math.abs(place.left.si))) + WHEEL_WIDTH / 2 + 0.04) * perMetre
  const [top, bottom] = [12, height - 12]
  const round = 26
  const middle = WIDTH / 2
  const [left, right] = [middle - half, middle + half]
  const outline = `M${at(left)} ${at(bottom - round)}V${at(top + 2 * round)}Q${at(left)} ${at(top)} ${at(middle)} ${at(top)}Q${at(right)} ${at(top)} ${at(right)} ${at(top + 2 * round)}V${at(bottom - round)}Q${at(right)} ${at(bottom)} ${at(right - round)} ${at(bottom)}H${at(left + round)}Q${at(left)} ${at(bottom)} ${at(left)} ${at(bottom - round)}Z`
  const [long, wide] = [WHEEL_LENGTH * perMetre, WHEEL_WIDTH * perMetre]
  const axle = (name: string) => wheels.filter(({ wheel }) => wheel.startsWith(name))
  return [
    `<path class="grid" d="${outline}"/>`,
    ...['front', 'rear'].map((name) => {
      const [one, other] = axle(name).map(({ at: place }) => place) as [PlanPlace, PlanPlace]
      return lineOf(x(one.left), y(one.aft), x(other.left), y(other.aft), 'axis')
    }),
    ...wheels.map(
      ({ at: place }) =>
        `<rect class="wheel" x="${at(x(place.left) - wide / 2)}" y="${at(y(place.aft) - long / 2)}" width="${at(wide)}" height="${at(long)}" rx="3"/>`,
    ),
  ].join('')
}

/** The car in plan: what each wheel carries before and after, and the centres of gravity, drawn larger beside. @internal */
export function planDrawing(plan: Plan, shown: (value: Quantity) => string): string {
  const scale = scaleOf(plan)
  const { x, y, perMetre, height } = scale
  const corners = plan.wheels.flatMap(({ at: place, mass, before }): Label[] => {
    const isLeft = place.left.si > 0
    const beside = (isLeft ? -1 : 1) * ((WHEEL_WIDTH / 2) * perMetre + 12)
    const [from, anchor] = [x(place.left) + beside, isLeft ? 'end' : 'start'] as const
    const lines = [...(before === undefined ? [] : [`${shown(before)} before`]), `${shown(mass)} after`]
    return lines.map((text, i) => ({ text, x: from, y: y(place.aft) - 2 + i * (TEXT + 5), anchor }))
  })
  const centre = plan.centreOfGravity
  const inset = plan.before === undefined ? '' : enlarged(plan.before, centre, scale, shown)
  return svgOf(
    WIDTH,
    height,
    'The car from above with the mass on each wheel before and after, and its centres of gravity',
    body(plan, scale),
    lineOf(WIDTH / 2, 20, WIDTH / 2, height - 20, 'centre'),
    ...(plan.before === undefined
      ? []
      : [`<circle class="hollow" cx="${at(x(plan.before.left))}" cy="${at(y(plan.before.aft))}" r="5"/>`]),
    `<circle class="full" cx="${at(x(centre.left))}" cy="${at(y(centre.aft))}" r="2.5"/>`,
    ...corners.map((each) => textOf(each)),
    textOf({ text: 'front', x: WIDTH / 2 + 6, y: 30, anchor: 'start' }, 'quiet'),
    inset,
  )
}

/** Steps of a scale that are easily counted, in m. */
const BARS = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1]
/** Half the width of the enlargement. */
const HALF = 34

/** Both centres of gravity so large that they stand apart, with a bar that tells how large. */
function enlarged(
  before: PlanPlace,
  after: PlanPlace,
  { x, y, height }: Scale,
  shown: (value: Quantity) => string,
): string {
  const [across, along] = [after.left.si - before.left.si, after.aft.si - before.aft.si]
  const distance = Math.max(Math.hypot(across, along), 1e-4)
  const bar = BARS.findLast((each) => each <= distance) ?? (BARS[0] as number)
  const per = (HALF * 1.1) / distance
  const [middleX, middleY] = [
    WIDTH - HALF - 22,
    Math.min(Math.max((y(before.aft) + y(after.aft)) / 2, HALF + 60), height - HALF - 60),
  ]
  const place = (sign: number) => [middleX - (sign * across * per) / 2, middleY + (sign * along * per) / 2] as const
  const [one, other] = [place(-1), place(1)]
  const barLength = Math.min(bar * per, 2 * HALF)
  const barY = middleY + HALF + 16
  return [
    lineOf(x(after.left) + 7, y(after.aft), middleX - HALF - 4, middleY, 'leader'),
    `<circle class="lens" cx="${at(middleX)}" cy="${at(middleY)}" r="${HALF + 4}"/>`,
    lineOf(one[0], one[1], other[0], other[1], 'leader'),
    `<circle class="hollow" cx="${at(one[0])}" cy="${at(one[1])}" r="5"/>`,
    `<circle class="full" cx="${at(other[0])}" cy="${at(other[1])}" r="4"/>`,
    lineOf(middleX - barLength / 2, barY, middleX + barLength / 2, barY, 'bar'),
    textOf({ text: shown(after.left.times(0).plus(`${bar} m`)), x: middleX, y: barY + TEXT + 3, anchor: 'middle' }),
  ].join('')
}

/** More places than this are told by their numbers alone. */
const MOST_PLACES = 12
const PLACE = 9

/** The bays with their modules: a full square each, and an empty one where there is room for one more. @internal */
export function baysDrawing(plan: Plan, bays: readonly DrawnBay[]): string {
  const scale = scaleOf(plan)
  const labelled = labelsOf(bays, scale)
  return svgOf(
    WIDTH,
    scale.height,
    `The car from above with its bays: ${bays.map(({ name, holds, room }) => `${name}, ${holds} of ${room}`).join('; ')}`,
    ...labelled.map(({ leader }) => leader),
    body(plan, scale),
    ...bays.map((bay) => squares(bay, scale)),
    ...labelled.flatMap(({ labels }) => labels.map((each) => textOf(each))),
    textOf({ text: 'front', x: WIDTH / 2 + 6, y: 30, anchor: 'start' }, 'quiet'),
  )
}

function squares({ holds, room, left, aft }: DrawnBay, { x, y }: Scale): string {
  const count = Math.min(room, MOST_PLACES)
  const columns = Math.min(count, 3)
  const rows = Math.ceil(count / Math.max(1, columns))
  const side = PLACE + 2
  const middle = (along: number, many: number) => (along - (many - 1) / 2) * side - PLACE / 2
  return Array.from({ length: count }, (_, i) => {
    const [from, top] = [x(left) + middle(i % columns, columns), y(aft) + middle(Math.floor(i / columns), rows)]
    return `<rect class="${i < holds ? 'full' : 'hollow'}" x="${at(from)}" y="${at(top)}" width="${PLACE}" height="${PLACE}"/>`
  }).join('')
}

/** The names of bays at the sides, one below the other, in lines that fit between edge and wheels. */
function labelsOf(bays: readonly DrawnBay[], { x, y, height }: Scale) {
  const room = WIDTH / 2 - CAR / 2 - 24
  const last = { start: 0, end: 0 }
  return [...bays]
    .sort((one, other) => one.aft.si - other.aft.si)
    .map((bay) => {
      // What lies in the middle goes to the side with more room.
      const isLeft = bay.left.si > 0 || (bay.left.si === 0 && last.end <= last.start)
      const [anchor, from] = isLeft ? (['end', room] as const) : (['start', WIDTH - room] as const)
      const lines = [...wrapped(bay.name, room), `${bay.holds} of ${bay.room}`]
      const step = TEXT + 3
      const first = Math.min(
        Math.max(y(bay.aft) - ((lines.length - 2) * step) / 2, last[anchor] + step + 5),
        height - lines.length * step,
      )
      last[anchor] = first + (lines.length - 1) * step
      const level = first - TEXT / 3 + ((lines.length - 1) * step) / 2
      return {
        labels: lines.map((text, i): Label => ({ text, x: from, y: first + i * step, anchor })),
        leader: lineOf(from + (isLeft ? 5 : -5), level, x(bay.left), y(bay.aft), 'leader'),
      }
    })
}

/** A text in at most two lines of a width, cut where that is not enough. */
function wrapped(text: string, room: number): string[] {
  const lines = ['']
  for (const word of text.split(/\s+/)) {
    const longer = `${lines.at(-1)} ${word}`.trim()
    if (lines.at(-1) !== '' && widthOf(longer) > room && lines.length < 2) lines.push(word)
    else lines[lines.length - 1] = longer
  }
  return lines.map((line) => fitted(line, room))
}
