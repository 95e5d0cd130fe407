/** Calculations for putting an electric drive into an existing road car. */
export { catalogue } from './catalogue.js'
export * from './drivetrain/index.js'
export * from './electrical/index.js'
export * from './formula/index.js'
export * from './mass/index.js'
export * from './quantity/index.js'
export * from './range/index.js'
export * from './thermal/index.js'
