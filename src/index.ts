/** Calculations for putting an electric drive into an existing road car. */
export { catalogue, procedures } from './catalogue.js'
export * from './drivetrain/index.js'
export * from './electrical/index.js'
export * from './formula/index.js'
export * from './mass/index.js'
export {
  type AnyField,
  type AnyProcedure,
  type Assumption,
  type Caution,
  type Check,
  type Field,
  type FieldAt,
  type Fields,
  type Findings,
  fieldsOf,
  isProcedure,
  type JsonSchema,
  jsonSchemaOf,
  type Note,
  type Procedure,
  type Sense,
  type Verdict,
} from './procedure/index.js'
export * from './quantity/index.js'
export * from './range/index.js'
export * from './thermal/index.js'
