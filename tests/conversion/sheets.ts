/** The example sheets, and what they become with parts left out or other than they are. */
import { readFileSync } from 'node:fs'
import { type Assessment, assess, type BuildSheet, readBuild } from '../../src/conversion/index.js'
import { patched } from '../patched.js'

/** An example sheet, read anew: whoever gets it may change it. */
export const sheetOf = (name: string): BuildSheet =>
  JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'))

/** The sheet of the demo. */
export const demo = () => sheetOf('wagtail-850')

/** The assessment of the demo with a patch. */
export const of = (patch: object): Assessment => assess(readBuild(patched(demo(), patch)))

/** The demo with parts left out or other than they are, so that what it says nothing of arises too. */
const patches: { readonly [what: string]: object } = {
  ...Object.fromEntries(
    Object.keys(demo())
      .filter((key) => !['$schema', 'title', 'note', 'car'].includes(key))
      .map((key) => [`without ${key}`, { [key]: undefined }]),
  ),
  'not raised': { car: { raised: undefined } },
  'without springs': { car: { springs: undefined } },
  'without friction': { car: { friction: undefined } },
  'without limits': { car: { limits: undefined } },
  'module of few words': {
    module: { chargeCurrent: undefined, peakCurrent: undefined, cold: undefined, temperatures: undefined },
  },
  'cells of no spread': { module: { cell: { spread: undefined } } },
  'cells of iron phosphate': {
    module: {
      chemistry: 'LFP',
      nominalVoltage: '38.4 V',
      minimumVoltage: '33 V',
      maximumVoltage: '43.2 V',
      cell: undefined,
    },
  },
  'a life in the heat': { pack: { life: { temperatures: [['55 °C', 1]] } } },
  'module without heat': { module: { specificHeat: undefined } },
  'motor of few words': { motor: { continuousTorque: undefined, continuousPower: undefined } },
  'controller of few words': { controller: { regeneration: undefined, batteryCurrentTime: undefined } },
  'resistive heater': { heating: { cabin: { coefficientOfPerformance: undefined } } },
  'one season': { seasons: { winter: undefined } },
  'three seasons': { seasons: { arctic: { outside: '-25 °C', night: { from: '5 °C', time: '12 h' } } } },
  'cells of their own': { seasons: { winter: { cells: '2 °C' } } },
  'a second journey': { journeys: { dairyRound: demo().journeys?.bakeryRound } },
  'a cycle to drive': { journeys: { town: { cycle: 'ECE-15' } } },
  'a run that no section serves': { runs: { branch: { current: '2000 A', length: '2 m' } } },
  'a run by its journey': { runs: { main: { current: undefined } } },
  'a weak motor': {
    motor: { peakTorque: '20 N·m', continuousTorque: '10 N·m', peakPower: '8 kW', continuousPower: '5 kW' },
  },
  'brakes of few words': { brakes: { regeneration: undefined, servo: true } },
  'brakes of one that is not raised': { car: { raised: undefined }, brakes: { parking: undefined } },
  'a motor that goes on braking': { brakes: { regeneration: '600 N', servo: true, vacuum: 'none' } },
  'slow to charge': { charger: { circuit: undefined, rule: undefined } },
}

/** Every assessment here, by what it is of. */
export const all: readonly (readonly [string, Assessment])[] = [
  ['the demo', of({})],
  ['the first try', assess(readBuild(sheetOf('wagtail-first-try')))],
  ['nothing but the car', assess(readBuild({ title: 'bare', car: demo().car }))],
  ...Object.entries(patches).map(([what, patch]) => [what, of(patch)] as const),
]
