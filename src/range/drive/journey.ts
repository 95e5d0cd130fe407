/**
 * Journeys: stretches of road with a speed, a grade and weather, with stops, driven from a stand to a stand.
 *
 * Rests on definitions: between two speeds the car speeds up and slows down at steady rates.
 */
import { type Air, airOf, weatherOf } from '../../drivetrain/road/air.js'
import { airFields, onTheRoad } from '../../drivetrain/vehicle.js'
import {
  type Assumption,
  assumed,
  given,
  group,
  list,
  optional,
  type Read,
  text,
  undecided,
  whole,
} from '../../procedure/index.js'
import { InputError, type InputIssue, quantity } from '../../quantity/index.js'
import type { Spike } from '../route/spikes.js'
import { type Motion, SAME_SPEED } from './motion.js'
import { type Conditions, conditionsOf, heatedField, type Powertrain } from './powertrain.js'

/** A journey. What a stretch does not say of air and auxiliaries is as for the whole drive. @internal */
export const journeyField = /*@__PURE__*/ (() =>
  list(
    'The stretches of a journey, one after the other',
    group('A stretch of road', {
      name: optional(text('What the stretch is called')),
      distance: given('length', 'Length of the stretch', { min: '1 mm', max: '2000 km', finest: '50 m' }),
      speed: given('speed', 'Speed on the stretch', { above: 0, ...onTheRoad }),
      grade: optional(given('ratio', 'Grade, rise over run', { usual: [-0.2, 0.2], finest: '0.05 %' })),
      stops: optional(whole('How often the car comes to a stand, the last time at its end', { min: 1, max: 1000 })),
      standing: optional(
        given('time', 'Time at a stand, each time', { min: 0, usual: ['0 s', '2 h'], finest: '0.5 s' }),
      ),
      ...undecided(airFields),
      auxiliaries: optional(heatedField),
    }),
    { least: 1 },
  ))()
/** What is read of a journey. @internal */
export type Journey = Read<typeof journeyField>

/** How briskly a journey is driven. @internal */
export const paceField = /*@__PURE__*/ (() =>
  group('How briskly the car speeds up and slows down', {
    acceleration: optional(
      given('acceleration', 'Acceleration while it speeds up', {
        min: '0.01 m/s²',
        max: '30 m/s²',
        usual: ['0.01 m/s²', '4.9 m/s²'],
      }),
    ),
    braking: optional(
      given('acceleration', 'Deceleration while it slows down, as a positive figure', {
        min: '0.01 m/s²',
        max: '30 m/s²',
        usual: ['0.01 m/s²', '8.8 m/s²'],
      }),
    ),
  }))()
/** Called after each step with the speed that was wanted at its end; says whether to go on. @internal */
export type OnStep = (target: number) => boolean

/** Something to be driven: moves a car over it, and says whether it came to the end. @internal */
export interface Course {
  readonly drive: (motion: Motion, onStep: OnStep) => boolean
  /** Conditions and speed at the start. */
  readonly start: { readonly conditions: Conditions; readonly speed: number }
  readonly assumptions: readonly Assumption[]
  /** The hardest change of speed that is asked for, where a log asks for it; told once it is driven. */
  readonly hardest?: () => Spike
}

/** A stretch between stops, on plain SI numbers. */
interface Stretch {
  readonly distance: number
  readonly speed: number
  /** Highest speed at its end from which all that follows can be met. */
  leaving: number
  readonly standing: number
  readonly conditions: Conditions
}

type AirRead = Parameters<typeof airOf>[0]

/** Accelerations of everyday driving: common practice, no source. */
const PACE = { acceleration: '1 m/s²', braking: '1.2 m/s²' } as const

/**
 * Reads a journey.
 *
 * @throws InputError for stops without the time that they last, and the other way round.
 *
 * @internal
 */
export function journeyCourse(
  where: string,
  journey: Journey,
  pace: Read<typeof paceField> = {},
  { road, auxiliaries }: Powertrain,
  air: AirRead,
  step: number,
): Course {
  refuseStops(where, journey)
  const acceleration = pace.acceleration ?? quantity('acceleration', PACE.acceleration)
  const braking = pace.braking ?? quantity('acceleration', PACE.braking)
  const stretches = journey.flatMap(({ distance, speed, grade, stops, standing, ...own }): Stretch[] => {
    const { density, headwind } = airFor(own, air)
    const load = (own.auxiliaries ?? auxiliaries).si
    const conditions = conditionsOf(road, density.si, headwind.si, grade?.si ?? 0, load)
    const parts = stops ?? 1
    const part = {
      distance: distance.si / parts,
      speed: speed.si,
      leaving: stops === undefined ? speed.si : 0,
      standing: standing?.si ?? 0,
      conditions,
    }
    return Array.from({ length: parts }, () => ({ ...part }))
  })
  lowerLeaving(stretches, braking.si)
  const [first] = stretches as [Stretch]
  return {
    start: { conditions: first.conditions, speed: 0 },
    drive: (motion, onStep) =>
      stretches.every((stretch) => driveStretch(motion, stretch, acceleration.si, braking.si, step, onStep)),
    assumptions: [
      ...weatherOf(air),
      assumed('journey', 'The journey begins and ends at a stand.'),
      ...(journey.some(({ grade }) => grade === undefined)
        ? [assumed('journey.grade', 'A stretch is level where it has no grade.')]
        : []),
      ...(pace.acceleration === undefined
        ? [
            assumed(
              'pace.acceleration.default',
              `The car speeds up at ${acceleration} (pace.acceleration by default; common practice, no source).`,
            ),
          ]
        : []),
      ...(pace.braking === undefined
        ? [
            assumed(
              'pace.braking.default',
              `It slows down at ${braking} (pace.braking by default; common practice, no source).`,
            ),
          ]
        : []),
    ],
  }
}

function airFor(own: Pick<Journey[number], keyof AirRead>, air: AirRead): Air {
  return airOf({
    temperature: own.temperature ?? air.temperature,
    altitude: own.altitude ?? air.altitude,
    headwind: own.headwind ?? air.headwind,
  })
}

function refuseStops(where: string, journey: Journey): void {
  const issues = journey.flatMap(({ stops, standing }, i): InputIssue[] => {
    if ((stops === undefined) === (standing === undefined)) return []
    const [key, expected] =
      standing === undefined
        ? ['standing', `how long each stop lasts, such as '20 s'`]
        : ['stops', 'how often the car comes to a stand on the stretch, such as 3']
    return [{ path: `journey[${i}].${key}`, expected, received: 'nothing' }]
  })
  if (issues.length > 0) throw new InputError(where, issues)
}

/** Lowers the speeds at the ends of stretches so that each stretch is long enough to slow down to the next. */
function lowerLeaving(stretches: readonly Stretch[], braking: number): void {
  let next = 0
  for (const stretch of stretches.toReversed()) {
    stretch.leaving = Math.min(stretch.leaving, next)
    next = Math.min(stretch.speed, Math.sqrt(stretch.leaving ** 2 + 2 * braking * stretch.distance))
  }
}

/** So much is left of a stretch, in metres, when it counts as driven. */
const DRIVEN = 1e-9

/** Slower than this a car stands, in m/s. */
const STANDS = 0.01

function driveStretch(
  motion: Motion,
  { distance, speed, leaving, standing, conditions }: Stretch,
  acceleration: number,
  braking: number,
  step: number,
  onStep: OnStep,
): boolean {
  motion.enter(conditions)
  let wanted = motion.speed
  for (let left = distance; left > DRIVEN; left -= motion.length) {
    const now = motion.speed
    const [target, time] = nextStep(now, left, speed, leaving, acceleration, braking, step)
    const duration = target === now ? heldFor(motion, time, step) : time
    if (!motion.advance(target, duration)) return false
    // A car that falls behind is held to where the pace would have brought it since.
    const isBehind = target - motion.speed > SAME_SPEED
    wanted = isBehind ? Math.max(target, Math.min(speed, wanted + acceleration * motion.lasted)) : motion.speed
    if (!onStep(isBehind ? wanted : target)) return false
    // A car that a hill has brought to a stand, and that gains next to nothing of what is asked, comes no farther.
    const gained = motion.speed - now
    if (now < STANDS && motion.speed < STANDS && target > now && gained < (target - now) / 100) return false
  }
  for (let left = standing; left > 0; ) {
    const duration = heldFor(motion, left, step)
    if (!driveFor(motion, 0, duration, onStep)) return false
    left = duration < left ? left - duration : 0
  }
  return true
}

/** Where a speed is held, nothing changes but the charge: so many steps count as one, up to so many seconds. */
const [STEPS_HELD, LONGEST_HELD] = [10, 10]

/** How long the next step may be of a time in which a speed is held. */
function heldFor(motion: Motion, time: number, step: number): number {
  const long = time / equalParts(time, Math.min(STEPS_HELD * step, LONGEST_HELD))
  return long > step && motion.holds(long) ? long : time / equalParts(time, step)
}

/** Drives for the whole of a time, standing for what is left of it where a hill stops the car before. @internal */
export function driveFor(motion: Motion, target: number, duration: number, onStep: OnStep): boolean {
  for (let left = duration; left > 0; ) {
    if (!motion.advance(target, left) || !onStep(target)) return false
    left = motion.lasted < left ? left - motion.lasted : 0
  }
  return true
}

/** Into how many equal steps, none longer than a step but by rounding, a time falls. @internal */
export function equalParts(time: number, step: number): number {
  return Math.ceil((time / step) * (1 - 1e-9))
}

/** The speed to aim at, and for how long, from a speed with some way left: where it is held, the whole of that time. */
function nextStep(
  now: number,
  left: number,
  speed: number,
  leaving: number,
  acceleration: number,
  braking: number,
  step: number,
): readonly [target: number, duration: number] {
  const toBrake = (now * now - leaving * leaving) / (2 * braking)
  if (now > leaving && toBrake >= left * (1 - 1e-9)) {
    // Slows down so as to be at the leaving speed just at the end.
    const rate = (now * now - leaving * leaving) / (2 * left)
    const whole = (2 * left) / (now + leaving)
    return whole <= step * (1 + 1e-9) ? [leaving, whole] : [now - rate * step, step]
  }
  // Speeds up no farther than to where it must slow down again, and than to the end.
  if (now < speed) {
    const turn = (leaving * leaving + 2 * braking * left - now * now) / (2 * (acceleration + braking))
    const way = Math.min(left, turn)
    const fastest = Math.min(speed, Math.sqrt(now * now + 2 * acceleration * way))
    const whole = (fastest - now) / acceleration
    // A hair below the speed, or where there is no room to gain any, it is held.
    if (whole > step * 1e-6 || now === 0) {
      const parts = equalParts(whole, step)
      return [now + (fastest - now) / parts, whole / parts]
    }
  }
  const steady = Math.max(left - Math.max(0, toBrake), left * 1e-9) / now
  return [now, steady]
}
