/** The books of a drive: what came from the pack, where it went, and where the car could not do what was asked. */
import { Memory, USUAL_MEMORY } from '../../formula/memory.js'
import { Flows, type Motion, SAME_SPEED } from './motion.js'
import type { DriveGear, PackInUse, Powertrain } from './powertrain.js'

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
  /** The greatest current back into the pack. */
  peakChargeCurrent = 0
  peakPower = 0
  /** What the motor remembers of its torque over the torque all day at its speed, and the pack of its current, in amperes. */
  readonly motorMemory: Memory
  readonly packMemory: Memory | undefined
  steps = 0
  lowestVoltage = Infinity
  readonly missed: Miss[] = []
  /** Most entries of `missed`; what came after is only counted. */
  static readonly MOST_MISSED = 1000

  readonly #resistance: number

  readonly #train: Powertrain

  constructor(train: Powertrain, pack: PackInUse | undefined) {
    super()
    this.#train = train
    this.#resistance = pack?.supply.resistance ?? 0
    this.motorMemory = new Memory(train.memory.timeConstant)
    this.packMemory = pack === undefined ? undefined : new Memory(USUAL_MEMORY)
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
    if (lasted > 0) {
      if (this.#train.isRated) this.motorMemory.add(this.#motorLoad(motion) ** 2, lasted)
      this.packMemory?.add(current * current, lasted)
    }
    if (Math.abs(motion.fastCurrent) > this.peakCurrent) this.peakCurrent = Math.abs(motion.fastCurrent)
    if (-motion.fastCurrent > this.peakChargeCurrent) this.peakChargeCurrent = -motion.fastCurrent
    if (motion.fastPower > this.peakPower) this.peakPower = motion.fastPower
    if (motion.fastVoltage < this.lowestVoltage) this.lowestVoltage = motion.fastVoltage
    if (motion.limit !== 0) this.#miss(motion, asked)
  }

  /** Torque over the torque all day; where that is too much, in the gear that asks least of the motor. */
  #motorLoad({ torque, length, lasted, gear, voltage }: Motion): number {
    if (torque === 0) return 0
    const { gears, torqueAllDay, maximumSpeed } = this.#train
    const speed = length / lasted
    const volts = this.packMemory === undefined ? Infinity : voltage
    const { turns, efficiency } = gears[gear] as DriveGear
    const load = Math.abs(torque) / torqueAllDay(speed * turns, volts)
    if (!(load > 1)) return load
    const force = Math.abs(torque) * turns * (torque > 0 ? efficiency : 1 / efficiency)
    return gears.reduce((least, each) => {
      if (speed * each.turns > maximumSpeed) return least
      const asked = (force / each.turns) * (torque > 0 ? 1 / each.efficiency : each.efficiency)
      return Math.min(least, asked / torqueAllDay(speed * each.turns, volts))
    }, load)
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
