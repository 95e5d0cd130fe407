/** SHA-256 of a text in UTF-8, in hexadecimal digits (FIPS 180-4), where there is no library for it: in every browser. @internal */
export function sha256(text: string): string {
  const bytes = new TextEncoder().encode(text)
  const length = (bytes.length + 9 + 63) & ~63
  const padded = new DataView(new ArrayBuffer(length))
  bytes.forEach((byte, i) => {
    padded.setUint8(i, byte)
  })
  padded.setUint8(bytes.length, 0x80)
  padded.setUint32(length - 8, Math.floor(bytes.length / 2 ** 29))
  padded.setUint32(length - 4, bytes.length * 8)
  const state = primes(8).map((prime) => fraction(Math.sqrt(prime)))
  const words = new Uint32Array(64)
  for (let from = 0; from < length; from += 64) {
    for (let i = 0; i < 64; i++) {
      words[i] = i < 16 ? padded.getUint32(from + 4 * i) : extended(words, i)
    }
    const [a, b, c, d, e, f, g, h] = rounds(state, words)
    for (const [i, each] of [a, b, c, d, e, f, g, h].entries())
      state[i] = ((state[i] as number) + (each as number)) >>> 0
  }
  return state.map((word) => word.toString(16).padStart(8, '0')).join('')
}

const turned = (word: number, by: number) => (word >>> by) | (word << (32 - by))

function extended(words: Uint32Array, i: number): number {
  const [one, other] = [words[i - 15] as number, words[i - 2] as number]
  const first = turned(one, 7) ^ turned(one, 18) ^ (one >>> 3)
  const second = turned(other, 17) ^ turned(other, 19) ^ (other >>> 10)
  return (words[i - 16] as number) + first + (words[i - 7] as number) + second
}

const roundConstants = /*@__PURE__*/ (() => primes(64).map((prime) => fraction(Math.cbrt(prime))))()

function rounds(state: readonly number[], words: Uint32Array): number[] {
  let [a, b, c, d, e, f, g, h] = state as [number, number, number, number, number, number, number, number]
  for (let i = 0; i < 64; i++) {
    const one = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)
    const first = (h + one + ((e & f) ^ (~e & g)) + (roundConstants[i] as number) + (words[i] as number)) >>> 0
    const other = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)
    const second = (other + ((a & b) ^ (a & c) ^ (b & c))) >>> 0
    ;[h, g, f, e, d, c, b, a] = [g, f, e, (d + first) >>> 0, c, b, a, (first + second) >>> 0]
  }
  return [a, b, c, d, e, f, g, h]
}

/** The first 32 bits behind the point. */
function fraction(value: number): number {
  return ((value - Math.floor(value)) * 2 ** 32) >>> 0
}

function primes(count: number): number[] {
  const found: number[] = []
  for (let each = 2; found.length < count; each++) {
    if (found.every((prime) => each % prime !== 0)) found.push(each)
  }
  return found
}
