/** Ledger of masses, balance, corner loads and springs. */
export {
  centreOfGravityAft,
  centreOfGravityHeight,
  crossShare,
  lateralTransfer,
  longitudinalTransfer,
  parallelAxis,
  raisedAngle,
  rearAxleMass,
  staticStabilityFactor,
} from './balance.js'
export type { Position } from './position.js'
export {
  rateInSeries,
  rideFrequency,
  rideHeightChange,
  rollRate,
  springRateForFrequency,
  wheelRate,
} from './spring.js'
