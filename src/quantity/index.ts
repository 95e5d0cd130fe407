/** Quantities: values with a kind and a unit, read, converted and written without loss. */
export { CalculationError, InputError, type InputIssue, SolveError } from './errors.js'
export { type DifferenceOf, type Kind, kinds, type UnitOf } from './kinds.js'
export type { Measured } from './measured.js'
export { type Given, type Quantity, quantity } from './quantity.js'
export { isQuantity } from './read.js'
