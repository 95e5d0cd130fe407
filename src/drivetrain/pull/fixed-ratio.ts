/**
 * One fixed ratio instead of a gearbox: between which overall ratios a car does all that is asked of it.
 *
 * Rests on Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004), vehicle performance: a low
 * ratio for the speed, a high one for grade and launch.
 */
import { cite, section } from '../../formula/index.js'
import { approval, liftedCar } from '../../procedure/cautions.js'
import {
  type Check,
  type Findings,
  given,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { oneEfficiency } from '../gearing/driveline.js'
import { motorSpeed } from '../gearing/gears.js'
import { type Drive, type DriveGear, driveFields, driveOf, loadOn, pullIn } from './drive.js'

/** What one demand asks of the ratio. */
export interface RatioLimit {
  /** The demand, such as `130 km/h` or `from standstill on 25 %`. */
  readonly demand: string
  /** The least ratio that meets it; none where no ratio does. Ratios from 0.1 to 100 are looked at. */
  readonly least?: Quantity<'ratio'>
  /** The greatest ratio that meets it; none where no ratio does, or where any ratio above the least does. */
  readonly greatest?: Quantity<'ratio'>
  /** Why no ratio meets it. */
  readonly refused?: string
}

/** The overall ratios that do all that is asked. */
export interface FixedRatio extends Findings {
  /** Whether there are any. */
  readonly fits: boolean
  /** The least that meets every demand; above `greatest` where none meets all, and missing where a demand is never met. */
  readonly least?: Quantity<'ratio'>
  readonly greatest?: Quantity<'ratio'>
  /** What each demand asks. */
  readonly limits: readonly RatioLimit[]
  /** Why no ratio meets all, where none does. */
  readonly reason?: string
}

/** Overall ratios among which one is looked for: those of road cars lie well within. */
const [LOWEST, HIGHEST] = [0.1, 100]
/** Into how many steps, each the same share longer, they are cut. */
const STEPS = 2000

const fixedRatioFields = /*@__PURE__*/ (() => ({
  ...driveFields,
  topSpeed: given('speed', 'Speed to be held on the level', { above: 0 }),
  grade: optional(
    given('ratio', 'Grade to start on, rise over run', { above: 0, usual: [0, 0.35, 'the steepest public streets'] }),
    { absent: 'No start on a grade is asked for: give grade.' },
  ),
  launch: optional(
    given('acceleration', 'Acceleration from standstill on the level', { above: 0, usual: ['0 m/s²', '5 m/s²'] }),
    { absent: 'No acceleration at the start is asked for: give launch.' },
  ),
}))()
type Asked = Read<typeof fixedRatioFields>

/**
 * Tells whether one fixed ratio would do in place of a gearbox, and between which overall ratios.
 *
 * The speed sets the greatest ratio, at which the motor reaches its highest speed, and a least one, below which torque or
 * power do not suffice; grade and launch set a least ratio. Gears and final drive of the vehicle are left out of it.
 *
 * The ratio is that of motor to wheels, final drive included. Where a demand is beyond the grip, no ratio meets it.
 *
 * Answers: would one fixed ratio do in place of a gearbox, and between which overall ratios?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `stateOfCharge`: state of charge of the pack, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `topSpeed`: speed to be held on the level, in km/h, above 0 km/h
 * - `grade`: grade to start on, rise over run, a plain number, above 0, optional
 * - `launch`: acceleration from standstill on the level, in m/s², above 0 m/s², optional
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 * - always assumed: every ratio has the efficiency that is given
 * - always assumed: the motor gives its torque from standstill for as long as the start takes
 *
 * @returns The window of ratios, what each demand asks, and why there is none where there is none.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004), vehicle performance.
 *
 * @example
 * ```ts
 * const { fits, reason } = fixedRatio({
 *   car: { mass: '910 kg', rollingResistance: 0.013, dragArea: '0.7 m²', tyre: '145/80 R13' },
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gearbox: { efficiency: 0.96 },
 *   topSpeed: '140 km/h',
 *   grade: '30 %',
 * })
 * fits // false
 * reason // 'a start on 30 % needs at least 6.338, and 140 km/h allows at most 5.879'
 * ```
 */
export const fixedRatio = /*@__PURE__*/ procedure({
  name: 'fixedRatio',
  title: 'One fixed ratio',
  answers: 'Would one fixed ratio do in place of a gearbox, and between which overall ratios?',
  input: fixedRatioFields,
  source: [
    cite('Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004)', 'vehicle performance'),
  ],
  assumes: [
    'Every ratio has the efficiency that is given.',
    'The motor gives its torque from standstill for as long as the start takes.',
  ],
  work: (asked): Unfinished<FixedRatio> => {
    const drive = driveFor(asked)
    const demands = demandsOf(drive, asked)
    const limits = demands.map(limitOf)
    const never = limits.find(({ refused }) => refused !== undefined)
    const lower = binding(limits, 'least', (one, other) => one > other)
    const upper = binding(limits, 'greatest', (one, other) => one < other)
    const window = never === undefined ? { least: lower[1], greatest: upper[1] } : undefined
    const fits = window !== undefined && window.least.si <= window.greatest.si
    const reason =
      never !== undefined
        ? `no ratio does ${never.demand}: ${never.refused}`
        : `${lower[0]} needs at least ${lower[1]}, and ${upper[0]} allows at most ${upper[1]}`
    if (window !== undefined) section('At the greatest ratio', () => speedAt(asked, drive, window.greatest))
    return {
      fits,
      ...window,
      limits,
      ...(fits ? {} : { reason }),
      checks: [
        ...drive.checks,
        windowTrial(window === undefined ? { fail: reason } : says`${window.least}, at most ${window.greatest}`),
      ],
      assumptions: [...drive.assumptions, ...drive.inertia.assumptions],
      cautions: [liftedCar, approval],
    }
  },
})

function windowTrial(told: Told): Check {
  const name = 'Least ratio under the greatest'
  return trial('ratio.window', name, told, 'asked for: topSpeed, grade, launch', 'topSpeed', 'grade', 'launch')
}

/** The demand that binds at one end of the window, and its ratio. */
function binding(
  limits: readonly RatioLimit[],
  key: 'least' | 'greatest',
  isTighter: (one: number, other: number) => boolean,
): readonly [demand: string, ratio: Quantity<'ratio'>] {
  return limits
    .map((limit) => [limit.demand, limit[key] ?? quantity('ratio', key === 'least' ? LOWEST : HIGHEST)] as const)
    .reduce((one, other) => (isTighter(other[1].si, one[1].si) ? other : one))
}

/** A drive on one ratio of 1, to be asked with any other. */
function driveFor({ topSpeed: _, grade: __, launch: ___, ...vehicle }: Asked): Drive {
  const efficiency = oneEfficiency(vehicle.gearbox.efficiency)
  if (efficiency === undefined) {
    const expected = 'one figure for the one ratio, such as 0.95'
    throw new InputError('fixedRatio', [{ path: 'gearbox.efficiency', expected, received: 'one for each gear' }])
  }
  const one = quantity('ratio', 1)
  return driveOf('fixedRatio', { ...vehicle, gearbox: { gears: { ratio: one }, finalDrive: one, efficiency } })
}

function speedAt(asked: Asked, drive: Drive, ratio: Quantity<'ratio'>): void {
  const { rollingRadius } = (drive.gears[0] as DriveGear).gear
  motorSpeed({ speed: asked.topSpeed, ratio, rollingRadius })
}

/** Something asked of a ratio. */
interface Demand {
  readonly name: string
  /** What the pull has over what it needs, in newtons, with a ratio. */
  readonly surplus: (ratio: number) => number
  /** The ratio at which the motor turns at its highest speed; infinite for a start. */
  readonly end: number
  /** What no ratio changes: the tyres hold less than is asked. */
  readonly slips?: string
}

function demandsOf(drive: Drive, { topSpeed, grade, launch }: Asked): Demand[] {
  const gear = drive.gears[0] as DriveGear
  const withRatio = (ratio: number): DriveGear => ({ ...gear, ratio })
  const at = (name: string, speed: number, slope: number, needed: (ratio: number) => number, held: number): Demand => {
    const grip = drive.grip?.driving(slope) ?? Infinity
    return {
      name,
      surplus: (ratio) => pullIn(drive, withRatio(ratio), speed).most - needed(ratio),
      end: speed === 0 ? Infinity : (drive.envelope.maximumSpeed * gear.radius) / speed,
      ...(held > grip ? { slips: `it needs ${newtons(held)}, and the tyres hold ${newtons(grip)}` } : {}),
    }
  }
  const load = (speed: number, slope: number) => loadOn(drive, speed, slope)
  const fast = load(topSpeed.si, 0)
  const demands = [at(String(topSpeed), topSpeed.si, 0, () => fast, fast)]
  if (grade !== undefined) {
    const steep = load(0, grade.si)
    demands.push(at(`a start on ${grade.as('%')}`, 0, grade.si, () => steep, steep))
  }
  if (launch !== undefined) {
    const level = load(0, 0)
    const needed = (ratio: number) => level + drive.inertia.massAt(ratio) * launch.si
    demands.push(at(`a launch of ${launch}`, 0, 0, needed, level + drive.road.mass.si * launch.si))
  }
  return demands
}

function newtons(force: number): string {
  return String(quantity('force', force, 'N'))
}

/** The window of ratios that meets a demand: the last one in a row that does, looked for from the highest down. */
function limitOf({ name, surplus, end, slips }: Demand): RatioLimit {
  if (slips !== undefined) return { demand: name, refused: slips }
  const top = Math.min(end, HIGHEST)
  const ratios = Array.from({ length: STEPS + 1 }, (_, i) => top * (LOWEST / top) ** (i / STEPS))
  const first = ratios.findIndex((ratio) => surplus(ratio) >= 0)
  if (first === -1) {
    const best = ratios.reduce((one, other) => (surplus(other) > surplus(one) ? other : one))
    return { demand: name, refused: `the pull is ${newtons(-surplus(best))} short in the best, ${ratioText(best)}` }
  }
  const beyond = ratios.findIndex((ratio, i) => i > first && surplus(ratio) < 0)
  const least = beyond === -1 ? LOWEST : edge(surplus, ratios[beyond - 1] as number, ratios[beyond] as number)
  const greatest = first === 0 ? top : edge(surplus, ratios[first] as number, ratios[first - 1] as number)
  return {
    demand: name,
    least: quantity('ratio', least),
    ...(greatest === HIGHEST ? {} : { greatest: quantity('ratio', greatest) }),
  }
}

function ratioText(ratio: number): string {
  return String(quantity('ratio', ratio))
}

/** The last ratio that meets a demand on the way from one that does to one that does not. */
function edge(surplus: (ratio: number) => number, meets: number, misses: number): number {
  let [inside, outside] = [meets, misses]
  for (;;) {
    const middle = inside + (outside - inside) / 2
    if (middle === inside || middle === outside) return inside
    if (surplus(middle) >= 0) inside = middle
    else outside = middle
  }
}
