/**
 * The driveline between motor and road: gears, final drive, tyre and what is lost on the way.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import * as z from 'zod/mini'
import { InputError, type InputIssue, shown } from '../../quantity/errors.js'
import type { Given, Quantity } from '../../quantity/index.js'
import { about, given, type Read } from '../../structure/index.js'
import { motorTorque, overallRatio, tractiveForce, wheelTorque } from './gears.js'
import { readTyre } from './tyre.js'

/** Something for each gear: by the names of the gears, or as a list from the lowest gear up. */
export type ForEachGear<T> = { readonly [gear: string]: T } | readonly T[]

/** What is read for each gear; without a name, where one figure stands for all. */
type Named<T> = readonly (readonly [name: string | undefined, value: T])[]

/** The same for efficiencies; with its place where they are a list. */
type Efficiencies = readonly (readonly [name: string | number | undefined, value: Quantity<'ratio'>])[]

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth']

const gearGiven = /*@__PURE__*/ given('ratio', 'Ratio of the gear', { above: 0 })
const efficiencyGiven = /*@__PURE__*/ given('ratio', 'Efficiency between motor shaft and wheels', { above: 0, max: 1 })

/** Reads one leaf, and passes on what is wrong with it under a key. */
function readLeaf<T>(
  leaf: z.ZodMiniType<T>,
  value: unknown,
  key: string | number | undefined,
  payload: z.core.ParsePayload<unknown>,
): T {
  const read = z.safeParse(leaf, value)
  if (read.success) return read.data
  for (const issue of read.error.issues) {
    payload.issues.push({ ...issue, input: value, path: [...(key === undefined ? [] : [key]), ...issue.path] } as never)
  }
  return z.NEVER
}

function entriesOf(value: unknown): readonly (readonly [string | number, unknown])[] | undefined {
  if (Array.isArray(value)) return value.map((each, i) => [i, each] as const)
  if (typeof value === 'object' && value !== null && !('kind' in value)) return Object.entries(value)
  return undefined
}

function refuseLeaf(payload: z.core.ParsePayload<unknown>, value: unknown, expected: string): never {
  const issue: InputIssue = { path: '', expected, received: value === undefined ? 'nothing' : shown(value) }
  payload.issues.push({ code: 'custom', input: value, params: { issue } })
  return z.NEVER
}

/** The ratios of the gears as they are read, from the lowest gear up. */
const gearsGiven: z.ZodMiniTransform<Named<Quantity<'ratio'>>, ForEachGear<Given<'ratio'>>> = /*@__PURE__*/ about(
  'the ratios of the gears',
  z.transform((value: ForEachGear<Given<'ratio'>>, payload): Named<Quantity<'ratio'>> => {
    const entries = entriesOf(value)
    if (entries === undefined || entries.length === 0) {
      return refuseLeaf(payload, value, 'the ratios of the gears, such as { first: 3.6, second: 2.1 } or [3.6, 2.1]')
    }
    const isList = Array.isArray(value)
    return entries.map(([key, each], i) => [
      isList ? (ordinals[i] ?? `gear ${i + 1}`) : String(key),
      readLeaf(gearGiven, each, key, payload),
    ])
  }),
)

/** One efficiency for every gear, or one for each, as they are read. */
const efficienciesGiven: z.ZodMiniTransform<Efficiencies, Given<'ratio'> | ForEachGear<Given<'ratio'>>> =
  /*@__PURE__*/ about(
    'the efficiency between motor shaft and wheels',
    z.transform((value: Given<'ratio'> | ForEachGear<Given<'ratio'>>, payload): Efficiencies => {
      const entries = entriesOf(value)
      if (entries === undefined) return [[undefined, readLeaf(efficiencyGiven, value, undefined, payload)]]
      return entries.map(([key, each]) => [key, readLeaf(efficiencyGiven, each, key, payload)])
    }),
  )

/** What describes a tyre in a structure: the rolling radius, or the mark from which it follows. */
export const tyreShape = /*@__PURE__*/ (() => ({
  rollingRadius: z.optional(given('length', 'Rolling radius of the driven wheels', { above: 0 })),
  tyre: about('the mark of the tyre', z.optional(z.string())),
}))()

/** What describes gears and tyre in a structure. */
export const gearingShape = /*@__PURE__*/ (() => ({
  gears: gearsGiven,
  finalDrive: given('ratio', 'Ratio of the final drive', { above: 0 }),
  ...tyreShape,
}))()

/** What describes a driveline in a structure, its losses included. */
export const drivelineShape = /*@__PURE__*/ (() => ({ ...gearingShape, efficiency: efficienciesGiven }))()

const gearingGiven = /*@__PURE__*/ about('the gears', z.strictObject(gearingShape))
/** What is read of gears and tyre. */
export type Gearing = Read<typeof gearingGiven>

/** A driveline of its own, whose gears may be left out where only its losses count. */
export const drivelineGiven = /*@__PURE__*/ (() =>
  about(
    'the driveline',
    z.strictObject({
      ...tyreShape,
      gears: z.optional(gearsGiven),
      finalDrive: z.optional(given('ratio', 'Ratio of the final drive', { above: 0 })),
      efficiency: efficienciesGiven,
    }),
  ))()

/** One gear, with final drive and tyre. */
export interface Gear {
  readonly name: string
  /** Ratio of the gear alone. */
  readonly gearRatio: Quantity<'ratio'>
  /** Turns of the motor per turn of the wheels. */
  readonly ratio: Quantity<'ratio'>
  readonly rollingRadius: Quantity<'length'>
}

/** One gear with what is lost in it. */
export interface LossyGear extends Gear {
  readonly efficiency: Quantity<'ratio'>
}

/** The rolling radius that is given or follows from a tyre mark; undefined where neither is given. */
function rollingRadiusOf(
  where: string,
  {
    rollingRadius,
    tyre,
  }: { readonly rollingRadius?: Quantity<'length'> | undefined; readonly tyre?: string | undefined },
): { readonly rollingRadius: Quantity<'length'>; readonly assumptions: readonly string[] } | undefined {
  if (rollingRadius !== undefined && tyre !== undefined) {
    const expected = 'one of them: the tyre mark tells the rolling radius'
    throw new InputError(where, [{ path: 'rollingRadius and tyre', expected, received: 'both' }])
  }
  if (tyre === undefined) return rollingRadius === undefined ? undefined : { rollingRadius, assumptions: [] }
  try {
    const size = readTyre(tyre)
    return {
      rollingRadius: size.rollingRadius,
      assumptions: [...size.assumptions, `The rolling radius follows from the mark ${tyre}, not from a measured turn.`],
    }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw new InputError(
      where,
      error.issues.map((issue) => ({ ...issue, path: 'tyre' })),
    )
  }
}

/**
 * Reads gears, final drive and tyre.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError where the ratios do not fall from gear to gear, or the tyre is not told in just one way.
 */
export function gearingOf(
  where: string,
  gearing: Gearing,
): { readonly gears: readonly Gear[]; readonly assumptions: readonly string[] } {
  refuseRising(where, gearing.gears)
  const wheel = rollingRadiusOf(where, gearing)
  if (wheel === undefined) {
    const expected = "one of them, such as rollingRadius: '280 mm' or tyre: '155/80 R13'"
    throw new InputError(where, [{ path: 'rollingRadius and tyre', expected, received: 'neither' }])
  }
  return {
    gears: gearing.gears.map(([name, gearRatio]) => ({
      name: name as string,
      gearRatio,
      ratio: overallRatio({ gearRatio, finalDrive: gearing.finalDrive }),
      rollingRadius: wheel.rollingRadius,
    })),
    assumptions: wheel.assumptions,
  }
}

function refuseRising(where: string, gears: Gearing['gears']): void {
  const issues = gears.flatMap(([name, ratio], i) => {
    const [lower, before] = gears[i - 1] ?? []
    if (before === undefined || ratio.si < before.si) return []
    const expected = `a ratio below that of ${lower}, ${before}: gears are listed from the lowest speed up`
    return [{ path: `gears.${name}`, expected, received: String(ratio) }]
  })
  if (issues.length > 0) throw new InputError(where, issues)
}

/**
 * Reads gears with their efficiencies.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError as {@link gearingOf}, and where the efficiencies do not belong to the gears.
 */
export function drivelineOf(
  where: string,
  driveline: Gearing & { readonly efficiency: Efficiencies },
): { readonly gears: readonly LossyGear[]; readonly assumptions: readonly string[] } {
  const { gears, assumptions } = gearingOf(where, driveline)
  const efficiencies = efficienciesFor(
    where,
    gears.map(({ name }) => name),
    driveline.efficiency,
  )
  return {
    gears: gears.map((gear, i) => ({ ...gear, efficiency: efficiencies[i] as Quantity<'ratio'> })),
    assumptions: [
      ...assumptions,
      'The driveline has the same efficiency at every load and speed, driving and braking.',
    ],
  }
}

function efficienciesFor(where: string, names: readonly string[], given: Efficiencies): readonly Quantity<'ratio'>[] {
  const [first] = given
  if (first !== undefined && first[0] === undefined) return names.map(() => first[1])
  if (typeof first?.[0] === 'number') {
    if (given.length === names.length) return given.map(([, efficiency]) => efficiency)
    const expected = `one for each of the gears ${names.join(', ')}`
    throw new InputError(where, [{ path: 'efficiency', expected, received: `a list of ${given.length}` }])
  }
  const byName = new Map(given)
  const strangers = given.filter(([name]) => !names.includes(name as string))
  const issues = [
    ...names
      .filter((name) => !byName.has(name))
      .map((name) => ({ path: `efficiency.${name}`, expected: 'an efficiency such as 0.95', received: 'nothing' })),
    ...strangers.map(([name, value]) => ({
      path: `efficiency.${name}`,
      expected: `no such gear; there are ${names.join(', ')}`,
      received: String(value),
    })),
  ]
  if (issues.length > 0) throw new InputError(where, issues)
  return names.map((name) => byName.get(name) as Quantity<'ratio'>)
}

/** A gear on plain SI numbers: for loops. What is lost is lost in both directions. */
export interface GearNumbers {
  readonly ratio: number
  readonly radius: number
  readonly efficiency: number
}

/** A gear as plain SI numbers. */
export function gearNumbers({ ratio, rollingRadius, efficiency }: LossyGear): GearNumbers {
  return { ratio: ratio.si, radius: rollingRadius.si, efficiency: efficiency.si }
}

/** Force at the wheels, in newtons, for a motor torque; both negative where they brake. */
export function wheelForce({ ratio, radius, efficiency }: GearNumbers, torque: number): number {
  return tractiveForce.compute({
    wheelTorque: wheelTorque.compute({ motorTorque: torque, ratio, efficiency }),
    radius,
  })
}

/** Motor torque, in N·m, for a force at the wheels; both negative where they brake. */
export function torqueForForce({ ratio, radius, efficiency }: GearNumbers, force: number): number {
  return motorTorque.compute({ force, ratio, rollingRadius: radius, efficiency })
}
