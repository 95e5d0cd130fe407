/** Assesses the invented Wagtail 850 from its build sheet and prints what is found. */
import { readFileSync } from 'node:fs'
import { assess, readBuild } from 'kerbwatt/conversion'
import { toText } from 'kerbwatt/report'

const sheet = JSON.parse(readFileSync(new URL('wagtail-850.json', import.meta.url), 'utf8'))
console.log(toText(assess(readBuild(sheet))))
