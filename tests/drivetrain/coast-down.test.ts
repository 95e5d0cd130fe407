/** A coast-down: against the closed form of a rolling car, published times, and its own stated uncertainty under noise. */
import { describe, expect, it } from 'vitest'
import { type CoastDown, coastDown, topSpeed } from '../../src/drivetrain/index.js'
import { type Given, quantity } from '../../src/quantity/index.js'
import { car, gearbox, motor } from './sheet.js'

const GRAVITY = 9.80665
type Readings = [Given<'time'>, Given<'speed'>][]

/** Speed of a car that rolls against A + B v², from v0: the closed form. */
function speedAt(a: number, b: number, v0: number, t: number): number {
  return Math.sqrt(a / b) * Math.tan(Math.atan(v0 * Math.sqrt(b / a)) - Math.sqrt(a * b) * t)
}

/** A run with readings each second, from `v0` m/s, with some noise. */
function logged(a: number, b: number, v0: number, seconds: number, noise: () => number = () => 0): Readings {
  return Array.from({ length: seconds + 1 }, (_, t) => [
    quantity('time', t, 's'),
    quantity('speed', Math.max(0, speedAt(a, b, v0, t) + noise()), 'm/s'),
  ])
}

/** The invented car that is logged: its decelerations by rolling and by drag. */
const [mass, factor, rho] = [820, 1.03, 1.18]
const truth = { rollingResistance: 0.0135, dragArea: 0.72 }
const rolls = (GRAVITY * truth.rollingResistance) / factor
const drags = (0.5 * rho * truth.dragArea) / (factor * mass)
const given = { mass: '820 kg', airDensity: '1.18 kg/m³' } as const

/** Park and Miller's generator of even numbers, and of it normal ones by Box and Muller. */
function normal(seed: number): () => number {
  let state = seed
  const even = () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even())
}

describe('coastDown', () => {
  it('gives back the car of a log without noise, in both forms', () => {
    const result = coastDown({ ...given, runs: [logged(rolls, drags, 30, 90), logged(rolls, drags, 28, 80)] })
    expect(result.rollingResistance.si / truth.rollingResistance).toBeCloseTo(1, 8)
    expect(result.dragArea.si / truth.dragArea).toBeCloseTo(1, 8)
    expect(result.scatter.si).toBeLessThan(1e-7)
    expect(result.roadLoad.constant.si).toBeCloseTo(mass * GRAVITY * truth.rollingResistance, 5)
    expect(result.roadLoad.quadratic.si).toBeCloseTo(0.5 * rho * truth.dragArea, 7)
    expect(result.correlation).toBeLessThan(-0.5)
    expect(result.residuals.map((run) => run.length)).toEqual([91, 81])
    for (const { verdict } of result.checks) expect(verdict).toBe('pass')
  })

  it('corrects to dry air of 20 °C at 101.325 kPa where the temperature of the runs is told', () => {
    // UN GTR No. 15, Annex 4: rolling times 1 + 0.0086 (T − 20), here at 5 °C; drag by the density (from memory).
    const density = 99_000 / (287.05287 * 278.15)
    const day = (0.5 * density * truth.dragArea) / (factor * mass)
    const runs = [logged(rolls, day, 30, 90), logged(rolls, day, 28, 80)]
    const at = coastDown({ mass: '820 kg', temperature: '5 °C', pressure: '99 kPa', runs })
    expect(at.rollingResistance.si / (truth.rollingResistance * (1 + 0.0086 * (5 - 20)))).toBeCloseTo(1, 8)
    expect(at.dragArea.si / truth.dragArea).toBeCloseTo(1, 8)
    expect(at.roadLoad.airDensity.si).toBeCloseTo(1.2041, 4)
    expect(at.roadLoad.quadratic.si).toBeCloseTo(0.5 * 1.2041 * truth.dragArea, 4)
    const { assumptions } = coastDown({ ...given, runs })
    expect(assumptions.map(({ id }) => id)).toContain('temperature.absent')
    expect(() => coastDown({ mass: '820 kg', runs })).toThrow(
      'airDensity and temperature: expected the density of the air',
    )
  })

  it('takes the coefficients of a published coast-down from its time', () => {
    // 40 CFR 86.529-98, figure F98-9 (read): 200 kg, 8.69 N and 0.0252 N/(km/h)²: 70 to 60 km/h in 4.85 s.
    const [a, b] = [8.69 / 200, (0.0252 * 3.6 ** 2) / 200]
    expect(speedAt(a, b, 70 / 3.6, 4.85) * 3.6).toBeCloseTo(60, 1)
    const { roadLoad } = coastDown({
      runs: [logged(a, b, 80 / 3.6, 40)],
      mass: '200 kg',
      rotatingFactor: 1,
      airDensity: '1.2 kg/m³',
    })
    expect(roadLoad.constant.in('N')).toBeCloseTo(8.69, 5)
    expect(roadLoad.quadratic.in('N/(km/h)²')).toBeCloseTo(0.0252, 7)
  })

  it('holds the true figures within its uncertainty in the right share of logs', { timeout: 30_000 }, () => {
    const noise = normal(1967)
    const trials = 200
    const within = { one: { rolling: 0, drag: 0 }, two: { rolling: 0, drag: 0 } }
    for (let i = 0; i < trials; i++) {
      const runs = [28, 27].map((v0) => logged(rolls, drags, v0, 60, () => 0.1 * noise()))
      const { rollingResistance, dragArea, uncertainty } = coastDown({ ...given, runs })
      const rolling = Math.abs(rollingResistance.si - truth.rollingResistance) / uncertainty.rollingResistance.si
      const drag = Math.abs(dragArea.si - truth.dragArea) / uncertainty.dragArea.si
      within.one.rolling += Number(rolling <= 1)
      within.one.drag += Number(drag <= 1)
      within.two.rolling += Number(rolling <= 2)
      within.two.drag += Number(drag <= 2)
    }
    // 68.3 % and 95.4 % of a normal error, within three standard deviations of a count of 200: 9.9 % and 4.4 %.
    for (const share of Object.values(within.one)) expect(Math.abs(share / trials - 0.683)).toBeLessThan(0.099)
    for (const share of Object.values(within.two)) expect(Math.abs(share / trials - 0.954)).toBeLessThan(0.044)
  })

  it('tells the scatter of the readings, and a smaller uncertainty from more of them', () => {
    const noise = normal(42)
    const runs = Array.from({ length: 8 }, () => logged(rolls, drags, 28, 60, () => 0.1 * noise()))
    const [few, many] = [coastDown({ ...given, runs: runs.slice(0, 2) }), coastDown({ ...given, runs })]
    expect(Math.abs(many.scatter.si / 0.1 - 1)).toBeLessThan(0.12)
    const ratio = few.uncertainty.dragArea.ratioTo(many.uncertainty.dragArea)
    expect(Math.abs(ratio - 2)).toBeLessThan(0.3)
  })

  it('takes out a grade and a wind that are known for each run', () => {
    // A steady grade adds to what rolls, and a wind shifts the speed: both have the closed form still.
    const grade = 0.004
    const slope = (GRAVITY * Math.sin(Math.atan(grade))) / factor
    const cosine = Math.cos(Math.atan(grade))
    const up = logged(rolls * cosine + slope, drags, 28, 60)
    const down = logged(rolls * cosine - slope, drags, 28, 60)
    const close = ({ rollingResistance, dragArea }: CoastDown) => {
      expect(rollingResistance.si / truth.rollingResistance).toBeCloseTo(1, 7)
      expect(dragArea.si / truth.dragArea).toBeCloseTo(1, 7)
    }
    close(coastDown({ ...given, runs: [up, down], grade: [grade, -grade] }))
    const wind = 3
    const against = logged(rolls, drags, 28 + wind, 60).map(([time, speed]) => [
      time,
      quantity('speed', quantity('speed', speed).si - wind, 'm/s'),
    ]) as Readings
    const along = logged(rolls, drags, 28 - wind, 60).map(([time, speed]) => [
      time,
      quantity('speed', quantity('speed', speed).si + wind, 'm/s'),
    ]) as Readings
    close(
      coastDown({
        ...given,
        runs: [against, along],
        headwind: [quantity('speed', wind, 'm/s'), quantity('speed', -wind, 'm/s')],
      }),
    )
  })

  it('takes an unseen grade out of runs both ways, and a wind but for its square', () => {
    const noise = normal(11)
    const grade = 0.003
    const slope = (GRAVITY * Math.sin(Math.atan(grade))) / factor
    const [down, up] = [logged(rolls - slope, drags, 28, 100), logged(rolls + slope, drags, 28, 80)]
    const still = coastDown({ ...given, runs: [down, up] })
    expect(still.rollingResistance.si / truth.rollingResistance).toBeCloseTo(1, 8)
    expect(still.dragArea.si / truth.dragArea).toBeCloseTo(1, 8)
    expect(still.unseenGrade.map(({ si }) => si / grade)).toEqual([expect.closeTo(-1, 4), expect.closeTo(1, 4)])
    const noisy = (run: Readings) =>
      run.map(([time, speed]): Readings[number] => [
        time,
        quantity('speed', quantity('speed', speed).si + 0.1 * noise(), 'm/s'),
      ])
    const { rollingResistance, dragArea, uncertainty } = coastDown({ ...given, runs: [noisy(down), noisy(up)] })
    expect(Math.abs(rollingResistance.si - truth.rollingResistance)).toBeLessThan(3 * uncertainty.rollingResistance.si)
    expect(Math.abs(dragArea.si - truth.dragArea)).toBeLessThan(3 * uncertainty.dragArea.si)

    const wind = 2
    const blown = (along: number) =>
      logged(rolls, drags, 28 - along, 80).map(([time, speed]): Readings[number] => [
        time,
        quantity('speed', quantity('speed', speed).si + along, 'm/s'),
      ])
    const windy = coastDown({ ...given, runs: [blown(wind), blown(-wind)] })
    // What a pair leaves is the drag at the square of the wind, as if it rolled: about 0.0002 here.
    const left = (0.5 * rho * truth.dragArea * wind ** 2) / (mass * GRAVITY)
    expect(Math.abs(windy.rollingResistance.si - truth.rollingResistance)).toBeLessThan(4 * left)
    expect(Math.abs(windy.dragArea.si / truth.dragArea - 1)).toBeLessThan(0.03)
  })

  it('hands its coefficients to the car that they describe', () => {
    const { roadLoad, rollingResistance, dragArea } = coastDown({ ...given, runs: [logged(rolls, drags, 30, 90)] })
    const byCoefficients = topSpeed({ car: { mass: given.mass, tyre: car.tyre, roadLoad }, motor, gearbox })
    const byFigures = topSpeed({
      car: { mass: given.mass, tyre: car.tyre, rollingResistance, dragArea },
      motor,
      gearbox,
    })
    expect(byCoefficients.speed.si).toBeCloseTo(byFigures.speed.si, 9)
  })

  it('fails figures that are known to less than a tenth', () => {
    const noise = normal(7)
    const { checks } = coastDown({ ...given, runs: [logged(rolls, drags, 20, 40, () => 0.2 * noise())] })
    expect(checks.map(({ verdict }) => verdict)).toContain('fail')
  })

  it('refuses readings that do not suffice, run back in time or do not slow down', () => {
    const run = (...readings: [Given<'time'>, Given<'speed'>][]) => readings
    expect(() => coastDown({ ...given, runs: [run(['0 s', '90 km/h'], ['1 s', '88 km/h'])] })).toThrow(
      'runs[0]: expected a list of at least 3',
    )
    expect(() =>
      coastDown({ ...given, runs: [run(['0 s', '90 km/h'], ['2 s', '88 km/h'], ['1 s', '91 km/h'])], grade: [0, 0] }),
    ).toThrow(
      [
        'coastDown: 3 inputs cannot be used',
        '  runs[0][2][0]: expected a time after 2 s, by at most 600 s, got 1 s',
        '  runs[0][2][1]: expected a speed below that at the start, 90 km/h: the car slows down, got 91 km/h',
        '  grade: expected one for each of 1 runs, got 2',
      ].join('\n'),
    )
    expect(() =>
      coastDown({ ...given, runs: [run(['0 s', '90 km/h'], ['5 s', '84 km/h'], ['9 s', '80 km/h'])] }),
    ).toThrow('coastDown: 3 readings of 1 runs leave nothing to tell their scatter by: log more of them')
  })

  it('refuses readings of a car that stands, and a gap in which no car rolls', () => {
    const stands: Readings = [...logged(rolls, drags, 20, 60), ['61 s', '0 km/h']]
    expect(() => coastDown({ ...given, runs: [stands] })).toThrow('runs[0][61][1]: expected a speed above 0')
    const gap: Readings = [...logged(rolls, drags, 20, 60), ['1000 h', '1 km/h']]
    expect(() => coastDown({ ...given, runs: [gap] })).toThrow('expected a time after 60 s, by at most 600 s')
  })

  it('refuses a log that gives a negative figure', () => {
    // Rolls ever harder as it slows down: a brake, or a hill that was not given.
    const rising = [0, 10, 20, 30, 40].map((t): [Given<'time'>, Given<'speed'>] => [
      quantity('time', t, 's'),
      quantity('speed', 25 - 0.0125 * t ** 2, 'm/s'),
    ])
    expect(() => coastDown({ ...given, runs: [rising] })).toThrow(
      /the readings give a rolling resistance coefficient of .* and a drag area of -.* m²: a grade, a wind/,
    )
  })
})
