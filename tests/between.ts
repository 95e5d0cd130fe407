import fc from 'fast-check'

/** Numbers drawn evenly between two: `fc.double` draws mostly such as are next to nothing, where 0 is among them. */
export const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((part) => min + ((max - min) * part) / 1e6)
