/**
 * A car followed step by step over a road, with every joule booked: the one loop under all drives.
 *
 * A step is a stretch of steady acceleration. The work at the wheels over it is exact: the resistances are polynomials of
 * the speed, and Simpson's rule over a straight line of speed is exact up to the third power (but for a tail wind that the
 * car overtakes within the step). From there on the mean power of the step counts, as if it were steady: torque, losses and
 * current are taken at the mean force and the mean speed. That errs with the square of the step, since only the curvature of
 * the losses over the step is left out. What the mean does not see are the turns from driving to braking within a step.
 */
import type { Grip } from '../../drivetrain/road/car.js'
import type { Conditions, DriveGear, PackInUse, Powertrain } from './powertrain.js'

/** Why a step cannot be driven as asked. @internal */
export const limits = [
  'nothing',
  'highest speed of the motor',
  'grip of the driven wheels',
  'torque of the motor',
  'current of the pack',
  'lowest voltage under load',
  'power of the pack',
] as const
const [FREE, OVERSPEED, GRIP, TORQUE, CURRENT, FLOOR, POWER] = [0, 1, 2, 3, 4, 5, 6] as const

/** Whether a limit is one that the pack sets. @internal */
export function isOfPack(limit: number): boolean {
  return limit >= CURRENT
}

/** Speeds closer than this are the same, in m/s. @internal */
export const SAME_SPEED = 1e-6

/** A limit that is met to the last digits that arithmetic leaves is met. */
const ROUNDING = 1 + 1e-12
/** Within about this time a rotor is brought to the speed of a lower gear, in seconds. */
const SPIN_UP = 1
/** Halvings that leave nothing of a number. */
const HALVINGS = 52

/** What a step took, as mean powers in watts; the sums over a drive are in joules. @internal */
export class Flows {
  /** At the terminals of the pack: into the drive, negative where it is charged. */
  power = 0
  air = 0
  tyres = 0
  /** Lifting the car; negative downhill. */
  hill = 0
  /** Into its speed; negative while it slows down. */
  kinetic = 0
  /** Heat of the brakes. */
  brakes = 0
  driveline = 0
  motor = 0
  /** What the rotor loses when a higher gear slows it down. */
  shifts = 0
  auxiliaries = 0
}

/** A car on its way. All numbers are in SI units. @internal */
export class Motion extends Flows {
  time = 0
  distance = 0
  speed: number
  stateOfCharge: number
  /** What the last step was held back by, an index of {@link limits}. */
  limit: number = FREE
  /** The gear of the last step. */
  gear = -1
  /** Whether the pack could not even feed the auxiliaries; then the last step was not driven. */
  isSpent = false

  // The last step.
  lasted = 0
  length = 0
  torque = 0
  current = 0
  openCircuit = 0
  voltage = 0
  /** At the faster end of the step, where it asks most and gives most back; within what motor and pack allow. */
  fastPower = 0
  fastCurrent = 0
  fastVoltage = 0
  #end = 0
  #tried = -1
  /** Whether another such step, at the same speed for the same time, takes just the same. */
  #isRepeatable = false
  /** Energy that the rotor still takes from the pack after a shift: before the step, with that of the step, and its power. */
  #owed = 0
  #owing = 0
  #paid = 0

  readonly #train: Powertrain
  readonly #gears: readonly DriveGear[]
  readonly #grip: Grip | undefined
  readonly #pack: PackInUse | undefined
  #conditions: Conditions
  #gripGrade = Number.NaN
  #gripForce = Infinity
  #brakeForce = Infinity

  constructor(
    train: Powertrain,
    grip: Grip | undefined,
    pack: PackInUse | undefined,
    conditions: Conditions,
    speed: number,
  ) {
    super()
    this.#train = train
    this.#gears = train.gears
    this.#grip = grip
    this.#pack = pack
    this.speed = speed
    this.stateOfCharge = pack?.from ?? Number.NaN
    this.#conditions = conditions
    this.enter(conditions)
  }

  /** Begins a drive over again at a speed, from where the car has come. */
  restart(speed: number): void {
    this.#isRepeatable = false
    this.speed = speed
    this.gear = -1
  }

  /** Goes on in other conditions. */
  enter(conditions: Conditions): void {
    this.#isRepeatable = false
    this.#conditions = conditions
    if (conditions.grade === this.#gripGrade) return
    this.#gripGrade = conditions.grade
    this.#gripForce = this.#grip?.driving(conditions.grade) ?? Infinity
    this.#brakeForce = this.#grip?.braking(conditions.grade) ?? Infinity
  }

  /** Works out a second at a steady speed, without driving it, and gives what forbids it, an index of {@link limits}. */
  hold(speed: number): number {
    this.restart(speed)
    const limit = this.#attempt(speed, 1)
    this.gear = this.#tried
    return limit
  }

  /** Whether nothing forbids the car to keep its speed and its gear for a time, however much emptier the pack is at its end. */
  holds(duration: number): boolean {
    if (this.#attempt(this.speed, duration) !== FREE || this.#owing !== 0 || this.shifts !== 0) return false
    const pack = this.#pack
    if (pack === undefined) return true
    const state = this.stateOfCharge
    this.stateOfCharge -= (this.current * duration) / pack.capacity
    const isHeld = this.stateOfCharge > pack.to && this.#attempt(this.speed, duration) === FREE
    this.stateOfCharge = state
    return isHeld
  }

  /**
   * Drives for a time so that the car reaches a speed, or the nearest to it from below that grip, motor and pack allow.
   *
   * A hill may bring it to a stand before the time is over: {@link lasted} is then less than was asked.
   *
   * @returns Whether the step was driven: where the pack cannot even feed the auxiliaries, it is not.
   */
  advance(target: number, duration: number): boolean {
    if (this.#isRepeatable && target === this.speed && duration === this.lasted) {
      this.time += this.lasted
      this.distance += this.length
      return true
    }
    this.limit = this.#attempt(target, duration)
    if (this.limit !== FREE && !this.#doWhatItCan(target, duration)) {
      this.isSpent = true
      return false
    }
    this.#lookAtFasterEnd()
    const start = this.speed
    this.time += this.lasted
    this.distance += this.length
    this.speed = this.#end
    this.gear = this.#tried
    this.#owed = this.#owing - this.#paid * this.lasted
    const pack = this.#pack
    if (pack !== undefined) this.stateOfCharge -= (this.current * this.lasted) / pack.capacity
    // A pack is emptier after each step, and a rotor may still owe what a shift took.
    this.#isRepeatable =
      pack === undefined && this.limit === FREE && target === start && this.#owing === 0 && this.shifts === 0
    return true
  }

  /** Works out the nearest step to what is asked that nothing forbids; false where there is none. */
  #doWhatItCan(target: number, duration: number): boolean {
    if (this.#attempt(0, duration) === FREE) {
      const speed = this.#greatest(target, (end) => this.#attempt(end, duration))
      return this.#attempt(speed, duration) === FREE
    }
    // Even to be at a stand at the end of the step it would have to be driven harder: a hill stops it before.
    const lasts = this.#greatest(duration, (time) => this.#attempt(0, time))
    return lasts > 0 && this.#attempt(0, lasts) === FREE
  }

  /** The greatest number up to one that is forbidden that is not; notes what forbids the least that is. */
  #greatest(forbidden: number, limitOf: (value: number) => number): number {
    let [low, high] = [0, forbidden]
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2
      const limit = limitOf(middle)
      if (limit === FREE) low = middle
      else {
        high = middle
        this.limit = limit
      }
    }
    return low
  }

  /** Works out a step to a speed in the gear that draws least, and gives what forbids it. */
  #attempt(end: number, duration: number): number {
    const start = this.speed
    const mean = (start + end) / 2
    const { tyres, tyresBySpeed, air, headwind, hill, auxiliaries } = this.#conditions
    this.#end = end
    this.lasted = duration
    this.length = mean * duration
    // Simpson's rule, exact here.
    const [first, middle, last] = [start + headwind, mean + headwind, end + headwind]
    this.air =
      (air / 6) * (start * first * Math.abs(first) + 4 * mean * middle * Math.abs(middle) + end * last * Math.abs(last))
    this.tyres = tyres * mean + (tyresBySpeed * (start * start + start * end + end * end)) / 3
    this.hill = hill * mean
    this.auxiliaries = auxiliaries
    if (this.#pack !== undefined) this.openCircuit = this.#pack.atRest.voltsAt(this.stateOfCharge)
    const load = this.air + this.tyres + this.hill
    const speedUp = ((end - start) * mean) / duration
    const gears = this.#gears
    if (gears.length === 1 || mean === 0) return this.#inGear(0, start, mean, load, speedUp)
    let refused = 0
    let reason: number = OVERSPEED
    for (;;) {
      const best = this.#bestGear(refused, mean, load, speedUp)
      if (best < 0) return reason
      const limit = this.#inGear(best, start, mean, load, speedUp)
      if (limit === FREE) return FREE
      // What holds a gear that turns the motor within its speed says more than that another would not.
      if (reason === OVERSPEED) reason = limit
      refused |= 1 << best
    }
  }

  /** The gear that draws least of those not refused and within the speed of the motor, before any other limit; -1 for none. */
  #bestGear(refused: number, mean: number, load: number, speedUp: number): number {
    const gears = this.#gears
    const { maximumSpeed, share, motor } = this.#train
    const { efficiency, copper, iron, windage, constant } = motor
    const fast = Math.max(mean, this.#end)
    const fastest = maximumSpeed * ROUNDING
    let best = -1
    let least = Infinity
    // Of two that draw the same, the higher gear.
    for (let i = gears.length - 1; i >= 0; i--) {
      const gear = gears[i] as DriveGear
      const turning = mean * gear.turns
      if ((refused >> i) & 1 || fast * gear.turns > fastest) continue
      const wheel = load + gear.inertialMass * speedUp
      const shaft = wheel >= 0 ? wheel / gear.efficiency : wheel * share * gear.efficiency
      const torque = shaft / turning
      // As #electricalPower, once more written out: what the turning alone loses is known for both comparisons.
      const idle = (iron + windage * turning * turning) * turning + constant
      const byShaft = wheel >= 0 ? shaft / efficiency : shaft * efficiency
      const driven = byShaft + copper * torque * torque + idle
      const drawn = wheel >= 0 ? driven : Math.min(driven, idle)
      if (drawn < least) {
        best = i
        least = drawn
      }
    }
    return best
  }

  /**
   * What the motor draws for a torque at a speed: the formulas {@link motorLoss} and {@link electricalPower}, or
   * {@link electricalPowerAtEfficiency}, in one. A motor told by its losses has the efficiency 1 here, and one told by its
   * efficiency no losses. Written out, because it runs for every gear of every step.
   */
  #electricalPower(torque: number, turning: number): number {
    const { efficiency, copper, iron, windage, constant } = this.#train.motor
    const shaft = torque * turning
    const drawn = shaft >= 0 ? shaft / efficiency : shaft * efficiency
    return drawn + copper * torque * torque + iron * turning + windage * turning * turning * turning + constant
  }

  /** Works out a step in a gear, and gives what forbids it. */
  #inGear(index: number, start: number, mean: number, load: number, speedUp: number): number {
    const gear = this.#gears[index] as DriveGear
    const { road, envelope, share, maximumSpeed } = this.#train
    const pack = this.#pack
    const inertia = gear.inertialMass
    this.#tried = index
    // A rotor that a higher gear slows down loses its energy; one that a lower gear speeds up takes it from the pack.
    const isShift = this.gear !== index && this.gear >= 0
    const geared = isShift ? inertia - (this.#gears[this.gear] as DriveGear).inertialMass : 0
    const spun = (geared * start * start) / 2
    this.#owing = spun > 0 ? this.#owed + spun : this.#owed
    this.#paid = this.#owing === 0 ? 0 : this.#owing / Math.max(this.lasted, SPIN_UP)
    this.shifts = spun < 0 ? -spun / this.lasted : 0
    this.kinetic = inertia * speedUp - this.shifts + this.#paid
    const wheel = load + inertia * speedUp
    const turning = mean * gear.turns
    if (wheel >= 0) {
      this.brakes = 0
      const shaft = wheel / gear.efficiency
      this.torque = mean === 0 ? 0 : shaft / turning
      this.driveline = shaft - wheel
    } else {
      const most = share > 0 && turning <= maximumSpeed * ROUNDING ? -wheel * share : 0
      const braking = most === 0 ? 0 : this.#brakingTorque(gear, most / mean, turning)
      const byMotor = (braking * turning) / gear.efficiency
      this.torque = -braking
      this.brakes = -wheel - byMotor
      this.driveline = byMotor - braking * turning
    }
    const drawn = this.#electricalPower(this.torque, turning)
    this.motor = drawn - this.torque * turning
    this.power = drawn + this.#paid + this.auxiliaries
    if (Math.max(mean, this.#end) * gear.turns > maximumSpeed * ROUNDING) return OVERSPEED
    // The road gives the body its speed; to what turns the drive gives it without the road.
    if (load + road.mass.si * speedUp > this.#gripForce * mean * ROUNDING) return GRIP
    const refused = pack === undefined ? FREE : this.#draw(pack)
    if (refused !== FREE || envelope === undefined || wheel < 0) return refused
    const voltage = pack === undefined ? Infinity : this.voltage
    return this.torque > envelope.torqueAt(Math.min(turning, maximumSpeed), voltage, 'peak') * ROUNDING ? TORQUE : FREE
  }

  /** The torque with which the motor brakes when a force at the wheels is asked of it. */
  #brakingTorque(gear: DriveGear, asked: number, turning: number): number {
    const { envelope, conversion } = this.#train
    const pack = this.#pack
    let torque = (Math.min(asked, this.#brakeForce) * gear.efficiency) / gear.turns
    if (envelope !== undefined) {
      // The voltage rises on charge: that at rest is on the safe side.
      torque = Math.min(torque, envelope.torqueAt(turning, pack === undefined ? Infinity : this.openCircuit, 'peak'))
    }
    const given = -this.#electricalPower(-torque, turning)
    // Near a standstill braking by the motor costs more than it brings: then the brakes do it.
    if (given < -this.#electricalPower(0, turning)) return 0
    if (pack === undefined) return torque
    const { openCircuit } = this
    const { ceiling, charge, resistance } = pack.supply
    const byVoltage = (ceiling[0] - openCircuit) / resistance
    const byRoom = ((pack.highest - this.stateOfCharge) * pack.capacity) / this.lasted
    const current = Math.max(0, Math.min(charge[0], byVoltage, byRoom))
    const most = current * (openCircuit + current * resistance) + this.auxiliaries
    return given <= most ? torque : Math.min(torque, conversion.brakingTorque(most, turning))
  }

  /** Works out what the step that was found asks at the faster of its ends. */
  #lookAtFasterEnd(): void {
    const pack = this.#pack
    const start = this.speed
    const end = this.#end
    const fast = Math.max(start, end)
    this.fastPower = this.power
    if (start !== end) {
      const gear = this.#gears[this.#tried] as DriveGear
      const { tyres, tyresBySpeed, air, headwind, hill } = this.#conditions
      const { envelope, share, maximumSpeed } = this.#train
      const through = fast + headwind
      const load = air * through * Math.abs(through) + tyres + tyresBySpeed * fast + hill
      const force = load + (gear.inertialMass * (end - start)) / this.lasted
      const turning = fast * gear.turns
      let torque = force / gear.efficiency / gear.turns
      if (force < 0)
        torque = turning > maximumSpeed * ROUNDING ? 0 : -this.#brakingTorque(gear, -force * share, turning)
      else if (envelope !== undefined) {
        const voltage = pack === undefined ? Infinity : this.voltage
        torque = Math.min(torque, envelope.torqueAt(Math.min(turning, maximumSpeed), voltage, 'peak'))
      }
      this.fastPower = this.#electricalPower(torque, turning) + this.#paid + this.auxiliaries
    }
    if (pack === undefined) return
    const { openCircuit } = this
    const { resistance, discharge, floor } = pack.supply
    const asked = this.#currentFor(this.fastPower, resistance)
    this.fastCurrent = Math.min(asked, discharge.peak[0], Math.max(0, openCircuit - floor[0]) / resistance)
    this.fastVoltage = openCircuit - this.fastCurrent * resistance
    if (this.fastCurrent < asked) {
      this.fastVoltage = Math.max(this.fastVoltage, floor[0])
      this.fastPower = this.fastCurrent * this.fastVoltage
    }
  }

  /** Takes the power of the step from the pack, or gives what forbids it. */
  #draw({ supply }: PackInUse): number {
    const { resistance, discharge, floor } = supply
    const current = this.#currentFor(this.power, resistance)
    if (current === Infinity) return POWER
    this.current = current
    this.voltage = this.openCircuit - current * resistance
    if (current > discharge.peak[0] * ROUNDING) return CURRENT
    return this.voltage * ROUNDING < floor[0] && current > 0 ? FLOOR : FREE
  }

  /** The formula currentForPower, written out, as terminalVoltage is where it is used; infinite for more than the pack has. */
  #currentFor(power: number, resistance: number): number {
    const { openCircuit } = this
    const root = openCircuit * openCircuit - 4 * power * resistance
    return root < 0 ? Infinity : (2 * power) / (openCircuit + Math.sqrt(root))
  }
}
