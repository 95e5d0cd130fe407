/** Energy use, drive cycles and range. */
export { batteryPower, consumption, rangeFromConsumption } from './consumption.js'
export { type Cycle, cycles, sampleCycle } from './cycle.js'
export {
  type Drive,
  type DriveLosses,
  type DrivenCycle,
  type DriveStep,
  driveCycle,
  type Missed,
} from './drive-cycle.js'
export { driveTrace } from './drive-trace.js'
export { type SeasonLoss, type SeasonRange, type Seasons, seasons } from './seasons.js'
export {
  type EnergyAtSpeed,
  energyAtSpeed,
  type RangeAtSpeed,
  type RangeTable,
  rangeAtSpeed,
  rangeTable,
  type SteadyEnergy,
  type SteadyRange,
} from './steady.js'
export { readCycle, type TraceReading } from './trace.js'
