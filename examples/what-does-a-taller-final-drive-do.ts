// What does a taller final drive do to an electric van? The van, its motor and its gears are invented.
import { accelerate, climbingAbility, gearTable, topSpeed, type Vehicle } from 'kerbwatt/drivetrain'

const van = {
  car: { mass: '805 kg', rotatingFactor: 1.05, rollingResistance: 0.013, dragArea: '0.74 m²', tyre: '145/80 R13' },
  gearbox: { gears: { second: 2.3, third: 1.45 }, efficiency: 0.92 },
  motor: { peakTorque: '100 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
} as const satisfies Vehicle

for (const finalDrive of [5.1, 4.375, 3.7]) {
  const drive = { ...van, gearbox: { ...van.gearbox, finalDrive } }
  const [, third] = gearTable({ ...drive, speeds: ['90 km/h'] }).rows
  const { time } = accelerate({ ...drive, to: '80 km/h' })
  const { speed, gear } = topSpeed(drive)
  const { start } = climbingAbility(drive)
  console.log(
    `${finalDrive}: ${third?.motorSpeeds[0]} at 90 km/h in third; 80 km/h after ${time}; ` +
      `${speed} in ${gear}; starts on ${start.grade.as('%')}`,
  )
}
