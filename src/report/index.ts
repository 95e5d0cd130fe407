/** An assessment as something to read. */
export { toCsv } from './csv.js'
export type { Units } from './figure.js'
export { toHtml } from './html.js'
export { type MarkdownOptions, toMarkdown } from './markdown.js'
export type { HtmlOptions } from './page.js'
export { type TextOptions, toText } from './text.js'
