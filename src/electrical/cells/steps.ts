/** Steps of the current in the log of a test, and the resistance that each tells. */
import { stepResistance } from './health.js'
import type { TestLog } from './log.js'

/** A step of the current, in SI numbers. @internal */
export interface Step {
  /** The last row before the step, and its line. */
  readonly row: number
  readonly line: number
  /** Positive where more is drawn. */
  readonly step: number
  /** Negative where the voltage goes the wrong way. */
  readonly resistance: number
  /** Share of the discharge that was still to come. */
  readonly left: number
}

/** A step is at least this share of the greatest current, and within this share of it the current is steady. Common practice, no source. */
const [GREAT, STEADY] = [0.2, 0.05] as const
/** The voltage is read at most so much later than asked, where no row is nearer. */
const LATE = 1.5

/** The steps before and behind which the current is steady for the time that is asked. @internal */
export function stepsIn(
  { times, voltages, lines }: TestLog,
  currents: readonly number[],
  after: number,
  most: number,
): Omit<Step, 'left'>[] {
  const at = (numbers: readonly number[], i: number) => numbers[i] as number
  return times.flatMap((time, row) => {
    if (row + 1 >= times.length) return []
    const step = at(currents, row + 1) - at(currents, row)
    if (!(Math.abs(step) >= GREAT * most)) return []
    const isSteady = (i: number, like: number) =>
      Math.abs(at(currents, i) - at(currents, like)) <= STEADY * Math.abs(step)
    let before = row
    while (before > 0 && time - at(times, before) < after && isSteady(before - 1, row)) before--
    if (time - at(times, before) < after * (1 - 1e-9)) return []
    let then = row + 1
    while (then + 1 < times.length && at(times, then) - time < after * (1 - 1e-9) && isSteady(then + 1, row + 1)) then++
    const waited = at(times, then) - time
    if (waited < after * (1 - 1e-9) || waited > after * LATE) return []
    const whole = at(currents, then) - at(currents, row)
    const change = at(voltages, row) - at(voltages, then)
    const ohms = stepResistance.compute({ voltage: Math.abs(change), current: Math.abs(whole) })
    return [{ row, line: at(lines, row), step: whole, resistance: ohms * Math.sign(change) * Math.sign(whole) }]
  })
}
