/**
 * Switching the traction voltage off: what opens on which event, in which order, and what is left.
 *
 * Rests on UN R100, 5.1.1 and ISO 6469-4 (60 V, and within what time; from memory) and on good practice.
 */
import { cite, commonPractice } from '../formula/index.js'
import { highVoltage, storedCharge, weldedContactor } from '../procedure/cautions.js'
import {
  assumed,
  type Check,
  choice,
  type Findings,
  flag,
  given,
  group,
  isAbove,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import { SAFE } from './capacitor.js'

/** What is left after switching off. */
export interface Shutdown extends Findings {
  /** The greatest voltage left in one part of the pack once its service plug is pulled. */
  readonly voltageLeft: Quantity<'voltage'>
  /** From a pulled plug until the circuit behind the contactors stands at 60 V; absent where it is not known. */
  readonly afterPlug?: Quantity<'time'>
  /** The same from a crash. */
  readonly afterCrash?: Quantity<'time'>
}

const within = (what: string) =>
  given('time', `Time from ${what} until the contactors are open`, { min: 0, usual: ['1 ms', '5 s'] })

/** What is asked of switching off, beside the pack. @internal */
export const shutdownFields = /*@__PURE__*/ (() => ({
  contactors: group('The main contactors', {
    poles: choice('The poles of the pack that have one', ['both', 'one']),
    unsupplied: optional(choice('What they do when their coils lose the supply', ['open', 'stay as they are'])),
    voltageBehind: optional(flag('Whether the control measures the voltage behind each before it closes')),
  }),
  key: optional(
    group('Switching off with the key', {
      currentFirst: optional(flag('Whether the control brings the current to zero before the contactors open')),
    }),
  ),
  interlock: optional(
    group('The loop through every plug and cover that opens the contactors', { time: within('a plug that is pulled') }),
  ),
  fingerProof: optional(flag('Whether no live part can be touched when a plug or cover is open: IPXXB')),
  inertiaSwitch: optional(group('The switch that opens the contactors in a crash', { time: within('the crash') })),
  servicePlug: optional(
    group('The plug that splits the pack while it is worked on', {
      share: given('ratio', 'Share of the modules in series on one side of it', { min: 0, max: 1 }),
      leading: optional(flag('Whether a contact of the interlock in it opens before its main contacts')),
    }),
    { absent: 'No plug splits the pack: all of its voltage is left while it is worked on.' },
  ),
}))()

const fields = /*@__PURE__*/ (() => ({
  voltage: given('voltage', 'Voltage of the full pack', { above: 0, max: '1500 V', usual: ['48 V', '400 V'] }),
  ...shutdownFields,
  discharge: optional(
    given('time', 'Time until the circuit behind the open contactors stands at 60 V', {
      min: 0,
      usual: ['10 ms', '5 min'],
    }),
  ),
}))()

type Asked = Read<typeof fields>

/** After a plug is pulled, and after a crash: UN R100, 5.1.1, and ISO 6469-4:2015, 5.2. */
const [PLUG, CRASH] = /*@__PURE__*/ (() => [quantity('time', '1 s'), quantity('time', '10 s')])()

/**
 * Says what opens the contactors on which event, in which order, what voltage is left and for how long, and how a welded
 * contactor is found.
 *
 * An event that nothing opens on is `unknown`, and no pass. Up to 60 V nothing of it is asked.
 *
 * Answers: what opens the contactors on which event, what voltage is left, and for how long?
 *
 * - `voltage`: voltage of the full pack, in V, above 0 V and at most 1500 V
 * - `contactors`: the main contactors
 *   - `poles`: the poles of the pack that have one, 'both' or 'one'
 *   - `unsupplied`: what they do when their coils lose the supply, 'open' or 'stay as they are', optional
 *   - `voltageBehind`: whether the control measures the voltage behind each before it closes, true or false, optional
 * - `key`: switching off with the key, optional
 *   - `currentFirst`: whether the control brings the current to zero before the contactors open, true or false,
 *     optional
 * - `interlock`: the loop through every plug and cover that opens the contactors, optional
 *   - `time`: time from a plug that is pulled until the contactors are open, in s, at least 0 s
 * - `fingerProof`: whether no live part can be touched when a plug or cover is open: IPXXB, true or false, optional
 * - `inertiaSwitch`: the switch that opens the contactors in a crash, optional
 *   - `time`: time from the crash until the contactors are open, in s, at least 0 s
 * - `servicePlug`: the plug that splits the pack while it is worked on, optional
 *   - `share`: share of the modules in series on one side of it, a plain number, at least 0 and at most 1
 *   - `leading`: whether a contact of the interlock in it opens before its main contacts, true or false, optional
 * - `discharge`: time until the circuit behind the open contactors stands at 60 V, in s, at least 0 s, optional
 * - always assumed: it closes the negative contactor first, then the precharge, and the positive one when little
 *   voltage is left across it; no contact closes on a fault that is told
 *
 * @returns The greatest voltage left behind the service plug, the times until 60 V, and checks.
 * @throws InputError for input that cannot be used, by its path.
 * Source: UN R100, 5.1.1 (from memory); ISO 6469-4:2015, 5.2 (60 V within 10 s of an impact); common practice, no
 * source.
 *
 * @example
 * ```ts
 * const { voltageLeft, afterPlug, checks } = shutdown({
 *   voltage: '201.6 V',
 *   contactors: { poles: 'both', unsupplied: 'open', voltageBehind: true },
 *   key: { currentFirst: true },
 *   interlock: { time: '50 ms' },
 *   servicePlug: { share: '50 %', leading: true },
 *   discharge: '4 s',
 * })
 * String(voltageLeft) // '100.8 V'
 * String(afterPlug) // '4.05 s'
 * checks.filter(({ verdict }) => verdict !== 'pass').map(({ id, verdict }) => `${id}: ${verdict}`)
 * // ['shutdown.plug: fail', 'shutdown.crash: unknown']
 * ```
 */
export const shutdown = /*@__PURE__*/ procedure({
  name: 'shutdown',
  title: 'Switching the traction voltage off',
  answers: 'What opens the contactors on which event, what voltage is left, and for how long?',
  input: fields,
  source: [
    cite('UN R100', '5.1.1 (from memory)'),
    cite('ISO 6469-4:2015', '5.2 (60 V within 10 s of an impact)'),
    commonPractice,
  ],
  assumes: [
    'It closes the negative contactor first, then the precharge, and the positive one when little voltage is left across it; no contact closes on a fault that is told.',
  ],
  work: (asked): Unfinished<Shutdown> => {
    const { voltage, servicePlug, discharge, interlock, inertiaSwitch } = asked
    const voltageLeft =
      servicePlug === undefined ? voltage : voltage.times(Math.max(servicePlug.share.si, 1 - servicePlug.share.si))
    const until = (opens: { readonly time: Quantity<'time'> } | undefined) =>
      opens === undefined || discharge === undefined ? undefined : discharge.plus(opens.time)
    const [afterPlug, afterCrash] = [until(interlock), until(inertiaSwitch)]
    const isLive = isAbove(voltage, SAFE)
    return {
      voltageLeft,
      ...(afterPlug === undefined ? {} : { afterPlug }),
      ...(afterCrash === undefined ? {} : { afterCrash }),
      checks: isLive
        ? [
            ...contactorTrials(asked),
            keyTrial(asked),
            plugTrial(asked, afterPlug),
            crashTrial(asked, afterCrash),
            ...(servicePlug === undefined ? [] : [servicePlugTrial(servicePlug)]),
          ]
        : [],
      assumptions: isLive
        ? []
        : [assumed('shutdown.safe', `At ${voltage} nothing of this is asked: it is at most 60 V.`)],
      cautions: isLive ? [highVoltage, storedCharge, weldedContactor] : [],
    }
  },
})

const GOOD = 'good practice'

function contactorTrials({ contactors: { poles, unsupplied, voltageBehind } }: Asked): Check[] {
  return [
    trial(
      'shutdown.poles',
      'Contactors in both poles',
      poles === 'both'
        ? { pass: 'each pole has a contactor: one that welds leaves the other' }
        : { fail: 'one pole alone has a contactor: if it welds, nothing opens' },
      GOOD,
      'contactors.poles',
    ),
    trial(
      'shutdown.supply',
      'Loss of the control supply',
      unsupplied === undefined
        ? {
            unknown: 'what the contactors do when their coils lose the supply is not known: give contactors.unsupplied',
          }
        : unsupplied === 'open'
          ? { pass: 'the contactors open when their coils lose the supply' }
          : { fail: 'the contactors stay closed when their coils lose the supply' },
      GOOD,
      'contactors.unsupplied',
    ),
    trial(
      'shutdown.weld',
      'Finding a welded contactor',
      voltageBehind === undefined
        ? { unknown: 'how a welded contactor is found is not known: give contactors.voltageBehind' }
        : voltageBehind
          ? {
              pass: 'the control measures the voltage behind each contactor before it closes: where there is some, it has welded',
            }
          : { fail: 'nothing finds a welded contactor: measure the voltage behind each before it closes' },
      GOOD,
      'contactors.voltageBehind',
    ),
  ]
}

function keyTrial({ key }: Asked): Check {
  const told = (says: Told) => trial('shutdown.key', 'Switching off with the key', says, GOOD, 'key')
  if (key === undefined) return told({ unknown: 'what opens when the key is turned off is not known: give key' })
  const { currentFirst } = key
  if (currentFirst === undefined) {
    return told({
      unknown: 'whether the current is zero before the contactors open is not known: give key.currentFirst',
    })
  }
  return told(
    currentFirst
      ? { pass: 'the current is zero before the contactors open' }
      : { fail: 'the contactors open under load each time: bring the current to zero first' },
  )
}

/** Whether 60 V are reached in time after a plug is pulled, where live parts can be touched then. */
function plugTrial({ interlock, fingerProof }: Asked, after: Quantity<'time'> | undefined): Check {
  const told = (says: Told) =>
    trial(
      'shutdown.plug',
      'Pulling a plug',
      says,
      'UN R100, 5.1.1 (from memory)',
      'interlock',
      'discharge',
      'fingerProof',
    )
  if (interlock === undefined) {
    return told({ unknown: 'what opens when a plug is pulled is not known: give interlock' })
  }
  if (fingerProof === true) {
    return told({
      pass: `the contactors open ${interlock.time} after a plug is pulled, and no live part can be touched`,
    })
  }
  if (after === undefined) {
    return told({
      unknown: 'how long a pulled plug stays above 60 V is not known: give discharge, or that it is fingerProof',
    })
  }
  return told(
    says`a plug that is pulled stands at 60 V after ${after}, at most the ${PLUG} allowed where it can be touched`,
  )
}

function crashTrial({ inertiaSwitch }: Asked, after: Quantity<'time'> | undefined): Check {
  const told = (says: Told) =>
    trial('shutdown.crash', 'A crash', says, 'ISO 6469-4:2015, 5.2', 'inertiaSwitch', 'discharge')
  if (inertiaSwitch === undefined) return told({ unknown: 'what opens in a crash is not known: give inertiaSwitch' })
  if (after === undefined) {
    return told({ unknown: 'how long the circuit stays above 60 V after a crash is not known: give discharge' })
  }
  return told(says`the circuit stands at 60 V ${after} after a crash, at most the ${CRASH} allowed`)
}

function servicePlugTrial({ leading }: NonNullable<Asked['servicePlug']>): Check {
  return trial(
    'shutdown.servicePlug',
    'Pulling the service plug under load',
    leading === undefined
      ? {
          unknown:
            'whether the contactors open before the main contacts of the service plug is not known: give servicePlug.leading',
        }
      : leading
        ? { pass: 'a contact of the interlock opens the contactors before the main contacts of the service plug' }
        : { fail: 'the service plug draws an arc under load: lead with a contact of the interlock' },
    GOOD,
    'servicePlug.leading',
  )
}
