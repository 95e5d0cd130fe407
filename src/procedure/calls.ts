/** The procedures that were called, while somebody asks where a figure comes from. */
import { recording } from '../formula/record.js'
import type { AnyProcedure } from './procedure.js'

/** A procedure that was called, with what it was given and what came of it. @internal */
export interface Call {
  readonly procedure: AnyProcedure
  readonly given: unknown
  readonly result: unknown
}

let written: Call[] | undefined

/** Runs work of which every call of a procedure is written down, those first that are done first. @internal */
export function callsOf<T>(work: () => T): { readonly result: T; readonly calls: readonly Call[] } {
  const outer = written
  const calls: Call[] = []
  written = calls
  try {
    return { result: work(), calls }
  } finally {
    written = outer
  }
}

/** Writes a call down where somebody asks; the trials of a search are none, as in a working. @internal */
export function called(call: Call): void {
  if (written !== undefined && recording.steps !== undefined) written.push(call)
}
