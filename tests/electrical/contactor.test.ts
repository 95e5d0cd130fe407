/** Contactors: what their categories prove, and how they work with a fuse. All parts are invented. */
import { describe, expect, it } from 'vitest'
import { contactorCategories, selectContactor } from '../../src/electrical/index.js'
import type { Written } from '../../src/procedure/field.js'
import { quantity } from '../../src/quantity/index.js'

describe('utilisation categories of IEC 60947-4-1, as a manual lists them', () => {
  it.each([
    ['DC-1', 1.5, 1],
    ['DC-3', 4, 2.5],
    ['DC-5', 4, 15],
    ['DC-6', 1.5, undefined],
  ] as const)('%s makes and breaks %f times its rating, at %f ms', (category, multiple, milliseconds) => {
    const { multiple: proved, timeConstant } = contactorCategories[category]
    expect(proved.si).toBe(multiple)
    expect(timeConstant?.in('ms')).toBe(milliseconds)
  })

  it('tell that 250 A of DC-1 prove 375 A', () => {
    expect(quantity('current', '250 A').times(contactorCategories['DC-1'].multiple.si).in('A')).toBe(375)
  })
})

/** A contactor that withstands 4 kA for 10 ms beside a fuse of one joule integral. */
const beside = (clearingIntegral: `${number} A²·s`) =>
  selectContactor({
    voltage: '400 V',
    current: '100 A',
    backwards: '0 A',
    precharge: { residualVoltage: '2.68 V', loopResistance: '28 mΩ' },
    fault: {
      highest: '12 kA',
      lowest: '9 kA',
      cutOff: '4 kA',
      fuse: {
        rating: '160 A',
        voltage: { dc: '500 V' },
        breakingCapacity: '50 kA',
        meltingIntegral: '40000 A²·s',
        clearingIntegral,
      },
    },
    trip: { current: '600 A', time: '1 s' },
    candidates: [
      {
        carry: '200 A',
        make: '1000 A',
        breaks: [{ voltage: '450 V', current: '800 A', times: 100 }],
        polarised: false,
        shortTime: [['4 kA', '10 ms']],
        peak: '6 kA',
      },
    ],
  } satisfies Written<typeof selectContactor.input>)

describe('a contactor beside a fuse', () => {
  it('withstands 160 000 A²s by 4 kA for 10 ms: 90 000 pass, 250 000 do not', () => {
    expect(beside('90000 A²·s').chosen?.name).toBe('contactor of 200 A')
    const { chosen, rejected } = beside('250000 A²·s')
    expect(chosen).toBeUndefined()
    expect(rejected[0]?.reasons).toEqual([
      '0.25 kA²·s go through the contactor at 9 kA, more than the 0.16 kA²·s that it withstands',
    ])
  })

  it('closes on 0.67 % of 400 V behind 28 mΩ with 95.7 A', () => {
    expect(beside('90000 A²·s').inrush?.in('A')).toBeCloseTo(95.7, 1)
  })
})

describe('the input of a contactor', () => {
  const asked = {
    voltage: '200 V',
    current: '50 A',
    backwards: '0 A',
    candidates: [{ carry: '80 A' }],
  } as const

  it.each([
    [
      'a category without what it holds for',
      { candidates: [{ carry: '80 A', category: 'DC-1' }] },
      /candidates\[0\]\.operational: expected what DC-1 holds for/,
    ],
    [
      'a short-time current below what it carries all day',
      { candidates: [{ carry: '80 A', shortTime: [['60 A', '10 s']] }] },
      /candidates\[0\]\.shortTime\[0\]\[0\]: expected at least what it carries all day, 80 A, got 60 A/,
    ],
    [
      'short times in no order',
      {
        candidates: [
          {
            carry: '80 A',
            shortTime: [
              ['400 A', '1 s'],
              ['200 A', '9 s'],
            ],
          },
        ],
      },
      /candidates\[0\]\.shortTime\[1\]\[0\]: expected more than the current before it, 400 A, got 200 A/,
    ],
    [
      'currents backwards of one that is not polarised',
      { candidates: [{ carry: '80 A', breaksBackwards: [{ voltage: '200 V', current: '9 A', times: 1 }] }] },
      /candidates\[0\]\.polarised: expected true/,
    ],
    [
      'a category that there is not',
      { candidates: [{ carry: '80 A', category: 'DC-2', operational: { voltage: '9 V', current: '9 A' } }] },
      /candidates\[0\]\.category: expected 'DC-1', 'DC-3' or 'DC-5'/,
    ],
    [
      'a least fault above the greatest',
      { fault: { highest: '1 kA', lowest: '2 kA' } },
      /fault\.lowest: expected at most the greatest, 1 kA, got 2 kA/,
    ],
    ['nothing that tells what flows back', { backwards: undefined }, /backwards: expected a current/],
  ])('is refused: %s', (_, patch, message) => {
    expect(() => selectContactor({ ...asked, ...patch } as never)).toThrow(message)
  })
})
