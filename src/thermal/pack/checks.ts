/** What the course of a pack's temperature is held to, and what was taken for granted. */
import { type Assumption, assumed, type Check, says, type Told, trial } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { drynessTrials } from '../air/condensation.js'
import { boilsAt, phasesOf } from '../boiling.js'
import { BAND, type Run, type Track } from './follow.js'
import type { Pack } from './given.js'
import { chargedFromFreezing, usualChargeLimit } from './winter.js'

/** A temperature shown in °C. A drive has thousands: they are not read like text. @internal */
export function celsius(kelvins: number): Quantity<'temperature'> {
  return fromSi('temperature', kelvins, '°C')
}

/** The highest temperature that makers commonly allow, in kelvins: 60 °C. */
const USUAL_HIGH = 333.15

/** What the cells, the heater, the cooling and the coolant are held to. @internal */
export function checksOf(pack: Pack, run: Run): Check[] {
  const {
    tracks: [cells],
    lowestCharging,
  } = run
  const hottest = hottestOf(pack, run)
  const { low, high, charge } = pack.limits ?? {}
  const basis = 'the limit given for the cells'
  const highest = (limit: Quantity<'temperature'>, because: string) =>
    trial(
      'cell.hottest',
      'Highest cell temperature',
      hottest > cells.maximum
        ? says`the hottest cell is at ${celsius(hottest)} in its core, the pack at ${celsius(cells.maximum)}, at most ${limit}`
        : says`the cells are at ${celsius(cells.maximum)} at their hottest, at most ${limit}`,
      because,
      'limits.high',
      'hottest',
    )
  return [
    ...(high === undefined ? [] : [highest(high, basis)]),
    // Unasked, only what is surely too hot is held against a limit.
    ...(high === undefined && cells.maximum > USUAL_HIGH ? [highest(celsius(USUAL_HIGH), usualChargeLimit)] : []),
    ...(low === undefined
      ? []
      : [
          trial(
            'cell.coldest',
            'Lowest cell temperature',
            says`the cells are at ${celsius(cells.minimum)} at their coldest, at least ${low}`,
            basis,
            'limits.low',
          ),
        ]),
    ...(lowestCharging === undefined
      ? []
      : [
          trial(
            'cell.chargeTemperature',
            'Lowest cell temperature while charging',
            says`the cells are at ${celsius(lowestCharging)} at their coldest while they are charged, at least ${charge ?? quantity('temperature', 0, '°C')}`,
            charge === undefined ? usualChargeLimit : basis,
            'limits.charge',
            'current',
          ),
        ]),
    ...heaterChecks(pack),
    ...coolingChecks(pack, run),
    ...coolantChecks(pack, run),
    ...dryness(pack, run),
  ]
}

/** The hottest point of the cells: the core of the warmest of them. A pack that makes no heat has one temperature. @internal */
export function hottestOf({ hottest: { spread } }: Pack, { core, tally }: Run): number {
  return tally.made > 0 ? core + spread.si : core
}

/** Whether water settles on what a chiller cools. */
function dryness({ surroundings, humidity }: Pack, { chilled, tracks }: Run): Check[] {
  if (!Number.isFinite(chilled)) return []
  const what = tracks.length === 1 ? 'what the chiller cools' : 'what the chilled coolant passes'
  const air = { temperature: surroundings, humidity }
  return drynessTrials('cooling.dryness', celsius(chilled), what, air, 'cooling.power', 'surroundings', 'humidity')
}

/** A pack's sensors do not tell so many kelvins. Common practice, no source. */
const UNFELT = 0.1

/** Cooling that warms the cells, and cooling that never brings them down to where it switches off. */
function coolingChecks(pack: Pack, { wrongWay }: Run): Check[] {
  const { cooling, coolant, heatCapacity } = pack
  if (cooling === undefined) return []
  const unfelt = UNFELT * heatCapacity.si
  const energy = (joules: number) => quantity('energy', joules, 'J').as('kWh')
  const warmed = trial(
    'cooling.direction',
    'Heat that comes to the cells through the cooling',
    says`while the cooling runs, ${energy(wrongWay)} of heat comes to the cells through it, at most the ${energy(unfelt)} that warms them by 0.1 K`,
    'air or coolant that is warmer than the cells warms them; 0.1 K: common practice, no source',
    'cooling',
    'surroundings',
  )
  const direction = wrongWay > unfelt ? [warmed] : []
  const [fan, chiller] = [cooling.conductance?.si ?? 0, cooling.power?.si ?? 0]
  const end = endOf(pack, (coolant?.heat.si ?? 0) - chiller, fan)
  const withoutEnd = { fail: 'with the cooling always on the cells warm without end' }
  return [
    ...direction,
    ...endTrials(
      'cooling.reach',
      'Cells in the end, with the cooling always on and no heat of their own',
      'the temperature at which the cooling switches off',
      end - cooling.off.si,
      () =>
        Number.isFinite(end)
          ? says`the cells end at ${celsius(end)} with the cooling always on and no heat of their own, at most the ${cooling.off} at which it switches off`
          : withoutEnd,
      'cooling.off',
      'surroundings',
    ),
  ]
}

/** Where the cells end with so much put into them, or into their coolant, for ever. */
function endOf({ coolant, conductance, surroundings, initial }: Pack, put: number, fan: number): number {
  const past = conductance.si
  if (coolant === undefined) return surroundings.si + (put === 0 ? 0 : put / (past + fan))
  const across = coolant.fromCells.si
  // Cells to which nothing leads stay as they are.
  if (past + across === 0) return initial.si
  const away = coolant.toSurroundings.si + fan
  const carried = put * across
  return surroundings.si + (carried === 0 ? 0 : carried / (away * (past + across) + across * past))
}

/** Cells that end as many kelvins short of where it switches off, or at it: that they never reach either. */
function endTrials(
  id: string,
  name: string,
  basis: string,
  short: number,
  told: () => Told,
  ...paths: readonly string[]
): Check[] {
  const rounding = 1e-9
  if (short < -rounding) return []
  const never = { fail: `the cells come ever nearer to ${basis}, and never reach it` }
  return [trial(id, name, short <= rounding ? never : told(), basis, ...paths)]
}

/** Where the coolant freezes and boils, and how hot it leaves the heater. */
function coolantChecks({ coolant, heater }: Pack, { tracks: [, fluid], heated, chilled }: Run): Check[] {
  const hottest = celsius(Math.max(fluid?.maximum ?? 0, heated))
  const outlet =
    heater?.limit === undefined
      ? []
      : [
          trial(
            'heater.outlet',
            'Coolant leaving the heater',
            coolant?.capacityRate === undefined
              ? {
                  unknown: `how hot the coolant leaves the heater is not known: give ${coolant === undefined ? 'coolant with its capacityRate' : 'coolant.capacityRate'}`,
                }
              : says`the coolant leaves the heater at ${hottest} at its hottest, at most ${heater.limit}`,
            'heater.limit, as given',
            'heater.limit',
            'coolant.capacityRate',
          ),
        ]
  if (coolant?.fluid === undefined || fluid === undefined) return outlet
  const { freezes } = phasesOf[coolant.fluid]
  const boils = boilsAt(coolant.fluid, coolant.cap.plus(quantity('pressure', '101.325 kPa')))
  return [
    ...outlet,
    trial(
      'coolant.freezing',
      'Coldest coolant',
      says`the coolant is at ${celsius(Math.min(fluid.minimum, chilled))} at its coldest, at least ${freezes}`,
      `where ${coolant.fluid} freezes`,
      'coolant.fluid',
    ),
    trial(
      'coolant.boiling',
      'Hottest coolant',
      says`the coolant is at ${hottest} at its hottest, at most ${boils}`,
      `where ${coolant.fluid} boils`,
      'coolant.fluid',
      'coolant.cap',
    ),
  ]
}

/** A heater that cannot hold the cells where it would switch off never does, and the check says where it ends. */
function heaterChecks(pack: Pack): Check[] {
  const { heater } = pack
  if (heater === undefined) return []
  const end = endOf(pack, heater.power.si, 0)
  return endTrials(
    'heater.reach',
    'Cells in the end, with the heater always on and nothing else to warm them',
    'the temperature at which the heater switches off',
    heater.off.si - end,
    () =>
      says`the cells end at ${celsius(end)} with the heater always on and nothing else to warm them, at least the ${heater.off} at which it switches off`,
    'heater.off',
    'heater.power',
  )
}

/** What is taken for granted of a pack. @internal */
export function assumptionsOf(pack: Pack, { tracks: [cells], lowestCharging }: Run): Assumption[] {
  const { resistance, coolant, limits } = pack
  return [
    assumed(
      'pack.oneTemperature',
      coolant === undefined
        ? 'The pack has one temperature throughout.'
        : 'The cells have one temperature throughout, and so has the coolant; heater and cooling act on the coolant.',
    ),
    ...(resistance === undefined ? [] : resistanceAssumptions(resistance, cells)),
    ...(coolant !== undefined && coolant.initial === undefined
      ? [assumed('coolant.initial.default', 'The coolant starts as warm as the cells.')]
      : []),
    ...(lowestCharging !== undefined && limits?.charge === undefined ? [chargedFromFreezing('limits.charge')] : []),
    ...(pack.heat !== undefined && pack.heatOf === undefined && pack.heat.some(([power]) => power.si !== 0)
      ? [
          assumed(
            'heatOf.default',
            'The heat is that of a drive, and no limit of a charge is held (heatOf by default).',
          ),
        ]
      : []),
  ]
}

function resistanceAssumptions(measured: NonNullable<Pack['resistance']>, { minimum, maximum }: Track): Assumption[] {
  const { coldTemperature, coldResistance, warmTemperature, warmResistance } = measured
  const steepness = Math.log(coldResistance.ratioTo(warmResistance)) / (1 / coldTemperature.si - 1 / warmTemperature.si)
  // A chord lies above its curve by at most an eighth of the square of its width times the second derivative.
  const off = (BAND ** 2 / 8) * ((steepness / minimum ** 2) ** 2 + (2 * steepness) / minimum ** 3)
  const most = quantity('ratio', off).as('%')
  const isBeyond = minimum < coldTemperature.si || maximum > warmTemperature.si
  return [
    assumed(
      'resistance.arrhenius',
      `The resistance follows the law of Arrhenius in straight pieces of ${BAND} K, at most ${most} above it; the heat of entropy is left out.`,
    ),
    ...(isBeyond
      ? [
          assumed(
            'resistance.beyond',
            `Outside ${coldTemperature} to ${warmTemperature}, between which the resistance was measured, its law is a guess.`,
          ),
        ]
      : []),
  ]
}
