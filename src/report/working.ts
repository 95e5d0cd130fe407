/** The working behind a figure, to be unfolded: formula, numbers, result, source, and the same behind each of its inputs. */
import { lineOf } from '../formula/explain.js'
import { type AnyFormula, type FormulaStep, sourceText } from '../formula/index.js'
import type { AnyProcedure } from '../procedure/index.js'
import type { Quantity } from '../quantity/index.js'
import { isQuantity } from '../quantity/read.js'
import { figureHtml, html } from './markup.js'
import { mathOf } from './math.js'
import type { Telling } from './telling.js'

/** Where a figure comes from. @internal */
export type Origin =
  | { readonly by: 'formula'; readonly step: FormulaStep; readonly inputs: Inputs }
  | {
      readonly by: 'arithmetic'
      readonly operation: string
      readonly left: Quantity
      readonly right: Quantity | number
      readonly result: Quantity
      readonly inputs: Inputs
    }
  | {
      readonly by: 'procedure'
      readonly procedure: AnyProcedure
      readonly given: unknown
      readonly path: string
      readonly inputs?: Inputs
    }
  | { readonly by: 'sheet'; readonly path: string }

interface Inputs {
  readonly [key: string]: Origin | undefined
}

/** A working goes no deeper than this from where it begins; what lies deeper stands under its own number. */
const DEEPEST = 8
/** So many fields of a procedure are told. */
const MOST_FIELDS = 24
/** So many characters all workings together may take, so that a report keeps to its size. */
const MOST = 120_000

/** A formula with the number by which it is cited. @internal */
export interface CitedFormula {
  readonly number: number
  readonly formula: AnyFormula
}

/** The workings of a report: each step is told once, where it is first needed, and cited by its number elsewhere. @internal */
export class Workings {
  readonly #telling: Telling
  readonly #told = new Map<string, number>()
  readonly #objects = new WeakMap<object, number>()
  readonly #formulas = new Map<string, CitedFormula>()
  #objectCount = 0
  #room: number

  constructor(telling: Telling, room = MOST) {
    this.#telling = telling
    this.#room = room
  }

  /** The formulas that the workings cite, in the order of their numbers. */
  get formulas(): readonly CitedFormula[] {
    return [...this.#formulas.values()]
  }

  /** What is to be unfolded behind a figure; empty where nothing is known of it. */
  of(origin: Origin | undefined): string {
    return origin === undefined ? '' : this.#origin(origin, 0)
  }

  #origin(origin: Origin, depth: number): string {
    if (origin.by === 'sheet') return `<p>the sheet: ${html(origin.path)}</p>`
    const key = this.#keyOf(origin)
    const before = this.#told.get(key)
    if (before !== undefined) return `<p>${this.#titleOf(origin)}: see <a href="#w${before}">working ${before}</a></p>`
    if (depth > DEEPEST || this.#room <= 0) return `<p>${this.#titleOf(origin)}; explain() tells the rest</p>`
    const number = this.#told.size + 1
    this.#told.set(key, number)
    const own = this.#own(origin, number)
    this.#room -= own.length
    return `<div class="step" id="w${number}">${own}${this.#inputs(origin, depth)}</div>`
  }

  #titleOf(origin: Exclude<Origin, { by: 'sheet' }>): string {
    if (origin.by === 'formula')
      return `${html(origin.step.formula.title)}, ${figureHtml(this.#telling.shown(origin.step.result))}`
    if (origin.by === 'arithmetic') return `${this.#sum(origin)}`
    return `${html(origin.procedure.title)}, ${html(origin.path)}`
  }

  #sum({ operation, left, right, result }: Extract<Origin, { by: 'arithmetic' }>): string {
    const [one, other, all] = [left, right, result].map((each) =>
      figureHtml(typeof each === 'number' ? String(Number(each.toPrecision(6))) : this.#telling.shown(each)),
    )
    return `${one} ${html(operation)} ${other} = <b>${all}</b>`
  }

  #own(origin: Exclude<Origin, { by: 'sheet' }>, number: number): string {
    const no = `<span class="no">w${number}</span>`
    if (origin.by === 'arithmetic') return `<p class="numbers">${no} ${this.#sum(origin)}</p>`
    if (origin.by === 'procedure') {
      const { title, answers, source } = origin.procedure
      const sources = source.map((each) => html(sourceText(each))).join('; ')
      return `<p>${no} ${html(title)}: ${html(answers)}</p>${this.#given(origin.given, origin.inputs ?? {})}<p class="basis">It stands at ${html(origin.path)} of what is found. ${sources}.</p>`
    }
    const { step } = origin
    const cited = this.#cited(step.formula)
    const { symbol, formula, numbers, result, source } = lineOf(step)
    const sum = numbers === formula ? '' : `${html(numbers)} = `
    return `<p>${no} ${html(step.formula.title)}, <a href="#e${cited}">formula ${cited}</a></p><div class="formula">${mathOf(step.formula)}</div><p class="numbers">${html(symbol)} = ${sum}<b>${figureHtml(result)}</b></p><p class="basis">${html(source)}</p>`
  }

  #cited(formula: AnyFormula): number {
    const known = this.#formulas.get(formula.name)
    if (known !== undefined) return known.number
    const number = this.#formulas.size + 1
    this.#formulas.set(formula.name, { number, formula })
    return number
  }

  /** Where the inputs come from: each to be unfolded again. */
  #inputs(origin: Exclude<Origin, { by: 'sheet' }>, depth: number): string {
    const items = Object.entries(origin.inputs ?? {}).flatMap(([key, from]) => {
      // What a procedure was given of the sheet stands in its list.
      if (from === undefined || (origin.by === 'procedure' && from.by === 'sheet')) return []
      const { name, value } = nameIn(origin, key)
      const figure = value === undefined ? '' : ` ${figureHtml(this.#telling.shown(value))}`
      if (from.by === 'sheet') return [`<li>${html(name)}:${figure}, the sheet: ${html(from.path)}</li>`]
      const inner = this.#origin(from, depth + 1)
      return [
        /^<p>/.test(inner)
          ? `<li>${html(name)}:${figure}; ${inner.slice(3, -4)}</li>`
          : `<li><details class="told"><summary>${html(name)}:${figure} <span class="open"></span></summary>${inner}</details></li>`,
      ]
    })
    return items.length === 0 ? '' : `<ul>${items.join('')}</ul>`
  }

  /** What a procedure was called with. */
  #given(given: unknown, inputs: Inputs): string {
    const fields = flat(given)
    const told = fields.slice(0, MOST_FIELDS).map(([path, value]) => {
      const from = inputs[path]
      const sheet = from?.by === 'sheet' && from.path !== path ? ` (the sheet: ${html(from.path)})` : ''
      return `${html(path)} ${figureHtml(isQuantity(value) ? this.#telling.shown(value as unknown as Quantity) : String(value))}${sheet}`
    })
    const more = fields.length - told.length
    return `<p class="numbers">given: ${told.join('; ')}${more > 0 ? `; and ${more} more` : ''}</p>`
  }

  #keyOf(origin: Exclude<Origin, { by: 'sheet' }>): string {
    if (origin.by === 'formula') {
      const { formula, inputs } = origin.step
      return `${formula.name} ${Object.values(inputs).map(({ si }) => si)}`
    }
    if (origin.by === 'procedure') return `${origin.procedure.name} ${this.#idOf(Object(origin.given))} ${origin.path}`
    return `= ${this.#idOf(origin.result)}`
  }

  #idOf(value: object): number {
    const known = this.#objects.get(value)
    if (known !== undefined) return known
    this.#objects.set(value, ++this.#objectCount)
    return this.#objectCount
  }
}

/** What an input of an origin is called, and its value. */
function nameIn(
  origin: Exclude<Origin, { by: 'sheet' }>,
  key: string,
): { readonly name: string; readonly value?: Quantity } {
  if (origin.by === 'formula') {
    const { formula, inputs } = origin.step
    const input = formula.inputs[key]
    const value = inputs[key]
    return {
      name: input === undefined ? key : `${input.symbol}, ${input.about}`,
      ...(value === undefined ? {} : { value }),
    }
  }
  if (origin.by === 'arithmetic') {
    const value = key === 'left' ? origin.left : origin.right
    return { name: key === 'left' ? 'the first' : 'the second', ...(typeof value === 'number' ? {} : { value }) }
  }
  return { name: key }
}

/** Every value within another that is told in a word, with its path. */
function flat(value: unknown, path = ''): (readonly [path: string, value: unknown])[] {
  if (value === undefined || value === null || typeof value === 'function') return []
  if (isQuantity(value) || typeof value !== 'object') return [[path, value]]
  const inner = Object.entries(value).flatMap(([key, each]) =>
    flat(each, Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`),
  )
  // A course over time is told by how long it is.
  return Array.isArray(value) && inner.length > MOST_FIELDS ? [[path, `${value.length} values`]] : inner
}
