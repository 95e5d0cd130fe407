// Does a hilly round overheat a cable that is sized for its mean? Van, round and cable are invented.
import { cableDuty, cableTemperature } from 'kerbwatt/electrical'

const cable = { area: '25 mm²', ambient: '40 °C', laid: 'touching' } as const
const hill = [
  ['240 A', '4 min'],
  ['60 A', '6 min'],
  ['0 A', '2 min'],
  ['90 A', '8 min'],
] as const

const { rms, peak, peakAt } = cableDuty({ ...cable, profile: hill, rounds: 3, limit: '105 °C' })
const { conductorTemperature } = cableTemperature({ ...cable, current: rms })
console.log(`root mean square ${rms}: ${conductorTemperature} if it were steady`)
console.log(`followed: ${peak} after ${peakAt.as('min')}`)
