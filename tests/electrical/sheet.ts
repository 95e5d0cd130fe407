/** What the tests of electrical procedures work on: one invented module. */

/** A salvaged module of 12 cells, invented. */
export const module = {
  name: 'salvaged module of 12 cells',
  cellsInSeries: 12,
  chemistry: 'NMC',
  nominalVoltage: '44.4 V',
  minimumVoltage: '36 V',
  maximumVoltage: '50.4 V',
  capacity: '41 Ah',
  resistance: '14 mΩ',
  mass: '11.5 kg',
  continuousCurrent: '80 A',
  peakCurrent: '180 A',
  chargeCurrent: '41 A',
} as const
