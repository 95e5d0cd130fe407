/** The report as a reader sees it: in a browser without a network, bright and dark, on a desk, on a phone and in print. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import axe from 'axe-core'
import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { assess, explore, readBuild, type Study } from '../../src/conversion/index.js'
import { toHtml } from '../../src/report/index.js'
import { demo, sheetOf } from '../conversion/sheets.js'
import { isDeep } from '../runs.js'
import { piecesOf } from './pieces.js'
import { pageWith } from './valid.js'

const browserPath = '/usr/bin/chromium'
const isHere = existsSync(browserPath)

const screens = [
  ['a desk', 1200, 900],
  ['a phone', 390, 844],
] as const
const schemes = ['light', 'dark'] as const

// With CI set it must run; elsewhere a machine without the browser does without it.
describe.runIf(isDeep && (isHere || process.env.CI))('the report in a browser', { timeout: 300_000 }, () => {
  const failing = assess(readBuild(sheetOf('wagtail-first-try')))
  const study: Study = {
    sheet: demo(),
    vary: { 'pack.series': [3, 4], 'gearbox.finalDrive': ['3.9', '4.375', '5.1'] },
    objectives: { 'journeys.bakeryRound.winter.range': 'most', 'weight.after.mass': 'least' },
    hold: ['pack.available', 'controller.maximumVoltage'],
  }
  const pages: { readonly [name: string]: string } = {
    'the demo': toHtml(assess(readBuild(demo()))),
    'the first try': toHtml(failing),
    'a front': pageWith('A front', toHtml(explore(study), { study })),
    'pieces': pageWith('Pieces', ...Object.values(piecesOf())),
  }
  let browser: Browser
  let folder = ''
  const fileOf = (name: string) => join(folder, `${name}.html`)

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'kerbwatt-report-'))
    for (const [name, html] of Object.entries(pages)) writeFileSync(fileOf(name), html)
    browser = await chromium.launch({ executablePath: browserPath, args: ['--no-sandbox'] })
  })
  afterAll(async () => {
    await browser.close()
    rmSync(folder, { recursive: true, force: true })
  })

  /** A page opened from its file; what it asks for and what goes wrong in it. */
  async function opened(name: string, options: object, look: (page: Page) => Promise<void>): Promise<string[]> {
    const context = await browser.newContext({ offline: true, ...options })
    const page = await context.newPage()
    const faults: string[] = []
    page.on('pageerror', (error) => faults.push(String(error)))
    page.on('console', (message) => faults.push(message.text()))
    page.on('request', (request) => {
      if (request.url() !== pathToFileURL(fileOf(name)).href) faults.push(request.url())
    })
    try {
      await page.goto(pathToFileURL(fileOf(name)).href)
      await look(page)
    } finally {
      await context.close()
    }
    return faults
  }

  const cases = Object.keys(pages).flatMap((name) =>
    screens.flatMap(([screen, width, height]) =>
      schemes.map((scheme) => [name, screen, scheme, width, height] as const),
    ),
  )

  it.each(cases)(
    '%s on %s, %s: asks for nothing, fits, and axe finds nothing',
    async (name, _, colorScheme, width, height) => {
      const look = { viewport: { width, height }, colorScheme, bypassCSP: true }
      const faults = await opened(name, look, async (page) => {
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width)
        await page.evaluate(axe.source)
        const found = (await page.evaluate('axe.run(document)')) as {
          violations: { id: string; nodes: { html: string }[] }[]
        }
        expect(found.violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
        expect(await page.evaluate(overlaps)).toEqual([])
        expect(await page.evaluate(pale)).toEqual([])
      })
      expect(faults).toEqual([])
    },
  )

  it.each(Object.keys(pages))('%s without scripts unfolds what a number leads to', async (name) => {
    const faults = await opened(name, { javaScriptEnabled: false }, async (page) => {
      const link = page.locator('td a').first()
      if ((await link.count()) === 0) return
      await link.click()
      const target = (await link.getAttribute('href')) as string
      expect(await page.locator(`[id="${target.slice(1)}"]`).isVisible()).toBe(true)
    })
    expect(faults).toEqual([])
  })

  it('prints on A4 with a foot, the cautions on page one, and the workings of what fails', async () => {
    const file = join(folder, 'printed.pdf')
    await opened('the first try', {}, async (page) => {
      await page.pdf({ path: file, preferCSSPageSize: true })
    })
    expect(execFileSync('pdfinfo', [file], { encoding: 'utf8' })).toMatch(
      /Page size: +59\d\.?\d* x 84\d\.?\d* pts \(A4\)/,
    )
    const textOf = (...parameters: string[]) =>
      execFileSync('pdftotext', [...parameters, file, '-'], { encoding: 'utf8' }).replace(/[\s\u00a0]+/g, ' ')
    const text = textOf()
    const squeezed = text.replace(/ /g, '')
    expect(text).toMatch(/page 1 of \d+/)
    expect(textOf('-l', '1')).toContain('What can hurt here')
    expect(textOf('-l', '1')).toContain('wear rated gloves')
    const bad = failing.checks.filter(({ verdict }) => verdict !== 'pass')
    expect(bad.length).toBeGreaterThan(5)
    for (const { name, basis, text: told, actual } of bad) {
      expect(squeezed).toContain(name.replace(/\s/g, ''))
      expect(squeezed).toContain(`Limit:${basis}`.replace(/\s/g, ''))
      if (actual === undefined) expect(squeezed).toContain(told.replace(/\s/g, ''))
    }
    // What is behind a check that passes stays folded.
    const folded = failing.checks.find(
      ({ verdict, basis }) => verdict === 'pass' && !bad.some((each) => each.basis === basis),
    )
    expect(folded).toBeDefined()
    expect(squeezed).not.toContain(`Limit:${folded?.basis}`.replace(/\s/g, ''))
  })
})

/** Labels of drawings that overlap, or that leave their drawing. */
const overlaps = `[...document.querySelectorAll('svg')].flatMap((svg) => {
  const edge = svg.getBoundingClientRect()
  const boxes = [...svg.querySelectorAll('text')].map((text) => ({ text: text.textContent, box: text.getBoundingClientRect() }))
  if (edge.width === 0) return []
  return boxes.flatMap(({ text, box }, i) => [
    ...(box.left < edge.left - 0.5 || box.right > edge.right + 0.5 || box.top < edge.top - 0.5 || box.bottom > edge.bottom + 0.5 ? [text + ' leaves its drawing'] : []),
    ...boxes.slice(i + 1).flatMap((other) =>
      box.left < other.box.right - 0.5 && other.box.left < box.right - 0.5 && box.top < other.box.bottom - 2 && other.box.top < box.bottom - 2 ? [text + ' over ' + other.text] : []),
  ])
})`

/** Texts of drawings that stand out from the paper by less than 4.5 to 1 (WCAG 2.2, 1.4.3). */
const pale = `(() => {
  const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true })
  const light = (colour) => {
    canvas.fillStyle = colour
    canvas.fillRect(0, 0, 1, 1)
    const [r, g, b] = [...canvas.getImageData(0, 0, 1, 1).data].map((each) => each / 255).map((each) => (each <= 0.04045 ? each / 12.92 : ((each + 0.055) / 1.055) ** 2.4))
    return 0.2126 * r + 0.7152 * g + 0.0722 * b
  }
  const paper = light(getComputedStyle(document.querySelector('.kerbwatt')).backgroundColor)
  return [...document.querySelectorAll('svg text')].filter((text) => {
    const ink = light(getComputedStyle(text).fill)
    return (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05) < 4.5
  }).map((text) => text.textContent)
})()`
