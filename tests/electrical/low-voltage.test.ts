/** The 12 V side: an old car's loads, fuses and wires as the trade has them, and traps in its tables. */
import { describe, expect, it } from 'vitest'
import { awg, cableAmpacity, fuseFamilies, lowVoltageSupply, metricSections } from '../../src/electrical/index.js'
import { InputError } from '../../src/quantity/index.js'

/** An old car at 13.8 V. Watts are common practice; lamps of 55 W, 21 W and 5 W are those of UN R37 (from memory). */
const steady = {
  lowBeams: '110 W',
  tails: '20 W',
  plates: '10 W',
  wiper: '60 W',
  blower: '120 W',
  pump: '60 W',
  controlUnits: '60 W',
  radio: '40 W',
} as const
const short = { rearWindow: '150 W', indicators: '42 W', stops: '63 W' } as const
const loadsOf = (powers: object, duty: 'steady' | 'short') =>
  Object.fromEntries(Object.entries(powers).map(([name, power]) => [name, { power, duty }]))

const feedOf = (current: `${number} A`, feed: object) =>
  lowVoltageSupply({
    loads: { lamp: { current, duty: 'steady', feed: { length: '1 m', back: 'wire', maximumDrop: '1 V', ...feed } } },
    insulationLimit: '105 °C',
  }).feeds.lamp

describe('an old car', () => {
  it('takes 34.8 A for long and 53.3 A with everything on, and asks for a converter of 43.5 A', () => {
    const found = lowVoltageSupply({ loads: { ...loadsOf(steady, 'steady'), ...loadsOf(short, 'short') } })
    expect([found.steady.si, found.allOn.si, found.leastRating.si].map((each) => each.toFixed(1))).toEqual([
      '34.8',
      '53.3',
      '43.5',
    ])
    expect(found.steadyPower.in('W')).toBeCloseTo(480, 9)
  })
  it('asks for 66.6 A where no battery takes the short loads', () => {
    const { leastRating } = lowVoltageSupply({ loads: loadsOf({ ...steady, ...short }, 'steady') })
    expect(leastRating.si).toBeCloseTo(66.6, 1)
  })
  it('counts what is on for a share of the time with that share', () => {
    const withDuty = (duty: number) => lowVoltageSupply({ loads: { fan: { current: '10 A', duty } } })
    expect([withDuty(0.3).steady.si, withDuty(0.3).allOn.si]).toEqual([3, 10])
  })
  it('draws from the pack what its loads take through the efficiency of the converter', () => {
    const { inputCurrent, greatestInputCurrent } = lowVoltageSupply({
      loads: { ...loadsOf(steady, 'steady'), ...loadsOf(short, 'short') },
      converter: { current: '45 A', efficiency: 0.9 },
      packVoltage: '144 V',
    })
    expect(inputCurrent?.si).toBeCloseTo(480 / 0.9 / 144, 9)
    expect(greatestInputCurrent?.si).toBeCloseTo((45 * 13.8) / 0.9 / 144, 9)
  })
})

describe('fuse and wire', () => {
  // At most 75 % of the rating for long (guides of fuse makers); ratings of ISO 8820-3 and -5, from memory.
  it.each([
    ['11 A', '15 A'],
    ['16 A', '25 A'],
    ['5.4 A', '7.5 A'],
    ['30 A', '40 A'],
    ['31 A', '50 A'],
  ] as const)('of %s: a fuse of %s, and a wire that carries it', (current, rating) => {
    const feed = feedOf(current, {})
    expect(String(feed?.fuse)).toBe(rating)
    expect(feed?.ampacity.si).toBeGreaterThanOrEqual(feed?.fuse.si as number)
  })
  // A trade journal for agricultural machines: the drop that it allows on the positive side at 12 V, in volts.
  it.each([
    ['lamp up to 15 W', 0.1],
    ['lamp above 15 W', 0.5],
    ['headlamp', 0.3],
    ['charging line', 0.4],
    ['starter', 0.5],
    ['control line', 0.5],
  ] as const)('of a %s may lose %f V', (feeds, most) => {
    const { checks } = lowVoltageSupply({
      loads: { one: { current: '4 A', duty: 'steady', feed: { length: '2 m', back: 'wire', feeds } } },
    })
    expect(checks.find(({ id }) => id === 'feed.one.drop')?.limit?.si).toBeCloseTo(most, 12)
  })
  it('loses half as much where the current comes back through the body', () => {
    const by = (back: 'wire' | 'body') => feedOf('10 A', { section: '6 mm²', back })?.drop.si as number
    expect(by('wire') / by('body')).toBeCloseTo(2, 12)
  })
  it('names sections that there are, one load at least, and one of power and current', () => {
    expect(() => feedOf('10 A', { section: '3 mm²' })).toThrow(
      /loads\.lamp\.feed\.section: expected a section: 0\.5 mm²/,
    )
    expect(() => lowVoltageSupply({ loads: {} })).toThrow(InputError)
    expect(() => lowVoltageSupply({ loads: { converter: { current: '1 A', duty: 'steady' } } })).toThrow(
      /loads\.converter/,
    )
    expect(() => lowVoltageSupply({ loads: { lamp: { duty: 'steady' } } })).toThrow(
      /loads\.lamp\.power and loads\.lamp\.current: expected one of them: .*, got neither/,
    )
  })
  it('wants a rating for what no fuse of the two families carries', () => {
    expect(() => feedOf('400 A', {})).toThrow(
      /loads\.lamp\.feed\.fuse: expected a current for which a fuse of at most 500 A/,
    )
  })
})

describe('what a single wire carries', () => {
  /** By section in mm², the amperes that the same journal allows for long. It falls from 4 mm² to 6 mm². */
  const journal = [
    [1, 10],
    [1.5, 15],
    [2.5, 25],
    [4, 40],
    [6, 36],
    [10, 60],
    [16, 96],
    [25, 100],
    [35, 140],
    [50, 200],
    [70, 210],
    [95, 285],
  ] as const
  const ampacityOf = (area: number) =>
    cableAmpacity({ area: `${area} mm²`, limit: '105 °C', ambient: '40 °C' }).ampacity.si

  it('rises with the section, where the table of a trade journal falls', () => {
    const own = journal.map(([area]) => ampacityOf(area))
    expect(own).toEqual([...own].sort((a, b) => a - b))
    expect(journal.some(([, amperes], i) => amperes < (journal[i - 1]?.[1] ?? 0))).toBe(true)
  })
  it('is no less than that table allows, for a wire on its own at 105 °C', () => {
    for (const [area, amperes] of journal) expect(ampacityOf(area)).toBeGreaterThan(amperes)
  })
  it('stands on resistances up to 8 % above those of ISO 6722 (from memory), never below', () => {
    const vehicle = new Map<string, number>([
      ['0.5 mm²', 37.1],
      ['0.75 mm²', 24.7],
      ['1 mm²', 18.5],
      ['1.5 mm²', 12.7],
      ['2.5 mm²', 7.6],
      ['4 mm²', 4.71],
      ['6 mm²', 3.14],
      ['10 mm²', 1.82],
      ['16 mm²', 1.16],
      ['25 mm²', 0.743],
      ['35 mm²', 0.527],
      ['50 mm²', 0.368],
    ])
    const shared = metricSections.filter(({ name }) => vehicle.has(name))
    expect(shared).toHaveLength(vehicle.size)
    for (const { name, maximumResistance } of shared) {
      const ratio = maximumResistance.in('mΩ/m') / (vehicle.get(name) as number)
      expect(ratio).toBeGreaterThanOrEqual(1)
      expect(ratio).toBeLessThan(1.08)
    }
  })
})

describe('wires of the trade beside the sections here', () => {
  // SAE J1128: strands and the gauge of each (read), their copper by ASTM B258 (recomputed).
  it.each([
    ['18', 16, '30', 0.815],
    ['16', 19, '29', 1.22],
    ['14', 19, '27', 1.94],
    ['12', 19, '25', 3.085],
    ['10', 19, '23', 4.905],
    ['8', 19, '21', 7.8],
    ['6', 37, '21', 15.19],
  ] as const)('gauge %s of %d strands of gauge %s has %f mm² of copper', (name, strands, gauge, copper) => {
    const metal = strands * awg(gauge).area.in('mm²')
    expect(Math.abs(metal / copper - 1)).toBeLessThan(0.001)
    // A stranded wire has up to 8 % less than its gauge, and gauge 6 of this stranding more.
    expect(metal / awg(name).area.in('mm²')).toBeGreaterThan(0.92)
  })
  // SAE metric sizes by gauge (read): each has less metal than the gauge that it is sold as, 1 mm² a quarter less.
  it.each([
    [0.5, '20'],
    [0.8, '18'],
    [1, '16'],
    [2, '14'],
    [3, '12'],
    [5, '10'],
    [8, '8'],
    [13, '6'],
    [19, '4'],
    [32, '2'],
    [52, '1/0'],
  ] as const)('%f mm² of the SAE is never more than gauge %s', (area, gauge) => {
    const share = area / awg(gauge).area.in('mm²')
    expect(share).toBeLessThan(1)
    expect(share).toBeGreaterThan(area === 1 ? 0.75 : 0.89)
  })
  // ISO 6722, plain copper at 20 °C, mΩ/m (from memory).
  it.each([
    ['0.5 mm²', 37.1],
    ['0.75 mm²', 24.7],
    ['1 mm²', 18.5],
    ['1.5 mm²', 12.7],
    ['2.5 mm²', 7.6],
    ['4 mm²', 4.71],
    ['6 mm²', 3.14],
    ['10 mm²', 1.82],
    ['16 mm²', 1.16],
    ['25 mm²', 0.743],
    ['35 mm²', 0.527],
    ['50 mm²', 0.368],
  ] as const)('%s by IEC 60228 resists 4 % to 6 % more than a road-vehicle cable', (name, most) => {
    const ours = metricSections.find((each) => each.name === name)?.maximumResistance.in('mΩ/m') as number
    expect(ours / most).toBeGreaterThan(1.04)
    expect(ours / most).toBeLessThan(1.06)
  })
  // 5 A/mm² for long, a rule of two hobby pages (read): common practice, no source. A heat balance must not forbid it where
  // it is used, and shows where it ends.
  it('the rule of 5 A/mm² holds for thin PVC wire in the open, and not for thick cable', () => {
    const density = (name: '1.5 mm²' | '10 mm²' | '95 mm²') =>
      cableAmpacity({ area: name, limit: '70 °C', ambient: '40 °C', laid: 'touching' }).ampacity.si /
      Number.parseFloat(name)
    expect(density('1.5 mm²')).toBeGreaterThan(10)
    expect(density('10 mm²')).toBeGreaterThan(5)
    expect(density('95 mm²')).toBeLessThan(5)
  })
  it('blade fuses come in the ratings of ISO 8820-3', () => {
    // ISO 8820-3, from memory: violet, pink, tan, brown, red, blue, yellow, clear, green, orange.
    expect(fuseFamilies.blade.ratings.map((each) => each.si)).toEqual([3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40])
  })
})

describe('lamps', () => {
  // UN R37, nominal watts at 12 V (from memory): headlamp 55 W dipped, 60 W main beam; 21 W and 5 W behind.
  it.each([
    ['two dipped beams', [55, 55], 9.17],
    ['two main beams', [60, 60], 10],
    ['two stop lamps', [21, 21], 3.5],
    ['tails, sides and plate', [5, 5, 5, 5, 5], 2.08],
  ] as const)('%s take their watts at 12 V', (_, watts, amperes) => {
    const loads = Object.fromEntries(
      watts.map((each, i) => [`lamp${i}`, { power: `${each} W` as const, duty: 'steady' as const }]),
    )
    expect(lowVoltageSupply({ loads, voltage: '12 V' }).steady.si).toBeCloseTo(amperes, 2)
  })
})
