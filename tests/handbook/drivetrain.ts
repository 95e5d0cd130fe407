/** Published values for the drivetrain domain. */
import {
  aerodynamicDrag,
  airDensity,
  airPressure,
  baseSpeed,
  criticalSpeed,
  equivalentMass,
  gearStep,
  gradeability,
  gradeForce,
  gripAcceleration,
  inertiaForce,
  motorEfficiency,
  motorLoss,
  motorSpeed,
  overallRatio,
  roadLoad,
  roadLoadFromCoefficients,
  roadPower,
  roadSpeed,
  rollingCircumference,
  rollingRadius,
  rollingResistance,
  sectionHeight,
  shaftPower,
  tractionLimitFront,
  tractionLimitRear,
  tractiveForce,
  tyreDiameter,
  wheelTorque,
} from '../../src/drivetrain/index.js'
import { cite, commonPractice, definition } from '../../src/formula/index.js'
import { handbook } from './handbook.js'

const dataBook = cite('car data book')
const etrto = cite('ETRTO Standards Manual', 'factor 3.05')
const exercise = cite('course exercise')
const bonnick = cite('Bonnick, Automotive Science and Mathematics', 'maximum acceleration')
const larminie = cite('Larminie & Lowry, Electric Vehicle Technology Explained (2003)', 'chapter 6')
const mannering = cite('Mannering et al., Principles of Highway Engineering and Traffic Analysis', 'example 2.2')
const firstGear = cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2, example 1')
const r30 = cite('UN Regulation No. 30', 'outer diameter, rim diameter 330 mm for code 13')
const coastDown = cite('40 CFR 86.529-98', 'figure F98-9')
const isa = cite('ISO 2533')
const otherGravity = 'The source takes 9.81 m/s², 0.034 % more.'

export const drivetrainHandbook = [
  handbook(sectionHeight, [
    {
      given: { width: '155 mm', aspect: '80%' },
      expected: '124 mm',
      within: '0.001 mm',
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(tyreDiameter, [
    {
      given: { rim: '13 in', width: '155 mm', aspect: '80%' },
      expected: '578 mm',
      within: '0.5 mm',
      source: r30,
      standing: 'from memory',
      note: 'The regulation rounds the rim to 330 mm; 13 in are 330.2 mm.',
    },
    {
      given: { rim: '13 in', width: '175 mm', aspect: '70%' },
      expected: '575.2 mm',
      within: '0.001 mm',
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(rollingCircumference, [
    {
      given: { diameter: '578 mm' },
      expected: '1763 mm',
      within: '0.5 mm',
      source: etrto,
      standing: 'from memory',
      note: '155/80 R13.',
    },
    {
      given: { diameter: '576 mm' },
      expected: '1757 mm',
      within: '0.5 mm',
      source: etrto,
      standing: 'from memory',
      note: '175/70 R13.',
    },
    {
      given: { diameter: '589.2 mm', factor: 3.1 },
      expected: '1826.7 mm',
      within: '0.3 mm',
      source: dataBook,
      standing: 'recomputed',
      note: '185/70-13 at 881 turns per mile, read; the factor that they make is given to 0.0005.',
    },
  ]),
  handbook(rollingRadius, [
    {
      given: { circumference: '2.00916854 m' },
      expected: '12.589 in',
      within: '0.001 in',
      source: firstGear,
      standing: 'from memory',
      note: '801 turns per mile.',
    },
  ]),
  handbook(overallRatio, [
    {
      given: { gearRatio: 1.46, finalDrive: 3.944 },
      expected: 5.75824,
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(motorSpeed, [
    {
      given: { speed: '90 km/h', ratio: 8, rollingRadius: '0.3 m' },
      expected: '666.67 rad/s',
      within: '0.005 rad/s',
      source: exercise,
      standing: 'read',
    },
  ]),
  handbook(roadSpeed, [
    {
      given: { motorSpeed: '750 rad/s', ratio: 10, rollingRadius: '0.2 m' },
      expected: '54 km/h',
      within: 1e-12,
      source: exercise,
      standing: 'read',
    },
    {
      given: { motorSpeed: '3200 rpm', ratio: 5.75824, rollingRadius: '0.2888 m' },
      expected: '60.505 km/h',
      within: 1e-4,
      source: exercise,
      standing: 'read',
      note: 'Third gear 1.46, final drive 3.944, 185/60 R14 by its geometry.',
    },
    ...(
      [
        [3.337, '38.2 mph'],
        [1.995, '63.8 mph'],
        [1.418, '89.8 mph'],
        [1, '127.4 mph'],
      ] as const
    ).map(([gear, expected]) => ({
      given: { motorSpeed: '6800 rpm', ratio: gear * 3.636, rollingRadius: '290.732 mm' } as const,
      expected,
      within: '0.1 mph' as const,
      source: dataBook,
      standing: 'recomputed' as const,
      note: 'Printed without decimals, cut off: 38, 63, 89, 127. Final drive 3.636, 881 turns per mile.',
    })),
    ...(
      [
        [3.78, '7.303 km/h'],
        [2.12, '13.021 km/h'],
        [1.46, '18.908 km/h'],
        [1.03, '26.801 km/h'],
        [0.84, '32.863 km/h'],
      ] as const
    ).map(([gear, expected]) => ({
      given: { motorSpeed: '1000 rpm', ratio: gear * 3.944, rollingRadius: '0.2888 m' } as const,
      expected,
      within: '0.001 km/h' as const,
      source: exercise,
      standing: 'recomputed' as const,
    })),
    {
      given: { motorSpeed: '4400 rpm', ratio: 12.4976, rollingRadius: '12.59 in' },
      expected: '26.4 mph',
      within: 0.003,
      source: firstGear,
      standing: 'from memory',
    },
  ]),
  handbook(
    gearStep,
    (
      [
        [3.78, 2.12, 1.783],
        [2.12, 1.46, 1.452],
        [1.46, 1.03, 1.417],
        [1.03, 0.84, 1.226],
      ] as const
    ).map(([ratio, nextRatio, expected]) => ({
      given: { ratio, nextRatio },
      expected,
      within: '0.0005' as const,
      source: exercise,
      standing: 'recomputed' as const,
    })),
  ),
  handbook(wheelTorque, [
    {
      given: { motorTorque: '174 N·m', ratio: 5.75824, efficiency: 0.96 },
      expected: '961.85 N·m',
      within: 1e-4,
      source: exercise,
      standing: 'recomputed',
      note: 'The exercise gives the force, 3330.5 N at a radius of 0.2888 m.',
    },
    {
      given: { motorTorque: '120 N·m', ratio: 5.75824, efficiency: 0.96228 },
      expected: '664.93 N·m',
      within: '0.03 N·m',
      source: exercise,
      standing: 'recomputed',
      note: 'Efficiencies 0.972 of the gear and 0.990 of the final drive; 2312.0 N at 0.2876 m, to 0.1 N.',
    },
  ]),
  handbook(tractiveForce, [
    {
      given: { wheelTorque: '961.856 N·m', radius: '0.2888 m' },
      expected: '3330.5 N',
      within: 1e-4,
      source: exercise,
      standing: 'read',
      note: '174 N·m, overall ratio 1.46 times 3.944, efficiency 0.96.',
    },
    {
      given: { wheelTorque: '2402.36 lbf·ft', radius: '12.59 in' },
      expected: '2290 lbf',
      within: 0.003,
      source: firstGear,
      standing: 'from memory',
      note: '201 lbf·ft, ratios 4.28 and 2.92, efficiencies 0.966 and 0.99.',
    },
  ]),
  handbook(equivalentMass, [
    {
      given: { inertia: '0.23727 kg·m²', ratio: 12.4976, radius: '12.59 in' },
      expected: '798.9 lb',
      within: 0.003,
      source: firstGear,
      standing: 'from memory',
      note: 'Engine and gearbox alone, 2.1 in·lb·s²: 328.0 of the 360.2 in·lb·s² at the wheels.',
    },
    {
      given: { inertia: '40.6971 kg·m²', ratio: 1, radius: '12.59 in' },
      expected: '877 lb',
      within: 0.003,
      source: firstGear,
      standing: 'from memory',
      note: 'Inertia of all turning parts at the wheels, 360.2 in·lb·s².',
    },
  ]),
  handbook(airDensity, [
    {
      given: { pressure: '101.325 kPa', temperature: '15 °C' },
      expected: '1.2250 kg/m³',
      within: '0.00001 kg/m³',
      source: isa,
      standing: 'from memory',
    },
    {
      given: { pressure: '89874.6 Pa', temperature: '281.65 K' },
      expected: '1.11164 kg/m³',
      within: '0.00001 kg/m³',
      source: isa,
      standing: 'from memory',
      note: 'At an altitude of 1000 m.',
    },
    {
      given: { pressure: '98.21 kPa', temperature: '20 °C' },
      expected: '1.17 kg/m³',
      within: '0.005 kg/m³',
      source: cite('40 CFR 1066.310'),
      standing: 'read',
      note: 'Printed to three figures.',
    },
    {
      given: { pressure: '101325 Pa', temperature: '20 °C' },
      expected: '1.20456 kg/m³',
      within: 5e-4,
      source: cite('Picard et al., Metrologia 45 (2008) 149', 'CIPM-2007, dry air'),
      standing: 'recomputed',
      note: 'A real gas: its compressibility factor here is 0.9996.',
    },
  ]),
  handbook(airPressure, [
    {
      given: { altitude: '1000 m' },
      expected: '89874.6 Pa',
      within: '0.05 Pa',
      source: isa,
      standing: 'from memory',
    },
    {
      given: { altitude: '11 km' },
      expected: '22632 Pa',
      within: '1 Pa',
      source: isa,
      standing: 'from memory',
    },
    { given: { altitude: '0 m' }, expected: '101325 Pa', within: 1e-12, source: isa, standing: 'exact' },
  ]),
  handbook(aerodynamicDrag, [
    {
      given: { airDensity: '1.2 kg/m³', dragArea: '0.72 m²', speed: '80 km/h' },
      expected: '213.33 N',
      within: '0.01 N',
      source: exercise,
      standing: 'read',
      note: 'Drag coefficient 0.45, area 1.6 m².',
    },
    {
      given: { airDensity: '1.2 kg/m³', dragArea: '0.72 m²', speed: '30 km/h' },
      expected: '30.00 N',
      within: '0.01 N',
      source: exercise,
      standing: 'read',
    },
    {
      given: { airDensity: '1.25 kg/m³', dragArea: '0.9 m²', speed: '120 km/h', headwind: '10 km/h' },
      expected: '733.5 N',
      within: '0.1 N',
      source: exercise,
      standing: 'read',
    },
    {
      given: { airDensity: '1.05395 kg/m³', dragArea: '8 ft²', speed: '70 mph' },
      expected: '86.22 lbf',
      within: 0.001,
      source: mannering,
      standing: 'read',
      note: '0.002045 slug/ft³, drag coefficient 0.40, area 20 ft².',
    },
  ]),
  handbook(rollingResistance, [
    {
      given: { mass: '600 kg', coefficient: 0.015, grade: 0.14054083 },
      expected: '87.43 N',
      within: 5e-4,
      source: exercise,
      standing: 'read',
      note: `A slope of 8°, whose cosine is 1 % below one. ${otherGravity}`,
    },
  ]),
  handbook(gradeForce, [
    {
      given: { mass: '600 kg', grade: 0.14054083 },
      expected: '819.17 N',
      within: 4e-4,
      source: exercise,
      standing: 'read',
      note: `A slope of 8°. ${otherGravity}`,
    },
    {
      given: { mass: '1262 kg', grade: 0.25 },
      expected: '3000 N',
      within: 1e-3,
      source: exercise,
      standing: 'read',
      note: 'The source takes 9.8 m/s².',
    },
  ]),
  handbook(inertiaForce, [
    {
      given: { mass: '1200 kg', acceleration: '2.22 m/s²', rotatingFactor: 1.06 },
      expected: '2823.8 N',
      within: '0.1 N',
      source: exercise,
      standing: 'recomputed',
      note: 'The printed sum 3218.1 N less rolling resistance 240 N and drag 154.3 N.',
    },
    {
      given: { mass: '3635 lb', acceleration: '-17.70 ft/s²' },
      expected: '-2000 lbf',
      within: 0.002,
      source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 3, example 1'),
      standing: 'recomputed',
      note: 'Inputs read in a worked copy; the book prints 17.7 ft/s² (from memory).',
    },
  ]),
  handbook(roadLoad, [
    {
      given: { aerodynamicDrag: '154.32 N', rollingResistance: '240 N', inertiaForce: '2823.84 N' },
      expected: '3218.1 N',
      within: '0.1 N',
      source: exercise,
      standing: 'read',
      note: '1200 kg at 80 km/h speeding up by 2.22 m/s²; the source takes 10 m/s² for gravity.',
    },
  ]),
  handbook(roadLoadFromCoefficients, [
    {
      given: { constant: '6.4 N', linear: '0 N/(km/h)', quadratic: '0.0433 N/(km/h)²', speed: '80 km/h' },
      expected: '284 N',
      within: '0.5 N',
      source: cite('UN Regulation No. 83', 'table of default dynamometer settings, reference mass 1130 kg'),
      standing: 'read',
    },
    {
      given: { constant: '22.90 lbf', linear: '0.346 lbf/mph', quadratic: '0.01626 lbf/mph²', speed: '50 mph' },
      expected: '359.6 N',
      within: '0.05 N',
      source: cite('EPA list of road-load coefficients'),
      standing: 'recomputed',
      note: 'The coefficients were read: 80.85 lbf.',
    },
    ...(
      [
        ['0 N', '0.0224 N/(km/h)²', '94.8 N'],
        ['8.69 N', '0.0252 N/(km/h)²', '115.1 N'],
        ['17.43 N', '0.0279 N/(km/h)²', '135.4 N'],
      ] as const
    ).map(([constant, quadratic, expected]) => ({
      given: { constant, linear: '0 N/(km/h)', quadratic, speed: '65 km/h' } as const,
      expected,
      within: '0.3 N' as const,
      source: coastDown,
      standing: 'read' as const,
      note: 'The coefficients are printed to three figures.',
    })),
  ]),
  handbook(roadPower, [
    {
      given: { force: '733.5 N', speed: '120 km/h' },
      expected: '24450 W',
      within: 1e-12,
      source: exercise,
      standing: 'read',
      note: 'Into a head wind of 10 km/h: the speed over the ground counts.',
    },
    {
      given: { force: '284 N', speed: '80 km/h' },
      expected: '6.3 kW',
      within: '0.05 kW',
      source: cite('UN Regulation No. 83', 'table of default dynamometer settings, reference mass 1130 kg'),
      standing: 'read',
    },
    {
      given: { force: '80.85 lbf', speed: '50 mph' },
      expected: '8.04 kW',
      within: '0.005 kW',
      source: cite('EPA list of road-load coefficients'),
      standing: 'recomputed',
    },
  ]),
  handbook(shaftPower, [
    {
      given: { torque: '200 N·m', speed: '5639 rpm' },
      expected: '118.1 kW',
      within: 0.001,
      source: exercise,
      standing: 'read',
    },
  ]),
  handbook(baseSpeed, [
    {
      given: { power: '50 kW', torque: '100 N·m' },
      expected: '4774.648 rpm',
      within: '0.0005 rpm',
      source: definition,
      standing: 'exact',
      note: '30 000 / π = 9549.297 turns per minute for 1 kW at 1 N·m.',
    },
  ]),
  handbook(motorLoss, [
    {
      given: {
        torque: '100 N·m',
        speed: '400 rad/s',
        copper: '0.3 W/(N·m)²',
        iron: '0.01 W/(rad/s)',
        windage: '5e-6 W/(rad/s)³',
        constant: '600 W',
      },
      expected: '3924 W',
      within: 1e-12,
      source: larminie,
      standing: 'from memory',
      note: 'Coefficients of a 100 kW induction motor; worked out by hand: 3000 + 4 + 320 + 600.',
    },
    {
      given: {
        torque: '10 N·m',
        speed: '200 rad/s',
        copper: '1.5 W/(N·m)²',
        iron: '0.1 W/(rad/s)',
        windage: '1e-5 W/(rad/s)³',
        constant: '20 W',
      },
      expected: '270 W',
      within: 1e-12,
      source: larminie,
      standing: 'from memory',
      note: 'Coefficients of a brushed motor with permanent magnets; worked out by hand: 150 + 20 + 80 + 20.',
    },
  ]),
  handbook(motorEfficiency, [
    {
      given: { shaftPower: '40 kW', loss: '3924 W' },
      expected: '91.07 %',
      within: '0.005 %',
      source: larminie,
      standing: 'from memory',
      note: 'The induction motor at 100 N·m and 400 rad/s.',
    },
  ]),
  handbook(tractionLimitRear, [
    {
      given: { friction: 0.62, mass: '1791.6 kg', aft: '1.284683 m', height: '0.533 m', wheelbase: '2.743 m' },
      expected: '5802.6 N',
      within: 4e-4,
      source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2, example 2'),
      standing: 'read',
      note: `Read in a course exercise in SI units: 839.1 kg of 1791.6 kg on the rear, differential locked. ${otherGravity}`,
    },
    {
      given: { friction: 0.7, mass: '1000 kg', aft: '1.3 m', height: '0.7 m', wheelbase: '2.6 m' },
      expected: '4231 N',
      within: 5e-4,
      source: bonnick,
      standing: 'recomputed',
      note: `Inputs read: 4.231 m/s². ${otherGravity}`,
    },
  ]),
  handbook(tractionLimitFront, [
    {
      given: { friction: 0.7, mass: '1000 kg', aft: '1.3 m', height: '0.7 m', wheelbase: '2.6 m' },
      expected: '2889 N',
      within: 5e-4,
      source: bonnick,
      standing: 'recomputed',
      note: `Inputs read: 2.889 m/s². ${otherGravity}`,
    },
  ]),
  handbook(gripAcceleration, [
    {
      given: { tractionLimit: '5802.6 N', mass: '1791.6 kg' },
      expected: '0.330 g',
      within: '0.0005 g',
      source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2, example 2'),
      standing: 'read',
      note: 'Read in a course exercise in SI units.',
    },
    {
      given: { tractionLimit: '3000 N', roadLoad: '600 N', mass: '1200 kg' },
      expected: '2 m/s²',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(gradeability, [
    {
      given: { tractiveForce: '936.60 N', mass: '600 kg', coefficient: 0.015, aerodynamicDrag: '30 N' },
      expected: '14.054 %',
      within: 5e-4,
      source: exercise,
      standing: 'recomputed',
      note: `Forces read, on a slope of 8°: 819.17 N of the grade, 87.43 N of the tyres, 30.00 N of the air. ${otherGravity}`,
    },
    {
      given: { tractiveForce: '255 lbf', mass: '2000 lb', coefficient: 0.016985, aerodynamicDrag: '86.22 lbf' },
      expected: '6.74 %',
      within: 0.004,
      source: mannering,
      standing: 'recomputed',
      note: 'The source sets the grade equal to its sine and the cosine to one, which makes 0.3 % here; inputs read.',
    },
    {
      given: { tractiveForce: '3000 N', mass: '1262 kg', coefficient: 0 },
      expected: '25 %',
      within: 0.001,
      source: exercise,
      standing: 'read',
      note: 'The source takes 9.8 m/s².',
    },
  ]),
  handbook(criticalSpeed, [
    {
      given: {
        length: '1.2 m',
        outerDiameter: '60 mm',
        innerDiameter: '56 mm',
        elasticModulus: '205 GPa',
        density: '7850 kg/m³',
      },
      expected: '6863 rpm',
      within: 0.0005,
      source: cite("Young & Budynas, Roark's Formulas for Stress and Strain", 'table 16.1, coefficient 9.87'),
      standing: 'from memory',
      note: 'Worked out by hand from 9.87 sqrt(E I / (m l⁴)) with I = 153 423 mm⁴ and 2.861 kg/m; 9.87 is π² rounded.',
    },
    {
      given: {
        length: '1.2 m',
        outerDiameter: '60 mm',
        innerDiameter: '56 mm',
        elasticModulus: '205 GPa',
        density: '7850 kg/m³',
      },
      expected: '6811 rpm',
      within: 0.015,
      source: commonPractice,
      standing: 'from memory',
      note: 'The rule for steel tube, 4.705e6 sqrt(D² + d²) / l² in inches, does not say for which modulus and density.',
    },
  ]),
]
