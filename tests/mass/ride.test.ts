import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { restoreRide, rideHeightChange, wheelRate } from '../../src/mass/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { said } from '../said.js'

const kg = (value: number) => quantity('mass', value, 'kg')
const anyAxle = fc
  .record({
    before: between(100, 800),
    after: between(100, 800),
    rate: between(1e4, 1e5),
    motionRatio: between(0.5, 1.2),
  })
  .map(({ before, after, rate, motionRatio }) => ({
    before: kg(before),
    after: kg(after),
    springRate: quantity('springRate', rate, 'N/m'),
    motionRatio,
  }))
const still = { before: '300 kg', after: '300 kg', springRate: '20 N/mm', motionRatio: 1 } as const

describe('restoreRide', () => {
  it('keeps frequency and height with a spring as much stiffer as the axle is heavier', () => {
    fc.assert(
      fc.property(anyAxle, (front) => {
        const { springRate, preload, heightChange } = restoreRide({ axles: { front, rear: still } }).front
        expect(springRate.ratioTo(front.springRate)).toBeCloseTo(front.after.ratioTo(front.before), 10)
        expect(preload.si).toBe(0)
        expect(heightChange.si).toBe(0)
      }),
    )
  })
  it('finds again the spring of a published ride frequency', () => {
    // Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018), p. 209 (recomputed): 317.5 kg at 1.325 Hz on a
    // wheel rate of 22 N/mm.
    const axle = { before: '500 kg', after: '635 kg', springRate: '15 N/mm', motionRatio: 1 } as const
    const { rear } = restoreRide({ axles: { front: still, rear: { ...axle, targetFrequency: '1.325 Hz' } } })
    expect(rear.springRate.in('N/mm')).toBeCloseTo(22, 1)
    expect(rear.frequency.in('Hz')).toBe(1.325)
  })
  it('lets a kept spring sink by the added load over its rate, and raises its seat by that', () => {
    fc.assert(
      fc.property(anyAxle, (rear) => {
        const { springRate, motionRatio } = rear
        const kept = restoreRide({ axles: { front: still, rear: { ...rear, keepHeight: true } } }).rear
        const massChange = rear.after.minus(rear.before).over(2)
        const sunk = rideHeightChange({ massChange, rate: wheelRate({ springRate, motionRatio }) })
        expect(kept.heightChange.si).toBeCloseTo(sunk.si, 10)
        expect(kept.preload.si).toBeCloseTo(-sunk.si * motionRatio, 10)
        expect(kept.springRate.si).toBe(springRate.si)
      }),
    )
  })
  it('has the raised seat push just what was added: force balance at the old ride height', () => {
    fc.assert(
      fc.property(anyAxle, between(0.8, 3), (rear, hertz) => {
        const targetFrequency = quantity('frequency', hertz, 'Hz')
        const { springRate, preload } = restoreRide({
          axles: { front: still, rear: { ...rear, targetFrequency } },
        }).rear
        const { motionRatio, before, after } = rear
        // Compression of the old spring under the old load, in its own axis; the new one has that and the raised seat.
        const compression = (before.si * 9.80665) / 2 / (rear.springRate.si * motionRatio)
        const atWheel = springRate.si * (compression + preload.si) * motionRatio
        expect(atWheel / ((after.si * 9.80665) / 2)).toBeCloseTo(1, 10)
      }),
    )
  })
  it('warns of what changed springs and weights can do', () => {
    const { cautions, assumptions } = restoreRide({ axles: { front: still, rear: still } })
    expect(cautions.map(({ hazard }) => hazard)).toContain('brakes and steering after a change of weight')
    expect(assumptions.map(said).join()).toContain('free length')
  })
  it('refuses to keep a spring and have another frequency of it', () => {
    const rear = { ...still, keepHeight: true, targetFrequency: '1.5 Hz' } as const
    expect(() => restoreRide({ axles: { front: still, rear } })).toThrow(
      'restoreRide: one input cannot be used\n' +
        '  axles.rear: expected targetFrequency or keepHeight, got both (a spring that is kept has the frequency it has)',
    )
  })
  it('refuses a motion ratio of zero by its path', () => {
    expect(() => restoreRide({ axles: { front: still, rear: { ...still, motionRatio: 0 } } })).toThrow(
      'axles.rear.motionRatio: expected a ratio above 0, got 0 (Motion ratio, spring travel over wheel travel)',
    )
  })
})
