/**
 * A coolant loop: how much its pump drives through it, and how warm the coolant becomes before the radiator gives off
 * what motor, controller and charger put in.
 *
 * Rests on White, Fluid Mechanics, chapter 6, for the flow, and on Kays and London, Compact Heat Exchangers, for the
 * radiator.
 */
import { cite, section } from '../../formula/index.js'
import { straightAt } from '../../formula/points.js'
import { rootBetween } from '../../formula/root.js'
import { highVoltage, hotCoolant } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  type Findings,
  given,
  group,
  list,
  optional,
  pairs,
  procedure,
  type Read,
  text,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { airAt, dryAir, outdoors } from '../air/dry-air.js'
import { coolantField } from '../boiling.js'
import { rangeOf, refuseOutside } from '../property-table.js'
import { asQuantities, type CoolantProperties, coolantAt, coolants } from './coolant.js'
import {
  capacityRate,
  capacityRatio,
  conductanceAtFlow,
  conductanceInSeries,
  crossFlowSeries,
  effectivenessCrossFlow,
  exchangerHeat,
  exchangerHotInlet,
  streamOutlet,
  transferUnits,
} from './exchanger.js'
import { flowVelocity, frictionFactor, pressureDrop, pressureDropAtFlow, pumpPower, reynoldsNumber } from './pipe.js'
import { divided, dropOf, operatingFlow, type Part, type Passage, type Pipe, type PumpCurve } from './pipe-network.js'

/** A pipe or part of a loop as the coolant passes it. */
export interface LoopSegment {
  /** Its name, or where it stands in the input, such as `segments[2]`. */
  readonly name: string
  readonly flow: Quantity<'volumeFlow'>
  readonly pressureDrop: Quantity<'pressure'>
  /** Mean velocity in a pipe. */
  readonly velocity?: Quantity<'speed'>
  /** Reynolds number in a pipe. */
  readonly reynolds?: Quantity<'ratio'>
  /** Coolant temperature where it enters and where it leaves. */
  readonly inlet: Quantity<'temperature'>
  readonly outlet: Quantity<'temperature'>
}

/** A coolant loop at rest with itself. */
export interface CoolingLoop extends Findings {
  /** Flow at which the pump's curve meets the loop's. */
  readonly flow: Quantity<'volumeFlow'>
  /** Pressure that the pump gives, and the loop takes, at that flow. */
  readonly pressureDrop: Quantity<'pressure'>
  /** Every pipe and part, in the order in which it was given, branches one after the other. */
  readonly segments: readonly LoopSegment[]
  /** Effectiveness of the radiator. */
  readonly effectiveness: Quantity<'ratio'>
  /** Coolant as it enters the radiator, and as it leaves it. */
  readonly coolant: { readonly hot: Quantity<'temperature'>; readonly cold: Quantity<'temperature'> }
  /** Heat that the radiator gives off at these temperatures. */
  readonly rejected: Quantity<'power'>
  /** Heat put in less heat given off: nothing, where the coolant finds its temperature within its table. */
  readonly residual: Quantity<'power'>
  /** Heat that the radiator could give off with the coolant entering it at its limit. */
  readonly capacity: Quantity<'power'>
}

const pieceFields = /*@__PURE__*/ (() => ({
  name: optional(text('What it is called')),
  length: optional(given('length', 'Length of the pipe', { above: 0, usual: ['20 mm', '50 m'] })),
  bore: optional(given('length', 'Bore of the pipe', { above: 0, usual: ['2 mm', '80 mm'] })),
  roughness: optional(given('length', 'Height of the roughness of the wall', { min: 0 })),
  fittings: optional(given('ratio', 'Sum of the loss coefficients of the fittings', { min: 0, finest: 0.05 })),
  drop: optional(
    given('pressure', "Pressure drop that the part's maker gives", { above: 0, usual: ['0.1 kPa', '200 kPa'] }),
  ),
  at: optional(
    given('volumeFlow', 'Flow for which the drop is given', { above: 0, usual: ['0.3 L/min', '100 L/min'] }),
  ),
  hydraulicDiameter: optional(
    given('length', 'Hydraulic diameter of the passages of a part, which tells whether its flow is turbulent', {
      above: 0,
    }),
  ),
  flowArea: optional(given('area', 'Area of those passages together; one round passage unless given', { above: 0 })),
  heat: optional(given('power', 'Heat put into the coolant here', { min: 0 })),
  inletLimit: optional(given('temperature', 'Most that the coolant may have as it enters')),
  minimumFlow: optional(given('volumeFlow', 'Least flow that it needs', { above: 0 })),
}))()
const pieceField = /*@__PURE__*/ (() => group('A pipe (length and bore) or a part (drop and at)', pieceFields))()

const segmentFields = /*@__PURE__*/ (() => ({
  ...pieceFields,
  parallel: optional(
    list(
      'Branches side by side, each a list of pipes and parts',
      list('Pipes and parts, one after the other', pieceField, { least: 1 }),
      { least: 2 },
    ),
  ),
}))()
const segmentField = /*@__PURE__*/ (() =>
  group('A pipe (length and bore), a part (drop and at), or branches side by side (parallel)', segmentFields))()

const sideField = /*@__PURE__*/ (() =>
  group('The conductance of one side', {
    conductance: given('thermalConductance', 'Conductance of this side', { above: 0 }),
    at: given('volumeFlow', 'Flow for which it is given', { above: 0 }),
    exponent: given('ratio', 'Exponent of the flow', { min: 0, max: 1 }),
  }))()

/** A coolant loop, but for the air. @internal */
export const loopFields = /*@__PURE__*/ (() => ({
  coolant: coolantField,
  pump: pairs(
    'The curve of the pump, from no flow on',
    given('volumeFlow', 'Flow', { min: 0, usual: ['0 L/min', '200 L/min'], finest: '0.1 L/min' }),
    given('pressure', 'Pressure', { min: 0, usual: ['0 kPa', '500 kPa'], finest: '0.1 kPa' }),
    { least: 2 },
  ),
  segments: list('What the coolant passes, from the outlet of the radiator on', segmentField, { least: 1 }),
  radiator: group('The radiator, by its effectiveness, its conductance, or the conductances of its two sides', {
    effectiveness: optional(given('ratio', 'Effectiveness, the same at every flow', { above: 0, max: 1 })),
    conductance: optional(
      given('thermalConductance', 'Conductance from coolant to air', { above: 0, usual: ['5 W/K', '2000 W/K'] }),
    ),
    at: optional(
      group('The flows for which the conductance is given', {
        air: given('volumeFlow', 'Air flow for which it is given', { above: 0, usual: ['50 m³/h', '10000 m³/h'] }),
        coolant: given('volumeFlow', 'Coolant flow for which it is given', {
          above: 0,
          usual: ['0.5 L/min', '200 L/min'],
        }),
      }),
    ),
    exponents: optional(
      group('How the conductance grows with the flows', {
        air: given('ratio', 'Exponent of the air flow', { min: 0, max: 1, finest: 0.01 }),
        coolant: given('ratio', 'Exponent of the coolant flow', { min: 0, max: 1, finest: 0.01 }),
      }),
    ),
    airSide: optional(sideField),
    coolantSide: optional(sideField),
  }),
  limit: optional(given('temperature', 'Most that the coolant may have anywhere')),
  minimumFlow: optional(
    given('volumeFlow', 'Least flow that the parts need', { above: 0, usual: ['0.3 L/min', '100 L/min'] }),
  ),
}))()

const loopInput = /*@__PURE__*/ (() => ({
  ...loopFields,
  heat: optional(given('power', 'Heat put in elsewhere than in a segment, before the radiator', { min: 0 })),
  air: group('The air at the radiator', {
    temperature: given('temperature', 'Temperature of the air before the radiator', outdoors),
    flow: given('volumeFlow', 'Air flow through the radiator, at that temperature', { above: 0 }),
  }),
}))()

type Loop = Read<typeof loopInput>
type Piece = Read<typeof pieceField>
type Segment = Read<typeof segmentField>
type Side = Read<typeof sideField>
type Celsius = Quantity<'temperature'>
const where = 'coolingLoop'

/**
 * Finds the flow of a coolant loop, where the curve of the pump meets that of the loop, and the temperatures at which
 * the radiator gives off just the heat put in. Viscosity and density are those of the coolant at its mean temperature,
 * which follows from the flow, which follows from them: all are found together.
 *
 * What the coolant passes is a pipe with `length` and `bore`, and `roughness` and `fittings` where it has them; or a part
 * with the `drop` that its maker gives `at` a flow, such as a motor's jacket or the radiator itself; or `parallel`, branches
 * that each are a list of pipes and parts. Each may put `heat` in. The pump's curve falls as the flow rises; its first point
 * is at no flow, its last at so much that the loop takes more pressure than the pump has left.
 *
 * The radiator is `{ effectiveness }`, the same at every flow; or `{ conductance, at: { air, coolant }, exponents: { air,
 * coolant } }`, conductance at two flows with the exponents of both; or `{ airSide, coolantSide }`, one after the other. It is
 * taken for a cross-flow radiator with both streams unmixed.
 *
 * Air colder than the coolant's table fails a check, however warm the coolant runs: it stands in that air when the car
 * is parked, and may freeze. Where the radiator cannot give off the heat with the coolant at the end of its table, the
 * figures are those at that end, a check fails, and `residual` is the heat that is left over.
 *
 * Answers: how much does the pump drive through the loop, and how warm does the coolant become?
 *
 * - `coolant`: coolant, 'water' or 'ethylene glycol 50 %'
 * - `pump`: the curve of the pump, from no flow on, pairs of flow and pressure
 * - `segments`: what the coolant passes, from the outlet of the radiator on, a list of at least 1
 *   - `name`: what it is called, text, optional
 *   - `length`: length of the pipe, in m, above 0 m, optional
 *   - `bore`: bore of the pipe, in m, above 0 m, optional
 *   - `roughness`: height of the roughness of the wall, in m, at least 0 m, optional
 *   - `fittings`: sum of the loss coefficients of the fittings, a plain number, at least 0, optional
 *   - `drop`: pressure drop that the part's maker gives, in kPa, above 0 kPa, optional
 *   - `at`: flow for which the drop is given, in L/min, above 0 L/min, optional
 *   - `hydraulicDiameter`: hydraulic diameter of the passages of a part, which tells whether its flow is turbulent, in
 *     m, above 0 m, optional
 *   - `flowArea`: area of those passages together; one round passage unless given, in m², above 0 m², optional
 *   - `heat`: heat put into the coolant here, in kW, at least 0 kW, optional
 *   - `inletLimit`: most that the coolant may have as it enters, in °C, optional
 *   - `minimumFlow`: least flow that it needs, in L/min, above 0 L/min, optional
 *   - `parallel`: branches side by side, each a list of pipes and parts, a list of at least 2, optional
 *     - `name`: what it is called, text, optional
 *     - `length`: length of the pipe, in m, above 0 m, optional
 *     - `bore`: bore of the pipe, in m, above 0 m, optional
 *     - `roughness`: height of the roughness of the wall, in m, at least 0 m, optional
 *     - `fittings`: sum of the loss coefficients of the fittings, a plain number, at least 0, optional
 *     - `drop`: pressure drop that the part's maker gives, in kPa, above 0 kPa, optional
 *     - `at`: flow for which the drop is given, in L/min, above 0 L/min, optional
 *     - `hydraulicDiameter`: hydraulic diameter of the passages of a part, which tells whether its flow is turbulent, in
 *       m, above 0 m, optional
 *     - `flowArea`: area of those passages together; one round passage unless given, in m², above 0 m², optional
 *     - `heat`: heat put into the coolant here, in kW, at least 0 kW, optional
 *     - `inletLimit`: most that the coolant may have as it enters, in °C, optional
 *     - `minimumFlow`: least flow that it needs, in L/min, above 0 L/min, optional
 * - `radiator`: the radiator, by its effectiveness, its conductance, or the conductances of its two sides
 *   - `effectiveness`: effectiveness, the same at every flow, a plain number, above 0 and at most 1, optional
 *   - `conductance`: conductance from coolant to air, in W/K, above 0 W/K, optional
 *   - `at`: the flows for which the conductance is given, optional
 *     - `air`: air flow for which it is given, in L/min, above 0 L/min
 *     - `coolant`: coolant flow for which it is given, in L/min, above 0 L/min
 *   - `exponents`: how the conductance grows with the flows, optional
 *     - `air`: exponent of the air flow, a plain number, at least 0 and at most 1
 *     - `coolant`: exponent of the coolant flow, a plain number, at least 0 and at most 1
 *   - `airSide`: the conductance of one side, optional
 *     - `conductance`: conductance of this side, in W/K, above 0 W/K
 *     - `at`: flow for which it is given, in L/min, above 0 L/min
 *     - `exponent`: exponent of the flow, a plain number, at least 0 and at most 1
 *   - `coolantSide`: the conductance of one side, optional
 *     - `conductance`: conductance of this side, in W/K, above 0 W/K
 *     - `at`: flow for which it is given, in L/min, above 0 L/min
 *     - `exponent`: exponent of the flow, a plain number, at least 0 and at most 1
 * - `limit`: most that the coolant may have anywhere, in °C, optional
 * - `minimumFlow`: least flow that the parts need, in L/min, above 0 L/min, optional
 * - `heat`: heat put in elsewhere than in a segment, before the radiator, in kW, at least 0 kW, optional
 * - `air`: the air at the radiator
 *   - `temperature`: temperature of the air before the radiator, in °C
 *   - `flow`: air flow through the radiator, at that temperature, in L/min, above 0 L/min
 * - always assumed: the coolant has the properties of its mean temperature all round the loop, and loses heat in the
 *   radiator alone
 *
 * @returns The {@link CoolingLoop}, with checks, assumptions and cautions.
 * @throws InputError for what cannot be used, by its path: among others a limit outside the coolant's table, a pump
 * whose pressure rises with flow, or whose curve ends before it meets the loop's. CalculationError where the coolant
 * would settle below its table, and freeze.
 * Source: White, Fluid Mechanics, chapter 6; Kays and London, Compact Heat Exchangers.
 *
 * @example
 * ```ts
 * const { flow, coolant } = coolingLoop({
 *   coolant: 'ethylene glycol 50 %',
 *   pump: [['0 L/min', '32 kPa'], ['10 L/min', '24 kPa'], ['20 L/min', '0 kPa']],
 *   segments: [
 *     { name: 'hoses', length: '6 m', bore: '16 mm', fittings: 8 },
 *     { name: 'controller', drop: '6 kPa', at: '8 L/min', heat: '0.5 kW' },
 *     { name: 'motor', drop: '9 kPa', at: '8 L/min', heat: '2.1 kW' },
 *   ],
 *   radiator: { conductance: '180 W/K', at: { air: '900 m³/h', coolant: '8 L/min' }, exponents: { air: 0.55, coolant: 0.2 } },
 *   air: { temperature: '32 °C', flow: '700 m³/h' },
 *   limit: '60 °C',
 * })
 * String(flow) // '8.972 L/min'
 * String(coolant.hot) // '57.02 °C'
 * ```
 */
export const coolingLoop = /*@__PURE__*/ procedure({
  name: where,
  title: 'A coolant loop',
  answers: 'How much does the pump drive through the loop, and how warm does the coolant become?',
  input: loopInput,
  source: [cite('White, Fluid Mechanics', 'chapter 6'), cite('Kays and London, Compact Heat Exchangers')],
  assumes: [
    'The coolant has the properties of its mean temperature all round the loop, and loses heat in the radiator alone.',
  ],
  work: (loop): Unfinished<CoolingLoop> => {
    refuseUnusable(loop)
    const table = coolants[loop.coolant]
    const [low, high] = rangeOf(table)
    const limit = loop.limit ?? high
    const heat = heatOf(loop)
    const air = airAt(loop.air.temperature.si)
    const airRate = capacityRate.compute({ ...air, flow: loop.air.flow.si })
    const passage = { series: loop.segments.map(passageOf) }
    const curve = curveOf(loop)
    /** The loop with its coolant at a mean temperature. */
    const at = (kelvins: number) => {
      const fluid = coolantAt(loop.coolant, kelvins)
      const flow = operatingFlow(curve, passage, fluid)
      const rate = capacityRate.compute({ ...fluid, flow })
      const lesser = Math.min(rate, airRate)
      const effectiveness = effectivenessAt(loop, flow, lesser, Math.max(rate, airRate))
      return { fluid, flow, rate, passed: effectiveness * lesser }
    }
    const meanWith = (kelvins: number) => {
      const { rate, passed } = at(kelvins)
      return loop.air.temperature.si + heat.si / passed - heat.si / rate / 2
    }
    /** The loop with its coolant entering the radiator at a temperature. */
    const entering = (hot: Celsius) => {
      const warmer = Math.max(0, hot.si - loop.air.temperature.si)
      const meanOf = ({ rate, passed }: ReturnType<typeof at>) => hot.si - (passed * warmer) / rate / 2
      const mean = rootBetween((kelvins) => kelvins - meanOf(at(kelvins)), low.si, high.si)
      return { ...at(mean), mean, rejected: quantity('power', at(mean).passed * warmer, 'W').as('kW') }
    }
    if (meanWith(low.si) < low.si) throw tooCold(loop, low)
    const mean = rootBetween((kelvins) => kelvins - meanWith(kelvins), low.si, high.si)
    // Where the radiator gives off less than the heat even with the coolant at the end of its table, there is no balance.
    const hottest = entering(high)
    const isBalanced = hottest.rejected.si >= heat.si
    const state = isBalanced ? { ...at(mean), mean } : hottest
    refuseShortCurve(curve, passage, state.fluid, state.flow)
    const capacity = entering(limit).rejected
    const found = { ...state, fluid: asQuantities(state.fluid), heat, hot: isBalanced ? undefined : high }
    const figures = figuresOf(loop, found)
    const judged = { heat, limit, capacity, isBalanced, high }
    return {
      ...figures,
      capacity,
      checks: checksOf(loop, figures, judged),
      assumptions: assumptionsOf(loop, figures, judged),
      cautions: [hotCoolant, highVoltage],
    }
  },
})

function curveOf({ pump }: Loop): PumpCurve {
  return pump.map(([flow, pressure]) => [flow.si, pressure.si])
}

/** All the heat put in. */
function heatOf({ heat, segments }: Loop): Quantity<'power'> {
  const pieces = segments.flatMap((segment) => [segment, ...(segment.parallel ?? []).flat()])
  const heats = [...pieces.map((piece) => piece.heat), heat].filter((each) => each !== undefined)
  const [first, ...rest] = heats
  if (first !== undefined) return rest.reduce((sum, each) => sum.plus(each), first)
  const expected = "the heat put in, such as heat: '2.5 kW', here or in the segments"
  throw new InputError(where, [{ path: 'heat', expected, received: 'nothing' }])
}

/** A segment as flow passes it, in SI units. */
function passageOf(segment: Segment): Passage {
  if (segment.parallel === undefined) return plainOf(segment)
  return { parallel: segment.parallel.map((branch) => ({ series: branch.map(plainOf) })) }
}

function plainOf({ length, bore, roughness, fittings, drop, at }: Piece): Pipe | Part {
  if (drop !== undefined) return { pressure: drop.si, referenceFlow: (at as Quantity).si }
  return {
    length: (length as Quantity).si,
    bore: (bore as Quantity).si,
    roughness: roughness?.si ?? 0,
    fittings: fittings?.si ?? 0,
  }
}

/** Effectiveness of the radiator at a coolant flow, from the lesser and the greater capacity rate. */
function effectivenessAt({ radiator, air }: Loop, flow: number, lesser: number, greater: number): number {
  if (radiator.effectiveness !== undefined) return radiator.effectiveness.si
  const scaled = (conductance: Quantity, at: Quantity, exponent: Quantity, actual: number) =>
    conductanceAtFlow.compute({
      conductance: conductance.si,
      flow: actual,
      referenceFlow: at.si,
      exponent: exponent.si,
    })
  const { conductance, at, exponents, airSide, coolantSide } = radiator
  if (conductance !== undefined && at !== undefined && exponents !== undefined) {
    const atAirFlow = quantity('thermalConductance', scaled(conductance, at.air, exponents.air, air.flow.si), 'W/K')
    return crossFlowSeries(scaled(atAirFlow, at.coolant, exponents.coolant, flow) / lesser, lesser / greater)
  }
  const [first, second] = [airSide, coolantSide] as [Side, Side]
  const both = conductanceInSeries.compute({
    first: scaled(first.conductance, first.at, first.exponent, air.flow.si),
    second: scaled(second.conductance, second.at, second.exponent, flow),
  })
  return crossFlowSeries(both / lesser, lesser / greater)
}

/** The loop as it was found, worked out once more with units, for the working to show. */
interface Found {
  readonly mean: number
  readonly fluid: CoolantProperties
  readonly flow: number
  readonly heat: Quantity<'power'>
  /** The end of the coolant's table, where the coolant would become hotter. */
  readonly hot: Celsius | undefined
}

function figuresOf(loop: Loop, found: Found): Omit<CoolingLoop, keyof Findings | 'capacity'> {
  const { fluid, heat } = found
  const mean = quantity('temperature', found.mean, 'K').as('°C')
  const flow = quantity('volumeFlow', found.flow, 'm³/s').as('L/min')
  const lift = quantity('pressure', straightAt(curveOf(loop), found.flow), 'Pa').as('kPa')
  const words =
    `Coolant at its mean temperature of ${mean}: ${loop.coolant}, ${fluid.density}, ${fluid.specificHeat}, ` +
    `${fluid.viscosity}; the pump's curve meets the loop's at ${flow}, where it gives ${lift}`
  const drops = section(words, () => walked(loop, found, flow))
  const radiator = section('Radiator', () => radiatorOf(loop, fluid, flow))
  const { effectiveness, rate, lesser } = radiator
  const inlet = loop.air.temperature
  return section(found.hot === undefined ? 'Heat balance' : `With the coolant at ${found.hot}`, () => {
    const given = { effectiveness, minimumCapacityRate: lesser, coldInlet: inlet }
    const hot = found.hot ?? exchangerHotInlet({ ...given, heat }).as('°C')
    const rejected =
      hot.si < inlet.si ? quantity('power', 0, 'kW') : exchangerHeat({ ...given, hotInlet: hot }).as('kW')
    const cold = streamOutlet({ inlet: hot, heat: rejected.times(-1), capacityRate: rate })
    return {
      flow,
      pressureDrop: drops.reduce((sum, { first }) => sum.plus(first), quantity('pressure', 0, 'kPa')),
      segments: warmed(drops, cold, rate, flow),
      effectiveness,
      coolant: { hot, cold },
      rejected,
      residual: heat.minus(rejected),
    }
  })
}

/** A pipe or part with its flow and pressure drop, and the heat that it puts in. */
type Passed = Omit<LoopSegment, 'inlet' | 'outlet'> & { readonly heat: Quantity<'power'> | undefined }
/** What stands in one place of the loop: branches side by side, of pieces one after the other; `first` is its drop. */
interface Place {
  readonly branches: readonly (readonly Passed[])[]
  readonly first: Quantity<'pressure'>
}

function walked({ segments }: Loop, { fluid }: Found, flow: Quantity<'volumeFlow'>): Place[] {
  return segments.map((segment, i) => {
    const branches = segment.parallel ?? [[segment]]
    const passages = branches.map((branch) => ({ series: branch.map(plainOf) }))
    const si = { density: fluid.density.si, viscosity: fluid.viscosity.si }
    const flows = branches.length === 1 ? [flow.si] : divided(passages, si, flow.si).flows
    const passed = branches.map((branch, b) =>
      branch.map((piece, p) => {
        const path = segment.parallel === undefined ? `segments[${i}]` : `segments[${i}].parallel[${b}][${p}]`
        const own = branches.length === 1 ? flow : quantity('volumeFlow', flows[b] as number, 'm³/s').as('L/min')
        return passedBy(piece, piece.name ?? path, fluid, own)
      }),
    )
    const [first] = passed as [Passed[]]
    return {
      branches: passed,
      first: first.reduce((sum, each) => sum.plus(each.pressureDrop), quantity('pressure', 0, 'kPa')),
    }
  })
}

function passedBy(piece: Piece, name: string, fluid: CoolantProperties, flow: Quantity<'volumeFlow'>): Passed {
  const { length, bore, roughness, fittings, drop, at, heat } = piece
  return section(`${name}, ${flow}`, () => {
    if (drop !== undefined) {
      const pressure = pressureDropAtFlow({ pressure: drop, flow, referenceFlow: at as Quantity<'volumeFlow'> })
      return { name, flow, pressureDrop: pressure, heat }
    }
    const pipe = { length: length as Quantity<'length'>, bore: bore as Quantity<'length'> }
    const { density, viscosity } = fluid
    const velocity = flowVelocity({ flow, bore: pipe.bore })
    const reynolds = reynoldsNumber({ density, velocity, bore: pipe.bore, viscosity })
    const friction = frictionFactor({ reynolds, relativeRoughness: roughness?.ratioTo(pipe.bore) ?? 0 })
    const pressure = pressureDrop({ friction, ...pipe, fittings: fittings ?? 0, density, velocity })
    return { name, flow, pressureDrop: pressure, velocity, reynolds, heat }
  })
}

/** Each piece with the temperatures of the coolant, which comes from the radiator cold. */
function warmed(
  places: readonly Place[],
  cold: Celsius,
  rate: Quantity<'thermalConductance'>,
  flow: Quantity<'volumeFlow'>,
): LoopSegment[] {
  const segments: LoopSegment[] = []
  let inlet = cold
  for (const { branches } of places) {
    let mixed = 0
    for (const branch of branches) {
      let outlet = inlet
      for (const { heat, ...passed } of branch) {
        const before = outlet
        if (heat !== undefined) {
          const own = branches.length === 1 ? rate : rate.times(passed.flow.ratioTo(flow))
          outlet = section(passed.name, () => streamOutlet({ inlet: before, heat, capacityRate: own }))
        }
        segments.push({ ...passed, inlet: before, outlet })
      }
      const share = branches.length === 1 ? 1 : (branch[0] as Passed).flow.ratioTo(flow)
      mixed += share * (outlet.si - inlet.si)
    }
    inlet = inlet.plus(quantity('temperatureDifference', mixed, 'K'))
  }
  return segments
}

/** The radiator at a flow: its effectiveness, and the capacity rates of its streams. */
function radiatorOf(loop: Loop, fluid: CoolantProperties, flow: Quantity<'volumeFlow'>) {
  const { radiator } = loop
  const air = airAt(loop.air.temperature.si)
  const rate = section('coolant', () =>
    capacityRate({ flow, density: fluid.density, specificHeat: fluid.specificHeat }),
  )
  const airRate = section('air', () =>
    capacityRate({
      flow: loop.air.flow,
      density: quantity('density', air.density, 'kg/m³'),
      specificHeat: quantity('specificHeat', air.specificHeat, 'J/(kg·K)'),
    }),
  )
  const lesser = rate.isAtMost(airRate) ? rate : airRate
  if (radiator.effectiveness !== undefined) return { effectiveness: radiator.effectiveness, rate, lesser }
  const conductance = conductanceOf(loop, flow)
  const effectiveness = effectivenessCrossFlow({
    transferUnits: transferUnits({ conductance, minimumCapacityRate: lesser }),
    capacityRatio: capacityRatio({ first: rate, second: airRate }),
  })
  return { effectiveness, rate, lesser }
}

function conductanceOf({ radiator, air }: Loop, flow: Quantity<'volumeFlow'>): Quantity<'thermalConductance'> {
  const { conductance, at, exponents, airSide, coolantSide } = radiator
  if (conductance !== undefined && at !== undefined && exponents !== undefined) {
    const atAirFlow = conductanceAtFlow({
      conductance,
      flow: air.flow,
      referenceFlow: at.air,
      exponent: exponents.air,
    })
    return conductanceAtFlow({ conductance: atAirFlow, flow, referenceFlow: at.coolant, exponent: exponents.coolant })
  }
  const [first, second] = [airSide, coolantSide] as [Side, Side]
  return conductanceInSeries({
    first: section('side of the air', () => sideAt(first, air.flow)),
    second: section('side of the coolant', () => sideAt(second, flow)),
  })
}

function sideAt({ conductance, at, exponent }: Side, flow: Quantity<'volumeFlow'>): Quantity<'thermalConductance'> {
  return conductanceAtFlow({ conductance, flow, referenceFlow: at, exponent })
}

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
            check(
              `segment.${i + 1}.outlet`,
              `Coolant leaving ${name}`,
              outlet,
              'at most',
              limit,
              'limit of the coolant',
              'limit',
              'segments',
            ),
          ]
        : []),
      ...(inletLimit === undefined
        ? []
        : [
            check(
              `segment.${i + 1}.inlet`,
              `Coolant entering ${name}`,
              inlet,
              'at most',
              inletLimit,
              'inletLimit, as given',
              'segments',
            ),
          ]),
      ...(minimumFlow === undefined
        ? []
        : [
            check(
              `segment.${i + 1}.flow`,
              `Flow through ${name}`,
              flow,
              'at least',
              minimumFlow,
              'minimumFlow, as given',
              'segments',
            ),
          ]),
    ]
  })
}

/** Below this, coolant is so thick that a part whose passages are not known may be laminar. */
const FREEZING = 273.15

/** A drop at one flow holds at others by its square, while the flow is turbulent. */
function dropTrials(loop: Loop, { segments, coolant: { hot, cold } }: Figures): Check[] {
  const mean = (hot.si + cold.si) / 2
  const { density, viscosity } = coolantAt(loop.coolant, mean)
  const doubtful = piecesOf(loop).flatMap(({ drop, hydraulicDiameter, flowArea }, i) => {
    if (drop === undefined) return []
    const { name, flow } = segments[i] as LoopSegment
    if (hydraulicDiameter === undefined) return mean < FREEZING ? [name] : []
    const area = flowArea?.si ?? (Math.PI * hydraulicDiameter.si ** 2) / 4
    return (density * flow.si * hydraulicDiameter.si) / (area * viscosity) < LAMINAR ? [name] : []
  })
  if (doubtful.length === 0) return []
  const unknown = `the drop of ${doubtful.join(', ')} holds for turbulent flow, and the flow there ${mean < FREEZING ? 'may be' : 'is'} laminar: give the drop at this temperature, or pipes in their place`
  return [trial('coolant.drops', 'Pressure drop of the parts', { unknown }, 'Reynolds number below 2300', 'segments')]
}

/** Below this Reynolds number flow in a pipe is laminar. */
const LAMINAR = 2300

function checksOf(loop: Loop, figures: Figures, { heat, limit, capacity, isBalanced }: Judged): Check[] {
  const { coolant, limit: stated, minimumFlow, air } = loop
  const { flow, coolant: temperatures } = figures
  const { fluid } = coolants[coolant]
  const [low] = rangeOf(coolants[coolant])
  const basis = stated === undefined ? `the end of the table of ${fluid}` : 'the limit given'
  const begins = `the table of ${fluid} begins there`
  return [
    ...(isBalanced
      ? [
          check(
            'coolant.hot',
            'Coolant entering the radiator',
            temperatures.hot,
            'at most',
            limit,
            basis,
            'limit',
            'radiator',
          ),
        ]
      : []),
    ...(temperatures.cold.si < low.si
      ? [check('coolant.cold', 'Coolant leaving the radiator', temperatures.cold, 'at least', low, begins, 'radiator')]
      : []),
    ...(air.temperature.si < low.si
      ? [
          check(
            'coolant.parked',
            'Air in which the coolant stands when the car is parked',
            air.temperature,
            'at least',
            low,
            begins,
            'coolant',
            'air.temperature',
          ),
        ]
      : []),
    ...segmentChecks(loop, figures, limit),
    ...dropTrials(loop, figures),
    check(
      'radiator.capacity',
      `Heat that the radiator gives off with the coolant at ${limit}`,
      capacity,
      'at least',
      heat,
      'heat balance',
      'radiator',
      'air.flow',
    ),
    ...(minimumFlow === undefined
      ? []
      : [
          check(
            'coolant.flow',
            'Coolant flow',
            flow,
            'at least',
            minimumFlow,
            'the least flow given',
            'minimumFlow',
            'pump',
          ),
        ]),
  ]
}

function assumptionsOf(
  { limit: stated, segments: pieces, radiator }: Loop,
  { flow, pressureDrop, segments }: Figures,
  { limit, isBalanced, high }: Judged,
): Assumption[] {
  const pumping = pumpPower({ flow, pressure: pressureDrop, efficiency: 1 })
  const pipes = pieces
    .flatMap((piece) => [piece, ...(piece.parallel ?? []).flat()])
    .filter(({ bore }) => bore !== undefined)
  const between = segments.filter(({ reynolds }) => reynolds !== undefined && reynolds.si > 2300 && reynolds.si < 4000)
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

function tooCold({ coolant, air }: Loop, low: Celsius): CalculationError {
  const { fluid } = coolants[coolant]
  return new CalculationError(
    where,
    `the coolant would settle below ${low}, where the table of ${fluid} begins, with air at ${air.temperature}: ` +
      'it needs a thermostat or a shutter, or more antifreeze',
    { 'air temperature': String(air.temperature), 'least coolant temperature': String(low) },
  )
}

/** Refuses what is well written but makes no loop. */
function refuseUnusable(loop: Loop): void {
  const issues = [
    ...loop.segments.flatMap((segment, i) => segmentIssues(segment, `segments[${i}]`)),
    ...pumpIssues(loop),
    ...radiatorIssues(loop),
  ]
  if (issues.length > 0) throw new InputError(where, issues)
  refuseOutside(where, 'air.temperature', dryAir, loop.air.temperature)
  if (loop.limit !== undefined) refuseOutside(where, 'limit', coolants[loop.coolant], loop.limit)
  const [, high] = rangeOf(coolants[loop.coolant])
  if (loop.air.temperature.si <= high.si) return
  const expected = `a temperature of at most ${high}, where the table of the coolant ends`
  throw new InputError(where, [{ path: 'air.temperature', expected, received: String(loop.air.temperature) }])
}

const pieceExpected =
  "a pipe, such as { length: '2 m', bore: '16 mm' }, or a part, such as { drop: '8 kPa', at: '10 L/min' }"

function namesGiven(piece: object): string {
  const names = Object.entries(piece).flatMap(([key, value]) => (value === undefined || key === 'name' ? [] : [key]))
  return names.length === 0 ? 'nothing' : names.join(', ')
}

function segmentIssues(segment: Segment, path: string): InputIssue[] {
  const { parallel, name: _, ...piece } = segment
  if (parallel === undefined) return pieceIssues(piece, path)
  const others = Object.values(piece).some((value) => value !== undefined)
  const mixed = others ? [{ path, expected: 'parallel alone, or a pipe or part', received: namesGiven(segment) }] : []
  const within = parallel.flatMap((branch, b) =>
    branch.flatMap((each, p) => pieceIssues(each, `${path}.parallel[${b}][${p}]`)),
  )
  return [...mixed, ...within]
}

function pieceIssues(piece: Piece, path: string): InputIssue[] {
  const { length, bore, roughness, fittings, drop, at, hydraulicDiameter, flowArea } = piece
  if (flowArea !== undefined && hydraulicDiameter === undefined) {
    return [
      { path: `${path}.hydraulicDiameter`, expected: "a length such as '4 mm' beside flowArea", received: 'nothing' },
    ]
  }
  const pipe = [length, bore].filter((each) => each !== undefined).length
  const part = [drop, at].filter((each) => each !== undefined).length
  const isPipe = pipe === 2 && part === 0 && hydraulicDiameter === undefined
  const isPart = part === 2 && pipe === 0 && roughness === undefined && fittings === undefined
  if (!isPipe && !isPart) return [{ path, expected: pieceExpected, received: namesGiven(piece) }]
  if (roughness === undefined || bore === undefined || roughness.si <= 0.05 * bore.si) return []
  const expected = `a length of at most a twentieth of the bore, ${bore.times(0.05).as('mm')}`
  return [{ path: `${path}.roughness`, expected, received: String(roughness) }]
}

function pumpIssues({ pump }: Loop): InputIssue[] {
  const issues: InputIssue[] = []
  const [flow, pressure] = pump[0] as Loop['pump'][number]
  if (flow.si !== 0) {
    const hint = 'its pressure with the outlet shut'
    issues.push({ path: 'pump[0][0]', expected: "no flow, '0 L/min'", received: String(flow), hint })
  }
  if (pressure.si === 0) {
    const expected = "a pressure above 0 kPa at no flow, such as '35 kPa'"
    issues.push({ path: 'pump[0][1]', expected, received: String(pressure) })
  }
  for (const [i, [at, has]] of pump.entries()) {
    const [before, had] = pump[i - 1] ?? []
    if (before !== undefined && at.si <= before.si) {
      issues.push({ path: `pump[${i}][0]`, expected: `more than the flow before it, ${before}`, received: String(at) })
    }
    if (had !== undefined && has.si > had.si) {
      const expected = `at most the pressure before it, ${had}`
      const hint = 'a curve that rises has no one point of operation'
      issues.push({ path: `pump[${i}][1]`, expected, received: String(has), hint })
    }
  }
  return issues
}

function radiatorIssues({ radiator }: Loop): InputIssue[] {
  const { effectiveness, conductance, at, exponents, airSide, coolantSide } = radiator
  const given = (...values: readonly unknown[]) => values.filter((value) => value !== undefined).length
  const forms = [
    given(effectiveness) === 1 && given(conductance, at, exponents, airSide, coolantSide) === 0,
    given(conductance, at, exponents) === 3 && given(effectiveness, airSide, coolantSide) === 0,
    given(airSide, coolantSide) === 2 && given(effectiveness, conductance, at, exponents) === 0,
  ]
  if (forms.includes(true)) return []
  const expected = 'effectiveness alone; or conductance, at and exponents; or airSide and coolantSide'
  return [{ path: 'radiator', expected, received: namesGiven(radiator) }]
}

/** Refuses a pump whose curve ends before it meets the loop's. */
function refuseShortCurve(
  curve: PumpCurve,
  passage: Passage,
  fluid: { readonly density: number; readonly viscosity: number },
  flow: number,
): void {
  const last = curve.length - 1
  const [most, left] = curve[last] as PumpCurve[number]
  const taken = dropOf(passage, fluid, most)
  if (flow < most || taken >= left) return
  const text = (si: number) => String(quantity('pressure', si, 'Pa').as('kPa'))
  const flowText = String(quantity('volumeFlow', most, 'm³/s').as('L/min'))
  const expected = `points up to a flow at which the loop takes all that the pump gives; at ${flowText} it takes ${text(taken)}`
  throw new InputError(where, [{ path: `pump[${last}]`, expected, received: `${text(straightAt(curve, most))} left` }])
}
