/**
 * Corner loads of a rigid body on four springs with anti-roll bars, and cross weight set at the spring seats.
 *
 * Statics gives the axle totals and the whole side-to-side moment; how the axles share that moment follows from both of
 * them rolling by the one angle of a body that does not twist. Rests on Milliken & Milliken, Race Car Vehicle Dynamics
 * (1995), chapters 16 and 18.
 */
import { cite, definition, formula, input, output, section, standardGravity } from '../formula/index.js'
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

const rollStiffness = /*@__PURE__*/ cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 16')

/**
 * Stiffness of the springs of an axle against roll where their rates differ. With equal rates it is `rollRate`.
 *
 * `K = t ^ 2 * k_l * k_r / (k_l + k_r)`
 *
 * - `leftRate` (`k_l`, N/mm): wheel rate of the left wheel, above 0 N/mm
 * - `rightRate` (`k_r`, N/mm): wheel rate of the right wheel, above 0 N/mm
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `K`: roll rate of the springs of the axle, in N·m/°
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * axleRollRate({ leftRate: '20 N/mm', rightRate: '20 N/mm', track: '1.4 m' })
 * // 342.1 N·m/°
 * // by definition (exact): 19600 N·m/rad
 * ```
 */
export const axleRollRate = /*@__PURE__*/ formula({
  name: 'axleRollRate',
  title: 'Roll rate of an axle with two different springs',
  inputs: {
    leftRate: input('springRate', 'k_l', 'Wheel rate of the left wheel', { above: 0 }),
    rightRate: input('springRate', 'k_r', 'Wheel rate of the right wheel', { above: 0 }),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('rollRate', 'K', 'Roll rate of the springs of the axle'),
  expression: 't ^ 2 * k_l * k_r / (k_l + k_r)',
  source: rollStiffness,
  compute: ({ leftRate, rightRate, track }) => (track ** 2 * leftRate * rightRate) / (leftRate + rightRate),
})

/**
 * Angle to which an axle would roll the body if it alone set it: the load is then the same on both its springs. It
 * comes from spring seats and spring rates that differ from side to side.
 *
 * `phi_0 = (s_l - s_r - m_a * g0 / 2 * (1 / k_l - 1 / k_r)) / t`
 *
 * - `axleMass` (`m_a`, kg): mass on the axle, at least 0 kg
 * - `leftRate` (`k_l`, N/mm): wheel rate of the left wheel, above 0 N/mm
 * - `rightRate` (`k_r`, N/mm): wheel rate of the right wheel, above 0 N/mm
 * - `leftSeat` (`s_l`, m): height by which the left spring seat is raised, as wheel travel
 * - `rightSeat` (`s_r`, m): height by which the right spring seat is raised, as wheel travel
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `phi_0`: roll angle, positive with the left side up, in °
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * axleFreeRoll({
 *   axleMass: '1000 kg',
 *   leftRate: '20 N/mm',
 *   rightRate: '25 N/mm',
 *   leftSeat: '0 mm',
 *   rightSeat: '0 mm',
 *   track: '1 m',
 * })
 * // -2.809 °
 * // by definition (exact): -0.04903325 rad
 * ```
 */
export const axleFreeRoll = /*@__PURE__*/ formula({
  name: 'axleFreeRoll',
  title: 'Roll angle at which both springs of an axle carry the same',
  inputs: {
    axleMass: input('mass', 'm_a', 'Mass on the axle', { min: 0 }),
    leftRate: input('springRate', 'k_l', 'Wheel rate of the left wheel', { above: 0 }),
    rightRate: input('springRate', 'k_r', 'Wheel rate of the right wheel', { above: 0 }),
    leftSeat: input('length', 's_l', 'Height by which the left spring seat is raised, as wheel travel'),
    rightSeat: input('length', 's_r', 'Height by which the right spring seat is raised, as wheel travel'),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('angle', 'phi_0', 'Roll angle, positive with the left side up'),
  expression: '(s_l - s_r - m_a * g0 / 2 * (1 / k_l - 1 / k_r)) / t',
  constants: { g0: standardGravity },
  assumes: ['Angles are small.'],
  source: definition,
  compute: ({ axleMass, leftRate, rightRate, leftSeat, rightSeat, track }, { g0 }) =>
    (leftSeat - rightSeat - ((axleMass * g0) / 2) * (1 / leftRate - 1 / rightRate)) / track,
})

/**
 * Roll angle at which the springs and bars of both axles hold the side-to-side moment of the body.
 *
 * `phi = (K_f * phi_f + K_r * phi_r - m * g0 * y) / (K_f + K_r + B_f + B_r)`
 *
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `left` (`y`, m): distance of its centre of gravity to the left of the centre line
 * - `frontRate` (`K_f`, N·m/°): roll rate of the front springs, above 0 N·m/°
 * - `rearRate` (`K_r`, N·m/°): roll rate of the rear springs, above 0 N·m/°
 * - `frontFreeRoll` (`phi_f`, °): roll angle at which both front springs carry the same
 * - `rearFreeRoll` (`phi_r`, °): roll angle at which both rear springs carry the same
 * - `frontBar` (`B_f`, N·m/°): roll rate of the front anti-roll bar, at least 0 N·m/°
 * - `rearBar` (`B_r`, N·m/°): roll rate of the rear anti-roll bar, at least 0 N·m/°
 * - gives `phi`: roll angle, positive with the left side up, in °
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: the body does not twist, and angles are small
 * - Assumes: the anti-roll bars are free of load at no roll
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * bodyRoll({
 *   mass: '1000 kg',
 *   left: '20 mm',
 *   frontRate: '25350 N·m/rad',
 *   rearRate: '16900 N·m/rad',
 *   frontFreeRoll: '0 °',
 *   rearFreeRoll: '0 °',
 *   frontBar: '0 N·m/rad',
 *   rearBar: '0 N·m/rad',
 * })
 * // -0.266 °
 * // by definition (exact): -0.0046422 rad
 * ```
 */
export const bodyRoll = /*@__PURE__*/ formula({
  name: 'bodyRoll',
  title: 'Roll angle of the body',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    left: input('length', 'y', 'Distance of its centre of gravity to the left of the centre line'),
    frontRate: input('rollRate', 'K_f', 'Roll rate of the front springs', { above: 0 }),
    rearRate: input('rollRate', 'K_r', 'Roll rate of the rear springs', { above: 0 }),
    frontFreeRoll: input('angle', 'phi_f', 'Roll angle at which both front springs carry the same'),
    rearFreeRoll: input('angle', 'phi_r', 'Roll angle at which both rear springs carry the same'),
    frontBar: input('rollRate', 'B_f', 'Roll rate of the front anti-roll bar', { min: 0 }),
    rearBar: input('rollRate', 'B_r', 'Roll rate of the rear anti-roll bar', { min: 0 }),
  },
  result: output('angle', 'phi', 'Roll angle, positive with the left side up'),
  expression: '(K_f * phi_f + K_r * phi_r - m * g0 * y) / (K_f + K_r + B_f + B_r)',
  constants: { g0: standardGravity },
  assumes: ['The body does not twist, and angles are small.', 'The anti-roll bars are free of load at no roll.'],
  source: rollStiffness,
  compute: ({ mass, left, frontRate, rearRate, frontFreeRoll, rearFreeRoll, frontBar, rearBar }, { g0 }) =>
    (frontRate * frontFreeRoll + rearRate * rearFreeRoll - mass * g0 * left) /
    (frontRate + rearRate + frontBar + rearBar),
})

/**
 * Mass on the left wheel of an axle of a rolled body, beyond half of the axle's; the right wheel carries as much
 * less.
 *
 * `dm = (K * (phi_0 - phi) - B * phi) / (t * g0)`
 *
 * - `rate` (`K`, N·m/°): roll rate of the springs of the axle, at least 0 N·m/°
 * - `bar` (`B`, N·m/°): roll rate of its anti-roll bar, at least 0 N·m/°
 * - `freeRoll` (`phi_0`, °): roll angle at which both springs of the axle carry the same
 * - `roll` (`phi`, °): roll angle of the body, positive with the left side up
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `dm`: mass added to the left wheel and taken off the right one, in kg
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * rollTransfer({ rate: '25350 N·m/rad', bar: '0 N·m/rad', freeRoll: '0 °', roll: '-0.0046422 rad', track: '1.3 m' })
 * // 9.231 kg
 * // by definition (exact): 9.2308 kg
 * ```
 */
export const rollTransfer = /*@__PURE__*/ formula({
  name: 'rollTransfer',
  title: 'Mass moved on to the left wheel of an axle by roll',
  inputs: {
    rate: input('rollRate', 'K', 'Roll rate of the springs of the axle', { min: 0 }),
    bar: input('rollRate', 'B', 'Roll rate of its anti-roll bar', { min: 0 }),
    freeRoll: input('angle', 'phi_0', 'Roll angle at which both springs of the axle carry the same'),
    roll: input('angle', 'phi', 'Roll angle of the body, positive with the left side up'),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('mass', 'dm', 'Mass added to the left wheel and taken off the right one'),
  expression: '(K * (phi_0 - phi) - B * phi) / (t * g0)',
  constants: { g0: standardGravity },
  assumes: ['Angles are small.'],
  source: rollStiffness,
  compute: ({ rate, bar, freeRoll, roll, track }, { g0 }) => (rate * (freeRoll - roll) - bar * roll) / (track * g0),
})

/**
 * Rise of the body over the middle of an axle, from where it would stand on springs without load.
 *
 * `z = s_l - (m_l * g0 + B * phi / t) / k_l - phi * t / 2`
 *
 * - `leftMass` (`m_l`, kg): mass on the left wheel, at least 0 kg
 * - `leftRate` (`k_l`, N/mm): wheel rate of the left wheel, above 0 N/mm
 * - `leftSeat` (`s_l`, m): height by which the left spring seat is raised, as wheel travel
 * - `bar` (`B`, N·m/°): roll rate of the anti-roll bar of the axle, at least 0 N·m/°
 * - `roll` (`phi`, °): roll angle of the body, positive with the left side up
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `z`: rise of the body over the middle of the axle, negative where it sinks, in mm
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * axleRise({
 *   leftMass: '250 kg',
 *   leftRate: '24516.625 N/m',
 *   leftSeat: '10 mm',
 *   bar: '0 N·m/°',
 *   roll: '0 °',
 *   track: '1.3 m',
 * })
 * // -90 mm
 * // by definition (exact): -90 mm
 * ```
 */
export const axleRise = /*@__PURE__*/ formula({
  name: 'axleRise',
  title: 'Rise of the body over the middle of an axle',
  inputs: {
    leftMass: input('mass', 'm_l', 'Mass on the left wheel', { min: 0 }),
    leftRate: input('springRate', 'k_l', 'Wheel rate of the left wheel', { above: 0 }),
    leftSeat: input('length', 's_l', 'Height by which the left spring seat is raised, as wheel travel'),
    bar: input('rollRate', 'B', 'Roll rate of the anti-roll bar of the axle', { min: 0 }),
    roll: input('angle', 'phi', 'Roll angle of the body, positive with the left side up'),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('length', 'z', 'Rise of the body over the middle of the axle, negative where it sinks', 'mm'),
  expression: 's_l - (m_l * g0 + B * phi / t) / k_l - phi * t / 2',
  constants: { g0: standardGravity },
  assumes: ['Angles are small.'],
  source: definition,
  compute: ({ leftMass, leftRate, leftSeat, bar, roll, track }, { g0 }) =>
    leftSeat - (leftMass * g0 + (bar * roll) / track) / leftRate - (roll * track) / 2,
})

/**
 * Angle by which the nose of a body is down, from its rise over the two axles.
 *
 * `theta = (z_r - z_f) / L`
 *
 * - `frontRise` (`z_f`, m): rise of the body over the front axle
 * - `rearRise` (`z_r`, m): rise of the body over the rear axle
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `theta`: pitch angle, positive with the nose down, in °
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ISO 8855, pitch angle.
 *
 * @example
 * ```ts
 * bodyPitch({ frontRise: '-82 mm', rearRise: '-106 mm', wheelbase: '2.4 m' })
 * // -0.573 °
 * // by definition (exact): -0.01 rad
 * ```
 */
export const bodyPitch = /*@__PURE__*/ formula({
  name: 'bodyPitch',
  title: 'Pitch angle of the body',
  inputs: {
    frontRise: input('length', 'z_f', 'Rise of the body over the front axle'),
    rearRise: input('length', 'z_r', 'Rise of the body over the rear axle'),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('angle', 'theta', 'Pitch angle, positive with the nose down'),
  expression: '(z_r - z_f) / L',
  assumes: ['Angles are small.'],
  source: cite('ISO 8855', 'pitch angle'),
  compute: ({ frontRise, rearRise, wheelbase }) => (rearRise - frontRise) / wheelbase,
})

/**
 * Rise of the centre of gravity of a body that has risen, pitched and rolled.
 *
 * `z = z_f + theta * a + phi * y`
 *
 * - `frontRise` (`z_f`, m): rise of the body over the front axle
 * - `pitch` (`theta`, °): pitch angle, positive with the nose down
 * - `roll` (`phi`, °): roll angle, positive with the left side up
 * - `aft` (`a`, m): distance of the centre of gravity behind the front axle
 * - `left` (`y`, m): distance of the centre of gravity to the left of the centre line
 * - gives `z`: rise of the body at its centre of gravity, negative where it sinks, in mm
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * bodyHeave({ frontRise: '-82 mm', pitch: '-0.01 rad', roll: '0.005 rad', aft: '1.2 m', left: '20 mm' })
 * // -93.9 mm
 * // by definition (exact): -93.9 mm
 * ```
 */
export const bodyHeave = /*@__PURE__*/ formula({
  name: 'bodyHeave',
  title: 'Heave of the body',
  inputs: {
    frontRise: input('length', 'z_f', 'Rise of the body over the front axle'),
    pitch: input('angle', 'theta', 'Pitch angle, positive with the nose down'),
    roll: input('angle', 'phi', 'Roll angle, positive with the left side up'),
    aft: input('length', 'a', 'Distance of the centre of gravity behind the front axle'),
    left: input('length', 'y', 'Distance of the centre of gravity to the left of the centre line'),
  },
  result: output('length', 'z', 'Rise of the body at its centre of gravity, negative where it sinks', 'mm'),
  expression: 'z_f + theta * a + phi * y',
  assumes: ['Angles are small.'],
  source: definition,
  compute: ({ frontRise, pitch, roll, aft, left }) => frontRise + pitch * aft + roll * left,
})

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
  source: [rollStiffness, cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18')],
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
