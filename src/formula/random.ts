/** Random numbers that are the same on every run and engine for one seed. */

/** A stream of numbers, uniform over 0 to 1, both excluded. @internal */
export type Uniform = () => number

/**
 * A generator of 32-bit numbers of the "small fast counting" family (C. Doty-Humphrey, PractRand; from memory),
 * run in before use so that near seeds give unlike streams.
 *
 * @internal
 */
export function uniform(seed: number): Uniform {
  let [a, b, c, counter] = [seed | 0, Math.floor(seed / 2 ** 32) | 0, 0x9e3779b9 | 0, 1]
  const next = () => {
    const sum = (a + b + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + sum) | 0
    return sum >>> 0
  }
  for (let i = 0; i < 16; i++) next()
  // 53 bits, moved off zero by half a step.
  return () => ((next() >>> 5) * 2 ** 26 + (next() >>> 6) + 0.5) / 2 ** 53
}

/**
 * Numbers of the standard normal distribution, by the transform of Box and Muller (Ann. Math. Stat. 29, 1958).
 * @internal
 */
export function normal(random: Uniform): () => number {
  let spare: number | undefined
  return () => {
    if (spare !== undefined) {
      const kept = spare
      spare = undefined
      return kept
    }
    const radius = Math.sqrt(-2 * Math.log(random()))
    const angle = 2 * Math.PI * random()
    spare = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
}
