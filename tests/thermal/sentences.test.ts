/** Every check of heat reads by itself: without its name it still says what it is about. */
import { expect, it } from 'vitest'
import { foundBy } from '../judgement/judgement.js'
import { thermal } from '../judgement/thermal.js'
import { patched } from '../patched.js'

it.each(Object.entries(thermal))('%s has a subject in each sentence', (_, { call, sound, cases }) => {
  const patches = cases.flatMap(({ dangerous, sound: neighbour }) => [dangerous, neighbour ?? {}])
  const texts = patches.flatMap((patch) => {
    const found = foundBy(call, patched(sound, patch))
    return found instanceof Error ? [] : (found.checks ?? []).map(({ text }) => text)
  })
  expect(texts.length).toBeGreaterThan(10)
  // A bare figure with its limit, such as `12 °C, at least 0 °C`.
  for (const text of texts) expect(text).not.toMatch(/^-?[\d.]+ \S+, (?:at|more|less)/)
})
