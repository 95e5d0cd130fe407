/** How the formulas of the drivetrain domain move with their inputs. */
import {
  aerodynamicDrag,
  airDensity,
  airPressure,
  equivalentMass,
  gearStep,
  gradeForce,
  inertiaForce,
  motorSpeed,
  overallRatio,
  roadLoad,
  roadLoadFromCoefficients,
  roadPower,
  roadSpeed,
  rollingCircumference,
  rollingRadius,
  rollingResistance,
  sectionHeight,
  tractiveForce,
  tyreDiameter,
  wheelTorque,
} from '../../src/drivetrain/index.js'
import { lawsOf } from '../laws.js'

const tailWind = 'either: a tail wind faster than the car pushes it'
const downhill = 'either: downhill the force pushes the car'
const braking = 'either: braking turns the force round'

export const drivetrainLaws = [
  lawsOf(sectionHeight, { width: 'rises', aspect: 'rises' }),
  lawsOf(tyreDiameter, { rim: 'rises', width: 'rises', aspect: 'rises' }),
  lawsOf(rollingCircumference, { diameter: 'rises', factor: 'rises' }),
  lawsOf(rollingRadius, { circumference: 'rises' }),
  lawsOf(overallRatio, { gearRatio: 'rises', finalDrive: 'rises' }),
  lawsOf(motorSpeed, { speed: 'rises', ratio: 'rises', rollingRadius: 'falls' }),
  lawsOf(roadSpeed, { motorSpeed: 'rises', ratio: 'falls', rollingRadius: 'rises' }),
  lawsOf(gearStep, { ratio: 'rises', nextRatio: 'falls' }),
  lawsOf(wheelTorque, { motorTorque: 'rises', ratio: 'rises', efficiency: 'rises' }),
  lawsOf(tractiveForce, { wheelTorque: 'rises', radius: braking }),
  lawsOf(equivalentMass, { inertia: 'rises', ratio: 'rises', radius: 'falls' }),
  lawsOf(airDensity, { pressure: 'rises', temperature: 'falls' }),
  lawsOf(airPressure, { altitude: 'falls' }),
  lawsOf(aerodynamicDrag, { airDensity: tailWind, dragArea: tailWind, speed: 'rises', headwind: 'rises' }),
  lawsOf(rollingResistance, {
    mass: 'rises',
    coefficient: 'rises',
    grade: 'either: a slope takes load off the tyres whether it goes up or down',
  }),
  lawsOf(gradeForce, { mass: downhill, grade: 'rises' }),
  lawsOf(inertiaForce, { mass: braking, acceleration: 'rises', rotatingFactor: braking }),
  lawsOf(roadLoad, {
    aerodynamicDrag: 'rises',
    rollingResistance: 'rises',
    gradeForce: 'rises',
    inertiaForce: 'rises',
  }),
  lawsOf(roadLoadFromCoefficients, {
    constant: 'rises',
    linear: 'rises',
    quadratic: 'rises',
    speed: 'either: a fitted coefficient may be negative',
  }),
  lawsOf(roadPower, { force: 'rises', speed: downhill }),
]
