/** Steady speeds: closed forms, the shares that add up, agreement with the drive of a cycle, and what is refused. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { driveCycle, energyAtSpeed, rangeAtSpeed, rangeTable, readCycle } from '../../src/range/index.js'
import { between } from '../between.js'
import { flat, least, module, motor, whole } from './cars.js'

const { cycle: _, ...base } = least
const { cycle: __, pack, ...gripping } = whole
const { friction: ___, ...car } = whole.car
const geared = { ...gripping, car } as const

/** 101.325 kPa, 20 °C, R 287.05287 J/(kg·K). */
const density = 101325 / (287.05287 * 293.15)

describe('energyAtSpeed', () => {
  it('is the road load over both efficiencies, with the auxiliaries over the speed', () => {
    const { speeds } = energyAtSpeed({ ...base, auxiliaries: '250 W', grade: 0.03, speeds: ['50 km/h', '90 km/h'] })
    for (const { speed, consumption, batteryPower } of speeds) {
      const angle = Math.atan(0.03)
      const weight = 780 * 9.80665
      const force = 0.5 * density * 0.62 * speed.si ** 2 + weight * (0.012 * Math.cos(angle) + Math.sin(angle))
      const wanted = force / (0.93 * 0.86) + 250 / speed.si
      expect(consumption.si / wanted).toBeCloseTo(1, 12)
      expect(batteryPower.si / (wanted * speed.si)).toBeCloseTo(1, 12)
    }
  })
  it('is told by shares that add up, uphill and downhill, and by driveCycle the same', () => {
    fc.assert(
      fc.property(between(5, 95), between(-0.1, 0.08), between(0, 1), fc.boolean(), (kmh, grade, share, isGeared) => {
        const given = { ...(isGeared ? geared : base), controller: { regeneration: share } }
        const [found] = energyAtSpeed({ ...given, grade, speed: quantity('speed', kmh, 'km/h') }).speeds
        const total = found?.consumption.si ?? Number.NaN
        const shares = Object.values(found?.shares ?? {})
        const sum = shares.reduce((all, { si }) => all + si, 0)
        const size = shares.reduce((all, { si }) => all + Math.abs(si), 0)
        expect(Math.abs(sum - total) / size).toBeLessThan(1e-12)
        if (grade > 0) return
        const level = energyAtSpeed({ ...given, speed: quantity('speed', kmh, 'km/h') }).speeds[0]
        const cycle = readCycle({ log: `t (s),v (km/h)\n0,${kmh}\n5,${kmh}` })
        expect(driveCycle({ ...given, cycle }).consumption.si / (level?.consumption.si ?? 0)).toBeCloseTo(1, 10)
      }),
    )
  })
  it('finds the speed of least consumption where the closed form has it', () => {
    // d/dv (a v² + P η / v) = 0 at v³ = P η / (2 a), a half the density times the drag area.
    const { least: best } = energyAtSpeed({ ...base, auxiliaries: '250 W', speed: '50 km/h' })
    const wanted = Math.cbrt((250 * 0.93 * 0.86) / (density * 0.62))
    expect((best?.speed.si ?? 0) / wanted).toBeCloseTo(1, 5)
    // No other speed takes less.
    const speeds = Array.from({ length: 60 }, (_, i) => quantity('speed', 4 + 2 * i, 'km/h'))
    for (const { consumption } of energyAtSpeed({ ...base, auxiliaries: '250 W', speeds }).speeds) {
      expect(consumption.si).toBeGreaterThanOrEqual(best?.consumption.si ?? Infinity)
    }
  })
  it('has none where nothing is on at a standstill: the slower the better', () => {
    expect(energyAtSpeed({ ...base, speed: '50 km/h' }).least).toBeUndefined()
  })
  it('shows the way from the air to the consumption, ending in the same figure', () => {
    const { result, text } = (() => {
      const working = explain(() => energyAtSpeed({ ...base, auxiliaries: '250 W', speed: '90 km/h' }))
      return { result: working.result, text: working.toText() }
    })()
    expect(text).toContain('Aerodynamic drag')
    expect(text).toContain('P_b = P_w / (eta_d · eta_m) + P_a')
    expect(text).toContain(`At 90 km/h: ${result.speeds[0]?.consumption}`)
  })
  it('shares of a coast-down go by the power of the speed', () => {
    const car = {
      mass: '780 kg',
      roadLoad: { constant: '90 N', linear: '1 N/(m/s)', quadratic: '0.4 N/(m/s)²', airDensity: '1.2 kg/m³' },
    } as const
    const [found] = energyAtSpeed({ ...base, car, speed: '20 m/s' }).speeds
    expect(found?.shares.tyres.si).toBeCloseTo(90 + 20, 9)
    expect(found?.shares.air.si).toBeCloseTo((0.4 * 400 * density) / 1.2, 9)
  })
  it('refuses what the car cannot hold, and says what holds it back', () => {
    const weak = { ...geared, motor: { ...motor, peakPower: '20 kW' } } as const
    expect(() => energyAtSpeed({ ...weak, speed: '90 km/h', grade: '12 %' })).toThrow(
      'energyAtSpeed: the car cannot hold 90 km/h on a grade of 12 %: what holds it back is the torque of the motor',
    )
    expect(() => energyAtSpeed({ ...geared, speeds: ['90 km/h', '300 km/h'] })).toThrow(
      'the car cannot hold 300 km/h: what holds it back is the highest speed of the motor',
    )
    expect(() => energyAtSpeed(base)).toThrow("speed and speeds: expected one of them: speed such as '70 km/h'")
    expect(() => energyAtSpeed({ ...base, speed: '0 km/h' })).toThrow('speed: expected a speed above 0 km/h')
    expect(() => energyAtSpeed({ ...base, speeds: ['50 km/h', '90 km'] as never })).toThrow(
      'speeds[1]: expected a speed',
    )
  })
})

describe('rangeAtSpeed', () => {
  it('is the energy over the consumption', () => {
    const [found] = rangeAtSpeed({ ...base, usableEnergy: '12 kWh', speed: '72 km/h' }).speeds
    expect(found?.range?.si).toBeCloseTo((12 * 3.6e6) / (found?.consumption.si ?? 0), 6)
    expect(found?.duration?.si).toBeCloseTo((found?.range?.si ?? 0) / 20, 6)
  })
  it('of a pack is the one that driveCycle finds by repeating', () => {
    const rows = Array.from({ length: 20 }, (_, i) => `${10 * i},70`)
    const cycle = readCycle({ log: ['t (s),v (km/h)', ...rows].join('\n') })
    const state = { stateOfCharge: 0.95, reserve: 0.1 } as const
    const { range, rangeEndedBy } = driveCycle({ ...geared, pack, ...state, cycle })
    const [found] = rangeAtSpeed({ ...geared, pack, ...state, speed: '70 km/h' }).speeds
    expect((found?.range?.si ?? 0) / (range?.si ?? 1)).toBeCloseTo(1, 3)
    expect(found?.endedBy).toBe(rangeEndedBy)
    expect(found?.endedBy).toBe('state of charge of 10 %')
  })
  it('of a steady voltage and a resistance is the charge over the current', () => {
    const [found] = rangeAtSpeed({ ...base, pack: { module: flat, series: 3, parallel: 1 }, speed: '72 km/h' }).speeds
    const power = found?.batteryPower.si ?? 0
    const current = (132 - Math.sqrt(132 ** 2 - 4 * power * 0.042)) / (2 * 0.042)
    expect((found?.range?.si ?? 0) / ((41 * 3600 * 20) / current)).toBeCloseTo(1, 9)
  })
  it('ends where the sagging pack cannot give the power any more', () => {
    const [found] = rangeAtSpeed({ ...geared, pack, speed: '110 km/h' }).speeds
    expect(found?.endedBy).toBe('lowest voltage under load')
  })
  it('is none downhill, where nothing is drawn', () => {
    const [found] = rangeAtSpeed({ ...base, usableEnergy: '12 kWh', grade: -0.05, speed: '50 km/h' }).speeds
    expect(found?.range).toBeUndefined()
  })
  it('refuses a power that the pack cannot give, and says how much it can', () => {
    const small = { ...base, pack: { module, series: 2, parallel: 1 }, speed: '160 km/h' } as const
    expect(() => rangeAtSpeed(small)).toThrow(
      /rangeAtSpeed: the pack cannot give [\d.]+ kW: at most [\d.]+ kW at 100 % state of charge, held by the/,
    )
    expect(() => rangeAtSpeed({ ...base, speed: '50 km/h' })).toThrow(
      "pack and usableEnergy: expected one of them: a pack, or usableEnergy such as '12 kWh', got neither",
    )
  })
})

describe('rangeTable', () => {
  it('says once what of the weather is not counted', () => {
    const { assumptions } = rangeTable({
      ...base,
      usableEnergy: '12 kWh',
      speed: '80 km/h',
      temperatures: ['30 °C', '5 °C', '-10 °C'],
    })
    expect(
      assumptions.filter(({ text }) => /tyres|rolling/i.test(text) && /cells/.test(text)).map(({ id }) => id),
    ).toEqual(['rangeTable.assumes.1'])
    expect(new Set(assumptions.map(({ id }) => id)).size).toBe(assumptions.length)
  })

  it('is shorter in denser air, as its density tells', () => {
    const { rows } = rangeTable({
      ...base,
      usableEnergy: '12 kWh',
      speeds: ['60 km/h', '100 km/h'],
      temperatures: ['30 °C', '0 °C'],
    })
    for (const { temperature, speeds } of rows) {
      const { speeds: single } = rangeAtSpeed({
        ...base,
        usableEnergy: '12 kWh',
        air: { temperature },
        speeds: ['60 km/h', '100 km/h'],
      })
      expect(speeds.map(({ range }) => range?.si)).toEqual(single.map(({ range }) => range?.si))
    }
    expect(rows[1]?.speeds[1]?.range?.si).toBeLessThan(rows[0]?.speeds[1]?.range?.si ?? 0)
  })
  it('refuses a temperature of the air beside its temperatures', () => {
    expect(() =>
      rangeTable({
        ...base,
        usableEnergy: '12 kWh',
        speed: '50 km/h',
        temperatures: ['0 °C'],
        air: { temperature: '9 °C' },
      }),
    ).toThrow('air.temperature: expected nothing: temperatures stand in its place, got 9 °C')
  })
})
