/**
 * The heat balance of a cable: the heat of its current against what convection and radiation carry off through its
 * insulation.
 *
 * Rests on S. W. Churchill and H. H. S. Chu (1975) for still air, on the law of Stefan and Boltzmann, on IEC 60287-2-1 for
 * two cables that touch, and on conduction through a tube (Incropera, Fundamentals of Heat and Mass Transfer, chapter 3).
 */
import { cite, constant, definition, formula, input, output } from '../../formula/index.js'
import { rootBetween } from '../../formula/root.js'
import { type Assumption, assumed, choice, given, optional, type Read } from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
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

/**
 * From where the table of air begins, and up to where it leaves no room for a cable that is warmer than the air.
 * @internal
 */
export const airRange = { min: '250 K', below: '500 K' } as const

/** What the conductor of a cable is made of. @internal */
export const conductorField = /*@__PURE__*/ (() =>
  choice('Metal of the conductor', ['copper', 'aluminium'], {
    default: 'copper',
    because: 'as in nearly all flexible cable',
  }))()

/** How a cable lies: on its own, or beside another with the same current. @internal */
export const lays = ['apart', 'touching'] as const

/** Of single-core cables from 0.35 mm² to 300 mm². @internal */
export const OUTER_DIAMETERS = ['1 mm', '40 mm'] as const

/** What describes a single-core cable, for its heat. @internal */
export const cableFields = /*@__PURE__*/ (() => ({
  area: given('area', 'Section of the conductor', { above: 0 }),
  conductor: conductorField,
  resistance: optional(given('resistancePerLength', 'Resistance per length of the conductor at 20 °C', { above: 0 })),
  conductorDiameter: optional(given('length', 'Diameter of the stranded conductor', { above: 0 })),
  outerDiameter: optional(given('length', 'Outer diameter of the cable', { above: 0, usual: OUTER_DIAMETERS })),
  laid: choice('How the cables lie', lays, { default: 'apart', because: 'one cable on its own' }),
  ambient: given('temperature', 'Temperature of the air and what is around', airRange),
}))()

/** A cable as it is described. @internal */
export type CableGiven = Read<typeof cableFields>

/** A cable with all that its heat balance needs, and what was assumed for it. @internal */
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
  readonly assumptions: readonly Assumption[]
}

/** Rubber, and cross-linked or plain polyethylene: 3.5 K·m/W in IEC 60287-2-1. @internal */
export const CONDUCTIVITY = /*@__PURE__*/ (() => quantity('thermalConductivity', 1 / 3.5, 'W/(m·K)'))()
/** Any paint or plastic radiates heat nearly as a black body does. */
const EMISSIVITY = 0.9
/** Share of a flexible conductor's circle that is metal. Common practice, no source. */
const FILL = 0.6
/** What laying the strands in a helix adds to the resistance of a section. Common practice, no source. */
const LAY = 1.02

/** Completes a cable by what is usual, and says so; `thickness` is where its outer diameter was asked. @internal */
export function cableOf(where: string, asked: CableGiven, thickness = 'outerDiameter'): Cable {
  const { area, ambient, conductor } = asked
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
      assumed('cable.resistance', `${area} of ${conductor}: ${resistance} at 20 °C, ${metal}.`),
      ...(asked.outerDiameter === undefined
        ? [
            assumed(
              'cable.outerDiameter',
              `Outer diameter ${outerDiameter}, that of thin-walled flexible cable (common practice, no source).`,
            ),
          ]
        : []),
      assumed(
        'cable.air',
        touching
          ? 'Still air, out of the sun; the cable touches another beside it with the same current.'
          : 'Still air, out of the sun; nothing lies near the cable.',
      ),
      assumed(
        'cable.surface',
        `The insulation conducts ${CONDUCTIVITY}, and its surface has an emissivity of ${EMISSIVITY}.`,
      ),
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

/** Heat given off by each area at a temperature of the surface, in SI numbers. @internal */
export function fluxAt({ outerDiameter, ambient, share }: Cable, surface: number): number {
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

/** @internal */
export function resistanceAt({ resistance, material }: Cable, temperature: number): number {
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

/** @internal */
export const kelvins = (value: number) => quantity('temperature', value, 'K').as('°C')

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

/** How warm a cable gets at a steady current. @internal */
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

/** The current at which the conductor of a cable settles at a limit. @internal */
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
