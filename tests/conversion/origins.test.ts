/** Where the figures of an assessment come from: every one leads back to formulas, procedures and the sheet, and gives itself. */
import { describe, expect, it } from 'vitest'
import { type Assessment, assess, type BuildSheet, type Origin, readBuild } from '../../src/conversion/index.js'
import type { Quantity } from '../../src/quantity/index.js'
import { patched } from '../patched.js'
import { isDeep } from '../runs.js'
import { demo, sheetOf } from './sheets.js'

/** What stands at a path such as `rows[2].topSpeed`. */
const at = (value: unknown, path: string): unknown =>
  path
    .split(/[.[\]]+/)
    .filter((step) => step !== '')
    .reduce<unknown>((outer, step) => Object(outer)[step], value)

/** Every origin behind one, itself first. */
function behind(origin: Origin | undefined, known = new Set<Origin>()): Set<Origin> {
  if (origin === undefined || known.has(origin)) return known
  known.add(origin)
  if (origin.by !== 'sheet') for (const each of Object.values(origin.inputs)) behind(each, known)
  return known
}

/** The figures and limits of an assessment with where they come from. */
function told({
  figures,
  checks,
}: Assessment): { readonly id: string; readonly value: Quantity; readonly from?: Origin }[] {
  const all = [
    ...figures.map(({ id, value, from }) => ({ id, value, from })),
    ...checks.map(({ id, actual, from }) => ({ id: `${id} (figure)`, value: actual, from })),
    ...checks.map(({ id, limit, limitFrom }) => ({ id: `${id} (limit)`, value: limit, from: limitFrom })),
  ]
  return all.filter(({ value }) => value !== undefined) as never
}

/** The value that an origin gives when it is worked out again. */
function again(origin: Origin, sheet: object): unknown {
  switch (origin.by) {
    case 'formula':
      return origin.step.formula(origin.step.inputs as never)
    case 'arithmetic': {
      const { operation, left, right } = origin
      if (operation === '+') return left.plus(right as never)
      if (operation === '−') return left.minus(right as never)
      return operation === '×' ? left.times(right as never) : left.over(right as never)
    }
    case 'procedure':
      return at(origin.result, origin.path)
    default:
      return at(sheet, origin.path)
  }
}

const examples: readonly (readonly [string, BuildSheet])[] = [
  ['the demo', demo()],
  ['the first try', sheetOf('wagtail-first-try')],
  ['one season', patched(demo(), { seasons: { winter: undefined }, car: { raised: undefined } })],
]

describe.each(examples)('the figures of %s', (_, sheet) => {
  const build = readBuild(sheet)
  const found = assess(build)

  it('are each what their origin gives', () => {
    for (const { id, value, from } of told(found)) {
      if (from !== undefined) expect((again(from, build) as Quantity | undefined)?.si, id).toBe(value.si)
    }
  })

  it('come of figures that are each what their own origin gives', () => {
    const origins = new Set(told(found).flatMap(({ from }) => [...behind(from)]))
    for (const origin of origins) {
      if (origin.by === 'sheet') continue
      const values: { readonly [key: string]: unknown } =
        origin.by === 'formula'
          ? origin.step.inputs
          : origin.by === 'arithmetic'
            ? { left: origin.left, right: origin.right }
            : {}
      for (const [key, inner] of Object.entries(origin.inputs)) {
        const value = origin.by === 'procedure' ? at(origin.given, key) : values[key]
        expect((again(inner, build) as Quantity).si, key).toBe((value as Quantity).si)
      }
    }
  })

  it.runIf(isDeep)('are found anew where their procedure is called once more', () => {
    const calls = new Map<unknown, Origin & { readonly by: 'procedure' }>()
    for (const { from } of told(found)) {
      for (const each of behind(from)) if (each.by === 'procedure') calls.set(each.result, each)
    }
    expect(calls.size).toBeGreaterThan(5)
    for (const { procedure, given, path, result } of calls.values()) {
      const other = procedure(given as never)
      expect((at(other, path) as Quantity).si, `${procedure.name} ${path}`).toBe((at(result, path) as Quantity).si)
    }
  })
})

describe('where figures come from', () => {
  const found = assess(readBuild(demo()))
  const from = (id: string) => found.figures.find((each) => each.id === id)?.from
  const by = (origin: Origin | undefined) =>
    origin?.by === 'formula'
      ? origin.step.formula.name
      : origin?.by === 'procedure'
        ? `${origin.procedure.name} ${origin.path}`
        : origin?.by === 'sheet'
          ? origin.path
          : origin?.operation

  it('is a formula, with where its inputs come from', () => {
    const energy = from('pack.energy')
    expect(by(energy)).toBe('packEnergy')
    const inputs = Object.entries((energy as { readonly inputs: { readonly [key: string]: Origin } }).inputs)
    expect(Object.fromEntries(inputs.map(([key, origin]) => [key, by(origin)]))).toEqual({
      voltage: 'seriesVoltage',
      capacity: 'parallelCharge',
    })
  })

  it('is arithmetic, a procedure or the sheet', () => {
    expect(by(from('weight.before.frontLeft'))).toBe('car.scales.frontLeft')
    expect(by(from('weight.change.mass'))).toBe('−')
    expect(by(from('road.topSpeed'))).toBe('topSpeed speed')
    expect(by(from('charge.moment0.power'))).toBe('chargePlan curve[0].power')
  })

  it('is told of all but these, of which there are fewer with each version', () => {
    const untold = told(found).filter((each) => each.from === undefined)
    expect(untold.map(({ id }) => id)).toEqual([
      'placement.front.modules',
      'placement.rightTunnel.modules',
      'placement.loadFloor.modules',
      'journeys.bakeryRound.summer.auxiliaryShare',
      'journeys.bakeryRound.winter.auxiliaryShare',
      'pack.available (limit)',
    ])
  })

  it('goes on behind every input of a formula but these, which are constants, numbers of the sheet, or found in a table or a loop', () => {
    const origins = new Set(told(found).flatMap((each) => [...behind(each.from)]))
    const loose = [...origins].flatMap((origin) => {
      if (origin.by !== 'formula') return []
      const { formula, inputs, defaults } = origin.step
      const known = [...Object.keys(origin.inputs), ...defaults]
      return Object.keys(inputs).flatMap((key) => (known.includes(key) ? [] : [`${formula.name}.${key}`]))
    })
    expect([...new Set(loose)].sort()).toEqual([
      'acFeedDrop.phases',
      'acPower.phases',
      'adiabaticConstant.beta',
      'adiabaticConstant.resistivity',
      'adiabaticConstant.volumetricHeat',
      'airDensity.pressure',
      'ampacityAtAmbient.ampacity',
      'ampacityAtAmbient.rated',
      'ampacityAtAmbient.ratedAmbient',
      'barAmpacityAtRise.rated',
      'boltPreload.bearing',
      'boltPreload.diameter',
      'boltPreload.pitch',
      'cableCurrent.outerDiameter',
      'capacityRate.density',
      'capacityRate.specificHeat',
      'commonCentre.secondMass',
      'consumption.power',
      'convectionCoefficient.length',
      'converterInputCurrent.power',
      'dischargeTime.to',
      'faultTimeConstant.resistance',
      'frontLockDeceleration.brakeShare',
      'fuseRating.ambientFactor',
      'fuseRating.loadFactor',
      'gradeForce.grade',
      'greatestFuseRating.fusingFactor',
      'gripGradeability.tractionLimit',
      'heaterEnergy.time',
      'heaterInput.coefficientOfPerformance',
      'idealFrontBrakeShare.deceleration',
      'insulationDrop.conductivity',
      'insulationDrop.conductorDiameter',
      'insulationDrop.outerDiameter',
      'jouleHeat.current',
      'lithiumFraction.empty',
      'lithiumFraction.full',
      'lithiumFraction.stateOfCharge',
      'loopInductance.radius',
      'minimumIsolation.perVolt',
      'motorSpeed.speed',
      'offsetTransfer.rollShare',
      'packResistance.parallel',
      'packResistance.series',
      'parallelCharge.count',
      'prechargeVoltage.resistance',
      'prospectiveCurrent.loopResistance',
      'radiationCoefficient.emissivity',
      'radiationCoefficient.surface',
      'rayleighNumber.length',
      'resistanceAtTemperature.warmTemperature',
      'resistancePerLengthAt.coefficient',
      'resistancePerLengthAt.resistance',
      'resistancePerLengthAt.temperature',
      'roadSpeed.motorSpeed',
      'rollingCircumference.factor',
      'seriesVoltage.count',
      'tyreDiameter.aspect',
      'tyreDiameter.rim',
      'tyreDiameter.width',
      'usableEnergy.lower',
      'ventilationHeat.density',
      'ventilationHeat.specificHeat',
      'wheelTorque.motorTorque',
    ])
  })

  it('is a formula or arithmetic for all that is not found in a loop, a search or a table', () => {
    const looped = found.figures.filter((each) => each.from?.by === 'procedure').map(({ id }) => id.split('.')[0])
    expect([...new Set(looped)].sort()).toEqual(
      // Top speed and times from standstill, crossings of pull and load, consumption at a speed, what the cold takes,
      // journeys, the charge in steps, the pack's temperature in steps, the flow of a loop, hours of a house, a fuse's curve,
      // the table of creepage, the years of a pack, sections by table, the 12 V side.
      'charge charging chargingPoint cold distances feeds fixedRatio hill home journeys life lowVoltage mornings precharge pull road runs steady'.split(
        ' ',
      ),
    )
  })

  it('is worked out only when it is asked for, and is no part of JSON', () => {
    const [first] = found.figures
    expect(Object.keys(first as object)).toEqual(['id', 'name', 'value'])
    expect(JSON.parse(JSON.stringify(first))).not.toHaveProperty('from')
    expect(structuredClone({ ...first, value: undefined })).not.toHaveProperty('from')
  })

  it('is the same where the work is written down all the same', () => {
    expect(found.figures.map((each) => by(each.from))).toEqual(
      assess(readBuild(demo())).figures.map((each) => by(each.from)),
    )
  })
})
