/** Where the figures of an assessment come from: the formula, the arithmetic, the procedure or the line of the sheet. */
import { type FormulaStep, recorded, type Step } from '../formula/record.js'
import { type Call, callsOf } from '../procedure/calls.js'
import type { AnyProcedure } from '../procedure/index.js'
import { once } from '../procedure/once.js'
import { pathText } from '../procedure/path.js'
import type { Quantity } from '../quantity/index.js'
import { type Made, makingOf } from '../quantity/made.js'
import { isQuantity } from '../quantity/read.js'

/** Where the inputs of a figure come from, by their names; those that are left out are defaults, or were found in a loop. */
export interface Inputs {
  readonly [name: string]: Origin
}

/** A figure that a formula gave. */
export interface FromFormula {
  readonly by: 'formula'
  /** The formula with its inputs and its result. */
  readonly step: FormulaStep
  readonly inputs: Inputs
}

/** A figure that is the sum, difference, product or quotient of two. */
export interface FromArithmetic {
  readonly by: 'arithmetic'
  readonly operation: '+' | '−' | '×' | '÷'
  readonly left: Quantity
  readonly right: Quantity | number
  readonly result: Quantity
  /** Where `left` and `right` come from. */
  readonly inputs: Inputs
}

/** A figure that a procedure found by more than one formula: in a loop, by a search, or from a table. */
export interface FromProcedure {
  readonly by: 'procedure'
  readonly procedure: AnyProcedure
  /** What it was called with. */
  readonly given: unknown
  /** All that it gave. */
  readonly result: unknown
  /** Where in the result the figure stands, such as `rows[2].topSpeed`. */
  readonly path: string
  /** Where the quantities of `given` come from, by their paths in it. */
  readonly inputs: Inputs
}

/** A figure of the sheet. */
export interface FromSheet {
  readonly by: 'sheet'
  /** Where in the sheet it stands, such as `car.wheelbase`. */
  readonly path: string
}

/** Where a figure comes from: a formula, arithmetic, a procedure, or the sheet itself. */
export type Origin = FromFormula | FromArithmetic | FromProcedure | FromSheet

/** A list of a result that is longer is a course over time, of which no single figure is told. */
const LONGEST = 1000

/** Runs work, and tells where the quantities that it gives come from. @internal */
export function originsOf<T>(sheet: object, work: () => T) {
  const { result: traced, made } = makingOf(() => callsOf(() => recorded(work)))
  const { calls, result: recording } = traced
  return { result: recording.result, of: new Origins(sheet, recording.steps, calls, made).of }
}

class Origins {
  readonly #steps = new Map<Quantity, FormulaStep>()
  readonly #results = new Map<Quantity, { readonly call: Call; readonly path: string }>()
  readonly #sheet = new Map<Quantity, string>()
  readonly #made: WeakMap<Quantity, Made>
  readonly #known = new Map<Quantity, Origin | undefined>()

  constructor(sheet: object, steps: readonly Step[], calls: readonly Call[], made: WeakMap<Quantity, Made>) {
    this.#made = made
    this.#take(steps)
    within(sheet, [], (value, path) => this.#sheet.set(value, path))
    for (const call of calls) {
      within(call.result, [], (value, path) => {
        // What a procedure on the way gave is told as that one's.
        if (!this.#results.has(value)) this.#results.set(value, { call, path })
      })
    }
  }

  #take(steps: readonly Step[]): void {
    for (const step of steps) {
      if ('heading' in step) this.#take(step.steps)
      else this.#steps.set(step.result, step)
    }
  }

  readonly of = (value: Quantity): Origin | undefined => {
    if (!this.#known.has(value)) this.#known.set(value, this.#find(value))
    return this.#known.get(value)
  }

  #find(value: Quantity): Origin | undefined {
    const step = this.#steps.get(value)
    if (step !== undefined) return { by: 'formula', step, inputs: this.#all(step.inputs) }
    const path = this.#sheet.get(value)
    if (path !== undefined) return { by: 'sheet', path }
    const made = this.#made.get(value)
    if (made !== undefined) return this.#ofMade(value, made)
    return this.#ofResult(value)
  }

  #ofMade(value: Quantity, { by, of: left, and: right }: Made): Origin | undefined {
    if (by === 'as' || right === undefined) return this.of(left) ?? this.#ofResult(value)
    const inputs = this.#all({ left, ...(isQuantity(right) ? { right: right as Quantity } : {}) })
    return { by: 'arithmetic', operation: by, left, right, result: value, inputs }
  }

  #ofResult(value: Quantity): Origin | undefined {
    const found = this.#results.get(value)
    if (found === undefined) return undefined
    const { call, path } = found
    const inputs = once(() => {
      const given: { [path: string]: Quantity } = {}
      within(call.given, [], (each, at) => {
        // What a procedure hands on as it came is no input of itself.
        if (this.#results.get(each)?.call !== call) given[at] = each
      })
      return this.#all(given)
    })
    return {
      by: 'procedure',
      ...call,
      path,
      get inputs() {
        return inputs()
      },
    }
  }

  #all(inputs: { readonly [key: string]: Quantity }): { readonly [key: string]: Origin } {
    return Object.fromEntries(
      Object.entries(inputs).flatMap(([key, value]) => {
        const origin = this.of(value)
        return origin === undefined ? [] : [[key, origin]]
      }),
    )
  }
}

/** Every quantity within a value, with its path. */
function within(value: unknown, path: readonly PropertyKey[], take: (value: Quantity, path: string) => void): void {
  if (isQuantity(value)) {
    take(value as unknown as Quantity, pathText(path))
  } else if (Array.isArray(value)) {
    if (value.length > LONGEST) return
    for (const [i, each] of value.entries()) within(each, [...path, i], take)
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, each] of Object.entries(value)) within(each, [...path, key], take)
  }
}
