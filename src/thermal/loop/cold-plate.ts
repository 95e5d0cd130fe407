/**
 * A cold plate under cells: how well it takes their heat, what its coolant costs the pump, and how much warmer its end is
 * than its beginning.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapters 3, 8 and 11.
 */
import { cite, section } from '../../formula/index.js'
import { hotCoolant } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  type Findings,
  given,
  group,
  optional,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
  whole,
} from '../../procedure/index.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { drynessTrials, humidityField } from '../air/condensation.js'
import { convectionCoefficient } from '../air/convection.js'
import { coolantField } from '../boiling.js'
import { refuseOutside } from '../property-table.js'
import {
  frictionLaminarFlat,
  gapPad,
  graetzNumber,
  hydraulicDiameter,
  nusseltBetween,
  nusseltGnielinski,
  nusseltLaminar,
  nusseltLaminarFlat,
  petukhovFriction,
  prandtlNumber,
  thermalContact,
  thermalEntryLength,
} from './channel.js'
import { asQuantities, type CoolantProperties, coolantAt, coolants } from './coolant.js'
import { capacityRate, effectivenessCounterFlow, streamOutlet, transferUnits } from './exchanger.js'
import { frictionFactor, pressureDrop, reynoldsNumber } from './pipe.js'

const platePartFields = /*@__PURE__*/ (() => ({
  thickness: given('length', 'Thickness', { above: 0, usual: ['0.1 mm', '20 mm'] }),
  conductivity: given('thermalConductivity', 'Thermal conductivity', {
    above: 0,
    usual: ['0.1 W/(m·K)', '420 W/(m·K)'],
  }),
}))()

/** A plate, its coolant apart from how warm it comes, and what lies on it. */
const plateFields = /*@__PURE__*/ (() => ({
  coolant: coolantField,
  flow: given('volumeFlow', 'Coolant flow through the whole plate', { above: 0, usual: ['0.3 L/min', '60 L/min'] }),
  channels: group('The channels, round (bore) or flat (width and height)', {
    count: whole('How many of them lie side by side', { min: 1, max: 10_000 }),
    length: given('length', 'Length of one, with its turns', { above: 0, usual: ['50 mm', '30 m'] }),
    bore: optional(given('length', 'Bore of a round one', { above: 0, usual: ['1 mm', '25 mm'] })),
    width: optional(given('length', 'Width of a flat one', { above: 0, usual: ['0.3 mm', '500 mm'] })),
    height: optional(given('length', 'Height of a flat one', { above: 0, usual: ['0.3 mm', '30 mm'] })),
    fittings: given('ratio', 'Sum of the loss coefficients of its turns and ends', {
      min: 0,
      default: 1.5,
      because: 'a sharp inlet and outlet without turns, common tables',
    }),
  }),
  footprint: given('area', 'Area on which the cells stand', { above: 0, usual: ['20 cm²', '4 m²'] }),
  plate: group('The wall of the plate between cells and channels', platePartFields),
  pad: optional(group('The pad or paste between cells and plate, as pressed', platePartFields), {
    absent: 'Nothing lies between the cells and the plate but one joint.',
  }),
  contact: given('heatTransferCoefficient', 'Conductance of a joint between two faces, for its area', {
    above: 0,
    usual: ['500 W/(m²·K)', '200000 W/(m²·K)'],
    default: '3600 W/(m²·K)',
    because: 'dry aluminium in air pressed with 1 bar, textbook tables from memory; grease is much better',
  }),
  limit: optional(
    given('temperature', 'Highest temperature allowed at the face of the cells', { usual: ['20 °C', '70 °C'] }),
    {
      absent: 'The hottest face of the cells is not held to a limit: give limit.',
    },
  ),
  maximumSpread: optional(
    given('temperatureDifference', 'Most by which cells may differ from end to end', {
      above: 0,
      usual: ['1 K', '15 K'],
    }),
    { absent: 'The spread along the flow is not held to a limit: give maximumSpread (5 K is common practice).' },
  ),
  maximumDrop: optional(
    given('pressure', 'Most pressure that the plate may take', { above: 0, usual: ['1 kPa', '200 kPa'] }),
  ),
}))()

const plateInput = /*@__PURE__*/ (() => ({
  ...plateFields,
  temperature: given('temperature', 'Temperature of the coolant as it enters'),
  heat: given('power', 'Heat of the cells', { min: 0, usual: ['0 W', '20 kW'] }),
  air: optional(
    group('The air at the plate', {
      temperature: given('temperature', 'Temperature of that air', { min: '-40 °C', max: '60 °C' }),
      humidity: optional(humidityField),
    }),
    { absent: 'Whether water settles on the plate is not looked at: give air.' },
  ),
}))()

type Asked = Read<typeof plateInput>
const where = 'coldPlate'

/** How well a cold plate works. */
export interface ColdPlate extends Findings {
  readonly velocity: Quantity<'speed'>
  readonly reynolds: Quantity<'ratio'>
  readonly nusselt: Quantity<'ratio'>
  /** Heat transfer coefficient from the wall of the channels to the coolant. */
  readonly coefficient: Quantity<'heatTransferCoefficient'>
  /** Resistance to heat of pad, joints and plate together. */
  readonly resistance: Quantity<'thermalResistance'>
  /** Conductance from the cells to the coolant beside them. */
  readonly conductance: Quantity<'thermalConductance'>
  /** Conductance from cells of one temperature to the coolant as it enters. */
  readonly conductanceToInlet: Quantity<'thermalConductance'>
  /** Flow times density times specific heat. */
  readonly capacityRate: Quantity<'thermalConductance'>
  readonly pressureDrop: Quantity<'pressure'>
  /** Temperature of the coolant as it leaves. */
  readonly outlet: Quantity<'temperature'>
  /** By how much cells at the outlet are warmer than those at the inlet. */
  readonly spread: Quantity<'temperatureDifference'>
  /** Hottest face of the cells, at the outlet. */
  readonly hottest: Quantity<'temperature'>
}

/** Where flow ceases to be laminar, and where it is turbulent for sure. */
const [LAMINAR, TURBULENT] = [2300, 4000]
/** Between the two a Nusselt number may be wrong by so much. */
const ROUGH = 0.3

/**
 * Finds how well a cold plate takes the heat of cells. Laminar flow is followed from its entry, since glycol leaves a plate
 * long before the warmth of the wall has reached its middle. Between laminar and turbulent flow the figures may be wrong by
 * 30 %: that is told, and the hottest face is held to its limit with a film that much worse.
 *
 * All the heat is taken to cross the joints evenly: then the cells at the outlet are warmer than those at the inlet by as
 * much as the coolant warms. `conductance` is the `coolant.fromCells` of {@link packTemperature}.
 *
 * Answers: how well does a cold plate take the heat of cells, and at what pressure drop and spread?
 *
 * - `coolant`: coolant, glycol by volume, 'water' or 'ethylene glycol 30 %' or 'ethylene glycol 40 %' or 'ethylene
 *   glycol 50 %' or 'propylene glycol 30 %' or 'propylene glycol 40 %' or 'propylene glycol 50 %'
 * - `flow`: coolant flow through the whole plate, in L/min, above 0 L/min
 * - `channels`: the channels, round (bore) or flat (width and height)
 *   - `count`: how many of them lie side by side, a whole number, at least 1 and at most 10000
 *   - `length`: length of one, with its turns, in m, above 0 m
 *   - `bore`: bore of a round one, in m, above 0 m, optional
 *   - `width`: width of a flat one, in m, above 0 m, optional
 *   - `height`: height of a flat one, in m, above 0 m, optional
 *   - `fittings`: sum of the loss coefficients of its turns and ends, a plain number, at least 0, 1.5 by default (a
 *     sharp inlet and outlet without turns, common tables)
 * - `footprint`: area on which the cells stand, in m², above 0 m²
 * - `plate`: the wall of the plate between cells and channels
 *   - `thickness`: thickness, in m, above 0 m
 *   - `conductivity`: thermal conductivity, in W/(m·K), above 0 W/(m·K)
 * - `pad`: the pad or paste between cells and plate, as pressed, optional
 *   - `thickness`: thickness, in m, above 0 m
 *   - `conductivity`: thermal conductivity, in W/(m·K), above 0 W/(m·K)
 * - `contact`: conductance of a joint between two faces, for its area, in W/(m²·K), above 0 W/(m²·K), 3600 W/(m²·K)
 *   by default (dry aluminium in air pressed with 1 bar, textbook tables from memory; grease is much better)
 * - `limit`: highest temperature allowed at the face of the cells, in °C, optional
 * - `maximumSpread`: most by which cells may differ from end to end, in K, above 0 K, optional
 * - `maximumDrop`: most pressure that the plate may take, in kPa, above 0 kPa, optional
 * - `temperature`: temperature of the coolant as it enters, in °C
 * - `heat`: heat of the cells, in kW, at least 0 kW
 * - `air`: the air at the plate, optional
 *   - `temperature`: temperature of that air, in °C, at least -40 °C and at most 60 °C
 *   - `humidity`: relative humidity of the air around, a plain number, at least 0.01 and at most 1, optional
 * - always assumed: the heat of the cells is even along the flow, and the flow even in all channels
 * - always assumed: all walls of a channel are warm alike, and the coolant has one viscosity across it
 * - always assumed: the plate loses nothing to the air
 *
 * @returns The {@link ColdPlate}, with checks, assumptions and cautions.
 * @throws InputError for what cannot be used, by its path: among others a coolant that leaves its table.
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapters 3, 8 and 11; VDI Heat Atlas, part G1.
 *
 * @example
 * ```ts
 * const { conductance, spread, pressureDrop } = coldPlate({
 *   coolant: 'ethylene glycol 50 %',
 *   temperature: '25 °C',
 *   flow: '8 L/min',
 *   heat: '600 W',
 *   channels: { count: 4, length: '1.2 m', bore: '8 mm' },
 *   footprint: '0.18 m²',
 *   plate: { thickness: '4 mm', conductivity: '167 W/(m·K)' },
 *   pad: { thickness: '1 mm', conductivity: '3 W/(m·K)' },
 * })
 * String(conductance) // '46.68 W/K'
 * String(spread) // '1.273 K'
 * String(pressureDrop) // '1.682 kPa'
 * ```
 */
export const coldPlate = /*@__PURE__*/ procedure({
  name: where,
  title: 'A cold plate',
  answers: 'How well does a cold plate take the heat of cells, and at what pressure drop and spread?',
  input: plateInput,
  source: [
    cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapters 3, 8 and 11'),
    cite('VDI Heat Atlas', 'part G1'),
  ],
  assumes: [
    'The heat of the cells is even along the flow, and the flow even in all channels.',
    'All walls of a channel are warm alike, and the coolant has one viscosity across it.',
    'The plate loses nothing to the air.',
  ],
  work: (asked): Unfinished<ColdPlate> => {
    refuseUnusable(asked)
    const { temperature, flow, heat, footprint, plate, pad, contact, channels } = asked
    const fluid = fluidOf(asked)
    const rate = section('Coolant', () =>
      capacityRate({ flow, density: fluid.density, specificHeat: fluid.specificHeat }),
    )
    const outlet = streamOutlet({ inlet: temperature, heat, capacityRate: rate })
    const film = section('In the channels', () => filmOf(asked, fluid))
    const joints = pad === undefined ? 1 : 2
    const resistance = section('Between cells and channels', () => {
      const joint = thermalContact({ coefficient: contact, area: footprint }).times(joints)
      const wall = gapPad({ ...plate, area: footprint })
      return pad === undefined ? joint.plus(wall) : joint.plus(wall).plus(gapPad({ ...pad, area: footprint }))
    })
    const across = (part: number) =>
      quantity('thermalConductance', 1 / (resistance.si + 1 / (part * film.conductance)), 'W/K')
    const conductance = across(1)
    const effectiveness = effectivenessCounterFlow({
      transferUnits: transferUnits({ conductance, minimumCapacityRate: rate }),
      capacityRatio: 0,
    })
    const hottestWith = (through: Quantity<'thermalConductance'>) =>
      outlet.plus(quantity('temperatureDifference', heat.si / through.si, 'K'))
    const figures = {
      velocity: film.velocity,
      reynolds: film.reynolds,
      nusselt: film.nusselt,
      coefficient: film.coefficient,
      resistance,
      conductance,
      conductanceToInlet: rate.times(effectiveness.si),
      capacityRate: rate,
      pressureDrop: dropOf(channels, fluid, film),
      outlet,
      spread: quantity('temperatureDifference', outlet.si - temperature.si, 'K'),
      hottest: hottestWith(conductance),
    }
    const isRough = film.reynolds.si > LAMINAR && film.reynolds.si < TURBULENT
    return {
      ...figures,
      checks: checksOf(asked, figures, isRough ? hottestWith(across(1 - ROUGH)) : figures.hottest),
      assumptions: assumptionsOf(asked, film, fluid, isRough),
      cautions: [hotCoolant],
    }
  },
})

/** The coolant at its mean temperature, which hangs a little on its own specific heat. */
function fluidOf({ coolant, temperature, heat, flow }: Asked): CoolantProperties {
  let mean = temperature.si
  for (let round = 0; round < 4; round++) {
    const { density, specificHeat } = coolantAt(coolant, mean)
    mean = temperature.si + heat.si / (flow.si * density * specificHeat) / 2
    refuseOutside(where, 'heat', coolants[coolant], quantity('temperature', 2 * mean - temperature.si, 'K').as('°C'))
  }
  return asQuantities(coolantAt(coolant, mean))
}

/** A channel across the flow. */
function shapeOf({ bore, width, height }: Asked['channels']) {
  if (bore !== undefined) {
    const area = quantity('area', (Math.PI / 4) * bore.si ** 2, 'm²').as('mm²')
    return { area, edge: quantity('length', Math.PI * bore.si, 'm').as('mm'), diameter: bore, aspect: undefined }
  }
  const [wide, high] = [width as Quantity<'length'>, height as Quantity<'length'>]
  const area = quantity('area', wide.si * high.si, 'm²').as('mm²')
  const edge = wide.plus(high).times(2)
  return {
    area,
    edge,
    diameter: hydraulicDiameter({ area, perimeter: edge }),
    aspect: Math.min(wide.si, high.si) / Math.max(wide.si, high.si),
  }
}

type Film = ReturnType<typeof filmOf>

function filmOf({ channels, flow }: Asked, fluid: CoolantProperties) {
  const { count, length } = channels
  const { area, edge, diameter, aspect } = shapeOf(channels)
  const { density, specificHeat, viscosity, conductivity } = fluid
  const velocity = quantity('speed', flow.si / (count * area.si), 'm/s')
  const reynolds = reynoldsNumber({ density, velocity, bore: diameter, viscosity })
  const prandtl = prandtlNumber({ viscosity, specificHeat, conductivity })
  const laminarAt = (Re: Quantity<'ratio'>) => {
    const graetz = graetzNumber({ reynolds: Re, prandtl, bore: diameter, length })
    return aspect === undefined
      ? nusseltLaminar({ graetz })
      : nusseltLaminar({ graetz, developed: nusseltLaminarFlat({ aspect }) })
  }
  const turbulentAt = (Re: Quantity<'ratio'>) =>
    nusseltGnielinski({ reynolds: Re, prandtl, friction: petukhovFriction({ reynolds: Re }) })
  const nusselt =
    reynolds.si <= LAMINAR
      ? laminarAt(reynolds)
      : reynolds.si >= TURBULENT
        ? turbulentAt(reynolds)
        : nusseltBetween({
            reynolds,
            laminar: laminarAt(quantity('ratio', LAMINAR)),
            turbulent: turbulentAt(quantity('ratio', TURBULENT)),
          })
  const coefficient = convectionCoefficient({ nusselt, conductivity, length: diameter })
  const wetted = count * edge.si * length.si
  return {
    velocity,
    reynolds,
    prandtl,
    nusselt,
    coefficient,
    diameter,
    aspect,
    conductance: coefficient.si * wetted,
  }
}

function dropOf({ length, fittings }: Asked['channels'], { density }: CoolantProperties, film: Film) {
  const { reynolds, velocity, diameter, aspect } = film
  const isFlatLaminar = aspect !== undefined && reynolds.si <= LAMINAR
  const friction = isFlatLaminar
    ? frictionLaminarFlat({ aspect, reynolds })
    : frictionFactor({ reynolds, relativeRoughness: 0 })
  return pressureDrop({ friction, length, bore: diameter, fittings, density, velocity })
}

type Figures = Omit<ColdPlate, keyof Findings>

function checksOf(
  { limit, maximumSpread, maximumDrop, temperature, air }: Asked,
  { hottest, spread, pressureDrop: drop }: Figures,
  hottestAtWorst: Quantity<'temperature'>,
): Check[] {
  return [
    ...(limit === undefined
      ? []
      : [
          trial(
            'plate.hottest',
            'Hottest face of the cells',
            hottest.si <= limit.si && hottestAtWorst.si > limit.si
              ? {
                  unknown: `the cells are at ${hottest} where they stand hottest, but at ${hottestAtWorst} with a film 30 % worse, more than ${limit}: change the flow or the channels, so that the flow is laminar or turbulent`,
                }
              : says`the cells are at ${hottest} where they stand hottest, at most ${limit}`,
            'the limit given',
            'limit',
            'flow',
          ),
        ]),
    ...(maximumSpread === undefined
      ? []
      : [
          trial(
            'plate.spread',
            'Spread along the flow',
            says`the cells differ by ${spread} from inlet to outlet, at most ${maximumSpread}`,
            'maximumSpread, as given',
            'maximumSpread',
            'flow',
          ),
        ]),
    ...(maximumDrop === undefined
      ? []
      : [
          trial(
            'plate.drop',
            'Pressure drop of the plate',
            says`the plate takes ${drop}, at most ${maximumDrop}`,
            'maximumDrop, as given',
            'maximumDrop',
            'channels',
          ),
        ]),
    ...(air === undefined
      ? []
      : drynessTrials(
          'plate.dryness',
          temperature,
          'the plate',
          air,
          'temperature',
          'air.temperature',
          'air.humidity',
        )),
  ]
}

function assumptionsOf(
  { channels }: Asked,
  { reynolds, prandtl, diameter, aspect }: Film,
  { viscosity }: CoolantProperties,
  isRough: boolean,
): Assumption[] {
  const told = (isSo: boolean, id: string, sentence: () => string) => (isSo ? [assumed(id, sentence())] : [])
  const isLaminar = reynolds.si <= LAMINAR
  return [
    ...told(
      isRough,
      'channels.betweenRegimes',
      () =>
        `At a Reynolds number of ${reynolds} the flow is neither laminar nor turbulent: the film may be 30 % better or worse.`,
    ),
    ...told(
      isLaminar,
      'channels.entry',
      () =>
        `The flow is laminar: the warmth of the wall would reach its middle after ${thermalEntryLength({ reynolds, prandtl, bore: diameter })}, the channels are ${channels.length} long.`,
    ),
    ...told(
      aspect !== undefined && isLaminar,
      'channels.flatEntry',
      () => 'The entry of a flat channel is taken as that of a round one, which takes less heat.',
    ),
    ...told(!isLaminar, 'channels.smooth', () => `The channels are smooth, with coolant of ${viscosity}.`),
  ]
}

function refuseUnusable({ coolant, temperature, channels: { bore, width, height } }: Asked): void {
  const issues: InputIssue[] = []
  const flat = [width, height].filter((each) => each !== undefined).length
  if (!(bore !== undefined && flat === 0) && !(bore === undefined && flat === 2)) {
    const received =
      bore === undefined ? (flat === 0 ? 'nothing' : 'one of width and height') : 'bore and a width or height'
    issues.push({ path: 'channels', expected: "bore, such as '8 mm', or width and height", received })
  }
  if (issues.length > 0) throw new InputError(where, issues)
  refuseOutside(where, 'temperature', coolants[coolant], temperature)
}
