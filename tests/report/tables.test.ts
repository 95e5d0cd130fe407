/** CSV and Markdown, read back by other programs to the rows that the assessment has. */
import MarkdownIt from 'markdown-it'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { figuresIn } from '../../src/conversion/chapters/section.js'
import { assess, readBuild } from '../../src/conversion/index.js'
import { toCsv, toMarkdown } from '../../src/report/index.js'
import { demo, sheetOf } from '../conversion/sheets.js'
import { hostile } from './hostile.js'

const sheets = [
  ['the demo', assess(readBuild(demo()))],
  ['the first try', assess(readBuild(sheetOf('wagtail-first-try')))],
] as const

type Line = { readonly [head: string]: string }

function linesOf(csv: string): readonly Line[] {
  const { data, errors } = Papa.parse<Line>(csv, { header: true, skipEmptyLines: true })
  expect(errors).toEqual([])
  return data
}

describe.each(sheets)('the CSV of %s', (_, found) => {
  const lines = linesOf(toCsv(found))
  it('has a row for each figure and each check, section by section', () => {
    expect(Object.keys(lines[0] as Line)).toEqual([
      'section',
      'id',
      'name',
      'value',
      'unit',
      'verdict',
      'limit',
      'margin',
      'basis',
    ])
    const wanted = found.sections.flatMap((section) =>
      [...figuresIn(section), ...section.checks].map(({ id }) => [section.id, id]),
    )
    expect(lines.map(({ section, id }) => [section, id])).toEqual(wanted)
  })
  it('has every number as it was worked out', () => {
    const figures = lines.filter(({ verdict }) => verdict === '')
    expect(figures).toHaveLength(found.figures.length)
    for (const [i, { value, name }] of found.figures.entries()) {
      const line = figures[i] as Line
      expect([line.unit, line.name, Number(line.value)]).toEqual([value.unit, name, value.in(value.unit as never) + 0])
    }
    for (const [i, check] of found.checks.entries()) {
      const line = lines.filter(({ verdict }) => verdict !== '')[i] as Line
      expect([line.verdict, line.margin === '' ? undefined : Number(line.margin)]).toEqual([
        check.verdict,
        check.margin,
      ])
      if (check.actual === undefined || check.limit === undefined)
        expect(line.basis).toBe(`${check.basis}: ${check.text}`)
      else expect(Number(line.limit)).toBe(check.limit.in(check.actual.unit as never) + 0)
    }
  })
  it('has plain minus signs and no other', () => {
    for (const { value, limit, margin } of lines) expect(`${value}${limit}${margin}`).toMatch(/^[-\d.e+]*$/)
  })
})

/** The rows of every table in a page of Markdown. */
function tablesOf(markdown: string): readonly (readonly string[])[] {
  const tokens = new MarkdownIt({ html: true }).parse(markdown, {})
  expect(tokens.filter(({ type }) => type.startsWith('html'))).toEqual([])
  const rows: string[][] = []
  for (const [i, { type }] of tokens.entries()) {
    if (type === 'tr_open') rows.push([])
    if (type === 'td_open') {
      const children = tokens[i + 1]?.children ?? []
      expect(children.every((each) => ['text', 'text_special', 'softbreak'].includes(each.type))).toBe(true)
      rows.at(-1)?.push(children.map(({ content }) => content).join(''))
    }
  }
  return rows.filter((row) => row.length > 0)
}

describe.each(sheets)('the Markdown of %s', (_, found) => {
  const rows = tablesOf(toMarkdown(found))
  it('has every figure, every cell and every check', () => {
    const figures = rows.filter(([number = '']) => /^\d+\.\d+$/.test(number))
    expect(figures.map(([, name]) => name)).toEqual(
      found.sections.flatMap((each) => each.figures.map(({ name }) => name)),
    )
    const checks = rows.filter((row) => row.length === 7 && /^\d+$/.test(row[0] ?? ''))
    const words = { pass: 'ok', near: 'near', fail: 'fails', unknown: 'unknown' }
    expect(checks.map(([, name, , , , verdict, basis]) => [name, verdict, basis])).toEqual(
      found.checks.map(({ name, verdict, basis }) => [name, words[verdict], basis]),
    )
    const named = found.sections.flatMap(({ tables }) =>
      tables.flatMap((table) => table.rows.map(({ name, values }) => [name, values.length + 1])),
    )
    for (const [name, length] of named) expect(rows.some((row) => row[0] === name && row.length === length)).toBe(true)
  })
})

describe('hostile text', () => {
  it.each(Object.entries(hostile))('as %s stays text', (_, text) => {
    const sheet = {
      ...demo(),
      title: text,
      note: text,
      journeys: { bakeryRound: { ...demo().journeys?.bakeryRound, title: text } },
    }
    const found = assess(readBuild(sheet))
    const markdown = toMarkdown(found)
    const tokens = new MarkdownIt({ html: true, linkify: true }).parse(markdown, {})
    const all = tokens.flatMap((token) => [token, ...(token.children ?? [])])
    expect(all.filter(({ type }) => /html|link|image|code|fence/.test(type))).toEqual([])
    expect(all.filter(({ type }) => type === 'heading_open').length).toBeLessThan(20)
    const lines = linesOf(toCsv(found))
    for (const line of lines)
      for (const cell of [line.section, line.id, line.name, line.basis]) expect(cell).not.toMatch(/^[=+\-@\t\r]/)
  })
})
