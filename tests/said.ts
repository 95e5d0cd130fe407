import type { Assumption } from '../src/procedure/index.js'

/** An assumption in words. */
export function said(assumption: string | Assumption): string {
  return typeof assumption === 'string' ? assumption : assumption.text
}
