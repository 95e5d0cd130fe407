// Which fuse for a heater branch of 1.8 kW, and which cable? The module and the fuses on the shelf are invented.
import { protectRun } from 'kerbwatt/electrical'

const { cable, fuse } = protectRun({
  name: 'heater branch',
  pack: {
    module: {
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
    },
    series: 4,
    parallel: 2,
  },
  load: { current: '12.5 A' },
  cable: { length: '3 m', maximumDrop: '1 %', insulationLimit: '105 °C' },
  candidates: [
    { name: 'household 20 A', rating: '20 A', voltage: { ac: '250 V' }, breakingCapacity: '6 kA' },
    { name: 'blade 20 A', rating: '20 A', voltage: { dc: '32 V' }, breakingCapacity: '1 kA' },
    {
      name: 'ceramic 20 A',
      class: 'gG',
      rating: '20 A',
      voltage: { dc: '450 V' },
      breakingCapacity: '20 kA',
      curve: [
        ['32 A', '1 h'],
        ['55 A', '10 s'],
        ['130 A', '0.1 s'],
        ['250 A', '10 ms'],
      ],
      clearingIntegral: '2200 A²·s',
    },
  ],
})

console.log(`${cable.name}, ${cable.temperature} at 12.5 A, drops ${cable.drop}`)
for (const { candidate, reasons } of fuse.rejected) console.log(`${candidate}: ${reasons.join('; ')}`)
console.log(
  `${fuse.chosen?.name}: lets through ${fuse.clearing?.highest.letThrough?.as('A²·s')} of ${cable.withstand.as('A²·s')}`,
)
