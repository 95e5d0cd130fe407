/** Figures that may be left out for something plain. */
import { pathText } from '../../src/procedure/path.js'
import type { Place } from './inputs.js'

/** Optional figures in whose place something plain stands, and what: leaving them out describes another car or another road. */
const plain: { readonly [path: string]: string } = {
  'journey[].*': 'the level road, and the air and auxiliaries of the whole journey',
  'gearbox.gears': 'one fixed ratio',
  'added[].count': 'one of it',
  'removed[].count': 'one of it',
  'bays[].accepts': 'whatever is placed',
  'bays[].pitch*': 'modules that stand in one place',
  'target.*': 'another aim',
  'axles.front.damper': 'an axle of whose dampers nothing is asked',
  'axles.rear.damper': 'an axle of whose dampers nothing is asked',
  'axles.front.keepHeight': 'a spring to fit',
  'axles.rear.keepHeight': 'a spring to fit',
  'axles.front.targetFrequency': 'the old frequency',
  'axles.rear.targetFrequency': 'the old frequency',
  'regeneration.front': 'an axle that the motor does not brake',
  'regeneration.rear': 'an axle that the motor does not brake',
  'segments[].heat': 'no heat from that part',
  'heater': 'no heater',
  'cooling': 'no cooling',
  'coolant': 'cells of one temperature with all that touches them',
  'cooling.conductance': 'a chiller alone',
  'cooling.power': 'a fan alone',
  'candidates': 'a link that is only described',
  'maximumMass': 'modules of any mass',
  'available': 'as many modules as it takes',
  'segments[].inletLimit': 'a part that takes coolant of any temperature',
  'segments[].minimumFlow': 'a part that takes any flow',
  'minimumFlow': 'any flow',
  'limits.low': 'cells that may be as cold as they get',
  'grade': 'no hill to start on',
  'speeds': 'no speed to reach',
  'packEnergy': 'no pack to compare with',
  'bays[].inside': 'a bay of any room',
  'bays[].maximumMass': 'a bay that carries any mass',
  'mains': 'a circuit that hangs on no mains',
}

/** Whether something plain stands in the place of what is left out. */
export function isPlain(path: Place['path']): boolean {
  const at = pathText(path).replaceAll(/\[\d+\]/g, '[]')
  return Object.keys(plain).some((each) => (each.endsWith('*') ? at.startsWith(each.slice(0, -1)) : at === each))
}
