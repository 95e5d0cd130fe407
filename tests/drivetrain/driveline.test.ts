/** Gears, final drive and tyre as they are read, and power both ways through them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import {
  drivelineGiven,
  drivelineOf,
  drivelineShape,
  gearNumbers,
  type LossyGear,
  torqueForForce,
  wheelForce,
} from '../../src/drivetrain/gearing/driveline.js'
import { about, readStructure, type Written } from '../../src/structure/index.js'
import { between } from '../between.js'
import { driveline } from './sheet.js'

const schema = about('a driveline', z.strictObject(drivelineShape))
const read = (given: Written<typeof schema>) => drivelineOf('test', readStructure('test', schema, given))

describe('a driveline', () => {
  it('has its gears by name or as a list', () => {
    const { gears } = read(driveline)
    expect(gears.map(({ name, ratio }) => `${name} ${ratio}`)).toEqual([
      'first 16.63',
      'second 10.06',
      'third 6.344',
      'fourth 4.375',
    ])
    const listed = read({ ...driveline, gears: [3.8, '2.3', 1.45, 1] }).gears
    expect(JSON.stringify(listed)).toBe(JSON.stringify(gears))
  })
  it('takes a list of efficiencies for gears with names of their own, one for each', () => {
    const named = { ...driveline, gears: { low: 2.1, high: 1 } }
    const gears = read({ ...named, efficiency: [0.95, 0.96] }).gears.map(({ name, efficiency }) => [
      name,
      efficiency.si,
    ])
    expect(gears).toEqual([
      ['low', 0.95],
      ['high', 0.96],
    ])
    expect(() => read({ ...named, efficiency: [0.95] })).toThrow(
      'efficiency: expected one for each of the gears low, high, got a list of 1',
    )
  })
  it('takes one efficiency, or one for each gear by name or as a list', () => {
    const efficiency = { first: 0.92, second: 0.93, third: 0.94, fourth: '96%' } as const
    const shown = (each: readonly LossyGear[]) => each.map((gear) => gear.efficiency.si)
    expect(shown(read(driveline).gears)).toEqual([0.94, 0.94, 0.94, 0.94])
    expect(shown(read({ ...driveline, efficiency }).gears)).toEqual([0.92, 0.93, 0.94, 0.96])
    expect(shown(read({ ...driveline, efficiency: [0.92, 0.93, 0.94, 0.96] }).gears)).toEqual([0.92, 0.93, 0.94, 0.96])
  })
  it('says what the tyre mark leaves open', () => {
    expect(read({ ...driveline, tyre: '165 R13' }).assumptions[0]).toContain("'165 R13' has no aspect: 80 % is assumed")
  })
  it('loses in both directions, and gives back the torque that it was given', () => {
    const gears = read(driveline).gears.map(gearNumbers)
    fc.assert(
      fc.property(fc.constantFrom(...gears), between(-300, 300), (gear, torque) => {
        const force = wheelForce(gear, torque)
        const lost = torque - (force * gear.radius) / gear.ratio
        expect(lost).toBeCloseTo(Math.abs(torque) * (torque > 0 ? 0.06 : 1 / 0.94 - 1), 9)
        expect(torqueForForce(gear, force)).toBeCloseTo(torque, 9)
      }),
    )
  })
  it('may be told by its losses alone', () => {
    expect(readStructure('test', drivelineGiven, { efficiency: 0.93 }).gears).toBeUndefined()
  })
  it('refuses ratios that do not fall, by the name of the gear', () => {
    expect(() => read({ ...driveline, gears: { first: 2.1, second: 3.6, third: 3.6 } })).toThrow(
      [
        'test: 2 inputs cannot be used',
        '  gears.second: expected a ratio below that of first, 2.1: gears are listed from the lowest speed up, got 3.6',
        '  gears.third: expected a ratio below that of second, 3.6: gears are listed from the lowest speed up, got 3.6',
      ].join('\n'),
    )
  })
  it('refuses what is no ratio, by its place', () => {
    expect(() => read({ ...driveline, gears: [3.6, -2, '1.4 m' as never] })).toThrow(
      /gears\[1\]: expected a ratio above 0, got -2[\s\S]*gears\[2\]: expected a ratio/,
    )
    expect(() => read({ ...driveline, gears: {} })).toThrow(
      'gears: expected the ratios of the gears, such as { first: 3.6, second: 2.1 } or [3.6, 2.1], got',
    )
    expect(() => read({ ...driveline, gears: undefined as never })).toThrow('or [3.6, 2.1], got')
  })
  it('refuses efficiencies above one, and those of other gears', () => {
    expect(() => read({ ...driveline, efficiency: 1.02 })).toThrow(
      'efficiency: expected a ratio above 0 and at most 1, got 1.02',
    )
    expect(() => read({ ...driveline, efficiency: { first: 1.1, second: 0.9, third: 0.9, fourth: 0.9 } })).toThrow(
      'efficiency.first: expected a ratio above 0 and at most 1, got 1.1',
    )
    expect(() => read({ ...driveline, efficiency: { first: 0.9, second: 0.9, third: 0.9, top: 0.9 } })).toThrow(
      [
        'test: 2 inputs cannot be used',
        '  efficiency.fourth: expected an efficiency such as 0.95, got nothing',
        '  efficiency.top: expected no such gear; there are first, second, third, fourth, got 0.9',
      ].join('\n'),
    )
  })
  it('refuses what is no tyre mark, two ways to tell the tyre, and none', () => {
    expect(() => read({ ...driveline, tyre: '145/80' })).toThrow(
      "test: one input cannot be used\n  tyre: expected a tyre mark such as '155/80 R13'",
    )
    expect(() => read({ ...driveline, rollingRadius: '270 mm' })).toThrow(
      'rollingRadius and tyre: expected one of them',
    )
    const { tyre: _, ...none } = driveline
    expect(() => read(none)).toThrow(
      "rollingRadius and tyre: expected one of them, such as rollingRadius: '280 mm' or tyre: '155/80 R13', got neither",
    )
  })
})
