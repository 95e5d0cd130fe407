/** What is printed in comments, pages and examples is what the data and the code say today. */
import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  checksPage,
  domainFiles,
  pages,
  procedurePage,
  sheetFiles,
  withComments,
  withOutputs,
} from '../scripts/document.js'
import { root } from '../scripts/root.js'
import { toText } from '../src/report/index.js'

const name = (path: string) => path.slice(root.length)
const stale = 'run `npm run docs` to bring it up to date'

describe('documentation that is made from data', () => {
  it.each(domainFiles().map((path) => [name(path), path]))('the comments in %s', (_, path) => {
    const source = readFileSync(path, 'utf8')
    expect(source, stale).toBe(withComments(source))
  })
  it('the page of published checks', () => {
    expect(readFileSync(`${root}docs/checks.md`, 'utf8'), stale).toBe(checksPage())
  })
  it('the page of procedures', () => {
    expect(readFileSync(`${root}docs/procedures.md`, 'utf8'), stale).toBe(procedurePage())
  })
  it.each(sheetFiles().map(({ path, made }) => [name(path), path, made] as const))('%s', (_, path, made) => {
    expect(readFileSync(path, 'utf8'), stale).toBe(made())
  })
  describe('the outputs shown', () => {
    const texts = pages().map((path) => readFileSync(path, 'utf8'))
    let wanted: readonly string[] = []
    beforeAll(() => {
      wanted = withOutputs(texts)
    }, 60_000)
    it.each(pages().map((path, i) => [name(path), i] as const))('in %s', (_, i) => {
      expect(texts[i], stale).toBe(wanted[i])
    })
  })
  it('every example in the pages shows its output', () => {
    for (const path of pages()) {
      const page = readFileSync(path, 'utf8')
      const examples = page.match(/```ts\n/g)?.length ?? 0
      const shown = page.match(/```ts\n[\s\S]*?```\n\n```text\n/g)?.length ?? 0
      const typed = page.match(/```sh\n(?=(?:[^`]*\n)?kerbwatt )/g)?.length ?? 0
      const answered = page.match(/```sh\n(?:[^`]*\n)?kerbwatt [^`]*```\n\n```text\n/g)?.length ?? 0
      expect([name(path), answered]).toEqual([name(path), typed])
      if (!path.endsWith('DEVELOPERS.md')) expect([name(path), shown]).toEqual([name(path), examples])
    }
  })
})

describe('the comment over a formula', () => {
  it('keeps what its author wrote, and states the rest from the data', () => {
    const source = [
      '/**',
      ' * What the author wrote,',
      ' * over two lines.',
      ' *',
      ' * Old facts that no longer hold.',
      ' */',
      'export const cableLoss = /*@__PURE__*/ formula({',
    ].join('\n')
    const written = withComments(source)
    expect(written).toContain(' * What the author wrote, over two lines.\n *\n * `P = 2 * I^2 * r * l`')
    expect(written).toContain(' * - `current` (`I`, A): steady or root-mean-square current, at least 0 A')
    expect(written).not.toContain('Old facts')
    expect(withComments(written)).toBe(written)
  })
})

describe('the comment over a procedure', () => {
  it('keeps what its author wrote, and states fields, defaults and source from the description', () => {
    const source = [
      '/**',
      ' * What the author wrote,',
      ' * in his own lines.',
      ' *',
      ' * Answers: an old question?',
      ' *',
      ' * - `length`: what no longer holds',
      ' *',
      ' * @returns The section.',
      ' * Source: an old book.',
      ' *',
      ' * @example',
      ' * ```ts',
      ' * sizeCable({})',
      ' * ```',
      ' */',
      'export const sizeCable = /*@__PURE__*/ procedure({',
    ].join('\n')
    const written = withComments(source)
    expect(written).toContain(' * What the author wrote,\n * in his own lines.\n *\n * Answers: which is the smallest')
    expect(written).toContain(' * - `length`: one-way length of the run, in m, at least 0 m\n')
    expect(written).toMatch(/`faultLimit`: [^`]+ 160 °C by default \(PVC/)
    expect(written).toContain(' * @returns The section.\n * Source: IEC 60287-2-1; IEC 60364-5-52')
    expect(written).not.toMatch(/old|no longer/)
    expect(withComments(written)).toBe(written)
  })
})

describe('the demo', () => {
  it('is the report of the example car', async () => {
    const { assess, readBuild } = await import('../src/conversion/index.js')
    const sheet = JSON.parse(readFileSync(`${root}examples/wagtail-850.json`, 'utf8'))
    const report = toText(assess(readBuild(sheet)))
    const lines = report.split('\n')
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(110)
    expect(lines[0]).toBe('Wagtail 850, electric')
    expect(report).toContain('at 70 km/h')
  })
})
