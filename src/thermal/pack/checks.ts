/** What the course of a pack's temperature is held to, and what was taken for granted. */
import { type Assumption, assumed, type Check, check, says, trial } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { phasesOf, waterBoilingPoint } from '../boiling.js'
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
  const { low, high, charge } = pack.limits ?? {}
  const basis = 'the limit given for the cells'
  const highest = (limit: Quantity<'temperature'>, because: string) =>
    check('cell.hottest', 'Highest cell temperature', celsius(cells.maximum), 'at most', limit, because, 'limits.high')
  return [
    ...(high === undefined ? [] : [highest(high, basis)]),
    // Unasked, only what is surely too hot is held against a limit.
    ...(high === undefined && cells.maximum > USUAL_HIGH ? [highest(celsius(USUAL_HIGH), usualChargeLimit)] : []),
    ...(low === undefined
      ? []
      : [
          check(
            'cell.coldest',
            'Lowest cell temperature',
            celsius(cells.minimum),
            'at least',
            low,
            basis,
            'limits.low',
          ),
        ]),
    ...(lowestCharging === undefined
      ? []
      : [
          check(
            'cell.chargeTemperature',
            'Lowest cell temperature while charging',
            celsius(lowestCharging),
            'at least',
            charge ?? quantity('temperature', 0, '°C'),
            charge === undefined ? usualChargeLimit : basis,
            'limits.charge',
            'current',
          ),
        ]),
    ...heaterChecks(pack),
    ...coolingChecks(pack, run),
    ...coolantChecks(pack, run),
  ]
}

/** A pack's sensors do not tell so many kelvins. Common practice, no source. */
const UNFELT = 0.1

/** Cooling that warms the cells, and cooling that never brings them down to where it switches off. */
function coolingChecks(
  { cooling, coolant, conductance, surroundings, heatCapacity }: Pack,
  { wrongWay }: Run,
): Check[] {
  if (cooling === undefined) return []
  const unfelt = UNFELT * heatCapacity.si
  const energy = (joules: number) => quantity('energy', joules, 'J').as('kWh')
  const warmed = trial(
    'cooling.direction',
    'Heat that comes to the cells through the cooling',
    says`while the cooling runs, ${energy(wrongWay)} come to the cells through it, at most the ${energy(unfelt)} that warm them by 0.1 K`,
    'air or coolant that is warmer than the cells warms them; 0.1 K: common practice, no source',
    'cooling',
    'surroundings',
  )
  const direction = wrongWay > unfelt ? [warmed] : []
  const [fan, chiller] = [cooling.conductance?.si ?? 0, cooling.power?.si ?? 0]
  const past = conductance.si
  // The cells in the end, with the cooling always on and no heat of their own.
  const leads = (coolant?.toSurroundings.si ?? past) + fan
  const across = coolant?.fromCells.si ?? 0
  const put = (coolant?.heat.si ?? 0) - chiller
  const held = coolant === undefined ? leads : leads * (1 + past / across) + past
  const end =
    put === 0 ? surroundings.si : held === 0 ? Math.sign(put) * Number.POSITIVE_INFINITY : surroundings.si + put / held
  if (coolant !== undefined && across === 0) return direction
  if (!Number.isFinite(end) || end < cooling.off.si) return direction
  return [
    ...direction,
    check(
      'cooling.reach',
      'Cells in the end, with the cooling always on and no heat of their own',
      celsius(end),
      'at most',
      cooling.off,
      'the temperature at which it switches off',
      'cooling.off',
      'surroundings',
    ),
  ]
}

/** Where the coolant freezes and boils, and how hot it leaves the heater. */
function coolantChecks({ coolant, heater }: Pack, { tracks: [, fluid], tally }: Run): Check[] {
  const limit = heater?.limit
  const rate = coolant?.capacityRate
  const outlet =
    limit === undefined
      ? []
      : [
          trial(
            'heater.outlet',
            'Coolant leaving the heater',
            fluid === undefined || rate === undefined
              ? { unknown: 'how hot the coolant leaves the heater is not known: give coolant.capacityRate' }
              : says`leaves the heater at ${celsius(fluid.maximum + (tally.heater > 0 ? (heater as { readonly power: Quantity<'power'> }).power.si / rate.si : 0))}, at most ${limit}`,
            'heater.limit, as given',
            'heater.limit',
            'coolant.capacityRate',
          ),
        ]
  if (coolant?.fluid === undefined || fluid === undefined) return outlet
  const { freezes, boilsBy } = phasesOf[coolant.fluid]
  const boils = waterBoilingPoint({ pressure: coolant.cap.plus(quantity('pressure', '101.325 kPa')) })
  return [
    ...outlet,
    check(
      'coolant.freezing',
      'Coldest coolant',
      celsius(fluid.minimum),
      'at least',
      freezes,
      `where ${coolant.fluid} freezes`,
      'coolant.fluid',
    ),
    check(
      'coolant.boiling',
      'Hottest coolant',
      celsius(fluid.maximum),
      'at most',
      celsius(boils.si + boilsBy),
      `where ${coolant.fluid} boils`,
      'coolant.fluid',
      'coolant.cap',
    ),
  ]
}

/** A heater that cannot hold the cells where it would switch off never does, and the check says where it ends. */
function heaterChecks(pack: Pack): Check[] {
  const { heater, coolant, conductance, surroundings } = pack
  if (heater === undefined) return []
  const [cells, fluid, across] = [conductance.si, coolant?.toSurroundings.si ?? 0, coolant?.fromCells.si ?? 0]
  // Cells to which nothing leads stay as they are.
  if (coolant !== undefined && cells + across === 0) return []
  // What the heater must give for each kelvin by which it holds the cells above their surroundings.
  const held = coolant === undefined ? cells : fluid * (1 + cells / across) + cells
  const end = surroundings.si + heater.power.si / held
  if (end > heater.off.si) return []
  return [
    check(
      'heater.reach',
      'Cells in the end, with the heater always on and nothing else to warm them',
      celsius(end),
      'at least',
      heater.off,
      'the temperature at which it switches off',
      'heater.off',
      'heater.power',
    ),
  ]
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
    ...(pack.heat !== undefined && pack.heatOf === undefined && pack.heat.some(([power]) => power.si > 0)
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
