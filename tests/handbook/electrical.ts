/** Published values for the electrical domain. */
import {
  acFeedDrop,
  acPower,
  adiabaticConstant,
  adiabaticTime,
  adiabaticWithstand,
  ampacityAtAmbient,
  awgDiameter,
  backupTime,
  balanceTime,
  barAmpacityAtRise,
  barExpansion,
  barResistance,
  batteryRunTime,
  boltPreload,
  cableCurrent,
  cableLoss,
  cableVoltageDrop,
  capacitorEnergy,
  capacitorTimeConstant,
  capacityBetweenRests,
  cellVoltage,
  chargerTestVoltage,
  chargerTestVoltageDirect,
  chargeTime,
  clearanceAtAltitude,
  coilPower,
  converterInputCurrent,
  coulombicEfficiency,
  cRate,
  crossFeedCurrent,
  currentAtVoltage,
  currentForPower,
  dischargeTime,
  energyAboveSafeVoltage,
  faultTimeConstant,
  fuseAltitudeFactor,
  fuseAmbientFactor,
  fuseLoss,
  fuseRating,
  graphitePotential,
  greatestFuseRating,
  inrushAtClosing,
  insulationDrop,
  inverterInput,
  ironPhosphatePotential,
  isolationFromVoltmeter,
  jointResistance,
  jouleHeat,
  leakageCurrent,
  lithiumFraction,
  loopInductance,
  loopResistance,
  maximumPower,
  meltingTime,
  minimumIsolation,
  monitorSettlingTime,
  naumannCalendarLoss,
  naumannCycleLoss,
  nmcPotential,
  packEnergy,
  packResistance,
  parallelCharge,
  pilotCurrent,
  pilotVoltage,
  powerAtFloor,
  prechargeResistance,
  prechargeTime,
  prechargeVoltage,
  prospectiveCurrent,
  proximityCurrent,
  resistancePerLength,
  resistancePerLengthAt,
  resistivityAt,
  roundTripEfficiency,
  schmalstiegCalendarLoss,
  schmalstiegCalendarRise,
  schmalstiegCycleLoss,
  schmalstiegCycleRise,
  seriesVoltage,
  shortTimeWithstand,
  specificEnergy,
  stateOfHealth,
  stepResistance,
  surfaceHeatFlux,
  terminalPower,
  terminalVoltage,
  touchingShare,
  usableEnergy,
  wangCycleLoss,
  wireArea,
  yCapacitorEnergy,
} from '../../src/electrical/index.js'
import { cite, commonPractice, definition } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { handbook } from './handbook.js'

const astm = cite('ASTM B258')
const wireTable = cite('copper wire table (100 % IACS, 20 °C)')
const copper = { volumetricHeat: '0.00345 J/(mm³·K)', beta: '234.5 K', resistivity: '0.017241 Ω·mm²/m' } as const
const aluminium = { volumetricHeat: '0.0025 J/(mm³·K)', beta: '228 K', resistivity: '0.028264 Ω·mm²/m' } as const
const kTable = cite('IEC 60364-5-54', 'Annex A, table of k')
const tableRounding = 'The table rounds to whole numbers, with constants of three figures.'
const chen2020 = cite(
  'Chen and others, Journal of the Electrochemical Society 167 (2020) 080534',
  'fits of the electrodes',
)
const collegePhysics = cite('OpenStax, College Physics', 'example 21.2')

export const electricalHandbook = [
  handbook(awgDiameter, [
    { given: { gauge: -3 }, expected: '11.684 mm', within: '0.001 mm', source: astm, standing: 'read', note: '4/0' },
    { given: { gauge: 0 }, expected: '8.252 mm', within: '0.001 mm', source: astm, standing: 'read', note: '1/0' },
    { given: { gauge: 4 }, expected: '5.189 mm', within: '0.001 mm', source: astm, standing: 'read' },
    { given: { gauge: 10 }, expected: '2.588 mm', within: '0.001 mm', source: astm, standing: 'read' },
  ]),
  handbook(wireArea, [
    {
      given: { diameter: '11.684 mm' },
      expected: '107.22 mm²',
      within: 0.001,
      source: astm,
      standing: 'recomputed',
      note: 'Read as 107; the further figures are the arithmetic of the definition.',
    },
    { given: { diameter: '2.588 mm' }, expected: '5.261 mm²', within: 0.001, source: astm, standing: 'recomputed' },
  ]),
  handbook(resistivityAt, [
    {
      given: { resistivity: '1 Ω·mm²/m', coefficient: '0.00393 1/K', temperature: '90 °C' },
      expected: '1.2751 Ω·mm²/m',
      within: 1e-4,
      source: cite('IEC 60028', 'coefficient of annealed copper'),
      standing: 'recomputed',
      note: 'At 1 Ω·mm²/m the result is the ratio to 20 °C.',
    },
    {
      given: { resistivity: '1 Ω·mm²/m', coefficient: '0.00393 1/K', temperature: '-20 °C' },
      expected: '0.8428 Ω·mm²/m',
      within: 1e-4,
      source: cite('IEC 60028', 'coefficient of annealed copper'),
      standing: 'recomputed',
    },
    {
      given: { resistivity: '1 Ω·mm²/m', coefficient: '0.00403 1/K', temperature: '90 °C' },
      expected: '1.2821 Ω·mm²/m',
      within: 1e-4,
      source: cite('IEC 60889', 'coefficient of aluminium'),
      standing: 'recomputed',
    },
    {
      given: { resistivity: '0.82 Ω·mm²/m', coefficient: '0.00393 1/K', temperature: '75 °C' },
      expected: '1 Ω·mm²/m',
      within: 0.004,
      source: cite('IEC 60228', 'temperature correction factor at 75 °C'),
      standing: 'read',
      note: 'The standard corrects with 250 / (230 + θ), a convention that differs from 0.00393 1/K by up to 0.4 %.',
    },
  ]),
  handbook(resistancePerLength, [
    {
      given: { resistivity: '0.017241 Ω·mm²/m', area: '107.22 mm²' },
      expected: '0.1608 Ω/km',
      within: 0.001,
      source: wireTable,
      standing: 'read',
      note: '4/0',
    },
    {
      given: { resistivity: '0.017241 Ω·mm²/m', area: '53.48 mm²' },
      expected: '0.3224 Ω/km',
      within: 0.001,
      source: wireTable,
      standing: 'read',
      note: '1/0',
    },
    {
      given: { resistivity: '0.017241 Ω·mm²/m', area: '5.261 mm²' },
      expected: '3.277 Ω/km',
      within: 0.001,
      source: wireTable,
      standing: 'read',
      note: '10',
    },
  ]),
  handbook(cableVoltageDrop, [
    {
      given: { current: '10 A', resistancePerLength: '1.84 mΩ/m', length: '0.5 m' },
      expected: '18.4 mV',
      within: 0.001,
      source: cite('BS 7671:2008', 'Appendix 4, 25 mm² flexible cord, 60 °C'),
      standing: 'recomputed',
      note: 'The table gives mV per ampere and metre for both conductors: 1.8, rounded.',
    },
    {
      given: { current: '1 A', resistancePerLength: '0.45478 mΩ/m', length: '1 m' },
      expected: '0.91 mV',
      within: 0.025,
      source: cite('BS 7671:2008', 'Appendix 4, 50 mm² flexible cord, 60 °C'),
      standing: 'read',
      note: 'From 0.393 Ω/km at 20 °C (tinned, class 5), taken to 60 °C. The table is rounded to two figures.',
    },
    {
      given: { current: '150 A', resistancePerLength: '0.706405 mΩ/m', length: '3 m' },
      expected: '0.6358 V',
      within: 0.001,
      source: cite('IEC 60228', '35 mm² class 5, 0.554 Ω/km at 20 °C, taken to 90 °C'),
      standing: 'recomputed',
    },
    {
      given: { current: '8.3 A', resistancePerLength: '18 mΩ/m', length: '0.9 m' },
      expected: '0.269 V',
      within: 0.002,
      source: cite('a trade journal for agricultural machines', '1 mm² of 0.018 Ω·mm²/m, 1.8 m of wire in all'),
      standing: 'recomputed',
      note: 'The current comes back through the body: half of the wire counts as out, half as back.',
    },
    {
      given: { current: '20 A', resistancePerLength: '8.333 mΩ/m', length: '3 m' },
      expected: '1 V',
      within: 0.001,
      source: cite("a heavy-engine maker's installation manual", '2.1 mm² of 0.0175 Ω·mm²/m, 6 m of wire in all'),
      standing: 'recomputed',
      note: '5 % of 24 V, less 0.1 V for each of two connections.',
    },
  ]),
  handbook(loopResistance, [
    {
      given: { resistancePerLength: '0.206 mΩ/m', length: '5 m' },
      expected: '2.06 mΩ',
      within: 1e-9,
      source: cite('IEC 60228', 'table 3, 95 mm² class 5: 0.206 Ω/km'),
      standing: 'recomputed',
      note: 'Ten metres of conductor.',
    },
  ]),
  handbook(cableLoss, [
    {
      given: { current: '150 A', resistancePerLength: '0.706405 mΩ/m', length: '3 m' },
      expected: '95.4 W',
      within: 0.001,
      source: cite('IEC 60228', '35 mm² class 5, 0.554 Ω/km at 20 °C, taken to 90 °C'),
      standing: 'recomputed',
    },
  ]),
  handbook(adiabaticConstant, [
    {
      given: { ...copper, initial: '90 °C', final: '250 °C' },
      expected: '143 A·√s/mm²',
      within: 0.006,
      source: kTable,
      standing: 'read',
      note: tableRounding,
    },
    {
      given: { ...copper, initial: '70 °C', final: '160 °C' },
      expected: '115 A·√s/mm²',
      within: 0.006,
      source: kTable,
      standing: 'read',
      note: tableRounding,
    },
    {
      given: { ...aluminium, initial: '70 °C', final: '160 °C' },
      expected: '76 A·√s/mm²',
      within: 0.006,
      source: kTable,
      standing: 'read',
      note: tableRounding,
    },
    {
      given: { ...aluminium, initial: '90 °C', final: '250 °C' },
      expected: '94 A·√s/mm²',
      within: 0.006,
      source: kTable,
      standing: 'read',
      note: tableRounding,
    },
    {
      given: { ...copper, initial: '30 °C', final: '160 °C' },
      expected: '143 A·√s/mm²',
      within: 0.006,
      source: kTable,
      standing: 'from memory',
      note: tableRounding,
    },
    {
      given: { ...copper, initial: '30 °C', final: '250 °C' },
      expected: '176 A·√s/mm²',
      within: 0.006,
      source: kTable,
      standing: 'from memory',
      note: tableRounding,
    },
    {
      given: { ...aluminium, initial: '30 °C', final: '250 °C' },
      expected: '116 A·√s/mm²',
      within: 0.006,
      source: kTable,
      standing: 'from memory',
      note: tableRounding,
    },
    {
      given: { ...copper, initial: '90 °C', final: '250 °C' },
      expected: '142.9 A·√s/mm²',
      within: 0.0005,
      source: cite('IEC 60364-5-54', 'Annex A, formula and constants'),
      standing: 'recomputed',
    },
  ]),
  handbook(adiabaticWithstand, [
    {
      given: { constant: '115 A·√s/mm²', area: '50 mm²' },
      expected: '33.0625 kA²·s',
      within: 1e-6,
      source: cite('IEC 60364-5-54', 'copper in PVC, 50 mm² for 1 s: 5750 A'),
      standing: 'recomputed',
    },
  ]),
  handbook(adiabaticTime, [
    {
      given: { constant: '143 A·√s/mm²', area: '35 mm²', current: '6 kA' },
      expected: '0.6958 s',
      within: 0.001,
      source: cite('IEC 60364-5-54', '543.1.2'),
      standing: 'recomputed',
    },
    {
      given: { constant: '115 A·√s/mm²', area: '22 mm²', current: '8 kA' },
      expected: '0.1 s',
      within: 0.001,
      source: cite('IEC 60364-5-54', '543.1.2'),
      standing: 'recomputed',
    },
    {
      given: { constant: '143 A·√s/mm²', area: '37.53 mm²', current: '12 kA' },
      expected: '0.2 s',
      within: 0.001,
      source: cite('IEC 60364-5-54', '543.1.2'),
      standing: 'recomputed',
    },
  ]),
  handbook(ampacityAtAmbient, [
    ...(
      [
        ['90 °C', '30 °C', '40 °C', '91 A', 'NFPA 70 (NEC)', '310.15(B)(1), 90 °C at 40 °C'],
        ['75 °C', '30 °C', '40 °C', '88 A', 'NFPA 70 (NEC)', '310.15(B)(1), 75 °C at 40 °C'],
        ['90 °C', '30 °C', '50 °C', '82 A', 'NFPA 70 (NEC)', '310.15(B)(1), 90 °C at 50 °C'],
        ['60 °C', '30 °C', '50 °C', '58 A', 'NFPA 70 (NEC)', '310.15(B)(1), 60 °C at 50 °C'],
        ['90 °C', '30 °C', '10 °C', '115 A', 'NFPA 70 (NEC)', '310.15(B)(1), 90 °C at 10 °C'],
        ['70 °C', '30 °C', '40 °C', '87 A', 'IEC 60364-5-52', 'Table B.52.14, PVC at 40 °C'],
        ['70 °C', '30 °C', '50 °C', '71 A', 'IEC 60364-5-52', 'Table B.52.14, PVC at 50 °C'],
        ['70 °C', '30 °C', '60 °C', '50 A', 'IEC 60364-5-52', 'Table B.52.14, PVC at 60 °C'],
      ] as const
    ).map(([rated, ratedAmbient, ambient, expected, work, place]) => ({
      given: { ampacity: '100 A', rated, ratedAmbient, ambient } as const,
      expected,
      within: '0.5 A' as const,
      source: cite(work, place),
      standing: 'read' as const,
      note: 'The table gives the factor to two places; at 100 A the result is the factor in per cent.',
    })),
    {
      given: { ampacity: '100 A', rated: '150 °C', ratedAmbient: '40 °C', ambient: '100 °C' },
      expected: '67 A',
      within: '0.6 A',
      source: cite('NFPA 70 (NEC)', '310.15(B)(2), 150 °C at 100 °C'),
      standing: 'read',
      note: 'The table gives the factor to two places.',
    },
  ]),
  handbook(resistancePerLengthAt, [
    {
      given: { resistance: '0.05 Ω/kft', coefficient: '0.00393 1/K', temperature: '75 °C' },
      expected: '0.0608 Ω/kft',
      within: 0.001,
      source: cite('NFPA 70 (NEC)', 'chapter 9, Table 8, stranded 4/0 at 75 °C'),
      standing: 'recomputed',
      note: 'The value at 20 °C follows from the one at 75 °C by the note under the table.',
    },
  ]),
  handbook(touchingShare, [
    {
      given: { outerDiameter: '16 mm' },
      expected: 0.71975,
      within: 1e-4,
      source: cite('IEC 60287-2-1', 'Table 3, one cable, and two horizontal and touching, 16 mm'),
      standing: 'from memory',
      note: 'One cable: 6.4504 W/m²K^1.25, from constants that were read; two: 4.6427, from memory.',
    },
  ]),
  handbook(surfaceHeatFlux, [
    {
      given: { convection: '7.23 W/(m²·K)', radiation: '9.885 W/(m²·K)', difference: '142 K' },
      expected: '2430 W/m²',
      within: 0.003,
      source: cite('Incropera, Fundamentals of Heat and Mass Transfer', '6th edition, example 9.4'),
      standing: 'recomputed',
      note: '322.5 W/m and 441.0 W/m of a pipe of 0.1 m.',
    },
  ]),
  handbook(insulationDrop, [
    {
      given: {
        heatFlux: '727.6 W/m²',
        outerDiameter: '7 mm',
        conductorDiameter: '3 mm',
        conductivity: '0.15 W/(m·K)',
      },
      expected: '14.4 K',
      within: '0.1 K',
      source: cite('Cengel, Heat Transfer', 'example 3.9'),
      standing: 'recomputed',
      note: '80 W from 5 m of wire: 105.0 °C under the insulation, 90.6 °C on it.',
    },
  ]),
  handbook(cableCurrent, [
    {
      given: { heatFlux: '1115.2 W/m²', outerDiameter: '28.14 mm', resistancePerLength: '0.0939 mΩ/m' },
      expected: '1025 A',
      within: 0.001,
      source: cite('IEEE 738', 'worked example'),
      standing: 'recomputed',
      note: 'Convection 81.93 W/m and radiation 39.1 W/m, less 22.44 W/m of sun.',
    },
  ]),
  handbook(seriesVoltage, [
    {
      given: { count: 96, voltage: '3.6 V' },
      expected: '345.6 V',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
    {
      given: { count: 96, voltage: '4.2 V' },
      expected: '403.2 V',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
    {
      given: { count: 17, voltage: '3.65 V' },
      expected: '62.05 V',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(parallelCharge, [
    { given: { count: 3, capacity: '5 Ah' }, expected: '15 Ah', within: 1e-12, source: definition, standing: 'exact' },
  ]),
  handbook(packEnergy, [
    {
      given: { voltage: '345.6 V', capacity: '15 Ah' },
      expected: '5.184 kWh',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(packResistance, [
    {
      given: { series: 96, parallel: 3, resistance: '20 mΩ' },
      expected: '640 mΩ',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(usableEnergy, [
    {
      given: { energy: '24 kWh', upper: 0.9, lower: 0.2 },
      expected: '16.8 kWh',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(cRate, [
    {
      given: { current: '10 A', capacity: '5 Ah' },
      expected: '2 C',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(terminalVoltage, [
    {
      given: { openCircuit: '345.6 V', current: '100 A', resistance: '640 mΩ' },
      expected: '281.6 V',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
    {
      given: { openCircuit: '12 V', current: '20 A', resistance: '100 mΩ' },
      expected: '10 V',
      within: 1e-9,
      source: collegePhysics,
      standing: 'from memory',
      note: 'A load of 0.500 Ω.',
    },
    {
      given: { openCircuit: '12 V', current: '1.188 A', resistance: '100 mΩ' },
      expected: '11.9 V',
      within: '0.05 V',
      source: collegePhysics,
      standing: 'from memory',
      note: 'A load of 10.0 Ω; the example gives three figures.',
    },
  ]),
  handbook(currentForPower, [
    {
      given: { openCircuit: '12 V', resistance: '100 mΩ', power: '200 W' },
      expected: '20 A',
      within: 1e-9,
      source: collegePhysics,
      standing: 'from memory',
      note: 'A load of 0.500 Ω takes 200 W.',
    },
    {
      given: { openCircuit: '12 V', resistance: '100 mΩ', power: '-130 W' },
      expected: '-10 A',
      within: 1e-9,
      source: definition,
      standing: 'exact',
      note: 'Charged with 10 A the terminals stand at 13 V.',
    },
  ]),
  handbook(maximumPower, [
    {
      given: { openCircuit: '12 V', resistance: '500 mΩ' },
      expected: '72 W',
      within: 1e-9,
      source: collegePhysics,
      standing: 'from memory',
      note: 'A load equal to the inner resistance has 6.00 V and 12 A.',
    },
  ]),
  handbook(powerAtFloor, [
    {
      given: { openCircuit: '12 V', floor: '10 V', resistance: '100 mΩ' },
      expected: '200 W',
      within: 1e-9,
      source: collegePhysics,
      standing: 'from memory',
    },
  ]),
  handbook(jouleHeat, [
    {
      given: { current: '20 A', resistance: '100 mΩ' },
      expected: '40 W',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
    ...(
      [
        ['5 µΩ', '0.45 W'],
        ['10 µΩ', '0.9 W'],
      ] as const
    ).map(([resistance, expected]) => ({
      given: { current: '300 A', resistance } as const,
      expected,
      within: 1e-9,
      source: definition,
      standing: 'exact' as const,
      note: 'A bolted joint.',
    })),
    {
      given: { current: '0.12424 A', resistance: '33 Ω' },
      expected: '0.509 W',
      within: 0.002,
      source: definition,
      standing: 'exact',
      note: 'A bleeder of 33 Ω at 4.1 V.',
    },
  ]),
  handbook(specificEnergy, [
    {
      given: { energy: '24 kWh', mass: '150 kg' },
      expected: '160 Wh/kg',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(currentAtVoltage, [
    {
      given: { openCircuit: '12 V', terminal: '10 V', resistance: '100 mΩ' },
      expected: '20 A',
      within: 1e-9,
      source: collegePhysics,
      standing: 'from memory',
    },
  ]),
  handbook(terminalPower, [
    {
      given: { voltage: '10 V', current: '20 A' },
      expected: '200 W',
      within: 1e-9,
      source: collegePhysics,
      standing: 'from memory',
    },
  ]),
  handbook(lithiumFraction, [
    {
      given: { empty: 0.2, full: 0.8, stateOfCharge: 0.25 },
      expected: 0.35,
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(graphitePotential, [
    { given: { lithium: 0.5 }, expected: '0.13309 V', within: '0.1 mV', source: chen2020, standing: 'recomputed' },
  ]),
  handbook(nmcPotential, [
    { given: { lithium: 0.5 }, expected: '3.97196 V', within: '0.1 mV', source: chen2020, standing: 'recomputed' },
  ]),
  handbook(ironPhosphatePotential, [
    {
      given: { lithium: 0.5 },
      expected: '3.42 V',
      within: '0.03 V',
      source: commonPractice,
      standing: 'from memory',
      note: 'The plateau of iron phosphate against lithium, which authors give from 3.40 V to 3.45 V.',
    },
  ]),
  handbook(cellVoltage, [
    {
      given: { positive: '3.97196 V', negative: '0.13309 V' },
      expected: '3.83887 V',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(fuseRating, [
    {
      given: { current: '130 A' },
      expected: '162.5 A',
      within: 1e-9,
      source: cite('NFPA 70 (NEC)', '210.20(A), 125 % of the continuous load'),
      standing: 'recomputed',
    },
    {
      given: { current: '90 A', loadFactor: 0.8, ambientFactor: 0.9 },
      expected: '125 A',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
    ...(
      [
        ['24 A', '30 A'],
        ['32 A', '40 A'],
        ['40 A', '50 A'],
        ['48 A', '60 A'],
        ['80 A', '100 A'],
      ] as const
    ).map(([current, expected]) => ({
      given: { current },
      expected,
      within: 1e-9,
      source: cite('NFPA 70 (NEC)', '625.41, a charge is a continuous load'),
      standing: 'read' as const,
    })),
    ...(
      [
        ['11 A', '14.67 A'],
        ['16 A', '21.33 A'],
        ['5.4 A', '7.2 A'],
      ] as const
    ).map(([current, expected]) => ({
      given: { current, loadFactor: 0.75 },
      expected,
      within: 0.001,
      source: cite('guides of fuse makers', 'plug-in fuses carry at most 75 % of their rating for long at 25 °C'),
      standing: 'recomputed' as const,
    })),
  ]),
  handbook(greatestFuseRating, [
    {
      given: { ampacity: '110 A' },
      expected: '100 A',
      within: 0.005,
      source: cite(
        'IEC 60364-4-43',
        '433.1, as guides to it apply it to gG fuses: the cable carries 1.1 times the rating',
      ),
      standing: 'from memory',
    },
    {
      given: { ampacity: '100 A', fusingFactor: 1.35 },
      expected: '100 A',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(crossFeedCurrent, [
    ...(
      [
        [2, 0.5, '210 A'],
        [3, 0.5, '315 A'],
        [4, 0.5, '378 A'],
        [4, 0.1, '51.1 A'],
      ] as const
    ).map(([strings, share, expected]) => ({
      given: { share, voltage: '403.2 V', resistance: '0.64 Ω', strings } as const,
      expected,
      within: 0.001,
      source: cite(
        'circuit theory',
        `${strings === 2 ? 'two' : strings === 3 ? 'three' : 'four'} strings of 403.2 V and 0.64 Ω`,
      ),
      standing: 'exact' as const,
    })),
  ]),
  handbook(clearanceAtAltitude, [
    ...(
      [
        ['1 mm', '80 kPa', '1 mm'],
        ['1 mm', '70 kPa', '1.14 mm'],
        ['1 mm', '62 kPa', '1.29 mm'],
        ['1 mm', '54 kPa', '1.48 mm'],
        ['1 mm', '47 kPa', '1.7 mm'],
        ['1 mm', '41 kPa', '1.95 mm'],
      ] as const
    ).map(([clearance, pressure, expected]) => ({
      given: { clearance, pressure } as const,
      expected,
      within: '0.005 mm' as const,
      source: cite('IEC 60664-1', 'table A.2'),
      standing: 'read' as const,
      note: 'The table prints three figures; at 1 mm the result is the factor.',
    })),
    ...(
      [
        ['5.5 mm', '70 kPa', '6.27 mm'],
        ['3 mm', '62 kPa', '3.87 mm'],
      ] as const
    ).map(([clearance, pressure, expected]) => ({
      given: { clearance, pressure } as const,
      expected,
      within: '0.02 mm' as const,
      source: cite('IEC 60664-1', 'tables F.2 and A.2'),
      standing: 'recomputed' as const,
      note: 'Recomputed with the factor as printed, of three figures.',
    })),
  ]),
  handbook(chargerTestVoltage, [
    ...(
      [
        ['230 V', '2860 V'],
        ['120 V', '2640 V'],
      ] as const
    ).map(([mains, expected]) => ({
      given: { mains } as const,
      expected,
      within: 0.001,
      source: cite('UN Regulation No. 100', 'withstand voltage of the charger'),
      standing: 'recomputed' as const,
    })),
  ]),
  handbook(chargerTestVoltageDirect, [
    ...(
      [
        ['230 V', '4045 V'],
        ['120 V', '3734 V'],
      ] as const
    ).map(([mains, expected]) => ({
      given: { mains } as const,
      expected,
      within: 0.001,
      source: cite('UN Regulation No. 100', 'withstand voltage of the charger'),
      standing: 'recomputed' as const,
    })),
  ]),
  handbook(yCapacitorEnergy, [
    ...(
      [
        ['400 V', '0.08 J'],
        ['800 V', '0.32 J'],
      ] as const
    ).map(([voltage, expected]) => ({
      given: { positive: '0.5 µF', negative: '0.5 µF', voltage } as const,
      expected,
      within: 0.001,
      source: definition,
      standing: 'exact' as const,
      note: `A pack of 800 V, ${voltage === '400 V' ? 'balanced' : 'with the other pole on the chassis'}.`,
    })),
  ]),
  handbook(monitorSettlingTime, [
    {
      given: { isolation: '100 kΩ', monitor: '100 kΩ', capacitance: '2 µF' },
      expected: '0.5 s',
      within: 1e-9,
      source: cite('circuit theory', 'two resistances of 100 kΩ side by side, five time constants'),
      standing: 'exact',
    },
  ]),
  handbook(barResistance, [
    ...(
      [
        ['20 mm', '5 mm', '274 A', '15.23'],
        ['40 mm', '10 mm', '715 A', '25.93'],
        ['60 mm', '10 mm', '985 A', '32.81'],
      ] as const
    ).map(([width, thickness, current, watts]) => ({
      given: { length: '1 m', width, thickness, temperature: '65 °C' } as const,
      expected: quantity('resistance', Number(watts) / Number.parseFloat(current) ** 2, 'Ω'),
      within: 0.003,
      source: cite('DIN 43671', `heat of ${current} in a bar of ${width} × ${thickness}, ${watts} W/m`),
      standing: 'recomputed' as const,
    })),
    ...(
      [
        ['25.4 mm', '3.175 mm', '65.8 µΩ'],
        ['50.8 mm', '6.35 mm', '16.5 µΩ'],
      ] as const
    ).map(([width, thickness, expected]) => ({
      given: { length: '304.8 mm', width, thickness, temperature: '20 °C' } as const,
      expected,
      within: 0.015,
      source: cite('Copper Development Association', 'table 1, bars of alloy C110'),
      standing: 'read' as const,
      note: 'The edges of a bar are rounded, which takes about 1 % off its section.',
    })),
  ]),
  handbook(barAmpacityAtRise, [
    ...(
      [
        ['852 A', '1129 A'],
        ['1080 A', '1431 A'],
      ] as const
    ).map(([rated, expected]) => ({
      given: { rated, rise: '50 K' } as const,
      expected,
      within: 0.001,
      source: cite('DIN 43671', 'bars of 50 × 10 and 100 × 5 mm at a rise of 50 K, as quoted'),
      standing: 'read' as const,
    })),
    ...(
      [
        ['270 A', '360 A', '50 K'],
        ['270 A', '415 A', '65 K'],
        ['710 A', '940 A', '50 K'],
        ['710 A', '1100 A', '65 K'],
      ] as const
    ).map(([rated, expected, rise]) => ({
      given: { rated, rise } as const,
      expected,
      within: 0.013,
      source: cite('Copper Development Association', 'table 1, bars of 1/8 × 1 and 1/4 × 2 in'),
      standing: 'read' as const,
      note: 'The table rounds to 5 A and 10 A.',
    })),
  ]),
  handbook(jointResistance, [
    ...(
      [
        ['10 kN', '4.8 µΩ'],
        ['28.8 kN', '2.85 µΩ'],
      ] as const
    ).map(([force, expected]) => ({
      given: { force } as const,
      expected,
      within: 0.01,
      source: cite('R. Holm, Electric Contacts (1967)', 'constriction resistance, copper of 1 GPa'),
      standing: 'from memory' as const,
      note: 'Joints in the field are said to have 1.7 µΩ to 14 µΩ.',
    })),
  ]),
  handbook(boltPreload, [
    {
      given: { torque: '25.3 N·m', friction: 0.12, diameter: '8 mm', pitch: '1.25 mm', bearing: '11 mm' },
      expected: '18.6 kN',
      within: 0.005,
      source: cite('VDI 2230', 'M8 of class 8.8 at 90 % of its yield stress'),
      standing: 'recomputed',
      note: 'A machine handbook has 24.6 N·m for it (from memory).',
    },
  ]),
  handbook(barExpansion, [
    {
      given: { length: '1275 m', rise: '55 K', coefficient: '12e-6 1/K' },
      expected: '0.84 m',
      within: 0.005,
      source: cite('OpenStax, College Physics', 'example on the expansion of a bridge'),
      standing: 'from memory',
    },
  ]),
  handbook(fuseLoss, [
    {
      given: { ratedLoss: '12 W', current: '120 A', rating: '160 A' },
      expected: '6.75 W',
      within: 0.001,
      source: cite('IEC 60269-2', 'greatest loss of a gG link of size 00, 160 A'),
      standing: 'from memory',
      note: 'The loss at its rating is from memory, the rest is arithmetic.',
    },
  ]),
  handbook(fuseAmbientFactor, [
    ...(
      [
        ['60 °C', 0.816],
        ['40 °C', 0.926],
        ['80 °C', 0.69],
      ] as const
    ).map(([ambient, expected]) => ({
      given: { ambient },
      expected,
      within: 0.001,
      source: cite('guide of a maker of semiconductor fuses', 'limit of 130 °C, rated at 25 °C'),
      standing: 'recomputed' as const,
      note: 'The constants were read; the root was lost in the copy, and is from memory.',
    })),
    {
      given: { ambient: '60 °C', limit: '150 °C', reference: '30 °C' },
      expected: 0.866,
      within: 0.001,
      source: cite('guide of a maker of semiconductor fuses', 'limit of 150 °C, rated at 30 °C'),
      standing: 'recomputed',
    },
    {
      given: { ambient: '65 °C', limit: '170 °C', reference: '20 °C' },
      expected: 0.85,
      within: 0.02,
      source: cite("a maker's sheet of a large blade fuse of 40 A", '34 A at 65 °C'),
      standing: 'read',
      note: 'Second-hand; limit and reference that come nearest to its five points, to 2 %.',
    },
  ]),
  handbook(fuseAltitudeFactor, [
    {
      given: { altitude: '3 km' },
      expected: 0.95,
      within: 1e-9,
      source: cite('guide of a fuse maker', 'a fuse of 30 A carries 28.5 A at 3000 m'),
      standing: 'read',
    },
    {
      given: { altitude: '4000 m' },
      expected: 0.9,
      within: 1e-9,
      source: cite('guide of a fuse maker'),
      standing: 'read',
    },
    { given: { altitude: '1200 m' }, expected: 1, within: 1e-12, source: definition, standing: 'exact' },
  ]),
  handbook(loopInductance, [
    {
      given: { length: '1 m', spacing: '20 mm', radius: '5 mm' },
      expected: '0.6545 µH',
      within: 1e-4,
      source: cite('Grover, Inductance Calculations', '0.4 µH for each metre times ln 4 + 1/4'),
      standing: 'from memory',
    },
  ]),
  handbook(prospectiveCurrent, [
    {
      given: { voltage: '240 V', sourceResistance: '55 mΩ', loopResistance: '0 Ω' },
      expected: '4.37 kA',
      within: 0.003,
      source: cite('course exercise', '110 cells of 0.5 mΩ in series'),
      standing: 'read',
      note: 'The exercise rounds up from 4.364 kA.',
    },
    {
      given: { voltage: '403.2 V', sourceResistance: '0.64 Ω', loopResistance: '5 mΩ' },
      expected: '625.1 A',
      within: 1e-4,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(faultTimeConstant, [
    {
      given: { inductance: '20 µH', resistance: '100 mΩ' },
      expected: '0.2 ms',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(meltingTime, [
    {
      given: { meltingIntegral: '25000 A²·s', current: '5 kA' },
      expected: '1 ms',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(prechargeVoltage, [
    {
      given: { voltage: '320 V', time: '0.3 s', resistance: '100 Ω', capacitance: '680 µF' },
      expected: '316.12 V',
      within: '0.008 V',
      source: definition,
      standing: 'exact',
      note: '3.88 V short of the pack, to 0.2 % of that gap.',
    },
    {
      given: { voltage: '1 V', time: '2 s', resistance: '1 Ω', capacitance: '1 F' },
      expected: '0.86466 V',
      within: 1e-5,
      source: definition,
      standing: 'exact',
      note: 'After two time constants.',
    },
  ]),
  handbook(prechargeTime, [
    {
      given: { resistance: '100 Ω', capacitance: '680 µF', fraction: 0.95 },
      expected: '204 ms',
      within: 0.002,
      source: definition,
      standing: 'exact',
      note: 'Taken as three time constants of 68 ms, which is 95.02 %.',
    },
    {
      given: { resistance: '1 Ω', capacitance: '1 F', fraction: 0.99326 },
      expected: '5 s',
      within: 2e-4,
      source: definition,
      standing: 'exact',
      note: 'Five time constants; the share is rounded to five figures, which moves the time by 1 in 5000 at most.',
    },
  ]),
  handbook(prechargeResistance, [
    {
      given: { time: '0.5 s', capacitance: '2 mF', fraction: 0.99326 },
      expected: '50 Ω',
      within: 0.002,
      source: cite("a semiconductor maker's reference design for precharge", '50 Ω, five time constants in 0.5 s'),
      standing: 'recomputed',
    },
  ]),
  handbook(inrushAtClosing, [
    ...(
      [
        ['20 V', '714 A'],
        ['40 V', '1429 A'],
        ['2.68 V', '95.7 A'],
      ] as const
    ).map(([residualVoltage, expected]) => ({
      given: { residualVoltage, loopResistance: '28 mΩ' } as const,
      expected,
      within: 0.001,
      source: cite("Ohm's law"),
      standing: 'exact' as const,
      note: 'The printed figure has three or four digits.',
    })),
  ]),
  handbook(coilPower, [
    ...(
      [
        ['12 V', 1, '32 W', 'Full voltage.'],
        ['4 V', 1, '3.556 W', 'Held at a third of the voltage.'],
        ['12 V', 0.25, '2 W', 'Chopped, a quarter of the time on.'],
      ] as const
    ).map(([voltage, duty, expected, note]) => ({
      given: { voltage, resistance: '4.5 Ω', duty } as const,
      expected,
      within: 2e-4,
      source: cite("Ohm's law", 'a coil of 4.5 Ω at 12 V'),
      standing: 'exact' as const,
      note,
    })),
  ]),
  handbook(shortTimeWithstand, [
    ...(
      [
        ['0.1 s', '3.162 kA'],
        ['10 ms', '10 kA'],
      ] as const
    ).map(([time, expected]) => ({
      given: { ratedCurrent: '1 kA', ratedTime: '1 s', time } as const,
      expected,
      within: 2e-4,
      source: cite('circuit theory', 'adiabatic heating, 1 kA for 1 s'),
      standing: 'exact' as const,
    })),
  ]),
  handbook(capacitorEnergy, [
    {
      given: { capacitance: '680 µF', voltage: '320 V' },
      expected: '34.8 J',
      within: 0.002,
      source: definition,
      standing: 'exact',
    },
    {
      given: { capacitance: '2.5 µF', voltage: '400 V' },
      expected: '0.2 J',
      within: 1e-9,
      source: cite('ISO 6469-4:2015', '5.2, limit of 0.2 J in Y-capacitors'),
      standing: 'recomputed',
    },
  ]),
  handbook(dischargeTime, [
    {
      given: { resistance: '2636 Ω', capacitance: '1 mF', from: '400 V', to: '60 V' },
      expected: '5 s',
      within: 0.001,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(chargeTime, [
    {
      given: { energy: '24 kWh', power: '6 kW', efficiency: 0.8 },
      expected: '5 h',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
    {
      given: { energy: '7.2 kWh', power: '18 kW' },
      expected: '24 min',
      within: 1e-9,
      source: definition,
      standing: 'exact',
      note: '60 to 80 % of 100 Ah at 50 A and 360 V.',
    },
  ]),
  handbook(acPower, [
    {
      given: { voltage: '230 V', current: '32 A', phases: 3, powerFactor: 1 },
      expected: '22 kW',
      within: 0.005,
      source: commonPractice,
      standing: 'from memory',
      note: 'Charge points of 3 × 32 A are sold as 22 kW, rounded.',
    },
    {
      given: { voltage: '230 V', current: '16 A', phases: 1, powerFactor: 1 },
      expected: '3.68 kW',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
    ...(
      [
        ['230 V', '32 A', 1, '7.36 kW'],
        ['230.94 V', '16 A', 3, '11.09 kW'],
        ['230.94 V', '32 A', 3, '22.17 kW'],
        ['230.94 V', '63 A', 3, '43.65 kW'],
        ['120 V', '16 A', 1, '1.92 kW'],
      ] as const
    ).map(([voltage, current, phases, expected]) => ({
      given: { voltage, current, phases, powerFactor: 1 } as const,
      expected,
      within: 0.001,
      source: definition,
      standing: 'exact' as const,
      note: 'Lines 400 V apart have 230.94 V to neutral.',
    })),
    ...(
      [
        ['48 A', '11.52 kW'],
        ['80 A', '19.2 kW'],
      ] as const
    ).map(([current, expected]) => ({
      given: { voltage: '240 V', current, phases: 1, powerFactor: 1 } as const,
      expected,
      within: 0.001,
      source: cite('SAE J1772', 'power at 240 V, as quoted'),
      standing: 'read' as const,
    })),
  ]),
  handbook(pilotCurrent, [
    ...(
      [
        ['53.3 %', '32 A'],
        ['8 %', '6 A'],
        ['10 %', '6 A'],
        ['16 %', '9.6 A'],
        ['25 %', '15 A'],
        ['50 %', '30 A'],
        ['85 %', '51 A'],
        ['86 %', '55 A'],
        ['90 %', '65 A'],
        ['96 %', '80 A'],
        ['97 %', '80 A'],
      ] as const
    ).map(([duty, expected]) => ({
      given: { duty },
      expected,
      within: 0.001,
      source: cite('IEC 61851-1', 'duty of the pilot, as the table of a test adapter lists it'),
      standing: 'read' as const,
    })),
  ]),
  handbook(proximityCurrent, [
    ...(
      [
        ['220 Ω', 3, '32 A'],
        ['100 Ω', 3, '63 A'],
        ['100 Ω', 1, '70 A'],
        ['75 Ω', 3, '63 A'],
        ['680 Ω', 3, '20 A'],
        ['1500 Ω', 3, '13 A'],
        ['2200 Ω', 3, '13 A'],
        ['2300 Ω', 3, '0 A'],
      ] as const
    ).map(([resistance, phases, expected]) => ({
      given: { resistance, phases },
      expected,
      within: 0,
      source: cite('IEC 61851-1', 'coding of the cable, as the table of a test adapter lists it'),
      standing: 'read' as const,
    })),
  ]),
  handbook(pilotVoltage, [
    ...(
      [
        ['882 Ω', '6 V'],
        ['2740 Ω', '8.98 V'],
        ['246 Ω', '2.93 V'],
      ] as const
    ).map(([resistance, expected]) => ({
      given: { resistance },
      expected,
      within: '0.02 V' as const,
      source: cite('IEC 61851-1', 'states B, C and D; the drop of the diode from memory'),
      standing: 'recomputed' as const,
      note: 'The nominal voltages are 9 V, 6 V and 3 V; the resistors and those were read.',
    })),
  ]),
  handbook(acFeedDrop, [
    {
      given: { current: '32 A', resistancePerLength: '3.685 mΩ/m', length: '25 m', phases: 1 },
      expected: '5.9 V',
      within: 0.002,
      source: cite('IEC 60228', '6 mm² class 2, 3.08 Ω/km at 20 °C, taken to 70 °C'),
      standing: 'recomputed',
      note: '2.56 % of 230 V.',
    },
    {
      given: { current: '32 A', resistancePerLength: '3.65 mΩ/m', length: '30 m', phases: 1 },
      expected: '7.01 V',
      within: 0.001,
      source: cite('BS 7671', 'Appendix 4, 6 mm², 70 °C: 7.3 mV per ampere and metre'),
      standing: 'from memory',
      note: '3.05 % of 230 V.',
    },
    {
      given: { current: '1 A', resistancePerLength: '3.65 mΩ/m', length: '1 m', phases: 3 },
      expected: '6.4 mV',
      within: 0.015,
      source: cite('BS 7671', 'Appendix 4, 6 mm², 70 °C, three phases: 6.4 mV per ampere and metre'),
      standing: 'from memory',
      note: 'The table is rounded to two figures, also the 7.3 mV of one phase from which the resistance comes.',
    },
  ]),
  handbook(batteryRunTime, [
    {
      given: { capacity: '100 Ah', current: '10 A' },
      expected: '8.706 h',
      within: 0.0005,
      source: cite('Peukert, Elektrotechnische Zeitschrift 20 (1897)', '20 h * (100 Ah / (10 A * 20 h))^1.2'),
      standing: 'from memory',
      note: 'The law is remembered, the arithmetic is done apart from this library.',
    },
    {
      given: { capacity: '44 Ah', current: '2.2 A', exponent: 1.3 },
      expected: '20 h',
      within: 1e-9,
      source: definition,
      standing: 'exact',
      note: 'At the current of its rating a battery lasts as rated, whatever the exponent.',
    },
    {
      given: { capacity: '44 Ah', current: '1.1 A', exponent: 1.3, share: '50 %' },
      expected: '20 h',
      within: 1e-9,
      source: definition,
      standing: 'exact',
      note: 'Below it no more is counted than the capacity that is stated.',
    },
  ]),
  handbook(converterInputCurrent, [
    {
      given: { power: '980 W', voltage: '350 V', efficiency: 0.9 },
      expected: '3.111 A',
      within: 0.001,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(backupTime, [
    {
      given: { energy: '10 kWh', load: '1.5 kW', efficiency: 0.9 },
      expected: '6 h',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(minimumIsolation, [
    {
      given: { voltage: '350 V', perVolt: '500 Ω/V' },
      expected: '175 kΩ',
      within: 1e-9,
      source: cite('UN Regulation No. 100', '5.1.3, 500 Ω/V'),
      standing: 'recomputed',
    },
    {
      given: { voltage: '350 V', perVolt: '100 Ω/V' },
      expected: '35 kΩ',
      within: 1e-9,
      source: cite('UN Regulation No. 100', '5.1.3, 100 Ω/V'),
      standing: 'recomputed',
    },
  ]),
  handbook(leakageCurrent, [
    {
      given: { voltage: '350 V', isolation: '175 kΩ' },
      expected: '2 mA',
      within: 1e-9,
      source: definition,
      standing: 'exact',
      note: '500 Ω/V is 2 mA at any voltage.',
    },
  ]),
  handbook(isolationFromVoltmeter, [
    {
      given: { packVoltage: '400 V', reading: '266.667 V', loadedReading: '28.5714 V', insertedResistance: '40 kΩ' },
      expected: '500 kΩ',
      within: 1e-5,
      source: cite(
        'UN Regulation No. 100',
        'annex on the isolation resistance measurement, on a circuit of 1 MΩ and 500 kΩ',
      ),
      standing: 'recomputed',
    },
  ]),
  handbook(capacitorTimeConstant, [
    {
      given: { resistance: '100 Ω', capacitance: '680 µF' },
      expected: '68 ms',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(energyAboveSafeVoltage, [
    {
      given: { capacitance: '2 µF', voltage: '400 V' },
      expected: '0.1564 J',
      within: 1e-9,
      source: cite('UN Regulation No. 94', 'requirements after impact'),
      standing: 'from memory',
      note: 'The form of the equation is from memory; the figure is its arithmetic.',
    },
  ]),
  handbook(inverterInput, [
    {
      given: { load: '980 W', efficiency: 0.9 },
      expected: '1088.9 W',
      within: 1e-4,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(stateOfHealth, [
    {
      given: { capacity: '72.6 Ah', newCapacity: '80 Ah' },
      expected: '90.75 %',
      within: 1e-9,
      source: definition,
      standing: 'exact',
      note: '33 A for 2.2 h, of a cell rated 80 Ah.',
    },
  ]),
  handbook(capacityBetweenRests, [
    {
      given: { charge: '30 Ah', upper: '85 %', lower: '35 %' },
      expected: '60 Ah',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(balanceTime, [
    {
      given: { spread: '2 %', capacity: '60 Ah', current: '0.1 A' },
      expected: '12 h',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
    {
      given: { spread: '1.5 %', capacity: '100 Ah', current: '0.2 A' },
      expected: '7.5 h',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(coulombicEfficiency, [
    {
      given: { discharged: '39.84 Ah', charged: '40 Ah' },
      expected: '99.6 %',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(roundTripEfficiency, [
    {
      given: { discharged: '1.68 kWh', charged: '1.75 kWh' },
      expected: '96 %',
      within: 1e-9,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(stepResistance, [
    {
      given: { voltage: '0.56 V', current: '40 A' },
      expected: '14 mΩ',
      within: 1e-9,
      source: cite("Ohm's law"),
      standing: 'exact',
    },
  ]),
  handbook(wangCycleLoss, [
    ...(
      [
        ['0.5 C', '298.15 K', '1000 Ah', '4.252 %'],
        ['0.5 C', '318.15 K', '4000 Ah', '20.27 %'],
        ['2 C', '298.15 K', '2000 Ah', '5.339 %'],
        ['6 C', '318.15 K', '1000 Ah', '8.351 %'],
        // Solved for a loss of 20 %.
        ['0.5 C', '298.15 K', '16690 Ah', '20 %'],
        ['2 C', '318.15 K', '5295 Ah', '20 %'],
      ] as const
    ).map(([rate, temperature, throughput, expected]) => ({
      given: { rate, temperature, throughput } as const,
      expected,
      within: 0.001,
      source: cite('Wang and others, Journal of Power Sources 196 (2011) 3942'),
      standing: 'recomputed' as const,
      note: 'Exponents as read in a copy; the factors of the four rates from memory, and by a cubic as read that returns them.',
    })),
  ]),
  handbook(naumannCalendarLoss, [
    ...(
      [
        [0.5, '298.15 K', '8766 h', '4.252 %'],
        [1, '298.15 K', '8766 h', '6.773 %'],
        [0.8, '308.15 K', '24000 h', '9.934 %'],
      ] as const
    ).map(([stateOfCharge, temperature, time, expected]) => ({
      given: { stateOfCharge, temperature, time } as const,
      expected,
      within: 0.001,
      source: cite('Naumann and others, Journal of Energy Storage 17 (2018) 153'),
      standing: 'recomputed' as const,
    })),
  ]),
  handbook(naumannCycleLoss, [
    ...(
      [
        ['1 C', 0.8, 1000, '5.693 %'],
        ['0.5 C', 1, 2000, '7.764 %'],
      ] as const
    ).map(([rate, depth, cycles, expected]) => ({
      given: { rate, depth, cycles } as const,
      expected,
      within: 0.001,
      source: cite('Naumann and others, Journal of Power Sources 451 (2020) 227666'),
      standing: 'recomputed' as const,
    })),
  ]),
  handbook(schmalstiegCalendarLoss, [
    ...(
      [
        ['3.7 V', '308.15 K', '8760 h', '5.117 %'],
        ['3.7 V', '323.15 K', '8760 h', '14.63 %'],
        ['4 V', '298.15 K', '17520 h', '6.219 %'],
      ] as const
    ).map(([voltage, temperature, time, expected]) => ({
      given: { voltage, temperature, time } as const,
      expected,
      within: 0.001,
      source: cite('Schmalstieg and others, Journal of Power Sources 257 (2014) 325'),
      standing: 'recomputed' as const,
    })),
  ]),
  handbook(schmalstiegCycleLoss, [
    ...(
      [
        ['3.7 V', 0.5, '1000 Ah', '8.881 %'],
        ['3.6 V', 0.8, '2000 Ah', '18.15 %'],
      ] as const
    ).map(([voltage, depth, throughput, expected]) => ({
      given: { voltage, depth, throughput } as const,
      expected,
      within: 0.001,
      source: cite('Schmalstieg and others, Journal of Power Sources 257 (2014) 325'),
      standing: 'recomputed' as const,
    })),
  ]),
  handbook(schmalstiegCalendarRise, [
    {
      given: { voltage: '3.7 V', temperature: '308.15 K', time: '8760 h' },
      expected: '9.72 %',
      within: 0.001,
      source: cite('Schmalstieg and others, Journal of Power Sources 257 (2014) 325'),
      standing: 'recomputed',
    },
  ]),
  handbook(schmalstiegCycleRise, [
    {
      given: { voltage: '3.7 V', depth: 0.5, throughput: '1000 Ah' },
      expected: '12.48 %',
      within: 0.001,
      source: cite('Schmalstieg and others, Journal of Power Sources 257 (2014) 325'),
      standing: 'recomputed',
    },
  ]),
]
