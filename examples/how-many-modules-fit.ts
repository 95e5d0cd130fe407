// How many modules fit between 96 V and 144 V? The module is invented.
import { arrangePack } from 'kerbwatt/electrical'

const { fits, rejected } = arrangePack({
  module: {
    name: 'salvaged module of 8 cells',
    cellsInSeries: 8,
    nominalVoltage: '29.2 V',
    minimumVoltage: '24 V',
    maximumVoltage: '33.6 V',
    capacity: '56 Ah',
    resistance: '8 mΩ',
    mass: '9.8 kg',
    continuousCurrent: '110 A',
    peakCurrent: '280 A',
  },
  window: { minimum: '90 V', maximum: '144 V' },
  available: 12,
  batteryCurrent: '200 A',
})

for (const { series, parallel, energy, mass } of fits) console.log(`${series} x ${parallel}: ${energy}, ${mass}`)
for (const { series, parallel, reasons } of rejected.slice(0, 3))
  console.log(`${series} x ${parallel}: ${reasons.join('; ')}`)
