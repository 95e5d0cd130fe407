/** Heat and temperatures: warming and cooling, coolant, air, heat exchangers, cells. */

export {
  convectionCoefficient,
  flatPlate,
  forcedConvectionCylinder,
  naturalConvectionCylinder,
  naturalConvectionPlateDown,
  naturalConvectionPlateUp,
  naturalConvectionWall,
  radiationCoefficient,
  rayleighNumber,
} from './air/convection.js'
export { type AirProperties, airProperties, dryAir } from './air/dry-air.js'
export { dewPoint, humidityRatio, relativeHumidity, saturationPressure } from './air/moist-air.js'
export { criticalRadius, sleeveConductance } from './air/sleeve.js'
export { type Coolant, waterBoilingPoint } from './boiling.js'
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
} from './cabin/cabin.js'
export {
  entryLength,
  frictionLaminarFlat,
  gapPad,
  graetzNumber,
  hydraulicDiameter,
  nusseltBetween,
  nusseltGnielinski,
  nusseltLaminar,
  nusseltLaminarFlat,
  petukhovFriction,
  prandtlNumber,
  thermalContact,
  thermalEntryLength,
} from './loop/channel.js'
export { type ColdPlate, coldPlate } from './loop/cold-plate.js'
export {
  type CoolantProperties,
  type CoolantState,
  coolantFlow,
  coolantProperties,
  coolants,
  wasteHeat,
} from './loop/coolant.js'
export { type CoolingLoop, coolingLoop, type LoopSegment } from './loop/cooling-loop.js'
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
} from './loop/exchanger.js'
export {
  flowVelocity,
  frictionFactor,
  pressureDrop,
  pressureDropAtFlow,
  pumpPower,
  reynoldsNumber,
} from './loop/pipe.js'
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
export { cellCoreRise, cellHeat, resistanceAtTemperature } from './pack/heat.js'
export { type PackEnergies, type PackTemperature, packTemperature, type TemperatureCourse } from './pack/temperature.js'
export { energyShare, type WinterStart, winterStart } from './pack/winter.js'
export type { PropertyTable } from './property-table.js'
export { intermittentPower, shortTimePower } from './short-time.js'
