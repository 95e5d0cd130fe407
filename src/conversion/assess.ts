/** The assessment of a whole car, section by section in the order in which the job is done. */
import { CalculationError, InputError } from '../quantity/index.js'
import type { Build } from './build.js'
import { chargingSection } from './charging.js'
import { energySection } from './energy.js'
import { gearsSection } from './gears.js'
import { heatSection } from './heat.js'
import { packSection } from './pack.js'
import type { Section, Unassessed } from './section.js'
import { weightSection } from './weight.js'
import { wiringSection } from './wiring.js'

/** What is found of a build: figures, checks, assumptions and cautions, and what could not be assessed. */
export interface Assessment {
  readonly title: string
  readonly note?: string
  readonly sections: readonly Section[]
  /** Sections for which the sheet lacks something, or whose figures do not allow it. */
  readonly unassessed: readonly Unassessed[]
}

/** The sections in the order in which the job is done, with what each is called where it cannot be assessed. */
const chapters: readonly (readonly [title: string, section: (build: Build) => Section | Unassessed])[] = [
  ['Weight and balance', weightSection],
  ['The pack', packSection],
  ['Gears', gearsSection],
  ['Energy and range at a steady speed', energySection],
  ['Cables and fuses', wiringSection],
  ['Charging', chargingSection],
  ['Warming the pack on a winter morning', heatSection],
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
 */
export function assess(build: Build): Assessment {
  const parts = chapters.map(([title, section]) => assessed(title, section, build))
  return {
    title: build.title,
    ...(build.note === undefined ? {} : { note: build.note }),
    sections: parts.filter((part): part is Section => 'figures' in part),
    unassessed: parts.filter((part): part is Unassessed => 'why' in part),
  }
}

function assessed(title: string, section: (build: Build) => Section | Unassessed, build: Build): Section | Unassessed {
  try {
    return section(build)
  } catch (error) {
    if (!(error instanceof CalculationError || error instanceof InputError)) throw error
    return { title, why: `the figures of the sheet do not allow it. ${error.message}` }
  }
}
