// Which pack and which final drive for the invented Wagtail 850? Every combination of the study, and the front of those that hold.
import { readFileSync } from 'node:fs'
import { explore, quantityOf } from 'kerbwatt/conversion'

const read = (file: string) => JSON.parse(readFileSync(new URL(file, import.meta.url), 'utf8'))
const study = read('wagtail-study.json')
const { results, front, setAside } = explore({ ...study, sheet: read(study.sheet) })

const names = { range: 'range', mass: 'mass', time: 'to 80 km/h', motorAt90: 'at 90 km/h' }
const line = (cells: readonly string[]) => console.log(cells.map((cell) => cell.padStart(10)).join('  '))
line(['variant', 'pack', 'final', ...Object.values(names), 'verdict'])
for (const { number, values, objectives, verdict = '' } of front) {
  const pack = `${values['pack.series']}s${values['pack.parallel']}p`
  const figures = Object.values(objectives).map((amount) => String(quantityOf(amount)))
  line([String(number), pack, String(values['gearbox.finalDrive']), ...figures, verdict])
}

console.log(`\nof ${results.length}; set aside:`)
for (const { number, notHeld } of setAside) console.log(`${number}: ${notHeld.map(({ text }) => text).join('; ')}`)
const [lightest] = front
for (const { number, givesUp, gains } of lightest?.against ?? []) {
  const told = (amounts: typeof gains) => Object.values(amounts).map((amount) => String(quantityOf(amount)))
  console.log(
    `${lightest?.number} against ${number}: gives up ${told(givesUp).join(', ')}; gains ${told(gains).join(', ')}`,
  )
}
