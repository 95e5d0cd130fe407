/** Heat and temperatures: warming and cooling, coolant, air, heat exchangers, cells. */
export { type AirProperties, airProperties, dryAir } from './air.js'
export {
  type CabinHeat,
  cabinHeat,
  carnotCoefficient,
  demisterFlux,
  heaterInput,
  surfaceConductance,
  transmissionHeat,
  ventilationHeat,
  wallCoefficient,
} from './cabin.js'
export {
  convectionCoefficient,
  flatPlate,
  forcedConvectionCylinder,
  naturalConvectionCylinder,
  naturalConvectionWall,
  radiationCoefficient,
  rayleighNumber,
} from './convection.js'
export { type Coolant, type CoolantProperties, coolantFlow, coolantProperties, coolants, wasteHeat } from './coolant.js'
export { type CoolingLoop, coolingLoop, type LoopSegment } from './cooling-loop.js'
export {
  capacityRate,
  capacityRatio,
  conductanceAtFlow,
  conductanceInSeries,
  effectivenessCounterFlow,
  effectivenessCrossFlow,
  effectivenessCrossFlowApproximation,
  effectivenessParallelFlow,
  exchangerHeat,
  exchangerHotInlet,
  faceFlow,
  streamOutlet,
  transferUnits,
} from './exchanger.js'
export {
  biotNumber,
  heatCapacity,
  heaterEnergy,
  heatToWarm,
  lumpedTemperature,
  lumpedTime,
  steadyTemperature,
  thermalTimeConstant,
  warmUpTime,
} from './lumped.js'
export { cellCoreRise, cellHeat, resistanceAtTemperature } from './pack-heat.js'
export { type PackEnergies, type PackTemperature, packTemperature, type TemperatureCourse } from './pack-temperature.js'
export { flowVelocity, frictionFactor, pressureDrop, pressureDropAtFlow, pumpPower, reynoldsNumber } from './pipe.js'
export type { PropertyTable } from './property-table.js'
export { intermittentPower, shortTimePower } from './short-time.js'
export { criticalRadius, sleeveConductance } from './sleeve.js'
export { energyShare, type WinterStart, winterStart } from './winter.js'
