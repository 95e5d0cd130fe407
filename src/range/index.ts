/** Energy use, drive cycles and range. */
export { batteryPower, consumption, rangeFromConsumption } from './consumption.js'
