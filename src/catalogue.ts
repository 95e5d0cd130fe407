/** Every formula of every domain, by name. */
import * as drivetrain from './drivetrain/index.js'
import * as electrical from './electrical/index.js'
import { isFormula } from './formula/calculation.js'
import type { AnyFormula } from './formula/index.js'
import * as mass from './mass/index.js'
import * as range from './range/index.js'
import * as thermal from './thermal/index.js'

/* @__NO_SIDE_EFFECTS__ */
function formulasOf(...domains: readonly object[]): { readonly [name: string]: AnyFormula } {
  const exported = domains.flatMap((domain) => Object.values(domain))
  const formulas = exported.filter((each): each is AnyFormula => typeof each === 'function' && isFormula(each))
  // Sorted, because what a module exports comes in another order as CommonJS.
  const byName = formulas.sort((a, b) => (a.name < b.name ? -1 : 1))
  return Object.freeze(Object.fromEntries(byName.map((formula) => [formula.name, formula])))
}

/** Every formula that the domains export, by name; nothing is listed by hand. */
export const catalogue = /*@__PURE__*/ formulasOf(thermal, mass, electrical, drivetrain, range)
