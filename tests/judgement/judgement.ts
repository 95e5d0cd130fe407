/** Cases that must be told, each with a sound neighbour that must stay quiet. */
import { expect, it } from 'vitest'
import { type AnyProcedure, type Check, type Findings, isMet } from '../../src/procedure/index.js'
import { CalculationError, InputError } from '../../src/quantity/index.js'
import { patched } from '../patched.js'

/** What is changed in an input, as a patch of it: what is undefined is left out, lists are replaced whole. */
export type Patch = { readonly [key: string]: unknown }

/** A dangerous case with its sound neighbour. */
export interface Case {
  readonly what: string
  readonly dangerous: Patch
  /** The check that must not pass, with its verdict; or words that an error, a note, a caution or an assumption must hold. */
  readonly told: readonly [id: string, verdict: 'fail' | 'unknown'] | RegExp
  /** What differs from the sound input, where not that itself is the neighbour. */
  readonly sound?: Patch
}

/** Cases of one procedure, beside an input that is sound. */
export interface Table {
  readonly call: (input: never) => unknown
  readonly sound: Patch
  readonly cases: readonly Case[]
}

/** What a call finds, or the error that it throws. */
export function foundBy(call: (input: never) => unknown, input: unknown): Partial<Findings> | Error {
  try {
    return call(input as never) as Partial<Findings>
  } catch (error) {
    if (error instanceof InputError || error instanceof CalculationError) return error
    throw error
  }
}

/** The checks that do not pass. */
function unmet(found: Partial<Findings> | Error): readonly Check[] {
  return found instanceof Error ? [] : (found.checks ?? []).filter((check) => !isMet(check))
}

/** Everything that is said. */
function saidIn(found: Partial<Findings> | Error): string {
  if (found instanceof Error) return found.message
  const { checks = [], assumptions = [], notes = [], cautions = [] } = found
  const texts = [...unmet({ checks }), ...assumptions, ...notes, ...cautions].map(({ text }) => text)
  return texts.join('\n')
}

/** Tries every case of a table. */
export function judged({ call, sound, cases }: Table): void {
  it('stays quiet over what is sound', () => {
    expect(quietly(foundBy(call, sound))).toEqual([])
  })
  it.each(cases.map((each) => [each.what, each] as const))('tells %s', (_, { dangerous, told, sound: neighbour }) => {
    const found = foundBy(call, patched(sound, dangerous))
    if (told instanceof RegExp) expect(saidIn(found)).toMatch(told)
    else expect(unmet(found).map(({ id, verdict }) => [id, verdict])).toContainEqual([...told])
    if (neighbour !== undefined) expect(quietly(foundBy(call, patched(sound, neighbour)))).toEqual([])
  })
}

/** What cries: failed and unknown checks, and figures that are called unusual. */
function quietly(found: Partial<Findings> | Error): string[] {
  if (found instanceof Error) return [found.message]
  return [...unmet(found), ...(found.notes ?? [])].map(({ id, text }) => `${id}: ${text}`)
}

/** Which way each figure of an input makes it worse, beside an input that serves. */
export interface Worse {
  readonly procedure: AnyProcedure
  readonly sound: Patch
  readonly worse: { readonly [path: string]: 'more' | 'less' }
  /** Whether one check may come to pass as another fails: then the verdicts are held together, and not each. */
  readonly isTraded?: true
  /** Whether a call takes milliseconds: then fewer inputs are drawn, but for the deep tests. */
  readonly isSlow?: true
  /** Whether a result serves, where its checks alone do not tell. */
  readonly serves?: (found: never) => boolean
}
