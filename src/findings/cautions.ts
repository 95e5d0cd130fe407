/** The cautions of the trade, together. */
import * as each from '../procedure/cautions.js'

export type { Caution } from '../procedure/cautions.js'

/** The cautions of the trade. */
export const cautions = {
  highVoltage: each.highVoltage,
  shortCircuit: each.shortCircuit,
  lithiumCells: each.lithiumCells,
  joiningModules: each.joiningModules,
  storedCharge: each.storedCharge,
  feedingHouse: each.feedingHouse,
  hotCoolant: each.hotCoolant,
  liftedCar: each.liftedCar,
  brakingByMotor: each.brakingByMotor,
  turningShaft: each.turningShaft,
  brakesAndSteering: each.brakesAndSteering,
  approval: each.approval,
}
