/** The cables: the section of each run with its fuse, each held against the other, and the precharge. */

import { resistanceAtFirst } from '../../electrical/fuse/source.js'
import { type ProtectedRun, precharge, protectRun, selectContactor, shutdown } from '../../electrical/index.js'
import { shutdownFields } from '../../electrical/isolating.js'
import { prechargeFields } from '../../electrical/precharge.js'
import { section as heading } from '../../formula/index.js'
import { highVoltage, shortCircuit } from '../../procedure/cautions.js'
import { assumed, check, type Findings, merged, trial } from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import { type Driven, hardestOf } from './journeys.js'
import type { Pack } from './pack.js'
import {
  type Chapter,
  calledBy,
  type Figure,
  fromSheet,
  isOfSheet,
  missing,
  type Places,
  partOf,
  type Table,
  vehiclePlaces,
  where,
} from './section.js'

type Run = NonNullable<Build['runs']>[string]

/** What is found of one thing in the section. */
interface Part extends Partial<Findings> {
  readonly figures: readonly Figure[]
  readonly tables: readonly Table[]
}

/** What is found of a run. */
interface RunPart extends Part {
  /** What the contactors meet in it, where it feeds the controller. */
  readonly met?: Met
}

/** The load and the faults that contactors meet in the run that feeds the controller. */
interface Met {
  readonly current: Quantity<'current'> | undefined
  readonly profile: Driven['drive']['currents'] | undefined
  readonly fault: {
    readonly highest: Quantity<'current'>
    readonly lowest: Quantity<'current'>
    readonly fuse: Fuse | undefined
  }
}

type Fuse = NonNullable<Build['fuses']>[number]

/** The section on cables and fuses. @internal */
export function wiringSection(build: Build, pack: Pack | undefined, driven: () => readonly Driven[]): Chapter {
  const { runs = {}, controller } = build
  const named = Object.entries(runs)
  if (pack === undefined || named.length === 0) {
    return missing({ ...build, runs: named.length === 0 ? undefined : runs }, ['runs', 'module', 'pack'])
  }
  const wired = named.map(([key, run]) =>
    heading(`Run: ${calledBy(key, run)}`, () => runPart(`runs.${key}`, calledBy(key, run), run, pack, build, driven)),
  )
  const start = controller && heading('Precharge', () => prechargePart(build, pack, controller.capacitance))
  const met = wired.find((part) => part.met !== undefined)?.met
  const parts: readonly Part[] = [
    ...wired,
    ...(start === undefined ? [] : [start]),
    ...(build.contactors === undefined
      ? []
      : [heading('Main contactors', () => contactorPart(build, pack, met, start?.left, driven))]),
    ...(build.shutdown === undefined
      ? []
      : [heading('Switching off', () => shutdownPart(build, pack, start?.discharge))]),
  ]
  return {
    figures: parts.flatMap((part) => part.figures),
    tables: parts.flatMap((part) => part.tables),
    ...merged(...parts),
  }
}

/** What a run says of its fuse, beside its cable. */
const ofFuse = ['ambientFactor', 'fusingFactor', 'cycles', 'family', 'ratings', 'overload'] as const

/** Where in the sheet the figures of a run stand. */
function placesOf(run: string, hasOwn: boolean): Places {
  return {
    ...vehiclePlaces,
    name: `${run}.title`,
    'load': run,
    'load.profile': 'journeys',
    'cable': run,
    'cable.profile': 'journeys',
    'cable.ampacity': undefined,
    'cable.resistance': undefined,
    'cable.inductance': undefined,
    strings: 'pack.strings',
    candidates: hasOwn ? `${run}.fuses` : 'fuses',
    controller: 'controller',
    ...Object.fromEntries(ofFuse.map((key) => [key, `${run}.${key}`])),
    ambient: `${run}.fuseAmbient`,
    altitude: 'altitude',
    ageing: 'pack.ageing',
    inductance: 'pack.inductance',
    coldest: 'seasons',
  }
}

function runPart(
  path: string,
  name: string,
  run: Run,
  pack: Pack,
  build: Build,
  driven: () => readonly Driven[],
): RunPart {
  const { title: _, current, feeds, fuses, fuseAmbient, ...others } = run
  const { ambientFactor, fusingFactor, cycles, family, ratings, overload, ...cable } = others
  const { fuses: shelf, seasons = {}, controller, altitude } = build
  const [coldest] = Object.values(seasons)
    .map(({ outside, cells = outside }) => cells)
    .sort((one, other) => one.si - other.si)
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
        ambient: fuseAmbient,
        ...{ ambientFactor, fusingFactor, cycles, family, ratings, overload, altitude },
        ageing: build.pack?.ageing,
        inductance: build.pack?.inductance,
        ...(controller === undefined || feeds === 'other'
          ? {}
          : { controller: { batteryCurrent: controller.batteryCurrent, time: controller.batteryCurrentTime } }),
        ...(pack.made.module.cold === undefined || coldest === undefined || coldest.si >= WARM ? {} : { coldest }),
      }),
    )
  } catch (error) {
    if (!(error instanceof CalculationError)) throw error
    const [none, one] = [quantity('ratio', 0), quantity('ratio', 1)]
    return {
      figures: [],
      tables: [
        { id: path, title: `The ${name}`, columns: [], rows: [], measures: 'rows', notes: [`${error.message}.`] },
      ],
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
  const candidates = fuses ?? shelf ?? []
  const { chosen, prospective } = found.fuse
  return {
    ...(controller === undefined || feeds === 'other'
      ? {}
      : {
          met: {
            current: current ?? (hardest as Driven).drive.rmsCurrent,
            profile: hardest?.drive.currents,
            fault: {
              ...prospective,
              fuse: candidates.find(({ name: its, rating }) => its === chosen?.name && rating.si === chosen?.rating.si),
            },
          },
        }),
    figures: [],
    tables: [runTable(path, found, current ?? 'the currents of the journey')],
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
              `The ${name} carries the currents of ${hardest.name}, ${hardest.season.name}, again and again.`,
            ),
          ]),
      ...found.assumptions,
    ],
    notes: found.notes,
    cautions: found.cautions,
  }
}

/** How many of the sections that do not serve are told, the nearest first. */
const NEAR_MISSES = 3

/** Cells are no colder than the warm ones that were measured, in kelvins. */
const WARM = 298.15

function runTable(
  path: string,
  { name, cable, fuse, rejected, voltageClass }: ProtectedRun,
  load: Quantity<'current'> | string,
): Table {
  const row = (id: string, name: string, value: Quantity | string) => ({ id, name, values: [value] })
  const cleared = ({ time }: { readonly time?: Quantity<'time'> }) => time ?? 'its data do not tell'
  const nearest = [...rejected].reverse().slice(0, NEAR_MISSES)
  return {
    id: path,
    title: `The ${name}`,
    measures: 'rows',
    columns: [{ id: '', name: cable.name }],
    rows: [
      row('ampacity', 'carries all day as it is laid', cable.ampacity),
      row('temperature', `conductor at ${load}`, cable.temperature),
      row('drop', 'voltage lost, out and back', cable.drop),
      row('loss', 'heat in the cable', cable.loss),
      row('withstand', 'fault that it withstands', cable.withstand.as('kA²·s')),
      row('voltageClass', 'class of voltage, ISO 6469-3', voltageClass),
      row('highestFault', 'fault of the full, warm pack', fuse.prospective.highest),
      row('lowestFault', 'fault of the nearly empty, cold pack', fuse.prospective.lowest),
      ...(fuse.chosen === undefined ? [] : [row('fuse', 'fuse that serves', fuse.chosen.name)]),
      ...(fuse.clearing === undefined
        ? []
        : [
            row('opensHighest', 'it opens on the greatest fault in', cleared(fuse.clearing.highest)),
            row('opensLowest', 'it opens on the least fault in', cleared(fuse.clearing.lowest)),
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

/** What switches the traction voltage off. */
function shutdownPart({ shutdown: asked }: Build, pack: Pack, discharge: Quantity<'time'> | undefined): Part {
  if (asked === undefined) return { figures: [], tables: [] }
  const places: Places = {
    ...Object.fromEntries(Object.keys(shutdownFields).map((key) => [key, `shutdown.${key}`])),
    voltage: 'module.maximumVoltage',
    discharge: 'precharge.dischargeResistance',
  }
  const found = fromSheet(places, () => shutdown({ ...asked, voltage: pack.maximumVoltage, discharge }))
  const { voltageLeft, afterPlug, afterCrash } = found
  return {
    figures: [
      { id: 'shutdown.voltageLeft', name: 'most voltage left in a part of the pack', value: voltageLeft },
      ...(afterPlug === undefined
        ? []
        : [{ id: 'shutdown.afterPlug', name: 'from a pulled plug to 60 V', value: afterPlug }]),
      ...(afterCrash === undefined
        ? []
        : [{ id: 'shutdown.afterCrash', name: 'from a crash to 60 V', value: afterCrash }]),
    ],
    tables: [],
    ...found,
    checks: partOf('shutdown', found.checks),
  }
}

/** What the main contactors close on, and break. */
function contactorPart(
  { contactors, controller }: Build,
  pack: Pack,
  met: Met | undefined,
  left: Left | undefined,
  driven: () => readonly Driven[],
): Part {
  if (contactors === undefined) return { figures: [], tables: [] }
  if (met?.current === undefined) {
    // Without a run to the controller nobody knows what flows through them.
    const unknown = 'what flows through the contactors is not known: give a run that feeds the controller'
    return {
      figures: [],
      tables: [],
      checks: [trial('contactors.run', 'Main contactors', { unknown }, 'the sheet: runs', 'runs')],
    }
  }
  const { current } = met
  const { candidates, openings, ambient, trip, cutOff } = contactors
  const backwards = greatestBack(driven)
  const found = fromSheet(contactorPlaces, () =>
    selectContactor({
      voltage: pack.maximumVoltage,
      current,
      profile: met.profile,
      ...(controller === undefined
        ? {}
        : { controller: { batteryCurrent: controller.batteryCurrent, time: controller.batteryCurrentTime } }),
      // Where no journey tells, as much may flow back as the controller draws.
      backwards: backwards ?? controller?.batteryCurrent ?? current,
      precharge: left,
      fault: { ...met.fault, cutOff },
      ...{ openings, ambient, trip, candidates },
    }),
  )
  return {
    figures: [
      { id: 'contactors.carry', name: 'main contactors carry all day, at least', value: found.carryAtLeast },
      { id: 'contactors.break', name: 'and break, at least', value: found.breaksAtLeast },
    ],
    tables: [],
    ...found,
    checks: partOf('contactors', found.checks),
    assumptions: [
      ...(backwards === undefined
        ? [
            assumed(
              'contactors.backwards',
              'As much current may flow back as the controller draws: no journey tells how much.',
            ),
          ]
        : []),
      ...found.assumptions,
    ],
  }
}

/** Where in the sheet the figures of the contactors stand. */
const contactorPlaces: Places = {
  ...vehiclePlaces,
  voltage: 'module.maximumVoltage',
  current: 'runs',
  profile: 'journeys',
  backwards: 'journeys',
  precharge: 'precharge',
  fault: 'fuses',
  'fault.cutOff': 'contactors.cutOff',
  openings: 'contactors.openings',
  ambient: 'contactors.ambient',
  trip: 'contactors.trip',
  candidates: 'contactors.candidates',
}

/** The greatest current that any journey sends back into the pack; undefined where none can be driven to tell. */
function greatestBack(driven: () => readonly Driven[]): Quantity<'current'> | undefined {
  try {
    const all = driven().flatMap(({ drive }) => drive.peakChargeCurrent ?? [])
    return all.reduce<Quantity<'current'> | undefined>(
      (one, other) => (one !== undefined && one.si >= other.si ? one : other),
      undefined,
    )
  } catch (error) {
    // That the journeys cannot be driven is told in their own section.
    if (isOfSheet(error)) return undefined
    throw error
  }
}

/** What the precharge leaves. */
interface Left {
  readonly residualVoltage: Quantity<'voltage'>
  readonly loopResistance: Quantity<'resistance'>
}

function prechargePart(
  { precharge: asked, contactors }: Build,
  pack: Pack,
  capacitance: Quantity<'capacitance'>,
): Part & { readonly left: Left; readonly discharge: Quantity<'time'> | undefined } {
  const { module, series, parallel } = pack.made
  const time = asked?.time ?? PRECHARGE_TIME
  const places = {
    voltage: 'module.maximumVoltage',
    capacitance: 'controller.capacitance',
    loopResistance: 'module.resistance',
    ...Object.fromEntries(Object.keys(prechargeFields).map((key) => [key, `precharge.${key}`])),
  }
  const loopResistance = resistanceAtFirst(module).times(series).over(parallel)
  const start = fromSheet(places, () =>
    precharge({ ...asked, time, voltage: pack.maximumVoltage, capacitance, loopResistance }),
  )
  // The inrush is held to what the contactors make, where they are given.
  const isHeldBelow = contactors !== undefined && asked?.makingCapacity === undefined
  const checks = start.checks.filter(({ id }) => !isHeldBelow || id !== 'precharge.inrush')
  return {
    figures: [
      { id: 'precharge.resistance', name: `precharge resistor, ${start.reached} in ${time}`, value: start.resistance },
      { id: 'precharge.energy', name: 'heat in it at each start', value: start.energyPerEvent },
      { id: 'precharge.peakPower', name: 'power in it at first', value: start.peakPower },
      { id: 'precharge.residualVoltage', name: 'voltage left across the contactor', value: start.residualVoltage },
      ...(start.inrush === undefined
        ? []
        : [{ id: 'precharge.inrush', name: 'current as the contactor closes', value: start.inrush }]),
      ...(start.standingPower === undefined
        ? []
        : [{ id: 'precharge.dischargePower', name: 'power in the discharge resistor', value: start.standingPower }]),
    ],
    tables: [],
    ...start,
    checks: partOf('precharge', checks),
    left: { residualVoltage: start.residualVoltage, loopResistance },
    // Through the precharge resistor it discharges only if a contact puts it there, which nobody told.
    discharge: asked?.dischargeResistance === undefined ? undefined : start.dischargeTime,
  }
}
