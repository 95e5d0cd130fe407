import { describe, expect, it } from 'vitest'
import { equivalentMass, readTyre } from '../../src/drivetrain/index.js'
import { drivetrainHandbook } from './drivetrain.js'

describe('published values: drivetrain', () => {
  for (const entry of drivetrainHandbook) entry.check()

  // Inertias of a medium car, read in a course exercise after Gillespie, chapter 2; the factors were worked out from
  // them apart from this library.
  it.each([
    [3.78, '0.1469 kg·m²', 1.631],
    [2.12, '0.1017 kg·m²', 1.216],
    [1.46, '0.0791 kg·m²', 1.134],
    [1.03, '0.0565 kg·m²', 1.1],
    [0.84, '0.0339 kg·m²', 1.089],
  ] as const)('mass factor in the gear of %f', (gear, gearboxInertia, expected) => {
    const radius = '0.2876 m'
    const turning = [
      equivalentMass({ inertia: '0.09 kg·m²', ratio: gear * 3.944, radius }),
      equivalentMass({ inertia: gearboxInertia, ratio: gear * 3.944, radius }),
      equivalentMass({ inertia: '0.1356 kg·m²', ratio: 3.944, radius }),
      equivalentMass({ inertia: '4.96 kg·m²', ratio: 1, radius }),
    ]
    const factor = 1 + turning.reduce((sum, mass) => sum + mass.in('kg'), 0) / 1145
    expect(Math.abs(factor - expected)).toBeLessThanOrEqual(0.001)
  })

  // UN Regulation No. 30, annex 5, from memory.
  it('gives a 165 R13 the diameter of its table, 596 mm, within 2 mm', () => {
    expect(Math.abs(readTyre('165 R13').diameter.in('mm') - 596)).toBeLessThanOrEqual(2)
  })

  // UN Regulation No. 30, annex 5, tables of diagonal tyres, from memory. The aspects are rounded from such tyres, so that
  // this holds the series and their spread, not a figure.
  it.each([
    ['5.20-10', 508],
    ['5.60-13', 600],
    ['5.60-15', 650],
    ['6.00-12', 574],
    ['6.15-13', 582],
    ['6.45-13', 600],
  ] as const)('gives a %s the diameter of its table, %d mm, within the 3 %% that it tells', (mark, diameter) => {
    const { diameter: found, width } = readTyre(mark)
    expect(Math.abs(found.in('mm') - diameter)).toBeLessThanOrEqual(2 * 0.03 * width.in('mm'))
  })
})
