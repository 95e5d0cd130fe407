/** Heat and temperatures: warming and cooling, coolant, air, heat exchangers, cells. */
export { biotNumber, heatToWarm, lumpedTemperature, lumpedTime, thermalTimeConstant, warmUpTime } from './lumped.js'
