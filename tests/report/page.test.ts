/** The report as a page: complete, in its order, safe with any text, the same for the same sheet. */
import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { assess, readBuild, writeBuild } from '../../src/conversion/index.js'
import { toHtml } from '../../src/report/index.js'
import { demo, sheetOf } from '../conversion/sheets.js'
import { hostile } from './hostile.js'
import { faultsOf } from './valid.js'

const found = assess(readBuild(demo()))
const page = toHtml(found)
const failing = assess(readBuild(sheetOf('wagtail-first-try')))

/** What a page says, without its marks. */
function textOf(html: string): string {
  return html
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replace(/[\s\u00a0]+/g, ' ')
}

describe('the page', () => {
  it('is one file that a letter carries, and the same for the same sheet', () => {
    // With a working behind each of 300 figures and 125 checks; the aim for a sheet of half as much was 300 kB.
    expect(Buffer.byteLength(page)).toBeLessThan(375_000)
    expect(toHtml(assess(readBuild(demo())))).toBe(page)
  })
  it('has no script, loads nothing and sends nothing', () => {
    for (const html of [page, toHtml(failing)]) {
      expect(html).toContain(
        `content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"`,
      )
      expect(html).not.toMatch(/<(?:script|link|img|iframe|object|embed|form|base|audio|video)\b/i)
      expect(html).not.toMatch(/\son\w+=|javascript:|@import|url\(/i)
      // The only links lead within the page.
      for (const [, where] of html.matchAll(/(?:href|src)="([^"]*)"/g)) expect(where).toMatch(/^#/)
    }
  })
  it.each([
    ['the demo', page],
    ['the first try', toHtml(failing)],
    ['pounds and miles', toHtml(found, { units: 'imperial' })],
    ['bands', toHtml(assess(readBuild(demo()), { bands: true }))],
  ])('of %s is valid HTML, and each link leads somewhere', async (_, html) => {
    expect(await faultsOf(html)).toEqual([])
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const [, id] of html.matchAll(/href="#([^"]*)"/g)) expect(ids).toContain(id)
  })
  it('goes through the job in its order', () => {
    const titles = [...page.matchAll(/<h2><span class="no">(\d+)<\/span>(.*?)<\/h2>/g)].map(
      ([, number, title]) => `${number} ${title}`,
    )
    expect(titles).toEqual([
      '1 Weight and balance',
      '2 Brakes',
      '3 The pack',
      '4 Gears',
      '5 The laden car on the road',
      '6 Energy and range at a steady speed',
      '7 Journeys',
      '8 Cables and fuses',
      '9 Bus bars',
      '10 Insulation',
      '11 Charging',
      '12 The 12\u00a0V side',
      '13 The longest hill, summer',
      '14 Cold mornings',
      '15 An evening of house load',
      '16 Taken for granted',
      '17 Cautions',
      '18 The sheet as given',
      '19 Formulas used',
    ])
  })
  it('tells every figure, cell, check, assumption and caution', () => {
    const text = textOf(page)
    for (const { name } of found.sections.flatMap((section) => section.figures)) expect(text).toContain(name)
    for (const { name, basis } of found.checks) {
      expect(text).toContain(name)
      expect(text).toContain(basis)
    }
    for (const each of [...found.assumptions, ...found.cautions]) expect(text).toContain(each.text.replace(/\s+/g, ' '))
    const cells = found.sections.flatMap(({ tables }) =>
      tables.flatMap(({ rows }) => rows.flatMap(({ values }) => values)),
    )
    expect(page.match(/<td[ >]/g)?.length).toBeGreaterThan(cells.length)
    expect(page.match(/<li id="c\d+">/g)).toHaveLength(found.checks.length)
    expect(page.match(/<li id="a\d+">/g)).toHaveLength(found.assumptions.length)
  })
  it('says its verdict in ten lines at most, with what binds first', () => {
    for (const html of [page, toHtml(failing)]) {
      const [lines = ''] = /<dl class="lines">.*?<\/dl>/.exec(html) ?? []
      expect(lines.match(/<dt>/g)?.length).toBeLessThanOrEqual(10)
      expect(lines).toContain('held by')
    }
  })
  it('brings the cautions of what fails before its contents, and the others at their place', () => {
    const html = toHtml(failing)
    const start = html.indexOf('What can hurt here')
    expect(start).toBeGreaterThan(0)
    expect(start).toBeLessThan(html.indexOf('<nav'))
    expect(page).not.toContain('What can hurt here')
    for (const { text } of failing.cautions) expect(textOf(html)).toContain(text)
  })
  it('marks each verdict with a word and a bar, and opens in print what is no pass', () => {
    const html = toHtml(failing)
    const verdicts = new Set(failing.checks.map(({ verdict }) => verdict))
    expect([...verdicts].sort()).toEqual(['fail', 'near', 'pass', 'unknown'])
    for (const [i, { verdict }] of failing.checks.entries()) {
      const [whole = ''] = new RegExp(`<li id="c${i + 1}">.*?</summary>`).exec(html) ?? []
      expect(whole).toContain(
        `<span class="verdict ${verdict}">${{ pass: 'ok', near: 'near', fail: 'fails', unknown: 'unknown' }[verdict]}</span>`,
      )
      expect(whole.includes('<details class="told">')).toBe(verdict !== 'pass')
    }
  })
  it('gives back the sheet, by the digest of its JSON', () => {
    const [, shown = ''] = /<pre class="sheet">([\s\S]*?)<\/pre>/.exec(page) ?? []
    const sheet = JSON.parse(shown.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&'))
    expect(sheet).toEqual(writeBuild(readBuild(demo())))
    const digest = createHash('sha256').update(JSON.stringify(sheet)).digest('hex')
    expect(page).toContain(digest)
  })
  it('unfolds every figure whose origin is known, and lists the formulas with their sources', () => {
    const known = found.figures.filter(({ from }) => from !== undefined)
    expect(known.length).toBeGreaterThan(0.9 * found.figures.length)
    const own = found.sections.flatMap(({ figures }) => figures).filter(({ from }) => from !== undefined)
    expect(page.match(/<li id="f[\d.]+"><details>/g)).toHaveLength(own.length)
    // A cell leads to its own working, or to that in which its figure is worked out already.
    const cells = [...page.matchAll(/<td><a href="#([tw])[\d.]+"/g)].map(([, to]) => to)
    expect(cells).toHaveLength(known.length - own.length)
    const ofTables = cells.filter((to) => to === 't')
    expect(page.match(/<li id="t[\d.]+"><details>/g)).toHaveLength(ofTables.length)
    expect(ofTables.length).toBeGreaterThan(cells.length / 2)
    const cited = new Set([...page.matchAll(/href="#e(\d+)"/g)].map(([, number]) => number))
    expect(page.match(/<li id="e\d+">/g)).toHaveLength(cited.size)
    expect(page).toContain('Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1')
  })
  it('draws what the sheet allows, each with a name, a sentence and its figures', () => {
    const figures = [...page.matchAll(/<figure id="d\d+">.*?<\/figure>/gs)].map(([whole]) => whole)
    expect(figures).toHaveLength(6)
    for (const figure of figures) {
      expect(figure).toMatch(/<b>[^<]+\.<\/b> [^<]{20,}/)
      expect(figure).toMatch(/role="img" aria-label="[^"]{20,}"/)
      expect(figure).toMatch(/Its figures: <a href="#t\d+">|<summary>The figures of drawing/)
    }
    const { gearbox: _, ...without } = demo()
    expect(toHtml(assess(readBuild(without))).match(/<figure/g)?.length).toBeLessThan(6)
  })
  it('never prints what is no number', () => {
    for (const html of [page, toHtml(failing)])
      expect(textOf(html)).not.toMatch(/\bNaN\b|\bundefined\b|\[object|Infinity/)
  })
  it('refuses what is no assessment, and options that there are not', () => {
    expect(() => toHtml(demo() as never)).toThrow('toHtml: one input cannot be used\n  expected what assess, explain')
    expect(() => toHtml(found, { unit: 'imperial' } as never)).toThrow('did you mean units?')
    expect(() => toHtml(found, { units: { length: 'kg' } as never })).toThrow('units.length: expected a unit of it: m')
  })
})

describe('hostile text', () => {
  it.each(Object.entries(hostile))('as %s is shown and never run', (_, text) => {
    const sheet = { ...demo(), title: text, note: text } as Record<string, unknown>
    const journeys = (sheet as { journeys: { bakeryRound: { title: string } } }).journeys
    sheet.journeys = { bakeryRound: { ...journeys.bakeryRound, title: text } }
    const html = toHtml(assess(readBuild(sheet)))
    expect(Buffer.byteLength(html)).toBeLessThan(1_000_000)
    expect(html).not.toMatch(/<(?:script|img|svg on|iframe)/i)
    expect(html.match(/<\/style>/g)).toHaveLength(1)
    expect(html).not.toMatch(/[\u202a-\u202e\u2066-\u2069]|\p{Cs}/u)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
    expect(html).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/)
    const shape = (of: string) =>
      of
        .replace(/>[^<]*</g, '><')
        .match(/<\/?[a-z]+/g)
        ?.filter((tag) => !/bdi/.test(tag)).length
    expect(shape(html)).toBe(shape(page))
  })
  it('that is too long is cut, which is said', () => {
    expect(toHtml(assess(readBuild({ ...demo(), title: 'x'.repeat(10_000_000) })))).toContain(
      '(cut here, of 10000000 characters)',
    )
  })
})
