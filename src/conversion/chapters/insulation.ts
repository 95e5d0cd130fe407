/** The insulation of the traction circuit from the chassis: what was measured, what watches it, and the distances. */
import { chargerTestVoltage, insulationDistances, insulationMonitor, isolationTest } from '../../electrical/index.js'
import { distanceFields } from '../../electrical/insulation-distance.js'
import { monitorFields } from '../../electrical/insulation-monitor.js'
import { readingFields } from '../../electrical/safety.js'
import { section as heading } from '../../formula/index.js'
import { assumed, type Findings, merged } from '../../procedure/index.js'
import type { Quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import { type Chapter, calledBy, type Figure, fromSheet, missing, type Places, partOf, type Row } from './section.js'

type Insulation = NonNullable<Build['insulation']>
type Distance = NonNullable<Insulation['distances']>[string]

/** What is found of one thing in the section. */
interface Part extends Partial<Findings> {
  readonly figures: readonly Figure[]
  readonly rows?: readonly Row[]
}

const under = (place: string, fields: object): Places =>
  Object.fromEntries(Object.keys(fields).map((key) => [key, `${place}.${key}`]))

/** Where in the sheet the circuit stands. */
const ofCircuit: Places = {
  workingVoltage: 'module.maximumVoltage',
  circuit: 'insulation.circuit',
  acSide: 'insulation.acSide',
}

/** The section on insulation. @internal */
export function insulationSection(build: Build, pack: Pack | undefined): Chapter {
  const { insulation, charger, altitude } = build
  if (pack === undefined || insulation === undefined) return missing(build, ['insulation', 'module', 'pack'])
  const voltage = pack.maximumVoltage
  const parts: readonly Part[] = [
    heading('Isolation, as measured', () => testPart(insulation, voltage)),
    heading('Monitor of the isolation', () => monitorPart(insulation, voltage)),
    ...Object.entries(insulation.distances ?? {}).map(([key, each]) =>
      heading(`Distance: ${calledBy(key, each)}`, () => distancePart(key, each, voltage, altitude)),
    ),
    ...(charger === undefined ? [] : [{ figures: [chargerFigure(charger.voltage)] }]),
  ]
  const rows = parts.flatMap((part) => part.rows ?? [])
  return {
    figures: parts.flatMap((part) => part.figures),
    tables:
      rows.length === 0
        ? []
        : [
            {
              id: 'distances',
              title: 'Distances that insulate',
              measures: 'columns',
              columns: [
                { id: 'creepage', name: 'along the surface' },
                { id: 'grooveWidth', name: 'least groove' },
                { id: 'clearance', name: 'through the air' },
              ],
              rows,
            },
          ],
    ...merged(...parts),
  }
}

function testPart({ readings, circuit, acSide }: Insulation, workingVoltage: Quantity<'voltage'>): Part {
  if (readings === undefined) {
    const text = 'The isolation was not measured: give insulation.readings before the car is driven.'
    return { figures: [], assumptions: [assumed('insulation.readings', text)] }
  }
  const places = { ...ofCircuit, ...under('insulation.readings', readingFields) }
  const found = fromSheet(places, () => isolationTest({ ...readings, workingVoltage, circuit, acSide }))
  const other = found.weakPole === 'positive' ? 'negative' : 'positive'
  return {
    figures: [
      {
        id: 'insulation.measured',
        name: `isolation of the ${found.weakPole} pole, the weaker`,
        value: found.isolation,
      },
      { id: 'insulation.other', name: `isolation of the ${other} pole`, value: found.otherIsolation },
      { id: 'insulation.leakage', name: 'current through who touches the other pole', value: found.leakage },
    ],
    ...found,
    checks: partOf('insulation', found.checks),
  }
}

function monitorPart({ monitor, capacitance, circuit, acSide }: Insulation, workingVoltage: Quantity<'voltage'>): Part {
  const places = {
    ...ofCircuit,
    ...under('insulation.monitor', monitorFields),
    capacitance: 'insulation.capacitance',
  }
  const found = fromSheet(places, () => insulationMonitor({ ...monitor, workingVoltage, circuit, acSide, capacitance }))
  const figures: Figure[] = [
    { id: 'insulation.least', name: 'least isolation that is allowed', value: found.least },
    { id: 'insulation.usualOpens', name: 'isolation at which monitors open contactors', value: found.usual.opens },
    ...(found.settlingTime === undefined
      ? []
      : [{ id: 'insulation.settlingTime', name: 'time until the monitor can tell', value: found.settlingTime }]),
    ...(found.energy === undefined
      ? []
      : [{ id: 'insulation.energy', name: 'energy to the chassis, one pole on it', value: found.energy }]),
  ] as const
  if (monitor !== undefined) return { figures, ...found, checks: partOf('insulation', found.checks) }
  const text = 'No monitor watches the isolation: give insulation.monitor where one is fitted.'
  const energy = capacitance === undefined ? [] : found.checks.filter(({ id }) => id === 'monitor.energy')
  return {
    figures: figures.filter(({ id }) => id !== 'insulation.settlingTime'),
    checks: partOf('insulation', energy),
    assumptions: [assumed('insulation.monitor', text)],
    cautions: found.cautions,
  }
}

function distancePart(
  key: string,
  { title, voltage, ...asked }: Distance,
  full: Quantity<'voltage'>,
  altitude: Quantity<'length'> | undefined,
): Part {
  const path = `insulation.distances.${key}`
  const places = {
    ...under(path, distanceFields),
    voltage: voltage === undefined ? 'module.maximumVoltage' : `${path}.voltage`,
    altitude: 'altitude',
  }
  const name = calledBy(key, { title })
  const found = fromSheet(places, () => insulationDistances({ ...asked, voltage: voltage ?? full, altitude }))
  return {
    figures: [],
    rows: [
      {
        id: key,
        name,
        values: [found.creepage, found.grooveWidth, found.clearance ?? 'its impulse voltage is not known'],
      },
    ],
    ...found,
    checks: partOf(`distances.${key}`, found.checks, (text) => `${name}: ${text}`),
  }
}

function chargerFigure(mains: Quantity<'voltage'>): Figure {
  return {
    id: 'insulation.chargerTest',
    name: 'test voltage of the charger, mains to chassis, for a minute',
    value: fromSheet({ mains: 'charger.voltage' }, () => chargerTestVoltage({ mains })),
  }
}
