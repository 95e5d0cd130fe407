/** What it costs to place 60 modules in 12 bays and prove the placement, beside HiGHS on the same problem. */
import { placeMasses } from 'kerbwatt/mass'
import { quantity } from 'kerbwatt/quantity'
import { type Case, solvedByHighs } from '../tests/mass/integer-program.js'
import { durationText, medianOf, type Row } from './row.js'

/** HiGHS is stopped after so long. */
const HIGHS_SECONDS = 20

/** Invented bays of an invented van, on no grid, so that hardly any two placements balance alike. */
const bays: Case['bays'] = [
  [-0.214, 0.331, 0.618],
  [-0.207, -0.342, 0.622],
  [0.353, 0.518, 0.311],
  [0.361, -0.526, 0.307],
  [0.842, 0.004, 0.272],
  [1.217, 0.409, 0.243],
  [1.209, -0.413, 0.238],
  [1.604, 0.157, 0.383],
  [1.598, -0.149, 0.377],
  [2.083, 0.462, 0.512],
  [2.077, -0.457, 0.508],
  [2.371, 0.002, 0.441],
].map(([aft = 0, left = 0, up = 0]) => ({ aft, left, up, capacity: 8, accepts: [0] }))

const van: Case = {
  base: { mass: 590, aft: 0.88, left: 0.012, up: 0.46 },
  groups: [{ mass: 7.4, count: 60 }],
  bays,
  wheelbase: 2.03,
  track: 1.205,
  target: { frontShare: 0.52, leftShare: 0.5 },
}

function placed({ base, groups, bays: all, wheelbase, track, target }: Case) {
  const m = (value: number) => quantity('length', value, 'm')
  const { frontShare = 0.5, leftShare = 0.5 } = target
  return placeMasses({
    base: {
      mass: quantity('mass', base.mass, 'kg'),
      centreOfGravity: { aft: m(base.aft), left: m(base.left), up: m(base.up) },
    },
    groups: groups.map(({ mass, count }) => ({ name: 'module', mass: quantity('mass', mass, 'kg'), count })),
    bays: all.map(({ aft, left, up, capacity }, i) => ({
      name: `bay ${i}`,
      at: { aft: m(aft), left: m(left), up: m(up) },
      capacity,
    })),
    wheelbase: m(wheelbase),
    track: { front: m(track), rear: m(track) },
    target: { frontShare, leftShare },
  })
}

function timed<T>(work: () => T): { readonly ns: number; readonly result: T } {
  const start = process.hrtime.bigint()
  const result = work()
  return { ns: Number(process.hrtime.bigint() - start), result }
}

/** Measures the placing of 60 modules in 12 bays. */
export function placeMassesRows(): readonly Row[] {
  const ours = Array.from({ length: 5 }, () => timed(() => placed(van)))
  const theirs = timed(() => solvedByHighs(van, HIGHS_SECONDS))
  const best = ours[0]?.result
  const wanted = theirs.result
  if (best?.proven !== true) throw new Error('the placement is not proven')
  if (wanted !== undefined && Math.abs(best.deviation.si - wanted) > 1e-6) {
    throw new Error(`HiGHS finds a deviation of ${wanted}, not ${best.deviation.si}`)
  }
  const [own, other] = [medianOf(ours.map(({ ns }) => ns)), theirs.ns]
  const outOfTime = wanted === undefined ? `, and HiGHS was stopped after ${HIGHS_SECONDS} s` : ''
  const measured = `${durationText(own)} / ${durationText(other)}`
  const what = 'placeMasses, 60 modules in 12 bays, proven'
  return [
    { what, measured: durationText(own), figure: durationText(own), bar: 'under 1 s', met: own < 1e9 },
    {
      what: `${what}, against HiGHS`,
      measured,
      figure: `${(other / own).toFixed(1)} times faster${outOfTime}`,
      bar: 'no slower',
      met: own <= other,
    },
  ]
}
