/** Whole strings side by side, each with its own link: what the others feed into one that fails. */
import { section } from '../formula/index.js'
import {
  assumed,
  type Findings,
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
import { fuseRating } from './fuse/fuse.js'
import { COLD } from './fuse/select.js'
import { type Fuse, type FuseTask, fuseField } from './fuse/task.js'
import { deratingOf, fusingFactorOf, isPartial, type Judging, rememberedCurrent } from './fuse/trials.js'
import { crossFeedCurrent } from './pack/strings.js'

/** Strings that lie side by side. @internal */
export const stringsField = /*@__PURE__*/ (() =>
  optional(
    group('Whole strings side by side, in place of modules that are joined in each group', {
      fuse: optional(fuseField),
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
  return section('Strings side by side', () => findingsOf(strings.fuse, parallel, task))
}

function findingsOf(link: Fuse | undefined, parallel: number, task: Judging): Pick<Findings, 'checks' | 'assumptions'> {
  const { pack, fusingFactor } = task
  const told = (id: string, name: string, says: Told) => trial(id, name, says, 'circuit theory', 'strings.fuse')
  const [all, fed] = [quantity('ratio', 1), { voltage: pack.maximumVoltage, strings: parallel }]
  const warm = pack.resistance.times(parallel)
  const atFirst = pack.ohmicResistance?.times(parallel) ?? warm.over(2)
  const most = crossFeedCurrent({ ...fed, share: all, resistance: atFirst })
  if (link === undefined) {
    const others = parallel === 2 ? 'the other string feeds' : `the ${parallel - 1} other strings feed`
    const fail = `${others} up to ${most} into one that fails, and no link of its own opens: the main link carries nothing of it`
    return { checks: [told('strings.link', 'A link for each string', { fail })], assumptions: [] }
  }
  const cold = pack.coldResistance?.times(parallel) ?? warm.times(COLD)
  const empty = { voltage: pack.openCircuit, strings: parallel, resistance: cold.times(pack.ageing.si) }
  const least = crossFeedCurrent({ ...empty, share: all })
  const opens = opensFrom(link, fusingFactor)
  const { dc } = link.voltage
  const checks = [
    told(
      'strings.voltage',
      'DC voltage of the links of the strings',
      dc === undefined
        ? { fail: 'the link of a string has no voltage rating for direct current' }
        : says`the link of a string is rated ${dc} DC, at least the ${pack.maximumVoltage} of the full pack`,
    ),
    trial(
      'strings.load',
      'Rating of the links of the strings',
      loadTold(link, parallel, task),
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
      'strings.opens',
      'Opening of the link of a bad string',
      'unknown' in opens
        ? opens
        : says`the link of a bad string is fed ${least} by the others, nearly empty, cold and aged, at least the ${opens} on which it opens`,
    ),
  ]
  if ('unknown' in opens) return { checks, assumptions: [] }
  const [warmShare, coldShare] = [shareThatFeeds(opens, { ...fed, resistance: warm }), shareThatFeeds(opens, empty)]
  return {
    checks,
    assumptions: [
      assumed(
        'strings.monitor',
        `Where less than ${warmShare.as('%')} of the cells of a string are bypassed, or ${coldShare.as('%')} while all are nearly empty, cold and aged, the others feed it less than opens its link: that is work for a monitor.`,
      ),
    ],
  }
}

/** Whether the link of a string carries its share of the load. */
function loadTold({ rating, class: of, derating, thermalTimeConstant }: Fuse, parallel: number, task: Judging): Told {
  const left = deratingOf(task, of, derating)
  if (left === undefined) {
    return {
      unknown: `what the link of a string carries in air of ${task.ambient} is not known: give its derating up to there`,
    }
  }
  const current = rememberedCurrent(task, thermalTimeConstant?.si).over(parallel)
  const needed = fuseRating({ current, ambientFactor: left.share })
  return says`the link of a string is rated ${rating}, at least the ${needed} that its share of the load needs`
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
    const hours = quantity('time', conventionalTime(rating.si), 's').as('h')
    return {
      unknown: `at what current the link of a string opens within ${hours} is not known: give its class, or its curve up to there`,
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
