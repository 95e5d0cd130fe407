/** A thread that assesses the variants it is handed. */
import { parentPort, workerData } from 'node:worker_threads'
import { readStudy, resultOf, type Study, type Variant } from '../conversion/index.js'

/** What a worker is given when it is started. */
export interface Task {
  readonly study: Study
}

/** What a worker says once it can be handed variants; each further message is a result. */
export const READY = 'ready'

/** Answers each variant with its result, one after the other. */
export function work(): void {
  const study = readStudy((workerData as Task).study)
  parentPort?.on('message', (variant: Variant) => parentPort?.postMessage(resultOf(study, variant)))
  parentPort?.postMessage(READY)
}
