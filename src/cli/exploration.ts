/** What comes of a study, as text. */
import {
  type Exploration,
  type Member,
  quantityOf,
  type Study,
  type VariantResult,
  variantsOf,
} from '../conversion/index.js'
import { shownIn } from '../report/figure.js'
import { FAILS, HOLDS } from './command.js'
import { emphasised, print, type Shell, tell } from './shell.js'
import { aligned, cut, stacked } from './table.js'

/** The most characters of a value in a table, and of a reason; how many reasons are told. */
const [VALUE, REASON, REASONS] = [24, 160, 5]

const alone = shownIn(undefined).alone

/** Prints what comes of a study, says where it is not whole, and gives the exit code. */
export async function tellExploration(
  shell: Shell,
  study: Study,
  exploration: Exploration,
  isJson: boolean,
): Promise<number> {
  const { count } = variantsOf(study)
  const found = exploration.results.length
  const text = isJson ? `${JSON.stringify(exploration, null, 2)}\n` : explorationText(study, exploration)
  await print(shell, isJson ? text : emphasised(shell, text, /^\S.*$/gm))
  if (found < count) await tell(shell, `not whole: ${found} of ${count} variants`)
  return found === count && exploration.front.length > 0 ? HOLDS : FAILS
}

function explorationText(study: Study, exploration: Exploration): string {
  const { results, front, setAside, unsound } = exploration
  const parts = [
    `${front.length} of ${results.length} variants on the front`,
    ...(setAside.length === 0 ? [] : [`${setAside.length} set aside`]),
    ...(unsound.length === 0 ? [] : [`${unsound.length} not sound`]),
  ]
  const blocks = [
    [parts.join(', ')],
    ...(front.length === 0 ? [] : [frontLines(study, front)]),
    ...(front.some(({ against }) => against.length > 0) ? [againstLines(front)] : []),
    ...(setAside.length === 0 ? [] : [asideLines(setAside)]),
    ...(unsound.length === 0 ? [] : [reasonLines('Not sound', unsound, ({ error = '' }) => [error])]),
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

function frontLines({ vary, objectives }: Study, front: readonly Member[]): string[] {
  const [paths, ids] = [Object.keys(vary), Object.keys(objectives)]
  const wanted = ['', ...paths.map(() => ''), ...ids.map((id) => objectives[id] as string), '']
  const rows = front.map(({ number, values, objectives: found, verdict = '' }) => [
    String(number),
    ...paths.map((path) => valueText(values[path])),
    ...ids.map((id) => alone(quantityOf(found[id] as never))),
    verdict,
  ])
  return ['The front', ...aligned([...stacked(['number', ...paths, ...ids, 'verdict']), wanted, ...rows])]
}

/** A value as it is written; of a part with a title, that. */
function valueText(value: unknown): string {
  const { title, name } = Object(value) as { readonly title?: unknown; readonly name?: unknown }
  const text = [title, name, value].find((each) => typeof each === 'string') ?? JSON.stringify(value)
  return cut(text as string, VALUE)
}

function againstLines(front: readonly Member[]): string[] {
  return [
    'What each has against the next better',
    ...front.flatMap(({ number, against }) =>
      against.map(({ number: other, givesUp, gains }) => {
        const gained = amountsText(gains)
        return `  ${number} against ${other}: ${amountsText(givesUp)}${gained === '' ? '' : `, for ${gained}`}`
      }),
    ),
  ]
}

/** Differences with their signs. */
function amountsText(amounts: Member['against'][number]['gains']): string {
  return Object.entries(amounts)
    .map(([id, amount]) => `${amount.si > 0 ? '+' : ''}${alone(quantityOf(amount))} ${id}`)
    .join(', ')
}

function asideLines(setAside: readonly VariantResult[]): string[] {
  return reasonLines('Set aside', setAside, ({ notHeld, missing }) => [
    ...notHeld.map(({ hold, verdict, text }) => `${hold} ${verdict === 'fail' ? 'fails' : 'is not known'}: ${text}`),
    ...Object.entries(missing).map(([id, why]) => `${id} is missing: ${why}`),
  ])
}

/** Why variants do not stand on the front: the first few, and how many more there are. */
function reasonLines(
  title: string,
  variants: readonly VariantResult[],
  why: (variant: VariantResult) => readonly string[],
): string[] {
  const more = variants.length - REASONS
  return [
    title,
    ...variants.slice(0, REASONS).map((each) => `  ${each.number}: ${cut(why(each).join('; '), REASON)}`),
    ...(more > 0 ? [`  and ${more} more (--json tells all)`] : []),
  ]
}
