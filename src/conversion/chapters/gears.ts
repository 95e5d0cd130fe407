/** What each gear does with the motor, how briskly the laden car goes, and whether one fixed ratio would do. */
import {
  accelerate,
  climbingAbility,
  fixedRatio,
  gearboxLoad,
  gearTable,
  type ShiftSpeeds,
  shiftSpeeds,
  type TractionCurves,
  topSpeed,
  tractionCurves,
} from '../../drivetrain/index.js'
import { section as heading } from '../../formula/index.js'
import { type Findings, merged, trial } from '../../procedure/index.js'
import { CalculationError, type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import { type Laden, laden, onRoad, weighedMass, wheelsOf } from './drive.js'
import type { Pack } from './pack.js'
import {
  type Chapter,
  type Figure,
  fromSheet,
  heldToSheet,
  idOf,
  missing,
  type Places,
  partOf,
  type Table,
  vehiclePlaces,
} from './section.js'
import type { Weights } from './weight.js'

/** Road speeds at which the motor's speed is shown. */
const ROAD_SPEEDS = [quantity('speed', '50 km/h'), quantity('speed', '90 km/h')]
/** Speeds to reach from standstill, as a driver in town and out of it needs them. */
const REACHED = [quantity('speed', '50 km/h'), quantity('speed', '80 km/h')]

/** Where in the sheet the figures stand. */
const places: Places = {
  ...vehiclePlaces,
  speeds: 'hill.speed',
  grade: 'targets.startGrade',
  topSpeed: 'targets.topSpeed',
}

/** The section on gears. @internal */
export function gearsSection(build: Build): Chapter {
  const { motor, gearbox } = build
  if (motor === undefined || gearbox === undefined) return missing(build, ['motor', 'gearbox'])
  const vehicle = { car: { mass: weighedMass(build.car), ...wheelsOf(build.car) }, gearbox, motor }
  const table = fromSheet(vehiclePlaces, () => gearTable({ ...vehicle, speeds: ROAD_SPEEDS }))
  const { ratedInputTorque } = gearbox
  const load =
    ratedInputTorque === undefined
      ? undefined
      : heading('Load on the gearbox', () =>
          fromSheet(places, () => gearboxLoad({ ...vehicle, gearbox: { ...gearbox, ratedInputTorque } })),
        )
  return {
    figures: [
      {
        id: 'gears.rollingRadius',
        name: `rolling radius${build.car.tyre === undefined ? '' : ` of ${build.car.tyre}`}`,
        value: table.rollingRadius.as('mm'),
      },
    ],
    tables: [
      {
        id: 'gears',
        title: `With the motor at up to ${motor.maximumSpeed}`,
        measures: 'columns',
        columns: [
          { id: 'ratio', name: 'ratio' },
          { id: 'speedPerThousand', name: 'each 1000 rpm' },
          { id: 'topSpeed', name: 'top speed' },
          ...ROAD_SPEEDS.map((speed) => ({ id: `motorAt${speed.in('km/h')}`, name: `motor at ${speed}` })),
        ],
        rows: table.rows.map(({ gear, ratio, speedPerThousand, topSpeed: fastest, motorSpeeds }) => ({
          id: idOf(gear),
          name: gear,
          values: [
            ratio,
            speedPerThousand,
            fastest ?? 'unknown',
            ...motorSpeeds.map((speed) => (speed.isAtMost(motor.maximumSpeed) ? speed : 'too fast')),
          ],
        })),
      },
    ],
    ...merged(table, load ?? {}),
    checks: partOf('gears', [...table.checks, ...(load?.checks ?? [])]),
  }
}

/** The section on what the laden car does with its gears. @internal */
export function paceSection(build: Build, pack: Pack | undefined, weights: () => Weights): Chapter {
  if (pack === undefined || build.motor === undefined || build.gearbox === undefined) {
    return missing(build, ['module', 'pack', 'motor', 'gearbox'])
  }
  const drive = laden(build, pack, onRoad(build, weights)) as Laden
  const { hill, targets } = build
  const curves = heading('Pull in each gear', () =>
    fromSheet(places, () => tractionCurves({ ...drive, speeds: [], grades: [0] })),
  )
  const shifts = heading('Where to shift', () => fromSheet(places, () => shiftSpeeds(drive)))
  const fastest = heading('Highest speed', () => fromSheet(places, () => topSpeed(drive)))
  const climb = heading('The hill', () =>
    fromSheet(places, () =>
      climbingAbility({ ...drive, grade: targets?.startGrade, speeds: hill === undefined ? [] : [hill.speed] }),
    ),
  )
  const sprints = REACHED.map((to) => heading(`From standstill to ${to}`, () => sprint(drive, to)))
  const single = heading('One fixed ratio', () => fixedRatioOf(drive, build))
  const parts: Partial<Findings>[] = [
    curves,
    shifts,
    fastest,
    climb,
    ...sprints,
    ...(single === undefined ? [] : [single]),
  ]
  const asked = targets?.topSpeed
  const all = merged(...parts)
  // Friction is given, and the height of the centre of gravity without which it says nothing is not.
  const isGripUnknown = build.car.friction !== undefined && drive.car.friction === undefined
  const byPull = isGripUnknown ? ', by the pull alone' : ''
  return {
    binds: {
      start: climb.start.limitedBy,
      ...(climb.climbs[0] === undefined ? {} : { hill: climb.climbs[0].limitedBy }),
      topSpeed: fastest.limitedBy,
    },
    figures: [
      { id: 'road.mass', name: 'mass on the road', value: drive.car.mass },
      {
        id: 'road.topSpeed',
        name: `highest speed, in ${fastest.gear}, held by the ${fastest.limitedBy}`,
        value: fastest.speed,
      },
      ...sprints.flatMap(({ figures }) => figures),
      {
        id: 'road.startGrade',
        name: `steepest hill from standstill, in ${climb.start.gear}${byPull}`,
        value: climb.start.grade.as('%'),
      },
      ...climb.climbs.map(({ speed, grade, gear }) => ({
        id: 'road.hillGrade',
        name: `steepest hill at ${speed}, in ${gear}${byPull}`,
        value: grade.as('%'),
      })),
    ],
    tables: [
      gearLimits(
        curves,
        shifts,
        sprints.flatMap(({ remarks }) => remarks),
      ),
      ...(single === undefined ? [] : [single.table]),
    ],
    ...all,
    checks: [
      ...partOf('road', all.checks),
      ...(isGripUnknown ? [gripUnknown] : []),
      ...(asked === undefined
        ? []
        : [heldToSheet('targets.topSpeed', 'Highest speed', fastest.speed, 'at least', asked)]),
      ...climb.climbs.flatMap(({ grade, speed }) =>
        hill === undefined
          ? []
          : [heldToSheet('hill.grade', `The longest hill at ${speed}`, grade, 'at least', hill.grade, 'hill.speed')],
      ),
    ],
  }
}

/** A hill of which nobody can say whether the tyres hold. */
const gripUnknown = /*@__PURE__*/ (() =>
  trial(
    'hill.grip',
    'Grip on the hill',
    { unknown: 'whether the tyres hold on a hill is not known: give car.raised, and the heights of all parts' },
    'grip of the driven axle',
    'car.raised',
    'car.friction',
  ))()

/** How long a car takes to a speed, or that it never gets there. */
function sprint(
  drive: Laden,
  to: Quantity<'speed'>,
): Partial<Findings> & { readonly figures: Figure[]; readonly remarks: string[] } {
  try {
    const { time, distance, gears, checks, assumptions, notes, cautions } = fromSheet(places, () =>
      accelerate({ ...drive, to }),
    )
    const name = `from standstill to ${to}, in ${gears.join(' and ')}`
    return {
      figures: [
        { id: `road.to${to.in('km/h')}.time`, name, value: time },
        { id: `road.to${to.in('km/h')}.distance`, name: 'over a distance of', value: distance },
      ],
      remarks: [],
      checks,
      assumptions,
      notes,
      cautions,
    }
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error
    return { figures: [], remarks: [`${error.message}.`] }
  }
}

function gearLimits({ curves }: TractionCurves, { shifts }: ShiftSpeeds, notes: readonly string[]): Table {
  return {
    id: 'pull',
    title: 'What each gear pulls, and what holds it on the level',
    measures: 'columns',
    columns: [
      { id: 'start', name: 'at a start' },
      { id: 'grip', name: 'full torque' },
      { id: 'holds', name: 'holds' },
      { id: 'limitedBy', name: 'held by' },
      { id: 'shiftAt', name: 'shift at' },
    ],
    rows: curves.map(({ gear, start, spins, crossings }) => {
      const [level] = crossings
      const grips = spins === undefined ? 'grip unknown' : spins ? 'spins the wheels' : 'grips'
      return {
        id: idOf(gear),
        name: gear,
        values: [
          start,
          grips,
          level?.speed ?? 'none',
          level?.limitedBy ?? 'pull of the gear',
          shifts.find(({ from }) => from === gear)?.speed ?? '',
        ],
      }
    }),
    ...(notes.length === 0 ? {} : { notes }),
  }
}

/** Whether one ratio would do all that the gears do, where the sheet says how fast the car must be. */
function fixedRatioOf(drive: Laden, { targets }: Build) {
  if (targets?.topSpeed === undefined) return undefined
  const { topSpeed: asked, startGrade: grade } = targets
  const single = fromSheet(places, () => fixedRatio({ ...drive, topSpeed: asked, grade }))
  const [least, greatest] = [single.least, single.greatest].map((ratio) => ratio?.format({ digits: 3 }) ?? 'any')
  const answer = single.fits
    ? `One ratio from ${least} to ${greatest} would do all of it.`
    : `One fixed ratio would not do: ${single.reason}.`
  const table: Table = {
    id: 'fixedRatio',
    title: 'Whether one fixed ratio would do, motor to wheels',
    measures: 'columns',
    columns: [
      { id: 'least', name: 'at least' },
      { id: 'greatest', name: 'at most' },
    ],
    rows: single.limits.map(({ demand, least, greatest, refused }, i) => ({
      id: `demand${i + 1}`,
      name: demand,
      values: refused === undefined ? [least ?? 'any', greatest ?? 'any'] : ['no ratio', 'no ratio'],
    })),
    notes: [answer],
  }
  // That no single ratio does it all fails nothing: the gearbox stays.
  const { assumptions, notes, cautions } = single
  return { table, assumptions, notes, cautions }
}
