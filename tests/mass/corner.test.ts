import fc from 'fast-check'
import { all, create } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { cornerLoads, crossWeightTrim } from '../../src/mass/index.js'
import { cornersOf } from '../../src/mass/weigh.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'

const math = create(all ?? {})
const kg = (value: number) => quantity('mass', value, 'kg')
const m = (value: number) => quantity('length', value, 'm')
const rate = (value: number) => quantity('springRate', value, 'N/m')
const bar = (value: number) => quantity('rollRate', value, 'N·m/rad')

const g0 = 9.80665
const wheels = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const
const four = <const T>(values: readonly [T, T, T, T]) =>
  ({ frontLeft: values[0], frontRight: values[1], rearLeft: values[2], rearRight: values[3] }) as const
/** One of something for each wheel, from its SI numbers. */
const each = <T>([frontLeft, frontRight, rearLeft, rearRight]: Four, make: (si: number) => T) =>
  four([make(frontLeft), make(frontRight), make(rearLeft), make(rearRight)])
type Four = readonly [number, number, number, number]

const anyBody = fc.record({
  mass: between(500, 2000),
  aft: between(0.3, 0.7),
  left: between(-0.03, 0.03),
  wheelbase: between(1.8, 3),
  front: between(1, 1.6),
  rear: between(1, 1.6),
  rates: fc.tuple(between(12e3, 40e3), between(12e3, 40e3), between(12e3, 40e3), between(12e3, 40e3)),
  bars: fc.tuple(between(0, 2e4), between(0, 2e4)),
  seats: fc.tuple(between(-0.01, 0.01), between(-0.01, 0.01), between(-0.01, 0.01), between(-0.01, 0.01)),
})
type Body = typeof anyBody extends fc.Arbitrary<infer T> ? T : never

const givenOf = ({ mass, aft, left, wheelbase, front, rear, rates, bars, seats }: Body) => ({
  mass: kg(mass),
  centreOfGravity: { aft: m(aft * wheelbase), left: m(left) },
  wheelbase: m(wheelbase),
  track: { front: m(front), rear: m(rear) },
  rates: each(rates, rate),
  rollBars: { front: bar(bars[0]), rear: bar(bars[1]) },
  preload: each(seats, m),
})

/**
 * The same body by three equations of equilibrium in the rise of the body at the origin, its roll and its pitch, solved by
 * elimination: springs and bars as a stiffness matrix.
 */
function byEquilibrium({ mass, aft, left, wheelbase, front, rear, rates, bars, seats }: Body) {
  const places = [
    [0, front / 2],
    [0, -front / 2],
    [wheelbase, rear / 2],
    [wheelbase, -rear / 2],
  ] as const
  // A point at (x aft, y left) rises by z + θ x + φ y.
  const shapes = places.map(([x, y]) => [1, x, y])
  const stiffness = [0, 1, 2].map((row) =>
    [0, 1, 2].map((column) => {
      const springs = shapes.reduce(
        (sum, shape, i) => sum + (rates[i] ?? 0) * (shape[row] ?? 0) * (shape[column] ?? 0),
        0,
      )
      return springs + (row === 2 && column === 2 ? bars[0] + bars[1] : 0)
    }),
  )
  const load = [1, aft * wheelbase, left].map(
    (arm, row) =>
      shapes.reduce((sum, shape, i) => sum + (rates[i] ?? 0) * (seats[i] ?? 0) * (shape[row] ?? 0), 0) -
      mass * g0 * arm,
  )
  const [z, theta, phi] = (math.lusolve(stiffness, load) as unknown as [[number], [number], [number]]).map(
    ([value]) => value,
  ) as [number, number, number]
  const forces = places.map(([x, y], i) => {
    const spring = (rates[i] ?? 0) * ((seats[i] ?? 0) - (z + theta * x + phi * y))
    const [stiff, track] = i < 2 ? [bars[0], front] : [bars[1], rear]
    return spring - Math.sign(y) * ((stiff * phi) / track)
  })
  return { forces, phi, theta, heave: z + theta * aft * wheelbase + phi * left }
}

describe('cornerLoads', () => {
  it('agrees with the three equations of equilibrium, solved by elimination', () => {
    fc.assert(
      fc.property(anyBody, (body) => {
        const wanted = byEquilibrium(body)
        fc.pre(wanted.forces.every((force) => force > 0))
        const { corners, heave, roll, pitch } = cornerLoads(givenOf(body))
        for (const [i, wheel] of wheels.entries()) {
          expect(corners[wheel].si * g0).toBeCloseTo(wanted.forces[i] ?? Number.NaN, 6)
        }
        expect(heave.si).toBeCloseTo(wanted.heave, 10)
        expect(roll.si).toBeCloseTo(wanted.phi, 10)
        expect(pitch.si).toBeCloseTo(wanted.theta, 10)
      }),
    )
  })
  it('shares a load off the centre line as worked out by hand where the axles are alike on both sides', () => {
    // By statics: 1000 kg, 20 mm left, tracks of 1.3 m, 60 % of the roll stiffness in front: 2 W e λ / t across an axle.
    const { corners } = cornerLoads({
      mass: '1000 kg',
      centreOfGravity: { aft: '1.2 m', left: '20 mm' },
      wheelbase: '2.4 m',
      track: { front: '1.3 m', rear: '1.3 m' },
      rates: four(['30 N/mm', '30 N/mm', '20 N/mm', '20 N/mm']),
    })
    expect(wheels.map((wheel) => Number(corners[wheel].in('kg').toFixed(2)))).toEqual([259.23, 240.77, 256.15, 243.85])
    const cross = (corners.frontRight.si + corners.rearLeft.si) / 1000
    expect(cross * 100).toBeCloseTo(49.69, 2)
  })
  it('has an anti-roll bar take the part of springs of that roll rate', () => {
    // The 30 and 20 N/mm above as 20 N/mm all round with a bar of the missing 10 N/mm · (1.3 m)² / 2.
    const { corners } = cornerLoads({
      mass: '1000 kg',
      centreOfGravity: { aft: '1.2 m', left: '20 mm' },
      wheelbase: '2.4 m',
      track: { front: '1.3 m', rear: '1.3 m' },
      rates: four(['20 N/mm', '20 N/mm', '20 N/mm', '20 N/mm']),
      rollBars: { front: '8450 N·m/rad' },
    })
    expect(corners.frontLeft.in('kg')).toBeCloseTo(259.23, 2)
    expect(corners.rearLeft.in('kg')).toBeCloseTo(256.15, 2)
  })
  it('spreads a shim under one spring seat over the four wheels', () => {
    // By statics: 4 mm at one of four wheel rates of 25 N/mm adds 4 mm / (4 / 25 N/mm) = 25 N along the diagonal.
    const { corners } = cornerLoads({
      mass: '1000 kg',
      centreOfGravity: { aft: '1.2 m', left: '0 mm' },
      wheelbase: '2.4 m',
      track: { front: '1.3 m', rear: '1.3 m' },
      rates: four(['25 N/mm', '25 N/mm', '25 N/mm', '25 N/mm']),
      preload: { frontLeft: '4 mm' },
    })
    const newtons = wheels.map((wheel) => (corners[wheel].in('kg') - 250) * g0)
    for (const [i, wanted] of [25, -25, -25, 25].entries()) expect(newtons[i]).toBeCloseTo(wanted, 8)
  })
  it('adds up to the mass, and its moments to those of the mass', () => {
    fc.assert(
      fc.property(anyBody, (body) => {
        fc.pre(byEquilibrium(body).forces.every((force) => force > 0))
        const { corners } = cornerLoads(givenOf(body))
        const { frontLeft, frontRight, rearLeft, rearRight } = corners
        expect(frontLeft.si + frontRight.si + rearLeft.si + rearRight.si).toBeCloseTo(body.mass, 8)
        expect(rearLeft.si + rearRight.si).toBeCloseTo(body.mass * body.aft, 8)
        const sideways =
          ((frontLeft.si - frontRight.si) * body.front) / 2 + ((rearLeft.si - rearRight.si) * body.rear) / 2
        expect(sideways).toBeCloseTo(body.mass * body.left, 8)
      }),
    )
  })
  it('doubts an angle that no car on its springs takes', () => {
    const body = {
      mass: '650 kg',
      centreOfGravity: { aft: '1 m', left: '0 mm' },
      wheelbase: '2 m',
      track: { front: '1.2 m', rear: '1.2 m' },
      rates: four(['20 N/mm', '20 N/mm', '20 N/mm', '20 N/mm']),
    } as const
    expect(cornerLoads(body).checks.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Roll of the body', 'pass'],
      ['Pitch of the body', 'pass'],
    ])
    // The seats of the left side raised by 0.3 m roll the body by 0.3 m / 1.2 m, 14.3 °.
    const { roll, checks } = cornerLoads({ ...body, preload: { frontLeft: '300 mm', rearLeft: '300 mm' } })
    expect(roll.si).toBeCloseTo(0.25, 10)
    expect(checks[0]).toMatchObject({ verdict: 'fail', sense: 'at most' })
    // Rates of 1 N/mm sag by 1.6 m, one of 0.5 N/mm in front by another 1.6 m.
    const soft = cornerLoads({ ...body, rates: four(['0.5 N/mm', '0.5 N/mm', '1 N/mm', '1 N/mm']) })
    expect(soft.checks[1]?.verdict).toBe('fail')
  })
  it('takes a wheel for unloaded that rounding alone keeps from nothing', () => {
    // By statics: a mass over the line of the left wheels, half-way between alike axles, is on those wheels alone.
    fc.assert(
      fc.property(between(300, 1500), between(1.8, 3), between(1, 1.6), between(1e4, 4e4), (mass, base, track, k) => {
        const { corners } = cornerLoads({
          mass: kg(mass),
          centreOfGravity: { aft: m(base / 2), left: m(track / 2) },
          wheelbase: m(base),
          track: { front: m(track), rear: m(track) },
          rates: each([k, k, k, k], rate),
        })
        expect([corners.frontRight.si, corners.rearRight.si]).toEqual([0, 0])
      }),
    )
  })
  it('needs to know where the mass sits across the car', () => {
    const { centreOfGravity, ...rest } = givenOf({
      mass: 1000,
      aft: 0.5,
      left: 0,
      wheelbase: 2.4,
      front: 1.3,
      rear: 1.3,
      rates: [2e4, 2e4, 2e4, 2e4],
      bars: [0, 0],
      seats: [0, 0, 0, 0],
    })
    expect(() => cornerLoads({ ...rest, centreOfGravity: { aft: centreOfGravity.aft } })).toThrow(
      "centreOfGravity.left: expected a length such as '-20 mm', or '0 mm' on the centre line, got nothing",
    )
    expect(() => cornerLoads({ ...rest, centreOfGravity: { aft: '2.5 m', left: '0 m' } })).toThrow(
      'cornerLoads: the front axle would carry -41.67 kg: it hangs clear, and the others carry it all',
    )
    expect(() => cornerLoads({ ...rest, centreOfGravity, preload: { frontLeft: '600 mm' } })).toThrow(
      /the front right wheel would carry -.* kg: it hangs clear/,
    )
  })
})

describe('crossWeightTrim', () => {
  it('brings the cross weight to its target and leaves the body where it was, on a body of four springs', () => {
    fc.assert(
      fc.property(anyBody, between(0.48, 0.52), (body, target) => {
        fc.pre(byEquilibrium(body).forces.every((force) => force > 200))
        const given = givenOf(body)
        const before = cornerLoads(given)
        const { seats, corners } = crossWeightTrim({
          scales: before.corners,
          wheelRates: given.rates,
          track: given.track,
          target,
        })
        const preload = cornersOf((wheel) => given.preload[wheel].plus(seats[wheel]))
        const after = cornerLoads({ ...given, preload })
        const cross = (after.corners.frontRight.si + after.corners.rearLeft.si) / body.mass
        expect(cross).toBeCloseTo(target, 10)
        for (const wheel of wheels) expect(after.corners[wheel].si).toBeCloseTo(corners[wheel].si, 7)
        expect(after.heave.si).toBeCloseTo(before.heave.si, 10)
        expect(after.roll.si).toBeCloseTo(before.roll.si, 10)
        expect(after.pitch.si).toBeCloseTo(before.pitch.si, 10)
      }),
    )
  })
  it('leaves a car alone whose cross weight is right', () => {
    const scales = four(['250 kg', '250 kg', '200 kg', '200 kg'])
    const wheelRates = four(['20 N/mm', '20 N/mm', '22 N/mm', '22 N/mm'])
    const { seats } = crossWeightTrim({ scales, wheelRates, track: { front: '1.3 m', rear: '1.2 m' } })
    expect(wheels.map((wheel) => seats[wheel].si)).toEqual([0, 0, 0, 0])
  })
  it('undoes a shim under one spring seat', () => {
    // 25 N per wheel on four rates of 25 N/mm, as above: 1 mm at each wheel.
    const newtons = quantity('mass', 25 / g0, 'kg')
    const [more, less] = [quantity('mass', '250 kg').plus(newtons), quantity('mass', '250 kg').minus(newtons)]
    const { seats, crossShare } = crossWeightTrim({
      scales: four([more, less, less, more]),
      wheelRates: four(['25 N/mm', '25 N/mm', '25 N/mm', '25 N/mm']),
      track: { front: '1.3 m', rear: '1.3 m' },
    })
    for (const [i, wanted] of [-1, 1, 1, -1].entries()) {
      expect(seats[wheels[i] as (typeof wheels)[number]].in('mm')).toBeCloseTo(wanted, 10)
    }
    expect(crossShare.after.si).toBeCloseTo(0.5, 12)
  })
  it('refuses a target that would lift a wheel, and scales that show nothing', () => {
    const wheelRates = four(['20 N/mm', '20 N/mm', '22 N/mm', '22 N/mm'])
    const track = { front: '1.3 m', rear: '1.3 m' } as const
    const scales = four(['250 kg', '250 kg', '250 kg', '250 kg'])
    expect(() => crossWeightTrim({ scales, wheelRates, track, target: '101 %' })).toThrow(
      "target: expected a ratio above 0 and below 1, got '101 %'",
    )
    expect(() => crossWeightTrim({ scales: { ...scales, rearLeft: '20 kg' }, wheelRates, track, target: 0.1 })).toThrow(
      'crossWeightTrim: a cross weight of 0.1 would lift the rear left wheel: it would carry -76.5 kg',
    )
    expect(() => crossWeightTrim({ scales: four(['0 kg', '0 kg', '0 kg', '0 kg']), wheelRates, track })).toThrow(
      /scales\.frontLeft and frontRight: expected some load on the front wheels/,
    )
  })
})
