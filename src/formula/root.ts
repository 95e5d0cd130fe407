/**
 * Where a function of one number is zero: brackets found by scanning, narrowed by Brent's method
 * (R. P. Brent, Algorithms for Minimization without Derivatives, 1973, ch. 4).
 */

/** A function of one number; not a number where it is not defined. @internal */
export type Real = (x: number) => number

/** An interval at whose ends a function has opposite signs, or touches zero. @internal */
export interface Bracket {
  readonly low: number
  readonly high: number
  /** The zero inside. */
  readonly root: number
}

/** A point of a scan: where, and the value there, which is not a number outside the function's domain. */
type Sample = readonly [x: number, y: number]

/** A value this many times the noise is surely not zero; less will do, down to the second, where a function goes no farther. */
const [SURE, PLAIN] = [1e6, 1e3]
/** A run of zeros this narrow, as a share of the way to where the function surely leaves zero, is one root. */
const NARROW = 0.01

/**
 * Whether neighbouring zeros are one root whose surroundings rounding has made zero too, as it does close to a root
 * at zero, rather than a stretch over which the function is zero.
 */
function isOneRoot(samples: readonly Sample[], first: number, last: number, noise: number): boolean {
  const before = surelyNotZero(samples.slice(0, first).reverse(), noise)
  const after = surelyNotZero(samples.slice(last + 1), noise)
  const [from] = samples[first] as Sample
  const [to] = samples[last] as Sample
  const ways = [before === undefined ? [] : [from - before[0]], after === undefined ? [] : [after[0] - to]].flat()
  return ways.length > 0 && ways.every((way) => to - from <= NARROW * way)
}

/** The first of the samples that is surely not zero. */
function surelyNotZero(samples: readonly Sample[], noise: number): Sample | undefined {
  const sizes = samples.map(([, y]) => Math.abs(y)).filter((size) => !Number.isNaN(size))
  const most = sizes.reduce((a, b) => Math.max(a, b), 0)
  const bar = Math.min(SURE * noise, most / 2)
  return bar > PLAIN * noise ? samples.find(([, y]) => Math.abs(y) > bar) : undefined
}

/**
 * The zeros of a function that a scan over points finds, or `'everywhere'` where it is zero over a stretch.
 * `noise` is how far rounding may throw a value of the function.
 *
 * @internal
 */
export function rootsOver(f: Real, points: readonly number[], noise = 0): Bracket[] | 'everywhere' {
  const samples = withEdges(f, points)
  const roots: Bracket[] = []
  for (let i = 0; i < samples.length; i++) {
    const [x, y] = samples[i] as Sample
    const [before, yBefore] = samples[i - 1] ?? [x, Number.NaN]
    if (y === 0) {
      let last = i
      while (samples[last + 1]?.[1] === 0) last++
      const run = samples.slice(i, last + 1).map(([at]) => at)
      const [after] = samples[last + 1] ?? [run[run.length - 1] as number]
      if (run.length > 1 && !isOneRoot(samples, i, last, noise)) return 'everywhere'
      roots.push({ low: before, high: after, root: heartOf(run, points) })
      i = last
      continue
    }
    if (Math.sign(yBefore) * Math.sign(y) === -1) {
      const root = crossing(f, [before, yBefore], [x, y], noise)
      if (root !== undefined) roots.push({ low: before, high: x, root })
    }
    const [after, yAfter] = samples[i + 1] ?? [x, Number.NaN]
    roots.push(...touching(f, [before, yBefore], [x, y], [after, yAfter], noise))
  }
  return roots
}

/** The root of a run of zeros that rounding has made of one: zero or an end of the scan where it holds one. */
function heartOf(run: readonly number[], points: readonly number[]): number {
  const ends = [0, points[0], points[points.length - 1]]
  return run.find((x) => ends.includes(x)) ?? (run[Math.floor(run.length / 2)] as number)
}

/** The values at the points, and at the last point of the domain on the way to a point outside it. */
function withEdges(f: Real, points: readonly number[]): Sample[] {
  const finite: Real = (x) => {
    const y = f(x)
    return Number.isFinite(y) ? y : Number.NaN
  }
  const samples = points.map((x): Sample => [x, finite(x)])
  return samples.flatMap((sample, i) => {
    const next = samples[i + 1]
    if (next === undefined || Number.isNaN(sample[1]) === Number.isNaN(next[1])) return [sample]
    const [inside, outside] = Number.isNaN(sample[1]) ? [next, sample] : [sample, next]
    const edge = lastInside(finite, inside[0], outside[0])
    return edge === inside[0] ? [sample] : [sample, [edge, finite(edge)]]
  })
}

function lastInside(f: Real, inside: number, outside: number): number {
  const middle = inside + (outside - inside) / 2
  if (middle === inside || middle === outside) return inside
  return Number.isNaN(f(middle)) ? lastInside(f, inside, middle) : lastInside(f, middle, outside)
}

/** A pole or a jump changes sign too: across it the function does not shrink with the interval. */
const CONTINUOUS = 1e-6

function crossing(f: Real, [low, fLow]: Sample, [high, fHigh]: Sample, noise: number): number | undefined {
  const [root, other] = brent(f, low, high, fLow, fHigh)
  const jump = Math.abs(f(root) - f(other))
  const ends = Math.max(Math.abs(fLow), Math.abs(fHigh))
  if (jump <= Math.max(noise, CONTINUOUS * ends)) return root
  // What cancels inside a formula makes it rough, which no one sees who reads eight digits of it.
  return jump <= Math.min(ROUGH * ends, UNSEEN * noise) ? root : undefined
}

/** Roughness beyond this share of the values around leaves no root to be told. */
const ROUGH = 0.1
/** Roughness of so many times what rounding does to a plain sum is still not seen. */
const UNSEEN = 1e5

/**
 * Where a function that only rises or only falls is zero between two numbers; the end that is nearer to zero where it is
 * not zero between them.
 *
 * @internal
 */
export function rootBetween(f: Real, low: number, high: number): number {
  const [atLow, atHigh] = [f(low), f(high)]
  if (Math.sign(atLow) * Math.sign(atHigh) === -1) return brent(f, low, high, atLow, atHigh)[0]
  return Math.abs(atLow) < Math.abs(atHigh) ? low : high
}

/** The ends of the last interval of Brent's method, the better one first; they are neighbouring doubles or nearly. */
function brent(f: Real, from: number, to: number, fFrom: number, fTo: number): readonly [number, number] {
  let [a, b, c] = [from, to, from]
  let [fa, fb, fc] = [fFrom, fTo, fFrom]
  let step = b - a
  let previousStep = step
  for (;;) {
    if (Math.abs(fc) < Math.abs(fb)) {
      ;[a, b, c] = [b, c, b]
      ;[fa, fb, fc] = [fb, fc, fb]
    }
    const half = (c - b) / 2
    const tolerance = 2 * Number.EPSILON * Math.abs(b)
    if (Math.abs(half) <= tolerance || fb === 0 || b + half === b || b + half === c) return [b, fb === 0 ? b : c]
    const interpolated = Math.abs(previousStep) >= tolerance && Math.abs(fa) > Math.abs(fb)
    const next = interpolated ? interpolation(a, b, c, fa, fb, fc) : half
    const isSafe = next * half > 0 && Math.abs(next) < Math.min(1.5 * Math.abs(half), Math.abs(previousStep / 2))
    previousStep = isSafe ? step : half
    step = isSafe ? next : half
    ;[a, fa] = [b, fb]
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance
    if (b === a) b = a + half
    fb = f(b)
    if (Math.sign(fb) === Math.sign(fc)) {
      ;[c, fc] = [a, fa]
      step = b - a
      previousStep = step
    }
  }
}

/** The step to the zero of the line (two points) or of the inverse parabola (three points). */
function interpolation(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  if (a === c) return (fb * (b - a)) / (fa - fb)
  const [r, s, t] = [fb / fc, fb / fa, fa / fc]
  const top = s * (t * (r - t) * (c - b) - (1 - r) * (b - a))
  return top / ((t - 1) * (r - 1) * (s - 1))
}

const GOLDEN = (3 - Math.sqrt(5)) / 2
/** What counts as touching zero, against the values at the neighbouring points. */
const TOUCH = 1e-12

/** Zeros near an extreme that three points show on one side of zero: none, one where it touches, or two. */
function touching(
  f: Real,
  [left, fLeft]: Sample,
  [, fMiddle]: Sample,
  [right, fRight]: Sample,
  noise: number,
): Bracket[] {
  const sign = Math.sign(fMiddle)
  // Towards zero in the middle, and away from it on both sides; not so where one of the three is not a number.
  if (!(sign * fLeft > sign * fMiddle && sign * fRight > sign * fMiddle)) return []
  let [low, high] = [left, right]
  for (let i = 0; i < 90; i++) {
    const first = low + GOLDEN * (high - low)
    const second = high - GOLDEN * (high - low)
    if (sign * f(first) < sign * f(second)) high = second
    else low = first
  }
  const extreme = levelPoint(f, (low + high) / 2)
  const value = f(extreme)
  if (Math.sign(value) === -sign) {
    return [
      { low: left, high: extreme, root: crossing(f, [left, fLeft], [extreme, value], noise) },
      { low: extreme, high: right, root: crossing(f, [extreme, value], [right, fRight], noise) },
    ].filter((bracket): bracket is Bracket => bracket.root !== undefined)
  }
  const scale = Math.max(Math.abs(fLeft), Math.abs(fRight))
  return Math.abs(value) <= Math.max(noise, TOUCH * scale) ? [{ low: left, high: right, root: extreme }] : []
}

/**
 * The extreme near a point, from where the function is as high on both sides: an extreme itself is flat, and tells its
 * place only to the square root of rounding.
 */
function levelPoint(f: Real, near: number): number {
  const reach = 1e-4 * Math.abs(near)
  const slope: Real = (x) => f(x + reach) - f(x - reach)
  const [low, high] = [near - reach, near + reach]
  const [sLow, sHigh] = [slope(low), slope(high)]
  return Math.sign(sLow) * Math.sign(sHigh) === -1 ? brent(slope, low, high, sLow, sHigh)[0] : near
}

/** Magnitudes, in SI units, over which a value without a bound is looked for. */
const [SMALLEST, LARGEST] = [1e-15, 1e15]

/** Points over an interval, dense near finite ends and near zero, in rising order. Ends may be infinite. @internal */
export function scanPoints(low: number, high: number, count: number): number[] {
  const points = new Set<number>()
  if (Number.isFinite(low) && Number.isFinite(high)) {
    for (let i = 0; i <= count; i++) points.add(low + ((high - low) * i) / count)
    for (const offset of magnitudes((high - low) * 1e-12, (high - low) / 2, count / 2)) {
      points.add(low + offset)
      points.add(high - offset)
    }
    points.add(high)
  } else {
    for (const offset of magnitudes(SMALLEST, LARGEST, count)) {
      if (Number.isFinite(low)) points.add(low + offset)
      else if (Number.isFinite(high)) points.add(high - offset)
      else points.add(offset).add(-offset)
    }
    points.add(Number.isFinite(low) ? low : Number.isFinite(high) ? high : 0)
  }
  const sorted = [...points].filter((x) => x >= low && x <= high).sort((a, b) => a - b)
  // The same place reached in two ways differs by rounding, and one root would count as two.
  return sorted.filter((x, i) => i === 0 || x - (sorted[i - 1] as number) > 4 * Number.EPSILON * Math.abs(x))
}

function magnitudes(from: number, to: number, count: number): number[] {
  return Array.from({ length: Math.ceil(count) + 1 }, (_, i) => from * (to / from) ** (i / Math.ceil(count)))
}
