/** What was worked out as HTML: an assessment as a page, anything else as a fragment for a page. */
import type { Assessment } from '../conversion/index.js'
import { type HtmlOptions, pageOf } from './page.js'

/**
 * Writes an assessment as one page, complete in itself: no script, nothing loaded from elsewhere.
 *
 * @param assessment - What assess found.
 * @param options - `units` in which figures are shown: 'imperial', or by kind, such as `{ length: 'mi' }`.
 * @returns The page. The same sheet gives the same page.
 * @throws InputError for what assess has not found, and for options that cannot be used.
 */
export function toHtml(assessment: Assessment, options: HtmlOptions = {}): string {
  return pageOf(assessment, options)
}
