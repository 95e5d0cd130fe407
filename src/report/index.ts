/** An assessment as something to read. */
export { toText } from './text.js'
