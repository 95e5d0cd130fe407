/** The log of a sound test of an invented module: the end of a charge, a discharge with a pulse in the middle, a charge. */
export const benchRows = [
  [0, -2, 50.4],
  [60, 0, 50.3],
  [600, 0, 50.25],
  [601, 20, 49.92],
  [2000, 20, 47],
  [3600, 20, 45],
  [3612, 20, 44.98],
  [3613, 60, 44.5],
  [3623, 60, 44.4],
  [3624, 20, 44.86],
  [3635, 20, 44.96],
  [5200, 20, 43],
  [7000, 20, 40],
  [7700, 20, 36],
  [7701, 0, 37.5],
  [8300, 0, 38],
  [8301, -20, 38.4],
  [15200, -20, 50.4],
  [15800, -2, 50.4],
  [15801, 0, 50.35],
] as const

/** The rows as text. */
export function textOf(
  rows: readonly (readonly number[])[],
  header = 'time (s),current (A),voltage (V),temperature (°C)',
) {
  return `${header}\n${rows.map((row) => `${row.join(',')},24.5\n`).join('')}`
}

export const benchLog = textOf(benchRows)
/** What came out by hand: trapezia of the steps, and 20 A and 60 A for their seconds. */
export const benchCharge = (0.5 * 20 + 3011 * 20 + 40 + 600 + 40 + (7700 - 3624) * 20 + 0.5 * 20) / 3600
