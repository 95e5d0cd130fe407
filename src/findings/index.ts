/** What a procedure says beside its figures: checks, assumptions, cautions. */
export { type Caution, cautions } from './cautions.js'
export { type Check, check, type Findings, isAbove, isBelow, type Sense } from './check.js'
