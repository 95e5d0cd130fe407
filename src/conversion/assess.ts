/** The assessment of a whole car, section by section in the order in which the job is done. */
import type { Build } from './build.js'
import { chargingSection } from './charging.js'
import { energySection } from './energy.js'
import { gearsSection } from './gears.js'
import { heatSection } from './heat.js'
import { packSection } from './pack.js'
import type { Missing, Section } from './section.js'
import { weightSection } from './weight.js'
import { wiringSection } from './wiring.js'

/** What is found of a build: figures, checks, assumptions and cautions, and what could not be assessed. */
export interface Assessment {
  readonly title: string
  readonly note?: string
  readonly sections: readonly Section[]
  /** Sections for which the sheet lacks something. */
  readonly missing: readonly Missing[]
}

/**
 * Assesses a build.
 *
 * The same sheet gives the same assessment on every run. What the sheet does not say is not assessed, and named.
 *
 * @param build - A sheet that {@link readBuild} has read.
 * @returns The sections in the order in which the job is done.
 * @throws CalculationError when an operating point that the sheet asks for does not exist, such as a heater that never
 *   reaches its temperature.
 */
export function assess(build: Build): Assessment {
  const parts: readonly (Section | Missing)[] = [
    weightSection(build),
    packSection(build),
    wiringSection(build),
    gearsSection(build),
    energySection(build),
    chargingSection(build),
    heatSection(build),
  ]
  return {
    title: build.title,
    ...(build.note === undefined ? {} : { note: build.note }),
    sections: parts.filter((part): part is Section => 'figures' in part),
    missing: parts.filter((part): part is Missing => 'add' in part),
  }
}
