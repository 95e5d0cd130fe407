/** Whether a page is valid HTML, by html-validate. */
import { HtmlValidate } from 'html-validate'

const validator = new HtmlValidate({
  extends: ['html-validate:standard'],
  rules: {
    // Regions that scroll are reached by keys.
    'no-redundant-role': 'error',
    'no-inline-style': 'off',
    'long-title': 'off',
    'valid-id': ['error', { relaxed: true }],
    'require-sri': 'off',
  },
})

/** Each fault of a page, with the rule that it breaks and its place. */
export async function faultsOf(html: string): Promise<readonly (readonly unknown[])[]> {
  const { results } = await validator.validateString(html)
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line, column }) => [ruleId, message, line, column]),
  )
}

/** Pieces of HTML in a page of their own, as their user would put them there. */
export function pageWith(title: string, ...pieces: readonly string[]): string {
  return `<!DOCTYPE html>\n<html lang="en-GB"><head><meta charset="utf-8"><title>${title}</title></head><body><main><h1>${title}</h1>${pieces.join('')}</main></body></html>`
}
