/** The car on its road: the two forms of its road load, what its turning parts add, what its wheels hold. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { roadLoadFromCoefficients, topSpeed, tractionCurves } from '../../src/drivetrain/index.js'
import { airOf } from '../../src/drivetrain/road/air.js'
import { carOnRoad, gripOf, inertiaOf } from '../../src/drivetrain/road/car.js'
import { airField, type Car, carField, type Vehicle } from '../../src/drivetrain/vehicle.js'
import { readField } from '../../src/procedure/reading.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { said } from '../said.js'
import { car, gearbox, motor, drive as whole } from './sheet.js'

type Given = NonNullable<Vehicle['car']>
const read = (given: Given) => readField('test', carField, given) as Car
const air = (given: Vehicle['air']) => airOf(readField('test', airField, given) as Parameters<typeof airOf>[0])
const onRoad = (given: Given) => carOnRoad('test', read(given))

describe('what a procedure makes of a car', () => {
  const drive = { motor, gearbox } as const
  it('takes a negative linear coefficient whose whole is still a resistance', () => {
    // 150 N, −1.5 N and 0.05 N for each km/h and its square: 170 N at 40 km/h, 690 N at 120 km/h.
    // Measured in the air that is taken for granted, 20 °C at sea level.
    const airDensity = quantity('density', 101_325 / (287.05287 * 293.15), 'kg/m³')
    const roadLoad = { constant: '150 N', linear: '-5.4 N/(m/s)', quadratic: '0.648 N/(m/s)²', airDensity } as const
    const at = { ...drive, car: { mass: '760 kg', tyre: car.tyre, roadLoad }, grades: [0] } as const
    for (const [speed, force] of [
      ['40 km/h', 170],
      ['120 km/h', 690],
    ] as const) {
      const { roadLoads } = tractionCurves({ ...at, speeds: [speed] })
      expect(roadLoads[0]?.points[0]?.force.si).toBeCloseTo(force, 9)
    }
  })
  it('refuses a centre of gravity from which the car tips, by its path', () => {
    const tall = { ...car, centreOfGravity: { aft: '1.9 m', up: '1.8 m' }, friction: 1.2 } as const
    expect(() => topSpeed({ ...drive, car: tall })).toThrow(
      'topSpeed: one input cannot be used\n  car.centreOfGravity: expected a place between the axles, and low enough',
    )
  })
  it('lays no more than 201 points along a curve, however large the wheel', () => {
    const { curves } = tractionCurves({
      ...drive,
      car: { ...car, tyre: undefined, rollingRadius: '280 m' },
    })
    expect(Math.max(...curves.map(({ points }) => points.length))).toBeLessThanOrEqual(201)
  })
})

describe('the air', () => {
  it('unless given is still, of 20 °C, at sea level', () => {
    const { density, headwind } = air(undefined)
    // 101 325 / (287.05287 · 293.15), the dry air of CIPM-2007 but for its compressibility.
    expect(density.in('kg/m³')).toBeCloseTo(1.2041, 4)
    expect(headwind.si).toBe(0)
    const told = topSpeed(whole).assumptions.filter(({ path }) => path?.startsWith('air.'))
    expect(told.map(({ path, value }) => `${path} ${value}`)).toEqual([
      'air.temperature 20 °C',
      'air.altitude 0 m',
      'air.headwind 0 km/h',
    ])
  })
  it('is denser in the cold', () => {
    const { density } = air({ temperature: '-7 °C' })
    expect(density.ratioTo(air(undefined).density)).toBeCloseTo(293.15 / 266.15, 12)
  })
})

describe('the car on its road', () => {
  it('is resisted as a course exercise has it', () => {
    // 600 kg, drag area 0.72 m², 1.2 kg/m³, coefficient 0.015, a slope of 8° (read): 213.33 N, 87.43 N, 819.17 N.
    const { resistance } = onRoad({ mass: '600 kg', rollingResistance: 0.015, dragArea: '0.72 m²' })
    const grade = Math.tan((8 * Math.PI) / 180)
    expect(resistance.air(80 / 3.6, 1.2, 0)).toBeCloseTo(213.33, 2)
    // The exercise takes 9.81 m/s².
    expect((resistance.tyres(0, grade) * 9.81) / 9.80665).toBeCloseTo(87.43, 2)
    expect((resistance.hill(grade) * 9.81) / 9.80665).toBeCloseTo(819.17, 1)
  })

  it('is the same car by the coefficients of its coast-down, in the air of that day on the level', () => {
    fc.assert(
      fc.property(
        between(400, 2000),
        between(0, 300),
        between(-2, 5),
        between(0, 1),
        between(0.9, 1.4),
        between(0, 60),
        (mass, f0, f1, f2, rho, v) => {
          // What pushes the car at some speed is refused.
          fc.pre(f1 >= 0 || (f2 > 0 && f1 ** 2 < 4 * f0 * f2 * 0.999))
          const roadLoad = {
            constant: quantity('force', f0, 'N'),
            linear: quantity('forcePerSpeed', f1, 'N/(m/s)'),
            quadratic: quantity('forcePerSpeedSquared', f2, 'N/(m/s)²'),
          }
          const airDensity = quantity('density', rho, 'kg/m³')
          const { resistance } = onRoad({
            mass: quantity('mass', mass, 'kg'),
            roadLoad: { ...roadLoad, airDensity },
          })
          const expected = roadLoadFromCoefficients({ ...roadLoad, speed: quantity('speed', v, 'm/s') })
          expect(resistance.total(v, 0, rho, 0)).toBeCloseTo(expected.si, 9)
        },
      ),
    )
  })

  it('by its coefficients feels denser air and a head wind', () => {
    const roadLoad = { constant: '90 N', linear: '0 N/(m/s)', quadratic: '0.4 N/(m/s)²' } as const
    const { resistance } = onRoad({ mass: '800 kg', roadLoad })
    const { assumptions } = topSpeed({ ...whole, car: { mass: '800 kg', tyre: car.tyre, roadLoad } })
    // Dry air of 20 °C at 101.325 kPa, by the gas law.
    const density = 101_325 / (287.05287 * 293.15)
    expect(density).toBeCloseTo(1.2041, 4)
    expect(resistance.air(20, density, 0)).toBeCloseTo(160, 9)
    expect(resistance.air(15, 2 * density, 5)).toBeCloseTo(320, 9)
    expect(assumptions.map(said)).toContain(
      'Density of the air to which they belong: 1.204 kg/m³ (car.roadLoad.airDensity by default; that of a drive of which nothing is told, dry air of 20 °C at 101.325 kPa: then nothing is corrected).',
    )
  })

  it('refuses a road load in no form, in half of one, and in both', () => {
    const wanted =
      "car: expected rollingResistance and dragArea, such as 0.012 and '0.6 m²', or roadLoad from a coast-down"
    const roadLoad = { constant: '90 N', linear: '0 N/(m/s)', quadratic: '0.4 N/(m/s)²' } as const
    expect(() => onRoad({ mass: '800 kg' })).toThrow(`${wanted}, got none of them`)
    expect(() => onRoad({ mass: '800 kg', dragArea: '0.6 m²' })).toThrow(`${wanted}, got dragArea`)
    expect(() => onRoad({ mass: '800 kg', dragArea: '0.6 m²', roadLoad })).toThrow(
      `${wanted}, got dragArea and roadLoad`,
    )
  })
})

describe('the inertia of a car', () => {
  const radius = quantity('length', '0.2876 m')
  // A course car (inputs read, factors recomputed): 1145 kg, motor 0.09 kg·m², gearbox by gear, final drive 0.1356 behind
  // 3.944, wheels 4 · 1.24. Its gearbox is here reckoned to the motor shaft, its final drive from its input to the wheels.
  it.each([
    [3.78, 0.1469, 1.631],
    [2.12, 0.1017, 1.216],
    [1.46, 0.0791, 1.134],
    [1.03, 0.0565, 1.1],
    [0.84, 0.0339, 1.089],
  ])('in a gear of %d is that of a course car', (gear, box, factor) => {
    const wheels = quantity('inertia', 4 * 1.24 + 0.1356 * 3.944 ** 2, 'kg·m²')
    const described = read({ ...car, mass: '1145 kg', rotatingFactor: undefined, wheelInertia: wheels } as never)
    const { massAt } = inertiaOf('test', described, radius, quantity('inertia', 0.09 + box, 'kg·m²'))
    expect(massAt(gear * 3.944) / 1145).toBeCloseTo(factor, 3)
  })
  it('by a factor is the same in every gear, and refuses to count a part twice', () => {
    const { massAt } = inertiaOf('test', read(car), undefined, undefined)
    expect(massAt(16)).toBeCloseTo(1.05 * 760, 9)
    expect(massAt(undefined)).toBeCloseTo(1.05 * 760, 9)
    expect(() => inertiaOf('test', read(car), radius, quantity('inertia', '0.05 kg·m²'))).toThrow(
      'car.rotatingFactor and motor.inertia: expected one of them, such as car.rotatingFactor: 1.05, got both (the factor holds the motor already)',
    )
    expect(() => onRoad({ ...car, wheelInertia: '3 kg·m²' })).toThrow(
      'car.rotatingFactor and car.wheelInertia: expected one of them',
    )
  })
  it('unless given is that of the mass and of four wheels, and says so', () => {
    const { rotatingFactor: _, ...plain } = car
    const { massAt, assumptions } = inertiaOf('test', read(plain), undefined, undefined)
    expect(massAt(16)).toBeCloseTo(760 * 1.03, 9)
    expect(assumptions.map(said)).toEqual([
      'Turning parts add 3 % to the mass (car.rotatingFactor 1.03 by default; four wheels: UN Regulation No. 154, from memory).',
    ])
  })
})

describe('the grip of a car', () => {
  const friction = quantity('ratio', 0.8)
  it('of one braked axle is as published, and less in driving than in braking in front', () => {
    // A car of a course: brakes on one axle alone hold 0.5227 (front) and 0.3108 (rear) of its weight (recomputed).
    const course = { mass: '1145 kg', wheelbase: '2.532 m', centreOfGravity: { aft: '1.139 m', up: '0.5 m' } } as const
    for (const [drivenAxle, share] of [
      ['front', 0.5227],
      ['rear', 0.3108],
    ] as const) {
      const grip = gripOf('test', read({ ...car, ...course, drivenAxle }), friction)
      expect(grip.braking(0) / (1145 * 9.80665)).toBeCloseTo(share, 4)
      expect(grip.driving(0) < grip.braking(0)).toBe(drivenAxle === 'front')
      expect(grip.driving(0.2) / grip.driving(0)).toBeCloseTo(Math.cos(Math.atan(0.2)), 12)
    }
  })
  it('names all that it misses', () => {
    const bare = { mass: '800 kg', rollingResistance: 0.012, dragArea: '0.6 m²' } as const
    expect(() => gripOf('test', read(bare), friction)).toThrow(
      [
        'test: 3 inputs cannot be used',
        "  car.wheelbase: expected a length such as '2.1 m', for the grip, got nothing",
        "  car.centreOfGravity: expected its place such as { aft: '1 m', up: '0.5 m' }, for the grip, got nothing",
        "  car.drivenAxle: expected 'front' or 'rear', for the grip, got nothing",
      ].join('\n'),
    )
    expect(() => gripOf('test', read({ ...car, centreOfGravity: { aft: '1 m' } }), friction)).toThrow(
      "car.centreOfGravity.up: expected a length such as '0.5 m', for the grip, got nothing",
    )
  })
  it('refuses a centre of gravity behind the rear axle', () => {
    expect(() => onRoad({ ...car, centreOfGravity: { aft: '2.5 m' } })).toThrow(
      'car.centreOfGravity.aft: expected a length of at most the wheelbase, 2.03 m, got 2.5 m',
    )
  })
})
