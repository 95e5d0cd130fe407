/** Pack, cable, fuse, precharge, safety and charging. */

export {
  type Bolt,
  barAmpacityAtRise,
  barExpansion,
  barResistance,
  boltPreload,
  type FlatBar,
  flatBars,
  fuseLoss,
  type JointBolt,
  jointBolts,
  jointResistance,
  type SizedBar,
  sizeBar,
} from './bus-bar.js'
export { cableCurrent, insulationDrop, type SteadyCable, surfaceHeatFlux, touchingShare } from './cable/balance.js'
export {
  adiabaticConstant,
  adiabaticTime,
  adiabaticWithstand,
  ampacityAtAmbient,
  cableLoss,
  cableVoltageDrop,
  loopResistance,
} from './cable/cable.js'
export {
  americanGauges,
  awg,
  awgDiameter,
  type ConductorMaterial,
  conductorMaterials,
  type Gauge,
  type MetricSection,
  metricSections,
  resistancePerLength,
  resistancePerLengthAt,
  resistivityAt,
  wireArea,
} from './cable/conductor.js'
export { type SizedCable, type SizedSection, sizeCable } from './cable/size.js'
export {
  type CableAmpacity,
  type CableDuty,
  type CableTemperature,
  cableAmpacity,
  cableDuty,
  cableTemperature,
  rmsCurrent,
} from './cable/temperature.js'
export {
  capacitorEnergy,
  capacitorTimeConstant,
  dischargeTime,
  energyAboveSafeVoltage,
  prechargeResistance,
  prechargeTime,
  prechargeVoltage,
  type StoredEnergy,
  storedEnergyCheck,
} from './capacitor.js'
export {
  naumannCalendarLoss,
  naumannCycleLoss,
  schmalstiegCalendarLoss,
  schmalstiegCalendarRise,
  schmalstiegCycleLoss,
  schmalstiegCycleRise,
  wangCycleLoss,
} from './cells/ageing.js'
export {
  type CapacityTest,
  capacityTest,
  type LogGap,
  type ModuleEntry,
  type ResistanceStep,
} from './cells/capacity-test.js'
export {
  balanceTime,
  capacityBetweenRests,
  coulombicEfficiency,
  roundTripEfficiency,
  stateOfHealth,
  stepResistance,
} from './cells/health.js'
export { type LifeBand, type PackLife, type PackYear, packLife } from './cells/life.js'
export type { UnreadableRow } from './cells/log.js'
export { type RestCapacity, restCapacity } from './cells/rest.js'
export {
  acPower,
  type ChargePlan,
  type ChargePoint,
  chargePlan,
  chargeTime,
  converterInputCurrent,
} from './charging/charging.js'
export { backupTime, type HomeSupply, homeSupply, inverterInput } from './charging/house.js'
export {
  type ContactorCategory,
  coilPower,
  contactorCategories,
  inrushAtClosing,
  shortTimeWithstand,
  type UtilisationCategory,
} from './contactor/contactor.js'
export { type ContactorSelection, selectContactor } from './contactor/select.js'
export { type FuseClass, type FuseFamily, fuseFamilies, preferredRatings } from './fuse/class.js'
export type { Clearing } from './fuse/clearing.js'
export {
  faultTimeConstant,
  fuseAltitudeFactor,
  fuseAmbientFactor,
  fuseRating,
  greatestFuseRating,
  loopInductance,
  meltingTime,
  prospectiveCurrent,
} from './fuse/fuse.js'
export { type FuseFigures, type FuseSelection, selectFuse } from './fuse/select.js'
export {
  chargerTestVoltage,
  chargerTestVoltageDirect,
  clearanceAtAltitude,
  clearanceDistance,
  creepageDistance,
  type InsulationDistances,
  insulationDistances,
  type MaterialGroup,
  materialGroup,
  type OvervoltageCategory,
  type PollutionDegree,
  ratedImpulse,
  type Surface,
} from './insulation-distance.js'
export {
  type InsulationMonitor,
  insulationMonitor,
  monitorSettlingTime,
  yCapacitorEnergy,
} from './insulation-monitor.js'
export { type Shutdown, shutdown } from './isolating.js'
export { batteryRunTime, type LowVoltageFeed, type LowVoltageSupply, lowVoltageSupply } from './low-voltage.js'
export {
  acFeedDrop,
  type ChargingPoint,
  chargingPoint,
  pilotCurrent,
  pilotVoltage,
  proximityCurrent,
} from './mains.js'
export { type Arrangement, arrangePack, type PackArrangements, type RefusedArrangement } from './pack/arrange.js'
export { groupModules, type ModuleGroups } from './pack/group.js'
export {
  type CellModel,
  cellModels,
  cellVoltage,
  graphitePotential,
  ironPhosphatePotential,
  lithiumFraction,
  nmcPotential,
} from './pack/open-circuit.js'
export { type MostPower, type PackState, packAt } from './pack/operating-point.js'
export {
  cRate,
  currentAtVoltage,
  currentForPower,
  jouleHeat,
  maximumPower,
  packEnergy,
  packResistance,
  parallelCharge,
  powerAtFloor,
  seriesVoltage,
  specificEnergy,
  terminalPower,
  terminalVoltage,
  usableEnergy,
} from './pack/pack.js'
export { crossFeedCurrent } from './pack/strings.js'
export { type Precharge, precharge } from './precharge.js'
export { type ProtectedRun, protectRun } from './protect.js'
export {
  isolationFromVoltmeter,
  isolationTest,
  leakageCurrent,
  type MeasuredIsolation,
  minimumIsolation,
  voltageClass,
} from './safety.js'
