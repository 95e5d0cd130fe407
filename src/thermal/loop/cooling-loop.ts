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
import { type Findings, procedure, type Unfinished } from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { airAt } from '../air/dry-air.js'
import { rangeOf } from '../property-table.js'
import { assumptionsOf, checksOf } from './checks.js'
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
import {
  type Celsius,
  type Loop,
  loopInput,
  type Piece,
  refuseUnusable,
  type Segment,
  type Side,
  where,
} from './given.js'
import { flowVelocity, frictionFactor, pressureDrop, pressureDropAtFlow, reynoldsNumber } from './pipe.js'
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
 * Air in which the coolant freezes fails a check, however warm the coolant runs: it stands in that air when the car is
 * parked. Where the radiator cannot give off the heat with the coolant at the end of its table, the
 * figures are those at that end, a check fails, and `residual` is the heat that is left over.
 *
 * Answers: how much does the pump drive through the loop, and how warm does the coolant become?
 *
 * - `coolant`: coolant, glycol by volume, 'water' or 'ethylene glycol 30 %' or 'ethylene glycol 40 %' or 'ethylene
 *   glycol 50 %' or 'propylene glycol 30 %' or 'propylene glycol 40 %' or 'propylene glycol 50 %'
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

function tooCold({ coolant, air }: Loop, low: Celsius): CalculationError {
  const { fluid } = coolants[coolant]
  return new CalculationError(
    where,
    `the coolant would settle below ${low}, where the table of ${fluid} begins, with air at ${air.temperature}: ` +
      'it needs a thermostat or a shutter, or more antifreeze',
    { 'air temperature': String(air.temperature), 'least coolant temperature': String(low) },
  )
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
