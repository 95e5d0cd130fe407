/**
 * Whole strings side by side: what they feed into one of theirs that has failed.
 *
 * Rests on circuit theory.
 */
import { cite, formula, input, output } from '../../formula/index.js'

/**
 * Current that the other strings feed backwards into one of theirs of which a share of the cells is bypassed.
 *
 * `I = x * E / ((1 - x) * R + R / (n - 1))`
 *
 * - `share` (`x`, a plain number): share of its cells that is bypassed, at least 0 and at most 1
 * - `voltage` (`E`, V): open-circuit voltage of a string, at least 0 V
 * - `resistance` (`R`, mΩ): resistance of a string, above 0 mΩ
 * - `strings` (`n`, a plain number): strings side by side, at least 2
 * - gives `I`: current into the bad string, in A
 * - Assumes: all strings are alike but for the bypassed cells, and nothing else draws or feeds
 * - Caution: the fuses of the good strings carry only their share of it, and may never open: that of the bad string
 *   must
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: circuit theory.
 *
 * @example
 * ```ts
 * crossFeedCurrent({ share: 0.5, voltage: '403.2 V', resistance: '0.64 Ω', strings: 2 })
 * // 210 A
 * // circuit theory, two strings of 403.2 V and 0.64 Ω (exact): 210 A
 * ```
 */
export const crossFeedCurrent = /*@__PURE__*/ formula({
  name: 'crossFeedCurrent',
  title: 'Current that strings feed into a bad one',
  inputs: {
    share: input('ratio', 'x', 'Share of its cells that is bypassed', { min: 0, max: 1 }),
    voltage: input('voltage', 'E', 'Open-circuit voltage of a string', { min: 0 }),
    resistance: input('resistance', 'R', 'Resistance of a string', { above: 0 }),
    strings: input('ratio', 'n', 'Strings side by side', { min: 2 }),
  },
  result: output('current', 'I', 'Current into the bad string'),
  expression: 'x * E / ((1 - x) * R + R / (n - 1))',
  assumes: ['All strings are alike but for the bypassed cells, and nothing else draws or feeds.'],
  cautions: [
    'The fuses of the good strings carry only their share of it, and may never open: that of the bad string must.',
  ],
  source: cite('circuit theory'),
  compute: ({ share, voltage, resistance, strings }) =>
    (share * voltage) / ((1 - share) * resistance + resistance / (strings - 1)),
})
