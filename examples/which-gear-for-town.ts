// Which gear for town, at 40 km/h on the level and on a hill of 8 %? The van, its motor and their losses are invented.
import { bestGear, type Vehicle } from 'kerbwatt/drivetrain'

const van = {
  car: { mass: '805 kg', rollingResistance: 0.013, dragArea: '0.74 m²', tyre: '145/80 R13' },
  gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.92 },
  motor: {
    peakTorque: '100 N·m',
    peakPower: '50 kW',
    maximumSpeed: '8000 rpm',
    loss: {
      lossPerTorqueSquared: '0.15 W/(N·m)²',
      lossPerSpeed: '0.6 W/(rad/s)',
      lossPerSpeedCubed: '2e-6 W/(rad/s)³',
      constant: '60 W',
    },
  },
} as const satisfies Vehicle

for (const grade of [0, 0.08]) {
  const { gear, rows } = bestGear({ ...van, speed: '40 km/h', grade })
  console.log(`on ${100 * grade} %: ${gear}`)
  for (const each of rows) console.log(`  ${each.gear}: ${each.motorSpeed}, ${each.motorTorque}, ${each.loss} lost`)
}
