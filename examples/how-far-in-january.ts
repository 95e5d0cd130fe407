// How far does the van come at a steady 80 km/h in July and in January, and what takes the difference? All figures are invented.
import { seasons } from 'kerbwatt/range'

const { summer, winter, causes } = seasons({
  car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
  gearbox: { efficiency: 0.93 },
  motor: { efficiency: 0.86 },
  speed: '80 km/h',
  summer: { temperature: '25 °C', auxiliaries: '250 W', usableEnergy: '12 kWh' },
  // The heater is on, and the cells give a tenth less.
  winter: { temperature: '-5 °C', auxiliaries: '1.45 kW', usableEnergy: '10.8 kWh' },
})

const { airDensity, rollingResistance, heater, usableCapacity } = causes
console.log(`July: ${summer.range}, January: ${winter.range}`)
console.log(`Denser air takes ${airDensity.range}, harder tyres ${rollingResistance.range}`)
console.log(`The heater takes ${heater.range}, the cold pack ${usableCapacity.range}`)
