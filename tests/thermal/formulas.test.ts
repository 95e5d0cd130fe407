/** What the thermal formulas must have among themselves, and the answers to wrong input. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseExpression, valueOf } from '../../src/formula/expression.js'
import { CalculationError } from '../../src/quantity/index.js'
import {
  biotNumber,
  cellCoreRise,
  cellHeat,
  convectionCoefficient,
  coolantFlow,
  criticalRadius,
  flatPlate,
  flowVelocity,
  forcedConvectionCylinder,
  frictionFactor,
  heatToWarm,
  intermittentPower,
  lumpedTemperature,
  lumpedTime,
  naturalConvectionCylinder,
  naturalConvectionWall,
  pressureDrop,
  pumpPower,
  radiationCoefficient,
  rayleighNumber,
  resistanceAtTemperature,
  reynoldsNumber,
  shortTimePower,
  sleeveConductance,
  thermalTimeConstant,
  warmUpTime,
} from '../../src/thermal/index.js'
import { between } from '../between.js'

/** Numbers near the least that a double can hold have fewer digits: 1e-300 lets them pass. */
function near(actual: number, wanted: number, relative = 1e-9): void {
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + 1e-300)
}

describe('bodies of one temperature', () => {
  const body = fc.record({
    initial: between(230, 370),
    surroundings: between(230, 370),
    timeConstant: between(10, 1e5),
    power: between(-500, 5000),
    conductance: between(1, 100),
  })

  it('come to the same temperature in two stages as in one', () => {
    fc.assert(
      fc.property(body, between(0, 1e5), between(0, 1e5), (si, first, second) => {
        const middle = lumpedTemperature.compute({ ...si, time: first })
        near(
          lumpedTemperature.compute({ ...si, initial: middle, time: second }),
          lumpedTemperature.compute({ ...si, time: first + second }),
        )
      }),
    )
  })

  it('start at their own temperature and end where the heat lost is the heat put in', () => {
    fc.assert(
      fc.property(body, (si) => {
        near(lumpedTemperature.compute({ ...si, time: 0 }), si.initial)
        const end = lumpedTemperature.compute({ ...si, time: 100 * si.timeConstant })
        expect(Math.abs(si.conductance * (end - si.surroundings) - si.power)).toBeLessThan(1e-6)
      }),
    )
  })

  it('follow the heat balance, step by small step', () => {
    // Heun's method on C dT/dt = P − G (T − Ta), 20 000 steps.
    const [heatCapacity, conductance, power, surroundings, initial, time] = [150e3, 8, 1500, 263.15, 293.15, 3600]
    const rate = (temperature: number) => (power - conductance * (temperature - surroundings)) / heatCapacity
    const step = time / 20000
    let temperature = initial
    for (let i = 0; i < 20000; i++) {
      const first = rate(temperature)
      temperature += (step / 2) * (first + rate(temperature + step * first))
    }
    const timeConstant = thermalTimeConstant.compute({ heatCapacity, conductance })
    near(
      lumpedTemperature.compute({ initial, surroundings, time, timeConstant, power, conductance }),
      temperature,
      1e-10,
    )
  })

  it('are at the target after the time for it, with and without a heater', () => {
    fc.assert(
      fc.property(body, between(0.01, 1), (si, share) => {
        fc.pre(Math.abs(si.initial - si.surroundings) > 0.1)
        const target = si.surroundings + share * (si.initial - si.surroundings)
        const time = lumpedTime.compute({ ...si, target })
        near(lumpedTemperature.compute({ ...si, power: 0, time }), target)
      }),
    )
    fc.assert(
      fc.property(
        between(230, 300),
        between(230, 300),
        between(0, 0.99),
        between(1, 100),
        (from, ambient, share, G) => {
          const end = 320
          const to = from + share * (end - from)
          const given = { heatCapacity: 1e5, conductance: G, power: G * (end - ambient) }
          const time = warmUpTime.compute({ ...given, from, to, surroundings: ambient })
          const timeConstant = thermalTimeConstant.compute(given)
          near(lumpedTemperature.compute({ ...given, initial: from, surroundings: ambient, timeConstant, time }), to)
        },
      ),
    )
  })

  it('need, when hardly any heat is lost, the time in which the heater makes the heat', () => {
    const heat = heatToWarm({ mass: '150 kg', specificHeat: '1000 J/(kg·K)', from: '-10 °C', to: '10 °C' })
    const time = warmUpTime({
      heatCapacity: '150 kJ/K',
      conductance: '0.0001 W/K',
      power: '1500 W',
      from: '-10 °C',
      to: '10 °C',
      surroundings: '-10 °C',
    })
    near(time.si, heat.si / 1500, 1e-6)
  })

  it('need a Biot number that does not change with the unit of length', () => {
    const given = { coefficient: '12 W/(m²·K)', conductivity: '0.2 W/(m·K)' } as const
    near(biotNumber({ ...given, length: '5.25 mm' }).si, 0.315)
    near(biotNumber({ ...given, length: '0.00525 m' }).si, 0.315)
  })
})

describe('coolant in pipes', () => {
  it('warms by the rise for which its flow was found', () => {
    const coolant = { density: '1063.66 kg/m³', specificHeat: '3358 J/(kg·K)' } as const
    const flow = coolantFlow({ ...coolant, heat: '5 kW', rise: '5 K' })
    near(flow.si * 1063.66 * 3358 * 5, 5000)
  })

  // 10 L/min of half glycol through 5 m of smooth hose of 16 mm bore, with fittings that cost 5.4 velocity heads:
  // worked out apart from this library, with the equation of Colebrook in turbulent flow.
  it.each([
    ['at −20 °C, laminar', '1086.87 kg/m³', '22.07 mPa·s', 653, 13.45, 0.005],
    ['at 60 °C, turbulent', '1052.04 kg/m³', '1.43 mPa·s', 9757, 5.46, 0.02],
  ] as const)('loses the pressure of a hose %s', (_, density, viscosity, reynolds, kilopascals, within) => {
    const velocity = flowVelocity({ flow: '10 L/min', bore: '16 mm' })
    const Re = reynoldsNumber({ density, velocity, bore: '16 mm', viscosity })
    near(Re.si, reynolds, 0.001)
    const friction = frictionFactor({ reynolds: Re, relativeRoughness: 0 })
    const pressure = pressureDrop({ friction, length: '5 m', bore: '16 mm', fittings: 5.4, density, velocity })
    near(pressure.in('kPa'), kilopascals, within)
  })

  it('loses the pressure of a pipe along its halves', () => {
    fc.assert(
      fc.property(between(0, 0.1), between(0, 100), between(0, 50), (friction, length, fittings) => {
        const si = { friction, length, fittings, bore: 0.016, density: 1063, velocity: 0.83 }
        const half = pressureDrop.compute({ ...si, length: length / 2, fittings: fittings / 2 })
        near(half + half, pressureDrop.compute(si))
      }),
    )
  })

  it('has in laminar flow the pressure drop of Hagen and Poiseuille, 128 µ l q / (π d⁴)', () => {
    fc.assert(
      fc.property(between(1e-7, 2e-5), between(0.004, 0.03), (flow, bore) => {
        const [density, viscosity, length] = [1080, 0.022, 5]
        const velocity = flowVelocity.compute({ flow, bore })
        const reynolds = reynoldsNumber.compute({ density, velocity, bore, viscosity })
        fc.pre(reynolds < 2300)
        const friction = frictionFactor.compute({ reynolds, relativeRoughness: 0.001 })
        near(
          pressureDrop.compute({ friction, length, bore, fittings: 0, density, velocity }),
          (128 * viscosity * length * flow) / (Math.PI * bore ** 4),
        )
      }),
    )
  })

  it('joins laminar to turbulent friction without a step', () => {
    for (const relativeRoughness of [0, 1e-4, 0.01, 0.05]) {
      const at = (reynolds: number) => frictionFactor.compute({ reynolds, relativeRoughness })
      near(at(2300 - 1e-7), at(2300), 1e-9)
      near(at(4000), at(4000 + 1e-7), 1e-9)
    }
  })

  it('keeps within 2 % of the equation of Colebrook', () => {
    fc.assert(
      fc.property(between(Math.log(4001), Math.log(1e8)), between(0, 0.05), (logarithm, relativeRoughness) => {
        const reynolds = Math.exp(logarithm)
        const haaland = frictionFactor.compute({ reynolds, relativeRoughness })
        near(haaland, colebrook(reynolds, relativeRoughness), 0.02)
      }),
    )
  })

  it('needs four times the pump power where a pump is a quarter as good', () => {
    const given = { flow: '10 L/min', pressure: '30 kPa' } as const
    near(pumpPower({ ...given, efficiency: 0.25 }).ratioTo(pumpPower({ ...given, efficiency: 1 })), 4)
  })
})

/** Friction factor of Colebrook and White, by iteration to the last digit. */
function colebrook(reynolds: number, relativeRoughness: number): number {
  let root = 7
  for (let i = 0; i < 100; i++) root = -2 * Math.log10(relativeRoughness / 3.7 + (2.51 * root) / reynolds)
  return root ** -2
}

describe('what is printed in each branch', () => {
  it.each([
    [frictionFactor, [0.5, 100, 2299.9, 2300, 2301, 3000, 4000, 4000.1, 1e4, 1e8]],
    [flatPlate, [1, 9600, 499999, 500000, 500001, 1e8]],
  ] as const)('is computed by %o', (formula, reynoldsNumbers) => {
    const expression = parseExpression(formula.expression)
    for (const reynolds of reynoldsNumbers) {
      const [printed, computed] =
        formula === flatPlate
          ? [valueOf(expression, { Re: reynolds, Pr: 0.7 }), flatPlate.compute({ reynolds, prandtl: 0.7 })]
          : [
              valueOf(expression, { Re: reynolds, e: 0.001 }),
              frictionFactor.compute({ reynolds, relativeRoughness: 0.001 }),
            ]
      near(printed, computed)
    }
  })
})

describe('convection and radiation', () => {
  // Incropera, example 7.2: strips of 50 mm along air at 60 m/s; heat per metre of width, and the book's properties.
  it('heats the strips of a plate as a published example does', () => {
    const heat = (length: number) => {
      const reynolds = (60 * length) / 26.41e-6
      const h = convectionCoefficient.compute({
        nusselt: flatPlate.compute({ reynolds, prandtl: 0.69 }),
        conductivity: 0.0338,
        length,
      })
      return h * length * 205
    }
    near(heat(0.05), 1370, 0.003)
    near(heat(0.25) - heat(0.2), 1017.5, 0.003)
    near(heat(0.3) - heat(0.25), 1427.6, 0.003)
  })

  it('loses no more by turning turbulent than it did just before', () => {
    const at = (reynolds: number) => flatPlate.compute({ reynolds, prandtl: 0.7 })
    near(at(500000.001), at(500000), 0.001)
  })

  // Incropera, example 1.2: 998.4 W for each metre of a pipe of 70 mm, 15 W/(m²·K) of convection beside the radiation.
  it('loses from a pipe what a published example loses', () => {
    const radiation = radiationCoefficient({ emissivity: 0.8, surface: '200 °C', surroundings: '25 °C' })
    near((radiation.si + 15) * Math.PI * 0.07 * 175, 998.4, 0.001)
  })

  // Incropera, example 9.4 (recomputed): 322.5 W/m of convection and 441.0 W/m of radiation from a pipe of 100 mm.
  it('loses from a pipe in still air what a published example loses', () => {
    const rayleigh = rayleighNumber({
      expansion: '0.002725 1/K',
      difference: '142 K',
      length: '100 mm',
      viscosity: '22.8 mm²/s',
      diffusivity: '32.8 mm²/s',
    })
    const nusselt = naturalConvectionCylinder({ rayleigh, prandtl: 0.697 })
    const convection = convectionCoefficient({ nusselt, conductivity: '0.0313 W/(m·K)', length: '100 mm' })
    const radiation = radiationCoefficient({ emissivity: 0.85, surface: '438 K', surroundings: '296 K' })
    near(convection.si * Math.PI * 0.1 * 142, 322.5, 0.003)
    near(radiation.si * Math.PI * 0.1 * 142, 441, 0.003)
  })

  // Incropera, example 9.2 (recomputed): 1060 W from a glass door of 0.71 m by 1.02 m, 209 K above the air.
  it('loses from a wall what a published example loses', () => {
    const rayleigh = rayleighNumber({
      expansion: '0.0025 1/K',
      difference: '209 K',
      length: '0.71 m',
      viscosity: '26.4 mm²/s',
      diffusivity: '38.3 mm²/s',
    })
    const nusselt = naturalConvectionWall({ rayleigh, prandtl: 0.69 })
    const { si } = convectionCoefficient({ nusselt, conductivity: '0.0338 W/(m·K)', length: '0.71 m' })
    near(si * 0.71 * 1.02 * 209, 1060, 0.003)
  })

  // Incropera, example 5.2: a junction in gas at 200 °C between walls at 400 °C. The balance solves to 491.7 K.
  it('brings a junction between gas and walls to the temperature of a published example', () => {
    const lost = (surface: number) =>
      400 * (surface - 473) -
      radiationCoefficient.compute({ emissivity: 0.9, surface, surroundings: 673 }) * (673 - surface)
    expect(lost(491.6)).toBeLessThan(0)
    expect(lost(491.8)).toBeGreaterThan(0)
  })

  // Incropera, example 5.3: a coated panel of 3 mm aluminium in an oven at 175 °C, then in air at 25 °C. The book reaches
  // 150 °C after 123 s, and 37 °C after 987 s in all, 300 s of them at heat.
  it('heats and cools a panel in the time of a published example', () => {
    const capacity = 2770 * 875 * 0.0015
    const timeOf = (start: number, surroundings: number, coefficient: number, isDone: (at: number) => boolean) => {
      let [at, time] = [start, 0]
      const rate = (surface: number) =>
        ((coefficient + radiationCoefficient.compute({ emissivity: 0.8, surface, surroundings })) *
          (surroundings - surface)) /
        capacity
      while (!isDone(at)) {
        at += 0.01 * rate(at + 0.005 * rate(at))
        time += 0.01
      }
      return time
    }
    const heated = timeOf(298, 448, 40, (at) => at >= 423)
    near(heated, 123, 0.005)
    // It is nearly as hot as the oven after the 300 s, so it is cooled from 174.7 °C, as read.
    near(heated + 300 + timeOf(447.7, 298, 10, (at) => at <= 310), 987, 0.005)
  })

  it('radiates by the difference of the fourth powers', () => {
    fc.assert(
      fc.property(between(0, 1), between(200, 600), between(200, 600), (emissivity, surface, surroundings) => {
        fc.pre(Math.abs(surface - surroundings) > 1)
        const coefficient = radiationCoefficient.compute({ emissivity, surface, surroundings })
        const flux = emissivity * 5.670374419e-8 * (surface ** 4 - surroundings ** 4)
        near(coefficient * (surface - surroundings), flux, 1e-9)
      }),
    )
  })

  it('refuses a stream too slow for the correlation', () => {
    expect(() => forcedConvectionCylinder({ reynolds: 0.1, prandtl: 0.7 })).toThrow(
      'reynolds * prandtl: expected at least 0.2',
    )
    expect(() => flatPlate({ reynolds: 1e5, prandtl: 100 })).toThrow(
      'prandtl: expected a ratio at least 0.6 and at most 60, got 100',
    )
  })
})

describe('heat of cells', () => {
  it('is that of the resistance where no entropy coefficient is given', () => {
    near(cellHeat({ current: '5 A', resistance: '25 mΩ', temperature: '25 °C' }).in('W'), 0.625)
  })

  it('has an entropy part that turns its sign with the current', () => {
    fc.assert(
      fc.property(between(0, 500), between(250, 330), between(-1e-3, 1e-3), (current, temperature, coefficient) => {
        const si = { resistance: 1e-3, temperature, entropyCoefficient: coefficient }
        const [out, back] = [cellHeat.compute({ ...si, current }), cellHeat.compute({ ...si, current: -current })]
        expect(Math.abs((out + back) / 2 - 1e-3 * current ** 2)).toBeLessThanOrEqual(1e-9)
      }),
    )
  })

  it('depends on a resistance that is as measured at the temperatures of measurement', () => {
    fc.assert(
      fc.property(between(240, 275), between(280, 320), between(1, 10), (coldTemperature, warmTemperature, times) => {
        const si = { coldTemperature, warmTemperature, coldResistance: times * 1e-3, warmResistance: 1e-3 }
        near(resistanceAtTemperature.compute({ ...si, temperature: coldTemperature }), times * 1e-3)
        near(resistanceAtTemperature.compute({ ...si, temperature: warmTemperature }), 1e-3)
      }),
    )
  })

  it('refuses measurements that were exchanged', () => {
    const given = { temperature: '0 °C', coldTemperature: '-10 °C', warmTemperature: '25 °C' } as const
    expect(() => resistanceAtTemperature({ ...given, coldResistance: '1 mΩ', warmResistance: '3 mΩ' })).toThrow(
      'coldResistance / warmResistance: expected at least 1',
    )
    expect(() =>
      resistanceAtTemperature({
        ...given,
        coldTemperature: '25 °C',
        coldResistance: '3 mΩ',
        warmResistance: '1 mΩ',
      }),
    ).toThrow('warmTemperature - coldTemperature: expected above 0')
  })
})

describe('short-time and intermittent power', () => {
  const minutes = (count: number) => count * 60
  // A rise of 1 K per squared kilowatt in the end: what makes 400 K for ever is 20 kW.
  const riseAfter = (rise: number, power: number, time: number, timeConstant: number) =>
    lumpedTemperature.compute({
      initial: 300 + rise,
      surroundings: 300,
      power: (power / 1000) ** 2,
      conductance: 1,
      time,
      timeConstant,
    }) - 300

  it('bring a motor just to where its continuous power does', () => {
    const power = shortTimePower.compute({ continuousPower: 2e4, time: minutes(7), timeConstant: minutes(31) })
    near(riseAfter(0, power, minutes(7), minutes(31)), 400)
  })

  it('do so again and again, with a rest between', () => {
    const [time, rest, timeConstant, restingTimeConstant] = [minutes(3), minutes(5), minutes(31), minutes(47)]
    const given = { continuousPower: 2e4, time, rest, timeConstant, restingTimeConstant }
    const power = intermittentPower.compute(given)
    let [hot, cold] = [0, 0]
    for (let round = 0; round < 400; round++) {
      hot = riseAfter(cold, power, time, timeConstant)
      cold = riseAfter(hot, 0, rest, restingTimeConstant)
    }
    near(hot, 400)
    near(intermittentPower.compute({ ...given, rest: 0 }), 2e4)
    const once = shortTimePower.compute({ continuousPower: 2e4, time, timeConstant })
    near(intermittentPower.compute({ ...given, rest: minutes(1e5) }), once)
  })
})

describe('insulation around a wire or a hose', () => {
  const sleeve = { length: 1, innerDiameter: 0.01, conductivity: 0.055, coefficient: 5 }
  const at = (outerDiameter: number) => sleeveConductance.compute({ ...sleeve, outerDiameter })

  it('loses the most at the critical radius, and bare what its surface loses', () => {
    near(at(0.01), 5 * Math.PI * 0.01)
    const critical = 2 * criticalRadius.compute(sleeve)
    expect(at(critical)).toBeGreaterThan(at(critical * 1.01))
    expect(at(critical)).toBeGreaterThan(at(critical * 0.99))
  })

  it('that is thinner than what it is around is refused', () => {
    expect(() =>
      sleeveConductance({
        length: '1 m',
        innerDiameter: '10 mm',
        outerDiameter: '9 mm',
        conductivity: '0.055 W/(m·K)',
        coefficient: '5 W/(m²·K)',
      }),
    ).toThrow('outerDiameter / innerDiameter: expected at least 1')
  })
})

describe('the core of a cell', () => {
  it('is as much hotter as the heat that each shell lets through makes it', () => {
    // The heat made within a radius r passes the shell at r: dT = P (r/R)² dr / (2 π r L k), summed over the shells.
    const [heat, length, conductivity, shells] = [2, 0.07, 0.2, 1000]
    let rise = 0
    for (let i = 0; i < shells; i++) {
      const r = (i + 0.5) / shells
      rise += (heat * r ** 2) / (2 * Math.PI * r * length * conductivity) / shells
    }
    near(cellCoreRise.compute({ heat, length, conductivity }), rise)
  })
})

describe('wrong thermal input', () => {
  const heater = {
    heatCapacity: '150 kJ/K',
    conductance: '8 W/K',
    from: '-10 °C',
    to: '10 °C',
    surroundings: '-10 °C',
  } as const

  it('tells where a heater that is too weak ends, short of the target', () => {
    // 100 W over 8 W/K is 12.5 K: the body ends at 2.5 °C.
    expect(() => warmUpTime({ ...heater, power: '100 W' })).toThrow(CalculationError)
    expect(() => warmUpTime({ ...heater, power: '100 W' })).toThrow(
      'warmUpTime: the heater never brings the body to 10 °C: in the end it reaches 2.5 °C',
    )
  })

  it('refuses to warm downwards', () => {
    expect(() => warmUpTime({ ...heater, power: '1 kW', to: '-20 °C' })).toThrow('to - from: expected at least 0')
    expect(() => heatToWarm({ mass: '150 kg', specificHeat: '1000 J/(kg·K)', from: '10 °C', to: '-10 °C' })).toThrow(
      'to - from: expected at least 0',
    )
  })

  it('refuses a target that is not on the way, and no difference at all', () => {
    const given = { initial: '25 °C', timeConstant: '1 h' } as const
    expect(() => lumpedTime({ ...given, surroundings: '20 °C', target: '15 °C' })).toThrow(
      '(target - surroundings) / (initial - surroundings): expected above 0 and at most 1',
    )
    expect(() => lumpedTime({ ...given, surroundings: '25 °C', target: '25 °C' })).toThrow(
      'abs(initial - surroundings): expected above 0',
    )
  })

  it('refuses a resistance for a conductance', () => {
    // @ts-expect-error a thermal resistance is not a conductance
    expect(() => thermalTimeConstant({ heatCapacity: '150 kJ/K', conductance: '0.1 K/W' })).toThrow(
      'K/W measures a thermal resistance',
    )
  })
})
