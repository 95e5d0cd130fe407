/** The working behind a figure, to be unfolded: formula, numbers, result, source, and the same behind each of its inputs. */
import type { Inputs, Origin } from '../conversion/index.js'
import { lineOf } from '../formula/explain.js'
import { type AnyFormula, type FormulaStep, sourceText } from '../formula/index.js'
import type { Quantity } from '../quantity/index.js'
import { isQuantity } from '../quantity/read.js'
import { figureHtml, html } from './markup.js'
import { mathOf } from './math.js'
import type { Telling } from './telling.js'

/** A working goes no deeper than this from where it begins; what lies deeper stands under its own number. */
const DEEPEST = 5
/** So many fields of a procedure are told, and so many inputs of a step that is not urgent. */
const [MOST_FIELDS, MOST_INPUTS] = [24, 8]
/**
 * So many characters may be told of what is behind the first step of a figure, and of one that fails, is near its limit or
 * cannot be judged; and in all workings together, first steps apart, and with them. A report keeps to its size.
 */
const [MOST_BEHIND, MOST_BEHIND_URGENT, MOST_BEHIND_ALL, MOST] = [700, 8_000, 12_000, 300_000]

/** A formula with the number by which it is cited. @internal */
export interface CitedFormula {
  readonly number: number
  readonly formula: AnyFormula
}

type Step = Exclude<Origin, { readonly by: 'sheet' }>
type Sum = Extract<Origin, { readonly by: 'arithmetic' }>

/** An input of a step: what it is called there, its value, and where it comes from. */
interface Input {
  readonly name: string
  readonly value?: Quantity
  readonly from: Origin
}

/** The workings of a report: each step is told once, where it is first needed, and cited by its number elsewhere. @internal */
export class Workings {
  readonly #telling: Telling
  readonly #told = new Map<string, number>()
  readonly #objects = new WeakMap<object, number>()
  readonly #formulas = new Map<string, CitedFormula>()
  readonly #procedures = new Set<string>()
  #objectCount = 0
  #leftBehind = MOST_BEHIND_ALL
  #left = MOST
  #room = 0
  #isUrgent = false

  constructor(telling: Telling) {
    this.#telling = telling
  }

  /** The formulas that the workings cite, in the order of their numbers. */
  get formulas(): readonly CitedFormula[] {
    return [...this.#formulas.values()]
  }

  /** What is to be unfolded behind a figure; empty where nothing is known of it. */
  of(origin: Origin | undefined, isUrgent = false): string {
    if (origin === undefined) return ''
    const room = isUrgent ? MOST_BEHIND_URGENT : Math.min(MOST_BEHIND, this.#leftBehind)
    this.#room = room
    this.#isUrgent = isUrgent
    const told = this.#origin(plain(origin), 0)
    if (!isUrgent) this.#leftBehind -= room - this.#room
    this.#left -= told.length
    return told
  }

  #origin(origin: Origin, depth: number): string {
    if (origin.by === 'sheet') return `<p>the sheet: ${html(origin.path)}</p>`
    const key = this.#keyOf(origin)
    const before = this.#told.get(key)
    // An input has a name of its own where it is cited.
    const name = depth === 0 ? this.#nameOf(origin) : ''
    if (before !== undefined) return `<p>${name}<a href="#w${before}">working ${before}</a></p>`
    if (depth > DEEPEST || (depth > 0 && this.#room <= 0) || this.#left <= 0)
      return `<p>${this.#nameOf(origin).replace(/, $/, '')}</p>`
    const number = this.#told.size + 1
    this.#told.set(key, number)
    const [own, inputs] = this.#step(origin)
    if (depth > 0) this.#room -= own.length + 60 * (inputs.length + 1)
    return `<div class="step" id="w${number}">${own}${this.#inputs(inputs, depth)}</div>`
  }

  /** A step in a few words, where it is told elsewhere or not at all. */
  #nameOf(origin: Step): string {
    if (origin.by === 'formula') return `${html(origin.step.formula.title)}, `
    if (origin.by === 'procedure') return `${html(origin.procedure.title)}: ${html(origin.path)}, `
    return ''
  }

  #step(origin: Step): readonly [own: string, inputs: readonly Input[]] {
    if (origin.by === 'formula') return [this.#formula(origin.step), inputsOf(origin)]
    if (origin.by === 'arithmetic') {
      const { terms, inputs } = this.#terms(origin)
      return [`<p>${terms} = <b>${this.#number(origin.result)}</b></p>`, inputs]
    }
    const { procedure, given, inputs, path } = origin
    const fields = new Map(flat(given))
    const sources = procedure.source.map((each) => html(sourceText(each))).join('; ')
    const isNew = !this.#procedures.has(procedure.name)
    this.#procedures.add(procedure.name)
    const basis = isNew || this.#isUrgent ? `<p class="basis">${html(procedure.answers)} ${sources}.</p>` : ''
    const own = `<p>${html(procedure.title)}: ${html(path)}</p>${basis}`
    return [
      `${own}${this.#given(fields, inputs)}`,
      Object.entries(inputs).flatMap(([name, from]): Input[] => {
        const value = fields.get(name)
        // What it was given of the sheet stands in the list.
        return from.by === 'sheet' ? [] : [{ name, from, ...(isQuantity(value) ? { value: value as never } : {}) }]
      }),
    ]
  }

  #formula(step: FormulaStep): string {
    const { formula } = step
    const cited = this.#cited(formula)
    const { symbol, formula: printed, numbers, result, source } = lineOf(step)
    // What is open in print has its mathematics beside it; the others have it under the number that they cite.
    const math = this.#isUrgent ? `<div class="formula" tabindex="0">${mathOf(formula)}</div>` : ''
    const parts = [symbol, ...(this.#isUrgent ? [] : [printed]), ...(numbers === printed ? [] : [numbers])].map(html)
    // The others have their source there too; what was left out is told with each.
    const sources = this.#isUrgent || step.defaults.length > 0 ? `<p class="basis">${html(source)}</p>` : ''
    return `<p>${html(formula.title)}, <a href="#e${cited}">formula ${cited}</a></p>${math}<p>${parts.join(' = ')} = <b>${figureHtml(result)}</b></p>${sources}`
  }

  /** A sum of sums in one line, and what goes into it. */
  #terms(sum: Sum): { readonly terms: string; readonly inputs: readonly Input[] } {
    const { operation, left, right, inputs } = sum
    const from = inputs.left && plain(inputs.left)
    const isOn =
      from?.by === 'arithmetic' && isSum(from) === isSum(sum) && !this.#told.has(this.#keyOf(from)) ? from : undefined
    const before =
      isOn === undefined
        ? { terms: this.#number(left), inputs: inputOf(this.#telling.shown(left), from) }
        : this.#terms(isOn)
    const name = typeof right === 'number' ? '' : this.#telling.shown(right)
    // Less than nothing taken away is something added.
    const isTurned = typeof right !== 'number' && right.si < 0 && isSum(sum)
    const [sign, term] = isTurned ? [operation === '+' ? '−' : '+', right.times(-1)] : [operation, right]
    return {
      terms: `${before.terms} ${sign} ${this.#number(term)}`,
      inputs: [...before.inputs, ...inputOf(name, inputs.right)],
    }
  }

  #number(value: Quantity | number): string {
    return figureHtml(typeof value === 'number' ? String(Number(value.toPrecision(6))) : this.#telling.shown(value))
  }

  #cited(formula: AnyFormula): number {
    const known = this.#formulas.get(formula.name)
    if (known !== undefined) return known.number
    const number = this.#formulas.size + 1
    this.#formulas.set(formula.name, { number, formula })
    return number
  }

  /** Where the inputs come from, each to be unfolded again. */
  #inputs(inputs: readonly Input[], depth: number): string {
    const told = inputs.slice(0, this.#isUrgent ? MOST_FIELDS : MOST_INPUTS)
    const rest = inputs.length - told.length
    const items = told.flatMap(({ name, value, from: whole }) => {
      const from = plain(whole)
      const called = `${html(name)}${value === undefined ? '' : ` ${this.#number(value)}`}`
      if (from.by === 'sheet') return `<li>${called}, the sheet: ${html(from.path)}</li>`
      const inner = this.#origin(from, depth + 1)
      // A number of a sum that is told no further stands in the sum already.
      if (inner === '<p></p>') return []
      return inner.startsWith('<p>')
        ? `<li>${[called, inner.slice(3, -4)].filter((part) => part !== '').join(', ')}</li>`
        : `<li><details><summary>${called}</summary>${inner}</details></li>`
    })
    const more = rest === 0 ? '' : `<li>and ${rest} more</li>`
    return items.length === 0 ? '' : `<ul>${items.join('')}${more}</ul>`
  }

  /** What a procedure was called with. */
  #given(fields: ReadonlyMap<string, unknown>, inputs: Inputs): string {
    const told = [...fields].slice(0, this.#isUrgent ? MOST_FIELDS : MOST_INPUTS).map(([path, value]) => {
      const from = inputs[path]
      const sheet = from?.by === 'sheet' && from.path !== path ? ` (the sheet: ${html(from.path)})` : ''
      const text = isQuantity(value) ? this.#telling.shown(value as never) : String(value)
      return `${html(path)} ${figureHtml(text)}${sheet}`
    })
    const more = fields.size - told.length
    return `<p>Given: ${told.join('; ')}${more > 0 ? `; and ${more} more` : ''}.</p>`
  }

  #keyOf(origin: Step): string {
    if (origin.by === 'formula') {
      const { formula, inputs } = origin.step
      return `${formula.name} ${Object.values(inputs).map(({ si }) => si)}`
    }
    if (origin.by === 'procedure') return `${origin.procedure.name} ${this.#idOf(Object(origin.given))}`
    return `= ${this.#idOf(origin.result)}`
  }

  #idOf(value: object): number {
    const known = this.#objects.get(value)
    if (known !== undefined) return known
    this.#objects.set(value, ++this.#objectCount)
    return this.#objectCount
  }
}

/** Where a figure comes from that is once another. */
function plain(origin: Origin): Origin {
  if (origin.by !== 'arithmetic' || origin.right !== 1 || isSum(origin)) return origin
  return origin.inputs.left === undefined ? origin : plain(origin.inputs.left)
}

function isSum({ operation }: Sum): boolean {
  return operation === '+' || operation === '−'
}

function inputOf(name: string, from: Origin | undefined): readonly Input[] {
  return from === undefined ? [] : [{ name, from }]
}

function inputsOf({ step: { formula, inputs }, inputs: origins }: Extract<Origin, { by: 'formula' }>): Input[] {
  return Object.entries(origins).flatMap(([key, from]): Input[] => {
    const input = formula.inputs[key]
    const value = inputs[key]
    return [
      {
        name: input === undefined ? key : input.symbol,
        from,
        ...(value === undefined ? {} : { value }),
      },
    ]
  })
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
