/** Marks over two axes: what stands on a front filled and numbered, what does not hold as a cross. */
import { type Box, boxOf, isInside, isOverlapping, type Label, type Point, TEXT } from './box.js'
import { frameOf } from './plot.js'
import { at, lineOf, svgOf, textOf } from './svg.js'

/** A mark. @internal */
export interface Mark {
  readonly x: number
  readonly y: number
  /** On the front, beside it, set aside, or the sheet itself. */
  readonly sort: 'front' | 'rest' | 'aside' | 'own'
  readonly text?: string
  /** Where its number leads. */
  readonly link?: string
}

/** A drawing of marks. @internal */
export interface Scatter {
  readonly name: string
  readonly x: string
  readonly y: string
  readonly marks: readonly Mark[]
  /** Whether a line joins the front, in steps. */
  readonly isJoined: boolean
  /** Which way each axis is better. */
  readonly better: readonly ['most' | 'least', 'most' | 'least']
}

/** What is drawn first lies below what comes after. */
const order = ['rest', 'aside', 'front', 'own'] as const

/** @internal */
export function scatter({ name, x, y, marks, isJoined, better }: Scatter): string {
  const points = marks.map((each): Point => [each.x, each.y])
  const { width, height, frame, toX, toY, axes } = frameOf({ name: x, margin: 0.06 }, { name: y, margin: 0.06 }, points)
  const placed = order
    .flatMap((sort) => marks.filter((each) => each.sort === sort))
    .map((each) => ({ ...each, at: [toX(each.x), toY(each.y)] as Point }))
  const front = placed.filter(({ sort }) => sort === 'front').map((each) => each.at)
  return svgOf(
    width,
    height,
    name,
    axes,
    isJoined && front.length > 1 ? stepsOf(front, better) : '',
    ...placed.map(markOf),
    ...labelsOf(placed, frame).map(({ label, link }) =>
      link === undefined ? textOf(label, 'name') : `<a href="${link}">${textOf(label, 'name')}</a>`,
    ),
  )
}

function markOf({ at: [x, y], sort }: { readonly at: Point; readonly sort: Mark['sort'] }): string {
  if (sort === 'front') return `<circle class="full" cx="${at(x)}" cy="${at(y)}" r="4"/>`
  if (sort === 'rest') return `<circle class="hollow" cx="${at(x)}" cy="${at(y)}" r="3"/>`
  if (sort === 'own') return `<rect class="hollow" x="${at(x - 4.5)}" y="${at(y - 4.5)}" width="9" height="9"/>`
  return lineOf(x - 3, y - 3, x + 3, y + 3, 'cross') + lineOf(x - 3, y + 3, x + 3, y - 3, 'cross')
}

/** The border of what the front is better than: to a better value of one objective only at the next mark. */
function stepsOf(front: readonly Point[], [across]: Scatter['better']): string {
  const ordered = front.toSorted(([one], [other]) => one - other)
  const path = ordered.map(([x, y], i) => {
    if (i === 0) return `M${at(x)} ${at(y)}`
    // Where more is better, the value before holds up to the mark before; where less is, from it on.
    return across === 'most' ? `V${at(y)}H${at(x)}` : `H${at(x)}V${at(y)}`
  })
  return `<path class="line d2" d="${path.join('')}"/>`
}

/** The numbers beside their marks, where they are free of each other and of all marks with a number. */
function labelsOf(placed: readonly (Mark & { readonly at: Point })[], frame: Box) {
  const numbered = placed.filter(({ text }) => text !== undefined)
  const boxes: Box[] = numbered.map(({ at: [x, y] }) => ({ left: x - 4, top: y - 4, right: x + 4, bottom: y + 4 }))
  return numbered.flatMap(({ at: [x, y], text = '', link }) => {
    const places: Label[] = [
      { text, x: x + 7, y: y + TEXT / 3, anchor: 'start' },
      { text, x: x - 7, y: y + TEXT / 3, anchor: 'end' },
      { text, x, y: y - 8, anchor: 'middle' },
      { text, x, y: y + TEXT + 6, anchor: 'middle' },
    ]
    const label = places.find((each) => {
      const box = boxOf(each)
      return isInside(box, frame) && !boxes.some((other) => isOverlapping(box, other))
    })
    if (label === undefined) return []
    boxes.push(boxOf(label))
    return [{ label, link }]
  })
}
