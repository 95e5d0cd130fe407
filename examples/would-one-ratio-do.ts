// Would one fixed ratio do instead of the old gearbox? The van, its motor and its gears are invented.
import { accelerate, fixedRatio, type Vehicle } from 'kerbwatt/drivetrain'

const van = {
  car: {
    mass: '805 kg',
    rotatingFactor: 1.05,
    rollingResistance: 0.013,
    dragArea: '0.74 m²',
    wheelbase: '2.03 m',
    centreOfGravity: { aft: '0.99 m', up: '0.52 m' },
    drivenAxle: 'rear',
    tyre: '145/80 R13',
    friction: 0.8,
  },
  motor: { peakTorque: '100 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
} as const satisfies Vehicle
// One pair of gears before the old axle, 7 in all, and the four gears of the old box.
const onePair = { finalDrive: 7, efficiency: 0.95 }
const oldBox = {
  gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 },
  finalDrive: 4.375,
  efficiency: 0.92,
}

for (const [topSpeed, grade] of [
  ['110 km/h', '20 %'],
  ['140 km/h', '30 %'],
] as const) {
  const { fits, least, greatest, reason } = fixedRatio({ ...van, gearbox: onePair, topSpeed, grade })
  console.log(`${topSpeed} and a start on ${grade}: ${fits ? `yes, from ${least} to ${greatest}` : `no, ${reason}`}`)
}

// What the start loses with the one pair.
for (const to of ['45 km/h', '80 km/h'] as const) {
  const one = accelerate({ ...van, gearbox: onePair, to })
  const four = accelerate({ ...van, gearbox: oldBox, to })
  console.log(`${to} after ${one.time} with one ratio of 7, after ${four.time} in ${four.gears.join(' and ')}`)
}
