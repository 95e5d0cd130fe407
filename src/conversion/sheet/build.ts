/**
 * The build sheet, read from JSON, with every quantity as text, and written again.
 */
import { drivelineOf } from '../../drivetrain/gearing/driveline.js'
import { readTyre } from '../../drivetrain/index.js'
import { envelopeOf } from '../../drivetrain/motor/envelope.js'
import { type RunAsked, runFields, runOf, sectionsOf } from '../../electrical/cable/size.js'
import { refuseModule } from '../../electrical/pack/module.js'
import { refuseReadings } from '../../mass/weigh.js'
import { group, type Read } from '../../procedure/index.js'
import { pathText } from '../../procedure/path.js'
import { readField, settled } from '../../procedure/reading.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type InputIssue, type Kind, type Quantity, quantity } from '../../quantity/index.js'
import { isQuantity, kindInWords } from '../../quantity/read.js'
import type { BuildSheet } from './build-sheet.js'
import { sheetFields } from './fields.js'
import { uncertaintiesIn, withoutUncertainties } from './uncertain.js'

/** What describes a build sheet. @internal */
export const sheetField = /*@__PURE__*/ (() => group('A build sheet', sheetFields))()

/** A build sheet that was read. */
export type Build = Read<typeof sheetField>

/**
 * Reads a build sheet, as it comes from JSON.parse.
 *
 * Every quantity is text with its unit; a measured one may carry its uncertainty, `'0.74 m² ± 0.05 m²'`, which is expanded,
 * k = 2 (JCGM 100:2008, 7.2.3), and goes to `uncertain` by its path. Only `title` and `car` must be there; what is missing is
 * not assessed.
 *
 * @param sheet - The sheet, as {@link BuildSheet} describes it.
 * @returns The sheet with its quantities read.
 * @throws InputError that lists everything wrong with it, each by its path, such as `pack.bays[1].at.aft`.
 */
export function readBuild(sheet: unknown): Build {
  refuseSize(sheet)
  const { sheet: plain, uncertain: beside, faults } = withoutUncertainties(sheetField, sheet)
  const { $schema: _, ...read } = inOrderOf(plain, readPlain(plain, beside)) as Build & Pick<BuildSheet, '$schema'>
  refuse(faults)
  refuse(sizeIssues(read))
  const twice = Object.keys(read.uncertain ?? {}).filter((path) => Object.hasOwn(beside, path))
  refuse(
    twice.map((path) => ({
      path: `uncertain.${path}`,
      expected: 'nothing, as an uncertainty stands at the value itself',
      received: shown(read.uncertain?.[path]),
    })),
  )
  const uncertain = { ...read.uncertain, ...beside }
  const build = Object.keys(uncertain).length === 0 ? read : { ...read, uncertain }
  refuse(contradictions(build))
  refuse(uncertaintiesIn(sheetField, withoutOwn(build), uncertain).issues)
  return build
}

/** Reads a sheet without its uncertainties. Its errors show a value as it was written, with what followed ±. */
function readPlain(plain: unknown, beside: { readonly [path: string]: string }): unknown {
  try {
    return readField('readBuild', sheetField, plain)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const issues = error.issues.map((issue) =>
      Object.hasOwn(beside, issue.path)
        ? {
            ...issue,
            received: issue.received.replace(/'$/, ` ± ${beside[issue.path]}'`),
            hint: [issue.hint ?? [], 'a unit stands beside both numbers'].flat().join('; '),
          }
        : issue,
    )
    throw new InputError('readBuild', issues)
  }
}

/** A build without what it says of its uncertainties, which are no values of it. @internal */
export function withoutOwn({ uncertain: _, ...build }: Build): Omit<Build, 'uncertain'> {
  return build
}

function refuse(issues: readonly InputIssue[]): void {
  if (issues.length > 0) throw new InputError('readBuild', issues)
}

/**
 * Writes a build as a sheet: plain JSON, as it comes from JSON.parse, with the keys in the order in which they were read.
 *
 * {@link readBuild} reads the same build from it.
 *
 * @param build - A sheet that readBuild has read.
 * @returns The sheet, every quantity as text that reads back as just its value.
 * @throws InputError for what readBuild refuses.
 */
export function writeBuild(build: Build): BuildSheet {
  return JSON.parse(JSON.stringify(readBuild(build))) as BuildSheet
}

/** So many values are on a sheet at most: twenty times as many as on the sheet of a whole car. */
const MOST_VALUES = 10_000

/** A sheet has fewer than ten levels: what is nested deeper than this is a slip, or goes round in a circle. @internal */
export const MOST_LEVELS = 100

/** Refuses what is no sheet at all, and one that would take minutes to read and hours to assess. */
function refuseSize(sheet: unknown): void {
  const refused = (expected: string, received: string) =>
    new InputError('readBuild', [{ path: '', expected, received }])
  if (typeof sheet !== 'object' || sheet === null || ArrayBuffer.isView(sheet)) {
    throw refused('a build sheet, an object such as JSON.parse(text) gives', shown(sheet))
  }
  let count = 0
  const open: (readonly [value: unknown, level: number])[] = [[sheet, 1]]
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [value, level] = next
    if (typeof value !== 'object' || value === null || isQuantity(value)) continue
    if (level > MOST_LEVELS) throw refused(`a build sheet of at most ${MOST_LEVELS} levels`, 'more')
    const held = Object.values(value)
    count += held.length
    if (count > MOST_VALUES) throw refused(`a build sheet of at most ${MOST_VALUES} values`, 'more')
    for (const each of held) open.push([each, level + 1])
  }
}

/** What was read, with its keys in the order in which they were written. */
function inOrderOf(written: unknown, read: unknown): unknown {
  if (typeof read !== 'object' || read === null || isQuantity(read)) return read
  const [from, to] = [written, read] as { readonly [key: string]: unknown }[]
  if (Array.isArray(read)) return settled(read.map((each, i) => inOrderOf(from?.[i], each)))
  const keys = new Set([...Object.keys(Object(written)), ...Object.keys(read)])
  return settled(Object.fromEntries([...keys].map((key) => [key, inOrderOf(from?.[key], to?.[key])])))
}

/** Nothing on a car is larger in SI units, nor smaller unless it is nothing: what is, would only overflow. */
const [SMALLEST, LARGEST] = [1e-12, 1e12]

/** Figures that nothing on a car can have. */
function sizeIssues(read: unknown, path: readonly PropertyKey[] = []): InputIssue[] {
  if (isQuantity(read)) {
    const size = Math.abs(read.si)
    if (size === 0 || (size >= SMALLEST && size <= LARGEST)) return []
    const expected = `${kindInWords(read.kind)} of a size that something on a car can have`
    return [{ path: pathText(path), expected, received: String(read) }]
  }
  if (typeof read !== 'object' || read === null) return []
  return Object.entries(read).flatMap(([key, each]) =>
    sizeIssues(each, [...path, Array.isArray(read) ? Number(key) : key]),
  )
}

/** Fields that are sound by themselves and do not go together. */
function contradictions({
  car,
  module,
  motor,
  controller,
  gearbox,
  pack,
  runs = {},
  journeys = {},
  charger,
}: Build): InputIssue[] {
  const rising = <K extends Kind>(...values: readonly (readonly [path: string, value: Quantity<K>])[]) =>
    values.flatMap(([path, value], i) => {
      const [beforePath, before] = values[i - 1] ?? [path, value]
      return i === 0 || value.si > before.si
        ? []
        : [{ path, expected: `more than ${beforePath}, ${before}`, received: String(value) }]
    })
  return [
    ...issuesOf(() => refuseReadings('readBuild', 'car.', car)),
    ...tyreIssues(car),
    ...(pack === undefined || Object.keys(pack.bays).length > 0
      ? []
      : [{ path: 'pack.bays', expected: 'at least one bay that holds modules', received: 'none' }]),
    ...Object.keys(pack?.life?.journeys ?? {}).flatMap((key) =>
      // A sheet without journeys has none to name: then its life is not known.
      Object.hasOwn(journeys, key) || Object.keys(journeys).length === 0
        ? []
        : [
            {
              path: `pack.life.journeys.${key}`,
              expected: `a journey of the sheet: ${Object.keys(journeys).join(', ')}`,
              received: shown(key),
            },
          ],
    ),
    ...(car.springs === undefined ? [] : unsprungIssues(car.scales, car.springs)),
    ...(module === undefined ? [] : issuesOf(() => refuseModule('readBuild', 'module', module))),
    ...(motor === undefined ? [] : issuesOf(() => envelopeOf('readBuild', motor))),
    ...(gearbox === undefined ? [] : gearIssues(gearbox)),
    ...(controller === undefined
      ? []
      : rising(
          ['controller.minimumVoltage', controller.minimumVoltage],
          ['controller.maximumVoltage', controller.maximumVoltage],
        )),
    ...Object.entries(journeys).flatMap(([key, each]) => roadIssues(`journeys.${key}`, each)),
    ...Object.entries(runs).flatMap(([key, each]) => runIssues(`runs.${key}.`, each, journeys)),
    ...(charger === undefined ? [] : rising(['charger.from', charger.from], ['charger.to', charger.to])),
  ]
}

/** A journey is told by its road or by a cycle, which has its own pace. */
function roadIssues(path: string, { stretches, pace, cycle }: NonNullable<Build['journeys']>[string]): InputIssue[] {
  if ((stretches === undefined) === (cycle === undefined)) {
    const expected =
      "one of stretches such as [{ distance: '12 km', speed: '70 km/h' }], and cycle such as 'WLTC class 3b'"
    return [{ path, expected, received: cycle === undefined ? 'neither' : 'both' }]
  }
  if (cycle === undefined || pace === undefined) return []
  return [{ path: `${path}.pace`, expected: 'nothing: a cycle has its own pace', received: 'a pace' }]
}

function gearIssues(gearbox: NonNullable<Build['gearbox']>): readonly InputIssue[] {
  const names = Object.keys(gearbox.gears)
  // An id holds the letters and digits of a name.
  const ids = names.map((name) => name.replace(/[^\p{L}\p{N}]/gu, ''))
  const same = names.flatMap((name, i) => {
    const other = names.find((_, j) => j < i && ids[j] === ids[i])
    return other === undefined ? [] : [`${shown(other)} and ${shown(name)}`]
  })
  const expected = 'names that differ in letters or digits'
  const sameIssues = same.map((received) => ({ path: 'gearbox.gears', expected, received }))
  // The tyre has its own words: any radius does to hold the gears against each other.
  const car = { rollingRadius: quantity('length', '0.3 m') }
  return [...sameIssues, ...issuesOf(() => drivelineOf('readBuild', { car, gearbox }))]
}

function unsprungIssues(
  { frontLeft, frontRight, rearLeft, rearRight }: Build['car']['scales'],
  { front, rear }: NonNullable<Build['car']['springs']>,
): InputIssue[] {
  const axles = [
    ['front', front.unsprung, frontLeft.plus(frontRight)],
    ['rear', rear.unsprung, rearLeft.plus(rearRight)],
  ] as const
  return axles.flatMap(([end, unsprung, mass]) =>
    unsprung.si < mass.si
      ? []
      : [
          {
            path: `car.springs.${end}.unsprung`,
            expected: `less than the ${end} scales show, ${mass}`,
            received: String(unsprung),
          },
        ],
  )
}

/** The wheels are known by one of three: two would contradict each other, and none leaves them unknown. */
function tyreIssues({ tyre, rollingRadius, rollingCircumference }: Build['car']): readonly InputIssue[] {
  const given = Object.entries({ tyre, rollingRadius, rollingCircumference }).filter(([, value]) => value !== undefined)
  if (given.length === 1) {
    return tyre === undefined ? [] : issuesOf(() => readTyre(tyre)).map((issue) => ({ ...issue, path: 'car.tyre' }))
  }
  const expected = "one of tyre such as '145/80 R13', rollingRadius and rollingCircumference"
  const received = given.length === 0 ? 'none of them' : given.map(([key]) => key).join(' and ')
  return [{ path: 'car.tyre', expected, received }]
}

/** A run with what stands where the sheet says nothing. */
const runField = /*@__PURE__*/ (() => group('A run', runFields))()

function runIssues(
  path: string,
  { section, ...run }: NonNullable<Build['runs']>[string],
  journeys: NonNullable<Build['journeys']>,
): readonly InputIssue[] {
  const asked = Object.fromEntries(Object.entries(run).filter(([key]) => key in runFields)) as Partial<RunAsked>
  // Of what volts a drop is a share, the pack tells; which current flows, perhaps a journey.
  const load = { current: quantity('current', '1 A'), systemVoltage: quantity('voltage', '1 V') }
  const whole = readField('readBuild', runField, { ...asked, ...load }) as RunAsked
  const names = sectionsOf(whole.series).map((each) => each.name)
  return [
    ...(section === undefined || names.includes(section)
      ? []
      : [{ path: `${path}section`, expected: `a section: ${names.join(', ')}`, received: `'${section}'` }]),
    ...(asked.current !== undefined || Object.keys(journeys).length > 0
      ? []
      : [
          {
            path: `${path}current`,
            expected: "a current such as '120 A', or journeys whose currents it carries",
            received: 'nothing',
          },
        ]),
    ...issuesOf(() => runOf('readBuild', path, whole)),
  ]
}

/** What a reader that refuses its input says of it. */
function issuesOf(read: () => unknown): readonly InputIssue[] {
  try {
    read()
    return []
  } catch (error) {
    if (error instanceof InputError) return error.issues
    throw error
  }
}
