/** What a call of a formula costs: from text, from quantities, and in plain numbers. */
import Qty from 'js-quantities'
import { cableVoltageDrop } from 'kerbwatt/electrical'
import { quantity } from 'kerbwatt/quantity'
import { all, create, type Unit } from 'mathjs'
import { measure } from 'mitata'
import { durationText, type Row } from './row.js'

const math = create(all ?? {})

/** So many different inputs, that nothing can be worked out once and for all. */
const COUNT = 64
const numbers = Array.from({ length: COUNT }, (_, i) => ({
  current: 100 + 3.5 * i,
  resistancePerLength: (386 + i) / 1e6,
  length: 3 + i / 8,
}))
const texts = numbers.map(({ current, resistancePerLength, length }) => ({
  current: `${current} A` as const,
  resistancePerLength: `${Number((resistancePerLength * 1000).toPrecision(6))} mΩ/m` as const,
  length: `${length} m` as const,
}))
const quantities = texts.map(({ current, resistancePerLength, length }) => ({
  current: quantity('current', current),
  resistancePerLength: quantity('resistancePerLength', resistancePerLength),
  length: quantity('length', length),
}))
// The references know no Ω.
const asciiTexts = texts.map((text) => ({ ...text, resistancePerLength: text.resistancePerLength.replace('Ω', 'ohm') }))

/** Every way to the same sum, each over all inputs; the sum of the volts is kept so that none is left out. */
const ways = {
  text: () => texts.reduce((sum, given) => sum + cableVoltageDrop(given).si, 0),
  quantities: () => quantities.reduce((sum, given) => sum + cableVoltageDrop(given).si, 0),
  compute: () => numbers.reduce((sum, si) => sum + cableVoltageDrop.compute(si), 0),
  'hand-written': () =>
    numbers.reduce(
      (sum, { current, resistancePerLength, length }) => sum + 2 * current * resistancePerLength * length,
      0,
    ),
  mathjs: () =>
    asciiTexts.reduce((sum, { current, resistancePerLength, length }) => {
      const perMetre = math.multiply(2, math.unit(current), math.unit(resistancePerLength)) as unknown as Unit
      return sum + (math.multiply(perMetre, math.unit(length)) as unknown as Unit).toNumber('V')
    }, 0),
  'js-quantities': () =>
    asciiTexts.reduce((sum, { current, resistancePerLength, length }) => {
      return sum + Qty(current).mul(Qty(resistancePerLength)).mul(Qty(length)).mul(2).to('V').scalar
    }, 0),
}

/** Measures the calls of a formula. */
export async function formulaRows(): Promise<readonly Row[]> {
  const wanted = ways['hand-written']()
  const medians: { [way: string]: number } = {}
  for (const [way, run] of Object.entries(ways)) {
    const sum = run()
    if (!(Math.abs(sum - wanted) <= 1e-9 * wanted)) throw new Error(`${way} gives ${sum}, not ${wanted}`)
    medians[way] = (await measure(run, { min_cpu_time: 1e9 })).p50 / COUNT
  }
  const median = (way: keyof typeof ways) => medians[way] ?? Number.NaN
  const against = (other: 'mathjs' | 'js-quantities'): Row => ({
    what: `a formula from text, against ${other} with units`,
    measured: `${durationText(median('text'))} / ${durationText(median(other))}`,
    figure: `${(median(other) / median('text')).toFixed(1)} times faster`,
    bar: 'at least 20 times',
    met: median(other) / median('text') >= 20,
  })
  const over = (way: keyof typeof ways, base: keyof typeof ways, what: string, bar: number): Row => ({
    what,
    measured: `${durationText(median(way))} / ${durationText(median(base))}`,
    figure: `${durationText(median(way) - median(base))} more`,
    bar: `at most ${bar} ns`,
    met: median(way) - median(base) <= bar,
  })
  return [
    against('mathjs'),
    against('js-quantities'),
    over('quantities', 'compute', 'a formula from quantities, over its compute', 150),
    over('compute', 'hand-written', 'compute, over hand-written arithmetic', 10),
  ]
}
