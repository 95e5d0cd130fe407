/** What it costs to drive a cycle, beside the same physics written out in one loop; a sweep of steady speeds; a long log. */

import { quantity } from 'kerbwatt/quantity'
import { cycles, driveCycle, driveTrace, energyAtSpeed } from 'kerbwatt/range'
import { byHand, van } from '../tests/range/by-hand.js'
import { logOf } from '../tests/range/log.js'
import { durationText, medianOf, type Row } from './row.js'

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

export function driveCycleRows(): Row[] {
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
  driveTrace({ ...van, log: logOf(1e6) })
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
