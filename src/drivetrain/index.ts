/** Tyres, gears, motor, road load, traction and acceleration. */

export type { ForEachGear } from './gearing/driveline.js'
export { type GearRow, type GearTable, gearTable } from './gearing/gear-table.js'
export {
  gearStep,
  motorSpeed,
  motorTorque,
  overallRatio,
  roadSpeed,
  tractiveForce,
  wheelTorque,
} from './gearing/gears.js'
export { criticalSpeed } from './gearing/propshaft.js'
export {
  readTyre,
  rollingCircumference,
  rollingRadius,
  sectionHeight,
  type TyreSize,
  tyreDiameter,
} from './gearing/tyre.js'
export {
  baseSpeed,
  electricalPower,
  electricalPowerAtEfficiency,
  motorEfficiency,
  motorLoss,
  shaftPower,
} from './motor/motor.js'
export { type Acceleration, type AccelerationPoint, accelerate } from './pull/accelerate.js'
export { type FixedRatio, fixedRatio, type RatioLimit } from './pull/fixed-ratio.js'
export {
  type GearboxLoad,
  type GearLoad,
  gearboxLoad,
  type PropshaftSpeed,
  propshaftSpeed,
} from './pull/gearbox-load.js'
export { type RegenLimit, type RegenPoint, regenLimit, type StopLamps } from './pull/regeneration.js'
export {
  type BestGear,
  bestGear,
  type Shift,
  type ShiftSpeeds,
  type SteadyGear,
  shiftSpeeds,
} from './pull/shift.js'
export {
  type Climb,
  type ClimbingAbility,
  climbingAbility,
  type HeldSpeed,
  type TopSpeed,
  topSpeed,
} from './pull/top-speed.js'
export { type PullPoint, type TractionCurve, type TractionCurves, tractionCurves } from './pull/traction-curves.js'
export { type CoastDown, coastDown } from './road/coast-down.js'
export {
  aerodynamicDrag,
  airDensity,
  airPressure,
  coefficientFromConstant,
  dragAreaFromQuadratic,
  gradeForce,
  inertiaForce,
  roadLoad,
  roadLoadFromCoefficients,
  roadPower,
  rollingResistance,
  rollingTemperatureFactor,
} from './road/road-load.js'
export {
  brakingLimitFront,
  brakingLimitRear,
  gradeability,
  gripAcceleration,
  gripGradeability,
  tractionLimitFront,
  tractionLimitRear,
} from './road/traction.js'
export { equivalentMass } from './road/turning.js'
export type { Vehicle } from './vehicle.js'
