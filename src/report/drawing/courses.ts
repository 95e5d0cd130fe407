/** What is drawn of an assessment: each drawing with what it shows, a sentence that says what it means, and its table. */
import { coursesBehind } from '../../conversion/assess.js'
import type { Assessment } from '../../conversion/index.js'
import { type Kind, type Quantity, quantity } from '../../quantity/index.js'
import { type Units, unitFor } from '../figure.js'
import type { Telling } from '../telling.js'
import type { Point } from './box.js'
import { baysDrawing, planDrawing } from './plan.js'
import { plot, type Series } from './plot.js'

/** A drawing. @internal */
export interface Drawing {
  /** The section that it belongs to, and the table of the section that holds its figures where it has none of its own. */
  readonly section: string
  readonly of?: string
  readonly title: string
  /** What it means. */
  readonly says: string
  /** One picture, or several side by side. */
  readonly pictures: readonly string[]
  readonly table?: { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] }
}

/** The drawings of an assessment, as far as its sheet allows them. @internal */
export function drawingsOf(assessment: Assessment, telling: Telling, units: Units | undefined): Drawing[] {
  const courses = coursesBehind(assessment)
  const draw = { telling, units }
  return [
    planOf(draw, courses.plan()),
    baysOf(courses.bays()),
    pullOf(draw, courses.pull()),
    steadyOf(draw, courses.steady()),
    warmthOf(draw, courses.warmth()),
    chargeOf(draw, courses.charge()),
  ].filter((each) => each !== undefined)
}

interface Draw {
  readonly telling: Telling
  readonly units: Units | undefined
}

type Courses = ReturnType<typeof coursesBehind>
type Of<K extends keyof Courses> = ReturnType<Courses[K]>

function planOf({ telling }: Draw, plan: Of<'plan'>): Drawing | undefined {
  if (plan === undefined) return undefined
  const { before, centreOfGravity: after } = plan
  const moves =
    before === undefined
      ? []
      : [
          moved(telling, after.aft.minus(before.aft), 'back', 'forward'),
          moved(telling, after.left.minus(before.left), 'to the left', 'to the right'),
          ...(after.up === undefined || before.up === undefined
            ? []
            : [moved(telling, after.up.minus(before.up), 'up', 'down')]),
        ]
  return {
    section: 'weight',
    of: 'weight',
    title: 'The empty car from above, before and after',
    says: `The centre of gravity moves ${inList(moves)}. The ring is where it was, the dot where it is; the circle beside shows both enlarged.`,
    pictures: [planDrawing(plan, (value) => telling.shown(value))],
  }
}

function moved(telling: Telling, by: Quantity<'length'>, plus: string, minus: string): string {
  return `${telling.shown(by.times(Math.sign(by.si) || 1))} ${by.si < 0 ? minus : plus}`
}

function baysOf(found: Of<'bays'>): Drawing | undefined {
  if (found === undefined) return undefined
  const { plan, bays } = found
  const [held, room] = [bays.reduce((sum, { holds }) => sum + holds, 0), bays.reduce((sum, bay) => sum + bay.room, 0)]
  const empty = bays.filter(({ holds }) => holds === 0).map(({ name }) => name)
  const left = empty.length === 0 ? '' : ` Nothing goes ${inList(empty)}.`
  return {
    section: 'weight',
    of: 'placement',
    title: 'The bays with their modules',
    says: `${held} modules stand in bays that hold ${room}: a full square is a module, an empty one a free place.${left}`,
    pictures: [baysDrawing(plan, bays)],
  }
}

function pullOf({ telling, units }: Draw, found: Of<'pull'>): Drawing | undefined {
  if (found === undefined) return undefined
  const { curves, roadLoads, grip } = found
  const [speed, force] = [unitOf('speed', 'km/h', units), unitOf('force', 'N', units)]
  const point = (each: { readonly speed: Quantity<'speed'>; readonly force: Quantity<'force'> }): Point => [
    speed.of(each.speed),
    force.of(each.force),
  ]
  const most = Math.max(...curves.flatMap(({ points }) => points.map((each) => each.force.si)))
  const gears = curves.map(({ gear, points }): Series => ({ name: gear, points: points.map(point) }))
  const loads = roadLoads.map(
    ({ grade, points }): Series => ({
      name: grade.si === 0 ? 'road load, level' : `road load, ${telling.shown(grade.as('%'))}`,
      points: points.filter((each) => each.force.si <= most).map(point),
      isBeside: true,
    }),
  )
  const fastest = curves
    .flatMap(({ gear, crossings: [level] }) =>
      level?.speed === undefined ? [] : [{ gear, ...level, speed: level.speed }],
    )
    .reduce<{ gear: string; speed: Quantity<'speed'>; limitedBy?: string } | undefined>(
      (one, other) => (one !== undefined && one.speed.si >= other.speed.si ? one : other),
      undefined,
    )
  const spins = curves.filter((curve) => curve.spins === true).map(({ gear }) => gear)
  const told = [
    fastest === undefined
      ? 'No gear holds a speed on the level.'
      : `Where the pull of a gear meets the road load, the car goes no faster: ${telling.shown(fastest.speed)} in ${fastest.gear} on the level.`,
    ...(grip === undefined
      ? []
      : [
          spins.length === 0
            ? 'The tyres hold full torque in every gear.'
            : `The tyres hold ${telling.shown(grip)}, less than full torque gives in ${inList(spins)}.`,
        ]),
  ]
  const speeds = [0, 20, 40, 60, 80, 100, 120, 140, 160, 180, 200]
  const rows = speeds.flatMap((each) => {
    const at = (points: readonly { readonly speed: Quantity<'speed'>; readonly force: Quantity<'force'> }[]) => {
      const found = points.find((one) => Math.abs(one.speed.in('km/h') - each) < 1e-6)
      return found === undefined ? '' : telling.shown(found.force)
    }
    const cells = [...curves.map(({ points }) => at(points)), ...roadLoads.map(({ points }) => at(points))]
    return cells.every((cell) => cell === '') ? [] : [[telling.shown(quantity('speed', each, 'km/h')), ...cells]]
  })
  return {
    section: 'road',
    title: 'Pull against speed in each gear, and what the road resists',
    says: told.join(' '),
    pictures: [
      plot({
        name: 'Pull at the wheels against speed, a line for each gear, with the road load',
        x: { name: `speed, ${speed.unit}`, fromZero: true },
        y: { name: `force at the wheels, ${force.unit}`, fromZero: true },
        series: [...gears, ...loads],
      }),
    ],
    table: { columns: ['speed', ...gears.map(({ name }) => name), ...loads.map(({ name }) => name)], rows },
  }
}

function steadyOf({ telling, units }: Draw, found: Of<'steady'>): Drawing | undefined {
  if (found === undefined) return undefined
  const speed = unitOf('speed', 'km/h', units)
  const taken = unitOf('energyPerDistance', 'Wh/km', units)
  const range = unitOf('length', 'km', units)
  const fastest = found.map(
    ({ name, speeds }) => `${telling.shown((speeds.at(-1) as (typeof speeds)[number]).speed)} in ${name}`,
  )
  const at = found.map(({ name, speeds }) => ({
    name,
    point: speeds.find((each) => Math.abs(each.speed.in('km/h') - 90) < 1e-6),
  }))
  const told = at.flatMap(({ name, point }) =>
    point?.range === undefined
      ? []
      : [`${telling.shown(point.consumption)} and ${telling.shown(point.range)} in ${name}`],
  )
  const rows = [...new Set(found.flatMap(({ speeds }) => speeds.map((each) => each.speed.in('km/h'))))]
    .filter((each) => each % 10 === 0)
    .map((each) => [
      telling.shown(quantity('speed', each, 'km/h')),
      ...found.flatMap(({ speeds }) => {
        const one = speeds.find((other) => other.speed.in('km/h') === each)
        return one === undefined
          ? ['', '']
          : [telling.shown(one.consumption), one.range === undefined ? '' : telling.shown(one.range)]
      }),
    ])
  return {
    section: 'steady',
    title: 'Consumption and range against steady speed, by season',
    says: `${told.length === 0 ? 'A steady speed takes more the faster it is.' : `At 90 km/h: ${inList(told)}.`} The lines end where the pack gives no more power: ${inList(fastest)}.`,
    pictures: [
      plot({
        name: 'Consumption against steady speed, a line for each season',
        isBeside: true,
        x: { name: `steady speed, ${speed.unit}` },
        y: { name: `from the pack, ${taken.unit}`, fromZero: true },
        series: found.map(({ name, speeds }) => ({
          name,
          points: speeds.map((each): Point => [speed.of(each.speed), taken.of(each.consumption)]),
        })),
      }),
      plot({
        name: 'Range against steady speed, a line for each season',
        isBeside: true,
        x: { name: `steady speed, ${speed.unit}` },
        y: { name: `range, ${range.unit}`, fromZero: true },
        series: found.map(({ name, speeds }) => ({
          name,
          points: speeds.flatMap((each): Point[] =>
            each.range === undefined ? [] : [[speed.of(each.speed), range.of(each.range)]],
          ),
        })),
      }),
    ],
    table: {
      columns: ['speed', ...found.flatMap(({ name }) => [`${name}: from the pack`, `${name}: range`])],
      rows,
    },
  }
}

/** From here on a time is counted in hours, in seconds. */
const LONG = 3 * 3600
/** So many points of a course over time are drawn. */
const MOST_POINTS = 120

function warmthOf({ telling, units }: Draw, found: Of<'warmth'>): Drawing | undefined {
  if (found === undefined) return undefined
  const { journey, seasons, limit } = found
  const time = timesTo(Math.max(...seasons.map(({ series }) => series.at(-1)?.[0].si ?? 0)))
  const temperature = unitOf('temperature', '°C', units)
  const ends = seasons.map(({ name, series }) => {
    const [first, last] = [series[0], series.at(-1)] as [(typeof series)[number], (typeof series)[number]]
    return `from ${telling.shown(first[1])} to ${telling.shown(last[1])} in ${name}`
  })
  const thinned = seasons.map(({ name, series }) => ({ name, series: everyFew(series) }))
  const longest = thinned.reduce((one, other) => (one.series.length >= other.series.length ? one : other))
  const span = [
    Math.min(...thinned.map(({ series }) => time.of(series[0]?.[0] as Quantity<'time'>))),
    Math.max(...thinned.map(({ series }) => time.of(series.at(-1)?.[0] as Quantity<'time'>))),
  ]
  const moments = everyFew(longest.series, 8)
  return {
    section: 'journeys',
    title: `Temperature of the cells over the longest journey, ${journey}`,
    says: `The cells go ${inList(ends)}${limit === undefined ? '' : `; the limit is ${telling.shown(limit)}`}.`,
    pictures: [
      plot({
        name: 'Temperature of the cells against time, a line for each season, with the limit',
        x: { name: `time, ${time.unit}`, fromZero: true },
        y: { name: `cells, ${temperature.unit}` },
        series: [
          ...thinned.map(({ name, series }) => ({
            name,
            points: series.map(([moment, value]): Point => [time.of(moment), temperature.of(value)]),
          })),
          ...(limit === undefined
            ? []
            : [{ name: 'limit', points: span.map((x): Point => [x, temperature.of(limit)]), isBeside: true }]),
        ],
      }),
    ],
    table: {
      columns: ['time', ...seasons.map(({ name }) => name)],
      rows: moments.map(([moment]) => [
        telling.shown(moment),
        ...seasons.map(({ series }) => {
          const last = series.findLast(([each]) => each.si <= moment.si + 1e-9)
          return last === undefined ? '' : telling.shown(last[1])
        }),
      ]),
    },
  }
}

function chargeOf({ telling, units }: Draw, found: Of<'charge'>): Drawing | undefined {
  if (found === undefined || found.curve.length < 2) return undefined
  const { curve, taperAt, limitedBy } = found
  const time = timesTo(found.time.si)
  const power = unitOf('power', 'kW', units)
  const told =
    taperAt === undefined
      ? `The ${limitedBy} holds the power to the end, after ${telling.shown(found.time)}.`
      : `The ${limitedBy} holds the power for ${telling.shown(taperAt)}; from there on the voltage of the full pack does, and the current falls.`
  return {
    section: 'charging',
    of: 'charge',
    title: 'The charge over time',
    says: told,
    pictures: [
      plot({
        name: 'Power into the pack against time',
        isBeside: true,
        x: { name: `time, ${time.unit}`, fromZero: true },
        y: { name: `into the pack, ${power.unit}`, fromZero: true },
        series: [{ name: 'power', points: curve.map((each): Point => [time.of(each.time), power.of(each.power)]) }],
      }),
      plot({
        name: 'State of charge against time',
        isBeside: true,
        x: { name: `time, ${time.unit}`, fromZero: true },
        y: { name: 'charged, %', fromZero: true },
        series: [
          {
            name: 'state of charge',
            points: curve.map((each): Point => [time.of(each.time), each.stateOfCharge.in('%')]),
          },
        ],
      }),
    ],
  }
}

/** A unit of an axis, and the number of a figure in it. */
function unitOf<K extends Kind>(kind: K, unit: string, units: Units | undefined) {
  const shown = unitFor(quantity(kind, 1, unit as never) as unknown as Quantity, units)
  return { unit: shown, of: (value: Quantity<K>) => value.in(shown as never) }
}

function timesTo(seconds: number) {
  const unit = seconds > LONG ? 'h' : 'min'
  return { unit, of: (value: Quantity<'time'>) => value.in(unit) }
}

/** So many points of a course, the first and the last among them. */
function everyFew<T>(series: readonly T[], most = MOST_POINTS): T[] {
  if (series.length <= most) return [...series]
  return Array.from({ length: most }, (_, i) => series[Math.round((i * (series.length - 1)) / (most - 1))] as T)
}

/** Words in a row: one, two and three. */
function inList(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
