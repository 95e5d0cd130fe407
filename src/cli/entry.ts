/** What the file that is run needs of the rest. */
export { main } from './main.js'

/** Assesses variants as they are handed out, in a thread of its own. */
export async function work(): Promise<void> {
  ;(await import('./worker.js')).work()
}
