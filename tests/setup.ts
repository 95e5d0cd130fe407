/** Draws the same cases on every run, so that a red run can be run again; another SEED draws others. */
import fc from 'fast-check'

fc.configureGlobal({ seed: Number(process.env.SEED ?? 1967) })
