/** Ledger of masses, balance, corner loads and springs. */
export {
  centreOfGravityAft,
  centreOfGravityHeight,
  centreOfGravityLeft,
  commonCentre,
  crossShare,
  crossTransfer,
  frontShare,
  leftShare,
  offsetTransfer,
  raisedAngle,
  rearAxleMass,
  remainingCentre,
  sideShare,
} from './balance.js'
export {
  axleBrakeForce,
  brakingEfficiency,
  frontAdhesionUsed,
  frontLockDeceleration,
  idealFrontBrakeShare,
  rearAdhesionUsed,
  rearLockDeceleration,
} from './brakes/adhesion.js'
export {
  type BrakeBalance,
  type BrakeCourse,
  type BrakeLock,
  type BrakePoint,
  brakeBalance,
} from './brakes/balance.js'
export { type CornerLoads, type CrossWeightTrim, cornerLoads, crossWeightTrim } from './corner.js'
export { exchangeMasses, type MassExchange } from './exchange.js'
export { boxYawInertia, parallelAxis } from './inertia.js'
export { type Tally, tally } from './ledger.js'
export { type PlacedMasses, type Placement, placeMasses } from './placing/place.js'
export { type Plan, type PlanPlace, type PlanWheel, planOf } from './plan.js'
export type { Place, Position } from './position.js'
export { criticalDamping, dampingRatio } from './ride/damping.js'
export { type AxleDamping, type AxleRide, type RestoredRide, restoreRide } from './ride/ride.js'
export {
  rateInSeries,
  rideFrequency,
  rideHeightChange,
  rollRate,
  springRateForFrequency,
  springSeatChange,
  staticDeflection,
  wheelRate,
} from './ride/spring.js'
export { axleFreeRoll, axleRise, axleRollRate, bodyHeave, bodyPitch, bodyRoll, rollTransfer } from './roll.js'
export { lateralTransfer, longitudinalTransfer, staticStabilityFactor } from './transfer.js'
export { type Corners, type Stance, type Weighed, type Wheel, weigh } from './weigh.js'
