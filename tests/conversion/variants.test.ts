/** Variants of a sheet: merge patch, comparison, study, and the front, each held against what is done by hand. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  assess,
  type Comparison,
  compare,
  explorationOf,
  explore,
  figure,
  frontOf,
  quantityOf,
  readBuild,
  readStudy,
  resultOf,
  type Study,
  type VariantResult,
  variantsOf,
  vary,
} from '../../src/conversion/index.js'
import { InputError, quantity } from '../../src/quantity/index.js'
import { outputOf } from '../example.js'
import { runs } from '../runs.js'
import { demo } from './sheets.js'

const examples = new URL('../../examples/', import.meta.url)
const wagtail = JSON.parse(readFileSync(new URL('wagtail-850.json', examples), 'utf8'))
/** The car with a pack, which takes little to assess. */
const { title, car, removed, added, module, pack, charger, targets } = wagtail
const light = { title, car, removed, added, module, pack }

/** What a study is refused with. */
function refusal(study: unknown): readonly string[] {
  try {
    explore(study as Study)
  } catch (error) {
    if (error instanceof InputError)
      return error.message
        .split('\n')
        .slice(1)
        .map((line) => line.trim())
    throw error
  }
  return []
}

describe('vary', () => {
  // RFC 7396, appendix A, all 15: original, patch, result.
  const cases = [
    ['{"a":"b"}', '{"a":"c"}', '{"a":"c"}'],
    ['{"a":"b"}', '{"b":"c"}', '{"a":"b","b":"c"}'],
    ['{"a":"b"}', '{"a":null}', '{}'],
    ['{"a":"b","b":"c"}', '{"a":null}', '{"b":"c"}'],
    ['{"a":["b"]}', '{"a":"c"}', '{"a":"c"}'],
    ['{"a":"c"}', '{"a":["b"]}', '{"a":["b"]}'],
    ['{"a":{"b":"c"}}', '{"a":{"b":"d","c":null}}', '{"a":{"b":"d"}}'],
    ['{"a":[{"b":"c"}]}', '{"a":[1]}', '{"a":[1]}'],
    ['["a","b"]', '["c","d"]', '["c","d"]'],
    ['{"a":"b"}', '["c"]', '["c"]'],
    ['{"a":"foo"}', 'null', 'null'],
    ['{"a":"foo"}', '"bar"', '"bar"'],
    ['{"e":null}', '{"a":1}', '{"e":null,"a":1}'],
    ['[1,2]', '{"a":"b","c":null}', '{"a":"b"}'],
    ['{}', '{"a":{"bb":{"ccc":null}}}', '{"a":{"bb":{}}}'],
  ] as const
  it.each(cases)('%s with %s is %s', (original, patch, result) => {
    expect(JSON.stringify(vary(JSON.parse(original), JSON.parse(patch)))).toBe(result)
  })
  it('touches neither sheet nor change', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (sheet, change) => {
        const before = JSON.stringify([sheet, change])
        vary(sheet, change)
        expect(JSON.stringify([sheet, change])).toBe(before)
      }),
    )
  })
  it('done twice is as done once', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (sheet, change) => {
        const once = vary(sheet, change)
        expect(vary(once, change)).toEqual(once)
      }),
    )
  })
  it('keeps __proto__ as a name like others, which the reader refuses', () => {
    const varied = vary({ a: 1 }, JSON.parse('{"__proto__":{"polluted":true},"constructor":{"prototype":{"p":1}}}'))
    expect(JSON.stringify(varied)).toBe('{"a":1,"__proto__":{"polluted":true},"constructor":{"prototype":{"p":1}}}')
    expect(Object.getPrototypeOf(varied)).toBe(Object.prototype)
    expect(({} as { readonly polluted?: true }).polluted).toBeUndefined()
    expect(() => readBuild(vary(light, JSON.parse('{"__proto__":{"polluted":true}}')))).toThrow(
      '__proto__: expected no',
    )
  })
  it('changes a sheet before it is read, quantities among it', () => {
    const sheet = vary(light, { pack: { series: 3 }, car: { payload: { mass: quantity('mass', '80 kg') } } })
    const build = readBuild(sheet)
    expect([build.pack?.series, build.pack?.parallel, build.car.payload.mass.si]).toEqual([3, 2, 80])
  })
  it('refuses what could mean two things, and what has no end', () => {
    expect(() => vary(light, { pack: { series: undefined } })).toThrow(
      'change.pack.series: expected a value, or null to leave the field out, got undefined',
    )
    const circle: { self?: unknown } = {}
    circle.self = circle
    expect(() => vary(light, circle)).toThrow('expected at most 100 levels')
  })
})

describe('compare', () => {
  let found: Comparison
  beforeAll(() => {
    const parts = {
      three: { pack: { series: 3 } },
      warmer: { seasons: { summer: { outside: '37 °C' } } },
      unsound: { pack: { series: 'three' } },
      homeless: { home: null },
    }
    const named = Object.entries(parts).map(([name, change]) => ({ name, sheet: vary(wagtail, change) }))
    found = compare([{ name: 'as it is', sheet: wagtail }, ...named])
  }, 120_000)
  const row = (id: string) => found.figures.find((each) => each.id === id)
  it('tells what each has more than the first', () => {
    // Two of eight modules of 11.5 kg and 44.4 V × 41 Ah.
    expect(row('weight.after.mass')?.differences[1]?.in('kg')).toBeCloseTo(-2 * 11.5, 9)
    expect(row('pack.energy')?.differences[1]?.in('kWh')).toBeCloseTo((-2 * 44.4 * 41) / 1000, 9)
    expect(row('weight.before.mass')?.differences.map((each) => each?.si)).toEqual([0, 0, 0, undefined, 0])
  })
  it('tells a difference of temperatures as one', () => {
    const { values, differences } = row('hill.packTemperature') as NonNullable<ReturnType<typeof row>>
    expect(differences[2]?.kind).toBe('temperatureDifference')
    expect(differences[2]?.si).toBeCloseTo(Number(values[2]?.si) - Number(values[0]?.si), 9)
    // The air is 5 K warmer, the pack begins so, and air of less density takes a little less from it.
    expect(differences[2]?.si).toBeCloseTo(5, 1)
  })
  it('keeps the order of the first', () => {
    expect(found.figures.slice(0, 4).map(({ id }) => id)).toEqual(
      assess(readBuild(wagtail))
        .figures.slice(0, 4)
        .map(({ id }) => id),
    )
  })
  it('has a verdict for each, and a column with its error for what is not sound', () => {
    expect(found.variants[0]).toEqual({ name: 'as it is', verdict: 'near' })
    expect(found.variants[1]).toEqual({ name: 'three', verdict: 'fails' })
    expect(found.variants[3]).toEqual({ name: 'unsound', error: expect.stringContaining('pack.series: expected') })
    for (const { values, differences } of found.figures)
      expect([values[3], differences[3]]).toEqual([undefined, undefined])
  })
  it('names the checks that come out otherwise, and only these', () => {
    // 6 modules of 1.8204 kWh are less than the 12 kWh that the sheet wants.
    expect(found.checks.find(({ id }) => id === 'targets.energy')).toEqual({
      id: 'targets.energy',
      name: 'Energy of the pack',
      from: 'pass',
      to: ['pass', 'fail', 'pass', undefined, 'pass'],
    })
    expect(found.checks.map(({ id }) => id)).toContain('home.inverter.load')
    expect(found.checks.map(({ id }) => id)).not.toContain('targets.kerbMassChange')
  })
  it('names the figures that only some have', () => {
    expect(found.onlySome).toContain('home.duration')
    expect(found.onlySome).not.toContain('weight.after.mass')
    expect(row('home.duration')?.values[4]).toBeUndefined()
  })
  it('does without a sound first, and puts last what only others have', () => {
    const { figures, checks, variants } = compare([
      { name: 'unsound', sheet: {} },
      { name: 'the car', sheet: { title, car } },
      { name: 'with a pack', sheet: light },
    ])
    expect(variants.map((each) => 'error' in each)).toEqual([true, false, false])
    expect(figures[0]?.differences).toEqual([undefined, undefined, undefined])
    expect(figures.at(-1)?.values[1]).toBeUndefined()
    expect(checks).toEqual([])
  })
  it('refuses no sheets, and two of one name', () => {
    expect(() => compare([])).toThrow('got an empty list')
    const sheet = { title, car }
    const twice = [
      { name: 'a', sheet },
      { name: 'a', sheet },
    ]
    expect(() => compare(twice)).toThrow("[1].name: expected a name other than that of [0], got 'a'")
  })
})

describe('the study of the example', () => {
  const series = [3, 4]
  const parallel = [2, 3]
  const drives = ['3.9', '4.375', '5.1']
  it('has the front that sheets made by hand have', async () => {
    const printed = await outputOf('which-pack-and-final-drive')
    const byHand = series.flatMap((inSeries) =>
      parallel.flatMap((beside) =>
        drives.map((finalDrive) => {
          const found = assess(
            readBuild({
              ...wagtail,
              pack: { ...pack, series: inSeries, parallel: beside },
              gearbox: { ...wagtail.gearbox, finalDrive },
            }),
          )
          const range = figure(found, 'journeys.bakeryRound.winter.range')
          const mass = figure(found, 'weight.after.mass')
          const time = figure(found, 'road.to80.time')
          const revolutions = figure(found, 'gears.fourth.motorAt90')
          // As many modules as are at hand: the one check of the study that does not hold for all.
          const holds = inSeries * beside <= 9
          const costs = [-range.si, mass.si, time.si, revolutions.si].map((cost) => cost.toPrecision(9)).map(Number)
          const told = [`${inSeries}s${beside}p`, finalDrive, range, mass, time, revolutions, found.verdict]
          return { holds, costs, told: told.join(' ') }
        }),
      ),
    )
    const holding = byHand.filter(({ holds }) => holds)
    const beats = (one: readonly number[], other: readonly number[]) =>
      one.every((cost, i) => cost <= (other[i] as number)) && one.some((cost, i) => cost < (other[i] as number))
    const best = holding.filter(({ costs }) => !holding.some((other) => beats(other.costs, costs)))
    const table = printed.slice(1, printed.indexOf('')).map((line) => line.trim().replace(/\s+/g, ' '))
    expect(table).toEqual(best.map((each) => `${byHand.indexOf(each) + 1} ${each.told}`))
    expect(table.length).toBeGreaterThan(1)
    expect(printed.filter((line) => line.endsWith('12, more than 9'))).toHaveLength(3)
  }, 120_000)
})

describe('a study', () => {
  const study = {
    sheet: light,
    vary: { 'pack.series': [3, 4], 'car.payload.mass': ['100 kg', '150 kg', 'heavy'], 'removed[0].mass': ['98 kg'] },
    objectives: { 'pack.energy': 'most', 'weight.after.mass': 'least' },
    hold: ['weight.laden.exchange.mass'],
  } as const
  it('has every combination, in order, the last path first, and touches nothing', () => {
    const before = JSON.stringify(study)
    const variants = variantsOf(study)
    expect(variants.count).toBe(6)
    expect([...variants].map(({ number, values }) => [number, ...Object.values(values)])).toEqual([
      [1, 3, '100 kg', '98 kg'],
      [2, 3, '150 kg', '98 kg'],
      [3, 3, 'heavy', '98 kg'],
      [4, 4, '100 kg', '98 kg'],
      [5, 4, '150 kg', '98 kg'],
      [6, 4, 'heavy', '98 kg'],
    ])
    expect([...variants][4]?.sheet).toEqual(light)
    expect(JSON.stringify(study)).toBe(before)
  })
  it('has a row with its error for an unsound sheet, and goes on', () => {
    const { results, unsound, front } = explore(study)
    expect(results.map(({ error }) => error === undefined)).toEqual([true, true, false, true, true, false])
    expect(unsound.map(({ number }) => number)).toEqual([3, 6])
    expect(unsound[0]?.error).toMatch(/^readBuild: .*\n {2}car\.payload\.mass: expected a mass .*, got 'heavy'/)
    // The payload changes neither figure: those that are equal stand on the front together.
    expect(front.map(({ number }) => number)).toEqual([1, 2, 4, 5])
  })
  it('tells what a member gives up against its neighbours', () => {
    const { front } = explore(study)
    const [against, ...others] = front[0]?.against ?? []
    expect(others).toEqual([])
    expect(against?.number).toBe(4)
    const amounts = (given: object = {}) => Object.entries(given).map(([id, amount]) => [id, quantityOf(amount)])
    expect(amounts(against?.givesUp).map(String)).toEqual(['pack.energy,-3.641 kWh'])
    expect(amounts(against?.gains).map(String)).toEqual(['weight.after.mass,-23 kg'])
    expect(front[2]?.against.map(({ number }) => number)).toEqual([1])
  })
  it('replaces all that stands at a path', () => {
    const other = { ...module, mass: '12 kg' }
    delete other.specificHeat
    const [, second] = variantsOf({ ...study, vary: { module: [module, other] } })
    expect(second?.sheet).toEqual({ ...light, module: other })
  })
  it('sets aside what fails, what is not known and what is not checked, each with its reason', () => {
    const { circuit: _, ...onAnyCircuit } = charger
    const { setAside, front } = explore({
      sheet: { ...light, targets },
      vary: {
        'charger': [charger, onAnyCircuit],
        'targets': [{ energy: '12 kWh' }, { energy: '20 kWh' }, { kerbMassChange: '10 kg' }],
      },
      objectives: { 'weight.after.mass': 'least' },
      hold: ['targets.energy', 'charge.circuit'],
    })
    expect(front.map(({ number }) => number)).toEqual([1])
    const reasons = setAside.map(({ notHeld }) => notHeld.map(({ hold, check, verdict }) => [hold, check, verdict]))
    const energy = (verdict: string) => ['targets.energy', verdict === 'fail' ? 'targets.energy' : undefined, verdict]
    const circuit = ['charge.circuit', 'charger.charge.circuit', 'unknown']
    expect(reasons).toEqual([
      [energy('fail')],
      [energy('unknown')],
      [circuit],
      [energy('fail'), circuit],
      [energy('unknown'), circuit],
    ])
    expect(setAside[0]?.notHeld[0]?.text).toBe('Energy of the pack: 14.56 kWh, less than 20 kWh')
    expect(setAside[1]?.notHeld[0]?.text).toBe('nothing is checked under it')
  })
  it('sets aside what lacks an objective, and tells what to add', () => {
    const { raised: _, ...level } = car
    const { setAside, front } = explore({
      ...study,
      vary: { car: [car, level] },
      objectives: { 'weight.after.mass': 'least', 'weight.after.up': 'least' },
    })
    expect(front.map(({ number }) => number)).toEqual([1])
    expect(setAside.map(({ number, missing }) => [number, Object.keys(missing)])).toEqual([[2, ['weight.after.up']]])
  })
  it('has no front where no sheet is sound', () => {
    const { front, unsound } = explore({ ...study, vary: { 'pack.series': ['three', 'four'] } })
    expect([front.length, unsound.length]).toEqual([0, 2])
  })
  it('may hold quantities, which are read as their text', () => {
    const of = (mass: unknown) => [...variantsOf({ ...study, vary: { 'car.payload.mass': [mass] } })][0]
    expect(of(quantity('mass', '80.5 kg'))).toEqual(of('80.5 kg'))
  })

  describe('is refused', () => {
    const one = { ...study, vary: { 'pack.series': [3] } }
    it.each([
      ['nothing', null, /^expected an object \{ \$schema\?, sheet, vary, objectives, hold\? \}/],
      ['the name of a file', { ...one, sheet: 'wagtail-850.json' }, /^sheet: expected the build sheet itself/],
      ['an unknown key', { ...one, objective: {} }, /^objective: expected no such field.*did you mean objectives/],
      ['no path', { ...one, vary: {} }, /^vary: expected a path with its values/],
      ['no objective', { ...one, objectives: {} }, /^objectives: expected an objective/],
      ['no value', { ...one, vary: { 'pack.series': [] } }, /^vary\.pack\.series: .*an empty list/],
      ['nothing to hold', { ...one, hold: [] }, /^hold: .*an empty list/],
      [
        'equal values',
        { ...one, vary: { module: [{ a: 1, b: [2] }, 3, { b: [2], a: 1 }] } },
        /^vary\.module\[2\]: .*\[0\]$/,
      ],
      ['a check twice', { ...one, hold: ['motor.load', 'motor.load'] }, /^hold\[1\]: expected each value once/],
      [
        'neither most nor least',
        { ...one, objectives: { 'pack.energy': 'more' } },
        /^objectives\.pack\.energy: .*most/,
      ],
      [
        'a slip in a path',
        { ...one, vary: { 'pack.serie': [3] } },
        /^vary\.pack\.serie: .*did you mean pack\.series\?/,
      ],
      ['a path cut short', { ...one, vary: { finalDrive: [3] } }, /did you mean gearbox\.finalDrive\?/],
      ['a path of no field', { ...one, vary: { 'pack.series.x': [3] } }, /^vary\.pack\.series\.x: expected the path/],
      ['no path at all', { ...one, vary: { 'pack..series': [3] } }, /^vary\.pack\.\.series: expected the path/],
      ['a path too long', { ...one, vary: { [`journeys.${'a'.repeat(1e5)}`]: [3] } }, /expected the path/],
      ['an index too high', { ...one, vary: { 'removed[5].mass': ['1 kg'] } }, /^vary\.removed\[5\]\.mass: .*below 5/],
      ['a name for an index', { ...one, vary: { 'removed.first': [3] } }, /^vary\.removed\.first: expected the path/],
      [
        'a part that is not there',
        { ...one, vary: { 'hill.grade': ['9 %'] } },
        /^vary\.hill\.grade: expected hill to be on/,
      ],
      [
        'a path in another',
        { ...one, vary: { 'car': [car], 'car.payload.mass': ['1 kg'] } },
        /^vary\.car\.payload\.mass: .*inside car$/,
      ],
      [
        'an id of no figure',
        { ...one, objectives: { 'weight.aftr.mass': 'least' } },
        /did you mean weight\.after\.mass\?/,
      ],
      [
        'an id that no variant has',
        { ...one, objectives: { 'placement.frnt.mass': 'least' } },
        /did you mean placement\.front\.mass\?/,
      ],
      [
        'a figure that needs more',
        { ...one, objectives: { 'charging.time': 'least' } },
        /^objectives\.charging\.time: .*add to the sheet: charger/,
      ],
      [
        'a check that no variant has',
        { ...one, hold: ['exchange.mas'] },
        /^hold\[0\]: .*did you mean exchange\.mass\?/,
      ],
      ['what is no number', { ...one, vary: { 'pack.series': [Number.NaN] } }, /^vary\.pack\.series\[0\]: .*got NaN/],
      ['what is no JSON', { ...one, hold: [() => true] }, /^hold\[0\]: expected plain JSON.*got a function/],
      [
        '__proto__',
        JSON.parse('{"sheet":{"seasons":{"__proto__":{}}}}'),
        /^sheet\.seasons\.__proto__: expected another name/,
      ],
    ])('for %s', (_, wrong, told) => {
      const [first, ...others] = refusal(wrong)
      expect(others).toEqual([])
      expect(first).toMatch(told)
    })
    it('for holding itself', () => {
      const sheet: { self?: unknown } = {}
      sheet.self = sheet
      expect(refusal({ ...one, sheet })).toEqual(['sheet.self: expected nothing that holds itself, got an object'])
    })
    it('for more than one thread gets through, at once and with the count', () => {
      const thousand = Array.from({ length: 1000 }, (_, i) => i + 1)
      const vary = { 'pack.series': thousand, 'pack.parallel': thousand, 'pack.available': thousand }
      const start = performance.now()
      expect(refusal({ ...study, vary })).toEqual([
        'vary: expected at most 100000 combinations, got 1000000000 (leave some values out)',
      ])
      expect(performance.now() - start).toBeLessThan(2000)
      const axes = Object.fromEntries(added.map((_: unknown, i: number) => [`added[${i}].mass`, thousand]))
      expect(refusal({ ...study, vary: axes })).toEqual([expect.stringContaining('got a number of 22 digits')])
      expect(
        variantsOf({ ...study, vary: { 'pack.series': thousand, 'pack.parallel': thousand.slice(0, 100) } }).count,
      ).toBe(1e5)
    })
  })
})

describe('the front', () => {
  const ids = ['pack.energy', 'weight.after.mass', 'weight.after.up', 'pack.resistance'] as const
  const units = { 'pack.energy': 'kWh', 'weight.after.mass': 'kg', 'weight.after.up': 'mm', 'pack.resistance': 'mΩ' }
  const kinds = {
    'pack.energy': 'energy',
    'weight.after.mass': 'mass',
    'weight.after.up': 'length',
    'pack.resistance': 'resistance',
  } as const
  const hundred = Array.from({ length: 100 }, (_, i) => i + 1)
  const senses = ['most', 'least', 'least', 'most'] as const
  const studyOf = (count: number) =>
    readStudy({
      sheet: light,
      vary: { 'pack.series': hundred, 'pack.parallel': hundred },
      objectives: Object.fromEntries(ids.slice(0, count).map((id, i) => [id, senses[i]])),
    })
  const studies = [1, 2, 3, 4].map(studyOf)

  /** Few different figures, so that many are equal; and any, some of which differ by what rounding leaves. */
  const figureDrawn = fc.oneof(
    fc.integer({ min: 0, max: 4 }),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.constantFrom(0.3, 0.1 + 0.2, -0),
  )
  const drawn = (most: number) =>
    fc.integer({ min: 1, max: 4 }).chain((count) =>
      fc.record({
        count: fc.constant(count),
        rows: fc.array(
          fc.record({
            figures: fc.tuple(...ids.slice(0, count).map(() => figureDrawn)),
            state: fc.constantFrom('sound', 'sound', 'sound', 'sound', 'unsound', 'fails', 'lacks'),
          }),
          { maxLength: most },
        ),
      }),
    )
  type Drawn = typeof drawn extends (most: number) => fc.Arbitrary<infer T> ? T : never
  const resultsOf = ({ rows }: Drawn): VariantResult[] =>
    rows.map(({ figures, state }, i) => {
      const all = figures.map((si, k) => {
        const id = ids[k] as (typeof ids)[number]
        return [id, { kind: kinds[id], si, unit: units[id] }] as const
      })
      const base = {
        number: i + 1,
        values: { 'pack.series': i },
        missing: {},
        notHeld: [],
        objectives: Object.fromEntries(all),
      }
      if (state === 'unsound') return { ...base, objectives: {}, error: 'readBuild: not sound' }
      const sound = { ...base, verdict: 'near' as const }
      if (state === 'fails') return { ...sound, notHeld: [{ hold: 'a', check: 'a', verdict: 'fail', text: 'a' }] }
      return state === 'lacks'
        ? { ...sound, objectives: Object.fromEntries(all.slice(1)), missing: { [ids[0]]: 'a' } }
        : sound
    })
  /** The numbers on the front, each held against each. */
  const byHand = ({ rows }: Drawn): number[] => {
    const costs = rows.map(({ figures }) =>
      figures.map((si, k) => Number(si.toPrecision(12)) * (senses[k] === 'least' ? 1 : -1)),
    )
    const isSound = rows.map(({ state }) => state === 'sound')
    const beats = (one: readonly number[], other: readonly number[]) =>
      one.every((cost, k) => cost <= (other[k] as number)) && one.some((cost, k) => cost < (other[k] as number))
    return costs.flatMap((mine, i) =>
      isSound[i] && !costs.some((other, j) => isSound[j] && beats(other, mine)) ? [i + 1] : [],
    )
  }
  const studyFor = ({ count }: Drawn) => studies[count - 1] as Study

  it('is that of holding each against each', () => {
    fc.assert(
      fc.property(drawn(60), (one) => {
        expect(frontOf(studyFor(one), resultsOf(one)).map(({ number }) => number)).toEqual(byHand(one))
      }),
      { numRuns: runs(200) },
    )
  })
  it('of thousands too, whether few or nearly all stand on it', () => {
    // On a sphere none is better in all, whatever the count of objectives above one; the grid makes some equal.
    const rows = Array.from({ length: 2000 }, (_, i) => {
      const [a, b, c] = [7, 11, 13].map((prime) => Math.round(20 * Math.abs(Math.sin(i * prime))) + 1) as [
        number,
        number,
        number,
      ]
      const length = Math.hypot(a, b, c)
      return { figures: [-a / length, b / length, c / length], state: 'sound' } as const
    })
    const mixed = rows.map(({ figures: [a, b, c] }) => ({ figures: [a, b, b * c], state: 'sound' }))
    // Most cost the least in one objective, and each is the best in its place of the other two.
    const level = rows.map((_, i) => ({ figures: [i, i % 7 === 0 ? 1 : 0, i], state: 'sound' }))
    for (const each of [rows, mixed, level]) {
      const one = { count: 3, rows: each } as unknown as Drawn
      const front = frontOf(studyFor(one), resultsOf(one)).map(({ number }) => number)
      expect(front).toEqual(byHand(one))
      expect(front.length).toBeGreaterThan(20)
    }
  })
  it('is the same in any order and any division, byte for byte', () => {
    const inParts = drawn(40).chain((one) =>
      fc.record({
        one: fc.constant(one),
        order: fc.shuffledSubarray([...one.rows.keys()], { minLength: one.rows.length }),
        parts: fc.integer({ min: 1, max: 6 }),
      }),
    )
    fc.assert(
      fc.property(inParts, ({ one, order, parts }) => {
        const study = studyFor(one)
        const results = resultsOf(one)
        const whole = JSON.stringify(frontOf(study, results))
        const shuffled = order.map((i) => results[i] as VariantResult)
        expect(JSON.stringify(frontOf(study, shuffled))).toBe(whole)
        const fronts = Array.from({ length: parts }, (_, part) =>
          frontOf(
            study,
            shuffled.filter((_, i) => i % parts === part),
          ),
        )
        // As lines that come from elsewhere, some of them twice.
        const lines = [...fronts, ...fronts.slice(0, 1)].flat().map((each) => JSON.parse(JSON.stringify(each)))
        expect(JSON.stringify(frontOf(study, lines))).toBe(whole)
      }),
      { numRuns: runs(200) },
    )
  })
  it('has as neighbours those that are next better in an objective, and what each gives up', () => {
    fc.assert(
      fc.property(drawn(30), (one) => {
        const front = frontOf(studyFor(one), resultsOf(one))
        const names = ids.slice(0, one.count)
        const figureOf = (number: number, k: number) => one.rows[number - 1]?.figures[k] as number
        const cost = (number: number, k: number) =>
          Number(figureOf(number, k).toPrecision(12)) * (senses[k] === 'least' ? 1 : -1)
        for (const { number, against } of front) {
          const wanted = names.flatMap((_, k) => {
            const better = front.filter((other) => cost(other.number, k) < cost(number, k))
            const next = Math.max(...better.map((other) => cost(other.number, k)))
            return better.find((other) => cost(other.number, k) === next)?.number ?? []
          })
          expect(against.map((each) => each.number)).toEqual([...new Set(wanted)])
          for (const { number: other, givesUp, gains } of against) {
            for (const [k, id] of names.entries()) {
              const between = cost(number, k) - cost(other, k)
              expect([id in givesUp, id in gains]).toEqual([between > 0, between < 0])
              const amount = (givesUp[id] ?? gains[id])?.si ?? 0
              if (between !== 0) expect(amount).toBe(figureOf(number, k) - figureOf(other, k) + 0)
            }
          }
        }
      }),
      { numRuns: runs(100) },
    )
  })
  it('tells a difference of temperatures as one', () => {
    const study = readStudy({
      sheet: light,
      vary: { 'pack.series': [1, 2] },
      objectives: { 'hill.packTemperature': 'least', 'weight.after.mass': 'least' },
    })
    const row = (number: number, temperature: number, mass: number): VariantResult => ({
      number,
      values: {},
      objectives: {
        'hill.packTemperature': { kind: 'temperature', si: temperature, unit: '°C' },
        'weight.after.mass': { kind: 'mass', si: mass, unit: 'kg' },
      },
      missing: {},
      notHeld: [],
    })
    const [first] = frontOf(study, [row(1, 310, 600), row(2, 300, 620)])
    expect(first?.against[0]?.givesUp).toEqual({
      'hill.packTemperature': { kind: 'temperatureDifference', si: 10, unit: 'K' },
    })
  })
  it('refuses what is no result of the study', () => {
    const study = studyOf(2)
    const [sound] = resultsOf({ count: 2, rows: [{ figures: [1, 2], state: 'sound' }] } as unknown as Drawn)
    const wrong = (change: object) => () => frontOf(study, [{ ...(sound as VariantResult), ...change }])
    expect(wrong({ number: 10_001 })).toThrow('results[0].number: expected a number from 1 to 10000, got 10001')
    expect(wrong({ number: undefined })).toThrow('results[0].number')
    expect(wrong({ objectives: { 'pack.energy': { kind: 'energy', si: null, unit: 'kWh' } } })).toThrow(
      'results[0].objectives.pack.energy: expected its kind, its value in SI units and its unit, got null',
    )
    expect(wrong({ objectives: { 'pack.energy': { kind: 'mass', si: 1, unit: 'kg' } } })).toThrow(InputError)
    expect(wrong({ objectives: [] })).toThrow('results[0].objectives: expected an object')
    expect(() => frontOf(study, [null as never])).toThrow(InputError)
    expect(() => frontOf(study, [sound as VariantResult, { ...(sound as VariantResult), values: {} }])).toThrow(
      'results[1].number: expected one result for each variant, got another of number 1',
    )
  })
})

describe('the parts of an exploration', () => {
  it('come to the same as the whole, in any order, as lines', () => {
    const study: Study = {
      sheet: light,
      vary: { 'pack.series': [2, 3, 4, 'x'], 'pack.parallel': [1, 2] },
      objectives: { 'pack.energy': 'most', 'weight.after.mass': 'least' },
      hold: ['exchange.rearMass'],
    }
    const whole = JSON.stringify(explore(study))
    const lines = Array.from(variantsOf(study), (variant) =>
      JSON.stringify(resultOf(study, JSON.parse(JSON.stringify(variant)))),
    )
    const found = explorationOf(
      study,
      lines.toReversed().map((line) => JSON.parse(line)),
    )
    expect(JSON.stringify(found)).toBe(whole)
  })
})

describe('any study', () => {
  const paths = fc.oneof(
    {
      weight: 30,
      arbitrary: fc.constantFrom(
        'pack.series',
        'car.payload.mass',
        'car.drivenAxle',
        'removed[0].mass',
        'title',
        'car.tyre',
        'pack',
        'targets',
      ),
    },
    fc.constantFrom(
      'pack.serie',
      'series',
      'removed[99]',
      '__proto__',
      'constructor',
      '',
      'car.scales[0]',
      'a'.repeat(50_000),
    ),
    fc.string(),
  )
  const values = fc.oneof(
    {
      weight: 30,
      arbitrary: fc.constantFrom<unknown>(2, 3, '100 kg', '12 kg', 'rear', 'front', '145/80 R13', { energy: '9 kWh' }),
    },
    fc.constantFrom<unknown>(Number.NaN, Number.POSITIVE_INFINITY, -0, null, undefined, 1e300, '1e308 kg', '0 kg'),
    fc.jsonValue(),
  )
  const objectives = fc.oneof(
    { weight: 30, arbitrary: fc.constantFrom('weight.after.mass', 'pack.energy', 'weight.after.frontShare') },
    fc.constantFrom('weight.after', 'journeys.a.b.range', '__proto__', 'a'.repeat(50_000)),
    fc.string(),
  )
  const checks = fc.oneof(
    { weight: 20, arbitrary: fc.constantFrom('exchange.mass', 'targets.energy', 'weight.laden.exchange.rearMass') },
    fc.constantFrom('', 'a'.repeat(50_000), 'exchange.mas'),
  )
  const sound = fc
    .subarray<[string, unknown[]]>(
      [
        ['pack.series', [3, 4]],
        ['car.payload.mass', ['80 kg', 'heavy']],
        ['removed[0].mass', ['98 kg']],
        ['targets', [{ energy: '12 kWh' }, { energy: 12 }]],
      ],
      { minLength: 1, maxLength: 2 },
    )
    .map(Object.fromEntries)
  const studies = fc.oneof(
    {
      weight: 12,
      arbitrary: fc.record(
        {
          sheet: fc.oneof(
            { weight: 9, arbitrary: fc.constant<unknown>(light) },
            fc.constantFrom<unknown>({ title, car }, {}),
            fc.jsonValue(),
          ),
          vary: fc.oneof(
            sound,
            fc.dictionary(paths, fc.uniqueArray(values, { maxLength: 3 }), { minKeys: 1, maxKeys: 2 }),
          ),
          objectives: fc.dictionary(
            objectives,
            fc.oneof({ weight: 9, arbitrary: fc.constantFrom('most', 'least') }, fc.string()),
            { minKeys: 1, maxKeys: 3 },
          ),
          hold: fc.uniqueArray(checks, { maxLength: 2 }),
        },
        { requiredKeys: ['sheet', 'vary', 'objectives'] },
      ),
    },
    fc.jsonValue(),
    fc.anything(),
  )
  const isSound = (value: unknown): boolean =>
    typeof value === 'number'
      ? Number.isFinite(value)
      : typeof value !== 'object' || value === null || Object.values(value).every(isSound)

  it('comes to a result or to an InputError, soon, without NaN', () => {
    // The first time takes longer.
    explore({ sheet: light, vary: { title: ['a'] }, objectives: { 'pack.energy': 'most' } })
    const outcomes = { found: 0, unsound: 0, refused: 0 }
    fc.assert(
      fc.property(studies, (study) => {
        const start = performance.now()
        try {
          const { front, unsound } = explore(study as Study)
          outcomes[front.length > 0 ? 'found' : 'unsound']++
          expect(isSound(front)).toBe(true)
          expect(unsound.every(({ error = '' }) => error.length < 20_000)).toBe(true)
        } catch (error) {
          if (!(error instanceof InputError)) throw error
          outcomes.refused++
          expect(error.message.length).toBeLessThan(20_000)
        }
        // Well under two seconds; what takes twenty hangs.
        expect(performance.now() - start).toBeLessThan(20_000)
      }),
      { numRuns: runs(200) },
    )
    for (const count of Object.values(outcomes)) expect(count).toBeGreaterThan(5)
  })
})

describe('what is no variant', () => {
  it('is refused by resultOf, and sheets without a name by compare, in a word each', () => {
    const study = {
      sheet: demo(),
      vary: { 'pack.series': [3, 4] },
      objectives: { 'weight.after.mass': 'least' },
    } as const
    for (const none of [null, {}, { number: 1 }])
      expect(() => resultOf(study, none as never)).toThrow('variant: expected one of variantsOf(study)')
    expect(() => compare([demo(), demo()] as never)).toThrow(
      "compare: 2 inputs cannot be used\n  [0]: expected a sheet under a name: { name: 'as it is', sheet }, got a sheet alone",
    )
  })
})
