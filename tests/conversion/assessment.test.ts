/** What an assessment comes to, and the ids by which a program finds its way in it. */
import { describe, expect, it } from 'vitest'
import { kindsOfFigures } from '../../src/conversion/figures.js'
import { type Assessment, assess, type FigureId, figure, readBuild } from '../../src/conversion/index.js'
import { sheetField } from '../../src/conversion/sheet/build.js'
import type { AnyField } from '../../src/procedure/index.js'
import { InputError } from '../../src/quantity/index.js'
import ids from './ids.json' with { type: 'json' }
import { all, demo, of } from './sheets.js'

const assessed = new Map(all)
const [found, firstTry, bare] = ['the demo', 'the first try', 'nothing but the car'].map((what) =>
  assessed.get(what),
) as [Assessment, Assessment, Assessment]

/** The lines that an id is written after, a star being whatever the compiler takes for a name. */
function matching(id: string, lines: readonly string[]): string[] {
  return lines.filter((line) => {
    const pattern = line
      .replace(/[.]/g, '\\.')
      .replace(/\{([^}]*)\}/g, (_, words: string) => `(?:${words.replaceAll(',', '|')})`)
      .replaceAll('*', '.*')
    return new RegExp(`^${pattern}$`).test(id)
  })
}

/** The words in braces written out. */
function writtenOut(line: string): string[] {
  const [whole, words] = /\{([^}]*)\}/.exec(line) ?? []
  if (whole === undefined || words === undefined) return [line]
  return words.split(',').flatMap((word) => writtenOut(line.replace(whole, word)))
}

/** Whether an id is after a pattern in which a star is one name. */
function isAfter(id: string, pattern: string): boolean {
  return new RegExp(`^${pattern.replace(/[.[]/g, '\\$&').replaceAll('*', '[^.]+')}$`).test(id)
}

describe.each(all)('the ids of %s', (_, assessment) => {
  it('are each of one kind, which is that of the figure', () => {
    for (const { id, value } of assessment.figures) {
      const lines = matching(id, Object.keys(kindsOfFigures))
      expect([id, lines.length]).toEqual([id, 1])
      expect([id, kindsOfFigures[lines[0] as keyof typeof kindsOfFigures]]).toEqual([id, value.kind])
    }
  })
  it('are unique: those of figures, of checks, of sections', () => {
    for (const each of [
      assessment.figures,
      assessment.checks,
      [...assessment.sections, ...assessment.unassessed],
      assessment.notes,
    ]) {
      const own = each.map(({ id }) => id)
      expect(own.filter((id, i) => own.indexOf(id) !== i)).toEqual([])
    }
  })
  it('are those of the list', () => {
    const known = (id: string, patterns: readonly string[]) => patterns.some((pattern) => isAfter(id, pattern))
    expect(assessment.figures.map(({ id }) => id).filter((id) => !known(id, ids.figures))).toEqual([])
    expect(assessment.checks.map(({ id }) => id).filter((id) => !known(id, ids.checks))).toEqual([])
    const sections = [...assessment.sections, ...assessment.unassessed].map(({ id }) => id)
    expect(sections.filter((id) => !ids.sections.includes(id))).toEqual([])
  })
  it('lead from checks and notes to fields of the sheet', () => {
    expect(pathsIn(assessment).filter((path) => !isField(sheetField, path))).toEqual([])
  })
})

/** Where checks and notes come from, and what is missing. */
function pathsIn({ checks, notes, sections, unassessed }: Assessment): string[] {
  return [
    ...checks.flatMap(({ paths }) => paths),
    ...[...notes, ...sections.flatMap((section) => section.notes)].map(({ path }) => path),
    ...unassessed.flatMap(({ missing }) => missing),
  ]
}

/** Whether a path leads to a field: `journeys.bakeryRound.stretches[2].speed`. */
function isField(field: AnyField | undefined, path: string): boolean {
  const keys = path.split(/[.[]/).map((key) => key.replace(']', ''))
  return keys.reduce<AnyField | undefined>((outer, key) => innerAt(outer, key), field) !== undefined
}

function innerAt(field: AnyField | undefined, key: string): AnyField | undefined {
  switch (field?.sort) {
    case 'group':
      return field.fields[key]
    case 'list':
    case 'byName':
      return field.of
    case 'pairs':
      return { ...field.of[0], sort: 'list', of: field.of[0], least: 2 }
    case 'either':
      return field.of.map((form) => innerAt(form, key)).find((each) => each !== undefined)
    default:
      return undefined
  }
}

describe('the list of ids', () => {
  it('has the figures of the compiler, and no more', () => {
    expect(ids.figures).toEqual(Object.keys(kindsOfFigures).flatMap(writtenOut))
  })
  it('has no check and no section that never arises', () => {
    const checks = all.flatMap(([, each]) => each.checks.map(({ id }) => id))
    expect(ids.checks.filter((pattern) => !checks.some((id) => isAfter(id, pattern)))).toEqual([])
    const sections = all.flatMap(([, each]) => [...each.sections, ...each.unassessed].map(({ id }) => id))
    expect(ids.sections.filter((id) => !sections.includes(id))).toEqual([])
  })
})

describe('a verdict', () => {
  it('is that a build holds, where every check leaves more than a twentieth of its limit', () => {
    // 100 N·m of 120 N·m; of 105 N·m it was 4.8 % that were left.
    const roomy = of({ gearbox: { ratedInputTorque: '120 N·m' } })
    expect([roomy.verdict, roomy.summary.fails, roomy.summary.unknown, roomy.summary.near]).toEqual([
      'holds',
      [],
      [],
      [],
    ])
    expect(found.verdict).toBe('near')
  })
  it('is that it fails, whatever else is near or not known', () => {
    // 8 modules of 44.4 V and 41 Ah: 14.563 kWh.
    expect(of({ targets: { energy: '14.57 kWh' } }).verdict).toBe('fails')
    expect(of({ targets: { energy: '14.57 kWh' }, car: { raised: undefined } }).verdict).toBe('fails')
  })
  it('is open where a check misses something, or a section of which the sheet holds a part', () => {
    const flat = of({ car: { raised: undefined } })
    expect([flat.verdict, flat.summary.unknown.map(({ ids }) => ids)]).toEqual([
      'open',
      [['brakes.order'], ['hill.grip']],
    ])
    const heatless = of({ module: { specificHeat: undefined } })
    expect([heatless.verdict, heatless.summary.unknown]).toEqual(['open', []])
  })
  it('is not open where the sheet does not ask: without a house nobody wants to know how long it is fed', () => {
    const homeless = of({ home: undefined })
    expect(homeless.verdict).toBe('near')
    expect(homeless.unassessed).toEqual([
      {
        id: 'home',
        title: 'An evening of house load',
        isAsked: false,
        missing: ['home'],
        why: 'add to the sheet: home',
      },
    ])
  })
})

describe('a summary', () => {
  const idsOf = (lines: Assessment['summary']['near']) => lines.map((each) => each.ids)
  it('tells the same check of four gears in one line', () => {
    const gears = ['first', 'second', 'third', 'fourth'].map((gear) => `gears.gearbox.torque.${gear}`)
    expect(idsOf(found.summary.near)).toEqual([gears])
    // The torque of the motor is the same in every gear.
    expect(found.summary.near[0]?.check.id).toBe(gears[0])
  })
  it('tells the worst of several first', () => {
    const { near } = of({ runs: { main: { maximumDrop: '0.15 %' } } }).summary
    const margins = near.map(({ check }) => check.margin as number)
    expect(margins).toEqual(margins.toSorted((one, other) => one - other))
    expect(near.length).toBeGreaterThan(1)
    const { fails } = firstTry.summary
    const worst = fails.map(({ check }) => check.margin ?? Number.NEGATIVE_INFINITY)
    expect(worst).toEqual(worst.toSorted((one, other) => one - other))
  })
  it('tells the figures that everybody asks for first', () => {
    expect(found.summary.figures.map(({ id }) => id)).toEqual([
      'weight.before.mass',
      'weight.after.mass',
      'weight.before.frontShare',
      'weight.after.frontShare',
      'weight.before.crossShare',
      'weight.after.crossShare',
      'pack.energy',
      'journeys.bakeryRound.summer.range',
      'journeys.bakeryRound.winter.range',
      'road.topSpeed',
      'road.startGrade',
      'road.to80.time',
      'charging.time',
    ])
    expect(bare.summary.figures.map(({ id }) => id)).toEqual([
      'weight.before.mass',
      'weight.after.mass',
      'weight.before.frontShare',
      'weight.after.frontShare',
      'weight.before.crossShare',
      'weight.after.crossShare',
    ])
  })
})

describe('what is not assessed', () => {
  it('names the fields to add, by their paths', () => {
    const missing = (patch: object) => of(patch).unassessed.map((each) => [each.id, each.missing])
    expect(missing({ charger: undefined })).toEqual([['charging', ['charger']]])
    expect(missing({ module: { specificHeat: undefined } })).toEqual([
      ['hill', ['module.specificHeat']],
      ['mornings', ['module.specificHeat']],
    ])
    const { unassessed } = assess(readBuild({ ...demo(), journeys: {} }))
    expect(unassessed.map((each) => [each.id, each.missing])).toEqual([['journeys', ['journeys']]])
    expect(missing({ seasons: undefined }).map(([id]) => id)).toEqual(['steady', 'journeys', 'hill', 'mornings'])
  })
  it('is asked for where the sheet holds a part of it', () => {
    const asked = (patch: object) => of(patch).unassessed.map((each) => [each.id, each.isAsked])
    expect(asked({ cooling: undefined })).toEqual([['hill', false]])
    expect(asked({ hill: undefined })).toEqual([['hill', true]])
  })
})

describe('a figure', () => {
  const errorOf = (assessment: Assessment, id: string): InputError => {
    try {
      figure(assessment, id as FigureId)
    } catch (error) {
      if (error instanceof InputError) return error
      throw error
    }
    throw new Error(`${id} is there`)
  }
  it('is found by its id', () => {
    expect(figure(found, 'weight.after.mass').in('kg')).toBeCloseTo(655, 9)
    for (const { id, value } of found.figures) expect(figure(found, id as FigureId)).toBe(value)
  })
  it('that is not there is told with the nearest that is', () => {
    expect(errorOf(found, 'weight.after.frontShar').message).toBe(
      [
        'figure: one input cannot be used',
        "  id: expected the id of a figure such as 'weight.after.mass', got 'weight.after.frontShar' (did you mean weight.after.frontShare?)",
      ].join('\n'),
    )
    expect(errorOf(found, 'journeys.bakeryRound.sumer.range').issues[0]?.hint).toBe(
      'did you mean journeys.bakeryRound.summer.range?',
    )
  })
  it('that is not there for want of something is told with what the sheet lacks', () => {
    expect(errorOf(bare, 'charging.peakCurrent').issues[0]?.hint).toBe('add to the sheet: charger, module, pack')
    expect(errorOf(bare, 'home.duration').issues[0]?.hint).toBe('add to the sheet: home, module, pack')
  })
})

describe('the first try', () => {
  const idsOf = (lines: Assessment['summary']['near']) => lines.flatMap((each) => each.ids).sort()
  it('misses its targets, stands on its rear wheels, and has no fuse that serves', () => {
    expect(firstTry.verdict).toBe('fails')
    expect(idsOf(firstTry.summary.fails)).toEqual([
      'runs.heater.fuse.candidates',
      'runs.main.fuse.candidates',
      'targets.energy',
      'targets.frontShareChange',
      'targets.kerbMassChange',
      'weight.placing.placing.frontShare',
      'weight.placing.placing.leftShare',
    ])
    // Scales: 360 of 650 kg in front. All modules lie in the two bays behind, six of them in the boot.
    expect(figure(firstTry, 'weight.after.frontShare').in('%')).toBeLessThan((360 / 650) * 100 - 8)
    expect(figure(firstTry, 'placement.boot.modules').si).toBe(6)
    const fuse = firstTry.checks.find(({ id }) => id === 'runs.main.fuse.candidates')?.text
    expect(fuse).toContain(
      'semiconductor fuse of 200 A (the fuse is of class aR, which opens on no overload: name in overload what does',
    )
  })
  it('leaves open what was not measured', () => {
    expect(idsOf(firstTry.summary.unknown)).toEqual([
      'charger.pack.chargeCurrent',
      'hill.grip',
      'journeys.bakeryRound.summer.pack.recovered',
      'journeys.bakeryRound.winter.pack.lowestVoltage',
      'journeys.bakeryRound.winter.pack.recovered',
      'precharge.precharge.inrush',
      'steady.winter.pack.coldResistance',
    ])
    expect(firstTry.unassessed.map(({ id, missing }) => [id, missing])).toEqual([
      ['brakes', ['brakes']],
      ['bars', ['bars']],
      ['insulation', ['insulation']],
      ['lowVoltage', ['lowVoltage']],
      ['hill', ['module.specificHeat']],
      ['mornings', ['module.specificHeat']],
      ['home', ['home']],
      ['grip', ['car.raised']],
    ])
  })
  it('is told what is unusual', () => {
    expect(firstTry.notes.map(({ id, path }) => [id, path])).toEqual([['auxiliaries.unusual', 'auxiliaries']])
  })
})

describe('assess and figure', () => {
  it('refuse options that there are not, and what is no assessment', () => {
    const build = readBuild(demo())
    expect(() => assess(build, { band: true } as never)).toThrow(
      'band: expected no such field; there are bands, got true',
    )
    expect(() => assess(build, { bands: 'yes' as never })).toThrow('bands: expected true or false')
    expect(() => figure(undefined as never, 'weight.after.mass')).toThrow('assessment: expected what assess has found')
  })
})
