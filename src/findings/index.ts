/** What a procedure says beside its figures: checks, assumptions, cautions. */

export { isAbove, isBelow } from '../procedure/index.js'
export { type Caution, cautions } from './cautions.js'
export { type Check, check, type Findings, type Sense } from './check.js'
