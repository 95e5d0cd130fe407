/** The assessment of a sheet that may not be sound. */
import { CalculationError, InputError, SolveError } from '../../quantity/index.js'
import { type Assessment, assess } from '../assess.js'
import { readBuild } from '../sheet/build.js'

/** What a sheet as it is written comes to, or the text of the error that it makes. @internal */
export function attempt(sheet: unknown): Assessment | { readonly error: string } {
  try {
    return assess(readBuild(sheet))
  } catch (error) {
    const isKnown = error instanceof InputError || error instanceof CalculationError || error instanceof SolveError
    if (!isKnown) throw error
    return { error: error.message }
  }
}
