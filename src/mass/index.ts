/** Ledger of masses, balance, corner loads and springs. */
export {
  boxYawInertia,
  centreOfGravityAft,
  centreOfGravityHeight,
  centreOfGravityLeft,
  commonCentre,
  crossShare,
  crossTransfer,
  frontShare,
  lateralTransfer,
  leftShare,
  longitudinalTransfer,
  offsetTransfer,
  parallelAxis,
  raisedAngle,
  rearAxleMass,
  remainingCentre,
  sideShare,
  staticStabilityFactor,
} from './balance.js'
export {
  axleFreeRoll,
  axleRise,
  axleRollRate,
  bodyHeave,
  bodyPitch,
  bodyRoll,
  type CornerLoads,
  type CrossWeightTrim,
  cornerLoads,
  crossWeightTrim,
  rollTransfer,
} from './corner.js'
export { exchangeMasses, type MassExchange } from './exchange.js'
export { type Tally, tally } from './ledger.js'
export { type PlacedMasses, type Placement, placeMasses } from './placing/place.js'
export { type Plan, type PlanPlace, type PlanWheel, planOf } from './plan.js'
export type { Place, Position } from './position.js'
export { type AxleRide, type RestoredRide, restoreRide } from './ride/ride.js'
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
export { type Corners, type Stance, type Weighed, type Wheel, weigh } from './weigh.js'
