import { html, type Markup } from '../../../base/markup/element.ts';
import type { Job } from '../../stock/job.ts';
import type { LaidBoard, Layout } from '../../cuts/layout.ts';
import { boardPicture } from '../board/board-svg.ts';
import { boardCaption } from '../words/board-caption.ts';
import { type CutSide, cutWords } from '../words/cut-words.ts';
import { type Named, nameText } from '../words/named.ts';
import { table, tickBox } from './table.ts';

/** Each board's diagram with its cuts in order. */
export function boardsSection(job: Job, layout: Layout, named: Named): Markup {
  // Heading and first board are one block, lest a page end between them.
  const opening = [
    html('h2', { id: 'diagrams' }, 'The cuts, board by board'),
    html(
      'p',
      { class: 'how' },
      'Cut in the order of the numbers. Near side: towards the butt end (crosscut) or the near edge (rip). ',
      'The blade enters at the far edge of the near side and takes its kerf from the far side.',
    ),
  ];
  return html(
    'div',
    {},
    layout.boards.map((laid, index) => boardSection(job, laid, named, index + 1, index === 0 ? opening : [])),
  );
}

function boardSection(
  job: Job,
  laid: LaidBoard,
  named: Named,
  number: number,
  opening: readonly Markup[],
): Markup {
  const { title, facts } = boardCaption(job, laid);
  const note = named.boards.get(laid.board)?.note ?? '';
  return html(
    'section',
    { class: 'board', id: `board-${number}` },
    opening,
    html('h3', {}, title),
    html('p', { class: 'facts' }, facts.join(' · ')),
    note !== '' && html('p', { class: 'facts' }, nameText(note, 300)),
    html(
      'div',
      { class: 'diagram scroll', tabindex: 0, role: 'region', 'aria-label': `diagram of board ${title}` },
      boardPicture(job, laid, false),
    ),
    laid.cuts.length > 0 && cutTable(job, laid, named, title),
  );
}

function cutTable(job: Job, laid: LaidBoard, named: Named, title: string): Markup {
  const side = ({ size, becomes }: CutSide): (Markup | string)[] => [
    html('span', { class: 'keep' }, size),
    becomes === '' ? '' : ` → ${becomes}`,
  ];
  return table(
    `cuts of board ${title}, in order`,
    [
      { head: '' },
      { head: 'cut', kind: 'figures' },
      { head: 'saw', kind: 'keep' },
      { head: 'workpiece', kind: 'keep' },
      { head: 'blade enters at', kind: 'figures' },
      { head: 'near side' },
      { head: 'far side' },
    ],
    cutWords(laid, named, job.shop).map(({ step, saw, workpiece, at, sides }) => [
      tickBox(),
      String(step),
      saw,
      workpiece,
      at,
      side(sides[0]),
      side(sides[1]),
    ]),
  );
}
