/**
 * What cells lose by standing and by use, after published models of single cells.
 *
 * Wang and others (2011) cycled cells of iron phosphate, Naumann and others (2018, 2020) stored and cycled others,
 * Schmalstieg and others (2014) stored and cycled cells of NMC. Each model is that of its cell: what other cells of the same
 * chemistry lose may be several times more or less.
 */
import { cite, constant, definition, formula, input, output } from '../../formula/index.js'

const wang = /*@__PURE__*/ cite('Wang and others, Journal of Power Sources 196 (2011) 3942')
const schmalstieg = /*@__PURE__*/ cite('Schmalstieg and others, Journal of Power Sources 257 (2014) 325')
const stored = /*@__PURE__*/ cite('Naumann and others, Journal of Energy Storage 17 (2018) 153')
const cycled = /*@__PURE__*/ cite('Naumann and others, Journal of Power Sources 451 (2020) 227666')

const kelvin = /*@__PURE__*/ constant('temperature', '1 K', 'Unit in which the fit is written', definition)
const ampereHour = /*@__PURE__*/ constant('charge', '1 Ah', 'Unit in which the fit is written', definition)
const perHour = /*@__PURE__*/ constant('cRate', '1 C', 'Unit in which the fit is written', definition)
const volt = /*@__PURE__*/ constant('voltage', '1 V', 'Unit in which the fit is written', definition)
const day = /*@__PURE__*/ constant('time', '24 h', 'Unit in which the fit is written', definition)
const second = /*@__PURE__*/ constant('time', '1 s', 'Unit in which the fit is written', definition)

/** Capacities of the cells on which the models rest, by which a throughput is carried over to others. From memory. @internal */
export const cellsOfModels = { wang: '2.2 Ah', schmalstieg: '2.05 Ah' } as const

/** Between which temperatures, in °C, and which rates, in C, a model holds. @internal */
export const reachOf = {
  wang: { coldest: 15, warmest: 60, slowest: 0.5, fastest: 10 },
  schmalstieg: { coldest: 20, warmest: 50, slowest: 0, fastest: 1 },
  naumann: { coldest: 0, warmest: 60, slowest: 0.2, fastest: 1 },
} as const

const temperatureOf = ({ coldest, warmest }: { readonly coldest: number; readonly warmest: number }) => ({
  of: 'temperature',
  kind: 'temperature' as const,
  value: ({ temperature }: { readonly temperature: number }) => temperature,
  min: coldest + 273.15,
  max: warmest + 273.15,
})
const rateOf = ({ slowest, fastest }: { readonly slowest: number; readonly fastest: number }) => ({
  of: 'rate',
  kind: 'cRate' as const,
  value: ({ rate }: { readonly rate: number }) => rate,
  min: slowest / 3600,
  max: fastest / 3600,
})
const voltageOf = () => ({
  of: 'voltage',
  kind: 'voltage' as const,
  value: ({ voltage }: { readonly voltage: number }) => voltage,
  min: 3.2,
  max: 4.2,
})

/** What a cell of iron phosphate loses by use, with what it loses by standing meanwhile. */
export const wangCycleLoss = /*@__PURE__*/ (() =>
  formula({
    name: 'wangCycleLoss',
    title: 'Loss of an iron phosphate cell by use, after Wang',
    inputs: {
      rate: input('cRate', 'c', 'Rate of the discharge', { above: 0 }),
      temperature: input('temperature', 'T', 'Temperature of the cell', { above: 0 }),
      throughput: input('charge', 'Q', 'Charge that a cell of 2.2 Ah has given', { min: 0 }),
    },
    result: output('ratio', 'L', 'Share of the capacity that is lost', '%'),
    expression:
      '0.01 * (36041.6979 - 9418.914 * c / C1 + 1214.955 * (c / C1)^2 - 47.836 * (c / C1)^3) * exp((-31700 + 370.3 * c / C1) / (8.314 * T / K1)) * (Q / Q1)^0.55',
    constants: { K1: kelvin, C1: perHour, Q1: ampereHour },
    valid: [rateOf(reachOf.wang), temperatureOf(reachOf.wang)],
    assumes: [
      'The cell is like the one that was cycled, of iron phosphate and 2.2 Ah.',
      'The factor before the exponential is a published cubic through those of four rates.',
    ],
    source: wang,
    compute: ({ rate, temperature, throughput }, { K1, C1, Q1 }) => {
      const c = rate / C1
      const factor = 36041.6979 - 9418.914 * c + 1214.955 * c ** 2 - 47.836 * c ** 3
      return 0.01 * factor * Math.exp((-31700 + 370.3 * c) / ((8.314 * temperature) / K1)) * (throughput / Q1) ** 0.55
    },
  }))()

/** What a cell of iron phosphate loses by standing. */
export const naumannCalendarLoss = /*@__PURE__*/ (() =>
  formula({
    name: 'naumannCalendarLoss',
    title: 'Loss of an iron phosphate cell by standing, after Naumann',
    inputs: {
      stateOfCharge: input('ratio', 's', 'State of charge in which it stands', { min: 0, max: 1 }),
      temperature: input('temperature', 'T', 'Temperature of the cell', { above: 0 }),
      time: input('time', 't', 'Time since it was new', { min: 0 }),
    },
    result: output('ratio', 'L', 'Share of the capacity that is lost', '%'),
    expression:
      '0.000012571 * exp(-17126 / 8.314 * (K1 / T - 1 / 298.15)) * (2.8575 * (s - 0.5)^3 + 0.60225) * sqrt(t / t1)',
    constants: { K1: kelvin, t1: second },
    valid: [temperatureOf(reachOf.naumann)],
    assumes: [
      'The cell is like the one that was stored, of iron phosphate.',
      'The root of the time goes on beyond the two to three years of the tests.',
    ],
    source: stored,
    compute: ({ stateOfCharge, temperature, time }, { K1, t1 }) =>
      0.000012571 *
      Math.exp((-17126 / 8.314) * (K1 / temperature - 1 / 298.15)) *
      (2.8575 * (stateOfCharge - 0.5) ** 3 + 0.60225) *
      Math.sqrt(time / t1),
  }))()

/** What a cell of iron phosphate loses by use, beside what it loses by standing. */
export const naumannCycleLoss = /*@__PURE__*/ (() =>
  formula({
    name: 'naumannCycleLoss',
    title: 'Loss of an iron phosphate cell by use, after Naumann',
    inputs: {
      rate: input('cRate', 'c', 'Rate of charge and discharge', { above: 0 }),
      depth: input('ratio', 'D', 'Depth of a cycle', { min: 0, max: 1 }),
      cycles: input('ratio', 'N', 'Charge given, in whole capacities', { min: 0 }),
    },
    result: output('ratio', 'L', 'Share of the capacity that is lost', '%'),
    expression: '0.01 * (0.063 * c / C1 + 0.0971) * (4.0253 * (D - 0.6)^3 + 1.0923) * sqrt(N)',
    constants: { C1: perHour },
    valid: [rateOf(reachOf.naumann)],
    assumes: ['The cell is like the one that was cycled, of iron phosphate, about half charged on average.'],
    source: cycled,
    compute: ({ rate, depth, cycles }, { C1 }) =>
      0.01 * ((0.063 * rate) / C1 + 0.0971) * (4.0253 * (depth - 0.6) ** 3 + 1.0923) * Math.sqrt(cycles),
  }))()

/** What a cell of NMC loses by standing. */
export const schmalstiegCalendarLoss = /*@__PURE__*/ (() =>
  formula({
    name: 'schmalstiegCalendarLoss',
    title: 'Loss of an NMC cell by standing, after Schmalstieg',
    inputs: {
      voltage: input('voltage', 'U', 'Voltage at which it stands', { min: 0 }),
      temperature: input('temperature', 'T', 'Temperature of the cell', { above: 0 }),
      time: input('time', 't', 'Time since it was new', { min: 0 }),
    },
    result: output('ratio', 'L', 'Share of the capacity that is lost', '%'),
    expression: '(7.543 * U / V1 - 23.75) * 1000000 * exp(-6976 * K1 / T) * (t / d1)^0.75',
    constants: { V1: volt, K1: kelvin, d1: day },
    valid: [voltageOf(), temperatureOf(reachOf.schmalstieg)],
    assumes: [
      'The cell is like the one that was stored, of NMC and graphite: at 35 °C to 50 °C (from memory); what is colder follows by the same law.',
      'The law goes on beyond the time of the tests.',
    ],
    source: schmalstieg,
    compute: ({ voltage, temperature, time }, { V1, K1, d1 }) =>
      ((7.543 * voltage) / V1 - 23.75) * 1e6 * Math.exp((-6976 * K1) / temperature) * (time / d1) ** 0.75,
  }))()

/** What a cell of NMC loses by use, beside what it loses by standing. */
export const schmalstiegCycleLoss = /*@__PURE__*/ (() =>
  formula({
    name: 'schmalstiegCycleLoss',
    title: 'Loss of an NMC cell by use, after Schmalstieg',
    inputs: {
      voltage: input('voltage', 'U', 'Mean voltage of a cycle, at rest', { min: 0 }),
      depth: input('ratio', 'D', 'Depth of a cycle', { min: 0, max: 1 }),
      throughput: input('charge', 'Q', 'Charge that has gone through a cell of 2.05 Ah', { min: 0 }),
    },
    result: output('ratio', 'L', 'Share of the capacity that is lost', '%'),
    expression: '(0.007348 * (U / V1 - 3.667)^2 + 0.00076 + 0.004081 * D) * sqrt(Q / Q1)',
    constants: { V1: volt, Q1: ampereHour },
    valid: [voltageOf()],
    assumes: ['The cell is like the one that was cycled, of NMC and graphite, near 35 °C and 1 C.'],
    source: schmalstieg,
    compute: ({ voltage, depth, throughput }, { V1, Q1 }) =>
      (0.007348 * (voltage / V1 - 3.667) ** 2 + 0.00076 + 0.004081 * depth) * Math.sqrt(throughput / Q1),
  }))()

/** What the resistance of a cell of NMC gains by standing. */
export const schmalstiegCalendarRise = /*@__PURE__*/ (() =>
  formula({
    name: 'schmalstiegCalendarRise',
    title: 'Rise of the resistance of an NMC cell by standing, after Schmalstieg',
    inputs: {
      voltage: input('voltage', 'U', 'Voltage at which it stands', { min: 0 }),
      temperature: input('temperature', 'T', 'Temperature of the cell', { above: 0 }),
      time: input('time', 't', 'Time since it was new', { min: 0 }),
    },
    result: output('ratio', 'r', 'Share by which the resistance has risen', '%'),
    expression: '(5.27 * U / V1 - 16.32) * 100000 * exp(-5986 * K1 / T) * (t / d1)^0.75',
    constants: { V1: volt, K1: kelvin, d1: day },
    valid: [voltageOf(), temperatureOf(reachOf.schmalstieg)],
    assumes: ['The cell is like the one that was stored, of NMC and graphite.'],
    source: schmalstieg,
    compute: ({ voltage, temperature, time }, { V1, K1, d1 }) =>
      ((5.27 * voltage) / V1 - 16.32) * 1e5 * Math.exp((-5986 * K1) / temperature) * (time / d1) ** 0.75,
  }))()

/** What the resistance of a cell of NMC gains by use, beside what it gains by standing. */
export const schmalstiegCycleRise = /*@__PURE__*/ (() =>
  formula({
    name: 'schmalstiegCycleRise',
    title: 'Rise of the resistance of an NMC cell by use, after Schmalstieg',
    inputs: {
      voltage: input('voltage', 'U', 'Mean voltage of a cycle, at rest', { min: 0 }),
      depth: input('ratio', 'D', 'Depth of a cycle', { min: 0, max: 1 }),
      throughput: input('charge', 'Q', 'Charge that has gone through a cell of 2.05 Ah', { min: 0 }),
    },
    result: output('ratio', 'r', 'Share by which the resistance has risen', '%'),
    expression: '(0.0002153 * (U / V1 - 3.725)^2 - 0.00001521 + 0.0002798 * D) * Q / Q1',
    constants: { V1: volt, Q1: ampereHour },
    valid: [voltageOf()],
    assumes: [
      'The cell is like the one that was cycled, of NMC and graphite, near 35 °C and 1 C.',
      'Shallow cycles of half-charged cells lower the resistance a little, as in the tests.',
    ],
    source: schmalstieg,
    compute: ({ voltage, depth, throughput }, { V1, Q1 }) =>
      ((0.0002153 * (voltage / V1 - 3.725) ** 2 - 0.00001521 + 0.0002798 * depth) * throughput) / Q1,
  }))()
