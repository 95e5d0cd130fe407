/**
 * What a fuse must be rated for, and what it sees in a short circuit.
 *
 * Rests on IEC 60269-1 (rated currents, pre-arcing I²t), NEC 210.20 (continuous load) and circuit theory.
 */
import { cite, constant, definition, formula, input, output } from '../../formula/index.js'

/**
 * Least rated current of a fuse for a continuous load. A load factor of 0.8 is the same as a rating of 1.25 times the
 * load. Near hot parts take the ambient factor from the fuse maker's curve.
 *
 * `In = I / (kl * ka)`
 *
 * - `current` (`I`, A): continuous current, at least 0 A
 * - `loadFactor` (`kl`, a plain number): share of the rating that a continuous load may use, above 0 and at most 1,
 *   0.8 unless given
 * - `ambientFactor` (`ka`, a plain number): share of the rating left at the ambient temperature, above 0, 1 unless
 *   given
 * - gives `In`: least rated current, in A
 * - Caution: the fuse must also be rated for direct current at the full-charge voltage, and break the prospective
 *   current
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: NFPA 70 (NEC), 210.20(A).
 *
 * @example
 * ```ts
 * fuseRating({ current: '130 A' })
 * // 162.5 A
 * // NFPA 70 (NEC), 210.20(A), 125 % of the continuous load (recomputed): 162.5 A
 * ```
 */
export const fuseRating = /*@__PURE__*/ formula({
  name: 'fuseRating',
  title: 'Least rated current of a fuse',
  inputs: {
    current: input('current', 'I', 'Continuous current', { min: 0 }),
    loadFactor: input('ratio', 'kl', 'Share of the rating that a continuous load may use', {
      above: 0,
      max: 1,
      default: 0.8,
    }),
    ambientFactor: input('ratio', 'ka', 'Share of the rating left at the ambient temperature', {
      above: 0,
      default: 1,
      because: 'the fuse sits no warmer than its rating allows',
    }),
  },
  result: output('current', 'In', 'Least rated current'),
  expression: 'I / (kl * ka)',
  cautions: [
    'The fuse must also be rated for direct current at the full-charge voltage, and break the prospective current.',
  ],
  source: cite('NFPA 70 (NEC)', '210.20(A)'),
  compute: ({ current, loadFactor, ambientFactor }) => current / (loadFactor * ambientFactor),
})

/**
 * Greatest rated current of a fuse that protects a cable from overload: it carries the cable's ampacity at most, and
 * opens, within its conventional time, at no more than 1.45 times that.
 *
 * `In = min(1, 1.45 / kf) * Iz`
 *
 * - `ampacity` (`Iz`, A): current that the cable carries all day, at least 0 A
 * - `fusingFactor` (`kf`, a plain number): current at which the fuse opens within its conventional time, over its
 *   rating, above 1, 1.6 unless given
 * - gives `In`: greatest rated current, in A
 * - Assumes: 1.6 is the factor of a gG fuse above 16 A (IEC 60269-1, from memory)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60364-4-43, 433.1, from memory.
 *
 * @example
 * ```ts
 * greatestFuseRating({ ampacity: '110 A' })
 * // 99.69 A
 * // IEC 60364-4-43, 433.1, as guides to it apply it to gG fuses: the cable carries 1.1 times the rating (from
 * // memory): 100 A
 * ```
 */
export const greatestFuseRating = /*@__PURE__*/ formula({
  name: 'greatestFuseRating',
  title: 'Greatest rated current of a fuse on a cable',
  inputs: {
    ampacity: input('current', 'Iz', 'Current that the cable carries all day', { min: 0 }),
    fusingFactor: input(
      'ratio',
      'kf',
      'Current at which the fuse opens within its conventional time, over its rating',
      {
        above: 1,
        default: 1.6,
        because: 'a gG fuse, IEC 60269-1, from memory',
      },
    ),
  },
  result: output('current', 'In', 'Greatest rated current'),
  expression: 'min(1, 1.45 / kf) * Iz',
  assumes: ['1.6 is the factor of a gG fuse above 16 A (IEC 60269-1, from memory).'],
  source: cite('IEC 60364-4-43', '433.1, from memory'),
  compute: ({ ampacity, fusingFactor }) => Math.min(1, 1.45 / fusingFactor) * ampacity,
})

/**
 * Current that a dead short circuit would settle at. The full, warm, new pack gives the highest, which the fuse must
 * break; the empty, cold, aged one behind the longest cable gives the lowest, which must still melt it.
 *
 * `Ip = U / (Rs + Rl)`
 *
 * - `voltage` (`U`, V): open-circuit voltage of the pack, at least 0 V
 * - `sourceResistance` (`Rs`, mΩ): resistance of the pack, above 0 mΩ
 * - `loopResistance` (`Rl`, mΩ): resistance of cables, joints and fuse, at least 0 mΩ
 * - gives `Ip`: prospective current, in A
 * - Caution: work it out; never measure it by making a short circuit, whose arc burns and blinds
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * prospectiveCurrent({ voltage: '240 V', sourceResistance: '55 mΩ', loopResistance: '0 Ω' })
 * // 4364 A
 * // course exercise, 110 cells of 0.5 mΩ in series (read): 4.37 kA
 * ```
 */
export const prospectiveCurrent = /*@__PURE__*/ formula({
  name: 'prospectiveCurrent',
  title: 'Prospective short-circuit current',
  inputs: {
    voltage: input('voltage', 'U', 'Open-circuit voltage of the pack', { min: 0 }),
    sourceResistance: input('resistance', 'Rs', 'Resistance of the pack', { above: 0 }),
    loopResistance: input('resistance', 'Rl', 'Resistance of cables, joints and fuse', { min: 0 }),
  },
  result: output('current', 'Ip', 'Prospective current'),
  expression: 'U / (Rs + Rl)',
  cautions: ['Work it out; never measure it by making a short circuit, whose arc burns and blinds.'],
  source: definition,
  compute: ({ voltage, sourceResistance, loopResistance }) => voltage / (sourceResistance + loopResistance),
})

/**
 * Time constant with which a fault current rises. A fuse's direct-current voltage rating holds up to a stated time
 * constant; the current has reached 95 % after three of them.
 *
 * `tau = L / R`
 *
 * - `inductance` (`L`, µH): inductance of the loop, at least 0 µH
 * - `resistance` (`R`, mΩ): resistance of the loop, above 0 mΩ
 * - gives `tau`: time constant, in ms
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * faultTimeConstant({ inductance: '20 µH', resistance: '100 mΩ' })
 * // 0.2 ms
 * // by definition (exact): 0.2 ms
 * ```
 */
export const faultTimeConstant = /*@__PURE__*/ formula({
  name: 'faultTimeConstant',
  title: 'Time constant of a fault loop',
  inputs: {
    inductance: input('inductance', 'L', 'Inductance of the loop', { min: 0 }),
    resistance: input('resistance', 'R', 'Resistance of the loop', { above: 0 }),
  },
  result: output('time', 'tau', 'Time constant', 'ms'),
  expression: 'L / R',
  source: definition,
  compute: ({ inductance, resistance }) => inductance / resistance,
})

/**
 * Share of its rating that the heat around leaves a fuse that is rated in cooler air: a link gives off heat in
 * proportion to its rise, and makes it with the square of the current.
 *
 * `ka = min(1, sqrt((Tm - Ta) / (Tm - T0)))`
 *
 * - `ambient` (`Ta`, °C): temperature of the air around the fuse, at most 85 °C
 * - `limit` (`Tm`, °C): temperature at which it carries nothing any more, at least 90 °C, 130 °C unless given
 * - `reference` (`T0`, °C): temperature of the air for which it is rated, at most 40 °C, 25 °C unless given
 * - gives `ka`: share of its rating, in a plain number
 * - Assumes: cooler air than that of its rating lets it carry no more
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: guides of makers of semiconductor fuses.
 *
 * @example
 * ```ts
 * fuseAmbientFactor({ ambient: '60 °C' })
 * // 0.8165
 * // guide of a maker of semiconductor fuses, limit of 130 °C, rated at 25 °C (recomputed): 0.816
 * ```
 */
export const fuseAmbientFactor = /*@__PURE__*/ formula({
  name: 'fuseAmbientFactor',
  title: 'Share of its rating that the heat around leaves a fuse',
  inputs: {
    ambient: input('temperature', 'Ta', 'Temperature of the air around the fuse', { max: '85 °C' }),
    limit: input('temperature', 'Tm', 'Temperature at which it carries nothing any more', {
      min: '90 °C',
      default: '130 °C',
    }),
    reference: input('temperature', 'T0', 'Temperature of the air for which it is rated', {
      max: '40 °C',
      default: '25 °C',
    }),
  },
  result: output('ratio', 'ka', 'Share of its rating'),
  expression: 'min(1, sqrt((Tm - Ta) / (Tm - T0)))',
  assumes: ['Cooler air than that of its rating lets it carry no more.'],
  source: cite('guides of makers of semiconductor fuses'),
  compute: ({ ambient, limit, reference }) => Math.min(1, Math.sqrt((limit - ambient) / (limit - reference))),
})

/**
 * Share of its rating that the thin air of a height leaves a fuse: 0.5 % less for every 100 m above 2000 m.
 *
 * `kh = min(1, 1 - (h - h0) / h1)`
 *
 * - `altitude` (`h`, m): height above the sea, at most 5000 m
 * - gives `kh`: share of its rating, in a plain number
 * - `h0` = 2000 m: height up to which ratings hold (guides of fuse makers)
 * - `h1` = 20000 m: height over which nothing would be left (guides of fuse makers)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: guides of fuse makers.
 *
 * @example
 * ```ts
 * fuseAltitudeFactor({ altitude: '3 km' })
 * // 0.95
 * // guide of a fuse maker, a fuse of 30 A carries 28.5 A at 3000 m (read): 0.95
 * ```
 */
export const fuseAltitudeFactor = /*@__PURE__*/ formula({
  name: 'fuseAltitudeFactor',
  title: 'Share of its rating that thin air leaves a fuse',
  inputs: { altitude: input('length', 'h', 'Height above the sea', { max: '5000 m' }) },
  result: output('ratio', 'kh', 'Share of its rating'),
  expression: 'min(1, 1 - (h - h0) / h1)',
  constants: {
    h0: constant('length', '2000 m', 'Height up to which ratings hold', cite('guides of fuse makers')),
    h1: constant('length', '20000 m', 'Height over which nothing would be left', cite('guides of fuse makers')),
  },
  source: cite('guides of fuse makers'),
  compute: ({ altitude }, { h0, h1 }) => Math.min(1, 1 - (altitude - h0) / h1),
})

/**
 * Inductance of a run of two round conductors side by side, out and back.
 *
 * `L = L1 * l / l1 * (log(s / r) + 0.25)`
 *
 * - `length` (`l`, m): one-way length of the run, at least 0 m
 * - `spacing` (`s`, m): distance between the centres of the conductors, above 0 m
 * - `radius` (`r`, m): radius of a conductor, above 0 m
 * - gives `L`: inductance of the loop, in µH
 * - `L1` = 0.4 µH: magnetic constant over pi, of each metre (SI)
 * - `l1` = 1 m: the metre (SI)
 * - holds where spacing / (2 * radius) is at least 1
 * - Assumes: the current is spread evenly over the conductor, as direct current is
 * - Assumes: the run is long against the distance
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Grover, Inductance Calculations, chapter 5 (from memory).
 *
 * @example
 * ```ts
 * loopInductance({ length: '1 m', spacing: '20 mm', radius: '5 mm' })
 * // 0.6545 µH
 * // Grover, Inductance Calculations, 0.4 µH for each metre times ln 4 + 1/4 (from memory): 0.6545 µH
 * ```
 */
export const loopInductance = /*@__PURE__*/ formula({
  name: 'loopInductance',
  title: 'Inductance of a run of two conductors',
  inputs: {
    length: input('length', 'l', 'One-way length of the run', { min: 0 }),
    spacing: input('length', 's', 'Distance between the centres of the conductors', { above: 0 }),
    radius: input('length', 'r', 'Radius of a conductor', { above: 0 }),
  },
  result: output('inductance', 'L', 'Inductance of the loop'),
  expression: 'L1 * l / l1 * (log(s / r) + 0.25)',
  constants: {
    L1: constant('inductance', '0.4 µH', 'Magnetic constant over pi, of each metre', cite('SI')),
    l1: constant('length', '1 m', 'The metre', cite('SI')),
  },
  valid: [
    {
      of: 'spacing / (2 * radius)',
      kind: 'ratio',
      value: ({ spacing, radius }) => spacing / (2 * radius),
      min: 1,
    },
  ],
  assumes: [
    'The current is spread evenly over the conductor, as direct current is.',
    'The run is long against the distance.',
  ],
  source: cite('Grover, Inductance Calculations', 'chapter 5 (from memory)'),
  compute: ({ length, spacing, radius }, { L1, l1 }) => ((L1 * length) / l1) * (Math.log(spacing / radius) + 0.25),
})

/**
 * Time in which a fuse melts at a high fault current. It holds while no heat leaves the element, up to the 10 ms for
 * which the melting integral is stated; beyond, read the maker's time–current curve. Arcing comes on top.
 *
 * `t = I2t / I^2`
 *
 * - `meltingIntegral` (`I2t`, A²·s): melting (pre-arcing) Joule integral, above 0 A²·s
 * - `current` (`I`, A): fault current, above 0 A
 * - gives `t`: melting time, in ms
 * - holds where meltingIntegral / current^2 is at most 0.01
 * - Assumes: the current is steady while the element melts
 * - Assumes: no heat leaves the element
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60269-1, pre-arcing I²t, stated at 0.01 s; from memory.
 *
 * @example
 * ```ts
 * meltingTime({ meltingIntegral: '25000 A²·s', current: '5 kA' })
 * // 1 ms
 * // by definition (exact): 1 ms
 * ```
 */
export const meltingTime = /*@__PURE__*/ formula({
  name: 'meltingTime',
  title: 'Melting time of a fuse',
  inputs: {
    meltingIntegral: input('jouleIntegral', 'I2t', 'Melting (pre-arcing) Joule integral', { above: 0 }),
    current: input('current', 'I', 'Fault current', { above: 0 }),
  },
  result: output('time', 't', 'Melting time', 'ms'),
  expression: 'I2t / I^2',
  valid: [
    {
      of: 'meltingIntegral / current^2',
      kind: 'time',
      value: ({ meltingIntegral, current }) => meltingIntegral / current ** 2,
      max: 0.01,
    },
  ],
  assumes: ['The current is steady while the element melts.', 'No heat leaves the element.'],
  source: cite('IEC 60269-1', 'pre-arcing I²t, stated at 0.01 s; from memory'),
  compute: ({ meltingIntegral, current }) => meltingIntegral / current ** 2,
})
