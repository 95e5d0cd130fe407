/**
 * Axle loads, shares and centre of gravity, from scales and a tape.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1, Milliken & Milliken, Race Car Vehicle
 * Dynamics (1995), chapter 18, and ISO 10392 (centre of gravity by lifting an axle).
 */
import { cite, definition, formula, input, output } from '../formula/index.js'

const axleLoads = /*@__PURE__*/ cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 1')
const liftedAxle = /*@__PURE__*/ cite('ISO 10392')

/**
 * How far the centre of gravity lies behind the front axle, from the mass that the rear wheels carry on level ground.
 *
 * `a = m_r / m * L`
 *
 * - `rearAxleMass` (`m_r`, kg): mass on both rear wheels, at least 0 kg
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `a`: distance of the centre of gravity behind the front axle, in mm
 * - holds where rearAxleMass / mass is at most 1
 * - Assumes: the car stands on level ground
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1.
 *
 * @example
 * ```ts
 * centreOfGravityAft({ rearAxleMass: '515.071 kg', mass: '1145 kg', wheelbase: '2.532 m' })
 * // 1139 mm
 * // course exercise (recomputed): 1.139 m
 * ```
 */
export const centreOfGravityAft = /*@__PURE__*/ formula({
  name: 'centreOfGravityAft',
  title: 'Centre of gravity behind the front axle',
  inputs: {
    rearAxleMass: input('mass', 'm_r', 'Mass on both rear wheels', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('length', 'a', 'Distance of the centre of gravity behind the front axle', 'mm'),
  expression: 'm_r / m * L',
  valid: [{ of: 'rearAxleMass / mass', value: ({ rearAxleMass, mass }) => rearAxleMass / mass, max: 1 }],
  assumes: ['The car stands on level ground.'],
  source: axleLoads,
  compute: ({ rearAxleMass, mass, wheelbase }) => (rearAxleMass / mass) * wheelbase,
})

/**
 * Mass that the rear axle carries of a car or of one part in it. A part behind the rear axle puts more than its own
 * mass there and takes the rest off the front; one ahead of the front axle does the opposite.
 *
 * `m_r = m * a / L`
 *
 * - `mass` (`m`, kg): mass of the car or the part, at least 0 kg
 * - `aft` (`a`, m): distance of its centre of gravity behind the front axle
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `m_r`: mass on both rear wheels, in kg
 * - Assumes: the car stands on level ground
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1.
 *
 * @example
 * ```ts
 * rearAxleMass({ mass: '1145 kg', aft: '1.139 m', wheelbase: '2.532 m' })
 * // 515.1 kg
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1, static axle loads (recomputed): 515.071 kg
 * ```
 */
export const rearAxleMass = /*@__PURE__*/ formula({
  name: 'rearAxleMass',
  title: 'Mass on the rear axle',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car or the part', { min: 0 }),
    aft: input('length', 'a', 'Distance of its centre of gravity behind the front axle'),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('mass', 'm_r', 'Mass on both rear wheels'),
  expression: 'm * a / L',
  assumes: ['The car stands on level ground.'],
  source: axleLoads,
  compute: ({ mass, aft, wheelbase }) => (mass * aft) / wheelbase,
})

/**
 * Share of the mass that the front wheels carry, from the place of the centre of gravity.
 *
 * `X_f = 1 - a / L`
 *
 * - `aft` (`a`, m): distance of the centre of gravity behind the front axle
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `X_f`: share of the mass on the front wheels, in %
 * - Assumes: the car stands on level ground
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1.
 *
 * @example
 * ```ts
 * frontShare({ aft: '1.1084 m', wheelbase: '2.34 m' })
 * // 52.63 %
 * // Jazar, Vehicle Dynamics (2008), example 40 (recomputed): 52.632 %
 * ```
 */
export const frontShare = /*@__PURE__*/ formula({
  name: 'frontShare',
  title: 'Share of the mass on the front axle',
  inputs: {
    aft: input('length', 'a', 'Distance of the centre of gravity behind the front axle'),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('ratio', 'X_f', 'Share of the mass on the front wheels', '%'),
  expression: '1 - a / L',
  assumes: ['The car stands on level ground.'],
  source: axleLoads,
  compute: ({ aft, wheelbase }) => 1 - aft / wheelbase,
})

/**
 * Share of the mass that the left wheels carry, from the place of the centre of gravity. Both axles need one track.
 *
 * `X_l = 1 / 2 + y / t`
 *
 * - `left` (`y`, m): distance of the centre of gravity to the left of the centre line
 * - `track` (`t`, m): track, or the mean of two that differ little, above 0 m
 * - gives `X_l`: share of the mass on the left wheels, in %
 * - Assumes: the car stands on level ground, and both axles have this track
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * sideShare({ left: '20 mm', track: '1.3 m' })
 * // 51.54 %
 * // by definition (exact): 51.538 %
 * ```
 */
export const sideShare = /*@__PURE__*/ formula({
  name: 'sideShare',
  title: 'Left-hand share of the mass from the centre of gravity',
  inputs: {
    left: input('length', 'y', 'Distance of the centre of gravity to the left of the centre line'),
    track: input('length', 't', 'Track, or the mean of two that differ little', { above: 0 }),
  },
  result: output('ratio', 'X_l', 'Share of the mass on the left wheels', '%'),
  expression: '1 / 2 + y / t',
  assumes: ['The car stands on level ground, and both axles have this track.'],
  source: definition,
  compute: ({ left, track }) => 0.5 + left / track,
})

/**
 * How far the centre of gravity lies to the left of the centre line, from four scales. The tracks may differ.
 *
 * `y = ((m_fl - m_fr) * t_f + (m_rl - m_rr) * t_r) / (2 * (m_fl + m_fr + m_rl + m_rr))`
 *
 * - `frontLeft` (`m_fl`, kg): mass on the front left wheel, at least 0 kg
 * - `frontRight` (`m_fr`, kg): mass on the front right wheel, at least 0 kg
 * - `rearLeft` (`m_rl`, kg): mass on the rear left wheel, at least 0 kg
 * - `rearRight` (`m_rr`, kg): mass on the rear right wheel, at least 0 kg
 * - `frontTrack` (`t_f`, m): front track, above 0 m
 * - `rearTrack` (`t_r`, m): rear track, above 0 m
 * - gives `y`: distance of the centre of gravity to the left of the centre line, in mm
 * - holds where frontLeft + frontRight + rearLeft + rearRight is above 0
 * - Assumes: the car stands on level ground
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 18.
 *
 * @example
 * ```ts
 * centreOfGravityLeft({
 *   frontLeft: '259.23 kg',
 *   frontRight: '240.77 kg',
 *   rearLeft: '256.15 kg',
 *   rearRight: '243.85 kg',
 *   frontTrack: '1.3 m',
 *   rearTrack: '1.3 m',
 * })
 * // 19.99 mm
 * // by definition (exact): 20 mm
 * ```
 */
export const centreOfGravityLeft = /*@__PURE__*/ formula({
  name: 'centreOfGravityLeft',
  title: 'Centre of gravity to the left of the centre line',
  inputs: {
    frontLeft: input('mass', 'm_fl', 'Mass on the front left wheel', { min: 0 }),
    frontRight: input('mass', 'm_fr', 'Mass on the front right wheel', { min: 0 }),
    rearLeft: input('mass', 'm_rl', 'Mass on the rear left wheel', { min: 0 }),
    rearRight: input('mass', 'm_rr', 'Mass on the rear right wheel', { min: 0 }),
    frontTrack: input('length', 't_f', 'Front track', { above: 0 }),
    rearTrack: input('length', 't_r', 'Rear track', { above: 0 }),
  },
  result: output('length', 'y', 'Distance of the centre of gravity to the left of the centre line', 'mm'),
  expression: '((m_fl - m_fr) * t_f + (m_rl - m_rr) * t_r) / (2 * (m_fl + m_fr + m_rl + m_rr))',
  valid: [
    {
      of: 'frontLeft + frontRight + rearLeft + rearRight',
      kind: 'mass',
      value: ({ frontLeft, frontRight, rearLeft, rearRight }) => frontLeft + frontRight + rearLeft + rearRight,
      above: 0,
    },
  ],
  assumes: ['The car stands on level ground.'],
  source: cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18'),
  compute: ({ frontLeft, frontRight, rearLeft, rearRight, frontTrack, rearTrack }) =>
    ((frontLeft - frontRight) * frontTrack + (rearLeft - rearRight) * rearTrack) /
    (2 * (frontLeft + frontRight + rearLeft + rearRight)),
})

/**
 * Place of the common centre of gravity of two masses along one direction: aft, left or up.
 *
 * `x = (m_1 * x_1 + m_2 * x_2) / (m_1 + m_2)`
 *
 * - `firstMass` (`m_1`, kg): one mass, at least 0 kg
 * - `first` (`x_1`, m): place of its centre of gravity
 * - `secondMass` (`m_2`, kg): the other mass, at least 0 kg
 * - `second` (`x_2`, m): place of its centre of gravity, in the same direction
 * - gives `x`: place of the common centre of gravity, in mm
 * - holds where firstMass + secondMass is above 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Meriam & Kraige, Engineering Mechanics: Statics, chapter 5.
 *
 * @example
 * ```ts
 * commonCentre({ firstMass: '1 kg', first: '0 m', secondMass: '3 kg', second: '2 m' })
 * // 1500 mm
 * // by definition (exact): 1.5 m
 * ```
 */
export const commonCentre = /*@__PURE__*/ formula({
  name: 'commonCentre',
  title: 'Common centre of gravity of two masses',
  inputs: {
    firstMass: input('mass', 'm_1', 'One mass', { min: 0 }),
    first: input('length', 'x_1', 'Place of its centre of gravity'),
    secondMass: input('mass', 'm_2', 'The other mass', { min: 0 }),
    second: input('length', 'x_2', 'Place of its centre of gravity, in the same direction'),
  },
  result: output('length', 'x', 'Place of the common centre of gravity', 'mm'),
  expression: '(m_1 * x_1 + m_2 * x_2) / (m_1 + m_2)',
  valid: [
    {
      of: 'firstMass + secondMass',
      kind: 'mass',
      value: ({ firstMass, secondMass }) => firstMass + secondMass,
      above: 0,
    },
  ],
  source: cite('Meriam & Kraige, Engineering Mechanics: Statics', 'chapter 5'),
  compute: ({ firstMass, first, secondMass, second }) =>
    (firstMass * first + secondMass * second) / (firstMass + secondMass),
})

/**
 * Place of the centre of gravity of what remains when a part is taken out, along one direction: aft, left or up.
 *
 * `x_0 = (m * x - m_p * x_p) / (m - m_p)`
 *
 * - `mass` (`m`, kg): mass before, above 0 kg
 * - `centre` (`x`, m): place of its centre of gravity
 * - `partMass` (`m_p`, kg): mass of the part taken out, at least 0 kg
 * - `part` (`x_p`, m): place of the centre of gravity of the part, in the same direction
 * - gives `x_0`: place of the centre of gravity of what remains, in mm
 * - holds where mass - partMass is above 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Meriam & Kraige, Engineering Mechanics: Statics, chapter 5.
 *
 * @example
 * ```ts
 * remainingCentre({ mass: '4 kg', centre: '1.5 m', partMass: '3 kg', part: '2 m' })
 * // 0 mm
 * // by definition (exact): 0 m
 * ```
 */
export const remainingCentre = /*@__PURE__*/ formula({
  name: 'remainingCentre',
  title: 'Centre of gravity of what remains',
  inputs: {
    mass: input('mass', 'm', 'Mass before', { above: 0 }),
    centre: input('length', 'x', 'Place of its centre of gravity'),
    partMass: input('mass', 'm_p', 'Mass of the part taken out', { min: 0 }),
    part: input('length', 'x_p', 'Place of the centre of gravity of the part, in the same direction'),
  },
  result: output('length', 'x_0', 'Place of the centre of gravity of what remains', 'mm'),
  expression: '(m * x - m_p * x_p) / (m - m_p)',
  valid: [{ of: 'mass - partMass', kind: 'mass', value: ({ mass, partMass }) => mass - partMass, above: 0 }],
  source: cite('Meriam & Kraige, Engineering Mechanics: Statics', 'chapter 5'),
  compute: ({ mass, centre, partMass, part }) => (mass * centre - partMass * part) / (mass - partMass),
})

/**
 * Mass that a part off the centre line puts on the left wheel of an axle, beyond its half, and takes off the right
 * one. Its side-to-side moment goes to the axles in the shares that they have of the roll stiffness.
 *
 * `dm = m * y * lambda / t`
 *
 * - `mass` (`m`, kg): mass of the part, at least 0 kg
 * - `left` (`y`, m): distance of its centre of gravity to the left of the centre line
 * - `rollShare` (`lambda`, a plain number): the axle's share of the roll stiffness, at least 0 and at most 1
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `dm`: mass added to the left wheel and taken off the right one, in kg
 * - Assumes: the body does not twist, and each axle has the same rate on both sides
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 18.
 *
 * @example
 * ```ts
 * offsetTransfer({ mass: '1000 kg', left: '20 mm', rollShare: 0.6, track: '1.3 m' })
 * // 9.231 kg
 * // by definition (exact): 9.2308 kg
 * ```
 */
export const offsetTransfer = /*@__PURE__*/ formula({
  name: 'offsetTransfer',
  title: 'Mass moved on to the left wheel of an axle',
  inputs: {
    mass: input('mass', 'm', 'Mass of the part', { min: 0 }),
    left: input('length', 'y', 'Distance of its centre of gravity to the left of the centre line'),
    rollShare: input('ratio', 'lambda', "The axle's share of the roll stiffness", { min: 0, max: 1 }),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('mass', 'dm', 'Mass added to the left wheel and taken off the right one'),
  expression: 'm * y * lambda / t',
  assumes: ['The body does not twist, and each axle has the same rate on both sides.'],
  source: cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18'),
  compute: ({ mass, left, rollShare, track }) => (mass * left * rollShare) / track,
})

/**
 * Angle at which a car stands whose rear wheel centres were raised above the front ones.
 *
 * `theta = asin(H / L)`
 *
 * - `rise` (`H`, m): height by which the wheel centres of one axle were raised, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `theta`: angle of the car to the ground, in °
 * - holds where rise / wheelbase is below 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ISO 10392.
 *
 * @example
 * ```ts
 * raisedAngle({ rise: '0.4 m', wheelbase: '2.4 m' })
 * // 9.594 °
 * // ISO 10392 (recomputed): 9.5941 °
 * ```
 */
export const raisedAngle = /*@__PURE__*/ formula({
  name: 'raisedAngle',
  title: 'Angle of a car with one axle raised',
  inputs: {
    rise: input('length', 'H', 'Height by which the wheel centres of one axle were raised', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('angle', 'theta', 'Angle of the car to the ground'),
  expression: 'asin(H / L)',
  valid: [{ of: 'rise / wheelbase', value: ({ rise, wheelbase }) => rise / wheelbase, below: 1 }],
  source: liftedAxle,
  compute: ({ rise, wheelbase }) => Math.asin(rise / wheelbase),
})

/**
 * Height of the centre of gravity from the mass that moves on to the front wheels when the rear axle is raised.
 * Little mass moves, about 1.5 % at 10°, so that one kilogram read wrong shifts the answer by more than a centimetre:
 * raise the axle as far as is safe, in several steps, and take the mean.
 *
 * `h = r + L * (m_u - m_l) / (m * tan(theta))`
 *
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - `levelFrontMass` (`m_l`, kg): mass on both front wheels, car level, at least 0 kg
 * - `raisedFrontMass` (`m_u`, kg): mass on both front wheels, rear axle raised, at least 0 kg
 * - `angle` (`theta`, °): angle of the raised car to the ground, above 0 ° and below 90 °
 * - `axleHeight` (`r`, m): height of the wheel centres above the ground, car level, at least 0 m
 * - gives `h`: height of the centre of gravity above the ground, in mm
 * - holds where levelFrontMass / mass is at most 1
 * - holds where raisedFrontMass / mass is at most 1
 * - Assumes: the suspension is locked at its level height
 * - Assumes: the wheels turn freely, with no brake on
 * - Assumes: front and rear wheel centres stand equally high on level ground
 * - Assumes: all fluids are full or drained and nothing in the car can move
 * - Caution: a raised car can roll or fall: chock the wheels on the ground by free-running pads, use rated lifting
 *   gear and stands, and keep everyone clear and out of the car
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ISO 10392.
 *
 * @example
 * ```ts
 * centreOfGravityHeight({
 *   mass: '1000 kg',
 *   wheelbase: '2.4 m',
 *   levelFrontMass: '500 kg',
 *   raisedFrontMass: '515.4945 kg',
 *   angle: '9.5941 °',
 *   axleHeight: '0.28 m',
 * })
 * // 500 mm
 * // ISO 10392 (recomputed): 0.5 m
 * ```
 */
export const centreOfGravityHeight = /*@__PURE__*/ formula({
  name: 'centreOfGravityHeight',
  title: 'Height of the centre of gravity, rear axle raised',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
    levelFrontMass: input('mass', 'm_l', 'Mass on both front wheels, car level', { min: 0 }),
    raisedFrontMass: input('mass', 'm_u', 'Mass on both front wheels, rear axle raised', { min: 0 }),
    angle: input('angle', 'theta', 'Angle of the raised car to the ground', { above: 0, below: '90 °' }),
    axleHeight: input('length', 'r', 'Height of the wheel centres above the ground, car level', { min: 0 }),
  },
  result: output('length', 'h', 'Height of the centre of gravity above the ground', 'mm'),
  expression: 'r + L * (m_u - m_l) / (m * tan(theta))',
  valid: [
    { of: 'levelFrontMass / mass', value: ({ levelFrontMass, mass }) => levelFrontMass / mass, max: 1 },
    { of: 'raisedFrontMass / mass', value: ({ raisedFrontMass, mass }) => raisedFrontMass / mass, max: 1 },
  ],
  assumes: [
    'The suspension is locked at its level height.',
    'The wheels turn freely, with no brake on.',
    'Front and rear wheel centres stand equally high on level ground.',
    'All fluids are full or drained and nothing in the car can move.',
  ],
  cautions: [
    'A raised car can roll or fall: chock the wheels on the ground by free-running pads, use rated lifting gear and stands, and keep everyone clear and out of the car.',
  ],
  source: liftedAxle,
  compute: ({ mass, wheelbase, levelFrontMass, raisedFrontMass, angle, axleHeight }) =>
    axleHeight + (wheelbase * (raisedFrontMass - levelFrontMass)) / (mass * Math.tan(angle)),
})

/**
 * Share of the mass that stands on the front right and rear left wheels, the cross weight. Spring seats and preload
 * change it; axle and side totals never change with them.
 *
 * `X = (m_fr + m_rl) / m`
 *
 * - `frontRight` (`m_fr`, kg): mass on the front right wheel, at least 0 kg
 * - `rearLeft` (`m_rl`, kg): mass on the rear left wheel, at least 0 kg
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - gives `X`: share of the mass on the front right and rear left wheels, in %
 * - holds where (frontRight + rearLeft) / mass is at most 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * crossShare({ frontRight: '606 kg', rearLeft: '670 kg', mass: '2555 kg' })
 * // 49.94 %
 * // course exercise (recomputed): 49.94 %
 * ```
 */
export const crossShare = /*@__PURE__*/ formula({
  name: 'crossShare',
  title: 'Cross weight as a share of the mass',
  inputs: {
    frontRight: input('mass', 'm_fr', 'Mass on the front right wheel', { min: 0 }),
    rearLeft: input('mass', 'm_rl', 'Mass on the rear left wheel', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
  },
  result: output('ratio', 'X', 'Share of the mass on the front right and rear left wheels', '%'),
  expression: '(m_fr + m_rl) / m',
  valid: [
    {
      of: '(frontRight + rearLeft) / mass',
      value: ({ frontRight, rearLeft, mass }) => (frontRight + rearLeft) / mass,
      max: 1,
    },
  ],
  source: definition,
  compute: ({ frontRight, rearLeft, mass }) => (frontRight + rearLeft) / mass,
})

/**
 * Share of the mass that stands on the left wheels.
 *
 * `X_l = (m_fl + m_rl) / m`
 *
 * - `frontLeft` (`m_fl`, kg): mass on the front left wheel, at least 0 kg
 * - `rearLeft` (`m_rl`, kg): mass on the rear left wheel, at least 0 kg
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - gives `X_l`: share of the mass on the left wheels, in %
 * - holds where (frontLeft + rearLeft) / mass is at most 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * leftShare({ frontLeft: '694 lb', rearLeft: '670 lb', mass: '2555 lb' })
 * // 53.39 %
 * // course exercise (recomputed): 53.386 %
 * ```
 */
export const leftShare = /*@__PURE__*/ formula({
  name: 'leftShare',
  title: 'Left-hand share of the mass',
  inputs: {
    frontLeft: input('mass', 'm_fl', 'Mass on the front left wheel', { min: 0 }),
    rearLeft: input('mass', 'm_rl', 'Mass on the rear left wheel', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
  },
  result: output('ratio', 'X_l', 'Share of the mass on the left wheels', '%'),
  expression: '(m_fl + m_rl) / m',
  valid: [
    {
      of: '(frontLeft + rearLeft) / mass',
      value: ({ frontLeft, rearLeft, mass }) => (frontLeft + rearLeft) / mass,
      max: 1,
    },
  ],
  source: definition,
  compute: ({ frontLeft, rearLeft, mass }) => (frontLeft + rearLeft) / mass,
})

/**
 * Mass that has to move from one wheel of an axle to the other for a change of cross weight. The two axles move it
 * opposite ways, each the more the narrower its track, so that axle and side totals stay as they are.
 *
 * `dm = dX * m * t_o / (t + t_o)`
 *
 * - `shareChange` (`dX`, a plain number): change of the cross weight as a share of the mass, at least -1 and at most
 *   1
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `track` (`t`, m): track of the axle, above 0 m
 * - `otherTrack` (`t_o`, m): track of the other axle, above 0 m
 * - gives `dm`: mass added to the wheel on the cross-weight diagonal and taken off the other, in kg
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * crossTransfer({ shareChange: '1 %', mass: '1000 kg', track: '1.2 m', otherTrack: '1.3 m' })
 * // 5.2 kg
 * // by definition (exact): 5.2 kg
 * ```
 */
export const crossTransfer = /*@__PURE__*/ formula({
  name: 'crossTransfer',
  title: 'Mass moved across an axle for a change of cross weight',
  inputs: {
    shareChange: input('ratio', 'dX', 'Change of the cross weight as a share of the mass', { min: -1, max: 1 }),
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
    otherTrack: input('length', 't_o', 'Track of the other axle', { above: 0 }),
  },
  result: output('mass', 'dm', 'Mass added to the wheel on the cross-weight diagonal and taken off the other'),
  expression: 'dX * m * t_o / (t + t_o)',
  source: definition,
  compute: ({ shareChange, mass, track, otherTrack }) => (shareChange * mass * otherTrack) / (track + otherTrack),
})
