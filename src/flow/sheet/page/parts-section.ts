import { type Child, html, type Markup } from '../../../base/markup/element.ts';
import type { Part } from '../../parts/part.ts';
import { blankOf } from '../../parts/blank.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { type Named, nameText } from '../words/named.ts';
import { laidCopies, placesOf } from '../words/places.ts';
import { bare, sizeText } from '../words/size-text.ts';
import { type Column, table } from './table.ts';

const blankColumn: Column = { head: 'blank', kind: 'keep' };

/** The parts: what was asked, what is laid out, and where each copy lies. */
export function partsSection(job: Job, layout: Layout, named: Named): Markup {
  const hasAllowance = job.parts.some((part) => blanksOf(part, layout, job) !== sizeText(part, job.shop));
  return html(
    'section',
    { id: 'parts' },
    html('h2', {}, 'Parts'),
    html(
      'p',
      { class: 'how' },
      `Finished sizes, long point to long point${hasAllowance ? '; the blank as cut beside them' : ''}. A letter after a copy’s number is the face that shows.`,
    ),
    table(
      'parts',
      [
        { head: 'part' },
        { head: 'wanted', kind: 'figures' },
        { head: 'laid out', kind: 'figures' },
        { head: 'length × width × thickness', kind: 'keep' },
        ...(hasAllowance ? [blankColumn] : []),
        { head: 'wood' },
        { head: 'ends' },
        { head: 'which copies, on which board' },
      ],
      job.parts.map((part) => row(part, job, layout, named, hasAllowance)),
    ),
  );
}

function row(part: Part, job: Job, layout: Layout, named: Named, hasAllowance: boolean): Child[] {
  const places = placesOf(part.name, layout, named).map(({ board, copies }) =>
    html('div', {}, html('strong', {}, board), `: ${copies.join(', ')}`),
  );
  const laid = laidCopies(part.name, layout);
  return [
    [
      html('strong', {}, nameText(part.name)),
      part.note === '' ? '' : html('div', {}, nameText(part.note, 200)),
    ],
    String(part.quantity),
    laid < part.quantity ? html('strong', {}, String(laid)) : String(laid),
    `${sizeText(part, job.shop)} × ${bare(part.thickness, job.shop)}`,
    ...(hasAllowance ? [blanksOf(part, layout, job)] : []),
    woodText(part),
    endsText(part),
    places.length > 0 ? places : 'none',
  ];
}

/** The blanks as they are cut: of one board, or of strips in the numbers that the layout has, panels trimmed after gluing. */
function blanksOf(part: Part, layout: Layout, job: Job): string {
  const laid = layout.boards.flatMap(({ pieces }) => pieces.filter((piece) => piece.part === part.name));
  const counts = [...new Set(laid.map(({ strip }) => strip?.of ?? 1))].sort((a, b) => a - b);
  return (counts.length === 0 ? [1] : counts)
    .map((strips) => {
      const size = sizeText(blankOf(part, job.shop, strips), job.shop);
      return strips === 1 ? size : `${strips} strips of ${size}`;
    })
    .join('; ');
}

function woodText(part: Part): string {
  const words: string[] = [part.quality];
  if (part.grain !== 'along') words.push(`grain ${part.grain}`);
  if (part.glueUp > 1) words.push(`up to ${part.glueUp} strips`);
  if (part.run !== null) words.push(`run ${nameText(part.run, 30)}`);
  return words.join(', ');
}

function endsText({ leftEnd, rightEnd }: Part): string {
  const end = (degrees: number): string =>
    degrees === 0 ? 'square' : `${Math.round(Math.abs(degrees) * 10) / 10}°`;
  return leftEnd === 0 && rightEnd === 0 ? 'square' : `left ${end(leftEnd)}, right ${end(rightEnd)}`;
}
