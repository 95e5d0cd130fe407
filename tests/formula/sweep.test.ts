/** Sweeps: rows over ranges, and what is refused. */
import { describe, expect, it } from 'vitest'
import { cableVoltageDrop } from '../../src/electrical/index.js'
import { sweep } from '../../src/formula/index.js'
import { InputError } from '../../src/quantity/index.js'

const fixed = { resistancePerLength: '0.386 mΩ/m', length: '3 m' } as const

describe('a sweep', () => {
  it('goes through a range with both ends, in even steps', () => {
    const rows = sweep(cableVoltageDrop, { current: { from: '50 A', to: '400 A', steps: 8 } }, fixed)
    expect(rows.map((row) => String(row.current))).toEqual([
      '50 A',
      '100 A',
      '150 A',
      '200 A',
      '250 A',
      '300 A',
      '350 A',
      '400 A',
    ])
    expect(rows.map((row) => row.result.si)).toEqual(
      rows.map((row) => cableVoltageDrop({ ...fixed, current: row.current }).si),
    )
  })
  it('goes through a list, in the units of the list', () => {
    const rows = sweep(
      cableVoltageDrop,
      { length: ['1 m', '200 cm'] },
      { current: '100 A', resistancePerLength: '1 mΩ/m' },
    )
    expect(rows.map((row) => `${row.length}: ${row.result.in('mV')} mV`)).toEqual(['1 m: 200 mV', '200 cm: 400 mV'])
  })
  it('goes through the later range for each value of the earlier', () => {
    const rows = sweep(
      cableVoltageDrop,
      { length: ['1 m', '2 m'], current: ['10 A', '20 A'] },
      { resistancePerLength: '1 mΩ/m' },
    )
    expect(rows.map((row) => `${row.length} ${row.current}`)).toEqual(['1 m 10 A', '1 m 20 A', '2 m 10 A', '2 m 20 A'])
  })
  it('takes any function of quantities', () => {
    const rows = sweep((given) => cableVoltageDrop({ ...fixed, current: given.load }), { load: ['10 A', '20 A'] })
    expect(rows.map((row) => row.result.in('mV'))).toEqual([23.16, 46.32])
  })
  it('reaches as far as numbers do', () => {
    const rows = sweep(
      cableVoltageDrop,
      { length: { from: '0 m', to: '1e308 m', steps: 3 } },
      { current: '1 A', resistancePerLength: '1e-9 Ω/m' },
    )
    expect(rows.map((row) => row.length.si)).toEqual([0, 5e307, 1e308])
  })
  it('keeps the exact ends', () => {
    const rows = sweep(
      cableVoltageDrop,
      { length: { from: '0.1 m', to: '0.7 m', steps: 7 } },
      {
        resistancePerLength: '0.386 mΩ/m',
        current: '1 A',
      },
    )
    expect([rows[0]?.length.in('m'), rows[6]?.length.in('m')]).toEqual([0.1, 0.7])
  })
  it.each([
    ['one step', { current: { from: '1 A', to: '2 A', steps: 1 } }, /current\.steps: expected how many values/],
    ['half a step', { current: { from: '1 A', to: '2 A', steps: 2.5 } }, /current\.steps/],
    ['an end of another kind', { current: { from: '1 A', to: '2 V', steps: 2 } }, /current\.to: expected a current/],
    ['a value of another kind', { current: ['1 A', '2 V'] }, /current\[1\]: expected a current/],
    ['no range', { current: undefined }, /current: expected a list, or \{ from: '50 A'/],
    [
      'an input both varied and fixed',
      { length: ['1 m'] },
      /length: expected an input that is varied or fixed, not both/,
    ],
    [
      'a range with another field',
      { current: { from: '1 A', to: '2 A', steps: 2, step: 3 } },
      /current\.step: expected no such field/,
    ],
    ['more steps than can be held', { current: { from: '1 A', to: '2 A', steps: 5e9 } }, /current\.steps/],
    ['two faults at once', { current: { from: '1 V', to: '2 W', steps: 2 } }, /2 inputs cannot be used/],
    ['no ranges at all', null, /varied: expected an object/],
    ['a value out of bounds', { current: ['-1 A'] }, /at least 0 A/],
  ])('refuses %s', (_, varied, message) => {
    expect(() => sweep(cableVoltageDrop, varied as never, fixed as never)).toThrow(message)
    expect(() => sweep(cableVoltageDrop, varied as never, fixed as never)).toThrow(InputError)
  })
})
