/** What it costs to import the built package in a new process. */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { durationText, medianOf, type Row } from './row.js'

const project = fileURLToPath(new URL('..', import.meta.url))
const RUNS = 15

/** How long a process takes that does so much, in nanoseconds. */
function processTime(program: string): number {
  const start = process.hrtime.bigint()
  const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', program], { cwd: project })
  if (status !== 0) throw new Error(String(stderr))
  return Number(process.hrtime.bigint() - start)
}

/** Measures cold imports, in turns, so that what else the machine does meets all of them. */
export function importRows(): readonly Row[] {
  const programs = ['', `import 'kerbwatt'`, `import 'mathjs'`]
  const turns = Array.from({ length: RUNS }, () => programs.map(processTime))
  const [empty = Number.NaN, own = Number.NaN, other = Number.NaN] = programs.map((_, i) =>
    medianOf(turns.map((times) => times[i] ?? Number.NaN)),
  )
  const share = (own - empty) / (other - empty)
  return [
    {
      what: `import 'kerbwatt' against import 'mathjs', over an empty process of ${durationText(empty)}`,
      measured: `${durationText(own - empty)} / ${durationText(other - empty)}`,
      figure: share.toFixed(3),
      bar: 'at most 0.1',
      met: share <= 0.1,
    },
  ]
}
