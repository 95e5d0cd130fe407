/** Formulas as values, and what can be done with any of them. */
export { icePoint, standardGravity } from './constants.js'
export { explain, type Working } from './explain.js'
export {
  type AnyFormula,
  type Bounds,
  type Constant,
  type Constants,
  constant,
  type Description,
  type Formula,
  formula,
  type GivenTo,
  type Input,
  type Inputs,
  input,
  type Limits,
  type Output,
  output,
  type SiOf,
  type Validity,
} from './formula.js'
export { type Contribution, type Propagated, type PropagateOptions, propagate, type Uncertain } from './propagate.js'
export { type FormulaStep, type SectionStep, type Step, section } from './record.js'
export { type SolveGiven, solve } from './solve.js'
export { cite, commonPractice, definition, type Source, sourceText } from './source.js'
export { type Range, type SweepRow, sweep } from './sweep.js'
