/** Coolant loops: flow, temperatures and heat balance, the laws that they keep, and what is said of bad ones. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import { highVoltage, hotCoolant } from '../../src/procedure/cautions.js'
import { CalculationError, quantity } from '../../src/quantity/index.js'
import {
  airProperties,
  coolantProperties,
  coolingLoop,
  effectivenessCrossFlow,
  flowVelocity,
  frictionFactor,
  pressureDrop,
  reynoldsNumber,
} from '../../src/thermal/index.js'
import { divided, dividedByBrackets, dropOf, type Passage } from '../../src/thermal/loop/pipe-network.js'
import { between } from '../between.js'
import { runs } from '../runs.js'
import { said } from '../said.js'

type Given = Parameters<typeof coolingLoop>[0]

const loop = {
  coolant: 'ethylene glycol 50 %',
  pump: [
    ['0 L/min', '32 kPa'],
    ['10 L/min', '24 kPa'],
    ['20 L/min', '0 kPa'],
  ],
  segments: [
    { name: 'hoses', length: '6 m', bore: '16 mm', fittings: 8 },
    { name: 'controller', drop: '6 kPa', at: '8 L/min', heat: '0.5 kW' },
    { name: 'motor', drop: '9 kPa', at: '8 L/min', heat: '2.1 kW' },
  ],
  radiator: {
    conductance: '180 W/K',
    at: { air: '900 m³/h', coolant: '8 L/min' },
    exponents: { air: 0.55, coolant: 0.2 },
  },
  air: { temperature: '32 °C', flow: '700 m³/h' },
  limit: '60 °C',
} as const satisfies Given

function near(actual: number, wanted: number, relative = 1e-9): void {
  expect(Math.abs(actual - wanted), `${actual} against ${wanted}`).toBeLessThanOrEqual(
    relative * Math.abs(wanted) + 1e-300,
  )
}

const kPa = (value: number) => quantity('pressure', value, 'kPa')
const lpm = (value: number) => quantity('volumeFlow', value, 'L/min')
const mm = (value: number) => quantity('length', value, 'mm')
const kW = (value: number) => quantity('power', value, 'kW')

/** Loops of all sorts, as given. */
const anyLoop = fc
  .record({
    coolant: fc.constantFrom('water' as const, 'ethylene glycol 50 %' as const),
    shutOff: between(0.5, 80),
    bore: between(6, 25),
    length: between(0.5, 15),
    fittings: between(0, 20),
    part: between(0.5, 20),
    heat: between(0.05, 8),
    conductance: between(30, 600),
    exponent: between(0, 0.8),
    airFlow: between(100, 3000),
    outside: between(5, 45),
  })
  .map(
    ({ coolant, shutOff, bore, length, fittings, part, heat, conductance, exponent, airFlow, outside }): Given => ({
      coolant,
      pump: [
        [lpm(0), kPa(shutOff)],
        [lpm(12), kPa(shutOff * 0.8)],
        [lpm(40), kPa(0)],
      ],
      segments: [
        { length: quantity('length', length, 'm'), bore: mm(bore), fittings },
        { drop: kPa(part), at: '8 L/min', heat: kW(heat) },
      ],
      radiator: {
        conductance: quantity('thermalConductance', conductance, 'W/K'),
        at: { air: '900 m³/h', coolant: '8 L/min' },
        exponents: { air: exponent, coolant: exponent / 2 },
      },
      air: { temperature: quantity('temperature', outside, '°C'), flow: quantity('volumeFlow', airFlow, 'm³/h') },
    }),
  )

describe('coolingLoop', () => {
  it('closes its heat balance, and its pressures, with the properties of its own mean temperature', () => {
    const found = coolingLoop(loop)
    const { hot, cold } = found.coolant
    const mean = quantity('temperature', (hot.si + cold.si) / 2, 'K')
    const fluid = coolantProperties({ coolant: loop.coolant, temperature: mean })
    const rate = found.flow.si * fluid.density.si * fluid.specificHeat.si
    near(rate * (hot.si - cold.si), 2600)
    near(found.rejected.si, 2600)
    expect(Math.abs(found.residual.si)).toBeLessThan(2600e-9)

    const air = airProperties({ temperature: '32 °C' })
    const airRate = (700 / 3600) * air.density.si * air.specificHeat.si
    const conductance = 180 * (700 / 900) ** 0.55 * (found.flow.in('L/min') / 8) ** 0.2
    const effectiveness = effectivenessCrossFlow({
      transferUnits: conductance / airRate,
      capacityRatio: airRate / rate,
    })
    near(found.effectiveness.si, effectiveness.si)
    near(effectiveness.si * airRate * (hot.si - 305.15), 2600)

    const velocity = flowVelocity({ flow: found.flow, bore: '16 mm' })
    const { density, viscosity } = fluid
    const reynolds = reynoldsNumber({ density, viscosity, velocity, bore: '16 mm' })
    const friction = frictionFactor({ reynolds, relativeRoughness: 0 })
    const hose = pressureDrop({ friction, length: '6 m', bore: '16 mm', fittings: 8, velocity, density })
    const liters = found.flow.in('L/min')
    near(found.pressureDrop.in('kPa'), hose.in('kPa') + 15 * (liters / 8) ** 2)
    near(found.pressureDrop.in('kPa'), 32 - (8 * liters) / 10)
  })

  // 10 L/min of half glycol through 5 m of smooth hose of 16 mm with fittings of 5.4, worked out apart from this library
  // with the equation of Colebrook: a pump with just that pressure at 10 L/min must drive 10 L/min. At 20 °C the flow
  // is between laminar and turbulent, where no formula is better than 30 %.
  it.each([
    ['-20 °C', 13.45, 653, 0.003],
    ['20 °C', 6.73, 3613, 0.05],
    ['60 °C', 5.46, 9757, 0.01],
  ] as const)('drives what was worked out elsewhere through a hose at %s', (temperature, drop, reynolds, within) => {
    const found = coolingLoop({
      ...loop,
      pump: [
        ['0 L/min', kPa(2 * drop)],
        ['10 L/min', kPa(drop)],
        ['20 L/min', '0 kPa'],
      ],
      segments: [{ length: '5 m', bore: '16 mm', fittings: 5.4 }],
      heat: '0 kW',
      air: { temperature, flow: '700 m³/h' },
    })
    near(found.flow.in('L/min'), 10, within)
    near(found.segments[0]?.reynolds?.si as number, reynolds, within + 0.001)
    // Without heat the coolant is as warm as the air.
    near(found.coolant.hot.si, quantity('temperature', temperature).si, 1e-12)
    near(found.coolant.cold.si, found.coolant.hot.si, 1e-12)
  })

  // Water and half glycol at 40 °C, worked out apart from this library: 5 kW at a rise of 5 K needs 14.469 L/min of the
  // one and 16.798 L/min of the other.
  it.each([
    ['water', 14.469],
    ['ethylene glycol 50 %', 16.798],
  ] as const)('warms %s by 5 K with 5 kW at the flow worked out elsewhere', (coolant, flow) => {
    const found = coolingLoop({
      ...loop,
      coolant,
      // A pump that gives nearly this flow, whatever the loop takes.
      pump: [
        ['0 L/min', '30 kPa'],
        [lpm(flow), '29.9 kPa'],
        [lpm(flow + 1e-6), '0 kPa'],
      ],
      segments: [{ drop: '10 kPa', at: lpm(flow), heat: '5 kW' }],
      // Hot enough that the mean is 40 °C: 42.5 °C at an effectiveness of 1 on the coolant.
      radiator: { effectiveness: 1 },
      air: { temperature: '37.5 °C', flow: '100000 m³/h' },
    })
    near(found.flow.in('L/min'), flow, 1e-6)
    expect(found.coolant.hot.minus(found.coolant.cold).si).toBeCloseTo(5, 3)
    expect((found.coolant.hot.in('°C') + found.coolant.cold.in('°C')) / 2).toBeCloseTo(40, 3)
  })

  it('takes the conductances of the two sides of a radiator one after the other', () => {
    const sided = {
      airSide: { conductance: '250 W/K', at: '900 m³/h', exponent: 0.58 },
      coolantSide: { conductance: '900 W/K', at: '8 L/min', exponent: 0.3 },
    } as const
    const sides = coolingLoop({ ...loop, radiator: sided })
    const [air, coolant] = [250 * (7 / 9) ** 0.58, 900 * (sides.flow.in('L/min') / 8) ** 0.3]
    const alike = coolingLoop({
      ...loop,
      radiator: {
        conductance: quantity('thermalConductance', 1 / (1 / air + 1 / coolant), 'W/K'),
        at: { air: '700 m³/h', coolant: sides.flow },
        exponents: { air: 0, coolant: 0 },
      },
    })
    near(sides.coolant.hot.si, alike.coolant.hot.si)
    const text = explain(() => coolingLoop({ ...loop, radiator: sided })).toText()
    expect(text).toContain('side of the air\n    Conductance at another flow')
    expect(text).toContain('side of the coolant\n    Conductance at another flow')
  })

  it('warms the coolant in each segment by its heat, mixed where branches meet', () => {
    const found = coolingLoop({
      ...loop,
      heat: '0.4 kW',
      segments: [
        { name: 'hose', length: '2 m', bore: '16 mm', heat: '0 kW' },
        {
          parallel: [
            [{ name: 'motor', length: '1 m', bore: '10 mm', heat: '1 kW' }],
            [
              { name: 'plate', drop: '6 kPa', at: '8 L/min', heat: '0.5 kW' },
              { name: 'thin hose', length: '3 m', bore: '8 mm' },
            ],
          ],
        },
        { name: 'charger', drop: '2 kPa', at: '8 L/min', heat: '0.1 kW' },
      ],
    })
    const [hose, motor, plate, thin, charger] = found.segments
    if (!(hose && motor && plate && thin && charger)) throw new Error('five segments were given')
    near(motor.flow.si + plate.flow.si, found.flow.si)
    near(motor.pressureDrop.si, plate.pressureDrop.si + thin.pressureDrop.si)
    near(found.pressureDrop.si, hose.pressureDrop.si + motor.pressureDrop.si + charger.pressureDrop.si)
    const mixed = (motor.flow.si * motor.outlet.si + thin.flow.si * thin.outlet.si) / found.flow.si
    near(charger.inlet.si, mixed, 1e-12)
    near(hose.inlet.si, found.coolant.cold.si, 1e-15)
    const rate = 2000 / (found.coolant.hot.si - found.coolant.cold.si)
    near(found.coolant.hot.si - charger.outlet.si, 400 / rate, 1e-6)
    near(motor.outlet.si - motor.inlet.si, 1000 / (rate * motor.flow.ratioTo(found.flow)), 1e-6)
  })

  it('says what can hurt, from the one list of cautions', () => {
    expect(coolingLoop(loop).cautions).toEqual([hotCoolant, highVoltage])
  })

  it('shows its working', () => {
    const text = explain(() => coolingLoop(loop)).toText()
    expect(text).toContain(
      "Coolant at its mean temperature of 54.61 °C: ethylene glycol 50 %, 1055 kg/m³, 3414 J/(kg·K), 1.609 mPa·s; the pump's curve meets the loop's at 8.972 L/min, where it gives 24.82 kPa",
    )
    expect(text).toContain('exact series')
    expect(text).toContain('Th = Tc + Q / (eps · Cmin) = 305.15 K + 2.6 kW / (0.4586 · 227 W/K) = 57 °C')
  })
})

describe('the laws of a coolant loop', () => {
  it('heat put in is heat given off, to 1e-9, or a check fails and says how much is left', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyLoop, (given) => {
        const found = coolingLoop(given)
        const heat = quantity('power', given.segments[1]?.heat ?? '0 kW').si
        const failed = found.checks.filter(({ verdict }) => verdict === 'fail')
        near(found.rejected.si + found.residual.si, heat)
        if (failed.length === 0) expect(Math.abs(found.residual.si)).toBeLessThanOrEqual(1e-9 * heat)
        for (const each of [found.flow, found.pressureDrop, found.coolant.hot, found.coolant.cold, found.capacity]) {
          expect(Number.isFinite(each.si)).toBe(true)
        }
      }),
    )
  })

  it('more flow never heats the coolant more', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(anyLoop, between(1, 5), (given, times) => {
        const stronger = given.pump.map(([flow, pressure]) => [flow, (pressure as ReturnType<typeof kPa>).times(times)])
        const [weak, strong] = [coolingLoop(given), coolingLoop({ ...given, pump: stronger } as unknown as Given)]
        expect(strong.flow.si).toBeGreaterThanOrEqual(weak.flow.si * (1 - 1e-9))
        expect(strong.coolant.hot.si).toBeLessThanOrEqual(weak.coolant.hot.si + 1e-9)
      }),
    )
  })

  it('more air and colder air never heat a coolant more whose flow does not hang on its viscosity', {
    timeout: 60_000,
  }, () => {
    // Through hoses, colder coolant is thicker and may flow so much less that it enters the radiator hotter.
    fc.assert(
      fc.property(anyLoop, between(1, 5), between(0, 20), ({ air: blown, ...rest }, times, colder) => {
        const given = { ...rest, segments: rest.segments.slice(1) }
        const before = quantity('temperature', blown.temperature)
        const air = {
          temperature: before.minus(quantity('temperatureDifference', colder, 'K')),
          flow: quantity('volumeFlow', blown.flow).times(times),
        }
        fc.pre(given.coolant !== 'water' || air.temperature.in('°C') > 1)
        expect(coolingLoop({ ...given, air }).coolant.hot.si).toBeLessThanOrEqual(
          coolingLoop({ ...given, air: blown }).coolant.hot.si + 1e-9,
        )
      }),
    )
  })

  it('a thicker pipe never needs a bigger pump', { timeout: 60_000 }, () => {
    const pipe = fc.record({
      length: between(0.1, 20),
      bore: between(0.004, 0.04),
      roughness: between(0, 0.0002),
      fittings: between(0, 20),
    })
    fc.assert(
      fc.property(pipe, between(1, 3), between(1e-6, 1e-3), between(3e-4, 0.05), (thin, times, flow, viscosity) => {
        const fluid = { density: 1050, viscosity }
        const thick = { ...thin, bore: thin.bore * times }
        expect(dropOf(thick, fluid, flow)).toBeLessThanOrEqual(dropOf(thin, fluid, flow) * (1 + 1e-12))
      }),
    )
    fc.assert(
      fc.property(anyLoop, between(1, 2), (given, times) => {
        const [pipe, ...rest] = given.segments as [{ bore: ReturnType<typeof mm> }]
        const segments = [{ ...pipe, bore: pipe.bore.times(times) }, ...rest]
        const thicker = coolingLoop({ ...given, segments } as Given)
        expect(thicker.flow.si).toBeGreaterThanOrEqual(coolingLoop(given).flow.si * (1 - 1e-9))
      }),
    )
  })

  it('takes eight times the pressure through two equal parts in series than in parallel, at the same flow', () => {
    fc.assert(
      fc.property(between(0.1, 50), between(1e-6, 1e-3), (pressure, flow) => {
        const part: Passage = { pressure: pressure * 1000, referenceFlow: 1e-4 }
        const fluid = { density: 1000, viscosity: 1e-3 }
        const series = dropOf({ series: [part, part] }, fluid, flow)
        near(series / dropOf({ parallel: [part, part] }, fluid, flow), 8, 1e-9)
      }),
    )
  })

  it('has one pressure drop across branches whose flows add up', { timeout: 60_000 }, () => {
    const branch = fc.oneof(
      fc.record({
        length: between(0.1, 10),
        bore: between(0.004, 0.03),
        roughness: between(0, 0.0001),
        fittings: between(0, 10),
      }),
      fc.record({ pressure: between(100, 50000), referenceFlow: between(1e-5, 1e-3) }),
    )
    const branches = fc.array(fc.array(branch, { minLength: 1, maxLength: 3 }), { minLength: 2, maxLength: 4 })
    fc.assert(
      fc.property(branches, between(1e-6, 1e-3), between(3e-4, 0.05), (given, flow, viscosity) => {
        const fluid = { density: 1050, viscosity }
        const passages = given.map((series): Passage => ({ series }))
        const { flows, drop } = divided(passages, fluid, flow)
        near(
          flows.reduce((sum, each) => sum + each, 0),
          flow,
          1e-9,
        )
        for (const [i, passage] of passages.entries()) near(dropOf(passage, fluid, flows[i] as number), drop, 1e-9)
        near(dividedByBrackets(passages, fluid, flow).drop, drop, 1e-9)
      }),
      { numRuns: runs(300) },
    )
  })

  it('is the same whichever of two branches is named first', () => {
    const branches = [[{ length: '1 m', bore: '8 mm' }], [{ drop: '6 kPa', at: '8 L/min', heat: '2 kW' }]] as const
    const [one, other] = [branches, [...branches].reverse()].map((parallel) =>
      coolingLoop({ ...loop, segments: [{ parallel }] } as Given),
    )
    near(one?.flow.si as number, other?.flow.si as number, 1e-12)
    near(one?.coolant.hot.si as number, other?.coolant.hot.si as number, 1e-12)
  })
})

describe('a loop that does not do', () => {
  it('whose radiator is too small fails with the heat that it can give off below the limit', () => {
    const { checks, capacity, coolant } = coolingLoop({ ...loop, heat: '1.4 kW' })
    expect(checks.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Coolant entering the radiator', 'fail'],
      ['Heat that the radiator gives off with the coolant at 60 °C', 'fail'],
    ])
    expect(coolant.hot.in('°C')).toBeGreaterThan(60)
    // At the limit the radiator gives off nearly the same share of the difference in temperature.
    near(capacity.si, (4000 * 28) / (coolant.hot.in('°C') - 32), 0.01)
  })

  it('that would leave the table of its coolant fails with the figures at the limit', () => {
    const { checks, coolant, rejected, residual, capacity, assumptions } = coolingLoop({ ...loop, heat: '20 kW' })
    expect(checks.map(({ verdict }) => verdict)).toEqual(['fail'])
    expect(coolant.hot.in('°C')).toBeCloseTo(100, 12)
    // 28 K to the air at the limit, 68 K at the end of the table, with an effectiveness that hardly changes.
    near(rejected.si / capacity.si, 68 / 28, 0.01)
    near(residual.si, 22600 - rejected.si, 1e-9)
    expect(assumptions.map(said)).toContain(
      'Beyond 100 °C there are no properties of the coolant: the figures are those with it at 100 °C.',
    )
  })

  it('whose pump hardly moves it fails with figures, not with an exception', () => {
    const { flow, checks } = coolingLoop({
      ...loop,
      pump: [
        ['0 L/min', '0.02 kPa'],
        ['5 L/min', '0 kPa'],
      ],
      minimumFlow: '6 L/min',
    })
    expect(flow.in('L/min')).toBeLessThan(0.5)
    expect(new Set(checks.map(({ verdict }) => verdict))).toEqual(new Set(['fail']))
    expect(checks.find(({ id }) => id === 'coolant.flow')).toMatchObject({
      name: 'Coolant flow',
      sense: 'at least',
      basis: 'the least flow given',
    })
  })

  it('whose air is warmer than its coolant may become gives off nothing at the limit', () => {
    const { capacity, checks } = coolingLoop({ ...loop, limit: '30 °C' })
    expect(capacity.si).toBe(0)
    expect(checks.every(({ verdict }) => verdict === 'fail')).toBe(true)
  })

  it('whose water would freeze says so', () => {
    const cold = { ...loop, coolant: 'water' } as const
    expect(() => coolingLoop({ ...cold, air: { temperature: '-23 °C', flow: '700 m³/h' } })).toThrow(CalculationError)
    expect(() => coolingLoop({ ...cold, air: { temperature: '-23 °C', flow: '700 m³/h' } })).toThrow(
      'coolingLoop: the coolant would settle below 0.01 °C, where the table of water at 101.325 kPa begins, with air ' +
        'at -23 °C: it needs a thermostat or a shutter, or more antifreeze',
    )
    const { checks } = coolingLoop({ ...cold, air: { temperature: '-20 °C', flow: '700 m³/h' } })
    expect(checks[1]).toMatchObject({ name: 'Coolant leaving the radiator', verdict: 'fail' })
  })

  it('whose water runs warm in frost would freeze when the car is parked', () => {
    const { coolant, checks } = coolingLoop({
      ...loop,
      coolant: 'water',
      air: { temperature: '-5 °C', flow: '700 m³/h' },
    })
    expect(coolant.cold.in('°C')).toBeGreaterThan(5)
    expect(checks.filter(({ verdict }) => verdict === 'fail')).toMatchObject([
      {
        name: 'Air in which the coolant stands when the car is parked',
        basis: 'where water at 101.325 kPa freezes',
      },
    ])
    const { checks: mixed } = coolingLoop({ ...loop, air: { temperature: '-5 °C', flow: '700 m³/h' } })
    expect(mixed.every(({ verdict }) => verdict === 'pass')).toBe(true)
  })

  it('whose flow is neither laminar nor turbulent says that its figures are rough', () => {
    const { assumptions } = coolingLoop({ ...loop, air: { temperature: '0 °C', flow: '700 m³/h' } })
    expect(assumptions.map(said)).toContain(
      'Between laminar and turbulent flow the pressure drop is uncertain by about 30 %: hoses.',
    )
  })
})

describe('wrong input to a coolant loop', () => {
  it.each([
    [
      'a bore of zero',
      { segments: [{ length: '6 m', bore: '0 mm' }] },
      "segments[0].bore: expected a length above 0 m, got '0 mm' (Bore of the pipe)",
    ],
    [
      'a negative flow',
      { air: { temperature: '32 °C', flow: '-5 m³/h' } },
      "air.flow: expected a volume flow above 0 L/min, got '-5 m³/h'",
    ],
    [
      'a pump with a rising curve',
      {
        pump: [
          ['0 L/min', '20 kPa'],
          ['5 L/min', '24 kPa'],
          ['5 L/min', '0 kPa'],
        ],
      },
      'pump[1][1]: expected at most the pressure before it, 20 kPa, got 24 kPa (a curve that rises has no one point of ' +
        'operation)\n  pump[2][0]: expected more than the flow before it, 5 L/min, got 5 L/min',
    ],
    [
      'a pump whose curve starts late',
      {
        pump: [
          ['2 L/min', '20 kPa'],
          ['15 L/min', '0 kPa'],
        ],
      },
      "pump[0][0]: expected no flow, '0 L/min', got 2 L/min (its pressure with the outlet shut)",
    ],
    [
      'a pump without pressure',
      {
        pump: [
          ['0 L/min', '0 kPa'],
          ['15 L/min', '0 kPa'],
        ],
      },
      "pump[0][1]: expected a pressure above 0 kPa at no flow, such as '35 kPa', got 0 kPa",
    ],
    [
      'a pump whose curve ends before it meets the loop',
      {
        pump: [
          ['0 L/min', '32 kPa'],
          ['4 L/min', '30 kPa'],
        ],
      },
      'pump[1]: expected points up to a flow at which the loop takes all that the pump gives; at 4 L/min it takes',
    ],
    [
      'a segment that is neither pipe nor part',
      { segments: [{ name: 'hose', length: '2 m', at: '8 L/min' }] },
      "segments[0]: expected a pipe, such as { length: '2 m', bore: '16 mm' }, or a part, such as { drop: '8 kPa', at: " +
        "'10 L/min' }, got length, at",
    ],
    [
      'branches that are also a pipe',
      { segments: [{ length: '2 m', parallel: [[{ drop: '8 kPa', at: '10 L/min' }], [{}]] }] },
      'segments[0]: expected parallel alone, or a pipe or part, got length, parallel\n  segments[0].parallel[1][0]: ' +
        'expected a pipe',
    ],
    [
      'one branch',
      { segments: [{ parallel: [[{ drop: '8 kPa', at: '10 L/min' }]] }] },
      'segments[0].parallel: expected a list',
    ],
    [
      'a wall rougher than formulas reach',
      { segments: [{ length: '2 m', bore: '16 mm', roughness: '1 mm', heat: '1 kW' }] },
      'segments[0].roughness: expected a length of at most a twentieth of the bore, 0.8 mm, got 1 mm',
    ],
    [
      'half a radiator',
      { radiator: { conductance: '180 W/K' } },
      'radiator: expected effectiveness alone; or conductance, at and exponents; or airSide and coolantSide, got ' +
        'conductance',
    ],
    [
      'no heat',
      { segments: [{ length: '2 m', bore: '16 mm' }] },
      "heat: expected the heat put in, such as heat: '2.5 kW', here or in the segments, got nothing",
    ],
    [
      'a limit outside the table',
      { limit: '120 °C' },
      'limit: expected a temperature from -30 °C to 100 °C, the range of the table of 50 % ethylene glycol by volume',
    ],
    [
      'air hotter than any coolant',
      { air: { temperature: '120 °C', flow: '700 m³/h' } },
      'air.temperature: expected a temperature of at most 100 °C, where the table of the coolant ends, got 120 °C',
    ],
    [
      'air outside its table',
      { air: { temperature: '-80 °C', flow: '700 m³/h' } },
      'air.temperature: expected a temperature from -73.15 °C to 226.8 °C',
    ],
  ])('%s is refused by its path', (_, wrong, message) => {
    expect(() => coolingLoop({ ...loop, ...wrong } as Given)).toThrow(message)
  })
})
