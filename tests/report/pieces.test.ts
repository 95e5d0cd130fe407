/** What is shown in a page or a notebook of the reader's own: a working, an uncertainty, a sweep, a comparison. */
import { describe, expect, it } from 'vitest'
import { commonPractice, explain, formula, input, output, sweep } from '../../src/formula/index.js'
import { forNotebook, toHtml } from '../../src/report/index.js'
import { hostile } from './hostile.js'
import { compared, piecesOf, swept, uncertain, working } from './pieces.js'
import { faultsOf, pageWith } from './valid.js'

const pieces = piecesOf()

/** A style stands in a head alone by the letter; a notebook has none to put it in, and browsers take it anywhere. */
const withoutStyle = (html: string) => html.replace(/<style>[\s\S]*?<\/style>/g, '')

/** What a piece says, without its marks. */
const textOf = (html: string) =>
  withoutStyle(html)
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replace(/[\s\u00a0]+/g, ' ')

describe.each(Object.entries(pieces))('a piece of HTML: %s', (_, html) => {
  it('is valid in a page of the reader’s own', async () => {
    expect(await faultsOf(pageWith('Mine', withoutStyle(html)))).toEqual([])
    expect(html).toMatch(/^<section class="kerbwatt">[\s\S]*<\/section>$/)
    // What has an id can stand in a page but once.
    expect(html).not.toMatch(/\sid="/)
  })
  it('has no script, loads nothing, and says nothing that is no number', () => {
    expect(html).not.toMatch(/<(?:script|link|img|iframe|form)\b|\son\w+=|javascript:|@import|url\(/i)
    expect(textOf(html)).not.toMatch(/\bNaN\b|\bundefined\b|\[object|Infinity/)
  })
})

describe('a working', () => {
  it('has each formula with its numbers, its result and its source, under the heading of its part', () => {
    const text = textOf(pieces.working)
    expect(text).toContain('A pack on a hill')
    // 4 times 44.4 V; 4/2 of 14 mΩ; the rest as the guide works it out in text.
    for (const told of [
      'U = 4 · 44.4 V = 178 V',
      'R = 4 / 2 · 14 mΩ = 28 mΩ',
      '= 174 A',
      'P = (174 A)² · 28 mΩ = 845 W',
    ])
      expect(text).toContain(told)
    expect(pieces.working.match(/<math /g)).toHaveLength(4)
    expect(text.match(/by definition/g)).toHaveLength(4)
  })
  it('is never longer than its text and its mathematics ask for', () => {
    expect(pieces.working.length).toBeLessThan(20_000 + working.toText().length)
  })
})

describe('an uncertainty', () => {
  it('has the result with k = 2, its interval, and what each input adds', () => {
    expect(String(uncertain.expanded)).toBe('0.4 V')
    const text = textOf(pieces.uncertainty)
    expect(text).toContain('177.6 V ± 0.4 V (k = 2), standard uncertainty 0.2 V, about 95 % within 177.2 V to 178 V')
    expect(text).toMatch(/voltage 0\.2 V 100\.0 % 4/)
  })
})

describe('a sweep', () => {
  it('has a drawing and a row for each step', () => {
    const text = textOf(pieces.sweep)
    // 0.444 N s²/m² times 10², 15² and 20² m²/s².
    for (const told of ['10 m/s 44.4 N', '15 m/s 99.9 N', '20 m/s 178 N']) expect(text).toContain(told)
    expect(pieces.sweep).toContain('<svg')
  })
  it('of one row has no drawing; of many, the first 200 and how many there are', () => {
    expect(toHtml(swept.slice(0, 1))).not.toContain('<svg')
    const many = toHtml(Array.from({ length: 500 }, () => swept[0] as (typeof swept)[number]))
    expect(textOf(many)).toContain('the first 200 of 500 rows')
    expect(many.match(/<tr>/g)).toHaveLength(201)
  })
  it('is shown in other units', () => {
    // 10 m/s are 22.4 mph, and 44.4 N are 9.98 lbf.
    const text = textOf(toHtml(swept, { units: 'imperial' }))
    expect(text).toContain('22.4 mph 9.98 lbf')
    expect(text).toContain('speed, mph result, lbf')
  })
})

describe('a comparison', () => {
  it('has a column for each sheet, what differs, and why one is not sound', () => {
    const text = textOf(pieces.comparison)
    expect(text).toContain('as it is a heavier <module> not sound')
    expect(text).toMatch(/not sound: .*module\.mass/)
    // 8 modules of 30 kg.
    expect(
      compared()
        .figures.find(({ id }) => id === 'pack.mass')
        ?.values.map(String),
    ).toContain('240 kg')
    expect(text).toMatch(/mass of the modules \d+ kg 240 kg none/)
  })
})

describe('text of a formula or a sheet of the reader’s own', () => {
  it.each(Object.entries(hostile))('as %s is shown and never run', async (_, text) => {
    const own = formula({
      name: 'own',
      title: text,
      inputs: { force: input('force', 'F', text, { min: 0 }) },
      result: output('force', 'G', text),
      expression: '2 * F',
      source: commonPractice,
      compute: ({ force }) => 2 * force,
    })
    for (const html of [
      toHtml(explain(() => own({ force: '1 N' }))),
      toHtml(sweep(own, { force: { from: '1 N', to: '2 N', steps: 2 } }, {})),
    ]) {
      expect(html).not.toMatch(/<(?:script|img|iframe)/i)
      expect(html.match(/<\/style>/g)).toHaveLength(1)
      expect(html).not.toMatch(/[\u202a-\u202e\u2066-\u2069]|\p{Cs}/u)
      expect(await faultsOf(pageWith('Mine', withoutStyle(html)))).toEqual([])
    }
  })
})

it('a notebook is given the HTML under the symbol that it asks for', () => {
  const shown = forNotebook(pieces.sweep) as { [display: symbol]: () => object }
  expect(shown[Symbol.for('Jupyter.display')]?.()).toEqual({ 'text/html': pieces.sweep })
})

it('what cannot be shown is refused with what can, options that there are not with those that there are', () => {
  expect(() => toHtml({} as never)).toThrow('expected what assess, explain, propagate, sweep, compare or explore')
  expect(() => toHtml([] as never)).toThrow('expected what assess')
  expect(() => toHtml(swept, { width: 3 } as never)).toThrow('width: expected no such option; there are units')
})
