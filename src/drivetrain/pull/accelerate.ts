/**
 * From one speed to another: the time and the distance that it takes, with grip, torque, power, pack and shifts.
 *
 * Rests on Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004), acceleration performance, and
 * Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import { cite, section } from '../../formula/index.js'
import { brakesAndSteering } from '../../procedure/cautions.js'
import { type Findings, given, procedure, type Unfinished } from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { inertiaForce } from '../road/road-load.js'
import { onTheRoad } from '../vehicle.js'
import {
  type Drive,
  type DriveGear,
  driveFields,
  driveOf,
  GRIP,
  gradeField,
  type Held,
  heldSpeed,
  highestSpeedIn,
  lastWhere,
  loadOn,
  loadWorked,
  pullIn,
  tractionIn,
} from './drive.js'

/** A moment of an acceleration. */
export interface AccelerationPoint {
  readonly time: Quantity<'time'>
  readonly speed: Quantity<'speed'>
  readonly distance: Quantity<'length'>
  readonly gear: string
  readonly acceleration: Quantity<'acceleration'>
  /** What holds the acceleration there, or `shift` while the car rolls. */
  readonly limitedBy: string
}

/** An acceleration. */
export interface Acceleration extends Findings {
  readonly time: Quantity<'time'>
  readonly distance: Quantity<'length'>
  /** The gears that are used, in turn: those that get there soonest. */
  readonly gears: readonly string[]
  readonly shifts: readonly { readonly from: string; readonly to: string; readonly speed: Quantity<'speed'> }[]
  readonly series: readonly AccelerationPoint[]
  /** Bounds on what the quadrature may be wrong by; what the model leaves out is more. */
  readonly errorBound: { readonly time: Quantity<'time'>; readonly distance: Quantity<'length'> }
}

/** More gears than this are not tried in every combination. */
const GEARS = 8

/**
 * Works out how long a car takes from one speed to another and how far it goes, limited by grip with the load that moves
 * under acceleration, and by torque, power, voltage and pack, with a shift where it helps.
 *
 * Every sequence of gears is tried, at most 8 gears; the one that arrives first is returned. It shifts where the next of
 * its gears speeds the car up as well, the last such place where a bumpy torque curve has several: another may be some per
 * cent sooner there. List one gear alone to see what that gear does.
 *
 * Time and distance are the integrals of dv/a and v dv/a over the speed, a the acceleration that the limits leave, by
 * Simpson's rule, each part halved until both estimates agree to 1e-10 of it; `errorBound` is the sum of the differences
 * that remain. It says nothing of what is left out: the slip of the tyres, the sag of the springs, heat in motor and pack.
 *
 * Answers: how long does the car take from one speed to another, and how far does it go?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `stateOfCharge`: state of charge of the pack, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `from`: speed at the start, in km/h, at least 0 km/h, 0 km/h by default (a start from rest)
 * - `to`: speed to be reached, in km/h, above 0 km/h
 * - `shiftTime`: time without pull in a shift, in s, at least 0 s, 0.8 s by default (a synchronised box; common
 *   practice, no source)
 * - `grade`: grade, rise over run, a plain number, 0 by default (a level road)
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 * - always assumed: the driver gives full torque at once, or what the tyres just hold
 *
 * @returns Time, distance, gears, shifts, and a series to draw, with what holds each moment.
 * @throws InputError for input that cannot be used or does not suffice, by its path; CalculationError for a speed that the
 * car never reaches, with the one that it does; also for one so close to it that its last gain would be below 1e-7 m/s².
 * Source: Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004), acceleration performance;
 * Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * const { time, distance, gears } = accelerate({
 *   car: {
 *     mass: '760 kg',
 *     rotatingFactor: 1.05,
 *     rollingResistance: 0.013,
 *     dragArea: '0.7 m²',
 *     wheelbase: '2.03 m',
 *     centreOfGravity: { aft: '1 m', up: '0.5 m' },
 *     drivenAxle: 'rear',
 *     tyre: '145/80 R13',
 *     friction: 0.9,
 *   },
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 *   to: '80 km/h',
 * })
 * `${time}, ${distance}, in ${gears.join(' and ')}` // '5.638 s, 72.14 m, in second'
 * ```
 */
export const accelerate = /*@__PURE__*/ procedure({
  name: 'accelerate',
  title: 'Acceleration from one speed to another',
  answers: 'How long does the car take from one speed to another, and how far does it go?',
  input: {
    ...driveFields,
    from: given('speed', 'Speed at the start', { min: 0, default: '0 km/h', because: 'a start from rest' }),
    to: given('speed', 'Speed to be reached', { above: 0, ...onTheRoad }),
    shiftTime: given('time', 'Time without pull in a shift', {
      min: 0,
      default: '0.8 s',
      because: 'a synchronised box; common practice, no source',
    }),
    grade: gradeField,
  },
  source: [
    cite('Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004)', 'acceleration performance'),
    cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2'),
  ],
  assumes: ['The driver gives full torque at once, or what the tyres just hold.'],
  work: ({ from, to, shiftTime, grade, ...vehicle }): Unfinished<Acceleration> => {
    refuseSpeeds(from, to)
    const drive = driveOf('accelerate', vehicle)
    refuseMany(drive.gears.length)
    const run = new Run(drive, from.si, to.si, grade.si, shiftTime.si)
    let best: Course | undefined
    for (const gears of sequencesOf(drive.gears)) best = run.through(gears, best?.time) ?? best
    if (best === undefined) throw neverReached(drive, from, to, grade)
    const points = best.points.map((point) => ({ ...point, ...run.accelerationIn(point.gear, point.speed) }))
    showEnds(drive, points, from, to, grade)
    return {
      time: quantity('time', best.time, 's'),
      distance: quantity('length', best.distance, 'm'),
      gears: best.gears.map(({ name }) => name),
      shifts: best.shifts.map(({ from: one, to: other, speed }) => ({
        from: one.name,
        to: other.name,
        speed: quantity('speed', speed, 'm/s').as('km/h'),
      })),
      series: points.map((point) => ({
        time: quantity('time', point.time, 's'),
        speed: quantity('speed', point.speed, 'm/s').as('km/h'),
        distance: quantity('length', point.distance, 'm'),
        gear: point.gear.name,
        acceleration: quantity('acceleration', point.most, 'm/s²'),
        limitedBy: point.limitedBy,
      })),
      errorBound: {
        time: quantity('time', best.timeError, 's'),
        distance: quantity('length', best.distanceError, 'm'),
      },
      checks: drive.checks,
      assumptions: [...drive.assumptions, ...drive.inertia.assumptions],
      cautions: [brakesAndSteering],
    }
  },
})

function refuseSpeeds(from: Quantity<'speed'>, to: Quantity<'speed'>): void {
  if (to.si > from.si) return
  const expected = `a speed above that at the start, ${from}`
  throw new InputError('accelerate', [{ path: 'to', expected, received: String(to) }])
}

function refuseMany(count: number): void {
  if (count <= GEARS) return
  const expected = `at most ${GEARS} gears: every sequence of them is tried`
  throw new InputError('accelerate', [{ path: 'gearbox.gears', expected, received: `${count} gears` }])
}

/** Every sequence of gears that goes up. */
function sequencesOf(gears: readonly DriveGear[]): DriveGear[][] {
  return Array.from({ length: 2 ** gears.length - 1 }, (_, i) => gears.filter((_, k) => ((i + 1) >> k) & 1))
}

interface CoursePoint {
  readonly time: number
  readonly speed: number
  readonly distance: number
  readonly gear: DriveGear
}

interface CourseShift {
  readonly from: DriveGear
  readonly to: DriveGear
  readonly speed: number
}

/** One way from speed to speed, in SI. */
interface Course {
  readonly time: number
  readonly distance: number
  readonly timeError: number
  readonly distanceError: number
  readonly gears: readonly DriveGear[]
  readonly shifts: readonly CourseShift[]
  readonly points: readonly CoursePoint[]
}

/** Time and distance over a range of speeds, each with a bound on its error. */
type Stretch = readonly [time: number, distance: number, timeError: number, distanceError: number]

/** Into how many parts the way from speed to speed is cut; each is halved further where it must. */
const PARTS = 60
/** To what share of a part both estimates of it, or of a piece of it, must agree. */
const AGREED = 1e-10
/** How often a part is halved at most; a kink in the pull needs the most. */
const HALVINGS = 40
/** Into how many parts the time of a shift is cut. */
const COASTING = 16
/** A car that gains less, in m/s², has come to its highest speed: a km/h more would take it a month. */
const LEAST_GAIN = 1e-7
/** By how much an acceleration must be more, as a share of it, to count as more. */
const BETTER = 1e-9

/** A car that is to be brought from speed to speed. What is worked out for one sequence of gears serves the others. */
class Run {
  readonly #known = new Map<DriveGear, Map<number, { readonly to: number; readonly stretch: Stretch | undefined }>>()
  readonly #shifts = new Map<DriveGear, Map<DriveGear, number | undefined>>()
  readonly #grip: number

  constructor(
    readonly drive: Drive,
    readonly from: number,
    readonly to: number,
    readonly grade: number,
    readonly shiftTime: number,
  ) {
    this.#grip = drive.grip?.driving(grade) ?? Infinity
  }

  /** The acceleration that the limits leave in a gear: of the motor on all that turns, of the grip on the car alone. */
  accelerationIn(gear: DriveGear, speed: number): Held {
    const load = loadOn(this.drive, speed, this.grade)
    const pull = pullIn(this.drive, gear, speed)
    const byPull = (pull.most - load) / this.drive.inertia.massAt(gear.ratio)
    const byGrip = (this.#grip - load) / this.drive.road.mass.si
    return byGrip < byPull ? { most: byGrip, limitedBy: GRIP } : { most: byPull, limitedBy: pull.limitedBy }
  }

  /**
   * The course through a sequence of gears; undefined where it does not arrive, a shorter sequence does the same, or it takes
   * no less than a time.
   */
  through(gears: readonly DriveGear[], least = Infinity): Course | undefined {
    const points: CoursePoint[] = []
    const shifts: CourseShift[] = []
    let [time, distance, timeError, distanceError] = [0, 0, 0, 0]
    let speed = this.from
    const add = (stretch: Stretch) => {
      time += stretch[0]
      distance += stretch[1]
      timeError += stretch[2]
      distanceError += stretch[3]
    }
    for (const [i, gear] of gears.entries()) {
      const next = gears[i + 1]
      const end = next === undefined ? this.to : this.#shiftSpeed(gear, next)
      if (end === undefined || end <= speed || (next !== undefined && end >= this.to)) return undefined
      if (end > highestSpeedIn(this.drive, gear) * (1 + BETTER)) return undefined
      const mark = () => points.push({ time, speed, distance, gear })
      for (const target of this.#stepsTo(speed, end)) {
        mark()
        const stretch = this.#stretch(gear, speed, target)
        if (stretch === undefined) return undefined
        add(stretch)
        if (time >= least) return undefined
        speed = target
      }
      mark()
      if (next === undefined) continue
      shifts.push({ from: gear, to: next, speed })
      const rolled = this.#roll(speed)
      add([this.shiftTime, rolled.distance, 0, rolled.error * this.shiftTime])
      timeError += rolled.error / Math.max(this.accelerationIn(next, rolled.speed).most, Number.MIN_VALUE)
      speed = rolled.speed
    }
    return time < least ? { time, distance, timeError, distanceError, gears, shifts, points } : undefined
  }

  /** Where to shift: above it the lower gear never speeds the car up more; undefined where it never does at all. */
  #shiftSpeed(gear: DriveGear, next: DriveGear): number | undefined {
    const known = this.#shifts.get(gear) ?? new Map<DriveGear, number | undefined>()
    this.#shifts.set(gear, known)
    if (!known.has(next)) known.set(next, this.#bestShift(gear, next))
    return known.get(next)
  }

  #bestShift(gear: DriveGear, next: DriveGear): number | undefined {
    const end = Math.min(highestSpeedIn(this.drive, gear), this.to)
    const isBetter = (speed: number) => {
      const [one, other] = [this.accelerationIn(gear, speed).most, this.accelerationIn(next, speed).most]
      return one > other + BETTER * Math.abs(other)
    }
    return end <= this.from ? undefined : lastWhere(isBetter, this.from, end)
  }

  /** The ends of the parts of the way from one speed to another. */
  #stepsTo(from: number, to: number): number[] {
    const part = (this.to - this.from) / PARTS
    const first = Math.floor((from - this.from) / part) + 1
    const inner = Array.from({ length: PARTS }, (_, i) => this.from + (first + i) * part)
    return [...inner.filter((speed) => speed > from && speed < to - part * BETTER), to]
  }

  /** Time and distance from one speed to another in a gear; undefined where the car does not gain speed all the way. */
  #stretch(gear: DriveGear, from: number, to: number): Stretch | undefined {
    const known = this.#known.get(gear) ?? new Map<number, { to: number; stretch: Stretch | undefined }>()
    this.#known.set(gear, known)
    // From one speed sequences mostly go to the same next one.
    const last = known.get(from)
    if (last?.to === to) return last.stretch
    const stretch = this.#followed(gear, from, to)
    known.set(from, { to, stretch })
    return stretch
  }

  #followed(gear: DriveGear, from: number, to: number): Stretch | undefined {
    const slowness = (speed: number) => {
      const { most } = this.accelerationIn(gear, speed)
      return most > LEAST_GAIN ? 1 / most : Infinity
    }
    const [a, m, b] = [slowness(from), slowness((from + to) / 2), slowness(to)]
    const ends = [
      [from, a],
      [(from + to) / 2, m],
      [to, b],
    ] as const
    const [time, distance] = rule(...ends)
    const stretch = simpson(slowness, ...ends, [AGREED * time, AGREED * distance], HALVINGS)
    return Number.isFinite(stretch[0]) ? stretch : undefined
  }

  /** How a car rolls while it shifts: by the classical Runge–Kutta method, its error taken as the change on halving. */
  #roll(speed: number): { readonly speed: number; readonly distance: number; readonly error: number } {
    const once = this.#rollIn(speed, COASTING)
    const twice = this.#rollIn(speed, 2 * COASTING)
    return { ...twice, error: Math.abs(once.speed - twice.speed) }
  }

  #rollIn(start: number, parts: number): { readonly speed: number; readonly distance: number } {
    const mass = this.drive.inertia.massAt(undefined)
    const slope = (speed: number) => -loadOn(this.drive, Math.max(0, speed), this.grade) / mass
    const step = this.shiftTime / parts
    let [speed, distance] = [start, 0]
    for (let i = 0; i < parts; i++) {
      const k1 = slope(speed)
      const k2 = slope(speed + (step / 2) * k1)
      const k3 = slope(speed + (step / 2) * k2)
      const k4 = slope(speed + step * k3)
      distance += step * (speed + (step / 6) * (k1 + k2 + k3))
      speed += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4)
      // A car that comes to rest on a hill is held there by its brakes.
      if (speed <= 0) return { speed: 0, distance: Math.max(0, distance) }
    }
    return { speed, distance }
  }
}

/** A speed and the inverse of the acceleration there. */
type Node = readonly [speed: number, slowness: number]

/** Time and distance over a part by Simpson's rule, halved until the two estimates agree. */
function simpson(
  slowness: (speed: number) => number,
  from: Node,
  middle: Node,
  to: Node,
  agreed: readonly [time: number, distance: number],
  halvings: number,
): Stretch {
  const whole = rule(from, middle, to)
  const half = (one: Node, other: Node): Node => {
    const speed = (one[0] + other[0]) / 2
    return [speed, slowness(speed)]
  }
  const [low, high] = [half(from, middle), half(middle, to)]
  const [lower, upper] = [rule(from, low, middle), rule(middle, high, to)]
  const time = lower[0] + upper[0]
  const distance = lower[1] + upper[1]
  const [timeError, distanceError] = [Math.abs(time - whole[0]), Math.abs(distance - whole[1])]
  if (!Number.isFinite(time)) return [Infinity, Infinity, Infinity, Infinity]
  if (halvings === 0 || (timeError <= agreed[0] && distanceError <= agreed[1])) {
    return [time, distance, timeError, distanceError]
  }
  const [one, other] = [
    simpson(slowness, from, low, middle, agreed, halvings - 1),
    simpson(slowness, middle, high, to, agreed, halvings - 1),
  ]
  return [one[0] + other[0], one[1] + other[1], one[2] + other[2], one[3] + other[3]]
}

function rule([a, p]: Node, [m, q]: Node, [b, r]: Node): readonly [time: number, distance: number] {
  const sixth = (b - a) / 6
  return [sixth * (p + 4 * q + r), sixth * (a * p + 4 * m * q + b * r)]
}

/** The forces at both ends, for the working. */
function showEnds(
  drive: Drive,
  points: readonly (CoursePoint & Held)[],
  from: Quantity<'speed'>,
  to: Quantity<'speed'>,
  grade: Quantity<'ratio'>,
): void {
  const ends = [
    [from, points[0]],
    [to, points.at(-1)],
  ] as const
  for (const [speed, point] of ends) {
    section(`At ${speed} in ${point?.gear.name}, held by the ${point?.limitedBy}`, () => {
      loadWorked(drive, speed, grade)
      const turning = point?.limitedBy === GRIP ? drive.road.mass.si : drive.inertia.massAt(point?.gear.ratio)
      inertiaForce({
        mass: drive.road.mass,
        acceleration: quantity('acceleration', point?.most ?? 0, 'm/s²'),
        rotatingFactor: turning / drive.road.mass.si,
      })
    })
  }
}

/** The refusal of a speed that no sequence of gears reaches. */
function neverReached(
  drive: Drive,
  from: Quantity<'speed'>,
  to: Quantity<'speed'>,
  grade: Quantity<'ratio'>,
): CalculationError {
  const held = drive.gears
    .map((gear) => ({ gear, held: heldSpeed(drive, gear, grade.si, 'peak') }))
    .filter(({ held: each }) => each !== undefined && each.most > from.si)
    .sort((one, other) => (other.held?.most as number) - (one.held?.most as number))[0]
  if (held === undefined) {
    const load = loadOn(drive, from.si, grade.si)
    const gears = drive.gears.filter((gear) => from.si <= highestSpeedIn(drive, gear))
    if (gears.length === 0) {
      const message = `the car does not gain speed from ${from}: the motor would turn too fast in every gear`
      return new CalculationError('accelerate', message, { from: String(from) })
    }
    const best = gears
      .map((gear) => ({ gear, ...tractionIn(drive, gear, from.si, grade.si) }))
      .reduce((one, other) => (other.most > one.most ? other : one))
    const [pull, resists] = [String(fromSi('force', best.most, 'N')), String(fromSi('force', load, 'N'))]
    const hill = grade.si === 0 ? '' : ` on a grade of ${grade.as('%')}`
    const message = `the car does not gain speed from ${from}${hill}: it pulls with at most ${pull}, in ${best.gear.name}, held by the ${best.limitedBy}, and ${resists} resist it`
    return new CalculationError('accelerate', message, { from: String(from), pull, resists })
  }
  if ((held.held?.most as number) > to.si * (1 + BETTER)) {
    const message = `the car does not reach ${to}: on the way there what resists it is more than its pull in every gear`
    return new CalculationError('accelerate', message, { asked: String(to) })
  }
  const most = String(quantity('speed', held.held?.most as number, 'm/s').as('km/h'))
  const limitedBy = held.held?.limitedBy as string
  const message = `the car does not reach ${to}: it gets no faster than ${most}, in ${held.gear.name}, held by the ${limitedBy}`
  return new CalculationError('accelerate', message, { asked: String(to), reached: most, limitedBy })
}
