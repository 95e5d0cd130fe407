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

/** The net energy of the van over NEDC at steps of a second, in joules: all that driveCycle reckons of it, in one loop. */
function byHand(): number {
  const { seconds, metresPerSecond } = cycles.NEDC.corners
  const mass = 780
  const rolling = mass * 9.80665 * 0.012
  const air = 0.5 * (101325 / (287.05287 * 293.15)) * 0.62
  const turns = [3.6, 2.1, 1.4, 1].map((ratio) => (ratio * 4.1) / 0.28)
  const fastest = (8000 * 2 * Math.PI) / 60
  let net = 0
  for (let i = 1; i < seconds.length; i++) {
    const lasts = (seconds[i] as number) - (seconds[i - 1] as number)
    const [from, to] = [metresPerSecond[i - 1] as number, metresPerSecond[i] as number]
    const steps = Math.ceil(lasts * (1 - 1e-9))
    for (let k = 0; k < steps; k++) {
      const start = from + ((to - from) * k) / steps
      const end = from + ((to - from) * (k + 1)) / steps
      const mean = (start + end) / 2
      const duration = lasts / steps
      if (mean === 0) {
        net += (120 + 250) * duration
        continue
      }
      const through = (air / 6) * (start * start * start + 4 * mean * mean * mean + end * end * end)
      const wheel = through + rolling * mean + (mass * (end - start) * mean) / duration
      let best = Infinity
      for (let g = 3; g >= 0; g--) {
        const turning = mean * (turns[g] as number)
        if (Math.max(mean, end) * (turns[g] as number) > fastest) continue
        const most = Math.min(110, 42e3 / turning)
        const idle = 0.5 * turning + 120
        let drawn = idle
        if (wheel >= 0) {
          const torque = wheel / 0.93 / turning
          if (torque > most) continue
          drawn += torque * turning + 0.25 * torque * torque
        } else {
          const torque = Math.min((-wheel * 0.6 * 0.93) / turning, most)
          const braked = idle - torque * turning + 0.25 * torque * torque
          if (braked < idle) drawn = braked
        }
        if (drawn < best) best = drawn
      }
      net += (best + 250) * duration
    }
  }
  return net
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
  const net = driveCycle({ ...van, cycle: 'NEDC' }).net.si
  if (Math.abs(net / byHand() - 1) > 1e-6) throw new Error(`driveCycle gives ${net} J, the loop ${byHand()} J`)
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
