/** What the electrical formulas must have among themselves, the tables, and the answers to wrong input. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  acPower,
  adiabaticConstant,
  adiabaticTime,
  adiabaticWithstand,
  americanGauges,
  ampacityAtAmbient,
  awg,
  awgDiameter,
  cableLoss,
  cableVoltageDrop,
  capacitorEnergy,
  chargeTime,
  conductorMaterials,
  currentForPower,
  dischargeTime,
  isolationFromVoltmeter,
  jouleHeat,
  leakageCurrent,
  maximumPower,
  meltingTime,
  metricSections,
  minimumIsolation,
  packEnergy,
  packResistance,
  parallelCharge,
  powerAtFloor,
  prechargeResistance,
  prechargeTime,
  prechargeVoltage,
  preferredRatings,
  prospectiveCurrent,
  resistancePerLength,
  resistivityAt,
  seriesVoltage,
  terminalVoltage,
  usableEnergy,
  voltageClass,
} from '../../src/electrical/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'

/** Numbers near the least that a double can hold have fewer digits: 1e-300 lets them pass. */
function near(actual: number, wanted: number, relative = 1e-9): void {
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + 1e-300)
}

describe('conductors', () => {
  it('steps by the 39th root of 92 in diameter, and nearly doubles in section with three gauges', () => {
    near(awgDiameter.compute({ gauge: 9 }) / awgDiameter.compute({ gauge: 10 }), 1.12293, 1e-5)
    near(awg('7').area.ratioTo(awg('10').area), 2.00503, 1e-5)
  })

  it('knows gauges by name, 4/0 being 211 600 circular mils', () => {
    expect(awg('4/0').gauge).toBe(-3)
    expect(awg('1/0').gauge).toBe(0)
    expect(awg('18').gauge).toBe(18)
    near(awg('4/0').area.in('kcmil'), 211.6, 1e-4)
    near(awg('18').area.in('mm²'), 0.823, 1e-3)
  })

  it.each(['5/0', '0', '57', '-3', '4/0 ', 'AWG 10', '120 mm²'])('has no gauge %s', (name) => {
    expect(() => awg(name)).toThrow("name: expected a gauge from '4/0' to '1/0' or from '1' to '56', such as '2/0'")
  })

  it('says what came instead of a gauge', () => {
    expect(() => awg('120')).toThrow("got '120'")
    expect(() => awg(undefined as never)).toThrow('got undefined')
  })

  it('lists the gauges and the sections in rising size, by names that read back', () => {
    for (const list of [americanGauges, metricSections]) {
      const areas = list.map(({ area }) => area.si)
      expect(areas).toEqual([...areas].sort((a, b) => a - b))
    }
    for (const { name, ...gauge } of americanGauges) expect(awg(name).gauge).toBe(gauge.gauge)
    for (const { name, area } of metricSections) expect(quantity('area', name as '1 mm²').equals(area)).toBe(true)
  })

  // Read in transcriptions of IEC 60228:2004, Table 3.
  it.each([
    ['1.5 mm²', '13.3 Ω/km'],
    ['4 mm²', '4.95 Ω/km'],
    ['10 mm²', '1.91 Ω/km'],
    ['25 mm²', '0.78 Ω/km'],
    ['35 mm²', '0.554 Ω/km'],
    ['50 mm²', '0.386 Ω/km'],
    ['70 mm²', '0.272 Ω/km'],
    ['95 mm²', '0.206 Ω/km'],
    ['150 mm²', '0.129 Ω/km'],
  ] as const)('allows a class 5 conductor of %s at most %s', (name, resistance) => {
    const section = metricSections.find((each) => each.name === name)
    expect(section?.maximumResistance.equals(resistance)).toBe(true)
  })

  it('allows every flexible conductor 10 to 17 % more than solid copper of its nominal section', () => {
    const { resistivity } = conductorMaterials.copper
    for (const { area, maximumResistance } of metricSections) {
      const excess = maximumResistance.ratioTo(resistancePerLength({ resistivity, area }))
      expect(excess).toBeGreaterThan(1.1)
      expect(excess).toBeLessThan(1.17)
    }
  })

  it('gives aluminium 61 % of the conductivity of copper', () => {
    const { copper, aluminium } = conductorMaterials
    near(aluminium.resistivity.ratioTo(copper.resistivity), 1.6394, 1e-4)
  })

  // NEC chapter 9, Table 8: uncoated stranded copper at 75 °C, with the 2 % that laying the strands adds.
  it.each([
    ['4/0', 0.0608],
    ['1/0', 0.122],
    ['4', 0.308],
    ['8', 0.778],
  ])('comes to the NEC resistance of stranded %s', (name, table) => {
    const resistivity = resistivityAt({ ...warm(conductorMaterials.copper), temperature: '75 °C' })
    const solid = resistancePerLength({ resistivity, area: awg(name).area })
    near(solid.in('Ω/kft') * 1.02, table, 0.005)
  })
})

function warm({ resistivity, coefficient }: (typeof conductorMaterials)['copper']) {
  return { resistivity, coefficient }
}

describe('cable', () => {
  const run = fc.record({ current: between(0, 1000), resistancePerLength: between(1e-5, 1), length: between(0, 100) })

  it('drops as much over two halves as over the whole', () => {
    fc.assert(
      fc.property(run, (si) => {
        const half = cableVoltageDrop.compute({ ...si, length: si.length / 2 })
        near(half + half, cableVoltageDrop.compute(si))
      }),
    )
  })

  it('loses current times drop', () => {
    fc.assert(fc.property(run, (si) => near(cableLoss.compute(si), si.current * cableVoltageDrop.compute(si))))
  })

  it('withstands I²t of k²S² at every current', () => {
    fc.assert(
      fc.property(between(5e7, 2e8), between(1e-6, 2e-4), between(1, 1e5), (constant, area, current) => {
        const withstand = adiabaticWithstand.compute({ constant, area })
        near(adiabaticTime.compute({ constant, area, current }) * current ** 2, withstand)
      }),
    )
  })

  it('withstands together, in two steps of temperature, what it withstands in one', () => {
    const { resistivity, beta, volumetricHeat } = conductorMaterials.copper
    const squared = (initial: `${number} °C`, final: `${number} °C`) =>
      adiabaticConstant({ resistivity, beta, volumetricHeat, initial, final }).si ** 2
    near(squared('40 °C', '90 °C') + squared('90 °C', '250 °C'), squared('40 °C', '250 °C'))
  })

  it('melts copper at the current of Onderdonk, to 1 %', () => {
    // 4/0 in a second from 25 °C to the melting point of 1083 °C: 30.96 kA by Onderdonk's formula.
    const { resistivity, beta, volumetricHeat } = conductorMaterials.copper
    const constant = adiabaticConstant({ resistivity, beta, volumetricHeat, initial: '25 °C', final: '1083 °C' })
    const withstand = adiabaticWithstand({ constant, area: awg('4/0').area })
    near(Math.sqrt(withstand.si / 1), 30960, 0.01)
  })

  it('agrees with the heat balance of a thousand small steps', () => {
    // 50 mm² of copper, 5 kA for 0.5 s from 90 °C ends at 123.5 °C.
    const { resistivity, beta, volumetricHeat } = conductorMaterials.copper
    const constant = adiabaticConstant({ resistivity, beta, volumetricHeat, initial: '90 °C', final: '123.5 °C' })
    const time = adiabaticTime({ constant, area: '50 mm²', current: '5 kA' })
    near(time.si, 0.5, 0.3 / 33.5)
  })

  it('keeps its table ampacity at the ambient temperature of the table, and none at its rating', () => {
    const given = { ampacity: '260 A', rated: '90 °C', ratedAmbient: '30 °C' } as const
    expect(ampacityAtAmbient({ ...given, ambient: '30 °C' }).in('A')).toBe(260)
    expect(ampacityAtAmbient({ ...given, ambient: '90 °C' }).in('A')).toBe(0)
  })

  it('comes back to the table ampacity by way of another ambient temperature', () => {
    fc.assert(
      fc.property(between(250, 350), between(250, 350), (ratedAmbient, ambient) => {
        const rated = 363
        const there = ampacityAtAmbient.compute({ ampacity: 100, rated, ratedAmbient, ambient })
        near(ampacityAtAmbient.compute({ ampacity: there, rated, ratedAmbient: ambient, ambient: ratedAmbient }), 100)
      }),
    )
  })

  it('refuses what it cannot answer', () => {
    const k = '143 A·√s/mm²'
    expect(() => adiabaticTime({ constant: k, area: '35 mm²', current: '1 kA' })).toThrow(
      '(constant * area / current)^2: expected at most 5 s, the range of this formula (IEC 60364-5-54, 543.1.2), got 25.05 s',
    )
    const hot = { ampacity: '260 A', rated: '90 °C', ratedAmbient: '30 °C', ambient: '95 °C' } as const
    expect(() => ampacityAtAmbient(hot)).toThrow('rated - ambient: expected at least 0')
    const { resistivity, beta, volumetricHeat } = conductorMaterials.copper
    expect(() => adiabaticConstant({ resistivity, beta, volumetricHeat, initial: '160 °C', final: '70 °C' })).toThrow(
      'final - initial: expected above 0',
    )
    expect(() =>
      // @ts-expect-error a voltage is not a current
      cableVoltageDrop({ current: '300 V', resistancePerLength: '0.386 mΩ/m', length: '3 m' }),
    ).toThrow("current: expected a current such as '300 A', got '300 V' (V measures a voltage)")
  })
})

describe('pack', () => {
  const source = fc.record({ openCircuit: between(1, 1000), resistance: between(1e-4, 10) })

  it('delivers at the terminals the power that it was asked for, and takes in what it is given', () => {
    fc.assert(
      fc.property(source, between(-2, 1), (si, share) => {
        const power = share * maximumPower.compute(si)
        const current = currentForPower.compute({ ...si, power })
        near(current * terminalVoltage.compute({ ...si, current }), power)
      }),
    )
  })

  it('takes of two currents the lesser', () => {
    fc.assert(
      fc.property(source, between(0, 1), ({ openCircuit, resistance }, share) => {
        const power = share * maximumPower.compute({ openCircuit, resistance })
        const most = openCircuit / (2 * resistance)
        // Equal at the most power, where the last bit may be rounded up.
        expect(currentForPower.compute({ openCircuit, resistance, power })).toBeLessThanOrEqual(most * (1 + 1e-12))
      }),
    )
  })

  it('needs power over voltage where there is no resistance', () => {
    expect(currentForPower({ openCircuit: '400 V', resistance: '0 Ω', power: '20 kW' }).in('A')).toBe(50)
  })

  it('delivers the most power, and not a bit more', () => {
    const given = { openCircuit: '100 V', resistance: '100 mΩ' } as const
    const most = maximumPower(given)
    expect(currentForPower({ ...given, power: most }).in('A')).toBe(500)
    expect(() => currentForPower({ ...given, power: '30 kW' })).toThrow(
      'currentForPower: the pack cannot deliver 30 kW: at most 25 kW',
    )
  })

  it('has its most power at a floor of half the open-circuit voltage', () => {
    fc.assert(
      fc.property(source, between(0, 1), (si, share) => {
        const { openCircuit } = si
        near(powerAtFloor.compute({ ...si, floor: openCircuit / 2 }), maximumPower.compute(si))
        const power = powerAtFloor.compute({ ...si, floor: share * openCircuit })
        expect(power).toBeLessThanOrEqual(maximumPower.compute(si) * (1 + 1e-12))
      }),
    )
  })

  it('shares the power of its source between the terminals and its own heat', () => {
    fc.assert(
      fc.property(source, between(0, 1), (si, share) => {
        const current = (share * si.openCircuit) / si.resistance
        const outside = current * terminalVoltage.compute({ ...si, current })
        const inside = jouleHeat.compute({ current, resistance: si.resistance })
        near(outside + inside, si.openCircuit * current)
      }),
    )
  })

  it('holds as much energy, and wastes as much of it at one power, however its modules are arranged', () => {
    const arranged = (series: number, parallel: number) => {
      const voltage = seriesVoltage({ count: series, voltage: '3.6 V' })
      const energy = packEnergy({ voltage, capacity: parallelCharge({ count: parallel, capacity: '5 Ah' }) })
      const resistance = packResistance({ series, parallel, resistance: '20 mΩ' })
      const current = currentForPower({ openCircuit: voltage, resistance, power: '5 kW' })
      return [energy.si, jouleHeat({ current, resistance }).si] as const
    }
    const [energy, heat] = arranged(96, 3)
    for (const [series, parallel] of [
      [288, 1],
      [72, 4],
      [16, 18],
    ] as const) {
      const [sameEnergy, sameHeat] = arranged(series, parallel)
      near(sameEnergy, energy)
      near(sameHeat, heat)
    }
  })

  it('refuses what a person would mistype', () => {
    expect(() => usableEnergy({ energy: '24 kWh', upper: 0.2, lower: 0.9 })).toThrow(
      'upper - lower: expected at least 0',
    )
    expect(() => usableEnergy({ energy: '24 kWh', upper: 90, lower: 20 })).toThrow(
      'upper: expected a ratio at least 0 and at most 1, got 90',
    )
    expect(() => terminalVoltage({ openCircuit: '12 V', current: '200 A', resistance: '100 mΩ' })).toThrow(
      'terminalVoltage: the pack cannot deliver 200 A: shorted, it gives 120 A',
    )
    // @ts-expect-error an energy is not a charge
    expect(() => packEnergy({ voltage: '345 V', capacity: '5 kWh' })).toThrow('kWh measures an energy')
  })
})

describe('fuse', () => {
  const ratings = preferredRatings.map((rating) => rating.in('A'))

  it('rates fuses along the R10 series, as ISO 3 rounds the tenth roots of ten', () => {
    for (const rating of ratings.filter((each) => each !== 6 && each !== 12 && each !== 32)) {
      const step = Math.round(10 * Math.log10(rating))
      // ISO 3 rounds by 1.4 % at most.
      near(rating, 10 ** (step / 10), 0.014)
    }
  })

  it('has each rating once, in rising order', () => {
    expect(ratings).toEqual([...new Set(ratings)].sort((a, b) => a - b))
  })

  // Common practice: the next rating up.
  it.each([
    [162.5, 200],
    [182, 200],
    [401, 500],
  ])('has above %d A the rating of %d A', (current, rating) => {
    expect(ratings.find((each) => each >= current)).toBe(rating)
  })

  it('refuses a melting time beyond the adiabatic region', () => {
    expect(() => meltingTime({ meltingIntegral: '25000 A²·s', current: '300 A' })).toThrow(
      'meltingIntegral / current^2: expected at most 0.01',
    )
  })

  it('lets a short circuit draw twice the current that gives the most power', () => {
    const given = { openCircuit: '400 V', resistance: '500 mΩ' } as const
    const power = maximumPower(given)
    const current = prospectiveCurrent({ voltage: '400 V', sourceResistance: '500 mΩ', loopResistance: '0 Ω' })
    near(current.in('A'), 2 * currentForPower({ ...given, power }).in('A'))
  })
})

describe('precharge', () => {
  const circuit = fc.record({ resistance: between(1, 1e4), capacitance: between(1e-6, 1e-1) })

  it('is at the share of the voltage after the time for it', () => {
    fc.assert(
      fc.property(circuit, between(1e-6, 0.999), (si, fraction) => {
        const time = prechargeTime.compute({ ...si, fraction })
        near(prechargeVoltage.compute({ ...si, time, voltage: 1 }), fraction)
        near(prechargeResistance.compute({ time, capacitance: si.capacitance, fraction }), si.resistance)
      }),
    )
  })

  it('spends in the resistor what it stores in the capacitor', () => {
    const [voltage, resistance, capacitance] = [320, 100, 680e-6]
    const stored = capacitorEnergy.compute({ voltage, capacitance })
    // Simpson's rule over 30 time constants.
    const n = 3000
    const step = (30 * resistance * capacitance) / n
    let spent = 0
    for (let i = 0; i <= n; i++) {
      const gap = voltage - prechargeVoltage.compute({ voltage, resistance, capacitance, time: i * step })
      spent += (((i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * gap ** 2) / resistance) * (step / 3)
    }
    near(spent, stored, 1e-8)
  })

  it('discharges in two stages as in one, and mirrors the charge', () => {
    fc.assert(
      fc.property(circuit, between(60, 1000), between(0, 1), (si, from, share) => {
        const middle = 60 + share * (from - 60)
        const whole = dischargeTime.compute({ ...si, from, to: 60 })
        const staged =
          dischargeTime.compute({ ...si, from, to: middle }) + dischargeTime.compute({ ...si, from: middle, to: 60 })
        expect(Math.abs(staged - whole)).toBeLessThanOrEqual(1e-12 * si.resistance * si.capacitance)
        const mirrored = prechargeTime.compute({ ...si, fraction: 1 - 60 / from })
        expect(Math.abs(mirrored - whole)).toBeLessThanOrEqual(1e-12 * si.resistance * si.capacitance)
      }),
    )
  })

  it('refuses a full charge, and a discharge upwards', () => {
    expect(() => prechargeTime({ resistance: '100 Ω', capacitance: '680 µF', fraction: 1 })).toThrow(
      'fraction: expected a ratio at least 0 and below 1, got 1',
    )
    expect(() => dischargeTime({ resistance: '1 kΩ', capacitance: '1 mF', from: '60 V', to: '400 V' })).toThrow(
      'from / to: expected at least 1',
    )
  })
})

describe('charging', () => {
  it('has in three phases √3 times the voltage between lines times the current', () => {
    const power = acPower({ voltage: '230 V', current: '16 A', phases: 3, powerFactor: 1 })
    near(power.in('W'), Math.sqrt(3) * (Math.sqrt(3) * 230) * 16)
  })

  it('refuses an efficiency in per cent without its sign, and takes one with it', () => {
    expect(() => chargeTime({ energy: '24 kWh', power: '6 kW', efficiency: 92 })).toThrow(
      'efficiency: expected a ratio above 0 and at most 1, got 92',
    )
    near(chargeTime({ energy: '24 kWh', power: '6 kW', efficiency: '80%' }).in('h'), 5)
  })
})

describe('safety', () => {
  it('finds the smaller of two leaks from the readings that they would cause', () => {
    const leak = between(1e3, 1e7)
    fc.assert(
      fc.property(leak, leak, between(100, 1000), between(1e4, 1e6), (one, other, packVoltage, inserted) => {
        const [larger, smaller] = [Math.max(one, other), Math.min(one, other)]
        const divided = (measured: number) => (packVoltage * measured) / (measured + smaller)
        const reading = divided(larger)
        const loadedReading = divided((larger * inserted) / (larger + inserted))
        const found = isolationFromVoltmeter.compute({
          packVoltage,
          reading,
          loadedReading,
          insertedResistance: inserted,
        })
        near(found, smaller, 1e-6)
      }),
    )
  })

  it('lets a least isolation pass the same current at any voltage', () => {
    fc.assert(
      fc.property(between(1, 1500), between(1, 1000), (voltage, perVolt) => {
        const isolation = minimumIsolation.compute({ voltage, perVolt })
        near(leakageCurrent.compute({ voltage, isolation }), 1 / perVolt)
      }),
    )
  })

  it('refuses readings that were exchanged', () => {
    const given = { packVoltage: '400 V', insertedResistance: '40 kΩ' } as const
    expect(() => isolationFromVoltmeter({ ...given, reading: '28.6 V', loadedReading: '266.7 V' })).toThrow(
      'reading - loadedReading: expected at least 0',
    )
    expect(() => isolationFromVoltmeter({ ...given, reading: '420 V', loadedReading: '266.7 V' })).toThrow(
      'reading / packVoltage: expected at most 1',
    )
  })

  // ISO 6469-3; the AC limits from memory.
  it.each([
    ['60 V', 'DC', 'A'],
    ['60.001 V', 'DC', 'B'],
    ['1500 V', 'DC', 'B'],
    ['0 V', 'DC', 'A'],
    ['30 V', 'AC', 'A'],
    ['31 V', 'AC', 'B'],
    ['1 kV', 'AC', 'B'],
  ] as const)('puts %s %s in class %s', (voltage, current, expected) => {
    expect(voltageClass(voltage, current)).toBe(expected)
  })

  it('takes DC unless told, so that 16 iron-phosphate cells in series are class A and 17 are not', () => {
    expect(voltageClass(seriesVoltage({ count: 16, voltage: '3.65 V' }))).toBe('A')
    expect(voltageClass(seriesVoltage({ count: 17, voltage: '3.65 V' }))).toBe('B')
  })

  it('refuses what has no class', () => {
    expect(() => voltageClass('1600 V')).toThrow(
      'voltage: expected a voltage of at least 0 V and at most 1500 V DC, where ISO 6469-3 ends, got 1600 V',
    )
    expect(() => voltageClass('-12 V')).toThrow('got -12 V')
    expect(() => voltageClass('400 A' as never)).toThrow('A measures a current')
    expect(() => voltageClass('400 V', 'dc' as never)).toThrow("current: expected 'DC' or 'AC', got 'dc'")
  })
})
