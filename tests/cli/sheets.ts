/** Sheets that are assessed quickly, and a folder to write in. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll } from 'vitest'
import { root } from '../../scripts/root.js'

/** The sheet of the demo. */
export const demo = JSON.parse(readFileSync(join(root, 'examples/wagtail-850.json'), 'utf8'))

const { title, car, removed, added, module, pack } = demo
/** The car with its pack alone, which takes little to assess. */
export const light = { title, car, removed, added, module, pack }

/** A small study of it. */
export const study = {
  sheet: light,
  vary: { 'pack.series': [2, 3, 4], 'car.payload.mass': ['80 kg', '120 kg', 'heavy'] },
  objectives: { 'pack.energy': 'most', 'weight.after.mass': 'least' },
}

/** A folder of the tests of a file, and writing into it. */
export function folder() {
  let place = ''
  beforeAll(() => {
    place = mkdtempSync(join(tmpdir(), 'kerbwatt-'))
  })
  afterAll(() => rmSync(place, { recursive: true, force: true }))
  return {
    path: (name: string) => join(place, name),
    write: (name: string, content: string | Uint8Array | object) => {
      const path = join(place, name)
      const isText = typeof content === 'string' || content instanceof Uint8Array
      writeFileSync(path, isText ? content : JSON.stringify(content))
      return path
    },
  }
}
