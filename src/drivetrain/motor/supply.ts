/**
 * What the pack can give the drive and take from it, and the voltage that is left at the controller.
 *
 * Rests on circuit theory: the open-circuit voltage behind one resistance, within the limits of modules and controller.
 */
import { chargeLimitOf } from '../../electrical/pack/charge-limit.js'
import { openCircuitOf, type Pack, refuseModule, resistanceOf } from '../../electrical/pack/module.js'
import { currentAtVoltage, currentForPower, terminalPower, terminalVoltage } from '../../electrical/pack/pack.js'
import { type Assumption, assumed, type Check, check, trial } from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import type { Controller } from '../vehicle.js'
import type { Rating } from './envelope.js'

/** A bound on a current or a voltage, in SI, and what sets it. */
type Bound = readonly [value: number, limitedBy: string]

/** A pack with its controller, on plain SI numbers: for loops. @internal */
export interface Supply {
  /** Volts at rest at a state of charge. */
  readonly openCircuitAt: (stateOfCharge: number) => number
  readonly resistance: number
  /** Lowest voltage under load. */
  readonly floor: Bound
  /** Highest voltage on charge. */
  readonly ceiling: Bound
  /** Most current on discharge. */
  readonly discharge: { readonly [rating in Rating]: Bound }
  /** Most current on charge, as a positive figure. */
  readonly charge: Bound
  /** That nobody said what the cells take back; absent where it is said. */
  readonly recovered?: Check
  /** That nobody said how much cells so cold resist; absent where it is said. */
  readonly cold?: Check
  /** That the full pack is more than its controller bears; absent where it is not. */
  readonly tooHigh?: Check
  readonly assumptions: readonly Assumption[]
}

/** The most power in one direction, as positive SI numbers, and what sets it. @internal */
export interface PowerLimit {
  /** Watts at the terminals. */
  readonly power: number
  readonly current: number
  readonly limitedBy: string
}

/**
 * Reads a pack with the controller that it feeds.
 *
 * @param where - The procedure, for its errors.
 * @param temperature - Of the cells: warm unless given.
 * @throws InputError for a module whose figures contradict each other, or that does not tell its open-circuit voltage.
 *
 * @internal
 */
export function supplyOf(
  where: string,
  pack: Pack,
  controller: Controller = {},
  temperature?: Quantity<'temperature'>,
): Supply {
  refuseModule(where, 'pack.module', pack.module)
  const { module, series, parallel } = pack
  const curve = openCircuitOf(where, 'pack.module', module)
  const { resistance, basis, unknown: inTheCold } = resistanceOf(pack, temperature)
  const { batteryCurrent, continuousCurrent, chargeCurrent, minimumVoltage, maximumVoltage } = controller
  if (continuousCurrent !== undefined && batteryCurrent !== undefined && continuousCurrent.si > batteryCurrent.si) {
    const expected = `at most the battery current, ${batteryCurrent}`
    throw new InputError(where, [
      { path: 'controller.continuousCurrent', expected, received: String(continuousCurrent) },
    ])
  }
  const untold = [
    ...(batteryCurrent === undefined ? ['controller.batteryCurrent'] : []),
    ...(minimumVoltage === undefined ? ['controller.minimumVoltage'] : []),
    ...(maximumVoltage === undefined ? ['controller.maximumVoltage'] : []),
  ]
  const full = module.maximumVoltage.times(series)
  const drawn: Bound[] = batteryCurrent === undefined ? [] : [[batteryCurrent.si, 'battery current of the controller']]
  const continuous: Bound = [module.continuousCurrent.si * parallel, 'continuous current of the modules']
  const peak: Bound =
    module.peakCurrent === undefined ? continuous : [module.peakCurrent.si * parallel, 'peak current of the modules']
  const charge = chargeLimitOf(pack, 'what braking recovers', { temperature, field: 'cellTemperature' })
  const unknown = unknownInTheCold(pack, temperature) ?? charge.unknown
  const outsideCharge = outside(pack, 'charge', temperature)?.peak
  return {
    // Cells that may not be charged take nothing back, whatever else is not known.
    ...(unknown === undefined || outsideCharge !== undefined ? {} : { recovered: recoveredCheck(unknown) }),
    ...(inTheCold === undefined ? {} : { cold: coldCheck(inTheCold) }),
    ...(maximumVoltage === undefined || full.si <= maximumVoltage.si
      ? {}
      : { tooHigh: tooHighCheck(full, maximumVoltage) }),
    openCircuitAt: (state) => series * curve.voltsAt(state),
    resistance: resistance.si,
    floor: greatest([
      [module.minimumVoltage.si * series, 'lowest voltage of the modules'],
      ...(minimumVoltage === undefined ? [] : [[minimumVoltage.si, 'lowest voltage of the controller'] as const]),
    ]),
    ceiling: least([
      [full.si, 'highest voltage of the modules'],
      ...(maximumVoltage === undefined ? [] : [[maximumVoltage.si, 'highest voltage of the controller'] as const]),
    ]),
    discharge: outside(pack, 'discharge', temperature) ?? {
      peak: least([peak, ...drawn]),
      continuous: least([
        continuous,
        ...drawn,
        ...(continuousCurrent === undefined
          ? []
          : [[continuousCurrent.si, 'continuous current of the controller'] as const]),
      ]),
    },
    charge:
      outsideCharge ??
      least([
        [charge.most?.si ?? Infinity, charge.name],
        ...(chargeCurrent === undefined ? [] : [[chargeCurrent.si, 'charge current of the controller'] as const]),
      ]),
    assumptions: [
      assumed('pack.openCircuit', curve.basis),
      assumed('pack.resistance', basis),
      assumed('pack.links', 'The modules are equal and share the current; links and contactors add no resistance.'),
      ...(temperature === undefined || module.temperatures === undefined
        ? [
            assumed(
              'pack.module.temperatures.absent',
              'The temperature of the cells is not held to limits: give cellTemperature and pack.module.temperatures.',
            ),
          ]
        : []),
      ...(untold.length === 0
        ? []
        : [
            assumed(
              'controller.absent',
              `The pack is held to the limits of its modules, not to the controller's: give ${untold.join(' and ')}.`,
            ),
          ]),
      ...(batteryCurrent !== undefined && continuousCurrent === undefined
        ? [
            assumed(
              'controller.continuousCurrent.absent',
              `The controller draws ${batteryCurrent} all day (controller.continuousCurrent by default).`,
            ),
          ]
        : []),
      ...(batteryCurrent !== undefined && batteryCurrent.si > peak[0]
        ? [
            assumed(
              'controller.batteryCurrent.set',
              `The controller is set to draw no more than ${quantity('current', peak[0], 'A')}, the ${peak[1]}, though it can draw ${batteryCurrent}.`,
            ),
          ]
        : []),
      ...(module.peakCurrent === undefined
        ? [
            assumed(
              'pack.module.peakCurrent.absent',
              'The modules give their continuous current also for a short time: no peakCurrent is given.',
            ),
          ]
        : []),
      ...charge.assumptions,
    ],
  }
}

/** What a pack gives, where nobody said how much it resists in the cold. */
function coldCheck(unknown: string): Check {
  return trial(
    'pack.coldResistance',
    'Power of the cold pack',
    { unknown },
    'resistance at one temperature tells none elsewhere',
    'pack.module.cold',
    'cellTemperature',
  )
}

/** A full pack that destroys its controller. */
function tooHighCheck(full: Quantity<'voltage'>, maximum: Quantity<'voltage'>): Check {
  return check(
    'controller.maximumVoltage',
    'Full pack at the controller',
    full,
    'at most',
    maximum,
    'controller.maximumVoltage',
    'pack.series',
    'controller.maximumVoltage',
  )
}

/** What is told of a pack apart from what is asked of it. @internal */
export function supplyChecks(supply: Supply | undefined): Check[] {
  return [supply?.cold ?? [], supply?.tooHigh ?? []].flat()
}

/** Below this, cells take a charge only as their maker says. Common practice, no source. */
const FREEZING = 273.15

/** Why frozen cells may not take back what warm ones do. */
function unknownInTheCold({ module }: Pack, temperature: Quantity<'temperature'> | undefined): string | undefined {
  if (temperature === undefined || temperature.si >= FREEZING) return undefined
  if ((module.chargeCurrents ?? module.temperatures) !== undefined) return undefined
  return `whether cells of ${temperature} take what braking recovers is not known: give pack.module.chargeCurrents or pack.module.temperatures`
}

/** What braking recovers, where nobody said whether the cells take it back. */
function recoveredCheck(unknown: string): Check {
  return trial(
    'pack.recovered',
    'Recovered current',
    { unknown },
    'regeneration is charging',
    'pack.module.chargeCurrent',
    'pack.module.chargeCurrents',
    'cellTemperature',
  )
}

/** Cells that are too cold or too warm for a direction give or take nothing. */
function outside(
  { module }: Pack,
  way: 'charge' | 'discharge',
  temperature: Quantity<'temperature'> | undefined,
): { readonly peak: Bound; readonly continuous: Bound } | undefined {
  const span = module.temperatures?.[way]
  if (span === undefined || temperature === undefined) return undefined
  const isCold = temperature.si < span.minimum.si
  if (!isCold && temperature.si <= span.maximum.si) return undefined
  const bound: Bound = [0, `temperature of the cells, too ${isCold ? 'cold' : 'warm'} for ${way}`]
  return { peak: bound, continuous: bound }
}

function least(bounds: readonly Bound[]): Bound {
  return bounds.reduce((one, other) => (other[0] < one[0] ? other : one))
}

function greatest(bounds: readonly Bound[]): Bound {
  return bounds.reduce((one, other) => (other[0] > one[0] ? other : one))
}

/** The most power on discharge at an open-circuit voltage, in volts. @internal */
export function greatestDischarge(supply: Supply, openCircuit: number, rating: Rating): PowerLimit {
  const { resistance } = supply
  const [floor, floorName] = supply.floor
  // Past half the open-circuit voltage more current gives less power.
  const half = openCircuit / 2
  const [terminal, voltageName] = floor >= half ? [floor, floorName] : [half, 'resistance of the pack']
  return powerAt(openCircuit, resistance, 1, [
    supply.discharge[rating],
    [currentAtVoltage.compute({ openCircuit, terminal, resistance }), voltageName],
  ])
}

/** The most power on charge at an open-circuit voltage, in volts. @internal */
export function greatestCharge(supply: Supply, openCircuit: number): PowerLimit {
  const { resistance } = supply
  const [terminal, name] = supply.ceiling
  return powerAt(openCircuit, resistance, -1, [
    supply.charge,
    [-currentAtVoltage.compute({ openCircuit, terminal, resistance }), name],
  ])
}

function powerAt(openCircuit: number, resistance: number, sign: 1 | -1, bounds: readonly Bound[]): PowerLimit {
  const [bound, limitedBy] = least(bounds)
  const current = Math.max(0, bound)
  const voltage = terminalVoltage.compute({ openCircuit, current: sign * current, resistance })
  return { power: terminalPower.compute({ voltage, current }), current, limitedBy }
}

/** Voltage at the terminals, in volts, under a power, negative on charge, that the pack can give. @internal */
export function loadedVoltage({ resistance }: Supply, openCircuit: number, power: number): number {
  const current = currentForPower.compute({ openCircuit, resistance, power })
  return terminalVoltage.compute({ openCircuit, current, resistance })
}

/** The refusal of a power that the pack cannot give or take, which says how much it can. @internal */
export function powerRefused(
  where: string,
  asked: Quantity<'power'>,
  limit: PowerLimit,
  stateOfCharge: Quantity<'ratio'>,
): CalculationError {
  const atMost = quantity('power', limit.power, 'W').as('kW')
  const state = stateOfCharge.as('%')
  const figures = { power: String(asked), atMost: String(atMost), stateOfCharge: String(state) }
  const message = `the pack cannot give ${asked}: at most ${atMost} at ${state} state of charge, held by the ${limit.limitedBy}`
  return new CalculationError(where, message, figures)
}
