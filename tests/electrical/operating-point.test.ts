/** The open-circuit curves against published points, and a pack at work: energy, limits, and what it refuses. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PackState, packAt } from '../../src/electrical/index.js'
import { cellModels, modelBetween, voltageOfModel } from '../../src/electrical/pack/open-circuit.js'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { said } from '../said.js'
import { module } from './sheet.js'

const { chemistry: _, ...bare } = module
const pack = { module, series: 4, parallel: 2 }
const verdicts = ({ checks }: PackState) => Object.fromEntries(checks.map(({ name, verdict }) => [name, verdict]))

describe('the models of cells', () => {
  // Chen and others, Journal of the Electrochemical Society 167 (2020) 080534: worked out from its fits and electrodes.
  it.each([
    [0.1, 3.296],
    [0.5, 3.751],
    [0.9, 4.097],
  ])('NMC rests at %d state of charge at %d V', (state, volts) => {
    expect(Math.abs(voltageOfModel(cellModels.NMC, state) - volts)).toBeLessThan(0.002)
  })

  // Sunil and others, IEEE TIM 2025: pseudo open-circuit voltage of another 21700 cell at C/32, between its points.
  it.each([
    [0.5, 3.743],
    [0.9, 4.085],
  ])('NMC lies within 30 mV of a measured cell at %d state of charge', (state, volts) => {
    expect(Math.abs(voltageOfModel(cellModels.NMC, state) - volts)).toBeLessThan(0.03)
  })

  it('NMC rests as its paper has it where it starts', () => {
    // x = 29866 / 33133 and y = 17038 / 63104 give 4.1809 V.
    const { negative, positive } = cellModels.NMC
    const state = (29866 / 33133 - negative.empty) / (negative.full - negative.empty)
    expect(Math.abs(positive.empty + state * (positive.full - positive.empty) - 17038 / 63104)).toBeLessThan(1e-5)
    expect(Math.abs(voltageOfModel(cellModels.NMC, state) - 4.1809)).toBeLessThan(1e-4)
  })

  it('LFP keeps 1.1 times the capacity and 95 % of the lithium that are said of it', () => {
    const { negative, positive } = cellModels.LFP
    for (const end of ['empty', 'full'] as const) expect(1.1 * negative[end] + positive[end]).toBeCloseTo(0.95, 6)
  })

  // Common practice, no source: 3.2 V to 3.3 V over the flat part.
  it('LFP is flat: less than 0.1 V from 30 % to 95 %, near the usual 3.2 V to 3.3 V', () => {
    const at = (state: number) => voltageOfModel(cellModels.LFP, state)
    expect(at(0.95) - at(0.3)).toBeLessThan(0.1)
    expect(at(0.5)).toBeGreaterThan(3.2)
    expect(at(0.5)).toBeLessThan(3.35)
  })

  it.each(['NMC', 'LFP'] as const)('%s rises from end to end of its range, also of a part of it', (chemistry) => {
    const whole = cellModels[chemistry]
    const part = modelBetween(whole, 3, 3.4)
    for (const model of [whole, part]) {
      expect(voltageOfModel(model, 0)).toBeCloseTo(model.range.empty, 4)
      expect(voltageOfModel(model, 1)).toBeCloseTo(model.range.full, 4)
      for (let i = 0; i < 1000; i++) {
        expect(voltageOfModel(model, (i + 1) / 1000)).toBeGreaterThan(voltageOfModel(model, i / 1000))
      }
    }
  })
})

describe('packAt', () => {
  it('sags as a pack of 96 cells in series and 3 in parallel does', () => {
    // 20 mΩ a cell: 640 mΩ in all, 64 V at 100 A. 345.6 V nominal, 403.2 V full.
    const cell = {
      name: 'cell',
      cellsInSeries: 1,
      nominalVoltage: '3.6 V',
      minimumVoltage: '2.5 V',
      maximumVoltage: '4.2 V',
      openCircuit: [
        [0, '3 V'],
        [1, '4.2 V'],
      ],
      capacity: '5 Ah',
      resistance: '20 mΩ',
      mass: '70 g',
      continuousCurrent: '10 A',
    } as const
    const { openCircuit, terminal, resistance, heat } = packAt({
      pack: { module: cell, series: 96, parallel: 3 },
      stateOfCharge: 0.5,
      current: '100 A',
    })
    expect(openCircuit.in('V')).toBeCloseTo(345.6, 9)
    expect(resistance.in('Ω')).toBeCloseTo(0.64, 12)
    expect(terminal.in('V')).toBeCloseTo(281.6, 9)
    expect(heat.in('kW')).toBeCloseTo(6.4, 9)
  })

  it('gives what its documentation shows', () => {
    const { terminal, current, most } = packAt({ pack, stateOfCharge: 0.1, power: '15 kW' })
    expect(String(terminal)).toBe('160.2 V')
    expect(String(current)).toBe('93.63 A')
    expect(String(most.continuous.power)).toBe('25.34 kW')
    expect(most.continuous.limitedBy).toBe('continuous current of the modules')
  })

  it('shares the power of its source between terminals and heat, in both directions', () => {
    const state = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(state, fc.double({ min: -100, max: 100, noNaN: true }), (stateOfCharge, kilowatts) => {
        const at = packAt({ pack, stateOfCharge, power: quantity('power', kilowatts, 'kW') })
        const source = at.openCircuit.si * at.current.si
        expect(Math.abs(at.power.si + at.heat.si - source)).toBeLessThanOrEqual(1e-9 * Math.abs(source) + 1e-9)
        expect(at.power.in('kW')).toBeCloseTo(kilowatts, 7)
        expect(at.efficiency.si).toBeGreaterThan(0)
        expect(at.efficiency.si).toBeLessThanOrEqual(1)
      }),
    )
  })

  it('never sags more with more modules in parallel', () => {
    const current = fc.double({ min: 0, max: 500, noNaN: true })
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 }), current, (parallel, amperes) => {
        const sagged = (count: number) =>
          packAt({ pack: { ...pack, parallel: count }, stateOfCharge: 0.5, current: quantity('current', amperes, 'A') })
        expect(sagged(parallel + 1).terminal.si).toBeGreaterThanOrEqual(sagged(parallel).terminal.si)
      }),
    )
  })

  it('gives its most within every limit, and nothing more', () => {
    for (const stateOfCharge of [0.01, 0.1, 0.5, 1]) {
      const { most } = packAt({ pack, stateOfCharge, current: '0 A' })
      const at = packAt({ pack, stateOfCharge, power: most.continuous.power.times(1 - 1e-9) })
      expect(Object.values(verdicts(at))).not.toContain('fail')
      expect(
        Object.values(verdicts(packAt({ pack, stateOfCharge, power: most.continuous.power.times(1.001) }))),
      ).toContain('fail')
    }
  })

  it('is held by the voltage when nearly empty and by the current when not', () => {
    const weak = { ...pack, module: { ...module, resistance: '60 mΩ' } } as const
    expect(packAt({ pack: weak, stateOfCharge: 0.02, power: '1 kW' }).most.continuous.limitedBy).toBe(
      'lowest voltage of the modules',
    )
    expect(packAt({ pack: weak, stateOfCharge: 0.9, power: '1 kW' }).most.continuous.limitedBy).toBe(
      'continuous current of the modules',
    )
  })

  it('is held by its resistance where voltage and current would allow more than half its open-circuit voltage', () => {
    const weak = { ...module, minimumVoltage: '5 V', resistance: '0.5 Ω' } as const
    const curve = [
      [0, '40 V'],
      [1, '50 V'],
    ] as const
    const { most } = packAt({
      pack: { module: { ...weak, chemistry: undefined, openCircuit: curve }, series: 1, parallel: 1 },
      stateOfCharge: 0,
      current: '0 A',
    } as never)
    expect(most.continuous.limitedBy).toBe('resistance of the pack')
    // 40 V squared over four times 0.5 Ω.
    expect(most.continuous.power.in('W')).toBeCloseTo(800, 9)
  })

  it('gives nothing below its lowest voltage', () => {
    const low = {
      ...bare,
      openCircuit: [
        [0, '30 V'],
        [1, '50.4 V'],
      ],
    } as const
    const { most } = packAt({ pack: { ...pack, module: low }, stateOfCharge: 0.1, current: '0 A' })
    expect(most.continuous.power.si).toBe(0)
  })

  it('holds a discharge to the limits of discharge, and a charge to those of charge', () => {
    expect(verdicts(packAt({ pack, stateOfCharge: 0.5, current: '200 A' }))).toEqual({
      'Voltage under load': 'pass',
      'Current all day': 'fail',
      'Current for a short time': 'pass',
    })
    expect(verdicts(packAt({ pack, stateOfCharge: 0.99, current: '-90 A' }))).toEqual({
      'Voltage on charge': 'fail',
      'Charge current': 'fail',
    })
  })

  it('resists more in the cold, and refuses to charge there', () => {
    const cold = {
      ...module,
      cold: { temperature: '-10 °C', resistance: '50 mΩ' },
      temperatures: {
        charge: { minimum: '0 °C', maximum: '45 °C' },
        discharge: { minimum: '-20 °C', maximum: '60 °C' },
      },
    } as const
    const at = packAt({ pack: { ...pack, module: cold }, stateOfCharge: 0.5, current: '-20 A', temperature: '-10 °C' })
    expect(at.resistance.in('mΩ')).toBeCloseTo(100, 9)
    expect(verdicts(at)['Cold cells on charge']).toBe('fail')
    const warm = packAt({ pack: { ...pack, module: cold }, stateOfCharge: 0.5, current: '20 A', temperature: '25 °C' })
    expect(warm.resistance.in('mΩ')).toBeCloseTo(28, 9)
    expect(verdicts(warm)['Cold cells on discharge']).toBe('pass')
  })

  it('names the model that it takes, and what it does not know', () => {
    const { assumptions } = packAt({ pack, stateOfCharge: 0.5, current: '10 A', temperature: '-10 °C' })
    expect(assumptions.map(said).join('\n')).toContain('NMC 811 against graphite with silicon (Chen and others')
    expect(assumptions.map(said).join('\n')).toContain('none is given for the cold, where it is several times as high')
    const iron = {
      ...module,
      chemistry: 'LFP',
      minimumVoltage: '30 V',
      nominalVoltage: '38.4 V',
      maximumVoltage: '43.8 V',
    } as const
    const rough = packAt({ pack: { ...pack, module: iron }, stateOfCharge: 0.5, current: '10 A' })
    expect(rough.assumptions.find(({ id }) => id === 'pack.openCircuit')?.text).toContain(
      '; how its electrodes share the lithium: common practice, no source), with 30 V',
    )
  })

  it('says what is unusual of the cells, of the mass and of the voltage, and nothing of what is usual', () => {
    const notes = (given: object, series = 4) =>
      packAt({
        pack: { module: { ...module, chemistry: undefined, openCircuit: points, ...given }, series, parallel: 2 },
        stateOfCharge: 0.5,
        current: '0 A',
      } as never).notes.map(({ path, text }) => `${path}: ${text}`)
    const points = [
      [0, '37 V'],
      [1, '50 V'],
    ]
    expect(notes({})).toEqual([])
    // 44.4 V and 50.4 V over 9 cells.
    expect(notes({ cellsInSeries: 9 })).toEqual([
      'pack.module.nominalVoltage: Nominal voltage of a cell: 4.933 V is unusual; light road cars and their parts have 2 V to 4.3 V (chemistry).',
      'pack.module.maximumVoltage: Voltage of a full cell: 5.6 V is unusual; light road cars and their parts have 2 V to 4.3 V (chemistry).',
    ])
    // 20 and 150 over 41 are 0.4878 and 3.659; 14 Ω over 12 cells are 1.167 Ω.
    expect(notes({ resistance: '14 Ω' })).toEqual([
      'pack.module.resistance: Resistance of a cell: 1.167 Ω is unusual; light road cars and their parts have 0.4878 mΩ to 3.659 mΩ (20 mΩ·Ah to 150 mΩ·Ah at 41 Ah, common practice). Did you mean 1.167 mΩ?',
    ])
    // 44.4 V of 41 Ah are 1.82 kWh.
    expect(notes({ mass: '5 kg' })).toEqual([
      'pack.module.mass: Energy of the module by its mass: 364.1 Wh/kg is unusual; light road cars and their parts have 80 Wh/kg to 180 Wh/kg (whole packs, common practice).',
    ])
    expect(notes({}, 12)).toEqual([
      'pack.series: Nominal voltage of the pack: 532.8 V is unusual; light road cars and their parts have 48 V to 400 V (common practice).',
    ])
    expect(notes({ capacity: '410 Ah', resistance: '1.4 mΩ', mass: '115 kg' })[0]).toContain(
      'pack.module.capacity: Capacity of the module: 410 Ah is unusual',
    )
  })

  it('shows its working', () => {
    const text = explain(() => packAt({ pack, stateOfCharge: 0.1, power: '15 kW' })).toText()
    expect(text).toContain('Open-circuit voltage of a module at 10 %, NMC 811 against graphite with silicon')
    expect(text).toContain('Vt = V − I · R = 163 V − 93.6 A · 28 mΩ = 160 V   [by definition]')
  })

  it('says how much the pack can give when it is asked for more', () => {
    expect(() => packAt({ pack, stateOfCharge: 0.2, power: '900 kW' })).toThrow(
      /^packAt: the pack cannot deliver 900 kW: at most 2\d\d(\.\d)? kW at 20 % state of charge, half of it lost again/,
    )
    expect(() => packAt({ pack, stateOfCharge: 0.2, current: '9 kA' })).toThrow(
      /the pack cannot deliver 9000 A: shorted, it gives \d+ A/,
    )
  })

  it('refuses a module whose figures contradict each other, all at once', () => {
    const wrong = {
      ...module,
      minimumVoltage: '46 V',
      maximumVoltage: '44 V',
      peakCurrent: '70 A',
      cold: { temperature: '-10 °C', resistance: '10 mΩ' },
      temperatures: { charge: { minimum: '45 °C', maximum: '5 °C' }, discharge: { minimum: '0 °C', maximum: '45 °C' } },
    } as const
    expect(() => packAt({ pack: { ...pack, module: wrong }, stateOfCharge: 0.5, current: '10 A' })).toThrow(
      [
        'packAt: 5 inputs cannot be used',
        '  pack.module.minimumVoltage: expected a voltage below the nominal one, 44.4 V, got 46 V',
        '  pack.module.maximumVoltage: expected a voltage above the nominal one, 44.4 V, got 44 V (the voltage of the full module, not its nominal one)',
        '  pack.module.peakCurrent: expected at least the continuous current, 80 A, got 70 A',
        '  pack.module.cold.resistance: expected at least the resistance of the warm module, 14 mΩ, got 10 mΩ (cold cells resist more)',
        '  pack.module.temperatures.charge.maximum: expected a temperature above the minimum, 45 °C, got 5 °C',
      ].join('\n'),
    )
  })

  it('refuses points out of order, and a state of charge outside them', () => {
    const curve = (openCircuit: unknown) => () =>
      packAt({ pack: { ...pack, module: { ...bare, openCircuit } as never }, stateOfCharge: 0.05, current: '0 A' })
    expect(
      curve([
        [0, '40 V'],
        [0.5, '39 V'],
        [0.5, '50 V'],
      ]),
    ).toThrow(
      /openCircuit\[1\]\[1\]: expected at least the voltage before it, 40 V, got 39 V[\s\S]*openCircuit\[2\]\[0\]: expected more than the state of charge before it, 0.5, got 0.5/,
    )
    expect(
      curve([
        [0.1, '40 V'],
        [0.9, '49 V'],
      ]),
    ).toThrow('the open-circuit curve of the module reaches from 10 % to 90 %, not to 5 %; nothing is extrapolated')
    expect(
      curve([
        [0, '36 V'],
        [1, '51 V'],
      ]),
    ).toThrow('openCircuit[1][1]: expected at most the voltage of the full module, 50.4 V, got 51 V')
    // The curve of one cell in place of that of a module of 12.
    expect(
      curve([
        [0, '3 V'],
        [1, '4.2 V'],
      ]),
    ).toThrow(
      'openCircuit: expected voltages of the whole module, that reach above its minimum, 36 V, got at most 4.2 V',
    )
    expect(curve(undefined)).toThrow("or a chemistry, 'NMC' or 'LFP', in their stead, got nothing")
  })

  it('refuses a chemistry that cannot have the voltages of the module', () => {
    const iron = { ...module, chemistry: 'LFP' } as const
    expect(() => packAt({ pack: { ...pack, module: iron }, stateOfCharge: 0.5, current: '0 A' })).toThrow(
      'pack.module.maximumVoltage: expected 2.5 V to 3.65 V for each of 12 cells, the range of the model of iron phosphate against graphite, got 50.4 V, 4.2 V a cell (give openCircuit for another cell)',
    )
  })

  it('refuses power and current together, and neither', () => {
    expect(() => packAt({ pack, stateOfCharge: 0.5, power: '1 kW', current: '5 A' })).toThrow(
      "power and current: expected one of them, such as power: '20 kW' or current: '120 A', got both",
    )
    expect(() => packAt({ pack, stateOfCharge: 0.5 })).toThrow('got neither')
  })
})
