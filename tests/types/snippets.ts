/** Lines of code that must compile, and lines that must not, with what the compiler says of them. */

/** What every line may use. */
export const prelude = `import { type AnyFormula, cite, constant, explain, formula, input, output, propagate, section, solve, sweep } from 'kerbwatt/formula'
import { choice, given, group, list as listed, optional, procedure, says, spare, type Read, type Written } from 'kerbwatt/procedure'
import { type Assessment, type BuildSheet, explore, figure } from 'kerbwatt/conversion'
import { accelerate, type Vehicle } from 'kerbwatt/drivetrain'
import { type Given, type Kind, type Measured, type Quantity, quantity } from 'kerbwatt/quantity'

export const reach = formula({
  name: 'reach',
  title: 'Distance that a store of energy lasts',
  inputs: {
    energy: input('energy', 'E', 'Energy in the store', { min: 0 }),
    consumption: input('energyPerDistance', 'e', 'Energy used per distance', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Share that reaches the motor', { above: 0, max: 1, default: 1 }),
  },
  result: output('length', 's', 'Distance', 'km'),
  expression: 'E * eta / e',
  source: cite('nowhere'),
  compute: ({ energy, consumption, efficiency }) => (energy * efficiency) / consumption,
})
const ropes = listed('The ropes', group('A rope', { length: given('length', 'Its length', { above: 0 }) }), { least: 1 })
export const haul = procedure({
  name: 'haul',
  title: 'A load on ropes',
  answers: 'Do the ropes hold?',
  input: {
    load: given('mass', 'Load', { above: 0 }),
    margin: given('ratio', 'Margin', { default: 2, because: 'as it is done' }),
    way: choice('How it hangs', ['straight', 'slung'], { default: 'straight', because: 'one rope' }),
    wind: optional(given('speed', 'Wind'), { absent: 'There is no wind: give wind.' }),
    ropes,
    lamp: spare(given('power', 'A lamp')),
  },
  source: [cite('nowhere')],
  work: ({ load, margin, way, wind, ropes: [first] }) => ({ most: load.times(margin.si), way, wind, first, checks: [] }),
})
declare const found: Assessment
declare const energy: Quantity<'energy'>
declare const mass: Quantity<'mass'>
declare const warm: Quantity<'temperature'>
declare const warmer: Quantity<'temperatureDifference'>
declare const amount: number
declare function place(wheelbase: Given<'length'>, share?: Given<'ratio'>): void
`

/** Lines that must compile. */
export const accepted: readonly string[] = [
  // Inputs of a formula: text, quantities, numbers where they are ratios, and defaults left out.
  `export const r: Quantity<'length'> = reach({ energy: '24 kWh', consumption: '150 Wh/km' })`,
  `reach({ energy, consumption: quantity('energyPerDistance', 15, 'kWh/100km'), efficiency: 0.9 })`,
  `reach({ energy: '24 kWh', consumption: '150 Wh/km', efficiency: '90 %' })`,
  `reach({ energy: '-2.4e1 kWh', consumption: '150 Wh/mi' })`,
  `reach({ energy: \`\${amount} kWh\`, consumption: \`\${amount} J/m\` })`,
  `export const si: number = reach.compute({ energy: 8.64e7, consumption: 540, efficiency: 1 })`,
  // What a formula tells of itself.
  `export const about: string = reach.inputs.energy.about + reach.title + reach.expression + reach.source.work`,
  `export const kinds: ['energy', 'length'] = [reach.inputs.energy.kind, reach.result.kind]`,
  `export const usual: Quantity<'ratio'> = reach.inputs.efficiency.default`,
  `export const list: readonly AnyFormula[] = [reach]`,
  `export const kind: Kind = (reach as AnyFormula).inputs.energy?.kind ?? 'mass'`,
  // What is done with a formula.
  `export const e: Quantity<'energy'> = solve(reach, 'energy', { result: '120 km', consumption: '150 Wh/km' })`,
  `solve(reach, 'consumption', { result: '120 km', energy, between: ['50 Wh/km', '500 Wh/km'] })`,
  `sweep(reach, { energy: { from: '10 kWh', to: '30 kWh', steps: 5 } }, { consumption: '150 Wh/km' })[0]?.energy.in('MJ')`,
  `propagate(reach, { energy: ['24 kWh', '1 kWh'], consumption: '150 Wh/km' }).value.in('mi')`,
  `propagate(reach, { energy: '24 kWh ± 5 %', consumption: '150 Wh/km +/- 10 Wh/mi', efficiency: '0.9 ± 0.02' })`,
  `export const far: Quantity<'length'> = propagate(({ e, at }) => reach({ energy: e, consumption: at }), { e: '24 kWh ± 500 Wh', at: '150 Wh/km' }).value`,
  `export const w: Quantity<'length'> = explain(() => reach({ energy, consumption: '150 Wh/km' })).result`,
  `export const s: number = section('A heading', () => 5)`,
  // Quantities.
  `quantity('mass', '155 lb').plus('2 kg').minus(mass).times(2).over(3).as('t').in('oz').toFixed(1)`,
  `quantity('mass', 155, 'lb').format({ unit: 'kg', digits: 3 }).trim()`,
  `quantity('ratio', 0.9).in('%').toFixed(1)`,
  `quantity('ratio', '90 %').in('1').toFixed(1)`,
  `quantity('resistance', '0.3 mohm').in('mΩ').toFixed(1)`,
  `quantity('torque', '180 Nm').as('lbf·ft').in('N·m').toFixed(1)`,
  `quantity('torque', quantity('torque', '180 Nm')).unit.trim()`,
  `export const many: number = energy.ratioTo('2 MJ')`,
  `export const enough: boolean = energy.isAtLeast('2 kWh') && energy.isAtMost(energy) && energy.equals('2 kWh', '5 Wh')`,
  `export const t: Quantity<'temperature'> = warm.plus('5 K').plus(warmer).minus(warmer)`,
  `export const d: Quantity<'temperatureDifference'> = warm.minus('20 °C').times(2).plus('5 °F')`,
  `export const hot: boolean = warm.isAtLeast('60 °C') && warm.equals('60 °C', '1 K')`,
  `place('2.1 m')`,
  `place(quantity('length', '7 ft'), 0.5)`,
  `place('84 in', '50%')`,
  `place(reach({ energy, consumption: '150 Wh/km' }), '0.5')`,
  `export const either: Given<'mass' | 'length'> = '5 kg'`,
  // Measured values.
  `export const front: Measured<'area'>[] = ['0.74 m² ± 0.05 m²', '0.74 m² ± 500 cm2', '0.74 m² +/- 7 %', '0.74 m²', quantity('area', '0.74 m²')]`,
  `export const rolling: Measured<'ratio'>[] = ['0.013 ± 0.001', '0.013 ± 10 %', '0.013 +/- 10%', '1.3 %', 0.013]`,
  `export const mild: Measured<'temperature'>[] = ['20 °C ± 2 K', '68 °F ± 3 °F', '293 K', warm]`,
  // Procedures: defaults and what is optional left out, quantities and text, and what was read handed to the work.
  `export const most: Quantity<'mass'> = haul({ load: '300 kg', ropes: [{ length: '3 m' }] }).most`,
  `haul({ load: mass, margin: 3, way: 'slung', wind: '5 m/s', ropes: [{ length: '3 m' }], lamp: '5 W' })`,
  `haul({ load: mass, wind: undefined, ropes: [{ length: '3 m' }] })`,
  `export const wrote: Written<typeof ropes> = [{ length: '3 m' }]`,
  `export const had: Read<typeof ropes> = [{ length: quantity('length', '3 m') }]`,
  `haul.input.load.about satisfies string`,
  `says\`bears \${mass}, at least the \${mass} of the load\``,
  `const van = { car: { mass: '805 kg', tyre: '145/80 R13' }, gearbox: { efficiency: 0.9 }, motor: {} } as const satisfies Vehicle; accelerate({ ...van, to: '80 km/h' })`,
  // The build sheet, and the figures of an assessment by their ids.
  `export const far: Quantity<'length'> = figure(found, 'journeys.bakeryRound.winter.range')`,
  `figure(found, 'weight.after.frontShare').in('%').toFixed(1)`,
  `export const outside = { summer: { outside: '32 °C' } } satisfies BuildSheet['seasons']`,
  `export const mild = { summer: { outside: '32 °C ± 3 K', usable: '0.9 ± 5 %' } } satisfies BuildSheet['seasons']`,
  `export const sized: BuildSheet['car']['dragArea'][] = ['0.74 m² ± 0.05 m²', '0.74 m2 +/- 7 %', '0.74 m²', quantity('area', '0.74 m²')]`,
  `export const studied = (sheet: BuildSheet) => explore({ sheet, vary: { 'pack.series': [3, 4] }, objectives: { 'weight.after.mass': 'least' } })`,
  `export const geared: NonNullable<BuildSheet['gearbox']>['gears'][] = [['3.65 ± 0.01', 2.1], { low: '3.65', high: '2.1 ± 1 %' }]`,
  // Descriptions.
  `input('mass', 'm', 'Mass', { min: 0, max: '3 t', default: '900 kg' }).default.in('kg')`,
  `constant('acceleration', '9.80665 m/s²', 'Standard acceleration of free fall', cite('ISO 80000-3')).value.in('m/s2')`,
]

const inputsOfReach =
  `'Flat<{ readonly energy: Given<"energy">; readonly consumption: Given<"energyPerDistance">; }` +
  ` & { readonly efficiency?: Given<"ratio">; }>'`

/**
 * Lines that must not compile, and the telling line of what the compiler says: the first, unless a later one tells more. What
 * ends in three dots is the beginning of a line.
 */
export const refused: readonly (readonly [line: string, message: string])[] = [
  // Procedures.
  [`haul({ load: '300 V', ropes: [] })`, `Type '"300 V"' is not assignable to type 'Given<"mass">'.`],
  [
    `haul({ load: mass, ropes: [{}] })`,
    `Property 'length' is missing in type '{}' but required in type 'Flat<{ readonly length: Given<"length">; } & {}>'.`,
  ],
  [
    `haul({ load: mass, way: 'flung', ropes: [] })`,
    `Type '"flung"' is not assignable to type '"straight" | "slung" | undefined'. Did you mean '"slung"'?`,
  ],
  [
    `haul({ load: mass, ropes: [{ lenght: '3 m' }] })`,
    `Object literal may only specify known properties, but 'lenght' does not exist in type 'Flat<{ readonly length: Given<"length">; } & {}>'. Did you mean to write 'length'?`,
  ],
  [
    `haul({ load: mass, ropes: '3 m' })`,
    `Type 'string' is not assignable to type 'readonly Flat<{ readonly length: Given<"length">; } & {}>[]'.`,
  ],
  [
    `given('mass', 'Load', { default: '300 kg' })`,
    `Property 'because' is missing in type '{ default: "300 kg"; }' but required in type 'Default<Given<"mass">>'.`,
  ],
  [
    `given('mass', 'Load', { default: '300 V', because: 'so' })`,
    `Type '"300 V"' is not assignable to type 'Given<"mass">'.`,
  ],
  [`given('mass', 'Load', { usual: ['1 kg', '3 m'] })`, `Type '"3 m"' is not assignable to type 'Given<"mass">'.`],
  [
    `optional(given('mass', 'Load', { default: '300 kg', because: 'so' }))`,
    `Type '"default"' is not assignable to type '"required"'.`,
  ],
  [
    `says\`bears \${mass}, at least the \${energy} of the load\``,
    `Type '"energy"' is not assignable to type '"mass"'.`,
  ],
  [
    `const van = { car: { mass: '805 V' } } as const satisfies Vehicle`,
    `Type '"805 V"' is not assignable to type 'Given<"mass">'.`,
  ],
  // The build sheet, and the figures of an assessment by their ids.
  [
    `figure(found, 'weight.after.frontShar')`,
    `Argument of type '"weight.after.frontShar"' is not assignable to parameter of type '"pack.capacity" | …`,
  ],
  [
    `const far: Quantity<'time'> = figure(found, 'journeys.bakeryRound.winter.range')`,
    `Type 'Quantity<"length">' is not assignable to type 'Quantity<"time">'.`,
  ],
  [
    `const outside: BuildSheet['seasons'] = { summer: { outside: '32 kW' } }`,
    `Type '"32 kW"' is not assignable to type 'Measured<"temperature">'.`,
  ],
  [
    `const size: BuildSheet['car']['dragArea'] = '0.74 m² ± 0.05 m'`,
    `Type '"0.74 m² ± 0.05 m"' is not assignable to type 'Measured<"area">'.`,
  ],
  [
    `const outside: BuildSheet['seasons'] = { summer: { outside: '32 °C ± 5 %' } }`,
    `Type '"32 °C ± 5 %"' is not assignable to type 'Measured<"temperature">'.`,
  ],
  [
    `const usable: BuildSheet['seasons'] = { summer: { outside: '32 °C', usable: '90 % ± 2 %' } }`,
    `Type '"90 % ± 2 %"' is not assignable to type 'Measured<"ratio"> | undefined'.`,
  ],
  [
    `const van = { car: { mass: '805 kg ± 5 kg' } } as const satisfies Vehicle`,
    `Type '"805 kg ± 5 kg"' is not assignable to type 'Given<"mass">'.`,
  ],
  // Inputs of a formula.
  [
    `reach({ energy: '24 kW', consumption: '150 Wh/km' })`,
    `Type '"24 kW"' is not assignable to type 'Given<"energy">'.`,
  ],
  [
    `reach({ energy: '24kWh', consumption: '150 Wh/km' })`,
    `Type '"24kWh"' is not assignable to type 'Given<"energy">'.`,
  ],
  [
    `reach({ energy: '24,5 kWh', consumption: '150 Wh/km' })`,
    `Type '"24,5 kWh"' is not assignable to type 'Given<"energy">'.`,
  ],
  [`reach({ energy: 24, consumption: '150 Wh/km' })`, `Type 'number' is not assignable to type 'Given<"energy">'.`],
  [
    `reach({ energy: mass, consumption: '150 Wh/km' })`,
    `Type 'Quantity<"mass">' is not assignable to type 'Given<"energy">'.`,
  ],
  [
    `reach({ energy, consumption: '150 Wh/km', eficiency: 0.9 })`,
    `Object literal may only specify known properties, but 'eficiency' does not exist in type ${inputsOfReach}. Did you mean to write 'efficiency'?`,
  ],
  [
    `reach({ energy, consumption: '150 Wh/km', losses: 0.9 })`,
    `Object literal may only specify known properties, and 'losses' does not exist in type ${inputsOfReach}.`,
  ],
  [
    `reach({ energy: '24 kWh' })`,
    `Property 'consumption' is missing in type '{ energy: "24 kWh"; }' but required in type ${inputsOfReach}.`,
  ],
  [`reach('24 kWh')`, `Argument of type 'string' is not assignable to parameter of type ${inputsOfReach}.`],
  [`reach()`, 'Expected 1 arguments, but got 0.'],
  [
    `reach.compute({ energy: '24 kWh', consumption: 540, efficiency: 1 })`,
    `Type 'string' is not assignable to type 'number'.`,
  ],
  [
    `const time: Quantity<'time'> = reach({ energy, consumption: '150 Wh/km' })`,
    `Type 'Quantity<"length">' is not assignable to type 'Quantity<"time">'.`,
  ],
  [
    `reach({ energy, consumption: '150 Wh/km' }).in('kWh')`,
    `Argument of type '"kWh"' is not assignable to parameter of type 'UnitOf<"length">'.`,
  ],
  // What is done with a formula.
  [
    `solve(reach, 'energie', { result: '120 km', consumption: '150 Wh/km' })`,
    `Argument of type '"energie"' is not assignable to parameter of type '"energy" | "consumption" | "efficiency"'.`,
  ],
  [
    `solve(reach, 'energy', { result: '120 kWh', consumption: '150 Wh/km' })`,
    `Type '"120 kWh"' is not assignable to type 'Given<"length">'.`,
  ],
  [
    `propagate(reach, { energy: ['24 kWh', '1 kW'], consumption: '150 Wh/km' })`,
    `Type '"1 kW"' is not assignable to type 'Given<"energy">'.`,
  ],
  [
    `propagate(reach, { energy: ['24 kWh', 5], consumption: '150 Wh/km' })`,
    `Type 'number' is not assignable to type 'Given<"energy">'.`,
  ],
  [
    `propagate(reach, { energy: '24 kWh ± 1 kW', consumption: '150 Wh/km' })`,
    `Type '"24 kWh ± 1 kW"' is not assignable to type 'Uncertain<"energy">'.`,
  ],
  [
    `propagate(reach, { energy: ['24 kWh ± 1 kWh', '1 kWh'], consumption: '150 Wh/km' })`,
    `Type '"24 kWh ± 1 kWh"' is not assignable to type 'Given<"energy">'.`,
  ],
  [
    `propagate(({ e }) => reach({ energy: e, consumption: '150 Wh/km' }), { e: '24 kWh ± 1 kW' })`,
    `Type '"24 kWh ± 1 kW"' is not assignable to type '"24 kWh ± 1 kW" & Quantity<"energy">'.`,
  ],
  [
    `propagate(reach, { energy: '24 kWh', consumption: '150 Wh/km', speed: '3 m/s' })`,
    `Object literal may only specify known properties, and 'speed' does not exist in type '{ readonly energy: Uncertain<"energy">; readonly consumption: Uncertain<"energyPerDistance">; readonly efficiency?: Uncertain<"ratio">; }'.`,
  ],
  [
    `propagate(reach, { energy: '24 kWh' })`,
    `Property 'consumption' is missing in type '{ energy: "24 kWh"; }' but required in type '{ readonly energy: Uncertain<"energy">; readonly consumption: Uncertain<"energyPerDistance">; readonly efficiency?: Uncertain<"ratio">; }'.`,
  ],
  [
    `sweep(reach, { energy: { from: '10 kW', to: '30 kWh', steps: 5 } }, { consumption: '150 Wh/km' })`,
    `Type '"10 kW"' is not assignable to type 'Given<"energy"> | undefined'.`,
  ],
  // Quantities.
  [`energy.in('V')`, `Argument of type '"V"' is not assignable to parameter of type 'UnitOf<"energy">'.`],
  [`energy.as('kW')`, `Argument of type '"kW"' is not assignable to parameter of type 'UnitOf<"energy">'.`],
  [`energy.format({ unit: 'kg' })`, `Type '"kg"' is not assignable to type 'UnitOf<"energy"> | undefined'.`],
  [
    `energy.plus(mass)`,
    `Argument of type 'Quantity<"mass">' is not assignable to parameter of type 'Given<"energy">'.`,
  ],
  [`energy.plus('5 kg')`, `Argument of type '"5 kg"' is not assignable to parameter of type 'Given<"energy">'.`],
  [`energy.times('2 kWh')`, `Argument of type 'string' is not assignable to parameter of type 'number'.`],
  [`energy.ratioTo('2 kg')`, `Argument of type '"2 kg"' is not assignable to parameter of type 'Given<"energy">'.`],
  [`energy.isAtMost(2)`, `Argument of type '2' is not assignable to parameter of type 'Given<"energy">'.`],
  [
    `energy * 2`,
    `The left-hand side of an arithmetic operation must be of type 'any', 'number', 'bigint' or an enum type.`,
  ],
  [`energy.si = 5`, `Cannot assign to 'si' because it is a read-only property.`],
  [
    `warm.plus(warm)`,
    `Argument of type 'Quantity<"temperature">' is not assignable to parameter of type 'Given<"temperatureDifference">'.`,
  ],
  [
    `warm.plus('5 bar')`,
    `Argument of type '"5 bar"' is not assignable to parameter of type 'Given<"temperatureDifference">'.`,
  ],
  [`warm.times(2)`, `Argument of type '2' is not assignable to parameter of type 'never'.`],
  [`warm.over(2)`, `Argument of type '2' is not assignable to parameter of type 'never'.`],
  [`warm.ratioTo(warm)`, `Argument of type 'Quantity<"temperature">' is not assignable to parameter of type 'never'.`],
  [
    `const sum: Quantity<'temperature'> = warm.minus('20 °C')`,
    `Type 'Quantity<"temperatureDifference">' is not assignable to type 'Quantity<"temperature">'.`,
  ],
  [`place(mass)`, `Argument of type 'Quantity<"mass">' is not assignable to parameter of type 'Given<"length">'.`],
  [
    `place('2.1 m', '0.5 m')`,
    `Argument of type '"0.5 m"' is not assignable to parameter of type 'Given<"ratio"> | undefined'.`,
  ],
  [
    `const wheelbase: Quantity<'length'> = mass`,
    `Type 'Quantity<"mass">' is not assignable to type 'Quantity<"length">'.`,
  ],
  [`quantity('mass', '155 m')`, `Argument of type '"155 m"' is not assignable to parameter of type 'Given<"mass">'.`],
  [`quantity('mass', 155)`, `Argument of type '155' is not assignable to parameter of type 'Given<"mass">'.`],
  [`quantity('mass', 155, 'm')`, `Argument of type '"m"' is not assignable to parameter of type 'UnitOf<"mass">'.`],
  [
    `quantity('torque', energy)`,
    `Argument of type 'Quantity<"energy">' is not assignable to parameter of type 'Given<"torque">'.`,
  ],
  // Measured values.
  ...(
    [
      ['area', '0.74 m² ± 0.05 m'],
      ['area', '0.74 m² ± 0.05'],
      ['area', '0.74 ± 0.05 m²'],
      ['area', '0.74 m² ± 5 % ± 1 %'],
      ['ratio', '45 % ± 2 %'],
      ['temperature', '20 °C ± 5 %'],
      ['temperature', '20 °C ± 2 bar'],
    ] as const
  ).map(
    ([kind, text]) =>
      [
        `const m: Measured<'${kind}'> = '${text}'`,
        `Type '"${text}"' is not assignable to type 'Measured<"${kind}">'.`,
      ] as const,
  ),
  [
    `quantity('area', '0.74 m² ± 5 %')`,
    `Argument of type '"0.74 m² ± 5 %"' is not assignable to parameter of type 'Given<"area">'.`,
  ],
  // Descriptions.
  [
    `constant('mass', energy, 'Mass', cite('nowhere'))`,
    `Argument of type 'Quantity<"energy">' is not assignable to parameter of type 'Given<"mass">'.`,
  ],
  [`input('mass', 'm', 'Mass', { min: energy })`, 'No overload matches this call.'],
  [
    `output('mass', 'm', 'Mass', 'm')`,
    `Argument of type '"m"' is not assignable to parameter of type 'UnitOf<"mass"> | undefined'.`,
  ],
]
