/** The machine check of the layers catches what it is there to catch. */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'

const project = join(import.meta.dirname, '../..')

/** What is broken in a project of some modules: `src/mass/ledger.ts: one-way-mass`. */
function brokenIn(modules: { readonly [file: string]: string }): readonly string[] {
  const place = mkdtempSync(join(tmpdir(), 'kerbwatt-layers-'))
  try {
    for (const [file, text] of Object.entries(modules)) {
      mkdirSync(dirname(join(place, file)), { recursive: true })
      writeFileSync(join(place, file), `${text}\n`)
    }
    const command = join(project, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs')
    const options = ['--config', join(project, '.dependency-cruiser.cjs'), '--output-type', 'json', 'src']
    const { stdout } = spawnSync(process.execPath, [command, ...options], { cwd: place, encoding: 'utf8' })
    const { summary } = JSON.parse(stdout) as { readonly summary: { readonly violations: readonly Violation[] } }
    return [...new Set(summary.violations.map(({ from, rule }) => `${from}: ${rule.name}`))].sort()
  } finally {
    rmSync(place, { recursive: true, force: true })
  }
}

interface Violation {
  readonly from: string
  readonly rule: { readonly name: string }
}

const leaf = 'export const leaf = 1; export type Leaf = 1'

/** Packages that are installed, as far as their imports go. */
const packages = {
  'package.json': `{ "devDependencies": { "zod": "4", "mathjs": "15" } }`,
  'node_modules/zod/package.json': `{ "name": "zod", "exports": { "./mini": "./mini.js" } }`,
  'node_modules/zod/mini.js': leaf,
  'node_modules/mathjs/package.json': `{ "name": "mathjs", "main": "index.js" }`,
  'node_modules/mathjs/index.js': leaf,
}

describe('the layers', { timeout: 30_000 }, () => {
  it('let a layer import from those below it, and procedures use schemas', () => {
    const modules = {
      ...packages,
      'src/quantity/index.ts': leaf,
      'src/formula/index.ts': `export { leaf } from '../quantity/index.js'`,
      'src/formula/step.ts': `import type { Whole } from './whole.js'; export type Step = Whole[]`,
      'src/formula/whole.ts': `import { type Step } from './step.js'; export type Whole = Step`,
      'src/mass/index.ts': `export { leaf } from './ledger.js'`,
      'src/procedure/index.ts': `import 'zod/mini'; export { leaf } from '../formula/index.js'`,
      'src/mass/ledger.ts': `export { leaf } from '../procedure/index.js'`,
      'src/electrical/index.ts': `export { leaf } from '../mass/index.js'`,
      // Of the folders of a layer too; files beside them may stand between.
      'src/range/index.ts': `import './consumption.js'; export { leaf } from './steady.js'`,
      'src/range/steady.ts': `import './consumption.js'; export { leaf } from './drive/motion.js'`,
      'src/range/consumption.ts': leaf,
      'src/range/drive/motion.ts': `import '../consumption.js'; export { leaf } from '../route/cycle.js'`,
      'src/range/route/cycle.ts': `export { leaf } from '../../electrical/index.js'`,
      'src/catalogue.ts': `export { leaf } from './range/index.js'`,
      'src/cli/index.ts': `import 'node:fs'; export { leaf } from '../catalogue.js'`,
      'src/index.ts': `export { leaf } from './catalogue.js'`,
    }
    expect(brokenIn(modules)).toEqual([])
  })

  it('let nothing else pass', () => {
    const upwards = [
      ['quantity', 'formula'],
      ['formula', 'procedure'],
      ['procedure', 'mass'],
      ['mass', 'thermal'],
      ['thermal', 'mass'],
      ['thermal', 'electrical'],
      ['electrical', 'drivetrain'],
      ['drivetrain', 'range'],
      ['range', 'conversion'],
      ['conversion', 'report'],
      ['report', 'cli'],
    ] as const
    const modules = {
      ...packages,
      ...Object.fromEntries(upwards.map(([, high]) => [`src/${high}/leaf.ts`, leaf])),
      // Even a type.
      ...Object.fromEntries(
        upwards.map(([low, high]) => [`src/${low}/needs-${high}.ts`, `export type { Leaf } from '../${high}/leaf.js'`]),
      ),
      'src/catalogue.ts': leaf,
      'src/range/needs-all.ts': `export { leaf } from '../catalogue.js'`,
      // Between the folders of a layer, also on the way through a file beside them: no module comes back to itself here.
      'src/electrical/fuse/curve.ts': `export { leaf } from '../cable/size.js'`,
      'src/electrical/fuse/fuse.ts': leaf,
      'src/electrical/cable/size.ts': leaf,
      'src/electrical/cable/heat.ts': `export { leaf } from '../fuse/fuse.js'`,
      'src/electrical/pack/module.ts': `export type { Leaf } from '../protect.js'`,
      'src/electrical/protect.ts': `export { type Leaf, leaf } from './cable/size.js'`,
      'src/electrical/odds/ends.ts': `export { leaf } from '../fuse/fuse.js'`,
      // A circle is told once, from one of its modules.
      'src/mass/hen.ts': `import { egg } from './egg.js'; export const hen = () => egg`,
      'src/mass/egg.ts': `import { hen } from './hen.js'; export const egg = () => hen`,
      'src/quantity/given.ts': `export { leaf } from 'zod/mini'`,
      'src/formula/far.ts': `export { leaf } from '../quantity/given.js'`,
      'src/mass/lab.ts': `export { leaf } from '../../tests/lab.js'`,
      'tests/lab.ts': leaf,
      'src/mass/disk.ts': `import 'node:fs'`,
      'src/mass/reference.ts': `export { leaf } from 'mathjs'`,
      'src/mass/lost.ts': `import './nowhere.js'`,
      'src/odds/index.ts': `export { leaf } from '../mass/leaf.js'`,
    }
    expect(brokenIn(modules)).toEqual(
      [
        ...upwards.map(([low, high]) => `src/${low}/needs-${high}.ts: one-way-${low}`),
        'src/range/needs-all.ts: one-way-range',
        'src/electrical/cable/heat.ts: one-way-electrical-cable',
        'src/electrical/pack/module.ts: one-way-electrical-pack',
        'src/electrical/odds/ends.ts: known-folder',
        'src/mass/egg.ts: no-circles',
        'src/quantity/given.ts: formulas-without-schemas',
        'src/formula/far.ts: formulas-without-schemas',
        'src/mass/lab.ts: src-alone',
        'src/mass/disk.ts: not-only-for-node',
        'src/mass/reference.ts: no-development-packages',
        'src/mass/lost.ts: resolvable',
        'src/odds/index.ts: known-layer',
      ].sort(),
    )
  })
})
