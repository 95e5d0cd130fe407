/**
 * Where a function that only rises reaches a value, by halving the interval until neighbouring doubles are left. A
 * value below the lower end gives the lower end, and one above the upper end the upper.
 */
export function whereReached(rising: (x: number) => number, value: number, from: number, to: number): number {
  let [low, high] = [from, to]
  for (;;) {
    const middle = low + (high - low) / 2
    if (middle === low || middle === high) return middle
    if (rising(middle) < value) low = middle
    else high = middle
  }
}
