import { html, type Markup } from '../../../base/markup/element.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { thicknessText, yieldOf } from '../words/board-caption.ts';
import { boardTitle, type Named, nameText } from '../words/named.ts';
import { lumberHeads, measuredFeet } from '../words/lumber-text.ts';
import { decimal, money, percent } from '../words/number-text.ts';
import { sizeText } from '../words/size-text.ts';
import { table, tickBox } from './table.ts';

/** The boards to pull, in the order of their diagrams. */
export function pullSection(job: Job, layout: Layout, named: Named): Markup {
  const rows = layout.boards.map((laid, index) => {
    const board = named.boards.get(laid.board);
    const species = board
      ? [board.species, board.grade].filter((word) => word !== '').map((word) => nameText(word, 40))
      : [];
    return [
      tickBox(),
      html('a', { href: `#board-${index + 1}` }, boardTitle(laid, board)),
      `${sizeText(laid, job.shop)}`,
      board ? thicknessText(board, job) : '',
      [...species, ...(board?.origin === 'rack' ? ['from the rack'] : [])].join(', '),
      board ? decimal(board.yardFeet, 2) : '',
      board ? decimal(measuredFeet(board), 2) : '',
      money(laid.cost),
      percent(yieldOf(laid)),
    ];
  });
  return html(
    'section',
    { id: 'boards' },
    html('h2', {}, 'Boards to pull'),
    table(
      'boards to pull',
      [
        { head: '' },
        { head: 'board' },
        { head: 'length × width', kind: 'keep' },
        { head: 'thickness', kind: 'keep' },
        { head: 'what' },
        { head: lumberHeads.tally, kind: 'figures' },
        { head: lumberHeads.measured, kind: 'figures' },
        { head: 'cost', kind: 'figures' },
        { head: 'yield', kind: 'figures' },
      ],
      rows,
    ),
  );
}
