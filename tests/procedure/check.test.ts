/** Checks, trials and what is made of them: verdict, sentence, heading, reasons, choice. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import * as cautions from '../../src/procedure/cautions.js'
import {
  allThatServe,
  type Caution,
  type Check,
  check,
  firstThatServes,
  type Judged,
  noneServes,
  rejectedAs,
  renamed,
  says,
  trial,
} from '../../src/procedure/index.js'
import { InputError, type Quantity, quantity } from '../../src/quantity/index.js'

const amps = (value: number) => quantity('current', value, 'A')
const carries = (most: Quantity<'current'>, load: Quantity<'current'>) =>
  trial('rope.load', 'Load', says`carries ${most}, at least the ${load} of the load`, 'as given', 'load')

describe('a trial', () => {
  it('prints the sentence that is the test, turned where it is missed', () => {
    expect(carries(amps(190), amps(150)).text).toBe('carries 190 A, at least the 150 A of the load')
    expect(carries(amps(114), amps(150)).text).toBe('carries 114 A, less than the 150 A of the load')
    const warm = (now: string) =>
      trial(
        'rope.heat',
        'Heat',
        says`${quantity('temperature', now as '1 °C')} in the sun, at most ${quantity('temperature', '105 °C')}`,
        'as given',
      )
    expect(warm('90 °C').text).toBe('90 °C in the sun, at most 105 °C')
    expect(warm('120 °C').text).toBe('120 °C in the sun, more than 105 °C')
  })

  it('has as many digits as it takes to tell the figure from its limit', () => {
    expect(carries(amps(149.98), amps(150)).text).toBe('carries 149.98 A, less than the 150 A of the load')
    expect(carries(amps(149.9999), amps(150)).text).toBe('carries 149.9999 A, less than the 150 A of the load')
    expect(carries(amps(150), amps(150)).text).toBe('carries 150 A, at least the 150 A of the load')
    const inOther = trial('rope.load', 'Load', says`${amps(0.15001).as('mA')}, at most ${amps(0.15)}`, 'as given')
    expect(inOther.text).toBe('150.01 mA, more than 0.15 A')
  })
  it('takes its verdict and its margin from figure, sense and limit', () => {
    const verdicts = [160, 157, 150, 149].map((most) => carries(amps(most), amps(150)))
    expect(verdicts.map(({ verdict }) => verdict)).toEqual(['pass', 'near', 'near', 'fail'])
    expect(verdicts[0]?.margin).toBeCloseTo(10 / 150, 12)
    expect(verdicts[3]?.margin).toBeCloseTo(-1 / 150, 12)
  })

  it('knows nothing where something is missing, and says what', () => {
    const told = trial('rope.age', 'Age', { unknown: 'how old the rope is: give age' }, 'common practice, no source')
    expect([told.verdict, told.text, told.actual]).toEqual(['unknown', 'how old the rope is: give age', undefined])
  })

  it('keeps its text in JSON and under another name', () => {
    const one = renamed(carries(amps(190), amps(150)), 'yard.rope.load', 'Yard: load')
    expect(JSON.parse(JSON.stringify(one))).toEqual({
      id: 'yard.rope.load',
      name: 'Yard: load',
      verdict: 'pass',
      text: 'carries 190 A, at least the 150 A of the load',
      basis: 'as given',
      paths: ['load'],
      actual: '190 A',
      limit: '150 A',
      sense: 'at least',
      margin: 190 / 150 - 1,
    })
    expect(Object.keys(one)).not.toContain('text')
  })

  it('refuses figures of two kinds, and a sentence without a sense', () => {
    const limit = quantity('voltage', '1 V') as unknown as Quantity<'current'>
    expect(() => carries(amps(1), limit)).toThrow(InputError)
    expect(() => trial('a', 'A', says`${amps(1)} and ${amps(2)}`, 'as given')).toThrow(
      "expected 'at most' or 'at least'",
    )
  })
})

describe('a check', () => {
  const volts = (text: `${number} V`) => quantity('voltage', text)
  const celsius = (text: `${number} °C`) => quantity('temperature', text)
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
    ['5 V', 'at most', '1e-300 V', 'fail', -1],
    ['5 V', 'at least', '1e-300 V', 'pass', 1],
    ['1e300 V', 'at most', '1e-300 V', 'fail', -1],
    ['1e-300 V', 'at most', '5 V', 'pass', 1],
    ['1e-300 V', 'at least', '5 V', 'fail', -1],
    ['-1.7e308 V', 'at least', '1.7e308 V', 'fail', -2],
    ['3e-320 V', 'at most', '1e-320 V', 'fail', -2],
  ] as const)('%s %s %s: %s, margin %d', (actual, sense, limit, verdict, margin) => {
    const result = check('rig.voltage', 'Voltage', volts(actual), sense, volts(limit), 'good practice', 'voltage')
    expect(result.verdict).toBe(verdict)
    expect(result.margin).toBeCloseTo(margin, 12)
    expect(result).toMatchObject({ id: 'rig.voltage', name: 'Voltage', sense, paths: ['voltage'] })
  })
  it('has a finite margin for any figure and limit, which falls as the figure goes further beyond', () => {
    const any = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom(0, 1e-300, 5e-324, -5e-324),
    )
    fc.assert(
      fc.property(any, any, fc.constantFrom('at most', 'at least'), (actual, limit, sense) => {
        const held = check(
          'rig.any',
          'Any',
          quantity('voltage', actual, 'V'),
          sense,
          quantity('voltage', limit, 'V'),
          'none',
        )
        expect(Number.isFinite(held.margin)).toBe(true)
        const isMissed = sense === 'at most' ? actual > limit : actual < limit
        const rounding = 1e-12 * Math.max(Math.abs(actual), Math.abs(limit))
        expect(held.verdict === 'fail').toBe(isMissed && Math.abs(actual - limit) > rounding)
      }),
    )
  })
  it('meets a limit of 0 °C to the last digits, and has a finite margin beside it', () => {
    const held = (actual: number) =>
      check('rig.cold', 'Cold', quantity('temperature', actual, 'K'), 'at least', celsius('0 °C'), 'none')
    expect([held(273.15 - 5e-14).margin, held(273.15).margin, held(268.15).margin]).toEqual([0, 0, -1])
  })
  it('counts temperatures from 0 °C', () => {
    const held = (actual: `${number} °C`) =>
      check('rig.cable', 'Cable', celsius(actual), 'at most', celsius('105 °C'), 'IEC 60364-5-52')
    expect(held('84 °C').margin).toBeCloseTo(0.2, 12)
    expect(held('118 °C').verdict).toBe('fail')
  })
  it('knows only its two senses', () => {
    expect(() => check('rig.odd', 'Odd', volts('5 V'), 'at mots' as never, volts('6 V'), 'none')).toThrow(
      /sense: expected 'at most' or 'at least'/,
    )
  })
  it('compares like with like', () => {
    const current = quantity('current', '5 A') as never
    expect(() => check('rig.odd', 'Odd', volts('5 V') as never, 'at most', current, 'none')).toThrow(InputError)
  })
})

describe('every caution', () => {
  it.each(Object.entries(cautions))('%s names a hazard and what to do, under its own id', (name, caution) => {
    const { id, hazard, text } = caution as Caution
    expect(id).toBe(name)
    expect(hazard).toMatch(/^\p{Ll}/u)
    expect(text.split('. ').length).toBeGreaterThan(1)
    expect(text).toMatch(/\.$/)
  })
})

describe('candidates', () => {
  interface Rope {
    readonly name: string
    readonly most: number
    readonly old?: boolean
  }
  const ropes: readonly Rope[] = [
    { name: 'thin', most: 100 },
    { name: 'old', most: 300, old: true },
    { name: 'thick', most: 200 },
    { name: 'thicker', most: 250 },
  ]
  const judge = ({ name, most, old = false }: Rope): Judged<number> => ({
    name,
    checks: [
      carries(amps(most), amps(150)),
      trial('rope.age', 'Age', old ? { unknown: 'its age is not known' } : { pass: 'is new' }, 'as given'),
    ],
    own: [check('yard.size', 'Size', amps(2), 'at most', amps(1), 'the yard')],
    made: most,
  })

  it('are tried in their order: one of which something is not known does not serve', () => {
    const { chosen, rejected } = firstThatServes(ropes, judge)
    expect(chosen?.name).toBe('thick')
    expect(rejected.map(rejectedAs)).toEqual([
      { name: 'thin', reasons: ['carries 100 A, less than the 150 A of the load'] },
      { name: 'old', reasons: ['its age is not known'] },
    ])
    expect(allThatServe(ropes, judge).serving.map(({ made }) => made)).toEqual([200, 250])
  })

  it('stand in a working with the tests that they pass, or the reasons', () => {
    const { steps } = explain(() => firstThatServes(ropes, judge))
    expect(steps.map((step) => ('heading' in step ? step.heading : ''))).toEqual([
      'thin: refused, carries 100 A, less than the 150 A of the load',
      'old: refused, its age is not known',
      'thick: serves, carries 200 A, at least the 150 A of the load; is new',
    ])
  })

  it('none of which serves make an error with the reasons of each', () => {
    const { chosen, rejected } = firstThatServes(ropes.slice(0, 2), judge)
    expect(chosen).toBeUndefined()
    const error = noneServes('hang', 'no rope up to old serves', rejected, 'Hang less')
    expect(error.message).toBe('hang: no rope up to old serves. old: its age is not known. Hang less')
    expect(error.figures).toEqual({
      thin: 'carries 100 A, less than the 150 A of the load',
      old: 'its age is not known',
    })
  })

  it('make no text where nobody reads it', () => {
    let read = 0
    const counted = { toString: () => `${read++}` }
    const load = (most: number): Check =>
      trial('rope.load', 'Load', says`${amps(most)} ${counted}, at least ${amps(150)}`, 'as given')
    firstThatServes([100, 200], (most) => ({ name: `${most}`, checks: [load(most)], made: most }))
    expect(read).toBe(0)
  })
})
