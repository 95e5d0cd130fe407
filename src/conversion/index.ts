/** The build sheet and the assessment of a whole car. */
export { type Assessment, assess } from './assess.js'
export type { Binds, Figure, Heading, Row, Section, SheetCheck, Table, Unassessed } from './chapters/section.js'
export { type FigureId, type FigureKinds, figure } from './figures.js'
export { type Build, readBuild, writeBuild } from './sheet/build.js'
export type { BuildSheet } from './sheet/build-sheet.js'
export type { BuildVerdict, Summary, WorstCheck } from './summary.js'
