/** A verdict never gets better when a load grows, a limit falls, a pulse is cut, or a datum is left out. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { climbingAbility, topSpeed } from '../../src/drivetrain/index.js'
import { enduranceOf, hardestStretch } from '../../src/electrical/fuse/pulses.js'
import type { Fuse } from '../../src/electrical/fuse/task.js'
import { worstMemory } from '../../src/formula/memory.js'
import { type Check, isMet } from '../../src/procedure/index.js'
import { pathText, valueAt } from '../../src/procedure/path.js'
import { readField } from '../../src/procedure/reading.js'
import { InputError } from '../../src/quantity/index.js'
import { fromSi, type Quantity, quantity } from '../../src/quantity/quantity.js'
import { driveCycle } from '../../src/range/index.js'
import { between } from '../between.js'
import { changed, inputOf, placesIn } from '../engine/inputs.js'
import { isPlain } from '../engine/plain.js'
import { isDeep, runs } from '../runs.js'
import { car, driveLaws } from './drive.js'
import { electricalLaws } from './electrical.js'
import { foundBy, type Worse } from './judgement.js'
import { massLaws } from './mass.js'
import { thermalLaws } from './thermal.js'

/** A path as the fields of procedures are told by: a number is a place in a list. */
const stepsOf = (path: string) => path.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key))

/** A figure of an input, as it is read. */
const figureAt = ({ procedure, sound }: Worse, path: string) =>
  valueAt(readField(procedure.name, inputOf(procedure), sound), stepsOf(path)) as Quantity | number

/** A figure that is so many times as great. A temperature moves by degrees: by 20 K for a factor of 2. */
function scaled(figure: Quantity | number, factor: number): Quantity | number {
  if (typeof figure === 'number') return Math.round(figure * factor)
  const { kind, si, unit } = figure
  return fromSi(kind, kind === 'temperature' ? si + 20 * Math.log2(factor) : si * factor, unit)
}

/** What a procedure tells of an input, with whether that serves; undefined where the input is none. */
function judged({ procedure, serves = () => true }: Worse, input: unknown) {
  const found = foundBy(procedure, input)
  if (found instanceof InputError) return undefined
  if (found instanceof Error) return { serves: false, unmet: [], met: [], told: [] }
  const { checks = [], assumptions = [] } = found
  const ids = (isWanted: (each: Check) => boolean) => checks.filter(isWanted).map(({ id }) => id)
  return {
    serves: checks.every(isMet) && serves(found as never),
    unmet: ids((each) => !isMet(each)),
    met: ids(isMet),
    told: assumptions.map(({ text }) => text),
  }
}

describe.each(
  [...electricalLaws, ...driveLaws, ...massLaws, ...thermalLaws].map((each) => [each.procedure.name, each] as const),
)('%s', (_, law) => {
  const { procedure, sound, worse } = law
  const paths = Object.keys(worse)
  const figures = new Map(paths.map((path) => [path, figureAt(law, path)]))
  const inputWith = (factors: { readonly [path: string]: number }) =>
    paths.reduce<unknown>(
      (input, path) => changed(input, stepsOf(path), scaled(figures.get(path) as Quantity, factors[path] as number)),
      sound,
    )
  const factors = fc.record(
    Object.fromEntries(paths.map((path) => [path, between(-0.6, 0.6).map((power) => 2 ** power)])),
  )

  it('starts from what serves', () => expect(judged(law, sound)).toMatchObject({ serves: true, unmet: [] }))
  it('serves no better with more load or a lesser limit', () => {
    let [served, refused] = [0, 0]
    fc.assert(
      fc.property(factors, fc.constantFrom(...paths), between(1, 2), (drawn, path, factor) => {
        const before = judged(law, inputWith(drawn))
        if (before?.serves) served++
        if (before === undefined || before.serves) return
        refused++
        const change = worse[path] === 'more' ? factor : 1 / factor
        const after = judged(law, inputWith({ ...drawn, [path]: (drawn[path] as number) * change }))
        const mended = law.isTraded ? [] : before.unmet.filter((id) => after?.met.includes(id))
        expect([path, change, after?.serves ?? false, mended]).toEqual([path, change, false, []])
      }),
      { numRuns: law.isSlow && !isDeep ? 80 : runs(200) },
    )
    // The law says something only where both verdicts were met.
    expect(served).toBeGreaterThan(0)
    expect(refused).toBeGreaterThan(0)
  })
  const optional = placesIn(inputOf(procedure), sound).filter(
    ({ path, field }) => field.need === 'optional' && valueAt(sound, path) !== undefined && !isPlain(path),
  )
  it.runIf(optional.length > 0)('serves no better where a figure is left out', () => {
    fc.assert(
      fc.property(factors, fc.constantFrom(...optional), (drawn, { path }) => {
        const input = inputWith(drawn)
        const before = judged(law, input)
        if (before === undefined || before.serves) return
        const after = judged(law, changed(input, path, undefined))
        // What is told in its place is not silence.
        if (after?.told.some((text) => !before.told.includes(text))) return
        expect([pathText(path), after?.serves ?? false]).toEqual([pathText(path), false])
      }),
      { numRuns: isDeep ? 1000 : 40 },
    )
  })
})

const fuse = {
  curve: [
    ['200 A', '1000 s'],
    ['260 A', '100 s'],
    ['420 A', '5 s'],
    ['2 kA', '10 ms'],
  ].map(([current, time]) => [quantity('current', current as never), quantity('time', time as never)]),
  meltingIntegral: quantity('jouleIntegral', '30000 A²·s'),
} as unknown as Fuse
const course = fc.array(
  fc.tuple(
    between(0, 400),
    between(-2, 2.5).map((power) => 10 ** power),
  ),
  {
    minLength: 2,
    maxLength: 12,
  },
)
const share = ({ worst }: ReturnType<typeof hardestStretch>) => (worst === undefined ? 0 : worst.current / worst.borne)

describe('the hardest stretch of a load', () => {
  const endurance = enduranceOf(fuse, 100_000, true)
  const rating = 120
  const hardest = (load: readonly (readonly [number, number])[]) => hardestStretch(load, rating, endurance)

  it('is the same however the load is cut', () => {
    fc.assert(
      fc.property(course, fc.nat(), between(0.01, 0.99), (load, which, at) => {
        const i = which % load.length
        const [current, time] = load[i] as [number, number]
        const cut = [
          ...load.slice(0, i),
          [current, time * at],
          [current, time * (1 - at)],
          ...load.slice(i + 1),
        ] as typeof load
        expect(share(hardest(cut)) / (share(hardest(load)) || 1)).toBeCloseTo(share(hardest(load)) === 0 ? 0 : 1, 9)
      }),
      { numRuns: runs(200) },
    )
  })
  it('is hardly less where dips of 10 ms cut it', () => {
    fc.assert(
      fc.property(between(130, 400), between(1, 15), (current, time) => {
        const rest: [number, number] = [0, 1000]
        const whole = hardest([[current, time], rest])
        const dipped = hardest([
          ...Array.from({ length: 10 }, (): [number, number][] => [
            [current, time / 10 - 0.01],
            [0, 0.01],
          ]).flat(),
          rest,
        ])
        expect(share(dipped)).toBeGreaterThan(share(whole) * (1 - 0.1 / time) * 0.999)
      }),
      { numRuns: runs(100) },
    )
  })
  it('is found by nobody who looks at any other stretch', () => {
    fc.assert(
      fc.property(course, between(0, 1), between(0, 1), (load, from, long) => {
        const total = load.reduce((sum, [, time]) => sum + time, 0)
        const [start, length] = [from * total, Math.max(1e-4, long * total)]
        // The joule integral between two moments of a load that comes again and again, summed part by part.
        let [energy, time] = [0, 0]
        for (let i = 0; time < start + length; i++) {
          const [current, lasts] = load[i % load.length] as [number, number]
          const inside = Math.min(time + lasts, start + length) - Math.max(time, start)
          if (inside > 0) energy += current ** 2 * inside
          time += lasts
        }
        const rms = Math.sqrt(energy / length)
        const borne = endurance.current(length)
        if (rms <= rating || borne === undefined) return
        expect(rms / borne).toBeLessThanOrEqual(share(hardest(load)) * (1 + 1e-9))
      }),
      {
        numRuns: runs(1000),
        // The peaks, and so much of the rest that the mean comes down to the rating.
        examples: [
          [
            [
              [119.9, 300],
              [130, 1],
            ] as [number, number][],
            0.659,
            0.341,
          ],
        ],
      },
    )
  })
})

describe('what is held all day', () => {
  it('is the same of a drive, of the steepest grade and of the highest speed', () => {
    const verdicts = new Set<string>()
    fc.assert(
      fc.property(between(30, 110), between(0, 0.14), (kmh, grade) => {
        const speed = quantity('speed', kmh, 'km/h')
        const [climb] = climbingAbility({ ...car, speeds: [speed] }).climbs
        const most = climb?.continuous?.grade.si ?? Number.NaN
        // The start of the drive takes a little more than the steady speed.
        if (Math.abs(grade - most) < 0.004) return
        const journey = [{ distance: '60 km', speed, grade }] as const
        const { checks, missed } = driveCycle({ ...car, journey, pace: { acceleration: '0.2 m/s²' } })
        if (missed.length > 0) return
        const verdict = checks.find(({ id }) => id === 'motor.load')?.verdict
        verdicts.add(String(verdict))
        expect([kmh, grade, verdict === 'fail']).toEqual([kmh, grade, grade > most])
        const fastest = topSpeed({ ...car, grade }).continuous?.speed.si ?? 0
        expect([kmh, grade, speed.si > fastest]).toEqual([kmh, grade, grade > most])
      }),
      { numRuns: runs(60) },
    )
    expect(verdicts).toContain('fail')
    expect(verdicts).toContain('pass')
  })
})

describe('the memory of a load', () => {
  it('is the same however the load is cut and wherever its round begins', () => {
    fc.assert(
      fc.property(course, fc.nat(), between(1, 1000), (load, which, constant) => {
        const i = which % load.length
        const turned = [...load.slice(i), ...load.slice(0, i)].flatMap(([current, time]): [number, number][] => [
          [current, time / 3],
          [current, (2 * time) / 3],
        ])
        const of = (each: typeof load) =>
          worstMemory(
            each.map(([current, time]) => [current ** 2, time]),
            constant,
          )
        expect(of(turned) / (of(load) || 1)).toBeCloseTo(of(load) === 0 ? 0 : 1, 9)
      }),
      { numRuns: runs(200) },
    )
  })
  it('lies between the mean and the most', () => {
    fc.assert(
      fc.property(course, between(1, 1000), (load, constant) => {
        const squares = load.map(([current, time]) => [current ** 2, time] as const)
        const mean =
          squares.reduce((sum, [square, time]) => sum + square * time, 0) /
          squares.reduce((sum, [, time]) => sum + time, 0)
        const worst = worstMemory(squares, constant)
        expect(worst).toBeGreaterThanOrEqual(mean * (1 - 1e-9))
        expect(worst).toBeLessThanOrEqual(Math.max(...squares.map(([square]) => square)) * (1 + 1e-9))
      }),
      { numRuns: runs(200) },
    )
  })
  it('is that of a first-order body by its closed form', () => {
    // On for a, off for b, again and again: (1 − e^(−a/τ)) / (1 − e^(−(a + b)/τ)) at the end of each pulse (VDE of S3 duty; by definition).
    const [on, off, constant] = [240, 360, 1800]
    const expected = (1 - Math.exp(-on / constant)) / (1 - Math.exp(-(on + off) / constant))
    expect(
      worstMemory(
        [
          [1, on],
          [0, off],
        ],
        constant,
      ),
    ).toBeCloseTo(expected, 12)
    // Periodic duty, 4 min on and 6 min off, time constant of 30 min: overload of 1.5069 (Subrahmanyam, Electric Drives, ch. 5, recomputed).
    expect(1 / Math.sqrt(expected)).toBeCloseTo(1.5069, 4)
  })
})
