/** Every formula and every procedure of every domain, by name. */
import * as drivetrain from './drivetrain/index.js'
import * as electrical from './electrical/index.js'
import { isFormula } from './formula/calculation.js'
import type { AnyFormula } from './formula/index.js'
import * as mass from './mass/index.js'
import { type AnyProcedure, isProcedure } from './procedure/index.js'
import * as range from './range/index.js'
import * as thermal from './thermal/index.js'

/* @__NO_SIDE_EFFECTS__ */
function exportedBy<T extends { readonly name: string }>(
  isOne: (each: unknown) => each is T,
  ...domains: readonly object[]
): { readonly [name: string]: T } {
  const found = domains.flatMap((domain) => Object.values(domain)).filter(isOne)
  // Sorted, because what a module exports comes in another order as CommonJS.
  const byName = found.sort((a, b) => (a.name < b.name ? -1 : 1))
  return Object.freeze(Object.fromEntries(byName.map((each) => [each.name, each])))
}

/** Every formula that the domains export, by name; nothing is listed by hand. */
export const catalogue: { readonly [name: string]: AnyFormula } = /*@__PURE__*/ exportedBy(
  (each): each is AnyFormula => typeof each === 'function' && isFormula(each as never),
  thermal,
  mass,
  electrical,
  drivetrain,
  range,
)

/** Every procedure that the domains export, by name; nothing is listed by hand. */
export const procedures: { readonly [name: string]: AnyProcedure } = /*@__PURE__*/ exportedBy(
  isProcedure,
  thermal,
  mass,
  electrical,
  drivetrain,
  range,
)
