/**
 * How a motor remembers its load: the square of the torque over the torque all day at that speed, through its time constant.
 *
 * Rests on Subrahmanyam, Electric Drives, chapter 5 (short-time duty), as a copy has it.
 */
import { USUAL_MEMORY } from '../../formula/memory.js'
import { type Assumption, assumed } from '../../procedure/index.js'
import { quantity } from '../../quantity/index.js'
import type { Motor } from '../vehicle.js'

/** With what time constant, in seconds, a motor remembers its load, and on what ground. @internal */
export function memoryOf(motor: Motor): { readonly timeConstant: number; readonly assumptions: readonly Assumption[] } {
  const { timeConstant, peakTime } = motor
  if (timeConstant !== undefined) return { timeConstant: timeConstant.si, assumptions: [] }
  const share = shareAllDay(motor)
  if (peakTime !== undefined && share !== undefined && share < 1) {
    // A short-time rating from cold reaches the heat of the rating all day as it ends.
    const made = -peakTime.si / Math.log1p(-(share ** 2))
    const told = quantity('time', made, 's').as('min')
    const text = `The motor warms with a time constant of ${told}: its peak for ${peakTime} from cold warms it as its continuous rating does (motor.timeConstant by default).`
    return { timeConstant: made, assumptions: [assumed('motor.memory', text)] }
  }
  const told = quantity('time', USUAL_MEMORY, 's').as('min')
  const text = `The load of the motor is averaged over ${told} (motor.timeConstant and motor.peakTime by default; common practice, no source).`
  return { timeConstant: USUAL_MEMORY, assumptions: [assumed('motor.memory', text)] }
}

/** What is held all day over what is held for a short time. */
function shareAllDay({ peakTorque, continuousTorque, peakPower, continuousPower }: Motor): number | undefined {
  if (peakTorque !== undefined && continuousTorque !== undefined) return continuousTorque.ratioTo(peakTorque)
  return peakPower === undefined || continuousPower === undefined ? undefined : continuousPower.ratioTo(peakPower)
}

/**
 * The torque that a motor holds all day at a speed, on plain SI numbers; infinite where neither its torque nor its power all
 * day is given.
 * @internal
 */
export function torqueAllDay({ continuousTorque, continuousPower }: Motor): (speed: number) => number {
  const [torque, power] = [continuousTorque?.si ?? Infinity, continuousPower?.si ?? Infinity]
  return (speed) => (speed * torque > power ? power / speed : torque)
}
