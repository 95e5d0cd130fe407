/** How long a charge takes from the socket at hand, and what it costs there. */
import { type ChargePlan, chargePlan } from '../../electrical/index.js'
import { merged } from '../../procedure/index.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import { type Chapter, fromSheet, missing, partOf, vehiclePlaces } from './section.js'

/** How many moments of the charge are told, besides its start. */
const MOMENTS = 5

/** Where in the sheet its figures stand. */
const places = {
  ...vehiclePlaces,
  stateOfCharge: 'charger.from',
  to: 'charger.to',
  supply: 'charger',
  charger: 'charger',
  temperature: 'charger.temperature',
}

/** The charge from the socket at hand. @internal */
export function chargeOf(
  { power, efficiency, temperature, from, to, ...supply }: NonNullable<Build['charger']>,
  { made }: Pack,
): ChargePlan {
  return fromSheet(places, () =>
    chargePlan({ pack: made, stateOfCharge: from, to, supply, charger: { power, efficiency }, temperature }),
  )
}

/** The section on charging. @internal */
export function chargingSection(build: Build, pack: Pack | undefined): Chapter {
  const { charger } = build
  if (pack === undefined || charger === undefined) return missing(build, ['charger', 'module', 'pack'])
  const { from, voltage, current, phases } = charger
  const plan = chargeOf(charger, pack)
  const { curve } = plan
  // A charge that is over at once has fewer.
  const moments = new Set(Array.from({ length: MOMENTS + 1 }, (_, i) => Math.round((i * (curve.length - 1)) / MOMENTS)))
  return {
    figures: [
      {
        id: 'charging.time',
        name: `time from ${from.as('%')} to ${plan.reached} at ${voltage}, ${current}, ${phases === 1 ? 'one phase' : `${phases} phases`}`,
        value: plan.time,
      },
      { id: 'charging.wallEnergy', name: 'energy from the wall', value: plan.wallEnergy },
      { id: 'charging.packEnergy', name: 'energy stored', value: plan.packEnergy },
      { id: 'charging.heat', name: 'heat in the pack', value: plan.heat },
      { id: 'charging.peakCurrent', name: 'greatest current', value: plan.peakCurrent },
    ],
    tables: [
      {
        id: 'charge',
        title: 'The charge, moment by moment',
        measures: 'columns',
        columns: [
          { id: 'stateOfCharge', name: 'charged' },
          { id: 'voltage', name: 'voltage' },
          { id: 'current', name: 'current' },
          { id: 'power', name: 'power' },
        ],
        rows: [...moments].flatMap((i, moment) => {
          const point = curve[i]
          return point === undefined
            ? []
            : [
                {
                  id: `moment${moment}`,
                  name: `after ${point.time.as('min').format({ digits: 3 })}`,
                  values: [point.stateOfCharge, point.voltage, point.current, point.power],
                },
              ]
        }),
        notes: [`Until the voltage of the full pack is reached, the ${plan.limitedBy} holds the power.`],
      },
    ],
    ...merged(plan),
    checks: partOf('charger', plan.checks),
  }
}
