/** Every formula against the laws stated for its inputs, over the whole range in which it is declared to hold. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { catalogue } from '../../src/catalogue.js'
import type { AnyFormula, Input } from '../../src/formula/index.js'
import { holds, inputsFor, isResult, numbersFor } from '../engine/draw.js'
import type { Law, Laws } from '../laws.js'
import { runs } from '../runs.js'
import { drivetrainLaws } from './drivetrain.js'
import { electricalLaws } from './electrical.js'
import { massLaws } from './mass.js'
import { rangeLaws } from './range.js'
import { thermalLaws } from './thermal.js'

const stated: readonly Laws[] = [...thermalLaws, ...massLaws, ...electricalLaws, ...drivetrainLaws, ...rangeLaws]
const lawsByName = new Map(stated.map((each) => [each.name, each.laws]))

/** Rounding may turn a result the other way by a few units in its last places, or by what a difference cancels. */
const SLACK = 1e-9

function checkLaw(formula: AnyFormula, key: string, law: Law): void {
  const other = numbersFor(formula.inputs[key] as Input)
  fc.assert(
    fc.property(inputsFor(formula), other, (si, value) => {
      const moved = { ...si, [key]: value }
      fc.pre(holds(formula, moved) && isResult(formula, formula.compute(moved)))
      const [low, high] = (si[key] as number) <= value ? [si, moved] : [moved, si]
      const change = formula.compute(high) - formula.compute(low)
      const slack = SLACK * Math.max(Math.abs(formula.compute(high)), Math.abs(formula.compute(low)))
      if (law === 'rises' ? change < -slack : change > slack) {
        throw new Error(`${formula.name} does not keep to "${law}" with ${key}: the result changes by ${change}`)
      }
    }),
    { numRuns: runs(100), includeErrorInReport: true },
  )
}

describe.each(Object.values(catalogue).map((each) => [each.name, each] as const))('%s', (name, formula) => {
  const laws = lawsByName.get(name)
  it('has a law for every input', () => {
    expect(Object.keys(laws ?? {}).sort()).toEqual(Object.keys(formula.inputs).sort())
  })
  for (const [key, law] of Object.entries(laws ?? {})) {
    if (law === 'rises' || law === 'falls') it(`${law} with ${key}`, () => checkLaw(formula, key, law))
  }
})

describe('the check of laws', () => {
  it('finds a law that does not hold', () => {
    const [formula] = Object.values(catalogue).filter((each) => each.name === 'cableVoltageDrop')
    expect(() => checkLaw(formula as AnyFormula, 'length', 'falls')).toThrow(/does not keep to "falls" with length/)
  })
  it('states laws only for formulas that exist', () => {
    expect(stated.map((each) => each.name).filter((name) => !(name in catalogue))).toEqual([])
  })
})
