/** Drive cycles: their published totals, and logs that are read or refused. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError, quantity } from '../../src/quantity/index.js'
import { cycles, driveCycle, readCycle, sampleCycle } from '../../src/range/index.js'
import { said } from '../said.js'

/** Distance of a sampled trace by the trapezium rule, in metres. */
function distanceOf(samples: ReturnType<typeof sampleCycle>): number {
  return samples.reduce((sum, [time, speed], i) => {
    const [before, slower] = samples[i - 1] ?? [time, speed]
    return sum + ((speed.si + slower.si) / 2) * (time.si - before.si)
  }, 0)
}

describe('published cycles', () => {
  it.each([
    // The regulation's own break-down of ECE-15: 195 s (UN R83, read); the distances recomputed from the rows.
    ['ECE-15', 195, 1.01833, 50, 1e-5],
    ['EUDC', 400, 6.95486, 120, 1e-5],
    ['NEDC', 1180, 11.0282, 120, 5e-5],
    // Published: 0.664 km, read.
    ['Japan 10-mode', 135, 0.6639, 40, 5e-5],
  ] as const)('%s lasts %d s and goes %d km, at most %d km/h', (name, seconds, kilometres, fastest, within) => {
    const { duration, distance, maximumSpeed, meanSpeed } = cycles[name]
    expect(duration.si).toBe(seconds)
    expect(Math.abs(distance.in('km') - kilometres)).toBeLessThan(within)
    expect(maximumSpeed.in('km/h')).toBeCloseTo(fastest, 12)
    expect(meanSpeed.si).toBeCloseTo(distance.si / seconds, 12)
  })
  it.each([
    // UN R83 and R101, read: distances within 0.6 %, mean speeds to the figure printed.
    ['ECE-15', 1.013, 18.7, 0.006],
    ['EUDC', 6.955, 62.6, 0.0005],
    ['NEDC', 11.007, 33.6, 0.002],
    // Published, read.
    ['Japan 10-mode', 0.664, 17.7, 0.0005],
  ] as const)('%s is within print of the official %d km at %d km/h', (name, kilometres, mean, within) => {
    const { distance, meanSpeed } = cycles[name]
    expect(Math.abs(distance.in('km') / kilometres - 1)).toBeLessThan(within)
    expect(Math.abs(meanSpeed.in('km/h') - mean)).toBeLessThan(Math.max(0.051, within * mean))
  })
  it('ECE-15 spends its time as the regulation breaks it down', () => {
    // UN R83, read: idle 60 s, deceleration with the clutch out 9 s, gear changes 8 s, acceleration 36 s, steady 57 s,
    // deceleration 25 s. The last seconds before a stand are those with the clutch out.
    const { seconds, metresPerSecond } = cycles['ECE-15'].corners
    const spent = { idle: 0, faster: 0, slower: 0, steady: 0 }
    seconds.slice(1).forEach((time, i) => {
      const [from, to] = [metresPerSecond[i] as number, metresPerSecond[i + 1] as number]
      const sort = to > from ? 'faster' : to < from ? 'slower' : to === 0 ? 'idle' : 'steady'
      spent[sort] += time - (seconds[i] as number)
    })
    expect(spent).toEqual({ idle: 60, faster: 36, slower: 9 + 25, steady: 57 + 8 })
    expect(cycles['ECE-15'].standing.si).toBe(60)
  })
  it('are joined in NEDC', () => {
    expect(cycles.NEDC.distance.si).toBeCloseTo(4 * cycles['ECE-15'].distance.si + cycles.EUDC.distance.si, 8)
    expect(cycles.NEDC.standing.si).toBe(4 * cycles['ECE-15'].standing.si + cycles.EUDC.standing.si)
  })
})

describe('sampleCycle', () => {
  it('loses nothing of a cycle whose corners lie on whole seconds', () => {
    for (const cycle of Object.values(cycles)) {
      const samples = sampleCycle({ cycle })
      expect(samples).toHaveLength(cycle.duration.si + 1)
      expect(distanceOf(samples)).toBeCloseTo(cycle.distance.si, 8)
    }
  })
  it('ends where the cycle ends, also where the step does not divide it', () => {
    const samples = sampleCycle({ cycle: 'ECE-15', every: '7 s' })
    expect(samples.at(-1)?.map(String)).toEqual(['195 s', '0 km/h'])
    expect(samples).toHaveLength(29)
  })
  it('refuses what is no cycle, and a step that makes too many samples', () => {
    expect(() => sampleCycle({ cycle: 'ECE15' as never })).toThrow(
      "cycle: expected a cycle from readCycle or from kerbwatt/cycles, or the name of one: 'ECE-15', 'EUDC', 'NEDC', 'Japan 10-mode', got 'ECE15'",
    )
    const backwards = { ...cycles.EUDC, corners: { seconds: [0, 2, 1], metresPerSecond: [0, 1, 0] } }
    expect(() => sampleCycle({ cycle: backwards })).toThrow('cycle: expected a cycle from readCycle')
    expect(() => sampleCycle({ cycle: 'EUDC', every: '0.1 ms' })).toThrow('every: expected a step of at least 0.0004 s')
  })
})

const header = 'time (s),speed (km/h)\n'

describe('readCycle', () => {
  it('reads the corners of a cycle back as they were', () => {
    const { seconds, metresPerSecond } = cycles.NEDC.corners
    const rows = seconds.map(
      (time, i) => `${time},${quantity('speed', metresPerSecond[i] as number, 'm/s').in('km/h')}`,
    )
    const read = readCycle({ log: header + rows.join('\n'), name: 'NEDC', longestGap: '100 s' })
    expect(read).toMatchObject(cycles.NEDC)
    expect([read.notes, read.checks]).toEqual([[], []])
  })
  it('reads other units, separators, line ends and a log that does not start at zero', () => {
    const read = readCycle({ log: '\ufeffClock [min];Road speed [mph]\r\n10;0\r\n10.1;30\r\n10.2;30\r\n\r\n' })
    expect(String(read.duration)).toBe('12 s')
    expect(read.maximumSpeed.in('mph')).toBeCloseTo(30, 12)
    expect(read.distance.in('mi')).toBeCloseTo((15 * 6 + 30 * 6) / 3600, 12)
    expect(readCycle({ log: 't (s)\tv (m/s)\n0\t0\n1\t1' }).distance.si).toBe(0.5)
  })
  it('reads the same in pieces of any length', () => {
    const whole = header + Array.from({ length: 50 }, (_, i) => `${i},${(i * 37) % 60}.5`).join('\r\n')
    const wanted = readCycle({ log: whole })
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1 }), (lengths) => {
        const pieces: string[] = []
        for (let at = 0, i = 0; at < whole.length; i++) {
          const length = lengths[i % lengths.length] as number
          pieces.push(whole.slice(at, at + length))
          at += length
        }
        expect(readCycle({ log: pieces })).toEqual(wanted)
      }),
    )
  })
  it.each([
    ['', "line 1: expected a header such as 'time (s),speed (km/h)', got nothing"],
    [
      '0,0\n1,2\n',
      "line 1: expected a column of time with its unit in brackets, s, ms, min or h, such as 'time (s),speed (km/h)', or of ISO times under the title time, got '0', '0'",
    ],
    ['time,speed\n', 'line 1: expected a column of speed with its unit in brackets, km/h, m/s or mph, such as'],
    ['time (s),speed (kph)\n', "or in kn, got 'time (s)', 'speed (kph)' (did you mean km/h?)"],
    ['time (s),speed (V)\n', "got 'time (s)', 'speed (V)' (V measures a voltage)"],
    [
      'time (s),wheel (km/h),satellite (km/h)\n',
      "line 1: expected one column of speed, got 'wheel (km/h)', 'satellite (km/h)' (choose one with columns.speed)",
    ],
    [
      'time,speed (km/h)\n0,0\n1,3',
      "line 2: expected a time of ISO 8601 such as '2026-05-01T07:30:00.5Z' or '07:30:00', got '0'",
    ],
    ['time,speed (km/h)\n2026-02-30T00:00:00Z,0\n', "got '2026-02-30T00:00:00Z'"],
    [
      'time,speed (km/h)\n23:59:59,0\n00:00:01,3\n',
      'line 3: expected a time not before that of the row before, 23:59:59, got 00:00:01',
    ],
    [
      't (s);v (km/h)\n0;0,5\n1;1.5\n',
      "line 3: expected one sign before the decimals in the whole log, got '1.5', with , in the rows before",
    ],
    [header, 'line 2: expected at least two rows behind the header, got none'],
    [`${header}0,0\n`, 'line 3: expected at least two rows behind the header, got 1'],
    [`${header}0,0\n1,\n2,3\n`, 'line 3: expected a speed in km/h, a number such as 12.5, got an empty cell'],
    [`${header}0,0\n1,fast\n`, "line 3: expected a speed in km/h, a number such as 12.5, got 'fast'"],
    [`${header}0,0\n1,NaN\n`, "line 3: expected a speed in km/h, a number such as 12.5, got 'NaN'"],
    [`${header}0,0\n1,-2\n`, "line 3: expected a speed at least 0, got '-2'"],
    [`${header}0,0\n1,5 m/s\n`, "line 3: expected a speed in km/h, a number such as 12.5, got '5 m/s'"],
    [
      `${header}0,0\n0,5,3\n`,
      "line 3: expected two columns, time and speed, as in the header, got 3 columns, '0,5,3' (a comma separates columns here: write 0.5, not 0,5)",
    ],
    [`${header}0,0\n1\n`, "line 3: expected two columns, time and speed, as in the header, got one column, '1'"],
    [`${header}0,0\n2,5\n1,6\n`, 'line 4: expected a time not before that of the row before, 2 s, got 1 s'],
    [
      `${header}0,0\n1,5\n\n2,6\n`,
      'line 4: expected a row: only the end may be empty, got an empty line, and rows behind it',
    ],
    [
      `${header}0,0\n1,5\n61,6\n`,
      'line 4: expected a time at most 10 s after that of the row before, 1 s, got 61 s (the log has a gap',
    ],
    [header + 'x'.repeat(2000), 'line 2: expected columns, a line for each row'],
  ])('refuses %j', (csv, message) => {
    expect(() => readCycle({ log: csv })).toThrow(InputError)
    expect(() => readCycle({ log: csv })).toThrow(message)
  })
  it.each([
    'plain.csv',
    'decimal-comma.csv',
    'calendar.csv',
    'tabs.tsv',
    'knots.csv',
    'repeated.csv',
    'quotes.csv',
    'words.csv',
  ])('reads the same drive as another recorder writes it: %s', (file) => {
    const log = readFileSync(new URL(`logs/${file}`, import.meta.url), 'utf8')
    const columns = file === 'quotes.csv' ? { columns: { speed: 'speed, by the wheels (km/h)' } } : {}
    const { corners, distance, assumptions } = readCycle({ log, ...columns })
    expect(corners.seconds.map((time) => Math.round(time * 1e9) / 1e9)).toEqual([0, 1, 2, 3, 4, 5, 6])
    const wanted = [0, 2.5, 5, 10, 10, 5, 0]
    corners.metresPerSecond.forEach((speed, i) => {
      expect(speed).toBeCloseTo(wanted[i] as number, 8)
    })
    // By hand, as trapezia: 1.25 + 3.75 + 7.5 + 10 + 7.5 + 2.5.
    expect(distance.si).toBeCloseTo(32.5, 7)
    expect(assumptions.filter(({ id }) => id.startsWith('log.')).map(said)).toEqual(
      file === 'repeated.csv' ? ['3 rows have the time of the row before: the mean of their speeds counts.'] : [],
    )
  })
  it('refuses every row that cannot be used, each by its line, and lists them up to the twentieth', () => {
    const issuesOf = (log: string) => {
      try {
        readCycle({ log })
      } catch (error) {
        return (error as InputError).issues
      }
      return []
    }
    const log = `${header}0,0\n1,x\n2,5\n1,5\n3,5,5\n4,900\n5,6\n70,6\n71,-1\n`
    expect(issuesOf(log).map(({ path }) => path)).toEqual(['line 3', 'line 5', 'line 6', 'line 7', 'line 9', 'line 10'])
    const many = issuesOf(header + Array.from({ length: 50 }, (_, i) => `${i},x`).join('\n'))
    expect(many).toHaveLength(21)
    expect(many.at(-1)).toMatchObject({ path: 'log', received: '30 more rows that cannot' })
  })
  it('takes the columns that are asked for, and refuses titles that are not there', () => {
    const log = 'lap (s),time (s),v (km/h)\n0,5,0\n0,6,3\n'
    expect(readCycle({ log, columns: { time: 'time (s)' } }).duration.si).toBe(1)
    expect(() => readCycle({ log, columns: { time: 'clock' } })).toThrow(
      "columns.time: expected the title of one column, such as 'lap (s)', got 'lap (s)', 'time (s)', 'v (km/h)'",
    )
    expect(() => readCycle({ log, columns: { time: 'time (s)', speed: 'lap (s)' } })).toThrow(
      'line 1: expected a column of speed with its unit in brackets',
    )
  })
  it('counts an offset from the universal time, and a fraction of a second', () => {
    const log = 'time,v (km/h)\n2026-05-01T07:59:59.75+02:00,0\n2026-05-01 06:00:00.5Z,3\n'
    expect(readCycle({ log }).duration.si).toBe(0.75)
  })
  it('tells what the last digit could add: what a car then loses in its brakes', () => {
    // Ten times a second, 90 km/h that flickers by 1 km/h; half of the rows rise.
    const log = (low: number, high: number) => {
      const rows = Array.from({ length: 2001 }, (_, i) => `${i / 10},${i % 2 === 0 ? low : high}`)
      return `time (s),speed (km/h)\n${rows.join('\n')}`
    }
    const [note] = readCycle({ log: log(90, 91) }).notes
    // v (q/dt - c g) of each second row over the way v dt of two: (2.7778 - 0.0980665) / 2 / 9.80665 = 0.13663.
    const added = (1 / 3.6 / 0.1 - 0.01 * 9.80665) / 2 / 9.80665
    expect(note?.id).toBe('log.noise')
    expect(note?.value.si).toBe(Number(added.toPrecision(2)))
    // The same drive, by the balance of its energy: mass alone turns nothing, and the air is thin.
    const car = { mass: '800 kg', rollingResistance: 0.01, dragArea: '0.0001 m²', rotatingFactor: 1 } as const
    const { losses, distance } = driveCycle({
      car,
      gearbox: { efficiency: 1 },
      motor: { efficiency: 1 },
      cycle: readCycle({ log: log(90, 91) }),
      air: {},
    })
    expect(losses.brakes.si / distance.si / (800 * 9.80665)).toBeCloseTo(added, 4)
    expect(readCycle({ log: log(90, 91), smoothing: '2 s' }).notes).toEqual([])
  })
  it('says nothing of a digit that only rises, of two digits, and of falls that a car rolls out by itself', () => {
    const rows = (speeds: readonly string[], every: number) =>
      readCycle({ log: `t (s),v (km/h)\n${speeds.map((speed, i) => `${i * every},${speed}`).join('\n')}` }).notes
    const all = Array.from({ length: 600 }, (_, i) => i)
    expect(
      rows(
        all.map((i) => (i / 10).toFixed(1)),
        0.1,
      ),
    ).toEqual([])
    expect(
      rows(
        all.map((i) => (70 + (i % 2) * 2).toFixed(0)),
        1,
      ),
    ).toEqual([])
    expect(
      rows(
        all.map((i) => (70 + (i % 2) / 10).toFixed(1)),
        1,
      ),
    ).toEqual([])
    expect(
      rows(
        all.map((i) => (70 + (i % 2)).toFixed(0)),
        1,
      ),
    ).not.toEqual([])
    expect(
      rows(
        all.map((i) => (70 + (i % 2) / 10).toFixed(1)),
        0.1,
      ),
    ).not.toEqual([])
  })
  it('smooths by the mean over a window, which leaves straight lines and the ends as they are', () => {
    const ramp = readCycle({ log: 't (s),v (m/s)\n0,0\n3,6\n8,16\n10,20', smoothing: '3 s' })
    ramp.corners.metresPerSecond.forEach((speed, i) => {
      expect(speed).toBeCloseTo(2 * (ramp.corners.seconds[i] as number), 12)
    })
    // A triangle of 4 m/s over 4 s: its mean over 2 s around the top is 4 - 4/4 · 1 = 3 m/s.
    const triangle = readCycle({ log: 't (s),v (m/s)\n0,0\n2,0\n4,4\n6,0\n8,0', smoothing: '2 s' })
    // Beside it, where it begins: half of the window lies on the slope, with a mean of 1 m/s.
    expect(triangle.corners.metresPerSecond).toEqual([0, 0.5, 3, 0.5, 0])
    expect(triangle.assumptions.map(said)).toContain(
      'The speed is the mean over 2 s around each row: the distance is 0.008 km, 0.008 km as written.',
    )
    expect(() => readCycle({ log: 't (s),v (m/s)\n0,0\n2,0', smoothing: '0 s' })).toThrow(
      "smoothing: expected a time above 0 s, got '0 s'",
    )
  })
  it('refuses a longest gap that is none, and what is no text', () => {
    expect(() => readCycle({ log: header, longestGap: '0 s' })).toThrow(
      "longestGap: expected a time above 0 s, got '0 s'",
    )
    expect(() => readCycle({ log: header, longestGap: '10 m' as never })).toThrow(
      "longestGap: expected a time such as '90 s', got '10 m' (m measures a length)",
    )
    expect(() => readCycle({ log: 7 as never })).toThrow('log: expected text, or pieces of text, got 7')
    expect(() => readCycle({ log: [7] as never })).toThrow('expected pieces of text, got 7')
  })
})
