/**
 * Flow of a coolant through hoses and pipes, and what it costs in pressure and power.
 *
 * Rests on White, Fluid Mechanics, chapter 6, and S. E. Haaland, Simple and explicit formulas for the friction
 * factor in turbulent pipe flow, Journal of Fluids Engineering 105 (1983).
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'

/**
 * Mean velocity of a flow through a round bore.
 *
 * `v = 4 * q / (pi * d^2)`
 *
 * - `flow` (`q`, L/min): flow through the pipe, at least 0 L/min
 * - `bore` (`d`, m): bore of the pipe, above 0 m
 * - gives `v`: mean velocity, in m/s
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * flowVelocity({ flow: '0.00075606 m³/s', bore: '19.05 mm' })
 * // 2.653 m/s
 * // Munson, Young and Okiishi, Fundamentals of Fluid Mechanics, 5th edition, example 8.8 (recomputed): 2.653 m/s
 * ```
 */
export const flowVelocity = /*@__PURE__*/ formula({
  name: 'flowVelocity',
  title: 'Velocity in a pipe',
  inputs: {
    flow: input('volumeFlow', 'q', 'Flow through the pipe', { min: 0 }),
    bore: input('length', 'd', 'Bore of the pipe', { above: 0 }),
  },
  result: output('speed', 'v', 'Mean velocity', 'm/s'),
  expression: '4 * q / (pi * d^2)',
  source: definition,
  compute: ({ flow, bore }) => (4 * flow) / (Math.PI * bore ** 2),
})

/**
 * Reynolds number of a flow through a pipe: laminar below about 2300, turbulent above about 4000. For a cylinder
 * across a flow, give its diameter for the bore.
 *
 * `Re = rho * v * d / mu`
 *
 * - `density` (`rho`, kg/m³): density of the fluid, at least 0 kg/m³
 * - `velocity` (`v`, km/h): mean velocity, at least 0 km/h
 * - `bore` (`d`, m): bore of the pipe, at least 0 m
 * - `viscosity` (`mu`, mPa·s): dynamic viscosity of the fluid, above 0 mPa·s
 * - gives `Re`: reynolds number, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: White, Fluid Mechanics, chapter 6.
 *
 * @example
 * ```ts
 * reynoldsNumber({ density: '1000 kg/m³', velocity: '0.9 m/s', bore: '3 mm', viscosity: '1.519 mPa·s' })
 * // 1777
 * // Çengel and Cimbala, Fluid Mechanics, 2nd edition, example 8-2 (read): 1777
 * ```
 */
export const reynoldsNumber = /*@__PURE__*/ formula({
  name: 'reynoldsNumber',
  title: 'Reynolds number',
  inputs: {
    density: input('density', 'rho', 'Density of the fluid', { min: 0 }),
    velocity: input('speed', 'v', 'Mean velocity', { min: 0 }),
    bore: input('length', 'd', 'Bore of the pipe', { min: 0 }),
    viscosity: input('dynamicViscosity', 'mu', 'Dynamic viscosity of the fluid', { above: 0 }),
  },
  result: output('ratio', 'Re', 'Reynolds number'),
  expression: 'rho * v * d / mu',
  source: cite('White, Fluid Mechanics', 'chapter 6'),
  compute: ({ density, velocity, bore, viscosity }) => (density * velocity * bore) / viscosity,
})

/**
 * Friction factor of Darcy (four times that of Fanning): 64/Re in laminar flow, Haaland's formula in turbulent flow.
 * Between Reynolds numbers of 2300 and 4000 no formula is sound; the two are joined there by a straight line.
 *
 * `f = Re < 2300 ? 64 / Re : Re > 4000 ? (1.8 * log10(6.9 / Re + (e / 3.7)^1.11))^(-2) : 64 / 2300 * (4000 - Re) / 1700 + (1.8 * log10(6.9 / 4000 + (e / 3.7)^1.11))^(-2) * (Re - 2300) / 1700`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number, above 0 and at most 100000000
 * - `relativeRoughness` (`e`, a plain number): height of the roughness over the bore, at least 0 and at most 0.05
 * - gives `f`: friction factor (Darcy), in a plain number
 * - Assumes: the flow is fully developed
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Haaland, Journal of Fluids Engineering 105 (1983) 89, turbulent flow; White, Fluid Mechanics, laminar.
 *
 * @example
 * ```ts
 * frictionFactor({ reynolds: 10000, relativeRoughness: 0 })
 * // 0.03089
 * // Haaland, Journal of Fluids Engineering 105 (1983) 89 (recomputed): 0.030886
 * ```
 */
export const frictionFactor = /*@__PURE__*/ formula({
  name: 'frictionFactor',
  title: 'Friction factor of a pipe',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number', { above: 0, max: 1e8 }),
    relativeRoughness: input('ratio', 'e', 'Height of the roughness over the bore', { min: 0, max: 0.05 }),
  },
  result: output('ratio', 'f', 'Friction factor (Darcy)'),
  expression:
    'Re < 2300 ? 64 / Re : Re > 4000 ? (1.8 * log10(6.9 / Re + (e / 3.7)^1.11))^(-2) : ' +
    '64 / 2300 * (4000 - Re) / 1700 + (1.8 * log10(6.9 / 4000 + (e / 3.7)^1.11))^(-2) * (Re - 2300) / 1700',
  assumes: ['The flow is fully developed.'],
  source: cite(
    'Haaland, Journal of Fluids Engineering 105 (1983) 89',
    'turbulent flow; White, Fluid Mechanics, laminar',
  ),
  compute: ({ reynolds, relativeRoughness }) => {
    const turbulent = (Re: number) => (1.8 * Math.log10(6.9 / Re + (relativeRoughness / 3.7) ** 1.11)) ** -2
    if (reynolds < 2300) return 64 / reynolds
    if (reynolds > 4000) return turbulent(reynolds)
    return ((64 / 2300) * (4000 - reynolds)) / 1700 + (turbulent(4000) * (reynolds - 2300)) / 1700
  },
})

/**
 * Pressure lost along a pipe and in its fittings. Elbows, valves and connectors often cost more than the hose.
 *
 * `dp = (f * l / d + K) * rho * v^2 / 2`
 *
 * - `friction` (`f`, a plain number): friction factor (Darcy), at least 0
 * - `length` (`l`, m): length of the pipe, at least 0 m
 * - `bore` (`d`, m): bore of the pipe, above 0 m
 * - `fittings` (`K`, a plain number): sum of the loss coefficients of the fittings, at least 0
 * - `density` (`rho`, kg/m³): density of the fluid, at least 0 kg/m³
 * - `velocity` (`v`, km/h): mean velocity, at least 0 km/h
 * - gives `dp`: pressure drop, in kPa
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: White, Fluid Mechanics, chapter 6.
 *
 * @example
 * ```ts
 * pressureDrop({
 *   friction: 0.03601,
 *   length: '9 m',
 *   bore: '3 mm',
 *   fittings: 0,
 *   density: '1000 kg/m³',
 *   velocity: '0.9 m/s',
 * })
 * // 43.75 kPa
 * // Çengel and Cimbala, Fluid Mechanics, 2nd edition, example 8-2 (recomputed): 43.75 kPa
 * ```
 */
export const pressureDrop = /*@__PURE__*/ formula({
  name: 'pressureDrop',
  title: 'Pressure drop of a pipe',
  inputs: {
    friction: input('ratio', 'f', 'Friction factor (Darcy)', { min: 0 }),
    length: input('length', 'l', 'Length of the pipe', { min: 0 }),
    bore: input('length', 'd', 'Bore of the pipe', { above: 0 }),
    fittings: input('ratio', 'K', 'Sum of the loss coefficients of the fittings', { min: 0 }),
    density: input('density', 'rho', 'Density of the fluid', { min: 0 }),
    velocity: input('speed', 'v', 'Mean velocity', { min: 0 }),
  },
  result: output('pressure', 'dp', 'Pressure drop'),
  expression: '(f * l / d + K) * rho * v^2 / 2',
  source: cite('White, Fluid Mechanics', 'chapter 6'),
  compute: ({ friction, length, bore, fittings, density, velocity }) =>
    (((friction * length) / bore + fittings) * density * velocity ** 2) / 2,
})

/**
 * Pressure lost in a part whose loss its maker gives at one flow, such as a motor's jacket, a cold plate or a
 * radiator.
 *
 * `dp = dp0 * (q / q0)^2`
 *
 * - `pressure` (`dp0`, kPa): pressure drop at the flow of reference, at least 0 kPa
 * - `flow` (`q`, L/min): flow, at least 0 L/min
 * - `referenceFlow` (`q0`, L/min): flow of reference, above 0 L/min
 * - gives `dp`: pressure drop at the flow, in kPa
 * - Assumes: the loss is that of turns and narrow places, turbulent at both flows
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: White, Fluid Mechanics, chapter 6.
 *
 * @example
 * ```ts
 * pressureDropAtFlow({ pressure: '8 kPa', flow: '20 L/min', referenceFlow: '10 L/min' })
 * // 32 kPa
 * // by definition (exact): 32 kPa
 * ```
 */
export const pressureDropAtFlow = /*@__PURE__*/ formula({
  name: 'pressureDropAtFlow',
  title: 'Pressure drop at another flow',
  inputs: {
    pressure: input('pressure', 'dp0', 'Pressure drop at the flow of reference', { min: 0 }),
    flow: input('volumeFlow', 'q', 'Flow', { min: 0 }),
    referenceFlow: input('volumeFlow', 'q0', 'Flow of reference', { above: 0 }),
  },
  result: output('pressure', 'dp', 'Pressure drop at the flow'),
  expression: 'dp0 * (q / q0)^2',
  assumes: ['The loss is that of turns and narrow places, turbulent at both flows.'],
  source: cite('White, Fluid Mechanics', 'chapter 6'),
  compute: ({ pressure, flow, referenceFlow }) => pressure * (flow / referenceFlow) ** 2,
})

/**
 * Power that a pump draws to drive a flow against a pressure. Small electric pumps turn only a fifth to two fifths of
 * it into flow.
 *
 * `P = q * dp / eta`
 *
 * - `flow` (`q`, L/min): flow, at least 0 L/min
 * - `pressure` (`dp`, kPa): pressure against which it pumps, at least 0 kPa
 * - `efficiency` (`eta`, a plain number): efficiency of pump and motor, above 0 and at most 1
 * - gives `P`: power drawn, in W
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * pumpPower({ flow: '0.006 m³/s', pressure: '96.5 kPa', efficiency: 1 })
 * // 579 W
 * // Çengel and Cimbala, Fluid Mechanics, 2nd edition, example 8-3 (read): 579 W
 * ```
 */
export const pumpPower = /*@__PURE__*/ formula({
  name: 'pumpPower',
  title: 'Power of a pump',
  inputs: {
    flow: input('volumeFlow', 'q', 'Flow', { min: 0 }),
    pressure: input('pressure', 'dp', 'Pressure against which it pumps', { min: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency of pump and motor', { above: 0, max: 1 }),
  },
  result: output('power', 'P', 'Power drawn', 'W'),
  expression: 'q * dp / eta',
  source: definition,
  compute: ({ flow, pressure, efficiency }) => (flow * pressure) / efficiency,
})
