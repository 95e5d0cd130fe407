/** A verdict never gets better when a load grows, a limit falls, a pulse is cut, or a datum is left out. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { climbingAbility, topSpeed } from '../../src/drivetrain/index.js'
import { enduranceOf, hardestStretch } from '../../src/electrical/fuse/pulses.js'
import type { Fuse } from '../../src/electrical/fuse/task.js'
import { worstMemory } from '../../src/formula/memory.js'
import { fieldsOf } from '../../src/procedure/index.js'
import { fromSi, type Quantity, quantity } from '../../src/quantity/quantity.js'
import { driveCycle } from '../../src/range/index.js'
import { between } from '../between.js'
import { patched } from '../patched.js'
import { runs } from '../runs.js'
import { car } from './drive.js'
import { electricalLaws } from './electrical.js'
import type { Worse } from './judgement.js'
import { foundBy, unmet } from './judgement.js'

/** A figure of an input, by its path. */
function figureAt(procedure: Worse['procedure'], input: unknown, path: string): Quantity {
  const field = fieldsOf(procedure).find((each) => each.path.replaceAll('[]', '.0') === path)?.field
  if (field?.sort !== 'quantity') throw new Error(`${path} is no quantity`)
  const written = path.split('.').reduce((part, key) => (part as { [key: string]: unknown })[key], input)
  return quantity(field.kind, written as never) as unknown as Quantity
}

/** A patch that scales figures by their paths. */
function scaled(procedure: Worse['procedure'], input: unknown, factors: { readonly [path: string]: number }): unknown {
  return Object.entries(factors).reduce((changed, [path, factor]) => {
    const { kind, si, unit } = figureAt(procedure, input, path)
    // A temperature moves by degrees: by 20 K for a factor of 2.
    const moved = kind === 'temperature' ? si + 20 * Math.log2(factor) : si * factor
    const patch = path.split('.').reduceRight<unknown>((inner, key) => ({ [key]: inner }), fromSi(kind, moved, unit))
    return patched(changed, listed(changed, patch))
  }, input)
}

/** A patch whose numbered keys are those of a list. */
function listed(input: unknown, patch: unknown): unknown {
  if (Object.getPrototypeOf(patch) !== Object.prototype) return patch
  const [[key, inner]] = Object.entries(patch as object) as [[string, unknown]]
  const part = (input as { [key: string]: unknown })[key]
  const change = listed(part, inner)
  if (!Array.isArray(input)) return { [key]: change }
  return input.map((each, i) => (i === Number(key) ? patched(each, change) : each))
}

const verdictOf = (procedure: Worse['procedure'], input: unknown) => {
  const found = foundBy(procedure, input)
  return found instanceof Error ? 'error' : unmet(found).length === 0 ? 'serves' : 'does not serve'
}

describe.each(electricalLaws.map((each) => [each.procedure.name, each] as const))('%s', (_, law) => {
  const { procedure, sound, worse } = law
  const paths = Object.keys(worse)
  it('starts from what serves', () => expect(verdictOf(procedure, sound)).toBe('serves'))
  it('serves no better with more load or a lesser limit', () => {
    let served = 0
    fc.assert(
      fc.property(
        fc.record(Object.fromEntries(paths.map((path) => [path, between(-0.6, 0.6).map((power) => 2 ** power)]))),
        fc.constantFrom(...paths),
        between(1, 2),
        (drawn, path, factor) => {
          const input = scaled(procedure, sound, drawn)
          const change = worse[path] === 'more' ? factor : 1 / factor
          const changed = scaled(procedure, input, { [path]: change })
          const before = verdictOf(procedure, input)
          if (before === 'serves') served++
          if (before === 'does not serve') expect([path, change, verdictOf(procedure, changed)]).not.toContain('serves')
        },
      ),
      { numRuns: runs(200) },
    )
    // The law says something only where both verdicts were met.
    expect(served).toBeGreaterThan(0)
    expect(served).toBeLessThan(runs(200))
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
      { numRuns: runs(1000) },
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
