/** Tables of coolants and of air against published figures, and what is refused outside them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Quantity, quantity } from '../../src/quantity/index.js'
import { airProperties, type Coolant, coolantProperties, coolants, dryAir } from '../../src/thermal/index.js'

const kelvins = (value: number) => quantity('temperature', value, 'K')

function near(actual: Quantity, wanted: number, within: number): void {
  expect(Math.abs(actual.si / wanted - 1), `${actual} against ${wanted}`).toBeLessThanOrEqual(within)
}

describe('coolantProperties', () => {
  // IAPWS-95 and the formulations of 2008 and 2011, worked out with the open-source library chemicals.
  it.each([
    ['20 °C', 998.207, 4184.1, 1.0016e-3, 0.598],
    ['40 °C', 992.216, 4179.4, 0.65273e-3, 0.6285],
    ['60 °C', 983.196, 4185.0, 0.46604e-3, 0.651],
  ] as const)('gives those of water at %s', (temperature, density, specificHeat, viscosity, conductivity) => {
    const water = coolantProperties({ coolant: 'water', temperature })
    near(water.density, density, 0.0005)
    near(water.specificHeat, specificHeat, 0.001)
    near(water.viscosity, viscosity, 0.01)
    near(water.conductivity, conductivity, 0.01)
  })

  it('gives those of water between two rows as closely', () => {
    // 25 °C, halfway between rows. IAPWS R12-08 and R15-11, tables for checking programs: 889.7351 µPa·s and
    // 607.7129 mW/(m·K) at 298.15 K and 998 kg/m³; density and specific heat of water at 25 °C. All from memory.
    const water = coolantProperties({ coolant: 'water', temperature: '25 °C' })
    near(water.density, 997.047, 0.0005)
    near(water.specificHeat, 4181.3, 0.001)
    near(water.viscosity, 889.7351e-6, 0.01)
    near(water.conductivity, 0.6077129, 0.01)
  })

  // Melinder's coefficients for 53 % by mass, evaluated as the library CoolProp does, are another authority.
  it('gives those of half glycol as another author does', () => {
    const glycol = coolantProperties({ coolant: 'ethylene glycol 50 %', temperature: '20 °C' })
    near(glycol.specificHeat, 3249, 0.015)
    near(glycol.viscosity, 4.01e-3, 0.06)
  })

  // ASHRAE Handbook, Fundamentals (2001), read in an open data file: a row mistyped here would show.
  it.each([
    ['-20 °C', 1086.87, 3126, 22.07e-3, 0.344],
    ['0 °C', 1081.08, 3203, 8.09e-3, 0.364],
    ['20 °C', 1073.35, 3281, 3.94e-3, 0.38],
    ['40 °C', 1063.66, 3358, 2.26e-3, 0.394],
    ['60 °C', 1052.04, 3435, 1.43e-3, 0.404],
  ] as const)('gives those of half glycol at %s', (temperature, density, specificHeat, viscosity, conductivity) => {
    const glycol = coolantProperties({ coolant: 'ethylene glycol 50 %', temperature })
    near(glycol.density, density, 1e-12)
    near(glycol.specificHeat, specificHeat, 1e-12)
    near(glycol.viscosity, viscosity, 1e-12)
    near(glycol.conductivity, conductivity, 1e-12)
  })

  it('gives a viscosity halfway between two rows that is their geometric mean', () => {
    const { viscosity } = coolantProperties({ coolant: 'ethylene glycol 50 %', temperature: '-25 °C' })
    near(viscosity, Math.sqrt(43.98 * 22.07) / 1000, 1e-12)
  })

  it.each(Object.keys(coolants) as Coolant[])(
    'of %s lies between the rows around it, over the whole table',
    (coolant) => {
      const { rows } = coolants[coolant]
      const at = fc.double({ min: rows[0]?.[0] as number, max: rows.at(-1)?.[0] as number, noNaN: true })
      fc.assert(
        fc.property(at, (celsius) => {
          const found = coolantProperties({ coolant, temperature: quantity('temperature', celsius, '°C') })
          const above = Math.max(
            1,
            rows.findIndex(([row]) => (row as number) >= celsius),
          )
          const [low, high] = [rows[above - 1] as readonly number[], rows[above] as readonly number[]]
          const si = [found.density.si, found.specificHeat.si, found.viscosity.si * 1000, found.conductivity.si]
          for (const [i, value] of si.entries()) {
            const ends = [low[i + 1] as number, high[i + 1] as number]
            expect(value).toBeGreaterThanOrEqual(Math.min(...ends) * (1 - 1e-12))
            expect(value).toBeLessThanOrEqual(Math.max(...ends) * (1 + 1e-12))
          }
        }),
      )
    },
  )

  it('reaches to the ends of its tables, and refuses what lies beyond', () => {
    near(coolantProperties({ coolant: 'ethylene glycol 50 %', temperature: '-30 °C' }).viscosity, 43.98e-3, 1e-9)
    near(coolantProperties({ coolant: 'ethylene glycol 50 %', temperature: '100 °C' }).viscosity, 0.7e-3, 1e-9)
    near(coolantProperties({ coolant: 'water', temperature: '0.01 °C' }).viscosity, 1.7911e-3, 1e-9)
    near(coolantProperties({ coolant: 'water', temperature: '99 °C' }).viscosity, 0.2846e-3, 1e-9)
    expect(() => coolantProperties({ coolant: 'water', temperature: '-5 °C' })).toThrow(
      'temperature: expected a temperature from 0.01 °C to 99 °C, the range of the table of water at 101.325 kPa, ' +
        'got -5 °C (IAPWS; nothing is extrapolated)',
    )
    expect(() => coolantProperties({ coolant: 'ethylene glycol 50 %', temperature: '101 °C' })).toThrow(
      'from -30 °C to 100 °C, the range of the table of 50 % ethylene glycol by volume, got 101 °C ' +
        '(ASHRAE Handbook, Fundamentals (2001); nothing is extrapolated)',
    )
  })

  it('tells which coolants there are, and never takes one glycol for the other', () => {
    const refused = (coolant: string) => () => coolantProperties({ coolant: coolant as Coolant, temperature: '20 °C' })
    expect(refused('ethylene glycol 60 %')).toThrow(
      /expected 'water', 'ethylene glycol 30 %', .*'propylene glycol 50 %'/,
    )
    expect(refused('glycol 50 %')).toThrow('got ')
    const [ethylene, propylene] = (['ethylene', 'propylene'] as const).map((kind) =>
      coolantProperties({ coolant: `${kind} glycol 50 %`, temperature: '20 °C' }),
    )
    expect(propylene?.viscosity.ratioTo(ethylene?.viscosity as Quantity<'dynamicViscosity'>)).toBeGreaterThan(1.6)
  })

  // Melinder (2010) for pure glycol at the same mass fraction, worked out with the open-source library CoolProp: another
  // authority. Inhibitors make what is sold up to 0.9 % heavier; the sources differ by 6 % in viscosity.
  it.each([
    ['ethylene glycol 30 %', '25 °C', 1039.2, 3688, 1.994, 0.4595],
    ['ethylene glycol 40 %', '25 °C', 1052.7, 3489, 2.587, 0.4196],
    ['ethylene glycol 40 %', '65 °C', 1028.7, 3646, 1.049, 0.4481],
    ['propylene glycol 30 %', '20 °C', 1024.3, 3849, 3.035, 0.4417],
    ['propylene glycol 40 %', '20 °C', 1032.6, 3700, 4.452, 0.3986],
    ['propylene glycol 50 %', '60 °C', 1010.5, 3682, 1.666, 0.3796],
  ] as const)('gives those of %s at %s as another author does', (coolant, temperature, density, heat, viscosity, k) => {
    const found = coolantProperties({ coolant, temperature })
    near(found.density, density, 0.01)
    near(found.specificHeat, heat, 0.01)
    near(found.viscosity, viscosity / 1000, 0.06)
    near(found.conductivity, k, 0.022)
  })

  // ASHRAE Handbook, Fundamentals (2001), interpolated between the rows of its table of freezing points, read in an open
  // data file; where water boils IAPWS-95 has 99.97 °C.
  it.each([
    ['water', 0, 99.97],
    ['ethylene glycol 30 %', -15.7, 104],
    ['ethylene glycol 40 %', -24.8, 105],
    ['ethylene glycol 50 %', -37, 107],
    ['propylene glycol 30 %', -13.1, 102],
    ['propylene glycol 40 %', -21.5, 103],
    ['propylene glycol 50 %', -33.7, 105],
  ] as const)('tells where %s freezes and boils', (coolant, freezes, boils) => {
    const found = coolantProperties({ coolant, temperature: '20 °C' })
    expect(found.freezes.in('°C')).toBeCloseTo(freezes, 9)
    expect(found.boils.in('°C')).toBeCloseTo(boils, 0)
    // A coolant's table lies between the two.
    const { rows } = coolants[coolant]
    expect(rows[0]?.[0]).toBeGreaterThanOrEqual(freezes)
    expect(rows.at(-1)?.[0]).toBeLessThan(boils)
  })
})

/**
 * Dry air at 101.325 kPa by the equations of Lemmon and others (2000), cut off after the second virial coefficient, and
 * of Lemmon and Jacobsen (2004): density in kg/m³, viscosity in 1e-5 Pa·s, conductivity in W/(m·K). The coefficients are
 * from memory; the rows from 250 K on, worked out with an open-source library, show that they are right.
 */
function lemmon(kelvins: number) {
  const tau = 132.6312 / kelvins
  const virial =
    (0.118160747229 + 0.713116392079 * tau ** 0.33 - 1.61824192067 * tau ** 1.01) / 10.4477 -
    (0.101365037912 * tau ** 1.6 + 0.146629609713 * tau ** 3.6) / 10.4477
  const ideal = 101.325 / (8.31451 * kelvins)
  const molar = ideal / ((1 + Math.sqrt(1 + 4 * virial * ideal)) / 2)
  const delta = molar / 10.4477
  const x = Math.log(kelvins / 103.3)
  const integral = Math.exp(0.431 - 0.4623 * x + 0.08406 * x ** 2 + 0.005341 * x ** 3 - 0.00331 * x ** 4)
  const dilute = (0.0266958 * Math.sqrt(28.9586 * kelvins)) / (0.36 ** 2 * integral)
  // What the density adds is here no more than its first, linear terms.
  const dense = 10.72 * tau ** 0.2 * delta - 8.876 * tau ** 0.6 * delta * Math.exp(-delta)
  const conducted = 1.308 * dilute + 1.405 * tau ** -1.1 - 1.036 * tau ** -0.3
  return {
    density: molar * 28.9586,
    viscosity: (dilute + dense) / 10,
    conductivity: (conducted + 8.743 * tau ** 0.1 * delta + 14.76 * delta ** 2) / 1000,
  }
}

describe('airProperties', () => {
  // Incropera, Table A.4 (300 K, 350 K and 400 K read, 250 K from memory); its densities belong to 1 bar, so the
  // kinematic viscosities are compared at that pressure.
  it.each([
    [250, 11.44e-6, 0.0223, 0.72],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a Prandtl number of the table
    [300, 15.89e-6, 0.0263, 0.707],
    [350, 20.92e-6, 0.03, 0.7],
    [400, 26.41e-6, 0.0338, 0.69],
  ] as const)('are those of a textbook at %d K', (at, viscosity, conductivity, prandtl) => {
    const air = airProperties({ temperature: kelvins(at) })
    near(air.kinematicViscosity.times(1.01325), viscosity, 0.015)
    near(air.conductivity, conductivity, 0.015)
    near(air.prandtl, prandtl, 0.015)
  })

  it('are those of a textbook in the deepest cold, too, whose older figures lie lower there', () => {
    // Incropera, Table A.4, at 200 K, from memory; its density belongs to 1 bar.
    const air = airProperties({ temperature: kelvins(200) })
    near(air.kinematicViscosity.times(1.01325), 7.59e-6, 0.01)
    near(air.conductivity, 0.0181, 0.025)
    near(air.prandtl, 0.737, 0.02)
  })

  it('are those of the equations on which the table rests, to the last digit of every row', () => {
    for (const [at, density, viscosity, conductivity] of dryAir.rows as [number, number, number, number][]) {
      const worked = lemmon(at)
      expect(Math.abs(worked.density - density), `density at ${at} K`).toBeLessThanOrEqual(0.51e-4)
      expect(Math.abs(worked.viscosity - viscosity), `viscosity at ${at} K`).toBeLessThanOrEqual(0.51e-4)
      expect(Math.abs(worked.conductivity - conductivity), `conductivity at ${at} K`).toBeLessThanOrEqual(0.51e-5)
    }
  })

  it('keep within 1.5 % of the compact formulas of IEEE 738, over their common range', () => {
    fc.assert(
      fc.property(fc.double({ min: 200, max: 400, noNaN: true }), (at) => {
        const air = airProperties({ temperature: kelvins(at) })
        const celsius = at - 273.15
        // Equations 13a and 15a.
        near(air.viscosity, (1.458e-6 * at ** 1.5) / (at + 110.4), 0.015)
        near(air.conductivity, 2.424e-2 + 7.477e-5 * celsius - 4.407e-9 * celsius ** 2, 0.015)
      }),
    )
  })

  it('have the density of an ideal gas within 0.15 %, and in the deepest cold are hardly denser', () => {
    fc.assert(
      fc.property(fc.double({ min: 225, max: 500, noNaN: true }), (at) => {
        near(airProperties({ temperature: kelvins(at) }).density, 101325 / (287.058 * at), 0.0015)
      }),
    )
    const { density } = airProperties({ temperature: kelvins(200) })
    // The second virial coefficient of air at 200 K is about −38 cm³/mol (from memory).
    near(density, 101325 / (287.058 * 200) / (1 - (38e-6 * 101325) / (8.314 * 200)), 0.0003)
  })

  it('have a diffusivity and an expansion that belong to the rest', () => {
    const air = airProperties({ temperature: '60 °C' })
    near(air.expansion, 1 / 333.15, 1e-12)
    near(air.prandtl, air.kinematicViscosity.si / air.diffusivity.si, 1e-12)
    near(air.kinematicViscosity, air.viscosity.si / air.density.si, 1e-12)
  })

  it('are refused outside the table', () => {
    near(airProperties({ temperature: kelvins(200) }).density, dryAir.rows[0]?.[1] as number, 1e-12)
    near(airProperties({ temperature: kelvins(500) }).density, dryAir.rows.at(-1)?.[1] as number, 1e-12)
    expect(() => airProperties({ temperature: '-80 °C' })).toThrow(
      'temperature: expected a temperature from -73.15 °C to 226.8 °C, the range of the table of dry air at ' +
        '101.325 kPa, got -80 °C (Lemmon and others (2000), Lemmon and Jacobsen (2004); nothing is extrapolated)',
    )
  })
})
