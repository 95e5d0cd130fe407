/** What the assessment of a sheet tells: slips by a thousand, and what one figure does not take with it. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Assessment, assess, type BuildSheet, readBuild } from '../../src/conversion/index.js'
import { isMet } from '../../src/procedure/index.js'
import { InputError } from '../../src/quantity/index.js'
import { patched } from '../patched.js'

const text = readFileSync(new URL('../../examples/wagtail-850.json', import.meta.url), 'utf8')
const sheet = (): BuildSheet => JSON.parse(text)
type Path = readonly string[]

/** Every figure of the sheet, by its place. A count is none: it is a whole number, and a thousandth of it is not. */
function figuresIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, each]) => figuresIn(each, [...path, key]))
  }
  const isFigure = typeof value === 'string' ? /^-?[\d.]+( |$)/.test(value) : !Number.isInteger(value)
  return isFigure && Number.parseFloat(String(value)) !== 0 ? [path] : []
}

/** A sheet with one figure of another size. */
function slipped(path: Path, factor: number): unknown {
  const changed: unknown = sheet()
  const parent = path.slice(0, -1).reduce((outer, key) => (outer as { [key: string]: unknown })[key], changed)
  const key = path.at(-1) as string
  const written = (parent as { [key: string]: unknown })[key]
  const [number, ...unit] = String(written).split(' ')
  const scaled = Number(number) * factor
  ;(parent as { [key: string]: unknown })[key] = typeof written === 'number' ? scaled : [scaled, ...unit].join(' ')
  return changed
}

/** What an assessment cries: by id, so that what was there before is no news. */
function criesOf({ sections, notes, unassessed }: Assessment): string[] {
  return [
    ...sections.flatMap(({ checks }) => checks.filter((each) => !isMet(each)).map(({ id }) => id)),
    ...[...notes, ...sections.flatMap((section) => section.notes)].map(({ id }) => id),
    ...unassessed.map(({ title }) => title),
  ]
}

/** Whether a slip is told: the sheet is refused, or something cries. */
function isTold(path: Path, factor: number): boolean {
  try {
    return criesOf(assess(readBuild(slipped(path, factor)))).length > 0
  } catch (error) {
    if (error instanceof InputError) return true
    throw error
  }
}

describe('the example sheet', () => {
  it('stays quiet', () => expect(criesOf(assess(readBuild(sheet())))).toEqual([]))
  it('tells nine of ten slips by a thousand', () => {
    // All of them take a minute: every ninth, unless all are asked for.
    const every = process.env.DEEP === undefined ? 9 : 1
    const slips = figuresIn(sheet()).flatMap((path) => [1000, 0.001].map((factor) => [path, factor] as const))
    const tried = slips.filter((_, i) => i % every === 0)
    expect(slips.length).toBeGreaterThan(400)
    const silent = tried.filter(([path, factor]) => !isTold(path, factor))
    expect(silent.length / tried.length, silent.map((each) => each.join(' ')).join(', ')).toBeLessThan(0.1)
  }, 240_000)
})

/** The bakery round as one stretch. */
const stretch = (distance: string) => ({
  journeys: { bakeryRound: { stretches: [{ name: 'there', distance, speed: '60 km/h' }] } },
})

describe('one figure', () => {
  const of = (patch: object) => assess(readBuild(patched(sheet(), patch)))
  it('leaves the grip on a hill unknown where the height of the centre of gravity is not told', () => {
    const found = of({ car: { raised: undefined } })
    const grip = found.sections.flatMap(({ checks }) => checks).find(({ id }) => id === 'hill.grip')
    expect(grip?.verdict).toBe('unknown')
    expect(found.unassessed).toContainEqual({
      id: 'grip',
      title: 'Grip on a hill',
      isAsked: false,
      missing: ['car.raised'],
      why: 'add to the sheet: car.raised',
    })
    expect(of({}).sections.flatMap(({ checks }) => checks.map(({ id }) => id))).not.toContain('hill.grip')
  })
  it.each([
    [
      'a run that is sized for less than the journeys draw',
      { runs: { main: { current: '14 A' } } },
      'runs.main.current',
    ],
    ['cells that take ten times their capacity in an hour', { module: { chargeCurrent: '400 A' } }, 'chargeCurrent'],
    ['a stretch in metres that was meant in kilometres', stretch('13 m'), 'distance'],
  ])('tells %s', (_, patch, told) => {
    expect(criesOf(of(patch)).some((id) => id.includes(told))).toBe(true)
  })
  it('stays quiet over their sound neighbours', () => {
    const patch = { runs: { main: { current: '110 A' } }, module: { chargeCurrent: '60 A' }, ...stretch('13 km') }
    expect(criesOf(of(patch))).toEqual([])
  })
  it('refuses tyres that hold more than any, by their own field', () => {
    expect(() => of({ car: { friction: 7 } })).toThrow('car.friction: expected a ratio above 0 and at most 2')
  })
  it('leaves the range where modules do not fit into their bays', () => {
    const found = of({ pack: { parallel: 4 } })
    expect(found.unassessed.map(({ title }) => title)).toEqual(['Weight and balance', 'Brakes'])
    expect(found.sections.map(({ title }) => title)).toContain('Energy and range at a steady speed')
  })
})

describe('what went with the engine', () => {
  const verdictOf = (patch: object, id: string) =>
    assess(readBuild(patched(sheet(), patch))).checks.find((each) => each.id === id)?.verdict
  const servo = (brakes: object, lowVoltage: object = {}) =>
    verdictOf({ brakes: { servo: true, ...brakes }, lowVoltage }, 'brakes.vacuum')
  it('is the vacuum of a servo, which a pump must make that the 12 V side feeds', () => {
    const pump = { loads: { vacuumPump: { power: '90 W', duty: '20 %' } } }
    expect(servo({ vacuum: 'none' })).toBe('fail')
    expect(servo({})).toBe('unknown')
    expect(servo({ servo: undefined })).toBe('unknown')
    expect(servo({ vacuum: 'vacuumPump' })).toBe('unknown')
    expect(servo({ vacuum: 'vacuumPump' }, pump)).toBe('pass')
    expect(servo({ servo: false })).toBe(undefined)
  })
  it('is the gear that held the parked car, so that its brake must', () => {
    expect(verdictOf({ brakes: { parking: '1500 N' } }, 'brakes.parking')).toBe('fail')
    expect(verdictOf({ brakes: { parking: undefined } }, 'brakes.parking')).toBe('unknown')
    expect(verdictOf({ brakes: { parking: '2300 N' } }, 'brakes.parking')).toBe('pass')
  })
  it('is braking that the motor takes over, where it goes on while the pedal is pressed', () => {
    expect(verdictOf({ brakes: { regeneration: undefined } }, 'brakes.regeneration')).toBe('unknown')
    expect(verdictOf({ brakes: { regeneration: '600 N' } }, 'brakes.laden.brakes.regeneration')).toBe('fail')
    expect(verdictOf({ brakes: { regeneration: '600 N', antiLock: true } }, 'brakes.laden.brakes.regeneration')).toBe(
      undefined,
    )
  })
  it('leaves the order of the axles, which nobody knows without its share or the height', () => {
    expect(verdictOf({ brakes: { frontBrakeShare: '68 %' } }, 'brakes.driver.brakes.order')).toBe('fail')
    expect(verdictOf({ brakes: { frontBrakeShare: undefined } }, 'brakes.driver.brakes.order')).toBe('unknown')
    expect(verdictOf({ car: { raised: undefined } }, 'brakes.order')).toBe('unknown')
  })
})

describe('what is found on the way to a figure', () => {
  const checksOf = (patch: object) => assess(readBuild(patched(sheet(), patch))).checks
  it('cells too hot after a journey fail, and cells that keep to their limit do not', () => {
    const verdictAt = (limit: string) =>
      checksOf({ cooling: { pack: { limit } } }).find(({ id }) => id === 'journeys.bakeryRound.summer.cell.hottest')
    // The cells of the demo begin the journey in summer at 32 °C, and warm by it.
    expect(verdictAt('32 °C')?.verdict).toBe('fail')
    expect(verdictAt('32 °C')?.paths).toContain('cooling.pack.limit')
    expect(verdictAt('45 °C')?.verdict).toBe('pass')
  })
  it('a heater that the car does not have is not held against it; that of the car is', () => {
    // So much air asks for more than the pack holds in an hour of plain heating, and for less of a heat pump.
    const heated = (coefficientOfPerformance: number | undefined) =>
      checksOf({ heating: { cabin: { airFlow: '2000 m³/h', coefficientOfPerformance } } }).flatMap(({ id, verdict }) =>
        id.endsWith('cabin.heater.energy') ? [verdict] : [],
      )
    expect(heated(1.9)).toEqual(['pass'])
    expect(heated(undefined)).toEqual(['fail'])
  })
})
