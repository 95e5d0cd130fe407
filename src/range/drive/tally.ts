/** The books of a drive: what came from the pack, where it went, and where the car could not do what was asked. */
import { Flows, type Motion, SAME_SPEED } from './motion.js'
import type { PackInUse } from './powertrain.js'

/** A time in which the car could not do what was asked, in SI numbers. */
interface Miss {
  readonly from: number
  until: number
  readonly at: number
  /** Where the car was furthest behind. */
  asked: number
  reached: number
  readonly limit: number
}

/** Sums over the steps of a drive, in joules. @internal */
export class Tally extends Flows {
  drawn = 0
  regenerated = 0
  heat = 0
  /** Of the current: its square over time, and its largest size. */
  squares = 0
  peakCurrent = 0
  peakPower = 0
  /** Of the torque: its square over time. */
  torqueSquares = 0
  steps = 0
  lowestVoltage = Infinity
  readonly missed: Miss[] = []
  /** Most entries of `missed`; what came after is only counted. */
  static readonly MOST_MISSED = 1000

  readonly #resistance: number

  constructor(pack: PackInUse | undefined) {
    super()
    this.#resistance = pack?.supply.resistance ?? 0
  }

  /** Books the last step of a motion, at whose end a speed was asked for. */
  add(motion: Motion, asked: number): void {
    const { lasted, power, current } = motion
    const energy = power * lasted
    this.steps++
    this.power += energy
    if (energy > 0) this.drawn += energy
    else this.regenerated -= energy
    this.air += motion.air * lasted
    this.tyres += motion.tyres * lasted
    this.hill += motion.hill * lasted
    this.kinetic += motion.kinetic * lasted
    this.brakes += motion.brakes * lasted
    this.driveline += motion.driveline * lasted
    this.motor += motion.motor * lasted
    this.shifts += motion.shifts * lasted
    this.auxiliaries += motion.auxiliaries * lasted
    const squared = current * current * lasted
    this.squares += squared
    this.heat += squared * this.#resistance
    this.torqueSquares += motion.torque * motion.torque * lasted
    if (Math.abs(motion.fastCurrent) > this.peakCurrent) this.peakCurrent = Math.abs(motion.fastCurrent)
    if (motion.fastPower > this.peakPower) this.peakPower = motion.fastPower
    if (motion.fastVoltage < this.lowestVoltage) this.lowestVoltage = motion.fastVoltage
    if (motion.limit !== 0) this.#miss(motion, asked)
  }

  #miss({ time, distance, lasted, length, speed, limit }: Motion, asked: number): void {
    if (asked - speed <= SAME_SPEED) return
    const from = time - lasted
    const last = this.missed.at(-1)
    if (last !== undefined && last.limit === limit && from <= last.until + 1e-9 * time) {
      last.until = time
      if (asked - speed > last.asked - last.reached) {
        last.asked = asked
        last.reached = speed
      }
    } else if (this.missed.length < Tally.MOST_MISSED) {
      this.missed.push({ from, until: time, at: distance - length, asked, reached: speed, limit })
    }
  }
}
