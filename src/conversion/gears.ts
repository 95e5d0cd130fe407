/** What each gear does with the motor. */
import { motorSpeed, overallRatio, readTyre, roadSpeed, tractiveForce, wheelTorque } from '../drivetrain/index.js'
import { cautions } from '../findings/index.js'
import { quantity } from '../quantity/index.js'
import type { Build } from './build.js'
import { missing, type Section, type Unassessed } from './section.js'

/** Road speeds at which the motor's speed is shown. */
const ROAD_SPEEDS = [quantity('speed', '50 km/h'), quantity('speed', '90 km/h')]

const NAMES = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth']

/** The section on gears. */
export function gearsSection(build: Build): Section | Unassessed {
  const { car, motor, gearbox } = build
  const title = 'Gears'
  if (motor === undefined || gearbox === undefined) return { title, why: missing(build, ['motor', 'gearbox']) }
  const { rollingRadius: radius, assumptions } = readTyre(car.tyre)
  const rows = gearbox.gears.map((gearRatio, i) => {
    const ratio = overallRatio({ gearRatio, finalDrive: gearbox.finalDrive })
    const torque = wheelTorque({ motorTorque: motor.peakTorque, ratio, efficiency: gearbox.efficiency })
    const speeds = ROAD_SPEEDS.map((speed) => motorSpeed({ speed, ratio, rollingRadius: radius }))
    const values = [
      ratio,
      roadSpeed({ motorSpeed: motor.maximumSpeed, ratio, rollingRadius: radius }),
      ...speeds.map((speed) => (speed.isAtMost(motor.maximumSpeed) ? speed : 'too fast')),
      tractiveForce({ wheelTorque: torque, radius }),
    ]
    return { name: NAMES[i] ?? `gear ${i + 1}`, values }
  })
  return {
    title,
    figures: [{ name: `rolling radius of ${car.tyre}`, value: radius.as('mm') }],
    tables: [
      {
        title: `With the motor at up to ${motor.maximumSpeed} and ${motor.peakTorque}`,
        columns: ['ratio', 'top speed', ...ROAD_SPEEDS.map((speed) => `motor at ${speed}`), 'pull'],
        rows,
      },
    ],
    checks: [],
    assumptions: [
      ...assumptions,
      'The pull is that of the motor; what the tyres and the pack allow is not assessed yet.',
    ],
    cautions: [cautions.liftedCar],
  }
}
