/**
 * Charging from the supply, and the 12 V converter.
 *
 * Rests on the definitions of power, power factor and efficiency, and on the open-circuit voltage behind a resistance.
 */
import { cite, definition, formula, input, output, section } from '../../formula/index.js'
import { highVoltage, lithiumCells, mainsCharging } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  choice,
  type Findings,
  given,
  group,
  isAbove,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  trial,
  type Unfinished,
  whole,
} from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { type ChargeLimit, chargeLimitOf } from '../pack/charge-limit.js'
import { openCircuitOf, packFields, refuseModule, resistanceOf, unusualOfPack } from '../pack/module.js'
import {
  cellTemperatureField,
  chargeCurrentCheck,
  temperatureAssumptions,
  temperatureChecks,
} from '../pack/operating-point.js'
import { currentAtVoltage, currentForPower, parallelCharge, seriesVoltage, terminalVoltage } from '../pack/pack.js'

/**
 * Time in which a pack takes in an energy at a steady power. The taper at the end of a charge comes on top.
 *
 * `t = E / (P * eta)`
 *
 * - `energy` (`E`, kWh): energy to put into the pack, at least 0 kWh
 * - `power` (`P`, kW): power drawn from the supply, above 0 kW
 * - `efficiency` (`eta`, a plain number): efficiency from the supply to the pack, above 0 and at most 1, 1 unless
 *   given
 * - gives `t`: charge time, in h
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * chargeTime({ energy: '24 kWh', power: '6 kW', efficiency: 0.8 })
 * // 5 h
 * // by definition (exact): 5 h
 * ```
 */
export const chargeTime = /*@__PURE__*/ formula({
  name: 'chargeTime',
  title: 'Charge time at constant power',
  inputs: {
    energy: input('energy', 'E', 'Energy to put into the pack', { min: 0 }),
    power: input('power', 'P', 'Power drawn from the supply', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency from the supply to the pack', { above: 0, max: 1, default: 1 }),
  },
  result: output('time', 't', 'Charge time', 'h'),
  expression: 'E / (P * eta)',
  source: definition,
  compute: ({ energy, power, efficiency }) => energy / (power * efficiency),
})

/**
 * Power of an alternating-current supply. The voltage is that of one phase to neutral, 230 V where the lines are 400
 * V apart. A supply across two lines, such as 240 V between split phases, counts as one phase of that voltage.
 *
 * `P = n * U * I * lambda`
 *
 * - `voltage` (`U`, V): voltage of one phase to neutral, root mean square, at least 0 V
 * - `current` (`I`, A): current in each phase, root mean square, at least 0 A
 * - `phases` (`n`, a plain number): number of phases, at least 1 and at most 3
 * - `powerFactor` (`lambda`, a plain number): power factor, at least 0 and at most 1
 * - gives `P`: active power, in kW
 * - Assumes: all phases carry the same current
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * acPower({ voltage: '230 V', current: '32 A', phases: 3, powerFactor: 1 })
 * // 22.08 kW
 * // common practice, no source (from memory): 22 kW
 * ```
 */
export const acPower = /*@__PURE__*/ formula({
  name: 'acPower',
  title: 'Power of an AC supply',
  inputs: {
    voltage: input('voltage', 'U', 'Voltage of one phase to neutral, root mean square', { min: 0 }),
    current: input('current', 'I', 'Current in each phase, root mean square', { min: 0 }),
    phases: input('ratio', 'n', 'Number of phases', { min: 1, max: 3 }),
    powerFactor: input('ratio', 'lambda', 'Power factor', { min: 0, max: 1 }),
  },
  result: output('power', 'P', 'Active power'),
  expression: 'n * U * I * lambda',
  assumes: ['All phases carry the same current.'],
  source: definition,
  compute: ({ voltage, current, phases, powerFactor }) => phases * voltage * current * powerFactor,
})

/**
 * Current that a DC converter draws from the pack. It is greatest when the pack is at its lowest voltage.
 *
 * `I = P / (U * eta)`
 *
 * - `power` (`P`, kW): power delivered, at least 0 kW
 * - `voltage` (`U`, V): input voltage, above 0 V
 * - `efficiency` (`eta`, a plain number): efficiency of the converter, above 0 and at most 1
 * - gives `I`: input current, in A
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * converterInputCurrent({ power: '980 W', voltage: '350 V', efficiency: 0.9 })
 * // 3.111 A
 * // by definition (exact): 3.111 A
 * ```
 */
export const converterInputCurrent = /*@__PURE__*/ formula({
  name: 'converterInputCurrent',
  title: 'Input current of a converter',
  inputs: {
    power: input('power', 'P', 'Power delivered', { min: 0 }),
    voltage: input('voltage', 'U', 'Input voltage', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency of the converter', { above: 0, max: 1 }),
  },
  result: output('current', 'I', 'Input current'),
  expression: 'P / (U * eta)',
  source: definition,
  compute: ({ power, voltage, efficiency }) => power / (voltage * efficiency),
})

/** A moment of a charge. */
export interface ChargePoint {
  readonly time: Quantity<'time'>
  readonly stateOfCharge: Quantity<'ratio'>
  /** At the terminals. */
  readonly voltage: Quantity<'voltage'>
  readonly current: Quantity<'current'>
  /** Into the terminals. */
  readonly power: Quantity<'power'>
}

/** A charge from the wall. */
export interface ChargePlan extends Findings {
  readonly time: Quantity<'time'>
  /** Drawn from the supply. */
  readonly wallEnergy: Quantity<'energy'>
  /** Stored in the pack: what is left of the energy into its terminals after its own heat. */
  readonly packEnergy: Quantity<'energy'>
  /** Made inside the pack. */
  readonly heat: Quantity<'energy'>
  readonly peakCurrent: Quantity<'current'>
  /** State of charge at the end: `to`, or less where the current fell to the cut-off before. */
  readonly reached: Quantity<'ratio'>
  /** What limits the power until the taper: `supply`, `charger`, or `charge current of the modules`. */
  readonly limitedBy: string
  /** When the taper begins; absent where the charge ends before. */
  readonly taperAt?: Quantity<'time'>
  /** The charge in at most 102 points, the start and the end among them. */
  readonly curve: readonly ChargePoint[]
}

/** What describes a socket. @internal */
export const supplyFields = /*@__PURE__*/ (() => ({
  voltage: given('voltage', 'Voltage of one phase to neutral', {
    above: 0,
    usual: ['100 V', '250 V', 'mains supplies'],
  }),
  current: given('current', 'Current in each phase that may be drawn all day', {
    above: 0,
    usual: ['6 A', '63 A'],
  }),
  phases: whole('How many phases', { min: 1, max: 3 }),
  circuit: optional(
    given('current', 'Rated current of the circuit that feeds it', { above: 0, usual: ['6 A', '125 A'] }),
  ),
  rule: optional(choice('By which rule a charge may load it for hours', ['NEC', 'IEC own circuit', 'domestic socket'])),
  powerFactor: given('ratio', 'Power factor of the charger', {
    above: 0,
    usual: [0.5, 1],
    max: 1,
    default: 1,
    because: 'chargers that correct it come close, common practice, no source',
  }),
}))()

/** What describes a charger. @internal */
export const chargerFields = /*@__PURE__*/ (() => ({
  power: given('power', 'Greatest power into the pack', { above: 0, usual: ['1.5 kW', '11 kW'] }),
  efficiency: given('ratio', 'Efficiency from the supply to the pack', { above: 0, max: 1, usual: [0.85, 0.95] }),
}))()

const chargeFields = /*@__PURE__*/ (() => ({
  pack: group('A pack of equal modules', packFields),
  stateOfCharge: given('ratio', 'State of charge at the start', { min: 0, max: 1 }),
  to: given('ratio', 'State of charge wanted', { min: 0, max: 1 }),
  supply: group('The socket', supplyFields),
  charger: group('The charger', chargerFields),
  taperVoltage: optional(
    given('voltage', 'Voltage of the pack at which the charger holds, at most that of the full pack', { above: 0 }),
  ),
  cutoff: optional(given('current', 'Current at which the charge ends', { above: 0 })),
  temperature: cellTemperatureField,
}))()

type Charge = Read<typeof chargeFields>

/** Steps of state of charge: the error of the time falls with their square, and is below a second in a night. */
const STEPS = 4000

/**
 * Plans a charge from the wall: constant power, or the charge current of the modules where that is less, and then constant
 * voltage with the current falling away.
 *
 * Answers: how long does a charge from the wall take, what does it draw, and what limits it?
 *
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`
 * - `stateOfCharge`: state of charge at the start, a plain number, at least 0 and at most 1
 * - `to`: state of charge wanted, a plain number, at least 0 and at most 1
 * - `supply`: the socket
 *   - `voltage`: voltage of one phase to neutral, in V, above 0 V
 *   - `current`: current in each phase that may be drawn all day, in A, above 0 A
 *   - `phases`: how many phases, a whole number, at least 1 and at most 3
 *   - `circuit`: rated current of the circuit that feeds it, in A, above 0 A, optional
 *   - `rule`: by which rule a charge may load it for hours, 'NEC' or 'IEC own circuit' or 'domestic socket', optional
 *   - `powerFactor`: power factor of the charger, a plain number, above 0 and at most 1, 1 by default (chargers that
 *     correct it come close, common practice, no source)
 * - `charger`: the charger
 *   - `power`: greatest power into the pack, in kW, above 0 kW
 *   - `efficiency`: efficiency from the supply to the pack, a plain number, above 0 and at most 1
 * - `taperVoltage`: voltage of the pack at which the charger holds, at most that of the full pack, in V, above 0 V,
 *   optional
 * - `cutoff`: current at which the charge ends, in A, above 0 A, optional
 * - `temperature`: temperature of the cells, in °C, optional
 * - always assumed: the charger turns the same share into heat at every power
 *
 * @returns Time, energies, peak current, the state of charge reached, and the curve. Into the terminals goes just what is
 * stored and what becomes heat. A charge that the cut-off ends before `to` is a failed check.
 * @throws InputError for input that cannot be used, by its path; CalculationError where the pack stands at the taper voltage
 * before the charge begins.
 * Source: by definition; Chen and others, Journal of the Electrochemical Society 167 (2020) 080534; Afshar and others
 * (2017).
 *
 * @example
 * ```ts
 * const { time, wallEnergy, reached } = chargePlan({
 *   pack: {
 *     module: {
 *       name: 'salvaged module of 12 cells',
 *       cellsInSeries: 12,
 *       chemistry: 'NMC',
 *       nominalVoltage: '44.4 V',
 *       minimumVoltage: '36 V',
 *       maximumVoltage: '50.4 V',
 *       capacity: '41 Ah',
 *       resistance: '14 mΩ',
 *       mass: '11.5 kg',
 *       continuousCurrent: '80 A',
 *     },
 *     series: 4,
 *     parallel: 2,
 *   },
 *   stateOfCharge: 0.2,
 *   to: 0.9,
 *   supply: { voltage: '230 V', current: '13 A', phases: 1 },
 *   charger: { power: '3.3 kW', efficiency: 0.92 },
 * })
 * String(time) // '3.832 h'
 * String(wallEnergy) // '11.46 kWh'
 * String(reached) // '90 %'
 * ```
 */
export const chargePlan = /*@__PURE__*/ procedure({
  name: 'chargePlan',
  title: 'A charge from the wall',
  answers: 'How long does a charge from the wall take, what does it draw, and what limits it?',
  input: chargeFields,
  source: [
    definition,
    cite('Chen and others, Journal of the Electrochemical Society 167 (2020) 080534'),
    cite('Afshar and others (2017)'),
  ],
  assumes: ['The charger turns the same share into heat at every power.'],
  work: (asked): Unfinished<ChargePlan> => {
    refuseCharge(asked)
    const { pack, stateOfCharge: from, to, supply, charger, temperature } = asked
    const { module, series, parallel } = pack
    const curve = openCircuitOf('chargePlan', 'pack.module', module)
    const full = seriesVoltage({ count: series, voltage: module.maximumVoltage })
    const taper = asked.taperVoltage ?? full
    const capacity = parallelCharge({ count: parallel, capacity: module.capacity })
    const cutoff = asked.cutoff ?? quantity('current', capacity.si / 20 / 3600, 'A')
    const { resistance, basis } = resistanceOf(pack, temperature)
    const { power, binding } = powerInto(supply, charger)
    const charge = chargeLimitOf(pack, 'the charge current', { temperature, field: 'temperature' })
    const mostCurrent = charge.most
    if (mostCurrent?.si === 0) throw takesNothing(temperature)
    const voltsAt = (state: number) => series * curve.voltsAt(state)
    const atStart = section(`At the start, ${from.as('%')}`, () => {
      const openCircuit = seriesVoltage({ count: series, voltage: curve.voltageAt(from) })
      const current = currentForPower({ openCircuit, resistance, power: power.times(-1) })
      terminalVoltage({ openCircuit, current, resistance })
      return { openCircuit, current: current.times(-1) }
    })
    if (atStart.openCircuit.si >= taper.si) {
      throw new CalculationError(
        'chargePlan',
        `at ${from.as('%')} the pack rests at ${atStart.openCircuit} and the charger holds ${taper}: nothing flows`,
        { openCircuit: String(atStart.openCircuit), taperVoltage: String(taper) },
      )
    }
    const run = charged({
      voltsAt,
      resistance: resistance.si,
      capacity: capacity.si,
      power: power.si,
      mostCurrent: mostCurrent?.si ?? Infinity,
      taper: taper.si,
      cutoff: cutoff.si,
      from: from.si,
      to: to.si,
    })
    const binds = mostCurrent !== undefined && mostCurrent.si < atStart.current.si
    const energy = (joules: number) => quantity('energy', joules, 'J').as('kWh')
    if (run.taperAt !== undefined) {
      section(`At the end of the charge, ${quantity('ratio', run.reached).as('%')}`, () =>
        currentAtVoltage({ openCircuit: quantity('voltage', voltsAt(run.reached), 'V'), terminal: taper, resistance }),
      )
    }
    return {
      time: hours(run.time),
      wallEnergy: energy((run.stored + run.heat) / charger.efficiency.si),
      packEnergy: energy(run.stored),
      heat: energy(run.heat),
      peakCurrent: quantity('current', run.peakCurrent, 'A'),
      reached: quantity('ratio', run.reached).as('%'),
      limitedBy: binds ? charge.name : binding,
      ...(run.taperAt === undefined ? {} : { taperAt: hours(run.taperAt) }),
      curve: run.points.map(([time, state, current, voltage]) => ({
        time: hours(time),
        stateOfCharge: quantity('ratio', state).as('%'),
        voltage: quantity('voltage', voltage, 'V'),
        current: quantity('current', current, 'A'),
        power: quantity('power', voltage * current, 'W').as('kW'),
      })),
      checks: [...chargeChecks(asked, run, charge), circuitTrial(supply, charger)],
      assumptions: [
        assumed('pack.openCircuit', curve.basis),
        assumed('pack.resistance', basis),
        ...charge.assumptions,
        ...chargeAssumptions(asked, full, cutoff),
      ],
      notes: unusualOfPack('pack', pack),
      cautions: [lithiumCells, highVoltage, mainsCharging],
    }
  },
})

/** What the charger puts into the pack at most, and whether it or the supply is the less. */
function powerInto({ voltage, current, phases, powerFactor }: Charge['supply'], charger: Charge['charger']) {
  const atWall = acPower({
    voltage,
    current,
    phases: quantity('ratio', phases),
    powerFactor,
  })
  const fromSupply = atWall.times(charger.efficiency.si)
  return fromSupply.si < charger.power.si
    ? { power: fromSupply, binding: 'supply' }
    : { power: charger.power, binding: 'charger' }
}

/** What a domestic socket bears for hours. Practice in several countries, from memory; 8 A in some. */
const DOMESTIC = /*@__PURE__*/ (() => quantity('current', '10 A'))()

/** What the charger draws from each phase: what it needs for its power, or what the supply lets flow where that is less. */
function drawnFrom(
  { voltage, current, phases, powerFactor }: Charge['supply'],
  charger: Charge['charger'],
): Quantity<'current'> {
  const wanted = charger.power.si / charger.efficiency.si / (voltage.si * phases * powerFactor.si)
  return wanted < current.si ? quantity('current', wanted, 'A') : current
}

/** What a circuit may give for hours: by no stated rule as by the strictest. @internal */
export function allDayOf(circuit: Quantity<'current'>, rule: Charge['supply']['rule']): Quantity<'current'> {
  if (rule === 'IEC own circuit') return circuit
  const socket = isAbove(circuit, DOMESTIC) ? DOMESTIC : circuit
  if (rule === 'domestic socket') return socket
  const share = circuit.times(SHARE)
  return rule === undefined && isAbove(share, socket) ? socket : share
}

/** Share of its circuit that a load of hours may take by NFPA 70 (NEC), 625.41. @internal */
export const SHARE = 0.8

/** What the rules let a charge load a circuit for hours. @internal */
export function circuitTrial(supply: Charge['supply'], charger: Charge['charger']): Check {
  const { current, circuit, rule } = supply
  const told = (says: Told, basis: string) =>
    trial('charge.circuit', 'Load of the circuit for hours', says, basis, 'supply.circuit', 'supply.rule')
  const drawn = drawnFrom(supply, charger)
  if (circuit !== undefined && isAbove(current, circuit)) {
    return told(
      says`the supply lets ${current} flow, at most the ${circuit} of its circuit`,
      'IEC 60364-4-43, 433.1 (from memory)',
    )
  }
  if (rule === 'domestic socket') {
    return told(
      says`the charger draws ${drawn} for hours, at most the ${DOMESTIC} that a domestic socket bears`,
      'practice in several countries, from memory',
    )
  }
  if (circuit === undefined) {
    return told(
      { unknown: `whether the circuit bears ${drawn} for hours is not known: give supply.circuit and supply.rule` },
      'NFPA 70 (NEC), 625.41; IEC 60364-7-722',
    )
  }
  if (rule === 'IEC own circuit') {
    return told(
      says`the charger draws ${drawn} for hours, at most the ${circuit} of a circuit of its own`,
      'IEC 60364-7-722',
    )
  }
  const share = allDayOf(circuit, rule)
  if (rule === undefined) {
    return told(
      isAbove(drawn, share)
        ? {
            unknown: `whether a circuit of ${circuit} bears ${drawn} for hours, or only ${share} as a domestic socket or by the NEC, depends on the rule: give supply.rule`,
          }
        : says`the charger draws ${drawn} for hours, at most the ${share} that every rule leaves a circuit of ${circuit}`,
      'NFPA 70 (NEC), 625.41; practice in several countries for domestic sockets, from memory',
    )
  }
  return told(
    says`the charger draws ${drawn} for hours, at most the ${share}, 80 % of its circuit`,
    'NFPA 70 (NEC), 625.41',
  )
}

function chargeAssumptions(
  { pack, supply, taperVoltage, cutoff, temperature }: Charge,
  full: Quantity<'voltage'>,
  end: Quantity<'current'>,
): Assumption[] {
  return [
    ...(taperVoltage === undefined
      ? [
          assumed(
            'charge.taperVoltage',
            `The charger holds the voltage of the full pack, ${full} (taperVoltage by default).`,
          ),
        ]
      : []),
    ...(cutoff === undefined
      ? [
          assumed(
            'charge.cutoff',
            `The charge ends when the current has fallen to ${end}, C/20 (cutoff by default; common practice, no source).`,
          ),
        ]
      : []),
    ...temperatureAssumptions(pack, 'charge', temperature),
    ...(supply.phases === 1
      ? []
      : [assumed('supply.phases', `The ${supply.voltage} of the supply lie between a phase and neutral.`)]),
  ]
}

function hours(seconds: number): Quantity<'time'> {
  return quantity('time', seconds, 's').as('h')
}

function refuseCharge({ pack, stateOfCharge: from, to, taperVoltage }: Charge): void {
  refuseModule('chargePlan', 'pack.module', pack.module)
  if (from.si >= to.si) {
    const expected = `a state of charge above the one at the start, ${from}`
    throw new InputError('chargePlan', [{ path: 'to', expected, received: String(to) }])
  }
  const full = pack.module.maximumVoltage.times(pack.series)
  if (taperVoltage !== undefined && taperVoltage.si > full.si) {
    const expected = `at most the voltage of the full pack, ${full}`
    throw new InputError('chargePlan', [
      { path: 'taperVoltage', expected, received: String(taperVoltage), hint: 'beyond it cells burn' },
    ])
  }
}

/** The refusal of a charge at a temperature at which the modules take none. */
function takesNothing(temperature: Quantity<'temperature'> | undefined): InputError {
  const expected = 'a temperature at which pack.module.chargeCurrents lets a charge in'
  return new InputError('chargePlan', [{ path: 'temperature', expected, received: String(temperature ?? 'none') }])
}

/** A charge on plain numbers. */
interface ChargeRun {
  readonly voltsAt: (state: number) => number
  readonly resistance: number
  readonly capacity: number
  readonly power: number
  readonly mostCurrent: number
  readonly taper: number
  readonly cutoff: number
  readonly from: number
  readonly to: number
}

/** Steps through the states of charge; each step takes its charge at the current in its middle. */
function charged({ voltsAt, resistance, capacity, power, mostCurrent, taper, cutoff, from, to }: ChargeRun) {
  const currentAt = (openCircuit: number) => {
    const byPower = -currentForPower.compute({ openCircuit, resistance, power: -power })
    const byVoltage = (taper - openCircuit) / resistance
    const current = Math.min(byPower, mostCurrent, byVoltage)
    return { current, tapers: current === byVoltage }
  }
  const step = (to - from) / STEPS
  let [time, stored, heat, peakCurrent, reached] = [0, 0, 0, 0, from]
  let taperAt: number | undefined
  const points: [number, number, number, number][] = []
  const note = (current: number, openCircuit: number) =>
    points.push([time, reached, current, openCircuit + current * resistance])
  const first = currentAt(voltsAt(from))
  note(first.current, voltsAt(from))
  for (let i = 0; i < STEPS; i++) {
    const openCircuit = voltsAt(from + (i + 0.5) * step)
    const { current, tapers } = currentAt(openCircuit)
    if (tapers && current < cutoff) {
      note(currentAt(voltsAt(reached)).current, voltsAt(reached))
      break
    }
    if (tapers && taperAt === undefined) taperAt = time
    const duration = (capacity * step) / current
    time += duration
    stored += openCircuit * current * duration
    heat += current ** 2 * resistance * duration
    peakCurrent = Math.max(peakCurrent, current)
    reached = i === STEPS - 1 ? to : from + (i + 1) * step
    if ((i + 1) % (STEPS / 100) === 0) {
      const end = voltsAt(reached)
      note(Math.max(0, currentAt(end).current), end)
    }
  }
  return {
    time,
    stored,
    heat,
    peakCurrent: Math.max(peakCurrent, Math.min(first.current, mostCurrent)),
    reached,
    taperAt,
    points,
  }
}

function chargeChecks(
  { pack, to, temperature }: Charge,
  { reached, peakCurrent }: ReturnType<typeof charged>,
  charge: ChargeLimit,
): Check[] {
  return [
    ...(reached < to.si
      ? [
          check(
            'charge.reached',
            'State of charge reached',
            quantity('ratio', reached).as('%'),
            'at least',
            to,
            'to, as given',
            'to',
          ),
        ]
      : []),
    // What is known of the charge current holds the charge.
    ...(charge.unknown === undefined ? [] : [chargeCurrentCheck(charge, quantity('current', peakCurrent, 'A'))]),
    ...temperatureChecks(pack, 'charge', temperature),
  ]
}
