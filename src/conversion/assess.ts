/** The assessment of a whole car, section by section in the order in which the job is done. */
import { type Note, unusualIn } from '../procedure/index.js'
import { once } from '../procedure/once.js'
import { inOneLine, shown } from '../quantity/errors.js'
import { InputError } from '../quantity/index.js'
import { isQuantity } from '../quantity/read.js'
import { chargingSection } from './chapters/charging.js'
import { energySection } from './chapters/energy.js'
import { gearsSection, paceSection } from './chapters/gears.js'
import { homeSection } from './chapters/home.js'
import { type Driven, journeysOf, journeysSection } from './chapters/journeys.js'
import { type Pack, packOf, packSection } from './chapters/pack.js'
import { isOfSheet, type Section, type Unassessed, where } from './chapters/section.js'
import { summerSection } from './chapters/summer.js'
import { type Weights, weightSection, weightsOf } from './chapters/weight.js'
import { winterSection } from './chapters/winter.js'
import { wiringSection } from './chapters/wiring.js'
import { type Build, sheetField } from './sheet/build.js'

/** What is found of a build: figures, checks, assumptions and cautions, and what could not be assessed. */
export interface Assessment {
  readonly title: string
  readonly note?: string
  /** What on the sheet is unusual, each by its place in the sheet. */
  readonly notes: readonly Note[]
  readonly sections: readonly Section[]
  /** Sections for which the sheet lacks something, or whose figures do not allow it. */
  readonly unassessed: readonly Unassessed[]
}

/** What several sections stand on, worked out once, where it is first asked for. */
interface Shared {
  readonly weights: () => Weights
  readonly pack: () => Pack | undefined
  readonly driven: () => readonly Driven[]
}

type Chapter = (build: Build, shared: Shared) => Section | Unassessed

/** The sections in the order in which the job is done, with what each is called where it cannot be assessed. */
const chapters: readonly (readonly [title: string, section: Chapter])[] = [
  ['Weight and balance', (build, { weights }) => weightSection(build, weights())],
  ['The pack', (build, { pack }) => packSection(build, pack())],
  ['Gears', gearsSection],
  ['The laden car on the road', (build, { pack, weights }) => paceSection(build, pack(), weights)],
  ['Energy and range at a steady speed', (build, { pack, weights }) => energySection(build, pack(), weights)],
  ['Journeys', (build, { pack, driven }) => journeysSection(build, pack(), driven)],
  ['Cables and fuses', (build, { pack, driven }) => wiringSection(build, pack(), driven)],
  ['Charging', (build, { pack }) => chargingSection(build, pack())],
  ['Summer on the longest hill', (build, { pack, weights }) => summerSection(build, pack(), weights)],
  ['A winter morning', (build, { pack }) => winterSection(build, pack())],
  ['An evening of house load', (build, { pack }) => homeSection(build, pack())],
]

/**
 * Assesses a build.
 *
 * The same sheet gives the same assessment on every run. What the sheet does not say is not assessed, and named; a
 * section whose figures make no operating point, such as a heater that never reaches its temperature, says so
 * and leaves the others standing.
 *
 * @param build - A sheet that {@link readBuild} has read.
 * @returns The sections in the order in which the job is done.
 * @throws InputError for what readBuild has not read.
 */
export function assess(build: Build): Assessment {
  if (!isQuantity((build as Partial<Build> | undefined)?.car?.wheelbase)) {
    const expected = 'a sheet that readBuild has read, such as assess(readBuild(JSON.parse(text)))'
    throw new InputError(where, [{ path: '', expected, received: shown(build) }])
  }
  const weights = once(() => weightsOf(build))
  const pack = once(() => packOf(build))
  const shared = { weights, pack, driven: once(() => journeysOf(build, pack(), weights)) }
  const parts = chapters.map(([title, chapter]) => assessed(title, () => chapter(build, shared)))
  const notes = unusualIn(sheetField, build)
  // What a procedure finds unusual of a figure of the sheet is told once, by its place in the sheet.
  const told = new Set(notes.map(({ text }) => text))
  return {
    title: build.title,
    ...(build.note === undefined ? {} : { note: build.note }),
    notes,
    sections: parts
      .filter((part): part is Section => 'figures' in part)
      .map((part) => ({ ...part, notes: part.notes.filter(({ text }) => !told.has(text)) })),
    unassessed: [
      ...parts.filter((part): part is Unassessed => 'why' in part),
      ...(build.car.friction !== undefined && build.car.raised === undefined
        ? [{ title: 'Grip on a hill', why: 'add to the sheet: car.raised' }]
        : []),
    ],
  }
}

function assessed(title: string, chapter: () => Section | Unassessed): Section | Unassessed {
  try {
    return chapter()
  } catch (error) {
    if (!isOfSheet(error)) throw error
    const told = error instanceof InputError ? inOneLine(error) : error.message
    return { title, why: `the figures of the sheet do not allow it. ${told}` }
  }
}
