/** A summer day on the longest hill: how warm the coolant of motor and controller becomes, and how warm the pack. */
import {
  aerodynamicDrag,
  airDensity,
  gradeForce,
  roadLoad,
  roadPower,
  rollingResistance,
} from '../../drivetrain/index.js'
import { packAt } from '../../electrical/index.js'
import { section as heading } from '../../formula/index.js'
import { assumed, merged } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { batteryPower } from '../../range/index.js'
import { coolingLoop, heatCapacity, packTemperature, wasteHeat } from '../../thermal/index.js'
import type { Build } from '../sheet/build.js'
import { onRoad } from './drive.js'
import type { Pack } from './pack.js'
import { fromSheet, missing, partOf, type Section, type Unassessed, vehiclePlaces } from './section.js'
import type { Weights } from './weight.js'

/** Standard atmosphere at sea level, ISO 2533. */
const PRESSURE = quantity('pressure', '101.325 kPa')
/** Half charged: of a climb that begins full and of one that ends empty the mean. */
const HALF = '50 %'

/** Where in the sheet the figures of the loop and of the pack's cooling stand. */
const loopPlaces = {
  'coolant': 'cooling.coolant',
  'pump': 'cooling.pump',
  'segments': 'cooling.segments',
  'radiator': 'cooling.radiator',
  'limit': 'cooling.limit',
  'minimumFlow': 'cooling.minimumFlow',
  'air.temperature': 'cooling.outside',
  'air.flow': 'cooling.airFlow',
}
const packPlaces = {
  'conductance': 'cooling.pack.conductance',
  'surroundings': 'cooling.outside',
  'initial': 'cooling.outside',
  'limits.high': 'cooling.pack.limit',
}

/** The section on a summer day. @internal */
export function summerSection(build: Build, pack: Pack | undefined, weights: () => Weights): Section | Unassessed {
  const { motor, gearbox, auxiliaries, hill, cooling } = build
  const title = 'Summer on the longest hill'
  const specificHeat = pack?.made.module.specificHeat
  if (
    pack === undefined ||
    motor === undefined ||
    gearbox === undefined ||
    auxiliaries === undefined ||
    hill === undefined ||
    cooling === undefined ||
    specificHeat === undefined
  ) {
    const needed = ['module', 'module.specificHeat', 'pack', 'motor', 'gearbox', 'auxiliaries', 'hill', 'cooling']
    return { title, why: missing(build, needed) }
  }
  const { outside, airFlow, pack: packCooling, ...loop } = cooling
  const { mass } = onRoad(build, weights)
  const wheelPower = heading('Power at the wheels', () => climbingPower(build, mass, hill, outside))
  const shaft = wheelPower.over(gearbox.efficiency.si)
  const waste = wasteHeat({ power: shaft, efficiency: motor.efficiency })
  const coolant = heading('Coolant', () =>
    fromSheet(loopPlaces, () => coolingLoop({ ...loop, heat: waste, air: { temperature: outside, flow: airFlow } })),
  )
  const drawn = batteryPower({
    wheelPower,
    drivelineEfficiency: gearbox.efficiency,
    motorEfficiency: motor.efficiency,
    auxiliaries,
  })
  const time = quantity('time', hill.length.si / hill.speed.si, 's').as('min')
  const state = heading('The pack on the hill', () =>
    fromSheet(vehiclePlaces, () => packAt({ pack: pack.made, stateOfCharge: HALF, power: drawn })),
  )
  const warmed = heading('Warming of the pack', () =>
    fromSheet(packPlaces, () =>
      packTemperature({
        heatCapacity: heatCapacity({ mass: pack.mass, specificHeat }),
        conductance: packCooling.conductance,
        surroundings: outside,
        initial: outside,
        heat: [[state.heat, time]],
        limits: { high: packCooling.limit },
      }),
    ),
  )
  const all = merged(
    { ...coolant, checks: partOf('cooling.loop', coolant.checks) },
    { ...state, checks: partOf('hill.pack', state.checks) },
    { ...warmed, checks: partOf('cooling.pack', warmed.checks) },
  )
  return {
    title,
    figures: [
      { name: `power at the wheels at ${hill.speed} on ${hill.grade.as('%')}, loaded`, value: wheelPower },
      { name: 'power from the pack', value: drawn },
      { name: 'heat of motor and controller', value: waste },
      { name: 'coolant flow', value: coolant.flow },
      { name: 'coolant into the radiator, in the end', value: coolant.coolant.hot },
      { name: 'coolant out of it', value: coolant.coolant.cold },
      { name: 'current of the pack', value: state.current },
      { name: 'heat in the pack', value: state.heat },
      { name: `pack after ${hill.length} in ${time}, from ${outside}`, value: warmed.final },
    ],
    tables: [],
    ...all,
    assumptions: [
      assumed(
        'hill.steady',
        `The climb is steady, at standard pressure, with the pack at ${HALF}; the coolant is given the time to settle.`,
      ),
      ...all.assumptions,
    ],
  }
}

function climbingPower(
  { car }: Build,
  mass: Quantity<'mass'>,
  { grade, speed }: NonNullable<Build['hill']>,
  temperature: Quantity<'temperature'>,
): Quantity<'power'> {
  const force = roadLoad({
    aerodynamicDrag: aerodynamicDrag({
      airDensity: airDensity({ pressure: PRESSURE, temperature }),
      dragArea: car.dragArea,
      speed,
    }),
    rollingResistance: rollingResistance({ mass, coefficient: car.rollingResistance, grade }),
    gradeForce: gradeForce({ mass, grade }),
  })
  return roadPower({ force, speed })
}
