/** Electrical cases. All parts are invented. */
import {
  arrangePack,
  cableDuty,
  capacityTest,
  chargePlan,
  chargingPoint,
  groupModules,
  homeSupply,
  insulationDistances,
  insulationMonitor,
  isolationTest,
  lowVoltageSupply,
  packAt,
  packLife,
  precharge,
  protectRun,
  restCapacity,
  selectContactor,
  selectFuse,
  shutdown,
  sizeBar,
  sizeCable,
  storedEnergyCheck,
} from '../../src/electrical/index.js'
import { benchLog, benchRows, textOf } from '../electrical/bench-log.js'
import type { Table, Worse } from './judgement.js'
import { module } from './module.js'

/** A gG link of 63 A, within the gates of IEC 60269-1, Table 3 (read in a transcription). */
const gG63 = {
  name: 'link of 63 A',
  class: 'gG',
  rating: '63 A',
  voltage: { dc: '500 V' },
  breakingCapacity: '25 kA',
  timeConstant: '10 ms',
  curve: [
    ['101 A', '1 h'],
    ['180 A', '10 s'],
    ['600 A', '0.1 s'],
    ['1100 A', '10 ms'],
  ],
  meltingIntegral: '10000 A²·s',
  clearingIntegral: '26000 A²·s',
} as const
/** A partial-range link: no overload, nothing below 500 A. */
const aR63 = {
  ...gG63,
  class: 'aR',
  leastBreakingCurrent: '260 A',
  curve: [
    ['220 A', '20 s'],
    ['400 A', '0.5 s'],
    ['1100 A', '5 ms'],
  ],
  meltingIntegral: '5000 A²·s',
} as const
const contactor = { by: 'contactor', current: '90 A', time: '1 s', breaks: '800 A' } as const

/** A contactor that is not polarised, beside a gG link of 63 A. */
const contactor90 = {
  name: 'contactor of 90 A',
  carry: '90 A',
  ambient: '60 °C',
  make: '450 A',
  breaks: [
    { voltage: '400 V', current: '200 A', times: 60 },
    { voltage: '400 V', current: '900 A', times: 1 },
  ],
  polarised: false,
  shortTime: [
    ['140 A', '10 min'],
    ['400 A', '12 s'],
    ['2500 A', '50 ms'],
  ],
  peak: '5 kA',
} as const
const contactorTask = {
  voltage: '336 V',
  current: '45 A',
  profile: [
    ['110 A', '8 s'],
    ['20 A', '70 s'],
    ['-35 A', '6 s'],
  ],
  controller: { batteryCurrent: '130 A', time: '20 s' },
  backwards: '40 A',
  precharge: { residualVoltage: '5 V', loopResistance: '45 mΩ' },
  fault: { highest: '4.2 kA', lowest: '420 A', cutOff: '2.8 kA', fuse: gG63 },
  trip: { current: '250 A', time: '2 s' },
  candidates: [contactor90],
} as const
/** A circuit that opens on everything. */
const switched = {
  voltage: '310 V',
  contactors: { poles: 'both', unsupplied: 'open', voltageBehind: true },
  key: { currentFirst: true },
  interlock: { time: '100 ms' },
  inertiaSwitch: { time: '40 ms' },
  servicePlug: { share: '40 %', leading: true },
  discharge: '0.7 s',
} as const
const withContactor = (patch: object) => ({ candidates: [{ ...contactor90, ...patch }] })

const fuseTask = {
  current: '45 A',
  ambient: '35 °C',
  pack: { maximumVoltage: '336 V', openCircuit: '270 V', resistance: '90 mΩ', inductance: '3 µH' },
  cable: { ampacity: '85 A', withstand: '1.4 kA²·s', resistance: '9 mΩ', inductance: '4 µH' },
  candidates: [gG63],
} as const
const withFuse = (patch: object) => ({ candidates: [{ ...gG63, ...patch }] })
const withPartial = (patch: object, overload: object | null = contactor) => ({
  candidates: [{ ...aR63, ...patch }],
  ...(overload === null ? {} : { overload }),
})

const peaked = [
  ['70 A', '1 s'],
  ['40 A', '60 s'],
] as const

const run = {
  name: 'branch to the converter',
  pack: { module, series: 6, parallel: 1 },
  load: { current: '40 A' },
  cable: { length: '3 m', section: '16 mm²', maximumDrop: '1 %', terminalLimit: '75 °C', insulationLimit: '105 °C' },
  candidates: [gG63],
} as const

/** A section is sought, for a fuse that is too large for the smallest that carries the load. */
const chosenFreely = {
  load: { current: '40 A' },
  cable: { section: undefined },
  controller: { batteryCurrent: '90 A', time: '10 s' },
} as const
const gG100 = {
  ...gG63,
  name: 'link of 100 A',
  rating: '100 A',
  curve: [
    ['160 A', '2 h'],
    ['340 A', '10 s'],
    ['1000 A', '0.1 s'],
    ['1800 A', '10 ms'],
  ],
  meltingIntegral: '27000 A²·s',
  clearingIntegral: '70000 A²·s',
} as const

const charging = { ...module, chargeCurrent: '40 A' } as const
const overnight = {
  pack: { module: charging, series: 6, parallel: 1 },
  stateOfCharge: 0.3,
  to: 0.8,
  supply: { voltage: '230 V', current: '10 A', phases: 1, circuit: '16 A', powerFactor: 1 },
  charger: { power: '2.1 kW', efficiency: '91 %' },
  temperature: '18 °C',
} as const
/** A charging point in a garage, with all that is asked of it. */
const garage = {
  supply: { voltage: '230 V', current: '16 A', phases: 1, circuit: '20 A', rule: 'IEC own circuit' },
  charger: { power: '3.3 kW', efficiency: '93 %' },
  length: '18 m',
  section: '4 mm²',
  laid: 'conduit',
  overcurrent: 'breaker',
  residualCurrent: { type: 'A', trips: '30 mA', detector: '6 mA', upstream: 'none' },
  earth: { system: 'TN-S' },
  pilot: '26.6 %',
} as const
/** The 12 V side of a small car. */
const lamps = { length: '3.2 m', section: '4 mm²', fuse: '15 A', back: 'body', feeds: 'headlamp' } as const
const twelveVolts = {
  loads: {
    headlamps: { power: '110 W', duty: 'steady', feed: lamps },
    fan: { current: '8 A', duty: 0.5 },
    rearWindow: { power: '150 W', duty: 'short' },
  },
  converter: {
    current: '30 A',
    efficiency: 0.9,
    feed: { length: '1.8 m', section: '16 mm²', fuse: '40 A', back: 'wire', feeds: 'charging line' },
  },
  battery: { capacity: '44 Ah', lasts: '30 min' },
  packVoltage: '240 V',
} as const
/** What the cells take by their temperature alone, as the table of their maker has it. */
const byTemperature = {
  cold: { temperature: '-10 °C', resistance: '40 mΩ' },
  chargeCurrent: undefined,
  chargeCurrents: [
    ['0 °C', '6 A'],
    ['20 °C', '40 A'],
    ['45 °C', '40 A'],
  ],
} as const
/** Two good modules and two that hold less and resist more. */
const unlike = {
  modules: [
    { name: 'A', capacity: '40 Ah', resistance: '12 mΩ' },
    { name: 'B', capacity: '39.5 Ah', resistance: '12.4 mΩ' },
    { name: 'C', capacity: '38 Ah', resistance: '20 mΩ' },
    { name: 'D', capacity: '37.5 Ah', resistance: '21 mΩ' },
  ],
} as const
const chargedThrough = {
  voltage: '336 V',
  capacitance: '800 µF',
  time: '1.5 s',
  target: '95 %',
  loopResistance: '60 mΩ',
  makingCapacity: '350 A',
  dischargeResistance: '7 kΩ',
  dischargePower: '20 W',
} as const

const grouped = {
  modules: [
    { name: 'A', capacity: '40 Ah', resistance: '14 mΩ' },
    { name: 'B', capacity: '39 Ah', resistance: '15 mΩ' },
    { name: 'C', capacity: '38 Ah', resistance: '16 mΩ' },
    { name: 'D', capacity: '37 Ah', resistance: '15 mΩ' },
  ],
  series: 2,
  parallel: 2,
  current: '130 A',
  continuousCurrent: '80 A',
} as const

const spaced = {
  voltage: '403.2 V',
  impulse: '2.5 kV',
  insulation: 'basic',
  pollution: 2,
  material: 'IIIa',
  clearance: '6 mm',
  creepage: '6 mm',
} as const
const watched = {
  workingVoltage: '350 V',
  capacitance: { positive: '0.5 µF', negative: '0.5 µF' },
  warns: '200 kΩ',
  opens: '40 kΩ',
  ownResistance: '240 kΩ',
  responseTime: '10 s',
} as const

const bar = {
  current: '250 A',
  ambient: '45 °C',
  limit: '80 °C',
  length: '300 mm',
  candidates: [
    { width: '20 mm', thickness: '5 mm' },
    { width: '30 mm', thickness: '5 mm' },
  ],
  ends: { bolt: 'M8', torque: '20 N·m', friction: 0.12, measured: ['5 µΩ', '6 µΩ'] },
} as const

/** A year of an invented pack. */
const lived = {
  pack: { module, series: 6, parallel: 1 },
  journeys: [{ perYear: 220, charge: '20 Ah', current: '25 A' }],
  temperatures: [
    ['22 °C', 0.6],
    ['27 °C', 0.4],
  ],
  charge: { to: '80 %', from: '20 %' },
  years: 5,
} as const

/** The test of an invented module of 12 cells. */
const bench = {
  log: benchLog,
  module: { minimumVoltage: '36 V', maximumVoltage: '50.4 V', newCapacity: '45 Ah' },
  longestGap: '2 h',
} as const
const withRows = (change: (row: readonly number[]) => readonly number[]) => ({ log: textOf(benchRows.map(change)) })

/** Two rests of an invented module of 14 cells. */
const rested = {
  module: {
    cellsInSeries: 14,
    openCircuit: [
      [0, '43 V'],
      [0.1, '47.5 V'],
      [0.5, '51.8 V'],
      [0.9, '57 V'],
      [1, '58.5 V'],
    ],
    minimumVoltage: '42 V',
    maximumVoltage: '58.8 V',
  },
  from: '57.5 V',
  to: '48 V',
  charge: '46 Ah',
} as const

export const electrical: { readonly [name: string]: Table } = {
  selectFuse: {
    call: selectFuse,
    sound: fuseTask,
    cases: [
      {
        what: 'a link of no stated class whose curve stops short',
        dangerous: withFuse({ class: undefined, curve: gG63.curve.slice(1) }),
        told: ['fuse.candidates', 'unknown'],
        sound: withFuse({ class: undefined }),
      },
      {
        what: 'a partial-range link alone',
        dangerous: withPartial({}, null),
        told: /the fuse is of class aR, which opens on no overload/,
        sound: withPartial({}),
      },
      {
        what: 'a partial-range link whose least breaking current nobody knows',
        dangerous: withPartial({ leastBreakingCurrent: undefined }),
        told: ['fuse.candidates', 'unknown'],
      },
      {
        what: 'a partial-range link that breaks nothing so small as the least fault',
        dangerous: withPartial({ leastBreakingCurrent: '700 A' }),
        told: /the fuse breaks from 700 A on, more than the 491\.8 A of the least fault/,
      },
      {
        what: 'a contactor that cannot break up to where the link takes over',
        dangerous: withPartial({}, { ...contactor, breaks: '200 A' }),
        told: /200 A, the most that the contactor breaks, is less than the 275\.4 A/,
        sound: withPartial({}, { ...contactor, breaks: '300 A' }),
      },
      {
        what: 'a contactor that trips above what the cable bears for an hour',
        dangerous: withPartial({}, { ...contactor, current: '130 A' }),
        told: /130 A, at which the contactor opens, is more than the 123\.3 A that the cable bears in an overload/,
        sound: withPartial({}, { ...contactor, current: '120 A' }),
      },
      {
        what: 'a contactor that is slower than a link which melts and burns on',
        dangerous: withPartial({ leastBreakingCurrent: '420 A' }, { ...contactor, time: '2 s' }),
        told: /the fuse melts in .* below which only the contactor breaks, less than the 2 s/,
        sound: withPartial({ leastBreakingCurrent: '420 A' }, { ...contactor, time: '0.3 s' }),
      },
      {
        what: 'a contactor that trips in every peak of the load',
        dangerous: { ...withPartial({}, { ...contactor, current: '60 A' }), profile: peaked },
        told: /60 A, at which the contactor opens, is less than the 70 A of the load/,
        sound: { ...withPartial({}), profile: peaked },
      },
      {
        what: 'a contactor that trips in a full pull',
        dangerous: {
          ...withPartial({}, { ...contactor, current: '46 A' }),
          controller: { batteryCurrent: '86 A', time: '1 s' },
        },
        told: /46 A, at which the contactor opens, is less than the 86 A of a full pull/,
      },
      {
        what: 'a controller that holds down less than the load, and so not the load',
        dangerous: { ...withPartial({}, null), controller: { batteryCurrent: '10 A' } },
        told: /the fuse is of class aR, which opens on no overload/,
        sound: { ...withPartial({}, null), controller: { batteryCurrent: '50 A' } },
      },
      {
        what: 'a memory of years',
        dangerous: withFuse({ thermalTimeConstant: '1e6 h' }),
        told: /Time constant with which it warms: 1000000 h is unusual/,
        sound: withFuse({ thermalTimeConstant: '4 min' }),
      },
      {
        what: 'a link too large for its cable',
        dangerous: { cable: { ampacity: '65 A' } },
        told: /the fuse is rated 63 A, more than the 58\.91 A at which it protects/,
        sound: { cable: { ampacity: '70 A' } },
      },
      {
        what: 'a link of no stated class that is larger than all its cable carries',
        dangerous: withFuse({ class: undefined, curve: gG63.curve.slice(1), rating: '90 A' }),
        told: /the fuse is rated 90 A, more than the 85 A that the cable carries all day/,
      },
      {
        what: 'a link that melts on less than it breaks',
        dangerous: withFuse({ class: undefined, leastBreakingCurrent: '260 A' }),
        told: /the fuse breaks from 260 A on, more than the 101 A on which it opens in an overload/,
        sound: withFuse({ class: undefined, leastBreakingCurrent: '95 A' }),
      },
      {
        what: 'a fault that is twice as great in its first milliseconds',
        dangerous: withFuse({ breakingCapacity: '5 kA' }),
        told: /the fuse breaks 5 kA, less than the 7467 A/,
        sound: { ...withFuse({ breakingCapacity: '5 kA' }), pack: { ohmicResistance: '80 mΩ' } },
      },
      {
        what: 'a loop that is slower than its breaking test',
        dangerous: { ...withFuse({ timeConstant: '1 ms' }), pack: { inductance: '80 µH' } },
        told: /the fault loop has a time constant of 1\.867 ms, more than the 1 ms/,
        sound: { pack: { inductance: '80 µH' } },
      },
      {
        what: 'a slow loop and a link of no stated test',
        dangerous: { ...withFuse({ timeConstant: undefined }), pack: { inductance: '80 µH' } },
        told: ['fuse.candidates', 'unknown'],
        sound: withFuse({ timeConstant: undefined }),
      },
      {
        what: 'a loop of no stated inductance',
        dangerous: { cable: { inductance: undefined } },
        told: ['fuse.timeConstant', 'unknown'],
      },
      {
        what: 'air in which its class keeps less',
        dangerous: { current: '48 A', ambient: '65 °C' },
        told: /is rated 63 A, less than the 76\.\d+ A that the load needs/,
        sound: { current: '48 A', ambient: '40 °C' },
      },
      {
        what: 'the same air for a link that is rated at 25 °C',
        dangerous: { current: '48 A', ambient: '40 °C', ...withFuse({ class: 'gPV' }) },
        told: /is rated 63 A, less than the 64\.\d+ A that the load needs/,
      },
      {
        what: 'air of which no class says anything',
        dangerous: { ambient: '95 °C' },
        told: ['fuse.window', 'unknown'],
        sound: { ambient: '80 °C', ambientFactor: 0.95 },
      },
      {
        what: 'a curve for the heat that stops short',
        dangerous: {
          ambient: '70 °C',
          ...withFuse({
            derating: [
              ['25 °C', 1],
              ['60 °C', 0.92],
            ],
          }),
        },
        told: ['fuse.candidates', 'unknown'],
        sound: {
          ambient: '58 °C',
          ...withFuse({
            derating: [
              ['25 °C', 1],
              ['60 °C', 0.92],
            ],
          }),
        },
      },
      {
        what: 'air of which no class says anything, and a cable that leaves no room for what it may leave',
        dangerous: { ambient: '95 °C', cable: { ampacity: '75 A' }, candidates: undefined },
        told: /give ambientFactor from the curve of its maker\. With 65 % the load needs a fuse of 86\.54 A, and the cable bears/,
      },
      {
        what: 'a factor for the heat that is none',
        dangerous: { ambientFactor: 4 },
        told: /ambientFactor: expected a ratio at least 0\.2 and at most 1\.2/,
        sound: { ambientFactor: 0.95 },
      },
      {
        what: 'thin air',
        dangerous: { current: '48 A', altitude: '4500 m' },
        told: /is rated 63 A, less than the 68\.\d+ A/,
        sound: { current: '48 A', altitude: '2500 m' },
      },
      {
        what: 'peaks that tire it',
        dangerous: {
          profile: [
            ['150 A', '10 s'],
            ['25 A', '400 s'],
          ],
        },
        told: /150 A for 10 s of the load, 100000 times, is more than the 84\.\d+ A/,
        sound: {
          profile: [
            ['80 A', '10 s'],
            ['25 A', '400 s'],
          ],
        },
      },
      {
        what: 'the same peaks cut by dips of 10 ms',
        dangerous: {
          profile: [
            ...Array.from({ length: 10 }, () => [
              ['150 A', '0.99 s'],
              ['0 A', '10 ms'],
            ]).flat(),
            ['25 A', '400 s'],
          ],
        },
        told: /149\.\d+ A for 9\.99 s of the load, .* is more than/,
      },
      {
        what: 'peaks for a link whose curve is not known',
        dangerous: {
          profile: [
            ['150 A', '10 s'],
            ['25 A', '400 s'],
          ],
          ...withFuse({ curve: undefined, meltingIntegral: '6000 A²·s' }),
        },
        told: ['fuse.candidates', 'unknown'],
      },
      {
        what: 'peaks of milliseconds beyond its melting integral',
        dangerous: {
          profile: [
            ['900 A', '4 ms'],
            ['25 A', '60 s'],
          ],
        },
        // (900² · 4 ms + 25² · 6 ms) over 10 ms, up to which the melting integral holds.
        told: /569\.5 A for 10 ms of the load, .* is more than/,
        sound: {
          profile: [
            ['500 A', '4 ms'],
            ['25 A', '60 s'],
          ],
        },
      },
      {
        what: 'a load that a long rest hides from the mean',
        dangerous: {
          profile: [
            ['62 A', '20 min'],
            ['0 A', '6 h'],
          ],
        },
        told: /is rated 63 A, less than the 7\d\.\d+ A that the load needs/,
        sound: {
          profile: [
            ['49 A', '20 min'],
            ['0 A', '6 h'],
          ],
        },
      },
      {
        what: 'a controller whose full pull opens it',
        dangerous: { controller: { batteryCurrent: '180 A' } },
        told: /180 A for 60 s of a full pull, .* is more than/,
        sound: { controller: { batteryCurrent: '62 A' } },
      },
      {
        what: 'a full pull beyond what a cable of no known section carries all day',
        dangerous: { controller: { batteryCurrent: '95 A', time: '1 s' } },
        told: ['cable.fullPull', 'unknown'],
        sound: { controller: { batteryCurrent: '84 A', time: '1 s' } },
      },
      {
        what: 'heat that is said to help the fuse',
        dangerous: { ambientFactor: 1.15 },
        told: /Share of its rating that the heat around leaves the fuse.* 1\.15 is unusual/,
        sound: { ambientFactor: 0.95 },
      },
      {
        what: 'a fuse of no class that opens just above its rating, as no class does',
        dangerous: { ...withFuse({ class: undefined }), fusingFactor: 1.05 },
        told: /Current at which a fuse of no stated class opens.* 1\.05 is unusual/,
        sound: { ...withFuse({ class: undefined }), fusingFactor: 1.6 },
      },
      {
        what: 'a pack without inductance',
        dangerous: { pack: { inductance: '0 µH' } },
        told: /Inductance of the pack: 0 µH is unusual/,
        sound: { pack: { inductance: '0.5 µH' } },
      },
      {
        what: 'a slip between A and mA',
        dangerous: { current: '45 mA' },
        told: /Continuous current of the load: 45 mA is unusual.* Did you mean 45 A/,
      },
      {
        what: 'a contactor that is quicker than any',
        dangerous: withPartial({}, { ...contactor, time: '0.5 ms' }),
        told: /Within what time: 0\.5 ms is unusual/,
        sound: withPartial({}, { ...contactor, time: '0.4 s' }),
      },
      {
        what: 'a curve by which the fuse opens on its own rating',
        dangerous: withFuse({ curve: [['63 A', '1 h'], ...gG63.curve.slice(1)] }),
        told: /candidates\[0\]\.curve\[0\]\[0\]: expected a current above the rating, 63 A, got 63 A/,
        sound: withFuse({ curve: [['92 A', '2 h'], ...gG63.curve.slice(1)] }),
      },
      {
        what: 'times of a curve that are a thousandth of what they are',
        dangerous: withFuse({ curve: [...gG63.curve.slice(0, 2), ['600 A', '0.1 ms'], ['1100 A', '0.01 ms']] }),
        told: /curve\[2\]\[1\]: expected a time in which 600 A melts the link: 36 A²·s is less than the melting integral/,
        sound: withFuse({ curve: [...gG63.curve.slice(0, 2), ['600 A', '80 ms'], ['1100 A', '9 ms']] }),
      },
      {
        what: 'a melting integral a thousandth of what its curve takes',
        dangerous: withFuse({ meltingIntegral: '10 A²·s' }),
        told: /meltingIntegral: expected about the 12100 A²·s on which the link melts by the end of its curve/,
        sound: withFuse({ meltingIntegral: '8000 A²·s' }),
      },
      {
        what: 'a clearing integral a thousandth of what its curve takes to melt',
        dangerous: withFuse({ meltingIntegral: undefined, clearingIntegral: '26 A²·s' }),
        told: /clearingIntegral: expected about the 12100 A²·s on which the link melts/,
        sound: withFuse({ meltingIntegral: undefined }),
      },
      {
        what: 'a fuse that is not made for direct current',
        dangerous: withFuse({ voltage: { ac: '690 V' } }),
        told: /the fuse has no voltage rating for direct current/,
      },
      {
        what: 'a slip between (kA)²·s and A²·s',
        dangerous: { cable: { withstand: '1400 A²·s' } },
        told: /withstands.*1400 A²·s is unusual.*Did you mean 1400 kA²·s|Joule integral.*unusual/,
      },
    ],
  },
  protectRun: {
    call: protectRun,
    sound: run,
    cases: [
      {
        what: 'a cable that a partial-range link lets burn',
        dangerous: {
          candidates: [aR63],
          cable: { section: '10 mm²' },
          overload: { ...contactor, current: '80 A', time: '9 s' },
        },
        told: /the cable reaches|the cable takes|melts in/,
        sound: { candidates: [aR63], overload: { ...contactor, time: '0.4 s' } },
      },
      {
        what: 'overload for longer than a fault, and no overload limit',
        dangerous: {
          cable: { section: '16 mm²' },
          candidates: [
            {
              ...gG63,
              rating: '125 A',
              curve: [
                ['160 A', '2 h'],
                ['280 A', '10 s'],
                ['1500 A', '50 ms'],
              ],
            },
          ],
          overload: { by: 'breaker', current: '150 A', time: '12 s', breaks: '2 kA' },
        },
        told: /whether it bears that is not known: give its overloadLimit/,
      },
      {
        what: 'a fuse that cross-linked cable bears, and insulation that nobody stated',
        dangerous: { cable: { section: '10 mm²', insulationLimit: undefined } },
        told: ['fuse.candidates', 'fail'],
        sound: { cable: { section: '10 mm²' } },
      },
      {
        what: 'terminals that are warmer than they are made for',
        dangerous: { load: { current: '52 A' }, cable: { section: '6 mm²' } },
        told: ['cable.terminals', 'fail'],
        sound: { cable: { terminalLimit: '90 °C' } },
      },
      {
        what: 'what is missing of the only fuse that a larger section would suit',
        dangerous: { ...chosenFreely, candidates: [{ ...gG100, curve: undefined }] },
        told: /no candidate is known to serve: link of 100 A \(how long the fuse takes at .* give its curve/,
        sound: { ...chosenFreely, candidates: [gG100] },
      },
      {
        what: 'air of which no class says anything, where a section is sought',
        dangerous: { ambient: '90 °C', cable: { section: undefined }, candidates: undefined },
        told: ['fuse.window', 'unknown'],
        sound: {
          ambient: '90 °C',
          cable: { section: undefined },
          candidates: [
            {
              ...gG63,
              derating: [
                ['25 °C', 1],
                ['125 °C', 0.85],
              ],
            },
          ],
        },
      },
      {
        what: 'a load that no section carries for sure in such air',
        dangerous: {
          ambient: '90 °C',
          load: { current: '420 A' },
          cable: { section: undefined },
          candidates: undefined,
        },
        told: ['fuse.window', 'unknown'],
      },
      {
        what: 'ends that no section keeps cool enough, and what helps',
        dangerous: { cable: { section: undefined, ambient: '80 °C' } },
        told: /brings .* more than the 75 °C for which they are made\. Give terminalLimit/,
        sound: { cable: { section: undefined, ambient: '80 °C', terminalLimit: '105 °C' }, ambientFactor: 0.9 },
      },
      {
        what: 'a pack beyond low voltage, by its own field',
        dangerous: { pack: { series: 30 } },
        told: /pack\.series: expected a pack of at most 1500 V/,
      },
      {
        what: 'a controller that may draw more than link and cable bear',
        dangerous: { controller: { batteryCurrent: '160 A' } },
        told: /160 A for 60 s of a full pull, .* is more than/,
        sound: { controller: { batteryCurrent: '60 A' } },
      },
      {
        what: 'a cable that a full pull warms beyond what it bears all day',
        // 40 A keep 16 mm² cool; 300 A for a minute do not.
        dangerous: { controller: { batteryCurrent: '300 A' }, cycles: 100, candidates: undefined },
        told: ['cable.fullPull', 'unknown'],
        sound: { controller: { batteryCurrent: '300 A', time: '5 s' }, candidates: undefined },
      },
      {
        what: 'the same pull against an overload limit that is too low',
        dangerous: {
          controller: { batteryCurrent: '300 A' },
          cable: { overloadLimit: '110 °C' },
          candidates: undefined,
        },
        told: /the cable reaches 1\d\d\.\d °C in 60 s of a full pull of 300 A, more than the 110 °C of its overload limit/,
        sound: {
          controller: { batteryCurrent: '300 A' },
          cable: { overloadLimit: '155 °C', terminalLimit: '90 °C' },
          cycles: 100,
          candidates: undefined,
        },
      },
      {
        what: 'the same pull as often as the car pulls away, for which no overload limit holds',
        dangerous: {
          controller: { batteryCurrent: '300 A' },
          cable: { overloadLimit: '155 °C', terminalLimit: '90 °C' },
          candidates: undefined,
        },
        told: /the cable spends \d+ h of its life above the 105 °C that it bears all day, by a full pull of 300 A for 60 s that comes 100000 times, more than the 6 h/,
        sound: {
          controller: { batteryCurrent: '300 A', time: '30 s' },
          cable: { overloadLimit: '155 °C', terminalLimit: '90 °C' },
          candidates: undefined,
        },
      },
      {
        what: 'ends that a long pull within the ampacity warms beyond what they are made for',
        // 16 mm² carries 114 A at 105 °C; at 75 °C it carries less than 100 A.
        dangerous: { controller: { batteryCurrent: '100 A', time: '1 h' }, candidates: undefined },
        told: ['cable.fullPullTerminals', 'fail'],
        sound: { controller: { batteryCurrent: '100 A', time: '60 s' }, candidates: undefined },
      },
      {
        what: 'a pull that burns any cable of that section',
        dangerous: { controller: { batteryCurrent: '700 A' }, candidates: undefined },
        told: ['cable.fullPull', 'fail'],
        sound: { controller: { batteryCurrent: '110 A' }, candidates: undefined },
      },
      {
        what: 'a pull that lasts for longer than any overload limit holds',
        dangerous: {
          controller: { batteryCurrent: '125 A', time: '7 h' },
          cable: { overloadLimit: '155 °C', terminalLimit: '125 °C' },
          cycles: 1,
          candidates: undefined,
        },
        told: ['cable.fullPull', 'fail'],
        sound: {
          controller: { batteryCurrent: '125 A', time: '5 h' },
          cable: { overloadLimit: '155 °C', terminalLimit: '125 °C' },
          cycles: 1,
          candidates: undefined,
        },
      },
      {
        what: 'the same pull cut in two',
        dangerous: {
          controller: { batteryCurrent: '125 A', time: '3.5 h' },
          cable: { overloadLimit: '155 °C', terminalLimit: '125 °C' },
          cycles: 2,
          candidates: undefined,
        },
        told: ['cable.fullPull', 'fail'],
        sound: {
          controller: { batteryCurrent: '125 A', time: '2.5 h' },
          cable: { overloadLimit: '155 °C', terminalLimit: '125 °C' },
          cycles: 2,
          candidates: undefined,
        },
      },
      {
        what: 'a full pull of milliseconds',
        dangerous: { controller: { batteryCurrent: '300 A', time: '20 ms' }, candidates: undefined },
        told: /How long it draws that current at most: 20 ms is unusual/,
        sound: { controller: { batteryCurrent: '300 A', time: '2 s' }, candidates: undefined },
      },
      {
        what: 'an overload limit that no class of cable has above its own',
        dangerous: { cable: { insulationLimit: '70 °C', overloadLimit: '150 °C' }, candidates: undefined },
        told: /What the insulation bears for hours in an overload: 150 °C is unusual.* 70 °C to 120 °C/,
        sound: { cable: { insulationLimit: '70 °C', overloadLimit: '120 °C' }, candidates: undefined },
      },
      {
        what: 'a nearly empty pack that is nearly full',
        dangerous: { nearlyEmpty: '95 %' },
        told: /State of charge at which the pack is nearly empty: 95 % is unusual/,
        sound: { nearlyEmpty: '10 %' },
      },
      {
        what: 'a pack that is never cold',
        dangerous: { coldest: '24 °C', pack: { module: { cold: { temperature: '-10 °C', resistance: '40 mΩ' } } } },
        told: /Lowest temperature of the cells: 24 °C is unusual/,
        sound: { coldest: '-5 °C', pack: { module: { cold: { temperature: '-10 °C', resistance: '40 mΩ' } } } },
      },
      {
        what: 'a fuse in air of the winter',
        dangerous: { ambient: '-30 °C' },
        told: /Temperature of the air around the fuse: -30 °C is unusual/,
        sound: { ambient: '30 °C' },
      },
      {
        what: 'cells that resist a tenth of what any do',
        dangerous: { pack: { module: { resistance: '0.12 mΩ' } }, candidates: undefined },
        told: /Resistance of a cell: .* is unusual/,
        sound: { pack: { module: { resistance: '11 mΩ' } } },
      },
      {
        what: 'a load that its controller cannot draw',
        dangerous: { controller: { batteryCurrent: '20 A' } },
        told: /The run feeds more than its controller: the load is 40 A, and the controller draws 20 A at most/,
        sound: { controller: { batteryCurrent: '50 A' } },
      },
      {
        what: 'a run that nothing but its controller keeps from an overload',
        dangerous: { candidates: [aR63], controller: { batteryCurrent: '56 A' } },
        told: /Nothing independent opens on an overload/,
      },
      {
        what: 'strings side by side with nothing between them',
        dangerous: { pack: { parallel: 2 }, strings: {} },
        told: ['strings.link', 'fail'],
        sound: { pack: { parallel: 2 }, strings: { fuse: { ...gG63, rating: '100 A' } } },
      },
      {
        what: 'links of strings that break less than the others feed in at first',
        dangerous: { pack: { parallel: 2 }, strings: { fuse: { ...gG63, breakingCapacity: '9 kA' } } },
        // The other string of 352.8 V and 36 mΩ at first: 9.8 kA.
        told: ['strings.breakingCapacity', 'fail'],
        sound: { pack: { parallel: 2 }, strings: { fuse: { ...gG63, breakingCapacity: '10 kA' } } },
      },
      {
        what: 'a protective conductor that the link lets melt its insulation',
        dangerous: { cable: { protectiveConductor: { area: '1 mm²' } } },
        // Copper from 105 °C to 160 °C: 87.4 A·√s/mm², so 7.64 kA² ms.
        told: /lets through 0\.0\d+ kA²·s at 5\d\d\.?\d* A, more than the 0\.0076\d+ kA²·s that the protective conductor withstands/,
        sound: { cable: { protectiveConductor: { area: '2.5 mm²' } } },
      },
      {
        what: 'a protective conductor so long and thin that a partial range does not break the fault through it',
        dangerous: {
          candidates: [{ ...aR63, leastBreakingCurrent: '590 A' }],
          overload: { ...contactor, time: '5 ms', breaks: '1 kA' },
          cable: { protectiveConductor: { area: '2.5 mm²' } },
        },
        told: /the fuse breaks from 590 A on, more than the 58\d\.?\d* A of the least fault through the protective conductor/,
        sound: {
          candidates: [{ ...aR63, leastBreakingCurrent: '590 A' }],
          overload: { ...contactor, time: '5 ms', breaks: '1 kA' },
          cable: { protectiveConductor: { area: '6 mm²' } },
        },
      },
      {
        what: 'a protective conductor that is warmer before a fault than after it',
        dangerous: { cable: { protectiveConductor: { area: '6 mm²', initial: '170 °C' } } },
        told: /cable\.protectiveConductor\.faultLimit: expected a temperature above that before a fault, 170 °C/,
        sound: { cable: { protectiveConductor: { area: '6 mm²', initial: '60 °C' } } },
      },
      {
        what: 'links of strings that are too small for their share of the load',
        dangerous: { pack: { parallel: 2 }, strings: { fuse: { ...gG63, rating: '20 A' } } },
        // Half of 40 A over 0.8.
        told: /the link of a string is rated 20 A, less than the 25 A that its share of the load needs/,
        sound: { pack: { parallel: 2 }, strings: { fuse: { ...gG63, rating: '25 A' } } },
      },
      {
        what: 'partial-range links of strings whose least breaking current nobody knows',
        dangerous: { pack: { parallel: 2 }, strings: { fuse: { ...aR63, leastBreakingCurrent: undefined } } },
        told: ['strings.opens', 'unknown'],
        sound: { pack: { parallel: 2 }, strings: { fuse: aR63 } },
      },
      {
        what: 'links of strings that break nothing so small as the others feed in at least',
        dangerous: { pack: { parallel: 2 }, strings: { fuse: { ...aR63, leastBreakingCurrent: '800 A' } } },
        told: /is fed 6\d\d\.?\d* A by the others, nearly empty, cold and aged, less than the 800 A on which it opens/,
        sound: { pack: { parallel: 2 }, strings: { fuse: { ...aR63, leastBreakingCurrent: '600 A' } } },
      },
      {
        what: 'links of strings in a fault that rises more slowly than in their breaking test',
        dangerous: {
          pack: { parallel: 2 },
          inductance: '60 µH',
          strings: { fuse: { ...gG63, timeConstant: '2 ms' } },
        },
        // Two strings of 120 µH each in one loop, through the 36 mΩ of the good one at first: 6.7 ms.
        told: /the fault loop has a time constant of 6\.667 ms, more than the 2 ms at which the link of a string breaks/,
        sound: { pack: { parallel: 2 }, inductance: '60 µH', strings: { fuse: gG63 } },
      },
      {
        what: 'links of strings of no stated test in such a fault',
        dangerous: {
          pack: { parallel: 2 },
          inductance: '60 µH',
          strings: { fuse: { ...gG63, timeConstant: undefined } },
        },
        told: ['strings.timeConstant', 'unknown'],
        sound: { pack: { parallel: 2 }, strings: { fuse: { ...gG63, timeConstant: undefined } } },
      },
      {
        what: 'links of strings that the share of a full pull tires',
        dangerous: {
          pack: { parallel: 2 },
          strings: { fuse: gG63 },
          controller: { batteryCurrent: '180 A' },
          candidates: undefined,
        },
        told: /90 A for 60 s of its share of a full pull, 100000 times, is more than the .* that the link of a string bears/,
        sound: {
          pack: { parallel: 2 },
          strings: { fuse: gG63 },
          controller: { batteryCurrent: '110 A' },
          candidates: undefined,
        },
      },
      {
        what: 'links of strings that the peaks of the load tire',
        dangerous: {
          pack: { parallel: 2 },
          strings: { fuse: gG63 },
          load: {
            current: undefined,
            profile: [
              ['200 A', '10 s'],
              ['30 A', '400 s'],
            ],
          },
          candidates: undefined,
        },
        told: ['strings.pulses', 'fail'],
        sound: {
          pack: { parallel: 2 },
          strings: { fuse: gG63 },
          load: {
            current: undefined,
            profile: [
              ['150 A', '10 s'],
              ['30 A', '400 s'],
            ],
          },
          candidates: undefined,
        },
      },
      {
        what: 'links of strings whose curve is not known, and peaks above their rating',
        dangerous: {
          pack: { parallel: 2 },
          strings: { fuse: { ...gG63, curve: undefined } },
          controller: { batteryCurrent: '135 A' },
          candidates: undefined,
        },
        told: ['strings.fullPull', 'unknown'],
        sound: {
          pack: { parallel: 2 },
          strings: { fuse: { ...gG63, curve: undefined } },
          controller: { batteryCurrent: '110 A' },
          candidates: undefined,
        },
      },
      {
        what: 'the cable of a string that its link lets burn',
        dangerous: { pack: { parallel: 2 }, strings: { fuse: gG63, withstand: '0.03 kA²·s' } },
        // At least 600 A for 0.1 s: 36 000 A²·s.
        told: /the link of a string lets through 0\.03\d* kA²·s at 6\d\d.* A, more than the 0\.03 kA²·s that the cable of the string withstands/,
        sound: { pack: { parallel: 2 }, strings: { fuse: gG63, withstand: '0.3 kA²·s' } },
      },
      {
        what: 'the cable of a string, and a link of which nobody knows what it lets through',
        dangerous: {
          pack: { parallel: 2 },
          strings: { fuse: { ...gG63, curve: undefined }, withstand: '0.3 kA²·s' },
        },
        told: ['strings.letThrough', 'unknown'],
        sound: { pack: { parallel: 2 }, strings: { fuse: { ...gG63, curve: undefined } } },
      },
    ],
  },
  insulationDistances: {
    call: insulationDistances,
    sound: spaced,
    cases: [
      {
        what: 'a gap through the air that is too small',
        dangerous: { clearance: '1.4 mm' },
        told: ['distance.clearance', 'fail'],
        sound: { clearance: '1.6 mm' },
      },
      {
        what: 'a gap that serves down by the sea and not on a pass',
        dangerous: { clearance: '1.65 mm', altitude: '3500 m' },
        told: ['distance.clearance', 'fail'],
        sound: { clearance: '1.65 mm' },
      },
      {
        what: 'a gap that nobody measured',
        dangerous: { clearance: undefined },
        told: ['distance.clearance', 'unknown'],
      },
      {
        what: 'an impulse that nobody knows',
        dangerous: { impulse: undefined },
        told: ['distance.clearance', 'unknown'],
        sound: { impulse: undefined, mains: { toEarth: '230 V', category: 'II' } },
      },
      {
        what: 'a creepage that could be less than a clearance that nobody knows',
        dangerous: { impulse: undefined },
        told: ['distance.creepage', 'unknown'],
      },
      {
        what: 'an impulse that is less than what the mains bring',
        dangerous: { impulse: '1.5 kV', mains: { toEarth: '230 V', category: 'III' }, clearance: '2.5 mm' },
        told: ['distance.clearance', 'fail'],
        sound: { impulse: '1.5 kV', mains: { toEarth: '230 V', category: 'III' }, clearance: '3.5 mm' },
      },
      {
        what: 'an impulse below the working voltage',
        dangerous: { impulse: '330 V' },
        told: /impulse: expected at least the working voltage, 403\.2 V, got 330 V/,
      },
      {
        what: 'mains whose impulse is below the working voltage',
        dangerous: { impulse: undefined, mains: { toEarth: '50 V', category: 'I' } },
        told: /mains: expected at least the working voltage, 403\.2 V, got 0\.33 kV/,
      },
      {
        what: 'an impulse between two steps',
        dangerous: { impulse: '2.6 kV', clearance: '2.9 mm' },
        told: ['distance.clearance', 'fail'],
        sound: { impulse: '2.4 kV', clearance: '1.6 mm' },
      },
      {
        what: 'a surface that tracks',
        dangerous: { creepage: '3.9 mm' },
        told: ['distance.creepage', 'fail'],
        sound: { creepage: '3.9 mm', material: 'II' },
      },
      {
        what: 'a surface that is damp',
        dangerous: { pollution: 3 },
        told: ['distance.creepage', 'fail'],
        sound: { pollution: 3, creepage: '7 mm' },
      },
      {
        what: 'a surface of which nobody says how clean it is',
        dangerous: { pollution: undefined },
        told: ['distance.creepage', 'fail'],
      },
      {
        what: 'a material that nobody knows',
        dangerous: { material: undefined, creepage: '3.9 mm' },
        told: ['distance.creepage', 'fail'],
        sound: { material: undefined, trackingIndex: 600, creepage: '3.9 mm' },
      },
      {
        what: 'a material of two minds',
        dangerous: { material: 'I', trackingIndex: 200 },
        told: /material: expected group IIIa, which its tracking index of 200 tells, got I/,
      },
      {
        what: 'a hand behind basic insulation',
        dangerous: { insulation: 'reinforced' },
        told: ['distance.creepage', 'fail'],
        sound: { insulation: 'reinforced', creepage: '9 mm' },
      },
      {
        what: 'a creepage that is less than the clearance',
        dangerous: { voltage: '60 V', impulse: '6 kV', creepage: '5 mm' },
        told: ['distance.creepage', 'fail'],
        sound: { voltage: '60 V', impulse: '6 kV', creepage: '5.9 mm' },
      },
      {
        what: 'the worst material in the damp at a high voltage',
        dangerous: { voltage: '700 V', pollution: 3, material: 'IIIb', creepage: '30 mm' },
        told: ['distance.material', 'fail'],
      },
      {
        what: 'a printed board in the damp',
        dangerous: { printed: true, pollution: 3 },
        told: /pollution: expected 1 or 2, as the table of printed boards has nothing for 3/,
        sound: { printed: true },
      },
      {
        what: 'a printed board of a material that nobody knows',
        dangerous: { printed: true, material: undefined },
        told: /material: expected 'I', 'II' or 'IIIa' for a printed board of degree 2/,
      },
      {
        what: 'an impulse beyond the steps',
        dangerous: { impulse: '9 kV', insulation: 'reinforced' },
        told: /impulse: expected an impulse of at most 8 kV for reinforced insulation/,
      },
    ],
  },
  insulationMonitor: {
    call: insulationMonitor,
    sound: watched,
    cases: [
      {
        what: 'a monitor that warns at 100 Ω/V of a pack joined to an inverter',
        dangerous: { warns: '50 kΩ' },
        told: ['monitor.warns', 'fail'],
        sound: { warns: '50 kΩ', acSide: 'double insulation' },
      },
      {
        what: 'a monitor that opens too late',
        dangerous: { opens: '20 kΩ' },
        told: ['monitor.opens', 'fail'],
      },
      {
        what: 'a monitor of which nobody knows where it warns',
        dangerous: { warns: undefined },
        told: ['monitor.warns', 'unknown'],
      },
      {
        what: 'a monitor of which nobody knows whether it opens anything',
        dangerous: { opens: undefined },
        told: ['monitor.opens', 'unknown'],
      },
      {
        what: 'a monitor that opens before it warns',
        dangerous: { opens: '300 kΩ' },
        told: /opens: expected at most 200 kΩ, at which it warns/,
      },
      {
        what: 'filters that hold more than may be touched',
        dangerous: { capacitance: { positive: '2 µF', negative: '2 µF' } },
        told: ['monitor.energy', 'fail'],
        sound: { capacitance: { positive: '1.5 µF', negative: '1.5 µF' } },
      },
      {
        what: 'filters that nobody knows',
        dangerous: { capacitance: undefined },
        told: ['monitor.energy', 'unknown'],
      },
      {
        what: 'filters that keep the monitor from telling in time',
        dangerous: { responseTime: '0.5 s' },
        told: ['monitor.response', 'fail'],
      },
      {
        what: 'an AC side where there is none',
        dangerous: { circuit: 'DC', acSide: 'double insulation' },
        told: /acSide: expected nothing, as the circuit is 'DC'/,
        sound: { circuit: 'DC' },
      },
      {
        what: 'isolation that falls',
        dangerous: {},
        told: /Isolation that falls from one reading to the next is damage on its way/,
      },
    ],
  },
  sizeBar: {
    call: sizeBar,
    sound: bar,
    cases: [
      {
        what: 'more current than any of the bars carries',
        dangerous: { current: '450 A' },
        told: ['bar.serves', 'fail'],
        sound: { current: '350 A' },
      },
      {
        what: 'bars in the hot air of a closed box',
        dangerous: { ambient: '60 °C', current: '350 A' },
        told: ['bar.serves', 'fail'],
        sound: { ambient: '60 °C' },
      },
      {
        what: 'a bar with little left of it beside its bolt',
        dangerous: { candidates: [{ width: '20 mm', thickness: '5 mm' }], ends: { bolt: 'M10', torque: '40 N·m' } },
        told: /a hole of 11 mm for M10, more than half its width, 10 mm/,
        sound: { ends: { bolt: 'M10', torque: '40 N·m' } },
      },
      {
        what: 'bolts that are hardly tight',
        dangerous: { ends: { torque: '12 N·m' } },
        told: ['joint.torque', 'fail'],
        sound: { ends: { torque: '17 N·m' } },
      },
      {
        what: 'bolts of which nobody says how tight they are',
        dangerous: { ends: { torque: undefined } },
        told: ['joint.torque', 'unknown'],
      },
      {
        what: 'bolts that were oiled and tightened as if they were dry',
        dangerous: { ends: { friction: 0.06 } },
        told: ['joint.bolt', 'fail'],
        sound: { ends: { friction: 0.1 } },
      },
      {
        what: 'a joint that is worse than the others',
        dangerous: { ends: { measured: ['5 µΩ', '6 µΩ', '11 µΩ'] } },
        told: ['joint.measured', 'fail'],
        sound: { ends: { measured: ['5 µΩ', '6 µΩ', '7 µΩ'] } },
      },
      {
        what: 'joints that nobody measured',
        dangerous: { ends: { measured: undefined } },
        told: /The joints were not measured against each other/,
      },
      {
        what: 'a bar that the table does not have',
        dangerous: { candidates: [{ width: '22 mm', thickness: '5 mm' }] },
        told: /candidates\[0\]: expected a bar of the table: 12 × 2 mm.*got 22 × 5 mm/,
      },
      {
        what: 'a rise of which nothing is published',
        dangerous: { ambient: '70 °C' },
        told: /limit: expected 20 K to 65 K more than ambient/,
        sound: { ambient: '59 °C' },
      },
      {
        what: 'two painted bars, which the table does not have',
        dangerous: { count: 2, finish: 'painted', candidates: [{ width: '20 mm', thickness: '5 mm' }] },
        told: /count: expected 1, as the table has no two painted bars/,
        sound: { count: 2, candidates: [{ width: '20 mm', thickness: '5 mm' }] },
      },
      {
        what: 'torques that differ from book to book',
        dangerous: {},
        told: /Torques are those of DIN 43673: published sets differ by a quarter/,
      },
    ],
  },
  selectContactor: {
    call: selectContactor,
    sound: contactorTask,
    cases: [
      {
        what: 'a load that the contacts do not carry all day',
        dangerous: { current: '95 A' },
        told: /carries 90 A all day, less than the 95 A/,
        sound: { current: '88 A' },
      },
      {
        what: 'a contactor in hotter air than its current is stated for',
        dangerous: { ambient: '75 °C' },
        told: /what the contactor carries in air of 75 °C is not known/,
        sound: { ambient: '58 °C' },
      },
      {
        what: 'a long pull above what the contacts carry so long',
        dangerous: { controller: { batteryCurrent: '160 A', time: '100 s' } },
        told: /160 A for \S+ s of a full pull is more than the 140 A/,
        sound: { controller: { batteryCurrent: '135 A', time: '100 s' } },
      },
      {
        what: 'a pull that is longer than any short time stated',
        dangerous: withContactor({ shortTime: [['2500 A', '50 ms']] }),
        told: /whether the contactor carries 130 A for 20 s of a full pull is not known/,
      },
      {
        what: 'a contactor that closes on a precharge of 90 %',
        dangerous: { precharge: { residualVoltage: '33.6 V' } },
        told: /746\.7 A flow as the contactor closes, more than the 450 A/,
        sound: { precharge: { residualVoltage: '19 V' } },
      },
      {
        what: 'a contactor of no stated making capacity',
        dangerous: withContactor({ make: undefined }),
        told: /may close on what is left is not known: give its make/,
      },
      {
        what: 'a controller that draws more than the contactor breaks so often',
        dangerous: { controller: { batteryCurrent: '210 A', time: '5 s' } },
        told: /breaks 200 A at 336 V 50 times, less than the 210 A/,
        sound: { controller: { batteryCurrent: '195 A', time: '5 s' } },
      },
      {
        what: 'a breaking capacity for fewer times than it is asked',
        dangerous: { openings: 80 },
        told: /what the contactor breaks at 336 V 80 times is not known/,
        sound: { openings: 60 },
      },
      {
        what: 'a breaking capacity for less than the voltage of the pack',
        dangerous: withContactor({ breaks: [{ voltage: '300 V', current: '900 A', times: 100 }] }),
        told: /what the contactor breaks at 336 V 50 times is not known/,
      },
      {
        what: 'regeneration through a polarised contactor',
        dangerous: withContactor({ polarised: true }),
        told: /is polarised, and 40 A flow the other way/,
        sound: withContactor({ polarised: true, breaksBackwards: [{ voltage: '400 V', current: '60 A', times: 60 }] }),
      },
      {
        what: 'regeneration through a contactor that may be polarised',
        dangerous: withContactor({ polarised: undefined }),
        told: /breaks 40 A the other way is not known: give polarised/,
        sound: { ...withContactor({ polarised: undefined }), backwards: '0 A', profile: [['60 A', '20 s']] },
      },
      {
        what: 'a control that opens the contactor before the fuse, on more than it breaks',
        dangerous: { trip: { current: '250 A', time: '5 ms' } },
        told: /the fuse takes \S+ ms at 900 A, which the contactor cannot break, more than the 5 ms/,
        sound: { trip: { current: '250 A', time: '0.5 s' } },
      },
      {
        what: 'a control of which nobody says when it opens the contactor',
        dangerous: { trip: undefined },
        told: /when the control of the contactor opens it on an overcurrent is not known/,
      },
      {
        what: 'contacts that do not bear what the fuse lets through',
        dangerous: withContactor({
          shortTime: [
            ['95 A', '10 min'],
            ['300 A', '200 ms'],
          ],
        }),
        told: /go through the contactor at 420 A, more than/,
      },
      {
        what: 'a fault that lifts the contacts',
        dangerous: withContactor({ peak: '2 kA' }),
        told: /a fault peaks at 2\.8 kA, more than the 2 kA/,
      },
      {
        what: 'a fault whose peak nobody cuts off for certain',
        dangerous: { fault: { cutOff: undefined }, ...withContactor({ peak: '3 kA' }) },
        told: /a fault reaches 4\.2 kA where the fuse does not cut it off/,
        sound: { fault: { cutOff: undefined } },
      },
      {
        what: 'faults that nobody gives',
        dangerous: { fault: undefined },
        told: ['contactor.candidates', 'unknown'],
      },
      {
        what: 'a category for loads of hardly any inductance, taken for a pull of the controller',
        dangerous: withContactor({
          breaks: undefined,
          category: 'DC-1',
          operational: { voltage: '350 V', current: '60 A' },
        }),
        told: /breaks 90 A at 336 V 50 times, less than the 130 A/,
        sound: withContactor({
          breaks: undefined,
          category: 'DC-3',
          operational: { voltage: '350 V', current: '60 A' },
        }),
      },
    ],
  },
  shutdown: {
    call: shutdown,
    sound: switched,
    cases: [
      {
        what: 'a contactor in one pole alone',
        dangerous: { contactors: { poles: 'one' } },
        told: ['shutdown.poles', 'fail'],
        sound: { contactors: { poles: 'one', unsupplied: undefined }, voltage: '54 V' },
      },
      {
        what: 'contactors that latch',
        dangerous: { contactors: { unsupplied: 'stay as they are' } },
        told: ['shutdown.supply', 'fail'],
      },
      {
        what: 'contactors of which nobody says what they do without a supply',
        dangerous: { contactors: { unsupplied: undefined } },
        told: ['shutdown.supply', 'unknown'],
      },
      {
        what: 'a weld that nothing finds',
        dangerous: { contactors: { voltageBehind: false } },
        told: ['shutdown.weld', 'fail'],
      },
      {
        what: 'a weld of which nobody says how it is found',
        dangerous: { contactors: { voltageBehind: undefined } },
        told: ['shutdown.weld', 'unknown'],
      },
      {
        what: 'a key that opens the contactors under load',
        dangerous: { key: { currentFirst: false } },
        told: ['shutdown.key', 'fail'],
      },
      {
        what: 'a key that opens nothing that is told',
        dangerous: { key: undefined },
        told: ['shutdown.key', 'unknown'],
      },
      { what: 'a plug without interlock', dangerous: { interlock: undefined }, told: ['shutdown.plug', 'unknown'] },
      {
        what: 'a plug without interlock, finger-proof all the same',
        dangerous: { interlock: undefined, fingerProof: true },
        told: ['shutdown.plug', 'unknown'],
      },
      {
        what: 'a pulled plug that can be touched and stays live',
        dangerous: { discharge: '1.2 s' },
        told: ['shutdown.plug', 'fail'],
        sound: { discharge: '1.2 s', fingerProof: true },
      },
      {
        what: 'a circuit of which nobody says how it discharges',
        dangerous: { discharge: undefined },
        told: ['shutdown.crash', 'unknown'],
      },
      {
        what: 'a crash that opens nothing',
        dangerous: { inertiaSwitch: undefined },
        told: ['shutdown.crash', 'unknown'],
      },
      {
        what: 'a circuit that is live long after a crash',
        dangerous: { discharge: '11 s', fingerProof: true },
        told: ['shutdown.crash', 'fail'],
        sound: { discharge: '9 s', fingerProof: true },
      },
      {
        what: 'a service plug that draws an arc',
        dangerous: { servicePlug: { leading: false } },
        told: ['shutdown.servicePlug', 'fail'],
      },
      {
        what: 'a pack that no plug splits',
        dangerous: { servicePlug: undefined },
        told: /all of its voltage is left/,
      },
    ],
  },
  precharge: {
    call: precharge,
    sound: chargedThrough,
    cases: [
      {
        what: 'a discharge resistor that cooks for good',
        dangerous: { dischargePower: '8 W' },
        told: ['precharge.standingPower', 'fail'],
        sound: { dischargePower: '8 W', dischargePath: 'opens' },
      },
      {
        what: 'a discharge resistor of no stated power',
        dangerous: { dischargePower: undefined },
        told: ['precharge.standingPower', 'unknown'],
      },
      {
        what: 'two resistors that never reach the target together',
        dangerous: { resistance: '420 Ω' },
        told: ['precharge.reached', 'fail'],
        sound: { resistance: '150 Ω' },
      },
      {
        what: 'a contactor that closes on too much',
        dangerous: { target: '90 %' },
        told: ['precharge.inrush', 'fail'],
        sound: { target: '99 %', dischargePath: 'opens' },
      },
      {
        what: 'a contactor of no stated making capacity',
        dangerous: { makingCapacity: undefined },
        told: ['precharge.inrush', 'unknown'],
      },
      {
        what: 'a precharge resistor that is none',
        dangerous: { resistance: '0.1 Ω' },
        told: /Resistance of the precharge resistor, where it is chosen: 0\.1 Ω is unusual/,
        sound: { resistance: '150 Ω' },
      },
      {
        what: 'a capacitor that nothing discharges',
        dangerous: { dischargeResistance: undefined, dischargePower: undefined },
        told: /How long the capacitor stays charged is not held to a limit/,
      },
      {
        what: 'a capacitor that stays charged for long',
        dangerous: { dischargeResistance: '12 kΩ' },
        told: ['precharge.discharge', 'fail'],
      },
    ],
  },
  arrangePack: {
    call: arrangePack,
    sound: {
      module: charging,
      window: { minimum: '200 V', maximum: '380 V' },
      available: 6,
      energy: '12 kWh',
      power: '15 kW',
      regenerationCurrent: '30 A',
    },
    cases: [
      {
        what: 'a charge current that nobody stated',
        dangerous: { module: { chargeCurrent: undefined } },
        told: ['pack.chargeCurrent', 'unknown'],
        sound: { module: byTemperature },
      },
      {
        what: 'more power than any arrangement gives',
        dangerous: { power: '70 kW' },
        told: ['pack.arrangements', 'fail'],
        sound: { power: '17 kW' },
      },
      {
        what: 'a controller that works from millivolts on',
        dangerous: { window: { minimum: '200 mV' } },
        told: /Lowest voltage at which the controller works: 200 mV is unusual.* Did you mean 200 V/,
        sound: { window: { minimum: '210 V' } },
      },
      {
        what: 'a voltage at rest that nobody can tell where braking begins',
        dangerous: { module: { chemistry: undefined } },
        told: ['pack.regenerationCells', 'unknown'],
        sound: {
          module: {
            chemistry: undefined,
            openCircuit: [
              [0, '43 V'],
              [1, '58.6 V'],
            ],
          },
        },
      },
    ],
  },
  groupModules: {
    call: groupModules,
    sound: grouped,
    cases: [
      {
        what: 'a module that takes more than it bears',
        dangerous: { current: '155 A' },
        told: ['group.current', 'fail'],
      },
      {
        what: 'modules of little resistance joined with those that resist much, to the last of their capacity',
        dangerous: { ...unlike, capacityTolerance: '0 %' },
        told: ['group.current', 'fail'],
        sound: { ...unlike, capacityTolerance: '4 %' },
      },
      {
        what: 'modules of two sorts in one pack',
        dangerous: {
          modules: [
            { name: 'A', capacity: '52 Ah', resistance: '14 mΩ' },
            { name: 'B', capacity: '33 Ah', resistance: '14.5 mΩ' },
            { name: 'C', capacity: '51 Ah', resistance: '14.2 mΩ' },
            { name: 'D', capacity: '34 Ah', resistance: '14.4 mΩ' },
          ],
        },
        told: /B holds 63\.46 % of what A holds, which is unusual/,
        sound: {
          modules: [
            { name: 'A', capacity: '52 Ah', resistance: '14 mΩ' },
            { name: 'B', capacity: '46 Ah', resistance: '14.5 mΩ' },
            { name: 'C', capacity: '51 Ah', resistance: '14.2 mΩ' },
            { name: 'D', capacity: '47 Ah', resistance: '14.4 mΩ' },
          ],
        },
      },
      {
        what: 'a share that nobody can tell',
        dangerous: { continuousCurrent: undefined },
        told: ['group.current', 'unknown'],
      },
    ],
  },
  lowVoltageSupply: {
    call: lowVoltageSupply,
    sound: twelveVolts,
    cases: [
      {
        what: 'a converter that nobody stated',
        dangerous: { converter: undefined },
        told: ['lowVoltage.converter', 'unknown'],
      },
      {
        what: 'a converter without room',
        dangerous: { converter: { current: '14 A', feed: undefined } },
        told: ['lowVoltage.converter', 'fail'],
        sound: { converter: { current: '16 A', feed: undefined } },
      },
      {
        what: 'a fan that runs all the time after all',
        dangerous: { loads: { fan: { duty: 'steady' } }, converter: { current: '19 A', feed: undefined } },
        told: ['lowVoltage.converter', 'fail'],
        sound: { converter: { current: '19 A', feed: undefined } },
      },
      {
        what: 'everything on at once, and no battery',
        dangerous: { converter: { current: '20 A', feed: undefined }, battery: undefined },
        told: ['lowVoltage.peak', 'unknown'],
        sound: { converter: { current: '20 A', feed: undefined } },
      },
      {
        what: 'lamps that go out with the converter',
        dangerous: { battery: undefined },
        told: ['lowVoltage.runTime', 'unknown'],
      },
      {
        what: 'a battery for a quarter of an hour',
        dangerous: { battery: { capacity: '12 Ah' } },
        told: ['lowVoltage.runTime', 'fail'],
        sound: { battery: { capacity: '30 Ah' } },
      },
      {
        what: 'a wire too thin for its fuse',
        dangerous: { loads: { headlamps: { feed: { section: '2.5 mm²' } } } },
        told: ['feed.headlamps.cable', 'fail'],
        sound: { loads: { headlamps: { feed: { section: '2.5 mm²' } } }, bundled: 0.7 },
      },
      {
        what: 'a fuse too large for its wire',
        dangerous: { loads: { headlamps: { feed: { fuse: '25 A' } } } },
        told: ['feed.headlamps.cable', 'fail'],
      },
      {
        what: 'a fuse that tires under its load',
        dangerous: { loads: { headlamps: { feed: { fuse: '10 A' } } } },
        told: ['feed.headlamps.fuse', 'fail'],
      },
      {
        what: 'dim lamps at the end of a long wire',
        dangerous: { loads: { headlamps: { feed: { length: '9 m' } } } },
        told: ['feed.headlamps.drop', 'fail'],
        sound: { loads: { headlamps: { feed: { length: '5 m' } } } },
      },
      {
        what: 'a return wire where the body would do',
        dangerous: { loads: { headlamps: { feed: { back: 'wire' } } } },
        told: ['feed.headlamps.drop', 'fail'],
      },
      {
        what: 'a drop that nobody limits',
        dangerous: { loads: { headlamps: { feed: { feeds: undefined } } } },
        told: ['feed.headlamps.drop', 'unknown'],
        sound: { loads: { headlamps: { feed: { feeds: undefined, maximumDrop: '0.3 V' } } } },
      },
      {
        what: 'wires over a hot motor',
        dangerous: { ambient: '60 °C' },
        told: ['feed.headlamps.cable', 'fail'],
        sound: { ambient: '60 °C', insulationLimit: '105 °C' },
      },
      {
        what: 'a converter whose wire the battery burns',
        dangerous: { converter: { feed: { section: '6 mm²' } } },
        told: ['feed.converter.cable', 'fail'],
      },
      {
        what: 'a converter whose fuse tires',
        dangerous: { converter: { feed: { fuse: '35 A' } } },
        told: ['feed.converter.fuse', 'fail'],
      },
      {
        what: 'a converter far from the battery',
        dangerous: { converter: { feed: { length: '6 m' } } },
        told: ['feed.converter.drop', 'fail'],
      },
    ],
  },
  chargingPoint: {
    call: chargingPoint,
    sound: garage,
    cases: [
      {
        what: 'no residual-current device',
        dangerous: { residualCurrent: undefined },
        told: ['mains.directCurrent', 'unknown'],
      },
      {
        what: 'a device of type A with nothing that sees smooth direct current',
        dangerous: { residualCurrent: { detector: 'none' } },
        told: ['mains.directCurrent', 'fail'],
        sound: { residualCurrent: { type: 'B', detector: 'none' } },
      },
      {
        what: 'a device of type A, and nobody says what sees direct current',
        dangerous: { residualCurrent: { detector: undefined } },
        told: ['mains.directCurrent', 'unknown'],
      },
      {
        what: 'a device of type AC',
        dangerous: { residualCurrent: { type: 'AC' } },
        told: ['mains.directCurrent', 'fail'],
        sound: { residualCurrent: { type: 'F' } },
      },
      {
        what: 'a device for plant, not for people',
        dangerous: { residualCurrent: { trips: '300 mA' } },
        told: ['mains.residual', 'fail'],
        sound: { residualCurrent: { trips: '10 mA' } },
      },
      {
        what: 'a device that opens nobody knows when',
        dangerous: { residualCurrent: { trips: undefined } },
        told: ['mains.residual', 'unknown'],
      },
      {
        what: 'type B behind a device of type A that others rely on',
        dangerous: { residualCurrent: { type: 'B', detector: 'none', upstream: 'A' } },
        told: ['mains.upstream', 'fail'],
        sound: { residualCurrent: { upstream: 'A' } },
      },
      {
        what: 'a device of type AC upstream',
        dangerous: { residualCurrent: { upstream: 'AC' } },
        told: ['mains.upstream', 'fail'],
        sound: { residualCurrent: { upstream: 'B' } },
      },
      {
        what: 'who knows what upstream',
        dangerous: { residualCurrent: { upstream: undefined } },
        told: ['mains.upstream', 'unknown'],
      },
      { what: 'no earth', dangerous: { earth: undefined }, told: ['mains.earth', 'unknown'] },
      {
        what: 'a neutral that is the earth too',
        dangerous: { earth: { system: 'TN-C-S' } },
        told: ['mains.earth', 'unknown'],
        sound: { earth: { system: 'TN-C-S', openNeutral: 'detected' } },
      },
      {
        what: 'an earth electrode in dry sand',
        dangerous: { earth: { system: 'TT', resistance: '2.5 kΩ' } },
        told: ['mains.earth', 'fail'],
        sound: { earth: { system: 'TT', resistance: '160 Ω' } },
      },
      {
        what: 'an earth electrode that nobody measured',
        dangerous: { earth: { system: 'TT' } },
        told: ['mains.earth', 'unknown'],
      },
      {
        what: 'a breaker too large for the cable',
        dangerous: { supply: { circuit: '32 A' } },
        told: ['mains.ampacity', 'fail'],
        sound: { supply: { circuit: '25 A' } },
      },
      {
        what: 'a cable in an insulated wall, as nobody said how it lies',
        dangerous: { section: '2.5 mm²', laid: undefined },
        told: ['mains.ampacity', 'fail'],
        sound: { section: '2.5 mm²' },
      },
      {
        what: 'a fuse where a breaker would do',
        dangerous: { section: '2.5 mm²', laid: 'conduit', overcurrent: 'fuse', ambient: '45 °C' },
        told: ['mains.ampacity', 'fail'],
        sound: { section: '2.5 mm²', laid: 'conduit', ambient: '35 °C' },
      },
      {
        what: 'a bundle of loaded cables',
        dangerous: { bundled: 0.5 },
        told: ['mains.ampacity', 'fail'],
        sound: { bundled: 0.8 },
      },
      {
        what: 'three phases in a cable that carries one',
        dangerous: { section: '2.5 mm²', supply: { phases: 3, circuit: '23 A' }, charger: { power: '9 kW' } },
        told: ['mains.ampacity', 'fail'],
        sound: { section: '2.5 mm²', supply: { circuit: '23 A' } },
      },
      {
        what: 'a long feed',
        dangerous: { length: '40 m' },
        told: ['mains.drop', 'fail'],
        sound: { length: '30 m' },
      },
      {
        what: 'a pilot that announces more than the circuit gives',
        dangerous: { pilot: '53.3 %' },
        told: ['mains.pilot', 'fail'],
        sound: { pilot: '10 %' },
      },
      {
        what: 'a pilot that announces nothing',
        dangerous: { pilot: '100 %' },
        told: ['mains.pilot', 'fail'],
      },
      {
        what: 'a domestic socket for hours at its full rating',
        dangerous: { supply: { rule: 'domestic socket' } },
        told: ['charge.circuit', 'fail'],
        sound: { supply: { rule: 'domestic socket', current: '10 A' }, pilot: '16 %' },
      },
      {
        what: 'a domestic socket behind who knows what fuse',
        dangerous: { supply: { rule: 'domestic socket', current: '10 A', circuit: undefined }, pilot: '16 %' },
        told: ['mains.rating', 'unknown'],
      },
      {
        what: 'a socket whose circuit is rated for less than it lets flow',
        dangerous: { supply: { rule: 'domestic socket', current: '10 A', circuit: '6 A' }, pilot: '16 %' },
        told: ['charge.circuit', 'fail'],
      },
      {
        what: 'more than 80 % of a circuit under the NEC',
        dangerous: { supply: { rule: 'NEC', circuit: '16 A' } },
        told: ['charge.circuit', 'fail'],
        sound: { supply: { rule: 'NEC' } },
      },
      { what: 'work for an electrician', dangerous: {}, told: /licensed electrician/ },
    ],
  },
  chargePlan: {
    call: chargePlan,
    sound: overnight,
    cases: [
      {
        what: 'a circuit that nobody stated',
        dangerous: { supply: { circuit: undefined } },
        told: ['charge.circuit', 'unknown'],
      },
      {
        what: 'all of a circuit, and no rule',
        dangerous: { supply: { circuit: '10 A' } },
        told: ['charge.circuit', 'unknown'],
        sound: { supply: { circuit: '10 A', rule: 'IEC own circuit' } },
      },
      {
        what: 'more than a domestic socket bears, and nothing said of what it is plugged into',
        dangerous: { supply: { current: '13 A', circuit: '20 A' }, charger: { power: '2.7 kW' } },
        told: ['charge.circuit', 'unknown'],
        sound: { supply: { current: '13 A', circuit: '20 A', rule: 'NEC' }, charger: { power: '2.7 kW' } },
      },
      {
        what: 'a supply that lets more flow than its circuit is rated for',
        dangerous: { supply: { current: '32 A', circuit: '20 A', rule: 'IEC own circuit' } },
        told: /the supply lets 32 A flow, more than the 20 A of its circuit/,
        sound: { supply: { current: '20 A', circuit: '20 A', rule: 'IEC own circuit' } },
      },
      {
        what: 'more than 80 % of a circuit under the NEC',
        dangerous: { supply: { circuit: '11 A', rule: 'NEC' } },
        told: ['charge.circuit', 'fail'],
        sound: { supply: { circuit: '15 A', rule: 'NEC' } },
      },
      {
        what: 'a domestic socket at its full rating for hours',
        dangerous: { supply: { current: '13 A', rule: 'domestic socket' }, charger: { power: '2.7 kW' } },
        told: ['charge.circuit', 'fail'],
        sound: { supply: { rule: 'domestic socket' } },
      },
      {
        what: 'a charge current that nothing limits',
        dangerous: { pack: { module: { chargeCurrent: undefined } } },
        told: ['pack.chargeCurrent', 'unknown'],
      },
      {
        what: 'a charge current by temperature, and cells of no stated temperature',
        dangerous: { pack: { module: byTemperature }, temperature: undefined },
        told: ['pack.chargeCurrent', 'unknown'],
        sound: { pack: { module: byTemperature } },
      },
      {
        what: 'a charge at a temperature at which the cells take none',
        dangerous: { pack: { module: byTemperature }, temperature: '47 °C' },
        told: /temperature: expected a temperature at which pack\.module\.chargeCurrents lets a charge in, got 47 °C/,
        sound: { pack: { module: byTemperature }, temperature: '3 °C' },
      },
      {
        what: 'cells that are too warm for a charge',
        dangerous: { temperature: '52 °C' },
        told: ['cells.warm', 'fail'],
      },
      {
        what: 'cells that are said to take a charge in hard frost',
        dangerous: {
          temperature: '-13 °C',
          pack: {
            module: {
              cold: { temperature: '-15 °C', resistance: '48 mΩ' },
              temperatures: {
                charge: { minimum: '-18 °C', maximum: '45 °C' },
                discharge: { minimum: '-20 °C', maximum: '60 °C' },
              },
            },
          },
        },
        told: /Lowest temperature of the cells on charge: -18 °C is unusual/,
      },
      {
        what: 'cells that are too cold for a charge',
        dangerous: { temperature: '-3 °C' },
        told: ['cells.cold', 'fail'],
      },
      { what: 'mains voltage', dangerous: {}, told: /residual-current device/ },
    ],
  },
  packAt: {
    call: packAt,
    sound: {
      pack: { module: charging, series: 6, parallel: 1 },
      stateOfCharge: 0.6,
      current: '80 A',
      temperature: '30 °C',
    },
    cases: [
      {
        what: 'a load on cold cells, of which nobody said how much they resist',
        dangerous: { temperature: '4 °C' },
        told: ['pack.voltageUnderLoad', 'unknown'],
        sound: { temperature: '4 °C', pack: { module: { cold: { temperature: '-10 °C', resistance: '40 mΩ' } } } },
      },
      {
        what: 'a charge of cold cells, of which nobody said how much they resist',
        dangerous: { temperature: '4 °C', current: '-20 A' },
        told: ['pack.voltageOnCharge', 'unknown'],
        sound: { temperature: '15 °C', current: '-20 A' },
      },
      {
        what: 'a load under which even warm cells would sag too far',
        dangerous: { temperature: '4 °C', current: '110 A', pack: { module: { resistance: '120 mΩ' } } },
        told: ['pack.voltageUnderLoad', 'fail'],
      },
      { what: 'cells that are too hot for a load', dangerous: { temperature: '64 °C' }, told: ['cells.warm', 'fail'] },
      {
        what: 'a charge into cells of which nobody said what they take',
        dangerous: { current: '-20 A', pack: { module: { chargeCurrent: undefined } } },
        told: ['pack.chargeCurrent', 'unknown'],
        sound: { current: '-20 A' },
      },
      {
        what: 'a charge current by temperature, and cells of no stated temperature',
        dangerous: { current: '-20 A', pack: { module: byTemperature }, temperature: undefined },
        told: ['pack.chargeCurrent', 'unknown'],
        sound: { current: '-20 A', pack: { module: byTemperature } },
      },
      {
        what: 'more current than cold cells take',
        dangerous: {
          current: '-20 A',
          pack: { module: { ...byTemperature, chargeCurrent: '40 A' } },
          temperature: '4 °C',
        },
        told: ['pack.chargeCurrent', 'fail'],
        sound: { current: '-12 A', pack: { module: { ...byTemperature, chargeCurrent: '40 A' } }, temperature: '4 °C' },
      },
      {
        what: 'a charge into hot cells',
        dangerous: { current: '-20 A', temperature: '47 °C' },
        told: ['cells.warm', 'fail'],
      },
    ],
  },
  sizeCable: {
    call: sizeCable,
    sound: { current: '60 A', length: '3 m', maximumDrop: '1 V', insulationLimit: '105 °C' },
    cases: [
      {
        what: 'no section whose terminals keep cool, and what helps',
        dangerous: { ambient: '80 °C' },
        told: /brings .* to its terminals, more than the 75 °C for which they are made\. Give terminalLimit/,
        sound: { ambient: '80 °C', terminalLimit: '105 °C' },
      },
      {
        what: 'a fault limit that no insulation has',
        dangerous: { faultLimit: '900 °C' },
        told: /Limit of the insulation in a fault .*900 °C is unusual/,
        sound: { faultLimit: '250 °C' },
      },
      {
        what: 'a continuous limit that no insulation has',
        dangerous: { insulationLimit: '300 °C', faultLimit: '350 °C' },
        told: /Continuous limit of the insulation: 300 °C is unusual/,
        sound: { insulationLimit: '200 °C', faultLimit: '350 °C' },
      },
      {
        what: 'a cable as thick as a barrel',
        dangerous: { geometry: { '10 mm²': '1 m' } },
        told: /Outer diameter: 1 m is unusual/,
        sound: { geometry: { '10 mm²': '7 mm' } },
      },
    ],
  },
  packLife: {
    call: packLife,
    sound: lived,
    cases: [
      {
        what: 'cells of which no model is at hand',
        dangerous: { pack: { module: { chemistry: undefined } } },
        told: ['life.model', 'unknown'],
      },
      {
        what: 'a journey longer than what is charged',
        dangerous: { journeys: [{ perYear: 220, charge: '40 Ah', current: '25 A' }] },
        told: ['life.depth', 'fail'],
        sound: { journeys: [{ perYear: 220, charge: '33 Ah', current: '25 A' }] },
      },
      {
        what: 'cells warmer than any that were tested',
        dangerous: {
          temperatures: [
            ['22 °C', 0.9],
            ['55 °C', 0.1],
          ],
        },
        told: /temperatures\[1\]\[0\]: expected at most 50 °C, to which the model of these cells reaches, got 55 °C/,
      },
      {
        what: 'a current beyond the models',
        dangerous: { journeys: [{ perYear: 220, charge: '20 Ah', current: '90 A' }] },
        told: /journeys: expected currents of at most 1 C on average/,
        sound: { journeys: [{ perYear: 220, charge: '20 Ah', current: '55 A' }] },
      },
      {
        what: 'a year that is not whole',
        dangerous: { temperatures: [['22 °C', 0.5]] },
        told: /temperatures: expected shares of the year that make 100 %, got 50 %/,
        sound: { temperatures: [['22 °C', 1]] },
      },
      {
        what: 'cells colder than any that were tested',
        dangerous: { temperatures: [['5 °C', 1]] },
        told: /Below 20 °C the loss by standing is taken as at 20 °C/,
      },
      {
        what: 'that the figures are a model of other cells',
        dangerous: {},
        told: /The models are of other cells than these/,
      },
    ],
  },
  capacityTest: {
    call: capacityTest,
    sound: bench,
    cases: [
      {
        what: 'a discharge that stops short of empty',
        dangerous: withRows(([t = 0, i = 0, u = 0]) => [t, i, Math.max(u, 37)]),
        told: ['test.empty', 'fail'],
        sound: withRows(([t = 0, i = 0, u = 0]) => [t, i, Math.max(u, 36.1)]),
      },
      {
        what: 'a charge that stops short of full',
        dangerous: withRows(([t = 0, i = 0, u = 0]) => [t, i, Math.min(u, 49.8)]),
        told: ['test.full', 'fail'],
        sound: withRows(([t = 0, i = 0, u = 0]) => [t, i, Math.min(u, 50.3)]),
      },
      {
        what: 'a module that nobody saw full',
        dangerous: { log: textOf(benchRows.slice(1).map(([t, i, u]) => [t, i, Math.min(u, 49)])) },
        told: ['test.full', 'unknown'],
      },
      {
        what: 'rows that cannot be read',
        dangerous: { log: benchLog.replace('7000,20,40', '7000,20,-') },
        told: ['test.rows', 'unknown'],
      },
      { what: 'a gap in the discharge', dangerous: { longestGap: '25 min' }, told: ['test.gaps', 'fail'] },
      {
        what: 'a sensor off zero, by what comes out of a charge',
        dangerous: withRows(([t = 0, i = 0, u = 0]) => [t, i + 0.3, u]),
        told: ['test.balance', 'fail'],
        sound: withRows(([t = 0, i = 0, u = 0]) => [t, i + 0.02, u]),
      },
      {
        what: 'a log without a pulse',
        dangerous: { log: textOf(benchRows.filter(([t]) => t < 3612 || t > 3635)) },
        told: ['test.resistance', 'unknown'],
      },
      {
        what: 'a test in the cold',
        dangerous: { log: benchLog.replaceAll(',24.5\n', ',9\n') },
        told: ['test.temperature', 'fail'],
        sound: { log: benchLog.replaceAll(',24.5\n', ',17\n') },
      },
      {
        what: 'a test of unknown temperature',
        dangerous: {
          log: benchLog.replaceAll(',24.5\n', '\n').replace(',temperature (°C)', ''),
        },
        told: ['test.temperature', 'unknown'],
        sound: { log: benchLog.replaceAll(',24.5\n', '\n').replace(',temperature (°C)', ''), temperature: '22 °C' },
      },
      {
        what: 'a module that was emptied too far',
        dangerous: withRows(([t = 0, i = 0, u = 0]) => [t, i, t === 7700 ? 35 : u]),
        told: ['test.lowest', 'fail'],
      },
      {
        what: 'a module that was charged too far',
        dangerous: withRows(([t = 0, i = 0, u = 0]) => [t, i, t === 15200 ? 51 : u]),
        told: ['test.highest', 'fail'],
      },
      {
        what: 'a cell limit while only the module was logged',
        dangerous: { module: { cell: { minimumVoltage: '2.8 V', maximumVoltage: '4.25 V' } } },
        told: ['test.highestCell', 'unknown'],
      },
      {
        what: 'a worn module',
        dangerous: { module: { newCapacity: '60 Ah' } },
        told: ['test.health', 'fail'],
        sound: { module: { newCapacity: '50 Ah' } },
      },
      {
        what: 'nothing to compare with',
        dangerous: { module: { newCapacity: undefined } },
        told: ['test.health', 'unknown'],
      },
      {
        what: 'a sign the other way round',
        dangerous: { positive: 'charge' },
        told: /positive: expected 'discharge', got 'charge' \(the voltage rises while that current flows\)/,
      },
    ],
  },
  restCapacity: {
    call: restCapacity,
    sound: rested,
    cases: [
      {
        what: 'two rests that are too near to each other',
        dangerous: { to: '55 V', charge: '11 Ah' },
        told: ['rests.uncertainty', 'fail'],
      },
      {
        what: 'a meter that cannot tell the states apart',
        dangerous: { voltageUncertainty: '3 %' },
        told: ['rests.uncertainty', 'fail'],
        sound: { voltageUncertainty: '1 %' },
      },
      {
        what: 'the flat curve of iron phosphate',
        dangerous: {
          module: {
            cellsInSeries: 16,
            chemistry: 'LFP',
            openCircuit: undefined,
            minimumVoltage: '40 V',
            maximumVoltage: '58.4 V',
          },
          from: '53.2 V',
          to: '52.4 V',
        },
        told: ['rests.uncertainty', 'fail'],
      },
      {
        what: 'a voltage beyond the curve',
        dangerous: { from: '59 V' },
        told: /reaches from 43 V to 58\.5 V, and from, 59 V, lies beyond it; nothing is extrapolated/,
        sound: { from: '58 V' },
      },
      {
        what: 'voltages the wrong way round',
        dangerous: { from: '48 V', to: '57.5 V' },
        told: /to: expected a voltage below from, 48 V/,
      },
    ],
  },
}

const pulsed = {
  ...fuseTask,
  profile: [
    ['72 A', '8 s'],
    ['30 A', '300 s'],
  ],
  controller: { batteryCurrent: '66 A', time: '20 s' },
} as const

export const electricalLaws: readonly Worse[] = [
  {
    procedure: selectFuse,
    sound: pulsed,
    worse: {
      current: 'more',
      ambient: 'more',
      'pack.maximumVoltage': 'more',
      'pack.openCircuit': 'less',
      'pack.inductance': 'more',
      'cable.ampacity': 'less',
      'cable.withstand': 'less',
      'cable.resistance': 'more',
      'controller.batteryCurrent': 'more',
      'controller.time': 'more',
      'candidates.0.voltage.dc': 'less',
      'candidates.0.breakingCapacity': 'less',
      'candidates.0.timeConstant': 'less',
    },
  },
  {
    procedure: protectRun,
    sound: run,
    worse: {
      'load.current': 'more',
      'cable.length': 'more',
      'cable.terminalLimit': 'less',
      'candidates.0.breakingCapacity': 'less',
    },
  },
  {
    procedure: protectRun,
    isSlow: true,
    // A pull that comes a few times may warm the cable beyond what it bears all day.
    sound: {
      ...run,
      cable: { ...run.cable, overloadLimit: '140 °C', terminalLimit: '90 °C' },
      controller: { batteryCurrent: '290 A', time: '60 s' },
      cycles: 100,
      candidates: undefined,
    },
    worse: {
      'load.current': 'more',
      'cable.insulationLimit': 'less',
      'cable.overloadLimit': 'less',
      'cable.terminalLimit': 'less',
      'controller.batteryCurrent': 'more',
      'controller.time': 'more',
      cycles: 'more',
    },
  },
  {
    procedure: lowVoltageSupply,
    sound: twelveVolts,
    worse: {
      'loads.headlamps.power': 'more',
      'loads.fan.current': 'more',
      'loads.headlamps.feed.length': 'more',
      'converter.feed.length': 'more',
      'battery.capacity': 'less',
      'battery.usable': 'less',
      'battery.lasts': 'more',
      ambient: 'more',
      bundled: 'less',
    },
  },
  {
    procedure: chargingPoint,
    sound: {
      ...garage,
      maximumDrop: '4 %',
      ambient: '25 °C',
      earth: { system: 'TT', resistance: '500 Ω' },
      residualCurrent: { ...garage.residualCurrent, trips: '20 mA' },
    },
    worse: {
      // Not supply.circuit nor supply.current: a greater rating burdens the cable and eases the load of the circuit.
      length: 'more',
      ambient: 'more',
      maximumDrop: 'less',
      bundled: 'less',
      'residualCurrent.trips': 'more',
      'earth.resistance': 'more',
      'charger.power': 'more',
    },
  },
  {
    procedure: chargePlan,
    sound: { ...overnight, supply: { ...overnight.supply, rule: 'IEC own circuit' } },
    worse: {
      'supply.circuit': 'less',
      'supply.current': 'more',
      'pack.module.chargeCurrent': 'less',
      'charger.power': 'more',
    },
  },
  {
    procedure: packAt,
    sound: {
      pack: { module: { ...charging, peakCurrent: '200 A' }, series: 6, parallel: 1 },
      stateOfCharge: 0.6,
      current: '100 A',
      temperature: '30 °C',
    },
    worse: {
      current: 'more',
      temperature: 'more',
      stateOfCharge: 'less',
      'pack.module.continuousCurrent': 'less',
      'pack.module.peakCurrent': 'less',
      'pack.module.resistance': 'more',
    },
  },
  {
    procedure: shutdown,
    sound: switched,
    worse: { 'voltage': 'more', 'interlock.time': 'more', 'inertiaSwitch.time': 'more', 'discharge': 'more' },
  },
  {
    procedure: selectContactor,
    sound: contactorTask,
    serves: ({ chosen }: { readonly chosen?: unknown }) => chosen !== undefined,
    worse: {
      'voltage': 'more',
      'current': 'more',
      'backwards': 'more',
      'openings': 'more',
      'ambient': 'more',
      'controller.batteryCurrent': 'more',
      'controller.time': 'more',
      'precharge.residualVoltage': 'more',
      'precharge.loopResistance': 'less',
      'fault.highest': 'more',
      'fault.cutOff': 'more',
      'candidates.0.carry': 'less',
      'candidates.0.ambient': 'less',
      'candidates.0.make': 'less',
      'candidates.0.peak': 'less',
      'candidates.0.breaks.0.current': 'less',
    },
  },
  {
    procedure: precharge,
    sound: { ...chargedThrough, resistance: '300 Ω' },
    worse: {
      voltage: 'more',
      capacitance: 'more',
      time: 'less',
      // Not dischargeResistance: with less more stands, with more the capacitor stays charged.
      resistance: 'more',
      loopResistance: 'less',
      makingCapacity: 'less',
      dischargePower: 'less',
    },
  },
  {
    procedure: sizeCable,
    isSlow: true,
    sound: {
      current: '250 A',
      length: '8 m',
      maximumDrop: '1 V',
      ambient: '45 °C',
      insulationLimit: '105 °C',
      faultLimit: '170 °C',
      terminalLimit: '90 °C',
      bundled: 0.6,
      laid: 'apart',
      fault: { current: '16 kA', time: '0.3 s' },
    },
    worse: {
      current: 'more',
      length: 'more',
      maximumDrop: 'less',
      ambient: 'more',
      terminalLimit: 'less',
      faultLimit: 'less',
      bundled: 'less',
      'fault.current': 'more',
      'fault.time': 'more',
    },
  },
  {
    procedure: cableDuty,
    sound: {
      area: '16 mm²',
      ambient: '45 °C',
      profile: [
        ['140 A', '60 s'],
        ['60 A', '30 s'],
      ],
      initial: '50 °C',
      limit: '90 °C',
    },
    worse: {
      area: 'less',
      ambient: 'more',
      'profile.0.0': 'more',
      'profile.1.0': 'more',
      initial: 'more',
      limit: 'less',
    },
  },
  {
    procedure: arrangePack,
    isSlow: true,
    sound: {
      module: { ...charging, peakCurrent: '200 A' },
      window: { minimum: '100 V', maximum: '190 V' },
      available: 4,
      energy: '7 kWh',
      power: '9 kW',
      maximumMass: '120 kg',
      batteryCurrent: '120 A',
      regenerationCurrent: '30 A',
      usable: { upper: 0.9 },
    },
    worse: {
      'module.capacity': 'less',
      'module.resistance': 'more',
      'module.mass': 'more',
      'module.continuousCurrent': 'less',
      'module.peakCurrent': 'less',
      'module.chargeCurrent': 'less',
      'window.minimum': 'more',
      'window.maximum': 'less',
      available: 'less',
      energy: 'more',
      power: 'more',
      maximumMass: 'less',
      batteryCurrent: 'more',
      regenerationCurrent: 'more',
    },
    serves: ({ fits }: { readonly fits: readonly unknown[] }) => fits.length > 0,
  },
  {
    procedure: groupModules,
    sound: grouped,
    worse: {
      current: 'more',
      continuousCurrent: 'less',
    },
  },
  {
    procedure: homeSupply,
    sound: {
      usableEnergy: '12 kWh',
      hourly: ['400 W', '2 kW'],
      inverter: { efficiency: 0.9, power: '3 kW', standby: '40 W' },
      reserve: '3 kWh',
    },
    worse: { 'hourly.0': 'more', 'hourly.1': 'more', 'inverter.power': 'less' },
  },
  {
    procedure: isolationTest,
    sound: {
      packVoltage: '336 V',
      positive: '160 V',
      negative: '176 V',
      loadedReading: '90 V',
      insertedResistance: '200 kΩ',
      workingVoltage: '353 V',
    },
    worse: {
      positive: 'less',
      negative: 'less',
      loadedReading: 'more',
      insertedResistance: 'less',
      workingVoltage: 'more',
    },
  },
  {
    procedure: storedEnergyCheck,
    sound: { capacitance: '2 µF', voltage: '353 V' },
    worse: { capacitance: 'more', voltage: 'more' },
  },
  {
    procedure: insulationDistances,
    sound: { ...spaced, trackingIndex: undefined, altitude: '2500 m' },
    worse: {
      voltage: 'more',
      impulse: 'more',
      pollution: 'more',
      altitude: 'more',
      clearance: 'less',
      creepage: 'less',
    },
  },
  {
    procedure: insulationMonitor,
    sound: { ...watched, responseTime: '1.4 s' },
    worse: {
      workingVoltage: 'more',
      warns: 'less',
      opens: 'less',
      'capacitance.positive': 'more',
      'capacitance.negative': 'more',
      responseTime: 'less',
    },
  },
  {
    procedure: sizeBar,
    sound: bar,
    worse: {
      current: 'more',
      ambient: 'more',
      limit: 'less',
      // Not ends.torque: with less the joint is loose, with more the bolt stretches.
      'ends.friction': 'less',
      'ends.measured.1': 'more',
    },
  },
  {
    procedure: restCapacity,
    sound: { ...rested, voltageUncertainty: '0.8 %', chargeUncertainty: '4 %' },
    worse: { voltageUncertainty: 'more', chargeUncertainty: 'more' },
  },
  {
    procedure: capacityTest,
    sound: bench,
    worse: { leastHealth: 'more', 'module.newCapacity': 'more', longestGap: 'less' },
  },
  {
    procedure: packLife,
    sound: lived,
    worse: { 'journeys.0.charge': 'more', 'charge.to': 'less' },
  },
]
