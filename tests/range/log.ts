/** A log with a row each second, in pieces of 500 rows: as a recorder in a car writes it. */
export function* logOf(rows: number) {
  yield 'time (s),speed (km/h)\n'
  for (let row = 0; row < rows; row += 500) {
    let piece = ''
    for (let i = row; i < Math.min(row + 500, rows); i++) piece += `${i},${(50 + 40 * Math.sin(i / 20)).toFixed(2)}\n`
    yield piece
  }
}
