/** What winter takes from the range: closed forms, laws of the parts, published corrections, and what is refused. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../src/quantity/index.js'
import { driveCycle, rangeAtSpeed, type Seasons, seasons } from '../../src/range/index.js'
import { between } from '../between.js'
import { said } from '../said.js'
import { least, module, whole } from './cars.js'

type Given = Parameters<typeof seasons>[0]

const { cycle: _, ...van } = least
const { cycle: __, auxiliaries: ___, ...rest } = whole
const { friction, ...wheels } = whole.car
/** With its gears and a pack that resists more in the cold. */
const packed = {
  ...rest,
  car: wheels,
  pack: { ...rest.pack, module: { ...module, cold: { temperature: '-10 °C', resistance: '55 mΩ' } } },
} as const satisfies Partial<Given>
const july = { temperature: '25 °C', auxiliaries: '250 W', usableEnergy: '12 kWh' } as const
const january = { temperature: '-5 °C', auxiliaries: '1.45 kW', usableEnergy: '10.8 kWh' } as const
const packJuly = {
  temperature: '30 °C',
  auxiliaries: '250 W',
  stateOfCharge: 0.9,
  reserve: 0.75,
  cellTemperature: '30 °C',
} as const
const packJanuary = {
  temperature: '-7 °C',
  auxiliaries: '1.5 kW',
  stateOfCharge: 0.9,
  reserve: 0.78,
  cellTemperature: '5 °C',
} as const

const names = ['airDensity', 'rollingResistance', 'heater', 'usableCapacity'] as const
const partsOf = ({ causes }: Seasons) => names.map((name) => causes[name].range.si)
const sum = (numbers: readonly number[]) => numbers.reduce((all, each) => all + each, 0)

/** Every order of a list. */
function orders<T>(list: readonly T[]): T[][] {
  if (list.length === 0) return [[]]
  return list.flatMap((first, i) => orders(list.toSpliced(i, 1)).map((others) => [first, ...others]))
}

/** The mean over all orders of what each of four changes takes, one order after the other. */
function meansOverOrders(summer: readonly number[], winter: readonly number[], rangeOf: (...four: number[]) => number) {
  const all = orders([0, 1, 2, 3])
  const lost = [0, 0, 0, 0]
  for (const order of all) {
    const now = [...summer]
    for (const i of order) {
      const before = rangeOf(...now)
      now[i] = winter[i] as number
      lost[i] = (lost[i] as number) + (before - rangeOf(...now)) / all.length
    }
  }
  return lost
}

/** Of dry air at sea level by the gas law: 101.325 kPa, R 287.05287 J/(kg·K). */
const density = (celsius: number) => 101325 / (287.05287 * (celsius + 273.15))
/** UN GTR No. 15, Annex 4, K_0 from memory. */
const factor = (celsius: number) => 1 / (1 + 8.6e-3 * (celsius - 20))

/** Metres at 80 km/h, from the road load, the efficiencies and the energy. */
const closedForm = (air: number, coefficient: number, watts: number, joules: number) => {
  const speed = 80 / 3.6
  const force = 0.5 * air * 0.62 * speed ** 2 + 780 * 9.80665 * coefficient
  return joules / (force / (0.93 * 0.86) + watts / speed)
}

describe('the range in two seasons', () => {
  it('says nowhere that tyres and cells are left as they are given, which a drive alone says', () => {
    const { temperature, auxiliaries, usableEnergy } = january
    const alone = rangeAtSpeed({ ...van, auxiliaries, usableEnergy, air: { temperature }, speed: '80 km/h' })
    expect(alone.assumptions.map(({ id }) => id)).toContain('air.weather')
    const journey = [{ distance: '5 km', speed: '70 km/h' }] as const
    for (const found of [
      seasons({ ...van, speed: '80 km/h', summer: july, winter: january }),
      seasons({ ...packed, journey, summer: packJuly, winter: packJanuary }),
    ]) {
      expect(found.assumptions.filter(({ id }) => id.endsWith('air.weather'))).toEqual([])
    }
  })

  it('is that of rangeAtSpeed, driven apart', () => {
    const { summer, winter, lost } = seasons({ ...van, speed: '80 km/h', summer: july, winter: january })
    for (const [season, { temperature, auxiliaries, usableEnergy }, celsius] of [
      [summer, july, 25],
      [winter, january, -5],
    ] as const) {
      const car = { ...van.car, rollingResistance: 0.012 * factor(celsius) }
      const [alone] = rangeAtSpeed({
        ...{ ...van, car, auxiliaries, usableEnergy },
        air: { temperature },
        speed: '80 km/h',
      }).speeds
      expect(season.range.si / (alone?.range?.si ?? 0)).toBeCloseTo(1, 12)
      expect(season.consumption.si / (alone?.consumption.si ?? 0)).toBeCloseTo(1, 12)
    }
    expect(lost.si).toBe(summer.range.si - winter.range.si)
  })
  it.each([
    // On ice the wheels spin, and below 188 V the controller gives up: neither may be lost on the way.
    [0.08, { cycle: 'ECE-15' }],
    [
      friction,
      { journey: [{ distance: '2 km', speed: '60 km/h', grade: 0.02, stops: 2, standing: '20 s' }], pace: {} },
    ],
    [undefined, { speed: '70 km/h', controller: { minimumVoltage: '188 V' } }],
  ] as const)('with a pack, gears and an altitude is that of the drives on %s of %o', (grip, road) => {
    const whole = { ...packed, car: { ...packed.car, friction: grip } }
    const air = { altitude: '800 m', headwind: '2 m/s' } as const
    const found = seasons({ ...whole, ...road, air, summer: packJuly, winter: packJanuary })
    for (const [season, { temperature, ...own }, celsius] of [
      [found.summer, packJuly, 30],
      [found.winter, packJanuary, -7],
    ] as const) {
      const car = { ...whole.car, rollingResistance: 0.012 * factor(celsius) }
      const drive = { ...whole, ...own, car, air: { ...air, temperature } }
      const { speeds } =
        'speed' in road ? rangeAtSpeed({ ...drive, ...road }) : { speeds: [driveCycle({ ...drive, ...road })] }
      const [alone] = speeds
      expect(season.range.si / (alone?.range?.si ?? 0)).toBeCloseTo(1, 12)
      expect(season.consumption.si / (alone?.consumption.si ?? 0)).toBeCloseTo(1, 12)
    }
    expect(sum(partsOf(found)) / found.lost.si).toBeCloseTo(1, 9)
    for (const name of names) expect(found.causes[name].range.si).toBeGreaterThan(0)
  })
  it('takes gears and their efficiencies by name and as a list', () => {
    const { gears: byName, ...others } = packed.gearbox
    const efficiency = { first: 0.9, second: 0.91, third: 0.92, fourth: 0.95 }
    const road = { speed: '50 km/h', summer: packJuly, winter: packJanuary } as const
    const named = seasons({ ...packed, gearbox: { ...others, gears: byName, efficiency }, ...road })
    const gearbox = { ...others, gears: Object.values(byName), efficiency: Object.values(efficiency) }
    expect(partsOf(seasons({ ...packed, gearbox, ...road }))).toEqual(partsOf(named))
    // At 50 km/h the fourth gear draws least.
    const fourth = seasons({ ...packed, gearbox: { ...packed.gearbox, efficiency: efficiency.fourth }, ...road })
    expect(partsOf(fourth)).toEqual(partsOf(named))
  })
})

describe('the part of each cause', () => {
  it('is its mean over all orders, worked out order by order from the closed form of a steady speed', () => {
    const ends = [
      [density(25), 0.012 * factor(25), 250, 12 * 3.6e6],
      [density(-5), 0.012 * factor(-5), 1450, 10.8 * 3.6e6],
    ] as const
    const wanted = meansOverOrders(...ends, closedForm as never)
    const found = seasons({ ...van, speed: '80 km/h', summer: july, winter: january })
    const lost = closedForm(...ends[0]) - closedForm(...ends[1])
    expect(found.lost.si / lost).toBeCloseTo(1, 12)
    for (const [i, name] of names.entries()) {
      const { range, share } = found.causes[name]
      expect(range.si / (wanted[i] as number)).toBeCloseTo(1, 9)
      expect((share?.si ?? 0) / ((wanted[i] as number) / lost)).toBeCloseTo(1, 9)
    }
  })
  it('of heater and capacity alone is half the sum of its first and its last place', () => {
    const winter = { ...january, temperature: july.temperature }
    const { causes } = seasons({ ...van, speed: '80 km/h', summer: july, winter })
    // By hand: kilometres of each energy at the consumption without and with the heater.
    const without = 1 / closedForm(density(25), 0.012 * factor(25), 250, 1)
    const heated = 1 / closedForm(density(25), 0.012 * factor(25), 1450, 1)
    const [full, small] = [12 * 3.6e6, 10.8 * 3.6e6]
    expect(causes.heater.range.si).toBeCloseTo(((full + small) / 2) * (1 / without - 1 / heated), 6)
    expect(causes.usableCapacity.range.si).toBeCloseTo(((full - small) / 2) * (1 / without + 1 / heated), 6)
    expect(causes.airDensity.range.si).toBe(0)
    expect(causes.rollingResistance.range.si).toBe(0)
  })
  const seasonAtRandom = fc.record({
    temperature: between(-30, 40).map((celsius) => quantity('temperature', celsius, '°C')),
    auxiliaries: between(0, 3000).map((watts) => quantity('power', watts, 'W')),
    usableEnergy: between(2, 30).map((hours) => quantity('energy', hours, 'kWh')),
    rollingResistance: fc.option(between(0.005, 0.03), { nil: undefined }),
  })
  const roads = fc.oneof(
    between(15, 120).map((kmh) => ({ speed: quantity('speed', kmh, 'km/h') })),
    fc.record({ distance: between(200, 3000), speed: between(15, 90), grade: between(-0.02, 0.05) }).map((stretch) => ({
      journey: [
        {
          distance: quantity('length', stretch.distance, 'm'),
          speed: quantity('speed', stretch.speed, 'km/h'),
          grade: stretch.grade,
        },
      ],
    })),
  )
  it('adds up with the others to the loss, and turns its sign where the seasons change places', () => {
    fc.assert(
      fc.property(roads, seasonAtRandom, seasonAtRandom, (road, summer, winter) => {
        const found = seasons({ ...van, ...road, summer, winter })
        const scale = found.summer.range.si + found.winter.range.si
        expect(Math.abs(sum(partsOf(found)) - found.lost.si) / scale).toBeLessThan(1e-9)
        const turned = seasons({ ...van, ...road, summer: winter, winter: summer })
        expect(turned.lost.si).toBe(-found.lost.si)
        for (const [i, part] of partsOf(turned).entries()) {
          expect(Math.abs(part + (partsOf(found)[i] as number)) / scale).toBeLessThan(1e-12)
        }
        const shares = names.map((name) => found.causes[name].share?.si)
        if (found.lost.si > 0) {
          for (const [i, share] of shares.entries()) expect(share).toBe((partsOf(found)[i] as number) / found.lost.si)
        } else expect(shares).toEqual([undefined, undefined, undefined, undefined])
      }),
    )
  })
  it('is nothing where the cause does not change', () => {
    fc.assert(
      fc.property(roads, seasonAtRandom, seasonAtRandom, (road, summer, winter) => {
        const same = { ...winter, auxiliaries: summer.auxiliaries, usableEnergy: summer.usableEnergy }
        const { causes } = seasons({ ...van, ...road, summer, winter: same })
        expect([causes.heater.range.si, causes.usableCapacity.range.si]).toEqual([0, 0])
        const { temperature } = summer
        const tyres = { temperature, rollingResistance: summer.rollingResistance }
        const warm = seasons({ ...van, ...road, summer, winter: { ...winter, ...tyres } })
        expect([warm.causes.airDensity.range.si, warm.causes.rollingResistance.range.si]).toEqual([0, 0])
      }),
    )
  })
  it('has the sign of what the cause does', () => {
    fc.assert(
      fc.property(roads, seasonAtRandom, seasonAtRandom, (road, one, other) => {
        const found = seasons({ ...van, ...road, summer: one, winter: other })
        const sign = (part: Quantity, isWorse: number) => expect(part.si * isWorse).toBeGreaterThanOrEqual(0)
        sign(found.causes.airDensity.range, one.temperature.si - other.temperature.si)
        sign(found.causes.heater.range, other.auxiliaries.si - one.auxiliaries.si)
        sign(found.causes.usableCapacity.range, one.usableEnergy.si - other.usableEnergy.si)
      }),
    )
  })
  it('is nothing, and no share, where both seasons are the same', () => {
    const found = seasons({ ...van, speed: '50 km/h', summer: july, winter: july })
    expect(found.lost.si).toBe(0)
    for (const name of names) {
      expect(found.causes[name].range.si).toBe(0)
      expect(found.causes[name]).not.toHaveProperty('share')
    }
    const pack = seasons({ ...packed, speed: '50 km/h', summer: packJuly, winter: packJuly })
    expect([pack.lost.si, ...partsOf(pack)]).toEqual([0, 0, 0, 0, 0])
  })
})

describe('what the cold does', () => {
  it('to the air is what ISO 2533 has: the density goes as one over the temperature', () => {
    const bare = { ...van, car: { ...van.car, rollingResistance: 0 } }
    const [warm, cold] = [
      { temperature: '15 °C', usableEnergy: '12 kWh' },
      { temperature: '-5 °C', usableEnergy: '12 kWh' },
    ] as const
    const { summer, winter, causes, lost } = seasons({ ...bare, speed: '90 km/h', summer: warm, winter: cold })
    expect(winter.range.si / summer.range.si).toBeCloseTo(268.15 / 288.15, 12)
    // 1.2250 kg/m³, ISO 2533, from memory.
    const force = 0.5 * 1.225 * 0.62 * 25 ** 2
    expect(summer.range.si / ((12 * 3.6e6 * 0.93 * 0.86) / force)).toBeCloseTo(1, 4)
    expect(causes.airDensity.range.si).toBeCloseTo(lost.si, 6)
  })
  it('to the tyres is what UN GTR No. 15 has, and to a percent what UN Regulation No. 117 has (both from memory)', () => {
    const bare = { ...van, car: { ...van.car, dragArea: '0 m²' } } as const
    const [warm, cold] = [
      { temperature: '20 °C', usableEnergy: '12 kWh' },
      { temperature: '-7 °C', usableEnergy: '12 kWh' },
    ] as const
    const { summer, winter, causes, lost } = seasons({ ...bare, speed: '50 km/h', summer: warm, winter: cold })
    // The force of 20 °C stays what it is.
    expect(summer.range.si / ((12 * 3.6e6 * 0.93 * 0.86) / (780 * 9.80665 * 0.012))).toBeCloseTo(1, 12)
    const left = winter.range.si / summer.range.si
    expect(left).toBeCloseTo(1 - 8.6e-3 * 27, 12)
    expect(Math.abs(left / (0.744 / 0.96) - 1)).toBeLessThan(0.01)
    expect(causes.rollingResistance.range.si).toBeCloseTo(lost.si, 6)
  })
  it('to a coast-down is done to its constant and its linear coefficient, the quadratic one follows the air', () => {
    const car = {
      mass: '780 kg',
      roadLoad: { constant: '90 N', linear: '1.5 N/(m/s)', quadratic: '0.4 N/(m/s)²', airDensity: '1.2 kg/m³' },
    } as const
    const found = seasons({ ...van, car, speed: '20 m/s', summer: july, winter: january })
    const rangeOf = (air: number, tyres: number, watts: number, joules: number) =>
      joules / ((tyres * (90 + 1.5 * 20) + (0.4 * 400 * air) / 1.2) / (0.93 * 0.86) + watts / 20)
    const wanted = meansOverOrders(
      [density(25), factor(25), 250, 12 * 3.6e6],
      [density(-5), factor(-5), 1450, 10.8 * 3.6e6],
      rangeOf as never,
    )
    for (const [i, part] of partsOf(found).entries()) expect(part / (wanted[i] as number)).toBeCloseTo(1, 9)
  })
  it('to the tyres may be told by season, and the car then needs no coefficient of its own', () => {
    const { rollingResistance: ____, ...car } = van.car
    const { summer, winter, assumptions } = seasons({
      ...{ ...van, car, speed: '80 km/h' },
      summer: { ...july, rollingResistance: 0.011 },
      winter: { ...january, rollingResistance: 0.015 },
    })
    expect(summer.range.si).toBeCloseTo(closedForm(density(25), 0.011, 250, 12 * 3.6e6), 6)
    expect(winter.range.si).toBeCloseTo(closedForm(density(-5), 0.015, 1450, 10.8 * 3.6e6), 6)
    expect(assumptions.map(said).join(' ')).not.toContain('20 °C')
  })
  it('to the cells is part of what the pack gives less, at the same charge', () => {
    const winter = { ...packJuly, cellTemperature: '-10 °C' } as const
    const { causes, lost } = seasons({ ...packed, speed: '90 km/h', summer: packJuly, winter })
    expect(lost.si).toBeGreaterThan(0)
    expect(causes.usableCapacity.range.si).toBeCloseTo(lost.si, 6)
    expect(causes.usableCapacity.share?.si).toBeCloseTo(1, 12)
  })
})

describe('what is said beside the figures', () => {
  it('names the season of each check, and of what goes for one season alone', () => {
    const { auxiliaries: ____, ...lampless } = packJuly
    const found = seasons({ ...packed, car: whole.car, cycle: 'ECE-15', summer: lampless, winter: packJanuary })
    expect(found.checks.map(({ name }) => name)).toContain('Peak current, in summer')
    expect(found.checks.map(({ name }) => name)).toContain('Peak current, in winter')
    expect(found.assumptions.map(said).filter((text) => text.startsWith('In '))).toEqual([
      'In summer: Nothing but the motor draws power: give auxiliaries.',
    ])
    // 1 / (1 + 8.6e-3 · 10) and 1 / (1 − 8.6e-3 · 27).
    expect(found.assumptions.map(said)).toContain(
      'The rolling resistance of the car is that at 20 °C: its tyres roll 0.9208 times as hard in summer, and 1.302 times as hard in winter.',
    )
    expect(new Set(found.assumptions.map(said)).size).toBe(found.assumptions.length)
    expect(new Set(found.assumptions.map(({ id }) => id)).size).toBe(found.assumptions.length)
    expect(found.cautions.map(({ hazard }) => hazard)).toEqual(['high voltage', 'lithium cells'])
  })
  it('shows in the working both seasons and each part, not the drives between', () => {
    const working = explain(() => seasons({ ...van, speed: '80 km/h', summer: july, winter: january }))
    const { summer, winter, causes } = working.result
    const headings = working.steps.map((step) => ('heading' in step ? step.heading : step.formula.name))
    expect(headings).toEqual([
      'The tyres in summer',
      'The tyres in winter',
      `In summer: ${summer.range}`,
      `In winter: ${winter.range}`,
      `By air density, over all orders: ${causes.airDensity.range}`,
      `By rolling resistance, over all orders: ${causes.rollingResistance.range}`,
      `By heater, over all orders: ${causes.heater.range}`,
      `By usable capacity, over all orders: ${causes.usableCapacity.range}`,
    ])
  })
})

describe('seasons refuses', () => {
  const both = { summer: july, winter: january } as const
  const refused = (given: Given, ...lines: readonly string[]) => {
    expect(() => seasons(given)).toThrow(InputError)
    for (const line of lines) expect(() => seasons(given)).toThrow(line)
    expect(() => seasons(given)).toThrow(/^seasons: /)
  }
  it('no road, and more than one', () => {
    refused(
      { ...van, ...both },
      "expected one of them: speed such as '70 km/h', cycle such as 'NEDC', or journey such as",
    )
    refused(
      { ...van, ...both, speed: '50 km/h', cycle: 'NEDC' },
      'speed, cycle and journey: expected one',
      'got speed and cycle',
    )
  })
  it('what belongs to another road', () => {
    refused(
      { ...van, ...both, speed: '50 km/h', pace: { acceleration: '1 m/s²' } },
      'pace: expected a journey to which it belongs, or nothing, got a steady speed',
    )
    refused({ ...van, ...both, cycle: 'NEDC', pace: {} }, 'pace: expected a journey to which it belongs')
  })
  it('a temperature or a load beside those of the seasons', () => {
    refused(
      {
        ...{ ...van, ...both, air: { temperature: '9 °C' } },
        journey: [
          { distance: '1 km', speed: '50 km/h' },
          { distance: '1 km', speed: '50 km/h', temperature: '5 °C', auxiliaries: '1 kW' },
        ],
      },
      'air.temperature: expected nothing: summer.temperature and winter.temperature stand in its place, got 9 °C',
      'journey[1].temperature: expected nothing: summer.temperature and winter.temperature stand in its place, got 5 °C',
      'journey[1].auxiliaries: expected nothing: summer.auxiliaries and winter.auxiliaries stand in its place, got 1 kW',
    )
    refused(
      { ...van, ...both, speed: '50 km/h', auxiliary: '250 W' } as never,
      'auxiliary: expected no such field; there are car, gearbox',
    )
  })
  it('a source of energy that is not told in just one way, by season', () => {
    const { usableEnergy: ____, ...bare } = january
    refused(
      {
        ...van,
        speed: '50 km/h',
        summer: { ...july, reserve: 0.1 },
        winter: { ...bare, cellTemperature: '5 °C' },
      },
      'summer.reserve: expected a pack to which it belongs, or nothing, got no pack',
      "winter.usableEnergy: expected an energy such as '12 kWh', or a pack for both seasons, got nothing",
      'winter.cellTemperature: expected a pack to which it belongs, or nothing, got no pack',
    )
    refused(
      { ...packed, speed: '50 km/h', summer: packJuly, winter: { ...packJanuary, usableEnergy: '5 kWh' } },
      'winter.usableEnergy: expected nothing: the pack tells its energy, got 5 kWh',
    )
    refused(
      {
        ...packed,
        speed: '50 km/h',
        summer: packJuly,
        winter: { ...packJanuary, stateOfCharge: 0.2, reserve: 0.5 },
      },
      'winter.reserve: expected a state of charge below that at the start',
    )
  })
  it('tyres that are not told, or told twice, or in air to which nothing is known of them', () => {
    const { rollingResistance: ____, ...slick } = van.car
    const winter = { ...january, rollingResistance: 0.014 }
    refused(
      { ...van, car: slick, speed: '50 km/h', summer: july, winter },
      'car: expected rollingResistance and dragArea',
    )
    const car = {
      mass: '780 kg',
      roadLoad: { constant: '90 N', linear: '0 N/(m/s)', quadratic: '0.4 N/(m/s)²' },
    } as const
    refused(
      { ...van, car, speed: '50 km/h', summer: july, winter },
      'winter.rollingResistance: expected nothing: car.roadLoad is corrected for the temperature of the air, got 0.014',
    )
    const arctic = { ...january, temperature: '-45 °C' } as const
    refused(
      { ...van, speed: '50 km/h', summer: july, winter: arctic },
      'winter.temperature: expected a temperature at least -40 °C and at most 50 °C, got -45 °C (beyond it, give winter.rollingResistance)',
    )
    const told = seasons({ ...van, speed: '80 km/h', summer: july, winter: { ...arctic, rollingResistance: 0.02 } })
    expect(told.winter.range.si).toBeCloseTo(closedForm(density(-45), 0.02, 1450, 10.8 * 3.6e6), 6)
  })
  it('a range that does not exist, and says in which season and why', () => {
    const failed = (given: Given, message: string | RegExp) => {
      expect(() => seasons(given)).toThrow(CalculationError)
      expect(() => seasons(given)).toThrow(message)
    }
    const downhill = [{ distance: '5 km', speed: '50 km/h', grade: -0.05 }] as const
    const unlit = { temperature: '25 °C', usableEnergy: '12 kWh' } as const
    failed(
      { ...van, controller: { regeneration: 0.8 }, journey: downhill, summer: unlit, winter: january },
      /^seasons: in summer the range has no end: the drive takes -0\.\d+ kWh$/,
    )
    failed(
      { ...van, speed: '20 km/h', air: { headwind: '-90 km/h' }, summer: july, winter: unlit },
      'seasons: in winter the range has no end: at 20 km/h it takes 0 Wh/km',
    )
    failed(
      { ...packed, speed: '70 km/h', summer: packJuly, winter: { ...packJanuary, auxiliaries: '200 kW' } },
      /^seasons: in winter the pack cannot give .* kW: at most .* kW at 90 % state of charge, held by the peak current/,
    )
    const roundAndBack = [
      { distance: '1 km', speed: '50 km/h', grade: 0.08 },
      { distance: '6 km', speed: '50 km/h', grade: -0.08 },
      { distance: '1 km', speed: '50 km/h' },
    ] as const
    const full = { temperature: '25 °C', stateOfCharge: 1, reserve: 0.1 } as const
    failed(
      { ...packed, controller: { regeneration: 1 }, journey: roundAndBack, summer: full, winter: packJanuary },
      'seasons: in summer the range is ended by nothing: a round gives the pack back what it takes',
    )
    const steep = [
      { distance: '500 m', speed: '40 km/h' },
      { distance: '500 m', speed: '40 km/h', grade: 0.45 },
    ] as const
    const slush = { ...packJanuary, rollingResistance: 0.4 } as const
    failed(
      { ...packed, journey: steep, summer: packJuly, winter: slush },
      /^seasons: in winter the car comes to a stand after 0\.5\d* km: what holds it is the torque of the motor$/,
    )
  })
  it('a range that both seasons have and a mixture of them lacks, and says which', () => {
    // The pack of summer feeds what is on in summer, and that of winter, too cold to give as much, only what is on in winter.
    const summer = { ...packJuly, auxiliaries: '40 kW' } as const
    const winter = { ...packJanuary, cellTemperature: '-25 °C', auxiliaries: '0 W' } as const
    expect(() => seasons({ ...packed, speed: '50 km/h', summer, winter })).toThrow(
      /^seasons: in summer but for the .*usable capacity of winter the pack cannot give/,
    )
  })
})
