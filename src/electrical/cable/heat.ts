/**
 * How warm a cable gets: the heat of its current against what convection and radiation carry off through its insulation,
 * all day and over a duty that changes.
 *
 * Rests on S. W. Churchill and H. H. S. Chu (1975) for still air, on the law of Stefan and Boltzmann, on IEC 60287-2-1 for
 * two cables that touch, and on conduction through a tube (Incropera, Fundamentals of Heat and Mass Transfer, chapter 3).
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings } from '../../findings/index.js'
import { cite, constant, definition, formula, input, output } from '../../formula/index.js'
import { rootBetween } from '../../formula/root.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { about, given, procedure, type Read } from '../../structure/index.js'
import { airAt } from '../../thermal/air/dry-air.js'
import {
  airProperties,
  convectionCoefficient,
  naturalConvectionCylinder,
  radiationCoefficient,
  rayleighNumber,
} from '../../thermal/index.js'
import { type ConductorMaterial, conductorMaterials, metricSections, resistancePerLengthAt } from './conductor.js'

/**
 * Share of its heat that a cable still gives off when it touches another one beside it with the same current, as the
 * cables out and back usually do. The coefficients of IEC 60287-2-1 for one cable and for two, horizontal and
 * touching, stand in ratio; those for two are from memory.
 *
 * `f = (0.29 * (D / D1)^(-0.5) + 2.35) / (0.21 * (D / D1)^(-0.6) + 3.94)`
 *
 * - `outerDiameter` (`D`, m): outer diameter of each cable, above 0 m
 * - gives `f`: share of the heat of a cable on its own, in a plain number
 * - `D1` = 1 m: unit in which the coefficients are written (by definition)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60287-2-1, Table 3, cables in free air; the coefficients for two from memory.
 *
 * @example
 * ```ts
 * touchingShare({ outerDiameter: '16 mm' })
 * // 0.7197
 * // IEC 60287-2-1, Table 3, one cable, and two horizontal and touching, 16 mm (from memory): 0.71975
 * ```
 */
export const touchingShare = /*@__PURE__*/ formula({
  name: 'touchingShare',
  title: 'Share of heat given off by a cable that touches another',
  inputs: { outerDiameter: input('length', 'D', 'Outer diameter of each cable', { above: 0 }) },
  result: output('ratio', 'f', 'Share of the heat of a cable on its own'),
  expression: '(0.29 * (D / D1)^(-0.5) + 2.35) / (0.21 * (D / D1)^(-0.6) + 3.94)',
  constants: { D1: constant('length', '1 m', 'Unit in which the coefficients are written', definition) },
  source: cite('IEC 60287-2-1', 'Table 3, cables in free air; the coefficients for two from memory'),
  compute: ({ outerDiameter }, { D1 }) =>
    (0.29 * (outerDiameter / D1) ** -0.5 + 2.35) / (0.21 * (outerDiameter / D1) ** -0.6 + 3.94),
})

/**
 * Heat that each area of a cable's surface gives off to still air and surroundings of one temperature.
 *
 * `q = f * (hc + hr) * dT`
 *
 * - `convection` (`hc`, W/(m²·K)): heat transfer coefficient of convection, at least 0 W/(m²·K)
 * - `radiation` (`hr`, W/(m²·K)): heat transfer coefficient of radiation, at least 0 W/(m²·K)
 * - `share` (`f`, a plain number): share of the heat that a neighbour leaves, above 0 and at most 1, 1 unless given
 * - `difference` (`dT`, K): temperature of the surface above the air, at least 0 K
 * - gives `q`: heat given off by each area of surface, in W/m²
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * surfaceHeatFlux({ convection: '7.23 W/(m²·K)', radiation: '9.885 W/(m²·K)', difference: '142 K' })
 * // 2430 W/m²
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 9.4 (recomputed): 2430 W/m²
 * ```
 */
export const surfaceHeatFlux = /*@__PURE__*/ formula({
  name: 'surfaceHeatFlux',
  title: 'Heat given off by the surface of a cable',
  inputs: {
    convection: input('heatTransferCoefficient', 'hc', 'Heat transfer coefficient of convection', { min: 0 }),
    radiation: input('heatTransferCoefficient', 'hr', 'Heat transfer coefficient of radiation', { min: 0 }),
    share: input('ratio', 'f', 'Share of the heat that a neighbour leaves', { above: 0, max: 1, default: 1 }),
    difference: input('temperatureDifference', 'dT', 'Temperature of the surface above the air', { min: 0 }),
  },
  result: output('heatFlux', 'q', 'Heat given off by each area of surface'),
  expression: 'f * (hc + hr) * dT',
  source: definition,
  compute: ({ convection, radiation, share, difference }) => share * (convection + radiation) * difference,
})

/**
 * How much warmer the conductor is than the surface of its cable, for the heat that crosses the insulation.
 *
 * `dTi = q * D * log(D / d) / (2 * k)`
 *
 * - `heatFlux` (`q`, W/m²): heat given off by each area of surface, at least 0 W/m²
 * - `outerDiameter` (`D`, m): outer diameter of the cable, above 0 m
 * - `conductorDiameter` (`d`, m): diameter of the conductor, above 0 m
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the insulation, above 0 W/(m·K)
 * - gives `dTi`: temperature of the conductor above the surface, in K
 * - holds where outerDiameter / conductorDiameter is at least 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * insulationDrop({
 *   heatFlux: '727.6 W/m²',
 *   outerDiameter: '7 mm',
 *   conductorDiameter: '3 mm',
 *   conductivity: '0.15 W/(m·K)',
 * })
 * // 14.38 K
 * // Cengel, Heat Transfer, example 3.9 (recomputed): 14.4 K
 * ```
 */
export const insulationDrop = /*@__PURE__*/ formula({
  name: 'insulationDrop',
  title: 'Temperature drop across the insulation of a cable',
  inputs: {
    heatFlux: input('heatFlux', 'q', 'Heat given off by each area of surface', { min: 0 }),
    outerDiameter: input('length', 'D', 'Outer diameter of the cable', { above: 0 }),
    conductorDiameter: input('length', 'd', 'Diameter of the conductor', { above: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the insulation', { above: 0 }),
  },
  result: output('temperatureDifference', 'dTi', 'Temperature of the conductor above the surface'),
  expression: 'q * D * log(D / d) / (2 * k)',
  valid: [
    {
      of: 'outerDiameter / conductorDiameter',
      value: ({ outerDiameter, conductorDiameter }) => outerDiameter / conductorDiameter,
      min: 1,
    },
  ],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3'),
  compute: ({ heatFlux, outerDiameter, conductorDiameter, conductivity }) =>
    (heatFlux * outerDiameter * Math.log(outerDiameter / conductorDiameter)) / (2 * conductivity),
})

/**
 * Current whose heat in a conductor is just what the surface of its cable gives off.
 *
 * `I = sqrt(pi * D * q / r)`
 *
 * - `heatFlux` (`q`, W/m²): heat given off by each area of surface, at least 0 W/m²
 * - `outerDiameter` (`D`, m): outer diameter of the cable, at least 0 m
 * - `resistancePerLength` (`r`, mΩ/m): resistance per length at the temperature of the conductor, above 0 mΩ/m
 * - gives `I`: current, in A
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * cableCurrent({ heatFlux: '1115.2 W/m²', outerDiameter: '28.14 mm', resistancePerLength: '0.0939 mΩ/m' })
 * // 1025 A
 * // IEEE 738, worked example (recomputed): 1025 A
 * ```
 */
export const cableCurrent = /*@__PURE__*/ formula({
  name: 'cableCurrent',
  title: 'Current that makes the heat of a cable',
  inputs: {
    heatFlux: input('heatFlux', 'q', 'Heat given off by each area of surface', { min: 0 }),
    outerDiameter: input('length', 'D', 'Outer diameter of the cable', { min: 0 }),
    resistancePerLength: input(
      'resistancePerLength',
      'r',
      'Resistance per length at the temperature of the conductor',
      {
        above: 0,
      },
    ),
  },
  result: output('current', 'I', 'Current'),
  expression: 'sqrt(pi * D * q / r)',
  source: definition,
  compute: ({ heatFlux, outerDiameter, resistancePerLength }) =>
    Math.sqrt((Math.PI * outerDiameter * heatFlux) / resistancePerLength),
})

/** From where the table of air begins, and up to where it leaves no room for a cable that is warmer than the air. */
export const airRange = { min: '250 K', below: '500 K' } as const

/** What describes a single-core cable, for its heat. */
export const cableFields = /*@__PURE__*/ (() => ({
  area: given('area', 'Section of the conductor', { above: 0 }),
  conductor: about('what the conductor is made of', z.optional(z.enum(['copper', 'aluminium']))),
  resistance: z.optional(given('resistancePerLength', 'Resistance per length of the conductor at 20 °C', { above: 0 })),
  conductorDiameter: z.optional(given('length', 'Diameter of the stranded conductor', { above: 0 })),
  outerDiameter: z.optional(given('length', 'Outer diameter of the cable', { above: 0 })),
  laid: about('whether it lies on its own or touches another', z.optional(z.enum(['apart', 'touching']))),
  ambient: given('temperature', 'Temperature of the air and what is around', airRange),
}))()

const cableGiven = /*@__PURE__*/ z.strictObject(cableFields)

/** A cable as it is described. */
export type CableGiven = Read<typeof cableGiven>

/** A cable with all that its heat balance needs, and what was assumed for it. */
export interface Cable {
  readonly area: Quantity<'area'>
  readonly conductor: 'copper' | 'aluminium'
  readonly material: ConductorMaterial
  /** At 20 °C. */
  readonly resistance: Quantity<'resistancePerLength'>
  readonly conductorDiameter: Quantity<'length'>
  readonly outerDiameter: Quantity<'length'>
  readonly ambient: Quantity<'temperature'>
  readonly touching: boolean
  /** The share of heat that a neighbour leaves it. */
  readonly share: number
  readonly assumptions: readonly string[]
}

/** Rubber, and cross-linked or plain polyethylene: 3.5 K·m/W in IEC 60287-2-1. */
const CONDUCTIVITY = /*@__PURE__*/ (() => quantity('thermalConductivity', 1 / 3.5, 'W/(m·K)'))()
/** Any paint or plastic radiates heat nearly as a black body does. */
const EMISSIVITY = 0.9
/** Share of a flexible conductor's circle that is metal. Common practice, no source. */
const FILL = 0.6
/** What laying the strands in a helix adds to the resistance of a section. Common practice, no source. */
const LAY = 1.02

/** Completes a cable by what is usual, and says so; `thickness` is where its outer diameter was asked. */
export function cableOf(where: string, asked: CableGiven, thickness = 'outerDiameter'): Cable {
  const { area, ambient } = asked
  const conductor = asked.conductor ?? 'copper'
  const material = conductorMaterials[conductor]
  const standard = conductor === 'copper' ? metricSections.find((each) => each.area.equals(area)) : undefined
  const resistance =
    asked.resistance ??
    standard?.maximumResistance ??
    quantity('resistancePerLength', (LAY * material.resistivity.si) / area.si, 'Ω/m').as('mΩ/m')
  const solid = Math.sqrt((4 * area.si) / Math.PI)
  const outer = asked.outerDiameter?.si
  // A cable that is known to be thin holds a conductor that is packed more closely.
  const stranded = Math.min(solid / Math.sqrt(FILL), outer === undefined ? Infinity : Math.max(solid, 0.9 * outer))
  const conductorDiameter = asked.conductorDiameter ?? quantity('length', stranded, 'm').as('mm')
  const outerDiameter = asked.outerDiameter ?? quantity('length', 1.2 * conductorDiameter.si + 0.001, 'm').as('mm')
  refuseDiameters(where, thickness, area, conductorDiameter, outerDiameter)
  const touching = asked.laid === 'touching'
  const metal =
    asked.resistance !== undefined
      ? 'as given'
      : standard !== undefined
        ? 'the most that IEC 60228 allows, class 5'
        : 'that of the metal and 2 % for the lay of the strands'
  return {
    area,
    conductor,
    material,
    resistance,
    conductorDiameter,
    outerDiameter,
    ambient,
    touching,
    share: touching ? touchingShare.compute({ outerDiameter: outerDiameter.si }) : 1,
    assumptions: [
      `${area} of ${conductor}: ${resistance} at 20 °C, ${metal}.`,
      ...(asked.outerDiameter === undefined
        ? [`Outer diameter ${outerDiameter}, that of thin-walled flexible cable (common practice, no source).`]
        : []),
      touching
        ? 'Still air, out of the sun; the cable touches another beside it with the same current.'
        : 'Still air, out of the sun; nothing lies near the cable.',
      `The insulation conducts ${CONDUCTIVITY}, and its surface has an emissivity of ${EMISSIVITY}.`,
    ],
  }
}

function refuseDiameters(
  where: string,
  thickness: string,
  area: Quantity<'area'>,
  conductorDiameter: Quantity<'length'>,
  outerDiameter: Quantity<'length'>,
): void {
  const refuse = (path: string, expected: string, received: Quantity<'length'>): never => {
    throw new InputError(where, [{ path, expected: `a length of at least ${expected}`, received: String(received) }])
  }
  const solid = quantity('length', Math.sqrt((4 * area.si) / Math.PI), 'm').as('mm')
  if (conductorDiameter.si < solid.si * (1 - 1e-9)) {
    refuse('conductorDiameter', `${solid}, that of ${area} of solid metal`, conductorDiameter)
  }
  if (outerDiameter.si < conductorDiameter.si) {
    refuse(thickness, `${conductorDiameter}, that of the conductor`, outerDiameter)
  }
}

/** Heat given off by each area at a temperature of the surface, in SI numbers. */
function fluxAt({ outerDiameter, ambient, share }: Cable, surface: number): number {
  const air = airAt((surface + ambient.si) / 2)
  const length = outerDiameter.si
  const difference = surface - ambient.si
  const rayleigh = rayleighNumber.compute({
    expansion: air.expansion,
    difference,
    length,
    viscosity: air.kinematicViscosity,
    diffusivity: air.diffusivity,
  })
  const nusselt = naturalConvectionCylinder.compute({ rayleigh, prandtl: air.prandtl })
  return surfaceHeatFlux.compute({
    convection: convectionCoefficient.compute({ nusselt, conductivity: air.conductivity, length }),
    radiation: radiationCoefficient.compute({ emissivity: EMISSIVITY, surface, surroundings: ambient.si }),
    share,
    difference,
  })
}

/** Temperature of the conductor at a temperature of the surface, in kelvins. */
function conductorAt({ outerDiameter, conductorDiameter }: Cable, surface: number, heatFlux: number): number {
  const drop = insulationDrop.compute({
    heatFlux,
    outerDiameter: outerDiameter.si,
    conductorDiameter: conductorDiameter.si,
    conductivity: CONDUCTIVITY.si,
  })
  return surface + drop
}

function resistanceAt({ resistance, material }: Cable, temperature: number): number {
  return resistancePerLengthAt.compute({ resistance: resistance.si, coefficient: material.coefficient.si, temperature })
}

/** The state of a cable whose surface has a temperature, in SI numbers. */
function stateAt(cable: Cable, surface: number) {
  const flux = fluxAt(cable, surface)
  const conductor = conductorAt(cable, surface, flux)
  const outerDiameter = cable.outerDiameter.si
  const current = cableCurrent.compute({
    heatFlux: flux,
    outerDiameter,
    resistancePerLength: resistanceAt(cable, conductor),
  })
  return { conductor, current }
}

/** The hottest surface that can be followed: the table of air ends at a film of 500 K, and metal melts. */
function hottestSurface(cable: Cable): number {
  const end = 1000 - cable.ambient.si
  return rootBetween(
    (surface) => stateAt(cable, surface).conductor - cable.material.meltingPoint.si,
    cable.ambient.si,
    end,
  )
}

const kelvins = (value: number) => quantity('temperature', value, 'K').as('°C')

/** A cable at a steady current. */
export interface SteadyCable {
  readonly current: Quantity<'current'>
  readonly conductorTemperature: Quantity<'temperature'>
  readonly surfaceTemperature: Quantity<'temperature'>
  /** Heat given off by each metre of cable. */
  readonly lossPerLength: Quantity<'powerPerLength'>
  /** Of convection and radiation together. */
  readonly heatTransferCoefficient: Quantity<'heatTransferCoefficient'>
}

/** The steady state of a cable with a surface temperature that was found, with its working. */
function steady(cable: Cable, surface: number): SteadyCable {
  const { ambient, outerDiameter, conductorDiameter, resistance, material } = cable
  const surfaceTemperature = kelvins(surface)
  const air = airProperties({ temperature: kelvins((surface + ambient.si) / 2) })
  const difference = surfaceTemperature.minus(ambient)
  const rayleigh = rayleighNumber({
    expansion: air.expansion,
    difference,
    length: outerDiameter,
    viscosity: air.kinematicViscosity,
    diffusivity: air.diffusivity,
  })
  const nusselt = naturalConvectionCylinder({ rayleigh, prandtl: air.prandtl })
  const convection = convectionCoefficient({ nusselt, conductivity: air.conductivity, length: outerDiameter })
  const radiation = radiationCoefficient({ emissivity: EMISSIVITY, surface: surfaceTemperature, surroundings: ambient })
  const heatFlux = surfaceHeatFlux({
    convection,
    radiation,
    difference,
    ...(cable.touching ? { share: touchingShare({ outerDiameter }) } : {}),
  })
  const drop = insulationDrop({ heatFlux, outerDiameter, conductorDiameter, conductivity: CONDUCTIVITY })
  const conductorTemperature = surfaceTemperature.plus(drop)
  const resistancePerLength = resistancePerLengthAt({
    resistance,
    coefficient: material.coefficient,
    temperature: conductorTemperature,
  })
  const current = cableCurrent({ heatFlux, outerDiameter, resistancePerLength })
  return {
    current,
    conductorTemperature,
    surfaceTemperature,
    lossPerLength: quantity('powerPerLength', heatFlux.si * Math.PI * outerDiameter.si, 'W/m'),
    heatTransferCoefficient: quantity(
      'heatTransferCoefficient',
      cable.share * (convection.si + radiation.si),
      'W/(m²·K)',
    ),
  }
}

/** How warm a cable gets at a steady current. */
export function steadyAtCurrent(where: string, cable: Cable, current: Quantity<'current'>): SteadyCable {
  const end = hottestSurface(cable)
  const last = stateAt(cable, end)
  if (current.si > last.current) {
    const { area, conductor, material } = cable
    const atMost = quantity('current', last.current, 'A')
    throw new CalculationError(
      where,
      `${current} has no steady temperature in ${area} of ${conductor}: even with the conductor at ${kelvins(last.conductor)} ` +
        `it carries ${atMost}. Its insulation burns long before, and the metal melts at ${material.meltingPoint}`,
      { current: String(current), atMost: String(atMost), conductor: String(kelvins(last.conductor)) },
    )
  }
  const surface = rootBetween((each) => stateAt(cable, each).current - current.si, cable.ambient.si, end)
  return { ...steady(cable, surface), current }
}

/** The current at which the conductor of a cable settles at a limit. */
export function steadyAtLimit(where: string, path: string, cable: Cable, limit: Quantity<'temperature'>): SteadyCable {
  const end = hottestSurface(cable)
  const hottest = kelvins(stateAt(cable, end).conductor)
  if (limit.si <= cable.ambient.si || limit.si > hottest.si) {
    const expected = `a temperature above the ambient one, ${cable.ambient}, and at most ${hottest}, where the table of air ends`
    throw new InputError(where, [{ path, expected, received: String(limit) }])
  }
  const surface = rootBetween((each) => stateAt(cable, each).conductor - limit.si, cable.ambient.si, end)
  return { ...steady(cable, surface), conductorTemperature: limit }
}

/** How warm a cable gets. */
export interface CableTemperature extends Findings, Omit<SteadyCable, 'current'> {}

const cableTemperatureGiven = /*@__PURE__*/ about(
  'a cable and its current',
  z.strictObject({ ...cableFields, current: given('current', 'Steady current', { min: 0 }) }),
)

/**
 * Gives the temperature of one cable in still air at a steady current, from the balance of its heat.
 *
 * - `current` (A), at least 0
 * - `area` (mm²) of the conductor, of `conductor` `'copper'` (unless given) or `'aluminium'`
 * - `ambient` (°C) of air and surroundings, at least −23.15 °C and below 226.8 °C
 * - `resistance` (mΩ/m) at 20 °C: unless given, the most that IEC 60228 allows a flexible conductor of a metric section, and
 *   for other sections that of the metal and 2 % for the lay of the strands
 * - `outerDiameter`, `conductorDiameter` (mm): unless given, those of thin-walled flexible cable
 * - `laid`: `'apart'` unless given, or `'touching'` another cable with the same current
 *
 * Between 25 mm² and 240 mm² it lies within 9 % of what IEC 60364-5-52 tabulates for single cables at 90 °C in free air
 * (methods F and G, from memory). The NEC's tables stand below it by 3 % to 20 % in current, most at 90 °C, because they take
 * one film coefficient, near 12 W/(m²·K), for all temperatures: where they are the law, they come first. It counts on still
 * air that can come and go; a cable in a duct, a bundle or beside something hot runs hotter.
 *
 * @returns Temperatures of conductor and surface, the heat of each metre, and the heat transfer coefficient.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a current at which no temperature is
 * steady before the metal melts.
 * Source: Churchill and Chu (1975); Incropera, Fundamentals of Heat and Mass Transfer, chapters 1 and 3; IEC 60287-2-1.
 *
 * @example
 * ```ts
 * const { conductorTemperature, lossPerLength } = cableTemperature({ current: '200 A', area: '50 mm²', ambient: '25 °C' })
 * String(conductorTemperature) // '57.61 °C'
 * String(lossPerLength) // '17.72 W/m'
 * ```
 */
export const cableTemperature = /*@__PURE__*/ procedure(
  'cableTemperature',
  cableTemperatureGiven,
  ({ current, ...asked }): CableTemperature => {
    const cable = cableOf('cableTemperature', asked)
    const { current: _, ...state } = steadyAtCurrent('cableTemperature', cable, current)
    return { ...state, checks: [], assumptions: cable.assumptions, cautions: [cautions.shortCircuit] }
  },
)

/** What a cable carries. */
export interface CableAmpacity extends Findings {
  readonly ampacity: Quantity<'current'>
  readonly surfaceTemperature: Quantity<'temperature'>
  /** Heat given off by each metre of cable. */
  readonly lossPerLength: Quantity<'powerPerLength'>
}

const cableAmpacityGiven = /*@__PURE__*/ about(
  'a cable and the limit of its insulation',
  z.strictObject({ ...cableFields, limit: given('temperature', 'Greatest temperature of the conductor') }),
)

/**
 * Gives the current that one cable in still air carries all day without its conductor passing a temperature.
 *
 * The cable is described as for {@link cableTemperature}; `limit` (°C) is what its insulation bears all day, above the
 * ambient temperature.
 *
 * @throws InputError for input that cannot be used, by its path.
 * Source: as {@link cableTemperature}.
 *
 * @example
 * ```ts
 * const { ampacity } = cableAmpacity({ area: '50 mm²', limit: '90 °C', ambient: '30 °C' })
 * String(ampacity) // '275 A'
 * ```
 */
export const cableAmpacity = /*@__PURE__*/ procedure(
  'cableAmpacity',
  cableAmpacityGiven,
  ({ limit, ...asked }): CableAmpacity => {
    const cable = cableOf('cableAmpacity', asked)
    const { current, surfaceTemperature, lossPerLength } = steadyAtLimit('cableAmpacity', 'limit', cable, limit)
    return {
      ampacity: current,
      surfaceTemperature,
      lossPerLength,
      checks: [],
      assumptions: cable.assumptions,
      cautions: [cautions.shortCircuit],
    }
  },
)

/** Currents one after the other, each for a time. */
export const profileGiven = /*@__PURE__*/ about(
  'currents, each for a time: [current, time]',
  z.readonly(
    z
      .array(
        z.readonly(
          about(
            "a current and its time, such as ['300 A', '10 s']",
            z.tuple([given('current', 'Current, of either sign'), given('time', 'Time that it lasts', { above: 0 })]),
          ),
        ),
      )
      .check(z.minLength(1)),
  ),
)

type Profile = Read<typeof profileGiven>

/** The root mean square of a profile. */
export function rmsOf(profile: Profile): Quantity<'current'> {
  const time = profile.reduce((sum, [, each]) => sum + each.si, 0)
  const squares = profile.reduce((sum, [current, each]) => sum + current.si ** 2 * each.si, 0)
  return quantity('current', Math.sqrt(squares / time), 'A')
}

/**
 * Gives the root mean square of currents that last for different times: the steady current that heats a cable as much.
 *
 * The input is a list of [current (A, of either sign), time (s, above 0)]. It stands for the profile only where that
 * repeats faster than the cable warms, which takes some minutes; {@link cableDuty} follows it.
 *
 * @throws InputError for input that cannot be used, by its path.
 * Source: by definition.
 *
 * @example
 * ```ts
 * String(rmsCurrent([['300 A', '10 s'], ['0 A', '30 s']])) // '150 A'
 * ```
 */
export const rmsCurrent = /*@__PURE__*/ procedure('rmsCurrent', profileGiven, rmsOf)

/** A cable over a duty. */
export interface CableDuty extends Findings {
  /** Root mean square of the currents. */
  readonly rms: Quantity<'current'>
  /** Hottest that the conductor gets. */
  readonly peak: Quantity<'temperature'>
  /** When it is hottest, from the start. */
  readonly peakAt: Quantity<'time'>
  /** Conductor at the end. */
  readonly final: Quantity<'temperature'>
}

const cableDutyGiven = /*@__PURE__*/ about(
  'a cable and its duty',
  z.strictObject({
    ...cableFields,
    profile: profileGiven,
    rounds: about('how many times the profile is run', z.optional(z.int().check(z.minimum(1), z.maximum(1000)))),
    initial: z.optional(given('temperature', 'Temperature of the cable at the start', { min: '250 K' })),
    limit: z.optional(given('temperature', 'Greatest temperature of the conductor')),
  }),
)

/**
 * Follows the temperature of a cable over currents that change, from a cold start, and gives the hottest that its
 * conductor gets.
 *
 * The cable is described as for {@link cableTemperature}, and
 *
 * - `profile`: list of [current (A, of either sign), time (s, above 0)]
 * - `rounds`: how many times it is run, 1 unless given
 * - `initial` (°C): the cable at the start, ambient unless given
 * - `limit` (°C): what the insulation bears; with it the peak becomes a check
 *
 * The heat is followed through rings of the insulation; what a terminal, a duct or the next hot part adds is not in it.
 *
 * @throws InputError for input that cannot be used, by its path; CalculationError where the metal would melt.
 * Source: as {@link cableTemperature}; heat capacities of IEC 60949 (metal) and 2.4 MJ/(m³·K) (insulation, IEC 60853-2,
 * from memory).
 *
 * @example
 * ```ts
 * const { rms, peak } = cableDuty({
 *   profile: [['300 A', '60 s'], ['50 A', '180 s']],
 *   rounds: 20,
 *   area: '35 mm²',
 *   ambient: '40 °C',
 * })
 * String(rms) // '156.1 A'
 * String(peak) // '79.31 °C'
 * ```
 */
export const cableDuty = /*@__PURE__*/ procedure(
  'cableDuty',
  cableDutyGiven,
  ({ profile, rounds = 1, initial, limit, ...asked }): CableDuty => {
    const cable = cableOf('cableDuty', asked)
    const { peak, peakAt, final } = followed(
      'cableDuty',
      cable,
      courseOf(profile),
      rounds,
      (initial ?? cable.ambient).si,
    )
    const checks: Check[] =
      limit === undefined
        ? []
        : [check('Hottest conductor', kelvins(peak), 'at most', limit, 'limit of the insulation, as given')]
    return {
      rms: rmsOf(profile),
      peak: kelvins(peak),
      peakAt: quantity('time', peakAt, 's'),
      final: kelvins(final),
      checks,
      assumptions: [
        ...cable.assumptions,
        'The insulation takes up 2.4 MJ/(m³·K) (from memory).',
        ...(initial === undefined ? [`The cable starts at the ambient temperature, ${cable.ambient}.`] : []),
      ],
      cautions: [cautions.shortCircuit],
    }
  },
)

/** Volumetric heat of plastic and rubber insulation: IEC 60853-2, from memory. */
const INSULATION_HEAT = 2.4e6
/** How thick a ring of insulation is followed, and how many rings at most. */
const [RING, RINGS] = [0.25e-3, 8]
/** Points between which the heat given off is interpolated: a step of a few kelvins, over which it bends by next to nothing. */
const POINTS = 256

/** Heat given off by each metre at a temperature of the surface, and how it rises, between points that were worked out once. */
function givenOff(cable: Cable): (surface: number) => { readonly heat: number; readonly slope: number } {
  const from = cable.ambient.si
  const step = (1000 - 2 * from) / POINTS
  const around = Math.PI * cable.outerDiameter.si
  const points = Array.from({ length: POINTS + 1 }, (_, i) => around * fluxAt(cable, from + i * step))
  return (surface) => {
    // Colder than the air at the start, the cable takes up heat as it would give it off.
    const away = Math.abs(surface - from)
    const i = Math.min(Math.floor(away / step), POINTS - 1)
    const low = points[i] as number
    const slope = ((points[i + 1] as number) - low) / step
    const heat = low + (away - i * step) * slope
    return { heat: surface >= from ? heat : -heat, slope }
  }
}

/** A cable as bodies from the conductor to the surface: what each holds, and what passes from each to the next. */
interface Bodies {
  readonly cable: Cable
  readonly capacities: readonly number[]
  readonly conductances: readonly number[]
  readonly away: ReturnType<typeof givenOff>
}

/** The bodies of a cable: its metal, and rings of its insulation. */
function bodiesOf(cable: Cable): Bodies {
  const [outer, inner] = [cable.outerDiameter.si / 2, cable.conductorDiameter.si / 2]
  const rings = Math.min(RINGS, Math.round((outer - inner) / RING))
  const ring = rings === 0 ? 0 : (outer - inner) / rings
  const radius = (i: number) => (rings === 0 ? outer : inner + i * ring)
  // Bodies lie on the circles between rings, each with half of the ring on either side. The first is the metal alone, and
  // leaves its half ring to the next: a short burst comes out a little high rather than low.
  const capacities = Array.from({ length: rings + 1 }, (_, i) => {
    const from = i <= 1 ? inner : radius(i) - ring / 2
    const to = Math.min(outer, radius(i) + ring / 2)
    const insulation = i === 0 && rings > 0 ? 0 : INSULATION_HEAT * Math.PI * (to ** 2 - from ** 2)
    return insulation + (i === 0 ? cable.material.volumetricHeat.si * cable.area.si : 0)
  })
  const conductances = Array.from(
    { length: rings },
    (_, i) => (2 * Math.PI * CONDUCTIVITY.si) / Math.log(radius(i + 1) / radius(i)),
  )
  return { cable, capacities, conductances, away: givenOff(cable) }
}

/** The bodies at the temperatures at which a heat of each metre passes through them to a surface. */
function passing({ conductances }: Bodies, surface: number, heat: number): number[] {
  const state = [surface]
  for (const conductance of [...conductances].reverse()) state.unshift((state[0] as number) + heat / conductance)
  return state
}

/** Root of x³ − 3x² + 3x/2 − 1/6 with which the method below damps the quickest changes wholly. */
const GAMMA = 0.4358665215084592
const [SECOND, THIRD] = [(1 - GAMMA) / 2, -(6 * GAMMA ** 2 - 16 * GAMMA + 1) / 4] as const

/**
 * Moves the bodies on by steps of time: the implicit Runge-Kutta method of three stages and third order of R. Alexander, SIAM
 * Journal on Numerical Analysis 14 (1977) 1006, from memory. It stays stable however much longer than its rings a step is.
 */
function stepper({ cable, capacities, conductances, away }: Bodies) {
  const last = conductances.length
  const at = [...capacities]
  const list = () => capacities.map(() => 0)
  const [diagonal, lower, first, second, third] = [list(), list(), list(), list(), list()] as const
  // Resistance is straight over temperature.
  const warmth = (resistanceAt(cable, 300) - resistanceAt(cable, 200)) / 100
  /** Rows of capacity less step times what its own temperature does to each, eliminated from the conductor outwards. */
  const factored = (current: number, span: number, slope: number) => {
    for (let i = 0; i <= last; i++) {
      const before = i === 0 ? 0 : (conductances[i - 1] as number)
      const after = i === last ? slope : (conductances[i] as number)
      const own = (capacities[i] as number) + span * (before + after) - (i === 0 ? span * current ** 2 * warmth : 0)
      lower[i] = i === 0 ? 0 : (-span * before) / (diagonal[i - 1] as number)
      diagonal[i] = own + (lower[i] as number) * span * before
    }
  }
  /** How fast each body warms, into `rate`, where it is as warm as `at` says. */
  const solved = (current: number, span: number, rate: number[]) => {
    let coming = current ** 2 * resistanceAt(cable, at[0] as number)
    for (let i = 0; i <= last; i++) {
      const temperature = at[i] as number
      const leaving =
        i === last ? away(temperature).heat : (conductances[i] as number) * (temperature - (at[i + 1] as number))
      rate[i] = coming - leaving - (i === 0 ? 0 : (lower[i] as number) * (rate[i - 1] as number))
      coming = leaving
    }
    for (let i = last; i >= 0; i--) {
      const next = i === last ? 0 : span * (conductances[i] as number) * (rate[i + 1] as number)
      rate[i] = ((rate[i] as number) + next) / (diagonal[i] as number)
    }
  }
  return (state: number[], current: number, step: number): void => {
    const span = GAMMA * step
    factored(current, span, away(state[last] as number).slope)
    const stage = (rate: number[], share: number, other = 0) => {
      for (let i = 0; i <= last; i++) {
        at[i] = (state[i] as number) + step * (share * (first[i] as number) + other * (second[i] as number))
      }
      solved(current, span, rate)
    }
    stage(first, 0)
    stage(second, SECOND)
    stage(third, THIRD, 1 - GAMMA - THIRD)
    for (let i = 0; i <= last; i++) {
      const mean = THIRD * (first[i] as number) + (1 - GAMMA - THIRD) * (second[i] as number)
      state[i] = (state[i] as number) + step * (mean + GAMMA * (third[i] as number))
    }
  }
}

/** Currents in amperes, each for a time in seconds. */
type Course = readonly (readonly [current: number, time: number])[]

/** A profile in SI numbers, its currents as a bundle lets them count. */
export function courseOf(profile: Profile, share = 1): Course {
  return profile.map(([current, time]) => [current.si / share, time.si])
}

/** The first step after a change of current, and by what share of the time since then the steps grow. */
const [FIRST_STEP, GROWTH] = [1, 0.01]
/** No step in which the conductor alone would warm by more than a few kelvins. */
const WARMING = 5

/** Runs the bodies once through a course, and tells the hottest that the conductor gets, and when. */
function runner(where: string, bodies: Bodies) {
  const { cable, capacities, conductances } = bodies
  const move = stepper(bodies)
  const hottest = 1000 - cable.ambient.si
  const warming = (state: readonly number[], current: number) => {
    const [metal, next] = [state[0] as number, state[1] ?? (state[0] as number)]
    const leaving = (conductances[0] ?? 0) * (metal - next)
    return Math.abs(current ** 2 * resistanceAt(cable, metal) - leaving) / (capacities[0] as number)
  }
  return (state: number[], course: Course, before: number) => {
    let [peak, peakAt, time] = [0, before, before]
    for (const [current, duration] of course) {
      for (let gone = 0; gone < duration; ) {
        const step = Math.min(Math.max(FIRST_STEP, GROWTH * gone), WARMING / warming(state, current), duration - gone)
        move(state, current, step)
        gone = step < duration - gone ? gone + step : duration
        const conductor = state[0] as number
        if (!(conductor < cable.material.meltingPoint.si && (state.at(-1) as number) < hottest)) {
          const after = quantity('time', time + gone, 's')
          throw new CalculationError(
            where,
            `after ${after} the conductor of ${cable.area} is past any heat that can be followed: its insulation has ` +
              `burnt, and the metal melts at ${cable.material.meltingPoint}`,
            { current: String(quantity('current', current, 'A')), after: String(after) },
          )
        }
        if (conductor > peak) [peak, peakAt] = [conductor, time + gone]
      }
      time += duration
    }
    return { peak, peakAt, time }
  }
}

/** The conductor over a course that is run some times from one temperature of the whole cable, in SI numbers. */
function followed(where: string, cable: Cable, course: Course, rounds: number, initial: number) {
  const bodies = bodiesOf(cable)
  const run = runner(where, bodies)
  const state = bodies.capacities.map(() => initial)
  let [peak, peakAt, time] = [initial, 0, 0]
  for (let round = 0; round < rounds; round++) {
    const each = run(state, course, time)
    if (each.peak > peak) ({ peak, peakAt } = each)
    time = each.time
  }
  return { peak, peakAt, final: state[0] as number }
}

/** A course has settled when a round leaves the cable as it found it, to so many kelvins in each second of the round. */
const SETTLED = 1e-5
/** Some time constants of the thickest cable, in seconds: by then every course has settled. */
const SETTLING = 10800

/** The hottest that the conductor gets in each round of a course that is run again and again, in kelvins. */
export function settledPeak(where: string, cable: Cable, course: Course, mean: SteadyCable): number {
  const bodies = bodiesOf(cable)
  const run = runner(where, bodies)
  const state = passing(bodies, mean.surfaceTemperature.si, mean.lossPerLength.si)
  for (let time = 0; ; ) {
    const before = [...state]
    const round = run(state, course, time)
    const changed = Math.max(...state.map((each, i) => Math.abs(each - (before[i] as number))))
    if (changed <= SETTLED * (round.time - time) || round.time > SETTLING) return round.peak
    time = round.time
  }
}
