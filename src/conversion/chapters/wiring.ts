/** The cables: the section of each run with its fuse, each held against the other, and the precharge. */

import { type ProtectedRun, precharge, protectRun } from '../../electrical/index.js'
import { prechargeFields } from '../../electrical/precharge.js'
import { section as heading } from '../../formula/index.js'
import { highVoltage, shortCircuit, storedCharge } from '../../procedure/cautions.js'
import { assumed, check, type Findings, merged } from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import type { Driven } from './journeys.js'
import type { Pack } from './pack.js'
import {
  type Figure,
  fromSheet,
  missing,
  type Places,
  partOf,
  type Section,
  type Table,
  type Unassessed,
  vehiclePlaces,
  where,
} from './section.js'

type Run = NonNullable<Build['runs']>[number]

/** What is found of one thing in the section. */
interface Part extends Partial<Findings> {
  readonly figures: readonly Figure[]
  readonly tables: readonly Table[]
}

/** The section on cables and fuses. @internal */
export function wiringSection(
  build: Build,
  pack: Pack | undefined,
  driven: () => readonly Driven[],
): Section | Unassessed {
  const { runs = [], controller } = build
  const title = 'Cables and fuses'
  if (pack === undefined || runs.length === 0) return { title, why: missing(build, ['runs', 'module', 'pack']) }
  const parts = [
    ...runs.map((run, i) => heading(`Run: ${run.name}`, () => runPart(`runs[${i}]`, run, pack, build, driven))),
    ...(controller === undefined
      ? []
      : [heading('Precharge', () => prechargePart(build, pack, controller.capacitance))]),
  ]
  return {
    title,
    figures: parts.flatMap((part) => part.figures),
    tables: parts.flatMap((part) => part.tables),
    ...merged(...parts),
  }
}

/** Where in the sheet the figures of a run stand. */
function placesOf(run: string, hasOwn: boolean): Places {
  return {
    ...vehiclePlaces,
    name: `${run}.name`,
    load: run,
    cable: run,
    strings: 'pack.strings',
    candidates: hasOwn ? `${run}.fuses` : 'fuses',
    controller: 'controller',
    coldest: 'heating.outside',
  }
}

function runPart(
  path: string,
  { name, current, feeds, fuses, ...cable }: Run,
  pack: Pack,
  build: Build,
  driven: () => readonly Driven[],
): Part {
  const { fuses: shelf, heating, controller } = build
  const hardest = current === undefined ? hardestOf(driven()) : undefined
  if (current === undefined && hardest === undefined) {
    const expected = "a current such as '120 A', or journeys whose currents are taken"
    throw new InputError(where, [{ path: `${path}.current`, expected, received: 'neither' }])
  }
  const prefixed = (text: string) => `${name}: ${text}`
  let found: ProtectedRun
  try {
    found = fromSheet(placesOf(path, fuses !== undefined), () =>
      protectRun({
        name,
        pack: pack.made,
        strings: build.pack?.strings,
        load: current === undefined ? { profile: hardest?.drive.currents } : { current },
        cable,
        candidates: fuses ?? shelf,
        ...(controller === undefined || feeds === 'other'
          ? {}
          : { controller: { batteryCurrent: controller.batteryCurrent, time: controller.batteryCurrentTime } }),
        ...(pack.made.module.cold === undefined || heating === undefined ? {} : { coldest: heating.outside }),
      }),
    )
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error
    const [none, one] = [quantity('ratio', 0), quantity('ratio', 1)]
    return {
      figures: [],
      tables: [{ title: `The ${name}`, columns: [], rows: [], notes: [`${error.message}.`] }],
      checks: [
        check(
          `${path}.serves`,
          prefixed('sections that serve'),
          none,
          'at least',
          one,
          'the sections of its series',
          path,
        ),
      ],
      cautions: [shortCircuit, highVoltage],
    }
  }
  return {
    figures: [],
    tables: [runTable(found, current ?? 'the currents of the journey')],
    checks: partOf(path, found.checks, prefixed),
    assumptions: [
      ...(controller === undefined || feeds !== undefined
        ? []
        : [assumed(`${path}.feeds`, `The ${name} feeds the controller (feeds by default).`)]),
      ...(hardest === undefined
        ? []
        : [
            assumed(
              `${path}.journey`,
              `The ${name} carries the currents of ${hardest.name} in ${hardest.season.name}, again and again.`,
            ),
          ]),
      ...found.assumptions,
    ],
    notes: found.notes,
    cautions: found.cautions,
  }
}

/** The journey that warms cables most. */
function hardestOf(driven: readonly Driven[]): Driven | undefined {
  return driven
    .filter(({ drive }) => drive.rmsCurrent !== undefined)
    .reduce<Driven | undefined>(
      (one, other) =>
        one !== undefined && (one.drive.rmsCurrent?.si ?? 0) >= (other.drive.rmsCurrent?.si ?? 0) ? one : other,
      undefined,
    )
}

/** How many of the sections that do not serve are told, the nearest first. */
const NEAR_MISSES = 3

function runTable(
  { name, cable, fuse, rejected, voltageClass }: ProtectedRun,
  load: Quantity<'current'> | string,
): Table {
  const row = (what: string, value: Quantity | string) => ({ name: what, values: [value] })
  const cleared = ({ time }: { readonly time?: Quantity<'time'> }) => time ?? 'its data do not tell'
  const nearest = [...rejected].reverse().slice(0, NEAR_MISSES)
  return {
    title: `The ${name}`,
    columns: [cable.name],
    rows: [
      row('carries all day as it is laid', cable.ampacity),
      row(`conductor at ${load}`, cable.temperature),
      row('voltage lost, out and back', cable.drop),
      row('heat in the cable', cable.loss),
      row('fault that it withstands', cable.withstand.as('kA²·s')),
      row('class of voltage, ISO 6469-3', voltageClass),
      row('fault of the full, warm pack', fuse.prospective.highest),
      row('fault of the nearly empty, cold pack', fuse.prospective.lowest),
      ...(fuse.chosen === undefined ? [] : [row('fuse that serves', fuse.chosen.name)]),
      ...(fuse.clearing === undefined
        ? []
        : [
            row('it opens on the greatest fault in', cleared(fuse.clearing.highest)),
            row('it opens on the least fault in', cleared(fuse.clearing.lowest)),
          ]),
    ],
    notes: [
      fuse.specification,
      ...fuse.rejected.map(({ candidate, reasons }) => `The ${candidate} is refused: ${reasons.join('; ')}.`),
      ...nearest.map(({ name: section, reasons }) => `${section} is refused: ${reasons.join('; ')}.`),
    ],
  }
}

/** How long precharging may take: long enough for a small resistor, short enough not to be noticed. */
const PRECHARGE_TIME = '1 s'

function prechargePart({ precharge: asked }: Build, pack: Pack, capacitance: Quantity<'capacitance'>): Part {
  const { module, series, parallel } = pack.made
  // In its first milliseconds a pack resists about half as much as in a pulse of some seconds.
  const ofOne = module.ohmicResistance ?? module.resistance.over(2)
  const time = asked?.time ?? PRECHARGE_TIME
  const places = {
    voltage: 'module.maximumVoltage',
    capacitance: 'controller.capacitance',
    loopResistance: 'module.resistance',
    ...Object.fromEntries(Object.keys(prechargeFields).map((key) => [key, `precharge.${key}`])),
  }
  const start = fromSheet(places, () =>
    precharge({
      ...asked,
      time,
      voltage: pack.maximumVoltage,
      capacitance,
      loopResistance: ofOne.times(series).over(parallel),
    }),
  )
  return {
    figures: [
      { name: `precharge resistor, ${start.reached} in ${time}`, value: start.resistance },
      { name: 'heat in it at each start', value: start.energyPerEvent },
      { name: 'power in it at first', value: start.peakPower },
      { name: 'voltage left across the contactor', value: start.residualVoltage },
      ...(start.inrush === undefined ? [] : [{ name: 'current as the contactor closes', value: start.inrush }]),
      ...(start.standingPower === undefined
        ? []
        : [{ name: 'power in the discharge resistor', value: start.standingPower }]),
    ],
    tables: [],
    ...start,
    checks: partOf('precharge', start.checks),
    cautions: [storedCharge],
  }
}
