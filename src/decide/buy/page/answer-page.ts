import { clean } from '../../../base/markup/clean.ts';
import { type Child, type Markup, html, trusted } from '../../../base/markup/element.ts';
import { rod } from '../../../flow/sheet/page/rod.ts';
import { runningHead, sheetStyle } from '../../../flow/sheet/page/style.ts';
import { wholeFractions } from '../../../flow/sheet/page/whole-fractions.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';

/** Additions to the sheet's look for answers read standing in the yard: small drawings may shrink instead of scroll. */
const answerStyle = `
.chart svg { display: block; width: 100%; height: auto; max-width: 38rem; }
.choice { border-top: 2px solid #000; margin: 1rem 0; padding-top: .4rem; break-inside: avoid; }
.list { break-after: page; }
.verdict ul { margin: .3rem 0; padding-left: 1.2rem; }
`;

/**
 * A page in the sheet's style, one HTML file that asks the network for nothing and runs no script.
 * @param title what the page is, after the job's name
 */
export function answerPage(jobName: string, title: string, body: readonly Child[]): string {
  const heading = `${nameText(jobName, 120)}: ${title}`;
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
    html('title', {}, heading),
    html('style', {}, trusted(sheetStyle + answerStyle + runningHead(clean(nameText(jobName, 60))))),
  );
  const main = wholeFractions(html('main', {}, html('h1', {}, nameText(jobName, 120)), body));
  return `<!doctype html>\n${html('html', { lang: 'en' }, head, '\n', html('body', {}, rod(), main)).markup}\n`;
}

/** A section under its heading. */
export function section(id: string, heading: string, ...body: readonly Child[]): Markup {
  return html('section', { id }, html('h2', {}, heading), body);
}

/** A list of sentences. */
export function points(lines: readonly string[]): Markup {
  return html(
    'ul',
    {},
    lines.map((line) => html('li', {}, line)),
  );
}
