/**
 * Flow through pipes and parts in series and in parallel, and where the curve of a pump meets that of its loop.
 *
 * Rests on White, Fluid Mechanics, chapter 6. Every pressure drop here rises with the flow, so that each flow that is
 * looked for lies between two known ones, and there is one.
 */
import { straightAt } from '../../formula/points.js'
import { rootBetween } from '../../formula/root.js'
import { flowVelocity, frictionFactor, pressureDrop, pressureDropAtFlow, reynoldsNumber } from './pipe.js'

/** A fluid, in SI units. @internal */
export interface Fluid {
  readonly density: number
  readonly viscosity: number
}

/** A round pipe, in SI units. @internal */
export interface Pipe {
  readonly length: number
  readonly bore: number
  readonly roughness: number
  readonly fittings: number
}

/** A part with the pressure drop that its maker gives at one flow, in SI units. @internal */
export interface Part {
  readonly pressure: number
  readonly referenceFlow: number
}

/** What a flow passes: a pipe or part, things one after the other, or branches side by side. @internal */
export type Passage = Pipe | Part | { readonly series: readonly Passage[] } | { readonly parallel: readonly Passage[] }

/** Pressure drop of a passage at a flow. @internal */
export function dropOf(passage: Passage, fluid: Fluid, flow: number): number {
  if (flow === 0) return 0
  if ('series' in passage) return passage.series.reduce((sum, each) => sum + dropOf(each, fluid, flow), 0)
  if ('parallel' in passage) return divided(passage.parallel, fluid, flow).drop
  if ('pressure' in passage) return pressureDropAtFlow.compute({ ...passage, flow })
  const { density, viscosity } = fluid
  const velocity = flowVelocity.compute({ flow, bore: passage.bore })
  const reynolds = reynoldsNumber.compute({ density, velocity, bore: passage.bore, viscosity })
  const friction = frictionFactor.compute({ reynolds, relativeRoughness: passage.roughness / passage.bore })
  return pressureDrop.compute({ ...passage, friction, density, velocity })
}

/** How a flow divides among branches side by side, and the one pressure drop across them all. */
interface Division {
  readonly flows: readonly number[]
  readonly drop: number
}

/** Divides a flow among branches side by side: fast where the slopes lead there, else step by sure step. @internal */
export function divided(branches: readonly Passage[], fluid: Fluid, flow: number): Division {
  return dividedBySlopes(branches, fluid, flow) ?? dividedByBrackets(branches, fluid, flow)
}

/** A step this small, as a share of a flow, shows the slope of a pressure drop; a rest this small is rounding. */
const [STEP, REST] = [1e-7, 1e-13]

/**
 * Newton's method on the flows of all branches at once. It comes to rest in a few rounds, but may go round in circles
 * where a branch stands between laminar and turbulent flow: then there is no result.
 */
function dividedBySlopes(branches: readonly Passage[], fluid: Fluid, flow: number): Division | undefined {
  let flows = branches.map(() => flow / branches.length)
  for (let round = 0; round < 30; round++) {
    const drops = flows.map((each, i) => dropOf(branches[i] as Passage, fluid, each))
    const yields = flows.map((each, i) => {
      const step = STEP * each
      return step / (dropOf(branches[i] as Passage, fluid, each + step) - (drops[i] as number))
    })
    const reach = flows.reduce((sum, each, i) => sum + each - (drops[i] as number) * (yields[i] as number), 0)
    const drop = (flow - reach) / yields.reduce((sum, each) => sum + each, 0)
    const next = flows.map((each, i) => each + (drop - (drops[i] as number)) * (yields[i] as number))
    if (!next.every((each) => each > 0)) return undefined
    const moved = Math.max(...next.map((each, i) => Math.abs(each - (flows[i] as number)) / each))
    flows = next
    if (moved <= REST) return { flows, drop }
  }
  return undefined
}

/**
 * The drop at which the flows of all branches add up, between nothing and that of the easiest branch alone.
 * @internal
 */
export function dividedByBrackets(branches: readonly Passage[], fluid: Fluid, flow: number): Division {
  const most = Math.min(...branches.map((branch) => dropOf(branch, fluid, flow)))
  const flowsUnder = (drop: number) =>
    branches.map((branch) => rootBetween((each) => dropOf(branch, fluid, each) - drop, 0, flow))
  const drop = rootBetween((each) => flowsUnder(each).reduce((sum, part) => sum + part, -flow), 0, most)
  return { flows: flowsUnder(drop), drop }
}

/** Points of a pump's curve, [flow, pressure], in SI units: the flow rises from 0, the pressure falls. @internal */
export type PumpCurve = readonly (readonly [flow: number, pressure: number])[]

/**
 * The flow at which a pump's pressure is the drop of its loop; the last flow of its curve where that still has more.
 * @internal
 */
export function operatingFlow(curve: PumpCurve, loop: Passage, fluid: Fluid): number {
  const spare = (flow: number) => straightAt(curve, flow) - dropOf(loop, fluid, flow)
  return rootBetween(spare, 0, (curve.at(-1) as PumpCurve[number])[0])
}
