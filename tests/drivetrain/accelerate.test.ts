/** Acceleration against closed forms, published examples, a plain integration in time, and facts of the trade. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Acceleration, accelerate, topSpeed } from '../../src/drivetrain/index.js'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'
import { gearbox, gripping, motor, pack } from './sheet.js'

const drive = gripping(0.9)
const { car } = drive

/** A car that nothing resists, on one gear of 1 m radius: speed and motor speed, force and torque are the same number. */
const free = {
  car: { mass: '1000 kg', rotatingFactor: 1.05, rollingResistance: 0, dragArea: '0 m²', rollingRadius: '1 m' },
  gearbox: { gears: [1], finalDrive: 1, efficiency: 1 },
} as const

/** The same car brought up to speed by Euler's method in time, written apart from the library, in one gear. */
function stepped(
  force: (speed: number) => number,
  mass: number,
  to: number,
  step: number,
): [time: number, way: number] {
  let [speed, time, way] = [0, 0, 0]
  while (speed < to) {
    const middle = speed + (step / 2) * (force(speed) / mass)
    const gain = (force(middle) / mass) * step
    const share = Math.min(1, (to - speed) / gain)
    way += step * share * (speed + (gain * share) / 2)
    time += step * share
    speed += gain
  }
  return [time, way]
}

describe('accelerate', () => {
  it('under a constant force takes m v / F and m v² / 2F', () => {
    fc.assert(
      fc.property(between(300, 8000), between(1, 60), between(0.1, 0.9), (newtons, v, share) => {
        const { time, distance } = accelerate({
          ...free,
          motor: {
            peakTorque: quantity('torque', newtons, 'N·m'),
            peakPower: quantity('power', newtons * 100, 'W'),
            maximumSpeed: '100 rad/s',
          },
          from: quantity('speed', v * share, 'm/s'),
          to: quantity('speed', v, 'm/s'),
        })
        const seconds = (1050 * v * (1 - share)) / newtons
        expect(time.si / seconds).toBeCloseTo(1, 9)
        expect(distance.si / (seconds * v * ((1 + share) / 2))).toBeCloseTo(1, 9)
      }),
    )
  })

  it('under constant power takes m v² / 2P and m v³ / 3P more', () => {
    // Ehsani et al., chapter 4 (formula from memory): δ M (Vf² + Vb²) / 2P with 1.05, 1000 kg, 50 kW, 60 mph and a base
    // speed of 10 m/s: 8.604 s (recomputed).
    const { time, distance, errorBound } = accelerate({
      ...free,
      motor: { peakTorque: '5000 N·m', peakPower: '50 kW', maximumSpeed: '100 rad/s' },
      to: '60 mph',
    })
    expect(time.si).toBeCloseTo(8.604, 3)
    const [v, b] = [26.8224, 10]
    expect(time.si / ((1050 * (v ** 2 + b ** 2)) / 1e5)).toBeCloseTo(1, 9)
    const way = (1050 * b ** 2) / (2 * 5000) + (1050 * (v ** 3 - b ** 3)) / (3 * 50_000)
    expect(distance.si / way).toBeCloseTo(1, 9)
    expect(Math.abs(time.si - (1050 * (v ** 2 + b ** 2)) / 1e5)).toBeLessThanOrEqual(errorBound.time.si + 1e-12)
    expect(errorBound.time.si).toBeLessThan(1e-8)
    expect(Math.abs(distance.si - way)).toBeLessThanOrEqual(errorBound.distance.si + 1e-10)
  })

  it('against the air under a constant force ends as the inverse tangent does', () => {
    const { time, distance } = accelerate({
      ...free,
      car: { mass: '1000 kg', rotatingFactor: 1, rollingResistance: 0, dragArea: '1 m²', rollingRadius: '1 m' },
      motor: { peakTorque: '1000 N·m', peakPower: '100 kW', maximumSpeed: '100 rad/s' },
      to: '35 m/s',
    })
    // m dv/dt = F − c v²: v = V tanh(t F / m V), V² = F / c; distance m / 2c · ln(1 / (1 − v² / V²)).
    const c = (0.5 * 101_325) / (287.05287 * 293.15)
    const end = Math.sqrt(1000 / c)
    expect(time.si).toBeCloseTo(end * Math.atanh(35 / end), 8)
    expect(distance.si).toBeCloseTo((-1000 / (2 * c)) * Math.log(1 - (35 / end) ** 2), 6)
  })

  it('pulls away as a course exercise has it', () => {
    // 3000 N, 1262 kg, coefficient 0.01, turning parts 5 %: 2.2 m/s² (read; 2.17 worked out).
    const { series } = accelerate({
      ...free,
      car: { ...free.car, mass: '1262 kg', rollingResistance: 0.01 },
      motor: { peakTorque: '3000 N·m', peakPower: '118.1 kW', maximumSpeed: '100 rad/s' },
      to: '10 m/s',
    })
    expect(series[0]?.acceleration.si).toBeCloseTo(2.17, 2)
  })

  it('at the limit of grip is as published, and no turning part counts there', () => {
    // Wheelbase 2.6 m, height 0.7 m, centre of gravity midway, friction 0.7 (after Bonnick, recomputed; 9.81 m/s²).
    for (const [drivenAxle, published] of [
      ['front', 2.889],
      ['rear', 4.231],
    ] as const) {
      const { series, time } = accelerate({
        ...free,
        car: {
          ...free.car,
          wheelbase: '2.6 m',
          centreOfGravity: { aft: '1.3 m', up: '0.7 m' },
          drivenAxle,
          friction: 0.7,
        },
        motor: { peakTorque: '9000 N·m', peakPower: '900 kW', maximumSpeed: '100 rad/s' },
        to: '20 m/s',
      })
      expect(series[0]?.limitedBy).toBe('grip of the driven wheels')
      expect(((series[0]?.acceleration.si as number) * 9.81) / 9.80665).toBeCloseTo(published, 3)
      expect(time.si).toBeCloseTo(20 / (series[0]?.acceleration.si as number), 9)
    }
  })

  it('of a scooter takes as long as in a textbook', () => {
    // Larminie & Lowry, section 7.3: dv/dt = 1.57 − 0.00145 v² up to 10.8 m/s (constants from memory, 10 m/s after 6.58 s
    // recomputed). 34 N·m, ratio 2, radius 0.21 m, 0.98; 185 kg with 5 %; 0.007; drag 0.75 · 0.6 m² in 1.25 kg/m³.
    const { time } = accelerate({
      car: {
        mass: '185 kg',
        rotatingFactor: 1.05,
        rollingResistance: 0.007,
        dragArea: '0.45 m²',
        rollingRadius: '0.21 m',
      },
      motor: {
        curve: [
          ['0 rad/s', '34 N·m'],
          ['103 rad/s', '34 N·m'],
          ['131 rad/s', '0 N·m'],
        ],
        maximumSpeed: '131 rad/s',
      },
      gearbox: { gears: [2], finalDrive: 1, efficiency: 0.98 },
      // 1.25 kg/m³ at sea level.
      air: { temperature: '9.25 °C' },
      to: '10 m/s',
    })
    expect(Math.abs(time.si / 6.58 - 1)).toBeLessThan(0.005)
  })

  it('agrees with steps in time, the closer the shorter they are', () => {
    const third = { ...drive, gearbox: { ...gearbox, gears: { third: 1.45 } } } as const
    const { time, distance } = accelerate({ ...third, to: '100 km/h' })
    const radius = (3.05 * (0.3302 + 2 * 0.145 * 0.8)) / (2 * Math.PI)
    const ratio = 1.45 * 4.375
    const density = 101_325 / (287.05287 * 293.15)
    const force = (v: number) => {
      const torque = Math.min(120, 50_000 / Math.max((v * ratio) / radius, 1e-9))
      return (torque * ratio * 0.94) / radius - 760 * 9.80665 * 0.013 - 0.5 * density * 0.7 * v ** 2
    }
    const apart = [0.04, 0.02, 0.01].map((step) => {
      const [seconds, way] = stepped(force, 1.05 * 760, 100 / 3.6, step)
      return [Math.abs(seconds - time.si), Math.abs(way - distance.si)] as const
    })
    for (const [i, [seconds, way]] of apart.entries()) {
      // Steps of the second order: a quarter for each halving, but for where the power takes over in the middle of a step.
      expect(seconds).toBeLessThan(2e-4 / 2 ** i)
      expect(way).toBeLessThan(5e-3 / 2 ** i)
    }
  })

  it('shifts only where that is sooner', () => {
    const quick = accelerate({ ...drive, to: '50 km/h' })
    const slow = accelerate({ ...drive, to: '50 km/h', shiftTime: '0 s' })
    expect(quick.gears).toEqual(['second'])
    expect(slow.gears).toEqual(['first', 'second'])
    expect(slow.time.si).toBeLessThan(quick.time.si)
    expect(accelerate({ ...drive, to: '150 km/h' }).gears.at(-1)).toBe('fourth')
  })

  it('is the soonest of what any gears do', () => {
    const best = accelerate({ ...drive, pack, stateOfCharge: 0.8, to: '110 km/h' })
    const { gears } = gearbox
    for (const kept of [['third'], ['fourth'], ['second', 'third'], ['first', 'second', 'third', 'fourth']] as const) {
      const some = Object.fromEntries(kept.map((name) => [name, gears[name]]))
      const other = accelerate({
        ...drive,
        pack,
        stateOfCharge: 0.8,
        gearbox: { ...gearbox, gears: some },
        to: '110 km/h',
      })
      expect(best.time.si).toBeLessThanOrEqual(other.time.si)
    }
  })

  it('loses in a shift what the road takes', () => {
    const { shifts, series } = accelerate({
      ...drive,
      gearbox: { ...gearbox, gears: { first: 3.8, third: 1.45 } },
      to: '100 km/h',
      shiftTime: '1 s',
    })
    const at = series.findIndex(({ gear }) => gear === 'third')
    const [before, after] = [series[at - 1], series[at]] as const
    expect(before?.speed.si).toBe(shifts[0]?.speed.si)
    expect((after?.time.si as number) - (before?.time.si as number)).toBeCloseTo(1, 12)
    const v = before?.speed.si as number
    const resisted = 760 * 9.80665 * 0.013 + 0.5 * 1.2041 * 0.7 * v ** 2
    expect(v - (after?.speed.si as number)).toBeCloseTo(resisted / (760 * 1.05), 2)
  })

  it('has a series that rises in time, speed and distance, and ends where it says', () => {
    const run: Acceleration = accelerate({ ...drive, pack, to: '120 km/h' })
    run.series.forEach((point, i) => {
      const before = run.series[i - 1]
      if (before === undefined) return
      expect(point.time.si).toBeGreaterThan(before.time.si)
      expect(point.distance.si).toBeGreaterThan(before.distance.si)
    })
    expect(run.series[0]?.time.si).toBe(0)
    expect(run.series.at(-1)?.time.si).toBe(run.time.si)
    expect(run.series.at(-1)?.distance.si).toBe(run.distance.si)
    expect(run.series.at(-1)?.speed.in('km/h')).toBeCloseTo(120, 9)
  })

  it('is slower on a weak pack, uphill, in the wet and with a load', () => {
    const { time } = accelerate({ ...drive, to: '80 km/h' })
    for (const worse of [
      { ...drive, pack, stateOfCharge: 0.05, controller: { batteryCurrent: '150 A' } },
      { ...drive, grade: 0.06 },
      gripping(0.3),
      { ...drive, car: { ...car, mass: '900 kg' } },
    ] as const) {
      expect(accelerate({ ...worse, to: '80 km/h' }).time.si).toBeGreaterThan(time.si)
    }
  })

  // Common practice, no source: with a motor that turns fast, third of four gears serves from rest to about 140 km/h.
  // The inputs are what one could build: 650 kg; 130 N·m and 60 kW, a middling salvaged motor; 8000 rpm, the lowest limit
  // of those that turn fast; a usual third gear of 1.4, final drive of 3.9 and tyre of that time.
  it('goes from rest to about 140 km/h in third gear alone', () => {
    const sports = {
      car: { ...car, mass: '650 kg', dragArea: '0.6 m²', tyre: '155/80 R13' },
      motor: { peakTorque: '130 N·m', peakPower: '60 kW', maximumSpeed: '8000 rpm' },
      gearbox: { gears: { third: 1.4 }, finalDrive: 3.9, efficiency: 0.94 },
    } as const
    const { speed } = topSpeed(sports)
    expect(speed.in('km/h')).toBeGreaterThan(140)
    expect(speed.in('km/h')).toBeLessThan(1.15 * 140)
    // It serves: away from rest without spinning, and to 140 km/h without another gear.
    const run = accelerate({ ...sports, to: '140 km/h' })
    expect(run.series[0]?.limitedBy).toBe('peak torque of the motor')
    expect(run.series[0]?.acceleration.in('g')).toBeGreaterThan(0.25)
  })

  it('shows the forces at both ends', () => {
    const text = explain(() => accelerate({ ...drive, to: '80 km/h' })).toText()
    expect(text).toContain('At 0 km/h in second, held by the peak torque of the motor')
    expect(text).toContain('At 80 km/h in second, held by the peak power of the motor')
  })

  it('rolls through a shift as its resistance slows it', () => {
    // 0.1 × 9.80665 m/s² hold the car back. First pulls 8000 N to 10 m/s, where the motor turns no faster; second 4000 N.
    const car = { ...free.car, rotatingFactor: 1, rollingResistance: 0.1 }
    const motor = {
      peakTorque: '4000 N·m',
      peakPower: '1 MW',
      maximumSpeed: quantity('angularSpeed', 20, 'rad/s'),
    } as const
    const run = {
      ...free,
      car,
      motor,
      gearbox: { ...free.gearbox, gears: [2, 1] },
      shiftTime: '0.5 s',
      to: '15 m/s',
    } as const
    const { time, distance, gears } = accelerate(run)
    const drag = 0.1 * 9.80665
    const [first, second] = [8 - drag, 4 - drag]
    const after = 10 - 0.5 * drag
    expect(gears).toHaveLength(2)
    expect(time.si).toBeCloseTo(10 / first + 0.5 + (15 - after) / second, 9)
    const rolled = 10 * 0.5 - (drag * 0.5 ** 2) / 2
    expect(distance.si).toBeCloseTo(10 ** 2 / (2 * first) + rolled + (15 ** 2 - after ** 2) / (2 * second), 8)
  })

  it('on a hill has the grip that the hill leaves', () => {
    const grade = 0.2
    const [sine, cosine] = [Math.sin(Math.atan(grade)), Math.cos(Math.atan(grade))]
    const still = { ...car, rollingResistance: 0, dragArea: '0 m²', friction: 0.5 } as const
    const { time } = accelerate({ ...drive, car: still, gearbox: { ...gearbox, gears: [8] }, grade, to: '5 km/h' })
    // Rear axle: friction × m g × 1 m × cosine over 2.03 m less friction × 0.5 m; less what the hill takes.
    const acceleration = 9.80665 * ((0.5 * cosine) / (2.03 - 0.5 * 0.5) - sine)
    expect(time.si).toBeCloseTo(5 / 3.6 / acceleration, 8)
  })

  it('says what it reaches of a speed that it does not', () => {
    const reached = topSpeed(drive).speed
    // The highest speed itself is never reached: the car nears it for ever.
    expect(() => accelerate({ ...drive, to: reached })).toThrow(`gets no faster than ${reached}, in fourth`)
    expect(accelerate({ ...drive, to: reached.times(0.9999) }).time.si).toBeGreaterThan(60)
    expect(() => accelerate({ ...drive, to: '180 km/h' })).toThrow(
      `accelerate: the car does not reach 180 km/h: it gets no faster than ${reached}, in fourth, held by the peak power of the motor`,
    )
    expect(() => accelerate({ ...drive, gearbox: { ...gearbox, gears: { second: 2.3 } }, to: '90 km/h' })).toThrow(
      'accelerate: the car does not reach 90 km/h: it gets no faster than 81.79 km/h, in second, held by the highest speed of the motor',
    )
    // 760 kg × g × (sin + 0.013 cos) of atan 0.9: 5058 N.
    expect(() => accelerate({ ...drive, grade: 0.9, to: '20 km/h' })).toThrow(
      /does not gain speed from 0 km\/h on a grade of 90 %: it pulls with at most \d+ N, in first, held by the grip of the driven wheels, and 5058 N resist it/,
    )
    // A curve with a dip: what lies beyond it is not reached from below.
    const dipping = [
      ['0 rpm', '110 N·m'],
      ['2000 rpm', '1 N·m'],
      ['4000 rpm', '1 N·m'],
      ['6000 rpm', '80 N·m'],
      ['8000 rpm', '40 N·m'],
    ] as const
    const dip = { peakTorque: undefined, peakPower: undefined, continuousTorque: undefined, continuousPower: undefined }
    expect(() =>
      accelerate({
        ...drive,
        motor: { ...motor, ...dip, curve: dipping },
        gearbox: { ...gearbox, gears: [1.45] },
        to: '100 km/h',
      } as never),
    ).toThrow('does not reach 100 km/h: on the way there what resists it is more than its pull in every gear')
  })

  it('refuses a speed below that at the start, and more gears than it tries', () => {
    expect(() => accelerate({ ...drive, from: '80 km/h', to: '50 km/h' })).toThrow(
      'to: expected a speed above that at the start, 80 km/h, got 50 km/h',
    )
    expect(() =>
      accelerate({ ...drive, gearbox: { ...gearbox, gears: [9, 8, 7, 6, 5, 4, 3, 2, 1] }, to: '50 km/h' }),
    ).toThrow('gearbox.gears: expected at most 8 gears: every sequence of them is tried, got 9 gears')
  })
})
