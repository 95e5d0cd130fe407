/** A run protected end to end: section and fuse chosen together, and what is said where none serves. */
import { describe, expect, it } from 'vitest'
import { cableDuty, cableTemperature, protectRun, selectFuse, sizeCable } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { said } from '../said.js'
import { module } from './sheet.js'

const run = {
  name: 'main run, pack to controller',
  pack: { module, series: 4, parallel: 2 },
  load: { current: '120 A' },
  cable: { length: '2.4 m', maximumDrop: '1 %', insulationLimit: '105 °C' },
} as const
const fuse = {
  name: 'invented bolt-down fuse of 160 A',
  class: 'gG',
  rating: '160 A',
  voltage: { dc: '300 V' },
  breakingCapacity: '20 kA',
  curve: [
    ['256 A', '2 h'],
    ['560 A', '10 s'],
    ['1900 A', '0.1 s'],
    ['3.4 kA', '10 ms'],
  ],
  clearingIntegral: '230000 A²·s',
} as const
const blade = { name: 'blade', rating: '100 A', voltage: { dc: '58 V' }, breakingCapacity: '1 kA' } as const

describe('protectRun', () => {
  it('gives what its documentation shows', () => {
    const { cable, fuse: found, rejected, voltageClass, checks } = protectRun(run)
    expect(cable.name).toBe('35 mm²')
    expect(found.preferred.map(String)).toEqual(['160 A'])
    expect(String(found.prospective.lowest)).toBe('904.6 A')
    expect(rejected.at(-1)?.reasons).toEqual([
      'the cable brings 80.38 °C to its terminals, more than the 75 °C for which they are made',
      'the load needs a fuse of at least 150 A, and the cable bears one of at most 139.4 A',
    ])
    expect(voltageClass).toBe('B')
    expect(checks.map(({ verdict }) => verdict)).not.toContain('fail')
  })

  it('agrees with its parts: the load alone takes less copper than load and fuse', () => {
    const alone = sizeCable({
      current: '120 A',
      length: '2.4 m',
      maximumDrop: '1 %',
      systemVoltage: '177.6 V',
      insulationLimit: '105 °C',
      terminalLimit: '90 °C',
    })
    expect(alone.section.name).toBe('25 mm²')
    const { cable, fuse: found } = protectRun({ ...run, cable: { ...run.cable, terminalLimit: '90 °C' } })
    expect(cable.name).toBe('35 mm²')
    const { prospective, ratingAtMost } = selectFuse({
      current: '120 A',
      pack: { maximumVoltage: '201.6 V', openCircuit: '155.2 V', resistance: '28 mΩ' },
      cable: { ampacity: cable.ampacity, withstand: cable.withstand, resistance: cable.loopResistance },
    })
    expect(ratingAtMost.si).toBe(found.ratingAtMost.si)
    expect(prospective.highest.si).toBe(found.prospective.highest.si)
    expect(prospective.lowest.ratioTo(found.prospective.lowest)).toBeCloseTo(1, 3)
  })

  it('chooses among candidates together with the section', () => {
    const { cable, fuse: found } = protectRun({ ...run, candidates: [blade, fuse] })
    expect(cable.name).toBe('35 mm²')
    expect(found.chosen?.name).toBe('invented bolt-down fuse of 160 A')
    expect(found.rejected.map(({ candidate }) => candidate)).toEqual(['blade'])
    const hungry = { ...fuse, clearingIntegral: '15 kA²·s' } as const
    const thicker = protectRun({ ...run, candidates: [hungry] })
    expect(thicker.cable.name).toBe('50 mm²')
    expect(thicker.rejected.at(-1)?.reasons[0]).toContain(
      'no candidate serves: invented bolt-down fuse of 160 A (the fuse lets through 15 kA²·s',
    )
  })

  it('gives the specification and the reasons where no candidate serves on any section', () => {
    const { cable, fuse: found, checks } = protectRun({ ...run, candidates: [blade] })
    expect(cable.name).toBe('35 mm²')
    expect(found.chosen).toBeUndefined()
    expect(found.specification).toContain(
      'A fuse for direct current of at least 201.6 V; rated 150 A to 175.6 A (160 A)',
    )
    expect(found.rejected[0]?.reasons).toContain('the fuse is rated 58 V DC, less than the 201.6 V of the full pack')
    expect(checks.find(({ name }) => name === 'Candidates that serve')?.verdict).toBe('fail')
  })

  it('takes the section where nothing but data of a fuse is missing, and the same once it is there', () => {
    const stated = { name: 'fuse of 200 A', class: 'gG', rating: '200 A', voltage: { dc: '440 V' } } as const
    const pulled = { ...run, controller: { batteryCurrent: '250 A', time: '10 s' } } as const
    const of = (data: object) =>
      protectRun({ ...pulled, candidates: [{ ...stated, breakingCapacity: '30 kA', ...data }] } as never)
    const { cable, fuse: found, rejected } = of({})
    expect(cable.name).toBe('50 mm²')
    expect(rejected.at(-1)).toEqual({
      name: '35 mm²',
      reasons: [
        'no candidate serves: fuse of 200 A (the fuse is rated 200 A, more than the 175.6 A at which it protects the cable)',
      ],
    })
    expect(found.rejected[0]?.reasons).toHaveLength(3)
    expect(found.rejected[0]?.reasons.every((each) => each.includes('its curve'))).toBe(true)
    const curve = [
      ['320 A', '3 h'],
      ['700 A', '10 s'],
      ['4.4 kA', '10 ms'],
    ] as const
    const settled = of({ curve })
    expect([settled.cable.name, settled.fuse.chosen?.name]).toEqual(['50 mm²', 'fuse of 200 A'])
  })

  it('follows the cable through a full pull from what its load has made of it', () => {
    const { cable, checks } = protectRun({
      ...run,
      cable: { ...run.cable, section: '35 mm²' },
      controller: { batteryCurrent: '600 A', time: '5 s' },
    })
    // 600 A for 5 s through 35 mm² with no heat leaving it: IEC 60364-5-54, Annex A, turned round.
    const start = cable.temperature.in('°C')
    const heat = ((600 ** 2 * 5) / 35e-6 ** 2) * (1 / 58e6 / (3.45e6 * 254.5))
    const adiabatic = (234.5 + start) * Math.expm1(heat)
    const rise = (checks.find(({ id }) => id === 'cable.fullPull')?.actual?.in('°C' as never) ?? 0) - start
    // Within 5 s a fifth of it may pass into the insulation.
    expect(rise / adiabatic).toBeLessThan(1)
    expect(rise / adiabatic).toBeGreaterThan(0.8)
  })

  it('takes a thicker cable where a full pull would burn a thinner one', () => {
    const pulled = protectRun({ ...run, controller: { batteryCurrent: '700 A', time: '60 s' } })
    expect(pulled.cable.name).toBe('70 mm²')
    const [[thin], [thinner]] = pulled.rejected
      .slice(-2)
      .map(({ reasons }) => reasons)
      .reverse() as [string[], string[]]
    expect(thin).toMatch(
      /^the ends of the cable reach \d\d\.\d* °C after 60 s of a full pull of 700 A, more than the 75 °C/,
    )
    expect(thinner).toMatch(/^the cable reaches 1\d\d\.?\d* °C in 60 s of a full pull of 700 A/)
  })

  it('counts how long a full pull leaves the cable above its continuous limit, cooling included', () => {
    const cable = { ...run.cable, section: '16 mm²', overloadLimit: '155 °C', terminalLimit: '105 °C' }
    const pull = { batteryCurrent: '300 A', time: '60 s' } as const
    const of = (cycles: number) =>
      protectRun({ ...run, load: { current: '50 A' }, cable, controller: pull, cycles } as never)
    const initial = of(1).cable.temperature
    const bare = { area: '16 mm²', ambient: '40 °C', laid: 'touching', initial } as const
    // When the conductor passes 105 °C on its way up, and on its way down, halving the time between.
    const crossing = (isAbove: (time: number) => boolean, most: number) => {
      let [low, high] = [1e-3, most]
      for (let i = 0; i < 40; i++) {
        const middle = (low + high) / 2
        if (isAbove(middle)) high = middle
        else low = middle
      }
      return low
    }
    const endOf = (...profile: (readonly [string, string])[]) => cableDuty({ ...bare, profile } as never).final.in('°C')
    const up = crossing((time) => endOf(['300 A', `${time} s`]) > 105, 60)
    const down = crossing((time) => endOf(['300 A', '60 s'], ['50 A', `${time} s`]) < 105, 1000)
    const most = Math.floor((6 * 3600) / (60 - up + down))
    const verdict = (cycles: number) => of(cycles).checks.find(({ id }) => id === 'cable.fullPull')?.verdict
    expect(most).toBeGreaterThan(50)
    // A step of a second is cut straight where it crosses the limit.
    expect([verdict(Math.floor(most * 0.99)), verdict(Math.ceil(most * 1.01))]).toEqual(['pass', 'fail'])
  })

  it('brings the ends of the cable to its steady temperature in a pull of hours', () => {
    const cable = { ...run.cable, section: '16 mm²' }
    const controller = { batteryCurrent: '100 A', time: '8 h' } as const
    const { checks } = protectRun({ ...run, load: { current: '50 A' }, cable, controller } as never)
    const steady = cableTemperature({ area: '16 mm²', ambient: '40 °C', laid: 'touching', current: '100 A' })
    const ends = checks.find(({ id }) => id === 'cable.fullPullTerminals')?.actual?.in('°C' as never)
    expect(ends).toBeCloseTo(steady.conductorTemperature.in('°C'), 2)
  })

  it('holds a protective conductor to the k of IEC 60364-5-54, Table A.54.2', () => {
    const of = (protectiveConductor: object) =>
      protectRun({
        ...run,
        cable: { ...run.cable, section: '35 mm²', protectiveConductor },
        candidates: [fuse],
      } as never).checks.find(({ id }) => id === 'fuse.protectiveConductor')
    // Copper from 30 °C: 143 to the 160 °C of PVC, 176 to the 250 °C of cross-linked polyethylene.
    for (const [faultLimit, k] of [
      ['160 °C', 143],
      ['250 °C', 176],
    ] as const) {
      const held = of({ area: '16 mm²', initial: '30 °C', faultLimit })
      expect(Math.abs(Math.sqrt(held?.limit?.si ?? 0) / 16 / k - 1)).toBeLessThan(0.005)
    }
    expect(protectRun({ ...run, candidates: [fuse] }).checks.map(({ id }) => id)).not.toContain(
      'fuse.protectiveConductor',
    )
  })

  it('says each share once in a working, and no heading over nothing', () => {
    const sheet = explain(() => protectRun({ ...run, candidates: [blade, fuse] })).toText()
    expect(sheet.match(/Share of its rating that thin air leaves a fuse/g)).toHaveLength(1)
    expect(sheet).not.toContain('Strings side by side')
    const strings = explain(() => protectRun({ ...run, strings: {} })).toText()
    expect(strings).toMatch(/Strings side by side\n {2}Current that strings feed into a bad one/)
  })

  it('examines a section that is given, and no other', () => {
    const { cable, checks, rejected } = protectRun({ ...run, cable: { ...run.cable, section: '16 mm²' } })
    expect(cable.name).toBe('16 mm²')
    expect(rejected).toEqual([])
    const failed = checks.filter(({ verdict }) => verdict === 'fail').map(({ name }) => name)
    expect(failed).toEqual(['Current of the load', 'Temperature of the conductor', 'Least rating for the load'])
  })

  it('takes the cold resistance of the module where it is known', () => {
    const cold = { ...module, cold: { temperature: '-20 °C', resistance: '80 mΩ' } } as const
    const { fuse: found, assumptions } = protectRun({ ...run, pack: { ...run.pack, module: cold }, coldest: '-20 °C' })
    // 155.2 V over twice 160 mΩ and 3.55 mΩ: 4.8 m of 0.554 mΩ/m at 20 °C, at 105 °C.
    expect(found.prospective.lowest.in('A')).toBeCloseTo(155.2 / (0.32 + 4.8 * 0.554e-3 * (1 + 0.00393 * 85)), 0)
    expect(assumptions.map(said).join()).toContain('Arrhenius')
    const { fuse: same, assumptions: told } = protectRun({ ...run, pack: { ...run.pack, module: cold } })
    expect(same.prospective.lowest.si).toBe(found.prospective.lowest.si)
    expect(told.map(said).join()).toContain('no colder than -20 °C, where its module was measured (coldest by default)')
    expect(
      protectRun({ ...run, coldest: '-20 °C' })
        .assumptions.map(said)
        .join(),
    ).toContain('How much more the pack resists at -20 °C is not known: give module.cold.')
    expect(assumptions.map(said).join()).not.toContain('coldResistance by default')
  })

  it('takes a profile as well as a current', () => {
    const { cable, checks } = protectRun({
      ...run,
      load: {
        profile: [
          ['250 A', '20 s'],
          ['60 A', '60 s'],
        ],
      },
    })
    expect(checks[0]?.name).toBe('Root mean square of the load')
    expect(cable.drop.in('V')).toBeGreaterThan(0.5)
  })

  it('finds the least fault through a long thin run as warm as it gets', () => {
    const { cable, fuse: found } = protectRun({
      ...run,
      load: { current: '16 A' },
      cable: { length: '6 m', section: '2.5 mm²', insulationLimit: '105 °C' },
    })
    expect(cable.loopResistance.in('mΩ')).toBeCloseTo(12 * 7.98 * (1 + 0.00393 * 85), 6)
    expect(found.prospective.lowest.in('A')).toBeCloseTo(155.2 / (0.168 + cable.loopResistance.si), 0)
  })

  it('refuses a fuse that the peaks of the load tire', () => {
    const peaks = {
      ...run,
      load: {
        profile: [
          ['350 A', '20 s'],
          ['60 A', '180 s'],
        ],
      },
      cable: { length: '2.4 m', section: '70 mm²', insulationLimit: '105 °C' },
    } as const
    // Its curve melts the first at 350 A in 60 s, the second at 900 A.
    const curved = (name: string, at: '350 A' | '900 A') =>
      ({
        ...fuse,
        name,
        rating: '200 A',
        curve: [
          ['320 A', '1000 s'],
          [at, '60 s'],
          ['2 kA', '0.4 s'],
          ['7 kA', '1 ms'],
        ],
      }) as const
    const { fuse: found } = protectRun({ ...peaks, candidates: [curved('quick', '350 A'), curved('slow', '900 A')] })
    expect(found.chosen?.name).toBe('slow')
    const melts = 350 * (2000 / 350) ** (Math.log(20 / 60) / Math.log(0.4 / 60))
    // 100 000 times at most as often as 20 s go into 5000 h; 22 % of the melting integral, so 46.9 % of the current.
    expect(found.rejected.map(({ reasons }) => reasons)).toEqual([
      [
        `350 A for 20 s of the load, 100000 times, is more than the ${(Math.sqrt(0.22) * melts).toFixed(1)} A that the fuse bears so often`,
      ],
    ])
    expect(found.specification).toContain('; bears 350 A for 20 s of the load, 100000 times.')
    const bare = { ...fuse, rating: '200 A', curve: undefined, meltingIntegral: '95000 A²·s' }
    const unknown = protectRun({ ...peaks, candidates: [bare] } as never).fuse.rejected[0]?.reasons.join('; ')
    // The longest stretch above its rating: (350² − 200²) · 20 s are used up at (200² − 60²) in 45.33 s more.
    expect(unknown).toContain(
      'whether the fuse bears 200 A for 65.33 s of the load, 100000 times, is not known: give its curve',
    )
  })

  it('names its own fields', () => {
    const of = (cable: object) => () => protectRun({ ...run, cable: { ...run.cable, ...cable } })
    expect(of({ insulationLimit: '30 °C' })).toThrow(
      'cable.insulationLimit: expected a temperature above the ambient one',
    )
    expect(of({ geometry: { '0.5 mm²': '0.1 mm' } })).toThrow('cable.geometry.0.5 mm²: expected a length of at least')
  })

  it('reads like a calculation sheet', () => {
    const sheet = explain(() =>
      protectRun({ ...run, cable: { ...run.cable, section: '35 mm²' }, candidates: [fuse] }),
    ).toText()
    for (const line of [
      'The pack in a fault',
      '35 mm²: serves, the cable carries 193.8 A, at least the 120 A of the load; the conductor reaches 66.14 °C at 120 A, at most the 105 °C that its insulation bears; the cable brings 66.14 °C to its terminals, at most the 75 °C for which they are made; the cable drops 0.377 V, at most the 1.776 V allowed; invented bolt-down fuse of 160 A serves',
      '  Ampacity at 105 °C',
      '  Temperature at 120 A',
      '    dU = 2 · I · r · l = 2 · 120 A · 0.654 mΩ/m · 2.4 m = 0.377 V   [IEC 60364-5-52, Annex G]',
      '    Full and warm, just behind the fuse, in the first milliseconds',
      '    Nearly empty, cold and aged, at the far end of the cable',
      '      L = L1 · l / l1 · (ln(s / r) + 0.25)',
    ]) {
      expect(sheet.split('\n')).toContain(line)
    }
  })

  it('refuses what no listed section carries, a section that is none, and a pack that is none', () => {
    expect(() => protectRun({ ...run, load: { current: '900 A' } })).toThrow(
      /^protectRun: no section up to 240 mm² serves main run, pack to controller\. 240 mm²: the cable carries 728\.4 A, less than the 900 A of the load; .* the load needs a fuse of at least 1125 A, and the cable bears one of at most 660\.1 A\. Run two in parallel/,
    )
    expect(() => protectRun({ ...run, cable: { ...run.cable, section: '33 mm²' } })).toThrow(
      'cable.section: expected a section: 0.5 mm², 0.75 mm²',
    )
    expect(() => protectRun({ ...run, load: {} })).toThrow('load.current and load.profile: expected one of them')
    expect(() =>
      protectRun({ ...run, pack: { ...run.pack, module: { ...module, chemistry: undefined } } } as never),
    ).toThrow("pack.module.openCircuit: expected points such as [[0, '36 V'], [0.5, '44 V'], [1, '50 V']]")
  })
})
