/** Which command is meant, its help, and what is refused of what is typed. */
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Writable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { root } from '../../scripts/root.js'
import { Progress } from '../../src/cli/shell.js'
import { isDeep } from '../runs.js'
import { builtCommand, kerbwatt } from './run.js'
import { light } from './sheets.js'

const command = builtCommand()
const names = ['assess', 'compare', 'explore', 'variants', 'front', 'formula', 'procedure', 'sheet', 'schema']
const exampleIn = (help: string) => /Example:\n {2}(.+)\n$/.exec(help)?.[1] ?? ''

describe('help', () => {
  it('names every command, on one screen', async () => {
    const { code, out, err } = await kerbwatt(['--help'])
    expect([code, err]).toEqual([0, ''])
    for (const name of names) expect(out).toContain(`  kerbwatt ${name} `)
    expect(await kerbwatt(['-h'])).toEqual({ code, out, err })
    expect(await kerbwatt(['help'])).toEqual({ code, out, err })
  })
  it.each(['', ...names])('of %s is of one screen, and its example runs', async (name) => {
    const { out } = await kerbwatt([name, '--help'].filter((word) => word !== ''))
    expect(out.split('\n').length).toBeLessThanOrEqual(25)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(name === '' ? 80 : 130)
    // Those that assess many variants of the demo take long.
    if (isDeep || !['explore', 'front', 'compare'].includes(name)) expect(await ranIn(exampleIn(out))).not.toBe('')
  })
  it('goes to standard error where there is no command, which is no success', async () => {
    const { out } = await kerbwatt(['--help'])
    expect(await kerbwatt([])).toEqual({ code: 2, out: '', err: out })
  })
  it('of a formula or a procedure tells of it', async () => {
    for (const words of [
      ['formula', 'cableVoltageDrop'],
      ['procedure', 'sizeCable'],
    ]) {
      const { code, out } = await kerbwatt(words)
      expect(code).toBe(0)
      expect(await kerbwatt([...words, '--help'])).toEqual({ code: 0, out, err: '' })
    }
  })
  it('tells the version', async () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
    expect((await kerbwatt(['--version'])).out).toBe(`${version}\n`)
  })
})

/** What a line of commands prints, each run in this process with what the one before printed. */
async function ranIn(line: string): Promise<string> {
  const [pipe = '', file] = line.split(' > ')
  let text = ''
  for (const part of pipe.split(' | ')) {
    if (part.startsWith('head -')) {
      text = text
        .split('\n')
        .slice(0, Number(part.slice(6)))
        .join('\n')
      continue
    }
    const words = part.match(/'[^']*'|[^' ]+/g) ?? []
    expect(words[0]).toBe('kerbwatt')
    const { code, out, err } = await kerbwatt(
      words.slice(1).map((word) => word.replaceAll("'", '')),
      { stdin: text, bin: command },
    )
    expect([code, err]).toEqual([0, ''])
    text = out
  }
  if (file !== undefined) expect(file).toMatch(/^[\w.-]+\.json$/)
  return text
}

describe('what is typed', () => {
  it.each([
    [['asess'], 'kerbwatt: there is no command asess; did you mean assess? (kerbwatt --help)\n'],
    [['--asess'], 'kerbwatt: there is no option --asess (kerbwatt --help)\n'],
    [['constructor'], 'kerbwatt: there is no command constructor (kerbwatt --help)\n'],
    [['assess', 'car.json', '--htlm', 'x.html'], 'there is no option --htlm; did you mean --html?'],
    [['assess', 'car.json', '--__proto__', 'x'], 'there is no option --__proto__'],
    [['assess', 'car.json', '-x'], 'there is no option -x'],
    [['assess', 'car.json', '--html'], '--html takes a value: --html FILE'],
    [['assess', 'car.json', '--html='], '--html takes a value: --html FILE'],
    [['assess', 'car.json', '--html', '--json'], '--html takes a value: --html FILE; got the option --json'],
    [['assess', 'car.json', '--html', 'a.html', '--html', 'b.html'], '--html stands twice'],
    [['assess', 'car.json', '--json=yes'], "--json takes no value, got 'yes'"],
    [['assess', 'car.json', '--json', '--json'], '--json stands twice'],
    [['assess', 'car.json', '--json', '--brief'], '--json goes without --brief'],
    [['assess', 'car.json', '--units', 'metric'], "--units takes imperial, got 'metric'"],
    [['assess', 'car.json', '--lines', '--json'], '--lines goes without --json'],
    [
      ['assess', 'a.json', 'b.json'],
      "expected one: a sheet, such as car.json, or - for standard input, got 'a.json' and 'b.json'",
    ],
    [['assess'], 'expected a sheet, such as car.json, or - for standard input'],
    [['compare', 'a.json'], 'expected two sheets or more'],
    [['compare', 'a.json', 'a.json'], 'a.json stands twice'],
    [['explore', 'study.json', '--workers', '0'], "--workers takes a whole number from 1 to 512, got '0'"],
    [['explore', 'study.json', '--workers', '2.5'], "got '2.5'"],
    [['front', 'study.json'], 'expected a study and the results'],
    [['front', '-', '-'], 'a file stands twice'],
    [['sheet', 'car.json'], "takes no file, got 'car.json'"],
    [['formula', '--current', '3 A'], 'there is no option --current'],
    [['formula', 'cableVoltDrop'], "there is no formula 'cableVoltDrop'; did you mean cableVoltageDrop?"],
    [['formula', 'sizeCable'], 'it is a procedure: kerbwatt procedure sizeCable'],
    [['formula', '__proto__'], "there is no formula '__proto__'"],
    [['procedure', 'cableVoltageDrop'], 'it is a formula: kerbwatt formula cableVoltageDrop'],
  ])('%j is refused', async (words, message) => {
    const { code, out, err } = await kerbwatt(words)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(message)
    expect(err).toMatch(/^kerbwatt/)
    expect(err.trim().split('\n')).toHaveLength(1)
  })
  it('is refused all at once', async () => {
    const { err } = await kerbwatt(['assess', 'car.json', '--htlm', '--json=1', '--csv'])
    expect(err).toBe(
      'kerbwatt assess:\n  there is no option --htlm; did you mean --html?\n' +
        "  --json takes no value, got '1'\n  --csv takes a value: --csv FILE\n",
    )
  })
})

describe('a terminal', () => {
  const sheet = JSON.stringify(light)
  const escape = '\u001b['
  it('shows headings in bold, and what is piped or under NO_COLOR is plain', async () => {
    const words = ['assess', '-', '--brief']
    const plain = await kerbwatt(words, { stdin: sheet })
    const bold = await kerbwatt(words, { stdin: sheet, columns: 120 })
    expect(plain.out).not.toContain(escape)
    expect(bold.out).toContain(`${escape}1mWeight and balance${escape}22m`)
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    expect(bold.out.replace(/\u001b\[\d+m/g, '')).toBe(plain.out)
    for (const env of [{ NO_COLOR: '1' }, { TERM: 'dumb' }]) {
      expect((await kerbwatt(words, { stdin: sheet, columns: 120, env })).out).toBe(plain.out)
    }
  })
  it('that is narrow gets shorter lines', async () => {
    const { out } = await kerbwatt(['assess', '-'], { stdin: sheet, columns: 60, env: { NO_COLOR: '1' } })
    const running = out.split('\n').filter((line) => /^ {4}\d+ {2}/.test(line))
    expect(running.length).toBeGreaterThan(0)
    for (const line of running) expect(line.length).toBeLessThanOrEqual(60)
  })
})

describe('the line that tells how far it is', () => {
  const shown = (isTTY: boolean) => {
    const parts: string[] = []
    const stderr = Object.assign(
      new Writable({
        write(chunk, _, done) {
          parts.push(String(chunk))
          done()
        },
      }),
      { isTTY },
    )
    let now = 0
    const progress = new Progress({ stderr }, () => now)
    const at = (time: number, done: number) => {
      now = time
      progress.done(done, 1000)
    }
    return { parts, at, progress }
  }
  it('comes after a second, five times a second, and goes', () => {
    const { parts, at, progress } = shown(true)
    at(900, 9)
    expect(parts).toEqual([])
    at(1000, 10)
    at(1100, 11)
    at(1200, 12)
    expect(parts).toEqual(
      ['\r10 of 1000 assessed, 99 s left\u001b[K', '\r12 of 1000 assessed, 99 s left\u001b[K'].map((each) =>
        each.replace('99 s', '2 min'),
      ),
    )
    progress.end()
    expect(parts.at(-1)).toBe('\r\u001b[K')
  })
  it('does not come where standard error is no terminal', () => {
    const { parts, at, progress } = shown(false)
    at(5000, 10)
    progress.end()
    expect(parts).toEqual([])
  })
})

describe('the source of the command', () => {
  it('lists no formula and no procedure by hand, but for what its examples show', async () => {
    const { catalogue, procedures } = await import('../../src/catalogue.js')
    const text = readdirSync(join(root, 'src/cli'))
      .map((file) => readFileSync(join(root, 'src/cli', file), 'utf8'))
      .join('\n')
      .replace(/^ *example:\s+["'].*$/gm, '')
    const listed = [...Object.keys(catalogue), ...Object.keys(procedures)].filter((name) =>
      new RegExp(`\\b${name}\\b(?!\\()`).test(text),
    )
    expect(listed).toEqual([])
  })
  it('has options that no formula and no procedure has as an input', async () => {
    const { catalogue, procedures } = await import('../../src/catalogue.js')
    const { fieldsOf } = await import('../../src/procedure/index.js')
    const options = /^ {2}--(\w+)/gm
    const formulaHelp = (await kerbwatt(['formula', '--help'])).out
    const own = [...formulaHelp.matchAll(options)].map(([, name]) => name)
    expect(own).toContain('solve')
    for (const { inputs } of Object.values(catalogue))
      for (const name of own) expect(Object.keys(inputs)).not.toContain(name)
    const procedureHelp = (await kerbwatt(['procedure', '--help'])).out
    const known = [...procedureHelp.matchAll(options)].map(([, name]) => name)
    expect(known).toContain('working')
    for (const each of Object.values(procedures)) {
      for (const name of known) expect(fieldsOf(each).map(({ path }) => path)).not.toContain(name)
    }
  })
})

describe.runIf(isDeep)('a stack trace', () => {
  it('is never printed', () => {
    const { stderr } = spawnSync('node_modules/.bin/tsx', ['src/cli/kerbwatt.ts', 'assess', 'package.json'], {
      cwd: root,
      encoding: 'utf8',
    })
    expect(stderr).toContain('package.json: ')
    expect(stderr).not.toMatch(/\n\s+at /)
  })
})
