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
  staticStabilityFactor,
} from './balance.js'
export { exchangeMasses, type MassExchange } from './exchange.js'
export { type Tally, tally } from './ledger.js'
export type { Place, Position } from './position.js'
export {
  rateInSeries,
  rideFrequency,
  rideHeightChange,
  rollRate,
  springRateForFrequency,
  wheelRate,
} from './spring.js'
export { type Corners, type Stance, type Weighed, weigh } from './weigh.js'
