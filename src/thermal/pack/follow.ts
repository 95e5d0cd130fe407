/**
 * Follows cells, and their coolant where it is a body of its own, from switching to switching.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapter 5, for bodies of one temperature, and on the law of
 * Arrhenius for the resistance of cells.
 */
import { CalculationError, type Quantity, quantity } from '../../quantity/index.js'
import { type Pack, where } from './given.js'
import { resistanceAtTemperature } from './heat.js'
import { type Lump, type Response, responseOf } from './lumps.js'

/** The course of a temperature while it is followed, in SI units. @internal */
export interface Track {
  readonly points: (readonly [time: number, temperature: number])[]
  maximum: number
  minimum: number
}

/** A while in which nothing switches and the heat is steady, of a pack that is one body. @internal */
export interface Stretch {
  readonly from: number
  readonly until: number
  readonly initial: number
  readonly power: number
  readonly conductance: number
}

type Tally = Record<'made' | 'coolantHeat' | 'heater' | 'cooling' | 'lost' | 'stored', number>

/** A pack as it was followed. @internal */
export interface Run {
  /** The courses of the cells and, where it is a body of its own, of the coolant. */
  readonly tracks: readonly [Track] | readonly [Track, Track]
  readonly stretches: readonly Stretch[]
  readonly tally: Tally
  /** Lowest temperature while current flows in. */
  readonly lowestCharging: number | undefined
  /** The most heat that came to the cells through the cooling from its switching on to its switching off. */
  readonly wrongWay: number
  /** The hottest that the coolant leaves the heater, and the coldest that it leaves the chiller, where its flow is known. */
  readonly heated: number
  readonly chilled: number
  /** The hottest that the core of a cell of the pack's own temperature becomes. */
  readonly core: number
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

/** Resistances at temperatures this far apart, in kelvins, are joined by straight lines. @internal */
export const BAND = 0.25
/** With more points than this, a thermostat chatters. */
const MOST_POINTS = 1e5
/** Cells burn long before, and the law of their resistance means nothing: 1000 °C, in kelvins. */
const HOTTEST = 1273.15
function stepsOf({ heat, heatOf, current }: Pack): Step[] {
  if (heat !== undefined) {
    const charges = heatOf === 'charge'
    return heat.map(([power, time]) => ({
      heat: power.si,
      current: 0,
      // Some cells take up heat while they are charged.
      charges: charges && power.si !== 0,
      duration: time.si,
    }))
  }
  return (current ?? []).map(([flow, time]) => ({ heat: 0, current: flow.si, charges: flow.si < 0, duration: time.si }))
}

/** @internal */
export function bodiesOf({ heatCapacity, conductance, surroundings, coolant }: Pack): Bodies {
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

/** Follows a pack from switching to switching. @internal */
export function follow(pack: Pack): Run {
  const bodies = bodiesOf(pack)
  const resistance = resistanceOf(pack)
  const every = pack.every?.si ?? Number.POSITIVE_INFINITY
  let temperatures: readonly number[] =
    pack.coolant === undefined ? [pack.initial.si] : [pack.initial.si, (pack.coolant.initial ?? pack.initial).si]
  const tracks = temperatures.map((at): Track => ({ points: [[0, at]], maximum: at, minimum: at }))
  const tally: Tally = { made: 0, coolantHeat: 0, heater: 0, cooling: 0, lost: 0, stored: 0 }
  const stretches: Stretch[] = []
  const [charging, heated, chilled] = [nothingYet(), nothingYet(), nothingYet()]
  const last = temperatures.length - 1
  let thermostat: Thermostat | undefined
  let [time, stepEnd, samples, sinceOn, wrongWay] = [0, 0, 1, 0, 0]
  // Above the pack, the core of a cell is a body of its own that its heat warms and the cell cools.
  let [above, core] = [0, temperatures[0] as number]
  const stands = pack.hottest.core.si
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
      const isCooling = thermostat.chiller + thermostat.fan > 0
      sinceOn = isCooling ? sinceOn + warmedBy(bodies, thermostat, temperatures, response, spent) : 0
      wrongWay = Math.max(wrongWay, sinceOn)
      for (const [i, track] of tracks.entries()) {
        widen(track, temperatures[i] as number, response, i, spent)
        if (track.minimum <= 0) throw belowZero(['cells', 'coolant'][i] as string, time)
      }
      if ((tracks[0] as Track).maximum > HOTTEST) throw tooHot(time + spent)
      const [before, led] = [above, (made * stands) / pack.heatCapacity.si]
      const aboveAt = (after: number) => (stands === 0 ? 0 : led + (before - led) * Math.exp(-after / stands))
      above = aboveAt(spent)
      const coreAt = (after: number) => cell + (response.warmed(after)[0] as number) + Math.max(0, aboveAt(after))
      core = Math.max(core, coreAt(0), highestWithin(coreAt, spent, stands))
      if (step.charges) widen(charging, cell, response, 0, spent)
      if (thermostat.heater > 0) widen(heated, temperatures[last] as number, response, last, spent)
      if (thermostat.chiller > 0) widen(chilled, temperatures[last] as number, response, last, spent)
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
  const rate = pack.coolant?.capacityRate?.si
  const through = (power: Quantity<'power'> | undefined) =>
    power === undefined || rate === undefined ? 0 : power.si / rate
  return {
    tracks: tracks as unknown as Run['tracks'],
    stretches,
    tally,
    lowestCharging: Number.isFinite(charging.minimum) ? charging.minimum : undefined,
    wrongWay,
    heated: heated.maximum + through(pack.heater?.power),
    chilled: chilled.minimum - through(pack.cooling?.power),
    core,
  }
}

/** The highest of a course that turns at most once on its way up: at its end, or found between. A short one hardly turns. */
function highestWithin(at: (after: number) => number, spent: number, timeConstant: number): number {
  if (spent < timeConstant / 20) return at(spent)
  let [low, high] = [0, spent]
  for (let round = 0; round < 40; round++) {
    const third = (high - low) / 3
    if (at(low + third) < at(high - third)) low += third
    else high -= third
  }
  return Math.max(at(spent), at((low + high) / 2))
}

/** The course of what has not happened yet. */
function nothingYet(): Track {
  return { points: [], maximum: Number.NEGATIVE_INFINITY, minimum: Number.POSITIVE_INFINITY }
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

/** The heat that came to the cells in a while through the cooling, which ran: from air or coolant that was warmer than they. */
function warmedBy(
  { surroundings, between }: Bodies,
  { chiller, fan }: Thermostat,
  [cell, fluid]: readonly number[],
  response: Response,
  spent: number,
): number {
  if (fluid !== undefined) return between * response.below(fluid - (cell as number), spent)
  // A fan warms colder cells, and what a chiller takes at the same time makes up for so many kelvins.
  return fan === 0 ? 0 : fan * response.below(surroundings - chiller / fan - (cell as number), spent)
}

/** Widens a course by the temperatures that a body comes to in a while: at its start, its end, and where it turns. */
function widen(track: Track, at: number, response: Response, body: number, spent: number): void {
  const turn = response.turns[body]
  const end = at + (response.warmed(spent)[body] as number)
  const between = turn !== undefined && turn < spent ? at + (response.warmed(turn)[body] as number) : end
  track.maximum = Math.max(track.maximum, at, between, end)
  track.minimum = Math.min(track.minimum, at, between, end)
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
