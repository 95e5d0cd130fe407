/** The schedules that are published second by second: their totals, the sums of their phases, and their shape. */
import { describe, expect, it } from 'vitest'
import { schedules } from '../../src/cycles/index.js'
import { quantity } from '../../src/quantity/index.js'
import { driveCycle, sampleCycle } from '../../src/range/index.js'

type Name = keyof typeof schedules

/** The speeds of a schedule in the unit of its regulation, to its last digit. */
function speedsOf(name: Name): number[] {
  const { metresPerSecond } = schedules[name].corners
  const unit = name.startsWith('WLTC') ? 'km/h' : 'mph'
  return metresPerSecond.map((speed) => Math.round(quantity('speed', speed, 'm/s').in(unit) * 10) / 10)
}

const sum = (speeds: readonly number[]) => Math.round(speeds.reduce((all, each) => all + each * 10, 0)) / 10

describe('the totals that were published', () => {
  it.each([
    // 40 CFR Part 86 Appendix I: 1369 s, 7.45 mi, 56.7 mph, mean 19.59 mph, read.
    ['UDDS', 1369, 7.45, 0.005, 56.7, 19.59, 0.005],
    // 40 CFR Part 600 Appendix I: 765 s, 10.26 mi, 59.9 mph, mean 48.3 mph, read.
    ['HWFET', 765, 10.26, 0.005, 59.9, 48.3, 0.05],
    // 40 CFR Part 86 Appendix I (g): 8.01 mi, 80.3 mph, from memory; the column runs to 600 s, where the mean is 48.05 mph.
    ['US06', 600, 8.01, 0.005, 80.3, 48.048, 0.001],
  ] as const)('%s', (name, seconds, miles, within, fastest, mean, meanWithin) => {
    const { duration, distance, maximumSpeed, meanSpeed } = schedules[name]
    expect(duration.si).toBe(seconds)
    expect(Math.abs(distance.in('mi') - miles)).toBeLessThan(within)
    expect(maximumSpeed.in('mph')).toBeCloseTo(fastest, 9)
    expect(Math.abs(meanSpeed.in('mph') - mean)).toBeLessThan(meanWithin)
  })
  it.each([
    // UN GTR No. 15 Annex 1; distances recomputed, those of class 3b read.
    ['WLTC class 1', 1611, 11_428, 64.4],
    ['WLTC class 2', 1800, 22_649, 123.1],
    ['WLTC class 3b', 1800, 23_266, 131.3],
  ] as const)('%s', (name, seconds, metres, fastest) => {
    const { duration, distance, maximumSpeed } = schedules[name]
    expect(duration.si).toBe(seconds)
    expect(Math.abs(distance.si - metres)).toBeLessThan(1)
    expect(maximumSpeed.in('km/h')).toBeCloseTo(fastest, 9)
  })
  it('US06 over the 596 s that are published', () => {
    // 48.37 mph, from memory: the last seconds stand.
    const { distance } = schedules.US06
    expect(Math.abs(distance.in('mi') / (596 / 3600) - 48.37)).toBeLessThan(0.005)
  })
  it('the first 505 s of UDDS', () => {
    // 3.59 mi, mean 25.6 mph, from memory.
    const speeds = speedsOf('UDDS').slice(0, 506)
    const miles = speeds.slice(1).reduce((all, each, i) => all + (each + (speeds[i] as number)) / 2 / 3600, 0)
    expect(Math.abs(miles - 3.59)).toBeLessThan(0.005)
    expect(Math.abs(miles / (505 / 3600) - 25.6)).toBeLessThan(0.05)
    expect(Math.max(...speeds)).toBe(56.7)
  })
})

describe('the sums of the phases', () => {
  // UN GTR No. 15 Annex 1, sums of the speeds of each second, read in a transcription.
  it.each([
    ['WLTC class 1', [0, 590, 1023, 1612], [11_988.4, 17_162.8, 11_988.4], 41_139.6],
    ['WLTC class 2', [0, 590, 1023, 1478, 1801], [11_162.2, 17_054.3, 24_450.6, 28_869.8], 81_536.9],
    ['WLTC class 3b', [0, 590, 1023, 1478, 1801], [11_140.3, 17_121.2, 25_782.2, 29_714.9], 83_758.6],
  ] as const)('%s', (name, ends, sums, whole) => {
    const speeds = speedsOf(name)
    expect(sums.map((_, i) => sum(speeds.slice(ends[i], ends[i + 1])))).toEqual(sums)
    expect(sum(speeds)).toBe(whole)
  })
  it('notices one wrong second', () => {
    // A copy has 56.4 km/h at 915 s of class 3b, where the table has 57.0: the medium sum becomes 17 120.6.
    const speeds = speedsOf('WLTC class 3b')
    expect(speeds[915]).toBe(57)
    speeds[915] = 56.4
    expect(sum(speeds.slice(590, 1023))).toBe(17_120.6)
  })
  it('is the final table of class 3b, not the last draft', () => {
    expect(speedsOf('WLTC class 3b')[1154]).toBe(17.7)
  })
  it.each([
    ['WLTC class 1', 3330, 4767, 3330],
    ['WLTC class 2', 3101, 4737, 6792, 8019],
    ['WLTC class 3b', 3095, 4756, 7162, 8254],
  ] as const)('%s goes as far in each phase, each of which ends at a stand', (name, ...metres) => {
    const ends = [589, 1022, name === 'WLTC class 1' ? 1611 : 1477, 1800]
    const { metresPerSecond } = schedules[name].corners
    let from = 0
    metres.forEach((far, i) => {
      const to = ends[i] as number
      let way = 0
      for (let s = from; s < to; s++) way += ((metresPerSecond[s] as number) + (metresPerSecond[s + 1] as number)) / 2
      expect(Math.abs(way - Number(far))).toBeLessThan(1)
      expect(metresPerSecond[to]).toBe(0)
      from = to
    })
  })
})

describe('the shape', () => {
  it('UDDS moves off at 21 s', () => {
    // 40 CFR Part 86 Appendix I, read.
    const speeds = speedsOf('UDDS')
    expect(speeds.findIndex((speed) => speed > 0)).toBe(21)
    expect(speeds.slice(21, 27)).toEqual([3, 5.9, 8.6, 11.5, 14.3, 16.9])
  })
  it.each([
    ['UDDS', 1.475, -1.475],
    ['US06', 3.755, -3.085],
    ['WLTC class 1', 0.806, -1.111],
    ['WLTC class 2', 0.972, -1.111],
    ['WLTC class 3b', 1.667, -1.5],
  ] as const)('%s changes its speed by at most %d and %d m/s² in a second', (name, faster, slower) => {
    const { metresPerSecond } = schedules[name].corners
    const changes = metresPerSecond.slice(1).map((speed, i) => speed - (metresPerSecond[i] as number))
    expect(Math.max(...changes)).toBeCloseTo(faster, 3)
    expect(Math.min(...changes)).toBeCloseTo(slower, 3)
  })
  it.each([
    ['WLTC class 1', 154, 48, 154],
    ['WLTC class 2', 155, 48, 30, 7],
    // UN GTR No. 15: the stop times of class 3b, read; the others counted in its table.
    ['WLTC class 3b', 156, 48, 31, 7],
  ] as const)('%s goes slower than 1 km/h for as long in each phase', (name, ...seconds) => {
    // A second ends at its row: that at 0 s ends none.
    const speeds = speedsOf(name)
    const ends = name === 'WLTC class 1' ? [1, 590, 1023, 1612] : [1, 590, 1023, 1478, 1801]
    const slow = seconds.map((_, i) => speeds.slice(ends[i], ends[i + 1]).filter((speed) => speed < 1).length)
    expect(slow).toEqual(seconds)
  })
})

describe('a schedule that is driven', () => {
  // Recomputed apart from this project: 800 kg, turning parts 1.04, rolling 0.012 while moving, drag area 0.70 m², air of
  // 1.2041 kg/m³, g 9.81 m/s². The work at the wheels, out of and into them.
  it.each([
    ['UDDS', 77.87, 26.05],
    ['WLTC class 3b', 103.87, 17.45],
  ] as const)('%s asks for as much at the wheels', (name, out, back) => {
    const { drawn, regenerated, distance } = driveCycle({
      car: { mass: '800 kg', rotatingFactor: 1.04, rollingResistance: 0.012, dragArea: '0.7 m²' },
      gearbox: { efficiency: 1 },
      motor: { efficiency: 1 },
      controller: { regeneration: 1 },
      cycle: schedules[name],
    })
    // g differs by 0.04 %, the air by less.
    expect(Math.abs(drawn.in('Wh') / distance.in('km') - out)).toBeLessThan(0.05)
    expect(Math.abs(regenerated.in('Wh') / distance.in('km') - back)).toBeLessThan(0.05)
  })
  it('is sampled second by second as it was published', () => {
    const samples = sampleCycle({ cycle: schedules.HWFET })
    expect(samples).toHaveLength(766)
    expect(samples.map(([, speed]) => Math.round(speed.in('mph') * 10) / 10)).toEqual(speedsOf('HWFET'))
  })
  it('is not known by its name where nobody imported it, and says from where it comes', () => {
    expect(() => sampleCycle({ cycle: 'UDDS' as never })).toThrow(
      'cycle: expected a cycle from readCycle or from kerbwatt/cycles',
    )
  })
})
