/** Elements of a drawing. */
import { attribute, cleaned, escaped } from '../markup.js'
import type { Label } from './box.js'

/** A number as it stands in a drawing, to a tenth of its units. @internal */
export function at(value: number): string {
  return String(Math.round(value * 10) / 10 + 0)
}

/** A text of a drawing. @internal */
export function textOf({ text, x, y, anchor }: Label, kind = ''): string {
  const own = [kind === '' ? '' : ` class="${kind}"`, anchor === 'start' ? '' : ` text-anchor="${anchor}"`].join('')
  return `<text x="${at(x)}" y="${at(y)}"${own}>${escaped(cleaned(text, 80))}</text>`
}

/** A straight line. @internal */
export function lineOf(x1: number, y1: number, x2: number, y2: number, kind: string): string {
  return `<path class="${kind}" d="M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}"/>`
}

/** A drawing: its name for those who cannot see it, and what is in it. @internal */
export function svgOf(width: number, height: number, name: string, ...inner: readonly string[]): string {
  // What holds links is no single picture.
  const role = inner.some((each) => each.startsWith('<a ')) ? 'group' : 'img'
  const own = `viewBox="0 0 ${at(width)} ${at(height)}" style="max-width:${at(width * 1.32)}px"`
  return `<svg role="${role}" aria-label="${attribute(cleaned(name, 400))}" ${own}>${inner.join('')}</svg>`
}
