/** An assessment as Markdown, with the tables of GitHub's dialect. */
import type { Assessment, SheetCheck } from '../conversion/index.js'
import type { Units } from './figure.js'
import { cleaned, isRightToLeft } from './markup.js'
import { cautionsOf, type OutlinedSection, outlineOf, sentenceCase, verdictWords } from './outline.js'
import { finestOf, leftOf, refuseOthers, roughIn, Telling, verdictSentences } from './telling.js'

/** How an assessment is written as Markdown. */
export interface MarkdownOptions {
  /** Units in which figures are shown, in place of those that they come in. */
  readonly units?: Units
}

/**
 * Writes an assessment as Markdown, in the order of the report.
 *
 * @param assessment - What assess found.
 * @param options - `units` in which figures are shown: 'imperial', or by kind, such as `{ length: 'mi' }`.
 * @returns The verdict, each section with its figures, tables and checks under the numbers of the report, what was not
 *   assessed, assumptions and cautions.
 * @throws InputError for what assess has not found, and for options that cannot be used.
 *
 * @example
 * ```ts
 * toMarkdown(assess(readBuild(sheet))).split('\n')[0] // '# Wagtail 850, electric'
 * ```
 */
export function toMarkdown(assessment: Assessment, options: MarkdownOptions = {}): string {
  refuseOthers('toMarkdown', assessment, options, ['units'])
  const telling = new Telling(options.units, assessment.bands)
  const { title, note, notes, unassessed, assumptions, bands = [], measureNext = [], verdict } = assessment
  const [first, others] = cautionsOf(assessment)
  const cautions = (heading: string, all: typeof first) =>
    block(
      heading,
      all.map(({ hazard, text }) => `- **${inline(sentenceCase(hazard))}.** ${inline(text)}`),
    )
  const list = (heading: string, items: readonly string[]) =>
    block(
      heading,
      items.map((item) => `- ${inline(item)}`),
    )
  return [
    `# ${inline(title)}`,
    ...(note === undefined ? [] : [inline(note)]),
    `**${inline(verdictSentences[verdict])}**`,
    table(
      ['', ''],
      telling.summary(assessment).map((line) => [...line]),
    ),
    ...cautions('Cautions on what fails', first),
    ...list(
      'Measure next',
      measureNext.map(({ text }) => text),
    ),
    ...list('Rough bands', bands.flatMap(roughIn)),
    ...list(
      'Unusual',
      notes.map(({ path, text }) => `${path}: ${text}`),
    ),
    ...outlineOf(assessment).flatMap((each) => sectionOf(each, telling)),
    ...list(
      'Not assessed',
      unassessed.map(({ title: name, why }) => `${name}: ${why}`),
    ),
    ...block(
      'Taken for granted',
      assumptions.map(({ text }, i) => `${i + 1}. ${inline(text)}`),
    ),
    ...cautions(first.length === 0 ? 'Cautions' : 'Further cautions', others),
  ]
    .join('\n\n')
    .concat('\n')
}

function block(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`## ${heading}`, lines.join('\n')]
}

function sectionOf({ number, section, figures, tables, checks }: OutlinedSection, telling: Telling): string[] {
  return [
    `## ${number}. ${inline(section.title)}`,
    ...(figures.length === 0
      ? []
      : [
          table(
            ['no.', 'figure', 'value'],
            figures.map(({ number: no, of }) => [no, of.name, telling.shown(of.value)]),
          ),
        ]),
    ...tables.flatMap(({ number: no, of: { title, columns, rows, measures, notes = [] } }) => [
      `**Table ${no}.** ${inline(title)}`,
      ...(rows.length === 0
        ? []
        : [
            table(
              ['', ...columns.map(({ name }) => name)],
              rows.map(({ name, values }) => [
                name,
                ...values.map((value) => telling.cell(value, measures === 'rows' ? finestOf(values) : 0)),
              ]),
            ),
          ]),
      ...notes.map(inline),
    ]),
    ...(checks.length === 0
      ? []
      : [
          table(
            ['no.', 'check', 'figure', 'limit', 'left', 'verdict', 'basis'],
            checks.map(({ number: no, of }) => [
              no,
              of.name,
              ...toldOf(of, telling),
              verdictWords[of.verdict],
              of.basis,
            ]),
          ),
        ]),
    ...section.notes.map(({ text }) => `Unusual: ${inline(text)}`),
  ]
}

/** The figure of a check, its limit and what is left; of one without figures what came of it, in words. */
function toldOf(check: SheetCheck, telling: Telling): readonly string[] {
  const told = telling.figureAndLimit(check)
  if (told === undefined || check.margin === undefined) return [check.text, '', '']
  return [told[0], `${check.sense} ${told[1]}`, leftOf(check.margin)]
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map(inline).join(' | ')} |`
  return [line(heads), `|${' --- |'.repeat(heads.length)}`, ...rows.map(line)].join('\n')
}

/** A text in Markdown: nothing in it is a mark, and what runs from right to left stays in its place. */
function inline(text: string): string {
  const seen = cleaned(text)
    .replace(/[\\`*_{}[\]<>#|~&!()$]/g, '\\$&')
    // A list, a heading or a link of its own at the start of a line.
    .replace(/^([-+=>]|\d+[.)])/, (mark) => mark.replace(/[-+=>.)]/, '\\$&'))
    .replace(/(https?|ftp|www|mailto)([:.])/gi, '$1\\$2')
    // A path such as charge.to would be taken for a domain of some country.
    .replace(/\.(?=[a-z]{2}\b)/gi, '\\.')
  return isRightToLeft(seen) ? `\u2068${seen}\u2069` : seen
}
