/** Running text in the lines of a comment. */

/** The width of a line of comment, with its margin. */
export const WIDTH = 118

export function unitText(unit: string): string {
  return unit === '1' ? 'a plain number' : unit
}

/** An entry of a list. */
export function item(text: string): string[] {
  return wrapped(text, WIDTH - 2).map((line, i) => (i === 0 ? `- ${line}` : `  ${line}`))
}

/** A row of a table. */
export function row(...cells: readonly string[]): string {
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`
}

export function wrapped(text: string, width = WIDTH): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width - 3) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line]
}
