/** Driving a log while it is read: as the cycle of the same log, in memory that does not grow, and what is refused. */
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { driveCycle, driveTrace, readCycle } from '../../src/range/index.js'
import { between } from '../between.js'
import { isDeep, runs } from '../runs.js'
import { least, module, whole } from './cars.js'
import { logOf } from './log.js'

const { cycle: _, ...light } = least
const { cycle: __, ...geared } = whole

describe('driveTrace', () => {
  it('gives what driveCycle gives over the same log, wherever it is cut', () => {
    const rows = fc.array(fc.tuple(between(0.3, 9), between(0, 25)), { minLength: 2, maxLength: 30 })
    fc.assert(
      fc.property(rows, fc.integer({ min: 1, max: 40 }), fc.boolean(), (pieces, length, isGeared) => {
        let time = 0
        const lines = pieces.map(([lasts, speed]) => {
          time += lasts
          return `${time},${speed}`
        })
        const text = `t (s),v (m/s)\n0,4\n${lines.join('\n')}`
        const cut = text.match(new RegExp(`[^]{1,${length}}`, 'g')) as string[]
        const drive = isGeared ? geared : light
        const { distance, duration, net, losses, peakPower, missed, checks } = driveTrace({ ...drive, log: cut })
        const { series, range, rangeEndedBy, currents, heats, ...wanted } = driveCycle({
          ...drive,
          cycle: readCycle({ log: text }),
        })
        const figures = { distance, duration, net, losses, peakPower, missed, checks }
        for (const [name, figure] of Object.entries(figures)) {
          expect(JSON.stringify(figure)).toBe(JSON.stringify(wanted[name as keyof typeof figures]))
        }
      }),
      { numRuns: runs(30, 300) },
    )
  })

  it('needs no more memory for a long log than for a short one', () => {
    setFlagsFromString('--expose-gc')
    const collect = runInNewContext('gc') as () => void
    const used = () => {
      collect()
      return process.memoryUsage().heapUsed
    }
    const growth = (rows: number) => {
      const before = used()
      let [most, count] = [0, 0]
      function* watched() {
        for (const piece of logOf(rows)) {
          if (count++ % 100 === 50) most = Math.max(most, used() - before)
          yield piece
        }
      }
      expect(driveTrace({ ...light, log: watched() }).duration.si).toBe(rows - 1)
      return most
    }
    growth(20_000)
    const rows = isDeep ? 300_000 : 150_000
    // Half of what two numbers for each of these rows would take.
    expect(growth(rows)).toBeLessThan(8 * rows)
  })

  it('ends where the pack is empty, says so, and still reads the rest for its faults', () => {
    const pack = { module: { ...module, capacity: '0.5 Ah' }, series: 4, parallel: 2 } as const
    const drive = { ...geared, auxiliaries: '0 W', pack } as const
    const driven = driveTrace({ ...drive, log: logOf(600) })
    expect(driven.duration.si).toBeLessThan(599)
    expect(driven.stateOfCharge?.si).toBeLessThanOrEqual(0)
    expect(() => driveTrace({ ...drive, log: [...logOf(600), '600,fast\n'] })).toThrow(
      'line 602: expected a speed in km/h',
    )
  })

  it('holds a usable energy against the drive', () => {
    const { checks } = driveTrace({ ...light, log: logOf(600), usableEnergy: '0.1 kWh' })
    expect(checks.map(({ name, verdict }) => `${name}: ${verdict}`)).toEqual(['Net energy of the drive: fail'])
  })

  it.each([
    [{ log: 7 }, 'driveTrace: one input cannot be used\n  log: expected text, or pieces of text, got 7'],
    [{ log: '' }, "line 1: expected a header such as 'time (s),speed (km/h)', got nothing"],
    [
      { log: 't (s),v (km/h)\n0,0\n60,50' },
      'line 3: expected a time at most 10 s after that of the row before, 0 s, got 60 s',
    ],
    [{ log: 't (s),v (mph/s)\n0,0\n6,50' }, 'line 1: expected a column of speed with its unit in brackets'],
    [{ log: 't (s),v (km/h)\n0,0\n6,50', cycle: 'NEDC' }, 'cycle'],
    [{ log: 't (s),v (km/h)\n0,0\n6,50', longestGap: '0 s' }, 'longestGap: expected a time above 0 s'],
  ])('refuses %o', (given, message) => {
    expect(() => driveTrace({ ...light, ...given } as never)).toThrow(message)
  })

  it('refuses a log that begins faster than the motor turns', () => {
    expect(() => driveTrace({ ...geared, log: 't (s),v (km/h)\n0,400\n1,390' })).toThrow(
      'log: expected one that begins no faster than the motor can turn',
    )
  })
})
