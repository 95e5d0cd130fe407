/** One vehicle for every procedure of the range: what each leaves be, and what is said of what is left out. */
import { describe, expect, it } from 'vitest'
import type { Vehicle } from '../../src/drivetrain/index.js'
import { driveCycle, driveTrace, energyAtSpeed, rangeAtSpeed, rangeTable, seasons } from '../../src/range/index.js'
import { said } from '../said.js'
import { module, whole } from './cars.js'

const { cycle: _, ...parts } = whole
const vehicle = { ...parts, gearbox: { ...parts.gearbox, ratedInputTorque: '80 N·m' } } as const satisfies Vehicle

const log = 't (s),v (km/h)\n0,0\n10,40\n20,0'
const summer = { temperature: '25 °C', reserve: 0.1 } as const
const winter = { temperature: '-5 °C', reserve: 0.2, auxiliaries: '1.2 kW' } as const

describe('one vehicle', () => {
  it('is taken whole by every procedure', () => {
    const results = [
      energyAtSpeed({ ...vehicle, speed: '50 km/h' }),
      rangeAtSpeed({ ...vehicle, speed: '50 km/h' }),
      rangeTable({ ...vehicle, speed: '50 km/h', temperatures: ['0 °C'] }),
      driveCycle({ ...vehicle, cycle: 'ECE-15' }),
      driveTrace({ ...vehicle, log }),
      seasons({ ...vehicle, speed: '50 km/h', summer, winter }),
    ]
    for (const { assumptions, checks, notes } of results) {
      expect(notes).toEqual([])
      for (const all of [assumptions, checks]) {
        expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
        expect(all.filter(({ id }) => id === '')).toEqual([])
      }
    }
  })
  it('gives what it gives without what the answer does not rest on', () => {
    const { friction: __, ...car } = vehicle.car
    const { pack: ___, ...bare } = vehicle
    const consumed = (given: Parameters<typeof energyAtSpeed>[0]) =>
      energyAtSpeed(given).speeds.map(({ consumption }) => consumption.si)
    expect(consumed({ ...vehicle, speed: '70 km/h' })).toEqual(consumed({ ...bare, car, speed: '70 km/h' }))
  })
  it('is refused where a spare part of it cannot be used', () => {
    const pack = { module: { ...module, capacity: '41 kg' as never }, series: 4, parallel: 2 } as const
    expect(() => energyAtSpeed({ ...vehicle, pack, speed: '70 km/h' })).toThrow(
      'pack.module.capacity: expected a charge',
    )
  })
  it('drives with one fixed ratio where it has no gears, as with a single gear of 1', () => {
    const gearbox = { finalDrive: 6, efficiency: 0.93 } as const
    const fixed = driveCycle({ ...vehicle, gearbox, cycle: 'ECE-15' })
    const single = driveCycle({ ...vehicle, gearbox: { ...gearbox, gears: [1] }, cycle: 'ECE-15' })
    expect(fixed.net.si).toBe(single.net.si)
    expect(fixed.series[13]?.gear).toBe('fixed ratio')
  })
  it('needs no ratio where only efficiencies count, whatever its tyre', () => {
    const light = { car: vehicle.car, gearbox: { efficiency: 0.93 }, motor: { efficiency: 0.86 } } as const
    const { wheelInertia: __, ...car } = light.car
    const { tyre: ___, ...bare } = car
    const net = (given: Parameters<typeof driveCycle>[0]) => driveCycle(given).net.si
    expect(net({ ...light, car, cycle: 'ECE-15' })).toBe(net({ ...light, car: bare, cycle: 'ECE-15' }))
    expect(() => driveCycle({ ...light, cycle: 'ECE-15' })).toThrow(
      'gearbox.finalDrive: expected the ratio of the final drive, such as 4.1, or without gears that of motor to wheels, for car.wheelInertia, got nothing',
    )
  })
  it('tells where the fields of old shapes belong', () => {
    const old = { ...vehicle, cycle: 'ECE-15', friction: 0.8 }
    expect(() => driveCycle(old as never)).toThrow(/friction: .*friction belongs in car/)
    const driveline = { efficiency: 0.93, gears: [3.8, 1] }
    expect(() => driveCycle({ ...vehicle, cycle: 'ECE-15', driveline } as never)).toThrow(
      /driveline: .*its fields belong in gearbox/,
    )
    const regeneration = { share: 0.5 }
    expect(() => driveCycle({ ...vehicle, cycle: 'ECE-15', regeneration } as never)).toThrow(
      /regeneration: .*regeneration belongs in controller/,
    )
    expect(() => driveCycle({ ...vehicle, cycle: 'ECE-15', auxiliary: '250 W' } as never)).toThrow(
      /auxiliary: .*did you mean auxiliaries/,
    )
  })
})

describe('what a season does not say of the auxiliaries', () => {
  it('is as for the whole vehicle', () => {
    const told = seasons({ ...vehicle, speed: '50 km/h', summer: { ...summer, auxiliaries: '250 W' }, winter })
    const left = seasons({ ...vehicle, speed: '50 km/h', summer, winter })
    const other = seasons({ ...vehicle, auxiliaries: '900 W', speed: '50 km/h', summer, winter })
    expect(left.summer.range.si).toBe(told.summer.range.si)
    expect(left.winter.range.si).toBe(told.winter.range.si)
    expect(other.summer.range.si).toBeLessThan(told.summer.range.si)
    expect(other.winter.range.si).toBe(told.winter.range.si)
  })
})

describe('what is said of a drive', () => {
  it('names its defaults with their grounds', () => {
    const { assumptions } = driveCycle({ ...vehicle, cycle: 'ECE-15' })
    const text = assumptions.map(said)
    expect(text).toContain(
      'Temperature of the air: 20 °C (air.temperature by default; at which cars are compared: UN Regulation No. 154, from memory).',
    )
    expect(text).toContain(
      'Longest step while the speed changes: 1 s (step by default; as cycles and logs have a row each second).',
    )
    expect(text).toContain('The pack starts full (stateOfCharge 100 % by default).')
  })
  it('tells of figures that are unusual where they were given, and not of those of a cold season', () => {
    const car = { ...vehicle.car, mass: '7800 kg' } as const
    const { notes } = seasons({
      ...vehicle,
      car,
      speed: '50 km/h',
      summer,
      winter: { ...winter, temperature: '-28 °C' },
    })
    expect(notes.map(({ id }) => id)).toEqual(['car.mass.unusual', 'winter.temperature.unusual'])
    const stretch = { distance: '1 km', speed: '150 km/h', grade: 0.3 } as const
    const drive = driveCycle({ ...vehicle, journey: [stretch], pace: { braking: '9 m/s²' } })
    expect(drive.notes.map(({ id }) => id)).toEqual([
      'journey[0].speed.unusual',
      'journey[0].grade.unusual',
      'pace.braking.unusual',
    ])
  })
})
