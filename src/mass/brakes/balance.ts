/**
 * The balance of the brakes: which axle locks first, and what a changed weight and a motor that brakes make of it.
 *
 * The order is that of Directive 71/320/EEC, annex II, appendix 3.1.1, which UN R13 and R13-H have too.
 */
import { cite, section } from '../../formula/index.js'
import { brakesAndSteering, brakingByMotor, rearLock } from '../../procedure/cautions.js'
import {
  assumed,
  type Check,
  type Findings,
  flag,
  given,
  group,
  optional,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { frontShare as frontShareOf } from '../balance.js'
import { wheelbaseField } from '../weigh.js'
import {
  axleBrakeForce,
  brakingEfficiency,
  frontAdhesionUsed,
  frontLockDeceleration,
  idealFrontBrakeShare,
  rearAdhesionUsed,
  rearLockDeceleration,
} from './adhesion.js'

/** How the axles are braked at one deceleration. */
export interface BrakePoint {
  readonly deceleration: Quantity<'acceleration'>
  /** Front share of the braking at which both axles would use the same. */
  readonly ideal: Quantity<'ratio'>
  /** Front share of the braking as it is, the motor with it. */
  readonly frontBrakeShare: Quantity<'ratio'>
  readonly frontAdhesion: Quantity<'ratio'>
  readonly rearAdhesion: Quantity<'ratio'>
}

/** Which axle locks first on a road, and when. */
export interface BrakeLock {
  readonly adhesion: Quantity<'ratio'>
  readonly first: 'front' | 'rear'
  readonly deceleration: Quantity<'acceleration'>
  /** Share of the adhesion that is made use of until then. */
  readonly efficiency: Quantity<'ratio'>
  /** The line z = 0.10 + 0.85 (k − 0.20) of UN R13 and 71/320/EEC for this adhesion k: a figure to compare with, no verdict. */
  readonly line: Quantity<'acceleration'>
}

/** Curves and locks of one way of braking. */
export interface BrakeCourse {
  readonly points: readonly BrakePoint[]
  readonly locks: readonly BrakeLock[]
}

/** The balance of the brakes. */
export interface BrakeBalance extends Findings {
  /** Share of the mass on the front axle, standing. */
  readonly frontShare: Quantity<'ratio'>
  /** Front share of the braking at which both axles would use the same, from 0.1 g to 0.8 g. */
  readonly ideal: readonly { readonly deceleration: Quantity<'acceleration'>; readonly share: Quantity<'ratio'> }[]
  /** The brakes by themselves; absent where their share is not known. */
  readonly brakes?: BrakeCourse
  /** The brakes with the motor; absent where it does not brake. */
  readonly withMotor?: BrakeCourse
}

const axleField = /*@__PURE__*/ (() =>
  group('The brakes of an axle', {
    pistonArea: given('area', 'Area of the pistons on one side of a disc, or of one cylinder of a drum', {
      above: 0,
      usual: ['200 mm²', '5000 mm²'],
    }),
    brakeFactor: given(
      'ratio',
      'Pull of the linings over the push of one side: twice the friction in a disc, 2 to 3 in a drum',
      {
        above: 0,
        usual: [0.4, 6],
      },
    ),
    effectiveRadius: given('length', 'Effective radius of the disc or drum', { above: 0, usual: ['70 mm', '160 mm'] }),
    rollingRadius: given('length', 'Rolling radius of the wheels', { above: 0, usual: ['0.24 m', '0.33 m'] }),
  }))()

const valveField = /*@__PURE__*/ (() =>
  group('A valve that holds back the pressure behind', {
    pressure: given('pressure', 'Pressure from which it does', { above: 0, usual: ['500 kPa', '6000 kPa'] }),
    slope: given('ratio', 'Rise of the pressure behind it over that before it, from there on', { min: 0, max: 1 }),
  }))()

const MOTOR = 'Force with which the motor goes on braking at the {} wheels while the pedal is pressed'
const motorForce = (end: string) =>
  /*@__PURE__*/ optional(given('force', MOTOR.replace('{}', end), { min: 0, usual: ['0 N', '5000 N'] }))

/** What describes the brakes. @internal */
export const brakeFields = /*@__PURE__*/ (() => ({
  frontBrakeShare: optional(
    given('ratio', 'Front share of the force of the brakes', { above: 0, max: 1, usual: ['60 %', '80 %'] }),
  ),
  front: optional(axleField),
  rear: optional(axleField),
  valve: optional(valveField, { absent: 'No valve holds back the pressure behind.' }),
  antiLock: optional(flag('Whether an anti-lock system holds the wheels of each axle'), {
    absent: 'No anti-lock system is fitted.',
  }),
}))()

/**
 * Works out which axle locks first on any road, how hard the car brakes until then, and how far that is from what both
 * axles together could do. The brakes by themselves and the brakes with the motor are judged each for itself: the motor
 * does not brake with a full or a cold pack. Call it for the car before and after, with the driver alone and laden. Between
 * 0.15 g and 0.8 g the rear wheels may never be the first to lock, unless an anti-lock system holds them. Where the motor
 * brakes behind it nearly always makes them so: let the
 * brake-light switch take its braking away.
 *
 * Answers: which axle locks first under braking, and how hard can the car brake until then?
 *
 * - `mass`: mass of the car as it is driven, in kg, above 0 kg
 * - `wheelbase`: wheelbase, in m, above 0 m
 * - `centreOfGravity`: its centre of gravity
 *   - `aft`: distance behind the front axle line, in m, above 0 m
 *   - `up`: height above the ground, in m, above 0 m
 * - `frontBrakeShare`: front share of the force of the brakes, a plain number, above 0 and at most 1, optional
 * - `front`: the brakes of an axle, optional
 *   - `pistonArea`: area of the pistons on one side of a disc, or of one cylinder of a drum, in m², above 0 m²
 *   - `brakeFactor`: pull of the linings over the push of one side: twice the friction in a disc, 2 to 3 in a drum, a
 *     plain number, above 0
 *   - `effectiveRadius`: effective radius of the disc or drum, in m, above 0 m
 *   - `rollingRadius`: rolling radius of the wheels, in m, above 0 m
 * - `rear`: the brakes of an axle, optional
 *   - `pistonArea`: area of the pistons on one side of a disc, or of one cylinder of a drum, in m², above 0 m²
 *   - `brakeFactor`: pull of the linings over the push of one side: twice the friction in a disc, 2 to 3 in a drum, a
 *     plain number, above 0
 *   - `effectiveRadius`: effective radius of the disc or drum, in m, above 0 m
 *   - `rollingRadius`: rolling radius of the wheels, in m, above 0 m
 * - `valve`: a valve that holds back the pressure behind, optional
 *   - `pressure`: pressure from which it does, in kPa, above 0 kPa
 *   - `slope`: rise of the pressure behind it over that before it, from there on, a plain number, at least 0 and at
 *     most 1
 * - `antiLock`: whether an anti-lock system holds the wheels of each axle, true or false, optional
 * - `regeneration`: the motor, where it brakes, optional
 *   - `front`: force with which the motor goes on braking at the front wheels while the pedal is pressed, in N, at
 *     least 0 N, optional
 *   - `rear`: force with which the motor goes on braking at the rear wheels while the pedal is pressed, in N, at least
 *     0 N, optional
 * - always assumed: air and rolling resistance are left out; a bend, a slope and worn or fading linings are not
 *   counted
 * - always assumed: both wheels of an axle brake alike
 *
 * Source: Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), chapter 12.1;
 * Directive 71/320/EEC, annex II, appendix 3.1.1.
 *
 * @example
 * ```ts
 * const { brakes, checks } = brakeBalance({
 *   mass: '790 kg',
 *   wheelbase: '2.1 m',
 *   centreOfGravity: { aft: '0.987 m', up: '0.5 m' },
 *   frontBrakeShare: '70 %',
 * })
 * const onDry = brakes?.locks.at(-1)
 * `${onDry?.first} first, at ${onDry?.deceleration}` // 'rear first, at 0.7666 g'
 * checks[0]?.verdict // 'fail'
 * ```
 */
export const brakeBalance = /*@__PURE__*/ procedure({
  name: 'brakeBalance',
  title: 'Balance of the brakes',
  answers: 'Which axle locks first under braking, and how hard can the car brake until then?',
  input: {
    mass: given('mass', 'Mass of the car as it is driven', { above: 0, usual: ['400 kg', '3500 kg'] }),
    wheelbase: wheelbaseField,
    centreOfGravity: group('Its centre of gravity', {
      aft: given('length', 'Distance behind the front axle line', { above: 0 }),
      up: given('length', 'Height above the ground', { above: 0, usual: ['0.4 m', '0.65 m'] }),
    }),
    ...brakeFields,
    regeneration: optional(
      group('The motor, where it brakes', { front: motorForce('front'), rear: motorForce('rear') }),
      { absent: 'The motor does not brake while the pedal is pressed.' },
    ),
  },
  source: [
    cite('Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009)', 'chapter 12.1'),
    cite('Directive 71/320/EEC', 'annex II, appendix 3.1.1'),
  ],
  assumes: [
    'Air and rolling resistance are left out; a bend, a slope and worn or fading linings are not counted.',
    'Both wheels of an axle brake alike.',
  ],
  work: (asked): Unfinished<BrakeBalance> => {
    refuse(asked)
    const { wheelbase, centreOfGravity, antiLock = false } = asked
    const car = {
      frontShare: frontShareOf({ aft: centreOfGravity.aft, wheelbase }),
      height: centreOfGravity.up,
      wheelbase,
    }
    const brakes = brakesOf(asked)
    const motor = motorOf(asked)
    const ideal = decelerations.map((deceleration) => ({
      deceleration,
      share: idealFrontBrakeShare({ ...car, deceleration }),
    }))
    const both = brakes === undefined || motor.front + motor.rear === 0 ? undefined : { ...brakes, motor }
    const alone = brakes === undefined ? undefined : { ...brakes, motor: NO_MOTOR }
    const checks = antiLock
      ? []
      : [
          orderTrial('brakes.order', 'Which axle locks first', car, alone),
          ...(both === undefined
            ? []
            : [orderTrial('brakes.regeneration', 'Which axle locks first while the motor brakes too', car, both)]),
        ]
    return {
      frontShare: car.frontShare,
      ideal,
      ...(alone === undefined ? {} : { brakes: section('The brakes by themselves', () => courseOf(car, alone)) }),
      ...(both === undefined ? {} : { withMotor: section('With the motor', () => courseOf(car, both)) }),
      checks,
      assumptions: antiLock
        ? [
            assumed(
              'antiLock.order',
              'With an anti-lock system the order in which the axles lock is not judged: it must know the new weights, and the motor must let go when it works.',
            ),
          ]
        : [],
      cautions: [rearLock, brakesAndSteering, ...(both === undefined ? [] : [brakingByMotor])],
    }
  },
})

/** Between these the rear curve may nowhere lie above the front one (category M1). */
const [FROM, TO] = [0.15, 0.8]

const decelerations = /*@__PURE__*/ (() =>
  [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8].map((z) => quantity('acceleration', z, 'g')))()

/** Roads from ice to dry asphalt. */
const adhesions = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8]

type Asked = Read<typeof brakeBalance.input>

/** What of a car counts for its braking. */
interface Car {
  readonly frontShare: Quantity<'ratio'>
  readonly height: Quantity<'length'>
  readonly wheelbase: Quantity<'length'>
}

/** The braking of the axles, as shares of the weight of the car: a plain number is a deceleration over that of gravity. */
interface Braking {
  /** Front share of the brakes up to the knee, and of what is added beyond it. */
  readonly share: number
  readonly shareBeyond: number
  /** What both axles brake together at the knee of the valve. */
  readonly knee: number
  readonly motor: Motor
}

interface Motor {
  readonly front: number
  readonly rear: number
}

const NO_MOTOR: Motor = { front: 0, rear: 0 }

function refuse({ frontBrakeShare, front, rear, valve, centreOfGravity, wheelbase }: Asked): void {
  const issue = (path: string, expected: string, received: string) => {
    throw new InputError('brakeBalance', [{ path, expected, received }])
  }
  if (centreOfGravity.aft.si >= wheelbase.si) {
    issue('centreOfGravity.aft', `less than the wheelbase, ${wheelbase}`, String(centreOfGravity.aft))
  }
  const one = "frontBrakeShare such as '70 %', or front and rear"
  if (frontBrakeShare !== undefined && (front !== undefined || rear !== undefined)) {
    issue('frontBrakeShare', `${one}, and not both`, String(frontBrakeShare))
  }
  if ((front === undefined) !== (rear === undefined)) issue(front === undefined ? 'front' : 'rear', one, 'nothing')
  if (valve !== undefined && front === undefined) {
    issue('valve', 'front and rear with it, to know at what braking it works', 'a valve without them')
  }
}

/** How the brakes share their force, or undefined where that is not known. */
function brakesOf({ mass, frontBrakeShare, front, rear, valve }: Asked): Omit<Braking, 'motor'> | undefined {
  if (front === undefined || rear === undefined) {
    if (frontBrakeShare === undefined) return undefined
    const share = frontBrakeShare.si
    return { share, shareBeyond: share, knee: Number.POSITIVE_INFINITY }
  }
  const pressure = valve?.pressure ?? quantity('pressure', '1 MPa')
  const [inFront, behind] = section('Force of the brakes', () => [
    axleBrakeForce({ ...front, pressure }).si,
    axleBrakeForce({ ...rear, pressure }).si,
  ]) as [number, number]
  const share = inFront / (inFront + behind)
  if (valve === undefined) return { share, shareBeyond: share, knee: Number.POSITIVE_INFINITY }
  return {
    share,
    shareBeyond: inFront / (inFront + behind * valve.slope.si),
    knee: (inFront + behind) / (mass.si * GRAVITY),
  }
}

const GRAVITY = 9.80665

function motorOf({ mass, regeneration }: Asked): Motor {
  const over = (force: Quantity<'force'> | undefined) => (force?.si ?? 0) / (mass.si * GRAVITY)
  return { front: over(regeneration?.front), rear: over(regeneration?.rear) }
}

/** Front share of the whole braking at a deceleration over that of gravity. */
function shareAt({ share, shareBeyond, knee, motor }: Braking, z: number): number {
  const most = motor.front + motor.rear
  // Where the motor alone is more than is asked for, it gives what is asked for, and the brakes nothing.
  const part = most === 0 ? 0 : Math.min(1, z / most)
  const rest = Math.max(0, z - most)
  const inFront = Math.min(rest, knee) * share + Math.max(0, rest - knee) * shareBeyond
  return z === 0 ? share : Math.min(1, (inFront + motor.front * part) / z)
}

/** The order is judged at the ends of the range and where the course has a corner: between two of these it bends one way. */
function orderTrial(id: string, name: string, car: Car, braking: Braking | undefined): Check {
  const basis = 'Directive 71/320/EEC, annex II, appendix 3.1.1, category M1'
  const paths = [
    'centreOfGravity',
    'frontBrakeShare',
    'front',
    'rear',
    ...(id === 'brakes.order' ? [] : ['regeneration']),
  ]
  if (braking === undefined) {
    const unknown = 'it is not known how the brakes share their force: give frontBrakeShare, or front and rear'
    return trial(id, name, { unknown }, basis, ...paths)
  }
  const most = braking.motor.front + braking.motor.rear
  const corners = [FROM, most, most + braking.knee, TO].filter((z) => z >= FROM && z <= TO)
  const [worst] = corners
    .map((z) => {
      const deceleration = quantity('acceleration', z, 'g')
      const ideal = idealFrontBrakeShare({ ...car, deceleration })
      const share = quantity('ratio', shareAt(braking, z)).as('%')
      return { deceleration, ideal, share, left: share.si - ideal.si }
    })
    .sort((one, other) => one.left - other.left) as [Worst, ...Worst[]]
  const { share, deceleration, ideal } = worst
  return trial(
    id,
    name,
    says`${share} of the braking is in front at ${deceleration}, at least the ${ideal} at which the rear does not lock first`,
    basis,
    ...paths,
  )
}

interface Worst {
  readonly deceleration: Quantity<'acceleration'>
  readonly ideal: Quantity<'ratio'>
  readonly share: Quantity<'ratio'>
  readonly left: number
}

function courseOf(car: Car, braking: Braking): BrakeCourse {
  return {
    points: decelerations.flatMap((deceleration) => {
      const ideal = idealFrontBrakeShare({ ...car, deceleration })
      // There the rear wheels lift.
      if (ideal.si >= 1) return []
      const brakeShare = quantity('ratio', shareAt(braking, deceleration.in('g'))).as('%')
      return [
        {
          deceleration,
          ideal,
          frontBrakeShare: brakeShare,
          frontAdhesion: frontAdhesionUsed({ ...car, brakeShare, deceleration }),
          rearAdhesion: rearAdhesionUsed({ ...car, brakeShare, deceleration }),
        },
      ]
    }),
    locks: adhesions.map((adhesion) => lockOn(car, braking, quantity('ratio', adhesion))),
  }
}

/** The first lock on a road: its deceleration is found, and told by the formula of the axle that locks. */
function lockOn(car: Car, braking: Braking, adhesion: Quantity<'ratio'>): BrakeLock {
  const z = firstLock(car, braking, adhesion.si)
  const brakeShare = quantity('ratio', shareAt(braking, z)).as('%')
  const asked = { ...car, adhesion, brakeShare }
  const transfer = car.height.ratioTo(car.wheelbase)
  const spare = (share: number, load: number) => share * z - adhesion.si * load
  const inFront = spare(brakeShare.si, car.frontShare.si + z * transfer)
  const behind = spare(1 - brakeShare.si, 1 - car.frontShare.si - z * transfer)
  const first = inFront >= behind ? 'front' : 'rear'
  const deceleration = first === 'front' ? frontLockDeceleration(asked) : rearLockDeceleration(asked)
  return {
    adhesion,
    first,
    deceleration,
    efficiency: brakingEfficiency({ deceleration, adhesion }),
    line: quantity('acceleration', 0.1 + 0.85 * (adhesion.si - 0.2), 'g'),
  }
}

/** The least deceleration, over that of gravity, at which an axle brakes with all that the road has: both together reach it before the adhesion. */
function firstLock({ frontShare, height, wheelbase }: Car, braking: Braking, adhesion: number): number {
  const transfer = height.ratioTo(wheelbase)
  const locks = (z: number) => {
    const share = shareAt(braking, z)
    const front = share * z - adhesion * (frontShare.si + transfer * z)
    const rear = (1 - share) * z - adhesion * (1 - frontShare.si - transfer * z)
    return Math.max(front, rear) >= 0
  }
  const most = braking.motor.front + braking.motor.rear
  const ends = [most, most + braking.knee, adhesion].filter((z) => z <= adhesion).sort((one, other) => one - other)
  let low = 0
  let high = ends.find(locks) ?? adhesion
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (locks(middle)) high = middle
    else low = middle
  }
  return high
}
