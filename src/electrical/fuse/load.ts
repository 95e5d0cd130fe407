/** What a load asks of a fuse: all day, in the air around it, and in its peaks. */
import { USUAL_MEMORY, worstMemory } from '../../formula/memory.js'
import { type Points, straightAt } from '../../formula/points.js'
import { worded } from '../../procedure/check.js'
import { type Check, says, type Told, trial } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { rmsOf } from '../cable/course.js'
import { type FuseClass, isSemiconductor } from './class.js'
import { seconds, timesInWords } from './clearing.js'
import { fuseAmbientFactor, fuseRating } from './fuse.js'
import { type Endurance, enduranceOf, type Hardest, hardestStretch } from './pulses.js'
import type { Fuse, FuseTask, Judging } from './task.js'

/** What the air around and its thinness leave of a rating, and on what ground; undefined where that is not known. @internal */
export interface Derating {
  readonly share: number
  readonly because: string
}

/** Up to what temperature a class needs no factor, and up to what its factor is known, in kelvins. */
const [NO_FACTOR, KNOWN] = [313.15, 358.15]

/** @internal */
export function deratingOf(
  { ambient, ambientFactor, thinAir }: Pick<Judging, 'ambient' | 'ambientFactor' | 'thinAir'>,
  of: FuseClass | undefined,
  derating?: Fuse['derating'],
): Derating | undefined {
  const high = thinAir.si
  if (ambientFactor !== undefined) return { share: high * ambientFactor.si, because: 'ambientFactor, as given' }
  if (derating !== undefined) {
    const share = shareBetween(derating, ambient.si)
    return share === undefined ? undefined : { share: high * share, because: 'its own curve' }
  }
  if (of === 'gG' && ambient.si <= NO_FACTOR) {
    return { share: high, because: 'class gG needs no factor up to 40 °C, IEC 60269-1, 3.1' }
  }
  if (ambient.si > KNOWN) return undefined
  return {
    share: high * fuseAmbientFactor({ ambient }).si,
    because: 'rated at 25 °C with a limit of 130 °C, guides of makers of semiconductor fuses',
  }
}

/** Straight between points; colder than the first as at it, warmer than the last not known. */
function shareBetween(points: NonNullable<Fuse['derating']>, at: number): number | undefined {
  const shares = points.map(([temperature, share]) => [temperature.si, share.si] as const)
  const [[coldest], [warmest]] = [shares[0], shares.at(-1)] as [Points[number], Points[number]]
  return at > warmest ? undefined : straightAt(shares, Math.max(at, coldest))
}

/** The current that a load asks of a fuse all day: the most that the fuse remembers of it. @internal */
export function rememberedCurrent(
  { current, profile }: Pick<FuseTask, 'current' | 'profile'>,
  timeConstant = USUAL_MEMORY,
): Quantity<'current'> {
  if (profile === undefined) return current
  const worst = worstMemory(
    profile.map(([each, time]) => [each.si ** 2, time.si]),
    timeConstant,
  )
  const remembered = Math.sqrt(worst)
  return remembered > current.si ? quantity('current', remembered, 'A') : current
}

/**
 * Whether a fuse carries a load.
 *
 * @param what - Which fuse, in words.
 * @param load - What of the load it carries, in words.
 * @internal
 */
export function loadTold(
  what: string,
  load: string,
  { rating, thermalTimeConstant }: Fuse,
  task: Judging,
  left: Derating | undefined,
): Told {
  if (left === undefined) {
    return { unknown: `what ${what} carries in air of ${task.ambient} is not known: give its derating up to there` }
  }
  const current = rememberedCurrent(task, thermalTimeConstant?.si)
  const needed = fuseRating({ current, ambientFactor: left.share })
  return worded(what, says` is rated ${rating}, at least the ${needed}`, ` that ${load} needs`)
}

/** The peaks that a fuse meets: of which fuse, by what ids and names, and in what words. @internal */
export interface Peaks {
  readonly what: string
  readonly pulses: readonly [id: string, name: string, of: string]
  readonly fullPull: readonly [id: string, name: string, of: string]
  readonly path: string
}

/** What the peaks of the load, and a full pull of the controller, do to a fuse. @internal */
export function pulseTrials(
  fuse: Fuse,
  { profile, controller, cycles }: Pick<Judging, 'profile' | 'controller' | 'cycles'>,
  left: Derating | undefined,
  peaks: Peaks,
): Check[] {
  // Where not even what it carries all day is known, that is told already.
  if (left === undefined) return []
  const rating = fuse.rating.si * Math.min(1, left.share)
  const endurance = enduranceOf(fuse, cycles, isSemiconductor(fuse.class))
  const told = (course: Parameters<typeof hardestStretch>[0], [id, name, of]: Peaks['pulses']) => {
    const says = pulsesTold(peaks.what, of, hardestStretch(course, rating, endurance), endurance)
    if (says === undefined) return []
    return [trial(id, name, says, 'guides of fuse makers', peaks.path, 'profile', 'controller', 'cycles')]
  }
  return [
    // What is too small for the mean of its load is refused by that, and every stretch of a long log would be above it.
    ...(profile === undefined || rmsOf(profile).si >= rating
      ? []
      : told(
          profile.map(([current, time]) => [current.si, time.si]),
          peaks.pulses,
        )),
    ...(controller === undefined
      ? []
      : told(
          [
            [controller.batteryCurrent.si, controller.time.si],
            [0, REST],
          ],
          peaks.fullPull,
        )),
  ]
}

/** Long enough that a full pull is alone, in seconds. */
const REST = 1e6

function pulsesTold(what: string, of: string, { worst, untold }: Hardest, endurance: Endurance): Told | undefined {
  const amperes = (each: number) => quantity('current', each, 'A')
  const times = (time: number) => timesInWords(endurance.times(time))
  if (worst !== undefined && (untold === undefined || worst.current > worst.borne)) {
    const [asked, borne] = [amperes(worst.current), amperes(worst.borne)]
    return worded(
      '',
      says`${asked} for ${seconds(worst.time)} of ${of}, ${times(worst.time)}, is at most the ${borne}`,
      ` that ${what} bears so often`,
    )
  }
  if (untold === undefined) return undefined
  return {
    unknown: `whether ${what} bears ${amperes(untold.current)} for ${seconds(untold.time)} of ${of}, ${times(untold.time)}, is not known: give its curve up to that time`,
  }
}
