/** What an assessment tells in a few figures and a drawing shows whole: courses over speed, time and place. */
import { type TractionCurves, tractionCurves } from '../drivetrain/index.js'
import { type Plan, planOf, type Stance } from '../mass/index.js'
import { CalculationError, type Quantity, quantity } from '../quantity/index.js'
import { type RangeAtSpeed, rangeAtSpeed, type SteadyRange } from '../range/index.js'
import type { PackTemperature } from '../thermal/index.js'
import { chargeOf } from './chapters/charging.js'
import { laden, onRoad } from './chapters/drive.js'
import { cellsOver, type Driven } from './chapters/journeys.js'
import type { Pack } from './chapters/pack.js'
import { inSeason, seasonsOf } from './chapters/season.js'
import { fromSheet, isOfSheet } from './chapters/section.js'
import { namedBays, type Weights } from './chapters/weight.js'
import type { Build } from './sheet/build.js'

/** A bay in the car, with the modules that stand in it. @internal */
export interface DrawnBay {
  readonly name: string
  readonly aft: Quantity<'length'>
  readonly left: Quantity<'length'>
  readonly holds: number
  readonly room: number
}

/** A steady speed of the laden car in a season. @internal */
export interface SteadyCourse {
  readonly name: string
  readonly speeds: RangeAtSpeed['speeds']
}

/** The temperature of the cells over a journey in a season. @internal */
export interface WarmthCourse {
  readonly name: string
  readonly series: PackTemperature['series']
}

/** What there is to be drawn; each is undefined where the sheet lacks something or its figures do not allow it. @internal */
export interface Courses {
  /** The empty car before and after. */
  readonly plan: () => Plan | undefined
  /** The car with the bays and their modules, where their places were searched for. */
  readonly bays: () => { readonly plan: Plan; readonly bays: readonly DrawnBay[] } | undefined
  /** The pull in each gear and the road load, on the level and on the hill of the sheet. */
  readonly pull: () => TractionCurves | undefined
  readonly steady: () => readonly SteadyCourse[] | undefined
  readonly charge: () => ReturnType<typeof chargeOf> | undefined
  /** The longest of the journeys, in each season, with the limit that the sheet sets. */
  readonly warmth: () =>
    | {
        readonly journey: string
        readonly seasons: readonly WarmthCourse[]
        readonly limit: Quantity<'temperature'> | undefined
      }
    | undefined
}

/** Distance of the points of the pull, and of those of the range, in km/h. */
const [PULL_STEP, RANGE_STEP] = [2.5, 5]
/** The speeds between which ranges are drawn, in km/h: no road asks for more. */
const [SLOWEST, FASTEST] = [20, 200]

/** The courses of a build, from what its sections stand on. @internal */
export function coursesOf(
  build: Build,
  {
    weights,
    pack,
    driven,
  }: {
    readonly weights: () => Weights
    readonly pack: () => Pack | undefined
    readonly driven: () => readonly Driven[]
  },
): Courses {
  const { car, charger, hill } = build
  const plan = () => {
    const { before, after } = weights().exchange
    return planOf({ wheelbase: car.wheelbase, track: car.track, stance: stanceOf(after), before: stanceOf(before) })
  }
  const drive = () => laden(build, pack(), onRoad(build, weights))
  return {
    plan: () => drawn(plan),
    bays: () =>
      drawn(() => {
        const { placed } = weights()
        const bays = build.pack?.bays
        if (placed === undefined || bays === undefined) return undefined
        return {
          plan: plan(),
          bays: namedBays(bays).map(({ name, bay: { at, capacity } }) => ({
            name,
            aft: at.aft,
            left: at.left,
            holds: placed.placements.filter(({ bay }) => bay === name).reduce((sum, { count }) => sum + count, 0),
            room: capacity,
          })),
        }
      }),
    pull: () =>
      drawn(() => {
        const vehicle = drive()
        if (vehicle === undefined) return undefined
        const grades = hill === undefined ? [0] : [0, hill.grade]
        const [level] = tractionCurves({ ...vehicle, grades }).roadLoads
        const fastest = level?.points.at(-1)?.speed.in('km/h') ?? 0
        return tractionCurves({ ...vehicle, grades, speeds: speedsTo(0, fastest, PULL_STEP) })
      }),
    steady: () =>
      drawn(() => {
        const [vehicle, made] = [drive(), pack()]
        if (vehicle === undefined || made === undefined || build.auxiliaries === undefined) return undefined
        const found = seasonsOf(build, made).map((season) => ({
          name: season.name,
          speeds: upToThePower((speed) =>
            fromSheet(season.places, () => rangeAtSpeed({ ...inSeason(vehicle, season), speeds: [speed] })),
          ),
        }))
        return found.some(({ speeds }) => speeds.length < 2) ? undefined : found
      }),
    charge: () =>
      drawn(() => {
        const made = pack()
        return made === undefined || charger === undefined ? undefined : chargeOf(charger, made)
      }),
    warmth: () =>
      drawn(() => {
        const made = pack()
        const all = driven()
        const longest = all.reduce<Driven | undefined>(
          (one, other) => (one !== undefined && one.drive.distance.si >= other.drive.distance.si ? one : other),
          undefined,
        )
        if (made === undefined || longest === undefined) return undefined
        const limit = build.cooling?.pack.limit
        const found = all
          .filter(({ key }) => key === longest.key)
          .flatMap((each) => {
            const warmed = cellsOver(each, made, build.cooling?.pack)
            return warmed === undefined ? [] : [{ name: each.season.name, series: warmed.series }]
          })
        return found.length === 0 ? undefined : { journey: longest.name, seasons: found, limit }
      }),
  }
}

/** What is to be drawn, or undefined where the figures of the sheet do not allow it. */
function drawn<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (isOfSheet(error)) return undefined
    throw error
  }
}

function stanceOf({ corners, centreOfGravity }: Stance) {
  return { corners, centreOfGravity }
}

function speedsTo(from: number, to: number, step: number): Quantity<'speed'>[] {
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) =>
    quantity('speed', from + i * step, 'km/h'),
  )
}

/** Steady speeds, one after the other, until the pack does not give the power for the next. */
function upToThePower(drive: (speed: Quantity<'speed'>) => RangeAtSpeed): SteadyRange[] {
  const found: SteadyRange[] = []
  for (const speed of speedsTo(SLOWEST, FASTEST, RANGE_STEP)) {
    try {
      found.push(...drive(speed).speeds)
    } catch (error) {
      if (error instanceof CalculationError) return found
      throw error
    }
  }
  return found
}
