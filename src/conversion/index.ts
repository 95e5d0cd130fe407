/** The build sheet, the assessment of a whole car, and its variants. */
export { type Assessment, type AssessOptions, assess } from './assess.js'
export type { Band, Measurement } from './bands.js'
export type { Binds, Figure, Heading, Row, Section, SheetCheck, Table, Unassessed } from './chapters/section.js'
export { type FigureId, type FigureKinds, figure } from './figures.js'
export type { FromArithmetic, FromFormula, FromProcedure, FromSheet, Inputs, Origin } from './origins.js'
export { type Build, readBuild, writeBuild } from './sheet/build.js'
export type { BuildSheet } from './sheet/build-sheet.js'
export type { BuildVerdict, Summary, WorstCheck } from './summary.js'
export {
  type Compared,
  type ComparedCheck,
  type ComparedFigure,
  type Comparison,
  compare,
  type NamedSheet,
} from './variants/compare.js'
export { type Exploration, explorationOf, explore } from './variants/explore.js'
export { type Against, frontOf, type Member } from './variants/front.js'
export { type Amount, type NotHeld, quantityOf, resultOf, type VariantResult } from './variants/result.js'
export { readStudy, type Study, type Variant, type Variants, variantsOf } from './variants/study.js'
export { vary } from './variants/vary.js'
