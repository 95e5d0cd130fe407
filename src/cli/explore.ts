/** `kerbwatt explore`: every variant of a study, on all cores. */
import { availableParallelism } from 'node:os'
import { explorationOf } from '../conversion/index.js'
import { type Command, INTERRUPTED, inFile } from './command.js'
import { tellExploration } from './exploration.js'
import { onlyPlace, wholeOf, written } from './options.js'
import { tell } from './shell.js'
import { studyFrom } from './study.js'
import { searched } from './workers.js'

/** More threads than any machine has cores. */
const MOST_WORKERS = 512

export const exploreCommand: Command = {
  usage: 'explore STUDY [options]',
  about: [
    'Assesses every variant of a study and finds the front: those that no other beats in one',
    'objective and equals in the rest. Ctrl-C ends it and keeps what is done.',
    'Exit code: 0 where there is a front, 1 where there is none, 130 where it was interrupted.',
  ],
  options: {
    workers: { takes: 'N', about: 'how many threads; one for each core unless given' },
    json: { about: 'prints every result and the front as JSON' },
  },
  example: 'kerbwatt explore examples/wagtail-study.json',
  async run(shell, words) {
    const options = written(words, this.options)
    const workers = wholeOf(options, 'workers', [1, MOST_WORKERS]) ?? availableParallelism()
    const path = onlyPlace(options, 'a study, such as study.json, or - for standard input')
    const study = await studyFrom(shell, path)
    const { results, isInterrupted } = await searched(shell, study, workers)
    if (isInterrupted) await tell(shell, 'interrupted: what follows is of the variants that are done')
    const found = inFile(path, () => explorationOf(study, results))
    const code = await tellExploration(shell, study, found, options.values.has('json'))
    return isInterrupted ? INTERRUPTED : code
  },
}
