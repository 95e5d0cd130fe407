/** An assessment as something to read. */
export { toCsv } from './csv.js'
export type { Units } from './figure.js'
export type { Row } from './fragment.js'
export { forNotebook, type HtmlOptions, type Showable, toHtml } from './html.js'
export { type MarkdownOptions, toMarkdown } from './markdown.js'
export { type TextOptions, toText } from './text.js'
