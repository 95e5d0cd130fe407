/** Tyres, gears, motor, road load, traction and acceleration. */
export {
  equivalentMass,
  gearStep,
  motorSpeed,
  overallRatio,
  roadSpeed,
  tractiveForce,
  wheelTorque,
} from './gears.js'
export { baseSpeed, motorEfficiency, motorLoss, shaftPower } from './motor.js'
export { criticalSpeed } from './propshaft.js'
export {
  aerodynamicDrag,
  airDensity,
  airPressure,
  gradeForce,
  inertiaForce,
  roadLoad,
  roadLoadFromCoefficients,
  roadPower,
  rollingResistance,
} from './road-load.js'
export { gradeability, gripAcceleration, tractionLimitFront, tractionLimitRear } from './traction.js'
export {
  readTyre,
  rollingCircumference,
  rollingRadius,
  sectionHeight,
  type TyreSize,
  tyreDiameter,
} from './tyre.js'
