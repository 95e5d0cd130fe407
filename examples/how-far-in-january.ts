// How far does the van come at a steady 80 km/h in July, and in January with the heater on? All figures are invented.
import { rangeAtSpeed } from 'kerbwatt/range'

const van = {
  car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
  driveline: { efficiency: 0.93 },
  motor: { efficiency: 0.86 },
  speed: '80 km/h',
} as const

const july = rangeAtSpeed({ ...van, air: { temperature: '25 °C' }, auxiliary: '250 W', usableEnergy: '12 kWh' })
const january = rangeAtSpeed({
  ...van,
  // In the cold the tyres roll harder by a fifth, and the cells give a tenth less.
  car: { ...van.car, rollingResistance: 0.0144 },
  air: { temperature: '-5 °C' },
  auxiliary: '1.45 kW',
  usableEnergy: '10.8 kWh',
})

console.log(`July: ${july.speeds[0]?.range}`)
console.log(`January: ${january.speeds[0]?.range}`)
