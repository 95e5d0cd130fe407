/** The laden car with its drive, as the procedures of the drivetrain and of the range take it. */
import type { Quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import type { Weights } from './weight.js'

/** Gears and their tyre. */
export function gearingOf({ car, gearbox }: Build) {
  if (gearbox === undefined) return undefined
  const { gears, finalDrive, efficiency } = gearbox
  return {
    gears: Object.fromEntries(gears) as { readonly [gear: string]: Quantity<'ratio'> },
    finalDrive,
    efficiency,
    tyre: car.tyre,
  }
}

/** The car as it is driven, with people and goods; undefined where the sheet has no motor, gearbox or pack. */
export function laden(build: Build, pack: Pack | undefined, { laden: { after } }: Weights) {
  const { car, motor, controller } = build
  const gearing = gearingOf(build)
  if (motor === undefined || gearing === undefined || pack === undefined) return undefined
  const { aft, left, up } = after.centreOfGravity
  const { wheelbase, dragArea, rollingResistance, rotatingFactor, drivenAxle, friction } = car
  const { batteryCurrent, minimumVoltage, maximumVoltage } = controller ?? {}
  return {
    ...gearing,
    car: {
      mass: after.mass,
      wheelbase,
      dragArea,
      rollingResistance,
      rotatingFactor,
      drivenAxle,
      centreOfGravity: { aft, left, up },
    },
    motor,
    pack: pack.made,
    controller: { batteryCurrent, minimumVoltage, maximumVoltage },
    // Grip needs the height of the centre of gravity.
    ...(up === undefined ? {} : { friction }),
  }
}

/** The car as it is driven. */
export type Laden = NonNullable<ReturnType<typeof laden>>
