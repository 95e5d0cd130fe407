/** What it costs to drive a cycle, beside the same physics written out in one loop; a sweep of steady speeds; a long log. */

import { quantity } from 'kerbwatt/quantity'
import { cycles, driveCycle, driveTrace, energyAtSpeed } from 'kerbwatt/range'
import { durationText, medianOf, type Row } from './row.js'

/** An invented van with four gears and measured losses of its motor. */
const van = {
  car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
  driveline: { gears: [3.6, 2.1, 1.4, 1], finalDrive: 4.1, rollingRadius: '0.28 m', efficiency: 0.93 },
  motor: {
    peakTorque: '110 N·m',
    peakPower: '42 kW',
    maximumSpeed: '8000 rpm',
    loss: { lossPerTorqueSquared: '0.25 W/(N·m)²', lossPerSpeed: '0.5 W/(rad/s)', constant: '120 W' },
  },
  auxiliary: '250 W',
  regeneration: { share: 0.6 },
} as const

/** Books of a drive, in joules, watts and N²·m²·s. */
interface Books {
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
  torqueSquares: number
}

/** Power of the motor for a torque at a speed. */
const electrical = (torque: number, turning: number) => torque * turning + 0.25 * torque * torque + 0.5 * turning + 120

/** The van over NEDC at steps of a second: the physics and the books of driveCycle in one loop, with no limit but the motor's. */
function byHand(): Books {
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
    torqueSquares: 0,
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
      books.torqueSquares += torque * torque * duration
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

/** Refuses to compare what does not agree. */
function refuseDifference(): void {
  const { net, drawn, losses, peakPower } = driveCycle({ ...van, cycle: 'NEDC' })
  const books = byHand()
  const { air, tyres, brakes, driveline, motor, auxiliaries } = losses
  for (const [name, each] of Object.entries({
    net,
    drawn,
    air,
    tyres,
    brakes,
    driveline,
    motor,
    auxiliaries,
    peakPower,
  })) {
    const hand = books[name as keyof Books]
    if (Math.abs(each.si / hand - 1) > 1e-6) throw new Error(`${name}: driveCycle gives ${each.si}, the loop ${hand}`)
  }
}

/** So often each is done; the median counts. */
const TIMES = 300

/** Median nanoseconds of each of some works, done in turns. */
function mediansOf(works: readonly (() => unknown)[]): number[] {
  const spans = works.map((): number[] => [])
  for (let i = 0; i < 2 * TIMES; i++) {
    works.forEach((work, k) => {
      const start = performance.now()
      work()
      // The first half warms up.
      if (i >= TIMES) spans[k]?.push((performance.now() - start) * 1e6)
    })
  }
  return spans.map(medianOf)
}

/** A log with a row each second, in pieces. */
function* log(rows: number) {
  yield 'time (s),speed (km/h)\n'
  for (let row = 0; row < rows; row += 500) {
    let piece = ''
    for (let i = row; i < row + 500; i++) piece += `${i},${(50 + 40 * Math.sin(i / 20)).toFixed(2)}\n`
    yield piece
  }
}

export function driveCycleRows(): Row[] {
  refuseDifference()
  const stop = { ...cycles.NEDC, corners: { seconds: [0, 1, 2], metresPerSecond: [0, 1, 0] } }
  const [whole = Number.NaN, read = Number.NaN, hand = Number.NaN] = mediansOf([
    () => driveCycle({ ...van, cycle: 'NEDC' }),
    () => driveCycle({ ...van, cycle: stop }),
    byHand,
  ])
  const speeds = Array.from({ length: 10_000 }, (_, i) => quantity('speed', 10 + i / 100, 'km/h'))
  const start = performance.now()
  energyAtSpeed({ ...van, speeds })
  const sweep = performance.now() - start
  const before = performance.now()
  driveTrace({ ...van, log: log(1e6) })
  const trace = performance.now() - before
  return [
    {
      what: 'NEDC at 1 s steps, without reading the input',
      measured: `${durationText(whole - read)} and ${durationText(hand)} written out (${durationText(read)} to read)`,
      figure: `${((whole - read) / hand).toFixed(2)} ×`,
      bar: '1.5 ×',
      met: (whole - read) / hand <= 1.5,
    },
    {
      what: '10 000 steady speeds',
      measured: durationText(sweep * 1e6),
      figure: durationText(sweep * 1e6),
      bar: '50 ms',
      met: sweep <= 50,
    },
    {
      what: 'a log of a million rows, row by row',
      measured: durationText(trace * 1e6),
      figure: `${(trace / 1e3).toFixed(1)} µs a row`,
      bar: 'none',
      met: true,
    },
  ]
}
