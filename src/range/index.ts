/** Energy use, drive cycles and range. */
export { batteryPower, consumption, rangeFromConsumption } from './consumption.js'
export { type DrivenCycle, driveCycle } from './drive/drive-cycle.js'
export { driveTrace } from './drive/drive-trace.js'
export type { Drive, DriveLosses, DriveStep, Missed } from './drive/figures.js'
export { type Cycle, cycles, sampleCycle } from './route/cycle.js'
export { type ReadCycle, readCycle } from './route/trace.js'
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
