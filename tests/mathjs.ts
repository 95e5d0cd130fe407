/** mathjs, the independent reference for expressions, units and dimensions. */
import { all, create, type FactoryFunctionMap } from 'mathjs'

/** It compares exactly: by default it would take nearly equal numbers for equal, on either side of a threshold. */
export const math = create(all as FactoryFunctionMap, { relTol: Number.MIN_VALUE, absTol: Number.MIN_VALUE })
