/** What the temperature of a pack is worked out from, and what of it is refused. */
import { choice, defaulted, given, group, optional, pairs, type Read } from '../../procedure/index.js'
import { InputError, type InputIssue } from '../../quantity/index.js'
import { humidityField } from '../air/condensation.js'
import { outdoors } from '../air/dry-air.js'
import { coolantField } from '../boiling.js'

const switchedFields = /*@__PURE__*/ (() => ({
  on: given('temperature', 'Cell temperature at which it switches on'),
  off: given('temperature', 'Cell temperature at which it switches off'),
}))()

const resistanceField = /*@__PURE__*/ (() =>
  group('The resistance of the pack at two temperatures', {
    coldTemperature: given('temperature', 'Colder temperature of measurement', { above: 0 }),
    coldResistance: given('resistance', 'Resistance measured in the cold', { above: 0 }),
    warmTemperature: given('temperature', 'Warmer temperature of measurement', { above: 0 }),
    warmResistance: given('resistance', 'Resistance measured in the warm', { above: 0 }),
  }))()

/** The heat capacity of a pack: of some tens to some hundreds of kilograms of cells. @internal */
export const packHeatCapacityField = /*@__PURE__*/ (() =>
  given('heatCapacity', 'Heat capacity of the pack', { above: 0, usual: ['10 kJ/K', '800 kJ/K'] }))()

/** @internal */
export const HOTTEST = 'By how much the hottest point of the cells is hotter than the pack, while they make heat'

/** @internal */
export const hottestFields = /*@__PURE__*/ (() => ({
  core: given(
    'time',
    'How long the heat of a cell stands in its core: its rise there over the rate at which it warms',
    {
      min: 0,
      usual: ['0 s', '30 min'],
      default: '5 min',
      because: 'own estimate: conduction gives 3 to 4 min in round cells of 18 to 21 mm and prismatic ones of 26 mm',
    },
  ),
  spread: given('temperatureDifference', 'By how much the warmest cell is warmer than the pack', {
    min: 0,
    usual: ['0 K', '20 K'],
    default: '5 K',
    because: 'common practice, no source',
  }),
}))()

/** What describes a pack, its heat, and what heats and cools it. @internal */
export const packFields = /*@__PURE__*/ (() => ({
  heatCapacity: packHeatCapacityField,
  conductance: given('thermalConductance', 'Conductance from the pack to its surroundings', { min: 0 }),
  surroundings: given('temperature', 'Temperature of the surroundings', outdoors),
  initial: given('temperature', 'Temperature of the pack at the start'),
  heat: optional(
    pairs(
      'The heat of the cells, step by step',
      given('power', 'Heat of the cells'),
      given('time', 'Duration', { above: 0 }),
      { least: 1 },
    ),
  ),
  current: optional(
    pairs(
      'The current of the pack, step by step',
      given('current', 'Current, positive on discharge'),
      given('time', 'Duration', { above: 0 }),
      { least: 1 },
    ),
  ),
  heatOf: optional(choice('Whether the heat is that of a drive or of a charge', ['drive', 'charge'])),
  resistance: optional(resistanceField),
  heater: optional(
    group('A heater that switches on in the cold', {
      power: given('power', 'Power of the heater', { above: 0 }),
      limit: optional(given('temperature', 'Most that the coolant may have as it leaves the heater')),
      ...switchedFields,
    }),
  ),
  cooling: optional(
    group('Cooling that switches on in the heat, by a power, a conductance, or both', {
      power: optional(given('power', 'Heat that it takes, as a chiller does', { above: 0 })),
      conductance: optional(
        given('thermalConductance', 'Conductance to the surroundings that it adds, as a fan does', { above: 0 }),
      ),
      ...switchedFields,
    }),
  ),
  coolant: optional(
    group('The coolant as a body of its own', {
      heatCapacity: given('heatCapacity', 'Heat capacity of coolant, plates and pipes', { above: 0 }),
      fromCells: given('thermalConductance', 'Conductance from the cells to the coolant', { min: 0 }),
      toSurroundings: given('thermalConductance', 'Conductance from the coolant to the surroundings', { min: 0 }),
      heat: given('power', 'Heat that comes into the coolant from elsewhere', {
        default: '0 W',
        because: 'nothing but the cells in its circuit',
      }),
      initial: optional(given('temperature', 'Temperature of the coolant at the start')),
      fluid: optional(coolantField, {
        absent: 'The coolant is not held to where it freezes and boils: give coolant.fluid.',
      }),
      cap: given('pressure', 'Pressure above that of the air at which the cap opens', {
        min: '0 kPa',
        max: '190 kPa',
        default: '0 kPa',
        because: 'an open tank',
      }),
      capacityRate: optional(
        given('thermalConductance', 'Flow of the coolant times its density and specific heat', { above: 0 }),
      ),
    }),
  ),
  hottest: defaulted(group(HOTTEST, hottestFields)),
  humidity: optional(humidityField),
  limits: optional(
    group('The limits of the cells', {
      low: optional(given('temperature', 'Lowest temperature allowed', { usual: ['-40 °C', '15 °C'] }), {
        absent: 'The coldest that the cells get is not held to a limit: give limits.low.',
      }),
      high: optional(given('temperature', 'Highest temperature allowed', { usual: ['30 °C', '75 °C'] }), {
        absent: 'The cells are held to the 60 °C that makers commonly allow: give limits.high.',
      }),
      charge: optional(
        given('temperature', 'Lowest temperature at which they may be charged', { usual: ['-10 °C', '15 °C'] }),
      ),
    }),
    { absent: 'The cells are held to what makers commonly allow, 60 °C and on charge 0 °C: give limits.' },
  ),
  every: optional(given('time', 'Time from point to point of the series, for a drawing', { above: 0 })),
}))()

/** A pack as it is read. @internal */
export type Pack = Read<typeof packFields>

/** The procedure, for its errors. @internal */
export const where = 'packTemperature'

/** Refuses what is well written but cannot be followed. @internal */
export function refuseUnusable(pack: Pack): void {
  const { heat, current, resistance, heater, cooling } = pack
  const issues: InputIssue[] = []
  if ((heat === undefined) === (current === undefined)) {
    const received = heat === undefined ? 'neither' : 'both'
    const expected = "either heat, such as [['1.2 kW', '20 min']], or current, such as [['90 A', '20 min']]"
    issues.push({ path: 'heat', expected, received })
  }
  if ((current === undefined) !== (resistance === undefined)) {
    const received = resistance === undefined ? 'nothing' : 'a resistance without a current'
    const expected = 'the resistance of the pack at two temperatures with a current, and only then'
    issues.push({ path: 'resistance', expected, received })
  }
  if (resistance !== undefined) issues.push(...resistanceIssues(resistance))
  if (heater !== undefined && heater.off.si <= heater.on.si) {
    const expected = `a temperature above that at which it switches on, ${heater.on}`
    issues.push({ path: 'heater.off', expected, received: String(heater.off) })
  }
  if (cooling !== undefined && cooling.off.si >= cooling.on.si) {
    const expected = `a temperature below that at which it switches on, ${cooling.on}`
    issues.push({ path: 'cooling.off', expected, received: String(cooling.off) })
  }
  if (cooling !== undefined && cooling.power === undefined && cooling.conductance === undefined) {
    const expected = "a power such as '800 W', a conductance such as '12 W/K', or both"
    issues.push({ path: 'cooling', expected, received: 'neither' })
  }
  if (heater !== undefined && cooling !== undefined && cooling.on.si < heater.off.si) {
    const expected = `at least the temperature at which the heater switches off, ${heater.off}`
    issues.push({
      path: 'cooling.on',
      expected,
      received: String(cooling.on),
      hint: 'they would work against each other',
    })
  }
  if (issues.length > 0) throw new InputError(where, issues)
}

function resistanceIssues({
  coldTemperature,
  coldResistance,
  warmTemperature,
  warmResistance,
}: NonNullable<Pack['resistance']>): InputIssue[] {
  const issues: InputIssue[] = []
  if (warmTemperature.si <= coldTemperature.si) {
    const expected = `a temperature above the colder one, ${coldTemperature}`
    issues.push({ path: 'resistance.warmTemperature', expected, received: String(warmTemperature) })
  }
  if (coldResistance.si < warmResistance.si) {
    const expected = `at least the resistance in the warm, ${warmResistance}`
    const hint = 'cells resist more in the cold: were the two exchanged?'
    issues.push({ path: 'resistance.coldResistance', expected, received: String(coldResistance), hint })
  }
  return issues
}
