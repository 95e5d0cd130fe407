/** Places in a sheet by their paths: `pack.series`, `journeys.bakeryRound.pace`, `cooling.segments[0].drop`. */
import type { AnyField } from '../../procedure/index.js'
import { formsOf, heldAt, type Part, partsAt, pathText, type Step } from '../../procedure/path.js'
import { type InputIssue, shown } from '../../quantity/errors.js'
import { nearestName } from '../../quantity/nearest.js'
import { sheetField } from '../sheet/build.js'
import { isRecord } from './json.js'

const written = /^[A-Za-z][A-Za-z0-9]*(?:\.[A-Za-z][A-Za-z0-9]*|\[(?:0|[1-9][0-9]{0,8})\])*$/

/** The names and indices of a path. @internal */
export function stepsOf(path: string): readonly Step[] {
  return (path.match(/[^.[\]]+/g) ?? []).map((step) => (/^\d/.test(step) ? Number(step) : step))
}

/** The paths of what holds the place of a path, the outermost first: of `a.b[0].c`, `a`, `a.b` and `a.b[0]`. @internal */
export function holdersOf(path: string): readonly string[] {
  return [...path.matchAll(/[.[]/g)].map(({ index }) => path.slice(0, index))
}

/** What is wrong with a path of a sheet, if anything. @internal */
export function pathIssue(path: string, sheet: unknown): Omit<InputIssue, 'path'> | undefined {
  const expected = 'the path of a field of the sheet, such as pack.series or cooling.segments[0].drop'
  if (path.length > LONGEST || !written.test(path)) return { expected, received: shown(path), ...nearestTo(path) }
  const steps = stepsOf(path)
  let parts: readonly Part[] = [sheetField]
  for (const [i, step] of steps.entries()) {
    const inner = parts.flatMap((part) => partsAt(part, step))
    if (inner.length === 0) {
      const known = parts.flatMap(formsOf).flatMap((form) => (form.sort === 'group' ? Object.keys(form.fields) : []))
      const near = typeof step === 'string' ? nearestName(step, known) : undefined
      const hint =
        near === undefined ? nearestTo(path) : { hint: `did you mean ${pathText([...steps.slice(0, i), near])}?` }
      return { expected, received: shown(path), ...hint }
    }
    parts = inner
  }
  return placeIssue(path, steps, sheet)
}

/** What a place needs to be put into: all that holds it. */
function placeIssue(path: string, steps: readonly Step[], sheet: unknown): Omit<InputIssue, 'path'> | undefined {
  const received = shown(path)
  let holder = sheet
  for (const [i, step] of steps.entries()) {
    if (Array.isArray(holder) && typeof step === 'number' && step >= holder.length) {
      return { expected: `an index below ${holder.length}: the sheet has so many`, received }
    }
    if (!(Array.isArray(holder) ? typeof step === 'number' : isRecord(holder) && typeof step === 'string')) {
      const at = pathText(steps.slice(0, i))
      return { expected: `${at} to be on the sheet, or to be given whole`, received }
    }
    holder = heldAt(holder, step)
  }
  return undefined
}

/** No path of a sheet and no id is longer: what is, is not looked for among them. @internal */
export const LONGEST = 100

/** The path of a field nearest to one that there is not: `gearbox.finalDrive` for `finalDrive`. */
function nearestTo(path: string): { readonly hint?: string } {
  const near = path.length > LONGEST ? undefined : nearestName(path, pathsIn(sheetField, ''))
  return near === undefined ? {} : { hint: `did you mean ${near}?` }
}

function pathsIn(field: AnyField, before: string): string[] {
  if (field.sort !== 'group') return []
  return Object.entries<AnyField>(field.fields).flatMap(([key, inner]) => {
    const path = before === '' ? key : `${before}.${key}`
    return [path, ...pathsIn(inner, path)]
  })
}
