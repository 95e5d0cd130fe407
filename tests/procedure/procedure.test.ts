/** What a procedure makes of its description, on an invented one. */
import { describe, expect, it } from 'vitest'
import { definition } from '../../src/formula/index.js'
import {
  assumed,
  byName,
  check,
  choice,
  either,
  type Findings,
  fieldsOf,
  flag,
  given,
  group,
  list,
  optional,
  own,
  pairs,
  procedure,
  spare,
  text,
  type Unfinished,
  undecided,
  whole,
} from '../../src/procedure/index.js'
import { InputError, type Quantity, quantity } from '../../src/quantity/index.js'

interface Hung extends Findings {
  readonly load: Quantity<'mass'>
}

/** Hangs a lamp from a hook. */
const hang = procedure({
  name: 'hang',
  title: 'A lamp on a hook',
  answers: 'Does the hook bear the lamp?',
  input: {
    lamp: given('mass', 'Mass of the lamp', { above: 0, usual: ['0.2 kg', '20 kg'] }),
    hook: group('the hook', {
      bears: given('mass', 'Mass that the hook bears', {
        default: '5 kg',
        because: 'common practice, no source',
        above: 0,
      }),
      made: choice('What it is made of', ['steel', 'brass'], { default: 'steel', because: 'most are' }),
    }),
    cords: optional(
      list('the cords', group('a cord', { length: given('length', 'Length of the cord', { above: 0 }) })),
    ),
    limit: optional(given('mass', 'Most that the ceiling bears', { above: 0 }), {
      absent: 'The ceiling is not held to a limit: give limit.',
    }),
    beams: optional(group('the beams', { count: whole('How many', { min: 1, default: 2, because: 'as rooms have' }) })),
    colour: spare(text('What colour it has')),
  },
  source: [definition],
  assumes: ['The lamp hangs still.'],
  work: ({ lamp, hook, limit, ...others }): Unfinished<Hung> => {
    if (Object.keys(others).includes('colour')) throw new Error('a spare field is handed to the work')
    if (hook.bears.isAtMost('0.1 kg') || (limit?.isAtMost(hook.bears) ?? false)) {
      const issue = {
        path: 'hook.bears',
        expected: `less than the ceiling bears, ${limit}`,
        received: String(hook.bears),
      }
      throw new InputError('hang', [issue])
    }
    return {
      load: lamp,
      checks: [check('hook.load', 'Load of the hook', lamp, 'at most', hook.bears, 'as given', 'lamp', 'hook.bears')],
      assumptions: [assumed('hang.straight', 'It hangs straight down.')],
    }
  },
})

/** The message of what a call throws. */
function refusalOf(call: () => unknown): string {
  try {
    call()
  } catch (error) {
    if (error instanceof InputError) return error.message.replace('one input cannot be used\n  ', '')
    throw error
  }
  throw new Error('nothing was refused')
}

describe('a procedure', () => {
  it('tells the defaults that stand with their ground, what was not given, and what is always assumed', () => {
    const { assumptions } = hang({ lamp: '2 kg', hook: {} })
    expect(assumptions).toEqual([
      {
        id: 'hook.bears.default',
        path: 'hook.bears',
        value: quantity('mass', '5 kg'),
        because: 'common practice, no source',
        text: 'Mass that the hook bears: 5 kg (hook.bears by default; common practice, no source).',
      },
      {
        id: 'hook.made.default',
        path: 'hook.made',
        value: 'steel',
        because: 'most are',
        text: 'What it is made of: steel (hook.made by default; most are).',
      },
      { id: 'limit.absent', path: 'limit', text: 'The ceiling is not held to a limit: give limit.' },
      { id: 'hang.assumes.1', text: 'The lamp hangs still.' },
      { id: 'hang.straight', text: 'It hangs straight down.' },
    ])
  })

  it('tells no default of a part that is not there, and none that was given, even as the same value', () => {
    const told = (given: Parameters<typeof hang>[0]) => hang(given).assumptions.map(({ id }) => id)
    expect(told({ lamp: '2 kg', hook: { bears: '5 kg', made: 'steel' }, limit: '6 kg' })).toEqual([
      'hang.assumes.1',
      'hang.straight',
    ])
    expect(told({ lamp: '2 kg', hook: { made: 'brass' }, beams: {}, limit: '6 kg' })).toEqual([
      'hook.bears.default',
      'beams.count.default',
      'hang.assumes.1',
      'hang.straight',
    ])
  })

  it('notes what is unusual, with the unit that would explain it, and refuses nothing for it', () => {
    const { notes } = hang({ lamp: '300 kg', hook: { bears: '1 t' } })
    expect(notes.map(({ id, path, text: words }) => [id, path, words])).toEqual([
      [
        'lamp.unusual',
        'lamp',
        'Mass of the lamp: 300 kg is unusual; light road cars and their parts have 0.2 kg to 20 kg (common practice). Did you mean 300 g?',
      ],
    ])
    expect(hang({ lamp: '20 kg', hook: {} }).notes).toEqual([])
  })

  it('notes a frost that no other unit explains: nothing is -40 K', () => {
    const freeze = procedure({
      name: 'freeze',
      title: 'A lamp in the cold',
      answers: 'Does it light?',
      input: { air: given('temperature', 'Temperature of the air', { above: 0, usual: ['-20 °C', '40 °C'] }) },
      source: [definition],
      work: (): Unfinished<Findings> => ({ checks: [] }),
    })
    expect(freeze({ air: '-45 °C' }).notes.map(({ text: words }) => words)).toEqual([
      'Temperature of the air: -45 °C is unusual; light road cars and their parts have -20 °C to 40 °C (common practice).',
    ])
  })

  it('says of a default that it refuses that nothing was given', () => {
    expect(refusalOf(() => hang({ lamp: '1 kg', hook: {}, limit: '3 kg' }))).toBe(
      'hang: hook.bears: expected less than the ceiling bears, 3 kg, got nothing, which is 5 kg',
    )
    expect(refusalOf(() => hang({ lamp: '1 kg', hook: { bears: '4 kg' }, limit: '3 kg' }))).toBe(
      'hang: hook.bears: expected less than the ceiling bears, 3 kg, got 4 kg',
    )
  })

  it('checks a spare field and hands it on to nobody', () => {
    expect(String(hang({ lamp: '1 kg', hook: {}, colour: 'green' }).load)).toBe('1 kg')
    expect(refusalOf(() => hang({ lamp: '1 kg', hook: {}, colour: 3 as never }))).toBe(
      'hang: colour: expected text (what colour it has), got 3',
    )
  })

  it('lists every fault at once, by the path of the caller', () => {
    const wrong = {
      lamp: '2 m',
      hook: { bears: '-1 kg', made: 'steal', size: '3 mm' },
      cords: [{ length: '1 m' }, { lenght: '2 m' }],
      beams: 3,
    }
    expect(refusalOf(() => hang(wrong as never)).split('\n')).toEqual([
      'hang: 7 inputs cannot be used',
      "  lamp: expected a mass such as '24 kg', got '2 m' (m measures a length)",
      "  hook.bears: expected a mass above 0 kg, got '-1 kg' (Mass that the hook bears)",
      "  hook.made: expected 'steel' or 'brass', got 'steal' (did you mean steel?)",
      "  hook.size: expected no such field; there are bears, made, got '3 mm'",
      "  cords[1].length: expected a length such as '2.4 m', got nothing",
      "  cords[1].lenght: expected no such field; there are length, got '2 m' (did you mean length?)",
      '  beams: expected an object { count? } (the beams), got 3',
    ])
    expect(refusalOf(() => hang(undefined as never))).toBe(
      'hang: expected an object { lamp, hook, cords?, limit?, beams?, colour? } (a lamp on a hook), got nothing',
    )
  })

  it('lists its fields flat, each with its path', () => {
    expect(fieldsOf(hang).map(({ path }) => path)).toEqual([
      'lamp',
      'hook',
      'hook.bears',
      'hook.made',
      'cords',
      'cords[]',
      'cords[].length',
      'limit',
      'beams',
      'beams.count',
      'colour',
    ])
  })

  it('gives what its work gives where that is no finding', () => {
    const twice = procedure({
      name: 'twice',
      title: 'Twice a length',
      answers: 'How long are two?',
      input: { one: given('length', 'Length of one') },
      source: [definition],
      work: ({ one }) => one.times(2),
    })
    expect(String(twice({ one: '2 m' }))).toBe('4 m')
  })
})

describe('fields', () => {
  const every = procedure({
    name: 'every',
    title: 'Every sort of field',
    answers: 'What is read?',
    input: {
      points: pairs('the points', given('current', 'Current', { above: 0 }), given('time', 'Time', { min: 0 }), {
        least: 2,
      }),
      drop: either('the drop', given('voltage', 'Drop', { above: 0 }), given('ratio', 'Share', { above: 0 })),
      gears: either(
        'the gears',
        byName('by name', given('ratio', 'Ratio', { above: 0 })),
        list('from the lowest', given('ratio', 'Ratio', { above: 0 })),
      ),
      keep: flag('Whether it stays', { default: true, because: 'as usual' }),
      odd: own<number, number>(
        'an odd number',
        (value) =>
          Number(value) % 2 === 1
            ? { value: Number(value) }
            : { issue: { expected: 'an odd number', received: String(value) } },
        { type: 'integer' },
      ),
    },
    source: [definition],
    work: (asked) => asked,
  })
  const sound = {
    points: [
      ['1 A', '2 s'],
      ['2 A', '1 s'],
    ],
    drop: '2 V',
    gears: { first: 3.6 },
    odd: 3,
  } as const

  it('are read by their sort', () => {
    const read = every(sound)
    expect(read.points.map(([current, time]) => [current.si, time.si])).toEqual([
      [1, 2],
      [2, 1],
    ])
    expect([read.drop.kind, read.keep, read.odd]).toEqual(['voltage', true, 3])
    expect(every({ ...sound, drop: '2 %' }).drop.kind).toBe('ratio')
    expect(every({ ...sound, gears: [3.6, 2.1] }).gears).toHaveLength(2)
  })

  it('say by their paths what is wrong', () => {
    const wrong = { points: [['1 A', '-2 s'], ['2 A'], 4], drop: '2 A', gears: { first: -1 }, odd: 2 }
    expect(refusalOf(() => every(wrong as never)).split('\n')).toEqual([
      'every: 6 inputs cannot be used',
      "  points[0][1]: expected a time at least 0 s, got '-2 s' (Time)",
      "  points[1][1]: expected a time such as '90 s', got nothing",
      '  points[2]: expected a pair [current, time], got 4',
      "  drop: expected a voltage such as '345 V', or a ratio such as '0.95', got '2 A' (the drop)",
      '  gears.first: expected a ratio above 0, got -1 (Ratio)',
      '  odd: expected an odd number, got 2',
    ])
    expect(refusalOf(() => every({ ...sound, points: [] }))).toBe(
      'every: points: expected a list of at least 2 (the points), got an empty list',
    )
  })

  it('lose their defaults where they are only handed on, and the one who uses them tells', () => {
    const { input } = hang
    const read = procedure({
      name: 'sheet',
      title: 'A sheet',
      answers: 'What is on it?',
      input: {
        lamp: input.lamp,
        hook: group(
          'the hook',
          undecided({ made: choice('Of', ['steel', 'brass'], { default: 'steel', because: 'most are' }) }),
        ),
      },
      source: [definition],
      work: (asked) => asked,
    })({ lamp: '1 kg', hook: {} })
    expect(read.hook).toEqual({})
  })

  it('leave alone what else is written in an open group, as where a result is handed on whole', () => {
    const input = { sum: group('What came of it', { total: given('mass', 'Mass in all') }, { open: true }) }
    const show = procedure({
      name: 'show',
      title: 'It',
      answers: 'What?',
      input,
      source: [definition],
      work: (asked) => asked,
    })
    const handed = { sum: { total: '3 kg', checks: [], parts: 2 } } as const
    expect(Object.keys(show(handed).sum)).toEqual(['total'])
    expect(refusalOf(() => show({ sum: { checks: [] } } as never))).toContain('sum.total: expected a mass such as')
  })
})
