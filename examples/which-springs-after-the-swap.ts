// Which springs bring back the ride of a van that is lighter in front and heavier behind? All figures are invented.
import { restoreRide } from 'kerbwatt/mass'

const { front, rear } = restoreRide({
  axles: {
    front: { before: '296 kg', after: '262 kg', springRate: '19 N/mm', motionRatio: 0.92 },
    rear: { before: '262 kg', after: '348 kg', springRate: '22 N/mm', motionRatio: 1 },
  },
})

for (const [end, axle] of Object.entries({ front, rear })) {
  console.log(`${end}: ${axle.springRate}, ${axle.frequency.format({ digits: 3 })}, seat ${axle.preload}`)
}
