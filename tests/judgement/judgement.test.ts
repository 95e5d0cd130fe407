/** What is dangerous or impossible is told; what is sound stays quiet. */
import { describe } from 'vitest'
import { drive } from './drive.js'
import { electrical } from './electrical.js'
import { judged } from './judgement.js'
import { mass } from './mass.js'
import { thermal } from './thermal.js'

describe.each(Object.entries({ ...electrical, ...drive, ...thermal, ...mass }))('%s', (_, table) => judged(table))
