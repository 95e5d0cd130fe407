/** What a command is given by the shell that runs it: its streams, its surroundings, and how it is interrupted. */
import type { Readable, Writable } from 'node:stream'
import { styleText } from 'node:util'
import { Refusal } from './refusal.js'

/** A stream that is written to, which may be a terminal. */
export type Output = Writable & { readonly isTTY?: boolean; readonly columns?: number }

/** Where a command runs. */
export interface Shell {
  readonly stdin: Readable & { readonly isTTY?: boolean }
  readonly stdout: Output
  readonly stderr: Output
  readonly env: { readonly [name: string]: string | undefined }
  /** The file that is run, and by each worker too; what the package holds is found from it. */
  readonly bin: URL
  /** Set by a command that keeps what it has done when it is interrupted. */
  onInterrupt?: (() => void) | undefined
}

const closed = new WeakSet<Output>()
const watched = new WeakSet<Output>()

/** Whether nobody reads any more what is printed. */
export function isClosed({ stdout }: Shell): boolean {
  return closed.has(stdout)
}

/** Writes results. A reader that has seen enough, such as head, is no error. */
export function print({ stdout }: Shell, text: string): Promise<void> {
  return written(stdout, text)
}

/** Writes a line that is no result. */
export function tell({ stderr }: Shell, line: string): Promise<void> {
  return written(stderr, `${line}\n`)
}

function written(stream: Output, text: string): Promise<void> {
  if (closed.has(stream) || text === '') return Promise.resolve()
  if (!watched.has(stream)) {
    watched.add(stream)
    // Each failure comes to its write as well.
    stream.on('error', () => closed.add(stream))
  }
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => {
      if (error === null || error === undefined) return resolve()
      closed.add(stream)
      const { code } = error as NodeJS.ErrnoException
      if (code === 'EPIPE' || code === 'ERR_STREAM_DESTROYED') resolve()
      else reject(new Refusal(`standard output cannot be written: ${code ?? error.message}`))
    })
  })
}

/** Text for a terminal with its headings in bold; plain for all else, and where NO_COLOR is set (no-color.org). */
export function emphasised({ stdout, env }: Shell, text: string, headings: RegExp): string {
  const isPlain = stdout.isTTY !== true || Boolean(env.NO_COLOR) || env.TERM === 'dumb'
  return isPlain ? text : text.replace(headings, (heading) => styleText('bold', heading, { validateStream: false }))
}

/** How wide running text may be. */
export function widthOf({ stdout }: Shell): number {
  const { isTTY, columns } = stdout
  return isTTY === true && columns !== undefined ? Math.min(WIDEST, Math.max(NARROWEST, columns)) : WIDEST
}

const [NARROWEST, WIDEST] = [40, 100]

/** One line on a terminal that says how far the work is, from a second after its start. */
export class Progress {
  readonly #stderr: Output
  readonly #isShown: boolean
  readonly #now: () => number
  readonly #start: number
  #last: number
  #isThere = false

  constructor({ stderr }: Pick<Shell, 'stderr'>, now = () => performance.now()) {
    this.#stderr = stderr
    this.#isShown = stderr.isTTY === true
    this.#now = now
    this.#start = now()
    this.#last = this.#start + FIRST - OFTEN
  }

  /** Says that so much is done, of so much where that is known. */
  done(count: number, of?: number): void {
    const now = this.#now()
    if (!this.#isShown || now < this.#last + OFTEN || closed.has(this.#stderr)) return
    this.#last = now
    this.#isThere = true
    const left =
      of === undefined || count === 0 ? '' : `, ${lasting(((now - this.#start) / count) * (of - count))} left`
    this.#stderr.write(`\r${count}${of === undefined ? '' : ` of ${of}`} assessed${left}\u001b[K`)
  }

  /** Takes the line away. */
  end(): void {
    if (this.#isThere) this.#stderr.write('\r\u001b[K')
    this.#isThere = false
  }
}

/** When the line comes, and how often it changes, in ms. */
const [FIRST, OFTEN] = [1000, 200]

function lasting(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000)
  return seconds < 90 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`
}
