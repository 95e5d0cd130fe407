/** The build sheet and the assessment of a whole car. */
export { type Assessment, assess } from './assess.js'
export type { Figure, Section, Table, Unassessed } from './chapters/section.js'
export { type Build, type BuildSheet, readBuild } from './sheet/build.js'
