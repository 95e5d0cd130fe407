/** Studies at the shell: in threads, in lines, over machines, interrupted, and with workers that die. */
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import { root } from '../../scripts/root.js'
import { explore, type Study, variantsOf } from '../../src/conversion/index.js'
import { isDeep } from '../runs.js'
import { builtCommand, kerbwatt } from './run.js'
import { demo, folder, light, study } from './sheets.js'

const { path, write } = folder()
const bin = builtCommand()
const found = explore(study as Study)
const whole = `${JSON.stringify(found, null, 2)}\n`
const file = () => write('study.json', study)
const said = (text: string) => ({ code: 0, out: text, err: '' })

describe('a study', () => {
  it.each([1, 2, 5])('in %i threads comes to what the library finds in one, byte for byte', async (workers) => {
    expect(await kerbwatt(['explore', file(), '--workers', `${workers}`, '--json'], { bin })).toEqual(said(whole))
  })
  it('goes through lines to the same, in any order and in parts', async () => {
    const variants = (await kerbwatt(['variants', file()])).out
    expect(variants.trim().split('\n')).toHaveLength(9)
    const lines = (await kerbwatt(['assess', '--lines', '-'], { stdin: variants })).out.trim().split('\n')
    const [one, other] = [
      write('1.jsonl', lines.slice(5).join('\n')),
      write('2.jsonl', lines.slice(0, 7).toReversed().join('\r\n')),
    ]
    expect(await kerbwatt(['front', file(), one, other, '--json'])).toEqual(said(whole))
    const text = await kerbwatt(['front', file(), '-'], { stdin: lines.join('\n') })
    expect(text).toEqual(await kerbwatt(['explore', file()], { bin }))
    expect(text.out).toMatch(/^6 of 9 variants on the front, 3 not sound\n/)
  })
  it('whose sheet is a file of its own finds it from where it lies', async () => {
    write('sheet.json', light)
    const named = write('named.json', { ...study, sheet: 'sheet.json' })
    expect((await kerbwatt(['variants', named])).out).toBe((await kerbwatt(['variants', file()])).out)
    const absolute = write('absolute.json', { ...study, sheet: path('sheet.json') })
    expect((await kerbwatt(['variants', absolute])).out).toBe((await kerbwatt(['variants', file()])).out)
    const { code, err } = await kerbwatt(['variants', write('lost.json', { ...study, sheet: 'lost/sheet.json' })])
    expect([code, err]).toEqual([2, `kerbwatt variants: ${path('lost/sheet.json')}: no such file or directory\n`])
    const inStudy = JSON.stringify({ ...study, sheet: path('sheet.json') })
    expect((await kerbwatt(['variants', '-'], { stdin: inStudy })).code).toBe(0)
  })
  it('of 10^9 combinations is refused with the count', async () => {
    const thousand = Array.from({ length: 1000 }, (_, i) => i + 1)
    const vary = { 'pack.series': thousand, 'pack.parallel': thousand, 'pack.available': thousand }
    const { code, err } = await kerbwatt(['explore', write('vast.json', { ...study, vary })])
    expect([code, err]).toEqual([
      2,
      `kerbwatt explore: ${path('vast.json')}: one input cannot be used\n  vary: expected at most 100000 combinations, got 1000000000 (leave some values out)\n`,
    ])
  })
  it('that asks for what no variant has is refused', async () => {
    const asked = write('asked.json', { ...study, objectives: { 'journeys.round.winter.range': 'most' } })
    const { code, err } = await kerbwatt(['explore', asked], { bin })
    expect(code).toBe(2)
    expect(err).toContain('objectives.journeys.round.winter.range: expected the id of a figure that a variant has')
  })
  it('with nothing on its front is no success', async () => {
    const heavy = write('heavy.json', { ...study, vary: { 'car.payload.mass': ['heavy', 'light'] } })
    const { code, out, err } = await kerbwatt(['explore', heavy], { bin })
    expect([code, err]).toEqual([1, ''])
    expect(out).toMatch(/^0 of 2 variants on the front, 2 not sound\n\nNot sound\n {2}1: readBuild/)
  })
})

describe('lines', () => {
  const lines = async () => (await kerbwatt(['variants', file()])).out.trim().split('\n')
  it('that hold no variant get a row with their number and why, and the others go on', async () => {
    const [first = '', second = '', third = ''] = await lines()
    const typo = second.replace('weight.after.mass', 'weight.after.mas')
    const broken = [first, '{ "number": 2,', 'null', '[]', '{}', typo, '', '\ufeff', third]
    const bytes = Buffer.concat([Buffer.from(`${broken.join('\r\n')}\n`), Buffer.from([0xff, 10]), Buffer.from(second)])
    const { code, out, err } = await kerbwatt(['assess', '--lines', '-'], { stdin: bytes })
    expect([code, err]).toEqual([2, ''])
    const rows = out
      .trim()
      .split('\n')
      .map((row) => JSON.parse(row))
    expect(rows.map(({ number, line }) => number ?? -line)).toEqual([1, -2, -3, -4, -5, -6, 3, -10, 2])
    expect(rows.filter(({ number }) => number !== undefined)).toEqual(
      [0, 2, 1].map((i) => JSON.parse(JSON.stringify(found.results[i]))),
    )
    expect(rows[1].error).toBe('not JSON')
    expect(rows[3].error).toContain("expected a line of 'kerbwatt variants'")
    expect(rows[5].error).toContain('did you mean weight.after.mass?')
    expect(rows[7].error).toBe('not UTF-8')
    const front = await kerbwatt(['front', file(), '-'], { stdin: out })
    expect(front.code).toBe(2)
    expect(front.err).toContain('standard input, line 2: left out: line 2 of the variants: not JSON')
    expect(front.err).toContain('not whole: 3 of 9 variants')
    expect(front.err).toContain('and 1 more lines left out')
  })
  it('of which some are missing make the front of those that came, which is said', async () => {
    const rows = found.results.map((each) => JSON.stringify(each))
    const { code, out, err } = await kerbwatt(['front', file(), '-'], { stdin: rows.slice(0, 2).join('\n') })
    expect([code, err]).toEqual([1, 'not whole: 2 of 9 variants\n'])
    expect(out).toMatch(/^2 of 2 variants on the front\n/)
    const empty = await kerbwatt(['front', file(), '-'])
    expect([empty.code, empty.err]).toEqual([1, 'not whole: 0 of 9 variants\n'])
  })
  it('of another study are refused', async () => {
    const rows = found.results.map((each) => JSON.stringify({ ...each, number: each.number + 5 }))
    const { code, err } = await kerbwatt(['front', file(), '-'], { stdin: rows.join('\n') })
    expect(code).toBe(2)
    expect(err).toContain(
      'standard input: one input cannot be used\n  results[4].number: expected a number from 1 to 9',
    )
  })
})

describe('a worker that dies', () => {
  /** The command with workers that end on the second variant, each or the first of them. */
  const deadly = (often: 'once' | 'always') => {
    const mark = JSON.stringify(path(`died-${often}`))
    const ends = often === 'always' ? 'true' : `!existsSync(${mark}) && (writeFileSync(${mark}, ''), true)`
    const text = `import { existsSync, writeFileSync } from 'node:fs'
      import { parentPort } from 'node:worker_threads'
      parentPort.on('message', ({ number }) => { if (number === 2 && (${ends})) process.exit(7) })
      await import(${JSON.stringify(bin.href)})`
    return pathToFileURL(write(`${often}.mjs`, text))
  }
  it('is told, and its variant is tried once more: no row is lost or doubled', async () => {
    const { code, out, err } = await kerbwatt(['explore', file(), '--json', '--workers', '2'], { bin: deadly('once') })
    expect([code, out]).toEqual([0, whole])
    expect(err).toBe('a worker died on variant 2 (exit code 7); it is tried once more\n')
  })
  it('twice on a variant leaves its row with the error', async () => {
    const { out, err } = await kerbwatt(['explore', file(), '--json', '--workers', '1'], { bin: deadly('always') })
    const { results } = JSON.parse(out)
    expect(results.map(({ number }: { readonly number: number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9])
    expect(results[1].error).toBe('not assessed: two workers died on it, the last with: exit code 7')
    expect(err).toContain('a worker died on variant 2 (exit code 7); it is given up\n')
  })
  it('before it begins ends the search', async () => {
    const dead = pathToFileURL(write('dead.mjs', 'process.exit(3)'))
    const { code, err } = await kerbwatt(['explore', file()], { bin: dead })
    expect([code, err]).toEqual([70, 'kerbwatt explore: a worker cannot be started: exit code 3\n'])
  })
})

describe('Ctrl-C', () => {
  it('keeps what is done, and says of how many', async () => {
    const { code, out, err } = await kerbwatt(['explore', file(), '--workers', '1', '--json'], {
      bin,
      before: (shell) => {
        // As soon as the search listens, before a worker is ready.
        const timer = setInterval(() => {
          if (shell.onInterrupt === undefined) return
          clearInterval(timer)
          shell.onInterrupt()
        }, 1)
      },
    })
    const { results } = JSON.parse(out)
    expect(code).toBe(130)
    expect(err).toContain(`not whole: ${results.length} of 9 variants\n`)
    expect(results).toEqual(JSON.parse(JSON.stringify(found.results.slice(0, results.length))))
  })
  it('as a signal ends a search with what is done, and the wait for standard input at once', async () => {
    const vary = { 'pack.parallel': Array.from({ length: 40_000 }, (_, i) => i + 1) }
    const [mark, big] = [path('assessing'), write('big.json', { ...study, vary })]
    // Says when a worker has been handed a variant.
    const watch = `import { writeFileSync } from 'node:fs'
      import { parentPort } from 'node:worker_threads'
      parentPort?.once('message', () => writeFileSync(${JSON.stringify(mark)}, ''))`
    const NODE_OPTIONS = `--import=${pathToFileURL(write('watch.mjs', watch))}`
    const ended = (words: readonly string[]) =>
      new Promise<{ readonly code: number | null; readonly out: string; readonly err: string }>((resolve) => {
        const child = spawn(process.execPath, [fileURLToPath(bin), ...words], { env: { ...process.env, NODE_OPTIONS } })
        let [out, err] = ['', '']
        child.stdout.on('data', (chunk) => {
          out += chunk
        })
        child.stderr.on('data', (chunk) => {
          err += chunk
        })
        const timer = setInterval(() => {
          if (!existsSync(mark)) return
          clearInterval(timer)
          child.kill('SIGINT')
        }, 50)
        child.on('close', (code) => resolve({ code, out, err }))
      })
    const [search, wait] = await Promise.all([
      ended(['explore', big, '--json', '--workers', '1']),
      ended(['assess', '-']),
    ])
    expect(search.code).toBe(130)
    const { results } = JSON.parse(search.out)
    expect(search.err).toContain(`not whole: ${results.length} of 40000 variants`)
    // Where it has not yet begun to listen, the signal itself ends it.
    expect([wait.code ?? 130, wait.out, wait.err]).toEqual([130, '', ''])
  })
})

describe('in a shell', () => {
  const command = `node ${fileURLToPath(bin)}`
  const sh = (line: string) => spawnSync('bash', ['-o', 'pipefail', '-c', line], { cwd: root, encoding: 'utf8' })

  it('a reader that has seen enough ends it quietly', () => {
    const big = write('many.json', {
      ...study,
      vary: { 'pack.parallel': Array.from({ length: 5000 }, (_, i) => i + 1) },
    })
    const { status, stdout, stderr } = sh(`${command} variants ${big} | head -1`)
    expect([status, stderr]).toEqual([0, ''])
    expect(JSON.parse(stdout).number).toBe(1)
  })
  it('a full disk is told', () => {
    const { status, stderr } = sh(`${command} formula > /dev/full`)
    expect([status, stderr]).toEqual([2, 'kerbwatt formula: standard output cannot be written: ENOSPC\n'])
  })
  it.skipIf(!isDeep)('nothing at all is refused, and a fault leaves no trace of a stack', () => {
    expect(sh(`${command} assess - < /dev/null`).stderr).toBe('kerbwatt assess: standard input: empty\n')
    expect(sh(`${command} assess < /dev/null`).stderr).toContain('expected a sheet')
    expect(sh(`${command} assess package.json`).stderr).not.toMatch(/\n\s+at /)
  })

  const parallel = '/usr/bin/parallel'
  const isHere =
    existsSync(parallel) && /^GNU parallel/.test(spawnSync(parallel, ['--version'], { encoding: 'utf8' }).stdout)
  // With CI set it must run; elsewhere a machine without it does without.
  it.skipIf(!isHere && !process.env.CI)('GNU parallel finds the same front, byte for byte', () => {
    const shared = isDeep ? 'examples/wagtail-study.json' : file()
    const jobs = `${command} variants ${shared} | parallel --will-cite --pipe -N 3 -j 2 "${command} assess --lines -" | ${command} front ${shared} -`
    const alone = sh(`${command} explore ${shared}`)
    const { status, stdout, stderr } = sh(jobs)
    expect([status, stderr]).toEqual([0, ''])
    expect(stdout).toBe(alone.stdout)
  })
})

describe.runIf(isDeep)('the study of the demo', () => {
  it('comes to the same in threads as in the library', async () => {
    const text = readFileSync(`${root}examples/wagtail-study.json`, 'utf8')
    const asked = { ...JSON.parse(text), sheet: demo } as Study
    const { out } = await kerbwatt(['explore', 'examples/wagtail-study.json', '--json'], { bin })
    expect(out).toBe(`${JSON.stringify(explore(asked), null, 2)}\n`)
    expect(variantsOf(asked).count).toBe(12)
  })
})
