/** Cold plates against figures worked out apart from this library. All plates are invented. */
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import { type Quantity, quantity } from '../../src/quantity/index.js'
import { coldPlate, packTemperature } from '../../src/thermal/index.js'

const plate = {
  coolant: 'ethylene glycol 50 %',
  temperature: '20 °C',
  flow: '8 L/min',
  heat: '0 W',
  channels: { count: 1, length: '1.2 m', bore: '8 mm' },
  footprint: '0.18 m²',
  plate: { thickness: '4 mm', conductivity: '167 W/(m·K)' },
} as const

function near(actual: Quantity, wanted: number, within: number): void {
  expect(Math.abs(actual.si / wanted - 1), `${actual} against ${wanted}`).toBeLessThanOrEqual(within)
}

describe('coldPlate', () => {
  // One channel of 8 mm and 1.2 m with 8 L/min of half ethylene glycol, by the form of the VDI Heat Atlas in laminar flow and
  // by Gnielinski in turbulent flow, worked out apart from this library: Reynolds number, film, and film times wall.
  it.each([
    ['-20 °C', 1045, 748, 22.6],
    ['20 °C', 5781, 3878, 117.0],
    ['40 °C', 9987, 5661, 170.7],
    ['60 °C', 15_612, 7420, 223.8],
  ] as const)('has the film of a channel at %s', (temperature, reynolds, film, conductance) => {
    const found = coldPlate({ ...plate, temperature })
    near(found.reynolds, reynolds, 1e-3)
    near(found.coefficient, film, 1e-3)
    near(quantity('thermalConductance', found.coefficient.si * Math.PI * 0.008 * 1.2, 'W/K'), conductance, 2e-3)
  })

  // A block of cells on a plate, 0.045 m²: pad of 2 mm at 3 W/(m·K), two joints of 33 333 W/(m²·K), 4 mm of aluminium.
  // 0.014815 + 0.001333 + 0.000532 K/W in series.
  it('adds up pad, joints and plate', () => {
    const found = coldPlate({
      ...plate,
      footprint: '0.045 m²',
      pad: { thickness: '2 mm', conductivity: '3 W/(m·K)' },
      contact: quantity('heatTransferCoefficient', 1 / 3e-5, 'W/(m²·K)'),
    })
    near(found.resistance, 0.01668, 1e-4)
    near(found.conductance, 1 / (found.resistance.si + 1 / 116.97), 1e-4)
  })

  it('warms its cells along the flow by as much as its coolant', () => {
    const found = coldPlate({ ...plate, heat: '2 kW' })
    near(found.spread, 2000 / found.capacityRate.si, 1e-12)
    near(found.outlet, 293.15 + found.spread.si, 1e-12)
    near(found.hottest, found.outlet.si + 2000 / found.conductance.si, 1e-12)
  })

  it('has the film of a flat channel by its hydraulic diameter', () => {
    const { nusselt, reynolds, assumptions } = coldPlate({
      ...plate,
      temperature: '25 °C',
      channels: { count: 10, length: '0.5 m', width: '20 mm', height: '2 mm' },
    })
    // 4 · 40 / 44 mm; half ethylene glycol at 25 °C is 1071.05 kg/m³, 3.4035 mPa·s.
    near(reynolds, (1071.05 * (8e-3 / 60 / 10 / 40e-6) * 3.63636e-3) / 3.4035e-3, 1e-3)
    expect(nusselt.si).toBeGreaterThan(5.911)
    expect(assumptions.map(({ id }) => id)).toContain('channels.flatEntry')
  })

  it('shows its working, and gives a pack its conductance', () => {
    expect(explain(() => coldPlate(plate)).toText()).toContain('Gnielinski')
    const { conductance, capacityRate } = coldPlate(plate)
    const found = packTemperature({
      heatCapacity: '90 kJ/K',
      conductance: '0 W/K',
      surroundings: '20 °C',
      initial: '30 °C',
      heat: [['0 W', '5 h']],
      coolant: { heatCapacity: '5 kJ/K', fromCells: conductance, toSurroundings: '100 W/K', capacityRate },
    })
    near(found.final, 293.15, 1e-3)
  })

  it('refuses channels of no shape, and coolant that leaves its table', () => {
    const of =
      (channels: object, other: object = {}) =>
      () =>
        coldPlate({ ...plate, ...other, channels } as never)
    expect(of({ count: 1, length: '1 m' })).toThrow("channels: expected bore, such as '8 mm', or width and height")
    expect(of({ count: 1, length: '1 m', bore: '8 mm', width: '8 mm' })).toThrow('got bore and a width or height')
    expect(of(plate.channels, { heat: '80 kW' })).toThrow('heat: expected a temperature from -30 °C to 100 °C')
  })
})
