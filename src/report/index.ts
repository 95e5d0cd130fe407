/** An assessment as something to read. */
export type { Units } from './figure.js'
export { type TextOptions, toText } from './text.js'
