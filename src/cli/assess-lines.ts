/** `kerbwatt assess --lines`: variants from wherever they come, a line for each. */
import { readStudy, resultOf, type Study, type Variant } from '../conversion/index.js'
import { InputError } from '../quantity/index.js'
import { BAD_INPUT, HOLDS, withoutPlace } from './command.js'
import { type Line, linesOf } from './lines.js'
import { isClosed, Progress, print, type Shell } from './shell.js'
import type { VariantLine } from './variants.js'

/** Assesses each line and writes one for it; a line that is no variant gets one that tells its number and why. */
export async function assessLines(shell: Shell, path: string): Promise<number> {
  const progress = new Progress(shell)
  let code: number = HOLDS
  let count = 0
  for await (const line of linesOf(shell, path)) {
    const row = rowOf(line)
    if ('line' in row) code = BAD_INPUT
    await print(shell, `${JSON.stringify(row)}\n`)
    if (isClosed(shell)) break
    progress.done(++count)
  }
  progress.end()
  return code
}

function rowOf(line: Line): object {
  if ('error' in line) return { line: line.number, error: line.error }
  try {
    const variant = variantIn(line.value)
    return resultOf(studyOf(variant), variant)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { line: line.number, error: withoutPlace(error) }
  }
}

/** A line as a variant with what is asked of it. */
function variantIn(value: unknown): VariantLine {
  const { number, values, sheet, objectives } = Object(value) as Partial<VariantLine>
  const isOne =
    Number.isSafeInteger(number) &&
    [values, sheet, objectives].every((each) => typeof each === 'object' && each !== null)
  if (isOne) return value as VariantLine
  const expected = "a line of 'kerbwatt variants', { number, values, objectives, sheet }"
  throw new InputError('assess', [{ path: '', expected, received: 'another' }])
}

/** What is asked of a variant, as a study of that one alone. */
function studyOf({ sheet, values, objectives, hold }: VariantLine & Variant): Study {
  const vary = Object.fromEntries(Object.entries(values).map(([path, value]) => [path, [value]]))
  return readStudy({ sheet, vary, objectives, ...(hold === undefined ? {} : { hold }) })
}
