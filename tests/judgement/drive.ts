/** Cases of the drive and its range. All parts are invented. */
import {
  climbingAbility,
  fixedRatio,
  gearboxLoad,
  gearTable,
  propshaftSpeed,
  regenLimit,
  topSpeed,
} from '../../src/drivetrain/index.js'
import { driveCycle, driveTrace } from '../../src/range/index.js'
import type { Table, Worse } from './judgement.js'
import { module as plain } from './module.js'

const module = { ...plain, continuousCurrent: '110 A', peakCurrent: '260 A', chargeCurrent: '60 A' } as const

/** A light car whose motor holds 18 kW and 60 N·m all day. */
export const car = {
  car: {
    mass: '720 kg',
    rollingResistance: 0.012,
    dragArea: '0.6 m²',
    tyre: '155/70 R13',
  },
  gearbox: { gears: { second: 2.1, third: 1.4, fourth: 1 }, finalDrive: 4.3, efficiency: 0.93 },
  motor: {
    peakTorque: '120 N·m',
    peakPower: '45 kW',
    continuousTorque: '60 N·m',
    continuousPower: '18 kW',
    maximumSpeed: '9000 rpm',
    efficiency: 0.9,
  },
  auxiliaries: '250 W',
} as const

const hill = {
  ...car,
  pack: { module, series: 6, parallel: 1 },
  controller: { minimumVoltage: '200 V', maximumVoltage: '380 V', batteryCurrent: '200 A', regeneration: '50 %' },
  stateOfCharge: '80 %',
  reserve: '10 %',
  cellTemperature: '22 °C',
  journey: [
    { name: 'valley', distance: '6 km', speed: '60 km/h' },
    { name: 'pass', distance: '4 km', speed: '60 km/h', grade: '6 %' },
    { name: 'plateau', distance: '5 km', speed: '50 km/h' },
  ],
} as const
const onPass = (patch: object) => ({
  journey: hill.journey.map((each) => (each.name === 'pass' ? { ...each, ...patch } : each)),
})

/** A car that nothing holds, over a log. */
const logged = (log: string) => ({
  car: { mass: '720 kg', rollingResistance: 0.012, dragArea: '0.6 m²' },
  gearbox: { efficiency: 0.93 },
  motor: { efficiency: 0.9 },
  log,
})

const standing = {
  wheelbase: '2.1 m',
  centreOfGravity: { aft: '1 m', up: '0.5 m' },
  drivenAxle: 'rear',
} as const

/** Rows of 50 km/h from a stand, every half second, with a last digit of so many km/h that goes up and down. */
const flickering = (digit: number) =>
  ['0,0', '10,50', ...Array.from({ length: 200 }, (_, i) => `${10.5 + i / 2},${50 + (i % 2) * digit}`)].join('\n')

/** Cells that may be charged a little below freezing. */
const frozen = {
  cold: { temperature: '-10 °C', resistance: '40 mΩ' },
  temperatures: {
    charge: { minimum: '-5 °C', maximum: '45 °C' },
    discharge: { minimum: '-20 °C', maximum: '60 °C' },
  },
} as const

/** What the cells take by their temperature alone, as the table of their maker has it. */
const byTemperature = {
  chargeCurrent: undefined,
  chargeCurrents: [
    ['-10 °C', '0 A'],
    ['0 °C', '6 A'],
    ['25 °C', '60 A'],
  ],
} as const

const down = [
  { name: 'plateau', distance: '3 km', speed: '50 km/h' },
  { name: 'down', distance: '3 km', speed: '50 km/h', grade: '-8 %' },
] as const

/** The car by the coefficients of a coast-down. */
const pushed = (roadLoad: object) => ({
  mass: '720 kg',
  tyre: '155/70 R13',
  roadLoad: { constant: '85 N', linear: '1 N/(m/s)', quadratic: '0.36 N/(m/s)²', airDensity: '1.2 kg/m³', ...roadLoad },
})

/** The car on one ratio, with friction and the height that its grip rests on. */
const geared = {
  car: {
    mass: '720 kg',
    rollingResistance: 0.012,
    dragArea: '0.6 m²',
    rollingRadius: '0.28 m',
    wheelbase: '2.1 m',
    centreOfGravity: { aft: '1 m', up: '0.5 m' },
    drivenAxle: 'rear',
    friction: 0.8,
  },
  gearbox: { finalDrive: 6, efficiency: 0.93 },
  motor: { peakTorque: '120 N·m', peakPower: '45 kW', maximumSpeed: '9000 rpm', efficiency: 0.9 },
} as const
const allDay = { ...geared, motor: { ...geared.motor, continuousTorque: '50 N·m', continuousPower: '18 kW' } } as const

const oneRatio = {
  ...geared,
  gearbox: { efficiency: 0.93 },
  topSpeed: '100 km/h',
  grade: '15 %',
  launch: '2 m/s²',
} as const

export const drive: { readonly [name: string]: Table } = {
  driveCycle: {
    call: driveCycle,
    sound: hill,
    cases: [
      {
        what: 'a long climb above the power that the motor holds all day',
        // 720 kg up 13 % at 60 km/h take 15 kW more than the level: about 20 kW at the shaft for 9 min.
        dangerous: onPass({ grade: '13 %', distance: '9 km' }),
        told: ['motor.load', 'fail'],
        // The same for 40 s: over before the motor is warm.
        sound: onPass({ grade: '13 %', distance: '0.7 km' }),
      },
      {
        what: 'a motor of which nobody said what it holds all day',
        dangerous: { motor: { continuousTorque: undefined, continuousPower: undefined } },
        told: ['motor.load', 'unknown'],
      },
      {
        what: 'a motor that is told by its torque and whose power would not do',
        dangerous: { motor: { continuousTorque: undefined, continuousPower: '7 kW' } },
        told: ['motor.load', 'fail'],
      },
      {
        what: 'modules that are asked for more than they bear, and a rest that hides it from the mean',
        dangerous: {
          pack: { module: { continuousCurrent: '28 A' } },
          journey: [...onPass({ distance: '7 km' }).journey, { name: 'home', distance: '60 km', speed: '40 km/h' }],
        },
        told: ['pack.rmsCurrent', 'fail'],
        sound: {
          journey: [...onPass({ distance: '7 km' }).journey, { name: 'home', distance: '30 km', speed: '40 km/h' }],
        },
      },
      {
        what: 'a controller that holds less all day than for a moment',
        dangerous: { controller: { continuousCurrent: '28 A' } },
        told: ['pack.rmsCurrent', 'fail'],
        sound: { controller: { continuousCurrent: '120 A' } },
      },
      {
        what: 'frozen cells that braking charges, and nobody said how far',
        dangerous: {
          cellTemperature: '-6 °C',
          pack: { module: { cold: { temperature: '-10 °C', resistance: '40 mΩ' } } },
          journey: down,
        },
        told: ['pack.recovered', 'unknown'],
        sound: {
          cellTemperature: '-6 °C',
          pack: {
            module: {
              cold: { temperature: '-10 °C', resistance: '40 mΩ' },
              chargeCurrents: [
                ['-10 °C', '0 A'],
                ['0 °C', '6 A'],
                ['20 °C', '60 A'],
              ],
            },
          },
          journey: down,
        },
      },
      {
        what: 'a charge current by temperature, and cells of no stated temperature',
        dangerous: { pack: { module: byTemperature }, cellTemperature: undefined, journey: down },
        told: ['pack.recovered', 'unknown'],
        sound: { pack: { module: byTemperature }, journey: down },
      },
      {
        what: 'cells that are cold, and a resistance that is that of warm ones',
        dangerous: { cellTemperature: '3 °C' },
        told: ['pack.lowestVoltage', 'unknown'],
        sound: { cellTemperature: '3 °C', pack: { module: { cold: frozen.cold } } },
      },
      {
        what: 'cells far colder than their resistance was measured',
        dangerous: { cellTemperature: '-25 °C', pack: { module: { cold: frozen.cold } } },
        told: ['pack.lowestVoltage', 'unknown'],
        sound: { cellTemperature: '16 °C' },
      },
      {
        what: 'a full pack beyond what the controller bears',
        dangerous: { controller: { maximumVoltage: '340 V' } },
        told: ['controller.maximumVoltage', 'fail'],
        sound: { controller: { maximumVoltage: '360 V' } },
      },
      {
        what: 'a controller that can draw more than the cells give',
        dangerous: { controller: { batteryCurrent: '420 A' } },
        told: /The controller is set to draw no more than 260 A, the peak current of the modules, though it can draw 420 A/,
        sound: { controller: { batteryCurrent: '250 A' } },
      },
      {
        what: 'a charge current that nobody stated, on the way down',
        dangerous: { pack: { module: { chargeCurrent: undefined } }, journey: down },
        told: ['pack.recovered', 'unknown'],
        sound: { journey: down },
      },
    ],
  },
  driveTrace: {
    call: driveTrace,
    sound: logged('t (s),v (km/h)\n0,0\n5,30\n10,30\n20,0'),
    cases: [
      {
        what: 'a log that brakes harder than tyres hold',
        dangerous: logged('t (s),v (km/h)\n0,0\n5,60\n6,10\n12,0'),
        told: ['cycle.acceleration', 'fail'],
      },
      {
        what: 'a log that brakes harder than the road holds',
        dangerous: {
          ...logged('t (s),v (km/h)\n0,0\n9,60\n10,45\n16,0'),
          car: { ...logged('').car, ...standing, friction: 0.4 },
        },
        told: ['cycle.acceleration', 'fail'],
        sound: {
          ...logged('t (s),v (km/h)\n0,0\n9,60\n10,45\n16,0'),
          car: { ...logged('').car, ...standing, friction: 0.45 },
        },
      },
      {
        what: 'a last digit that goes up and down',
        dangerous: logged(`t (s),v (km/h)\n${flickering(1)}`),
        told: /The last digit of the speed goes up and down: it could add as much as 0\.0\d+ more of rolling resistance/,
        sound: logged(`t (s),v (km/h)\n${flickering(0.1)}`),
      },
      {
        what: 'a spike of a recorder',
        dangerous: logged('t (s),v (km/h)\n0,0\n5,30\n6,150\n7,30\n20,0'),
        told: /line 4: expected a change of speed of at most 3 g over a second, got 3\.4 g/,
      },
      {
        what: 'a spike that rises and falls within a second',
        dangerous: logged('t (s),v (km/h)\n0,0\n5,30\n5.4,84\n5.9,31\n10,30\n20,0'),
        told: /the log asks for 1\.53 g over a second, 5\.4 s from its start/,
        sound: logged('t (s),v (km/h)\n0,0\n5,30\n5.4,33\n5.9,31\n10,30\n20,0'),
      },
      {
        what: 'a reading that drops out for a moment',
        dangerous: logged('t (s),v (km/h)\n0,0\n9,55\n9.1,0\n9.2,55\n15,55\n25,0'),
        told: ['cycle.acceleration', 'fail'],
      },
      {
        what: 'a log whose times are milliseconds, and are not',
        dangerous: logged('t (ms),v (km/h)\n0,0\n5,30\n10,45\n20,0'),
        told: ['cycle.acceleration', 'fail'],
      },
      {
        what: 'a speed that no such car has',
        dangerous: logged('t (s),v (mph)\n0,0\n9,60\n18,120\n27,60\n36,0'),
        told: /Highest speed of the log: 193\.1 km\/h is unusual/,
        sound: logged('t (s),v (mph)\n0,0\n9,40\n18,80\n27,40\n36,0'),
      },
      {
        what: 'an energy of some lamps',
        dangerous: { usableEnergy: '14 Wh' },
        told: /Energy that may be used: 14 Wh is unusual.* Did you mean 14 kWh/,
        sound: { usableEnergy: '14 kWh' },
      },
      // The last digit of a log of ten rows a second jumps by 1.4 g for a tenth of a second.
      {
        what: 'a log that is fast and true',
        dangerous: logged('t (s),v (km/h)\n0,0\n1,5\n1.1,10\n1.2,5\n2,9\n3,5\n8,0'),
        told: /^/,
        sound: logged('t (s),v (km/h)\n0,0\n1,5\n1.1,10\n1.2,5\n2,9\n3,5\n8,0'),
      },
    ],
  },
  topSpeed: {
    call: topSpeed,
    sound: { ...car, car: pushed({}) },
    cases: [
      {
        what: 'a road load that pushes',
        dangerous: { car: { roadLoad: { linear: '-14 N/(m/s)' } } },
        told: /car\.roadLoad: expected coefficients with which the road load holds the car back at every speed/,
        sound: { car: { roadLoad: { linear: '-3 N/(m/s)' } } },
      },
      {
        what: 'a full pack beyond what the controller bears',
        dangerous: {
          pack: { module, series: 6, parallel: 1 },
          controller: { ...hill.controller, maximumVoltage: '350 V' },
        },
        told: ['controller.maximumVoltage', 'fail'],
        sound: {
          pack: { module, series: 6, parallel: 1 },
          controller: { ...hill.controller, maximumVoltage: '371 V' },
        },
      },
      {
        what: 'coefficients of which nobody said in what air they were run',
        dangerous: { car: { roadLoad: { airDensity: undefined } } },
        told: /1\.204 kg\/m³ .*by default/,
      },
      {
        what: 'the power of cold cells, of which nobody said how much they resist',
        dangerous: { pack: { module, series: 6, parallel: 1 }, cellTemperature: '-4 °C' },
        told: ['pack.coldResistance', 'unknown'],
        sound: { pack: { module: { ...module, cold: frozen.cold }, series: 6, parallel: 1 }, cellTemperature: '-4 °C' },
      },
    ],
  },
  climbingAbility: {
    call: climbingAbility,
    sound: { ...allDay, grade: '20 %' },
    cases: [
      {
        what: 'a motor that is held all day by its power alone, which holds nothing at a stand',
        dangerous: { motor: { continuousTorque: undefined } },
        told: /Only one of its ratings all day holds the motor: give motor\.continuousTorque too/,
      },
    ],
  },
  fixedRatio: {
    call: fixedRatio,
    sound: oneRatio,
    cases: [
      {
        what: 'a speed for which no ratio suffices',
        dangerous: { topSpeed: '260 km/h' },
        told: ['ratio.window', 'fail'],
      },
    ],
  },
  gearTable: {
    call: gearTable,
    sound: { ...geared, speeds: ['130 km/h'] },
    cases: [
      { what: 'a motor that turns too fast', dangerous: { speeds: ['180 km/h'] }, told: ['motor.speed.1', 'fail'] },
      {
        what: 'a motor of which nobody said how fast it may turn',
        dangerous: { motor: { maximumSpeed: undefined } },
        told: /not held to a limit: give motor\.maximumSpeed/,
      },
    ],
  },
  regenLimit: {
    call: regenLimit,
    sound: {
      ...car,
      pack: { module, series: 6, parallel: 1 },
      controller: hill.controller,
      stateOfCharge: '60 %',
      cellTemperature: '20 °C',
      speeds: ['50 km/h'],
    },
    cases: [
      {
        what: 'a pack of which nobody said what it takes back',
        dangerous: { pack: { module: { chargeCurrent: undefined } } },
        told: ['pack.recovered', 'unknown'],
      },
      {
        what: 'frozen cells',
        dangerous: {
          cellTemperature: '-3 °C',
          pack: { module: { cold: { temperature: '-10 °C', resistance: '40 mΩ' } } },
        },
        told: ['pack.recovered', 'unknown'],
      },
      {
        what: 'frozen cells that may be charged, with a current that nobody stated',
        dangerous: { cellTemperature: '-3 °C', pack: { module: { ...frozen, chargeCurrent: undefined } } },
        told: ['pack.recovered', 'unknown'],
        sound: { cellTemperature: '-3 °C', pack: { module: frozen } },
      },
      {
        what: 'a charge current by temperature, and cells of no stated temperature',
        dangerous: { cellTemperature: undefined, pack: { module: byTemperature } },
        told: ['pack.recovered', 'unknown'],
        sound: { pack: { module: byTemperature } },
      },
    ],
  },
}

/** So lossy that it stays a gearbox whatever is drawn. */
const lossy = { finalDrive: 6, efficiency: 0.65 } as const

const loaded = {
  ...hill,
  journey: [{ distance: '12 km', speed: '70 km/h', grade: '3 %' }],
  air: { headwind: '10 km/h' },
} as const

// None of coastDown: how well two figures are told apart rests on the scatter of the readings, which no figure scales.
export const driveLaws: readonly Worse[] = [
  {
    procedure: climbingAbility,
    sound: { ...geared, gearbox: lossy, grade: '20 %' },
    worse: {
      grade: 'more',
      'car.mass': 'more',
      'car.rollingResistance': 'more',
      'car.rollingRadius': 'more',
      'car.friction': 'less',
      'gearbox.finalDrive': 'less',
      'gearbox.efficiency': 'less',
      'motor.peakTorque': 'less',
    },
  },
  {
    procedure: topSpeed,
    isSlow: true,
    sound: { ...allDay, gearbox: lossy, grade: '7 %' },
    worse: {
      grade: 'more',
      'car.mass': 'more',
      'car.rollingResistance': 'more',
      'car.rollingRadius': 'more',
      'gearbox.finalDrive': 'less',
      'gearbox.efficiency': 'less',
      'motor.continuousTorque': 'less',
    },
  },
  {
    procedure: fixedRatio,
    isSlow: true,
    sound: { ...oneRatio, gearbox: { efficiency: lossy.efficiency } },
    worse: {
      topSpeed: 'more',
      grade: 'more',
      launch: 'more',
      'car.mass': 'more',
      'car.rollingResistance': 'more',
      'car.dragArea': 'more',
      'car.friction': 'less',
      'gearbox.efficiency': 'less',
      'motor.peakTorque': 'less',
      'motor.peakPower': 'less',
      'motor.maximumSpeed': 'less',
    },
  },
  {
    procedure: gearTable,
    sound: { ...geared, speeds: ['130 km/h'] },
    worse: {
      'speeds.0': 'more',
      'car.rollingRadius': 'less',
      'gearbox.finalDrive': 'more',
      'motor.maximumSpeed': 'less',
    },
  },
  {
    procedure: gearboxLoad,
    sound: { ...geared, gearbox: { ...lossy, ratedInputTorque: '150 N·m' } },
    worse: {
      'car.mass': 'more',
      'car.friction': 'more',
      'car.rollingRadius': 'more',
      'gearbox.finalDrive': 'less',
      'gearbox.efficiency': 'less',
      'gearbox.ratedInputTorque': 'less',
      'motor.peakTorque': 'more',
    },
  },
  {
    procedure: propshaftSpeed,
    sound: {
      ...geared,
      gearbox: { ...geared.gearbox, gears: { fourth: 1 }, finalDrive: 4.3 },
      shaft: { length: '0.95 m', outerDiameter: '50 mm', innerDiameter: '30 mm' },
      topSpeed: '110 km/h',
    },
    worse: {
      topSpeed: 'more',
      'car.rollingRadius': 'less',
      'gearbox.finalDrive': 'more',
      'motor.maximumSpeed': 'more',
      'shaft.length': 'more',
      'shaft.outerDiameter': 'less',
    },
  },
  {
    procedure: regenLimit,
    sound: {
      ...allDay,
      pack: {
        module: { ...module, cold: { temperature: '-10 °C', resistance: '40 mΩ' } },
        series: 6,
        parallel: 1,
      },
      stateOfCharge: '60 %',
      cellTemperature: '4 °C',
      speeds: ['50 km/h'],
    },
    worse: { cellTemperature: 'less' },
  },
  {
    procedure: driveCycle,
    isSlow: true,
    sound: loaded,
    worse: {
      'car.mass': 'more',
      'car.rollingResistance': 'more',
      'car.dragArea': 'more',
      'motor.continuousTorque': 'less',
      'motor.continuousPower': 'less',
      'motor.peakPower': 'less',
      'controller.minimumVoltage': 'more',
      'controller.batteryCurrent': 'less',
      'pack.module.capacity': 'less',
      'pack.module.resistance': 'more',
      'pack.module.continuousCurrent': 'less',
      'pack.module.peakCurrent': 'less',
      auxiliaries: 'more',
      'air.headwind': 'more',
      stateOfCharge: 'less',
      reserve: 'more',
      'journey.0.distance': 'more',
      'journey.0.grade': 'more',
    },
    // A car that falls behind asks less of its motor and its pack.
    isTraded: true,
  },
  {
    procedure: driveTrace,
    sound: {
      ...allDay,
      pack: { module, series: 6, parallel: 1 },
      controller: hill.controller,
      stateOfCharge: '80 %',
      log: 't (s),v (km/h)\n0,0\n8,40\n18,40\n28,0',
    },
    worse: {
      'car.mass': 'more',
      'car.rollingResistance': 'more',
      'car.dragArea': 'more',
      'motor.continuousTorque': 'less',
      'motor.peakTorque': 'less',
      'motor.peakPower': 'less',
      'pack.module.continuousCurrent': 'less',
      'pack.module.peakCurrent': 'less',
    },
    isTraded: true,
  },
]
