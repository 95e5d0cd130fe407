/**
 * How one body, or two that pass heat to each other, change their temperatures while everything that acts on them is
 * steady: exactly, by the characteristic values of the equations, not in small steps.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapter 5; the rest is the linear differential equation.
 */
import { rootBetween } from '../../formula/root.js'

/** A body, and what acts on it, in SI units. @internal */
export interface Lump {
  readonly heatCapacity: number
  /** Net heat into it at the start. */
  readonly rate: number
  /** By how much that heat falls for each kelvin that it warms, the other body apart. */
  readonly conductance: number
}

/** How temperatures go on from the start. @internal */
export interface Response {
  /** How far each body has warmed after a time. */
  warmed(time: number): readonly number[]
  /** The integrals of that over the time, which tell the heat that passed. */
  integrals(time: number): readonly number[]
  /** How fast each part of the response dies away, 1 over its time constant; the fastest first. */
  readonly decays: readonly number[]
  /** Whether the first body sets out upwards (1), downwards (-1) or nowhere (0). */
  readonly direction: number
  /** When each body turns round, if it does. */
  readonly turns: readonly (number | undefined)[]
  /** When, up to a time, the first body has warmed by a difference, if it does; for no difference, when it comes back. */
  reaches(difference: number, until: number): number | undefined
  /**
   * The integral, up to a time, of how far the first body lies below the second for as long as it does, or below what
   * stays as it is, where there is no second. `ahead` is by how much that is the warmer one at the start.
   */
  below(ahead: number, until: number): number
}

/** A part of a response that dies away by itself: how fast, and how fast it sets each body out. */
interface Mode {
  readonly decay: number
  readonly speeds: readonly number[]
}

/** The response of one body, or of two with a conductance between them. @internal */
export function responseOf(lumps: readonly [Lump] | readonly [Lump, Lump], between = 0): Response {
  return lumps.length === 1 ? new Single(lumps[0]) : new Coupled(coupled(lumps[0], lumps[1], between))
}

/** One body. A drive has one for every step: it is kept to two numbers. */
class Single implements Response {
  readonly decay: number
  readonly speed: number

  constructor({ heatCapacity, rate, conductance }: Lump) {
    this.decay = conductance / heatCapacity
    this.speed = rate / heatCapacity
  }

  warmed(time: number): readonly number[] {
    return [this.speed * time * risen(this.decay * time)]
  }

  integrals(time: number): readonly number[] {
    return [this.speed * time ** 2 * risenSince(this.decay * time)]
  }

  get decays(): readonly number[] {
    return [this.decay]
  }

  get direction(): number {
    return Math.sign(this.speed)
  }

  get turns(): readonly undefined[] {
    return NEVER
  }

  reaches(difference: number, until: number): number | undefined {
    return timeTo(this.decay, this.speed, difference, until)
  }

  below(ahead: number, until: number): number {
    const left = (time: number) => ahead - (this.warmed(time)[0] as number)
    const integral = (time: number) => ahead * time - (this.integrals(time)[0] as number)
    return whilePositive(left, integral, undefined, until)
  }
}

/** One body never turns round. */
const NEVER = [undefined]

/** Two bodies. */
class Coupled implements Response {
  readonly turns: readonly (number | undefined)[]
  readonly #modes: readonly Mode[]

  constructor(modes: readonly Mode[]) {
    this.#modes = modes
    this.turns = [turnOf(modes, (speeds) => speeds[0] as number), turnOf(modes, (speeds) => speeds[1] as number)]
  }

  warmed(time: number): readonly number[] {
    return [this.#sum(time, 0, risen, 1), this.#sum(time, 1, risen, 1)]
  }

  integrals(time: number): readonly number[] {
    return [this.#sum(time, 0, risenSince, 2), this.#sum(time, 1, risenSince, 2)]
  }

  get decays(): readonly number[] {
    return this.#modes.map(({ decay }) => decay)
  }

  get direction(): number {
    return directionOf(this.#modes)
  }

  reaches(difference: number, until: number): number | undefined {
    return firstTime((time) => this.#sum(time, 0, risen, 1) - difference, this.turns[0], difference, until)
  }

  below(ahead: number, until: number): number {
    const gap = ([first, second]: readonly number[]) => (second as number) - (first as number)
    const left = (time: number) => ahead + gap(this.warmed(time))
    const integral = (time: number) => ahead * time + gap(this.integrals(time))
    return whilePositive(left, integral, turnOf(this.#modes, gap), until)
  }

  #sum(time: number, body: number, shape: (x: number) => number, power: number): number {
    return this.#modes.reduce(
      (all, { decay, speeds }) => all + (speeds[body] as number) * time ** power * shape(decay * time),
      0,
    )
  }
}

/** (1 − exp(−x)) / x, and 1 where nothing dies away. */
function risen(x: number): number {
  return x === 0 ? 1 : -Math.expm1(-x) / x
}

/** (x − 1 + exp(−x)) / x², by its series where the difference would cancel. */
function risenSince(x: number): number {
  return x < 0.02
    ? 1 / 2 - x / 6 + x ** 2 / 24 - x ** 3 / 120 + x ** 4 / 720 - x ** 5 / 5040
    : (x + Math.expm1(-x)) / x ** 2
}

/** The two modes of two bodies. Measured by the roots of their heat capacities, their equations are symmetrical. */
function coupled(first: Lump, second: Lump, between: number): Mode[] {
  const [root1, root2] = [Math.sqrt(first.heatCapacity), Math.sqrt(second.heatCapacity)]
  const a = (first.conductance + between) / first.heatCapacity
  const d = (second.conductance + between) / second.heatCapacity
  const b = between / (root1 * root2)
  const fast = (a + d + Math.hypot(a - d, 2 * b)) / 2
  const product =
    (first.conductance * second.conductance + between * (first.conductance + second.conductance)) /
    (first.heatCapacity * second.heatCapacity)
  // The slow one from the product of both: their difference would lose its digits.
  const slow = fast === 0 ? 0 : product / fast
  const angle = Math.atan2(-2 * b, a - d) / 2
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const [push1, push2] = [first.rate / root1, second.rate / root2]
  const along = cos * push1 + sin * push2
  const across = cos * push2 - sin * push1
  return [
    { decay: fast, speeds: [(along * cos) / root1, (along * sin) / root2] },
    { decay: slow, speeds: [(-across * sin) / root1, (across * cos) / root2] },
  ]
}

function directionOf(modes: readonly Mode[]): number {
  const speed = modes.reduce((sum, { speeds }) => sum + (speeds[0] as number), 0)
  const scale = modes.reduce((sum, { speeds }) => sum + Math.abs(speeds[0] as number), 0)
  // Where the first body stands still it follows the way on which it is sent next.
  if (Math.abs(speed) > 4 * Number.EPSILON * scale) return Math.sign(speed)
  return Math.sign(-modes.reduce((sum, { decay, speeds }) => sum + decay * (speeds[0] as number), 0))
}

/** When something that moves with the two bodies, at a speed made of theirs, turns round. */
function turnOf([fast, slow]: readonly Mode[], speedOf: (speeds: Mode['speeds']) => number): number | undefined {
  if (fast === undefined || slow === undefined || fast.decay === slow.decay) return undefined
  const ratio = -speedOf(fast.speeds) / speedOf(slow.speeds)
  const time = Math.log(ratio) / (fast.decay - slow.decay)
  return ratio > 0 && Number.isFinite(time) && time > 0 ? time : undefined
}

/** When a body by itself has warmed by a difference. */
function timeTo(decay: number, speed: number, difference: number, until: number): number | undefined {
  const straight = difference / speed
  if (!(straight > 0) || decay * straight >= 1) return undefined
  const time = decay === 0 ? straight : -Math.log1p(-decay * straight) / decay
  return time <= until ? time : undefined
}

/** The first zero of a function that starts at −difference and turns at most once. */
function firstTime(f: (time: number) => number, turn: number | undefined, difference: number, until: number) {
  const middle = turn === undefined ? until : Math.min(turn, until)
  const start = -difference
  if (start !== 0 && start * f(middle) <= 0) return rootBetween(f, 0, middle)
  return middle < until && f(middle) * f(until) <= 0 ? rootBetween(f, middle, until) : undefined
}

/** The integral of a function that turns at most once, over the times at which it is positive. */
function whilePositive(
  f: (time: number) => number,
  integral: (time: number) => number,
  turn: number | undefined,
  until: number,
): number {
  const middle = Math.min(turn ?? until, until)
  // Where it has no zero on one side of the turn, the end nearest to one stands for it.
  const edges = [0, rootBetween(f, 0, middle), middle, rootBetween(f, middle, until), until].map(integral)
  return edges.reduce((sum, to, i) => (i === 0 ? 0 : sum + Math.max(0, to - (edges[i - 1] as number))), 0)
}
