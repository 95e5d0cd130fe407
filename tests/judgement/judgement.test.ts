/** What is dangerous or impossible is told; what is sound stays quiet. */
import { describe } from 'vitest'
import { drive } from './drive.js'
import { electrical } from './electrical.js'
import { judged } from './judgement.js'
import { thermal } from './thermal.js'

describe.each(Object.entries({ ...electrical, ...drive, ...thermal }))('%s', (_, table) => judged(table))
