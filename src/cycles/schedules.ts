/**
 * Drive cycles that are published as a speed for each second.
 *
 * Rests on 40 CFR Part 86, Appendix I and 40 CFR Part 600, Appendix I (works of the US government), and on UN GTR No. 15,
 * Annex 1; the tables as copies give them, held to the totals and to the sums that were published.
 */
import { once } from '../procedure/once.js'
import { quantity } from '../quantity/index.js'
import { type Cycle, cycleOf } from '../range/route/cycle.js'
import { hwfet, udds, us06, wltcClass1, wltcClass2, wltcClass3b } from './traces.js'

/** The name of a published schedule. */
export type ScheduleName = 'UDDS' | 'HWFET' | 'US06' | 'WLTC class 1' | 'WLTC class 2' | 'WLTC class 3b'

/** The names of the published schedules. @internal */
export const scheduleNames: readonly ScheduleName[] = [
  'UDDS',
  'HWFET',
  'US06',
  'WLTC class 1',
  'WLTC class 2',
  'WLTC class 3b',
]

/** The sign that stands for no change, and the ends of what one sign can tell. */
const [NONE, LEAST, MOST] = [42, -42, 43] as const
/** The first sign, and the one that is left out for what it means in a text. */
const [FIRST, BACKSLASH] = [40, 92] as const

/** The speeds behind the signs of traces.ts, in tenths. */
function tenthsOf(signs: string): number[] {
  const tenths: number[] = []
  let speed = 0
  for (const sign of signs) {
    const code = sign.charCodeAt(0)
    const change = code - FIRST - (code > BACKSLASH ? 1 : 0) - NONE
    speed += change
    if (change !== LEAST && change !== MOST) tenths.push(speed)
  }
  return tenths
}

function scheduleOf(name: ScheduleName, unit: 'mph' | 'km/h', tenths: readonly number[]): Cycle {
  return cycleOf(
    name,
    tenths.map((_, second) => second),
    tenths.map((each) => quantity('speed', each / 10, unit).si),
  )
}

/** Low, medium, and low again, which begins at the stand that ends the medium phase. */
function wltc1(): number[] {
  const tenths = tenthsOf(wltcClass1)
  return [...tenths, ...tenths.slice(1, LOW + 1)]
}

/** How long the low phase of each class lasts, in seconds. */
const LOW = 589

/**
 * Drive cycles that are published as a speed for each second, by name: what `driveCycle` and `seasons` take as their `cycle`.
 *
 * - `'UDDS'`: a town, 1369 s, at most 56.7 mph
 * - `'HWFET'`: a country road, 765 s, at most 59.9 mph
 * - `'US06'`: brisk, with a motorway, 600 s with the stand at its end, at most 80.3 mph
 * - `'WLTC class 1'`: low, medium, low, 1611 s, at most 64.4 km/h
 * - `'WLTC class 2'`: low, medium, high, extra high, 1800 s, at most 123.1 km/h
 * - `'WLTC class 3b'`: the same for more power, 1800 s, at most 131.3 km/h
 *
 * The classes go by the rated power over the mass in running order less 75 kg: class 1 up to 22 W/kg, class 2 up to 34 W/kg,
 * class 3 above. A car with an electric drive alone is always tested as class 3, 3b where it reaches 120 km/h. One that cannot
 * follow is tested on a cycle of capped speeds that is made for it, which is not here: `missed` tells where it falls behind.
 * A schedule is read when it is first asked for.
 *
 * Source: 40 CFR Part 86, Appendix I; 40 CFR Part 600, Appendix I; UN GTR No. 15, Annex 1.
 *
 * @example
 * ```ts
 * String(schedules['WLTC class 3b'].distance) // '23.27 km'
 * String(schedules.UDDS.meanSpeed) // '31.53 km/h'
 * ```
 */
export const schedules: { readonly [name in ScheduleName]: Cycle } = /*@__PURE__*/ (() => {
  const made: { readonly [name in ScheduleName]: () => Cycle } = {
    'UDDS': () => scheduleOf('UDDS', 'mph', tenthsOf(udds)),
    'HWFET': () => scheduleOf('HWFET', 'mph', tenthsOf(hwfet)),
    'US06': () => scheduleOf('US06', 'mph', tenthsOf(us06)),
    'WLTC class 1': () => scheduleOf('WLTC class 1', 'km/h', wltc1()),
    'WLTC class 2': () => scheduleOf('WLTC class 2', 'km/h', tenthsOf(wltcClass2)),
    'WLTC class 3b': () => scheduleOf('WLTC class 3b', 'km/h', tenthsOf(wltcClass3b)),
  }
  const all = {}
  for (const name of scheduleNames) Object.defineProperty(all, name, { enumerable: true, get: once(made[name]) })
  return all as { readonly [name in ScheduleName]: Cycle }
})()
