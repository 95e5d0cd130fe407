/**
 * Bodies of one temperature: how they warm and cool, and what that costs.
 *
 * Rests on Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, chapter 5.
 */
import { cite, definition, formula, input, output } from '../formula/index.js'
import { quantity } from '../quantity/index.js'

/**
 * Time in which a body covers 63 % of the way to its final temperature. It covers 95 % in three such times.
 *
 * `tau = C / G`
 *
 * - `heatCapacity` (`C`, kJ/K): heat capacity of the body, at least 0 kJ/K
 * - `conductance` (`G`, W/K): conductance from the body to its surroundings, above 0 W/K
 * - gives `tau`: time constant, in h
 * - Assumes: the body has one temperature (a Biot number below 0.1)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 *
 * @example
 * ```ts
 * thermalTimeConstant({ heatCapacity: '150 kJ/K', conductance: '8 W/K' })
 * // 5.208 h
 * // by definition (exact): 5.2083 h
 * ```
 */
export const thermalTimeConstant = /*@__PURE__*/ formula({
  name: 'thermalTimeConstant',
  title: 'Thermal time constant',
  inputs: {
    heatCapacity: input('heatCapacity', 'C', 'Heat capacity of the body', { min: 0 }),
    conductance: input('thermalConductance', 'G', 'Conductance from the body to its surroundings', { above: 0 }),
  },
  result: output('time', 'tau', 'Time constant', 'h'),
  expression: 'C / G',
  assumes: ['The body has one temperature (a Biot number below 0.1).'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
  compute: ({ heatCapacity, conductance }) => heatCapacity / conductance,
})

/**
 * Temperature at which a body ends, with steady heat from within: that at which it loses as much as is put in.
 *
 * `T = Ta + P / G`
 *
 * - `surroundings` (`Ta`, °C): temperature of the surroundings
 * - `power` (`P`, kW): heat put into the body
 * - `conductance` (`G`, W/K): conductance from the body to its surroundings, above 0 W/K
 * - gives `T`: temperature in the end, in °C
 * - Assumes: heat and surroundings are steady
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 *
 * @example
 * ```ts
 * steadyTemperature({ surroundings: '-10 °C', power: '1500 W', conductance: '8 W/K' })
 * // 177.5 °C
 * // by definition (exact): 177.5 °C
 * ```
 */
export const steadyTemperature = /*@__PURE__*/ formula({
  name: 'steadyTemperature',
  title: 'Temperature of a body in the end',
  inputs: {
    surroundings: input('temperature', 'Ta', 'Temperature of the surroundings'),
    power: input('power', 'P', 'Heat put into the body'),
    conductance: input('thermalConductance', 'G', 'Conductance from the body to its surroundings', { above: 0 }),
  },
  result: output('temperature', 'T', 'Temperature in the end'),
  expression: 'Ta + P / G',
  assumes: ['Heat and surroundings are steady.'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
  compute: ({ surroundings, power, conductance }) => surroundings + power / conductance,
})

/**
 * Temperature of a body after a time in steady surroundings, with steady heat from within. Cooling from within is a
 * negative power.
 *
 * `T = Ta + P / G + (Ti - Ta - P / G) * exp(-t / tau)`
 *
 * - `initial` (`Ti`, °C): temperature at the start
 * - `surroundings` (`Ta`, °C): temperature of the surroundings
 * - `time` (`t`, s): time since the start, at least 0 s
 * - `timeConstant` (`tau`, s): time constant of the body, above 0 s
 * - `power` (`P`, kW): heat put into the body, 0 W unless given
 * - `conductance` (`G`, W/K): conductance from the body to its surroundings, above 0 W/K
 * - gives `T`: temperature after the time, in °C
 * - Assumes: the body has one temperature (a Biot number below 0.1)
 * - Assumes: heat and surroundings are steady
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 *
 * @example
 * ```ts
 * lumpedTemperature({
 *   initial: '25 °C',
 *   surroundings: '-10 °C',
 *   time: '8 h',
 *   timeConstant: '18750 s',
 *   conductance: '8 W/K',
 * })
 * // -2.467 °C
 * // by definition (exact): -2.467 °C
 * ```
 */
export const lumpedTemperature = /*@__PURE__*/ formula({
  name: 'lumpedTemperature',
  title: 'Temperature of a body after a time',
  inputs: {
    initial: input('temperature', 'Ti', 'Temperature at the start'),
    surroundings: input('temperature', 'Ta', 'Temperature of the surroundings'),
    time: input('time', 't', 'Time since the start', { min: 0 }),
    timeConstant: input('time', 'tau', 'Time constant of the body', { above: 0 }),
    power: input('power', 'P', 'Heat put into the body', { default: '0 W' }),
    conductance: input('thermalConductance', 'G', 'Conductance from the body to its surroundings', { above: 0 }),
  },
  result: output('temperature', 'T', 'Temperature after the time'),
  expression: 'Ta + P / G + (Ti - Ta - P / G) * exp(-t / tau)',
  assumes: ['The body has one temperature (a Biot number below 0.1).', 'Heat and surroundings are steady.'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
  compute: ({ initial, surroundings, time, timeConstant, power, conductance }) =>
    surroundings +
    power / conductance +
    (initial - surroundings - power / conductance) * Math.exp(-time / timeConstant),
})

/**
 * Time in which a body in steady surroundings comes to a temperature between where it starts and where they are.
 *
 * `t = tau * log((Ti - Ta) / (T - Ta))`
 *
 * - `initial` (`Ti`, °C): temperature at the start
 * - `surroundings` (`Ta`, °C): temperature of the surroundings
 * - `target` (`T`, °C): temperature to come to
 * - `timeConstant` (`tau`, s): time constant of the body, at least 0 s
 * - gives `t`: time, in s
 * - holds where abs(initial - surroundings) is above 0
 * - holds where (target - surroundings) / (initial - surroundings) is above 0 and at most 1
 * - Assumes: the body has one temperature (a Biot number below 0.1)
 * - Assumes: no heat is put in, and the surroundings are steady
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 *
 * @example
 * ```ts
 * lumpedTime({ initial: '25 °C', surroundings: '200 °C', target: '199 °C', timeConstant: '1 s' })
 * // 5.165 s
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 5.1 (read): 5.16 s
 * ```
 */
export const lumpedTime = /*@__PURE__*/ formula({
  name: 'lumpedTime',
  title: 'Time in which a body comes to a temperature',
  inputs: {
    initial: input('temperature', 'Ti', 'Temperature at the start'),
    surroundings: input('temperature', 'Ta', 'Temperature of the surroundings'),
    target: input('temperature', 'T', 'Temperature to come to'),
    timeConstant: input('time', 'tau', 'Time constant of the body', { min: 0 }),
  },
  result: output('time', 't', 'Time'),
  expression: 'tau * log((Ti - Ta) / (T - Ta))',
  valid: [
    {
      of: 'abs(initial - surroundings)',
      kind: 'temperatureDifference',
      value: ({ initial, surroundings }) => Math.abs(initial - surroundings),
      above: 0,
    },
    {
      of: '(target - surroundings) / (initial - surroundings)',
      value: ({ initial, surroundings, target }) => (target - surroundings) / (initial - surroundings),
      above: 0,
      max: 1,
    },
  ],
  assumes: [
    'The body has one temperature (a Biot number below 0.1).',
    'No heat is put in, and the surroundings are steady.',
  ],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
  compute: ({ initial, surroundings, target, timeConstant }) =>
    timeConstant * Math.log((initial - surroundings) / (target - surroundings)),
})

/**
 * Biot number: resistance to heat inside a body over that at its surface. Below 0.1 the body may be taken to have one
 * temperature. The length is volume over surface: a sixth of the diameter of a sphere, half the thickness of a plate
 * cooled on both sides.
 *
 * `Bi = h * L / k`
 *
 * - `coefficient` (`h`, W/(m²·K)): heat transfer coefficient at the surface, at least 0 W/(m²·K)
 * - `length` (`L`, m): volume of the body over its surface, at least 0 m
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the body, above 0 W/(m·K)
 * - gives `Bi`: biot number, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 *
 * @example
 * ```ts
 * biotNumber({ coefficient: '400 W/(m²·K)', length: '0.11765 mm', conductivity: '20 W/(m·K)' })
 * // 0.002353
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 5.1 (read): 0.00235
 * ```
 */
export const biotNumber = /*@__PURE__*/ formula({
  name: 'biotNumber',
  title: 'Biot number',
  inputs: {
    coefficient: input('heatTransferCoefficient', 'h', 'Heat transfer coefficient at the surface', { min: 0 }),
    length: input('length', 'L', 'Volume of the body over its surface', { min: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the body', { above: 0 }),
  },
  result: output('ratio', 'Bi', 'Biot number'),
  expression: 'h * L / k',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
  compute: ({ coefficient, length, conductivity }) => (coefficient * length) / conductivity,
})

/**
 * Heat that a body takes up for each kelvin that it warms. For a pack, add the capacities of cells, boxes and
 * coolant.
 *
 * `C = m * c`
 *
 * - `mass` (`m`, kg): mass, at least 0 kg
 * - `specificHeat` (`c`, J/(kg·K)): specific heat, at least 0 J/(kg·K)
 * - gives `C`: heat capacity, in kJ/K
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * heatCapacity({ mass: '1 kg', specificHeat: '4184.1 J/(kg·K)' })
 * // 4.184 kJ/K
 * // by definition (exact): 4.1841 kJ/K
 * ```
 */
export const heatCapacity = /*@__PURE__*/ formula({
  name: 'heatCapacity',
  title: 'Heat capacity of a body',
  inputs: {
    mass: input('mass', 'm', 'Mass', { min: 0 }),
    specificHeat: input('specificHeat', 'c', 'Specific heat', { min: 0 }),
  },
  result: output('heatCapacity', 'C', 'Heat capacity'),
  expression: 'm * c',
  source: definition,
  compute: ({ mass, specificHeat }) => mass * specificHeat,
})

/**
 * Heat that warms a mass, with none lost on the way.
 *
 * `Q = m * c * (T2 - T1)`
 *
 * - `mass` (`m`, kg): mass, at least 0 kg
 * - `specificHeat` (`c`, J/(kg·K)): specific heat, at least 0 J/(kg·K)
 * - `from` (`T1`, °C): temperature at the start
 * - `to` (`T2`, °C): temperature at the end
 * - gives `Q`: heat put in, in kWh
 * - holds where to - from is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * heatToWarm({ mass: '150 kg', specificHeat: '1000 J/(kg·K)', from: '-10 °C', to: '10 °C' })
 * // 0.8333 kWh
 * // by definition (exact): 0.83333 kWh
 * ```
 */
export const heatToWarm = /*@__PURE__*/ formula({
  name: 'heatToWarm',
  title: 'Heat to warm a mass',
  inputs: {
    mass: input('mass', 'm', 'Mass', { min: 0 }),
    specificHeat: input('specificHeat', 'c', 'Specific heat', { min: 0 }),
    from: input('temperature', 'T1', 'Temperature at the start'),
    to: input('temperature', 'T2', 'Temperature at the end'),
  },
  result: output('energy', 'Q', 'Heat put in'),
  expression: 'm * c * (T2 - T1)',
  valid: [{ of: 'to - from', kind: 'temperatureDifference', value: ({ from, to }) => to - from, min: 0 }],
  source: definition,
  compute: ({ mass, specificHeat, from, to }) => mass * specificHeat * (to - from),
})

/**
 * Energy that a heater takes in a time.
 *
 * `E = P * t`
 *
 * - `power` (`P`, kW): power of the heater, at least 0 kW
 * - `time` (`t`, s): time that it is on, at least 0 s
 * - gives `E`: energy taken, in kWh
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * heaterEnergy({ power: '1500 W', time: '2114.9 s' })
 * // 0.8812 kWh
 * // by definition (recomputed): 0.88121 kWh
 * ```
 */
export const heaterEnergy = /*@__PURE__*/ formula({
  name: 'heaterEnergy',
  title: 'Energy of a heater',
  inputs: {
    power: input('power', 'P', 'Power of the heater', { min: 0 }),
    time: input('time', 't', 'Time that it is on', { min: 0 }),
  },
  result: output('energy', 'E', 'Energy taken'),
  expression: 'P * t',
  source: definition,
  compute: ({ power, time }) => power * time,
})

/**
 * Time in which a steady heater warms a body that loses heat to its surroundings. The heater must be able to hold the
 * body above the target: in the end it holds it at the surroundings' temperature plus power over conductance.
 *
 * `t = C / G * log1p((T2 - T1) / (Ta + P / G - T2))`
 *
 * - `heatCapacity` (`C`, kJ/K): heat capacity of the body, at least 0 kJ/K
 * - `conductance` (`G`, W/K): conductance from the body to its surroundings, above 0 W/K
 * - `power` (`P`, kW): power of the heater, at least 0 kW
 * - `from` (`T1`, °C): temperature at the start
 * - `to` (`T2`, °C): temperature to come to
 * - `surroundings` (`Ta`, °C): temperature of the surroundings
 * - gives `t`: warm-up time, in min
 * - holds where to - from is at least 0
 * - holds where surroundings + power / conductance - to is above 0
 * - Assumes: the body has one temperature (a Biot number below 0.1)
 * - Assumes: heat and surroundings are steady
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 *
 * @example
 * ```ts
 * warmUpTime({
 *   heatCapacity: '150 kJ/K',
 *   conductance: '8 W/K',
 *   power: '1500 W',
 *   from: '-10 °C',
 *   to: '10 °C',
 *   surroundings: '-10 °C',
 * })
 * // 35.25 min
 * // by definition (exact): 2114.9 s
 * ```
 */
export const warmUpTime = /*@__PURE__*/ formula({
  name: 'warmUpTime',
  title: 'Warm-up time',
  inputs: {
    heatCapacity: input('heatCapacity', 'C', 'Heat capacity of the body', { min: 0 }),
    conductance: input('thermalConductance', 'G', 'Conductance from the body to its surroundings', { above: 0 }),
    power: input('power', 'P', 'Power of the heater', { min: 0 }),
    from: input('temperature', 'T1', 'Temperature at the start'),
    to: input('temperature', 'T2', 'Temperature to come to'),
    surroundings: input('temperature', 'Ta', 'Temperature of the surroundings'),
  },
  result: output('time', 't', 'Warm-up time', 'min'),
  // ln(1 + x) keeps its digits where hardly any heat is lost and x is small.
  expression: 'C / G * log1p((T2 - T1) / (Ta + P / G - T2))',
  valid: [
    { of: 'to - from', kind: 'temperatureDifference', value: ({ from, to }) => to - from, min: 0 },
    {
      of: 'surroundings + power / conductance - to',
      kind: 'temperatureDifference',
      value: ({ surroundings, power, conductance, to }) => surroundings + power / conductance - to,
      above: 0,
      otherwise: ({ surroundings, power, conductance, to }) =>
        `the heater never brings the body to ${celsius(to)}: in the end it reaches ${celsius(surroundings + power / conductance)}`,
    },
  ],
  assumes: ['The body has one temperature (a Biot number below 0.1).', 'Heat and surroundings are steady.'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
  compute: ({ heatCapacity, conductance, power, from, to, surroundings }) =>
    (heatCapacity / conductance) * Math.log1p((to - from) / (surroundings + power / conductance - to)),
})

function celsius(kelvins: number): string {
  return String(quantity('temperature', kelvins, 'K').as('°C'))
}
