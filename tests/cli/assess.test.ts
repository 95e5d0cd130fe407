/** Sheets that are assessed and compared, from all sorts of files. */
import {
  chmodSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  truncateSync,
} from 'node:fs'
import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import { assess, readBuild } from '../../src/conversion/index.js'
import { toCsv, toHtml, toMarkdown, toText } from '../../src/report/index.js'
import { kerbwatt } from './run.js'
import { demo, folder, light } from './sheets.js'

const { path, write } = folder()
const found = assess(readBuild(demo))
const example = 'examples/wagtail-850.json'

describe('a sheet', () => {
  it('is assessed as the library does, from a file and from standard input', async () => {
    const whole = { code: 0, out: toText(found), err: '' }
    expect(await kerbwatt(['assess', example])).toEqual(whole)
    expect(await kerbwatt(['assess', '-'], { stdin: JSON.stringify(demo) })).toEqual(whole)
    expect((await kerbwatt(['assess', example, '--brief'])).out).toBe(toText(found, { brief: true }))
    expect((await kerbwatt(['assess', '--units', 'imperial', example])).out).toBe(toText(found, { units: 'imperial' }))
  })
  it('tells how sure the figures are, and what to measure next', async () => {
    const { out, code } = await kerbwatt(['assess', example, '--bands', '--brief'])
    expect(out).toContain('\nMeasure next\n')
    expect(out).toMatch(/ ± /)
    expect(code).toBe(0)
  })

  it('comes as JSON', async () => {
    const { out } = await kerbwatt(['assess', example, '--json'])
    const read = JSON.parse(out)
    expect(read.verdict).toBe('near')
    expect(read.figures).toHaveLength(found.figures.length)
    expect(read.figures[0]).toMatchObject({ id: found.figures[0]?.id, value: found.figures[0]?.value.toJSON() })
  })
  it('that fails or is open is no success', async () => {
    const fails = await kerbwatt(['assess', 'examples/wagtail-first-try.json'])
    expect([fails.code, fails.out.includes('FAILS:')]).toEqual([1, true])
    const open = await kerbwatt(['assess', '-'], {
      stdin: JSON.stringify({ ...light, hill: demo.hill, cooling: demo.cooling }),
    })
    expect([open.code, open.out.includes('OPEN:')]).toEqual([1, true])
  })
  it('is refused in words, under the name of its file', async () => {
    const wrong = write('wrong.json', { ...light, car: { ...light.car, wheelbase: '2.03' } })
    const { code, err } = await kerbwatt(['assess', wrong])
    expect([code, err]).toEqual([
      2,
      `kerbwatt assess: ${wrong}: one input cannot be used\n  car.wheelbase: expected a length such as '2.4 m', got '2.03' (which unit? m, mm, cm, km, ft, in or mi)\n`.replace(
        /\(which.*\)/,
        err.match(/\(which.*\)/)?.[0] ?? '',
      ),
    ])
  })
  it('with a byte order mark or DOS lines is read', async () => {
    const text = JSON.stringify(light, null, 2)
    const plain = await kerbwatt(['assess', write('plain.json', text)])
    expect(plain.code).toBeLessThan(2)
    expect(await kerbwatt(['assess', write('mark.json', `\ufeff${text}`)])).toEqual(plain)
    expect(await kerbwatt(['assess', write('dos.json', text.replaceAll('\n', '\r\n'))])).toEqual(plain)
  })
})

describe('a file', () => {
  const refusal = async (...words: readonly string[]) => {
    const { code, out, err } = await kerbwatt(words)
    expect([code, out]).toEqual([2, ''])
    expect(err.trim().split('\n')).toHaveLength(1)
    return err
  }
  it.each([
    ['that is absent', () => path('absent.json'), 'no such file or directory'],
    ['that is a directory', () => path(''), 'a directory'],
    ['that is empty', () => write('empty.json', ''), 'empty'],
    [
      'that is no JSON',
      () => write('none.json', '{\n  "car": nothing\n}'),
      "not JSON: line 2, column 11: unexpected 'o'",
    ],
    ['that ends too early', () => write('early.json', '{ "car": {'), 'not JSON: it ends too early'],
    ['that is Latin 1', () => write('latin.json', Buffer.from('{ "title": "Müller" }', 'latin1')), 'not UTF-8'],
    ['that is UTF-16', () => write('wide.json', Buffer.from('\ufeff{}', 'utf16le')), 'not UTF-8'],
    ['of 100 MB', () => large(), 'more than 16 MiB'],
    ['without end', () => '/dev/zero', 'more than 16 MiB'],
  ])('%s is refused in a line', async (_, file, message) => {
    expect(await refusal('assess', file())).toContain(message)
  })
  it('that is empty is refused from standard input too', async () => {
    expect(await refusal('assess', '-')).toBe('kerbwatt assess: standard input: empty\n')
    expect(await refusal('assess', '')).toContain("expected the name of a file, got ''")
  })
  function large() {
    const file = write('large.json', ' ')
    truncateSync(file, 100_000_000)
    return file
  }
})

describe('a report', () => {
  it('is what the library writes', async () => {
    const [html, markdown, csv] = ['r.html', 'r.md', 'r.csv'].map(path) as [string, string, string]
    const words = ['assess', example, '--html', html, '--markdown', markdown, '--csv', csv]
    const { code, out, err } = await kerbwatt(words)
    expect([code, out, err]).toEqual([0, toText(found), `wrote ${html}\nwrote ${markdown}\nwrote ${csv}\n`])
    const texts = [html, markdown, csv].map((file) => readFileSync(file, 'utf8'))
    expect(texts).toEqual([toHtml(found), toMarkdown(found), toCsv(found)])
    const small = assess(readBuild(light))
    await kerbwatt(['assess', write('small.json', light), ...words.slice(2), '--units', 'imperial'])
    expect(readFileSync(html, 'utf8')).toBe(toHtml(small, { units: 'imperial' }))
    expect(readFileSync(markdown, 'utf8')).toBe(toMarkdown(small, { units: 'imperial' }))
    // Beside them nothing is left.
    expect(readdirSync(path('')).filter((file) => file.startsWith('.'))).toEqual([])
  })
  it('does not take the place of what is read, nor two one place', async () => {
    const sheet = write('mine.json', light)
    symlinkSync(sheet, path('link.json'))
    linkSync(sheet, path('twin.json'))
    const before = readFileSync(sheet, 'utf8')
    for (const target of [
      sheet,
      path('link.json'),
      path('twin.json'),
      path('./../').concat(sheet.split('/').at(-2) ?? '', '/mine.json'),
    ]) {
      const { code, err } = await kerbwatt(['assess', sheet, '--html', target])
      expect([code, err]).toEqual([2, `kerbwatt assess: --html ${target} would write over ${sheet}\n`])
    }
    const { err } = await kerbwatt(['assess', sheet, '--html', path('one'), '--csv', path('one')])
    expect(err).toBe(`kerbwatt assess: --csv ${path('one')} would write over ${path('one')}\n`)
    expect(readFileSync(sheet, 'utf8')).toBe(before)
    expect(existsSync(path('one'))).toBe(false)
  })
  it('needs a place that can be written', async () => {
    const sheet = write('sound.json', light)
    mkdirSync(path('place'))
    for (const [target, why] of [
      [path('place'), 'a directory'],
      [path('none/r.html'), 'no such file or directory'],
      [`${sheet}/r.html`, 'part of the path is no directory'],
      ['/dev/null', 'no regular file'],
      ['/proc/r.html', ''],
    ] as const) {
      const { code, out, err } = await kerbwatt(['assess', sheet, '--html', target])
      expect([code, out]).toEqual([2, ''])
      expect(err).toContain(why)
    }
    expect((await kerbwatt(['assess', sheet, '--html', '-'])).err).toContain("--html takes a file, got '-'")
  })
  it.skipIf(process.getuid?.() === 0)('is not written where there is no permission', async () => {
    mkdirSync(path('locked'))
    chmodSync(path('locked'), 0o500)
    const { code, err } = await kerbwatt(['assess', write('s.json', light), '--html', path('locked/r.html')])
    expect([code, err]).toEqual([2, `kerbwatt assess: ${path('locked/r.html')}: no permission\n`])
  })
  it('goes through a link to what that leads to, and stays as it was where the sheet is not sound', async () => {
    const target = write('old.html', 'old')
    symlinkSync(target, path('latest.html'))
    await kerbwatt(['assess', write('unsound.json', {}), '--html', path('latest.html')])
    expect(readFileSync(target, 'utf8')).toBe('old')
    await kerbwatt(['assess', write('light.json', light), '--html', path('latest.html')])
    expect(readFileSync(target, 'utf8')).toContain('<html')
  })
})

describe('sheets', () => {
  it('are compared with the first', async () => {
    const lighter = write('lighter.json', { ...light, pack: { ...light.pack, series: 3 } })
    const { code, out } = await kerbwatt(['compare', write('asItIs.json', light), lighter])
    expect(code).toBe(0)
    expect(out).toContain('asItIs  lighter')
    expect(out).toMatch(/weight\.after\.mass +655 kg +632 kg/)
    expect(out).not.toContain('weight.before.mass')
    const read = JSON.parse((await kerbwatt(['compare', path('asItIs.json'), lighter, '--json'])).out)
    expect(read.variants.map(({ name }: { readonly name: string }) => name)).toEqual(['asItIs', 'lighter'])
  })
  it('of one name stand under their paths, and one that is not sound is told beside the others', async () => {
    mkdirSync(path('a'))
    const [one, other] = [write('a/car.json', light), write('car.json', { ...light, title: '' })]
    const { code, out } = await kerbwatt(['compare', one, other])
    expect(code).toBe(2)
    expect(out).toContain(`${one}  ${other}`)
    expect(out).toContain('not sound')
    expect(out).toContain('title: expected')
  })
})

describe('a sheet to start from', () => {
  const require = createRequire(import.meta.url)
  const ajv = new (require('ajv').default)({ strict: false })
  it('is that of the demo, and reads to the same', async () => {
    const { out } = await kerbwatt(['sheet', '--example'])
    const read = JSON.parse(out)
    expect(Object.keys(read)[0]).toBe('$schema')
    expect(assess(readBuild(read))).toEqual(found)
  })
  it('has every field that must be there, and is refused at each of them until it is filled in', async () => {
    const { out } = await kerbwatt(['sheet'])
    const { code, err } = await kerbwatt(['assess', '-'], { stdin: out })
    expect(code).toBe(2)
    expect(err).not.toContain('got nothing')
    expect(err).toContain("car.wheelbase: expected a length such as '2.4 m', got 'Wheelbase, in m'")
    const filled = JSON.parse(out)
    const fill = (blank: object, from: { readonly [key: string]: never }): object =>
      Object.fromEntries(
        Object.entries(blank).map(([key, value]) => [
          key,
          typeof value === 'object' ? fill(value, from[key] as never) : (from[key] as unknown),
        ]),
      )
    // Of tyre and rolling radius it needs either.
    const full = fill({ ...filled, car: { ...filled.car, tyre: '' } }, demo)
    const whole = await kerbwatt(['assess', '-'], { stdin: JSON.stringify(full) })
    expect([whole.code, whole.err]).toEqual([0, ''])
  })
  it('names the schema that is printed, which holds for it', async () => {
    const { out } = await kerbwatt(['schema'])
    const isOne = ajv.compile(JSON.parse(out))
    expect(isOne(JSON.parse((await kerbwatt(['sheet', '--example'])).out))).toBe(true)
    expect(isOne({ title: 'a' })).toBe(false)
  })
})
