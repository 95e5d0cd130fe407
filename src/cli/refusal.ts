/** Errors of the command, in words for whoever typed it. */
import { nearestName } from '../quantity/nearest.js'

/** What is wrong, in one line or a few; the command ends with exit code 2. */
export class Refusal extends Error {}

/** What went wrong on the machine, whatever was typed; the command ends with exit code 70. */
export class Fault extends Error {}

/** The question after a name that there is not, where one is near it or has the same letters. */
export function didYouMean(name: string, known: readonly string[], mark = ''): string {
  const near = nearestName(name, known) ?? known.find((each) => lettersOf(each) === lettersOf(name))
  return near === undefined ? '' : `; did you mean ${mark}${near}?`
}

function lettersOf(name: string): string {
  return [...name].sort().join('')
}
