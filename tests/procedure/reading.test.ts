/** Reading by a description: what is read, and that every fault is named by its path, in words that mend it. */
import { describe, expect, it } from 'vitest'
import { choice, given, group, list, optional, text, whole } from '../../src/procedure/index.js'
import { readField } from '../../src/procedure/reading.js'
import { InputError, type Quantity, quantity } from '../../src/quantity/index.js'

const bay = group('a bay', {
  name: text('What it is called'),
  at: group('its place', {
    aft: given('length', 'Behind the front axle'),
    up: optional(given('length', 'Height', { min: 0 })),
  }),
  holds: whole('How many it holds', { min: 1 }),
})
const car = group('a car', {
  wheelbase: given('length', 'Distance between the axles', { above: 0 }),
  drive: choice('Which wheels are driven', ['front', 'rear']),
  bays: list('The bays', bay, { least: 1 }),
})
interface Car {
  readonly wheelbase: Quantity<'length'>
  readonly bays: readonly { readonly at: { readonly aft: Quantity<'length'>; readonly up?: Quantity<'length'> } }[]
}
const read = (value: unknown) => readField('place', car, value) as Car
const sound = { wheelbase: '2 m', drive: 'rear', bays: [{ name: 'a', at: { aft: '-30 cm' }, holds: 3 }] }
const refused = (value: unknown) => {
  try {
    read(value)
  } catch (error) {
    if (error instanceof InputError) return error
    throw error
  }
  throw new Error('nothing was refused')
}

describe('what is written', () => {
  it('is read to quantities', () => {
    const { wheelbase, bays } = read(sound)
    expect(String(wheelbase)).toBe('2 m')
    expect(String(bays[0]?.at.aft)).toBe('-30 cm')
    expect(bays[0]?.at.up).toBeUndefined()
  })
  it('may be a quantity as well as text', () => {
    expect(read({ ...sound, wheelbase: quantity('length', '6 ft') }).wheelbase.in('ft')).toBe(6)
  })
  it('is refused with every fault by its path, with what was expected, what came and the mend', () => {
    const wrong = {
      wheelbase: '2,1 m',
      drive: 'reer',
      colour: 'red',
      bays: [
        { name: 'a', at: { aft: '300 kg', upp: '1 m' }, holds: 0 },
        { name: 5, at: { aft: '1 m', up: '-1 m' }, hold: 2 },
        'boot',
      ],
    }
    expect(
      refused(wrong).issues.map(
        (issue) => `${issue.path} | ${issue.expected} | ${issue.received} | ${issue.hint ?? ''}`,
      ),
    ).toEqual([
      "wheelbase | a length such as '2.4 m' | '2,1 m' | write '2.1 m': the decimal sign is a point, and thousands are not separated",
      "drive | 'front' or 'rear' | 'reer' | did you mean rear?",
      "bays[0].at.aft | a length such as '2.4 m' | '300 kg' | kg measures a mass",
      "bays[0].at.upp | no such field; there are aft, up | '1 m' | did you mean up?",
      'bays[0].holds | a number at least 1 | 0 | How many it holds',
      'bays[1].name | text (what it is called) | 5 | ',
      "bays[1].at.up | a length at least 0 m | '-1 m' | Height",
      'bays[1].holds | a whole number (how many it holds) | nothing | ',
      'bays[1].hold | no such field; there are name, at, holds | 2 | did you mean holds?',
      "bays[2] | an object { name, at, holds } (a bay) | 'boot' | ",
      "colour | no such field; there are wheelbase, drive, bays | 'red' | ",
    ])
  })
  it.each([[undefined], [null], ['car'], [5], [[]]])('is refused with what is wanted where it is %o', (value) => {
    expect(refused(value).issues[0]?.expected).toBe('an object { wheelbase, drive, bays } (a car)')
  })
  it('is refused where a list is too short', () => {
    expect(refused({ ...sound, bays: [] }).issues[0]).toMatchObject({
      path: 'bays',
      expected: expect.stringMatching(/^a list of at least 1/),
      received: 'an empty list',
    })
  })
  it('is refused with the first 50 faults and how many more there are, each in at most 200 characters', () => {
    const { issues, message } = refused({ ...sound, bays: Array.from({ length: 70 }, () => 'x'.repeat(5000)) })
    expect(issues).toHaveLength(50)
    expect(message).toMatch(/^place: 70 inputs cannot be used\n/)
    expect(message).toMatch(/\n {2}and 20 more$/)
    expect(Math.max(...issues.map(({ received }) => received.length))).toBeLessThanOrEqual(200)
    // A name is as long as its writer likes.
    expect(refused({ ...sound, ['k'.repeat(9000)]: 1 }).message.length).toBeLessThan(1000)
  })
})

describe('what was read', () => {
  it('cannot be changed, down to its leaves', () => {
    const { bays } = read(sound)
    expect(() => Object.assign(bays[0]?.at as object, { aft: quantity('length', '9 m') })).toThrow(TypeError)
    expect(() => (bays as unknown[]).push('boot')).toThrow(TypeError)
  })
  it('is read again as it is', () => {
    const once = read(sound)
    expect(read(once)).toBe(once)
    // A part of it that was read goes into another whole unchanged.
    expect(read({ ...once, wheelbase: '3 m' }).bays).toBe(once.bays)
  })
  it('is held to the bounds of each field that reads it, the field that read it before or not', () => {
    const { bays } = read(sound)
    const short = group('a car', { bays: list('The bays', bay, { least: 2 }) })
    const refusal = () => readField('place', short, { bays })
    expect(refusal).toThrow('bays: expected a list of at least 2')
    expect(refusal).toThrow('bays: expected a list of at least 2')
  })
  it('is read anew where its writer may have changed it', () => {
    const mine = { ...sound, wheelbase: '2 m' }
    expect(String(read(mine).wheelbase)).toBe('2 m')
    mine.wheelbase = '3 m'
    expect(String(read(mine).wheelbase)).toBe('3 m')
    // Frozen by its writer is not read: what is within may change.
    const inner = { aft: '1 m' }
    const frozen = Object.freeze({ ...sound, bays: Object.freeze([Object.freeze({ name: 'a', at: inner, holds: 3 })]) })
    expect(String(read(frozen).bays[0]?.at.aft)).toBe('1 m')
    inner.aft = '2 m'
    expect(String(read(frozen).bays[0]?.at.aft)).toBe('2 m')
  })
})
