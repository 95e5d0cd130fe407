/** Structured input: what is read, and that every fault is named by its path, in words that mend it. */
import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { InputError, quantity } from '../src/quantity/index.js'
import { about, given, procedure } from '../src/structure/index.js'

const bay = about(
  'a bay',
  z.strictObject({
    name: z.string(),
    at: about(
      'its place',
      z.strictObject({
        aft: given('length', 'Behind the front axle'),
        up: z.optional(given('length', 'Height', { min: 0 })),
      }),
    ),
    holds: z.int().check(z.minimum(1)),
  }),
)
const place = procedure(
  'place',
  about(
    'a car',
    z.strictObject({
      wheelbase: given('length', 'Distance between the axles', { above: 0 }),
      drive: z.enum(['front', 'rear']),
      bays: z.array(bay).check(z.minLength(1)),
    }),
  ),
  (read) => read,
)
const sound = { wheelbase: '2 m', drive: 'rear', bays: [{ name: 'a', at: { aft: '-30 cm' }, holds: 3 }] } as const
const issuesOf = (value: unknown) => {
  try {
    place(value as never)
  } catch (error) {
    if (error instanceof InputError) return error.issues
    throw error
  }
  throw new Error('nothing was refused')
}

describe('a structure', () => {
  it('is read to quantities', () => {
    const read = place(sound as never)
    expect(String(read.wheelbase)).toBe('2 m')
    expect(String(read.bays[0]?.at.aft)).toBe('-30 cm')
    expect(read.bays[0]?.at.up).toBeUndefined()
  })
  it('takes quantities as well as text', () => {
    expect(place({ ...sound, wheelbase: quantity('length', '6 ft') } as never).wheelbase.in('ft')).toBe(6)
  })
  it('lists every fault by its path, with what was expected, what came and the mend', () => {
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
      issuesOf(wrong).map((issue) => `${issue.path} | ${issue.expected} | ${issue.received} | ${issue.hint ?? ''}`),
    ).toEqual([
      "wheelbase | a length such as '2.4 m' | '2,1 m' | write '2.1 m': the decimal sign is a point, and thousands are not separated",
      "drive | 'front' or 'rear' | 'reer' | did you mean rear?",
      "bays[0].at.aft | a length such as '2.4 m' | '300 kg' | kg measures a mass",
      "bays[0].at.upp | no such field; there are aft, up | '1 m' | did you mean up?",
      'bays[0].holds | a number at least 1 | 0 | ',
      'bays[1].name | text | 5 | ',
      "bays[1].at.up | a length at least 0 m | '-1 m' | Height",
      'bays[1].holds | a number | nothing | ',
      'bays[1].hold | no such field; there are name, at, holds | 2 | did you mean holds?',
      "bays[2] | an object { name, at, holds } (a bay) | 'boot' | ",
      "colour | no such field; there are wheelbase, drive, bays | 'red' | ",
    ])
  })
  it.each([[undefined], [null], ['car'], [5], [[]]])('says what it wants when it is given %o', (value) => {
    expect(issuesOf(value)[0]?.expected).toBe('an object { wheelbase, drive, bays } (a car)')
  })
  it('says which of its lists is too short', () => {
    expect(issuesOf({ ...sound, bays: [] })[0]).toMatchObject({
      path: 'bays',
      expected: expect.stringMatching(/^a list of at least 1/),
      received: 'an empty list',
    })
  })
})
