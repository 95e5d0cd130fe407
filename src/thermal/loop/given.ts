/** What a coolant loop is worked out from, and what of it is refused. */
import { given, group, list, optional, pairs, type Read, text } from '../../procedure/index.js'
import { tableIssues } from '../../procedure/table.js'
import { InputError, type InputIssue, type Quantity } from '../../quantity/index.js'
import { dryAir, outdoors } from '../air/dry-air.js'
import { coolantField } from '../boiling.js'
import { rangeOf, refuseOutside } from '../property-table.js'
import { coolants } from './coolant.js'

const pieceFields = /*@__PURE__*/ (() => ({
  name: optional(text('What it is called')),
  length: optional(given('length', 'Length of the pipe', { above: 0, usual: ['20 mm', '50 m'] })),
  bore: optional(given('length', 'Bore of the pipe', { above: 0, usual: ['2 mm', '80 mm'] })),
  roughness: optional(given('length', 'Height of the roughness of the wall', { min: 0 })),
  fittings: optional(given('ratio', 'Sum of the loss coefficients of the fittings', { min: 0, finest: 0.05 })),
  drop: optional(
    given('pressure', "Pressure drop that the part's maker gives", { above: 0, usual: ['0.1 kPa', '200 kPa'] }),
  ),
  at: optional(
    given('volumeFlow', 'Flow for which the drop is given', { above: 0, usual: ['0.3 L/min', '100 L/min'] }),
  ),
  hydraulicDiameter: optional(
    given('length', 'Hydraulic diameter of the passages of a part, which tells whether its flow is turbulent', {
      above: 0,
      usual: ['0.3 mm', '40 mm'],
    }),
  ),
  flowArea: optional(
    given('area', 'Area of those passages together; one round passage unless given', {
      above: 0,
      usual: ['5 mm²', '5000 mm²'],
    }),
  ),
  heat: optional(given('power', 'Heat put into the coolant here', { min: 0 })),
  inletLimit: optional(given('temperature', 'Most that the coolant may have as it enters'), {
    absent: 'The coolant that enters it is held to the limit of the loop alone.',
  }),
  minimumFlow: optional(given('volumeFlow', 'Least flow that it needs', { above: 0 }), {
    absent: 'The flow through it is not held to a limit.',
  }),
}))()

const pieceField = /*@__PURE__*/ (() => group('A pipe (length and bore) or a part (drop and at)', pieceFields))()

const segmentFields = /*@__PURE__*/ (() => ({
  ...pieceFields,
  parallel: optional(
    list(
      'Branches side by side, each a list of pipes and parts',
      list('Pipes and parts, one after the other', pieceField, { least: 1 }),
      { least: 2 },
    ),
  ),
}))()
const segmentField = /*@__PURE__*/ (() =>
  group('A pipe (length and bore), a part (drop and at), or branches side by side (parallel)', segmentFields))()

const sideField = /*@__PURE__*/ (() =>
  group('The conductance of one side', {
    conductance: given('thermalConductance', 'Conductance of this side', { above: 0 }),
    at: given('volumeFlow', 'Flow for which it is given', { above: 0 }),
    exponent: given('ratio', 'Exponent of the flow', { min: 0, max: 1 }),
  }))()

/** A coolant loop, but for the air. @internal */
export const loopFields = /*@__PURE__*/ (() => ({
  coolant: coolantField,
  pump: pairs(
    'The curve of the pump, from no flow on',
    given('volumeFlow', 'Flow', { min: 0, usual: ['0 L/min', '200 L/min'], finest: '0.1 L/min' }),
    given('pressure', 'Pressure', { min: 0, usual: ['0 kPa', '500 kPa'], finest: '0.1 kPa' }),
    { least: 2 },
  ),
  segments: list('What the coolant passes, from the outlet of the radiator on', segmentField, { least: 1 }),
  radiator: group('The radiator, by its effectiveness, its conductance, or the conductances of its two sides', {
    effectiveness: optional(given('ratio', 'Effectiveness, the same at every flow', { above: 0, max: 1 })),
    conductance: optional(
      given('thermalConductance', 'Conductance from coolant to air', { above: 0, usual: ['5 W/K', '2000 W/K'] }),
    ),
    at: optional(
      group('The flows for which the conductance is given', {
        air: given('volumeFlow', 'Air flow for which it is given', { above: 0, usual: ['50 m³/h', '10000 m³/h'] }),
        coolant: given('volumeFlow', 'Coolant flow for which it is given', {
          above: 0,
          usual: ['0.5 L/min', '200 L/min'],
        }),
      }),
    ),
    exponents: optional(
      group('How the conductance grows with the flows', {
        air: given('ratio', 'Exponent of the air flow', { min: 0, max: 1, finest: 0.01 }),
        coolant: given('ratio', 'Exponent of the coolant flow', { min: 0, max: 1, finest: 0.01 }),
      }),
    ),
    airSide: optional(sideField),
    coolantSide: optional(sideField),
  }),
  limit: optional(given('temperature', 'Most that the coolant may have anywhere')),
  minimumFlow: optional(
    given('volumeFlow', 'Least flow that the parts need', { above: 0, usual: ['0.3 L/min', '100 L/min'] }),
    { absent: 'The flow round the loop is not held to a limit: give minimumFlow.' },
  ),
}))()

/** A coolant loop with its air. @internal */
export const loopInput = /*@__PURE__*/ (() => ({
  ...loopFields,
  heat: optional(given('power', 'Heat put in elsewhere than in a segment, before the radiator', { min: 0 })),
  air: group('The air at the radiator', {
    temperature: given('temperature', 'Temperature of the air before the radiator', outdoors),
    flow: given('volumeFlow', 'Air flow through the radiator, at that temperature', { above: 0 }),
  }),
}))()

/** A loop as it is read. @internal */
export type Loop = Read<typeof loopInput>
/** A pipe or part as it is read. @internal */
export type Piece = Read<typeof pieceField>
/** Pieces in one place of the loop as they are read. @internal */
export type Segment = Read<typeof segmentField>
/** A side of the radiator as it is read. @internal */
export type Side = Read<typeof sideField>
/** A temperature of the loop. @internal */
export type Celsius = Quantity<'temperature'>

/** The procedure, for its errors. @internal */
export const where = 'coolingLoop'

/** Refuses what is well written but makes no loop. @internal */
export function refuseUnusable(loop: Loop): void {
  const issues = [
    ...loop.segments.flatMap((segment, i) => segmentIssues(segment, `segments[${i}]`)),
    ...pumpIssues(loop),
    ...radiatorIssues(loop),
  ]
  if (issues.length > 0) throw new InputError(where, issues)
  refuseOutside(where, 'air.temperature', dryAir, loop.air.temperature)
  if (loop.limit !== undefined) refuseOutside(where, 'limit', coolants[loop.coolant], loop.limit)
  const [, high] = rangeOf(coolants[loop.coolant])
  if (loop.air.temperature.si <= high.si) return
  const expected = `a temperature of at most ${high}, where the table of the coolant ends`
  throw new InputError(where, [{ path: 'air.temperature', expected, received: String(loop.air.temperature) }])
}

const pieceExpected =
  "a pipe, such as { length: '2 m', bore: '16 mm' }, or a part, such as { drop: '8 kPa', at: '10 L/min' }"

function namesGiven(piece: object): string {
  const names = Object.entries(piece).flatMap(([key, value]) => (value === undefined || key === 'name' ? [] : [key]))
  return names.length === 0 ? 'nothing' : names.join(', ')
}

function segmentIssues(segment: Segment, path: string): InputIssue[] {
  const { parallel, name: _, ...piece } = segment
  if (parallel === undefined) return pieceIssues(piece, path)
  const others = Object.values(piece).some((value) => value !== undefined)
  const mixed = others ? [{ path, expected: 'parallel alone, or a pipe or part', received: namesGiven(segment) }] : []
  const within = parallel.flatMap((branch, b) =>
    branch.flatMap((each, p) => pieceIssues(each, `${path}.parallel[${b}][${p}]`)),
  )
  return [...mixed, ...within]
}

function pieceIssues(piece: Piece, path: string): InputIssue[] {
  const { length, bore, roughness, fittings, drop, at, hydraulicDiameter, flowArea } = piece
  if (flowArea !== undefined && hydraulicDiameter === undefined) {
    return [
      { path: `${path}.hydraulicDiameter`, expected: "a length such as '4 mm' beside flowArea", received: 'nothing' },
    ]
  }
  const pipe = [length, bore].filter((each) => each !== undefined).length
  const part = [drop, at].filter((each) => each !== undefined).length
  const isPipe = pipe === 2 && part === 0 && hydraulicDiameter === undefined
  const isPart = part === 2 && pipe === 0 && roughness === undefined && fittings === undefined
  if (!isPipe && !isPart) return [{ path, expected: pieceExpected, received: namesGiven(piece) }]
  if (roughness === undefined || bore === undefined || roughness.si <= 0.05 * bore.si) return []
  const expected = `a length of at most a twentieth of the bore, ${bore.times(0.05).as('mm')}`
  return [{ path: `${path}.roughness`, expected, received: String(roughness) }]
}

function pumpIssues({ pump }: Loop): InputIssue[] {
  const issues: InputIssue[] = []
  const [flow, pressure] = pump[0] as Loop['pump'][number]
  if (flow.si !== 0) {
    const hint = 'its pressure with the outlet shut'
    issues.push({ path: 'pump[0][0]', expected: "no flow, '0 L/min'", received: String(flow), hint })
  }
  if (pressure.si === 0) {
    const expected = "a pressure above 0 kPa at no flow, such as '35 kPa'"
    issues.push({ path: 'pump[0][1]', expected, received: String(pressure) })
  }
  const hint = 'a curve that rises has no one point of operation'
  issues.push(...tableIssues('pump', pump, 'flow', { falls: 'pressure', hint }))
  return issues
}

function radiatorIssues({ radiator }: Loop): InputIssue[] {
  const { effectiveness, conductance, at, exponents, airSide, coolantSide } = radiator
  const given = (...values: readonly unknown[]) => values.filter((value) => value !== undefined).length
  const forms = [
    given(effectiveness) === 1 && given(conductance, at, exponents, airSide, coolantSide) === 0,
    given(conductance, at, exponents) === 3 && given(effectiveness, airSide, coolantSide) === 0,
    given(airSide, coolantSide) === 2 && given(effectiveness, conductance, at, exponents) === 0,
  ]
  if (forms.includes(true)) return []
  const expected = 'effectiveness alone; or conductance, at and exponents; or airSide and coolantSide'
  return [{ path: 'radiator', expected, received: namesGiven(radiator) }]
}
