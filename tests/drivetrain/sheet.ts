/** What the tests of drivetrain procedures work on: one invented car, its motor and its pack. */

/** A salvaged module of 12 cells, invented. */
export const module = {
  name: 'salvaged module of 12 cells',
  cellsInSeries: 12,
  openCircuit: [
    [0, '37 V'],
    [0.1, '40.6 V'],
    [0.5, '44.4 V'],
    [0.9, '48.9 V'],
    [1, '50.2 V'],
  ],
  nominalVoltage: '44.4 V',
  minimumVoltage: '36 V',
  maximumVoltage: '50.4 V',
  capacity: '41 Ah',
  resistance: '14 mΩ',
  mass: '11.5 kg',
  continuousCurrent: '80 A',
  peakCurrent: '180 A',
  chargeCurrent: '41 A',
} as const

/** Four in series, two in parallel. */
export const pack = { module, series: 4, parallel: 2 } as const

/** A motor, invented. */
export const motor = {
  peakTorque: '120 N·m',
  peakPower: '50 kW',
  maximumSpeed: '8000 rpm',
  continuousTorque: '60 N·m',
  continuousPower: '22 kW',
  ratedVoltage: '160 V',
  efficiency: '88 %',
} as const

/** A light car driven at the rear, invented. */
export const car = {
  mass: '760 kg',
  rotatingFactor: 1.05,
  rollingResistance: 0.013,
  dragArea: '0.7 m²',
  wheelbase: '2.03 m',
  centreOfGravity: { aft: '1 m', up: '0.5 m' },
  drivenAxle: 'rear',
  tyre: '145/80 R13',
} as const

/** Its gearbox. */
export const gearbox = {
  gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 },
  finalDrive: 4.375,
  efficiency: 0.94,
} as const

/** The car with its drive. */
export const drive = { car, gearbox, motor } as const

/** The same on a road of some friction. */
export function gripping(friction: number) {
  return { ...drive, car: { ...car, friction } } as const
}
