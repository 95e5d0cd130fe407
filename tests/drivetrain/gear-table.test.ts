/** The table of gears against printed ones. */
import { describe, expect, it } from 'vitest'
import { gearTable } from '../../src/drivetrain/index.js'
import { explain } from '../../src/formula/index.js'
import { said } from '../said.js'
import { car, gearbox, motor } from './sheet.js'

const gearing = { car, gearbox } as const

describe('gearTable', () => {
  it('gives the speeds of a car data book', () => {
    // 6800 rpm in a box of 3.337/1.995/1.418/1.000 with 3.636 and 881 turns per mile: printed 38, 63, 89, 127 mph, cut off.
    const { rows } = gearTable({
      car: { mass: '900 kg', rollingRadius: '290.732 mm' },
      gearbox: { gears: [3.337, 1.995, 1.418, 1], finalDrive: 3.636, efficiency: 1 },
      motor: { maximumSpeed: '6800 rpm' },
    })
    expect(rows.map(({ topSpeed }) => Math.floor(topSpeed?.in('mph') as number))).toEqual([38, 63, 89, 127])
  })

  it('gives speeds per thousand turns, steps and shifts of a course exercise', () => {
    // 3.78/2.12/1.46/1.03/0.84 with 3.944, radius 0.2888 m: inputs read, figures recomputed.
    const { rows } = gearTable({
      car: { mass: '900 kg', rollingRadius: '0.2888 m' },
      gearbox: {
        gears: { first: 3.78, second: 2.12, third: 1.46, fourth: 1.03, fifth: 0.84 },
        finalDrive: 3.944,
        efficiency: 0.96,
      },
      motor: { maximumSpeed: '6000 rpm' },
      motorSpeeds: ['3200 rpm'],
      speeds: ['60.505 km/h'],
    })
    const close = (actual: (number | undefined)[], expected: number[], digits: number) =>
      expected.forEach((each, i) => {
        expect(actual[i]).toBeCloseTo(each, digits)
      })
    close(
      rows.map((row) => row.speedPerThousand.in('km/h')),
      [7.303, 13.021, 18.908, 26.801, 32.863],
      3,
    )
    close(
      rows.map((row) => row.step?.si),
      [1.783, 1.452, 1.417, 1.226],
      3,
    )
    close(
      rows.map((row) => row.speedAfterShift?.in('rpm')),
      [3365, 4132, 4233, 4893],
      0,
    )
    expect(rows[4]).not.toHaveProperty('step')
    expect(rows[4]).not.toHaveProperty('speedAfterShift')
    // Read: 60.505 km/h in third at 3200 rpm.
    expect(rows[2]?.roadSpeeds[0]?.in('km/h')).toBeCloseTo(60.505, 2)
    expect(rows[2]?.motorSpeeds[0]?.in('rpm')).toBeCloseTo(3200, 0)
  })

  it('takes the motor as it is described elsewhere, and holds it to its speed in the highest gear', () => {
    const { checks, assumptions } = gearTable({ ...gearing, motor, speeds: ['90 km/h', '200 km/h'] })
    expect(checks.map(({ name, verdict }) => `${name}: ${verdict}`)).toEqual([
      'Motor in fourth at 90 km/h: pass',
      'Motor in fourth at 200 km/h: fail',
    ])
    expect(assumptions.map(said)).toContain(
      'The rolling radius follows from the mark 145/80 R13, not from a measured turn.',
    )
  })

  it('without a motor tells no top speed', () => {
    const { rows, checks } = gearTable({ ...gearing, speeds: ['50 km/h'] })
    expect(rows[0]).not.toHaveProperty('topSpeed')
    expect(checks).toEqual([])
  })

  it('shows its working gear by gear', () => {
    const text = explain(() => gearTable({ ...gearing, speeds: ['50 km/h'] })).toText()
    expect(text).toContain('In third')
    expect(text).toContain('w = v · i / r = 50 km/h · 6.344 / 273 mm = 3083 rpm')
  })

  it('refuses gears that rise, what is no tyre mark, and a field that it does not know', () => {
    expect(() => gearTable({ ...gearing, gearbox: { ...gearbox, gears: [1, 3.6] } })).toThrow(
      'gearTable: one input cannot be used\n  gearbox.gears.second: expected a ratio below that of first, 1: gears are listed from the lowest speed up, got 3.6',
    )
    expect(() => gearTable({ ...gearing, car: { ...car, tyre: '5.6-13' } })).toThrow(
      /car\.tyre: expected a tyre mark .* as rollingRadius/,
    )
    expect(() => gearTable({ ...gearing, gearbox: { ...gearbox, finaldrive: 4 } } as never)).toThrow(
      /gearbox\.finaldrive: expected no such field.*did you mean finalDrive\?/,
    )
  })
})
