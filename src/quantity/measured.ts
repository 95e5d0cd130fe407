/** A measured value and how uncertain it is, in one text. */
import { type InputIssue, shown } from './errors.js'
import { type DifferenceOf, differenceOf, type Kind, kinds, type UnitOf } from './kinds.js'
import { fromSi, type Given, type Quantity } from './quantity.js'
import { issueWith, kindInWords, plusMinus, type ReadValue, readValue } from './read.js'

/** How the sign is written. @internal */
export type PlusMinus = '±' | '+/-'
type Share = `${number} %` | `${number}%`

/**
 * What a function accepts where a value may say how uncertain it is: the value alone, or text such as
 * `'0.74 m² ± 0.05 m²'` or `'0.74 m² ± 7 %'`.
 *
 * What follows ± (or `+/-`) is the expanded uncertainty with a coverage factor of 2 (JCGM 100:2008, 7.2.3): twice the
 * standard uncertainty, about 95 % of what to expect if normal. It has its own unit, or it is a share of the value
 * in %. For a temperature it is a temperature difference, `'20 °C ± 2 K'`, and never a share. A ratio is a plain number
 * here: `'0.013 ± 0.001'`, or `'0.013 ± 10 %'`, which is 10 % of 0.013.
 */
export type Measured<K extends Kind> =
  | Given<K>
  | (K extends 'ratio'
      ? `${number} ${PlusMinus} ${number}` | `${number} ${PlusMinus} ${Share}`
      :
          | `${number} ${UnitOf<K>} ${PlusMinus} ${number} ${UnitOf<DifferenceOf<K>>}`
          | (K extends 'temperature' ? never : `${number} ${UnitOf<K>} ${PlusMinus} ${Share}`))

/** What was read of a text with an uncertainty. @internal */
export interface MeasuredValue<K extends Kind = Kind> {
  readonly value: Quantity<K>
  /** Half of what follows ±. */
  readonly standardUncertainty: Quantity<DifferenceOf<K>>
}

/** The text before ± and after it, or undefined where there is no ±. */
function splitMeasured(given: unknown): readonly string[] | undefined {
  if (typeof given !== 'string' || !plusMinus.test(given)) return undefined
  return given.split(plusMinus).map((part, i) => part.replace(i === 0 ? /[ \u00a0\u202f]$/ : /^[ \u00a0\u202f]/, ''))
}

/** The value of a measured text as it is written, without its uncertainty; undefined where it has none. @internal */
export function valueText(given: unknown): string | undefined {
  return splitMeasured(given)?.[0]
}

/**
 * Reads a value with its uncertainty as a kind: undefined where the value is not text with a ±, which is read as any
 * other, and what is wrong, without its path, where it cannot be used.
 *
 * @internal
 */
export function readMeasured<K extends Kind>(kind: K, given: unknown): MeasuredValue<K> | InputIssue | undefined {
  const parts = splitMeasured(given)
  if (parts === undefined) return undefined
  const [before, after] = parts as [string, string]
  const refused = (hint: string): InputIssue => {
    const uncertainty = kind === 'temperature' ? '2 K' : '5 %'
    const expected = `${kindInWords(kind)} with its uncertainty such as '${kinds[kind].example} ± ${uncertainty}'`
    return { path: '', expected, received: shown(given), hint }
  }
  if (parts.length > 2) return refused('write ± once')
  if (before.startsWith('(')) return refused('write the unit beside both numbers, without brackets')
  const value = readValue(kind, before)
  if (value === undefined) return refused(`before ±: ${issueWith('', kind, before).hint}`)
  const difference = differenceOf(kind)
  const share = after.endsWith('%') ? readValue('ratio', after) : undefined
  const stated = share ?? readValue(difference, after)
  if (stated === undefined) return refused(`after ±: ${issueWith('', difference, after).hint}`)
  if (stated.si < 0) return refused('write the uncertainty without a sign')
  if (stated.si === 0) return refused(`leave it out where the value is exact: '${before}'`)
  if (share !== undefined && kind === 'temperature') {
    return refused('write the uncertainty of a temperature in K: a share would depend on where its zero is')
  }
  if (share !== undefined && value.si === 0) return refused('a share of zero is zero: write the uncertainty without %')
  const expanded = share === undefined ? stated.si : Math.abs(value.si) * share.si
  if (expanded / 2 === 0 || !Number.isFinite(Math.abs(value.si) + expanded)) {
    return refused('that is more, or closer to zero, than a number can hold')
  }
  if (value.scale.symbol === '%') return refused(asPlainNumber(value, stated, expanded))
  const { symbol } = share === undefined ? stated.scale : value.scale
  return {
    value: fromSi(kind, value.si, value.scale.symbol),
    standardUncertainty: fromSi(difference, expanded / 2, symbol),
  }
}

/** How a ratio in % with an uncertainty is written so that it can be read in one way only. */
function asPlainNumber(value: ReadValue, stated: ReadValue, expanded: number): string {
  const within = (uncertainty: number) =>
    [-1, 1].map((sign) => fromSi('ratio', value.si + sign * uncertainty, '%')).join(' to ')
  const absolute = `'${value.si} ± ${stated.si}' for ${within(stated.si)}`
  if (stated.scale.symbol !== '%') return `write the ratio as a plain number: ${absolute}`
  const share = `'${value.si} ± ${fromSi('ratio', stated.si, '%')}' for ${within(expanded)}`
  return `that can be read in two ways: write ${absolute}, or ${share}`
}
