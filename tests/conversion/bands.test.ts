/** How sure the key figures are, and what to measure next. */
import { describe, expect, it } from 'vitest'
import { type Assessment, assess, type Band, type Build, readBuild, writeBuild } from '../../src/conversion/index.js'
import { sheetField, withoutOwn } from '../../src/conversion/sheet/build.js'
import { uncertaintiesIn } from '../../src/conversion/sheet/uncertain.js'
import { normal, uniform } from '../../src/formula/random.js'
import { pathText, placed, type Step, valueAt } from '../../src/procedure/path.js'
import { fromSi, type Quantity } from '../../src/quantity/quantity.js'
import { isQuantity } from '../../src/quantity/read.js'
import { toText } from '../../src/report/index.js'
import { patched } from '../patched.js'
import { isDeep } from '../runs.js'
import { demo } from './sheets.js'

/** What takes long and has no key figure. */
const aside = { runs: undefined, precharge: undefined, cooling: undefined, home: undefined }
const banded = (patch: object) => assess(readBuild(patched(demo(), { ...aside, ...patch })), { bands: true })
const bandOf = ({ bands = [] }: Assessment, id: string) => bands.find((each) => each.id === id) as Band
const found = banded({})
/** The round of the demo without its hills. */
const levelRound = () => ({
  stretches: demo().journeys?.bakeryRound?.stretches?.map(({ grade: _, ...stretch }) => stretch),
})

describe('the bands of the demo', () => {
  it('are what a hand works out, of one input and of four alike', () => {
    // Energy is volts times capacity: 3 % of it, as typical of salvaged modules.
    const energy = bandOf(found, 'pack.energy')
    expect(energy.standardUncertainty.in('kWh')).toBeCloseTo(177.6 * 0.082 * 0.03, 9)
    expect(energy.contributions.map(({ path, share }) => [path, share])).toEqual([['module.capacity', 1]])
    expect(energy.contributions[0]?.because).toContain('common practice')
    expect(energy.interval.map((each) => each.in('kWh'))).toEqual([
      expect.closeTo(177.6 * 0.082 * 0.94, 9),
      expect.closeTo(177.6 * 0.082 * 1.06, 9),
    ])
    // Four scales of 1 kg: √4 kg.
    expect(bandOf(found, 'weight.after.mass').standardUncertainty.in('kg')).toBeCloseTo(2, 9)
  })
  it('take what the sheet says, which is expanded, at the value or apart', () => {
    // The energy needs no drive.
    const still = (patch: object) => banded({ motor: undefined, ...patch })
    const said = still({ module: { capacity: '41 Ah ± 2 Ah' } })
    expect(bandOf(said, 'pack.energy').standardUncertainty.in('kWh')).toBeCloseTo(0.1776 * 2 * 1, 9)
    expect(bandOf(said, 'pack.energy').contributions[0]).not.toHaveProperty('because')
    const apart = still({ uncertain: { 'module.capacity': '2 Ah' } })
    expect(bandOf(apart, 'pack.energy').standardUncertainty.si).toBe(bandOf(said, 'pack.energy').standardUncertainty.si)
  })
  it('grow with what is less sure, and leave the figures as they are', () => {
    const wide = banded({ car: { dragArea: '0.74 m² ± 20 %' } })
    const range = 'journeys.bakeryRound.winter.range'
    expect(bandOf(wide, range).standardUncertainty.si).toBeGreaterThan(bandOf(found, range).standardUncertainty.si)
    expect(wide.figures).toEqual(found.figures)
  })
  it('say which measurement narrows what, the best first', () => {
    expect(found.measureNext?.[0]).toMatchObject({ path: 'module.capacity', figure: 'pack.energy' })
    // Three times surer: 0.874 kWh / 3.
    expect(found.measureNext?.[0]?.text).toBe(
      'Measure capacity of the module (module.capacity) to ±0.82 Ah: energy is known to ±0.87 kWh, and would then be to ±0.29 kWh.',
    )
    const known = banded({ module: { capacity: '41 Ah ± 0.05 Ah' } })
    expect(known.measureNext?.map(({ path }) => path)).not.toContain('module.capacity')
  })
  it('stand in the text beside the key figures', () => {
    const text = toText(found)
    expect(text).toMatch(/energy {2,}14\.56 kWh ± 0\.87 kWh/)
    expect(text).toContain('Measure next')
    expect(toText(assess(readBuild(demo())))).not.toContain(' ± ')
  })
  it('are rough where the range goes in steps, as on a hilly round, and that is told; on a level one all are even', () => {
    const ranges = (hilly: Assessment) => (hilly.bands ?? []).filter(({ id }) => id.endsWith('.range'))
    // The pack is empty on a hill or just behind it, from where the car rolls home.
    for (const { steps } of ranges(found)) expect(steps).toContain('module.capacity')
    expect(bandOf(found, 'journeys.bakeryRound.summer.range').steps).toContain('car.dragArea')
    const rough = 'The band of summer, 32 °C: range, the journey repeated (journeys.bakeryRound.summer.range) is rough'
    expect(toText(found, { width: 300 })).toContain(`\nRough bands\n-----------\n  ${rough}`)
    const others = (found.bands ?? []).filter(({ id }) => !id.endsWith('.range'))
    expect(others.flatMap(({ steps, jumps }) => [...steps, ...jumps])).toEqual([])
    const level = banded({ journeys: { bakeryRound: levelRound() } })
    expect(ranges(level)).toHaveLength(2)
    expect(level.bands?.flatMap(({ steps, jumps }) => [...steps, ...jumps])).toEqual([])
    expect(toText(level)).not.toContain('Rough bands')
  })
  it('of a smooth figure of a value that is hardly known are not called rough', () => {
    // The time of a charge goes with one over the efficiency, which bends it by √3 · 13 % = 23 %.
    const wide = banded({ charger: { efficiency: '0.75 ± 26 %' }, journeys: undefined })
    expect(bandOf(wide, 'charging.time').contributions[0]?.path).toBe('charger.efficiency')
    expect(wide.bands?.flatMap(({ steps }) => steps)).toEqual([])
  })
  it.skipIf(!isDeep)(
    'agree with a Monte Carlo of the whole sheet',
    () => {
      // On a level round: on a hilly one the range goes in steps.
      const slim = {
        ...aside,
        charger: undefined,
        hill: undefined,
        fuses: undefined,
        journeys: { bakeryRound: levelRound() },
      }
      const build = readBuild(patched(demo(), slim))
      const { values } = uncertaintiesIn(sheetField, withoutOwn(build), {})
      const draw = normal(uniform(7))
      const draws = new Map<string, number[]>()
      for (let n = 0; n < 1000; n++) {
        const drawn = values.reduce<unknown>((whole, { keys, value, deviation }) => {
          const moved = fromSi(value.kind as 'mass', value.si + draw() * deviation, value.unit as 'kg')
          const patch = keys.reduceRight<unknown>((inner, key) => ({ [key]: inner }), moved)
          return merged(whole, patch)
        }, build)
        for (const { id, value } of assess(drawn as Build).summary.figures)
          draws.set(id, [...(draws.get(id) ?? []), value.si])
      }
      const bands = assess(build, { bands: true }).bands ?? []
      const ratios = bands.map(({ id, standardUncertainty }) => {
        const all = draws.get(id) as number[]
        const mean = all.reduce((sum, each) => sum + each) / all.length
        const variance = all.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (all.length - 1)
        return [id, standardUncertainty.si / Math.sqrt(variance)] as const
      })
      for (const [id, ratio] of ratios) expect([id, ratio > 0.9 && ratio < 1.1]).toEqual([id, true])
    },
    300_000,
  )
})

/** A value with a patch, quantities and all. */
function merged(whole: unknown, patch: unknown): unknown {
  if (Object.getPrototypeOf(patch) !== Object.prototype) return patch
  const changed = Object.entries(patch as object).map(([key, inner]) => [
    key,
    merged((whole as { readonly [key: string]: unknown })[key], inner),
  ])
  return { ...(whole as object), ...Object.fromEntries(changed) }
}

describe('uncertainties of a sheet', () => {
  it('go to a place of their own, and are written and read again', () => {
    const build = readBuild(patched(demo(), { car: { dragArea: '0.74 m² +/- 7 %' } }))
    expect(String(build.car.dragArea)).toBe('0.74 m²')
    expect(build.uncertain).toEqual({ 'car.dragArea': '7 %' })
    expect(readBuild(build)).toEqual(build)
    expect(readBuild(writeBuild(build))).toEqual(build)
  })
  it.each([
    [
      { car: { dragArea: '0.74 m² ± 0.05 m' } },
      "  car.dragArea: expected an area with its uncertainty such as '35 mm² ± 5 %', got '0.74 m² ± 0.05 m' (after ±:",
    ],
    [
      { pack: { usable: '90 % ± 2 %' } },
      "(that can be read in two ways: write '0.9 ± 0.02' for 88 % to 92 %, or '0.9 ± 2 %' for 88.2 % to 91.8 %)",
    ],
    [{ uncertain: { 'car.dragAria': '5 %' } }, 'uncertain.car.dragAria: expected the path of a value of the sheet'],
    [
      { car: { dragArea: '0.74 m² ± 5 %' }, uncertain: { 'car.dragArea': '5 %' } },
      'uncertain.car.dragArea: expected nothing, as an uncertainty stands at the value itself',
    ],
    [{ seasons: { summer: { outside: '32 °C ± 5 %' } } }, 'write the uncertainty of a temperature in K'],
    [{ car: { drivenAxle: 'rear ± 1' } }, 'car.drivenAxle: expected'],
  ])('refuses %j', (patch, message) => {
    expect(() => readBuild(patched(demo(), patch))).toThrow(message)
  })
  it('may be carried by every quantity of the sheet: in lists, in pairs, under names', () => {
    const { $schema: _, ...sheet } = demo()
    const build = readBuild(sheet)
    let count = 0
    const look = (read: unknown, path: readonly Step[]): void => {
      if (isQuantity(read)) {
        count++
        const [written, { kind, si }] = [String(valueAt(sheet, path)), read]
        const unit = written.replace(/^\S+/, '')
        const said = kind === 'temperature' ? '2 K' : si === 0 ? `1${unit}` : '5 %'
        const text = `${kind === 'ratio' ? si : written} ± ${said}`
        const { uncertain, ...rest } = readBuild(placed(sheet, path, text))
        expect(uncertain).toEqual({ [pathText(path)]: said })
        expect((valueAt(rest, path) as Quantity).si).toBe(si)
      } else if (typeof read === 'object' && read !== null) {
        for (const [key, each] of Object.entries(read)) look(each, [...path, Array.isArray(read) ? Number(key) : key])
      }
    }
    look(build, [])
    expect(count).toBeGreaterThan(200)
  })
})
