/** Whole strings side by side, each with its own link: what the others feed into one that fails. */
import { section } from '../formula/index.js'
import {
  assumed,
  type Check,
  type Findings,
  given,
  group,
  isAbove,
  optional,
  type Read,
  says,
  type Told,
  trial,
} from '../procedure/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import { conventionalTime } from './fuse/class.js'
import { hours } from './fuse/clearing.js'
import { deratingOf, loadTold, type Peaks, pulseTrials } from './fuse/load.js'
import { fusingFactorOf, isPartial } from './fuse/overload.js'
import { loopTimeConstant, resistanceAtFirst, weakestResistance } from './fuse/source.js'
import { type Fuse, type FuseTask, fuseField, type Judging } from './fuse/task.js'
import { ADIABATIC_BASIS, TEST_BASIS, timeConstantTold, voltageTold, withstoodTold, worstOf } from './fuse/trials.js'
import { crossFeedCurrent } from './pack/strings.js'

/** Strings that lie side by side. @internal */
export const stringsField = /*@__PURE__*/ (() =>
  optional(
    group('Whole strings side by side, in place of modules that are joined in each group', {
      fuse: optional(fuseField),
      withstand: optional(
        given('jouleIntegral', 'Joule integral that the cable of a string withstands; 1 kA²·s is (1 kA)²·s', {
          above: 0,
          usual: ['0.01 kA²·s', '2000 kA²·s'],
        }),
        { absent: 'What the link of a string lets through is not held to the cable of the string: give withstand.' },
      ),
    }),
    { absent: 'Modules in parallel are joined in each group: no whole strings lie side by side.' },
  ))()

/**
 * Whether each string has a link of its own that clears what the others feed into it. The main link does not count: nothing
 * of such a fault flows through it.
 * @internal
 */
export function stringFindings(
  strings: Read<typeof stringsField> | undefined,
  parallel: number,
  task: Judging,
): Pick<Findings, 'checks' | 'assumptions'> {
  if (strings === undefined || parallel < 2) return { checks: [], assumptions: [] }
  return section('Strings side by side', () => findingsOf(strings, parallel, task))
}

/** The link of a string, in words. */
const LINK = 'the link of a string'
const PEAKS: Peaks = {
  what: LINK,
  pulses: ['strings.pulses', 'Pulses of the load on the links of the strings', 'its share of the load'],
  fullPull: ['strings.fullPull', 'Full pull of the controller on the links of the strings', 'its share of a full pull'],
  path: 'strings.fuse',
}

function findingsOf(
  { fuse: link, withstand }: NonNullable<Read<typeof stringsField>>,
  parallel: number,
  task: Judging,
): Pick<Findings, 'checks' | 'assumptions'> {
  const { pack } = task
  const told = (id: string, name: string, says: Told, basis = 'circuit theory') =>
    trial(id, name, says, basis, 'strings.fuse')
  const [all, fed] = [quantity('ratio', 1), { voltage: pack.maximumVoltage, strings: parallel }]
  const most = crossFeedCurrent({ ...fed, share: all, resistance: resistanceAtFirst(pack).times(parallel) })
  if (link === undefined) {
    const others = parallel === 2 ? 'the other string feeds' : `the ${parallel - 1} other strings feed`
    const fail = `${others} up to ${most} into one that fails, and no link of its own opens: the main link carries nothing of it`
    return { checks: [told('strings.link', 'A link for each string', { fail })], assumptions: [] }
  }
  const warm = pack.resistance.times(parallel)
  const empty = { voltage: pack.openCircuit, strings: parallel, resistance: weakestResistance(pack).times(parallel) }
  const least = crossFeedCurrent({ ...empty, share: all })
  const opens = opensFrom(link, task.fusingFactor)
  const own = taskOfOne(task, parallel)
  const left = deratingOf(task, link.class, link.derating)
  // A string has so many times the inductance of the pack. The fault flows through the bad one, whose conductors are all still
  // there, and through the others side by side.
  const inductance = pack.inductance.times(parallel ** 2 / (parallel - 1))
  const checks = [
    told(
      'strings.voltage',
      'DC voltage of the links of the strings',
      voltageTold(LINK, link, pack.maximumVoltage),
      'voltage of the full pack',
    ),
    trial(
      'strings.load',
      'Rating of the links of the strings',
      loadTold(LINK, 'its share of the load', link, own, left),
      'NFPA 70 (NEC), 210.20(A)',
      'strings.fuse',
      'load',
    ),
    told(
      'strings.breakingCapacity',
      'Breaking capacity of the links of the strings',
      says`the link of a string breaks ${link.breakingCapacity}, at least the ${most} that the other strings feed in at first`,
    ),
    told(
      'strings.timeConstant',
      'Time constant of a fault between the strings',
      timeConstantTold(LINK, link, loopTimeConstant(inductance, pack.maximumVoltage, most)),
      TEST_BASIS,
    ),
    told(
      'strings.opens',
      'Opening of the link of a bad string',
      'unknown' in opens
        ? opens
        : says`the link of a bad string is fed ${least} by the others, nearly empty, cold and aged, at least the ${opens} on which it opens`,
    ),
    ...pulseTrials(link, own, left, PEAKS),
    ...letThroughTrials(link, [least, most], withstand),
  ]
  const shares = assumed(
    'strings.shares',
    'The strings share the current equally, as they are of one kind and one age.',
  )
  if ('unknown' in opens) return { checks, assumptions: [shares] }
  const [warmShare, coldShare] = [shareThatFeeds(opens, { ...fed, resistance: warm }), shareThatFeeds(opens, empty)]
  return {
    checks,
    assumptions: [
      shares,
      assumed(
        'strings.monitor',
        `Where less than ${warmShare.as('%')} of the cells of a string are bypassed, or ${coldShare.as('%')} while all are nearly empty, cold and aged, the others feed it less than opens its link: that is work for a monitor.`,
      ),
    ],
  }
}

/** What one of the strings has of a task: its share of the load, and of a full pull. */
function taskOfOne(task: Judging, parallel: number): Judging {
  const { current, profile, controller } = task
  return {
    ...task,
    current: current.over(parallel),
    profile: profile?.map(([each, time]) => [each.over(parallel), time] as const),
    controller: controller && { ...controller, batteryCurrent: controller.batteryCurrent.over(parallel) },
  }
}

/** Whether the cable of a string withstands what its link lets through, where it is known what it withstands. */
function letThroughTrials(
  link: Fuse,
  faults: readonly [Quantity<'current'>, Quantity<'current'>],
  withstand: Quantity<'jouleIntegral'> | undefined,
): Check[] {
  if (withstand === undefined) return []
  const words = { what: LINK, where: 'from the other strings', bears: 'the cable of the string' }
  const all = withstoodTold(words, link, faults, withstand).map((says) =>
    trial(
      'strings.letThrough',
      'Let-through of the links of the strings',
      says,
      ADIABATIC_BASIS,
      'strings.fuse',
      'strings.withstand',
    ),
  )
  return [worstOf(all)].filter((each) => each !== undefined)
}

/** From what current on the link of a string opens and breaks, or what is missing to tell. */
function opensFrom(link: Fuse, fusingFactor: FuseTask['fusingFactor']) {
  const { rating, leastBreakingCurrent: least } = link
  if (isPartial(link)) {
    return (
      least ?? {
        unknown: 'from what current on the link of a string breaks is not known: give its leastBreakingCurrent',
      }
    )
  }
  const factor = fusingFactorOf(link, fusingFactor)
  if (factor === undefined) {
    return {
      unknown: `at what current the link of a string opens within ${hours(conventionalTime(rating.si))} is not known: give its class, or its curve up to there`,
    }
  }
  const opens = rating.times(factor)
  return least !== undefined && isAbove(least, opens) ? least : opens
}

/** The share of bypassed cells at which the others feed a current into a string: the formula turned round. */
function shareThatFeeds(
  current: Quantity<'current'>,
  {
    voltage,
    resistance,
    strings,
  }: { voltage: Quantity<'voltage'>; resistance: Quantity<'resistance'>; strings: number },
): Quantity<'ratio'> {
  const drop = current.si * resistance.si
  return quantity('ratio', Math.min(1, (drop * (1 + 1 / (strings - 1))) / (voltage.si + drop)))
}
