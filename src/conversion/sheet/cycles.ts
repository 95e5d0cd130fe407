/** The published cycles that a sheet may name. */
import { type ScheduleName, schedules } from '../../cycles/index.js'
import { scheduleNames } from '../../cycles/schedules.js'
import { type Cycle, cycles } from '../../range/index.js'

type Name = keyof typeof cycles | ScheduleName

/** What a sheet may write as a cycle. @internal */
export const cycleNames: readonly Name[] = /*@__PURE__*/ (() => [
  ...(Object.keys(cycles) as (keyof typeof cycles)[]),
  ...scheduleNames,
])()

/** The cycle of a name. @internal */
export function cycleCalled(name: Name): Cycle {
  return Object.hasOwn(cycles, name) ? cycles[name as keyof typeof cycles] : schedules[name as ScheduleName]
}
