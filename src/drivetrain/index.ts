/** Tyres, gears, motor, road load, traction and acceleration. */
export { type Acceleration, type AccelerationPoint, accelerate } from './accelerate.js'
export { type CoastDown, coastDown } from './coast-down.js'
export type { ForEachGear } from './driveline.js'
export { type FixedRatio, fixedRatio, type RatioLimit } from './fixed-ratio.js'
export { type GearRow, type GearTable, gearTable } from './gear-table.js'
export {
  type GearboxLoad,
  type GearLoad,
  gearboxLoad,
  type PropshaftSpeed,
  propshaftSpeed,
} from './gearbox-load.js'
export {
  equivalentMass,
  gearStep,
  motorSpeed,
  motorTorque,
  overallRatio,
  roadSpeed,
  tractiveForce,
  wheelTorque,
} from './gears.js'
export {
  baseSpeed,
  electricalPower,
  electricalPowerAtEfficiency,
  motorEfficiency,
  motorLoss,
  shaftPower,
} from './motor.js'
export { criticalSpeed } from './propshaft.js'
export { type RegenLimit, type RegenPoint, regenLimit, type StopLamps } from './regeneration.js'
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
} from './road-load.js'
export {
  type BestGear,
  bestGear,
  type Shift,
  type ShiftSpeeds,
  type SteadyGear,
  shiftSpeeds,
} from './shift.js'
export {
  type Climb,
  type ClimbingAbility,
  climbingAbility,
  type HeldSpeed,
  type TopSpeed,
  topSpeed,
} from './top-speed.js'
export {
  brakingLimitFront,
  brakingLimitRear,
  gradeability,
  gripAcceleration,
  gripGradeability,
  tractionLimitFront,
  tractionLimitRear,
} from './traction.js'
export { type PullPoint, type TractionCurve, type TractionCurves, tractionCurves } from './traction-curves.js'
export {
  readTyre,
  rollingCircumference,
  rollingRadius,
  sectionHeight,
  type TyreSize,
  tyreDiameter,
} from './tyre.js'
