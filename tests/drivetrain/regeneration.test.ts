/** How hard the motor may brake: against the grip of one axle, the pack's own figures, and the rule for stop lamps. */
import { describe, expect, it } from 'vitest'
import { brakingLimitRear, type RegenPoint, regenLimit } from '../../src/drivetrain/index.js'
import { packAt } from '../../src/electrical/index.js'
import { quantity } from '../../src/quantity/index.js'
import { car, drive, gearbox, module, motor, pack } from './sheet.js'

const third = { ...drive, gearbox: { ...gearbox, gears: { third: 1.45 } } } as const
const radius = (3.05 * (0.3302 + 2 * 0.145 * 0.8)) / (2 * Math.PI)
const only = (points: readonly RegenPoint[]) => points[0] as RegenPoint

describe('regenLimit', () => {
  it('brakes at the wheels by more than the motor takes up, and feeds what motor and driveline leave', () => {
    const { force, power, deceleration, limitedBy } = only(regenLimit({ ...third, speeds: ['30 km/h'] }).points)
    const v = 30 / 3.6
    expect(limitedBy).toBe('peak torque of the motor')
    expect(force.si).toBeCloseTo((120 * 1.45 * 4.375) / (0.94 * radius), 8)
    expect(power.si).toBeCloseTo(force.si * v * 0.94 * 0.88, 6)
    const density = 101_325 / (287.05287 * 293.15)
    const road = 760 * 9.80665 * 0.013 + 0.5 * density * 0.7 * v ** 2
    expect(deceleration.si).toBeCloseTo((force.si + road) / (760 * 1.05), 9)
  })

  it('is told every 5 km/h up to where the motor turns fastest, where no speeds are given', () => {
    const { points } = regenLimit(third)
    // 8000 rpm at a radius of 276.9 mm through 1.45 · 4.375.
    const fastest = ((8000 / 60) * 2 * Math.PI * radius) / (1.45 * 4.375)
    expect(points.map(({ speed }) => Math.round(speed.in('km/h')))).toEqual(
      Array.from({ length: Math.floor((fastest * 3.6) / 5) }, (_, i) => 5 * (i + 1)),
    )
    expect(points[9]).toEqual(only(regenLimit({ ...third, speeds: ['50 km/h'] }).points))
  })

  it('is held by the charge current of the pack, as packAt tells it', () => {
    for (const stateOfCharge of [0.9, 0.5]) {
      const limit = regenLimit({ ...third, pack, speeds: ['60 km/h'], stateOfCharge })
      const { power, limitedBy } = only(limit.points)
      expect(limit.stateOfCharge?.si).toBe(stateOfCharge)
      const { charge } = packAt({ pack, stateOfCharge, current: '0 A' }).most
      expect(limitedBy).toBe(charge?.limitedBy)
      expect(power.si).toBeCloseTo(charge?.power.si as number, 6)
    }
  })

  it('puts next to nothing into a full pack, and nothing into cells that are too cold', () => {
    const [full, half] = [1, 0.5].map((stateOfCharge) =>
      only(regenLimit({ ...third, pack, speeds: ['60 km/h'], stateOfCharge }).points),
    )
    expect(full?.limitedBy).toBe('highest voltage of the modules')
    expect(full?.power.si).toBeLessThan((half?.power.si as number) / 2)
    const temperatures = {
      charge: { minimum: '0 °C', maximum: '45 °C' },
      discharge: { minimum: '-20 °C', maximum: '60 °C' },
    } as const
    const cold = regenLimit({
      ...third,
      pack: { ...pack, module: { ...module, temperatures } },
      cellTemperature: '-5 °C',
      speeds: ['60 km/h'],
      stateOfCharge: 0.5,
    })
    expect(only(cold.points).limitedBy).toBe('temperature of the cells, too cold for charge')
    expect(only(cold.points).force.si).toBe(0)
  })

  it('counts what slows the turning parts, which asks no grip of the road', () => {
    // Motor and wheels in third: far more than nothing turns with the car.
    const turning = {
      ...third,
      car: { ...third.car, rotatingFactor: undefined, wheelInertia: '2 kg·m²', friction: 0.5 },
    } as const
    const at = (torque: number) =>
      only(
        regenLimit({
          ...turning,
          motor: {
            ...third.motor,
            inertia: '0.05 kg·m²',
            continuousTorque: undefined,
            peakTorque: quantity('torque', torque, 'N·m'),
          },
          speeds: ['20 km/h'],
        } as never).points,
      )
    // From the motor to the grip as its limit there is no jump.
    let before = at(20)
    const held = new Set<string>()
    for (let torque = 21; torque <= 200; torque++) {
      const now = at(torque)
      held.add(now.limitedBy)
      expect(now.deceleration.si - before.deceleration.si).toBeLessThan(0.1)
      expect(now.deceleration.si - before.deceleration.si).toBeGreaterThan(-1e-9)
      before = now
    }
    expect(held).toContain('grip of the driven wheels')
    expect(held.size).toBe(2)
  })

  it('refuses a speed at which the motor would turn too fast in every gear', () => {
    expect(() => regenLimit({ ...third, speeds: ['50 km/h', '400 km/h'] })).toThrow(
      /speeds\[1\]: expected a speed at which the motor may turn in some gear, at most .* km\/h, got 400 km\/h/,
    )
  })

  it('on a slippery road is held by the grip of the one axle that brakes', () => {
    const { points, grip } = regenLimit({ ...third, car: { ...car, friction: 0.3 }, speeds: ['30 km/h'] })
    const limit = brakingLimitRear({ friction: 0.3, mass: '760 kg', aft: '1 m', height: '0.5 m', wheelbase: '2.03 m' })
    expect(only(points).limitedBy).toBe('grip of the driven wheels')
    // The grip and the road slow 760 kg; the motor slows 5 % more, which turns.
    const density = 101_325 / (287.05287 * 293.15)
    const road = 760 * 9.80665 * 0.013 + 0.5 * density * 0.7 * (30 / 3.6) ** 2
    const deceleration = (limit.si + road) / 760
    expect(only(points).deceleration.si).toBeCloseTo(deceleration, 9)
    expect(only(points).force.si).toBeCloseTo(760 * 1.05 * deceleration - road, 8)
    expect(grip?.si).toBeCloseTo(limit.si, 9)
  })

  // UN Regulation No. 13-H, from memory: not up to 0.7 m/s², must above 1.3 m/s².
  it.each([
    [0.69, 'must not light'],
    [0.71, 'may light'],
    [1.29, 'may light'],
    [1.31, 'must light'],
  ] as const)('at %d m/s² the stop lamps %s', (wanted, lamps) => {
    const bare = {
      mass: '1000 kg',
      rotatingFactor: 1,
      rollingResistance: 0,
      dragArea: '0 m²',
      rollingRadius: '1 m',
    } as const
    const { deceleration, stopLamps } = only(
      regenLimit({
        car: bare,
        motor: {
          peakTorque: quantity('torque', wanted * 1000, 'N·m'),
          peakPower: '1000 kW' as never,
          maximumSpeed: '100 rad/s',
          efficiency: 0.9,
        },
        gearbox: { gears: [1], finalDrive: 1, efficiency: 1 },
        speeds: ['36 km/h'],
      }).points,
    )
    expect(deceleration.si).toBeCloseTo(wanted, 9)
    expect(stopLamps).toBe(lamps)
  })

  it('draws power to brake where the motor loses more than it takes up', () => {
    const { efficiency: _, ...rest } = motor
    const loss = { lossPerTorqueSquared: '0.3 W/(N·m)²', constant: '600 W' } as const
    const slow = regenLimit({ ...third, motor: { ...rest, loss }, speeds: ['1 km/h'] })
    expect(only(slow.points).power.si).toBeLessThan(0)
  })

  it('leaves out gears in which the motor would turn too fast', () => {
    const { points } = regenLimit({ ...drive, speeds: ['40 km/h', '100 km/h'] })
    expect(points.map(({ gear, speed }) => `${gear} ${speed}`)).toEqual([
      'first 40 km/h',
      'second 40 km/h',
      'third 40 km/h',
      'third 100 km/h',
      'fourth 40 km/h',
      'fourth 100 km/h',
    ])
  })

  it('asks for the state of charge of a pack, and refuses one without a pack', () => {
    expect(() => regenLimit({ ...third, pack, speeds: ['50 km/h'] })).toThrow(
      'stateOfCharge: expected a state of charge such as 0.9: it decides what the pack takes, got nothing',
    )
    expect(() => regenLimit({ ...third, stateOfCharge: 0.5, speeds: ['50 km/h'] })).toThrow(
      'stateOfCharge: expected a pack beside it, or nothing, got no pack',
    )
    expect(() => regenLimit({ ...third, speeds: [] })).toThrow('speeds: expected a list of at least 1')
  })
})
