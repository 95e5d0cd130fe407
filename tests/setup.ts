/** Draws the same cases on every run, so that a red run can be run again; another SEED draws others. */
import fc from 'fast-check'
import { runs } from './runs.js'

fc.configureGlobal({ seed: Number(process.env.SEED ?? 1967), numRuns: runs(100) })
