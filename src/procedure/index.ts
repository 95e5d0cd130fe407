/** Procedures as values: fields, reading, checks, assumptions, notes, cautions. */
export type { Caution } from './cautions.js'
export {
  type Check,
  check,
  isAbove,
  isBelow,
  isMet,
  renamed,
  type Saying,
  type Sense,
  says,
  type Told,
  trial,
  type Verdict,
} from './check.js'
export {
  type AnyField,
  byName,
  choice,
  defaulted,
  either,
  type Field,
  type Fields,
  flag,
  given,
  group,
  list,
  type Need,
  optional,
  own,
  pairs,
  type Read,
  required,
  spare,
  text,
  type Undecided,
  undecided,
  type Written,
  whole,
} from './field.js'
export { type Assumption, assumed, type Findings, merged, type Note } from './findings.js'
export { jsonSchemaOf } from './json-schema.js'
export {
  type AnyProcedure,
  defaultOf,
  type FieldAt,
  fieldsOf,
  isProcedure,
  type Procedure,
  procedure,
  type Unfinished,
} from './procedure.js'
export {
  allThatServe,
  firstThatServes,
  type Judged,
  judgedUnderHeading,
  noneServes,
  type Rejected,
  reasonsOf,
  rejectedAs,
  serves,
} from './trial.js'
export { unusualIn } from './unusual.js'
