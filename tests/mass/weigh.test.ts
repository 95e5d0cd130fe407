import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain, propagate } from '../../src/formula/index.js'
import { type Corners, weigh } from '../../src/mass/index.js'
import { type Given, type Quantity, quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { said } from '../said.js'

const kg = (value: number) => quantity('mass', value, 'kg')
const m = (value: number) => quantity('length', value, 'm')

const car = {
  scales: { frontLeft: '182 kg', frontRight: '174 kg', rearLeft: '161 kg', rearRight: '165 kg' },
  wheelbase: '2030 mm',
  track: { front: '1220 mm', rear: '1190 mm' },
} as const
const raised = { rise: '420 mm', front: '372 kg', loadedRadius: '262 mm' } as const

/** Scale readings of any car, with its tracks. */
const anyCar = fc
  .record({
    masses: fc.tuple(between(1, 800), between(1, 800), between(1, 800), between(1, 800)),
    wheelbase: between(1.5, 3.5),
    front: between(0.9, 1.8),
    rear: between(0.9, 1.8),
  })
  .map(({ masses: [frontLeft, frontRight, rearLeft, rearRight], wheelbase, front, rear }) => ({
    scales: { frontLeft: kg(frontLeft), frontRight: kg(frontRight), rearLeft: kg(rearLeft), rearRight: kg(rearRight) },
    wheelbase: m(wheelbase),
    track: { front: m(front), rear: m(rear) },
  }))

const sumOf = (corners: Corners<Quantity<'mass'>>) => Object.values(corners).reduce((sum, { si }) => sum + si, 0)

describe('weigh', () => {
  it('gives the cross weight of a published set of corner weights', () => {
    // Course exercise (wheel loads and diagonal sums read): 694, 606, 670 and 585 lb, 1276 of 2555 on the diagonal.
    const scales = { frontLeft: '694 lb', frontRight: '606 lb', rearLeft: '670 lb', rearRight: '585 lb' } as const
    const stance = weigh({ ...car, scales })
    expect(stance.mass.in('lb')).toBeCloseTo(2555, 9)
    expect(stance.crossShare.in('%')).toBeCloseTo(49.94, 2)
  })
  it('finds the centre of gravity of a published car', () => {
    // Jazar, Vehicle Dynamics (2008), example 40 (read): 2000 N on each front wheel, 1800 N on each rear one, 2.34 m.
    const scales = { frontLeft: '2000 kg', frontRight: '2000 kg', rearLeft: '1800 kg', rearRight: '1800 kg' } as const
    const { centreOfGravity } = weigh({ ...car, scales, wheelbase: '2.34 m' })
    expect(centreOfGravity.aft.in('m')).toBeCloseTo(1.1084, 4)
    expect(centreOfGravity.left.si).toBe(0)
    expect(centreOfGravity).not.toHaveProperty('up')
  })
  it('finds the height from a raised axle, with the tangent and above the wheel centres', () => {
    // ISO 10392 (formula read in an open textbook, numbers worked out by hand): 1000 kg, 15.4945 kg moved at 0.4 m.
    const { centreOfGravity } = weigh({
      scales: { frontLeft: '250 kg', frontRight: '250 kg', rearLeft: '250 kg', rearRight: '250 kg' },
      wheelbase: '2.4 m',
      track: { front: '1.3 m', rear: '1.3 m' },
      raised: { rise: '0.4 m', front: '515.4945 kg', loadedRadius: '0.28 m' },
    })
    expect(centreOfGravity.up?.in('m')).toBeCloseTo(0.5, 4)
  })
  it('takes the raised front reading as a sum or wheel by wheel', () => {
    const { front, ...rest } = raised
    const apart = weigh({ ...car, raised: { ...rest, frontLeft: '190 kg', frontRight: '182 kg' } })
    expect(apart.centreOfGravity).toEqual(weigh({ ...car, raised: { ...rest, front } }).centreOfGravity)
  })
  it('adds up: corners to axles, axles to the mass, moments about every line to nothing', () => {
    fc.assert(
      fc.property(anyCar, (given) => {
        const { mass, corners, frontMass, rearMass, centreOfGravity, ...shares } = weigh(given)
        expect(sumOf(corners) / mass.si).toBeCloseTo(1, 12)
        expect(frontMass.si + rearMass.si).toBe(mass.si)
        expect(shares.frontShare.si).toBeCloseTo(frontMass.si / mass.si, 12)
        expect(mass.si * centreOfGravity.aft.si).toBeCloseTo(rearMass.si * given.wheelbase.si, 9)
        const frontMoment = ((corners.frontLeft.si - corners.frontRight.si) * given.track.front.si) / 2
        const rearMoment = ((corners.rearLeft.si - corners.rearRight.si) * given.track.rear.si) / 2
        expect(mass.si * centreOfGravity.left.si).toBeCloseTo(frontMoment + rearMoment, 9)
      }),
    )
  })
  it('sees a car in the mirror as the same car, mirrored', () => {
    fc.assert(
      fc.property(anyCar, (given) => {
        const { frontLeft, frontRight, rearLeft, rearRight } = given.scales
        const scales = { frontLeft: frontRight, frontRight: frontLeft, rearLeft: rearRight, rearRight: rearLeft }
        const [one, other] = [weigh(given), weigh({ ...given, scales })]
        expect(other.centreOfGravity.aft.si).toBe(one.centreOfGravity.aft.si)
        expect(other.centreOfGravity.left.si).toBeCloseTo(-one.centreOfGravity.left.si, 12)
        expect(other.leftShare.si).toBeCloseTo(1 - one.leftShare.si, 12)
        expect(other.crossShare.si).toBeCloseTo(1 - one.crossShare.si, 12)
      }),
    )
  })
  it('shows its working', () => {
    const text = explain(() => weigh({ ...car, raised })).toText()
    expect(text).toContain('theta = asin(H / L) = asin(420 mm / 2030 mm) = 11.9 °   [ISO 10392]')
    expect(text).toContain('On level ground')
    expect(text).toContain('X = (m_fr + m_rl) / m = (174 kg + 161 kg) / 682 kg = 49.1 %')
  })
  it('lets the uncertainty of a scale through: a kilogram moves the height by more than a centimetre', () => {
    // m g h: dh = L dm / (m tan θ), 2.4 m · 1 kg / (1000 kg · 0.169) = 14.2 mm.
    const corner = '250 kg' as const
    const height = (given: { front: Given<'mass'> }) =>
      weigh({
        scales: { frontLeft: corner, frontRight: corner, rearLeft: corner, rearRight: corner },
        wheelbase: '2.4 m',
        track: { front: '1.3 m', rear: '1.3 m' },
        raised: { rise: '0.4 m', front: given.front, loadedRadius: '0.28 m' },
      }).centreOfGravity.up as Quantity<'length'>
    const { standardUncertainty } = propagate(height, { front: ['515.4945 kg', '1 kg'] })
    expect(standardUncertainty.in('mm')).toBeCloseTo(14.2, 1)
  })
  it('says what was taken for granted and what can hurt', () => {
    const result = weigh({ ...car, raised })
    expect(result.cautions.map(({ hazard }) => hazard)).toEqual(['lifting and running cars'])
    expect(result.assumptions.map(said).join(' ')).toContain('the suspension was locked')
    expect(weigh(car).cautions).toEqual([])
  })
  it('holds the static stability factor to 1, below which a reading is likely to be wrong', () => {
    const [check] = weigh({ ...car, raised: { ...raised, front: '400 kg' } }).checks
    expect(check).toMatchObject({ name: 'Static stability factor', verdict: 'fail', sense: 'at least' })
    expect(weigh({ ...car, raised }).checks[0]?.verdict).toBe('pass')
  })
})

describe('weigh refuses', () => {
  const refusal = (given: unknown) => {
    try {
      weigh(given as never)
    } catch (error) {
      return (error as Error).message.split('\n')[1]?.trim()
    }
    return 'nothing was refused'
  }
  it.each([
    [
      'an axle that was not raised',
      { ...car, raised: { ...raised, rise: '0 mm' } },
      "raised.rise: expected a length above 0 m, got '0 mm' (Height by which the rear wheel centres were raised)",
    ],
    [
      'an axle raised by more than the wheelbase',
      { ...car, raised: { ...raised, rise: '2.1 m' } },
      'raised.rise: expected a length below the wheelbase, 2030 mm, got 2.1 m (the height, not the angle)',
    ],
    [
      'a front axle that reads less with the rear raised',
      { ...car, raised: { ...raised, front: '341 kg' } },
      'raised.front: expected at least the 356 kg that the front wheels carry on level ground, got 341 kg (raising the ' +
        'rear moves load to the front: readings swapped, a wheel slipped or bound, or the front raised instead?)',
    ],
    [
      'a front axle that reads more than the car',
      { ...car, raised: { ...raised, front: '700 kg' } },
      'raised.front: expected at most the mass of the car, 682 kg, got 700 kg',
    ],
    [
      'one front wheel of the raised car',
      { ...car, raised: { rise: '420 mm', loadedRadius: '262 mm', frontLeft: '190 kg' } },
      "raised: expected the front reading once: front such as '371 kg', or frontLeft and frontRight, got frontLeft",
    ],
    [
      'two answers to one question',
      { ...car, raised: { ...raised, frontLeft: '190 kg', frontRight: '182 kg' } },
      "raised: expected the front reading once: front such as '371 kg', or frontLeft and frontRight, got front and " +
        'frontLeft and frontRight',
    ],
    [
      'a wheel that weighs less than nothing',
      { ...car, scales: { ...car.scales, rearLeft: '-2 kg' } },
      "scales.rearLeft: expected a mass at least 0 kg, got '-2 kg' (Mass on the rear left wheel)",
    ],
    [
      'an axle without load',
      { ...car, scales: { ...car.scales, rearLeft: '0 kg', rearRight: '0 kg' } },
      "scales.rearLeft and rearRight: expected some load on the rear wheels, such as '160 kg' on each, got 0 kg and " +
        '0 kg (were these scales on, and under their wheels?)',
    ],
    [
      'a force where a mass belongs',
      { ...car, scales: { ...car.scales, rearLeft: '1600 N' } },
      "scales.rearLeft: expected a mass such as '24 kg', got '1600 N' (N measures a force)",
    ],
    [
      'a misspelt field',
      { ...car, wheelBase: '2 m' },
      "wheelBase: expected no such field; there are scales, wheelbase, track, raised, got '2 m' (did you mean wheelbase?)",
    ],
  ])('%s', (_, given, message) => expect(refusal(given)).toBe(message))

  it('fits the height through several risings, as the load rises with the tangent of the angle', () => {
    // A car of 600 kg, 2 m, centre at 0.5 m and wheel centres at 0.27 m: m (h - r) tan(angle) / L goes to the front.
    const moved = (rise: number) => (600 * (0.5 - 0.27) * Math.tan(Math.asin(rise / 2))) / 2
    const even = { frontLeft: '150 kg', frontRight: '150 kg', rearLeft: '150 kg', rearRight: '150 kg' } as const
    const kilograms = (value: number) => quantity('mass', value, 'kg')
    const of = (errors: readonly [number, number, number]) =>
      weigh({
        scales: even,
        wheelbase: '2 m',
        track: { front: '1.2 m', rear: '1.2 m' },
        raised: {
          rise: '0.3 m',
          loadedRadius: '0.27 m',
          front: kilograms(300 + moved(0.3) + errors[0]),
          others: [
            ['0.45 m', kilograms(300 + moved(0.45) + errors[1])],
            ['0.6 m', kilograms(300 + moved(0.6) + errors[2])],
          ],
        },
      })
    expect(of([0, 0, 0]).centreOfGravity.up?.si).toBeCloseTo(0.5, 10)
    // Least squares of load over tangent, written out.
    const tangents = [0.3, 0.45, 0.6].map((rise) => Math.tan(Math.asin(rise / 2)))
    const errors = [0.4, -0.3, 0.2] as const
    const loads = [0.3, 0.45, 0.6].map((rise, i) => moved(rise) + (errors[i] as number))
    const slope =
      loads.reduce((sum, load, i) => sum + load * (tangents[i] as number), 0) /
      tangents.reduce((sum, tangent) => sum + tangent ** 2, 0)
    expect(of(errors).centreOfGravity.up?.si).toBeCloseTo(0.27 + (slope * 2) / 600, 10)
  })
  it('tells how far a kilogram moves the height', () => {
    // Wheelbase over mass and tangent: 2 m / (600 kg * tan(asin(0.4 / 2))) = 16.33 mm for each kilogram.
    const even = { frontLeft: '150 kg', frontRight: '150 kg', rearLeft: '150 kg', rearRight: '150 kg' } as const
    const car = { scales: even, wheelbase: '2 m', track: { front: '1.2 m', rear: '1.2 m' } } as const
    const of = (front: '315 kg' | '316 kg') =>
      weigh({ ...car, raised: { rise: '0.4 m', loadedRadius: '0.27 m', front } })
    const moves = (of('316 kg').centreOfGravity.up?.si ?? 0) - (of('315 kg').centreOfGravity.up?.si ?? 0)
    expect(of('315 kg').heightPerKilogram?.si).toBeCloseTo(moves, 10)
    expect(of('315 kg').heightPerKilogram?.in('mm')).toBeCloseTo(2000 / 600 / Math.tan(Math.asin(0.2)), 9)
  })
})
