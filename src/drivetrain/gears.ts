/**
 * Gear ratios between motor and road: speeds, torques, forces, and what the turning parts add to the mass.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import { cite, definition, formula, input, output } from '../formula/index.js'

const acceleration = /*@__PURE__*/ cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2')

/** Turns of the motor for one turn of the driven wheels. */
export const overallRatio = /*@__PURE__*/ formula({
  name: 'overallRatio',
  title: 'Overall ratio of gear and final drive',
  inputs: {
    gearRatio: input('ratio', 'i_g', 'Ratio of the gear', { above: 0 }),
    finalDrive: input('ratio', 'i_f', 'Ratio of the final drive', { above: 0 }),
  },
  result: output('ratio', 'i', 'Turns of the motor per turn of the wheels'),
  expression: 'i_g * i_f',
  source: definition,
  compute: ({ gearRatio, finalDrive }) => gearRatio * finalDrive,
})

/** Speed of the motor at a road speed, to be kept below the motor's maximum. */
export const motorSpeed = /*@__PURE__*/ formula({
  name: 'motorSpeed',
  title: 'Motor speed at a road speed',
  inputs: {
    speed: input('speed', 'v', 'Road speed', { min: 0 }),
    ratio: input('ratio', 'i', 'Turns of the motor per turn of the wheels', { above: 0 }),
    rollingRadius: input('length', 'r', 'Rolling radius of the driven wheels', { above: 0 }),
  },
  result: output('angularSpeed', 'w', 'Motor speed'),
  expression: 'v * i / r',
  assumes: ['The driven wheels do not slip.'],
  source: acceleration,
  compute: ({ speed, ratio, rollingRadius }) => (speed * ratio) / rollingRadius,
})

/** Road speed at a motor speed. */
export const roadSpeed = /*@__PURE__*/ formula({
  name: 'roadSpeed',
  title: 'Road speed at a motor speed',
  inputs: {
    motorSpeed: input('angularSpeed', 'w', 'Motor speed', { min: 0 }),
    ratio: input('ratio', 'i', 'Turns of the motor per turn of the wheels', { above: 0 }),
    rollingRadius: input('length', 'r', 'Rolling radius of the driven wheels', { above: 0 }),
  },
  result: output('speed', 'v', 'Road speed'),
  expression: 'w * r / i',
  assumes: ['The driven wheels do not slip.'],
  source: acceleration,
  compute: ({ motorSpeed, ratio, rollingRadius }) => (motorSpeed * rollingRadius) / ratio,
})

/**
 * Step from one gear to the next: the motor turns this many times slower after the shift, at the same road speed. Final
 * drive and tyres cancel.
 */
export const gearStep = /*@__PURE__*/ formula({
  name: 'gearStep',
  title: 'Step between two gears',
  inputs: {
    ratio: input('ratio', 'i_1', 'Ratio of the gear', { above: 0 }),
    nextRatio: input('ratio', 'i_2', 'Ratio of the next gear', { above: 0 }),
  },
  result: output('ratio', 'phi', 'Ratio of the gear over that of the next'),
  expression: 'i_1 / i_2',
  source: definition,
  compute: ({ ratio, nextRatio }) => ratio / nextRatio,
})

/**
 * Torque on the driven wheels, of both together, while the motor drives. Under regeneration power flows the other way
 * and the losses help to brake, so that this formula does not hold.
 */
export const wheelTorque = /*@__PURE__*/ formula({
  name: 'wheelTorque',
  title: 'Torque at the driven wheels',
  inputs: {
    motorTorque: input('torque', 'T_m', 'Motor torque', { min: 0 }),
    ratio: input('ratio', 'i', 'Turns of the motor per turn of the wheels', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency from motor shaft to wheels', { above: 0, max: 1 }),
  },
  result: output('torque', 'T_w', 'Torque on the driven wheels together'),
  expression: 'T_m * i * eta',
  source: acceleration,
  compute: ({ motorTorque, ratio, efficiency }) => motorTorque * ratio * efficiency,
})

/** Force with which the driven wheels push the car, at steady speed and if they grip. */
export const tractiveForce = /*@__PURE__*/ formula({
  name: 'tractiveForce',
  title: 'Tractive force at the driven wheels',
  inputs: {
    wheelTorque: input('torque', 'T_w', 'Torque on the driven wheels together'),
    radius: input('length', 'r', 'Rolling radius of the driven wheels', { above: 0 }),
  },
  result: output('force', 'F', 'Force of the driven wheels on the road'),
  expression: 'T_w / r',
  assumes: ['The turning parts are not being speeded up.'],
  source: acceleration,
  compute: ({ wheelTorque, radius }) => wheelTorque / radius,
})

/**
 * Mass that a turning part seems to add to a car that speeds up. It counts for acceleration only, never for grade or
 * rolling resistance; wheels themselves have the ratio 1.
 */
export const equivalentMass = /*@__PURE__*/ formula({
  name: 'equivalentMass',
  title: 'Equivalent mass of a turning part',
  inputs: {
    inertia: input('inertia', 'I', 'Moment of inertia of the part about its own axis', { min: 0 }),
    ratio: input('ratio', 'i', 'Turns of the part per turn of the wheels', { above: 0 }),
    radius: input('length', 'r', 'Rolling radius of the wheels', { above: 0 }),
  },
  result: output('mass', 'm_e', 'Equivalent mass'),
  expression: 'I * i ^ 2 / r ^ 2',
  source: acceleration,
  compute: ({ inertia, ratio, radius }) => (inertia * ratio ** 2) / radius ** 2,
})
