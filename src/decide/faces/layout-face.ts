import type { LaidPiece, Layout } from '../../flow/cuts/layout.ts';
import { nameText } from '../../flow/sheet/words/named.ts';
import { percent } from '../../flow/sheet/words/number-text.ts';
import { blocks, extent } from '../../flow/stock/clear.ts';
import { overlaps } from '../../base/geometry/rectangle.ts';
import type { Job } from '../../flow/stock/job.ts';
import type { FaceTable, PossibleFace } from './face-table.ts';
import { extraWords, faceName, valueWords } from './face-words.ts';
import type { Focus } from './focus.ts';
import type { FaceWish } from './wish.ts';

/** What a layout says of the face it was asked to show. */
export function wishLines(job: Job, focus: Focus, wish: FaceWish): string[] {
  const lead = nameText(job.parts[focus.lead]!.name);
  return [`${lead} shows face ${wish.face} of ${nameText(wish.board, 40)}, as asked.`];
}

/** What a layout says of the face that it took within the premium. */
export function premiumLines(table: FaceTable, choice: PossibleFace, premium: number): string[] {
  const lead = nameText(table.job.parts[table.focus.lead]!.name);
  return [
    `${lead} shows ${faceName(choice)}: the best look within ${percent(premium)} (face premium) of the cheapest plan, ${valueWords(table.plan.value, table)}; ${extraWords(choice, table)}.`,
  ];
}

/**
 * A word about every glue-up line that falls on a part that shows; and, where two strips come from one board, the order
 * in which they can be joined.
 */
export function glueLines(job: Job, layout: Layout): string[] {
  return job.parts.flatMap((part, index) => {
    if (part.show === 0) return [];
    const strips = layout.boards.flatMap((laid) =>
      laid.pieces
        .filter((piece) => piece.part === part.name && piece.strip !== undefined)
        .map((piece) => ({ laid, piece })),
    );
    const copies = [...new Set(strips.map(({ piece }) => piece.copy))].sort((a, b) => a - b);
    return copies.map((copy) => {
      const own = strips.filter(({ piece }) => piece.copy === copy);
      const which = part.quantity > 1 ? ` (copy ${copy})` : '';
      const [first, second] = own;
      const isOneBoard =
        own.length === 2 &&
        first!.laid.board === second!.laid.board &&
        first!.laid.copy === second!.laid.copy;
      const order = isOneBoard ? bookWords(job, index, first!.laid.board, second!.piece) : '';
      return `${nameText(part.name)}${which} is edge-joined of ${own.length} strips: a glue line shows along it.${order}`;
    });
  });
}

/** Two strips of one board: as they lay, or like the pages of a book if the other face of the second may show too. */
function bookWords(job: Job, part: number, boardName: string, second: LaidPiece): string {
  const board = job.boards.find(({ name }) => name === boardName);
  const other = second.showFace === 'B' ? 'A' : 'B';
  const mayTurn =
    board !== undefined &&
    board.defects.every(
      (defect) => !blocks(job.parts[part]!, defect, other) || !overlaps(extent(defect, job.shop), second),
    );
  const from = ` Both strips come from ${nameText(boardName, 40)}`;
  return mayTurn
    ? `${from}: keep the order in which they lay; or, in book order, turn strip 2 over about the joint like a page, so that its face ${other} shows and its edges change places.`
    : `${from}: keep the order in which they lay. Strip 2 cannot be turned over into book order: its face ${other} is not clear.`;
}
