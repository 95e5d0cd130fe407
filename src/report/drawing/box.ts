/** Boxes of text in a drawing, of a size that no common serif face goes beyond, and places where they are free. */

/** Size of the text of a drawing, in its own units. @internal */
export const TEXT = 11

/** A text at its place. @internal */
export interface Label {
  readonly text: string
  readonly x: number
  /** Of its base line. */
  readonly y: number
  readonly anchor: 'start' | 'middle' | 'end'
}

/** @internal */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Widths of letters in a wide serif face, as shares of the size: DejaVu Serif, rounded up. */
const widths: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[ijlI.,:;'’|!()[\]/ ]/, 0.42],
  [/[mwMW—@%→]/, 1.03],
  [/[A-ZΑ-Ω&]/, 0.88],
  [/[frst-]/, 0.56],
]

/** About how wide a text is, and hardly ever wider. @internal */
export function widthOf(text: string, size = TEXT): number {
  return (
    [...text].reduce((sum, letter) => sum + (widths.find(([letters]) => letters.test(letter))?.[1] ?? 0.68), 0) * size
  )
}

/** @internal */
export function boxOf({ text, x, y, anchor }: Label): Box {
  const width = widthOf(text)
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { left, top: y - TEXT * 0.95, right: left + width, bottom: y + TEXT * 0.3 }
}

/** Whether two boxes have something of each other. @internal */
export function isOverlapping(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom
}

/** Whether a box lies inside another. @internal */
export function isInside(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  )
}

/** Whether a line goes through a box, at any of its points or between two of them. @internal */
export function isCrossed(box: Box, line: readonly Point[]): boolean {
  return line.some((point, i) => {
    const before = line[i - 1] ?? point
    // Few points lie closer than a letter is wide: between them the line is looked at in steps of a quarter of one.
    const steps = Math.max(1, Math.ceil(Math.hypot(point[0] - before[0], point[1] - before[1]) / (TEXT / 4)))
    return Array.from({ length: steps + 1 }, (_, j) => j / steps).some((share) => {
      const [x, y] = [before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1])]
      return x > box.left && x < box.right && y > box.top && y < box.bottom
    })
  })
}

/** A place in a drawing. @internal */
export type Point = readonly [x: number, y: number]

/** A text that fits into a width, cut where it does not. @internal */
export function fitted(text: string, room: number): string {
  if (widthOf(text) <= room) return text
  const letters = [...text.slice(0, 100)]
  while (letters.length > 1 && widthOf(`${letters.join('')}…`) > room) letters.pop()
  return `${letters.join('')}…`
}
