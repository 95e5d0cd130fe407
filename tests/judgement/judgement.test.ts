/** What is dangerous or impossible is told; what is sound stays quiet. */
import { describe } from 'vitest'
import { drive } from './drive.js'
import { electrical } from './electrical.js'
import { judged } from './judgement.js'

describe.each(Object.entries({ ...electrical, ...drive }))('%s', (_, table) => judged(table))
