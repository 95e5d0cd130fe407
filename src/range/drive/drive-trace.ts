/**
 * A car driven over a log of speed as it is read, for logs that are too long to keep: each row is driven and forgotten.
 *
 * Rests on what drive-cycle.ts rests on.
 */
import { cite } from '../../formula/index.js'
import { type Assumption, type Note, procedure, type Read, type Unfinished } from '../../procedure/index.js'
import { piecesOf } from '../../procedure/log.js'
import type { Spike } from '../route/spikes.js'
import { logFields, TraceReader } from '../route/trace.js'
import {
  drivenFields,
  driveOnce,
  drivesAssume,
  followPiece,
  levelConditions,
  refuseFlyingStart,
} from './drive-cycle.js'
import { type Drive, figuresOf } from './figures.js'
import type { Course } from './journey.js'
import { Motion } from './motion.js'
import { gripFor, packInUse, powertrainOf } from './powertrain.js'
import { Tally } from './tally.js'

const where = 'driveTrace'

const driveTraceFields = /*@__PURE__*/ (() => ({ ...drivenFields, ...logFields }))()

/**
 * Drives a car over a log of speed while it is read, row by row. No row is kept: a log of months needs no more memory than
 * one of a minute.
 *
 * What would have the log read again, `series`, `currents`, `heats` and `range`, is not there: for these, read a part of it
 * with {@link readCycle}. A `usableEnergy` is only held against what the drive takes. Where the pack is empty before the end
 * the drive ends, and the rest of the log is read for its faults alone.
 *
 * Answers: what does the drive over a long log take, where does that go, and where could the car not follow?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `auxiliaries`: power of lamps, pumps and the 12 V system, in kW, at least 0 kW, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `usableEnergy`: energy that may be used, in kWh, above 0 kWh, optional
 * - `stateOfCharge`: state of charge at the start, a plain number, at least 0 and at most 1, optional
 * - `reserve`: state of charge at which the pack counts as empty, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `step`: longest step while the speed changes, in s, at least 0.001 s and at most 10 s, 1 s by default (as cycles
 *   and logs have a row each second)
 * - `log`: the text of the log, whole or in pieces of any length
 * - `columns`: the titles of the columns that count, where several could, optional
 *   - `time`: title of the column of time, as it stands in the log, text, optional
 *   - `speed`: title of the column of speed, as it stands in the log, text, optional
 * - `longestGap`: longest time between two rows that is not yet a gap, in s, above 0 s, 10 s by default (common
 *   practice, no source)
 * - always assumed: the brakes always suffice, and the driver follows as closely as the car can
 *
 * @returns The {@link Drive}, with the same figures as that of {@link driveCycle} over the same log.
 * @throws InputError for input that cannot be used, by its path, and for a log that cannot, by its line; CalculationError as
 * {@link driveCycle}.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4.
 *
 * @example
 * ```ts
 * const { distance, consumption } = driveTrace({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   gearbox: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   log: ['time (s),speed (km/h)\n0,0\n', '8,36\n18,36\n', '26,0\n'],
 * })
 * String(distance) // '0.18 km'
 * String(consumption) // '110.9 Wh/km'
 * ```
 */
export const driveTrace = /*@__PURE__*/ (() =>
  procedure({
    name: where,
    title: 'Drive over a log',
    answers: 'What does the drive over a long log take, where does that go, and where could the car not follow?',
    input: driveTraceFields,
    source: [cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 4')],
    assumes: drivesAssume,
    work: traced,
  }))()

function traced(asked: Read<typeof driveTraceFields>): Unfinished<Drive> {
  const train = powertrainOf(where, asked)
  const grip = gripFor(where, asked.car)
  const pack = packInUse(where, asked, asked.controller)
  const { conditions, assumptions } = levelConditions(train, asked.air)
  const step = asked.step.si
  let hardest: Spike = { acceleration: 0, time: 0 }
  let notes: readonly Note[] = []
  let merged: readonly Assumption[] = []
  const course: Course = {
    start: { conditions, speed: 0 },
    assumptions,
    hardest: () => hardest,
    drive: (motion, onStep) => {
      let goesOn = true
      let [before, from] = [0, Number.NaN]
      const reader = new TraceReader(where, asked, (time, speed) => {
        if (Number.isNaN(from)) {
          refuseFlyingStart(where, 'log', speed, train)
          motion.restart(speed)
        } else goesOn &&= followPiece(motion, from, speed, time - before, step, onStep)
        before = time
        from = speed
      })
      for (const piece of piecesOf(asked.log)) reader.take(piece)
      reader.end()
      hardest = reader.hardest
      notes = reader.notes
      merged = reader.assumptions
      return goesOn
    },
  }
  const tally = new Tally(train, pack)
  const motion = new Motion(train, grip, pack, conditions, 0)
  const ended = driveOnce(motion, tally, course, pack)
  const drive = figuresOf(where, asked, { train, pack, course }, motion, tally, ended)
  return { ...drive, assumptions: [...(drive.assumptions ?? []), ...merged], notes }
}
