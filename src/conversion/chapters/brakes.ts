/** The brakes: which axle locks first, before and after, driver alone and laden; what went with the engine. */
import { gradeForce } from '../../drivetrain/index.js'
import { section as heading } from '../../formula/index.js'
import { type BrakeBalance, type BrakeLock, brakeBalance, commonCentre, type Stance } from '../../mass/index.js'
import { lostEngineBraking } from '../../procedure/cautions.js'
import { type Check, check, merged, trial } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import { type Chapter, fromSheet, missing, type Places, partOf, type SheetCheck, type Table } from './section.js'
import type { Weights } from './weight.js'

/** Where in the sheet its figures stand. */
const places: Places = {
  ...Object.fromEntries(
    ['frontBrakeShare', 'front', 'rear', 'valve', 'antiLock', 'regeneration'].map((key) => [key, `brakes.${key}`]),
  ),
  mass: 'car.scales',
  centreOfGravity: 'car.scales',
  wheelbase: 'car.wheelbase',
}

/** A driver with some luggage, as approvals count one (EU 1230/2012; from memory). */
const DRIVER = '75 kg'

/** The slope on which a laden car must stay put, up and down (UN R13-H). */
const PARKING = '20 %'

/** A way in which the car stands: by its mass and where that is. */
interface State {
  readonly id: 'driverBefore' | 'ladenBefore' | 'driver' | 'laden'
  readonly name: string
  readonly stance: Pick<Stance, 'mass' | 'centreOfGravity'>
  readonly isNow: boolean
}

/** The section on the brakes. @internal */
export function brakesSection(build: Build, weights: Weights): Chapter {
  const { brakes, car } = build
  if (brakes === undefined) return missing(build, ['brakes'])
  const { driver, regeneration, servo: _, vacuum: __, parking: ___, ...asked } = brakes
  const motor = regeneration === undefined || regeneration.si === 0 ? undefined : { [car.drivenAxle]: regeneration }
  const states = statesOf(weights, car.payload, driver ?? car.payload.at)
  const found = states.flatMap(
    ({
      stance: {
        mass,
        centreOfGravity: { aft, up },
      },
      ...state
    }) => {
      if (up === undefined) return []
      const balance = heading(`The brakes: ${state.name}`, () =>
        fromSheet(places, () =>
          brakeBalance({
            ...asked,
            ...(state.isNow ? { regeneration: motor } : {}),
            mass,
            wheelbase: car.wheelbase,
            centreOfGravity: { aft, up },
          }),
        ),
      )
      return [{ ...state, balance }]
    },
  )
  const judged = found.filter(({ isNow }) => isNow)
  const checks: SheetCheck[] = judged.flatMap(({ id, name, balance }) =>
    partOf(`brakes.${id}`, balance.checks, (of) => `${of}, ${name}`),
  )
  return {
    figures: [],
    tables: found.length === 0 ? [] : [balanceTable(found)],
    ...merged(...judged.map(({ balance }) => balance), { cautions: [lostEngineBraking] }),
    checks: [
      ...checks,
      ...(found.length > 0 ? [] : [heightTrial()]),
      ...regenerationTrial(build),
      ...vacuumTrials(build),
      parkingTrial(build, weights.laden.after.mass),
    ],
  }
}

/** The car before and after, with its driver alone and laden. */
function statesOf({ exchange, laden }: Weights, payload: Build['car']['payload'], seat: Build['car']['payload']['at']) {
  const driver = { mass: quantity('mass', DRIVER), at: seat }
  const states: readonly State[] = [
    { id: 'driverBefore', name: 'before, driver alone', stance: withLoad(exchange.before, driver), isNow: false },
    { id: 'ladenBefore', name: 'before, laden', stance: withLoad(exchange.before, payload), isNow: false },
    { id: 'driver', name: 'now, driver alone', stance: withLoad(exchange.after, driver), isNow: true },
    { id: 'laden', name: 'now, laden', stance: laden.after, isNow: true },
  ]
  return states
}

function withLoad({ mass, centreOfGravity }: Stance, load: Build['car']['payload']): State['stance'] {
  if (load.mass.si === 0) return { mass, centreOfGravity }
  const between = (first: Quantity<'length'>, second: Quantity<'length'>) =>
    commonCentre({ firstMass: mass, first, secondMass: load.mass, second })
  const { aft, left, up } = centreOfGravity
  const place = { aft: between(aft, load.at.aft), left }
  const isKnown = up !== undefined && load.at.up !== undefined
  return {
    mass: mass.plus(load.mass),
    centreOfGravity: isKnown ? { ...place, up: between(up, load.at.up as Quantity<'length'>) } : place,
  }
}

function heightTrial(): Check {
  return trial(
    'brakes.order',
    'Which axle locks first',
    {
      unknown: 'it takes the height of the centre of gravity: give car.raised, and up of every part and of car.payload',
    },
    'Directive 71/320/EEC, annex II, appendix 3.1.1, category M1',
    'car.raised',
  )
}

/** A motor that may go on braking while the pedal is pressed. */
function regenerationTrial({ brakes, car, controller }: Build): Check[] {
  const share = controller?.regeneration
  const isJudged =
    brakes?.regeneration !== undefined || brakes?.antiLock === true || share === undefined || share.si === 0
  if (isJudged) return []
  return [
    trial(
      'brakes.regeneration',
      'Which axle locks first while the motor brakes too',
      {
        unknown: `it is not known whether the motor goes on braking the ${car.drivenAxle} wheels while the pedal is pressed: give brakes.regeneration, 0 N where the brake-light switch lets it go`,
      },
      'Directive 71/320/EEC, annex II, appendix 3.1.1, category M1',
      'brakes.regeneration',
      'controller.regeneration',
    ),
  ]
}

/** The engine made the vacuum of the servo: something else must. */
function vacuumTrials({ brakes, lowVoltage }: Build): Check[] {
  const { servo, vacuum } = brakes as NonNullable<Build['brakes']>
  if (servo === false) return []
  const told = () => {
    if (servo === undefined) {
      return { unknown: 'it is not known whether a vacuum servo helps the foot: give brakes.servo' }
    }
    if (vacuum === undefined) {
      return { unknown: 'the engine made its vacuum, and it is not known what does now: give brakes.vacuum' }
    }
    if (vacuum === 'none') return { fail: 'the engine made its vacuum, and nothing does now: the pedal goes hard' }
    return Object.hasOwn(lowVoltage?.loads ?? {}, vacuum)
      ? { pass: `${vacuum} makes it, a load of lowVoltage.loads` }
      : { unknown: `${vacuum} is no load of lowVoltage.loads, so that nothing is known to feed it: add it there` }
  }
  const basis = 'good practice'
  return [
    trial('brakes.vacuum', 'Vacuum of the servo', told(), basis, 'brakes.servo', 'brakes.vacuum', 'lowVoltage.loads'),
  ]
}

function parkingTrial({ brakes, car }: Build, laden: Quantity<'mass'>): Check {
  const parking = brakes?.parking
  const [id, name] = ['brakes.parking', `Parking brake on ${PARKING}, up and down`] as const
  const basis = 'UN R13-H, annex 3, laden car; from memory'
  const paths = ['brakes.parking', 'car.limits.gross', 'car.payload']
  const gross = car.limits?.gross
  const mass = gross === undefined || gross.si < laden.si ? laden : gross
  const needed = gradeForce({ mass, grade: PARKING })
  if (parking !== undefined) return check(id, name, parking, 'at least', needed, basis, ...paths)
  const unknown = `no gear holds the car any longer, and ${needed} must at ${mass}: measure the force at the tyres, and give brakes.parking`
  return trial(id, name, { unknown }, basis, ...paths)
}

function balanceTable(
  states: readonly { readonly id: string; readonly name: string; readonly balance: BrakeBalance }[],
): Table {
  const row = (id: string, name: string, valueOf: (balance: BrakeBalance) => Quantity | string) => ({
    id,
    name,
    values: states.map(({ balance }) => valueOf(balance)),
  })
  // On a wet road and on a dry one; no state has locks where another has none.
  const roads = [2, 6].flatMap((i) => states[0]?.balance.brakes?.locks[i]?.adhesion ?? [])
  return {
    id: 'brakes',
    title: 'How the axles share the braking, and which one locks first',
    measures: 'rows',
    columns: states.map(({ id, name }) => ({ id, name })),
    rows: [
      row('frontShare', 'of the weight in front', ({ frontShare }) => frontShare.as('%')),
      row('ideal', 'wanted of the braking at 0.8 g', ({ ideal }) => ideal.at(-1)?.share as Quantity),
      ...roads.flatMap((road) => {
        const id = `on${Math.round(road.in('%'))}`
        const on = (valueOf: (lock: BrakeLock) => Quantity | string) => (balance: BrakeBalance) =>
          valueOf(balance.brakes?.locks.find(({ adhesion }) => adhesion.si === road.si) as BrakeLock)
        return [
          row(
            `${id}First`,
            `locks first on adhesion ${road}`,
            on(({ first }) => first),
          ),
          row(
            `${id}Deceleration`,
            'at',
            on(({ deceleration }) => deceleration),
          ),
          row(
            `${id}Efficiency`,
            'which uses of the road',
            on(({ efficiency }) => efficiency),
          ),
        ]
      }),
    ],
    notes: ['The brakes are by themselves here, without the motor.'],
  }
}
