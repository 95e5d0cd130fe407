/**
 * The one vehicle, as every procedure of the drive and of the range takes it: car, gearbox, motor, controller, pack,
 * auxiliaries and air. A procedure asks for the parts that it needs and leaves the others be.
 *
 * What is usual is common practice where no other ground is named.
 */
import { packFields } from '../electrical/pack/module.js'
import { centreOfGravityField } from '../mass/position.js'
import { trackField, wheelbaseField } from '../mass/weigh.js'
import {
  byName,
  choice,
  defaulted,
  either,
  given,
  group,
  list,
  optional,
  pairs,
  type Read,
  spare,
  text,
  type Written,
} from '../procedure/index.js'
import { airDensity } from './road/road-load.js'

/** What describes a car. @internal */
export const carFields = /*@__PURE__*/ (() => ({
  mass: given('mass', 'Mass of the car with all that it carries', { above: 0, usual: ['450 kg', '2400 kg'] }),
  wheelbase: optional(wheelbaseField),
  track: optional(trackField),
  centreOfGravity: optional(centreOfGravityField),
  drivenAxle: optional(choice('Which wheels are driven', ['front', 'rear'])),
  tyre: optional(text('The mark of the tyre, such as 155/80 R13 or 5.60-13')),
  rollingRadius: optional(
    given('length', 'Rolling radius of the driven wheels', { above: 0, usual: ['0.24 m', '0.33 m'] }),
  ),
  rollingResistance: optional(
    given('ratio', 'Rolling resistance coefficient', {
      min: 0,
      usual: [0.008, 0.016, 'EU 2020/740 label classes, from memory'],
      uncertain: ['10 %', 'tyres that were not measured, common practice, no source'],
    }),
  ),
  dragArea: optional(
    given('area', 'Drag coefficient times frontal area', {
      min: 0,
      usual: ['0.5 m²', '0.95 m²'],
      uncertain: ['5 %', 'without a coast-down, common practice, no source'],
    }),
  ),
  roadLoad: optional(
    group('The coefficients of a coast-down', {
      constant: given('force', 'Constant coefficient', { min: 0 }),
      linear: given('forcePerSpeed', 'Linear coefficient'),
      quadratic: given('forcePerSpeedSquared', 'Quadratic coefficient', { min: 0 }),
      airDensity: given('density', 'Density of the air to which they belong', {
        above: 0,
        usual: ['0.9 kg/m³', '1.4 kg/m³', 'meteorology'],
        default: airDensity({ temperature: '20 °C', pressure: '101.325 kPa' }),
        because: 'that of a drive of which nothing is told, dry air of 20 °C at 101.325 kPa: then nothing is corrected',
      }),
    }),
  ),
  rotatingFactor: optional(
    given('ratio', 'Mass with that of the turning parts over mass', { min: 1, usual: [1.02, 1.4] }),
  ),
  wheelInertia: optional(given('inertia', 'Moment of inertia of all wheels together', { min: 0 })),
  friction: optional(given('ratio', 'Friction coefficient of tyre and road', { above: 0, max: 2, usual: [0.05, 1.1] })),
}))()
/** A car. @internal */
export const carField = /*@__PURE__*/ (() => group('The car', carFields))()
/** What is read of a car. @internal */
export type Car = Read<typeof carField>

/**
 * What describes a gearbox with its final drive. Without gears the final drive is all there is: one fixed ratio.
 * @internal
 */
export const gearboxFields = /*@__PURE__*/ (() => {
  const ratio = given('ratio', 'Ratio of the gear', { above: 0, usual: [0.5, 25] })
  const efficiency = given('ratio', 'Efficiency between motor shaft and wheels', {
    above: 0,
    max: 1,
    usual: [0.88, 0.97],
  })
  return {
    gears: optional(
      either(
        'The ratios of the gears, from the lowest speed up',
        byName('The ratios of the gears, such as { first: 3.6, second: 2.1 }', ratio),
        list('The ratios of the gears, such as [3.6, 2.1]', ratio, { least: 1 }),
      ),
    ),
    finalDrive: optional(given('ratio', 'Ratio of the final drive', { above: 0, usual: [2.5, 14] })),
    efficiency: either(
      'The efficiency between motor shaft and wheels',
      efficiency,
      byName('An efficiency for each gear, such as { first: 0.92, second: 0.94 }', efficiency),
      list('An efficiency for each gear, such as [0.92, 0.94]', efficiency, { least: 1 }),
    ),
    ratedInputTorque: optional(
      given('torque', 'Input torque for which the gearbox was made', { above: 0, usual: ['20 N·m', '1000 N·m'] }),
    ),
  }
})()
/** A gearbox with its final drive. @internal */
export const gearboxField = /*@__PURE__*/ (() => group('The gearbox with its final drive', gearboxFields))()
/** What is read of a gearbox. @internal */
export type Gearbox = Read<typeof gearboxField>

/** What describes a motor with its controller. What each procedure needs of it, it asks for. @internal */
export const motorFields = /*@__PURE__*/ (() => ({
  peakTorque: optional(given('torque', 'Torque for a short time', { above: 0, usual: ['40 N·m', '350 N·m'] })),
  peakPower: optional(given('power', 'Power at the shaft for a short time', { above: 0, usual: ['5 kW', '400 kW'] })),
  maximumSpeed: optional(given('angularSpeed', 'Highest speed', { above: 0, usual: ['3000 rpm', '16000 rpm'] })),
  continuousTorque: optional(given('torque', 'Torque all day', { above: 0 })),
  continuousPower: optional(given('power', 'Power at the shaft all day', { above: 0, usual: ['5 kW', '80 kW'] })),
  peakTime: optional(given('time', 'For how long it gives its peak, from cold', { above: 0, usual: ['5 s', '1 h'] })),
  timeConstant: optional(
    given('time', 'Time constant with which its windings warm', { above: 0, usual: ['30 s', '90 min'] }),
  ),
  curve: optional(
    pairs(
      'Points [speed, torque] from standstill up to the highest speed',
      given('angularSpeed', 'Speed', { min: 0 }),
      given('torque', 'Torque for a short time', { min: 0 }),
      { least: 2 },
    ),
  ),
  ratedVoltage: optional(given('voltage', 'Voltage at the controller for which the figures hold', { above: 0 })),
  loss: optional(
    group('What it loses, with its controller', {
      lossPerTorqueSquared: given('lossPerTorqueSquared', 'Copper loss coefficient', { min: 0 }),
      lossPerSpeed: optional(given('lossPerSpeed', 'Iron loss coefficient', { min: 0 })),
      lossPerSpeedCubed: optional(given('lossPerSpeedCubed', 'Windage coefficient', { min: 0 })),
      constant: optional(given('power', 'Constant loss', { min: 0 })),
    }),
  ),
  efficiency: optional(
    given('ratio', 'Efficiency of motor and controller', {
      above: 0,
      max: 1,
      usual: [0.85, 0.96],
      uncertain: ['3 %', 'a drive that was not measured, common practice, no source'],
    }),
  ),
  inertia: optional(given('inertia', 'Moment of inertia of the rotor', { min: 0 })),
}))()
/** A motor with its controller. @internal */
export const motorField = /*@__PURE__*/ (() => group('The motor with its controller', motorFields))()
/** What is read of a motor. @internal */
export type Motor = Read<typeof motorField>

/** For how long a controller draws its greatest current. @internal */
export const fullPull = /*@__PURE__*/ (() =>
  given('time', 'For how long it draws that current at most', { above: 0, usual: ['1 s', '1 h'] }))()

/** What describes a controller. @internal */
export const controllerFields = /*@__PURE__*/ (() => ({
  minimumVoltage: optional(
    given('voltage', 'Lowest voltage at which it works', { min: 0, usual: ['0 V', '600 V'], finest: '5 V' }),
  ),
  maximumVoltage: optional(given('voltage', 'Highest voltage that it bears', { above: 0 })),
  batteryCurrent: optional(given('current', 'Most current that it draws from the pack', { above: 0 })),
  continuousCurrent: optional(given('current', 'Current that it draws from the pack all day', { above: 0 })),
  batteryCurrentTime: spare(fullPull),
  chargeCurrent: optional(given('current', 'Most current that it sends back to the pack', { min: 0 })),
  regeneration: optional(
    given('ratio', 'Share of the braking energy at the wheels that goes to the motor', {
      min: 0,
      max: 1,
      finest: '1 %',
    }),
  ),
  capacitance: optional(given('capacitance', 'Capacitance at its input', { above: 0 })),
}))()
/** A controller. @internal */
export const controllerField = /*@__PURE__*/ (() => group('The controller of the motor', controllerFields))()
/** What is read of a controller. @internal */
export type Controller = Read<typeof controllerField>

/** A pack of equal modules. @internal */
export const packField = /*@__PURE__*/ (() => group('A pack of equal modules', packFields))()

/** What is usual of speeds on the road. @internal */
export const onTheRoad = { usual: ['0 km/h', '140 km/h'] } as const

/** What lamps, pumps and the 12 V system draw. @internal */
export const auxiliariesField = /*@__PURE__*/ (() =>
  given('power', 'Power of lamps, pumps and the 12 V system', {
    min: 0,
    usual: ['100 W', '500 W'],
    uncertain: ['20 %', 'what is switched on differs, common practice, no source'],
  }))()

/** What describes the air. @internal */
export const airFields = /*@__PURE__*/ (() => ({
  temperature: given('temperature', 'Temperature of the air', {
    above: 0,
    usual: ['-20 °C', '40 °C', 'meteorology'],
    default: '20 °C',
    because: 'at which cars are compared: UN Regulation No. 154, from memory',
  }),
  altitude: given('length', 'Altitude of the road above sea level', {
    min: '-2 km',
    max: '11 km',
    usual: ['0 m', '2500 m', 'meteorology'],
    default: '0 m',
    because: 'sea level',
  }),
  headwind: given('speed', 'Head wind, negative for a tail wind', { default: '0 km/h', because: 'still air' }),
}))()
/** The air: still, mild and at sea level where it is left out. @internal */
export const airField = /*@__PURE__*/ (() => defaulted(group('The air', airFields)))()

/** Every part, spare: what a procedure needs, it names after these. @internal */
export const spareParts = /*@__PURE__*/ (() => ({
  car: spare(carField),
  gearbox: spare(gearboxField),
  motor: spare(motorField),
  controller: spare(controllerField),
  pack: spare(packField),
  auxiliaries: spare(auxiliariesField),
  air: spare(airField),
}))()

/** A vehicle as it is written. Every part may be left out that the procedures do not ask for. */
export type Vehicle = Written<typeof spareParts>
