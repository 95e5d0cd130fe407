/** The laden car with its drive, as the procedures of the drivetrain and of the range take it. */
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import type { Weights } from './weight.js'

/**
 * The car as it is driven, with people and goods; undefined where the sheet has no motor, gearbox or pack.
 * @internal
 */
export function laden(build: Build, pack: Pack | undefined, { laden: { after } }: Weights) {
  const { car, motor, controller, gearbox } = build
  if (motor === undefined || gearbox === undefined || pack === undefined) return undefined
  const { aft, left, up } = after.centreOfGravity
  const { wheelbase, tyre, dragArea, rollingResistance, rotatingFactor, drivenAxle, friction } = car
  return {
    car: {
      mass: after.mass,
      wheelbase,
      tyre,
      dragArea,
      rollingResistance,
      rotatingFactor,
      drivenAxle,
      centreOfGravity: { aft, left, up },
      // Grip needs the height of the centre of gravity.
      ...(up === undefined ? {} : { friction }),
    },
    gearbox,
    motor,
    controller,
    pack: pack.made,
  }
}

/** The car as it is driven. @internal */
export type Laden = NonNullable<ReturnType<typeof laden>>
