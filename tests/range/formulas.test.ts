import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { roadPower } from '../../src/drivetrain/index.js'
import { quantity } from '../../src/quantity/index.js'
import { batteryPower, consumption, rangeFromConsumption } from '../../src/range/index.js'
import { between } from '../between.js'

describe('battery power', () => {
  it('of a standing car is that of its auxiliaries', () => {
    const standing = { wheelPower: '0 W', drivelineEfficiency: 0.9, motorEfficiency: 0.85 } as const
    expect(batteryPower({ ...standing, auxiliaries: '250 W' }).in('W')).toBe(250)
  })
  it('is accounted for: wheels, losses of driveline and motor, auxiliaries', () => {
    const efficiency = between(0.1, 1)
    fc.assert(
      fc.property(between(0, 1e5), efficiency, efficiency, between(0, 5000), (atWheels, driveline, motor, extra) => {
        const power = batteryPower({
          wheelPower: quantity('power', atWheels, 'W'),
          drivelineEfficiency: driveline,
          motorEfficiency: motor,
          auxiliaries: quantity('power', extra, 'W'),
        }).in('W')
        const shaft = atWheels / driveline
        const lossInDriveline = shaft * (1 - driveline)
        const lossInMotor = (shaft / motor) * (1 - motor)
        expect(power).toBeCloseTo(atWheels + lossInDriveline + lossInMotor + extra, 6)
      }),
    )
  })
  it('refuses braking, and an efficiency that was given as a number of percent', () => {
    const braked = { wheelPower: '-8 kW', drivelineEfficiency: 0.9, motorEfficiency: 85, auxiliaries: '0 W' } as const
    expect(() => batteryPower(braked)).toThrow(
      "batteryPower: 2 inputs cannot be used\n  wheelPower: expected a power at least 0 kW, got '-8 kW' (Power at the driven wheels)\n  motorEfficiency: expected a ratio above 0 and at most 1, got 85",
    )
  })
})

describe('consumption', () => {
  it('of a perfect car is the force against it, at any speed', () => {
    fc.assert(
      fc.property(between(0.1, 60), between(10, 5000), (v, f) => {
        const speed = quantity('speed', v, 'm/s')
        const power = roadPower({ force: quantity('force', f, 'N'), speed })
        expect(consumption({ power, speed }).in('J/m') / f).toBeCloseTo(1, 12)
      }),
    )
  })
  it('uses up the energy at the end of the range, driven at that speed', () => {
    fc.assert(
      fc.property(between(1, 60), between(0.5, 60), between(1, 100), (v, kilowatts, kilowattHours) => {
        const each = consumption({ power: quantity('power', kilowatts, 'kW'), speed: quantity('speed', v, 'm/s') })
        const range = rangeFromConsumption({ energy: quantity('energy', kilowattHours, 'kWh'), consumption: each })
        expect((range.in('m') / v / 3600) * kilowatts).toBeCloseTo(kilowattHours, 9)
      }),
    )
  })
  it('is not defined for a car that stands', () => {
    expect(() => consumption({ power: '1 kW', speed: '0 km/h' })).toThrow(
      "speed: expected a speed above 0 km/h, got '0 km/h' (Road speed)",
    )
  })
  it('of nothing gives no range', () => {
    expect(() => rangeFromConsumption({ energy: '10 kWh', consumption: '0 Wh/km' })).toThrow(
      "consumption: expected an energy per distance above 0 Wh/km, got '0 Wh/km'",
    )
  })
})
