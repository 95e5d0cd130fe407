/** The cables: what they lose, what fuse goes with them, and what they withstand until it opens. */
import {
  adiabaticConstant,
  adiabaticWithstand,
  cableLoss,
  cableVoltageDrop,
  capacitorEnergy,
  conductorMaterials,
  fuseRating,
  loopResistance,
  prechargeResistance,
  preferredRatings,
  prospectiveCurrent,
  resistancePerLength,
  resistivityAt,
} from '../electrical/index.js'
import { type Check, cautions, check } from '../findings/index.js'
import { section as heading } from '../formula/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import type { Build } from './build.js'
import type { Pack } from './pack.js'
import { type Figure, missing, type Section, type Unassessed } from './section.js'

type Run = NonNullable<Build['runs']>[number]

/** The section on cables and fuses. */
export function wiringSection(build: Build, pack: Pack | undefined): Section | Unassessed {
  const { runs = [], controller } = build
  const title = 'Cables and fuses'
  if (pack === undefined || runs.length === 0) return { title, why: missing(build, ['runs', 'module', 'pack']) }
  const parts = runs.map((run) => heading(`Run: ${run.name}`, () => runFigures(run, pack)))
  const figures = parts.flatMap((part) => part.figures)
  if (controller !== undefined) figures.push(...prechargeFigures(pack, controller.capacitance))
  return {
    title,
    figures,
    tables: [],
    checks: parts.flatMap((part) => part.checks),
    assumptions: [
      'Copper at its standard resistivity (IEC 60028); strands twisted into a cable run about 2 % longer.',
      'Fuses carry 80 % of their rating all day, at an ambient temperature that does not weaken them.',
      'The greatest fault current is that of the full pack through its own resistance and the cable at 20 °C.',
      'Whether the cable stays cool enough at its current is not assessed yet.',
      ...(controller === undefined ? [] : runs.flatMap((run) => beyond(run, controller.batteryCurrent))),
    ],
    cautions: [cautions.shortCircuit, cautions.highVoltage, cautions.storedCharge],
  }
}

/** What is said of a run that a controller may load beyond its steady current. */
function beyond({ name, current }: Run, greatest: Quantity<'current'>): string[] {
  if (greatest.isAtMost(current)) return []
  return [
    `The controller may draw ${greatest} through the ${name} for short; cable and fuse are taken at ${current} all day.`,
  ]
}

function runFigures(run: Run, pack: Pack): { readonly figures: Figure[]; readonly checks: Check[] } {
  const { current, length, section: area, name } = run
  const perLength = (temperature: Quantity<'temperature'>) => {
    const { resistivity, coefficient } = conductorMaterials.copper
    return resistancePerLength({ resistivity: resistivityAt({ resistivity, coefficient, temperature }), area })
  }
  const warm = perLength(run.conductorTemperature)
  const drop = cableVoltageDrop({ current, resistancePerLength: warm, length })
  const loss = cableLoss({ current, resistancePerLength: warm, length })
  const needed = fuseRating({ current })
  const fuse = preferredRatings.find((rating) => rating.isAtLeast(needed))
  const cold = perLength(quantity('temperature', '20 °C'))
  const loop = loopResistance({ resistancePerLength: cold, length })
  const fault = prospectiveCurrent({
    voltage: pack.maximumVoltage,
    sourceResistance: pack.resistance,
    loopResistance: loop,
  })
  const { volumetricHeat, beta, resistivity } = conductorMaterials.copper
  const constant = adiabaticConstant({
    volumetricHeat,
    beta,
    resistivity,
    initial: run.conductorTemperature,
    final: run.insulationLimit,
  })
  const withstand = adiabaticWithstand({ constant, area })
  const figures: Figure[] = [
    { name: `${name}: drop over ${length} of ${area.as('mm²')} at ${current}`, value: drop },
    { name: `${name}: heat in the cable`, value: loss },
    { name: `${name}: fuse rated at least`, value: needed },
    ...(fuse === undefined ? [] : [{ name: `${name}: next preferred rating`, value: fuse }]),
    { name: `${name}: fuse rated for DC at least`, value: pack.maximumVoltage },
    { name: `${name}: greatest fault current to break`, value: fault },
    { name: `${name}: the fuse may let through at most`, value: withstand.as('kA²·s') },
  ]
  const checks: Check[] = []
  const largest = preferredRatings[preferredRatings.length - 1]
  if (fuse === undefined && largest !== undefined) {
    checks.push(check(`${name}: fuse`, needed, 'at most', largest, 'the largest preferred rating, IEC 60269-1'))
  }
  if (run.maximumDrop !== undefined) {
    const share = quantity('ratio', drop.ratioTo(pack.nominalVoltage)).as('%')
    checks.push(check(`${name}: drop`, share, 'at most', run.maximumDrop, 'the sheet: runs.maximumDrop'))
  }
  return { figures, checks }
}

/** How long precharging may take: long enough for a small resistor, short enough not to be noticed. */
const PRECHARGE_TIME = '1 s'
/** How far to fill the capacitors before the contactor closes. */
const PRECHARGE_SHARE = 0.95

function prechargeFigures(pack: Pack, capacitance: Quantity<'capacitance'>): Figure[] {
  const time = quantity('time', PRECHARGE_TIME)
  const resistance = prechargeResistance({ time, capacitance, fraction: PRECHARGE_SHARE })
  return [
    { name: `precharge resistor, 95 % in ${PRECHARGE_TIME}`, value: resistance },
    { name: 'heat in it at each start', value: capacitorEnergy({ capacitance, voltage: pack.maximumVoltage }) },
  ]
}
