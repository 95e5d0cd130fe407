/** The parts of an assessment: figures and tables under a heading, with what is checked, assumed and cautioned. */
import { type Check, check, type Findings, renamed, type Sense } from '../../procedure/index.js'
import { CalculationError, InputError, type Kind, type Quantity } from '../../quantity/index.js'
import type { Origin } from '../origins.js'

/** A figure with its name. */
export interface Figure {
  /** Its stable name in a program, such as `pack.energy`. */
  readonly id: string
  readonly name: string
  readonly value: Quantity
  /** Where it comes from, as far as that is known. It is worked out when it is first asked for, and is no part of JSON. */
  readonly from?: Origin | undefined
}

/** A column or a row of a table, by its stable name in a program and in words. */
export interface Heading {
  readonly id: string
  readonly name: string
}

/** A row of a table: a value for each column. */
export interface Row extends Heading {
  readonly values: readonly (Quantity | string)[]
}

/** A table of figures. */
export interface Table {
  readonly id: string
  readonly title: string
  readonly columns: readonly Heading[]
  readonly rows: readonly Row[]
  /** Whether it is the rows or the columns that each hold one kind of figure, by which its figures are called. */
  readonly measures: 'rows' | 'columns'
  /** What is to be said of the whole, under it. */
  readonly notes?: readonly string[]
}

/** A check of an assessment. */
export interface SheetCheck extends Check {
  /** What is checked, wherever: alike for every run, gear, journey and season, such as `motor.load`. */
  readonly of?: string
  /** Where its figure comes from, as {@link Figure.from}. */
  readonly from?: Origin | undefined
  /** Where its limit comes from. */
  readonly limitFrom?: Origin | undefined
}

/** A section of an assessment. */
export interface Section extends Findings {
  readonly checks: readonly SheetCheck[]
  readonly id: string
  readonly title: string
  readonly figures: readonly Figure[]
  readonly tables: readonly Table[]
}

/** A section that could not be assessed. */
export interface Unassessed {
  readonly id: string
  readonly title: string
  /** Whether the sheet holds something that asks for it: without a house nobody wants to know how long it is fed. */
  readonly isAsked: boolean
  /** The fields to add to the sheet, by their paths. */
  readonly missing: readonly string[]
  /** What to add to the sheet, or what its figures do not allow. */
  readonly why: string
}

/** What holds the car first, in words, as it pulls away, on the hill and at its highest speed. */
export interface Binds {
  readonly start?: string
  readonly hill?: string
  readonly topSpeed?: string
}

/** What a chapter gives: the findings of its section, or the fields that it misses. @internal */
export type Chapter = (Omit<Section, 'id' | 'title'> & { readonly title?: string; readonly binds?: Binds }) | Missing

/** Fields that a section misses. @internal */
export interface Missing {
  readonly missing: readonly string[]
}

/** Every figure of a section, those in its tables too: a cell is called by its table, its row and its column. @internal */
export function figuresIn({ figures, tables }: Pick<Section, 'figures' | 'tables'>): Figure[] {
  return [...figures, ...tables.flatMap(cellsOf)]
}

function cellsOf({ id, columns, rows, measures }: Table): Figure[] {
  return rows.flatMap((row) =>
    row.values.flatMap((value, i) => {
      if (typeof value === 'string') return []
      const column = columns[i] as Heading
      const [of, measure] = measures === 'rows' ? [column, row] : [row, column]
      const name = of.name === '' ? measure.name : `${of.name}: ${measure.name}`
      return [{ id: [id, of.id, measure.id].filter((part) => part !== '').join('.'), name, value }]
    }),
  )
}

/**
 * Checks of a part in a section: each has the part before its id, so that no two are alike, and is told as the part's.
 *
 * @param part - What it is in a program, such as `weight.laden`.
 * @param checks - The checks.
 * @param told - What each is called here.
 *
 * @internal
 */
export function partOf(part: string, checks: readonly Check[], told = (name: string) => name): SheetCheck[] {
  return checks.map((each) =>
    Object.assign(renamed(each, `${part}.${each.id}`, told(each.name)), { of: withoutInstance(each.id) }),
  )
}

/** Checks of one thing together, such as the load of the motor on every journey. @internal */
export function familiesOf(checks: readonly SheetCheck[]): (readonly [SheetCheck, ...SheetCheck[]])[] {
  const families = new Map<string, [SheetCheck, ...SheetCheck[]]>()
  for (const each of checks) {
    const family = families.get(each.of ?? each.id)
    if (family === undefined) families.set(each.of ?? each.id, [each])
    else family.push(each)
  }
  return [...families.values()]
}

/** The id of a check without the gear, the bay, the wire or the part of the loop that it is about. */
function withoutInstance(id: string): string {
  return id
    .replace(/^(gearbox\.torque|motor\.speed|placing)\..*$/, '$1')
    .replace(/^(segment|bay|ride|feed)\.[^.]+\.(?=[^.]+$)/, '$1.')
}

/**
 * Holds a figure to a limit that the sheet sets, under the limit's own path.
 *
 * @param path - Where the limit stands, such as `targets.energy`.
 * @param others - What else of the sheet it comes from.
 *
 * @internal
 */
export function heldToSheet<K extends Kind>(
  path: string,
  name: string,
  figure: Quantity<K>,
  sense: Sense,
  limit: Quantity<NoInfer<K>>,
  ...others: readonly string[]
): SheetCheck {
  return check(path, name, figure, sense, limit, `the sheet: ${path}`, path, ...others)
}

/** Where in the sheet the fields of a procedure stand: `'air.temperature': 'seasons.summer.outside'`; nowhere where it is undefined. @internal */
export type Places = { readonly [path: string]: string | undefined }

/** The parts of the vehicle, which a procedure knows by the names that the sheet has for them. @internal */
export const vehiclePlaces: Places = {
  'car': 'car',
  'car.mass': 'car.scales',
  'car.centreOfGravity': 'car.scales',
  'gearbox': 'gearbox',
  'motor': 'motor',
  'controller': 'controller',
  'auxiliaries': 'auxiliaries',
  'pack': 'pack',
  'pack.module': 'module',
}

/** The function by whose name an error of the sheet is known. @internal */
export const where = 'assess'

/** Whether an error tells of the figures of the sheet: the others are faults of this library. @internal */
export function isOfSheet(error: unknown): error is Error {
  return error instanceof CalculationError || (error instanceof InputError && error.where === where)
}

/**
 * Calls a procedure with figures of the sheet. What it refuses and what it finds is told by the place in the sheet; what
 * stands nowhere in the sheet is no fault of the sheet, and is thrown on.
 * @internal
 */
export function fromSheet<T>(places: Places, work: () => T): T {
  try {
    return foundIn(places, work())
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const issues = error.issues.flatMap((issue) => {
      const path = placeOf(issue.path, places)
      return path === undefined ? [] : [{ ...issue, path }]
    })
    throw issues.length === error.issues.length ? new InputError(where, issues) : error
  }
}

/** A result whose findings name the places in the sheet. @internal */
export function foundIn<T>(places: Places, result: T): T {
  const { checks, assumptions, notes } = Object(result) as Partial<Findings>
  const placesOf = (paths: readonly string[]) => [...new Set(paths.flatMap((path) => onePlaceOf(path, places) ?? []))]
  if (checks !== undefined) {
    Object.assign(result as object, {
      checks: checks.map((each) => renamed(each, each.id, each.name, placesOf(each.paths), inWordsOfSheet)),
    })
  }
  if (assumptions !== undefined) {
    Object.assign(result as object, {
      assumptions: assumptions.map((each) => ({ ...each, text: inWordsOfSheet(each.text) })),
    })
  }
  if (notes !== undefined) {
    Object.assign(result as object, {
      notes: notes.map((note) => ({ ...note, path: onePlaceOf(note.path, places) ?? note.path })),
    })
  }
  return result
}

/** A text that says what to give: the module stands on the sheet by itself. */
function inWordsOfSheet(text: string): string {
  return text.replaceAll('pack.module.', 'module.')
}

/** Where in the sheet the fields stand that an issue names: one, or several that do not go together. */
function placeOf(path: string, places: Places): string | undefined {
  const found = path.split(/, | and | or /).flatMap((each) => onePlaceOf(each, places) ?? [])
  return found.length === 0 ? undefined : found.join(' and ')
}

/** A path of a procedure in the sheet, by the longest of the places that it begins with. */
function onePlaceOf(path: string, places: Places): string | undefined {
  const begins = (place: string) => path.startsWith(place) && /^(?:[.[]|$)/.test(path.slice(place.length))
  const [place] = Object.keys(places)
    .filter(begins)
    .sort((one, other) => other.length - one.length)
  const found = place === undefined ? undefined : places[place]
  return found === undefined ? undefined : `${found}${path.slice((place as string).length)}`
}

/** The fields that are missing, of those that are needed. A field of a part that is itself missing goes unnamed. @internal */
export function missing(build: object, needed: readonly string[]): Missing {
  const absent = needed.filter((path) => {
    const keys = path.split('.')
    const last = keys.pop() as string
    const part = keys.reduce<unknown>((outer, key) => (outer as { readonly [key: string]: unknown })?.[key], build)
    return part !== undefined && (part as { readonly [key: string]: unknown })[last] === undefined
  })
  return { missing: absent }
}

/** A name of the sheet as part of an id: what is no letter or digit is left out. @internal */
export function idOf(name: string): string {
  return name.replace(/[^\p{L}\p{N}]/gu, '') || 'unnamed'
}

/** What a named thing of the sheet is called in words: by its title, or by its key. @internal */
export function calledBy(key: string, { title }: { readonly title?: string | undefined }): string {
  return title ?? key.replace(/(?<=[a-z\d])(?=[A-Z])/g, ' ').toLowerCase()
}
