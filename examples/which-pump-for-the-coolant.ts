// Which of two pumps keeps the coolant below 65 °C on a hill in July? Pumps, parts and figures are invented.
import { coolingLoop } from 'kerbwatt/thermal'

const pumps = {
  small: [
    ['0 L/min', '14 kPa'],
    ['8 L/min', '9 kPa'],
    ['14 L/min', '0 kPa'],
  ],
  large: [
    ['0 L/min', '55 kPa'],
    ['10 L/min', '44 kPa'],
    ['25 L/min', '0 kPa'],
  ],
} as const

for (const [name, pump] of Object.entries(pumps)) {
  const { flow, segments, checks } = coolingLoop({
    coolant: 'ethylene glycol 50 %',
    pump,
    segments: [
      { name: 'hoses', length: '6 m', bore: '16 mm', fittings: 8 },
      {
        parallel: [
          [{ name: 'controller', drop: '6 kPa', at: '8 L/min', heat: '0.9 kW' }],
          [{ name: 'charger plate', drop: '4 kPa', at: '4 L/min' }],
        ],
      },
      { name: 'motor', drop: '9 kPa', at: '8 L/min', heat: '3 kW' },
    ],
    radiator: {
      conductance: '210 W/K',
      at: { air: '900 m³/h', coolant: '8 L/min' },
      exponents: { air: 0.58, coolant: 0.2 },
    },
    air: { temperature: '35 °C', flow: '1000 m³/h' },
    limit: '65 °C',
    minimumFlow: '8 L/min',
  })
  const controller = segments.find((segment) => segment.name === 'controller')
  console.log(`${name}: ${flow}, of which ${controller?.flow} through the controller at ${controller?.outlet}`)
  for (const check of checks) console.log(`  ${check.verdict}: ${check.name}, ${check.actual}`)
}
