/** Assesses the invented Wagtail 850 from its build sheet: prints the verdict, and writes the report. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { assess, readBuild } from 'kerbwatt/conversion'
import { toHtml, toText } from 'kerbwatt/report'

const place = (path: string) => new URL(path, import.meta.url)
const found = assess(readBuild(JSON.parse(readFileSync(place('wagtail-850.json'), 'utf8'))))
const [, verdict] = toText(found).split('\n\n')
console.log(`${found.title}\n\n${verdict}\n`)

mkdirSync(place('out'), { recursive: true })
writeFileSync(place('out/report.html'), toHtml(found))
console.log('The whole report, with workings, checks and cautions, is in examples/out/report.html')
