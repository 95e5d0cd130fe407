/**
 * The fields of the build sheet: the car before, the change, and what it must do.
 *
 * Its parts are those of the procedures that they are handed on to, without their defaults: who uses a figure tells what
 * stands in its place. What has a name is a record keyed by it: the key stays, whatever the order and the words.
 */
import {
  auxiliariesField,
  carFields,
  controllerFields,
  fullPull,
  gearboxFields,
  motorFields,
} from '../../drivetrain/vehicle.js'
import { barFields, ENDS, endFields, endless } from '../../electrical/bus-bar.js'
import { runFields } from '../../electrical/cable/size.js'
import { habitField, temperaturesField, yearsField } from '../../electrical/cells/life.js'
import { chargerFields, supplyFields } from '../../electrical/charging/charging.js'
import { houseFields, inverterFields } from '../../electrical/charging/house.js'
import { contactorFields, contactorsField, openingsField, tripField } from '../../electrical/contactor/given.js'
import { ageingField, candidatesField, fuseFields, inductanceField } from '../../electrical/fuse/task.js'
import { distanceFields } from '../../electrical/insulation-distance.js'
import { chassisCapacitanceField, monitorFields } from '../../electrical/insulation-monitor.js'
import { shutdownFields } from '../../electrical/isolating.js'
import { batteryFields, converterFields, lowVoltageFields } from '../../electrical/low-voltage.js'
import { chargingPointFields } from '../../electrical/mains.js'
import { moduleFields, packFields } from '../../electrical/pack/module.js'
import { cellTemperatureField } from '../../electrical/pack/operating-point.js'
import { prechargeFields } from '../../electrical/precharge.js'
import { overloadLimitField, protectiveConductorField, spacingField } from '../../electrical/protect.js'
import { circuitFields, readingFields } from '../../electrical/safety.js'
import { stringsField } from '../../electrical/strings.js'
import { brakeFields } from '../../mass/brakes/balance.js'
import { limitsField } from '../../mass/exchange.js'
import { partFields } from '../../mass/ledger.js'
import { bayFields } from '../../mass/placing/given.js'
import { positionFields } from '../../mass/position.js'
import { springFields } from '../../mass/ride/ride.js'
import { weighedCarFields } from '../../mass/weigh.js'
import {
  byName,
  choice,
  flag,
  given,
  group,
  list,
  optional,
  required,
  spare,
  text,
  undecided,
  whole,
} from '../../procedure/index.js'
import { journeyField, paceField } from '../../range/drive/journey.js'
import { cabinFields } from '../../thermal/cabin/cabin.js'
import { loopFields } from '../../thermal/loop/given.js'
import { HOTTEST, hottestFields } from '../../thermal/pack/given.js'
import { cycleNames } from './cycles.js'

const titleField = /*@__PURE__*/ (() => optional(text('Title, for people to read; its key is its name in ids')))()

/** What has a name has it as its key. */
const named = { name: 'its key is its name in ids and paths; words for people go into its title' }

const placeField = /*@__PURE__*/ (() =>
  group('A place in the car', { ...positionFields, left: required(positionFields.left) }))()

const partField = /*@__PURE__*/ (() => group('A part taken out or put in', { ...partFields, at: placeField }))()

const axleSpringsField = /*@__PURE__*/ (() =>
  group('The springs of an axle', {
    ...springFields,
    unsprung: given('mass', 'Unsprung mass of the axle, both sides: wheels, hubs, brakes and a share of the links', {
      min: 0,
      usual: ['24 kg', '180 kg'],
    }),
  }))()

/** The wheels are known by one of three. */
const oneOfThem = { absent: 'Give one of tyre, rollingRadius and rollingCircumference.' }

const sheetCarField = /*@__PURE__*/ (() =>
  group('The car as it is', {
    ...weighedCarFields,
    frontRollShare: optional(
      given('ratio', "The front axle's share of the roll stiffness", { min: 0, max: 1, usual: ['20 %', '90 %'] }),
    ),
    springs: optional(group('The springs', { front: axleSpringsField, rear: axleSpringsField })),
    payload: group('People and goods on board', {
      mass: given('mass', 'Mass of people and goods', { min: 0, usual: ['0 kg', '1000 kg'], finest: '5 kg' }),
      at: placeField,
    }),
    tyre: optional(required(carFields.tyre), oneOfThem),
    rollingRadius: optional(required(carFields.rollingRadius), oneOfThem),
    rollingCircumference: optional(
      given('length', 'Distance that a driven wheel rolls in one turn', { above: 0, usual: ['1.5 m', '2.1 m'] }),
      oneOfThem,
    ),
    dragArea: required(carFields.dragArea),
    rollingResistance: required(carFields.rollingResistance),
    rotatingFactor: carFields.rotatingFactor,
    drivenAxle: required(carFields.drivenAxle),
    friction: carFields.friction,
    limits: optional(limitsField),
  }))()

const sheetBrakesField = /*@__PURE__*/ (() =>
  group('The brakes, and what went with the engine', {
    ...brakeFields,
    regeneration: optional(
      given('force', 'Force with which the motor goes on braking at the driven wheels while the pedal is pressed', {
        min: 0,
        usual: ['0 N', '5000 N'],
      }),
    ),
    driver: optional(placeField, { absent: 'The driver sits where people and goods are.' }),
    servo: optional(flag('Whether a vacuum servo helps the foot')),
    vacuum: optional(text('What makes its vacuum: a load of lowVoltage.loads by its name, or none')),
    parking: optional(
      given('force', 'Force at the tyres with which the parking brake holds, as measured', {
        above: 0,
        usual: ['1 kN', '10 kN'],
      }),
    ),
  }))()

const bayOfSheetField = /*@__PURE__*/ (() => {
  const { name: _, accepts: __, ...fields } = bayFields
  return group('A bay for modules', { title: titleField, ...fields, at: placeField }, { moved: named })
})()

const lifeField = /*@__PURE__*/ (() =>
  group('A year of the pack, for what models say of its life', {
    journeys: byName(
      'How often a year each journey of the sheet is made, by its name',
      whole('How often a year', { min: 0, max: 20_000 }),
    ),
    temperatures: temperaturesField,
    charge: habitField,
    ...undecided({ years: yearsField }),
  }))()

const sheetPackField = /*@__PURE__*/ (() =>
  group(
    'The pack made of modules',
    {
      series: packFields.series,
      parallel: packFields.parallel,
      strings: stringsField,
      available: optional(whole('Number of modules at hand', { min: 1 })),
      usable: given('ratio', 'Usable share of the energy', { above: 0, max: 1 }),
      ...undecided({ ageing: ageingField, inductance: inductanceField }),
      life: optional(lifeField),
      bays: byName('The bays for the modules', bayOfSheetField, { ids: true }),
    },
    { moved: { usableInWinter: 'it belongs in a season, such as seasons.winter.usable' } },
  ))()

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
  group('The gearbox and the final drive, which stay', {
    gears: required(gearboxFields.gears),
    finalDrive: required(gearboxFields.finalDrive),
    efficiency: given('ratio', 'Efficiency from the motor to the wheels', { above: 0, max: 1 }),
    ratedInputTorque: gearboxFields.ratedInputTorque,
  }))()

const sheetRunField = /*@__PURE__*/ (() => {
  const { current: _, profile: __, systemVoltage: ___, ...cable } = runFields
  const { altitude: ____, controller: _____, candidates, ...fuse } = fuseFields
  const fields = {
    title: titleField,
    current: optional(given('current', 'Steady current', { above: 0, usual: ['0.5 A', '800 A'] }), {
      absent: 'The run carries the currents of the journey that asks most of it.',
    }),
    section: optional(text('Section of a cable that is laid already'), { absent: 'The section is chosen.' }),
    ...undecided(cable),
    overloadLimit: overloadLimitField,
    spacing: spacingField,
    protectiveConductor: protectiveConductorField,
    fuseAmbient: optional(
      given('temperature', 'Temperature of the air around the fuse', { above: '-90 °C', below: '200 °C' }),
      { absent: 'It is that of the air around the cables.' },
    ),
    ...undecided(fuse),
    feeds: optional(choice('What it feeds', ['controller', 'other'])),
    fuses: candidates,
  }
  return group('A run of two-wire cable with its fuse', fields, { moved: named })
})()

const prechargeField = /*@__PURE__*/ (() =>
  group('The precharge of the controller, and the contactor that closes after it', undecided(prechargeFields)))()

const sheetBarField = /*@__PURE__*/ (() =>
  group('A bus bar with its joints', {
    title: titleField,
    ...undecided(barFields),
    ends: optional(group(ENDS, undecided(endFields)), endless),
  }))()

const distanceField = /*@__PURE__*/ (() =>
  group('A distance between live parts, or from one to the chassis', {
    title: titleField,
    voltage: optional(given('voltage', 'Highest working voltage', { min: '10 V', max: '1000 V' }), {
      absent: 'It is that of the full pack.',
    }),
    ...undecided(distanceFields),
  }))()

const insulationField = /*@__PURE__*/ (() =>
  group('The insulation of the traction circuit from the chassis', {
    ...undecided(circuitFields),
    readings: optional(group('An isolation test with a voltmeter', readingFields), {
      absent: 'The isolation was not measured.',
    }),
    monitor: optional(group('The monitor of the isolation', monitorFields), {
      absent: 'No monitor watches the isolation.',
    }),
    capacitance: chassisCapacitanceField,
    distances: optional(byName('Distances that insulate', distanceField, { ids: true })),
  }))()

const sheetContactorsField = /*@__PURE__*/ (() =>
  group('The main contactors between the pack and the controller', {
    candidates: contactorsField,
    ...undecided({ openings: openingsField, ambient: contactorFields.ambient }),
    trip: tripField,
    cutOff: optional(
      given('current', 'Greatest peak that the fuse of their run lets through', {
        above: 0,
        usual: ['0.2 kA', '50 kA'],
      }),
    ),
  }))()

const sheetChargerField = /*@__PURE__*/ (() =>
  group('The charger, the supply that feeds it, and the charge', {
    ...undecided(supplyFields),
    ...chargerFields,
    temperature: cellTemperatureField,
    from: given('ratio', 'State of charge at the start', { min: 0, max: 1, finest: '1 %' }),
    to: given('ratio', 'State of charge at the end', { min: 0, max: 1 }),
  }))()

const sheetChargingPointField = /*@__PURE__*/ (() =>
  group(
    'The point at which it charges: the feed of the supply that charger tells of',
    undecided(chargingPointFields),
  ))()

const sheetLowVoltageField = /*@__PURE__*/ (() =>
  group('The 12 V side', {
    ...undecided(lowVoltageFields),
    converter: optional(group('The converter from the pack', undecided(converterFields))),
    battery: optional(group('The 12 V battery', undecided(batteryFields))),
  }))()

const homeField = /*@__PURE__*/ (() =>
  group('A house that the pack feeds for an evening', {
    hourly: required(houseFields.hourly),
    inverter: group('The inverter', undecided(inverterFields)),
    reserve: given('energy', 'Energy kept back for the next drive', { min: 0, finest: '0.1 kWh' }),
  }))()

const hillField = /*@__PURE__*/ (() =>
  group('The longest hill that the car must climb', {
    grade: given('ratio', 'Grade, rise over run', { above: 0, max: 1, usual: ['0.5 %', '40 %'] }),
    length: given('length', 'Length of the road', { above: 0, usual: ['50 m', '50 km'] }),
    speed: given('speed', 'Speed on the hill', { above: 0, usual: ['3 km/h', '140 km/h'] }),
  }))()

/** A journey is told by its road, or it is a cycle. */
const eitherOfThem = { absent: 'Give one of stretches and cycle.' }

const sheetJourneyField = /*@__PURE__*/ (() =>
  group(
    'A journey, from standstill to standstill, or a cycle',
    {
      title: titleField,
      stretches: optional(journeyField, eitherOfThem),
      pace: optional(paceField),
      cycle: optional(choice('The published cycle that it is, in place of stretches', cycleNames), eitherOfThem),
    },
    { moved: named },
  ))()

const seasonField = /*@__PURE__*/ (() =>
  group('A season, or any kind of day', {
    title: titleField,
    outside: given('temperature', 'Temperature of the air', { usual: ['-40 °C', '50 °C'], finest: '0.1 °C' }),
    usable: optional(given('ratio', 'Usable share of the energy of the pack', { above: 0, max: 1 }), {
      absent: 'It is pack.usable.',
    }),
    cells: optional(
      given('temperature', 'Temperature of the cells at the start of a drive', {
        usual: ['-30 °C', '50 °C'],
        finest: '0.1 °C',
      }),
      { absent: 'The cells are as warm as heating.pack makes them, or else as the air.' },
    ),
    night: optional(
      group('The night before', {
        from: given('temperature', 'Temperature of the pack in the evening', {
          usual: ['-30 °C', '50 °C'],
          finest: '0.1 °C',
        }),
        time: given('time', 'Time from the evening to the morning', { above: 0, usual: ['1 h', '72 h'] }),
      }),
    ),
  }))()

const coolingField = /*@__PURE__*/ (() => {
  const fields = {
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
      limit: given('temperature', 'Highest temperature allowed for the cells', { usual: ['25 °C', '75 °C'] }),
      hottest: optional(group(HOTTEST, undecided(hottestFields))),
    }),
  }
  return group('The coolant loop of motor and controller, and how the pack is cooled', fields, {
    moved: { outside: "it belongs in a season: seasons: { summer: { outside: '32 °C' } }" },
  })
})()

const heatingField = /*@__PURE__*/ (() => {
  const fields = {
    cabin: optional(group('The heater of the cabin', cabinFields)),
    pack: optional(
      group('The heater of the pack', {
        heater: given('power', 'Power of the heater', { above: 0, usual: ['50 W', '10 kW'] }),
        to: given('temperature', 'Temperature to which it warms the pack', {
          usual: ['-10 °C', '40 °C'],
          finest: '0.1 °C',
        }),
        conductance: given('thermalConductance', 'Heat lost to the outside per kelvin', {
          above: 0,
          usual: ['0.5 W/K', '100 W/K'],
        }),
      }),
    ),
  }
  return group('The heaters of cabin and pack', fields, {
    moved: {
      outside: "it belongs in a season: seasons: { winter: { outside: '-7 °C' } }",
      night: "it belongs in a season: seasons: { winter: { night: { from: '18 °C', time: '10 h' } } }",
    },
  })
})()

const targetsField = /*@__PURE__*/ (() =>
  group('What the conversion must keep to', {
    kerbMassChange: optional(given('mass', 'How much the kerb mass may rise', { min: 0, usual: ['0 kg', '600 kg'] })),
    topSpeed: optional(
      given('speed', 'Top speed on the level, at least', { above: 0, usual: ['20 km/h', '250 km/h'] }),
    ),
    startGrade: optional(
      given('ratio', 'Steepest grade for a start, rise over run', { above: 0, usual: ['1 %', '50 %'] }),
    ),
    energy: optional(given('energy', 'Least energy of the pack', { above: 0, usual: ['1 kWh', '150 kWh'] })),
    frontShare: optional(given('ratio', 'Share of the mass on the front axle to aim for', { above: 0, below: 1 }), {
      absent: 'It is the share that the car has now.',
    }),
    frontShareChange: optional(
      given('ratio', 'How far the share on the front axle may move', { above: 0, max: 1, usual: ['0.1 %', '20 %'] }),
    ),
  }))()

/** What describes a build sheet. @internal */
export const sheetFields = /*@__PURE__*/ (() => ({
  $schema: spare(text('Path of its JSON Schema, for the editor')),
  title: text('Title of the build'),
  note: optional(text('Remarks')),
  car: sheetCarField,
  removed: optional(list('Parts taken out', partField)),
  added: optional(list('Parts put in', partField)),
  brakes: optional(sheetBrakesField),
  module: optional(group('A module', moduleFields)),
  pack: optional(sheetPackField),
  motor: optional(sheetMotorField),
  controller: optional(sheetControllerField),
  gearbox: optional(sheetGearboxField),
  auxiliaries: optional(auxiliariesField),
  runs: optional(byName('The runs of cable', sheetRunField, { ids: true })),
  fuses: optional(candidatesField),
  ...undecided({ altitude: fuseFields.altitude }),
  precharge: optional(prechargeField),
  bars: optional(byName('The bus bars', sheetBarField, { ids: true })),
  insulation: optional(insulationField),
  contactors: optional(sheetContactorsField),
  shutdown: optional(group('What switches the traction voltage off, and what is left', shutdownFields)),
  charger: optional(sheetChargerField),
  chargingPoint: optional(sheetChargingPointField),
  lowVoltage: optional(sheetLowVoltageField),
  seasons: optional(byName('The seasons in which the car is driven', seasonField, { ids: true })),
  journeys: optional(byName('The journeys that the car must make', sheetJourneyField, { ids: true })),
  hill: optional(hillField),
  cooling: optional(coolingField),
  heating: optional(heatingField),
  home: optional(homeField),
  targets: optional(targetsField),
  uncertain: optional(
    byName(
      'How uncertain values are, by their paths, in place of ± at the value',
      text('An expanded uncertainty, k = 2, such as 5 % or 0.05 m²'),
    ),
  ),
}))()
