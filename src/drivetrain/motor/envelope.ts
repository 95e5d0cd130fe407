/**
 * What a motor can give at each speed, from a few figures or from a curve, at the voltage that the sagging pack leaves,
 * and the electrical power that it then draws or gives back.
 *
 * Rests on Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004), traction motor
 * characteristics (constant torque, then constant power), and on Larminie & Lowry, Electric Vehicle Technology Explained
 * (2003), chapter 6 (losses).
 */
import { type Points, straightAt } from '../../formula/points.js'
import { type Assumption, assumed } from '../../procedure/index.js'
import { tableIssues } from '../../procedure/table.js'
import { InputError, type InputIssue, type Quantity } from '../../quantity/index.js'
import type { Motor } from '../vehicle.js'
import { electricalPower, electricalPowerAtEfficiency, motorLoss, shaftPower } from './motor.js'

/** For how long a figure is to hold. @internal */
export type Rating = 'peak' | 'continuous'

/** The most torque of a motor, on plain SI numbers: for loops. @internal */
export interface Envelope {
  readonly maximumSpeed: number
  /**
   * The most torque at a speed and a voltage at the controller, driving or braking, in N·m; nothing above the highest
   * speed.
   */
  readonly torqueAt: (speed: number, voltage: number, rating: Rating) => number
  /** Whether the torque depends on the voltage at all. */
  readonly followsVoltage: boolean
  /** Whether figures for all day are given. */
  readonly hasContinuous: boolean
  /** What holds the torque at a speed and a voltage, in words. */
  readonly limitAt: (speed: number, voltage: number, rating: Rating) => string
  readonly assumptions: readonly Assumption[]
}

/** What holds a motor, in words. @internal */
export const motorLimits = {
  speed: 'highest speed of the motor',
  curve: 'torque curve of the motor',
  peak: { torque: 'peak torque of the motor', power: 'peak power of the motor' },
  continuous: { torque: 'continuous torque of the motor', power: 'continuous power of the motor' },
} as const

/**
 * Reads the most torque of a motor: `peakTorque` up to where `peakPower` takes over, or the `curve`, or where all are
 * given the least of them.
 *
 * Below its rated voltage, the torque that a motor has at a speed it has at a speed lower in the proportion of the
 * voltages: the torque of the low speeds stays, the base speed and the power of the high ones fall with the voltage. That
 * holds where the current is limited and the flux of the turning motor falls as one over its speed; far above its base
 * speed a real motor loses more. A voltage above the rated one adds nothing. Beyond the end of a curve that is so drawn
 * together, its last power is kept.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError where the figures do not make an envelope, by their path.
 *
 * @internal
 */
export function envelopeOf(where: string, motor: Motor): Envelope {
  refuseMotor(where, motor)
  const { ratedVoltage, curve, peakTorque, peakPower } = motor
  const maximumSpeed = (motor.maximumSpeed as Quantity<'angularSpeed'>).si
  const figures = {
    peak: { torque: peakTorque?.si ?? Infinity, power: peakPower?.si ?? Infinity },
    continuous: {
      torque: motor.continuousTorque?.si ?? Infinity,
      power: motor.continuousPower?.si ?? Infinity,
    },
  }
  const onCurve = curve === undefined ? undefined : torqueOnCurve(curve)
  const scaleAt = (voltage: number) => (ratedVoltage === undefined ? 1 : Math.min(1, voltage / ratedVoltage.si))
  const ofFigures = (speed: number, scale: number, rating: Rating) => {
    const { torque, power } = figures[rating]
    return speed * torque > power * scale ? (power * scale) / speed : torque
  }
  const curveAt = (speed: number, scale: number) => onCurve?.(speed / scale) ?? Infinity
  const torqueAt = (speed: number, voltage: number, rating: Rating) => {
    if (speed > maximumSpeed) return 0
    const scale = scaleAt(voltage)
    if (!(scale > 0)) return 0
    const peak = Math.min(ofFigures(speed, scale, 'peak'), curveAt(speed, scale))
    return rating === 'peak' ? peak : Math.min(peak, ofFigures(speed, scale, 'continuous'))
  }
  return {
    maximumSpeed,
    torqueAt,
    followsVoltage: ratedVoltage !== undefined,
    hasContinuous: motor.continuousTorque !== undefined || motor.continuousPower !== undefined,
    limitAt: (speed, voltage, rating) => {
      if (speed > maximumSpeed) return motorLimits.speed
      const scale = scaleAt(voltage)
      const ratings = rating === 'peak' ? (['peak'] as const) : (['continuous', 'peak'] as const)
      const most = torqueAt(speed, voltage, rating)
      const held = ratings.find((each) => ofFigures(speed, scale, each) <= most)
      if (held === undefined) return motorLimits.curve
      return motorLimits[held][figures[held].torque <= most ? 'torque' : 'power']
    },
    assumptions:
      ratedVoltage === undefined
        ? [
            assumed(
              'motor.ratedVoltage.absent',
              'The motor gives its figures at any voltage of the pack (no motor.ratedVoltage).',
            ),
          ]
        : [
            assumed(
              'motor.ratedVoltage',
              `Below ${ratedVoltage} the base speed and the power of the motor fall with the voltage; above it nothing is added.`,
            ),
          ],
  }
}

/** Torque between the points of a curve; beyond its end, that of its last power. */
function torqueOnCurve(curve: NonNullable<Motor['curve']>): (speed: number) => number {
  const points = curve.map(([speed, torque]) => [speed.si, torque.si] as const)
  const [end, endTorque] = points.at(-1) as Points[number]
  return (speed) => {
    if (speed >= end) return speed === end ? endTorque : (endTorque * end) / speed
    return straightAt(points, speed)
  }
}

/** Refuses a motor whose figures contradict each other or do not tell what it can give. */
function refuseMotor(where: string, motor: Motor): void {
  const issues: InputIssue[] = []
  const { curve, maximumSpeed } = motor
  if (maximumSpeed === undefined) {
    issues.push({ path: 'motor.maximumSpeed', expected: "a speed such as '8000 rpm'", received: 'nothing' })
  }
  if (curve === undefined && (motor.peakTorque === undefined || motor.peakPower === undefined)) {
    const named = (['peakTorque', 'peakPower'] as const).filter((key) => motor[key] !== undefined)
    issues.push({
      path: 'motor',
      expected:
        "peakTorque and peakPower, such as '120 N·m' and '45 kW', or a curve such as [['0 rpm', '120 N·m'], ['8000 rpm', '40 N·m']]",
      received: named.length === 0 ? 'none of them' : `${named.join(' and ')} alone`,
    })
  }
  for (const kind of ['Torque', 'Power'] as const) {
    const [all, short] = [motor[`continuous${kind}`], motor[`peak${kind}`]]
    if (all === undefined || short === undefined || all.si <= short.si) continue
    const expected = `at most the peak, ${short}`
    issues.push({ path: `motor.continuous${kind}`, expected, received: String(all) })
  }
  const start = curve?.[0]?.[0]
  if (start !== undefined && start.si !== 0) {
    const expected = "the first point at standstill, '0 rpm'"
    issues.push({ path: 'motor.curve[0][0]', expected, received: String(start) })
  }
  issues.push(...tableIssues('motor.curve', curve ?? [], 'speed'))
  const end = curve?.at(-1)?.[0]
  if (end !== undefined && maximumSpeed !== undefined && end.si < maximumSpeed.si) {
    const path = `motor.curve[${(curve?.length ?? 0) - 1}][0]`
    const expected = `points up to the highest speed, ${maximumSpeed}; nothing is extrapolated`
    issues.push({ path, expected, received: String(end) })
  }
  if (issues.length > 0) throw new InputError(where, issues)
}

/** That a motor of which one rating all day is given is held by that alone. @internal */
export function oneRating({ continuousTorque, continuousPower }: Motor): Assumption[] {
  if ((continuousTorque === undefined) === (continuousPower === undefined)) return []
  const lacks = continuousTorque === undefined ? 'continuousTorque' : 'continuousPower'
  return [assumed('motor.one', `Only one of its ratings all day holds the motor: give motor.${lacks} too.`)]
}

/** The electrical power of a motor, on plain SI numbers: for loops. @internal */
export interface Conversion {
  /** Watts for a torque, negative where it brakes, at a speed; negative where the motor gives power back. */
  readonly electricalPower: (torque: number, speed: number) => number
  /** The most torque, driving, for which an electrical power suffices at a speed; nothing where it feeds no more than losses. */
  readonly drivingTorque: (power: number, speed: number) => number
  /** The most torque, braking, as a positive figure, that gives back no more than an electrical power at a speed. */
  readonly brakingTorque: (power: number, speed: number) => number
  /** Electrical power with its working. */
  readonly powerOf: (torque: Quantity<'torque'>, speed: Quantity<'angularSpeed'>) => Quantity<'power'>
  readonly assumptions: readonly Assumption[]
}

/**
 * Reads what a motor loses: by the coefficients of its losses, or by one efficiency for driving and braking.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError where neither or both are given.
 *
 * @internal
 */
export function conversionOf(where: string, { loss, efficiency }: Motor): Conversion {
  if ((loss === undefined) === (efficiency === undefined)) {
    const expected =
      "one of them, such as motor.efficiency: '87 %' or motor.loss: { lossPerTorqueSquared: '0.3 W/(N·m)²', constant: '200 W' }"
    const received = loss === undefined ? 'neither' : 'both'
    throw new InputError(where, [{ path: 'motor.efficiency and motor.loss', expected, received }])
  }
  return loss === undefined ? byEfficiency(efficiency as Quantity<'ratio'>) : byLoss(loss)
}

function byEfficiency(efficiency: Quantity<'ratio'>): Conversion {
  const eta = efficiency.si
  return {
    electricalPower: (torque, speed) =>
      electricalPowerAtEfficiency.compute({ shaftPower: torque * speed, efficiency: eta }),
    drivingTorque: (power, speed) => torqueOf(power * eta, speed),
    brakingTorque: (power, speed) => torqueOf(power / eta, speed),
    powerOf: (torque, speed) => electricalPowerAtEfficiency({ shaftPower: shaftPower({ torque, speed }), efficiency }),
    assumptions: [
      assumed(
        'motor.efficiency',
        `Motor and controller have an efficiency of ${efficiency.as('%')} at every load, driving and braking.`,
      ),
    ],
  }
}

function torqueOf(power: number, speed: number): number {
  return power <= 0 ? 0 : speed === 0 ? Infinity : power / speed
}

function byLoss(loss: NonNullable<Motor['loss']>): Conversion {
  const coefficients = {
    copper: loss.lossPerTorqueSquared.si,
    iron: loss.lossPerSpeed?.si ?? 0,
    windage: loss.lossPerSpeedCubed?.si ?? 0,
    constant: loss.constant?.si ?? 0,
  }
  const lossAt = (torque: number, speed: number) => motorLoss.compute({ torque, speed, ...coefficients })
  const left = (['lossPerSpeed', 'lossPerSpeedCubed', 'constant'] as const).filter((key) => loss[key] === undefined)
  return {
    electricalPower: (torque, speed) =>
      electricalPower.compute({ shaftPower: torque * speed, loss: lossAt(torque, speed) }),
    // kc T² + w T = P − the losses without torque; written so that a small kc costs no digits.
    drivingTorque: (power, speed) => {
      const rest = power - lossAt(0, speed)
      if (rest <= 0) return 0
      return (2 * rest) / (speed + Math.sqrt(speed ** 2 + 4 * coefficients.copper * rest))
    },
    // w T − kc T² = P + the losses without torque. With more than half of w² / kc nothing bounds the torque.
    brakingTorque: (power, speed) => {
      const rest = power + lossAt(0, speed)
      const under = speed ** 2 - 4 * coefficients.copper * rest
      return under < 0 ? Infinity : (2 * rest) / (speed + Math.sqrt(under))
    },
    powerOf: (torque, speed) =>
      electricalPower({
        shaftPower: shaftPower({ torque, speed }),
        loss: motorLoss({
          torque,
          speed,
          copper: loss.lossPerTorqueSquared,
          iron: loss.lossPerSpeed ?? '0 W/(rad/s)',
          windage: loss.lossPerSpeedCubed ?? '0 W/(rad/s)³',
          constant: loss.constant ?? '0 W',
        }),
      }),
    assumptions:
      left.length === 0
        ? []
        : [
            assumed(
              'motor.loss',
              `Losses that are not given are taken as zero: ${left.map((key) => `motor.loss.${key}`).join(', ')}.`,
            ),
          ],
  }
}
