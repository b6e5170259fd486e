import { html, type Markup, trusted } from '../../../base/markup/element.ts';
import { formatLength, type LengthStyle } from '../../../base/units/format-length.ts';
import type { Defect } from '../../stock/defect.ts';
import { nameText } from '../../sheet/words/named.ts';
import type { Held } from '../fold.ts';
import { labelDrawing, labelScale } from './label-drawing.ts';

/**
 * A sheet of labels to print, cut apart and staple to the pieces: ten to a page of Letter or A4, since two of 92 mm
 * and five of 50 mm fit the printed part of both. One HTML file that asks the network for nothing and runs no script.
 * @param pieces in the order of the labels
 */
export function labelsHtml(pieces: readonly Held[], style: LengthStyle): string {
  const head = html(
    'head',
    {},
    html('meta', { charset: 'utf-8' }),
    html('meta', {
      'http-equiv': 'Content-Security-Policy',
      content: "default-src 'none'; style-src 'unsafe-inline'",
    }),
    html('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    html('title', {}, 'Labels for the rack'),
    html('style', {}, trusted(labelStyle)),
  );
  const body = html(
    'body',
    {},
    html('p', { class: 'how' }, howTo(pieces.length)),
    html(
      'main',
      {},
      pieces.map((held) => label(held, style)),
    ),
  );
  return `<!doctype html>\n${html('html', { lang: 'en' }, head, '\n', body).markup}\n`;
}

function howTo(count: number): string {
  const labels = count === 1 ? '1 label' : `${count} labels`;
  return `${labels}, ten to a page: print at full size, cut along the lines, staple to the butt end. Drawn face A up, butt end (heavy line) left; flaws outlined solid on face A, dashed on B, double right through.`;
}

function label({ piece, note, job, time }: Held, style: LengthStyle): Markup {
  const size = [piece.length, piece.width, piece.dressedThickness].map((one) => formatLength(one, style));
  const unit = style.units === 'mm' ? 'mm' : 'in';
  const from = piece.parent === null ? '' : `from ${nameText(piece.parent.name, 24)}`;
  const origin = [from, job === '' ? '' : `of ${nameText(job, 30)}`, time.slice(0, 10)].filter(
    (text) => text !== '',
  );
  const wood = [piece.species, piece.nominalThickness, piece.tone, note].filter((text) => text.trim() !== '');
  return html(
    'section',
    { class: 'label' },
    html('h2', { class: piece.name.length > 7 ? 'long' : null }, nameText(piece.name, 20)),
    html('p', { class: 'size' }, `${size.join(' × ')} ${unit}`),
    html('p', {}, wood.map((text) => nameText(text, 40)).join(' · ')),
    html('div', { class: 'drawing' }, labelDrawing(piece)),
    html('p', { class: 'flaws' }, flaws(piece.defects)),
    html('p', { class: 'origin' }, html('span', {}, origin.join(' ')), html('span', {}, drawn(piece))),
  );
}

/** How the drawing is to be held against the wood, and whether it is to one scale. */
function drawn(piece: Held['piece']): string {
  const { along, across } = labelScale(piece);
  const times = Math.round((across / along) * 10) / 10;
  return `face A, heavy line: butt end${times > 1 ? `; drawn ${times} × too wide` : ''}`;
}

/** `sound knot on A; check through; 2 more`: what the drawing shows, in words. */
function flaws(defects: readonly Defect[]): string {
  if (defects.length === 0) return 'no marked flaws';
  const counts = new Map<string, number>();
  for (const { kind, face } of defects) {
    const words = face === 'through' ? `${kind} through` : `${kind} on ${face}`;
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  const said = [...counts].map(([words, count]) => (count === 1 ? words : `${count} × ${words}`));
  return said.length <= 3 ? said.join('; ') : `${said.slice(0, 3).join('; ')}; and more`;
}

/** Black on white; a plain sans of even figures for the name, so that it is copied onto the wood without a doubt. */
const labelStyle = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 1rem; background: #fff; color: #000; font: 9pt/1.25 Arial, 'Liberation Sans', Helvetica, sans-serif; }
.how { max-width: 46rem; font-size: .9rem; }
main { display: grid; grid-template-columns: repeat(auto-fill, 92mm); }
.label { width: 92mm; height: 50mm; padding: 2.5mm 4mm; border: 1px dashed #777; overflow: hidden; break-inside: avoid; display: grid; grid-template-columns: 1fr auto; grid-template-rows: auto auto 1fr auto; column-gap: 3mm; }
.label h2 { margin: 0; font: bold 25pt/1 'Liberation Mono', Menlo, Consolas, monospace; letter-spacing: .04em; white-space: nowrap; overflow: hidden; }
.label .long { font-size: 13pt; align-self: end; text-overflow: ellipsis; }
.label p { margin: 0; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
.size { font-size: 11pt; font-weight: bold; align-self: end; text-align: right; }
.label p:nth-of-type(2), .drawing, .flaws { grid-column: 1 / -1; }
.drawing { align-self: center; }
.drawing svg { display: block; width: 100%; height: auto; max-height: 19mm; }
.flaws { font-weight: bold; }
.origin { grid-column: 1 / -1; font-size: 7.5pt; display: flex; justify-content: space-between; gap: 2mm; }
.origin span { overflow: hidden; text-overflow: ellipsis; }
.origin span + span { flex: none; }
@page { margin: 12mm; }
@media print {
  body { margin: 0; }
  .how { display: none; }
  main { grid-template-columns: 92mm 92mm; }
}
`;
