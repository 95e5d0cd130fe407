/** Whatever a sheet holds, it is assessed or refused, in time, in words that can be read, and without NaN. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess, readBuild } from '../../src/conversion/index.js'
import { InputError } from '../../src/quantity/index.js'
import { toText } from '../../src/report/index.js'
import { runs } from '../runs.js'
import { mutationsOf } from './mutations.js'
import { demo } from './sheets.js'

/** Seconds of a processor: on a busy machine the clock says nothing. */
function processorSeconds(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1e6
}

/** A sheet as it is read, or nothing where it is refused, which must be as a sheet and in few words. */
function readOrRefuse(sheet: unknown) {
  try {
    return readBuild(sheet)
  } catch (error) {
    expect(error).toBeInstanceOf(InputError)
    expect((error as InputError).where).toBe('readBuild')
    expect(Buffer.byteLength((error as InputError).message)).toBeLessThan(20_000)
    return undefined
  }
}

/** Every number anywhere in a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}

/** How many sheets are drawn: `npm run fuzz` draws ten thousand, which takes some minutes. */
const COUNT = Number(process.env.FUZZ ?? runs(60, 600))

/** Words that no text of this library holds. */
const slips = /NaN|undefined|\[object|Infinity/

it('any sheet is assessed or refused', { timeout: 3_600_000 }, () => {
  // The first assessment of a process takes longer: nothing is compiled yet.
  assess(readBuild(demo()))
  let assessed = 0
  fc.assert(
    fc.property(mutationsOf(demo()), (sheet) => {
      const start = processorSeconds()
      const build = readOrRefuse(sheet)
      const assessment = build === undefined ? undefined : assess(build)
      // It takes well under two seconds; what takes ten hangs.
      expect(processorSeconds() - start).toBeLessThan(10)
      if (assessment === undefined) return
      assessed++
      expect(numbersIn(assessment).every(Number.isFinite)).toBe(true)
      // What people write may be called so.
      if (!slips.test(JSON.stringify(build))) expect(toText(assessment)).not.toMatch(slips)
      for (const each of [assessment.figures, assessment.checks, assessment.notes]) {
        expect(new Set(each.map(({ id }) => id)).size).toBe(each.length)
      }
    }),
    { numRuns: COUNT },
  )
  expect(assessed).toBeGreaterThan(COUNT / 40)
  // Names such as __proto__ have changed no other object.
  expect(Object.keys(Object.prototype)).toEqual([])
})
