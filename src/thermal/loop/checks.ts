/** What a coolant loop is held to, and what was taken for granted. */
import { type Assumption, assumed, type Check, type Findings, says, trial } from '../../procedure/index.js'
import type { Quantity } from '../../quantity/index.js'
import { phasesOf } from '../boiling.js'
import { rangeOf } from '../property-table.js'
import { coolantAt, coolants } from './coolant.js'
import type { CoolingLoop, LoopSegment } from './cooling-loop.js'
import type { Celsius, Loop, Piece } from './given.js'
import { pumpPower } from './pipe.js'

/** What a loop is judged by beside its figures. */
interface Judged {
  readonly heat: Quantity<'power'>
  readonly limit: Celsius
  readonly capacity: Quantity<'power'>
  readonly isBalanced: boolean
  readonly high: Celsius
}

type Figures = Omit<CoolingLoop, keyof Findings | 'capacity'>

/** Every pipe and part, in the order in which the coolant passes them. */
function piecesOf({ segments }: Loop): readonly Piece[] {
  return segments.flatMap((segment) => (segment.parallel ?? [[segment]]).flat())
}

/** What each pipe and part asks of the coolant that passes it, and the hottest that it becomes anywhere. */
function segmentChecks(loop: Loop, { segments, coolant }: Figures, limit: Celsius): Check[] {
  const pieces = piecesOf(loop)
  const hottest = segments.reduce((most, { outlet }) => Math.max(most, outlet.si), Number.NEGATIVE_INFINITY)
  return segments.flatMap(({ name, inlet, outlet, flow }, i) => {
    const { inletLimit, minimumFlow } = pieces[i] as Piece
    // What enters the radiator is held already; a branch may be hotter than that mixture.
    const isTold = outlet.si > coolant.hot.si * (1 + 1e-12) && (outlet.si > limit.si || outlet.si === hottest)
    return [
      ...(isTold
        ? [
            trial(
              `segment.${i + 1}.outlet`,
              `Coolant leaving ${name}`,
              says`coolant at ${outlet} leaves ${name}, at most ${limit}`,
              'limit of the coolant',
              'limit',
              'segments',
            ),
          ]
        : []),
      ...(inletLimit === undefined
        ? []
        : [
            trial(
              `segment.${i + 1}.inlet`,
              `Coolant entering ${name}`,
              says`coolant at ${inlet} enters ${name}, at most ${inletLimit}`,
              'inletLimit, as given',
              'segments',
            ),
          ]),
      ...(minimumFlow === undefined
        ? []
        : [
            trial(
              `segment.${i + 1}.flow`,
              `Flow through ${name}`,
              says`${flow} flows through ${name}, at least ${minimumFlow}`,
              'minimumFlow, as given',
              'segments',
            ),
          ]),
    ]
  })
}

/** Below this, coolant is so thick that a part whose passages are not known may be laminar. */
const FREEZING = 273.15
/** Below this Reynolds number flow in a pipe is laminar. */
const LAMINAR = 2300

/** A drop at one flow holds at others by its square, while the flow is turbulent. */
function dropTrials(loop: Loop, { segments, coolant: { hot, cold } }: Figures): Check[] {
  const mean = (hot.si + cold.si) / 2
  const { density, viscosity } = coolantAt(loop.coolant, mean)
  const parts = piecesOf(loop).flatMap((piece, i) =>
    piece.drop === undefined ? [] : [{ ...piece, ...(segments[i] as LoopSegment) }],
  )
  const laminar = parts.filter(({ hydraulicDiameter, flowArea, flow }) => {
    if (hydraulicDiameter === undefined) return false
    const area = flowArea?.si ?? (Math.PI * hydraulicDiameter.si ** 2) / 4
    return (density * flow.si * hydraulicDiameter.si) / (area * viscosity) < LAMINAR
  })
  const unknown = mean < FREEZING ? parts.filter(({ hydraulicDiameter }) => hydraulicDiameter === undefined) : []
  if (laminar.length + unknown.length === 0) return []
  const names = (some: typeof parts) => some.map(({ name }) => name).join(', ')
  const pipes = 'pipes (length and bore) in place of drop and at'
  const sentences = [
    ...(laminar.length === 0 ? [] : [`in ${names(laminar)} it is laminar: give ${pipes}`]),
    ...(unknown.length === 0
      ? []
      : [
          `in ${names(unknown)} that is not known: give hydraulicDiameter, with flowArea where the passages are many, or ${pipes}`,
        ]),
  ]
  return [
    trial(
      'coolant.drops',
      'Pressure drop of the parts',
      {
        unknown: `a drop given at one flow holds at another only while the flow is turbulent; ${sentences.join('; ')}`,
      },
      'turbulent above a Reynolds number of 2300',
      'segments',
    ),
  ]
}

/** What the loop, its coolant and its parts are held to. @internal */
export function checksOf(loop: Loop, figures: Figures, { heat, limit, capacity, isBalanced }: Judged): Check[] {
  const { coolant, limit: stated, minimumFlow, air } = loop
  const { flow, coolant: temperatures } = figures
  const { fluid } = coolants[coolant]
  const [low] = rangeOf(coolants[coolant])
  const { freezes } = phasesOf[coolant]
  const basis = stated === undefined ? `the end of the table of ${fluid}` : 'the limit given'
  const begins = `the table of ${fluid} begins there`
  return [
    ...(isBalanced
      ? [
          trial(
            'coolant.hot',
            'Coolant entering the radiator',
            says`coolant at ${temperatures.hot} enters the radiator, at most ${limit}`,
            basis,
            'limit',
            'radiator',
          ),
        ]
      : []),
    ...(temperatures.cold.si < low.si
      ? [
          trial(
            'coolant.cold',
            'Coolant leaving the radiator',
            says`coolant at ${temperatures.cold} leaves the radiator, at least ${low}`,
            begins,
            'radiator',
          ),
        ]
      : []),
    ...(air.temperature.si < freezes.si
      ? [
          trial(
            'coolant.parked',
            'Air in which the coolant stands when the car is parked',
            says`air at ${air.temperature} cools the coolant of the parked car, at least ${freezes}`,
            `where ${fluid} freezes`,
            'coolant',
            'air.temperature',
          ),
        ]
      : []),
    ...segmentChecks(loop, figures, limit),
    ...dropTrials(loop, figures),
    trial(
      'radiator.capacity',
      `Heat that the radiator gives off with the coolant at ${limit}`,
      says`the radiator gives off ${capacity} with the coolant at ${limit}, at least the ${heat} put in`,
      'heat balance',
      'radiator',
      'air.flow',
    ),
    ...(minimumFlow === undefined
      ? []
      : [
          trial(
            'coolant.flow',
            'Coolant flow',
            says`${flow} flows round the loop, at least ${minimumFlow}`,
            'the least flow given',
            'minimumFlow',
            'pump',
          ),
        ]),
  ]
}

/** What is taken for granted of a loop. @internal */
export function assumptionsOf(
  { limit: stated, segments: pieces, radiator }: Loop,
  { flow, pressureDrop, segments }: Figures,
  { limit, isBalanced, high }: Judged,
): Assumption[] {
  const pumping = pumpPower({ flow, pressure: pressureDrop, efficiency: 1 })
  const pipes = pieces
    .flatMap((piece) => [piece, ...(piece.parallel ?? []).flat()])
    .filter(({ bore }) => bore !== undefined)
  const between = segments.filter(
    ({ reynolds }) => reynolds !== undefined && reynolds.si > LAMINAR && reynolds.si < 4000,
  )
  const told = (isSo: boolean, id: string, sentence: string) => (isSo ? [assumed(id, sentence)] : [])
  return [
    assumed('pump.heat', `The heat of pumping, ${pumping}, is not counted.`),
    ...told(
      radiator.effectiveness === undefined,
      'radiator.crossFlow',
      'The radiator is in cross flow, both streams unmixed.',
    ),
    ...told(
      pipes.some(({ roughness }) => roughness === undefined),
      'segments.roughness.default',
      'Pipes without a roughness are smooth.',
    ),
    ...told(
      pipes.some(({ fittings }) => fittings === undefined),
      'segments.fittings.default',
      'Pipes without fittings lose no pressure in bends and couplings.',
    ),
    ...told(
      stated === undefined,
      'limit.default',
      `The coolant may have up to ${limit}, where the table of its properties ends.`,
    ),
    ...told(
      !isBalanced,
      'coolant.beyondTable',
      `Beyond ${high} there are no properties of the coolant: the figures are those with it at ${high}.`,
    ),
    ...told(
      between.length > 0,
      'segments.betweenRegimes',
      `Between laminar and turbulent flow the pressure drop is uncertain by about 30 %: ${between
        .map(({ name }) => name)
        .join(', ')}.`,
    ),
  ]
}
