import { overlaps } from '../../../base/geometry/rectangle.ts';
import { html, type Markup } from '../../../base/markup/element.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout, Offcut } from '../../cuts/layout.ts';
import { offcutThickness } from '../../cuts/offcut-thickness.ts';
import type { Board } from '../../stock/board.ts';
import { boardTitle, type Named, nameText } from '../words/named.ts';
import { counted } from '../words/number-text.ts';
import { bare, sizeText, withUnit } from '../words/size-text.ts';
import { table, tickBox } from './table.ts';

/** The offcuts to label and keep, with the flaws they carry; nothing when there are none. */
export function offcutsSection(job: Job, layout: Layout, named: Named): Markup | null {
  const thickness = new Map(job.parts.map((part) => [part.name, part.thickness]));
  const rows = layout.boards.flatMap((laid) => {
    const board = named.boards.get(laid.board);
    return laid.offcuts.map((offcut) => [
      tickBox(),
      html('strong', {}, nameText(offcut.id, 40)),
      sizeText(offcut, job.shop),
      board ? withUnit(offcutThickness(laid, offcut, thickness, board.dressedThickness), job.shop) : '',
      board ? nameText(board.species, 40) : '',
      `${boardTitle(laid, board, 40)}, ${bare(offcut.x, job.shop)} to ${bare(offcut.x + offcut.length, job.shop)}`,
      board ? flawsOn(offcut, board) : '',
    ]);
  });
  if (rows.length === 0) return null;
  return html(
    'section',
    { id: 'offcuts' },
    html('h2', {}, 'Offcuts to label and keep'),
    html(
      'p',
      { class: 'how' },
      `Write the name on each when it comes off the saw. ${counted(rows.length, 'offcut')}.`,
    ),
    table(
      'offcuts to label and keep',
      [
        { head: '' },
        { head: 'write on it', kind: 'keep' },
        { head: 'length × width', kind: 'keep' },
        { head: 'thickness, planed', kind: 'keep' },
        { head: 'species' },
        { head: 'from board, along it' },
        { head: 'flaws' },
      ],
      rows,
    ),
  );
}

/** `2 sound knots, wane`, counted by kind; `clear` when nothing marked lies on it. */
function flawsOn(offcut: Offcut, board: Board): string {
  const counts = new Map<string, number>();
  for (const defect of board.defects) {
    if (overlaps(offcut, defect)) counts.set(defect.kind, (counts.get(defect.kind) ?? 0) + 1);
  }
  if (counts.size === 0) return 'none marked';
  return [...counts].map(([kind, count]) => (count === 1 ? kind : `${kind} × ${count}`)).join(', ');
}
