/** Text that is safe to show: nothing in it is run, hides, turns the text around it about or goes on for ever. */

/** A text on a sheet is longer than this by mistake alone. */
const LONGEST = 2000

/** What is no text: control characters, marks that turn the direction of what follows, halves of a character. */
const unseen = /[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069\ufff9-\ufffb\ufeff]/gu
/** Letters that are written from right to left. */
const rightToLeft = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\u200f]/u

/** A text in one line without what cannot be seen, cut where it is too long, which is then said. @internal */
export function cleaned(text: string, longest = LONGEST): string {
  const cut = text.length > longest ? `${text.slice(0, longest)}… (cut here, of ${text.length} characters)` : text
  return cut.replace(/\s+/g, ' ').trim().replace(unseen, '\ufffd')
}

/** Whether a text has letters that run from right to left. @internal */
export function isRightToLeft(text: string): boolean {
  return rightToLeft.test(text)
}

/** Lines as they are, without what cannot be seen. @internal */
export function linesSeen(text: string): string {
  return text.replace(unseen, (found) => (found === '\n' ? found : '\ufffd'))
}

const entities: { readonly [character: string]: string } = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** A text as it stands between the tags of HTML. @internal */
export function escaped(text: string): string {
  return text.replace(/[&<>]/g, (character) => entities[character] as string)
}

/** A text as it stands in an attribute of HTML, between double quotes. @internal */
export function attribute(text: string): string {
  return text.replace(/[&<>"]/g, (character) => entities[character] as string)
}

/** A text as it is shown in HTML: what runs from right to left stays in its place. @internal */
export function html(text: string): string {
  // A number keeps its unit beside it.
  const seen = cleaned(text).replace(/(?<=\d) (?=\S{1,6}(?:[\s;,.):]|$))/g, '\u00a0')
  return isRightToLeft(seen) ? `<bdi>${escaped(seen)}</bdi>` : escaped(seen)
}

/** A figure in HTML: the number and its unit stay on one line. @internal */
export function figureHtml(text: string): string {
  return html(text).replaceAll(' ', '\u00a0')
}

/** A text as it stands in a string of CSS. @internal */
export function cssString(text: string): string {
  return `"${cleaned(text).replace(/[^\p{L}\p{N} .,;:()]/gu, (character) => `\\${character.codePointAt(0)?.toString(16)} `)}"`
}
