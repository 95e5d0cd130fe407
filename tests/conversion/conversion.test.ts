/** The build sheet and the assessment of the example car. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { weightsOf } from '../../src/conversion/chapters/weight.js'
import {
  type Assessment,
  assess,
  type BuildSheet,
  type FigureId,
  type FigureKinds,
  figure,
  readBuild,
} from '../../src/conversion/index.js'
import { sheetField } from '../../src/conversion/sheet/build.js'
import { protectRun } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { InputError, type Quantity } from '../../src/quantity/index.js'
import { toText } from '../../src/report/index.js'
import { changesOf } from '../engine/inputs.js'
import { runs } from '../runs.js'
import { said } from '../said.js'

const text = readFileSync(new URL('../../examples/wagtail-850.json', import.meta.url), 'utf8')
const sheet = (): BuildSheet => JSON.parse(text)
const found = assess(readBuild(sheet()))
const sectionOf = (assessment: Assessment, id: string) => {
  const section = assessment.sections.find((each) => each.id === id)
  if (section === undefined) throw new Error(`no section ${id}`)
  return section
}
const of = <const I extends FigureId>(id: I): Quantity<FigureKinds[I]> => figure(found, id)
/** A cell that holds words. */
const words = (section: string, row: string, column: string): unknown => {
  const table = sectionOf(found, section).tables.find(({ rows }) => rows.some(({ id }) => id === row))
  return table?.rows.find(({ id }) => id === row)?.values[table.columns.findIndex(({ id }) => id === column)]
}

describe('the example sheet, worked out by hand', () => {
  // Removed: 98·0.08 − 9·0.32 + 32·2.05 + 11·1.2 + 12·0.35 = 87.96 kg·m, and across 98·0.015 − 32·0.24 + 11·0.19 − 12·0.33
  // = −8.08 kg·m. Added without modules: 34·0.25 + 7·0.05 − 8·0.1 + 5·0.3 + 9·0.9 + 7·0.15 + 5·1.6 = 26.7 kg·m, and across
  // 7·0.12 − 8·0.15 + 5·0.18 + 9·0.06 = 1.08 kg·m.
  const bays = [
    { at: 0.15, left: 0, holds: 5 },
    { at: 1.05, left: 0.31, holds: 2 },
    { at: 1.05, left: -0.31, holds: 2 },
    { at: 1.6, left: 0, holds: 4 },
  ]
  const rearWith = (counts: readonly number[]) =>
    290 + (26.7 - 87.96 + counts.reduce((sum, n, i) => sum + n * 11.5 * (bays[i]?.at ?? 0), 0)) / 2.03
  const acrossBefore = ((182 - 178) * 1.22 + (143 - 147) * 1.19) / 2
  const acrossWith = (counts: readonly number[]) =>
    acrossBefore + 8.08 + 1.08 + counts.reduce((sum, n, i) => sum + n * 11.5 * (bays[i]?.left ?? 0), 0)
  it('weight: moments about the axles, part by part', () => {
    const rear = rearWith([4, 0, 2, 2])
    const axle = (...wheels: readonly ('frontLeft' | 'frontRight' | 'rearLeft' | 'rearRight')[]) =>
      wheels.reduce((sum, wheel) => sum + of(`weight.after.${wheel}`).in('kg'), 0)
    expect(axle('rearLeft', 'rearRight')).toBeCloseTo(rear, 9)
    expect(axle('frontLeft', 'frontRight')).toBeCloseTo(655 - rear, 9)
    expect(of('weight.after.mass').in('kg')).toBeCloseTo(650 - 162 + 75 + 92, 9)
    expect(of('weight.before.frontShare').in('%')).toBeCloseTo((360 / 650) * 100, 9)
    expect(of('weight.after.aft').in('m')).toBeCloseTo((rear / 655) * 2.03, 9)
    const sides = [
      ['frontLeft', 'frontRight', 1.22],
      ['rearLeft', 'rearRight', 1.19],
    ] as const
    const across = sides.reduce(
      (sum, [left, right, track]) =>
        sum + ((of(`weight.after.${left}`).si - of(`weight.after.${right}`).si) * track) / 2,
      0,
    )
    expect(across).toBeCloseTo(acrossWith([4, 0, 2, 2]), 9)
  })
  it('modules: none of all placements of eight in the four bays comes nearer', () => {
    const off = (counts: readonly number[]) =>
      Math.abs(rearWith(counts) / 655 - 290 / 650) +
      Math.abs(acrossWith(counts) / 655 / 1.205 - acrossBefore / 650 / 1.205)
    const all = [0, 1, 2, 3, 4, 5].flatMap((a) =>
      [0, 1, 2].flatMap((b) => [0, 1, 2].map((c) => [a, b, c, 8 - a - b - c])),
    )
    const whole = all.filter(([, , , d]) => (d as number) >= 0 && (d as number) <= 4)
    const least = Math.min(...whole.map(off))
    expect(off([4, 0, 2, 2])).toBeCloseTo(least, 12)
    const table = sectionOf(found, 'weight').tables[1]
    expect(table?.rows.map(({ id, name, values }) => [id, name, String(values[0])])).toEqual([
      ['front', 'over the front axle', '4'],
      ['rightTunnel', 'right of the tunnel', '2'],
      ['loadFloor', 'under the load floor', '2'],
    ])
    expect(table?.notes?.[0]).toMatch(/^No placement comes nearer to the target: proven over \d+ placements/)
  })
  it('springs: the front axle less its unsprung mass, before and after', () => {
    const front = 655 - rearWith([4, 0, 2, 2])
    const [before, after] = [360 - 48, front - 48]
    const wheelRate = 19000 * 0.92 ** 2
    expect(of('ride.front.springRate').in('N/mm')).toBeCloseTo((19 * after) / before, 9)
    expect(of('ride.front.heightChange').in('mm')).toBeCloseTo((((before - after) / 2) * 9.80665 * 1000) / wheelRate, 9)
    expect(of('ride.front.frequency').in('Hz')).toBeCloseTo(Math.sqrt(wheelRate / (after / 2)) / (2 * Math.PI), 9)
  })
  it('pack: 4 in series, 2 in parallel', () => {
    expect(of('pack.nominalVoltage').in('V')).toBeCloseTo(177.6, 9)
    expect(of('pack.maximumVoltage').in('V')).toBeCloseTo(201.6, 9)
    expect(of('pack.energy').in('kWh')).toBeCloseTo(177.6 * 0.082, 9)
    expect(of('pack.resistance').in('mΩ')).toBeCloseTo(28, 9)
    expect(of('pack.saggedVoltage').in('V')).toBeCloseTo(144 - 250 * 0.028, 9)
  })
  it('arrangements: what nine modules can make between 96 V and 220 V', () => {
    // 5 in series are 252 V when full; 2 are 72 V when empty; 3 × 2 are 133.2 V · 82 Ah = 10.9 kWh of the 12 wanted.
    const [table] = sectionOf(found, 'pack').tables
    expect(table?.rows.map(({ name }) => name)).toEqual([
      '4 in series, 2 in parallel (the sheet)',
      '3 in series, 3 in parallel',
    ])
    expect(of('arrangements.3s3p.energy').in('kWh')).toBeCloseTo(3 * 44.4 * 0.123, 9)
    expect(table?.notes?.[0]).toBe(
      '3 in series, 2 in parallel is refused: holds 10.92 kWh, less than the 12 kWh wanted.',
    )
    expect(table?.notes?.join(' ')).toContain('5 in series, 2 in parallel is refused: stands at 252 V when full')
  })
  it('main run: class 5 copper, twice the length, a fuse for the load and the fault', () => {
    // IEC 60228: 0.386 Ω/km at 20 °C for 50 mm² of class 5; IEC 60028: 0.00393 /K.
    expect(sectionOf(found, 'runs').tables[0]?.columns[0]?.name).toBe('50 mm²')
    const warm = 0.386e-3 * (1 + 0.00393 * (of('runs.main.temperature').in('°C') - 20))
    expect(of('runs.main.drop').in('V')).toBeCloseTo(2 * 120 * warm * 2.4, 9)
    expect(of('runs.main.loss').in('W')).toBeCloseTo(2 * 120 ** 2 * warm * 2.4, 7)
    expect(of('runs.main.highestFault').in('A')).toBeCloseTo((2 * 201.6) / 0.028, 6)
    expect(words('runs', 'fuse', '')).toBe('bolt-down fuse of 200 A')
    // 10 ms at 4.4 kA, at one joule integral up to the fault.
    expect(of('runs.main.opensHighest').in('ms')).toBeCloseTo(10 * (4400 / 14400) ** 2, 9)
    const notes = sectionOf(found, 'runs').tables[0]?.notes?.join(' ')
    expect(notes).toContain('The house fuse of 160 A is refused: the fuse has no voltage rating for direct current')
    // 120 A over 80 % and the 90 % that air of 45 °C leaves: more than 35 mm² lets a fuse of 160 A be.
    expect(notes).toContain('bolt-down fuse of 160 A is refused: the fuse is rated 160 A, less than the 166.7 A')
    expect(notes).toContain('25 mm² is refused: the cable brings')
  })
  it('gears: a turn of the tyre is 3.05 diameters', () => {
    const turn = 3.05 * (0.3302 + 2 * 0.8 * 0.145)
    expect(of('gears.third.topSpeed').in('km/h')).toBeCloseTo((8000 / 60 / (1.45 * 4.375)) * turn * 3.6, 0)
    expect(words('gears', 'first', 'motorAt50')).toBe('too fast')
  })
  it('pull: torque through the gears, what the rear wheels hold, and the highest speed of the motor', () => {
    const radius = (3.05 * (0.3302 + 2 * 0.8 * 0.145)) / (2 * Math.PI)
    expect(of('pull.first.start').in('N')).toBeCloseTo((100 * 3.8 * 4.375 * 0.92) / radius, 6)
    // Rear wheels hold μ m g (a / L) / (1 - μ h / L) (Gillespie): less than first gives, more than second does.
    const { after } = weightsOf(readBuild(sheet())).laden
    const [aft, up] = [after.centreOfGravity.aft.si, after.centreOfGravity.up?.si ?? Number.NaN]
    const holds = (0.8 * 805 * 9.80665 * aft) / 2.03 / (1 - (0.8 * up) / 2.03)
    for (const gear of ['first', 'second', 'third', 'fourth'] as const) {
      const spins = of(`pull.${gear}.start`).in('N') > holds
      expect(words('road', gear, 'grip')).toBe(spins ? 'spins the wheels' : 'grips')
    }
    expect(words('road', 'first', 'grip')).toBe('spins the wheels')
    expect(words('road', 'third', 'grip')).toBe('grips')
    expect(of('pull.third.holds').in('km/h')).toBeCloseTo(
      ((8000 * 2 * Math.PI) / 60 / (1.45 * 4.375)) * radius * 3.6,
      6,
    )
  })
  it('one ratio: the speed allows at most, the start asks at least', () => {
    const radius = (3.05 * (0.3302 + 2 * 0.8 * 0.145)) / (2 * Math.PI)
    const most = ((8000 * 2 * Math.PI) / 60) * radius * (3.6 / 110)
    expect(of('fixedRatio.demand1.greatest').si).toBeCloseTo(most, 9)
    const angle = Math.atan(0.2)
    const needed = 805 * 9.80665 * (Math.sin(angle) + 0.013 * Math.cos(angle))
    expect(of('fixedRatio.demand2.least').si).toBeCloseTo((needed * radius) / 100 / 0.92, 6)
  })
  /** Wh/km at 70 km/h, of air and tyres at two temperatures; tyres as UN GTR No. 15 corrects them, from memory. */
  const consumed = (airAt: number, tyresAt: number, watts: number) => {
    const speed = 70 / 3.6
    const air = 101325 / (287.05287 * (airAt + 273.15))
    const tyres = 0.013 / (1 + 0.0086 * (tyresAt - 20))
    const force = 0.5 * air * 0.74 * speed ** 2 + 805 * 9.80665 * tyres
    return (force / (0.92 * 0.87) + watts / speed) / 3.6
  }
  it('range: drag, rolling, losses and lamps at 70 km/h in summer', () => {
    const perKilometre = consumed(32, 32, 250)
    expect(of('steady.summer.at70.consumption').in('Wh/km')).toBeCloseTo(perKilometre, 3)
    // 90 % of 82 Ah, from full down, rests some per cent above the nominal voltage; the current through 28 mΩ takes 1 %.
    const byNominal = (177.6 * 82 * 0.9) / perKilometre
    const ratio = of('steady.summer.at70.range').in('km') / byNominal
    expect(ratio).toBeGreaterThan(1)
    expect(ratio).toBeLessThan(1.05)
  })
  it('winter: each cause takes the mean over the 24 orders in which they can set in', () => {
    const heated = 250 + of('mornings.winter.heatPump.power').in('W')
    expect(of('steady.winter.at70.consumption').in('Wh/km')).toBeCloseTo(consumed(-7, -7, heated), 3)
    const driven = (season: 'summer' | 'winter') => {
      const range = of(`steady.${season}.at70.range`).in('km')
      return { range, energy: range * of(`steady.${season}.at70.consumption`).in('Wh/km') }
    }
    const [warm, cold] = [driven('summer'), driven('winter')]
    const summer = [32, 32, 250, warm.energy] as const
    const winter = [-7, -7, heated, cold.energy] as const
    const kilometres = ([air, tyres, watts, energy]: readonly number[]) =>
      (energy as number) / consumed(air as number, tyres as number, watts as number)
    const lost = [0, 0, 0, 0]
    const places = [0, 1, 2, 3]
    for (const first of places)
      for (const second of places)
        for (const third of places) {
          const order = [first, second, third, 6 - first - second - third]
          if (new Set(order).size < 4) continue
          let now: readonly number[] = summer
          for (const place of order) {
            const next = now.with(place, winter[place] as number)
            lost[place] = (lost[place] as number) + (kilometres(now) - kilometres(next)) / 24
            now = next
          }
        }
    const causes = ['airDensity', 'rollingResistance', 'heater', 'usableCapacity'] as const
    for (const [place, cause] of causes.entries()) {
      const byHand = lost[place] as number
      expect(of(`cold.${cause}.lost`).in('km')).toBeCloseTo(byHand, 6)
      expect(of(`cold.${cause}.share`).si).toBeCloseTo(byHand / (warm.range - cold.range), 6)
    }
    expect(of('cold.all.lost').in('km')).toBeCloseTo(warm.range - cold.range, 9)
  })
  it('winter goes less far than summer, and fast less far than slow', () => {
    const range = (speed: 50 | 70 | 90, season: string) => of(`steady.${season}.at${speed}.range`).si
    for (const season of ['summer', 'winter']) {
      expect(range(50, season)).toBeGreaterThan(range(70, season))
      expect(range(70, season)).toBeGreaterThan(range(90, season))
    }
    for (const speed of [50, 70, 90] as const) expect(range(speed, 'winter')).toBeLessThan(range(speed, 'summer'))
  })
  it('charge: all that leaves the wall is stored or becomes heat', () => {
    const [wall, stored, heat] = [of('charging.wallEnergy'), of('charging.packEnergy'), of('charging.heat')]
    expect(wall.in('kWh') * 0.92).toBeCloseTo(stored.in('kWh') + heat.in('kWh'), 9)
    // The supply holds the power throughout: 230 V · 13 A · 0.98 · 0.92.
    const hours = wall.in('kWh') / ((230 * 13 * 0.98) / 1000)
    expect(of('charging.time').in('h')).toBeCloseTo(hours, 9)
  })
  it('hill: the force of grade, tyres and air, and the losses behind it', () => {
    const [speed, angle] = [35 / 3.6, Math.atan(0.09)]
    const air = 101325 / (287.05287 * 305.15)
    const force = 0.5 * air * 0.74 * speed ** 2 + 805 * 9.80665 * (0.013 * Math.cos(angle) + Math.sin(angle))
    const shaft = (force * speed) / 0.92
    expect(of('hill.wheelPower').in('W')).toBeCloseTo(force * speed, 2)
    expect(of('hill.wasteHeat').in('W')).toBeCloseTo(shaft * (1 / 0.87 - 1), 3)
    expect(of('hill.batteryPower').in('W')).toBeCloseTo(shaft / 0.87 + 250, 2)
    const current = of('hill.current').in('A')
    const heat = current ** 2 * 0.028
    expect(of('hill.packHeat').in('W')).toBeCloseTo(heat, 9)
    // 92 kJ/K against 5 W/K.
    const rise = (heat / 5) * (1 - Math.exp((-3200 / speed) * (5 / 92000)))
    expect(of('hill.packTemperature').in('°C')).toBeCloseTo(32 + rise, 9)
  })
  it('round: what is drawn less what is taken back is what the losses and the pack’s own heat leave', () => {
    const round = 'journeys.bakeryRound.summer'
    const stretches = [2.4, 3.2, 6.5, 3.2, 7.8]
    expect(of(`${round}.distance`).in('km')).toBeCloseTo(
      stretches.reduce((sum, each) => sum + each),
      9,
    )
    const net = of(`${round}.drawn`).in('Wh') - of(`${round}.regenerated`).in('Wh')
    expect(of(`${round}.consumption`).in('Wh/km')).toBeCloseTo(net / 23.1, 6)
    // Auxiliaries draw their 250 W all the time.
    const minutes = of(`${round}.duration`).in('min')
    expect(of(`${round}.auxiliaryShare`).si).toBeCloseTo((250 * minutes) / 60 / net, 9)
    // I² R over the time, at the 28 mΩ of a warm pack, which is a little less at 32 °C.
    const heat = (of(`${round}.rmsCurrent`).in('A') ** 2 * 0.028 * minutes) / 60
    expect(of(`${round}.packHeat`).in('Wh')).toBeLessThan(heat)
    expect(of(`${round}.packHeat`).in('Wh')).toBeGreaterThan(0.7 * heat)
    expect(of('journeys.bakeryRound.winter.range').si).toBeLessThan(of(`${round}.range`).si)
  })
  it('winter: the night cools the pack, the heater warms it, and the cabin takes its share', () => {
    const cold = -7 + 25 * Math.exp(-36000 * (5 / 92000))
    expect(of('mornings.winter.packTemperature').in('°C')).toBeCloseTo(cold, 9)
    // 600 W against 5 W/K: the body would reach 113 °C in the end.
    const time = (92000 / 5) * Math.log((113 - cold) / 103)
    expect(of('mornings.winter.warmUpTime').in('s')).toBeCloseTo(time, 6)
    expect(of('mornings.winter.warmUpEnergy').in('kWh')).toBeCloseTo((600 * time) / 3.6e6, 9)
    // Fresh air at -7 °C: 1.325 kg/m³ (ideal gas), 1.006 kJ/(kg·K) (Incropera A.4).
    const heat = (60 / 3600) * 1.325 * 1006 * 23 + 42 * 23
    expect(of('mornings.winter.cabinHeat').in('W') / heat).toBeCloseTo(1, 2)
    const resistive = of('mornings.winter.resistive.power')
    expect(resistive.ratioTo(of('mornings.winter.heatPump.power'))).toBeCloseTo(1.9, 9)
  })
  it('house: what leaves the pack above the reserve is delivered or lost', () => {
    const spent = 177.6 * 0.082 * 0.9 - 5
    expect(of('home.delivered').in('kWh') + of('home.lost').in('kWh')).toBeCloseTo(spent, 9)
    // Two rounds of six hours take 2 · (3.25 kWh / 0.9 + 6 · 0.04 kWh); the rest goes at 300 W / 0.9 + 40 W, and 450 W.
    const left = spent - 2 * (3.25 / 0.9 + 0.24)
    const first = 0.3 / 0.9 + 0.04
    expect(of('home.duration').in('h')).toBeCloseTo(13 + (left - first) / (0.45 / 0.9 + 0.04), 9)
  })
  it('passes every check, and names what can hurt', () => {
    expect(found.sections.flatMap((section) => section.checks).filter(({ verdict }) => verdict === 'fail')).toEqual([])
    for (const section of found.sections) expect(section.cautions.length).toBeGreaterThan(0)
    expect(found.unassessed).toEqual([])
  })
})

describe('an assessment', () => {
  it('is the same on every run, and changes nothing', () => {
    const build = readBuild(sheet())
    expect(JSON.stringify(assess(build))).toBe(JSON.stringify(found))
    expect(JSON.stringify(assess(build))).toBe(JSON.stringify(found))
  })
  it('shows its working, every formula with its source', () => {
    const working = explain(() => assess(readBuild(sheet()))).toText()
    expect(working).toContain('dU = 2 · I · r · l = 2 · 120 A')
    expect(working).toContain('[IEC 60364-5-52, Annex G]')
    expect(working).not.toContain('NaN')
  })
  it('of a sheet with nothing but the car says what to add', () => {
    const { title, car } = sheet()
    const bare = assess(readBuild({ title, car }))
    expect(bare.sections.map(({ id, title }) => [id, title])).toEqual([['weight', 'Weight and balance']])
    expect(bare.unassessed.map((section) => section.title)).toEqual([
      'Brakes',
      'The pack',
      'Gears',
      'The laden car on the road',
      'Energy and range at a steady speed',
      'Journeys',
      'Cables and fuses',
      'Bus bars',
      'Insulation',
      'Charging',
      'The 12 V side',
      'The longest hill',
      'Cold mornings',
      'An evening of house load',
    ])
    expect(bare.unassessed[1]?.why).toBe('add to the sheet: module, pack')
    expect(toText(bare)).toContain('The pack: add to the sheet: module, pack')
  })
  it('of a sheet with one season compares it with no other', () => {
    const { heating: _, seasons, ...rest } = sheet()
    const { tables, assumptions } = sectionOf(
      assess(readBuild({ ...rest, seasons: { july: seasons?.summer } })),
      'steady',
    )
    expect(tables.map(({ id }) => id)).toEqual(['steady'])
    expect(tables[0]?.rows.map(({ id }) => id)).toEqual(['july.at50', 'july.at70', 'july.at90'])
    expect(assumptions.at(-1)?.text).toBe(
      'The rolling resistance of the sheet is that at 20 °C: the tyres roll 0.9065 times as hard in july.',
    )
  })
  it('tells a charge that is over at once by its start and its end alone', () => {
    const given = sheet() as { charger: { from: string; to: string } } & BuildSheet
    Object.assign(given.charger, { from: '99.9 %', to: '100 %' })
    const [moments] = sectionOf(assess(readBuild(given)), 'charging').tables
    expect(moments?.rows.map(({ name }) => name)).toEqual(['after 0 min', 'after 0 min'])
  })

  it('names only the fields that are not there', () => {
    const { charger: _, ...rest } = sheet()
    expect(assess(readBuild(rest)).unassessed.map(({ why }) => why)).toEqual(['add to the sheet: charger'])
  })
  it('fails a check, and does not throw, where a limit is passed', () => {
    const heavy = sheet()
    const over = assess(
      readBuild({
        ...heavy,
        added: [...(heavy.added ?? []), { name: 'anvil', mass: '300 kg', at: { aft: '0 m', left: '0 m' } }],
      }),
    )
    const failed = sectionOf(over, 'weight').checks.filter(({ verdict }) => verdict === 'fail')
    expect(failed.map(({ name }) => name)).toEqual([
      'Rise of the empty mass',
      'Shift of the front share, in points',
      'Front share from its target, as the modules are placed',
      'Gross mass, laden',
      'Mass on the front axle, laden',
    ])
    expect(toText(over)).toMatch(/FAILS Gross mass, laden: 1105 kg, at most 1050 kg; 5\.2 % beyond/)
  })
  it('calls a car that stands as it did no distance from its target, on unequal tracks too', () => {
    const wide = sheet()
    const scales = { frontLeft: '200 kg', frontRight: '160 kg', rearLeft: '120 kg', rearRight: '160 kg' } as const
    const car = { ...wide.car, track: { front: '1.3 m', rear: '1.15 m' }, scales } as const
    const bay = { title: 'where they were', at: { aft: '80 mm', left: '0 mm', up: '0.5 m' }, capacity: 8 } as const
    const module = { ...wide.module, mass: '10 kg' } as NonNullable<BuildSheet['module']>
    const pack = { ...wide.pack, bays: { there: bay } } as NonNullable<BuildSheet['pack']>
    const removed = [{ name: 'as much', mass: '80 kg', at: bay.at }] as const
    const same = assess(readBuild({ title: 'same', car, removed: [...removed], module, pack }))
    expect(sectionOf(same, 'weight').tables[1]?.notes?.[0]).toMatch(/It is 0\.00 points off/)
  })
  it('has a word for what sits outside the car, people and goods too', () => {
    const odd = sheet()
    const payload = { mass: '150 kg', at: { aft: '6 m', left: '0 m' } } as const
    const section = sectionOf(assess(readBuild({ ...odd, car: { ...odd.car, payload } })), 'weight')
    expect(section.assumptions.map(said).join(' ')).toMatch(
      /people and goods was taken as given, .* behind the rear axle/,
    )
  })
  it('says by how many the bays are too small for the pack', () => {
    const large = sheet()
    const pack = large.pack as NonNullable<BuildSheet['pack']>
    const four = assess(readBuild({ ...large, pack: { ...pack, parallel: 4 } }))
    const { unassessed } = four
    // The mass is known all the same: only where the car stands is not.
    expect(unassessed.map(({ title }) => title)).toEqual(['Weight and balance', 'Brakes'])
    expect(unassessed[0]?.why).toMatch(/13|16/)
    // 650 − 145 + 44 kg, 16 modules of 11.5 kg, 150 kg of people and goods: eight modules more than with two in parallel.
    expect(figure(four, 'road.mass').si - of('road.mass').si).toBeCloseTo(8 * 11.5, 9)
  })
  it('fails a check where no section serves, says why, and leaves the other runs standing', () => {
    const large = sheet()
    const main = large.runs?.main
    if (main === undefined) throw new Error('no run')
    const runs = { tooMuch: { ...main, title: 'too much', current: '2000 A' as const }, main }
    const section = sectionOf(assess(readBuild({ ...large, runs })), 'runs')
    const failed = section.checks.filter(({ verdict }) => verdict === 'fail')
    expect(failed.map(({ name }) => name)).toEqual(['too much: sections that serve'])
    expect(section.tables.map(({ columns }) => columns.map(({ name }) => name))).toEqual([[], ['50 mm²']])
    expect(section.tables[0]?.notes?.[0]).toMatch(
      /^protectRun: no section up to .* serves too much\. .* two in parallel/,
    )
  })
  it('meets a limit that is just met', () => {
    const exact = sheet()
    const added = [
      ...(exact.added ?? []),
      { name: 'spare', mass: '5.3 kg' as const, at: { aft: '1 m' as const, left: '0 m' as const } },
    ]
    const targets = { ...exact.targets, kerbMassChange: '10.3 kg' as const }
    const [rise] = sectionOf(assess(readBuild({ ...exact, added, targets })), 'weight').checks
    expect(rise).toMatchObject({ verdict: 'near', margin: 0 })
  })
  it('sizes a run without a current by the currents of the journey that asks most', () => {
    const chained = sheet()
    const { main } = chained.runs as NonNullable<BuildSheet['runs']>
    const runs = { main: { ...main, current: undefined } } as NonNullable<BuildSheet['runs']>
    const section = sectionOf(assess(readBuild({ ...chained, runs })), 'runs')
    const current = section.checks.find(({ name }) => name.includes('Root mean square'))?.limit
    const rms = of('journeys.bakeryRound.winter.rmsCurrent')
    expect(current?.si).toBeCloseTo(rms.si, 9)
    expect(section.assumptions.map(said).join(' ')).toContain(
      'carries the currents of the bakery round, winter, again and again',
    )
    expect(() => readBuild({ ...chained, journeys: {}, runs })).toThrow(
      "runs.main.current: expected a current such as '120 A', or journeys whose currents it carries, got nothing",
    )
  })
  it('fails a check where the car cannot follow a journey, and says where', () => {
    const weak = sheet()
    const controller = { ...weak.controller, batteryCurrent: '90 A' } as NonNullable<BuildSheet['controller']>
    const section = sectionOf(assess(readBuild({ ...weak, controller })), 'journeys')
    const failed = section.checks.filter(({ verdict }) => verdict === 'fail').map(({ name }) => name)
    expect(failed.join('; ')).toMatch(/the bakery round, summer: .*the bakery round, winter: /)
    expect(section.tables[0]?.notes?.join(' ')).toContain('summer: the car falls behind after')
  })
  it('leaves the other sections standing where one has no operating point, and says why', () => {
    const cold = sheet()
    const heating = cold.heating as NonNullable<BuildSheet['heating']>
    const weak = assess(readBuild({ ...cold, heating: { ...heating, pack: { ...heating.pack, heater: '50 W' } } }))
    expect(weak.unassessed.map(({ title }) => title)).toEqual(['Cold mornings'])
    expect(weak.unassessed[0]?.why).toContain('the heater never brings the pack to 10 °C: in the end it reaches 3 °C')
    const emptied = assess(
      readBuild({ ...cold, removed: [{ name: 'all of it', mass: '700 kg', at: { aft: '1 m', left: '0 m' } }] }),
    )
    expect(emptied.unassessed.map(({ title }) => title)).toContain('Weight and balance')
  })
})

describe('what the sheet asks', () => {
  const verdicts = (change: object) =>
    Object.fromEntries(
      assess(readBuild({ ...sheet(), ...change }))
        .sections.flatMap(({ checks }) => checks)
        .map(({ id, verdict }) => [id, verdict]),
    )
  it('is checked: the energy, the modules at hand, the hill at its speed', () => {
    const sound = verdicts({})
    expect([sound['targets.energy'], sound['pack.available'], sound['hill.grade']]).toEqual(['pass', 'pass', 'pass'])
  })
  it('fails where the pack holds less, in whatever unit, or by one module', () => {
    // 8 modules of 44.4 V and 41 Ah: 14.563 kWh.
    const energyOf = (energy: string) => verdicts({ targets: { ...sheet().targets, energy } })['targets.energy']
    expect([energyOf('14.57 kWh'), energyOf('52.5 MJ'), energyOf('14.56 kWh')]).toEqual(['fail', 'fail', 'near'])
    const modulesOf = (available: number) => verdicts({ pack: { ...sheet().pack, available } })['pack.available']
    expect([modulesOf(7), modulesOf(8)]).toEqual(['fail', 'near'])
  })
  it('fails where the hill is steeper than the car climbs at that speed, though it starts on it', () => {
    const hill = { ...sheet().hill, grade: '18 %', speed: '85 km/h' }
    expect(verdicts({ hill })['hill.grade']).toBe('fail')
    expect(verdicts({ hill })['road.start.grade']).toBe('pass')
    expect(verdicts({ hill: { ...hill, speed: '20 km/h' } })['hill.grade']).toBe('pass')
  })
})

describe('what a season asks', () => {
  it('fails where the cells may have less than the air of the warmest day', () => {
    const cooling = sheet().cooling as NonNullable<BuildSheet['cooling']>
    const { checks } = assess(
      readBuild({ ...sheet(), cooling: { ...cooling, pack: { ...cooling.pack, limit: '30 °C' } } }),
    )
    expect(checks.find(({ id }) => id === 'cooling.pack.cell.hottest')?.verdict).toBe('fail')
  })
  it('is no warming of a pack that is warmer than it has to be', () => {
    const heating = sheet().heating as NonNullable<BuildSheet['heating']>
    const { figures } = assess(
      readBuild({ ...sheet(), heating: { ...heating, pack: { ...heating.pack, to: '-10 °C' } } } as never),
    )
    expect(figures.filter(({ id }) => id.startsWith('mornings.winter.warmUp'))).toEqual([])
  })
})

describe('what the sheet leaves open', () => {
  it('is said of the limits on the papers only where there are none', () => {
    const toldOf = (limits: object | undefined) =>
      sectionOf(assess(readBuild({ ...sheet(), car: { ...sheet().car, limits } } as never)), 'weight')
        .assumptions.map(said)
        .filter((text) => text.includes('not held to limits'))
    expect(toldOf({ gross: '1050 kg' })).toEqual([])
    expect(toldOf(undefined)).toEqual(['Mass and axle loads are not held to limits: give limits.'])
  })
  it('stands as it does in the procedure to which it is handed on, and is told', () => {
    const { module, pack, fuses } = readBuild(sheet())
    if (module === undefined || pack === undefined) throw new Error('the example has a pack')
    const run = { current: '60 A', length: '2 m' } as const
    const { sections } = assess(readBuild({ ...sheet(), runs: { branch: run } }))
    const told = sections.find(({ title }) => title === 'Cables and fuses')?.assumptions.map(said)
    const { current, length } = run
    const { assumptions } = protectRun({
      name: 'branch',
      pack: { module, series: pack.series, parallel: pack.parallel },
      load: { current },
      cable: { length },
      candidates: fuses,
      coldest: '-7 °C',
    })
    const defaults = assumptions.filter(({ id }) => id.endsWith('.default')).map(said)
    expect(defaults.length).toBeGreaterThan(8)
    expect(told).toEqual(expect.arrayContaining(defaults))
  })
})

describe('an assessment of whatever can be read', () => {
  it('tells by its place in the sheet what does not allow a section, and throws nothing', () => {
    fc.assert(
      fc.property(changesOf(sheetField, sheet()), (changedSheet) => {
        let build: ReturnType<typeof readBuild>
        try {
          build = readBuild(changedSheet)
        } catch (error) {
          expect(error).toBeInstanceOf(InputError)
          return
        }
        const found = assess(build)
        for (const { why } of found.unassessed) expect(why).toMatch(/^(?:add to the sheet|the figures of the sheet)/)
        const ids = found.sections.flatMap(({ checks }) => checks.map(({ id }) => id))
        expect(new Set(ids).size).toBe(ids.length)
        expect(toText(found)).not.toMatch(/NaN|undefined|\[object/)
      }),
      { numRuns: runs(12) },
    )
  })
  it('of cold in which no tyre was measured names the morning', () => {
    const seasons = { ...sheet().seasons, arctic: { outside: '-50 °C' } }
    const { unassessed } = assess(readBuild({ ...sheet(), seasons }))
    expect(unassessed.map(({ title }) => title)).toContain('Journeys')
    expect(unassessed.find(({ title }) => title === 'Journeys')?.why).toMatch(
      /^the figures of the sheet do not allow it\. seasons\.arctic\.outside: expected a temperature at least -40 °C/,
    )
  })
  it('of more modules than can be arranged names how many there are', () => {
    const pack = { ...sheet().pack, available: 43_795 }
    const { unassessed } = assess(readBuild({ ...sheet(), pack } as never))
    expect(unassessed.find(({ title }) => title === 'The pack')?.why).toMatch(
      /^the figures of the sheet do not allow it\. pack\.available: expected so few modules/,
    )
  })
  it('of nobody on board is that of the empty car', () => {
    const { car, ...rest } = sheet()
    const payload = { ...car.payload, mass: '0 kg' }
    const { exchange, laden } = weightsOf(readBuild({ ...rest, car: { ...car, payload } }))
    expect(laden.after.mass.si).toBe(exchange.after.mass.si)
  })
})

describe('an assessment of what was not read', () => {
  it.each([[undefined], [null], [{}], [sheet()]])('says to read %o first', (raw) => {
    expect(() => assess(raw as never)).toThrow(
      /^assess: one input cannot be used\n {2}expected a sheet that readBuild has read, such as assess\(readBuild\(/,
    )
  })
})

describe('a sheet that cannot be read', () => {
  it('is told everything at once', () => {
    const wrong = JSON.parse(text)
    wrong.car.wheelbase = '2,03 m'
    wrong.car.trak = '1.2 m'
    wrong.removed[1].at.aft = '-320 kg'
    wrong.pack.bays.leftTunnel.capacity = -1
    delete wrong.module.capacity
    expect(() => readBuild(wrong)).toThrow(
      [
        'readBuild: 5 inputs cannot be used',
        "  car.wheelbase: expected a length such as '2.4 m', got '2,03 m' (write '2.03 m': the decimal sign is a point, and thousands are not separated)",
        "  car.trak: expected no such field; there are scales, wheelbase, track, raised, frontRollShare, springs, payload, tyre, rollingRadius, rollingCircumference, dragArea, rollingResistance, rotatingFactor, drivenAxle, friction, limits, got '1.2 m' (did you mean track?)",
        "  removed[1].at.aft: expected a length such as '2.4 m', got '-320 kg' (kg measures a mass)",
        "  module.capacity: expected a charge such as '60 Ah', got nothing",
        '  pack.bays.leftTunnel.capacity: expected a number at least 0, got -1 (How many modules it holds)',
      ].join('\n'),
    )
  })
  it('is told which fields do not go together', () => {
    const wrong = JSON.parse(text)
    wrong.car.tyre = 'big'
    wrong.module.minimumVoltage = '60 V'
    wrong.controller.maximumVoltage = '90 V'
    wrong.runs.main.insulationLimit = '40 °C'
    wrong.runs.main.section = '36 mm²'
    wrong.charger.to = '20 %'
    wrong.motor.continuousPower = '60 kW'
    wrong.gearbox.gears.fourth = '1.6'
    wrong.car.springs.rear.unsprung = '290 kg'
    expect(() => readBuild(wrong)).toThrow(/readBuild: 9 inputs cannot be used\n {2}car\.tyre: expected a tyre mark/)
    for (const line of [
      'module.minimumVoltage: expected a voltage below the nominal one, 44.4 V, got 60 V',
      'controller.maximumVoltage: expected more than controller.minimumVoltage, 96 V, got 90 V',
      'runs.main.section: expected a section: 0.5 mm², 0.75 mm²',
      'runs.main.insulationLimit: expected a temperature above the ambient one, 45 °C, got 40 °C',
      'car.springs.rear.unsprung: expected less than the rear scales show, 290 kg, got 290 kg',
      'gearbox.gears.fourth: expected a ratio below that of third, 1.45: gears are listed from the lowest speed up, got 1.6',
      'charger.to: expected more than charger.from, 20 %, got 20 %',
    ]) {
      expect(() => readBuild(wrong)).toThrow(line)
    }
  })
  it('is refused when it is no object', () => {
    expect(() => readBuild('sheet')).toThrow(InputError)
  })
})
