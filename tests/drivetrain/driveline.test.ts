/** Gears, final drive and tyre as they are read, and power both ways through them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  drivelineOf,
  gearNumbers,
  type LossyGear,
  torqueForForce,
  wheelForce,
} from '../../src/drivetrain/gearing/driveline.js'
import { type Car, carField, type Gearbox, gearboxField, type Vehicle } from '../../src/drivetrain/vehicle.js'
import { group } from '../../src/procedure/index.js'
import { readField } from '../../src/procedure/reading.js'
import { between } from '../between.js'
import { car, gearbox } from './sheet.js'

const vehicle = group('The vehicle', { car: carField, gearbox: gearboxField })
const read = (box: NonNullable<Vehicle['gearbox']>, wheels: NonNullable<Vehicle['car']> = car) =>
  drivelineOf(
    'test',
    readField('test', vehicle, { car: wheels, gearbox: box }) as { readonly car: Car; readonly gearbox: Gearbox },
  )

describe('a driveline', () => {
  it('has its gears by name or as a list', () => {
    const { gears } = read(gearbox)
    expect(gears.map(({ name, ratio }) => `${name} ${ratio}`)).toEqual([
      'first 16.63',
      'second 10.06',
      'third 6.344',
      'fourth 4.375',
    ])
    const listed = read({ ...gearbox, gears: [3.8, '2.3', 1.45, 1] }).gears
    expect(JSON.stringify(listed)).toBe(JSON.stringify(gears))
  })
  it('takes a list of efficiencies for gears with names of their own, one for each', () => {
    const named = { ...gearbox, gears: { low: 2.1, high: 1 } }
    const gears = read({ ...named, efficiency: [0.95, 0.96] }).gears.map(({ name, efficiency }) => [
      name,
      efficiency.si,
    ])
    expect(gears).toEqual([
      ['low', 0.95],
      ['high', 0.96],
    ])
    expect(() => read({ ...named, efficiency: [0.95] })).toThrow(
      'gearbox.efficiency: expected one for each of the gears low, high, got a list of 1',
    )
  })
  it('takes one efficiency, or one for each gear by name or as a list', () => {
    const efficiency = { first: 0.92, second: 0.93, third: 0.94, fourth: '96%' } as const
    const shown = (each: readonly LossyGear[]) => each.map((gear) => gear.efficiency.si)
    expect(shown(read(gearbox).gears)).toEqual([0.94, 0.94, 0.94, 0.94])
    expect(shown(read({ ...gearbox, efficiency }).gears)).toEqual([0.92, 0.93, 0.94, 0.96])
    expect(shown(read({ ...gearbox, efficiency: [0.92, 0.93, 0.94, 0.96] }).gears)).toEqual([0.92, 0.93, 0.94, 0.96])
  })
  it('says what the tyre mark leaves open', () => {
    expect(read(gearbox, { ...car, tyre: '165 R13' }).assumptions[0]?.text).toContain(
      "'165 R13' has no aspect: 80 % is assumed",
    )
  })
  it('loses in both directions, and gives back the torque that it was given', () => {
    const gears = read(gearbox).gears.map(gearNumbers)
    fc.assert(
      fc.property(fc.constantFrom(...gears), between(-300, 300), (gear, torque) => {
        const force = wheelForce(gear, torque)
        const lost = torque - (force * gear.radius) / gear.ratio
        expect(lost).toBeCloseTo(Math.abs(torque) * (torque > 0 ? 0.06 : 1 / 0.94 - 1), 9)
        expect(torqueForForce(gear, force)).toBeCloseTo(torque, 9)
      }),
    )
  })
  it('without gears is one fixed ratio', () => {
    const { gears } = read({ finalDrive: 7, efficiency: 0.95 })
    expect(gears.map(({ name, ratio }) => `${name} ${ratio}`)).toEqual(['fixed ratio 7'])
    expect(() => read({ efficiency: 0.93 })).toThrow(
      'gearbox.finalDrive: expected a ratio such as 4.1; without gears, that of motor to wheels, got nothing',
    )
  })
  it('refuses ratios that do not fall, by the name of the gear', () => {
    expect(() => read({ ...gearbox, gears: { first: 2.1, second: 3.6, third: 3.6 } })).toThrow(
      [
        'test: 2 inputs cannot be used',
        '  gearbox.gears.second: expected a ratio below that of first, 2.1: gears are listed from the lowest speed up, got 3.6',
        '  gearbox.gears.third: expected a ratio below that of second, 3.6: gears are listed from the lowest speed up, got 3.6',
      ].join('\n'),
    )
  })
  it('refuses what is no ratio, by its place', () => {
    expect(() => read({ ...gearbox, gears: [3.6, -2, '1.4 m' as never] })).toThrow(
      /gearbox\.gears\[1\]: expected a ratio above 0, got -2[\s\S]*gearbox\.gears\[2\]: expected a ratio/,
    )
    expect(() => read({ ...gearbox, gears: {} })).toThrow(
      'gearbox.gears: expected the ratios of the gears, such as { first: 3.6, second: 2.1 } or [3.6, 2.1], got',
    )
    expect(() => read({ ...gearbox, gears: [] })).toThrow(/such as \[3.6, 2.1\]\), got an empty list/)
  })
  it('refuses efficiencies above one, and those of other gears', () => {
    expect(() => read({ ...gearbox, efficiency: 1.02 })).toThrow(
      'gearbox.efficiency: expected a ratio above 0 and at most 1, got 1.02',
    )
    expect(() => read({ ...gearbox, efficiency: { first: 1.1, second: 0.9, third: 0.9, fourth: 0.9 } })).toThrow(
      'gearbox.efficiency.first: expected a ratio above 0 and at most 1, got 1.1',
    )
    expect(() => read({ ...gearbox, efficiency: { first: 0.9, second: 0.9, third: 0.9, top: 0.9 } })).toThrow(
      [
        'test: 2 inputs cannot be used',
        '  gearbox.efficiency.fourth: expected an efficiency such as 0.95, got nothing',
        '  gearbox.efficiency.top: expected no such gear; there are first, second, third, fourth, got 0.9',
      ].join('\n'),
    )
  })
  it('refuses what is no tyre mark, two ways to tell the tyre, and none', () => {
    expect(() => read(gearbox, { ...car, tyre: '145/80' })).toThrow(
      "test: one input cannot be used\n  car.tyre: expected a tyre mark such as '155/80 R13'",
    )
    expect(() => read(gearbox, { ...car, rollingRadius: '270 mm' })).toThrow(
      'car.rollingRadius and car.tyre: expected one of them',
    )
    const { tyre: _, ...none } = car
    expect(() => read(gearbox, none)).toThrow(
      "car.rollingRadius and car.tyre: expected one of them, such as rollingRadius: '280 mm' or tyre: '155/80 R13', got neither",
    )
  })
})
