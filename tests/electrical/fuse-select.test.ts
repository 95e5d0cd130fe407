/** A fuse against load, cable and pack: each refusal provoked, and clearing times against arithmetic. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { currentOnCurve } from '../../src/electrical/fuse/curve.js'
import { selectFuse } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'

const task = {
  current: '120 A',
  pack: { maximumVoltage: '201.6 V', openCircuit: '150 V', resistance: '28 mΩ' },
  cable: { ampacity: '190 A', withstand: '9.2 kA²·s', resistance: '2.7 mΩ', inductance: '1.5 µH' },
} as const
/** An invented fuse that serves. */
const fuse = {
  name: 'good',
  class: 'gG',
  rating: '160 A',
  voltage: { dc: '250 V' },
  breakingCapacity: '20 kA',
  curve: [
    ['320 A', '60 s'],
    ['1 kA', '0.4 s'],
    ['2 kA', '20 ms'],
    ['6 kA', '0.1 ms'],
  ],
} as const
const reasonsOf = (given: object, within: object = {}) =>
  selectFuse({ ...task, ...within, candidates: [{ ...fuse, ...given }] } as never).rejected[0]?.reasons

describe('selectFuse', () => {
  it('gives what its documentation shows, as a specification to buy against', () => {
    const { ratingAtLeast, ratingAtMost, preferred, prospective, specification, chosen } = selectFuse(task)
    expect([ratingAtLeast, ratingAtMost, ...preferred].map(String)).toEqual(['150 A', '172.2 A', '160 A'])
    // Twice 201.6 V over 28 mΩ at first; 150 V over six times 28 mΩ and the cable at last.
    expect(String(prospective.highest)).toBe('14400 A')
    expect(String(prospective.lowest)).toBe('878.7 A')
    expect(specification).toBe(
      'A fuse for direct current of at least 201.6 V; rated 150 A to 172.2 A (160 A); breaks 14400 A; lets through at most 9.2 kA²·s; opens at 878.7 A, the least that the nearly empty, cold, aged pack feeds.',
    )
    expect(chosen).toBeUndefined()
  })

  it('takes the continuous load of the NEC at 125 %, and the heat around', () => {
    // NFPA 70 (NEC), 210.20(A): 130 A continuous, 162.5 A.
    expect(selectFuse({ ...task, current: '130 A' }).ratingAtLeast.in('A')).toBeCloseTo(162.5, 9)
    expect(selectFuse({ ...task, current: '90 A', ambientFactor: 0.9 }).ratingAtLeast.in('A')).toBeCloseTo(125, 9)
  })

  it('takes a rating that the load needs to the last digits', () => {
    // 50.4 A over 0.8 comes out above 63 A in binary arithmetic.
    const of = { ...task, current: '50.4 A', cable: { ...task.cable, ampacity: '80 A' } } as const
    expect(selectFuse(of).preferred.map(String)).toEqual(['63 A'])
    expect(reasonsOf({ rating: '63 A' }, of)).toBeUndefined()
  })

  it('works out faults as a course exercise does', () => {
    // 110 cells of 0.5 mΩ, 240 V: 4.364 kA; four such strings in parallel: 17.5 kA (read, the source rounds).
    const of = (resistance: '55 mΩ' | '13.75 mΩ') =>
      selectFuse({
        ...task,
        pack: { maximumVoltage: '240 V', openCircuit: '200 V', resistance, ohmicResistance: resistance },
      }).prospective.highest
    expect(Math.abs(of('55 mΩ').in('kA') / 4.37 - 1)).toBeLessThan(0.003)
    expect(Math.abs(of('13.75 mΩ').in('kA') / 17.5 - 1)).toBeLessThan(0.003)
  })

  it('chooses the least rating that serves, with its clearing times', () => {
    const larger = { ...fuse, name: 'larger', rating: '170 A' } as const
    const { chosen, clearing, checks } = selectFuse({ ...task, candidates: [larger, fuse] })
    expect(chosen?.name).toBe('good')
    // Straight on logarithmic scales from 320 A and 60 s to 1 kA and 0.4 s.
    const lowest = 150 / (6 * 0.028 + 0.0027)
    const expected = 60 * (0.4 / 60) ** (Math.log(lowest / 320) / Math.log(1000 / 320))
    expect(clearing?.lowest.time?.in('s')).toBeCloseTo(expected, 9)
    // Beyond the last point at its joule integral: 3600 A²·s.
    expect(clearing?.highest.time?.in('ms')).toBeCloseTo((3600 / 14400 ** 2) * 1000, 9)
    expect(clearing?.highest.letThrough?.in('A²·s')).toBeCloseTo(3600, 6)
    expect(checks.map(({ verdict }) => verdict)).not.toContain('fail')
  })

  it('counts a clearing integral that is greater than that of the curve', () => {
    // 3600 A²·s by the curve, which tells nothing of arcing at such currents.
    const { clearing } = selectFuse({ ...task, candidates: [{ ...fuse, clearingIntegral: '8 kA²·s' }] })
    expect(clearing?.highest.letThrough?.in('kA²·s')).toBeCloseTo(8, 9)
    expect(reasonsOf({ clearingIntegral: '9.5 kA²·s' })?.[0]).toBe(
      'the fuse lets through 9.5 kA²·s in the greatest fault, more than the 9.2 kA²·s that the cable withstands',
    )
  })

  it('takes the melting integral where there is no curve, and asks for the curve where that says nothing', () => {
    const stated = { ...fuse, curve: undefined, meltingIntegral: '5000 A²·s', clearingIntegral: '12000 A²·s' } as const
    const { chosen, clearing } = selectFuse({ ...task, candidates: [stated] } as never)
    expect(chosen?.name).toBe('good')
    expect(clearing?.highest.time?.in('ms')).toBeCloseTo((5000 / 14400 ** 2) * 1000, 9)
    expect(clearing?.highest.letThrough?.in('A²·s')).toBeCloseTo(12000, 6)
    expect(clearing?.lowest.time?.in('ms')).toBeCloseTo((5000 / (150 / 0.1707) ** 2) * 1000, 9)
    // 9 kA²·s would last 11.7 ms at the least fault: longer than a melting integral holds.
    expect(reasonsOf({ ...stated, meltingIntegral: '9000 A²·s' })).toEqual([
      'how long the fuse takes at 878.7 A, the least fault, is not known: give its curve',
    ])
  })

  it.each([
    [
      { voltage: { ac: '500 V' } },
      'the fuse has no voltage rating for direct current, and 500 V AC says nothing of it',
    ],
    [{ voltage: {} }, 'the fuse has no voltage rating for direct current'],
    [{ voltage: { dc: '58 V', ac: '500 V' } }, 'the fuse is rated 58 V DC, less than the 201.6 V of the full pack'],
    [{ rating: '125 A' }, 'the fuse is rated 125 A, less than the 150 A that the load needs'],
    [{ rating: '200 A' }, 'the fuse is rated 200 A, more than the 172.2 A at which it protects the cable'],
    [
      { breakingCapacity: '2 kA' },
      'the fuse breaks 2 kA, less than the 14400 A that the full pack feeds in the first milliseconds',
    ],
    [
      {
        curve: [
          ['2 kA', '1 s'],
          ['4 kA', '1 ms'],
        ],
      },
      'the fuse may not open at 878.7 A, all that the nearly empty, cold, aged pack feeds',
    ],
  ])('refuses a fuse with %j', (given, reason) => {
    expect(reasonsOf(given)).toEqual([reason])
  })

  it('asks for what the data of a fuse do not tell', () => {
    expect(reasonsOf({ curve: undefined })).toEqual([
      'what the fuse lets through is not known: give its clearingIntegral or its curve',
      'how long the fuse takes at 878.7 A, the least fault, is not known: give its curve',
    ])
  })

  it('asks for the least breaking current of a partial range once', () => {
    const overload = { by: 'contactor', current: '200 A', time: '1 s', breaks: '900 A' } as const
    expect(reasonsOf({ class: 'aR', rating: '200 A' }, { overload })).toEqual([
      'from what current on the fuse breaks is not known: give its leastBreakingCurrent. Up to there the contactor must open',
    ])
  })

  it('refuses a fuse that lets through more than the cable withstands, in the greatest or in the least fault', () => {
    const thin = { cable: { ...task.cable, withstand: '0.4 kA²·s' } }
    // 878.7 A for 0.706 s on the curve: 0.545 kA²·s; at its point of 1 kA exactly 0.4 kA²·s.
    const time = 60 * (0.4 / 60) ** (Math.log(150 / 0.1707 / 320) / Math.log(1000 / 320))
    expect(((150 / 0.1707) ** 2 * time) / 1e6).toBeCloseTo(0.5453, 4)
    expect(reasonsOf({}, thin)).toEqual([
      'the fuse lets through 0.5453 kA²·s in 0.7062 s at 878.7 A, more than the 0.4 kA²·s that the cable withstands',
    ])
    expect(
      reasonsOf({ curve: undefined, meltingIntegral: '5000 A²·s', clearingIntegral: '0.45 kA²·s' }, thin)?.[0],
    ).toBe('the fuse lets through 0.45 kA²·s in the greatest fault, more than the 0.4 kA²·s that the cable withstands')
  })

  it('refuses a fuse that lets through too much between the two faults', () => {
    // 1.44 kA²·s at 2.4 kA; 0.19 and 0.36 kA²·s at the two faults.
    const curve = [
      ['320 A', '60 s'],
      ['800 A', '0.25 s'],
      ['2.4 kA', '0.25 s'],
      ['6 kA', '10 ms'],
    ] as const
    const thin = { cable: { ...task.cable, withstand: '1.2 kA²·s' } }
    expect(reasonsOf({ curve }, thin)).toEqual([
      'the fuse lets through 1.44 kA²·s in 0.25 s at 2400 A, more than the 1.2 kA²·s that the cable withstands',
    ])
    expect(reasonsOf({ curve })).toBeUndefined()
  })

  it('holds each stretch of the load to what melts the fuse in its time, however the load is cut', () => {
    const curve = [
      ['200 A', '1000 s'],
      ['300 A', '100 s'],
      ['400 A', '50 s'],
      ['6 kA', '1 ms'],
    ] as const
    const long = { ...fuse, curve, class: 'gG' } as const
    const of = (...profile: readonly (readonly [string, string])[]) =>
      selectFuse({ ...task, current: '60 A', cycles: 1000, profile, candidates: [long] } as never).rejected[0]?.reasons
    // 400 A for 10 s and 300 A for 5 s: 369.7 A in 15 s. The curve melts between 50 s at 400 A and 1 ms at 6 kA.
    const melts = 400 * (6000 / 400) ** (Math.log(15 / 50) / Math.log(0.001 / 50))
    const borne = Math.sqrt(0.38) * melts
    const reason = `369.7 A for 15 s of the load, 1000 times, is more than the ${borne.toFixed(1)} A that the fuse bears so often`
    expect(of(['300 A', '5 s'], ['50 A', '2000 s'], ['-400 A', '10 s'])).toEqual([reason])
    expect(of(['400 A', '4 s'], ['400 A', '6 s'], ['300 A', '5 s'], ['50 A', '2000 s'])).toEqual([reason])
    const { specification } = selectFuse({
      ...task,
      current: '60 A',
      profile: [
        ['300 A', '5 s'],
        ['50 A', '2000 s'],
        ['-400 A', '10 s'],
      ],
    })
    expect(specification).toContain('bears 369.7 A for 15 s of the load')
  })

  it('gives all reasons at once', () => {
    expect(reasonsOf({ voltage: { ac: '500 V' }, rating: '63 A', breakingCapacity: '1 kA' })).toHaveLength(3)
  })

  it('tells the reasons of ten of many candidates, first of those of which only data is missing', () => {
    const many = Array.from(
      { length: 500 },
      (_, i) => ({ ...fuse, name: `no ${i}`, voltage: { ac: '500 V' } }) as const,
    )
    const { checks, rejected } = selectFuse({ ...task, candidates: [...many, { ...fuse, curve: undefined }] } as never)
    expect(rejected).toHaveLength(501)
    const told = checks.find(({ id }) => id === 'fuse.candidates')?.text
    expect(told).toMatch(
      /^no candidate is known to serve: good \(what the fuse lets through is not known.*, and 491 more$/,
    )
  })

  it('refuses a fuse that is too small for the mean of a long log without a look at its stretches', () => {
    // 150 A for half of the time: 106 A in the mean.
    const profile = Array.from({ length: 20_000 }, (_, i) => [i % 2 === 0 ? '150 A' : '0 A', '10 ms'])
    const of = { ...task, current: '1 A', profile, cable: { ...task.cable, ampacity: '150 A' } }
    const started = performance.now()
    expect(reasonsOf({ rating: '100 A' }, of)).toEqual([
      'the fuse is rated 100 A, less than the 132.6 A that the load needs',
    ])
    expect(performance.now() - started).toBeLessThan(5000)
  })

  it('says when the nearly empty, cold pack may not blow the fuse', () => {
    const weak = {
      ...task,
      pack: { maximumVoltage: '201.6 V', openCircuit: '150 V', resistance: '300 mΩ', ageing: 1 },
    } as const
    const { checks, cautions, prospective } = selectFuse(weak)
    expect(String(prospective.lowest)).toBe('166.2 A')
    expect(checks.find(({ name }) => name === 'Least fault current')?.verdict).toBe('fail')
    expect(cautions.at(-1)?.text).toBe(
      'Nearly empty, cold and aged, the pack feeds a short circuit with 166.2 A only, which may never blow a fuse of 150 A. Split the pack with a fuse of its own for each part, or have its monitor open the contactors on that current.',
    )
    expect(
      selectFuse(task)
        .cautions.map(({ text }) => text)
        .join(),
    ).not.toContain('never blow')
  })

  it('says when load and cable leave no rating between them', () => {
    const { specification, checks } = selectFuse({ ...task, cable: { ...task.cable, ampacity: '130 A' } })
    expect(specification).toContain(
      'no rating serves: the load needs at least 150 A, and the cable bears at most 117.8 A',
    )
    expect(checks[0]?.verdict).toBe('fail')
    expect(selectFuse({ ...task, cable: { ...task.cable, ampacity: '170 A' } }).specification).toContain(
      'rated 150 A to 154.1 A, between which IEC 60269-1 has no rating (but there is 150 A of the family UL, NFPA 70 (NEC), 240.6(A); 150 A of the family bolt-down, ISO 8820-5 (from memory))',
    )
  })

  it('never asks less of a fuse for more load, a fuller pack or less resistance', () => {
    const size = fc.double({ min: 1, max: 500, noNaN: true })
    fc.assert(
      fc.property(size, size, (one, other) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)]
        const of = (amperes: number) => selectFuse({ ...task, current: quantity('current', amperes, 'A') })
        expect(of(high).ratingAtLeast.si).toBeGreaterThanOrEqual(of(low).ratingAtLeast.si)
        const at = (milliohms: number) =>
          selectFuse({ ...task, pack: { ...task.pack, resistance: quantity('resistance', milliohms, 'mΩ') } })
            .prospective
        expect(at(low).highest.si).toBeGreaterThanOrEqual(at(high).highest.si)
        expect(at(low).lowest.si).toBeLessThan(at(low).highest.si)
      }),
    )
  })

  it('refuses integrals that are exchanged', () => {
    const exchanged = { ...fuse, meltingIntegral: '9 kA²·s', clearingIntegral: '5 kA²·s' } as const
    expect(() => selectFuse({ ...task, candidates: [exchanged] })).toThrow(
      'candidates[0].clearingIntegral: expected at least the melting integral, 9 kA²·s, got 5 kA²·s (a fuse clears after it has melted)',
    )
  })

  it('shows its working, candidate by candidate', () => {
    const text = explain(() =>
      selectFuse({ ...task, candidates: [{ ...fuse, name: 'wall', voltage: { ac: '500 V' } }] }),
    ).toText()
    expect(text).toContain('Ip = U / (Rs + Rl) = 150 V / (168 mΩ + 2.7 mΩ) = 879 A   [by definition]')
    expect(text).toContain(
      'wall: refused, the fuse has no voltage rating for direct current, and 500 V AC says nothing of it',
    )
  })

  it('opens, where its curve lies level, from the lesser current on', () => {
    const point = (amperes: number, seconds: number) =>
      [quantity('current', `${amperes} A`), quantity('time', `${seconds} s`)] as const
    const level = [point(200, 100), point(300, 5), point(400, 5), point(800, 0.1)]
    expect([100, 5, 0.1].map((seconds) => currentOnCurve(level, seconds))).toEqual([200, 300, 800])
    expect(currentOnCurve(level, 100.1)).toBeUndefined()
    // Beyond the last point at one joule integral: 800² · 0.1 = 1600² · 0.025.
    expect(currentOnCurve(level, 0.025)).toBeCloseTo(1600, 9)
    expect(currentOnCurve(level.slice(1, 3), 5)).toBe(300)
  })

  it('refuses a pack and a curve that contradict themselves, all at once', () => {
    const curve = [
      ['2 kA', '1 s'],
      ['1 kA', '2 s'],
    ] as const
    expect(() =>
      selectFuse({
        ...task,
        pack: { ...task.pack, openCircuit: '210 V', coldResistance: '20 mΩ' },
        candidates: [{ ...fuse, curve }],
      }),
    ).toThrow(
      [
        'selectFuse: 4 inputs cannot be used',
        '  pack.openCircuit: expected at most the voltage of the full pack, 201.6 V, got 210 V',
        '  pack.coldResistance: expected at least the resistance of the warm pack, 28 mΩ, got 20 mΩ',
        '  candidates[0].curve[1][0]: expected more than the current before it, 2 kA, got 1 kA',
        '  candidates[0].curve[1][1]: expected at most the time before it, 1 s, got 2 s',
      ].join('\n'),
    )
  })
})
