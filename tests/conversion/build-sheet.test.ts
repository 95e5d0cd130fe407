/** The build sheet as data: written again, its JSON Schema, the names on it, and its old shapes. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess, type Build, type BuildSheet, readBuild, writeBuild } from '../../src/conversion/index.js'
import { sheetField } from '../../src/conversion/sheet/build.js'
import { InputError } from '../../src/quantity/index.js'
import { isQuantity } from '../../src/quantity/read.js'
import { changesOf } from '../engine/inputs.js'
import { agreesWithSchema } from '../engine/schema.js'
import { patched } from '../patched.js'
import { runs } from '../runs.js'
import { demo, sheetOf } from './sheets.js'

/** What the reader says of a sheet, line by line; nothing where it reads it. */
function refusedFor(sheet: unknown): string[] {
  try {
    readBuild(sheet)
    return []
  } catch (error) {
    if (error instanceof InputError) return error.message.split('\n').slice(1)
    throw error
  }
}

describe('a build that is written', () => {
  it('is the sheet that was read, word for word, without what is for the editor alone', () => {
    const { $schema, ...sheet } = demo()
    expect($schema).toBe('../docs/build-sheet.schema.json')
    expect(JSON.stringify(writeBuild(readBuild(demo())))).toBe(JSON.stringify(sheet))
  })
  it('keeps the order of names and of fields, whatever it is', () => {
    const turned = (value: unknown): unknown =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.fromEntries(
            Object.entries(value)
              .reverse()
              .map(([key, each]) => [key, turned(each)]),
          )
        : value
    const { gearbox, $schema: _, ...others } = demo()
    // Gears are listed from the lowest speed up.
    const sheet = { ...(turned(others) as object), gearbox }
    expect(JSON.stringify(writeBuild(readBuild(sheet)))).toBe(JSON.stringify(sheet))
  })
  it('reads as the same build, as it was read and as its JSON: to the same doubles in the same units', () => {
    const flat = (build: Build) => {
      const quantities: unknown[] = []
      const gather = (value: unknown): void => {
        if (isQuantity(value)) quantities.push([value.kind, value.si, value.unit])
        else if (typeof value === 'object' && value !== null) Object.values(value).forEach(gather)
      }
      gather(build)
      return quantities
    }
    let read = 0
    fc.assert(
      fc.property(changesOf(sheetField, demo()), (sheet) => {
        if (refusedFor(sheet).length > 0) return
        read++
        const build = readBuild(sheet)
        const text = JSON.stringify(build)
        for (const again of [build, writeBuild(build), JSON.parse(text)]) {
          const other = readBuild(again)
          expect(other).toEqual(build)
          expect(flat(other)).toEqual(flat(build))
          expect(JSON.stringify(other)).toBe(text)
        }
      }),
      { numRuns: runs(12, 125) },
    )
    expect(read).toBeGreaterThan(runs(12, 125) / 4)
  })
  it('is refused where it is none', () => {
    expect(() => writeBuild({} as never)).toThrow(/^readBuild: 2 inputs cannot be used\n {2}title: expected text/)
  })
})

describe('the build sheet', () => {
  const schema = JSON.parse(readFileSync(new URL('../../docs/build-sheet.schema.json', import.meta.url), 'utf8'))
  agreesWithSchema('readBuild', sheetField, schema, demo())

  it('is one of draft-7, whose fields tell their unit and their bounds', () => {
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#')
    expect(schema.properties.car.properties.dragArea.description).toBe(
      'Drag coefficient times frontal area, in m², at least 0 m², usually 0.5 m² to 0.95 m²',
    )
    expect(schema.properties.runs.propertyNames).toEqual({ pattern: '^[A-Za-z][A-Za-z0-9]{0,63}$' })
  })
})

describe('a name', () => {
  // The life of the pack names the journey too.
  const text = JSON.stringify(patched(demo(), { pack: { life: undefined } }))
  const sheetWith = (name: string) => JSON.parse(text.replace('"bakeryRound"', JSON.stringify(name)))
  const named = (name: string) => refusedFor(sheetWith(name))
  it.each(['round', 'R2', 'constructor', 'hasOwnProperty', 'toString', 'valueOf'])('may be %s', (name) => {
    expect(named(name)).toEqual([])
    expect(Object.keys(readBuild(sheetWith(name)).journeys ?? {})).toEqual([name])
  })
  it.each(['', '__proto__', 'bakery round', '2nd', 'a.b', 'ä', 'a'.repeat(65)])('may not be %o', (name) => {
    const [line, ...others] = named(name)
    expect(line).toMatch(/^ {2}journeys: expected a name of at most 64 letters and digits that begins with a letter/)
    expect(others).toEqual([])
  })
  it('of a gear may be any, and none is lost', () => {
    const geared = (gears: string) => patched(demo(), { gearbox: { gears: JSON.parse(gears) } })
    const [line] = refusedFor({
      ...demo(),
      gearbox: { ...demo().gearbox, gears: JSON.parse('{ "__proto__": "3.8" }') },
    })
    expect(line).toBe("  gearbox.gears: expected another name, such as 'first', got '__proto__'")
    expect(refusedFor(geared('{ "the fifth": "0.8" }'))).toEqual([])
    // Both are called gears.fifth in an assessment.
    expect(refusedFor(geared('{ "fifth": "0.9", "fifth ": "0.8" }'))).toEqual([
      "  gearbox.gears: expected names that differ in letters or digits, got 'fifth' and 'fifth '",
    ])
  })
  it('of a field is no field of what every object has', () => {
    for (const key of ['constructor', '__proto__', 'toString']) {
      const sheet = JSON.parse(JSON.stringify(demo()).replace('"hill":{', `"hill":{"${key}":1,`))
      expect(refusedFor(sheet)).toEqual([
        `  hill.${key}: expected no such field; there are grade, length, speed, got 1`,
      ])
    }
    expect(({} as { readonly grade?: unknown }).grade).toBeUndefined()
  })
})

describe('an old shape', () => {
  it('is refused with the place where it belongs now', () => {
    const old = patched(demo(), {
      runs: [{ name: 'main run', length: '2.4 m' }],
      journeys: [{ name: 'the bakery round', stretches: [] }],
      pack: { bays: [{ name: 'in front', capacity: 8 }], usableInWinter: '80 %' },
      cooling: { outside: '32 °C' },
      heating: { outside: '-7 °C', night: { from: '18 °C', time: '10 h' } },
    })
    const named = 'each stands under a name of its own, such as { first: … }; words for people go into its title'
    const lines = refusedFor(old).map((line) => /^ {2}(\S+): .*\((.*)\)$/.exec(line)?.slice(1))
    expect(lines).toEqual([
      ['pack.bays', named],
      ['pack.usableInWinter', 'it belongs in a season, such as seasons.winter.usable'],
      ['runs', named],
      ['journeys', named],
      ['cooling.outside', "it belongs in a season: seasons: { summer: { outside: '32 °C' } }"],
      ['heating.outside', "it belongs in a season: seasons: { winter: { outside: '-7 °C' } }"],
      ['heating.night', "it belongs in a season: seasons: { winter: { night: { from: '18 °C', time: '10 h' } } }"],
    ])
  })
  it('of a name is told that it is a key now', () => {
    const [line] = refusedFor(patched(demo(), { runs: { main: { name: 'main run' } } }))
    expect(line).toMatch(
      /^ {2}runs\.main\.name: .*\(its key is its name in ids and paths; words for people go into its title\)$/,
    )
  })
})

describe('the wheels', () => {
  const wheels = (car: object) => readBuild(patched(demo(), { car })).car
  it('are known by a tyre, by their radius or by how far they roll in one turn', () => {
    expect(wheels({ tyre: '155/80-13' }).tyre).toBe('155/80-13')
    expect(wheels({ tyre: '5.20-13' }).tyre).toBe('5.20-13')
    expect(wheels({ tyre: undefined, rollingRadius: '273 mm' }).rollingRadius?.si).toBe(0.273)
    expect(wheels({ tyre: undefined, rollingCircumference: '1.714 m' }).rollingCircumference?.si).toBe(1.714)
  })
  it('in inches have a radius with what was assumed, or are refused with what to measure', () => {
    const { assumptions, figures } = assess(readBuild(patched(demo(), { car: { tyre: '5.20-13' } })))
    expect(assumptions.find(({ id }) => id === 'tyre.aspect')?.text).toMatch(/^'5\.20-13' has no aspect: 95 %/)
    // (13 + 2 · 0.95 · 5.20) · 25.4 mm · 2.99 over 2π.
    expect(figures.find(({ id }) => id === 'gears.rollingRadius')?.value.in('mm')).toBeCloseTo(276.555, 3)
    expect(refusedFor(patched(demo(), { car: { tyre: '6.2-13' } })).join()).toMatch(/car\.tyre: .*rollingCircumference/)
  })
  it('are refused where none or two of them are given', () => {
    const expected = "car.tyre: expected one of tyre such as '145/80 R13', rollingRadius and rollingCircumference, got"
    expect(refusedFor(patched(demo(), { car: { tyre: undefined } }))).toEqual([`  ${expected} none of them`])
    expect(refusedFor(patched(demo(), { car: { rollingRadius: '273 mm' } }))).toEqual([
      `  ${expected} tyre and rollingRadius`,
    ])
  })
})

describe('the sheets of the package', () => {
  it.each(['wagtail-850', 'wagtail-first-try'])('%s names its JSON Schema and says that it is invented', (name) => {
    const sheet: BuildSheet = sheetOf(name)
    expect(sheet.$schema).toBe('../docs/build-sheet.schema.json')
    expect(sheet.note).toMatch(/invented.*No such car or part exists\.$/)
  })
})

describe('what is no build sheet', () => {
  it.each([
    ['its text', JSON.stringify(demo()), 'expected a build sheet, an object such as JSON.parse(text) gives, got'],
    ['its bytes', new TextEncoder().encode('{}'), 'expected a build sheet, an object such as JSON.parse(text) gives'],
    ['nothing', undefined, 'got undefined'],
  ])('is refused with the mend: %s', (_, sheet, message) => {
    expect(refusedFor(sheet).join()).toContain(message)
  })
  it.each([
    ['objects', () => ({})],
    ['lists', () => []],
  ] as const)('is refused where it is nested too deep, in %s', (_, made) => {
    let inner: unknown = made()
    for (let i = 0; i < 9000; i++) inner = Array.isArray(made()) ? [inner] : { inner }
    expect(refusedFor({ ...demo(), removed: inner })).toEqual([
      '  expected a build sheet of at most 100 levels, got more',
    ])
  })
  it('is refused where it holds itself', () => {
    const sheet: { [key: string]: unknown } = { ...demo() }
    sheet.self = sheet
    expect(refusedFor(sheet)).toHaveLength(1)
  })
  it('is told once for a function, and where a path stands for a field', () => {
    expect(refusedFor({ ...demo(), note: () => 1 })).toHaveLength(1)
    const [line] = refusedFor({ ...demo(), 'pack.series': 3 })
    expect(line).toMatch(/^ {2}pack\.series: .*\(each field stands in its own object: \{ pack: \{ series: … \} \}\)$/)
  })
  it('has uncertainties by names that every object has', () => {
    for (const name of ['constructor', 'toString'])
      expect(refusedFor({ ...demo(), uncertain: { [name]: '5 %' } })).toEqual([
        `  uncertain.${name}: expected the path of a value of the sheet, such as car.dragArea, got '5 %'`,
      ])
  })
  it('has a journey by its road or by a cycle, which has its own pace', () => {
    const stretches = [{ distance: '5 km', speed: '50 km/h' }]
    const cycle = 'WLTC class 3b'
    for (const [journey, path, received] of [
      [{}, 'journeys.other', 'neither'],
      [{ stretches, cycle }, 'journeys.other', 'both'],
      [{ cycle, pace: { braking: '1 m/s²' } }, 'journeys.other.pace', 'a pace'],
      [{ cycle: 'WLTC' }, 'journeys.other.cycle', "'WLTC'"],
    ] as const) {
      const [line] = refusedFor({ ...demo(), journeys: { ...demo().journeys, other: journey } })
      expect(line).toMatch(new RegExp(`^ {2}${path}: expected .*, got ${received}$`))
    }
  })
  it('shows a value with what follows ± as it was written', () => {
    expect(refusedFor(patched(demo(), { car: { wheelbase: '2030 ± 5 mm' } }))).toEqual([
      "  car.wheelbase: expected a length such as '2.4 m', got '2030 ± 5 mm' (which unit? m, mm, cm, km, in, ft, yd or mi; a unit stands beside both numbers)",
    ])
  })
})
