/** JSON, a value in each line, as it comes. */
import { calledIn, chunksOf } from './files.js'
import { Refusal } from './refusal.js'
import type { Shell } from './shell.js'

/** A line with its number from 1, and the value in it, or what is wrong with it. */
export type Line = { readonly number: number } & ({ readonly value: unknown } | { readonly error: string })

/** The most bytes of a line: as many as a sheet may have. */
const LONGEST = 16 * 2 ** 20
const NEW_LINE = 10

/** The lines of a file, or of standard input; those with nothing in them are left out. */
export async function* linesOf(shell: Shell, path: string): AsyncGenerator<Line> {
  let number = 0
  for await (const bytes of bytesOf(shell, path)) {
    number++
    const found = valueIn(bytes)
    if (found !== undefined) yield { number, ...found }
  }
}

function valueIn(bytes: Uint8Array) {
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return { error: 'not UTF-8' }
  }
  if (text.trim() === '') return undefined
  try {
    return { value: JSON.parse(text) as unknown }
  } catch {
    return { error: 'not JSON' }
  }
}

/** The bytes of each line. */
async function* bytesOf(shell: Shell, path: string): AsyncGenerator<Uint8Array> {
  let parts: Uint8Array[] = []
  let size = 0
  for await (const chunk of chunksOf(shell, path)) {
    let start = 0
    for (let end = chunk.indexOf(NEW_LINE); end >= 0; end = chunk.indexOf(NEW_LINE, start)) {
      yield Buffer.concat([...parts, chunk.subarray(start, end)])
      parts = []
      size = 0
      start = end + 1
    }
    const rest = chunk.subarray(start)
    parts.push(rest)
    size += rest.length
    if (size > LONGEST) throw new Refusal(`${calledIn(path)}: a line of more than ${LONGEST / 2 ** 20} MiB`)
  }
  if (size > 0) yield Buffer.concat(parts)
}
