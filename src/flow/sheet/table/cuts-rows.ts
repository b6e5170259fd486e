import { writeCsv } from '../../../base/csv/write-csv.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { cutSides, sideBecomes } from '../words/cut-sides.ts';
import { decimalLength, withUnitHead } from './decimal-length.ts';

/**
 * The cuts as a table for spreadsheets, header first: one row for each cut in the order they are made, board by
 * board: its workpiece, where the blade enters, and what each side becomes. Lengths are decimals in the job's unit.
 */
export function cutsRows(job: Job, layout: Layout): string[][] {
  const { shop } = job;
  const unit = (heads: string[]): string[] => heads.map((head) => withUnitHead(head, shop));
  const header = [
    ...['board', 'board copy', 'step', 'cut', 'purpose'],
    ...unit([
      'blade enters at',
      'kerf',
      'workpiece x',
      'workpiece y',
      'workpiece length',
      'workpiece width',
      'near side',
    ]),
    'near side becomes',
    ...unit(['far side']),
    'far side becomes',
  ];
  const rows = layout.boards.flatMap((laid) =>
    laid.cuts.map((cut) => {
      const { region } = cut;
      const lengths = [cut.at, cut.kerf, region.x, region.y, region.length, region.width];
      const [near, far] = cutSides(cut);
      const size = (side: { length: number; width: number }): string =>
        decimalLength(Math.max(0, cut.kind === 'crosscut' ? side.length : side.width), shop);
      return [
        ...[laid.board, String(laid.copy), String(cut.step), cut.kind, cut.purpose ?? ''],
        ...lengths.map((length) => decimalLength(length, shop)),
        ...[size(near), becomesCell(sideBecomes(laid, cut, near))],
        ...[size(far), becomesCell(sideBecomes(laid, cut, far))],
      ];
    }),
  );
  return [header, ...rows];
}

/** The same as CSV text, cells guarded. */
export function cutsCsv(job: Job, layout: Layout): string {
  return writeCsv(cutsRows(job, layout));
}

function becomesCell(fate: ReturnType<typeof sideBecomes>): string {
  switch (fate.kind) {
    case 'piece':
      return fate.piece.part;
    case 'offcut':
      return fate.offcut.id;
    case 'cut':
      return `cut ${fate.step}`;
    case 'trim':
    case 'scrap':
      return fate.kind;
    case 'nothing':
      return '';
  }
}
