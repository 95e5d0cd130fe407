import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cornerLoads, exchangeMasses, tally, weigh } from '../../src/mass/index.js'
import { wheels } from '../../src/mass/weigh.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { said } from '../said.js'

const kg = (value: number) => quantity('mass', value, 'kg')
const m = (value: number) => quantity('length', value, 'm')

const corner = '250 kg' as const
const even = {
  scales: { frontLeft: corner, frontRight: corner, rearLeft: corner, rearRight: corner },
  wheelbase: '2.4 m',
  track: { front: '1.3 m', rear: '1.3 m' },
} as const
const raised = { rise: '0.4 m', front: '515.4945 kg', loadedRadius: '0.28 m' } as const

const anyPart = fc.record({
  mass: between(0.1, 60),
  aft: between(-0.5, 2.5),
  left: between(-0.6, 0.6),
  up: between(0, 1),
})
const partFrom = ({ mass, aft, left, up }: { mass: number; aft: number; left: number; up: number }, name = 'part') => ({
  name,
  mass: kg(mass),
  at: { aft: m(aft), left: m(left), up: m(up) },
})
const anyParts = fc.array(
  anyPart.map((part) => partFrom(part)),
  { maxLength: 5 },
)

describe('exchangeMasses', () => {
  it('shares a load off the centre line by roll stiffness, as worked out by hand', () => {
    // By statics: 1000 kg, even on its wheels, whose centre of gravity is moved 20 mm left by 20 kg moved by 1 m.
    // Each axle carries a difference of 2 W e λ / t between its wheels: 18.46 kg at 0.6, 12.31 kg at 0.4.
    const ballast = (left: '-500 mm' | '500 mm') =>
      ({ name: 'ballast', mass: '20 kg', at: { aft: '1.2 m', left } }) as const
    const { after } = exchangeMasses({
      car: even,
      removed: [ballast('-500 mm')],
      added: [ballast('500 mm')],
      frontRollShare: 0.6,
    })
    expect(after.corners.frontLeft.in('kg')).toBeCloseTo(259.23, 2)
    expect(after.corners.frontRight.in('kg')).toBeCloseTo(240.77, 2)
    expect(after.corners.rearLeft.in('kg')).toBeCloseTo(256.15, 2)
    expect(after.corners.rearRight.in('kg')).toBeCloseTo(243.85, 2)
    expect(after.crossShare.in('%')).toBeCloseTo(49.69, 2)
    expect(after.centreOfGravity.left.in('mm')).toBeCloseTo(20, 9)
  })
  it('leaves the cross weight alone where roll stiffness is shared as the tracks are', () => {
    fc.assert(
      fc.property(anyParts, between(1, 1.5), between(1, 1.5), (added, front, rear) => {
        const car = { ...even, track: { front: m(front), rear: m(rear) } }
        const frontRollShare = front / (front + rear)
        const { after } = exchangeMasses({ car, removed: [], added, frontRollShare })
        expect(after.crossShare.si).toBeCloseTo(0.5, 12)
      }),
    )
  })
  it('balances: the moments of the car change by those of the parts', () => {
    fc.assert(
      fc.property(anyParts, anyParts, between(0, 1), (removed, added, frontRollShare) => {
        const { before, after, change } = exchangeMasses({ car: { ...even, raised }, removed, added, frontRollShare })
        const moment = (direction: 'aft' | 'left' | 'up') => {
          const of = (parts: typeof added) => parts.reduce((sum, { mass, at }) => sum + mass.si * at[direction].si, 0)
          return of(added) - of(removed)
        }
        for (const direction of ['aft', 'left', 'up'] as const) {
          const [one, other] = [before, after].map(
            ({ mass, centreOfGravity }) => mass.si * (centreOfGravity[direction]?.si ?? Number.NaN),
          ) as [number, number]
          expect(other - one).toBeCloseTo(moment(direction), 8)
        }
        const sum = Object.values(after.corners).reduce((total, { si }) => total + si, 0)
        expect(sum).toBeCloseTo(after.mass.si, 9)
        expect(after.mass.si - before.mass.si).toBeCloseTo(change.mass.si, 9)
      }),
    )
  })
  it('is the difference between two bodies on their springs', () => {
    const rates = fc.record({ front: between(12e3, 40e3), rear: between(12e3, 40e3), bar: between(0, 1e4) })
    fc.assert(
      fc.property(
        anyParts,
        rates,
        between(1.1, 1.5),
        between(1.1, 1.5),
        (added, { front, rear, bar }, frontTrack, rearTrack) => {
          const springs = (si: number) => quantity('springRate', si, 'N/m')
          const body = {
            wheelbase: m(2.4),
            track: { front: m(frontTrack), rear: m(rearTrack) },
            rates: {
              frontLeft: springs(front),
              frontRight: springs(front),
              rearLeft: springs(rear),
              rearRight: springs(rear),
            },
            rollBars: { front: quantity('rollRate', bar, 'N·m/rad') },
          }
          const bare = { name: 'car', mass: kg(900), at: { aft: m(1.1), left: m(0.01) } }
          const both = tally([bare, ...added]).centreOfGravity
          const mass = added.reduce((sum, part) => sum.plus(part.mass), bare.mass)
          const wanted = cornerLoads({ ...body, mass, centreOfGravity: both }).corners
          const [frontRoll, rearRoll] = [(front * frontTrack ** 2) / 2 + bar, (rear * rearTrack ** 2) / 2]
          const { after } = exchangeMasses({
            car: {
              scales: cornerLoads({ ...body, mass: bare.mass, centreOfGravity: bare.at }).corners,
              wheelbase: body.wheelbase,
              track: body.track,
            },
            removed: [],
            added,
            frontRollShare: frontRoll / (frontRoll + rearRoll),
          })
          for (const wheel of wheels) expect(after.corners[wheel].si).toBeCloseTo(wanted[wheel].si, 8)
        },
      ),
    )
  })
  it('takes a wheel for unloaded that rounding alone keeps from nothing', () => {
    // Each wheel gives up just what it carries: 0.1 + 0.2 is not 0.3.
    const corner = (mass: '0.3 kg' | '250 kg') => mass
    const scales = {
      frontLeft: corner('0.3 kg'),
      frontRight: corner('0.3 kg'),
      rearLeft: corner('250 kg'),
      rearRight: corner('250 kg'),
    }
    const at = { aft: '0 m', left: '0 m' } as const
    const { after } = exchangeMasses({
      car: { ...even, scales },
      removed: [
        { name: 'one', mass: '0.2 kg', at },
        { name: 'other', mass: '0.4 kg', at },
      ],
      added: [],
    })
    expect(after.corners.frontLeft.si).toBe(0)
    expect(weigh({ ...even, scales: { ...after.corners, frontLeft: '1 kg' } }).mass.si).toBe(501)
  })
  it('holds the car that results to tip no sooner than it slides, and the one before under before', () => {
    // SSF = t / 2h (NHTSA): 1.3 m over twice the height after, which is 0.4 m (1000 kg) and 2 m (500 kg) together.
    const tall = { name: 'tank on the roof', mass: '500 kg', at: { aft: '1.2 m', left: '0 m', up: '2 m' } } as const
    const { before, after, checks } = exchangeMasses({ car: { ...even, raised }, removed: [], added: [tall] })
    const height = (1000 * (before.centreOfGravity.up?.si ?? Number.NaN) + 500 * 2) / 1500
    expect(after.centreOfGravity.up?.si).toBeCloseTo(height, 10)
    expect(before.checks.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Static stability factor', 'pass'],
      ['Load that went to the front', 'pass'],
    ])
    // A height of 0.93 m, and half of the wheelbase, is no car's.
    expect(checks.slice(1).map(({ id }) => id)).toEqual(['exchange.height', 'exchange.heightOverWheelbase'])
    expect(checks[0]).toMatchObject({ name: 'Static stability factor after the exchange', verdict: 'fail' })
    expect(checks[0]?.actual?.si).toBeCloseTo(1.3 / 2 / height, 10)
  })
  it('tells once what of the weighing does not hold, by the paths of its own input', () => {
    const car = {
      scales: { frontLeft: '171 kg', frontRight: '166 kg', rearLeft: '150 kg', rearRight: '153 kg' },
      wheelbase: '4.1 m',
      track: { front: '1.25 m', rear: '1.22 m' },
      raised: { rise: '450 mm', loadedRadius: '300 mm', front: '337.4 kg' },
    } as const
    const { before, checks, notes } = exchangeMasses({ car, removed: [], added: [] })
    const unmet = before.checks.filter(({ verdict }) => verdict === 'fail' || verdict === 'unknown')
    expect(unmet.length).toBeGreaterThan(1)
    const told = checks.filter(({ id }) => id.startsWith('weighing.'))
    expect(told.map(({ id, text, verdict }) => [id, text, verdict])).toEqual(
      unmet.map(({ id, text, verdict }) => [id, text, verdict]),
    )
    for (const { name, paths } of told) {
      expect(name).toMatch(/, as it was weighed$/)
      for (const path of paths) expect(path).toMatch(/^car\.(?:raised|scales|track)$/)
    }
    for (const all of [checks, notes]) expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
    // The wheelbase is told as the field that it is here, not as that of the weighing too.
    expect(notes.map(({ path }) => path).filter((path) => path.endsWith('wheelbase'))).toEqual(['car.wheelbase'])
  })
  it('refuses to take out the whole car', () => {
    const all = { name: 'car', mass: '500 kg', count: 2, at: { aft: '1.2 m', left: '0 m' } } as const
    expect(() => exchangeMasses({ car: even, removed: [all], added: [] })).toThrow(
      'exchangeMasses: nothing is left of the car: it weighs 1000 kg, and 1000 kg are taken out of it. Check the masses ' +
        'and counts in removed against the scales',
    )
  })
  it('comes back to where it was when the exchange is undone', () => {
    fc.assert(
      fc.property(anyParts, anyParts, between(0, 1), (removed, added, frontRollShare) => {
        const { after } = exchangeMasses({ car: even, removed, added, frontRollShare })
        const back = exchangeMasses({
          car: { ...even, scales: after.corners },
          removed: added,
          added: removed,
          frontRollShare,
        })
        for (const mass of Object.values(back.after.corners)) expect(mass.in('kg')).toBeCloseTo(250, 9)
      }),
    )
  })
  it('changes nothing where a part is taken out and put back', () => {
    const part = partFrom({ mass: 40, aft: 0.3, left: -0.2, up: 0.4 })
    const { change } = exchangeMasses({ car: even, removed: [part], added: [part] })
    for (const mass of Object.values(change.corners)) expect(mass.si).toBeCloseTo(0, 12)
    expect(change.frontShare.si).toBeCloseTo(0, 12)
  })
  it('puts a part in the mirror on the other side', () => {
    fc.assert(
      fc.property(anyPart, between(0, 1), (part, frontRollShare) => {
        const put = (left: number) =>
          exchangeMasses({ car: even, removed: [], added: [partFrom({ ...part, left })], frontRollShare }).after.corners
        const [one, other] = [put(part.left), put(-part.left)]
        expect(other.frontLeft.si).toBeCloseTo(one.frontRight.si, 10)
        expect(other.rearRight.si).toBeCloseTo(one.rearLeft.si, 10)
      }),
    )
  })
  it('has what stands before from the same weighing', () => {
    const { before } = exchangeMasses({ car: { ...even, raised }, removed: [], added: [] })
    expect(before).toEqual(weigh({ ...even, raised }))
  })
  it('leaves out a height that cannot be known, and says whose is missing', () => {
    const motor = { name: 'motor', mass: '46 kg', at: { aft: '150 mm', left: '0 mm' } } as const
    const { after, change, assumptions } = exchangeMasses({ car: { ...even, raised }, removed: [], added: [motor] })
    expect(after.centreOfGravity).not.toHaveProperty('up')
    expect(change.centreOfGravity).not.toHaveProperty('up')
    expect(assumptions.map(said)).toContain('The height of the centre of gravity is left out: none is given for motor.')
  })
  it('holds the axles and the whole to their limits', () => {
    const { checks } = exchangeMasses({
      car: even,
      removed: [],
      added: [{ name: 'modules', mass: '24 kg', count: 4, at: { aft: '2.4 m', left: '0 mm' } }],
      limits: { gross: '1200 kg', frontAxle: '510 kg', rearAxle: '590 kg' },
    })
    expect(checks.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Gross mass', 'pass'],
      ['Mass on the front axle', 'near'],
      ['Mass on the rear axle', 'fail'],
    ])
    expect(checks[2]?.margin).toBeCloseTo((590 - 596) / 590, 12)
  })
  it('states the roll share that it took', () => {
    const text =
      "The front axle's share of the roll stiffness: 0.5 (frontRollShare by default; as if both axles resisted roll alike; " +
      'common practice, no source).'
    expect(exchangeMasses({ car: even, removed: [], added: [] }).assumptions.map(said)).toContain(text)
    expect(
      exchangeMasses({ car: even, removed: [], added: [], frontRollShare: 0.5 }).assumptions.map(said),
    ).not.toContain(text)
  })
  it('warns of brakes and papers, and of a part that lies outside the car', () => {
    const away = { name: 'spare wheel', mass: '12 kg', at: { aft: '4 m', left: '-900 mm' } } as const
    const { assumptions, cautions } = exchangeMasses({ car: even, removed: [], added: [away] })
    expect(assumptions.map(said)).toContain(
      'spare wheel was taken as given, 1.6 m behind the rear axle and 900 mm to the right, outside the wheels: is that ' +
        'inside the car?',
    )
    const high = { name: 'roof box', mass: '12 kg', at: { aft: '1 m', left: '0 mm', up: '26 m' } } as const
    expect(exchangeMasses({ car: even, removed: [], added: [high] }).assumptions.map(said)).toContain(
      'roof box was taken as given, 26 m above the ground: is that inside the car?',
    )
    expect(cautions.map(({ hazard }) => hazard)).toEqual([
      'brakes and steering after a change of weight',
      'type approval and inspection',
    ])
  })
  it('refuses to take more from a wheel than it carries', () => {
    const engine = { name: 'engine', mass: '700 kg', at: { aft: '0 m', left: '0 m' } } as const
    expect(() => exchangeMasses({ car: even, removed: [engine], added: [] })).toThrow(
      'exchangeMasses: the front left wheel would carry -100 kg, the front right wheel would carry -100 kg: less than ' +
        'nothing. Check the masses and places of the parts against the scales',
    )
  })
  it('refuses heights that would put the centre of gravity below the ground', () => {
    const roof = { name: 'roof', mass: '400 kg', at: { aft: '1.2 m', left: '0 m', up: '1.5 m' } } as const
    expect(() => exchangeMasses({ car: { ...even, raised }, removed: [roof], added: [] })).toThrow(
      /the centre of gravity would lie -166\.7 mm above the ground/,
    )
  })
  it('refuses a part whose place across the car is unknown, by its path', () => {
    const motor = { name: 'motor', mass: '46 kg', at: { aft: '150 mm' } } as const
    expect(() => exchangeMasses({ car: even, removed: [], added: [motor] })).toThrow(
      "added[0].at.left: expected a length such as '-120 mm', or '0 mm' on the centre line, got nothing (the corner " +
        'masses cannot be worked out without it)',
    )
  })
  it('refuses scales that were not under their wheels, under its own name', () => {
    const scales = { ...even.scales, rearLeft: '0 kg', rearRight: '0 kg' } as const
    expect(() => exchangeMasses({ car: { ...even, scales }, removed: [], added: [] })).toThrow(
      /^exchangeMasses: one input/,
    )
  })
})
