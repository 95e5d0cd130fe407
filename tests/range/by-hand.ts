/** A car driven over NEDC in one loop, written apart from the library but for the corners of the cycle. */
import { cycles } from '../../src/range/index.js'

/** An invented van with four gears and measured losses of its motor. */
export const van = {
  car: { mass: '780 kg', rotatingFactor: 1, rollingResistance: 0.012, dragArea: '0.62 m²', rollingRadius: '0.28 m' },
  gearbox: { gears: [3.6, 2.1, 1.4, 1], finalDrive: 4.1, efficiency: 0.93 },
  motor: {
    peakTorque: '110 N·m',
    peakPower: '42 kW',
    maximumSpeed: '8000 rpm',
    loss: { lossPerTorqueSquared: '0.25 W/(N·m)²', lossPerSpeed: '0.5 W/(rad/s)', constant: '120 W' },
  },
  auxiliaries: '250 W',
  controller: { regeneration: 0.6 },
} as const

/** Books of a drive, in joules and watts. */
export interface Books {
  net: number
  drawn: number
  air: number
  tyres: number
  brakes: number
  driveline: number
  motor: number
  auxiliaries: number
  kinetic: number
  peakPower: number
  /** The torque over what the motor gives at that speed, and for how long. */
  loads: [load: number, time: number][]
}

/** Power of the motor for a torque at a speed. */
const electrical = (torque: number, turning: number) => torque * turning + 0.25 * torque * torque + 0.5 * turning + 120

/** The van over NEDC at steps of a second: the physics and the books of driveCycle in one loop, with no limit but the motor's. */
export function byHand(): Books {
  const { seconds, metresPerSecond } = cycles.NEDC.corners
  const mass = 780
  const rolling = mass * 9.80665 * 0.012
  const air = 0.5 * (101325 / (287.05287 * 293.15)) * 0.62
  const turns = [3.6, 2.1, 1.4, 1].map((ratio) => (ratio * 4.1) / 0.28)
  const fastest = (8000 * 2 * Math.PI) / 60
  const books: Books = {
    net: 0,
    drawn: 0,
    air: 0,
    tyres: 0,
    brakes: 0,
    driveline: 0,
    motor: 0,
    auxiliaries: 0,
    kinetic: 0,
    peakPower: 0,
    loads: [],
  }
  for (let i = 1; i < seconds.length; i++) {
    const lasts = (seconds[i] as number) - (seconds[i - 1] as number)
    const [from, to] = [metresPerSecond[i - 1] as number, metresPerSecond[i] as number]
    const steps = Math.ceil(lasts * (1 - 1e-9))
    for (let k = 0; k < steps; k++) {
      const start = from + ((to - from) * k) / steps
      const end = from + ((to - from) * (k + 1)) / steps
      const mean = (start + end) / 2
      const duration = lasts / steps
      const through = (air / 6) * (start * start * start + 4 * mean * mean * mean + end * end * end)
      const speedUp = (mass * (end - start) * mean) / duration
      const wheel = through + rolling * mean + speedUp
      let [best, torque, turning] = [mean === 0 ? 120 : Infinity, 0, 0]
      for (let g = 3; g >= 0 && mean > 0; g--) {
        const turn = mean * (turns[g] as number)
        if (end * (turns[g] as number) > fastest || turn > fastest) continue
        const most = Math.min(110, 42e3 / turn)
        let tried = wheel / 0.93 / turn
        if (wheel >= 0 && tried > most) continue
        if (wheel < 0) {
          tried = -Math.min((-wheel * 0.6 * 0.93) / turn, most)
          if (electrical(tried, turn) > electrical(0, turn)) tried = 0
        }
        const drawn = electrical(tried, turn)
        if (drawn < best) {
          best = drawn
          torque = tried
          turning = turn
        }
      }
      const power = best + 250
      const shaft = torque * turning
      const atWheels = torque >= 0 && wheel >= 0 ? wheel : shaft / 0.93
      books.net += power * duration
      if (power > 0) books.drawn += power * duration
      books.air += through * duration
      books.tyres += rolling * mean * duration
      books.kinetic += speedUp * duration
      books.brakes += (atWheels - wheel) * duration
      books.driveline += (shaft - atWheels) * duration
      books.motor += (best - shaft) * duration
      books.auxiliaries += 250 * duration
      books.loads.push([Math.abs(torque) / Math.min(109, 42e3 / turning), duration])
      if (end > start) {
        const fast = air * end * end + rolling + (mass * (end - start)) / duration
        const turn = (turning / mean) * end
        const peak = electrical(Math.min(fast / 0.93 / (turning / mean), 110, 42e3 / turn), turn) + 250
        if (peak > books.peakPower) books.peakPower = peak
      } else if (power > books.peakPower) books.peakPower = power
    }
  }
  return books
}
