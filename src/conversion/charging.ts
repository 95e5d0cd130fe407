/** How long charging takes from the socket at hand. */
import { acPower, chargeTime } from '../electrical/index.js'
import { cautions } from '../findings/index.js'
import type { Build } from './build.js'
import type { Pack } from './pack.js'
import { missing, type Section, type Unassessed } from './section.js'

/** The section on charging. */
export function chargingSection(build: Build, pack: Pack | undefined): Section | Unassessed {
  const { charger } = build
  const title = 'Charging'
  if (pack === undefined || charger === undefined) return { title, why: missing(build, ['charger', 'module', 'pack']) }
  const { voltage, current, phases, powerFactor, efficiency } = charger
  const power = acPower({ voltage, current, phases, powerFactor })
  return {
    title,
    figures: [
      {
        name: `power from the socket, ${voltage}, ${current}, ${phases === 1 ? 'one phase' : `${phases} phases`}`,
        value: power,
      },
      { name: 'time for the energy used in summer', value: chargeTime({ energy: pack.usable, power, efficiency }) },
    ],
    tables: [],
    checks: [],
    assumptions: [`The charger passes on ${efficiency} of what it draws, at full power until the end.`],
    cautions: [cautions.lithiumCells, cautions.highVoltage],
  }
}
