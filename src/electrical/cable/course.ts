/**
 * The course of a cable's temperature over currents that change: the heat is followed through rings of the insulation.
 *
 * Rests on the heat balance of balance.ts; heat capacities of IEC 60949 (metal) and IEC 60853-2 (insulation).
 */
import { USUAL_MEMORY } from '../../formula/memory.js'
import { given, pairs, type Read } from '../../procedure/index.js'
import { CalculationError, type Quantity, quantity } from '../../quantity/index.js'
import { type Cable, CONDUCTIVITY, fluxAt, resistanceAt, type SteadyCable } from './balance.js'

/** Currents that cables and fuses carry all day. @internal */
export const LOADS = ['0.5 A', '1000 A'] as const

/** The air around a part, where it is not said. @internal */
export const HOT_DAY = { default: '40 °C', because: 'a hot day, common practice, no source' } as const

/** Currents one after the other, each for a time. @internal */
export const profileField = /*@__PURE__*/ (() =>
  pairs(
    'Currents, each for a time',
    given('current', 'Current of either sign'),
    given('time', 'Time that it lasts', { above: 0 }),
    { least: 1 },
  ))()

type Profile = Read<typeof profileField>

/** The root mean square of a profile. @internal */
export function rmsOf(profile: Profile): Quantity<'current'> {
  const time = profile.reduce((sum, [, each]) => sum + each.si, 0)
  const squares = profile.reduce((sum, [current, each]) => sum + current.si ** 2 * each.si, 0)
  return quantity('current', Math.sqrt(squares / time), 'A')
}

/** Volumetric heat of plastic and rubber insulation: IEC 60853-2, from memory. */
const INSULATION_HEAT = 2.4e6
/** How thick a ring of insulation is followed, and how many rings at most. */
const [RING, RINGS] = [0.25e-3, 8]
/** Points between which the heat given off is interpolated: a step of a few kelvins, over which it bends by next to nothing. */
const POINTS = 256

/** Heat given off by each metre at a temperature of the surface, and how it rises, between points that were worked out once. */
function givenOff(cable: Cable): (surface: number) => { readonly heat: number; readonly slope: number } {
  const from = cable.ambient.si
  const step = (1000 - 2 * from) / POINTS
  const around = Math.PI * cable.outerDiameter.si
  const points = Array.from({ length: POINTS + 1 }, (_, i) => around * fluxAt(cable, from + i * step))
  return (surface) => {
    // Colder than the air at the start, the cable takes up heat as it would give it off.
    const away = Math.abs(surface - from)
    const i = Math.min(Math.floor(away / step), POINTS - 1)
    const low = points[i] as number
    const slope = ((points[i + 1] as number) - low) / step
    const heat = low + (away - i * step) * slope
    return { heat: surface >= from ? heat : -heat, slope }
  }
}

/** A cable as bodies from the conductor to the surface: what each holds, and what passes from each to the next. */
interface Bodies {
  readonly cable: Cable
  readonly capacities: readonly number[]
  readonly conductances: readonly number[]
  readonly away: ReturnType<typeof givenOff>
}

/** The bodies of a cable: its metal, and rings of its insulation. */
function bodiesOf(cable: Cable): Bodies {
  const [outer, inner] = [cable.outerDiameter.si / 2, cable.conductorDiameter.si / 2]
  const rings = Math.min(RINGS, Math.round((outer - inner) / RING))
  const ring = rings === 0 ? 0 : (outer - inner) / rings
  const radius = (i: number) => (rings === 0 ? outer : inner + i * ring)
  // Bodies lie on the circles between rings, each with half of the ring on either side. The first is the metal alone, and
  // leaves its half ring to the next: a short burst comes out a little high rather than low.
  const capacities = Array.from({ length: rings + 1 }, (_, i) => {
    const from = i <= 1 ? inner : radius(i) - ring / 2
    const to = Math.min(outer, radius(i) + ring / 2)
    const insulation = i === 0 && rings > 0 ? 0 : INSULATION_HEAT * Math.PI * (to ** 2 - from ** 2)
    return insulation + (i === 0 ? cable.material.volumetricHeat.si * cable.area.si : 0)
  })
  const conductances = Array.from(
    { length: rings },
    (_, i) => (2 * Math.PI * CONDUCTIVITY.si) / Math.log(radius(i + 1) / radius(i)),
  )
  return { cable, capacities, conductances, away: givenOff(cable) }
}

/** The bodies at the temperatures at which a heat of each metre passes through them to a surface. */
function passing({ conductances }: Bodies, surface: number, heat: number): number[] {
  const state = [surface]
  for (const conductance of [...conductances].reverse()) state.unshift((state[0] as number) + heat / conductance)
  return state
}

/** Root of x³ − 3x² + 3x/2 − 1/6 with which the method below damps the quickest changes wholly. */
const GAMMA = 0.4358665215084592
const [SECOND, THIRD] = [(1 - GAMMA) / 2, -(6 * GAMMA ** 2 - 16 * GAMMA + 1) / 4] as const

/**
 * Moves the bodies on by steps of time: the implicit Runge-Kutta method of three stages and third order of R. Alexander, SIAM
 * Journal on Numerical Analysis 14 (1977) 1006, from memory. It stays stable however much longer than its rings a step is.
 */
function stepper({ cable, capacities, conductances, away }: Bodies) {
  const last = conductances.length
  const at = [...capacities]
  const list = () => capacities.map(() => 0)
  const [diagonal, lower, first, second, third] = [list(), list(), list(), list(), list()] as const
  // Resistance is straight over temperature.
  const warmth = (resistanceAt(cable, 300) - resistanceAt(cable, 200)) / 100
  /** Rows of capacity less step times what its own temperature does to each, eliminated from the conductor outwards. */
  const factored = (current: number, span: number, slope: number) => {
    for (let i = 0; i <= last; i++) {
      const before = i === 0 ? 0 : (conductances[i - 1] as number)
      const after = i === last ? slope : (conductances[i] as number)
      const own = (capacities[i] as number) + span * (before + after) - (i === 0 ? span * current ** 2 * warmth : 0)
      lower[i] = i === 0 ? 0 : (-span * before) / (diagonal[i - 1] as number)
      diagonal[i] = own + (lower[i] as number) * span * before
    }
  }
  /** How fast each body warms, into `rate`, where it is as warm as `at` says. */
  const solved = (current: number, span: number, rate: number[]) => {
    let coming = current ** 2 * resistanceAt(cable, at[0] as number)
    for (let i = 0; i <= last; i++) {
      const temperature = at[i] as number
      const leaving =
        i === last ? away(temperature).heat : (conductances[i] as number) * (temperature - (at[i + 1] as number))
      rate[i] = coming - leaving - (i === 0 ? 0 : (lower[i] as number) * (rate[i - 1] as number))
      coming = leaving
    }
    for (let i = last; i >= 0; i--) {
      const next = i === last ? 0 : span * (conductances[i] as number) * (rate[i + 1] as number)
      rate[i] = ((rate[i] as number) + next) / (diagonal[i] as number)
    }
  }
  return (state: number[], current: number, step: number): void => {
    const span = GAMMA * step
    factored(current, span, away(state[last] as number).slope)
    const stage = (rate: number[], share: number, other = 0) => {
      for (let i = 0; i <= last; i++) {
        at[i] = (state[i] as number) + step * (share * (first[i] as number) + other * (second[i] as number))
      }
      solved(current, span, rate)
    }
    stage(first, 0)
    stage(second, SECOND)
    stage(third, THIRD, 1 - GAMMA - THIRD)
    for (let i = 0; i <= last; i++) {
      const mean = THIRD * (first[i] as number) + (1 - GAMMA - THIRD) * (second[i] as number)
      state[i] = (state[i] as number) + step * (mean + GAMMA * (third[i] as number))
    }
  }
}

/** Currents in amperes, each for a time in seconds. */
type Course = readonly (readonly [current: number, time: number])[]

/** A profile in SI numbers, its currents as a bundle lets them count. @internal */
export function courseOf(profile: Profile, share = 1): Course {
  return profile.map(([current, time]) => [current.si / share, time.si])
}

/** The first step after a change of current, and by what share of the time since then the steps grow. */
const [FIRST_STEP, GROWTH] = [1, 0.01]
/** No step in which the conductor alone would warm by more than a few kelvins. */
const WARMING = 5

/** Is told each step: the conductor before and after it, in kelvins, and how many seconds lie between. Says when that is enough. */
type Watch = (from: number, to: number, step: number) => boolean

/** Runs the bodies once through a course, and tells the hottest that the conductor gets, and when. */
function runner(where: string, bodies: Bodies, watch?: Watch) {
  const { cable, capacities, conductances } = bodies
  const move = stepper(bodies)
  const hottest = 1000 - cable.ambient.si
  const warming = (state: readonly number[], current: number) => {
    const [metal, next] = [state[0] as number, state[1] ?? (state[0] as number)]
    const leaving = (conductances[0] ?? 0) * (metal - next)
    return Math.abs(current ** 2 * resistanceAt(cable, metal) - leaving) / (capacities[0] as number)
  }
  return (state: number[], course: Course, before: number) => {
    let [peak, peakAt, time] = [0, before, before]
    for (const [current, duration] of course) {
      for (let gone = 0; gone < duration; ) {
        if (gone > STEADY) {
          // Nothing changes any more, however long it lasts.
          watch?.(state[0] as number, state[0] as number, duration - gone)
          break
        }
        const step = Math.min(Math.max(FIRST_STEP, GROWTH * gone), WARMING / warming(state, current), duration - gone)
        const from = state[0] as number
        move(state, current, step)
        gone = step < duration - gone ? gone + step : duration
        const conductor = state[0] as number
        if (!(conductor < cable.material.meltingPoint.si && (state.at(-1) as number) < hottest)) {
          const after = quantity('time', time + gone, 's')
          throw new CalculationError(
            where,
            `after ${after} the conductor of ${cable.area} is past any heat that can be followed: its insulation has ` +
              `burnt, and the metal melts at ${cable.material.meltingPoint}`,
            { current: String(quantity('current', current, 'A')), after: String(after) },
          )
        }
        if (conductor > peak) [peak, peakAt] = [conductor, time + gone]
        if (watch?.(from, conductor, step)) break
      }
      time += duration
    }
    return { peak, peakAt, time }
  }
}

/**
 * The conductor over a course that is run some times from one temperature of the whole cable, in SI numbers.
 * @internal
 */
export function followed(where: string, cable: Cable, course: Course, rounds: number, initial: number) {
  const bodies = bodiesOf(cable)
  const run = runner(where, bodies)
  const state = bodies.capacities.map(() => initial)
  let [peak, peakAt, time] = [initial, 0, 0]
  for (let round = 0; round < rounds; round++) {
    const each = run(state, course, time)
    if (each.peak > peak) ({ peak, peakAt } = each)
    time = each.time
  }
  return { peak, peakAt, final: state[0] as number }
}

/** What a pull does to a cable. @internal */
export interface Pulled {
  /** Hottest that the conductor gets, in kelvins. */
  readonly peak: number
  /** Hottest that its ends get, in kelvins. */
  readonly ends: number
  /** For how many seconds the conductor is above a limit, until it has cooled again. */
  readonly above: number
}

/** Some time constants of the thickest cable, in seconds: by then every course has settled, and every cable has cooled. */
const SETTLING = 10800
/** By then a current that lasts has warmed a cable as much as it ever will, to the last digits. */
const STEADY = 10 * SETTLING

/**
 * A cable through one pull, from one temperature of all of it, and on under its load until it is as cool as before. Terminals
 * follow the conductor with the memory of a body that nobody described.
 * @internal
 */
export function pulled(
  where: string,
  cable: Cable,
  [current, time]: Course[number],
  load: number,
  initial: number,
  limit: number,
): Pulled {
  const bodies = bodiesOf(cable)
  let [end, ends, above, isPulling] = [initial, initial, 0, true]
  const run = runner(where, bodies, (from, to, step) => {
    const [low, high] = from < to ? [from, to] : [to, from]
    if (high > limit) above += low >= limit ? step : (step * (high - limit)) / (high - low)
    end += ((from + to) / 2 - end) * -Math.expm1(-step / USUAL_MEMORY)
    ends = Math.max(ends, end)
    return !isPulling && to <= limit && to <= end
  })
  const state = bodies.capacities.map(() => initial)
  const { peak } = run(state, [[current, time]], 0)
  isPulling = false
  run(state, [[load, SETTLING]], time)
  return { peak: Math.max(initial, peak), ends, above }
}

/** A course has settled when a round leaves the cable as it found it, to so many kelvins in each second of the round. */
const SETTLED = 1e-5

/** The hottest that the conductor gets in each round of a course that is run again and again, in kelvins. @internal */
export function settledPeak(where: string, cable: Cable, course: Course, mean: SteadyCable): number {
  const bodies = bodiesOf(cable)
  const run = runner(where, bodies)
  const state = passing(bodies, mean.surfaceTemperature.si, mean.lossPerLength.si)
  for (let time = 0; ; ) {
    const before = [...state]
    const round = run(state, course, time)
    const changed = Math.max(...state.map((each, i) => Math.abs(each - (before[i] as number))))
    if (changed <= SETTLED * (round.time - time) || round.time > SETTLING) return round.peak
    time = round.time
  }
}
