/**
 * Axle loads, centre of gravity and load transfer, from scales and a tape.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1, Milliken & Milliken, Race Car Vehicle
 * Dynamics (1995), chapter 18, and ISO 10392 (centre of gravity by lifting an axle).
 */
import { cite, definition, formula, input, output } from '../formula/index.js'

const axleLoads = /*@__PURE__*/ cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 1')
const liftedAxle = /*@__PURE__*/ cite('ISO 10392')

/** How far the centre of gravity lies behind the front axle, from the mass that the rear wheels carry on level ground. */
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

/** Angle at which a car stands whose rear wheel centres were raised above the front ones. */
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
 * Height of the centre of gravity from the mass that moves on to the front wheels when the rear axle is raised. Little
 * mass moves, about 1.5 % at 10°, so that one kilogram read wrong shifts the answer by more than a centimetre:
 * raise the axle as far as is safe, in several steps, and take the mean.
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

/** Load that moves from the front wheels to the rear ones under acceleration; negative, to the front, under braking. */
export const longitudinalTransfer = /*@__PURE__*/ formula({
  name: 'longitudinalTransfer',
  title: 'Load transfer from front to rear',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    acceleration: input('acceleration', 'a', 'Forward acceleration, negative under braking'),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('force', 'dF', 'Load moved from the front axle to the rear axle'),
  expression: 'm * a * h / L',
  source: axleLoads,
  compute: ({ mass, acceleration, height, wheelbase }) => (mass * acceleration * height) / wheelbase,
})

/**
 * Load that moves from the inner wheels to the outer ones in a bend, of both axles together. For the unsprung mass of
 * one axle, its wheel-centre height gives that axle's own part.
 */
export const lateralTransfer = /*@__PURE__*/ formula({
  name: 'lateralTransfer',
  title: 'Load transfer from the inner to the outer wheels',
  inputs: {
    mass: input('mass', 'm', 'Mass that is turned', { min: 0 }),
    acceleration: input('acceleration', 'a', 'Lateral acceleration'),
    height: input('length', 'h', 'Height of its centre of gravity', { min: 0 }),
    track: input('length', 't', 'Track', { above: 0 }),
  },
  result: output('force', 'dF', 'Load moved from the inner to the outer wheels'),
  expression: 'm * a * h / t',
  assumes: ['Body roll moves the centre of gravity sideways too little to count.'],
  source: cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18'),
  compute: ({ mass, acceleration, height, track }) => (mass * acceleration * height) / track,
})

/** Lateral acceleration, as a multiple of gravity, at which a rigid car would lift its inner wheels. */
export const staticStabilityFactor = /*@__PURE__*/ formula({
  name: 'staticStabilityFactor',
  title: 'Static stability factor',
  inputs: {
    track: input('length', 't', 'Mean track', { above: 0 }),
    height: input('length', 'h', 'Height of the centre of gravity', { above: 0 }),
  },
  result: output('ratio', 'SSF', 'Static stability factor'),
  expression: 't / (2 * h)',
  assumes: ['Springs and tyres do not give: a real car rolls over at less.'],
  source: cite('NHTSA, New Car Assessment Program, rollover resistance'),
  compute: ({ track, height }) => track / (2 * height),
})

/** Moment of inertia about an axis that does not pass through the centre of gravity, as when parts are summed to a car. */
export const parallelAxis = /*@__PURE__*/ formula({
  name: 'parallelAxis',
  title: 'Moment of inertia about a parallel axis',
  inputs: {
    inertia: input('inertia', 'I', 'Moment of inertia about the axis through the centre of gravity', { min: 0 }),
    mass: input('mass', 'm', 'Mass', { min: 0 }),
    distance: input('length', 'd', 'Distance between the two axes', { min: 0 }),
  },
  result: output('inertia', 'I_d', 'Moment of inertia about the parallel axis'),
  expression: 'I + m * d ^ 2',
  source: cite('Meriam & Kraige, Engineering Mechanics: Dynamics', 'appendix B'),
  compute: ({ inertia, mass, distance }) => inertia + mass * distance ** 2,
})
