/** A study from its file. */
import { dirname, isAbsolute, join } from 'node:path'
import { readStudy, type Study } from '../conversion/index.js'
import { inFile } from './command.js'
import { readJson, STANDARD_INPUT } from './files.js'
import type { Shell } from './shell.js'

/** Reads a study. Where its sheet is the name of a file, that is found from where the study lies. */
export async function studyFrom(shell: Shell, path: string): Promise<Study> {
  const study = await readJson(shell, path)
  const { sheet } = Object(study) as { readonly sheet?: unknown }
  if (typeof sheet !== 'string') return inFile(path, () => readStudy(study))
  const folder = path === STANDARD_INPUT ? '' : dirname(path)
  const whole = { ...(study as object), sheet: await readJson(shell, isAbsolute(sheet) ? sheet : join(folder, sheet)) }
  return inFile(path, () => readStudy(whole))
}
