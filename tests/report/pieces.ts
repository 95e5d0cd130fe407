/** A piece of HTML of each sort, but for that of a front, which takes a study. */
import { compare } from '../../src/conversion/index.js'
import { aerodynamicDrag } from '../../src/drivetrain/index.js'
import { currentForPower, jouleHeat, packResistance, seriesVoltage } from '../../src/electrical/index.js'
import { explain, propagate, section, sweep } from '../../src/formula/index.js'
import { toHtml } from '../../src/report/index.js'
import { demo } from '../conversion/sheets.js'
import { patched } from '../patched.js'

export const working = explain(() =>
  section('A pack on a hill', () => {
    const openCircuit = seriesVoltage({ count: 4, voltage: '44.4 V' })
    const resistance = packResistance({ series: 4, parallel: 2, resistance: '14 mΩ' })
    const current = currentForPower({ openCircuit, resistance, power: '30 kW' })
    return jouleHeat({ current, resistance })
  }),
)
/** Four times 44.4 V is 177.6 V, and four times 0.1 V is 0.4 V. */
export const uncertain = propagate(seriesVoltage, { count: 4, voltage: '44.4 V ± 0.1 V' })
/** Half of 1.2 kg/m³ and 0.74 m², times the square of the speed: 0.444 N at 1 m/s, 44.4 N at 10 m/s. */
export const swept = sweep(
  aerodynamicDrag,
  { speed: { from: '10 m/s', to: '20 m/s', steps: 3 } },
  { airDensity: '1.2 kg/m³', dragArea: '0.74 m²' },
)
export const compared = () =>
  compare([
    { name: 'as it is', sheet: demo() },
    { name: 'a heavier <module>', sheet: patched(demo(), { module: { mass: '30 kg' } }) },
    { name: 'not sound', sheet: patched(demo(), { module: { mass: '30 V' } }) },
  ])

export const piecesOf = () => ({
  working: toHtml(working),
  uncertainty: toHtml(uncertain),
  sweep: toHtml(swept),
  comparison: toHtml(compared()),
})
