/** Speed and size against their bars: medians, with ratios and differences within this one run. */
import { driveCycleRows } from './drive-cycle.js'
import { exploreRows } from './explore.js'
import { formulaRows } from './formula.js'
import { importRows } from './import.js'
import { placeMassesRows } from './place-masses.js'
import { tableOf } from './row.js'
import { sizeRows } from './size.js'

const rows = [
  ...(await formulaRows()),
  ...importRows(),
  ...(await sizeRows()),
  ...(await placeMassesRows()),
  ...driveCycleRows(),
  ...exploreRows(),
]
console.log(tableOf(rows))
