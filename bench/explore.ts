/** What it costs to assess the variants of a study in one thread, and to find their front. */
import { readFileSync } from 'node:fs'
import { frontOf, readStudy, resultOf, type VariantResult, variantsOf } from 'kerbwatt/conversion'
import { durationText, medianOf, type Row } from './row.js'

const sheet = JSON.parse(readFileSync(new URL('../examples/wagtail-850.json', import.meta.url), 'utf8'))
const range = 'journeys.bakeryRound.winter.range'

/** A study of a thousand variants of the demo car, and of a hundred thousand. */
const studyOf = (payloads: number) =>
  readStudy({
    sheet,
    vary: {
      'pack.series': [3, 4],
      'pack.parallel': [2, 3],
      'gearbox.finalDrive': ['3.7', '3.9', '4.1', '4.375', '5.1'],
      'car.payload.mass': Array.from({ length: payloads }, (_, i) => `${100 + i / 50} kg`),
    },
    objectives: { [range]: 'most', 'weight.after.mass': 'least', 'road.to80.time': 'least' },
    hold: ['pack.available', 'motor.load'],
  })

/** Of so many variants the time is taken, in three turns: a thousand take long. */
const SOME = 40

function assessed(): number {
  const study = studyOf(50)
  const { count } = variantsOf(study)
  const some = [...variantsOf(study)].filter(({ number }) => number % (count / SOME) === 0)
  const turns = Array.from({ length: 3 }, () => {
    const start = performance.now()
    for (const variant of some) resultOf(study, variant)
    return performance.now() - start
  })
  return medianOf(turns) / SOME
}

/** Results all of which stand on the front, which takes longest: on a plane none is better in all three. */
function resultsOf(count: number): VariantResult[] {
  return Array.from({ length: count }, (_, i) => {
    const [a, b] = [(i * Math.SQRT2) % 1, (i * Math.sqrt(3)) % 1]
    const objectives = {
      [range]: { kind: 'length', si: a + b, unit: 'km' },
      'weight.after.mass': { kind: 'mass', si: a, unit: 'kg' },
      'road.to80.time': { kind: 'time', si: b, unit: 's' },
    } as const
    return { number: i + 1, values: {}, objectives, missing: {}, notHeld: [] }
  })
}

export function exploreRows(): Row[] {
  const one = assessed()
  const study = studyOf(5000)
  const results = resultsOf(100_000)
  const start = performance.now()
  const { length } = frontOf(study, results)
  const front = performance.now() - start
  return [
    {
      what: '1000 variants of the demo car in one thread',
      measured: `${durationText(one * 1e6)} each, of ${SOME}`,
      figure: `${one.toFixed(1)} s`,
      bar: '35 s',
      met: one <= 35,
    },
    {
      what: 'the front of 100 000 results',
      measured: `${durationText(front * 1e6)}, ${length} on it`,
      figure: `${(front / 1e3).toFixed(1)} s`,
      bar: 'none',
      met: true,
    },
  ]
}
