/** The build sheet: the car before, the change, and what it must do. Read from JSON, with every quantity as text. */
import * as z from 'zod/mini'
import { readTyre } from '../drivetrain/index.js'
import { InputError, type InputIssue, type Kind, type Quantity } from '../quantity/index.js'
import { about, given, procedure } from '../structure/index.js'

const place = about(
  'a place in the car',
  z.strictObject({
    aft: given('length', 'Distance behind the front axle line; ahead of it is negative'),
    left: given('length', 'Distance left of the centre line; right of it is negative'),
    up: z.optional(given('length', 'Height above the ground', { min: 0 })),
  }),
)

const part = about(
  'a part that leaves or comes',
  z.strictObject({ name: z.string(), mass: given('mass', 'Mass of the part', { above: 0 }), at: place }),
)

const car = about(
  'the car as it is',
  z.strictObject({
    wheelbase: given('length', 'Distance between the axles', { above: 0 }),
    track: about(
      'the distances between the wheels of an axle',
      z.strictObject({
        front: given('length', 'Front track', { above: 0 }),
        rear: given('length', 'Rear track', { above: 0 }),
      }),
    ),
    scales: about(
      'what a scale under each wheel shows, the car ready for the road and empty',
      z.strictObject({
        frontLeft: given('mass', 'Scale under the front left wheel', { above: 0 }),
        frontRight: given('mass', 'Scale under the front right wheel', { above: 0 }),
        rearLeft: given('mass', 'Scale under the rear left wheel', { above: 0 }),
        rearRight: given('mass', 'Scale under the rear right wheel', { above: 0 }),
      }),
    ),
    raised: z.optional(
      about(
        'the weighing with the rear axle raised',
        z.strictObject({
          rise: given('length', 'Height by which the rear wheel centres were raised', { above: 0 }),
          loadedRadius: given('length', 'Height of the wheel centres above the ground, car level', { above: 0 }),
          front: given('mass', 'Mass on both front wheels, rear axle raised', { above: 0 }),
        }),
      ),
    ),
    frontRollShare: z.optional(given('ratio', "The front axle's share of the roll stiffness", { min: 0, max: 1 })),
    payload: about(
      'people and goods on board on the road',
      z.strictObject({ mass: given('mass', 'Mass of people and goods', { min: 0 }), at: place }),
    ),
    tyre: z.string(),
    dragArea: given('area', 'Drag coefficient times frontal area', { above: 0 }),
    rollingResistance: given('ratio', 'Rolling resistance over weight', { above: 0, max: 1 }),
    limits: z.optional(
      about(
        'the greatest masses on the papers of the car',
        z.strictObject({
          gross: z.optional(given('mass', 'Gross mass allowed', { above: 0 })),
          frontAxle: z.optional(given('mass', 'Mass allowed on the front axle', { above: 0 })),
          rearAxle: z.optional(given('mass', 'Mass allowed on the rear axle', { above: 0 })),
        }),
      ),
    ),
  }),
)

const batteryModule = about(
  'a battery module',
  z.strictObject({
    name: z.string(),
    nominalVoltage: given('voltage', 'Nominal voltage', { above: 0 }),
    minimumVoltage: given('voltage', 'Voltage when empty', { above: 0 }),
    maximumVoltage: given('voltage', 'Voltage when full', { above: 0 }),
    capacity: given('charge', 'Capacity', { above: 0 }),
    resistance: given('resistance', 'Inner resistance', { above: 0 }),
    mass: given('mass', 'Mass of one module', { above: 0 }),
    peakCurrent: given('current', 'Greatest current for a few seconds', { above: 0 }),
    specificHeat: given('specificHeat', 'Specific heat', { above: 0 }),
  }),
)

const pack = about(
  'the pack made of modules',
  z.strictObject({
    series: z.int().check(z.minimum(1)),
    parallel: z.int().check(z.minimum(1)),
    usable: given('ratio', 'Share of the energy that is used in summer', { above: 0, max: 1 }),
    usableInWinter: given('ratio', 'Share of the energy that a cold pack gives', { above: 0, max: 1 }),
    bays: z.array(
      about(
        'a bay that holds modules',
        z.strictObject({ name: z.string(), at: place, capacity: z.int().check(z.minimum(0)) }),
      ),
    ),
  }),
)

const motor = about(
  'the motor',
  z.strictObject({
    peakTorque: given('torque', 'Greatest torque', { above: 0 }),
    maximumSpeed: given('angularSpeed', 'Greatest speed', { above: 0 }),
    efficiency: given('ratio', 'Efficiency of motor and controller together', { above: 0, max: 1 }),
  }),
)

const controller = about(
  'the motor controller',
  z.strictObject({
    minimumVoltage: given('voltage', 'Voltage below which it stops', { above: 0 }),
    maximumVoltage: given('voltage', 'Voltage that it bears', { above: 0 }),
    batteryCurrent: given('current', 'Greatest current from the pack', { above: 0 }),
    capacitance: given('capacitance', 'Capacitance at its input', { above: 0 }),
  }),
)

const gearbox = about(
  'the gearbox that stays, with the final drive',
  z.strictObject({
    gears: z.array(given('ratio', 'Ratio of a gear, first to top', { above: 0 })).check(z.minLength(1)),
    finalDrive: given('ratio', 'Ratio of the final drive', { above: 0 }),
    efficiency: given('ratio', 'Efficiency from the motor to the wheels', { above: 0, max: 1 }),
  }),
)

const run = about(
  'a run of two-wire cable',
  z.strictObject({
    name: z.string(),
    current: given('current', 'Steady current', { above: 0 }),
    length: given('length', 'One-way length', { above: 0 }),
    section: given('area', 'Section of the copper', { above: 0 }),
    conductorTemperature: given('temperature', 'Temperature of the conductor at that current'),
    insulationLimit: given('temperature', 'Greatest temperature of the insulation in a fault'),
    maximumDrop: z.optional(given('ratio', 'Greatest drop, as a share of the nominal voltage', { above: 0, max: 1 })),
  }),
)

const charger = about(
  'the charger and the socket that feeds it',
  z.strictObject({
    voltage: given('voltage', 'Voltage of the supply', { above: 0 }),
    current: given('current', 'Current that the supply allows', { above: 0 }),
    phases: z.int().check(z.minimum(1), z.maximum(3)),
    powerFactor: given('ratio', 'Power factor of the charger', { above: 0, max: 1 }),
    efficiency: given('ratio', 'Efficiency of the charger', { above: 0, max: 1 }),
  }),
)

const heating = about(
  'what the cold asks for',
  z.strictObject({
    outside: given('temperature', 'Temperature of a winter morning'),
    cabin: given('power', 'Power to heat the cabin', { min: 0 }),
    pack: about(
      'warming of the pack',
      z.strictObject({
        heater: given('power', 'Power of the heater', { above: 0 }),
        to: given('temperature', 'Temperature to reach'),
        conductance: given('thermalConductance', 'Heat lost to the outside per kelvin', { above: 0 }),
      }),
    ),
  }),
)

const targets = about(
  'what the change must keep to',
  z.strictObject({
    kerbMassChange: z.optional(given('mass', 'How much the kerb mass may rise', { min: 0 })),
    frontShare: z.optional(
      given('ratio', 'Share of the front axle to come near to; as before unless given', { above: 0, below: 1 }),
    ),
    frontShareChange: z.optional(given('ratio', 'How far the share of the front axle may move', { above: 0, max: 1 })),
  }),
)

const buildSheet = about(
  'a build sheet',
  z.strictObject({
    title: z.string().check(z.minLength(1)),
    note: z.optional(z.string()),
    car,
    removed: z.optional(z.array(part)),
    added: z.optional(z.array(part)),
    module: z.optional(batteryModule),
    pack: z.optional(pack),
    motor: z.optional(motor),
    controller: z.optional(controller),
    gearbox: z.optional(gearbox),
    runs: z.optional(z.array(run)),
    charger: z.optional(charger),
    heating: z.optional(heating),
    auxiliaries: z.optional(given('power', 'Power of lamps, pumps and the 12 V system', { min: 0 })),
    targets: z.optional(targets),
  }),
)

const readSheet = /*@__PURE__*/ procedure('readBuild', buildSheet, (read) => read)

/** A build sheet as it is written: every quantity is text with its unit. */
export type BuildSheet = Parameters<typeof readSheet>[0]

/** A build sheet that was read. */
export type Build = ReturnType<typeof readSheet>

/**
 * Reads a build sheet, as it comes from JSON.parse.
 *
 * Every quantity is text with its unit. Only `title` and `car` must be there; what is missing is not assessed.
 *
 * @param sheet - The sheet, as {@link BuildSheet} describes it.
 * @returns The sheet with its quantities read.
 * @throws InputError that lists everything wrong with it, each by its path, such as `pack.bays[1].at.aft`.
 */
export function readBuild(sheet: unknown): Build {
  const build = readSheet(sheet as BuildSheet)
  const issues = contradictions(build)
  if (issues.length > 0) throw new InputError('readBuild', issues)
  return build
}

/** Fields that are sound by themselves and do not go together. */
function contradictions({ car, module, controller, runs = [], heating }: Build): InputIssue[] {
  const issues: InputIssue[] = []
  const rising = <K extends Kind>(...values: readonly (readonly [path: string, value: Quantity<K>])[]) => {
    for (const [i, [path, value]] of values.entries()) {
      const [beforePath, before] = values[i - 1] ?? [path, value]
      if (i === 0 || value.si > before.si) continue
      issues.push({ path, expected: `more than ${beforePath}, ${before}`, received: String(value) })
    }
  }
  try {
    readTyre(car.tyre)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    issues.push(...error.issues.map((issue) => ({ ...issue, path: 'car.tyre' })))
  }
  if (module !== undefined) {
    rising(
      ['module.minimumVoltage', module.minimumVoltage],
      ['module.nominalVoltage', module.nominalVoltage],
      ['module.maximumVoltage', module.maximumVoltage],
    )
  }
  if (controller !== undefined) {
    rising(
      ['controller.minimumVoltage', controller.minimumVoltage],
      ['controller.maximumVoltage', controller.maximumVoltage],
    )
  }
  for (const [i, run] of runs.entries()) {
    const path = `runs[${i}]`
    rising([`${path}.conductorTemperature`, run.conductorTemperature], [`${path}.insulationLimit`, run.insulationLimit])
  }
  if (heating !== undefined) rising(['heating.outside', heating.outside], ['heating.pack.to', heating.pack.to])
  return issues
}
