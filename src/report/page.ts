/** An assessment as one page, complete in itself, to be read on a screen and laid before an inspector in print. */
import { version } from '../../package.json'
import { type Assessment, type Figure, type Origin, type Section, type Table, writeBuild } from '../conversion/index.js'
import { type AnyFormula, sourceText } from '../formula/index.js'
import type { Caution, Verdict } from '../procedure/index.js'
import type { Quantity } from '../quantity/index.js'
import { sha256 } from './digest.js'
import { type Drawing, drawingsOf } from './drawing/courses.js'
import type { Units } from './figure.js'
import { attribute, cleaned, cssString, escaped, figureHtml, html } from './markup.js'
import { mathOf } from './math.js'
import { cautionsOf, type Numbered, type OutlinedSection, outlineOf, sentenceCase, verdictWords } from './outline.js'
import { pageFoot, pageStyle, style } from './style.js'
import { finestOf, leftOf, type OfEach, refuseOthers, roughIn, Telling, verdictSentences } from './telling.js'
import { Workings } from './working.js'

/** @internal */
export function pageOf(assessment: Assessment, options: { readonly units?: Units }): string {
  refuseOthers('toHtml', assessment, options, ['units'])
  return new Page(assessment, options.units).whole()
}

/** Nothing from elsewhere, no script, nothing to send or to frame. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"

/** The bar of a verdict on the whole. */
const bars = { holds: 'pass', near: 'near', fails: 'fail', open: 'unknown' } as const

/** How many checks of each verdict the first page tells, and how many lines in all. */
const WHERE_IT_FAILS: OfEach = { fails: 2, unknown: 1, near: 0 }
const WHERE_NOTHING_FAILS: OfEach = { fails: 0, unknown: 2, near: 1 }
const LINES = 10
/** A line of the first page is no longer than this: all of it stands at its check. */
const LONGEST_LINE = 200

/** A working that is told elsewhere: what it is called there, with no mark within, and its place. */
const CITATION = /^<p>(?:([^<>"]*), )?<a href="#(w\d+)">working \d+<\/a><\/p>$/

/** A part of the page behind the sections of the assessment. */
interface Part {
  readonly title: string
  readonly inner: string
}

class Page {
  readonly #assessment: Assessment
  readonly #telling: Telling
  readonly #units: Units | undefined
  readonly #workings: Workings
  readonly #origins: ReadonlyMap<Quantity, Origin>
  #drawings = 0

  constructor(assessment: Assessment, units: Units | undefined) {
    this.#assessment = assessment
    this.#units = units
    this.#telling = new Telling(units, assessment.bands)
    this.#workings = new Workings(this.#telling)
    this.#origins = new Map(
      assessment.figures.flatMap(({ value, from }) => (from === undefined ? [] : [[value, from]])),
    )
  }

  whole(): string {
    const { title, note, build } = this.#assessment
    const sheet = JSON.stringify(writeBuild(build))
    const digest = sha256(sheet)
    const outlined = outlineOf(this.#assessment)
    const drawings = drawingsOf(this.#assessment, this.#telling, this.#units)
    const sections = outlined.map((each) =>
      this.#section(
        each,
        drawings.filter(({ section }) => section === each.section.id),
      ),
    )
    const [first, others] = cautionsOf(this.#assessment)
    const parts = this.#parts(others, first.length > 0, sheet, digest)
    const told = `sheet ${digest.slice(0, 12)} · kerbwatt ${version}`
    return [
      '<!DOCTYPE html>',
      '<html lang="en-GB">',
      '<head>',
      '<meta charset="utf-8">',
      `<meta http-equiv="Content-Security-Policy" content="${attribute(policy)}">`,
      '<meta name="viewport" content="width=device-width, initial-scale=1">',
      '<meta name="color-scheme" content="light dark">',
      `<meta name="generator" content="kerbwatt ${attribute(version)}">`,
      `<title>${escaped(cleaned(title, 120))}</title>`,
      `<style>${style}${pageStyle}${pageFoot(cssString(cleaned(title, 60)), cssString(told))}</style>`,
      '</head>',
      '<body class="kerbwatt">',
      '<div class="page">',
      '<header>',
      `<h1><bdi>${escaped(cleaned(title, 300))}</bdi></h1>`,
      note === undefined ? '' : `<p class="note"><bdi>${escaped(cleaned(note))}</bdi></p>`,
      '</header>',
      '<main>',
      this.#verdict(first),
      this.#contents(outlined, parts),
      ...sections,
      ...parts.map(({ title: name, inner }, i) => sectionOf(outlined.length + i + 1, name, inner)),
      '</main>',
      `<footer><p>${html(`Made by kerbwatt ${version} from the sheet with the SHA-256 digest ${digest}. The same sheet gives the same report.`)}</p></footer>`,
      '</div>',
      '</body>',
      '</html>',
      '',
    ]
      .filter((line) => line !== '')
      .join('\n')
      .concat('\n')
  }

  #verdict(first: readonly Caution[]): string {
    const { verdict, bands = [], measureNext = [], notes } = this.#assessment
    const [word = '', rest = ''] = verdictSentences[verdict].split(/(?<=:) /)
    const isFailing = this.#assessment.summary.fails.length > 0
    const lines = this.#telling
      .summary(this.#assessment, isFailing ? WHERE_IT_FAILS : WHERE_NOTHING_FAILS)
      .slice(0, LINES)
    return [
      `<section aria-label="Verdict"><p class="came ${bars[verdict]}"><b>${html(word)}</b> ${html(rest)}</p>`,
      `<dl class="lines">${lines.map(([name, text]) => `<dt>${html(name)}</dt><dd>${html(shortened(text))}</dd>`).join('')}</dl>`,
      ...(first.length === 0 ? [] : [`<h2 class="minor">What can hurt here</h2>${cautionList(first)}`]),
      ...plainList(
        'Measure next',
        measureNext.map(({ text }) => text),
      ),
      ...plainList('Rough bands', bands.flatMap(roughIn)),
      ...plainList(
        'Unusual on the sheet',
        notes.map(({ path, text }) => `${path}: ${text}`),
      ),
      '</section>',
    ].join('')
  }

  #contents(outlined: readonly OutlinedSection[], parts: readonly Part[]): string {
    const all = [...outlined.map(({ section }) => section.title), ...parts.map(({ title }) => title)]
    const items = all.map(
      (title, i) => `<li><a href="#s${i + 1}"><span class="no">${i + 1}</span>${html(title)}</a></li>`,
    )
    return `<nav aria-label="Contents"><ol>${items.join('')}</ol></nav>`
  }

  #section({ number, section, figures, tables, checks }: OutlinedSection, drawings: readonly Drawing[]): string {
    const drawn = (table?: Table) =>
      drawings
        .filter(({ of }) => of === table?.id)
        .map((each) =>
          this.#drawing(
            each,
            tables.find((one) => one.of.id === each.of),
          ),
        )
    return sectionOf(
      number,
      section.title,
      [
        ...(figures.length === 0
          ? []
          : [`<ul class="figures">${figures.map((each) => this.#figure(each)).join('')}</ul>`]),
        ...drawn(),
        ...tables.flatMap((each) => [...drawn(each.of), this.#table(each)]),
        ...(checks.length === 0
          ? []
          : ['<h3>Checks</h3>', `<ul class="checks">${checks.map((each) => this.#check(each)).join('')}</ul>`]),
        ...unusual(section),
      ].join(''),
    )
  }

  #figure({ number, of }: Numbered<Figure>): string {
    const { name, value } = of
    const working = this.#workings.of(of.from)
    const row = `<span class="no">${number}</span><span class="name">${html(name)}</span><b class="value">${figureHtml(this.#telling.withBand(value))}</b>`
    return working === ''
      ? `<li id="f${number}"><div class="row">${row}</div></li>`
      : `<li id="f${number}"><details><summary class="row">${row}</summary><div class="inner">${working}</div></details></li>`
  }

  #check({ number, of }: OutlinedSection['checks'][number]): string {
    const { name, verdict, basis, paths, sense, margin, text } = of
    const told = this.#telling.figureAndLimit(of)
    const working = this.#workings.of(of.from, verdict !== 'pass')
    const phrase =
      told === undefined || margin === undefined
        ? `<span class="told wide">${html(text)}</span>`
        : `<span class="told figure"><b>${figureHtml(told[0])}</b></span><span class="told limit">${html(`${sense}`)} ${figureHtml(told[1])}</span><span class="told left">${figureHtml(leftOf(margin))}</span>`
    // Where the sheet sets the limit, the limit names its place.
    const others = paths.filter((path) => !basis.endsWith(`: ${path}`))
    const from = others.length === 0 ? '' : ` From ${others.map((path) => html(path)).join(', ')}.`
    return `<li id="c${number}"><details${verdict === 'pass' ? '' : ' class="told"'}><summary class="row"><span class="no">c${number}</span><span class="verdict ${verdict}">${verdictWords[verdict as Verdict]}</span><span class="name">${html(name)}</span>${phrase}</summary><div class="inner"><p class="basis">Limit: ${html(basis)}.${from}</p>${working}</div></details></li>`
  }

  #table({ number, of }: Numbered<Table>): string {
    const { title, columns, rows, measures, notes = [] } = of
    const under = notes.map((note) => `<p class="under">${html(note)}</p>`).join('')
    if (rows.length === 0)
      return `<p id="t${number}"><span class="no">Table ${number}.</span> ${html(title)}</p>${under}`
    const isWord = columns.map((_, i) => rows.every(({ values }) => typeof values[i] === 'string'))
    const workings: string[] = []
    const cell = (value: Quantity | string, finest: number, name: string) => {
      const text = figureHtml(this.#telling.cell(value, finest))
      const origin = typeof value === 'string' ? undefined : this.#origins.get(value)
      if (origin === undefined) return text
      const working = this.#workings.of(origin)
      // What is told elsewhere is led to straight away.
      const [, told = '', elsewhere] = CITATION.exec(working) ?? []
      if (elsewhere !== undefined) {
        return `<a href="#${elsewhere}"${told === '' ? '' : ` title="${told}"`}>${text}</a>`
      }
      const id = `t${number}.${workings.length + 1}`
      workings.push(`<li id="${id}"><details><summary>${html(name)}: <b>${text}</b></summary>${working}</details></li>`)
      return `<a href="#${id}">${text}</a>`
    }
    const body = rows.map(({ name, values }) => {
      const finest = measures === 'rows' ? finestOf(values) : 0
      const cells = values.map((value, i) => {
        const own = isWord[i] ? ' class="word"' : ''
        return `<td${own}>${isWord[i] ? html(String(value)) : cell(value, finest, [name, columns[i]?.name].filter(Boolean).join(', '))}</td>`
      })
      return `<tr><th scope="row">${html(name)}</th>${cells.join('')}</tr>`
    })
    const heads = columns
      .map(({ name }, i) => `<th scope="col"${isWord[i] ? ' class="word"' : ''}>${html(name)}</th>`)
      .join('')
    const own =
      workings.length === 0
        ? ''
        : `<details class="under"><summary>Workings of table ${number}</summary><ul class="inner">${workings.join('')}</ul></details>`
    return `${tableOf(`t${number}`, `<span class="no">Table ${number}.</span> ${html(title)}`, `Table ${number}`, heads, body)}${under}${own}`
  }

  #drawing({ title, says, pictures, table }: Drawing, of: Numbered<Table> | undefined): string {
    const number = ++this.#drawings
    const where = of === undefined ? '' : ` Its figures: <a href="#t${of.number}">table ${of.number}</a>.`
    const own =
      table === undefined
        ? ''
        : `<details class="under told"><summary>The figures of drawing ${number}</summary>${tableOf(
            `d${number}.t`,
            html(title),
            `Figures of drawing ${number}`,
            table.columns
              .slice(1)
              .map((name) => `<th scope="col">${html(name)}</th>`)
              .join(''),
            table.rows.map(
              ([head = '', ...cells]) =>
                `<tr><th scope="row">${figureHtml(head)}</th>${cells.map((each) => `<td>${figureHtml(each)}</td>`).join('')}</tr>`,
            ),
            table.columns[0],
          )}</details>`
    return `<figure id="d${number}"><figcaption><span class="no">Drawing ${number}.</span> <b>${html(title)}.</b> ${html(says)}${where}</figcaption><div class="pictures">${pictures.join('')}</div>${own}</figure>`
  }

  #parts(cautions: readonly Caution[], isFurther: boolean, sheet: string, digest: string): Part[] {
    const { unassessed, assumptions } = this.#assessment
    const formulas = this.#workings.formulas
    return [
      ...(unassessed.length === 0
        ? []
        : [
            {
              title: 'Not assessed',
              inner: `<ul class="plain">${unassessed.map(({ title, why }) => `<li><b>${html(title)}</b>: ${html(why)}</li>`).join('')}</ul>`,
            },
          ]),
      ...(assumptions.length === 0
        ? []
        : [
            {
              title: 'Taken for granted',
              inner: `<ol class="taken">${assumptions.map(({ text }, i) => `<li id="a${i + 1}"><span class="no">${i + 1}</span>${html(text)}</li>`).join('')}</ol>`,
            },
          ]),
      ...(cautions.length === 0
        ? []
        : [{ title: isFurther ? 'Further cautions' : 'Cautions', inner: cautionList(cautions) }]),
      {
        title: 'The sheet as given',
        inner: `<p class="note">SHA-256 of its JSON without spaces: ${digest}</p><pre class="sheet">${sheetText(sheet)}</pre>`,
      },
      ...(formulas.length === 0
        ? []
        : [
            {
              title: 'Formulas used',
              inner: `<ol class="plain formulas">${formulas
                .map(
                  ({ number, formula }) =>
                    `<li id="e${number}"><div class="formula" tabindex="0">${mathOf(formula)}</div><div class="about"><p><span class="no">${number}</span> ${html(formula.title)}: <code>${escaped(`${formula.result.symbol} = ${formula.expression}`)}</code></p><p class="basis">${symbolsOf(formula)}. ${html(sourceText(formula.source))}.</p></div></li>`,
                )
                .join('')}</ol>`,
            },
          ]),
    ]
  }
}

/** What the symbols of a formula stand for. */
function symbolsOf({ result, inputs, constants }: AnyFormula): string {
  const all = [
    [result.symbol, result.about],
    ...Object.values(inputs).map(({ symbol, about }) => [symbol, about]),
    ...Object.entries(constants).map(([symbol, { value, about }]) => [symbol, `${about}, ${value}`]),
  ]
  return all.map(([symbol = '', about = '']) => `<i>${html(symbol)}</i>\u00a0${html(about)}`).join('; ')
}

function sectionOf(number: number, title: string, inner: string): string {
  return `<section id="s${number}"><h2><span class="no">${number}</span>${html(title)}</h2>${inner}</section>`
}

function tableOf(
  id: string,
  caption: string,
  label: string,
  heads: string,
  body: readonly string[],
  first = '',
): string {
  const corner = first === '' ? '<td></td>' : `<th scope="col">${html(first)}</th>`
  return `<div class="scroll" tabindex="0" role="region" aria-label="${attribute(label)}"><table id="${id}"><caption>${caption}</caption><thead><tr>${corner}${heads}</tr></thead><tbody>${body.join('')}</tbody></table></div>`
}

function cautionList(cautions: readonly Caution[]): string {
  return `<ul class="cautions">${cautions.map(({ hazard, text }) => `<li><b>${html(sentenceCase(hazard))}.</b> ${html(text)}</li>`).join('')}</ul>`
}

function shortened(text: string): string {
  return text.length <= LONGEST_LINE ? text : `${text.slice(0, LONGEST_LINE).replace(/\s+\S*$/, '')} …`
}

function plainList(title: string, items: readonly string[]): string[] {
  return items.length === 0
    ? []
    : [
        `<h2 class="minor">${title}</h2><ul class="plain">${items.map((item) => `<li>${html(item)}</li>`).join('')}</ul>`,
      ]
}

function unusual({ notes }: Section): string[] {
  return notes.map(({ text }) => `<p class="under">Unusual: ${html(text)}</p>`)
}

/** What a sheet holds beyond this is a slip. */
const LONGEST_SHEET = 60_000
/** A group that fits into so many characters stands in one line. */
const LINE = 60

/** A sheet as JSON that reads back, small groups in a line. */
function sheetText(sheet: string): string {
  const text = inLines(JSON.parse(sheet), '')
  const isLong = text.length > LONGEST_SHEET
  const seen = isLong ? `${text.slice(0, LONGEST_SHEET)}…\n(cut here, of ${text.length} characters)` : text
  return seen
    .split('\n')
    .map((line) => escaped(line.replace(/\p{Cc}|[\u202a-\u202e\u2066-\u2069]|\p{Cs}/gu, '\ufffd')))
    .join('\n')
}

function inLines(value: unknown, indent: string): string {
  const short = JSON.stringify(value, null, 1)?.replace(/\n\s*/g, ' ') ?? 'null'
  if (typeof value !== 'object' || value === null || short.length + indent.length <= LINE) return short
  const deeper = `${indent}  `
  if (Array.isArray(value)) {
    return `[\n${value.map((each) => `${deeper}${inLines(each, deeper)}`).join(',\n')}\n${indent}]`
  }
  const entries = Object.entries(value).map(
    ([key, each]) => `${deeper}${JSON.stringify(key)}: ${inLines(each, deeper)}`,
  )
  return `{\n${entries.join(',\n')}\n${indent}}`
}
