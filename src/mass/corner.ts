/**
 * Corner loads of a rigid body on four springs with anti-roll bars, and cross weight set at the spring seats.
 *
 * Statics gives the axle totals and the whole side-to-side moment; how the axles share that moment follows from both of
 * them rolling by the one angle of a body that does not twist. Rests on Milliken & Milliken, Race Car Vehicle Dynamics
 * (1995), chapters 16 and 18.
 */
import { cite, definition, section } from '../formula/index.js'
import { liftedCar } from '../procedure/cautions.js'
import {
  type Check,
  check,
  defaulted,
  type Findings,
  given,
  group,
  procedure,
  type Unfinished,
} from '../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../quantity/index.js'
import { crossShare, crossTransfer, rearAxleMass } from './balance.js'
import { centreOfGravityField } from './position.js'
import { rideHeightChange } from './ride/spring.js'
import { axleFreeRoll, axleRise, axleRollRate, bodyHeave, bodyPitch, bodyRoll, rollTransfer } from './roll.js'
import {
  type Corners,
  cornersOf,
  refuseUnloaded,
  scalesField,
  trackField,
  wheelbaseField,
  wheelInWords,
  wheels,
  withoutResidue,
} from './weigh.js'

/** What each wheel carries, and how the body stands on its springs. */
export interface CornerLoads extends Findings {
  /** What a scale under each wheel shows. */
  readonly corners: Corners<Quantity<'mass'>>
  /** Rise of the body at its centre of gravity, from springs without load; negative, since it sinks. */
  readonly heave: Quantity<'length'>
  /** Positive with the left side up. */
  readonly roll: Quantity<'angle'>
  /** Positive with the nose down, from springs without load. */
  readonly pitch: Quantity<'angle'>
}

const ratesField = /*@__PURE__*/ (() =>
  group('The wheel rate at each wheel', {
    ...cornersOf((wheel) =>
      given('springRate', `Wheel rate of the ${wheelInWords[wheel]} wheel`, {
        above: 0,
        usual: ['10 N/mm', '40 N/mm'],
      }),
    ),
  }))()

const rollBarsField = /*@__PURE__*/ (() => {
  const none = { min: 0, default: '0 N·m/°', because: 'there is no bar' } as const
  return group('What an anti-roll bar adds to the roll rate of its axle', {
    front: given('rollRate', 'Roll rate of the front anti-roll bar', none),
    rear: given('rollRate', 'Roll rate of the rear anti-roll bar', none),
  })
})()

const preloadField = /*@__PURE__*/ (() =>
  group('How far the seat of each spring is raised, as wheel travel', {
    ...cornersOf((wheel) =>
      given('length', `Height by which the ${wheelInWords[wheel]} spring seat is raised`, {
        default: '0 mm',
        because: 'the seat is where it was',
      }),
    ),
  }))()

/**
 * Works out what a scale under each wheel would show, and how the body stands, for a rigid body on four springs that may
 * all differ. Wheel rates come from `wheelRate`, and from `rateInSeries` where the tyre is counted in. A `preload` is
 * counted as wheel travel: the seat itself moves by that times the motion ratio, and at unchanged ride height the wheel
 * carries the wheel rate times `preload` more. With no preload and no load, the body is taken to stand level; `heave`,
 * `roll` and `pitch` count from there.
 *
 * Answers: what does each wheel carry, and how does the body stand on its springs?
 *
 * - `mass`: mass of the car, in kg, above 0 kg
 * - `centreOfGravity`: where the centre of gravity lies
 *   - `aft`: distance behind the front axle line, negative ahead of it, in m
 *   - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *   - `up`: height above the ground, in m, at least 0 m, optional
 * - `wheelbase`: wheelbase, in m, above 0 m
 * - `track`: the distances between the wheels of an axle
 *   - `front`: front track, in m, above 0 m
 *   - `rear`: rear track, in m, above 0 m
 * - `rates`: the wheel rate at each wheel
 *   - `frontLeft`: wheel rate of the front left wheel, in N/mm, above 0 N/mm
 *   - `frontRight`: wheel rate of the front right wheel, in N/mm, above 0 N/mm
 *   - `rearLeft`: wheel rate of the rear left wheel, in N/mm, above 0 N/mm
 *   - `rearRight`: wheel rate of the rear right wheel, in N/mm, above 0 N/mm
 * - `rollBars`: what an anti-roll bar adds to the roll rate of its axle, optional
 *   - `front`: roll rate of the front anti-roll bar, in N·m/°, at least 0 N·m/°, 0 N·m/° by default (there is no bar)
 *   - `rear`: roll rate of the rear anti-roll bar, in N·m/°, at least 0 N·m/°, 0 N·m/° by default (there is no bar)
 * - `preload`: how far the seat of each spring is raised, as wheel travel, optional
 *   - `frontLeft`: height by which the front left spring seat is raised, in m, 0 mm by default (the seat is where it
 *     was)
 *   - `frontRight`: height by which the front right spring seat is raised, in m, 0 mm by default (the seat is where it
 *     was)
 *   - `rearLeft`: height by which the rear left spring seat is raised, in m, 0 mm by default (the seat is where it was)
 *   - `rearRight`: height by which the rear right spring seat is raised, in m, 0 mm by default (the seat is where it
 *     was)
 * - always assumed: the body does not twist, and the rates are the same over the travel
 * - always assumed: the whole mass rests on the springs, that of wheels and axles too
 * - always assumed: without load and preload the body stands level on its springs
 *
 * @returns The corner masses, and heave, roll and pitch of the body, with what was assumed. Checks hold roll and pitch to
 * 10°, beyond which the geometry of small angles is out by more than some 1 %.
 * @throws InputError for input that cannot be used, by its path; CalculationError when a wheel would have to pull on the
 * ground, since four springs then no longer carry the body.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16; Milliken & Milliken, Race Car Vehicle
 * Dynamics (1995), chapter 18.
 *
 * @example
 * ```ts
 * const { corners } = cornerLoads({
 *   mass: '1000 kg',
 *   centreOfGravity: { aft: '1.2 m', left: '0 mm' },
 *   wheelbase: '2.4 m',
 *   track: { front: '1.3 m', rear: '1.3 m' },
 *   rates: { frontLeft: '25 N/mm', frontRight: '25 N/mm', rearLeft: '25 N/mm', rearRight: '25 N/mm' },
 *   preload: { frontLeft: '4 mm' },
 * })
 * String(corners.frontLeft) // '252.5 kg'
 * String(corners.frontRight) // '247.5 kg'
 * ```
 */
export const cornerLoads = /*@__PURE__*/ procedure({
  name: 'cornerLoads',
  title: 'A body on four springs',
  answers: 'What does each wheel carry, and how does the body stand on its springs?',
  input: {
    mass: given('mass', 'Mass of the car', { above: 0, usual: ['450 kg', '2400 kg'] }),
    centreOfGravity: centreOfGravityField,
    wheelbase: wheelbaseField,
    track: trackField,
    rates: ratesField,
    rollBars: defaulted(rollBarsField),
    preload: defaulted(preloadField),
  },
  source: [
    cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 16'),
    cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18'),
  ],
  assumes: [
    'The body does not twist, and the rates are the same over the travel.',
    'The whole mass rests on the springs, that of wheels and axles too.',
    'Without load and preload the body stands level on its springs.',
  ],
  work: ({ mass, centreOfGravity, wheelbase, track, rates, rollBars, preload }): Unfinished<CornerLoads> => {
    const { aft, left } = centreOfGravity
    if (left === undefined) {
      const expected = "a length such as '-20 mm', or '0 mm' on the centre line"
      throw new InputError('cornerLoads', [{ path: 'centreOfGravity.left', expected, received: 'nothing' }])
    }
    const rear = rearAxleMass({ mass, aft, wheelbase })
    const front = mass.minus(rear)
    for (const [end, axleMass] of [
      ['front', front],
      ['rear', rear],
    ] as const) {
      if (axleMass.si < 0) throw lifted(`the ${end} axle`, axleMass)
    }
    const axleOf = (end: 'front' | 'rear', axleMass: Quantity<'mass'>) => ({
      rate: axleRollRate({ leftRate: rates[`${end}Left`], rightRate: rates[`${end}Right`], track: track[end] }),
      freeRoll: axleFreeRoll({
        axleMass,
        leftRate: rates[`${end}Left`],
        rightRate: rates[`${end}Right`],
        leftSeat: preload[`${end}Left`],
        rightSeat: preload[`${end}Right`],
        track: track[end],
      }),
    })
    const axles = {
      front: section('Front axle', () => axleOf('front', front)),
      rear: section('Rear axle', () => axleOf('rear', rear)),
    }
    const roll = bodyRoll({
      mass,
      left,
      frontRate: axles.front.rate,
      rearRate: axles.rear.rate,
      frontFreeRoll: axles.front.freeRoll,
      rearFreeRoll: axles.rear.freeRoll,
      frontBar: rollBars.front,
      rearBar: rollBars.rear,
    })
    const frontTransfer = rollTransfer({ ...axles.front, bar: rollBars.front, roll, track: track.front })
    const rearTransfer = rollTransfer({ ...axles.rear, bar: rollBars.rear, roll, track: track.rear })
    const corners = withoutResidue({
      frontLeft: front.over(2).plus(frontTransfer),
      frontRight: front.over(2).minus(frontTransfer),
      rearLeft: rear.over(2).plus(rearTransfer),
      rearRight: rear.over(2).minus(rearTransfer),
    })
    for (const wheel of wheels) {
      if (corners[wheel].si < 0) throw lifted(`the ${wheelInWords[wheel]} wheel`, corners[wheel])
    }
    const stand = section('How the body stands', () => {
      const riseOf = (end: 'front' | 'rear') =>
        axleRise({
          leftMass: corners[`${end}Left`],
          leftRate: rates[`${end}Left`],
          leftSeat: preload[`${end}Left`],
          bar: rollBars[end],
          roll,
          track: track[end],
        })
      const frontRise = riseOf('front')
      const pitch = bodyPitch({ frontRise, rearRise: riseOf('rear'), wheelbase })
      return { pitch, heave: bodyHeave({ frontRise, pitch, roll, aft, left }) }
    })
    return {
      corners,
      heave: stand.heave,
      roll,
      pitch: stand.pitch,
      checks: [
        smallAngle('body.roll', 'Roll of the body', roll),
        smallAngle('body.pitch', 'Pitch of the body', stand.pitch),
      ],
    }
  },
})

/** Within it the sine and the tangent of an angle differ from it by no more than some 1 %. */
const SMALL_ANGLE = '10 °'

/** Holds an angle to what the geometry of small angles bears: beyond it springs are bottomed or figures are wrong. */
function smallAngle(id: string, name: string, angle: Quantity<'angle'>): Check {
  const basis = 'plausibility: the geometry is that of small angles'
  return check(
    id,
    name,
    angle.times(Math.sign(angle.si)),
    'at most',
    quantity('angle', SMALL_ANGLE),
    basis,
    'centreOfGravity',
    'rates',
    'rollBars',
    'preload',
  )
}

function lifted(what: string, mass: Quantity<'mass'>): CalculationError {
  return new CalculationError(
    'cornerLoads',
    `${what} would carry ${mass}: it hangs clear, and the others carry it all`,
    {
      mass: String(mass),
    },
  )
}

/** Spring seats that bring the cross weight to a target. */
export interface CrossWeightTrim extends Findings {
  /** How far to raise each spring seat, as wheel travel; negative, to lower it. */
  readonly seats: Corners<Quantity<'length'>>
  /** What the scales show afterwards. */
  readonly corners: Corners<Quantity<'mass'>>
  /** Cross weight before and after. */
  readonly crossShare: { readonly before: Quantity<'ratio'>; readonly after: Quantity<'ratio'> }
}

/**
 * Works out how far to raise or lower each spring seat for a cross weight, so that the body stays where it is: no height,
 * roll or pitch changes, and so no anti-roll bar takes part. Seat heights are counted as wheel travel: multiply by the
 * motion ratio for the seat itself. Axle and side totals cannot be set with spring seats and stay as they are.
 *
 * Answers: how far must each spring seat be raised or lowered for a cross weight?
 *
 * - `scales`: what the scales show
 *   - `frontLeft`: mass on the front left wheel, in kg, at least 0 kg
 *   - `frontRight`: mass on the front right wheel, in kg, at least 0 kg
 *   - `rearLeft`: mass on the rear left wheel, in kg, at least 0 kg
 *   - `rearRight`: mass on the rear right wheel, in kg, at least 0 kg
 * - `wheelRates`: the wheel rate at each wheel
 *   - `frontLeft`: wheel rate of the front left wheel, in N/mm, above 0 N/mm
 *   - `frontRight`: wheel rate of the front right wheel, in N/mm, above 0 N/mm
 *   - `rearLeft`: wheel rate of the rear left wheel, in N/mm, above 0 N/mm
 *   - `rearRight`: wheel rate of the rear right wheel, in N/mm, above 0 N/mm
 * - `track`: the distances between the wheels of an axle
 *   - `front`: front track, in m, above 0 m
 *   - `rear`: rear track, in m, above 0 m
 * - `target`: cross weight wanted: front right and rear left over the whole, a plain number, above 0 and below 1, 50
 *   % by default (the car then turns alike to both sides; common practice, no source)
 * - always assumed: the body does not twist, and nothing else in the suspension binds
 *
 * @returns The change of seat height at each corner, and what the scales will show.
 * @throws InputError for input that cannot be used, by its path; CalculationError when the target would lift a wheel.
 * Source: by definition; Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 18.
 *
 * @example
 * ```ts
 * const { seats } = crossWeightTrim({
 *   scales: { frontLeft: '182 kg', frontRight: '174 kg', rearLeft: '161 kg', rearRight: '165 kg' },
 *   wheelRates: { frontLeft: '18 N/mm', frontRight: '18 N/mm', rearLeft: '20 N/mm', rearRight: '20 N/mm' },
 *   track: { front: '1220 mm', rear: '1190 mm' },
 * })
 * String(seats.frontRight) // '1.614 mm'
 * ```
 */
export const crossWeightTrim = /*@__PURE__*/ procedure({
  name: 'crossWeightTrim',
  title: 'Cross weight set at the spring seats',
  answers: 'How far must each spring seat be raised or lowered for a cross weight?',
  input: {
    scales: scalesField,
    wheelRates: ratesField,
    track: trackField,
    target: given('ratio', 'Cross weight wanted: front right and rear left over the whole', {
      above: 0,
      below: 1,
      usual: ['48 %', '52 %'],
      default: '50 %',
      because: 'the car then turns alike to both sides; common practice, no source',
    }),
  },
  source: [definition, cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18')],
  assumes: ['The body does not twist, and nothing else in the suspension binds.'],
  work: ({ scales, wheelRates, track, target }): Unfinished<CrossWeightTrim> => {
    refuseUnloaded('crossWeightTrim', '', scales)
    const mass = wheels.map((wheel) => scales[wheel]).reduce((sum, reading) => sum.plus(reading))
    const before = crossShare({ frontRight: scales.frontRight, rearLeft: scales.rearLeft, mass })
    const shareChange = target.minus(before)
    const moved = {
      front: crossTransfer({ shareChange, mass, track: track.front, otherTrack: track.rear }),
      rear: crossTransfer({ shareChange, mass, track: track.rear, otherTrack: track.front }),
    }
    const changes = {
      frontLeft: moved.front.times(-1),
      frontRight: moved.front,
      rearLeft: moved.rear,
      rearRight: moved.rear.times(-1),
    }
    const corners = withoutResidue(cornersOf((wheel) => scales[wheel].plus(changes[wheel])))
    for (const wheel of wheels) {
      if (corners[wheel].si >= 0) continue
      throw new CalculationError(
        'crossWeightTrim',
        `a cross weight of ${target} would lift the ${wheelInWords[wheel]} wheel: it would carry ${corners[wheel]}`,
        { target: String(target), [wheel]: String(corners[wheel]) },
      )
    }
    // A seat raised by as much as its spring gives under the new load leaves the body where it was.
    const seats = cornersOf((wheel) =>
      section(`Seat of the ${wheelInWords[wheel]} spring`, () =>
        rideHeightChange({ massChange: changes[wheel], rate: wheelRates[wheel] }).times(-1),
      ),
    )
    return {
      seats,
      corners,
      crossShare: {
        before,
        after: crossShare({ frontRight: corners.frontRight, rearLeft: corners.rearLeft, mass }),
      },
      checks: [],
      cautions: [liftedCar],
    }
  },
})
