/** The heat balance of a cable against published tables and other calculations, its laws, and what it refuses. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  adiabaticConstant,
  awg,
  cableAmpacity,
  cableDuty,
  cableTemperature,
  conductorMaterials,
  metricSections,
  rmsCurrent,
} from '../../src/electrical/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { said } from '../said.js'

const amperes = (value: number) => quantity('current', value, 'A')
const celsius = (value: number) => quantity('temperature', value, '°C')
/** The complementary error function, by its series. */
function erfc(x: number): number {
  let [term, sum] = [x, x]
  for (let n = 1; n < 60; n++) {
    term *= -(x ** 2) / n
    sum += term / (2 * n + 1)
  }
  return 1 - (2 / Math.sqrt(Math.PI)) * sum
}
const mm = (value: number) => quantity('length', value, 'mm')

describe('a steady cable', () => {
  it('comes to the temperatures that a root finder in another language found for the same correlations', () => {
    // 50 mm², 10.5 mm of conductor, 16 mm outside, 3.5 K·m/W, 200 A at 25 °C, Churchill and Chu with an emissivity of 0.9:
    // surface 51.31 °C, conductor 55.44 °C, 17.591 W/m.
    const { surfaceTemperature, conductorTemperature, lossPerLength } = cableTemperature({
      current: '200 A',
      area: '50 mm²',
      ambient: '25 °C',
      conductorDiameter: '10.5 mm',
      outerDiameter: '16 mm',
    })
    expect(Math.abs(surfaceTemperature.in('°C') - 51.31)).toBeLessThan(0.05)
    expect(Math.abs(conductorTemperature.in('°C') - 55.44)).toBeLessThan(0.05)
    expect(Math.abs(lossPerLength.in('W/m') - 17.591)).toBeLessThan(0.01)
    // The film coefficient of IEC 60287-2-1 (constants read), in place of the correlations: 53.37 °C.
    expect(Math.abs(conductorTemperature.in('°C') - 53.37)).toBeLessThan(3)
  })

  // BS 7671, flexible copper, 90 °C rubber, 2 single cores touching, 30 °C air, DC (read). The table states no diameters.
  it.each([
    ['50 mm²', '0.393 Ω/km', 250],
    ['95 mm²', '0.21 Ω/km', 369],
  ] as const)('carries two and two, %s, what BS 7671 lets it carry, to 10 %%', (area, resistance, table) => {
    const { ampacity } = cableAmpacity({ area, resistance, limit: '90 °C', ambient: '30 °C', laid: 'touching' })
    expect(Math.abs(ampacity.in('A') / table - 1)).toBeLessThan(0.1)
  })

  // NFPA 70 (NEC), T400.5(B), single conductor, 30 °C (read). Diameters of building wire, chapter 9, Table 5, from memory.
  const nec = [
    ['2', 7.42, 9.75, [140, 170, 190]],
    ['1/0', 9.47, 12.34, [195, 230, 260]],
    ['4/0', 13.41, 16.31, [300, 360, 405]],
  ] as const
  const single = (name: string, inner: number, outer: number, limit: number) =>
    cableAmpacity({
      area: awg(name).area,
      conductorDiameter: mm(inner),
      outerDiameter: mm(outer),
      limit: celsius(limit),
      ambient: '30 °C',
    }).ampacity.in('A')

  it.each(nec)(
    'carries alone, %s, no less than the NEC lets it carry, and up to 15 %% more',
    (name, inner, outer, table) => {
      for (const [i, limit] of [60, 75, 90].entries()) {
        const ratio = single(name, inner, outer, limit) / (table[i] as number)
        expect(ratio).toBeGreaterThan(1)
        // The table takes one film coefficient for all temperatures: its 60 °C column, to 10 %, is where the two meet best.
        expect(ratio).toBeLessThan(limit === 60 ? 1.1 : 1.15)
      }
      // So the table rises from 60 °C to 90 °C just as temperature rise over resistance does.
      const scaled = Math.sqrt((60 / 30) * ((234.5 + 60) / (234.5 + 90)))
      expect(Math.abs((table[2] as number) / table[0] / scaled - 1)).toBeLessThan(0.015)
    },
  )

  it.each(nec)('loses by the figures of the NEC, %s, heat at one film coefficient', (name, inner, outer, table) => {
    // Heat at the tabulated current, over the surface and its rise: near 12 W/(m²·K) in all three columns of a size, where
    // still air and radiation take more from a hotter surface.
    const film = [60, 75, 90].map((limit, i) => {
      const resistance = ((0.017241 * 1.02) / awg(name).area.in('mm²')) * (1 + 0.00393 * (limit - 20))
      const heat = (table[i] as number) ** 2 * resistance
      const surface = limit - heat * (3.5 / (2 * Math.PI)) * Math.log(outer / inner)
      return heat / (Math.PI * (outer / 1000) * (surface - 30))
    })
    for (const each of film) expect(Math.abs(each / (film[1] as number) - 1)).toBeLessThan(0.06)
    const taken = [60, 90].map((limit) => {
      const { ampacity } = cableAmpacity({
        area: awg(name).area,
        conductorDiameter: mm(inner),
        outerDiameter: mm(outer),
        limit: celsius(limit),
        ambient: '30 °C',
      })
      return cableTemperature({
        area: awg(name).area,
        conductorDiameter: mm(inner),
        outerDiameter: mm(outer),
        current: ampacity,
        ambient: '30 °C',
      }).heatTransferCoefficient.si
    })
    expect((taken[1] as number) / (taken[0] as number)).toBeGreaterThan(1.1)
  })

  // IEC 60364-5-52, Tables B.52.10 to B.52.13, copper at 90 °C in air of 30 °C, single cables: method F, two that touch, and
  // method G, spaced (from memory). The tables are for class 2 conductors in thicker insulation.
  it.each([
    ['25 mm²', 161, 182],
    ['35 mm²', 200, 226],
    ['50 mm²', 242, 275],
    ['70 mm²', 310, 353],
    ['95 mm²', 377, 430],
    ['120 mm²', 437, 500],
    ['150 mm²', 504, 577],
    ['185 mm²', 575, 661],
    ['240 mm²', 679, 781],
  ] as const)('carries, %s, what IEC 60364-5-52 lets it carry, to 9 %%', (area, touching, spaced) => {
    const at = (laid: 'touching' | 'apart') =>
      cableAmpacity({ area, limit: '90 °C', ambient: '30 °C', laid }).ampacity.in('A')
    expect(Math.abs(at('touching') / touching - 1)).toBeLessThan(0.09)
    expect(Math.abs(at('apart') / spaced - 1)).toBeLessThan(0.09)
  })

  it.each(nec)(
    'of the thickness that is usual carries, %s, up to 20 %% more than the NEC lets it',
    (name, _, __, table) => {
      for (const [i, limit] of [60, 75, 90].entries()) {
        const { ampacity } = cableAmpacity({ area: awg(name).area, limit: celsius(limit), ambient: '30 °C' })
        const ratio = ampacity.in('A') / (table[i] as number)
        expect(ratio).toBeGreaterThan(1.03)
        expect(ratio).toBeLessThan(1.2)
      }
    },
  )

  it.each(nec)('carries alone, %s, what the equation of Neher and McGrath gives, to 3 %%', (name, inner, outer) => {
    // AIEE Transactions 76 (1957), equation for a cable in still air, from memory: thermal ohm-feet, inches, °C.
    const inches = outer / 25.4
    const resistance = (0.017241 / awg(name).area.in('mm²')) * 1.02 * (1 + 0.00393 * 70)
    const insulation = (3.5 / (2 * Math.PI)) * Math.log(outer / inner)
    let rise = 50
    for (let i = 0; i < 50; i++) {
      const mean = 30 + rise / 2
      const perFoot = 15.6 / (inches * ((rise / inches) ** 0.25 + 1.6 * 0.9 * (1 + 0.0167 * mean)))
      const outside = perFoot * 0.3048
      rise = (60 * outside) / (outside + insulation)
      if (i === 49) {
        const current = Math.sqrt(60 / (outside + insulation) / resistance)
        expect(Math.abs(single(name, inner, outer, 90) / current - 1)).toBeLessThan(0.03)
      }
    }
  })

  // NFPA 70 (NEC), 310.15(B)(1), from 30 °C (read). Still air cools the less, the less warmer the cable is: below the factor.
  it.each([
    [90, 40, 0.91],
    [90, 50, 0.82],
    [75, 40, 0.88],
    [90, 10, 1.15],
  ])('at %d °C in air of %d °C carries %d of what it does in 30 °C, to 5 %%', (limit, ambient, factor) => {
    const at = (air: number) =>
      cableAmpacity({ area: '50 mm²', limit: celsius(limit), ambient: celsius(air) }).ampacity.si
    expect(Math.abs(at(ambient) / at(30) / factor - 1)).toBeLessThan(0.05)
  })

  it('gives off all that it makes', () => {
    fc.assert(
      fc.property(fc.constantFrom(...metricSections), between(0, 3), (metric, density) => {
        const current = amperes(density * metric.area.in('mm²'))
        const { lossPerLength, conductorTemperature } = cableTemperature({
          current,
          area: metric.area,
          ambient: '30 °C',
        })
        const made =
          current.si ** 2 * metric.maximumResistance.si * (1 + 0.00393 * (conductorTemperature.in('°C') - 20))
        expect(Math.abs(lossPerLength.si - made)).toBeLessThanOrEqual(1e-6 * made + 1e-9)
      }),
    )
  })

  it('carries at a temperature the current that brings it there', () => {
    fc.assert(
      fc.property(fc.constantFrom(...metricSections), between(45, 200), between(-20, 40), ({ area }, limit, air) => {
        const at = { area, ambient: celsius(air), laid: 'touching' } as const
        const { ampacity } = cableAmpacity({ ...at, limit: celsius(limit) })
        const { conductorTemperature } = cableTemperature({ ...at, current: ampacity })
        expect(conductorTemperature.in('°C')).toBeCloseTo(limit, 6)
      }),
    )
  })

  it('is never hotter with more copper, and always with more current, with a neighbour, or in aluminium', () => {
    const at = (given: object, current = 100) =>
      cableTemperature({ area: '35 mm²', ambient: '40 °C', current: amperes(current), ...given }).conductorTemperature
        .si
    const areas = metricSections.map(({ area }) => area).filter((area) => area.isAtLeast('16 mm²'))
    for (const [i, area] of areas.entries()) if (i > 0) expect(at({ area })).toBeLessThan(at({ area: areas[i - 1] }))
    fc.assert(
      fc.property(
        between(0, 200),
        between(0, 200),
        (one, other) => at({}, Math.max(one, other)) >= at({}, Math.min(one, other)),
      ),
    )
    expect(at({ laid: 'touching' })).toBeGreaterThan(at({}))
    expect(at({ conductor: 'aluminium' })).toBeGreaterThan(at({}))
  })

  it('is as warm as the air without a current', () => {
    const { conductorTemperature, lossPerLength } = cableTemperature({
      current: '0 A',
      area: '35 mm²',
      ambient: '40 °C',
    })
    expect(conductorTemperature.in('°C')).toBeCloseTo(40, 6)
    expect(lossPerLength.si).toBeCloseTo(0, 6)
  })

  it('says what it takes for granted', () => {
    expect(cableTemperature({ current: '10 A', area: '33.6 mm²', ambient: '40 °C' }).assumptions.map(said)).toEqual([
      'Metal of the conductor: copper (conductor by default; as in nearly all flexible cable).',
      'How the cables lie: apart (laid by default; one cable on its own).',
      '33.6 mm² of copper: 0.5234 mΩ/m at 20 °C, that of the metal and 2 % for the lay of the strands.',
      'Outer diameter 11.13 mm, that of thin-walled flexible cable (common practice, no source).',
      'Still air, out of the sun; nothing lies near the cable.',
      'The insulation conducts 0.2857 W/(m·K), and its surface has an emissivity of 0.9.',
    ])
  })

  it('refuses a current at which nothing is steady, and says how much it carries', () => {
    expect(() => cableTemperature({ current: '300 A', area: '1.5 mm²', ambient: '40 °C' })).toThrow(
      /^cableTemperature: 300 A has no steady temperature in 1\.5 mm² of copper: even with the conductor at \d+\.?\d* °C it carries \d+\.?\d* A\. Its insulation burns long before, and the metal melts at 1085 °C$/,
    )
  })

  it('refuses a limit that the air has, diameters that cannot be, and air colder than its table', () => {
    const cable = { area: '35 mm²', ambient: '40 °C' } as const
    expect(() => cableAmpacity({ ...cable, limit: '40 °C' })).toThrow(
      'limit: expected a temperature above the ambient one, 40 °C, and at most',
    )
    expect(() => cableAmpacity({ ...cable, limit: '90 °C', outerDiameter: '5 mm' })).toThrow(
      'outerDiameter: expected a length of at least 6.676 mm, that of the conductor, got 5 mm',
    )
    expect(() => cableAmpacity({ ...cable, limit: '90 °C', conductorDiameter: '6 mm' })).toThrow(
      'conductorDiameter: expected a length of at least 6.676 mm, that of 35 mm² of solid metal, got 6 mm',
    )
    expect(() => cableAmpacity({ ...cable, limit: '90 °C', ambient: '-40 °C' })).toThrow(
      'ambient: expected a temperature at least -23.15 °C',
    )
  })
})

describe('a duty', () => {
  const cable = { area: '50 mm²', ambient: '40 °C' } as const

  it('has the root mean square of its currents', () => {
    expect(
      rmsCurrent([
        ['300 A', '10 s'],
        ['0 A', '30 s'],
      ]).in('A'),
    ).toBeCloseTo(150, 9)
    expect(
      rmsCurrent([
        ['-20 A', '1 min'],
        ['20 A', '1 h'],
      ]).in('A'),
    ).toBeCloseTo(20, 9)
  })

  it('settles where a steady current settles', () => {
    const { final, peak, rms } = cableDuty({ ...cable, profile: [['200 A', '3 h']] })
    const { conductorTemperature } = cableTemperature({ ...cable, current: '200 A' })
    expect(final.si).toBeCloseTo(conductorTemperature.si, 2)
    expect(peak.si).toBeCloseTo(conductorTemperature.si, 2)
    expect(rms.in('A')).toBeCloseTo(200, 9)
  })

  it('settles there in a time without end', () => {
    const { peak, final } = cableDuty({ ...cable, profile: [['200 A', '1e300 s']] })
    const { conductorTemperature } = cableTemperature({ ...cable, current: '200 A' })
    // As near as in a few hours: the heat given off is straight between its points.
    for (const each of [peak, final]) expect(each.si).toBeCloseTo(conductorTemperature.si, 2)
  })

  it('lies in a short burst below what a conductor reaches that keeps all its heat', () => {
    // 50 mm², 1000 A for 10 s from 40 °C: adiabatic 62.36 °C, at the resistivity of IEC 60364-5-54.
    const { peak } = cableDuty({ ...cable, profile: [['1000 A', '10 s']], resistance: '0.34482 mΩ/m' })
    expect(peak.in('°C')).toBeLessThan(62.36)
    // Metal of one temperature against a thick flat wall of insulation (Carslaw and Jaeger, Conduction of Heat in Solids,
    // from memory): with a = around / C sqrt(k rho c), the rise is P / (C a²) (exp(a² t) erfc(a sqrt(t)) - 1 + 2 a sqrt(t / pi)).
    const [around, capacity] = [Math.PI * Math.sqrt((4 * 50e-6) / Math.PI / 0.6), 3.45e6 * 50e-6]
    const a = (around / capacity) * Math.sqrt((1 / 3.5) * 2.4e6)
    const power = 1000 ** 2 * 0.34482e-3 * (1 + 0.00393 * (40 + 16 / 2 - 20))
    const x = a * Math.sqrt(10)
    const rise = (power / (capacity * a ** 2)) * (Math.exp(x ** 2) * erfc(x) - 1 + (2 * x) / Math.sqrt(Math.PI))
    expect(Math.abs((peak.in('°C') - 40) / rise - 1)).toBeLessThan(0.03)
    // And in a burst of a hundredth of a second the two agree: from k between the temperatures.
    const { resistivity, beta, volumetricHeat } = conductorMaterials.copper
    const short = cableDuty({
      ...cable,
      profile: [['25 kA', '10 ms']],
      resistance: quantity('resistancePerLength', resistivity.si / 50e-6, 'Ω/m'),
    })
    const k = adiabaticConstant({ resistivity, beta, volumetricHeat, initial: '40 °C', final: short.peak })
    expect((k.si * 50e-6) ** 2 / (25000 ** 2 * 0.01)).toBeCloseTo(1, 2)
  })

  it('agrees with finer rings and smaller steps, written apart, to 0.5 K', () => {
    // Conduction through 40 rings by small explicit steps, written apart from the library; the same surface coefficient,
    // 12 W/(m²·K), as the balance has near these temperatures.
    const profile = [
      ['400 A', '60 s'],
      ['100 A', '120 s'],
      ['400 A', '60 s'],
    ] as const
    const diameters = { conductorDiameter: '10.5 mm', outerDiameter: '16 mm' } as const
    const { peak } = cableDuty({ ...cable, ...diameters, profile })
    const [rings, k, heat] = [40, 1 / 3.5, 2.4e6]
    const [inner, outer] = [5.25e-3, 8e-3]
    const dr = (outer - inner) / rings
    const radius = (i: number) => inner + i * dr
    let conductor = 40
    const t = Array.from({ length: rings }, () => 40)
    const dt = 0.01
    let hottest = 40
    for (const [current, time] of [
      [400, 60],
      [100, 120],
      [400, 60],
    ] as const) {
      for (let step = 0; step < time / dt; step++) {
        const across = [(conductor - (t[0] as number)) * ((2 * Math.PI * k) / Math.log((inner + dr / 2) / inner))]
        for (let i = 1; i < rings; i++) {
          across.push((((t[i - 1] as number) - (t[i] as number)) * 2 * Math.PI * k * radius(i)) / dr)
        }
        const surface = t[rings - 1] as number
        across.push((surface - 40) * 2 * Math.PI * outer * 12)
        conductor +=
          ((current ** 2 * 0.386e-3 * (1 + 0.00393 * (conductor - 20)) - (across[0] as number)) / (3.45e6 * 50e-6)) * dt
        for (let i = 0; i < rings; i++) {
          const mass = heat * Math.PI * (radius(i + 1) ** 2 - radius(i) ** 2)
          t[i] = (t[i] as number) + (((across[i] as number) - (across[i + 1] as number)) / mass) * dt
        }
        hottest = Math.max(hottest, conductor)
      }
    }
    expect(Math.abs(peak.in('°C') - hottest)).toBeLessThan(0.5)
  })

  it('follows a thousand hours, a thousand times, to where they settle', () => {
    const { final } = cableDuty({ ...cable, profile: [['200 A', '1000 h']], rounds: 1000 })
    const { conductorTemperature } = cableTemperature({ ...cable, current: '200 A' })
    expect(final.si).toBeCloseTo(conductorTemperature.si, 2)
  })

  it('goes on from one part to the next', () => {
    const whole = cableDuty({ ...cable, profile: [['300 A', '600 s']] })
    const halves = cableDuty({
      ...cable,
      profile: [
        ['300 A', '300 s'],
        ['300 A', '300 s'],
      ],
    })
    const twice = cableDuty({ ...cable, profile: [['300 A', '300 s']], rounds: 2 })
    expect(halves.final.si).toBeCloseTo(whole.final.si, 4)
    expect(twice.final.si).toBe(halves.final.si)
  })

  it('of a quick profile settles near the steady temperature of its root mean square', () => {
    const { rms, final } = cableDuty({
      ...cable,
      profile: [
        ['300 A', '5 s'],
        ['0 A', '15 s'],
      ],
      rounds: 600,
    })
    const { conductorTemperature } = cableTemperature({ ...cable, current: rms })
    expect(Math.abs(final.si - conductorTemperature.si)).toBeLessThan(3)
  })

  it('cools a warm cable, and warms one colder than the air', () => {
    const rest = (initial: '90 °C' | '0.1 °C') => cableDuty({ ...cable, profile: [['0 A', '2 h']], initial })
    expect(rest('90 °C').peak.in('°C')).toBeCloseTo(90, 9)
    expect(rest('90 °C').final.in('°C')).toBeCloseTo(40, 1)
    expect(rest('0.1 °C').final.in('°C')).toBeCloseTo(40, 1)
  })

  it('holds the peak to a limit that is given', () => {
    const { checks } = cableDuty({ ...cable, profile: [['600 A', '120 s']], limit: '70 °C' })
    expect(checks.map(({ name, verdict }) => [name, verdict])).toEqual([['Hottest conductor', 'fail']])
  })

  it('gives what its documentation shows', () => {
    const { rms, peak } = cableDuty({
      profile: [
        ['300 A', '60 s'],
        ['50 A', '180 s'],
      ],
      rounds: 20,
      area: '35 mm²',
      ambient: '40 °C',
    })
    expect([String(rms), String(peak)]).toEqual(['156.1 A', '79.31 °C'])
    const at = cableTemperature({ current: '200 A', area: '50 mm²', ambient: '25 °C' })
    expect([String(at.conductorTemperature), String(at.lossPerLength)]).toEqual(['57.61 °C', '17.72 W/m'])
    expect(String(cableAmpacity({ area: '50 mm²', limit: '90 °C', ambient: '30 °C' }).ampacity)).toBe('275 A')
  })

  it('refuses what melts, and says after how long', () => {
    expect(() => cableDuty({ ...cable, area: '10 mm²', profile: [['3 kA', '5 min']] })).toThrow(
      /^cableDuty: after \d\.\d+ s the conductor of 10 mm² is past any heat that can be followed: its insulation has burnt/,
    )
    expect(() => cableDuty({ ...cable, profile: [] })).toThrow('profile: expected a list')
    expect(() => cableDuty({ ...cable, profile: [['3 kA', '0 s']] })).toThrow(
      'profile[0][1]: expected a time above 0 s',
    )
  })
})
