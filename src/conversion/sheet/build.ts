/**
 * The build sheet: the car before, the change, and what it must do. Read from JSON, with every quantity as text.
 *
 * Its parts are those of the procedures that they are handed on to, without their defaults: who uses a figure tells what
 * stands in its place.
 */
import { drivelineOf } from '../../drivetrain/gearing/driveline.js'
import { readTyre } from '../../drivetrain/index.js'
import { envelopeOf } from '../../drivetrain/motor/envelope.js'
import {
  auxiliariesField,
  carFields,
  controllerFields,
  fullPull,
  gearboxFields,
  motorFields,
} from '../../drivetrain/vehicle.js'
import { type RunAsked, runFields, runOf, sectionsOf } from '../../electrical/cable/size.js'
import { chargerFields, supplyFields } from '../../electrical/charging/charging.js'
import { houseFields, inverterFields } from '../../electrical/charging/house.js'
import { candidatesField } from '../../electrical/fuse/task.js'
import { moduleFields, packFields, refuseModule } from '../../electrical/pack/module.js'
import { prechargeFields } from '../../electrical/precharge.js'
import { overloadLimitField } from '../../electrical/protect.js'
import { stringsField } from '../../electrical/strings.js'
import { limitsField } from '../../mass/exchange.js'
import { partFields } from '../../mass/ledger.js'
import { positionFields } from '../../mass/position.js'
import { springFields } from '../../mass/ride/ride.js'
import { refuseReadings, weighedCarFields } from '../../mass/weigh.js'
import {
  choice,
  given,
  group,
  list,
  optional,
  type Read,
  required,
  text,
  undecided,
  type Written,
  whole,
} from '../../procedure/index.js'
import { readField } from '../../procedure/reading.js'
import { InputError, type InputIssue, type Kind, type Quantity, quantity } from '../../quantity/index.js'
import { journeyField, paceField } from '../../range/drive/journey.js'
import { cabinFields } from '../../thermal/cabin/cabin.js'
import { loopFields } from '../../thermal/loop/given.js'

const placeField = /*@__PURE__*/ (() =>
  group('A place in the car', { ...positionFields, left: required(positionFields.left) }))()

const partField = /*@__PURE__*/ (() => group('A part that leaves or comes', { ...partFields, at: placeField }))()

const axleSpringsField = /*@__PURE__*/ (() =>
  group('The springs of an axle', {
    ...springFields,
    unsprung: given('mass', 'Wheels, hubs, brakes and share of links, both sides together', {
      min: 0,
      usual: ['24 kg', '180 kg'],
    }),
  }))()

const sheetCarField = /*@__PURE__*/ (() =>
  group('The car as it is', {
    ...weighedCarFields,
    frontRollShare: optional(
      given('ratio', "The front axle's share of the roll stiffness", { min: 0, max: 1, usual: ['20 %', '90 %'] }),
    ),
    springs: optional(group('The springs', { front: axleSpringsField, rear: axleSpringsField })),
    payload: group('People and goods on board on the road', {
      mass: given('mass', 'Mass of people and goods', { min: 0, usual: ['0 kg', '1000 kg'], finest: '5 kg' }),
      at: placeField,
    }),
    tyre: required(carFields.tyre),
    dragArea: required(carFields.dragArea),
    rollingResistance: required(carFields.rollingResistance),
    rotatingFactor: carFields.rotatingFactor,
    drivenAxle: required(carFields.drivenAxle),
    friction: carFields.friction,
    limits: optional(limitsField),
  }))()

const sheetPackField = /*@__PURE__*/ (() =>
  group('The pack made of modules', {
    series: packFields.series,
    parallel: packFields.parallel,
    strings: stringsField,
    available: optional(whole('How many modules are at hand', { min: 1 })),
    usable: given('ratio', 'Share of the energy that is used in summer', { above: 0, max: 1 }),
    usableInWinter: given('ratio', 'Share of the energy that a cold pack gives', { above: 0, max: 1 }),
    bays: list(
      'The bays that hold modules',
      group('A bay that holds modules', {
        name: text('What the bay is called'),
        at: placeField,
        capacity: whole('How many modules it holds', { min: 0 }),
      }),
    ),
  }))()

const sheetMotorField = /*@__PURE__*/ (() =>
  group('The motor with its controller', {
    ...motorFields,
    peakTorque: required(motorFields.peakTorque),
    maximumSpeed: required(motorFields.maximumSpeed),
    efficiency: required(motorFields.efficiency),
  }))()

const sheetControllerField = /*@__PURE__*/ (() =>
  group('The motor controller', {
    ...controllerFields,
    minimumVoltage: required(controllerFields.minimumVoltage),
    maximumVoltage: required(controllerFields.maximumVoltage),
    batteryCurrent: required(controllerFields.batteryCurrent),
    batteryCurrentTime: optional(fullPull),
    capacitance: required(controllerFields.capacitance),
  }))()

const sheetGearboxField = /*@__PURE__*/ (() =>
  group('The gearbox that stays, with the final drive', {
    gears: required(gearboxFields.gears),
    finalDrive: required(gearboxFields.finalDrive),
    efficiency: given('ratio', 'Efficiency from the motor to the wheels', { above: 0, max: 1 }),
    ratedInputTorque: gearboxFields.ratedInputTorque,
  }))()

const sheetRunField = /*@__PURE__*/ (() => {
  const { length, insulationLimit, faultLimit, ambient, maximumDrop, series, laid, terminalLimit, bundled } =
    undecided(runFields)
  return group('A run of two-wire cable with its fuse', {
    name: text('What the run is called'),
    current: optional(
      given('current', 'Steady current; unless given, the currents of the journey that asks most', {
        above: 0,
        usual: ['0.5 A', '800 A'],
      }),
    ),
    length,
    section: optional(text('The section, where it lies already; chosen unless given')),
    insulationLimit,
    faultLimit,
    ambient,
    maximumDrop,
    series,
    laid,
    terminalLimit,
    overloadLimit: overloadLimitField,
    bundled,
    feeds: optional(choice('What it feeds', ['controller', 'other'])),
    fuses: optional(candidatesField),
  })
})()

const prechargeField = /*@__PURE__*/ (() =>
  group('The precharge of the controller, and the contactor that closes after it', undecided(prechargeFields)))()

const sheetChargerField = /*@__PURE__*/ (() =>
  group('The charger, the socket that feeds it, and the charge that is asked of them', {
    ...undecided(supplyFields),
    ...chargerFields,
    from: given('ratio', 'State of charge at the start', { min: 0, max: 1, finest: '1 %' }),
    to: given('ratio', 'State of charge wanted', { min: 0, max: 1 }),
  }))()

const homeField = /*@__PURE__*/ (() =>
  group('A house that the pack feeds for an evening', {
    hourly: required(houseFields.hourly),
    inverter: group('The inverter', undecided(inverterFields)),
    reserve: given('energy', 'Energy kept back for the next drive', { min: 0, finest: '0.1 kWh' }),
  }))()

const hillField = /*@__PURE__*/ (() =>
  group('The longest hill that the car must climb', {
    grade: given('ratio', 'Rise over run', { above: 0, max: 1, usual: ['0.5 %', '40 %'] }),
    length: given('length', 'Length of the road', { above: 0, usual: ['50 m', '50 km'] }),
    speed: given('speed', 'Speed on it', { above: 0, usual: ['3 km/h', '140 km/h'] }),
  }))()

const sheetJourneyField = /*@__PURE__*/ (() =>
  group('A journey, from a stand to a stand', {
    name: text('What the journey is called'),
    stretches: journeyField,
    pace: optional(paceField),
  }))()

const coolingField = /*@__PURE__*/ (() =>
  group('The coolant loop of motor and controller, and how the pack is cooled, on a summer day', {
    outside: given('temperature', 'Temperature of a summer day', { usual: ['15 °C', '50 °C'] }),
    coolant: loopFields.coolant,
    pump: loopFields.pump,
    segments: loopFields.segments,
    radiator: loopFields.radiator,
    airFlow: given('volumeFlow', 'Air flow through the radiator on the hill', {
      above: 0,
      usual: ['50 m³/h', '10000 m³/h'],
    }),
    limit: loopFields.limit,
    minimumFlow: loopFields.minimumFlow,
    pack: group('Cooling of the pack', {
      conductance: given('thermalConductance', 'Heat that the pack gives off per kelvin', {
        above: 0,
        usual: ['0.5 W/K', '500 W/K'],
      }),
      limit: given('temperature', 'Most that the cells may have', { usual: ['25 °C', '75 °C'] }),
    }),
  }))()

const heatingField = /*@__PURE__*/ (() =>
  group('What the cold asks for', {
    outside: given('temperature', 'Temperature of a winter morning', { usual: ['-40 °C', '15 °C'], finest: '0.1 °C' }),
    night: group('The night before', {
      from: given('temperature', 'Temperature of the pack in the evening', {
        usual: ['-30 °C', '50 °C'],
        finest: '0.1 °C',
      }),
      time: given('time', 'From the evening to the morning', { above: 0, usual: ['1 h', '72 h'] }),
    }),
    cabin: group('Warming of the cabin', cabinFields),
    pack: group('Warming of the pack', {
      heater: given('power', 'Power of the heater', { above: 0, usual: ['50 W', '10 kW'] }),
      to: given('temperature', 'Temperature to reach', { usual: ['-10 °C', '40 °C'], finest: '0.1 °C' }),
      conductance: given('thermalConductance', 'Heat lost to the outside per kelvin', {
        above: 0,
        usual: ['0.5 W/K', '100 W/K'],
      }),
    }),
  }))()

const targetsField = /*@__PURE__*/ (() =>
  group('What the change must keep to', {
    kerbMassChange: optional(given('mass', 'How much the kerb mass may rise', { min: 0, usual: ['0 kg', '600 kg'] })),
    topSpeed: optional(given('speed', 'Speed to be held on the level', { above: 0, usual: ['20 km/h', '250 km/h'] })),
    startGrade: optional(given('ratio', 'Grade to start on, rise over run', { above: 0, usual: ['1 %', '50 %'] })),
    energy: optional(given('energy', 'Least energy of the pack', { above: 0, usual: ['1 kWh', '150 kWh'] })),
    frontShare: optional(
      given('ratio', 'Share of the front axle to come near to; as before unless given', { above: 0, below: 1 }),
    ),
    frontShareChange: optional(
      given('ratio', 'How far the share of the front axle may move', { above: 0, max: 1, usual: ['0.1 %', '20 %'] }),
    ),
  }))()

/** What describes a build sheet. @internal */
export const sheetField = /*@__PURE__*/ (() =>
  group('A build sheet', {
    title: text('What the build is called'),
    note: optional(text('What else is to be said of it')),
    car: sheetCarField,
    removed: optional(list('The parts that leave', partField)),
    added: optional(list('The parts that come', partField)),
    module: optional(group('A module', moduleFields)),
    pack: optional(sheetPackField),
    motor: optional(sheetMotorField),
    controller: optional(sheetControllerField),
    gearbox: optional(sheetGearboxField),
    runs: optional(list('The runs of cable', sheetRunField)),
    fuses: optional(candidatesField),
    precharge: optional(prechargeField),
    charger: optional(sheetChargerField),
    journeys: optional(list('The journeys that the car must make', sheetJourneyField)),
    hill: optional(hillField),
    cooling: optional(coolingField),
    heating: optional(heatingField),
    home: optional(homeField),
    auxiliaries: optional(auxiliariesField),
    targets: optional(targetsField),
  }))()

/** A build sheet as it is written: every quantity is text with its unit. */
export type BuildSheet = Written<typeof sheetField>

/** A build sheet that was read. */
export type Build = Read<typeof sheetField>

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
  const build = readField('readBuild', sheetField, sheet) as Build
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
    ...issuesOf(() => refuseReadings('readBuild', 'car.', car)),
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
const runField = /*@__PURE__*/ (() => group('A run', runFields))()

function runIssues(
  path: string,
  { name: _, section, feeds: __, fuses: ___, overloadLimit: ____, ...asked }: Read<typeof sheetRunField>,
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
