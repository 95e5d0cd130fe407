/** An invented module of 14 cells. */
export const module = {
  name: 'invented module of 14 cells',
  cellsInSeries: 14,
  chemistry: 'NMC',
  nominalVoltage: '51.8 V',
  minimumVoltage: '42 V',
  maximumVoltage: '58.8 V',
  capacity: '60 Ah',
  resistance: '12 mΩ',
  mass: '22 kg',
  continuousCurrent: '120 A',
} as const
