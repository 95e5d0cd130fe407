import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { isDeep } from './tests/runs.js'

const source = (path: string) => fileURLToPath(new URL(`src/${path}`, import.meta.url))

export default defineConfig({
  resolve: {
    alias: [
      { find: /^kerbwatt$/, replacement: source('index.ts') },
      { find: /^kerbwatt\/(\w+)$/, replacement: source('$1/index.ts') },
    ],
  },
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    // Unless told, vitest leaves one core idle.
    maxWorkers: '100%',
    // A file of tests finds modules as the file before left them, and in the deep tests has its own.
    isolate: isDeep,
    // Ends a test that hangs, and none on a busy machine.
    testTimeout: 120_000,
  },
})
