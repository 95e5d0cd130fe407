/**
 * A car driven over a log of speed as it is read, for logs that are too long to keep: each row is driven and forgotten.
 *
 * Rests on what drive-cycle.ts rests on.
 */
import * as z from 'zod/mini'
import { type InputIssue, shown } from '../../quantity/errors.js'
import { about, given, procedure } from '../../structure/index.js'
import { isText, piecesOf, TEXT, TraceReader } from '../route/trace.js'
import {
  type Drive,
  driveOnce,
  driveShape,
  figuresOf,
  followPiece,
  levelConditions,
  refuseFlyingStart,
  STEP,
} from './drive-cycle.js'
import type { Course } from './journey.js'
import { Motion } from './motion.js'
import { gripFor, packInUse, powertrainOf } from './powertrain.js'
import { Tally } from './tally.js'

const where = 'driveTrace'

const driveTraceGiven = /*@__PURE__*/ about(
  'a car with its drive, and the log that it drives',
  z.strictObject({
    ...driveShape,
    log: about(
      'the text of a log, whole or in pieces',
      z.transform((value: string | Iterable<string>, context): string | Iterable<string> => {
        if (isText(value)) return value
        const issue: InputIssue = { path: '', expected: TEXT, received: shown(value) }
        context.issues.push({ code: 'custom', input: value, params: { issue } })
        return z.NEVER
      }),
    ),
    longestGap: z.optional(given('time', 'Longest time between two rows', { above: 0 })),
  }),
)

/**
 * Drives a car over a log of speed while it is read, row by row. No row is kept: a log of months needs no more memory than
 * one of a minute.
 *
 * - all that {@link driveCycle} takes, but for `cycle`, `journey` and `pace`
 * - `log`: text as {@link readCycle} reads it, whole or in pieces of any length, such as those of a file read bit by bit
 * - `longestGap` (s) between two rows that is not yet a gap: 10 s unless given
 *
 * What would have the log read again, `series`, `currents`, `heats` and `range`, is not there: for these, read a part of it
 * with {@link readCycle}. A `usableEnergy` is only held against what the drive takes. Where the pack is empty before the end
 * the drive ends, and the rest of the log is read for its faults alone.
 *
 * @returns The {@link Drive}, with the same figures as that of {@link driveCycle} over the same log.
 * @throws InputError for input that cannot be used, by its path, and for a log that cannot, by its line; CalculationError as
 * {@link driveCycle}.
 * Source: as {@link driveCycle}.
 *
 * @example
 * ```ts
 * const { distance, consumption } = driveTrace({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   driveline: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   log: ['time (s),speed (km/h)\n0,0\n', '8,36\n18,36\n', '26,0\n'],
 * })
 * String(distance) // '0.18 km'
 * String(consumption) // '108.7 Wh/km'
 * ```
 */
export const driveTrace = /*@__PURE__*/ procedure(where, driveTraceGiven, (asked): Drive => {
  const train = powertrainOf(where, asked)
  const grip = gripFor(where, asked.car, asked)
  const pack = packInUse(where, asked, asked.controller)
  const { conditions, assumptions } = levelConditions(train, asked.air)
  const step = asked.step?.si ?? STEP
  const course: Course = {
    start: { conditions, speed: 0 },
    assumptions,
    drive: (motion, onStep) => {
      let goesOn = true
      let [before, from] = [0, Number.NaN]
      const reader = new TraceReader(where, asked.longestGap, (time, speed) => {
        if (Number.isNaN(from)) {
          refuseFlyingStart(where, 'log', speed, train)
          motion.restart(speed)
        } else goesOn &&= followPiece(motion, from, speed, time - before, step, onStep)
        before = time
        from = speed
      })
      for (const piece of piecesOf(asked.log)) reader.take(piece)
      reader.end()
      return goesOn
    },
  }
  const tally = new Tally(pack)
  const motion = new Motion(train, grip, pack, conditions, 0)
  const ended = driveOnce(motion, tally, course, pack)
  return figuresOf(where, asked, { train, pack, course }, motion, tally, ended)
})
