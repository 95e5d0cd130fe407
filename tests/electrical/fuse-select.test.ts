/** A fuse against load, cable and pack: each refusal provoked, and clearing times against arithmetic. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { selectFuse } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { said } from '../said.js'

const task = {
  current: '120 A',
  pack: { maximumVoltage: '201.6 V', openCircuit: '150 V', resistance: '28 mΩ' },
  cable: { ampacity: '190 A', withstand: '9.2 kA²·s', resistance: '2.7 mΩ' },
} as const
/** An invented fuse that serves. */
const fuse = {
  name: 'good',
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
    expect(String(prospective.highest)).toBe('7200 A')
    expect(String(prospective.lowest)).toBe('1730 A')
    expect(specification).toBe(
      'A fuse for direct current of at least 201.6 V; rated 150 A to 172.2 A (160 A); breaks 7200 A; lets through at most 9.2 kA²·s; opens at 1730 A, the least that the nearly empty, cold pack feeds.',
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
    expect(selectFuse({ ...of, candidates: [{ ...fuse, rating: '63 A' }] }).chosen?.name).toBe('good')
  })

  it('works out faults as a course exercise does', () => {
    // 110 cells of 0.5 mΩ, 240 V: 4.364 kA; four such strings in parallel: 17.5 kA (read, the source rounds).
    const of = (resistance: '55 mΩ' | '13.75 mΩ') =>
      selectFuse({ ...task, pack: { maximumVoltage: '240 V', openCircuit: '200 V', resistance } }).prospective.highest
    expect(Math.abs(of('55 mΩ').in('kA') / 4.37 - 1)).toBeLessThan(0.003)
    expect(Math.abs(of('13.75 mΩ').in('kA') / 17.5 - 1)).toBeLessThan(0.003)
  })

  it('chooses the least rating that serves, with its clearing times', () => {
    const larger = { ...fuse, name: 'larger', rating: '170 A' } as const
    const { chosen, clearing, checks } = selectFuse({ ...task, candidates: [larger, fuse] })
    expect(chosen?.name).toBe('good')
    // Straight on logarithmic scales from 1 kA and 0.4 s to 2 kA and 20 ms.
    const lowest = 150 / 0.0867
    const expected = 0.4 * (0.02 / 0.4) ** (Math.log(lowest / 1000) / Math.log(2))
    expect(clearing?.lowest.time?.in('s')).toBeCloseTo(expected, 9)
    // Beyond the last point at its joule integral: 3600 A²·s.
    expect(clearing?.highest.time?.in('ms')).toBeCloseTo((3600 / 7200 ** 2) * 1000, 9)
    expect(clearing?.highest.letThrough?.in('A²·s')).toBeCloseTo(3600, 6)
    expect(checks.map(({ verdict }) => verdict)).not.toContain('fail')
  })

  it('counts a clearing integral that is greater than that of the curve', () => {
    // 3600 A²·s by the curve, which tells nothing of arcing at such currents.
    const { clearing } = selectFuse({ ...task, candidates: [{ ...fuse, clearingIntegral: '8 kA²·s' }] })
    expect(clearing?.highest.letThrough?.in('kA²·s')).toBeCloseTo(8, 9)
    expect(reasonsOf({ clearingIntegral: '9.5 kA²·s' })?.[0]).toBe(
      'lets through 9.5 kA²·s, more than the 9.2 kA²·s that the cable withstands',
    )
  })

  it('takes the melting integral where there is no curve, and says what it does not know', () => {
    const stated = { ...fuse, curve: undefined, meltingIntegral: '5000 A²·s', clearingIntegral: '12000 A²·s' } as const
    const { chosen, clearing, assumptions } = selectFuse({ ...task, candidates: [stated] } as never)
    expect(chosen?.name).toBe('good')
    expect(clearing?.highest.time?.in('ms')).toBeCloseTo((5000 / 7200 ** 2) * 1000, 9)
    expect(clearing?.highest.letThrough?.in('A²·s')).toBeCloseTo(12000, 6)
    expect(clearing?.lowest.time?.in('ms')).toBeCloseTo((5000 / (150 / 0.0867) ** 2) * 1000, 9)
    const slow = { ...stated, meltingIntegral: '60000 A²·s', clearingIntegral: '90000 A²·s' } as const
    const unknown = selectFuse({ ...task, candidates: [slow] } as never)
    expect(unknown.clearing?.lowest.time).toBeUndefined()
    expect(unknown.assumptions.map(said).join()).toContain('How long the fuse takes in the least fault is not known')
    expect(assumptions.map(said).join()).not.toContain('is not known')
  })

  it.each([
    [{ voltage: { ac: '500 V' } }, 'has no voltage rating for direct current, and 500 V AC says nothing of it'],
    [{ voltage: {} }, 'has no voltage rating for direct current'],
    [{ voltage: { dc: '58 V', ac: '500 V' } }, 'is rated 58 V DC, less than the 201.6 V of the full pack'],
    [{ rating: '125 A' }, 'is rated 125 A, less than the 150 A that the load needs'],
    [{ rating: '200 A' }, 'is rated 200 A, more than the 172.2 A at which it protects the cable'],
    [{ breakingCapacity: '2 kA' }, 'breaks 2 kA, less than the 7200 A that the full pack feeds'],
    [{ curve: undefined }, 'what it lets through is not known: give its clearing integral or its curve'],
    [
      {
        curve: [
          ['2 kA', '1 s'],
          ['4 kA', '1 ms'],
        ],
      },
      'may not open at 1730 A, all that the nearly empty, cold pack feeds',
    ],
  ])('refuses a fuse with %j', (given, reason) => {
    expect(reasonsOf(given)).toEqual([reason])
  })

  it('refuses a fuse that lets through more than the cable withstands, in the greatest or in the least fault', () => {
    const thin = { cable: { ...task.cable, withstand: '100000 A²·s' } }
    // 1730 A for 37.42 ms on the curve: 112 000 A²·s.
    expect(reasonsOf({}, thin)).toEqual([
      'lets through 0.112 kA²·s in 37.42 ms at 1730 A, more than the 100000 A²·s that the cable withstands',
    ])
    expect(
      reasonsOf({ curve: undefined, meltingIntegral: '5000 A²·s', clearingIntegral: '0.15 kA²·s' }, thin)?.[0],
    ).toBe('lets through 0.15 kA²·s, more than the 100000 A²·s that the cable withstands')
  })

  it('refuses a fuse that lets through too much between the two faults', () => {
    // 1.44 kA²·s at 2.4 kA, 0.39 and 0.36 kA²·s at the two faults.
    const curve = [
      ['320 A', '60 s'],
      ['1.7 kA', '0.13 s'],
      ['2.4 kA', '0.25 s'],
      ['6 kA', '10 ms'],
    ] as const
    const falling = curve.map(([current, time], i) => [current, i === 1 ? '0.25 s' : time] as const)
    const thin = { cable: { ...task.cable, withstand: '1.2 kA²·s' } }
    expect(reasonsOf({ curve: falling }, thin)).toEqual([
      'lets through 1.44 kA²·s at 2.4 kA, more than the 1.2 kA²·s that the cable withstands',
    ])
    expect(reasonsOf({ curve: falling })).toBeUndefined()
  })

  it('takes peaks together that follow each other, also over the end of the profile', () => {
    const profile = [
      ['300 A', '5 s'],
      ['50 A', '100 s'],
      ['-400 A', '10 s'],
    ] as const
    expect(selectFuse({ ...task, profile }).specification).toContain('bears the 15 s of up to 400 A of the load')
    const curve = [
      ['200 A', '1000 s'],
      ['300 A', '100 s'],
      ['400 A', '50 s'],
      ['6 kA', '1 ms'],
    ] as const
    // 5 s of 100 s and 10 s of 50 s: a quarter.
    expect(selectFuse({ ...task, profile, candidates: [{ ...fuse, curve }] }).rejected[0]?.reasons[0]).toBe(
      'uses up 25 % of the time until it opens in the 15 s of up to 400 A of the load, more than the 22 % that it bears again and again',
    )
  })

  it('says of what the data do not tell what to ask', () => {
    const { assumptions } = selectFuse({ ...task, candidates: [fuse] })
    expect(assumptions.map(said).join('\n')).toContain('a partial-range (a) fuse does so only from the least current')
    expect(assumptions.map(said).join('\n')).toContain('let the breaking capacity lie well above the greatest fault')
    expect(assumptions.map(said).join('\n')).toContain(
      'where its maker draws the time until it melts, arcing comes on top',
    )
  })

  it('gives all reasons at once', () => {
    expect(reasonsOf({ voltage: { ac: '500 V' }, rating: '63 A', breakingCapacity: '1 kA' })).toHaveLength(3)
  })

  it('says when the nearly empty, cold pack may not blow the fuse', () => {
    const weak = { ...task, pack: { maximumVoltage: '201.6 V', openCircuit: '150 V', resistance: '300 mΩ' } } as const
    const { checks, cautions, prospective } = selectFuse(weak)
    expect(String(prospective.lowest)).toBe('166.2 A')
    expect(checks.find(({ name }) => name === 'Least fault current')?.verdict).toBe('fail')
    expect(cautions.at(-1)?.text).toBe(
      'Nearly empty and cold, the pack feeds a short circuit with 166.2 A only, which may never blow a fuse of 150 A. Split the pack with a fuse of its own for each part, or have its monitor open the contactors on that current.',
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
      'rated 150 A to 154.1 A, between which IEC 60269-1 has no rating',
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
    expect(text).toContain('Ip = U / (Rs + Rl) = 150 V / (84 mΩ + 2.7 mΩ) = 1730 A   [by definition]')
    expect(text).toContain('wall: refused, has no voltage rating for direct current, and 500 V AC says nothing of it')
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
        '  candidates[0].curve[1][0]: expected a current above 2000 A, got 1000 A',
        '  candidates[0].curve[1][1]: expected a time of at most 1 s, got 2 s',
      ]
        .join('\n')
        .replace('2000 A', '2 kA')
        .replace('1000 A', '1 kA'),
    )
  })
})
