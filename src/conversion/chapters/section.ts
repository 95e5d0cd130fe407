/** The parts of an assessment: figures and tables under a heading, with what is checked, assumed and cautioned. */
import { type Check, check, type Findings, renamed, type Sense } from '../../procedure/index.js'
import { CalculationError, InputError, type Kind, type Quantity } from '../../quantity/index.js'

/** A figure with its name. */
export interface Figure {
  readonly name: string
  readonly value: Quantity
}

/** A table of figures: each row begins with its name. */
export interface Table {
  readonly title: string
  readonly columns: readonly string[]
  /** What is to be said of the whole, under it. */
  readonly notes?: readonly string[]
  readonly rows: readonly { readonly name: string; readonly values: readonly (Quantity | string)[] }[]
}

/** A section of an assessment. */
export interface Section extends Findings {
  readonly title: string
  readonly figures: readonly Figure[]
  readonly tables: readonly Table[]
}

/** A section that could not be assessed. */
export interface Unassessed {
  readonly title: string
  /** The fields to add to the sheet, or what the figures of the sheet do not allow. */
  readonly why: string
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
export function partOf(part: string, checks: readonly Check[], told = (name: string) => name): Check[] {
  return checks.map((each) => renamed(each, `${part}.${each.id}`, told(each.name)))
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
): Check {
  return check(path, name, figure, sense, limit, `the sheet: ${path}`, path, ...others)
}

/** Where in the sheet the fields of a procedure stand: `'air.temperature': 'cooling.outside'`. @internal */
export type Places = { readonly [path: string]: string }

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
 * Calls a procedure with figures of the sheet. What it refuses is told by the place in the sheet; what stands nowhere in the
 * sheet is no fault of the sheet, and is thrown on.
 * @internal
 */
export function fromSheet<T>(places: Places, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const issues = error.issues.flatMap((issue) => {
      const path = placeOf(issue.path, places)
      return path === undefined ? [] : [{ ...issue, path }]
    })
    throw issues.length === error.issues.length ? new InputError(where, issues) : error
  }
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
  return place === undefined ? undefined : `${places[place]}${path.slice(place.length)}`
}

/**
 * What to say where fields are missing: only those that are. A field of a part that is itself missing goes unnamed.
 * @internal
 */
export function missing(build: object, needed: readonly string[]): string {
  const absent = needed.filter((path) => {
    const keys = path.split('.')
    const last = keys.pop() as string
    const part = keys.reduce<unknown>((outer, key) => (outer as { readonly [key: string]: unknown })?.[key], build)
    return part !== undefined && (part as { readonly [key: string]: unknown })[last] === undefined
  })
  return `add to the sheet: ${absent.join(', ')}`
}
