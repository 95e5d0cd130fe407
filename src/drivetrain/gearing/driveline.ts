/**
 * The driveline between motor and road: gears, final drive, tyre and what is lost on the way.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import { type Assumption, assumed } from '../../procedure/index.js'
import { InputError, type InputIssue } from '../../quantity/errors.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { isQuantity } from '../../quantity/read.js'
import type { Car, Gearbox } from '../vehicle.js'
import { motorTorque, overallRatio, tractiveForce, wheelTorque } from './gears.js'
import { readTyre } from './tyre.js'

/** Something for each gear: by the names of the gears, or as a list from the lowest gear up. */
export type ForEachGear<T> = { readonly [gear: string]: T } | readonly T[]

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth']
/** What the gear of a drive without gears is called. */
const FIXED = 'fixed ratio'

/** What of a vehicle tells its gearing. @internal */
export interface Gearing {
  readonly car: Pick<Car, 'tyre' | 'rollingRadius'>
  readonly gearbox: Pick<Gearbox, 'gears' | 'finalDrive'>
}

/** One gear, with final drive and tyre. @internal */
export interface Gear {
  readonly name: string
  /** Ratio of the gear alone. */
  readonly gearRatio: Quantity<'ratio'>
  /** Turns of the motor per turn of the wheels. */
  readonly ratio: Quantity<'ratio'>
  readonly rollingRadius: Quantity<'length'>
}

/** One gear with what is lost in it. @internal */
export interface LossyGear extends Gear {
  readonly efficiency: Quantity<'ratio'>
}

/** The rolling radius that is given or follows from a tyre mark; undefined where neither is given. */
function rollingRadiusOf(
  where: string,
  { rollingRadius, tyre }: Gearing['car'],
): { readonly rollingRadius: Quantity<'length'>; readonly assumptions: readonly Assumption[] } {
  if ((rollingRadius === undefined) === (tyre === undefined)) {
    const path = 'car.rollingRadius and car.tyre'
    const issue: InputIssue =
      tyre === undefined
        ? { path, expected: "one of them, such as rollingRadius: '280 mm' or tyre: '155/80 R13'", received: 'neither' }
        : { path, expected: 'one of them: the tyre mark tells the rolling radius', received: 'both' }
    throw new InputError(where, [issue])
  }
  if (rollingRadius !== undefined) return { rollingRadius, assumptions: [] }
  const mark = tyre as string
  try {
    const size = readTyre(mark)
    return {
      rollingRadius: size.rollingRadius,
      assumptions: [
        ...size.assumptions.map((text) => assumed('tyre.aspect', text)),
        assumed('tyre.rollingRadius', `The rolling radius follows from the mark ${mark}, not from a measured turn.`),
      ],
    }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw new InputError(
      where,
      error.issues.map((issue) => ({ ...issue, path: 'car.tyre' })),
    )
  }
}

/** The gears by name, from the lowest speed up: the fixed ratio alone where there are none. */
function namedGears(gears: Gearbox['gears']): readonly (readonly [name: string, ratio: Quantity<'ratio'>])[] {
  if (gears === undefined) return [[FIXED, quantity('ratio', 1)]]
  if (!Array.isArray(gears)) return Object.entries(gears)
  return gears.map((ratio, i) => [ordinals[i] ?? `gear ${i + 1}`, ratio])
}

/**
 * Reads gears, final drive and tyre.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError where the ratios do not fall from gear to gear, or the tyre is not told in just one way.
 *
 * @internal
 */
export function gearingOf(
  where: string,
  { car, gearbox }: Gearing,
): { readonly gears: readonly Gear[]; readonly assumptions: readonly Assumption[] } {
  const named = namedGears(gearbox.gears)
  refuseGears(where, named)
  const { finalDrive } = gearbox
  if (finalDrive === undefined) {
    const expected = 'a ratio such as 4.1; without gears, that of motor to wheels'
    throw new InputError(where, [{ path: 'gearbox.finalDrive', expected, received: 'nothing' }])
  }
  const { rollingRadius, assumptions } = rollingRadiusOf(where, car)
  return {
    gears: named.map(([name, gearRatio]) => ({
      name,
      gearRatio,
      ratio: overallRatio({ gearRatio, finalDrive }),
      rollingRadius,
    })),
    assumptions,
  }
}

function refuseGears(where: string, gears: ReturnType<typeof namedGears>): void {
  if (gears.length === 0) {
    const expected = 'the ratios of the gears, such as { first: 3.6, second: 2.1 } or [3.6, 2.1]'
    throw new InputError(where, [{ path: 'gearbox.gears', expected, received: 'none' }])
  }
  const issues = gears.flatMap(([name, ratio], i) => {
    const [lower, before] = gears[i - 1] ?? []
    if (before === undefined || ratio.si < before.si) return []
    const expected = `a ratio below that of ${lower}, ${before}: gears are listed from the lowest speed up`
    return [{ path: `gearbox.gears.${name}`, expected, received: String(ratio) }]
  })
  if (issues.length > 0) throw new InputError(where, issues)
}

/**
 * Reads gears with their efficiencies.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError as {@link gearingOf}, and where the efficiencies do not belong to the gears.
 *
 * @internal
 */
export function drivelineOf(
  where: string,
  { car, gearbox }: Gearing & { readonly gearbox: Pick<Gearbox, 'efficiency'> },
): { readonly gears: readonly LossyGear[]; readonly assumptions: readonly Assumption[] } {
  const { gears, assumptions } = gearingOf(where, { car, gearbox })
  const efficiencies = efficienciesFor(
    where,
    gears.map(({ name }) => name),
    gearbox.efficiency,
  )
  return {
    gears: gears.map((gear, i) => ({ ...gear, efficiency: efficiencies[i] as Quantity<'ratio'> })),
    assumptions: [
      ...assumptions,
      assumed(
        'gearbox.efficiency',
        'The driveline has the same efficiency at every load and speed, driving and braking.',
      ),
    ],
  }
}

/** The one efficiency of a driveline; undefined where each gear has its own. @internal */
export function oneEfficiency(efficiency: Gearbox['efficiency']): Quantity<'ratio'> | undefined {
  return isQuantity(efficiency) ? (efficiency as Quantity<'ratio'>) : undefined
}

function efficienciesFor(
  where: string,
  names: readonly string[],
  efficiency: Gearbox['efficiency'],
): readonly Quantity<'ratio'>[] {
  const one = oneEfficiency(efficiency)
  if (one !== undefined) return names.map(() => one)
  if (Array.isArray(efficiency)) {
    if (efficiency.length === names.length) return efficiency
    const expected = `one for each of the gears ${names.join(', ')}`
    throw new InputError(where, [{ path: 'gearbox.efficiency', expected, received: `a list of ${efficiency.length}` }])
  }
  const byName = new Map(Object.entries(efficiency as { readonly [gear: string]: Quantity<'ratio'> }))
  const issues = [
    ...names
      .filter((name) => !byName.has(name))
      .map((name) => ({
        path: `gearbox.efficiency.${name}`,
        expected: 'an efficiency such as 0.95',
        received: 'nothing',
      })),
    ...[...byName]
      .filter(([name]) => !names.includes(name))
      .map(([name, value]) => ({
        path: `gearbox.efficiency.${name}`,
        expected: `no such gear; there are ${names.join(', ')}`,
        received: String(value),
      })),
  ]
  if (issues.length > 0) throw new InputError(where, issues)
  return names.map((name) => byName.get(name) as Quantity<'ratio'>)
}

/** A gear on plain SI numbers: for loops. What is lost is lost in both directions. @internal */
export interface GearNumbers {
  readonly ratio: number
  readonly radius: number
  readonly efficiency: number
}

/** A gear as plain SI numbers. @internal */
export function gearNumbers({ ratio, rollingRadius, efficiency }: LossyGear): GearNumbers {
  return { ratio: ratio.si, radius: rollingRadius.si, efficiency: efficiency.si }
}

/** Force at the wheels, in newtons, for a motor torque; both negative where they brake. @internal */
export function wheelForce({ ratio, radius, efficiency }: GearNumbers, torque: number): number {
  return tractiveForce.compute({
    wheelTorque: wheelTorque.compute({ motorTorque: torque, ratio, efficiency }),
    radius,
  })
}

/** Motor torque, in N·m, for a force at the wheels; both negative where they brake. @internal */
export function torqueForForce({ ratio, radius, efficiency }: GearNumbers, force: number): number {
  return motorTorque.compute({ force, ratio, rollingRadius: radius, efficiency })
}
