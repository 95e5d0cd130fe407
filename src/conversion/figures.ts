/** The figures of an assessment by their ids, each with the kind that its id tells. */
import { InputError, shown } from '../quantity/errors.js'
import type { Kind, Quantity } from '../quantity/index.js'
import { nearestName } from '../quantity/nearest.js'
import type { Assessment } from './assess.js'

/**
 * What kind each figure is of. A star stands for a name of the sheet or one that comes of it; braces hold what may stand
 * there. No id matches two lines.
 * @internal
 */
export const kindsOfFigures = {
  'weight.{before,after,change}.{mass,frontLeft,frontRight,rearLeft,rearRight}': 'mass',
  'weight.{before,after,change}.{frontShare,leftShare,crossShare}': 'ratio',
  'weight.{before,after,change}.{aft,left,up}': 'length',
  'placement.*.modules': 'ratio',
  'placement.*.mass': 'mass',
  'placement.*.{aft,left}': 'length',
  'ride.{front,rear}.{heightChange,preload}': 'length',
  'ride.{front,rear}.{frequency,fittedFrequency}': 'frequency',
  'ride.{front,rear}.springRate': 'springRate',
  'brakes.{driverBefore,ladenBefore,driver,laden}.{frontShare,ideal,on40Efficiency,on80Efficiency}': 'ratio',
  'brakes.{driverBefore,ladenBefore,driver,laden}.{on40Deceleration,on80Deceleration}': 'acceleration',
  'pack.{nominalVoltage,maximumVoltage,minimumVoltage,saggedVoltage}': 'voltage',
  'pack.capacity': 'charge',
  'pack.{energy,usableEnergy}': 'energy',
  'pack.resistance': 'resistance',
  'pack.mass': 'mass',
  'pack.specificEnergy': 'specificEnergy',
  'pack.stateOfHealth': 'ratio',
  'life.*.{capacityLeast,capacityMost}': 'charge',
  'life.*.{leftLeast,leftMost}': 'ratio',
  'life.*.{resistanceLeast,resistanceMost}': 'resistance',
  'arrangements.*.energy': 'energy',
  'arrangements.*.maximumVoltage': 'voltage',
  'arrangements.*.{continuousPower,peakPower}': 'power',
  'arrangements.*.mass': 'mass',
  'states.*.openCircuit': 'voltage',
  'states.*.{continuousPower,peakPower}': 'power',
  'gears.rollingRadius': 'length',
  'gears.*.ratio': 'ratio',
  'gears.*.{speedPerThousand,topSpeed}': 'speed',
  'gears.*.{motorAt50,motorAt90}': 'angularSpeed',
  'road.mass': 'mass',
  'road.topSpeed': 'speed',
  'road.{startGrade,hillGrade}': 'ratio',
  'road.{to50,to80}.time': 'time',
  'road.{to50,to80}.distance': 'length',
  'pull.*.start': 'force',
  'pull.*.{holds,shiftAt}': 'speed',
  'fixedRatio.*.{least,greatest}': 'ratio',
  'steady.*.{at50,at70,at90}.consumption': 'energyPerDistance',
  'steady.*.{at50,at70,at90}.range': 'length',
  'cold.{airDensity,rollingResistance,heater,usableCapacity,all}.lost': 'length',
  'cold.{airDensity,rollingResistance,heater,usableCapacity,all}.share': 'ratio',
  'journeys.*.*.{distance,range}': 'length',
  'journeys.*.*.duration': 'time',
  'journeys.*.*.{drawn,regenerated,packHeat}': 'energy',
  'journeys.*.*.consumption': 'energyPerDistance',
  'journeys.*.*.{auxiliaryShare,chargeLeft}': 'ratio',
  'journeys.*.*.{peakCurrent,rmsCurrent}': 'current',
  'journeys.*.*.lowestVoltage': 'voltage',
  'journeys.*.*.cellsAfter': 'temperature',
  'runs.*.{ampacity,highestFault,lowestFault}': 'current',
  'runs.*.temperature': 'temperature',
  'runs.*.drop': 'voltage',
  'runs.*.loss': 'power',
  'runs.*.withstand': 'jouleIntegral',
  'runs.*.{opensHighest,opensLowest}': 'time',
  'precharge.resistance': 'resistance',
  'precharge.energy': 'energy',
  'precharge.{peakPower,dischargePower}': 'power',
  'precharge.residualVoltage': 'voltage',
  'precharge.inrush': 'current',
  'bars.*.ampacity': 'current',
  'bars.*.{resistance,jointResistance}': 'resistance',
  'bars.*.{loss,jointLoss}': 'power',
  'bars.*.preload': 'force',
  'insulation.{measured,other,least,usualOpens}': 'resistance',
  'insulation.leakage': 'current',
  'insulation.settlingTime': 'time',
  'insulation.energy': 'energy',
  'insulation.chargerTest': 'voltage',
  'distances.*.{clearance,creepage,grooveWidth}': 'length',
  'contactors.{carry,break}': 'current',
  'shutdown.voltageLeft': 'voltage',
  'shutdown.{afterPlug,afterCrash}': 'time',
  'charging.time': 'time',
  'charging.{wallEnergy,packEnergy,heat}': 'energy',
  'charging.peakCurrent': 'current',
  'charge.*.stateOfCharge': 'ratio',
  'charge.*.voltage': 'voltage',
  'charge.*.current': 'current',
  'charge.*.power': 'power',
  'chargingPoint.{circuit,allDay,ampacity,ratingAtMost}': 'current',
  'chargingPoint.power': 'power',
  'chargingPoint.drop': 'voltage',
  'chargingPoint.dropShare': 'ratio',
  'lowVoltage.{steady,allOn,leastRating,inputCurrent,greatestInputCurrent}': 'current',
  'lowVoltage.{steadyPower,inputPower}': 'power',
  'lowVoltage.runTime': 'time',
  'feeds.*.{current,fuse,ampacity}': 'current',
  'feeds.*.drop': 'voltage',
  'hill.{wheelPower,batteryPower,wasteHeat,packHeat}': 'power',
  'hill.coolantFlow': 'volumeFlow',
  'hill.{coolantHot,coolantCold,packTemperature,hottestCell}': 'temperature',
  'hill.current': 'current',
  'mornings.heatCapacity': 'heatCapacity',
  'mornings.*.packTemperature': 'temperature',
  'mornings.*.warmUpTime': 'time',
  'mornings.*.warmUpEnergy': 'energy',
  'mornings.*.warmUpShare': 'ratio',
  'mornings.*.cabinHeat': 'power',
  'mornings.*.{resistive,heatPump}.power': 'power',
  'mornings.*.{resistive,heatPump}.share': 'ratio',
  'home.{usableEnergy,reserve,delivered,lost}': 'energy',
  'home.duration': 'time',
} as const satisfies { readonly [pattern: string]: Kind }

type OneOf<L extends string> = L extends `${infer First},${infer Rest}` ? First | OneOf<Rest> : L
type Matching<P extends string> = P extends `${infer Before}{${infer List}}${infer After}`
  ? `${Matching<Before>}${OneOf<List>}${Matching<After>}`
  : P extends `${infer Before}*${infer After}`
    ? `${Before}${string}${Matching<After>}`
    : P

/** The kind of each figure by its id; names of the sheet stand in it, as in `journeys.bakeryRound.winter.range`. */
export type FigureKinds = {
  readonly [P in keyof typeof kindsOfFigures as Matching<P>]: (typeof kindsOfFigures)[P]
}

/** The id of a figure. */
export type FigureId = keyof FigureKinds

/**
 * A figure of an assessment.
 *
 * @param assessment - What assess found.
 * @param id - Its id, such as `weight.after.frontShare`.
 * @returns Its value, of the kind that its id tells.
 * @throws InputError for an id that the assessment does not have: with the nearest that it has, or with what the sheet lacks.
 *
 * @example
 * ```ts
 * figure(assess(readBuild(sheet)), 'weight.after.mass')
 * ```
 */
export function figure<const I extends FigureId>(assessment: Assessment, id: I): Quantity<FigureKinds[I]> {
  if (!Array.isArray(Object(assessment).figures)) {
    const expected = "what assess has found, such as figure(assess(build), 'weight.after.mass')"
    throw new InputError('figure', [{ path: 'assessment', expected, received: shown(assessment) }])
  }
  const found = assessment.figures.find((each) => each.id === id)
  if (found !== undefined) return found.value as unknown as Quantity<FigureKinds[I]>
  const expected = "the id of a figure such as 'weight.after.mass'"
  throw new InputError('figure', [{ path: 'id', expected, received: shown(id), ...hintFor(assessment, id) }])
}

function hintFor({ figures, unassessed }: Assessment, id: string): { readonly hint?: string } {
  const ids = figures.map((each) => each.id)
  const nearest = nearestName(id, ids)
  if (nearest !== undefined) return { hint: `did you mean ${nearest}?` }
  const [section] = id.split('.')
  const why = unassessed.find((each) => each.id === section)?.why
  return why === undefined ? {} : { hint: why }
}
