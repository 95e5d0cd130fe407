/**
 * What a fuse must be rated for, and what it sees in a short circuit.
 *
 * Rests on IEC 60269-1 (rated currents, pre-arcing I²t), NEC 210.20 (continuous load) and circuit theory.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'

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

/**
 * Rated currents of fuse-links in IEC 60269-1, which follow the R10 series, with 6, 12 and 32 A for its 6.3, 12.5
 * and 31.5 A. From memory.
 */
export const preferredRatings: readonly Quantity<'current'>[] = /*@__PURE__*/ [
  2, 4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250,
].map((rating) => quantity('current', rating, 'A'))
