/** Checks: verdict and margin; cautions: each complete. */
import { describe, expect, it } from 'vitest'
import { cautions, check } from '../src/findings/index.js'
import { InputError, quantity } from '../src/quantity/index.js'

const volts = (text: `${number} V`) => quantity('voltage', text)

describe('a check', () => {
  it.each([
    ['50 V', 'at most', '100 V', 'pass', 0.5],
    ['95 V', 'at most', '100 V', 'pass', 0.05],
    ['96 V', 'at most', '100 V', 'near', 0.04],
    ['100 V', 'at most', '100 V', 'near', 0],
    ['110 V', 'at most', '100 V', 'fail', -0.1],
    ['110 V', 'at least', '100 V', 'pass', 0.1],
    ['104 V', 'at least', '100 V', 'near', 0.04],
    ['90 V', 'at least', '100 V', 'fail', -0.1],
    ['5 V', 'at least', '0 V', 'pass', 1],
    ['-5 V', 'at least', '0 V', 'fail', -1],
    ['0 V', 'at most', '0 V', 'near', 0],
    ['100.0000000000001 V', 'at most', '100 V', 'near', 0],
    ['100.0001 V', 'at most', '100 V', 'fail', -1e-6],
    ['-90 V', 'at most', '-100 V', 'fail', -0.1],
  ] as const)('%s %s %s: %s, margin %d', (actual, sense, limit, verdict, margin) => {
    const result = check('Voltage', volts(actual), sense, volts(limit), 'good practice')
    expect(result.verdict).toBe(verdict)
    expect(result.margin).toBeCloseTo(margin, 12)
    expect(result).toMatchObject({ name: 'Voltage', sense, basis: 'good practice' })
  })
  it('counts temperatures from 0 °C', () => {
    const celsius = (text: `${number} °C`) => quantity('temperature', text)
    expect(check('Cable', celsius('84 °C'), 'at most', celsius('105 °C'), 'IEC 60364-5-52').margin).toBeCloseTo(0.2, 12)
    expect(check('Cable', celsius('118 °C'), 'at most', celsius('105 °C'), 'IEC 60364-5-52').verdict).toBe('fail')
  })
  it('knows only its two senses', () => {
    expect(() => check('Odd', volts('5 V'), 'at mots' as never, volts('6 V'), 'none')).toThrow(
      /sense: expected 'at most' or 'at least'/,
    )
  })
  it('compares like with like', () => {
    expect(() => check('Odd', volts('5 V') as never, 'at most', quantity('current', '5 A') as never, 'none')).toThrow(
      InputError,
    )
  })
})

describe('every caution', () => {
  it.each(Object.entries(cautions))('%s names a hazard and what to do', (_, { hazard, text }) => {
    expect(hazard).toMatch(/^\p{Ll}/u)
    expect(text.split('. ').length).toBeGreaterThan(1)
    expect(text).toMatch(/\.$/)
  })
})
