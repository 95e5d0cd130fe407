/**
 * Facts of the trade about the range of light cars: common practice, no source. The inputs are what is plausible for such
 * a car, and the bands as wide as the words of the trade: "about 160 km" is met by a tenth on either side.
 */
import { describe, expect, it } from 'vitest'
import { driveCycle } from '../../src/range/index.js'

type Given = Parameters<typeof driveCycle>[0]

/** An invented light open two-seater of 650 kg, driven alone. */
const roadster = {
  car: {
    // With a driver of 80 kg.
    mass: '730 kg',
    // Ordinary road tyres on asphalt lie between 0.010 and 0.015.
    rollingResistance: 0.012,
    // A drag coefficient of about 0.5, as open cars have, on about 1.4 m².
    dragArea: '0.7 m²',
  },
  // Two meshes, bearings and joints.
  gearbox: { efficiency: 0.93 },
  // Motor and controller, over all loads.
  motor: { efficiency: 0.88 },
  // Lights, pump, controller and what the 12 V side draws.
  auxiliaries: '150 W',
  controller: { regeneration: 0.3 },
  // Nine tenths of 28 kWh: nobody drives a pack quite empty.
  usableEnergy: '25.2 kWh',
} as const

/** Country roads at 65 km/h, a stop in 10 km, pulled away from and slowed down for like a lorry. */
const gentle = {
  journey: [{ distance: '50 km', speed: '65 km/h', stops: 5, standing: '10 s' }],
  pace: { acceleration: '0.6 m/s²', braking: '0.6 m/s²' },
} as const

/** Fast roads at 100 km/h, and a junction every 4 km, braked for late and left in haste. */
const hard = {
  journey: [{ distance: '40 km', speed: '100 km/h', stops: 10, standing: '10 s' }],
  pace: { acceleration: '3 m/s²', braking: '4 m/s²' },
} as const

/** Frost: tyres roll harder by a fifth, a small heater is on, and the cold cells give less. */
const winter = {
  car: { ...roadster.car, rollingResistance: 0.012 * 1.2 },
  air: { temperature: '-5 °C' },
  auxiliaries: '1.2 kW',
  usableEnergy: '22 kWh',
} as const

const kilometres = (given: Given) => (driveCycle(given).range?.si ?? Number.NaN) / 1000

describe('a light open car of about 650 kg with 28 kWh (common practice, no source)', () => {
  it('goes about 160 km driven hard', () => {
    const range = kilometres({ ...roadster, ...hard })
    expect(range).toBeGreaterThan(144)
    expect(range).toBeLessThan(176)
  })
  it('goes 290 to 320 km driven very gently', () => {
    const range = kilometres({ ...roadster, ...gentle })
    expect(range).toBeGreaterThan(290)
    expect(range).toBeLessThan(320)
  })
  it('goes less far in winter, driven hard or gently, and the gentle drive loses the larger share', () => {
    const kept = [hard, gentle].map(
      (drive) => kilometres({ ...roadster, ...winter, ...drive }) / kilometres({ ...roadster, ...drive }),
    )
    for (const share of kept) expect(share).toBeLessThan(1)
    // A heater that draws all the time takes more of each kilometre the slower it is driven.
    expect(kept[1]).toBeLessThan(kept[0] as number)
  })
})
