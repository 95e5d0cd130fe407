/** The assessment of a whole car, section by section in the order in which the job is done. */

import type { PlacedMasses } from '../mass/index.js'
import {
  type Assumption,
  type Caution,
  flag,
  group,
  merged,
  type Note,
  optional,
  unusualIn,
} from '../procedure/index.js'
import { once } from '../procedure/once.js'
import { readField } from '../procedure/reading.js'
import { inOneLine, shown } from '../quantity/errors.js'
import { InputError } from '../quantity/index.js'
import { isQuantity } from '../quantity/read.js'
import { type Band, bandsFrom, type Measurement } from './bands.js'
import { barsSection } from './chapters/bars.js'
import { brakesSection } from './chapters/brakes.js'
import { chargingSection } from './chapters/charging.js'
import { energySection } from './chapters/energy.js'
import { gearsSection, paceSection } from './chapters/gears.js'
import { hillSection } from './chapters/hill.js'
import { homeSection } from './chapters/home.js'
import { insulationSection } from './chapters/insulation.js'
import { type Driven, journeysOf, journeysSection } from './chapters/journeys.js'
import { lowVoltageSection } from './chapters/low-voltage.js'
import { morningSection } from './chapters/morning.js'
import { type Pack, packOf, packSection } from './chapters/pack.js'
import {
  type Binds,
  type Chapter,
  type Figure,
  figuresIn,
  isOfSheet,
  type Section,
  type SheetCheck,
  type Unassessed,
  where,
} from './chapters/section.js'
import { type Weights, weightSection, weightsOf } from './chapters/weight.js'
import { wiringSection } from './chapters/wiring.js'
import { type Courses, coursesOf } from './courses.js'
import { originsOf } from './origins.js'
import { type Build, sheetField } from './sheet/build.js'
import { type BuildVerdict, type Summary, summaryOf, verdictOf } from './summary.js'

/** What is found of a build: verdict and summary, figures, checks, assumptions and cautions, and what could not be assessed. */
export interface Assessment {
  /** The sheet that was assessed. */
  readonly build: Build
  readonly title: string
  readonly note?: string
  readonly verdict: BuildVerdict
  readonly summary: Summary
  /** Every figure, those in tables too, by its id. */
  readonly figures: readonly Figure[]
  /** Every check. */
  readonly checks: readonly SheetCheck[]
  /** Every default and simplification, each once: the first has number 1 in a report. */
  readonly assumptions: readonly Assumption[]
  /** What on the sheet is unusual, each by its place in the sheet. */
  readonly notes: readonly Note[]
  /** What can hurt, each once. */
  readonly cautions: readonly Caution[]
  readonly sections: readonly Section[]
  /** Sections for which the sheet lacks something, or whose figures do not allow it. */
  readonly unassessed: readonly Unassessed[]
  /** How sure the key figures are, where that was asked for. */
  readonly bands?: readonly Band[]
  /** Which single measurements would narrow which figure most, the best first, where that was asked for. */
  readonly measureNext?: readonly Measurement[]
}

/** How a build is assessed. */
export interface AssessOptions {
  readonly bands?: boolean
}

const optionsField = /*@__PURE__*/ (() =>
  group('How a build is assessed', { bands: optional(flag('Whether to tell how sure the key figures are')) }))()

/** What several sections stand on, worked out once, where it is first asked for. */
interface Shared {
  readonly weights: () => Weights
  readonly pack: () => Pack | undefined
  readonly driven: () => readonly Driven[]
}

function sharedFor(build: Build, placed?: PlacedMasses): Shared {
  const weights = once(() => weightsOf(build, placed))
  const pack = once(() => packOf(build))
  return { weights, pack, driven: once(() => journeysOf(build, pack(), weights)) }
}

/** A section: what it is called where it cannot be assessed, which parts of a sheet ask for it, and what makes it. */
interface Part {
  readonly id: string
  readonly title: string
  readonly asks: readonly (keyof Build)[]
  readonly work: (build: Build, shared: Shared) => Chapter
}

/** The sections in the order in which the job is done. */
const parts: readonly Part[] = [
  {
    id: 'weight',
    title: 'Weight and balance',
    asks: ['car'],
    work: (build, { weights }) => weightSection(build, weights()),
  },
  {
    id: 'brakes',
    title: 'Brakes',
    asks: ['brakes'],
    work: (build, { weights }) => brakesSection(build, weights()),
  },
  {
    id: 'pack',
    title: 'The pack',
    asks: ['module', 'pack'],
    work: (build, { pack, driven }) => packSection(build, pack(), driven),
  },
  { id: 'gears', title: 'Gears', asks: ['motor', 'gearbox'], work: gearsSection },
  {
    id: 'road',
    title: 'The laden car on the road',
    asks: ['motor', 'gearbox'],
    work: (build, { pack, weights }) => paceSection(build, pack(), weights),
  },
  {
    id: 'steady',
    title: 'Energy and range at a steady speed',
    asks: ['seasons'],
    work: (build, { pack, weights }) => energySection(build, pack(), weights),
  },
  {
    id: 'journeys',
    title: 'Journeys',
    asks: ['journeys'],
    work: (build, { pack, driven }) => journeysSection(build, pack(), driven),
  },
  {
    id: 'runs',
    title: 'Cables and fuses',
    asks: ['runs', 'fuses', 'precharge'],
    work: (build, { pack, driven }) => wiringSection(build, pack(), driven),
  },
  { id: 'bars', title: 'Bus bars', asks: ['bars'], work: barsSection },
  {
    id: 'insulation',
    title: 'Insulation',
    asks: ['insulation'],
    work: (build, { pack }) => insulationSection(build, pack()),
  },
  {
    id: 'charging',
    title: 'Charging',
    asks: ['charger', 'chargingPoint'],
    work: (build, { pack }) => chargingSection(build, pack()),
  },
  {
    id: 'lowVoltage',
    title: 'The 12 V side',
    asks: ['lowVoltage'],
    work: (build, { pack }) => lowVoltageSection(build, pack()),
  },
  {
    id: 'hill',
    title: 'The longest hill',
    asks: ['cooling'],
    work: (build, { pack, weights }) => hillSection(build, pack(), weights),
  },
  {
    id: 'mornings',
    title: 'Cold mornings',
    asks: ['heating'],
    work: (build, { pack }) => morningSection(build, pack()),
  },
  {
    id: 'home',
    title: 'An evening of house load',
    asks: ['home'],
    work: (build, { pack }) => homeSection(build, pack()),
  },
]

/**
 * Assesses a build.
 *
 * The same sheet gives the same assessment on every run. What the sheet does not say is not assessed, and named; a
 * section whose figures make no operating point, such as a heater that never reaches its temperature, says so
 * and leaves the others standing.
 *
 * @param build - A sheet that {@link readBuild} has read.
 * @param options - `bands`: how sure the key figures are, over all inputs that carry an uncertainty or typically have
 *   one, and what to measure next; it takes two assessments for each.
 * @returns Verdict and summary, then the sections in the order in which the job is done.
 * @throws InputError for what readBuild has not read, and for options that there are not.
 */
export function assess(build: Build, options: AssessOptions = {}): Assessment {
  if (!isQuantity((build as Partial<Build> | undefined)?.car?.wheelbase)) {
    const expected = 'a sheet that readBuild has read, such as assess(readBuild(JSON.parse(text)))'
    throw new InputError(where, [{ path: '', expected, received: shown(build) }])
  }
  readField(where, optionsField, options)
  const found = traced(build, foundOf(build))
  return options.bands === true ? { ...found, ...bandsOf(build, found) } : found
}

/** What was found of a build, with the origin of each figure where it is asked for: then the build is assessed once more. */
function traced(build: Build, found: Assessment): Assessment {
  const again = once(() => {
    const { result, of } = originsOf(build, () => foundOf(build))
    const from = new Map(result.figures.map(({ id, value }) => [id, of(value)]))
    const ofChecks = new Map(
      result.checks.map(({ id, actual, limit }) => [id, { from: actual && of(actual), limitFrom: limit && of(limit) }]),
    )
    return { from, ofChecks }
  })
  for (const each of found.figures) {
    Object.defineProperty(each, 'from', { get: () => again().from.get(each.id) })
  }
  for (const each of found.checks) {
    // Where there is no figure there is nothing to come from anywhere.
    if (each.actual === undefined) continue
    Object.defineProperty(each, 'from', { get: () => again().ofChecks.get(each.id)?.from })
    Object.defineProperty(each, 'limitFrom', { get: () => again().ofChecks.get(each.id)?.limitFrom })
  }
  return found
}

/** What is found of a build, with the modules where they were placed before, if they were. */
function foundOf(build: Build, placed?: PlacedMasses): Assessment {
  const shared = sharedFor(build, placed)
  const notes = unusualIn(sheetField, build)
  // What a procedure finds unusual of a figure of the sheet is told once, by its place in the sheet.
  const told = new Set(notes.map(({ text }) => text))
  const sections: Section[] = []
  const unassessed: Unassessed[] = []
  let binds: Binds = {}
  for (const part of parts) {
    const found = assessed(part, build, shared)
    if ('why' in found) {
      unassessed.push(found)
      continue
    }
    binds = { ...binds, ...found.binds }
    const { binds: _, ...section } = found
    sections.push({ ...section, notes: section.notes.filter(({ text }) => !told.has(text)) })
  }
  if (build.car.friction !== undefined && build.car.raised === undefined) {
    unassessed.push(lacking('grip', 'Grip on a hill', false, ['car.raised']))
  }
  const figures = sections.flatMap(figuresIn)
  const summary = summaryOf(sections, figures, binds)
  const { assumptions, cautions } = merged(...sections)
  const assessment: Assessment = {
    build,
    title: build.title,
    ...(build.note === undefined ? {} : { note: build.note }),
    verdict: verdictOf(summary, unassessed),
    summary,
    figures,
    checks: sections.flatMap(({ checks }) => checks),
    assumptions: [...new Map(assumptions.map((each) => [each.text, each])).values()],
    notes,
    cautions,
    sections,
    unassessed,
  }
  sharedBy.set(sections, shared)
  return assessment
}

/** What the sections of an assessment stand on, for what is drawn of it and told nowhere. */
const sharedBy = /*@__PURE__*/ new WeakMap<readonly Section[], Shared>()

/** The courses behind an assessment that a drawing shows, each worked out as it is asked for. @internal */
export function coursesBehind({ build, sections }: Assessment): Courses {
  return coursesOf(build, sharedBy.get(sections) ?? sharedFor(build))
}

/** The bands of a build: the modules stay where they were placed, as the builder will have put them. */
function bandsOf(build: Build, found: Assessment) {
  const placed = safely(() => weightsOf(build).placed)
  return bandsFrom(build, found.summary.figures, (changed) => foundOf(changed, placed).summary.figures)
}

/** A result, or undefined where the figures of a sheet do not allow it. */
function safely<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (isOfSheet(error)) return undefined
    throw error
  }
}

function lacking(id: string, title: string, isAsked: boolean, missing: readonly string[]): Unassessed {
  return { id, title, isAsked, missing, why: `add to the sheet: ${missing.join(', ')}` }
}

function assessed({ id, title, asks, work }: Part, build: Build, shared: Shared) {
  const isAsked = asks.some((key) => build[key] !== undefined)
  try {
    const found = work(build, shared)
    return 'missing' in found ? lacking(id, title, isAsked, found.missing) : { id, title, ...found }
  } catch (error) {
    if (!isOfSheet(error)) throw error
    const said = error instanceof InputError ? inOneLine(error) : error.message
    return { id, title, isAsked, missing: [], why: `the figures of the sheet do not allow it. ${said}` }
  }
}
