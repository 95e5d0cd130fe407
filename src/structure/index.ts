/** Structured input: objects and lists of quantities, described once and read with every fault named by its path. */
export { about, given, procedure, type Read, readStructure, schemaFrom, type Written } from './structure.js'
