/** The vehicle as the procedures of the range take it: parts of the one vehicle under names of their own. */
import { airOf as densityOf } from '../../drivetrain/road/air.js'
import { airFields, carField, carFields, controllerField, gearboxFields, motorField } from '../../drivetrain/vehicle.js'
import { type Assumption, assumed, group, type Read, undecided } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { schemaFrom } from '../../structure/index.js'

export const carGiven = /*@__PURE__*/ (() => schemaFrom(carField))()
export const motorGiven = /*@__PURE__*/ (() => schemaFrom(motorField))()
export const controllerGiven = /*@__PURE__*/ (() => schemaFrom(controllerField))()

const airRead = /*@__PURE__*/ (() => group('The air', undecided(airFields)))()
export const airGiven = /*@__PURE__*/ (() => schemaFrom(airRead))()

const drivelineRead = /*@__PURE__*/ (() => {
  const { tyre, rollingRadius } = carFields
  const { gears, finalDrive, efficiency } = gearboxFields
  return group('The driveline', { tyre, rollingRadius, gears, finalDrive, efficiency })
})()
export const drivelineGiven = /*@__PURE__*/ (() => schemaFrom(drivelineRead))()
/** What is read of a driveline. */
export type Driveline = Read<typeof drivelineRead>

/** Density of the air and the wind against the car, and what was taken for granted of them. */
export interface Air {
  readonly density: Quantity<'density'>
  readonly headwind: Quantity<'speed'>
  readonly assumptions: readonly Assumption[]
}

const MILD = '20 °C'

/** The air that is given, or still air of 20 °C at sea level for what is not. */
export function airOf(air: Read<typeof airRead> = {}): Air {
  return {
    ...densityOf({
      temperature: air.temperature ?? quantity('temperature', MILD),
      altitude: air.altitude ?? quantity('length', '0 m'),
      headwind: air.headwind ?? quantity('speed', '0 km/h'),
    }),
    assumptions: [
      ...(air.temperature === undefined
        ? [assumed('air.temperature.default', `The air is at ${MILD} (air.temperature by default).`)]
        : []),
      ...(air.altitude === undefined
        ? [assumed('air.altitude.default', 'The road lies at sea level (air.altitude by default).')]
        : []),
      ...(air.headwind === undefined
        ? [assumed('air.headwind.default', 'The air is still (air.headwind by default).')]
        : []),
    ],
  }
}
