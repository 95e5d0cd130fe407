/** What a pack gives a drive, against the procedure that tells it for a pack alone. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  greatestCharge,
  greatestDischarge,
  loadedVoltage,
  powerRefused,
  supplyOf,
} from '../../src/drivetrain/motor/supply.js'
import { type Controller, controllerField, packField, type Vehicle } from '../../src/drivetrain/vehicle.js'
import { packAt } from '../../src/electrical/index.js'
import type { Pack } from '../../src/electrical/pack/module.js'
import { readField } from '../../src/procedure/reading.js'
import { quantity } from '../../src/quantity/index.js'
import { said } from '../said.js'
import { module, pack } from './sheet.js'

const read = (given: NonNullable<Vehicle['pack']>) => readField('test', packField, given) as Pack
const supply = (given: Vehicle['pack'] = pack, controller: Vehicle['controller'] = {}) =>
  supplyOf('test', read(given), readField('test', controllerField, controller) as Controller)

describe('the supply of a drive', () => {
  it('gives and takes at most what packAt tells', () => {
    const each = supply()
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (stateOfCharge) => {
        const openCircuit = each.openCircuitAt(stateOfCharge)
        const { most } = packAt({ pack, stateOfCharge, current: '0 A' })
        for (const [limit, told] of [
          [greatestDischarge(each, openCircuit, 'peak'), most.peak],
          [greatestDischarge(each, openCircuit, 'continuous'), most.continuous],
          [greatestCharge(each, openCircuit), most.charge],
        ] as const) {
          expect(limit.power).toBeCloseTo(told?.power.si as number, 6)
          expect(limit.current).toBeCloseTo(told?.current.si as number, 9)
          expect(limit.limitedBy).toBe(told?.limitedBy)
        }
      }),
    )
  })
  it('sags as packAt does, and rises on charge', () => {
    for (const power of [30_000, -5000]) {
      const state = packAt({ pack, stateOfCharge: 0.5, power: quantity('power', power, 'W') })
      expect(loadedVoltage(supply(), state.openCircuit.si, power)).toBeCloseTo(state.terminal.si, 9)
    }
  })
  it('keeps to the limits of the controller', () => {
    const limited = supply(pack, { batteryCurrent: '250 A', chargeCurrent: '60 A', minimumVoltage: '172 V' })
    expect(greatestDischarge(limited, 190, 'peak').limitedBy).toBe('battery current of the controller')
    // (175 − 172) / 28 mΩ.
    expect(greatestDischarge(limited, 175, 'peak')).toMatchObject({ limitedBy: 'lowest voltage of the controller' })
    expect(greatestDischarge(limited, 175, 'peak').current).toBeCloseTo(3 / 0.028, 9)
    expect(greatestDischarge(limited, 170, 'peak').power).toBe(0)
    expect(greatestCharge(limited, 190)).toMatchObject({ current: 60, limitedBy: 'charge current of the controller' })
    expect(greatestCharge(supply(pack, { maximumVoltage: '180 V' }), 190).power).toBe(0)
  })
  it('of a weak pack is held by its resistance before its voltage', () => {
    const weak = supply({ module: { ...module, resistance: '500 mΩ', minimumVoltage: '10 V' }, series: 4, parallel: 2 })
    expect(greatestDischarge(weak, 176, 'peak')).toMatchObject({ limitedBy: 'resistance of the pack' })
    expect(greatestDischarge(weak, 176, 'peak').power).toBeCloseTo(176 ** 2 / 4, 6)
  })
  it('takes nothing into cells that are too cold for a charge', () => {
    const temperatures = {
      charge: { minimum: '0 °C', maximum: '45 °C' },
      discharge: { minimum: '-20 °C', maximum: '60 °C' },
    } as const
    const guarded = read({ ...pack, module: { ...module, temperatures } })
    const at = (celsius: '-5 °C' | '20 °C' | '65 °C') => supplyOf('test', guarded, {}, quantity('temperature', celsius))
    expect(greatestCharge(at('-5 °C'), 176)).toMatchObject({
      power: 0,
      limitedBy: 'temperature of the cells, too cold for charge',
    })
    expect(greatestDischarge(at('-5 °C'), 176, 'peak').power).toBeGreaterThan(0)
    expect(greatestDischarge(at('65 °C'), 176, 'peak').limitedBy).toBe(
      'temperature of the cells, too warm for discharge',
    )
    expect(greatestCharge(at('20 °C'), 176).power).toBeGreaterThan(0)
  })
  it('takes by temperature what packAt tells, and at most the best of the table where there is no temperature', () => {
    const chargeCurrents = [
      ['0 °C', '8 A'],
      ['20 °C', '40 A'],
    ] as const
    const { chargeCurrent: _, ...plain } = module
    const given = { ...pack, module: { ...plain, chargeCurrents } } as const
    const at = (celsius?: number) =>
      supplyOf('test', read(given), {}, celsius === undefined ? undefined : quantity('temperature', celsius, '°C'))
    // Two modules side by side; a quarter of the way from 8 A to 40 A.
    expect(greatestCharge(at(5), 170)).toMatchObject({ limitedBy: 'charge current of the modules at 5 °C' })
    expect(greatestCharge(at(5), 170).current).toBeCloseTo(2 * 16, 9)
    const told = packAt({ pack: given, stateOfCharge: 0.5, temperature: '5 °C', current: '0 A' }).most.charge
    expect(told?.current.in('A')).toBeCloseTo(2 * 16, 9)
    expect(told?.limitedBy).toBe('charge current of the modules at 5 °C')
    expect(at(5).recovered).toBeUndefined()
    expect([at(-1), at(21)].map((each) => greatestCharge(each, 170).current)).toEqual([0, 0])
    expect(greatestCharge(at(), 170).current).toBeCloseTo(2 * 40, 9)
    expect(at().recovered?.text).toBe(
      'whether the cells take what braking recovers depends on their temperature: give cellTemperature',
    )
    expect(at().assumptions.map(said)).toContain(
      'The pack is charged with up to 80 A, what it takes at the best temperature of pack.module.chargeCurrents: cellTemperature is not given.',
    )
  })
  it('says what was not given', () => {
    const { peakCurrent: _, chargeCurrent: __, ...plain } = module
    expect(
      supply({ ...pack, module: plain })
        .assumptions.slice(-2)
        .map(said),
    ).toEqual([
      'The modules give their continuous current also for a short time: no peakCurrent is given.',
      'No charge current of the modules is given: on charge only their voltage is a limit.',
    ])
  })
  it('refuses a power by saying how much there is', () => {
    const limit = greatestDischarge(supply(), 162.4, 'peak')
    const refusal = powerRefused('test', quantity('power', '90 kW'), limit, quantity('ratio', 0.1))
    expect(refusal.message).toBe(
      'test: the pack cannot give 90 kW: at most 54.84 kW at 10 % state of charge, held by the peak current of the modules',
    )
  })
})
