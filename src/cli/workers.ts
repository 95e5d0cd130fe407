/** The variants of a study, assessed by several threads. */
import { Worker } from 'node:worker_threads'
import { type Study, type Variant, type VariantResult, variantsOf } from '../conversion/index.js'
import { Fault } from './refusal.js'
import { Progress, type Shell, tell } from './shell.js'
import { READY, type Task } from './worker.js'

/** So many variants a worker holds: the one it is at, and one to go on with. */
const HELD = 2

/** What threads have found. */
export interface Searched {
  /** A result for each variant, in no order; only some where it was interrupted. */
  readonly results: readonly VariantResult[]
  readonly isInterrupted: boolean
}

/**
 * Assesses every variant of a study.
 *
 * A variant on which a worker dies is tried once more. On the second death its result is the error.
 *
 * @throws Fault where a worker cannot be started.
 */
export function searched(shell: Shell, study: Study, workers: number): Promise<Searched> {
  const search = new Search(shell, study)
  return search.run(workers)
}

class Search {
  readonly #shell: Shell
  readonly #study: Study
  readonly #count: number
  readonly #rest: Iterator<Variant>
  /** Those to be handed out again. */
  readonly #again: Variant[] = []
  /** The numbers of those on which a worker has died. */
  readonly #tried = new Set<number>()
  readonly #results = new Map<number, VariantResult>()
  readonly #workers = new Set<Worker>()
  readonly #progress: Progress
  #end: (isInterrupted: boolean) => void = () => undefined
  #fail: (error: unknown) => void = () => undefined

  constructor(shell: Shell, study: Study) {
    this.#shell = shell
    this.#study = study
    const variants = variantsOf(study)
    this.#count = variants.count
    this.#rest = variants[Symbol.iterator]()
    this.#progress = new Progress(shell)
  }

  async run(workers: number): Promise<Searched> {
    const ended = new Promise<boolean>((resolve, reject) => {
      this.#end = resolve
      this.#fail = reject
    })
    this.#shell.onInterrupt = () => this.#end(true)
    try {
      for (let i = 0; i < Math.min(workers, this.#count); i++) this.#start()
      const isInterrupted = await ended
      return { results: [...this.#results.values()], isInterrupted }
    } finally {
      this.#shell.onInterrupt = undefined
      this.#progress.end()
      const all = [...this.#workers]
      this.#workers.clear()
      await Promise.all(all.map((worker) => worker.terminate()))
    }
  }

  #start(): void {
    const task: Task = { study: this.#study }
    const worker = new Worker(this.#shell.bin, { workerData: task })
    const held: Variant[] = []
    let isReady = false
    let why: unknown
    this.#workers.add(worker)
    worker.on('message', (said: typeof READY | VariantResult) => {
      if (said === READY) isReady = true
      else {
        held.splice(
          held.findIndex(({ number }) => number === said.number),
          1,
        )
        this.#found(said)
      }
      this.#handOut(worker, held)
    })
    worker.on('error', (error) => {
      why = error
    })
    worker.on('exit', (code) => {
      if (!this.#workers.delete(worker)) return
      const reason = why === undefined ? `exit code ${code}` : String(why)
      if (isReady) this.#died(held, reason)
      else this.#fail(new Fault(`a worker cannot be started: ${reason}`))
    })
  }

  #handOut(worker: Worker, held: Variant[]): void {
    while (held.length < HELD) {
      const variant = this.#again.shift() ?? this.#rest.next().value
      if (variant === undefined) return
      held.push(variant)
      worker.postMessage(variant)
    }
  }

  #found(result: VariantResult): void {
    this.#results.set(result.number, result)
    this.#progress.done(this.#results.size, this.#count)
    if (this.#results.size === this.#count) this.#end(false)
  }

  /** Sees to what a worker held that died: the first is that on which it died. */
  #died([at, ...others]: readonly Variant[], reason: string): void {
    this.#again.push(...others)
    if (at !== undefined) {
      const { number, values } = at
      const isAgain = this.#tried.has(number)
      this.#progress.end()
      void tell(
        this.#shell,
        `a worker died on variant ${number} (${reason}); ${isAgain ? 'it is given up' : 'it is tried once more'}`,
      )
      if (isAgain) {
        const error = `not assessed: two workers died on it, the last with: ${reason}`
        this.#found({ number, values, objectives: {}, missing: {}, notHeld: [], error })
      } else {
        this.#tried.add(number)
        this.#again.push(at)
      }
    }
    if (this.#results.size < this.#count) this.#start()
  }
}
