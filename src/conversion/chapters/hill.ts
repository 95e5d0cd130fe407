/** The longest hill on the warmest day: how warm the coolant of motor and controller becomes, and how warm the pack. */
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
import { type Chapter, calledBy, fromSheet, missing, partOf, vehiclePlaces } from './section.js'
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
  'air.flow': 'cooling.airFlow',
}
const packPlaces = {
  'conductance': 'cooling.pack.conductance',
  'limits.high': 'cooling.pack.limit',
  'hottest': 'cooling.pack.hottest',
}

/** The section on the longest hill. @internal */
export function hillSection(build: Build, pack: Pack | undefined, weights: () => Weights): Chapter {
  const { motor, gearbox, auxiliaries, hill, cooling, seasons = {} } = build
  const specificHeat = pack?.made.module.specificHeat
  const [warmest] = Object.entries(seasons).sort(([, one], [, other]) => other.outside.si - one.outside.si)
  if (
    pack === undefined ||
    motor === undefined ||
    gearbox === undefined ||
    auxiliaries === undefined ||
    hill === undefined ||
    cooling === undefined ||
    warmest === undefined ||
    specificHeat === undefined
  ) {
    const needed = ['module', 'module.specificHeat', 'pack', 'motor', 'gearbox', 'auxiliaries', 'hill', 'cooling']
    return missing({ ...build, seasons: warmest }, [...needed, 'seasons'])
  }
  const [key, season] = warmest
  const { outside } = season
  const air = `seasons.${key}.outside`
  const { airFlow, pack: packCooling, ...loop } = cooling
  const { mass } = onRoad(build, weights)
  const wheelPower = heading('Power at the wheels', () => climbingPower(build, mass, hill, outside))
  const shaft = wheelPower.over(gearbox.efficiency.si)
  const waste = wasteHeat({ power: shaft, efficiency: motor.efficiency })
  const coolant = heading('Coolant', () =>
    fromSheet({ ...loopPlaces, 'air.temperature': air }, () =>
      coolingLoop({ ...loop, heat: waste, air: { temperature: outside, flow: airFlow } }),
    ),
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
    fromSheet({ ...packPlaces, surroundings: air, initial: air }, () =>
      packTemperature({
        heatCapacity: heatCapacity({ mass: pack.mass, specificHeat }),
        conductance: packCooling.conductance,
        surroundings: outside,
        initial: outside,
        heat: [[state.heat, time]],
        limits: { high: packCooling.limit },
        hottest: packCooling.hottest,
      }),
    ),
  )
  const all = merged(
    { ...coolant, checks: partOf('cooling.loop', coolant.checks) },
    { ...state, checks: partOf('hill.pack', state.checks) },
    { ...warmed, checks: partOf('cooling.pack', warmed.checks) },
  )
  return {
    title: `The longest hill, ${calledBy(key, season)}`,
    figures: [
      {
        id: 'hill.wheelPower',
        name: `power at the wheels at ${hill.speed} on ${hill.grade.as('%')}, loaded`,
        value: wheelPower,
      },
      { id: 'hill.batteryPower', name: 'power from the pack', value: drawn },
      { id: 'hill.wasteHeat', name: 'heat of motor and controller', value: waste },
      { id: 'hill.coolantFlow', name: 'coolant flow', value: coolant.flow },
      { id: 'hill.coolantHot', name: 'coolant into the radiator, in the end', value: coolant.coolant.hot },
      { id: 'hill.coolantCold', name: 'coolant out of it', value: coolant.coolant.cold },
      { id: 'hill.current', name: 'current of the pack', value: state.current },
      { id: 'hill.packHeat', name: 'heat in the pack', value: state.heat },
      {
        id: 'hill.packTemperature',
        name: `pack after ${hill.length} in ${time}, from ${outside}`,
        value: warmed.final,
      },
      { id: 'hill.hottestCell', name: 'core of its warmest cell', value: warmed.hottest },
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
