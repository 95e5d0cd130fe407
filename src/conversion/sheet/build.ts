/** The build sheet: the car before, the change, and what it must do. Read from JSON, with every quantity as text. */
import * as z from 'zod/mini'
import { drivelineOf } from '../../drivetrain/gearing/driveline.js'
import { readTyre } from '../../drivetrain/index.js'
import { envelopeOf } from '../../drivetrain/motor/envelope.js'
import { gearboxFields, motorFields } from '../../drivetrain/vehicle.js'
import { type RunAsked, runFields, runOf, sectionsOf } from '../../electrical/cable/size.js'
import { candidatesField } from '../../electrical/fuse/select.js'
import { moduleGiven, refuseModule } from '../../electrical/pack/module.js'
import { given as field, group, optional, required, text, undecided } from '../../procedure/index.js'
import { readField } from '../../procedure/reading.js'
import { InputError, type InputIssue, type Kind, type Quantity, quantity } from '../../quantity/index.js'
import { journeyGiven, paceGiven } from '../../range/drive/journey.js'
import { about, given, procedure, schemaFrom } from '../../structure/index.js'
import { loopGiven } from '../../thermal/loop/cooling-loop.js'

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

const axleSprings = about(
  'the springs of an axle',
  z.strictObject({
    springRate: given('springRate', 'Rate of one spring', { above: 0 }),
    motionRatio: given('ratio', 'Spring travel over wheel travel', { above: 0 }),
    unsprung: given('mass', 'Wheels, hubs, brakes and share of links, both sides together', { min: 0 }),
  }),
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
    springs: z.optional(about('the springs', z.strictObject({ front: axleSprings, rear: axleSprings }))),
    payload: about(
      'people and goods on board on the road',
      z.strictObject({ mass: given('mass', 'Mass of people and goods', { min: 0 }), at: place }),
    ),
    tyre: z.string(),
    dragArea: given('area', 'Drag coefficient times frontal area', { above: 0 }),
    rollingResistance: given('ratio', 'Rolling resistance over weight', { above: 0, max: 1 }),
    rotatingFactor: z.optional(given('ratio', 'Mass with that of the turning parts over mass', { min: 1 })),
    drivenAxle: about('which wheels are driven', z.enum(['front', 'rear'])),
    friction: z.optional(given('ratio', 'Friction coefficient of tyre and road', { above: 0 })),
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

const pack = about(
  'the pack made of modules',
  z.strictObject({
    series: z.int().check(z.minimum(1)),
    parallel: z.int().check(z.minimum(1)),
    available: about('how many modules are at hand', z.optional(z.int().check(z.minimum(1)))),
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

const motor = schemaFrom(
  group('The motor with its controller', {
    ...motorFields,
    peakTorque: required(motorFields.peakTorque),
    maximumSpeed: required(motorFields.maximumSpeed),
    efficiency: required(motorFields.efficiency),
  }),
)

const controller = about(
  'the motor controller',
  z.strictObject({
    minimumVoltage: given('voltage', 'Voltage below which it stops', { above: 0 }),
    maximumVoltage: given('voltage', 'Voltage that it bears', { above: 0 }),
    batteryCurrent: given('current', 'Greatest current from the pack', { above: 0 }),
    capacitance: given('capacitance', 'Capacitance at its input', { above: 0 }),
    regeneration: z.optional(
      given('ratio', 'Share of the braking energy at the wheels that goes to the motor', { min: 0, max: 1 }),
    ),
  }),
)

const gearbox = about(
  'the gearbox that stays, with the final drive',
  z.strictObject({
    gears: schemaFrom(required(gearboxFields.gears)),
    finalDrive: schemaFrom(required(gearboxFields.finalDrive)),
    efficiency: given('ratio', 'Efficiency from the motor to the wheels', { above: 0, max: 1 }),
    ratedInputTorque: z.optional(given('torque', 'Input torque for which the gearbox was made', { above: 0 })),
  }),
)

const { length, insulationLimit, faultLimit, ambient, maximumDrop, series, laid, bundled } = undecided(runFields)

const run = schemaFrom(
  group('a run of two-wire cable with its fuse', {
    name: text('What the run is called'),
    current: optional(
      field('current', 'Steady current; unless given, the currents of the journey that asks most', { above: 0 }),
    ),
    length,
    section: optional(text('The section, where it lies already; chosen unless given')),
    insulationLimit,
    faultLimit,
    ambient,
    maximumDrop,
    series,
    laid,
    bundled,
  }),
)

const charger = about(
  'the charger, the socket that feeds it, and the charge that is asked of them',
  z.strictObject({
    voltage: given('voltage', 'Voltage of one phase to neutral', { above: 0 }),
    current: given('current', 'Current in each phase that may be drawn all day', { above: 0 }),
    phases: z.int().check(z.minimum(1), z.maximum(3)),
    powerFactor: given('ratio', 'Power factor of the charger', { above: 0, max: 1 }),
    power: given('power', 'Greatest power into the pack', { above: 0 }),
    efficiency: given('ratio', 'Efficiency of the charger', { above: 0, max: 1 }),
    from: given('ratio', 'State of charge at the start', { min: 0, max: 1 }),
    to: given('ratio', 'State of charge wanted', { min: 0, max: 1 }),
  }),
)

const home = about(
  'a house that the pack feeds for an evening',
  z.strictObject({
    hourly: about(
      'the load of each hour, one after the other',
      z.array(given('power', 'Mean load of the hour', { min: 0 })).check(z.minLength(1)),
    ),
    inverter: about(
      'the inverter',
      z.strictObject({
        efficiency: given('ratio', 'Efficiency', { above: 0, max: 1 }),
        power: given('power', 'Greatest power that it delivers', { above: 0 }),
        standby: given('power', 'Power that it needs without a load', { min: 0 }),
      }),
    ),
    reserve: given('energy', 'Energy kept back for the next drive', { min: 0 }),
  }),
)

const hill = about(
  'the longest hill that the car must climb',
  z.strictObject({
    grade: given('ratio', 'Rise over run', { above: 0, max: 1 }),
    length: given('length', 'Length of the road', { above: 0 }),
    speed: given('speed', 'Speed on it', { above: 0 }),
  }),
)

const journey = about(
  'a journey, from a stand to a stand',
  z.strictObject({
    name: z.string().check(z.minLength(1)),
    stretches: journeyGiven,
    pace: z.optional(paceGiven),
  }),
)

const cooling = about(
  'the coolant loop of motor and controller, and how the pack is cooled, on a summer day',
  z.strictObject({
    outside: given('temperature', 'Temperature of a summer day'),
    coolant: loopGiven.shape.coolant,
    pump: loopGiven.shape.pump,
    segments: loopGiven.shape.segments,
    radiator: loopGiven.shape.radiator,
    airFlow: given('volumeFlow', 'Air flow through the radiator on the hill', { above: 0 }),
    limit: loopGiven.shape.limit,
    minimumFlow: loopGiven.shape.minimumFlow,
    pack: about(
      'cooling of the pack',
      z.strictObject({
        conductance: given('thermalConductance', 'Heat that the pack gives off per kelvin', { above: 0 }),
        limit: given('temperature', 'Most that the cells may have'),
      }),
    ),
  }),
)

const heating = about(
  'what the cold asks for',
  z.strictObject({
    outside: given('temperature', 'Temperature of a winter morning'),
    night: about(
      'the night before',
      z.strictObject({
        from: given('temperature', 'Temperature of the pack in the evening'),
        time: given('time', 'From the evening to the morning', { above: 0 }),
      }),
    ),
    cabin: about(
      'warming of the cabin',
      z.strictObject({
        airFlow: given('volumeFlow', 'Flow of fresh air', { min: 0 }),
        inside: given('temperature', 'Temperature inside'),
        lossConductance: given('thermalConductance', 'Conductance of all walls', { min: 0 }),
        coefficientOfPerformance: z.optional(
          given('ratio', 'Coefficient of performance of the heat pump, where it is one', { min: 1 }),
        ),
      }),
    ),
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
    topSpeed: z.optional(given('speed', 'Speed to be held on the level', { above: 0 })),
    startGrade: z.optional(given('ratio', 'Grade to start on, rise over run', { above: 0 })),
    energy: z.optional(given('energy', 'Least energy of the pack', { above: 0 })),
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
    module: z.optional(moduleGiven),
    pack: z.optional(pack),
    motor: z.optional(motor),
    controller: z.optional(controller),
    gearbox: z.optional(gearbox),
    runs: z.optional(z.array(run)),
    fuses: z.optional(schemaFrom(candidatesField)),
    charger: z.optional(charger),
    journeys: z.optional(z.array(journey)),
    hill: z.optional(hill),
    cooling: z.optional(cooling),
    heating: z.optional(heating),
    home: z.optional(home),
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
function contradictions({
  car,
  module,
  motor,
  controller,
  gearbox,
  runs = [],
  journeys = [],
  charger,
  cooling,
  heating,
}: Build): InputIssue[] {
  const rising = <K extends Kind>(...values: readonly (readonly [path: string, value: Quantity<K>])[]) =>
    values.flatMap(([path, value], i) => {
      const [beforePath, before] = values[i - 1] ?? [path, value]
      return i === 0 || value.si > before.si
        ? []
        : [{ path, expected: `more than ${beforePath}, ${before}`, received: String(value) }]
    })
  return [
    ...issuesOf(() => readTyre(car.tyre)).map((issue) => ({ ...issue, path: 'car.tyre' })),
    ...(car.springs === undefined ? [] : unsprungIssues(car.scales, car.springs)),
    ...(module === undefined ? [] : issuesOf(() => refuseModule('readBuild', 'module', module))),
    ...(motor === undefined ? [] : issuesOf(() => envelopeOf('readBuild', motor))),
    ...(gearbox === undefined ? [] : gearIssues(gearbox)),
    ...(controller === undefined
      ? []
      : rising(
          ['controller.minimumVoltage', controller.minimumVoltage],
          ['controller.maximumVoltage', controller.maximumVoltage],
        )),
    ...runs.flatMap((each, i) => runIssues(`runs[${i}].`, each, journeys)),
    ...(charger === undefined ? [] : rising(['charger.from', charger.from], ['charger.to', charger.to])),
    ...(cooling === undefined
      ? []
      : rising(['cooling.outside', cooling.outside], ['cooling.pack.limit', cooling.pack.limit])),
    ...(heating === undefined
      ? []
      : [
          ...rising(['heating.outside', heating.outside], ['heating.cabin.inside', heating.cabin.inside]),
          ...rising(['heating.outside', heating.outside], ['heating.pack.to', heating.pack.to]),
        ]),
  ]
}

function gearIssues(gearbox: NonNullable<Build['gearbox']>): readonly InputIssue[] {
  // The tyre has its own words: any radius does to hold the gears against each other.
  const car = { rollingRadius: quantity('length', '0.3 m') }
  return issuesOf(() => drivelineOf('readBuild', { car, gearbox }))
}

function unsprungIssues(
  { frontLeft, frontRight, rearLeft, rearRight }: Build['car']['scales'],
  { front, rear }: NonNullable<Build['car']['springs']>,
): InputIssue[] {
  const axles = [
    ['front', front.unsprung, frontLeft.plus(frontRight)],
    ['rear', rear.unsprung, rearLeft.plus(rearRight)],
  ] as const
  return axles.flatMap(([end, unsprung, mass]) =>
    unsprung.si < mass.si
      ? []
      : [
          {
            path: `car.springs.${end}.unsprung`,
            expected: `less than the ${end} scales show, ${mass}`,
            received: String(unsprung),
          },
        ],
  )
}

/** A run with what stands where the sheet says nothing. */
const runField = group('a run', runFields)

function runIssues(
  path: string,
  { name: _, section, ...asked }: z.output<typeof run>,
  journeys: NonNullable<Build['journeys']>,
): readonly InputIssue[] {
  // Of what volts a drop is a share, the pack tells; which current flows, perhaps a journey.
  const load = { current: quantity('current', '1 A'), systemVoltage: quantity('voltage', '1 V') }
  const whole = readField('readBuild', runField, { ...asked, ...load }) as RunAsked
  const names = sectionsOf(whole.series).map((each) => each.name)
  return [
    ...(section === undefined || names.includes(section)
      ? []
      : [{ path: `${path}section`, expected: `a section: ${names.join(', ')}`, received: `'${section}'` }]),
    ...(asked.current !== undefined || journeys.length > 0
      ? []
      : [
          {
            path: `${path}current`,
            expected: "a current such as '120 A', or journeys whose currents it carries",
            received: 'nothing',
          },
        ]),
    ...issuesOf(() => runOf('readBuild', path, whole)),
  ]
}

/** What a reader that refuses its input says of it. */
function issuesOf(read: () => unknown): readonly InputIssue[] {
  try {
    read()
    return []
  } catch (error) {
    if (error instanceof InputError) return error.issues
    throw error
  }
}
