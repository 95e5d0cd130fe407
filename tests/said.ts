import type { Assumption } from '../src/procedure/index.js'

/** An assumption in words. */
export function said({ text }: Assumption): string {
  return text
}
