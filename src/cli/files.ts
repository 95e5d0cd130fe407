/** Files that are read, of which anything may be expected, and files that are written whole or not at all. */
import { createReadStream, realpathSync, renameSync, rmSync, type Stats, statSync, writeFileSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { shown } from '../quantity/errors.js'
import { Refusal } from './refusal.js'
import type { Shell } from './shell.js'

/** The most bytes of a sheet or a study: a thousand times what the largest has. */
const MOST_BYTES = 16 * 2 ** 20

/** The name that stands for standard input. */
export const STANDARD_INPUT = '-'

/** What a file is called in messages. */
export function calledIn(path: string): string {
  return path === STANDARD_INPUT ? 'standard input' : path
}

/** JSON from a file, or from standard input. */
export async function readJson(shell: Shell, path: string): Promise<unknown> {
  const text = await readText(shell, path)
  try {
    return JSON.parse(text)
  } catch {
    throw new Refusal(`${calledIn(path)}: not JSON: ${placeOf(text)}`)
  }
}

/** Where text ceases to be JSON. The engine tells that of some mistakes only; of all it tells whether the text just ends. */
function placeOf(text: string): string {
  if (isBegun(text)) return 'it ends too early'
  let [begun, beyond] = [0, text.length]
  while (beyond - begun > 1) {
    const between = Math.floor((begun + beyond) / 2)
    if (isBegun(text.slice(0, between))) begun = between
    else beyond = between
  }
  const lines = text.slice(0, begun).split('\n')
  return `line ${lines.length}, column ${(lines.at(-1) as string).length + 1}: unexpected ${shown(text[begun])}`
}

/** Whether text is JSON, or would be with more after it. */
function isBegun(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch (error) {
    const { message } = error as Error
    return /end of JSON/.test(message) || Number(/at position (\d+)/.exec(message)?.[1]) === text.length
  }
}

/** Text from a file, or from standard input. */
async function readText(shell: Shell, path: string): Promise<string> {
  const bytes = await readBytes(shell, path)
  if (bytes.length === 0) throw new Refusal(`${calledIn(path)}: empty`)
  try {
    // A byte order mark is left out.
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Refusal(`${calledIn(path)}: not UTF-8`)
  }
}

async function readBytes(shell: Shell, path: string): Promise<Uint8Array> {
  const chunks: Uint8Array[] = []
  let size = 0
  for await (const chunk of chunksOf(shell, path)) {
    size += chunk.length
    if (size > MOST_BYTES) throw new Refusal(`${calledIn(path)}: more than ${MOST_BYTES / 2 ** 20} MiB`)
    chunks.push(chunk)
  }
  return Buffer.concat(chunks)
}

/** The bytes of a file, or of standard input, as they come. */
export async function* chunksOf({ stdin }: Shell, path: string): AsyncGenerator<Uint8Array> {
  if (path === '') throw new Refusal("expected the name of a file, got ''")
  try {
    yield* path === STANDARD_INPUT ? stdin : createReadStream(path)
  } catch (error) {
    throw new Refusal(`${calledIn(path)}: ${faultText(error as NodeJS.ErrnoException)}`)
  }
}

/** A file to write, by the option that names it. */
export interface Target {
  readonly option: string
  readonly path: string
}

/** Refuses to write over what is read, twice to one file, or to what is no file. */
export function refuseTargets(targets: readonly Target[], read: readonly string[]): void {
  const known = new Map(read.filter((path) => path !== STANDARD_INPUT).map((path) => [identityOf(path), path]))
  for (const { option, path } of targets) {
    if (path === STANDARD_INPUT) throw new Refusal(`${option} takes a file, got '-'`)
    const found = foundAt(path)
    if (found?.isDirectory()) throw new Refusal(`${path}: a directory`)
    if (found !== undefined && !found.isFile()) throw new Refusal(`${path}: no regular file`)
    const identity = identityOf(path)
    const other = known.get(identity)
    if (other !== undefined) throw new Refusal(`${option} ${path} would write over ${other}`)
    known.set(identity, path)
  }
}

/** What two names of one file have in common. */
function identityOf(path: string): string {
  const found = foundAt(path)
  return found === undefined ? resolve(path) : `${found.dev}:${found.ino}`
}

/** What stands under a name; nothing where none does, or where its folders are none. */
function foundAt(path: string): Stats | undefined {
  try {
    return statSync(path, { throwIfNoEntry: false })
  } catch {
    return undefined
  }
}

/** Writes a file whole: beside it first, then in its place. */
export function writeWhole(path: string, text: string): void {
  // What a link leads to is written, and the link left.
  const place = foundAt(path) === undefined ? path : realpathSync(path)
  const beside = join(dirname(place), `.${basename(place)}.${process.pid}`)
  try {
    writeFileSync(beside, text, { flag: 'wx' })
    renameSync(beside, place)
  } catch (error) {
    if (foundAt(beside) !== undefined) rmSync(beside)
    throw new Refusal(`${path}: ${faultText(error as NodeJS.ErrnoException)}`)
  }
}

const faults: { readonly [code: string]: string } = {
  ENOENT: 'no such file or directory',
  EISDIR: 'a directory',
  EACCES: 'no permission',
  EPERM: 'no permission',
  EROFS: 'a read-only file system',
  ENOSPC: 'no space left',
  ENOTDIR: 'part of the path is no directory',
  ENAMETOOLONG: 'the name is too long',
}

function faultText({ code = '', message }: NodeJS.ErrnoException): string {
  return faults[code] ?? message
}
