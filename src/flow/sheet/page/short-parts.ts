import { html, type Markup } from '../../../base/markup/element.ts';
import type { Layout } from '../../cuts/layout.ts';
import { nameText } from '../words/named.ts';
import { counted } from '../words/number-text.ts';

/** What could not be laid out, and why; nothing when all was. */
export function shortSection(layout: Layout): Markup | null {
  if (layout.short.length === 0) return null;
  return html(
    'section',
    { class: 'short', id: 'short' },
    html('h2', {}, 'Short'),
    html(
      'ul',
      {},
      layout.short.map(({ part, copies, why }) =>
        html(
          'li',
          {},
          html('strong', {}, nameText(part)),
          `: ${counted(copies, 'copy', 'copies')} short; ${nameText(why, 400)}.`,
        ),
      ),
    ),
  );
}
