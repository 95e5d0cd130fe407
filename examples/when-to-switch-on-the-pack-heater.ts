// At what time must the pack heater start, so that the van may be driven and charged at seven? All figures are invented.
import { packTemperature, winterStart } from 'kerbwatt/thermal'

const pack = { heatCapacity: '92 kJ/K', conductance: '5 W/K', surroundings: '-12 °C' } as const

const night = packTemperature({ ...pack, initial: '6 °C', heat: [['0 W', '10 h']] })
const { time, energy, share, checks } = winterStart({
  pack: { heatCapacity: pack.heatCapacity, energy: '14.56 kWh' },
  from: night.final,
  to: '8 °C',
  heaterPower: '600 W',
  conductance: pack.conductance,
  surroundings: pack.surroundings,
  chargeLimit: '5 °C',
})

console.log(`after a night at ${pack.surroundings} the pack is at ${night.final}`)
console.log(`start the heater ${time} before seven: ${energy}, ${share} of the pack`)
for (const { verdict, name, actual, limit } of checks) console.log(`${verdict}: ${name}, ${actual} against ${limit}`)
