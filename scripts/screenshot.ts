/** Makes the small picture of the report that the README shows. Run it by hand where the look has changed: `npx tsx scripts/screenshot.ts`. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { chromium } from 'playwright-core'
import { assess, readBuild } from '../src/conversion/index.js'
import { toHtml } from '../src/report/index.js'
import { root } from './root.js'

const sheet = JSON.parse(readFileSync(join(root, 'examples/wagtail-850.json'), 'utf8'))
const folder = mkdtempSync(join(tmpdir(), 'kerbwatt-'))
const file = join(folder, 'report.html')
writeFileSync(file, toHtml(assess(readBuild(sheet))))
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] })
try {
  const page = await browser.newPage({ viewport: { width: 720, height: 860 }, colorScheme: 'light' })
  await page.goto(pathToFileURL(file).href)
  await page.screenshot({ path: join(root, 'docs/report.png') })
} finally {
  await browser.close()
  rmSync(folder, { recursive: true })
}
