#!/usr/bin/env node
/** The file that is run: it hands on what the process has. The rest is loaded after the cache of compiled code is on. */
import module from 'node:module'
import { isMainThread } from 'node:worker_threads'
import type { Shell } from './shell.js'

// From Node.js 22.1 on.
;(module as { readonly enableCompileCache?: () => unknown }).enableCompileCache?.()

const { stdin, stdout, stderr, env } = process
const shell: Shell = { stdin, stdout, stderr, env, bin: new URL(import.meta.url) }
if (isMainThread) {
  process.on('SIGINT', () => (shell.onInterrupt === undefined ? process.exit(130) : shell.onInterrupt()))
}
const { main, work } = await import('./entry.js')
if (isMainThread) process.exitCode = await main(process.argv.slice(2), shell)
else await work()
