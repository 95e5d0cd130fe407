/**
 * The temperature of a pack over a drive, a charge or a night.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapter 5, for bodies of one temperature, on Bernardi,
 * Pawlikowski and Newman (1985) for the heat of cells, and on the law of Arrhenius for their resistance.
 */
import { cite, section } from '../../formula/index.js'
import { lithiumCells } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  choice,
  type Findings,
  given,
  group,
  optional,
  pairs,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { outdoors } from '../air/dry-air.js'
import { coolantField, phasesOf, waterBoilingPoint } from '../boiling.js'
import { lumpedTemperature, thermalTimeConstant } from '../lumped.js'
import { cellHeat, resistanceAtTemperature } from './heat.js'
import { type Lump, type Response, responseOf } from './lumps.js'
import { chargedFromFreezing, usualChargeLimit } from './winter.js'

/** The course of a temperature, and its ends. */
export interface TemperatureCourse {
  /** Times and temperatures: the start, the end of each step, every switching, and the times asked for. */
  readonly series: readonly (readonly [time: Quantity<'time'>, temperature: Quantity<'temperature'>])[]
  /** Highest temperature, also between the points of the series. */
  readonly maximum: Quantity<'temperature'>
  /** Lowest temperature, also between the points of the series. */
  readonly minimum: Quantity<'temperature'>
  readonly final: Quantity<'temperature'>
}

/** What becomes of a pack's heat over the whole time. */
export interface PackEnergies {
  /** Heat that the cells make. */
  readonly made: Quantity<'energy'>
  /** Heat that comes into the coolant from elsewhere, 0 without a coolant. */
  readonly coolantHeat: Quantity<'energy'>
  /** Heat of the heater. */
  readonly heater: Quantity<'energy'>
  /** Heat that the cooling takes. */
  readonly cooling: Quantity<'energy'>
  /** Heat lost to the surroundings; negative where they warm the pack. */
  readonly lost: Quantity<'energy'>
  /** Heat that is in the pack, and its coolant, at the end and was not at the start. */
  readonly stored: Quantity<'energy'>
}

/** The temperature of a pack over time. */
export interface PackTemperature extends TemperatureCourse, Findings {
  /** The course of the coolant, where it is a body of its own. */
  readonly coolant?: TemperatureCourse
  readonly energies: PackEnergies
}

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

const packFields = /*@__PURE__*/ (() => ({
  heatCapacity: given('heatCapacity', 'Heat capacity of the pack', { above: 0 }),
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
  limits: optional(
    group('The limits of the cells', {
      low: optional(given('temperature', 'Lowest temperature allowed')),
      high: optional(given('temperature', 'Highest temperature allowed'), {
        absent: 'The cells are held to the 60 °C that makers commonly allow: give limits.high.',
      }),
      charge: optional(given('temperature', 'Lowest temperature at which they may be charged')),
    }),
    { absent: 'The cells are held to what makers commonly allow, 60 °C and on charge 0 °C: give limits.' },
  ),
  every: optional(given('time', 'Time from point to point of the series, for a drawing', { above: 0 })),
}))()

type Pack = Read<typeof packFields>
const where = 'packTemperature'

/**
 * Finds the temperature of a pack over time, exactly: while heat, heater and cooling are steady it follows the exact
 * response of a body of one temperature (or of two, cells and coolant), and the moments at which a thermostat switches
 * are found from that response, not stepped over.
 *
 * What the cells make is `heat`, steps of power and duration, as a drive cycle or a charge makes it; or `current`, steps of
 * current and duration, with the `resistance` of the pack at two temperatures, between and beyond which it follows the law of
 * Arrhenius. A `heater` switches on when the cells come down to one temperature and off when they come up to a higher one;
 * `cooling` the other way round. A `coolant` is a body of its own, to which heater and cooling then belong; `conductance` is
 * then that of the cells past the coolant.
 *
 * Answers: how warm or cold do the cells become over a drive, a charge or a night?
 *
 * - `heatCapacity`: heat capacity of the pack, in kJ/K, above 0 kJ/K
 * - `conductance`: conductance from the pack to its surroundings, in W/K, at least 0 W/K
 * - `surroundings`: temperature of the surroundings, in °C
 * - `initial`: temperature of the pack at the start, in °C
 * - `heat`: the heat of the cells, step by step, pairs of heat of the cells and duration, optional
 * - `current`: the current of the pack, step by step, pairs of current, positive on discharge and duration, optional
 * - `heatOf`: whether the heat is that of a drive or of a charge, 'drive' or 'charge', optional
 * - `resistance`: the resistance of the pack at two temperatures, optional
 *   - `coldTemperature`: colder temperature of measurement, in °C, above -273.15 °C
 *   - `coldResistance`: resistance measured in the cold, in mΩ, above 0 mΩ
 *   - `warmTemperature`: warmer temperature of measurement, in °C, above -273.15 °C
 *   - `warmResistance`: resistance measured in the warm, in mΩ, above 0 mΩ
 * - `heater`: a heater that switches on in the cold, optional
 *   - `power`: power of the heater, in kW, above 0 kW
 *   - `limit`: most that the coolant may have as it leaves the heater, in °C, optional
 *   - `on`: cell temperature at which it switches on, in °C
 *   - `off`: cell temperature at which it switches off, in °C
 * - `cooling`: cooling that switches on in the heat, by a power, a conductance, or both, optional
 *   - `power`: heat that it takes, as a chiller does, in kW, above 0 kW, optional
 *   - `conductance`: conductance to the surroundings that it adds, as a fan does, in W/K, above 0 W/K, optional
 *   - `on`: cell temperature at which it switches on, in °C
 *   - `off`: cell temperature at which it switches off, in °C
 * - `coolant`: the coolant as a body of its own, optional
 *   - `heatCapacity`: heat capacity of coolant, plates and pipes, in kJ/K, above 0 kJ/K
 *   - `fromCells`: conductance from the cells to the coolant, in W/K, at least 0 W/K
 *   - `toSurroundings`: conductance from the coolant to the surroundings, in W/K, at least 0 W/K
 *   - `heat`: heat that comes into the coolant from elsewhere, in kW, 0 W by default (nothing but the cells in its
 *     circuit)
 *   - `initial`: temperature of the coolant at the start, in °C, optional
 *   - `fluid`: coolant, 'water' or 'ethylene glycol 50 %', optional
 *   - `cap`: pressure above that of the air at which the cap opens, in kPa, at least 0 kPa and at most 190 kPa, 0 kPa
 *     by default (an open tank)
 *   - `capacityRate`: flow of the coolant times its density and specific heat, in W/K, above 0 W/K, optional
 * - `limits`: the limits of the cells, optional
 *   - `low`: lowest temperature allowed, in °C, optional
 *   - `high`: highest temperature allowed, in °C, optional
 *   - `charge`: lowest temperature at which they may be charged, in °C, optional
 * - `every`: time from point to point of the series, for a drawing, in s, above 0 s, optional
 *
 * @returns The {@link PackTemperature}: series, maximum, minimum, final, the heat balance, and checks of the limits.
 * @throws InputError for what cannot be used, by its path; CalculationError where a thermostat would switch more than
 * 100 000 times, where more heat is taken out than there is, or where the cells would be hotter than 1000 °C.
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5; Bernardi, Pawlikowski and Newman (1985), heat
 * of cells.
 *
 * @example
 * ```ts
 * const night = packTemperature({
 *   heatCapacity: '150 kJ/K',
 *   conductance: '8 W/K',
 *   surroundings: '-10 °C',
 *   initial: '25 °C',
 *   heat: [['0 W', '8 h']],
 * })
 * String(night.final) // '-2.467 °C'
 * ```
 */
export const packTemperature = /*@__PURE__*/ procedure({
  name: where,
  title: 'Temperature of a pack over time',
  answers: 'How warm or cold do the cells become over a drive, a charge or a night?',
  input: packFields,
  source: [
    cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
    cite('Bernardi, Pawlikowski and Newman (1985)', 'heat of cells'),
  ],
  work: (pack): Unfinished<PackTemperature> => {
    refuseUnusable(pack)
    const run = follow(pack)
    worked(pack, run.stretches)
    const { tally } = run
    const [cells, coolant] = run.tracks
    const energy = (joules: number) => quantity('energy', joules, 'J').as('kWh')
    return {
      ...courseOf(cells),
      ...(coolant === undefined ? {} : { coolant: courseOf(coolant) }),
      energies: {
        made: energy(tally.made),
        coolantHeat: energy(tally.coolantHeat),
        heater: energy(tally.heater),
        cooling: energy(tally.cooling),
        lost: energy(tally.lost),
        stored: energy(tally.stored),
      },
      checks: checksOf(pack, run),
      assumptions: assumptionsOf(pack, run),
      cautions: [lithiumCells],
    }
  },
})

/** The course of a temperature while it is followed, in SI units. */
interface Track {
  readonly points: (readonly [time: number, temperature: number])[]
  maximum: number
  minimum: number
}

/** A while in which nothing switches and the heat is steady, of a pack that is one body. */
interface Stretch {
  readonly from: number
  readonly until: number
  readonly initial: number
  readonly power: number
  readonly conductance: number
}

type Tally = { -readonly [P in keyof PackEnergies]: number }

interface Run {
  /** The courses of the cells and, where it is a body of its own, of the coolant. */
  readonly tracks: readonly [Track] | readonly [Track, Track]
  readonly stretches: readonly Stretch[]
  readonly tally: Tally
  /** Lowest temperature while current flows in. */
  readonly lowestCharging: number | undefined
  /** Heat that came to the cells through the cooling while it ran. */
  readonly wrongWay: number
}

/** What acts on a pack during one step. */
interface Step {
  readonly heat: number
  readonly current: number
  /** Whether the cells take a charge in it. */
  readonly charges: boolean
  readonly duration: number
}

/** Cells, and the coolant where it is one: all that does not change. SI units. */
interface Bodies {
  readonly surroundings: number
  readonly capacities: readonly number[]
  /** Conductance of each to the surroundings. */
  readonly away: readonly number[]
  readonly between: number
  /** Heat into each from elsewhere. */
  readonly heats: readonly number[]
}

/** Whether heater and cooling are on, and what they then do: watts into the last body, and conductance added to it. */
interface Thermostat {
  readonly heater: number
  readonly chiller: number
  readonly fan: number
  /** Cell temperatures at which it switches next. */
  readonly levels: readonly number[]
}

/** Resistances at temperatures this far apart, in kelvins, are joined by straight lines. */
const BAND = 0.25
/** With more points than this, a thermostat chatters. */
const MOST_POINTS = 1e5
/** Cells burn long before, and the law of their resistance means nothing: 1000 °C, in kelvins. */
const HOTTEST = 1273.15
/** So many stretches a working shows one by one. */
const SHOWN = 12

function stepsOf({ heat, heatOf, current }: Pack): Step[] {
  if (heat !== undefined) {
    const charges = heatOf === 'charge'
    return heat.map(([power, time]) => ({
      heat: power.si,
      current: 0,
      charges: charges && power.si > 0,
      duration: time.si,
    }))
  }
  return (current ?? []).map(([flow, time]) => ({ heat: 0, current: flow.si, charges: flow.si < 0, duration: time.si }))
}

function bodiesOf({ heatCapacity, conductance, surroundings, coolant }: Pack): Bodies {
  return {
    surroundings: surroundings.si,
    capacities: coolant === undefined ? [heatCapacity.si] : [heatCapacity.si, coolant.heatCapacity.si],
    away: coolant === undefined ? [conductance.si] : [conductance.si, coolant.toSurroundings.si],
    between: coolant?.fromCells.si ?? 0,
    heats: [0, coolant?.heat.si ?? 0],
  }
}

/** The thermostat at a cell temperature, from whether heater and cooling were on. */
function thermostatOf({ heater, cooling }: Pack, cell: number, was: Thermostat | undefined): Thermostat {
  const isHeating =
    heater !== undefined && (cell <= heater.on.si || (was !== undefined && was.heater > 0 && cell < heater.off.si))
  const wasCooling = was !== undefined && was.chiller + was.fan > 0
  const isCooling = cooling !== undefined && (cell >= cooling.on.si || (wasCooling && cell > cooling.off.si))
  return {
    heater: isHeating ? heater.power.si : 0,
    chiller: isCooling ? (cooling.power?.si ?? 0) : 0,
    fan: isCooling ? (cooling.conductance?.si ?? 0) : 0,
    levels: [
      heater && (isHeating ? heater.off.si : heater.on.si),
      cooling && (isCooling ? cooling.off.si : cooling.on.si),
    ].filter((level) => level !== undefined),
  }
}

/** A straight piece of the resistance over temperature. */
interface Piece {
  readonly low: number
  readonly high: number
  readonly slope: number
}

/** The resistance of a pack by the law of Arrhenius, in straight pieces. */
function resistanceOf({ resistance }: Pack) {
  if (resistance === undefined) return undefined
  const { coldTemperature, coldResistance, warmTemperature, warmResistance } = resistance
  const measured = {
    coldTemperature: coldTemperature.si,
    coldResistance: coldResistance.si,
    warmTemperature: warmTemperature.si,
    warmResistance: warmResistance.si,
  }
  const known = new Map<number, number>()
  const at = (edge: number) => {
    const ohms = known.get(edge) ?? resistanceAtTemperature.compute({ ...measured, temperature: edge * BAND })
    known.set(edge, ohms)
    return ohms
  }
  const pieceAbove = (edge: number): Piece => ({
    low: edge * BAND,
    high: (edge + 1) * BAND,
    slope: (at(edge + 1) - at(edge)) / BAND,
  })
  return (cell: number) => {
    const edge = Math.floor(cell / BAND)
    const up = pieceAbove(edge)
    // At an edge, one piece lies above and another below.
    const down = cell === up.low ? pieceAbove(edge - 1) : up
    return { ohms: at(edge) + up.slope * (cell - up.low), up, down }
  }
}

/** Follows a pack from switching to switching. */
function follow(pack: Pack): Run {
  const bodies = bodiesOf(pack)
  const resistance = resistanceOf(pack)
  const every = pack.every?.si ?? Number.POSITIVE_INFINITY
  let temperatures: readonly number[] =
    pack.coolant === undefined ? [pack.initial.si] : [pack.initial.si, (pack.coolant.initial ?? pack.initial).si]
  const tracks = temperatures.map((at): Track => ({ points: [[0, at]], maximum: at, minimum: at }))
  const tally: Tally = { made: 0, coolantHeat: 0, heater: 0, cooling: 0, lost: 0, stored: 0 }
  const stretches: Stretch[] = []
  const charging: Track = { points: [], maximum: Number.NEGATIVE_INFINITY, minimum: Number.POSITIVE_INFINITY }
  let thermostat: Thermostat | undefined
  let [time, stepEnd, samples, wrongWay] = [0, 0, 1, 0]
  for (const step of stepsOf(pack)) {
    stepEnd += step.duration
    while (time < stepEnd) {
      const [cell] = temperatures as [number]
      thermostat = thermostatOf(pack, cell, thermostat)
      const { response, made, falls, levels } = spellOf(bodies, step, thermostat, temperatures, resistance)
      const stop = Math.min(stepEnd, samples * every)
      const next = firstOf(response, cell, [...thermostat.levels, ...levels], stop - time)
      const spent = next?.time ?? stop - time
      book(tally, bodies, thermostat, { made, falls, spent, temperatures, response })
      wrongWay += warmedBy(bodies, thermostat, temperatures, response, spent)
      for (const [i, track] of tracks.entries()) {
        widen(track, temperatures[i] as number, response, i, spent)
        if (track.minimum <= 0) throw belowZero(['cells', 'coolant'][i] as string, time)
      }
      if ((tracks[0] as Track).maximum > HOTTEST) throw tooHot(time + spent)
      if (step.charges) widen(charging, cell, response, 0, spent)
      if (resistance === undefined && temperatures.length === 1) {
        const power = made + thermostat.heater - thermostat.chiller
        const conductance = (bodies.away[0] as number) + thermostat.fan
        stretches.push({ from: time, until: time + spent, initial: cell, power, conductance })
      }
      const warmed = response.warmed(spent)
      temperatures = temperatures.map((at, i) =>
        i === 0 && next !== undefined ? next.level : at + (warmed[i] as number),
      )
      time = next === undefined ? stop : time + spent
      if (time >= samples * every) samples++
      // Where one piece of the resistance goes over into the next, nothing happens that a reader must see.
      if (next === undefined || thermostat.levels.includes(next.level)) {
        for (const [i, { points }] of tracks.entries()) points.push([time, temperatures[i] as number])
        if ((tracks[0] as Track).points.length > MOST_POINTS) throw tooManyPoints(time)
      }
    }
  }
  return {
    tracks: tracks as unknown as Run['tracks'],
    stretches,
    tally,
    lowestCharging: Number.isFinite(charging.minimum) ? charging.minimum : undefined,
    wrongWay,
  }
}

/** How the temperatures go on from here while nothing switches, with the heat of the cells and the edges of its law. */
function spellOf(
  { surroundings, capacities, away, between, heats }: Bodies,
  { heat, current }: Step,
  { heater, chiller, fan }: Thermostat,
  temperatures: readonly number[],
  resistance: ReturnType<typeof resistanceOf>,
) {
  const [cell, fluid] = temperatures as [number, number | undefined]
  const here = current === 0 ? undefined : resistance?.(cell)
  const made = heat + current ** 2 * (here?.ohms ?? 0)
  const last = capacities.length - 1
  const lumps = capacities.map((heatCapacity, i): Lump => {
    const temperature = temperatures[i] as number
    const conductance = (away[i] as number) + (i === last ? fan : 0)
    const other = fluid === undefined ? 0 : between * ((i === 0 ? fluid : cell) - temperature)
    const put = (i === 0 ? made : 0) + (heats[i] as number) + (i === last ? heater - chiller : 0)
    return { heatCapacity, conductance, rate: put + other - conductance * (temperature - surroundings) }
  })
  const respond = (falls: number) => {
    const [cells, coolant] = lumps as [Lump, Lump | undefined]
    const first = { ...cells, conductance: cells.conductance + falls }
    return responseOf(coolant === undefined ? [first] : [first, coolant], between)
  }
  if (here === undefined) return { response: respond(0), made, falls: 0, levels: [] }
  const { rate } = lumps[0] as Lump
  const isRising = rate === 0 ? respond(0).direction >= 0 : rate > 0
  const piece = isRising ? here.up : here.down
  const falls = -(current ** 2) * piece.slope
  return { response: respond(falls), made, falls, levels: [piece.low, piece.high] }
}

/** The first level that the cells come to, and when. */
function firstOf(
  response: Response,
  cell: number,
  levels: readonly number[],
  until: number,
): { readonly time: number; readonly level: number } | undefined {
  let first: { readonly time: number; readonly level: number } | undefined
  for (const level of levels) {
    const time = response.reaches(level - cell, first?.time ?? until)
    if (time !== undefined) first = { time, level }
  }
  return first
}

/** Enters what passes in a while. Each heat is an integral of its own, so that their balance proves the temperatures. */
function book(
  tally: Tally,
  { surroundings, capacities, away, heats }: Bodies,
  { heater, chiller, fan }: Thermostat,
  spell: {
    readonly made: number
    readonly falls: number
    readonly spent: number
    readonly temperatures: readonly number[]
    readonly response: Response
  },
): void {
  const { made, falls, spent, temperatures, response } = spell
  const integrals = response.integrals(spent)
  const warmed = response.warmed(spent)
  const overAir = temperatures.map((at, i) => (at - surroundings) * spent + (integrals[i] as number))
  tally.made += made * spent - falls * (integrals[0] as number)
  tally.coolantHeat += (heats[1] as number) * spent
  tally.heater += heater * spent
  tally.cooling += chiller * spent + fan * (overAir.at(-1) as number)
  for (const [i, over] of overAir.entries()) tally.lost += (away[i] as number) * over
  for (const [i, capacity] of capacities.entries()) tally.stored += capacity * (warmed[i] as number)
}

/** The heat that came to the cells in a while through a cooling that ran: from air or coolant that was warmer than they. */
function warmedBy(
  { surroundings, between }: Bodies,
  { chiller, fan }: Thermostat,
  temperatures: readonly number[],
  response: Response,
  spent: number,
): number {
  if (chiller + fan === 0) return 0
  const [cells, coolant] = temperatures.map((at, i) => at * spent + (response.integrals(spent)[i] as number)) as [
    number,
    number | undefined,
  ]
  const gained =
    coolant === undefined ? fan * (surroundings * spent - cells) - chiller * spent : between * (coolant - cells)
  return Math.max(0, gained)
}

/** Widens a course by the temperatures that a body comes to in a while: at its start, its end, and where it turns. */
function widen(track: Track, at: number, response: Response, body: number, spent: number): void {
  const turn = response.turns[body]
  const end = at + (response.warmed(spent)[body] as number)
  const between = turn !== undefined && turn < spent ? at + (response.warmed(turn)[body] as number) : end
  track.maximum = Math.max(track.maximum, at, between, end)
  track.minimum = Math.min(track.minimum, at, between, end)
}

/** A temperature shown in °C. A drive has thousands: they are not read like text. */
function celsius(kelvins: number): Quantity<'temperature'> {
  return fromSi('temperature', kelvins, '°C')
}

function courseOf({ points, maximum, minimum }: Track): TemperatureCourse {
  return {
    series: points.map(([time, at]) => [fromSi('time', time, 's'), celsius(at)]),
    maximum: celsius(maximum),
    minimum: celsius(minimum),
    final: celsius((points.at(-1) as Track['points'][number])[1]),
  }
}

/** Writes down, for the working, what the course starts from, and a short course stretch by stretch. */
function worked(pack: Pack, stretches: readonly Stretch[]): void {
  const { heatCapacity, surroundings, initial: temperature, resistance, current } = pack
  const first = current?.[0]?.[0]
  if (resistance !== undefined && first !== undefined) {
    section('Cells at the start', () =>
      cellHeat({ current: first, resistance: resistanceAtTemperature({ temperature, ...resistance }), temperature }),
    )
  }
  if (pack.coolant !== undefined) {
    const { capacities, away, between } = bodiesOf(pack)
    const [cells, coolant] = capacities.map(
      (each, i): Lump => ({ heatCapacity: each, rate: 0, conductance: away[i] as number }),
    )
    const { decays } = responseOf([cells as Lump, coolant as Lump], between)
    const times = decays.map((decay) =>
      Number.isFinite(1 / decay) ? String(quantity('time', 1 / decay, 's')) : 'no end',
    )
    section(`Cells and coolant as two bodies, of time constants ${times.join(' and ')}`, () => {})
  }
  // Where hardly anything is lost, the printed formula would divide by next to nothing.
  const loses = (through: number, time: number) => through * time > 1e-6 * heatCapacity.si
  if (stretches.length > SHOWN) return
  for (const { from, until, initial, power, conductance: whole } of stretches) {
    if (!loses(whole, until - from)) continue
    const [start, end] = [from, until].map((at) => quantity('time', at, 's'))
    const through = quantity('thermalConductance', whole, 'W/K')
    section(`From ${start} to ${end}`, () =>
      lumpedTemperature({
        initial: quantity('temperature', initial, 'K').as('°C'),
        surroundings,
        time: quantity('time', until - from, 's'),
        timeConstant: thermalTimeConstant({ heatCapacity, conductance: through }),
        power: quantity('power', power, 'W'),
        conductance: through,
      }),
    )
  }
}

/** The highest temperature that makers commonly allow, in kelvins: 60 °C. */
const USUAL_HIGH = 333.15
function checksOf(pack: Pack, run: Run): Check[] {
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

/** Cooling that warms the cells, and cooling that never brings them down to where it switches off. */
function coolingChecks({ cooling, coolant, conductance, surroundings }: Pack, { tally, wrongWay }: Run): Check[] {
  if (cooling === undefined) return []
  const energy = (joules: number) => quantity('energy', joules, 'J').as('kWh')
  // What rounding leaves of the heats that were booked is none.
  const some = 1e-9 * (Math.abs(tally.made) + Math.abs(tally.cooling) + Math.abs(tally.stored))
  const direction = check(
    'cooling.direction',
    'Heat that comes to the cells through the cooling',
    energy(wrongWay > some ? wrongWay : 0),
    'at most',
    energy(0),
    'air or coolant that is warmer than the cells warms them',
    'cooling',
    'surroundings',
  )
  const [fan, chiller] = [cooling.conductance?.si ?? 0, cooling.power?.si ?? 0]
  const past = conductance.si
  // The cells in the end, with the cooling always on and no heat of their own.
  const leads = (coolant?.toSurroundings.si ?? past) + fan
  const across = coolant?.fromCells.si ?? 0
  const put = (coolant?.heat.si ?? 0) - chiller
  const held = coolant === undefined ? leads : leads * (1 + past / across) + past
  const end =
    put === 0 ? surroundings.si : held === 0 ? Math.sign(put) * Number.POSITIVE_INFINITY : surroundings.si + put / held
  if (coolant !== undefined && across === 0) return [direction]
  if (!Number.isFinite(end) || end < cooling.off.si) return [direction]
  return [
    direction,
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

function assumptionsOf(pack: Pack, { tracks: [cells], lowestCharging }: Run): Assumption[] {
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

function tooManyPoints(time: number): CalculationError {
  const reached = quantity('time', time, 's').as('h')
  return new CalculationError(
    where,
    `heater or cooling would switch, or points were asked for, more than ${MOST_POINTS} times by ${reached}: set the ` +
      'temperatures at which they switch on and off farther apart, or ask for fewer points',
    { time: String(reached) },
  )
}

function tooHot(time: number): CalculationError {
  const by = quantity('time', time, 's').as('h')
  return new CalculationError(
    where,
    `the cells would be hotter than 1000 °C by ${by}: look at the units of current, heat and heat capacity`,
    { time: String(by) },
  )
}

function belowZero(body: string, time: number): CalculationError {
  const since = quantity('time', time, 's').as('h')
  return new CalculationError(
    where,
    `the ${body} would cool below absolute zero, from ${since} on: more heat is taken out than there is`,
    { time: String(since) },
  )
}

/** Refuses what is well written but cannot be followed. */
function refuseUnusable(pack: Pack): void {
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
