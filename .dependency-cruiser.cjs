const { join } = require('node:path')

/** From the lowest layer to the highest. A layer imports only from layers below its own; those in one line are apart. */
const layers = [
  ['quantity'],
  ['formula'],
  ['procedure'],
  ['thermal', 'mass'],
  ['electrical'],
  ['drivetrain'],
  ['range'],
  ['cycles', 'catalogue'],
  ['conversion'],
  ['report'],
  ['cli'],
  ['index'],
]

/** The folders in a layer, from the lowest up in the same way. A file beside them may stand between two of them. */
const folders = {
  thermal: [['air'], ['pack'], ['loop', 'cabin']],
  mass: [['placing', 'ride', 'brakes']],
  electrical: [['pack', 'cable'], ['fuse', 'charging', 'cells'], ['contactor']],
  drivetrain: [['road'], ['motor'], ['gearing'], ['pull']],
  range: [['route'], ['drive']],
  conversion: [['sheet'], ['chapters'], ['variants']],
  report: [['drawing']],
}

/** Matches the modules of some parts of src: a folder, or a file such as catalogue.ts. */
const modulesOf = (parts) => `^src/(?:${parts.join('|')})(?:/|\\.ts$)`

const oneWay = layers.flatMap((layer, level) =>
  layer.map((part) => ({
    name: `one-way-${part}`,
    comment: `src/${part} imports only from the layers below it`,
    severity: 'error',
    from: { path: modulesOf([part]) },
    to: { path: modulesOf(layers.slice(level).flat()), pathNot: modulesOf([part]) },
  })),
)

/** Matches the modules in some folders of a layer. */
const modulesIn = (layer, names) => `^src/${layer}/(?:${names.join('|')})/`

// Reached on whatever way, so that no file beside the folders closes a circle of them.
const oneWayInside = Object.entries(folders).flatMap(([layer, levels]) =>
  levels.flatMap((level, i) =>
    level.map((folder) => ({
      name: `one-way-${layer}-${folder}`,
      comment: `src/${layer}/${folder} reaches only the folders below it`,
      severity: 'error',
      from: { path: modulesIn(layer, [folder]) },
      to: {
        path: modulesIn(
          layer,
          levels
            .slice(i)
            .flat()
            .filter((other) => other !== folder),
        ),
        reachable: true,
      },
    })),
  ),
)

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...oneWay,
    ...oneWayInside,
    {
      name: 'known-folder',
      comment: 'every folder in a layer has its place in the order',
      severity: 'error',
      from: {
        path: '^src/[^/]+/[^/]+/',
        pathNot: Object.entries(folders).map(([layer, levels]) => modulesIn(layer, levels.flat())),
      },
      to: {},
    },
    {
      name: 'no-circles',
      comment: 'modules that import each other load in an order nobody sees; types alone load nothing',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'known-layer',
      comment: 'every module of src belongs to a layer',
      severity: 'error',
      from: { path: '^src/', pathNot: modulesOf(layers.flat()) },
      to: {},
    },
    {
      name: 'formulas-without-schemas',
      comment: 'a formula must cost no schema library: only procedures and the build sheet use one',
      severity: 'error',
      from: { path: modulesOf(['quantity', 'formula']) },
      to: { path: '(?:^|/)zod(?:/|$)', reachable: true },
    },
    {
      name: 'src-alone',
      comment: 'what is published never imports what only checks or shows it',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(?:tests|examples|bench|scripts|dist)/' },
    },
    {
      name: 'no-development-packages',
      comment: 'of the development packages, only those that are bundled may be imported by src',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-dev'], pathNot: '^node_modules/(?:zod|(?:@types/)?d3-[a-z]+)/' },
    },
    {
      name: 'not-only-for-node',
      comment: 'all but the command runs in a browser',
      severity: 'error',
      from: { path: '^src/', pathNot: modulesOf(['cli']) },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'resolvable',
      comment: 'every import leads somewhere',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: join(__dirname, 'tsconfig.json') },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
  },
}
