import { type Child, html, type Markup, trusted } from '../../../base/markup/element.ts';
import { clean } from '../../../base/markup/clean.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { mantelCautions, type Said, sawCautions } from '../words/cautions.ts';
import { named as lookUp, nameText } from '../words/named.ts';
import { unitWord } from '../words/size-text.ts';
import { boardsSection } from './board-sections.ts';
import { offcutsSection } from './offcuts-section.ts';
import { partsSection } from './parts-section.ts';
import { pullSection } from './pull-list.ts';
import { rod } from './rod.ts';
import { setupSection } from './setup-section.ts';
import { shortSection } from './short-parts.ts';
import { runningHead, sheetStyle } from './style.ts';
import { totalsSection } from './totals.ts';
import { wholeFractions } from './whole-fractions.ts';

/** What else the sheet can carry, from the plan and from other stages. */
export interface SheetExtras {
  /** Cautions of the plan (fire, hanging, …), each a line or a heading with lines. */
  readonly cautions?: readonly (Said | string)[];
  /** Drawings of the mantel: finished SVG of our own making, not user text. */
  readonly drawings?: readonly { readonly title: string; readonly svg: string }[];
  /** Anything else worth saying, as the cautions are given. */
  readonly notes?: readonly (Said | string)[];
}

/**
 * Everything a checked layout is shown as on paper and screen: one HTML file that asks the network for nothing and
 * runs no script. Totals first, then what is short, the boards to pull, the cautions, each board's diagram with its
 * cuts in order, the cuts by setting, the parts, the offcuts.
 * @param layout one that the independent check has passed: the sheet says so
 */
export function sheetHtml(job: Job, layout: Layout, extras: SheetExtras = {}): string {
  const title = `${nameText(job.name, 120)}: cutting sheet`;
  const head = html(
    'head',
    {},
    html('meta', { charset: 'utf-8' }),
    html('meta', {
      'http-equiv': 'Content-Security-Policy',
      content: "default-src 'none'; style-src 'unsafe-inline'",
    }),
    html('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    html('meta', { name: 'referrer', content: 'no-referrer' }),
    html('title', {}, title),
    html('style', {}, trusted(sheetStyle + runningHead(clean(nameText(job.name, 60))))),
  );
  const body = html('body', {}, rod(), wholeFractions(html('main', {}, sections(job, layout, extras))));
  return `<!doctype html>\n${html('html', { lang: 'en' }, head, '\n', body).markup}\n`;
}

function sections(job: Job, layout: Layout, extras: SheetExtras): Child[] {
  const named = lookUp(job);
  const hasBoards = layout.boards.length > 0;
  const offcuts = offcutsSection(job, layout, named);
  return [
    html('h1', {}, nameText(job.name, 120)),
    html(
      'p',
      { class: 'by' },
      `Cutting sheet by mantelwright. Lengths in ${unitWord(job.shop)}; ~ marks a figure that was rounded to be printed.`,
    ),
    totalsSection(job, layout),
    shortSection(layout),
    contents(layout, offcuts !== null, extras),
    hasBoards && pullSection(job, layout, named),
    cautionSection('Before the first cut', 'cautions', [
      ...(extras.cautions && extras.cautions.length > 0 ? extras.cautions : mantelCautions()),
      ...sawCautions(job, layout),
    ]),
    extras.drawings && extras.drawings.length > 0 && drawingSection(extras.drawings),
    hasBoards && boardsSection(job, layout, named),
    hasBoards && setupSection(job, layout, named),
    job.parts.length > 0 && partsSection(job, layout, named),
    offcuts,
    extras.notes && extras.notes.length > 0 && cautionSection('Notes', 'notes', extras.notes),
    html(
      'footer',
      {},
      html(
        'p',
        {},
        'Checked: these cuts were replayed one by one, apart from the solver, before this sheet was made. They leave exactly the parts and offcuts listed.',
      ),
      html('p', {}, 'Measure each board again before you cut it, and mark the parts on it first.'),
    ),
  ];
}

function contents(layout: Layout, hasOffcuts: boolean, extras: SheetExtras): Markup {
  const hasBoards = layout.boards.length > 0;
  const links: [string, string, boolean][] = [
    ['boards', 'Boards to pull', hasBoards],
    ['cautions', 'Before the first cut', true],
    ['drawings', 'The mantel', (extras.drawings?.length ?? 0) > 0],
    ['diagrams', 'Cuts by board', hasBoards],
    ['settings', 'Cuts by setting', hasBoards],
    ['parts', 'Parts', true],
    ['offcuts', 'Offcuts', hasOffcuts],
    ['notes', 'Notes', (extras.notes?.length ?? 0) > 0],
  ];
  return html(
    'nav',
    { 'aria-label': 'on this sheet', class: 'by' },
    html(
      'ul',
      {},
      links
        .filter(([, , isThere]) => isThere)
        .map(([id, text]) => html('li', {}, html('a', { href: `#${id}` }, text))),
    ),
  );
}

function cautionSection(heading: string, id: string, said: readonly (Said | string)[]): Markup {
  return html(
    'section',
    { id, class: 'cautions' },
    html('h2', {}, heading),
    html(
      'ul',
      {},
      said.map((item) => {
        if (typeof item === 'string') return html('li', { class: 'caution' }, nameText(item, 2000));
        const lines = item.lines.map((line) => nameText(line, 2000)).join(' ');
        return html(
          'li',
          { class: 'caution' },
          item.heading === '' ? '' : [html('strong', {}, `${item.heading}.`), ' '],
          lines,
        );
      }),
    ),
  );
}

function drawingSection(drawings: readonly { readonly title: string; readonly svg: string }[]): Markup {
  return html(
    'section',
    { id: 'drawings' },
    html('h2', {}, 'The mantel'),
    drawings.map(({ title, svg }) =>
      html(
        'figure',
        { class: 'drawing scroll', style: 'margin: .5rem 0' },
        html('figcaption', {}, nameText(title, 200)),
        trusted(svg.replace(/^\s*<\?xml[^>]*\?>\s*/, '')),
      ),
    ),
  );
}
