/**
 * Short-time ratings: how much more than its continuous power a motor may give for a while before it is as hot as its
 * continuous power makes it in the end.
 *
 * Rests on Dubey, Fundamentals of Electrical Drives, chapter 4, and on the one-body response of lumped.ts. The duties are
 * S2 and S3 of IEC 60034-1.
 */
import { cite, formula, input, output } from '../formula/index.js'

const dubey = /*@__PURE__*/ cite('Dubey, Fundamentals of Electrical Drives', 'chapter 4')
const loss = 'All of the loss grows as the square of the power; a loss that does not leaves a little more.'
const only = 'Heat alone is the limit, not current, magnets or shaft.'

/**
 * Power that a motor may give once for a while, starting as cold as its surroundings, such as on a hill after a rest.
 * The thermal time constant is that of the winding and what it warms, minutes for a small motor in air; measure it,
 * or ask the maker, whose own short-time rating comes first.
 *
 * `P = Pc / sqrt(-expm1(-t / tau))`
 *
 * - `continuousPower` (`Pc`, kW): power that it may give for ever, at least 0 kW
 * - `time` (`t`, s): time for which it gives the greater power, above 0 s
 * - `timeConstant` (`tau`, s): time constant of its warming, above 0 s
 * - gives `P`: power for that time, in kW
 * - Assumes: it starts as cold as its surroundings
 * - Assumes: all of the loss grows as the square of the power; a loss that does not leaves a little more
 * - Assumes: heat alone is the limit, not current, magnets or shaft
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Dubey, Fundamentals of Electrical Drives, chapter 4.
 *
 * @example
 * ```ts
 * shortTimePower({ continuousPower: '20 kW', time: '10 min', timeConstant: '60 min' })
 * // 51.04 kW
 * // Dubey, Fundamentals of Electrical Drives, 2nd edition, example 4.4 (read): 51.04 kW
 * ```
 */
export const shortTimePower = /*@__PURE__*/ formula({
  name: 'shortTimePower',
  title: 'Short-time power of a motor',
  inputs: {
    continuousPower: input('power', 'Pc', 'Power that it may give for ever', { min: 0 }),
    time: input('time', 't', 'Time for which it gives the greater power', { above: 0 }),
    timeConstant: input('time', 'tau', 'Time constant of its warming', { above: 0 }),
  },
  result: output('power', 'P', 'Power for that time'),
  expression: 'Pc / sqrt(-expm1(-t / tau))',
  assumes: ['It starts as cold as its surroundings.', loss, only],
  source: dubey,
  compute: ({ continuousPower, time, timeConstant }) => continuousPower / Math.sqrt(-Math.expm1(-time / timeConstant)),
})

/**
 * Power that a motor may give again and again, with a rest after each time, such as from stop to stop. At rest its
 * fan or its coolant may stand still, so that it cools more slowly than it warmed.
 *
 * `P = Pc * sqrt(expm1(-t / tau - r / taur) / expm1(-t / tau))`
 *
 * - `continuousPower` (`Pc`, kW): power that it may give for ever, at least 0 kW
 * - `time` (`t`, s): time for which it gives the greater power, above 0 s
 * - `rest` (`r`, s): time of rest after it, at least 0 s
 * - `timeConstant` (`tau`, s): time constant of its warming, above 0 s
 * - `restingTimeConstant` (`taur`, s): time constant of its cooling at rest, above 0 s
 * - gives `P`: power for each time, in kW
 * - Assumes: the motor has gone through the same round so often that it repeats itself
 * - Assumes: all of the loss grows as the square of the power; a loss that does not leaves a little more
 * - Assumes: heat alone is the limit, not current, magnets or shaft
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Dubey, Fundamentals of Electrical Drives, chapter 4.
 *
 * @example
 * ```ts
 * intermittentPower({
 *   continuousPower: '20 kW',
 *   time: '10 min',
 *   rest: '10 min',
 *   timeConstant: '60 min',
 *   restingTimeConstant: '90 min',
 * })
 * // 25.14 kW
 * // Dubey, Fundamentals of Electrical Drives, 2nd edition, example 4.4 (read): 25.14 kW
 * ```
 */
export const intermittentPower = /*@__PURE__*/ formula({
  name: 'intermittentPower',
  title: 'Intermittent power of a motor',
  inputs: {
    continuousPower: input('power', 'Pc', 'Power that it may give for ever', { min: 0 }),
    time: input('time', 't', 'Time for which it gives the greater power', { above: 0 }),
    rest: input('time', 'r', 'Time of rest after it', { min: 0 }),
    timeConstant: input('time', 'tau', 'Time constant of its warming', { above: 0 }),
    restingTimeConstant: input('time', 'taur', 'Time constant of its cooling at rest', { above: 0 }),
  },
  result: output('power', 'P', 'Power for each time'),
  expression: 'Pc * sqrt(expm1(-t / tau - r / taur) / expm1(-t / tau))',
  assumes: ['The motor has gone through the same round so often that it repeats itself.', loss, only],
  source: dubey,
  compute: ({ continuousPower, time, rest, timeConstant, restingTimeConstant }) =>
    continuousPower *
    Math.sqrt(Math.expm1(-time / timeConstant - rest / restingTimeConstant) / Math.expm1(-time / timeConstant)),
})
