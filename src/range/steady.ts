/**
 * Energy and range at steady speeds: where the energy of each kilometre goes, and at which speed least is needed.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4 (road load), and on Larminie & Lowry, Electric
 * Vehicle Technology Explained (2003), chapter 7 (the chain from wheels to battery).
 */
import { greatestDischarge, powerRefused, supplyChecks } from '../drivetrain/motor/supply.js'
import { gradeField, loadWorked } from '../drivetrain/pull/drive.js'
import { type Air, airOf, weatherOf, withWeatherCounted } from '../drivetrain/road/air.js'
import { roadPower } from '../drivetrain/road/road-load.js'
import { airField, airFields, onTheRoad } from '../drivetrain/vehicle.js'
import { cite, section } from '../formula/index.js'
import { highVoltage, lithiumCells } from '../procedure/cautions.js'
import {
  type Assumption,
  defaulted,
  type Findings,
  given,
  group,
  list,
  merged,
  optional,
  procedure,
  type Read,
  required,
  type Unfinished,
  undecided,
} from '../procedure/index.js'
import { CalculationError, InputError, type Quantity } from '../quantity/index.js'
import { fromSi } from '../quantity/quantity.js'
import { batteryPower, consumption, rangeFromConsumption } from './consumption.js'
import { isOfPack, limits, Motion } from './drive/motion.js'
import {
  conditionsOf,
  type PackInUse,
  type Powertrain,
  packInUse,
  powertrainFields,
  powertrainOf,
  sourceFields,
} from './drive/powertrain.js'

/** What a kilometre takes at a steady speed. */
export interface SteadyEnergy {
  readonly speed: Quantity<'speed'>
  /** The gear that draws least, where gears are given. */
  readonly gear?: string
  /** From the terminals of the pack; negative where it is charged downhill. */
  readonly consumption: Quantity<'energyPerDistance'>
  readonly batteryPower: Quantity<'power'>
  /** Where it goes: they add up to the consumption. */
  readonly shares: {
    readonly air: Quantity<'energyPerDistance'>
    readonly tyres: Quantity<'energyPerDistance'>
    /** Negative downhill. */
    readonly grade: Quantity<'energyPerDistance'>
    /** Heat of the brakes, where a hill drives the car. */
    readonly brakes: Quantity<'energyPerDistance'>
    readonly driveline: Quantity<'energyPerDistance'>
    readonly motor: Quantity<'energyPerDistance'>
    readonly auxiliaries: Quantity<'energyPerDistance'>
  }
}

/** What steady speeds take. */
export interface EnergyAtSpeed extends Findings {
  /** In the order in which the speeds were given. */
  readonly speeds: readonly SteadyEnergy[]
  /** The speed at which a kilometre takes least; absent where it takes less the slower the car is. */
  readonly least?: { readonly speed: Quantity<'speed'>; readonly consumption: Quantity<'energyPerDistance'> }
}

/** A steady speed. @internal */
export const speedField = /*@__PURE__*/ (() => given('speed', 'Steady speed', { above: 0, ...onTheRoad }))()

/** What describes a steady drive. */
const steadyFields = /*@__PURE__*/ (() => ({
  ...powertrainFields,
  air: airField,
  grade: gradeField,
  speed: optional(speedField),
  speeds: optional(list('The steady speeds', speedField)),
}))()

type Steady = Read<typeof steadyFields>

const sources = /*@__PURE__*/ (() => [
  cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 4'),
  cite('Larminie & Lowry, Electric Vehicle Technology Explained (2003)', 'chapter 7'),
])()

/** Everything that steady speeds need, read. */
interface Ready {
  readonly where: string
  readonly train: Powertrain
  readonly air: Air
  readonly grade: Quantity<'ratio'>
  readonly pack: PackInUse | undefined
  readonly speeds: readonly Quantity<'speed'>[]
  readonly assumptions: readonly Assumption[]
}

function readyFor(where: string, asked: Steady, pack: PackInUse | undefined): Ready {
  const { speed, speeds } = asked
  if ((speed === undefined) === (speeds === undefined)) {
    const expected = "one of them: speed such as '70 km/h', or speeds such as ['50 km/h', '90 km/h']"
    throw new InputError(where, [
      { path: 'speed and speeds', expected, received: speed === undefined ? 'neither' : 'both' },
    ])
  }
  const train = powertrainOf(where, asked)
  const air = airOf(asked.air)
  return {
    where,
    train,
    air,
    grade: asked.grade,
    pack,
    speeds: speeds ?? [speed as Quantity<'speed'>],
    assumptions: [...train.assumptions, ...weatherOf(asked.air), ...(pack?.assumptions ?? [])],
  }
}

function motionFor({ train, air, grade, pack }: Ready): Motion {
  const conditions = conditionsOf(train.road, air.density.si, air.headwind.si, grade.si, train.auxiliaries.si)
  return new Motion(train, undefined, pack, conditions, 0)
}

/** So many speeds a working shows one by one. */
const SHOWN = 12

const perDistance = (joulesPerMetre: number) => fromSi('energyPerDistance', joulesPerMetre, 'Wh/km')

/** What a steady speed takes, or the refusal of one that cannot be held. */
function steadyEnergy(ready: Ready, motion: Motion, speed: Quantity<'speed'>): SteadyEnergy {
  refuseUnheld(ready, motion, speed, motion.hold(speed.si))
  const name = ready.train.gears[motion.gear]?.name
  const each = (watts: number) => perDistance(watts / speed.si)
  return {
    speed,
    ...(name === undefined ? {} : { gear: name }),
    consumption: each(motion.power),
    batteryPower: fromSi('power', motion.power, 'kW'),
    shares: {
      air: each(motion.air),
      tyres: each(motion.tyres),
      grade: each(motion.hill),
      brakes: each(motion.brakes),
      driveline: each(motion.driveline),
      motor: each(motion.motor),
      auxiliaries: each(motion.auxiliaries),
    },
  }
}

function refuseUnheld({ where, pack, grade }: Ready, motion: Motion, speed: Quantity<'speed'>, limit: number): void {
  if (limit === 0) return
  if (pack !== undefined && isOfPack(limit)) {
    const { from, supply } = pack
    const most = greatestDischarge(supply, supply.openCircuitAt(from), 'peak')
    throw powerRefused(where, fromSi('power', motion.power, 'kW'), most, fromSi('ratio', from, '1'))
  }
  const hill = grade.si === 0 ? '' : ` on a grade of ${grade.as('%')}`
  throw new CalculationError(where, `the car cannot hold ${speed}${hill}: what holds it back is the ${limits[limit]}`, {
    speed: String(speed),
    limitedBy: limits[limit] as string,
  })
}

/** The way from the speed to the consumption, as formulas with units: for a working. */
function worked(
  { train, air, grade }: Ready,
  { speed, gear, batteryPower: total, consumption: all }: SteadyEnergy,
): void {
  section(`At ${speed}: ${all}`, () => {
    const { road, auxiliaries } = train
    const force = loadWorked({ road, airDensity: air.density, headwind: air.headwind }, speed, grade)
    const wheelPower = roadPower({ force, speed })
    if (train.motor.isByEfficiency && wheelPower.si >= 0) {
      const { efficiency } = train.gears.find(({ name }) => name === gear) as Powertrain['gears'][number]
      const { motor } = train
      batteryPower({ wheelPower, drivelineEfficiency: efficiency, motorEfficiency: motor.efficiency, auxiliaries })
    }
    consumption({ power: total, speed })
  })
}

/**
 * Tells what each kilometre takes at steady speeds, where it goes, and at which speed it takes least.
 *
 * Slower than the speed of least consumption, what is on at all times has longer to draw; with nothing on, the slower the
 * better.
 *
 * Answers: what does each kilometre take at a steady speed, where does it go, and at which speed is it least?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `auxiliaries`: power of lamps, pumps and the 12 V system, in kW, at least 0 kW, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `grade`: grade, rise over run, a plain number, 0 by default (a level road)
 * - `speed`: steady speed, in km/h, above 0 km/h, optional
 * - `speeds`: the steady speeds, a list, each in km/h, each above 0 km/h, optional
 * - `pack`: may stand beside, as parts of a vehicle; not used
 *
 * @returns The {@link EnergyAtSpeed}. Air, tyres, grade, brakes, driveline, motor and auxiliaries add up to the consumption.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a speed that the car cannot hold, with
 * what holds it back.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4; Larminie & Lowry, Electric Vehicle
 * Technology Explained (2003), chapter 7.
 *
 * @example
 * ```ts
 * const { speeds, least } = energyAtSpeed({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   gearbox: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   auxiliaries: '250 W',
 *   speeds: ['50 km/h', '90 km/h'],
 * })
 * speeds.map(({ consumption }) => String(consumption)) // ['61.89 Wh/km', '115.7 Wh/km']
 * String(least?.speed) // '23.21 km/h'
 * ```
 */
export const energyAtSpeed = /*@__PURE__*/ (() =>
  procedure({
    name: 'energyAtSpeed',
    title: 'Energy at steady speeds',
    answers: 'What does each kilometre take at a steady speed, where does it go, and at which speed is it least?',
    input: steadyFields,
    source: sources,
    work: (asked): Unfinished<EnergyAtSpeed> => {
      const ready = readyFor('energyAtSpeed', asked, undefined)
      const motion = motionFor(ready)
      const speeds = ready.speeds.map((speed) => steadyEnergy(ready, motion, speed))
      if (speeds.length <= SHOWN) for (const each of speeds) worked(ready, each)
      const least = leastOf(ready, motion)
      return {
        speeds,
        ...(least === undefined ? {} : { least }),
        checks: [],
        assumptions: ready.assumptions,
        cautions: [highVoltage],
      }
    },
  }))()

/** Speeds between which the least consumption is looked for, in m/s, and in how many places. */
const [SLOWEST, FASTEST, PLACES] = [0.5, 70, 280]
/** Sections by the golden ratio that leave less than a millionth of a place. */
const SECTIONS = 30
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** The speed of least consumption: the best of many places, and from its neighbours on by golden sections. */
function leastOf(ready: Ready, motion: Motion): EnergyAtSpeed['least'] {
  const takes = (speed: number) => (motion.hold(speed) === 0 ? motion.power / speed : Number.POSITIVE_INFINITY)
  const step = (FASTEST - SLOWEST) / PLACES
  let [best, least] = [SLOWEST, Number.POSITIVE_INFINITY]
  for (let i = 0; i <= PLACES; i++) {
    const speed = SLOWEST + i * step
    const taken = takes(speed)
    if (taken < least) [best, least] = [speed, taken]
  }
  if (best === SLOWEST || least === Number.POSITIVE_INFINITY || ready.grade.si < 0) return undefined
  let [low, high] = [best - step, best + step]
  for (let i = 0; i < SECTIONS; i++) {
    const part = (high - low) * GOLDEN
    if (takes(high - part) < takes(low + part)) high = low + part
    else low = high - part
  }
  const speed = (low + high) / 2
  return { speed: fromSi('speed', speed, 'km/h'), consumption: perDistance(takes(speed)) }
}

/** How far a steady speed leads. */
export interface SteadyRange {
  readonly speed: Quantity<'speed'>
  /** Net energy over the whole distance. */
  readonly consumption: Quantity<'energyPerDistance'>
  readonly batteryPower: Quantity<'power'>
  /** Absent where the pack gives nothing, as downhill. */
  readonly range?: Quantity<'length'>
  readonly duration?: Quantity<'time'>
  /** What ends it: a state of charge, or a power that the pack cannot give any more. */
  readonly endedBy?: string
}

/** How far steady speeds lead. */
export interface RangeAtSpeed extends Findings {
  /** In the order in which the speeds were given. */
  readonly speeds: readonly SteadyRange[]
}

const rangeFields = /*@__PURE__*/ (() => ({ ...steadyFields, ...sourceFields }))()

type RangeRead = Read<typeof rangeFields>

function packFor(where: string, asked: Omit<RangeRead, 'air'>): PackInUse | undefined {
  if (asked.pack === undefined && asked.usableEnergy === undefined) {
    const expected = "one of them: a pack, or usableEnergy such as '12 kWh'"
    throw new InputError(where, [{ path: 'pack and usableEnergy', expected, received: 'neither' }])
  }
  return packInUse(where, asked, asked.controller)
}

/** Into how many parts the charge of a pack is cut; each counts with the current at its middle (midpoint rule). */
const PARTS = 200
/** Down to what share of its charge it is followed to where the pack gives too little. */
const FINEST = 1e-6

/** How far a steady speed leads. */
function steadyRange(
  ready: Ready,
  usableEnergy: Quantity<'energy'> | undefined,
  speed: Quantity<'speed'>,
): SteadyRange {
  const motion = motionFor(ready)
  const energy = steadyEnergy(ready, motion, speed)
  const { consumption: taken, batteryPower: power } = energy
  const figures = { speed, consumption: taken, batteryPower: power }
  if (power.si <= 0) return figures
  const { pack } = ready
  if (pack === undefined) {
    const range = rangeFromConsumption({ energy: usableEnergy as Quantity<'energy'>, consumption: taken })
    const duration = fromSi('time', range.si / speed.si, 'h')
    return { ...figures, range, duration, endedBy: 'usableEnergy, as given' }
  }
  const { capacity, from, to } = pack
  let [state, part, time, limit] = [from, (from - to) / PARTS, 0, 0]
  while (state > to && (limit === 0 || part > FINEST)) {
    // The last part ends where the pack counts as empty, whatever rounding has left.
    const taken = state - to < 1.5 * part ? state - to : part
    motion.stateOfCharge = state - taken / 2
    limit = motion.hold(speed.si)
    if (limit === 0) {
      time += (taken * capacity) / motion.current
      state -= taken
    } else part /= 2
  }
  return {
    ...figures,
    range: fromSi('length', speed.si * time, 'km'),
    duration: fromSi('time', time, 'h'),
    endedBy: limit === 0 ? `state of charge of ${fromSi('ratio', to, '%')}` : (limits[limit] as string),
  }
}

/**
 * Tells how far steady speeds lead: until the pack is down to its reserve, or its sagging voltage cannot give
 * the power any more.
 *
 * A steady speed is the kindest drive there is: stops, hills and haste take more.
 *
 * Answers: how far does a steady speed lead, and what ends it?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `auxiliaries`: power of lamps, pumps and the 12 V system, in kW, at least 0 kW, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `grade`: grade, rise over run, a plain number, 0 by default (a level road)
 * - `speed`: steady speed, in km/h, above 0 km/h, optional
 * - `speeds`: the steady speeds, a list, each in km/h, each above 0 km/h, optional
 * - `usableEnergy`: energy that may be used, in kWh, above 0 kWh, optional
 * - `stateOfCharge`: state of charge at the start, a plain number, at least 0 and at most 1, optional
 * - `reserve`: state of charge at which the pack counts as empty, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 *
 * @returns The {@link RangeAtSpeed}.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a speed that the car cannot hold, and
 * for a power beyond the pack, with the most that it can give.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4; Larminie & Lowry, Electric Vehicle
 * Technology Explained (2003), chapter 7.
 *
 * @example
 * ```ts
 * const { speeds } = rangeAtSpeed({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   gearbox: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   auxiliaries: '250 W',
 *   usableEnergy: '12 kWh',
 *   speeds: ['50 km/h', '90 km/h'],
 * })
 * speeds.map(({ range }) => String(range)) // ['193.9 km', '103.7 km']
 * ```
 */
export const rangeAtSpeed = /*@__PURE__*/ (() =>
  procedure({
    name: 'rangeAtSpeed',
    title: 'Range at steady speeds',
    answers: 'How far does a steady speed lead, and what ends it?',
    input: rangeFields,
    source: sources,
    work: (asked): Unfinished<RangeAtSpeed> => {
      const ready = readyFor('rangeAtSpeed', asked, packFor('rangeAtSpeed', asked))
      const speeds = ready.speeds.map((speed) => steadyRange(ready, asked.usableEnergy, speed))
      return {
        speeds,
        checks: supplyChecks(ready.pack?.supply),
        assumptions: ready.assumptions,
        cautions: [highVoltage, lithiumCells],
      }
    },
  }))()

/** Ranges by temperature and speed. */
export interface RangeTable extends Findings {
  readonly rows: readonly {
    /** Of the air. */
    readonly temperature: Quantity<'temperature'>
    readonly speeds: readonly SteadyRange[]
  }[]
}

const airTemperature = /*@__PURE__*/ (() => undecided(airFields).temperature)()
/** The temperature of the air, where it has no default. @internal */
export const temperatureField = /*@__PURE__*/ (() => required(airTemperature))()
/** The air where its temperature stands elsewhere. @internal */
export const airWithoutTemperature = /*@__PURE__*/ (() =>
  defaulted(group('The air', { ...airFields, temperature: airTemperature })))()

const tableFields = /*@__PURE__*/ (() => ({
  ...rangeFields,
  air: airWithoutTemperature,
  temperatures: list('The temperatures of the air, in the place of air.temperature', temperatureField, { least: 1 }),
}))()

/**
 * Tells how far steady speeds lead at several temperatures of the air: cold air is denser. What else the cold does, to
 * tyres, heater and pack, is not in it.
 *
 * Answers: how far do steady speeds lead at several temperatures of the air?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `auxiliaries`: power of lamps, pumps and the 12 V system, in kW, at least 0 kW, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `grade`: grade, rise over run, a plain number, 0 by default (a level road)
 * - `speed`: steady speed, in km/h, above 0 km/h, optional
 * - `speeds`: the steady speeds, a list, each in km/h, each above 0 km/h, optional
 * - `usableEnergy`: energy that may be used, in kWh, above 0 kWh, optional
 * - `stateOfCharge`: state of charge at the start, a plain number, at least 0 and at most 1, optional
 * - `reserve`: state of charge at which the pack counts as empty, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `temperatures`: the temperatures of the air, in the place of air.temperature, a list of at least 1, each in °C,
 *   each above -273.15 °C
 * - always assumed: warm and cold count by the density of the air alone, not by tyres, heater and cells: seasons
 *   counts what the cold does to all of them
 *
 * @returns The {@link RangeTable}: a row for each temperature, a column for each speed.
 * @throws InputError and CalculationError as {@link rangeAtSpeed}.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4; Larminie & Lowry, Electric Vehicle
 * Technology Explained (2003), chapter 7.
 *
 * @example
 * ```ts
 * const { rows } = rangeTable({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   gearbox: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   usableEnergy: '12 kWh',
 *   speeds: ['90 km/h'],
 *   temperatures: ['30 °C', '-10 °C'],
 * })
 * rows.map(({ speeds }) => String(speeds[0]?.range)) // ['108.9 km', '98.25 km']
 * ```
 */
export const rangeTable = /*@__PURE__*/ (() =>
  procedure({
    name: 'rangeTable',
    title: 'Table of ranges',
    answers: 'How far do steady speeds lead at several temperatures of the air?',
    input: tableFields,
    source: sources,
    assumes: [
      'Warm and cold count by the density of the air alone, not by tyres, heater and cells: seasons counts what the cold does to all of them.',
    ],
    work: ({ temperatures, ...asked }): Unfinished<RangeTable> => {
      const where = 'rangeTable'
      if (asked.air.temperature !== undefined) {
        const expected = 'nothing: temperatures stand in its place'
        throw new InputError(where, [{ path: 'air.temperature', expected, received: String(asked.air.temperature) }])
      }
      const pack = packFor(where, asked)
      const tables = temperatures.map((temperature) => {
        const ready = readyFor(where, { ...asked, air: { ...asked.air, temperature } }, pack)
        const speeds = ready.speeds.map((speed) => steadyRange(ready, asked.usableEnergy, speed))
        return { ready, temperature, speeds }
      })
      return {
        rows: tables.map(({ temperature, speeds }) => ({ temperature, speeds })),
        checks: supplyChecks(pack?.supply),
        assumptions: withWeatherCounted(merged(...tables.map(({ ready }) => ready)).assumptions),
        cautions: [highVoltage, lithiumCells],
      }
    },
  }))()
