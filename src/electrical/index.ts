/** Pack, cable, fuse, precharge, safety and charging. */
export { cableVoltageDrop } from './cable.js'
