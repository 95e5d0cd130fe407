/** Published values for the electrical domain. */
import {
  acPower,
  adiabaticConstant,
  adiabaticTime,
  adiabaticWithstand,
  ampacityAtAmbient,
  awgDiameter,
  backupTime,
  balanceTime,
  cableCurrent,
  cableLoss,
  cableVoltageDrop,
  capacitorEnergy,
  capacitorTimeConstant,
  capacityBetweenRests,
  cellVoltage,
  chargeTime,
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
  fuseRating,
  graphitePotential,
  greatestFuseRating,
  inrushAtClosing,
  insulationDrop,
  inverterInput,
  ironPhosphatePotential,
  isolationFromVoltmeter,
  jouleHeat,
  leakageCurrent,
  lithiumFraction,
  loopInductance,
  loopResistance,
  maximumPower,
  meltingTime,
  minimumIsolation,
  naumannCalendarLoss,
  naumannCycleLoss,
  nmcPotential,
  packEnergy,
  packResistance,
  parallelCharge,
  powerAtFloor,
  prechargeResistance,
  prechargeTime,
  prechargeVoltage,
  prospectiveCurrent,
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
} from '../../src/electrical/index.js'
import { cite, commonPractice, definition } from '../../src/formula/index.js'
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
