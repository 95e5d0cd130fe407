/**
 * Heat that passes from the wall of a channel into the coolant, and through what lies between a cell and that wall.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapters 3 and 8; Shah and London, Laminar Flow Forced
 * Convection in Ducts (1978); Gnielinski, International Chemical Engineering 16 (1976); and the VDI Heat Atlas, part G1.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'

const incropera = /*@__PURE__*/ cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 8')

/**
 * Bore of the round pipe in whose place a channel of another shape may be taken, four times its area over its wetted
 * edge.
 *
 * `dh = 4 * A / P`
 *
 * - `area` (`A`, m²): area across the flow, at least 0 m²
 * - `perimeter` (`P`, m): wetted edge of that area, above 0 m
 * - gives `dh`: hydraulic diameter, in mm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * hydraulicDiameter({ area: '0.04 m²', perimeter: '0.8 m' })
 * // 200 mm
 * // Çengel, Heat Transfer, 3rd edition, example 8.6 (read): 0.2 m
 * ```
 */
export const hydraulicDiameter = /*@__PURE__*/ formula({
  name: 'hydraulicDiameter',
  title: 'Hydraulic diameter',
  inputs: {
    area: input('area', 'A', 'Area across the flow', { min: 0 }),
    perimeter: input('length', 'P', 'Wetted edge of that area', { above: 0 }),
  },
  result: output('length', 'dh', 'Hydraulic diameter', 'mm'),
  expression: '4 * A / P',
  source: definition,
  compute: ({ area, perimeter }) => (4 * area) / perimeter,
})

/**
 * Prandtl number of a fluid: how thick the layer is that the wall slows, over that which it warms.
 *
 * `Pr = mu * c / k`
 *
 * - `viscosity` (`mu`, mPa·s): dynamic viscosity of the fluid, at least 0 mPa·s
 * - `specificHeat` (`c`, J/(kg·K)): specific heat of the fluid, at least 0 J/(kg·K)
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the fluid, above 0 W/(m·K)
 * - gives `Pr`: prandtl number, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * prandtlNumber({ viscosity: '0.436 mPa·s', specificHeat: '4185 J/(kg·K)', conductivity: '0.662 W/(m·K)' })
 * // 2.756
 * // Kreith, Principles of Heat Transfer, 7th edition, example 6.4 (read): 2.78
 * ```
 */
export const prandtlNumber = /*@__PURE__*/ formula({
  name: 'prandtlNumber',
  title: 'Prandtl number',
  inputs: {
    viscosity: input('dynamicViscosity', 'mu', 'Dynamic viscosity of the fluid', { min: 0 }),
    specificHeat: input('specificHeat', 'c', 'Specific heat of the fluid', { min: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the fluid', { above: 0 }),
  },
  result: output('ratio', 'Pr', 'Prandtl number'),
  expression: 'mu * c / k',
  source: definition,
  compute: ({ viscosity, specificHeat, conductivity }) => (viscosity * specificHeat) / conductivity,
})

/**
 * Graetz number of a channel: above 20 the warmth of the wall has not reached the middle of a laminar flow at its
 * end.
 *
 * `Gz = Re * Pr * d / L`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number, at least 0
 * - `prandtl` (`Pr`, a plain number): prandtl number, at least 0
 * - `bore` (`d`, m): bore of the pipe, or hydraulic diameter, at least 0 m
 * - `length` (`L`, m): length of the channel, above 0 m
 * - gives `Gz`: graetz number, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 8.
 *
 * @example
 * ```ts
 * graetzNumber({ reynolds: 1142, prandtl: 2.78, bore: '2.54 mm', length: '0.3 m' })
 * // 26.88
 * // Kreith, Principles of Heat Transfer, 7th edition, example 6.4 (recomputed): 26.88
 * ```
 */
export const graetzNumber = /*@__PURE__*/ formula({
  name: 'graetzNumber',
  title: 'Graetz number',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number', { min: 0 }),
    prandtl: input('ratio', 'Pr', 'Prandtl number', { min: 0 }),
    bore: input('length', 'd', 'Bore of the pipe, or hydraulic diameter', { min: 0 }),
    length: input('length', 'L', 'Length of the channel', { above: 0 }),
  },
  result: output('ratio', 'Gz', 'Graetz number'),
  expression: 'Re * Pr * d / L',
  source: incropera,
  compute: ({ reynolds, prandtl, bore, length }) => (reynolds * prandtl * bore) / length,
})

/**
 * Length in which a laminar flow takes the form that it keeps. In turbulent flow it is ten to sixty bores.
 *
 * `Le = 0.05 * Re * d`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number, at least 0 and at most 2300
 * - `bore` (`d`, m): bore of the pipe, or hydraulic diameter, at least 0 m
 * - gives `Le`: entry length, in m
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 8.
 *
 * @example
 * ```ts
 * entryLength({ reynolds: 1500, bore: '8 mm' })
 * // 0.6 m
 * // by definition (exact): 0.6 m
 * ```
 */
export const entryLength = /*@__PURE__*/ formula({
  name: 'entryLength',
  title: 'Entry length of a laminar flow',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number', { min: 0, max: 2300 }),
    bore: input('length', 'd', 'Bore of the pipe, or hydraulic diameter', { min: 0 }),
  },
  result: output('length', 'Le', 'Entry length'),
  expression: '0.05 * Re * d',
  source: incropera,
  compute: ({ reynolds, bore }) => 0.05 * reynolds * bore,
})

/**
 * Length in which the warmth of the wall reaches the middle of a laminar flow. Glycol needs many metres: in a cold
 * plate it never gets there, and the Nusselt number of the developed flow is several times too low.
 *
 * `Lt = 0.05 * Re * Pr * d`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number, at least 0 and at most 2300
 * - `prandtl` (`Pr`, a plain number): prandtl number, at least 0
 * - `bore` (`d`, m): bore of the pipe, or hydraulic diameter, at least 0 m
 * - gives `Lt`: thermal entry length, in m
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 8.
 *
 * @example
 * ```ts
 * thermalEntryLength({ reynolds: 1500, prandtl: 34, bore: '8 mm' })
 * // 20.4 m
 * // by definition (exact): 20.4 m
 * ```
 */
export const thermalEntryLength = /*@__PURE__*/ formula({
  name: 'thermalEntryLength',
  title: 'Thermal entry length of a laminar flow',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number', { min: 0, max: 2300 }),
    prandtl: input('ratio', 'Pr', 'Prandtl number', { min: 0 }),
    bore: input('length', 'd', 'Bore of the pipe, or hydraulic diameter', { min: 0 }),
  },
  result: output('length', 'Lt', 'Thermal entry length'),
  expression: '0.05 * Re * Pr * d',
  source: incropera,
  compute: ({ reynolds, prandtl, bore }) => 0.05 * reynolds * prandtl * bore,
})

/**
 * Nusselt number of a developed laminar flow in a flat channel whose walls all have one temperature. Square it is
 * 2.98, between wide plates 7.54.
 *
 * `Nu = 7.541 * (1 - 2.61 * a + 4.97 * a^2 - 5.119 * a^3 + 2.702 * a^4 - 0.548 * a^5)`
 *
 * - `aspect` (`a`, a plain number): short side over long side, at least 0 and at most 1
 * - gives `Nu`: nusselt number on the hydraulic diameter, in a plain number
 * - Assumes: all four walls are warm, and of one temperature
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Shah and London, Laminar Flow Forced Convection in Ducts (1978), formula from memory.
 *
 * @example
 * ```ts
 * nusseltLaminarFlat({ aspect: 1 })
 * // 2.979
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, Table 8.1 (from memory): 2.98
 * ```
 */
export const nusseltLaminarFlat = /*@__PURE__*/ formula({
  name: 'nusseltLaminarFlat',
  title: 'Developed laminar flow in a flat channel',
  inputs: { aspect: input('ratio', 'a', 'Short side over long side', { min: 0, max: 1 }) },
  result: output('ratio', 'Nu', 'Nusselt number on the hydraulic diameter'),
  expression: '7.541 * (1 - 2.61 * a + 4.97 * a^2 - 5.119 * a^3 + 2.702 * a^4 - 0.548 * a^5)',
  assumes: ['All four walls are warm, and of one temperature.'],
  source: cite('Shah and London, Laminar Flow Forced Convection in Ducts (1978)', 'formula from memory'),
  compute: ({ aspect: a }) => 7.541 * (1 - 2.61 * a + 4.97 * a ** 2 - 5.119 * a ** 3 + 2.702 * a ** 4 - 0.548 * a ** 5),
})

/**
 * Friction factor of Darcy of a developed laminar flow in a flat channel, from the Reynolds number on its hydraulic
 * diameter.
 *
 * `f = 96 * (1 - 1.3553 * a + 1.9467 * a^2 - 1.7012 * a^3 + 0.9564 * a^4 - 0.2537 * a^5) / Re`
 *
 * - `aspect` (`a`, a plain number): short side over long side, at least 0 and at most 1
 * - `reynolds` (`Re`, a plain number): reynolds number on the hydraulic diameter, above 0 and at most 2300
 * - gives `f`: friction factor (Darcy), in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Shah and London, Laminar Flow Forced Convection in Ducts (1978), formula from memory.
 *
 * @example
 * ```ts
 * frictionLaminarFlat({ aspect: 1, reynolds: 1000 })
 * // 0.05692
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, Table 8.1 (from memory): 0.057
 * ```
 */
export const frictionLaminarFlat = /*@__PURE__*/ formula({
  name: 'frictionLaminarFlat',
  title: 'Friction of laminar flow in a flat channel',
  inputs: {
    aspect: input('ratio', 'a', 'Short side over long side', { min: 0, max: 1 }),
    reynolds: input('ratio', 'Re', 'Reynolds number on the hydraulic diameter', { above: 0, max: 2300 }),
  },
  result: output('ratio', 'f', 'Friction factor (Darcy)'),
  expression: '96 * (1 - 1.3553 * a + 1.9467 * a^2 - 1.7012 * a^3 + 0.9564 * a^4 - 0.2537 * a^5) / Re',
  source: cite('Shah and London, Laminar Flow Forced Convection in Ducts (1978)', 'formula from memory'),
  compute: ({ aspect: a, reynolds }) =>
    (96 * (1 - 1.3553 * a + 1.9467 * a ** 2 - 1.7012 * a ** 3 + 0.9564 * a ** 4 - 0.2537 * a ** 5)) / reynolds,
})

/**
 * Mean Nusselt number of a laminar flow over the length of its channel, from where the wall begins to warm it. A flat
 * channel has its own `developed` number, that of {@link nusseltLaminarFlat}; its entry is then taken as that of a
 * round one.
 *
 * `Nu = cbrt(Nd^3 + 0.7^3 + (1.615 * cbrt(Gz) - 0.7)^3)`
 *
 * - `graetz` (`Gz`, a plain number): graetz number of the channel, at least 0 and at most 1000000
 * - `developed` (`Nd`, a plain number): nusselt number far from the entry, at least 1 and at most 10, 3.66 unless
 *   given
 * - gives `Nu`: mean Nusselt number, in a plain number
 * - Assumes: the wall has one temperature; the coolant, one viscosity
 * - Assumes: the flow has the form that it keeps
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: VDI Heat Atlas, part G1, formula from memory.
 *
 * @example
 * ```ts
 * nusseltLaminar({ graetz: 1 })
 * // 3.687
 * // Graetz, Annalen der Physik 18 (1883), exact mean Nusselt number (recomputed): 3.707
 * ```
 */
export const nusseltLaminar = /*@__PURE__*/ formula({
  name: 'nusseltLaminar',
  title: 'Laminar flow in a channel',
  inputs: {
    graetz: input('ratio', 'Gz', 'Graetz number of the channel', { min: 0, max: 1e6 }),
    developed: input('ratio', 'Nd', 'Nusselt number far from the entry', {
      min: 1,
      max: 10,
      default: 3.66,
      because: 'a round channel whose wall has one temperature',
    }),
  },
  result: output('ratio', 'Nu', 'Mean Nusselt number'),
  expression: 'cbrt(Nd^3 + 0.7^3 + (1.615 * cbrt(Gz) - 0.7)^3)',
  assumes: ['The wall has one temperature; the coolant, one viscosity.', 'The flow has the form that it keeps.'],
  source: cite('VDI Heat Atlas', 'part G1, formula from memory'),
  compute: ({ graetz, developed }) => Math.cbrt(developed ** 3 + 0.7 ** 3 + (1.615 * Math.cbrt(graetz) - 0.7) ** 3),
})

/**
 * Friction factor of Darcy of a smooth pipe in turbulent flow, as it goes with {@link nusseltGnielinski}.
 *
 * `f = (0.79 * log(Re) - 1.64)^(-2)`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number, at least 3000 and at most 5000000
 * - gives `f`: friction factor (Darcy), in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, equation 8.21.
 *
 * @example
 * ```ts
 * petukhovFriction({ reynolds: 3000 })
 * // 0.04556
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, equation 8.21 (recomputed): 0.045559
 * ```
 */
export const petukhovFriction = /*@__PURE__*/ formula({
  name: 'petukhovFriction',
  title: 'Friction of turbulent flow in a smooth pipe',
  inputs: { reynolds: input('ratio', 'Re', 'Reynolds number', { min: 3000, max: 5e6 }) },
  result: output('ratio', 'f', 'Friction factor (Darcy)'),
  expression: '(0.79 * log(Re) - 1.64)^(-2)',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'equation 8.21'),
  compute: ({ reynolds }) => (0.79 * Math.log(reynolds) - 1.64) ** -2,
})

/**
 * Nusselt number of a turbulent flow in a pipe or channel. Good to ten per cent; below a Reynolds number of 4000 no
 * formula is good to better than thirty.
 *
 * `Nu = f / 8 * (Re - 1000) * Pr / (1 + 12.7 * sqrt(f / 8) * (Pr^(2 / 3) - 1))`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number, at least 3000 and at most 5000000
 * - `prandtl` (`Pr`, a plain number): prandtl number, at least 0.5 and at most 2000
 * - `friction` (`f`, a plain number): friction factor (Darcy), above 0 and at most 0.07
 * - gives `Nu`: nusselt number, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gnielinski, International Chemical Engineering 16 (1976) 359.
 *
 * @example
 * ```ts
 * nusseltGnielinski({ reynolds: 100000, prandtl: 1.2, friction: 0.0185 })
 * // 254.6
 * // Gnielinski, International Chemical Engineering 16 (1976) 359 (read): 254.627
 * ```
 */
export const nusseltGnielinski = /*@__PURE__*/ formula({
  name: 'nusseltGnielinski',
  title: 'Turbulent flow in a channel',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number', { min: 3000, max: 5e6 }),
    prandtl: input('ratio', 'Pr', 'Prandtl number', { min: 0.5, max: 2000 }),
    friction: input('ratio', 'f', 'Friction factor (Darcy)', { above: 0, max: 0.07 }),
  },
  result: output('ratio', 'Nu', 'Nusselt number'),
  expression: 'f / 8 * (Re - 1000) * Pr / (1 + 12.7 * sqrt(f / 8) * (Pr^(2 / 3) - 1))',
  source: cite('Gnielinski, International Chemical Engineering 16 (1976) 359'),
  compute: ({ reynolds, prandtl, friction }) =>
    ((friction / 8) * (reynolds - 1000) * prandtl) / (1 + 12.7 * Math.sqrt(friction / 8) * (prandtl ** (2 / 3) - 1)),
})

/**
 * Nusselt number of a flow that is neither laminar nor turbulent: the straight line between the two. It may be wrong
 * by thirty per cent either way.
 *
 * `Nu = Nl * (4000 - Re) / 1700 + Nt * (Re - 2300) / 1700`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number, at least 2300 and at most 4000
 * - `laminar` (`Nl`, a plain number): nusselt number of laminar flow at a Reynolds number of 2300, at least 0
 * - `turbulent` (`Nt`, a plain number): nusselt number of turbulent flow at a Reynolds number of 4000, at least 0
 * - gives `Nu`: nusselt number, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: VDI Heat Atlas, part G1, after Gnielinski, from memory.
 *
 * @example
 * ```ts
 * nusseltBetween({ reynolds: 3150, laminar: 4, turbulent: 40 })
 * // 22
 * // by definition (exact): 22
 * ```
 */
export const nusseltBetween = /*@__PURE__*/ formula({
  name: 'nusseltBetween',
  title: 'Flow between laminar and turbulent',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number', { min: 2300, max: 4000 }),
    laminar: input('ratio', 'Nl', 'Nusselt number of laminar flow at a Reynolds number of 2300', { min: 0 }),
    turbulent: input('ratio', 'Nt', 'Nusselt number of turbulent flow at a Reynolds number of 4000', { min: 0 }),
  },
  result: output('ratio', 'Nu', 'Nusselt number'),
  expression: 'Nl * (4000 - Re) / 1700 + Nt * (Re - 2300) / 1700',
  source: cite('VDI Heat Atlas', 'part G1, after Gnielinski, from memory'),
  compute: ({ reynolds, laminar, turbulent }) => (laminar * (4000 - reynolds) + turbulent * (reynolds - 2300)) / 1700,
})

/**
 * Resistance to heat of a joint between two faces. Of dry aluminium with 10 µm of roughness, pressed with 1 bar in
 * air, a square metre passes 3640 W/K (from memory), and three times more or less where faces and pressure differ;
 * grease, some 140 000 W/K.
 *
 * `R = 1 / (hc * A)`
 *
 * - `coefficient` (`hc`, W/(m²·K)): conductance of the joint for its area, above 0 W/(m²·K)
 * - `area` (`A`, m²): area of the joint, above 0 m²
 * - gives `R`: resistance of the joint, in K/W
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * thermalContact({ coefficient: '11000 W/(m²·K)', area: '1 m²' })
 * // 0.00009091 K/W
 * // Çengel, Heat Transfer, 3rd edition, example 3.4 (recomputed): 0.0000909 K/W
 * ```
 */
export const thermalContact = /*@__PURE__*/ formula({
  name: 'thermalContact',
  title: 'Resistance of a joint to heat',
  inputs: {
    coefficient: input('heatTransferCoefficient', 'hc', 'Conductance of the joint for its area', { above: 0 }),
    area: input('area', 'A', 'Area of the joint', { above: 0 }),
  },
  result: output('thermalResistance', 'R', 'Resistance of the joint'),
  expression: '1 / (hc * A)',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3'),
  compute: ({ coefficient, area }) => 1 / (coefficient * area),
})

/**
 * Resistance to heat of a pad or a plate that heat crosses. Its two joints come on top.
 *
 * `R = t / (k * A)`
 *
 * - `thickness` (`t`, m): thickness, as pressed, at least 0 m
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity, above 0 W/(m·K)
 * - `area` (`A`, m²): area that the heat crosses, above 0 m²
 * - gives `R`: resistance of the pad, in K/W
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * gapPad({ thickness: '21.55 mm', conductivity: '237 W/(m·K)', area: '1 m²' })
 * // 0.00009093 K/W
 * // Çengel, Heat Transfer, 3rd edition, example 3.4 (recomputed): 0.0000909 K/W
 * ```
 */
export const gapPad = /*@__PURE__*/ formula({
  name: 'gapPad',
  title: 'Resistance of a pad to heat',
  inputs: {
    thickness: input('length', 't', 'Thickness, as pressed', { min: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity', { above: 0 }),
    area: input('area', 'A', 'Area that the heat crosses', { above: 0 }),
  },
  result: output('thermalResistance', 'R', 'Resistance of the pad'),
  expression: 't / (k * A)',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3'),
  compute: ({ thickness, conductivity, area }) => thickness / (conductivity * area),
})
