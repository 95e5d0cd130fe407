/** Formulas and procedures from the shell: the same as from the library. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { root } from '../../scripts/root.js'
import { catalogue, procedures } from '../../src/catalogue.js'
import type { Check } from '../../src/procedure/index.js'
import { isDeep } from '../runs.js'
import { kerbwatt } from './run.js'
import { folder } from './sheets.js'

const { path, write } = folder()
const cable = ['formula', 'cableVoltageDrop', '--resistancePerLength', '0.386 mΩ/m']
const whole = [...cable, '--current', '300 A', '--length', '3 m']
const said = (out: string) => ({ code: 0, out, err: '' })

describe('a formula', () => {
  it('is listed with all others, by its title', async () => {
    const { out } = await kerbwatt(['formula'])
    expect(out.trim().split('\n')).toHaveLength(Object.keys(catalogue).length)
    expect(out).toMatch(/^ {2}cableVoltageDrop +Voltage drop of a two-wire cable run$/m)
    const read = JSON.parse((await kerbwatt(['formula', '--json'])).out)
    expect(read).toHaveLength(Object.keys(catalogue).length)
  })
  it.each(Object.values(catalogue).map((each) => [each.name, each] as const))(
    '%s is told of',
    async (name, formula) => {
      const { code, out } = await kerbwatt(['formula', name])
      expect(code).toBe(0)
      expect(out).toContain(`${formula.result.symbol} = ${formula.expression}`)
      for (const [key, { about }] of Object.entries(formula.inputs)) {
        expect(out).toMatch(new RegExp(`^ {2}--${key} `, 'm'))
        expect(out).toContain(about)
      }
      for (const text of [...formula.cautions, ...formula.assumes]) expect(out).toContain(text)
    },
  )
  it('gives its value, the working, JSON or a table', async () => {
    // By hand: 2 · 300 A · 0.000386 Ω/m · 3 m = 0.6948 V.
    expect(await kerbwatt(whole)).toEqual(said('0.6948 V\n'))
    const working = 'dU = 2 · I · r · l = 2 · 300 A · 0.386 mΩ/m · 3 m = 0.695 V   [IEC 60364-5-52, Annex G]'
    expect(await kerbwatt([...whole, '--working'])).toEqual(said(`${working}\n`))
    const read = JSON.parse((await kerbwatt([...whole, '--json', '--working'])).out)
    expect(read).toEqual({
      formula: 'cableVoltageDrop',
      given: { current: '300 A', resistancePerLength: '0.386 mΩ/m', length: '3 m' },
      result: '0.6948 V',
      working,
    })
    const { out } = await kerbwatt([...whole, '--csv'])
    expect(out).toBe('current (A),resistancePerLength (mΩ/m),length (m),result (V)\n300,0.386,3,0.6948\n')
  })
  it('is solved for an input', async () => {
    const words = [...cable, '--current', '300 A', '--solve', 'length', '--result', '1 V']
    expect(await kerbwatt(words)).toEqual(said('4.318 m\n'))
    expect((await kerbwatt([...words, '--working'])).out).toContain('4.318 m = 1 V')
    const { code, err } = await kerbwatt([...words, '--between', '5 m', '--between', '6 m'])
    expect([code, err.split(':')[1]]).toEqual([1, ' solve(cableVoltageDrop)'])
  })
  it('is swept over an input', async () => {
    const words = [
      ...cable,
      '--length',
      '3 m',
      '--sweep',
      'current',
      '--between',
      '100 A',
      '--between',
      '300 A',
      '--steps',
      '3',
    ]
    const lines = ['  current    result', '  100 A    0.2316 V', '  200 A    0.4632 V', '  300 A    0.6948 V', '']
    expect((await kerbwatt(words)).out.split('\n')).toEqual(lines)
    // The numbers are not rounded.
    const [heads, ...rows] = (await kerbwatt([...words, '--csv'])).out.trim().split('\n')
    expect(heads).toBe('current (A),result (V)')
    expect(rows.map((row) => row.split(',').map((each) => Number(Number(each).toPrecision(12))))).toEqual([
      [100, 0.2316],
      [200, 0.4632],
      [300, 0.6948],
    ])
    const read = JSON.parse((await kerbwatt([...words, '--json'])).out)
    expect(read[2]).toEqual({ current: '300 A', result: '0.6948 V' })
  })
  it('takes what is below zero', async () => {
    const words = ['formula', 'airDensity', '--pressure', '101.325 kPa', '--temperature', '-10 °C']
    expect((await kerbwatt(words)).out).toMatch(/^1\.34\d* kg\/m³\n$/)
    expect((await kerbwatt([...words.slice(0, -2), '--temperature=-10 °C'])).out).toBe((await kerbwatt(words)).out)
  })
  it.each([
    [[...cable, '--current', '300', '--length', '3 m'], "current: expected a current such as '300 A', got '300'"],
    [[...cable, '--current', '300 V', '--length', '3 m'], 'V measures a voltage'],
    [[...cable, '--current', '300 A'], 'length: expected a length'],
    [[...whole, '--lenght', '3 m'], 'there is no option --lenght; did you mean --length?'],
    [[...whole, '3 m'], "expected options, got '3 m'"],
    [[...whole, '--current', '3 A'], '--current stands twice'],
    [[...whole, '--solve', 'length', '--result', '1 V'], 'length: expected nothing, as it is what is to be found'],
    [[...whole, '--solve', 'lenght', '--result', '1 V'], 'did you mean length?'],
    [[...cable, '--current', '300 A', '--solve', 'length'], 'result: expected a voltage'],
    [[...whole, '--result', '1 V'], '--result goes with --solve'],
    [[...whole, '--steps', '3'], '--steps goes with --sweep'],
    [[...whole, '--between', '1 A'], '--between goes with --solve'],
    [[...cable, '--solve', 'length', '--sweep', 'current'], '--solve goes without --sweep'],
    [[...cable, '--sweep', 'curent', '--between', '1 A', '--between', '2 A', '--steps', '3'], "got 'curent'"],
    [[...cable, '--sweep', 'current', '--between', '1 A', '--steps', '3'], '--between stands twice, once for each end'],
    [
      [...cable, '--sweep', 'current', '--between', '1 A', '--between', '2 A', '--steps', '1'],
      '--steps takes a whole number from 2',
    ],
    [[...whole, '--json', '--csv'], '--json goes without --csv'],
  ])('%j is refused', async (words, message) => {
    const { code, out, err } = await kerbwatt(words)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(message)
  })
})

/** A procedure, to be called with what a file holds. */
const called = (name: string) =>
  procedures[name] as unknown as (given: unknown) => { readonly checks: readonly Check[] }

describe('a procedure', () => {
  const size = ['procedure', 'sizeCable', '--current', '120 A', '--length', '2.4 m']
  const inFile = (name: string) => join('docs/examples', `${name}.json`)
  const names = Object.keys(procedures).map((name) => [name])

  it('is listed with all others, by its question', async () => {
    const { out } = await kerbwatt(['procedure'])
    expect(out.trim().split('\n')).toHaveLength(names.length)
  })
  it.each(names)('%s is told of', async (name) => {
    const { code, out } = await kerbwatt(['procedure', name])
    expect(code).toBe(0)
    expect(out).toContain(procedures[name]?.answers)
  })
  // Those that drive far or place many take long.
  it.each(isDeep ? names : names.slice(0, 12))('%s gives from a file what the library gives', async (name) => {
    const procedure = called(name)
    const input = JSON.parse(readFileSync(join(root, inFile(name)), 'utf8'))
    const { code, out, err } = await kerbwatt(['procedure', name, inFile(name), '--json'])
    expect([code < 2, err]).toEqual([true, ''])
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify({ result: procedure(input) })))
    expect((await kerbwatt(['procedure', name, inFile(name)])).out).not.toMatch(/\[object|undefined|NaN/)
  })
  it('takes fields as options, in groups by their paths, and in place of those of a file', async () => {
    const procedure = called('sizeCable')
    const resultOf = async (...words: readonly string[]) =>
      JSON.parse((await kerbwatt([...words, '--json'])).out).result
    const given = { current: '120 A', length: '2.4 m', ambient: '-10 °C', fault: { current: '2 kA', time: '10 ms' } }
    const words = ['--ambient', '-10 °C', '--fault.current', '2 kA', '--fault.time', '10 ms']
    expect(await resultOf(...size, ...words)).toEqual(JSON.parse(JSON.stringify(procedure(given))))
    const { length: _, ...rest } = given
    const file = write('cable.json', { ...rest, length: '9 m', bundled: 0.7 })
    expect(await resultOf('procedure', 'sizeCable', file, '--length', '2.4 m')).toEqual(
      JSON.parse(JSON.stringify(procedure({ ...given, bundled: 0.7 }))),
    )
  })
  it('takes a published schedule by its name, as a sheet does', async () => {
    const words = ['procedure', 'sampleCycle', '--cycle']
    const { result } = JSON.parse((await kerbwatt([...words, 'WLTC class 3b', '--json'])).out)
    expect(result).toHaveLength(1801)
    expect((await kerbwatt([...words, 'WLTC class 4'])).err).toContain("got 'WLTC class 4'")
  })
  it('takes whole numbers, and entries under names of their own', async () => {
    const words = ['procedure', 'gearTable', join('docs/examples', 'gearTable.json')]
    const before = await kerbwatt(words)
    const after = await kerbwatt([...words, '--gearbox.gears.first', '5'])
    expect([before.code, after.code, after.err]).toEqual([before.code, before.code, ''])
    expect(after.out).not.toBe(before.out)
  })
  it('tells figures, checks, what was taken for granted, and cautions; and no success where a check fails', async () => {
    const { code, out } = await kerbwatt([...size, '--working'])
    expect(code).toBe(0)
    for (const part of [
      /^section.name +\d+ mm²$/m,
      /^Checks\n {2}ok/m,
      /^Taken for granted$/m,
      /^Cautions$/m,
      /^Working$/m,
    ])
      expect(out).toMatch(part)
    const { checks } = called('protectRun')(JSON.parse(readFileSync(join(root, inFile('protectRun')), 'utf8')))
    const isMet = checks.every(({ verdict }) => verdict === 'pass' || verdict === 'near')
    expect((await kerbwatt(['procedure', 'protectRun', inFile('protectRun')])).code).toBe(isMet ? 0 : 1)
  })
  it.each([
    [[...size, '--lenght', '3 m'], 'there is no option --lenght; did you mean --length?'],
    [[...size, '--fault', '3 m'], '--fault is a group: give its fields, such as --fault.current'],
    [[...size, '--fault.curent', '3 m'], 'there is no option --fault.curent; did you mean --fault.current?'],
    [[...size, '--profile', '3 A'], '--profile is a list: give it in a JSON file'],
    [[...size, '--series', 'imperial'], "series: expected 'metric' or 'american', got 'imperial'"],
    [[...size, '--__proto__.a', '3'], 'there is no option --__proto__.a'],
    [[...size, 'a.json', 'b.json'], "expected one file, got 'a.json' and 'b.json'"],
    [['procedure', 'sizeCable', 'absent.json'], 'absent.json: no such file'],
    [['procedure', '--working'], 'there is no option --working'],
  ])('%j is refused', async (words, message) => {
    const { code, out, err } = await kerbwatt(words)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(message)
    expect(err.startsWith('kerbwatt procedure: ')).toBe(true)
  })
  it('tells the file of what it refuses', async () => {
    const { err } = await kerbwatt(['procedure', 'sizeCable', write('bad.json', { current: '120 A', length: '2 V' })])
    expect(err).toContain(`kerbwatt procedure: ${path('bad.json')}: one input cannot be used\n  length: expected`)
    expect((await kerbwatt(['procedure', 'sizeCable', write('l.json', []), '--length', '1 m'])).err).toContain(
      'expected an object',
    )
  })
})
