/** `kerbwatt variants`: the variants of a study as lines. */
import { type Study, type Variant, variantsOf } from '../conversion/index.js'
import { type Command, HOLDS } from './command.js'
import { onlyPlace, written } from './options.js'
import { isClosed, print } from './shell.js'
import { studyFrom } from './study.js'

/** A variant with what is asked of it, so that a line is enough wherever it goes. */
export type VariantLine = Variant & Pick<Study, 'objectives' | 'hold'>

export const variantsCommand: Command = {
  usage: 'variants STUDY',
  about: [
    'Writes the variants of a study, a line of JSON each. kerbwatt assess --lines takes them,',
    'here or on other machines, and kerbwatt front finds the best of what comes back.',
  ],
  options: {},
  example: 'kerbwatt variants examples/wagtail-study.json | head -2 | kerbwatt assess --lines -',
  async run(shell, words) {
    const study = await studyFrom(shell, onlyPlace(written(words, this.options), 'a study, such as study.json'))
    const { objectives, hold } = study
    for (const { number, values, sheet } of variantsOf(study)) {
      const line: VariantLine = { number, values, objectives, ...(hold === undefined ? {} : { hold }), sheet }
      await print(shell, `${JSON.stringify(line)}\n`)
      if (isClosed(shell)) break
    }
    return HOLDS
  },
}
