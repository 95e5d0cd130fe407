/** Consumption and range at steady speeds, in summer and in winter. */
import { aerodynamicDrag, airDensity, roadLoad, roadPower, rollingResistance } from '../drivetrain/index.js'
import { cautions } from '../findings/index.js'
import { section as heading } from '../formula/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import { batteryPower, consumption, rangeFromConsumption } from '../range/index.js'
import type { Build } from './build.js'
import type { Pack } from './pack.js'
import { missing, type Section, type Unassessed } from './section.js'
import { cabinOf } from './winter.js'

const SPEEDS = [quantity('speed', '50 km/h'), quantity('speed', '70 km/h'), quantity('speed', '90 km/h')]
const SUMMER = quantity('temperature', '20 °C')
/** Standard atmosphere at sea level, ISO 2533. */
const PRESSURE = quantity('pressure', '101.325 kPa')

/** What a season changes. */
interface Season {
  readonly name: string
  readonly temperature: Quantity<'temperature'>
  readonly auxiliary: Quantity<'power'>
  readonly energy: Quantity<'energy'>
}

/** The section on energy and range. */
export function energySection(
  build: Build,
  pack: Pack | undefined,
  emptyMass: () => Quantity<'mass'>,
): Section | Unassessed {
  const { motor, gearbox, heating, auxiliaries } = build
  const title = 'Energy and range at a steady speed'
  if (pack === undefined || motor === undefined || gearbox === undefined || auxiliaries === undefined) {
    return { title, why: missing(build, ['module', 'pack', 'motor', 'gearbox', 'auxiliaries']) }
  }
  const seasons: Season[] = [{ name: 'summer', temperature: SUMMER, auxiliary: auxiliaries, energy: pack.usable }]
  if (heating !== undefined) {
    seasons.push({
      name: 'winter',
      temperature: heating.outside,
      auxiliary: auxiliaries.plus(cabinOf(heating, pack).power),
      energy: pack.usableInWinter,
    })
  }
  const mass = emptyMass().plus(build.car.payload.mass)
  const rows = SPEEDS.map((speed) => ({
    name: `at ${speed}`,
    values: seasons.flatMap((season) =>
      heading(`${speed} in ${season.name}`, () => {
        const wheelPower = powerAtWheels(build, mass, speed, season.temperature)
        const power = batteryPower({
          wheelPower,
          drivelineEfficiency: gearbox.efficiency,
          motorEfficiency: motor.efficiency,
          auxiliary: season.auxiliary,
        })
        const used = consumption({ power, speed })
        return [used, rangeFromConsumption({ energy: season.energy, consumption: used }).as('km')]
      }),
    ),
  }))
  return {
    title,
    figures: [{ name: 'mass on the road', value: mass }],
    tables: [
      {
        title: seasons.map(({ name, temperature, energy }) => `${name}: ${temperature}, ${energy} used`).join('; '),
        columns: seasons.flatMap(({ name }) => [`${name}: from the pack`, `${name}: range`]),
        rows,
      },
    ],
    checks: [],
    assumptions: [
      'Level road, no wind, dry air at 101.325 kPa, steady speed: stops, hills and haste take more.',
      `Motor and controller give back ${motor.efficiency} and the gears ${gearbox.efficiency} at every load.`,
      'Of winter, the air, the heater and the energy that a cold pack gives are counted; that tyres roll harder is not.',
    ],
    cautions: [cautions.lithiumCells],
  }
}

function powerAtWheels(
  { car }: Build,
  mass: Quantity<'mass'>,
  speed: Quantity<'speed'>,
  temperature: Quantity<'temperature'>,
): Quantity<'power'> {
  const force = roadLoad({
    aerodynamicDrag: aerodynamicDrag({
      airDensity: airDensity({ pressure: PRESSURE, temperature }),
      dragArea: car.dragArea,
      speed,
    }),
    rollingResistance: rollingResistance({ mass, coefficient: car.rollingResistance }),
  })
  return roadPower({ force, speed })
}
