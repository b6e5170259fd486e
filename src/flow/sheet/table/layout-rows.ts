import { writeCsv } from '../../../base/csv/write-csv.ts';
import type { Shop } from '../../shop/shop.ts';
import type { Job } from '../../stock/job.ts';
import type { LaidBoard, LaidPiece, Layout } from '../../cuts/layout.ts';
import { liesAcross, named as lookUp, type Named } from '../words/named.ts';
import { decimalLength, withUnitHead } from './decimal-length.ts';

/**
 * The layout as a table for spreadsheets, header first: one row for each piece, then one for each kept offcut, board
 * by board. Lengths are decimals in the job's unit. Names stand as the user wrote them; who writes the cells to a
 * file guards them (`writeCsv` does).
 */
export function layoutRows(job: Job, layout: Layout): string[][] {
  const named = lookUp(job);
  const { shop } = job;
  const lengths = ['x', 'y', 'length', 'width'].map((head) => withUnitHead(head, shop));
  const header = [
    'board',
    'board copy',
    'kind',
    'name',
    'copy',
    ...lengths,
    'show face',
    'lies',
    'strip',
    'of strips',
    'run',
    'run number',
    'run order',
    'left end',
    'right end',
    ...['finished length', 'finished width'].map((head) => withUnitHead(head, shop)),
  ];
  const place = (thing: { x: number; y: number; length: number; width: number }): string[] =>
    [thing.x, thing.y, thing.length, thing.width].map((length) => decimalLength(length, shop));
  const rows = layout.boards.flatMap((laid) => [
    ...laid.pieces.map((piece) => [
      ...start(laid),
      'piece',
      piece.part,
      String(piece.copy),
      ...place(piece),
      ...pieceEnd(piece, named, shop),
    ]),
    ...laid.offcuts.map((offcut) => [
      ...start(laid),
      'offcut',
      offcut.id,
      '',
      ...place(offcut),
      ...Array<string>(11).fill(''),
    ]),
  ]);
  return [header, ...rows];
}

/** The same as CSV text, cells guarded. */
export function layoutCsv(job: Job, layout: Layout): string {
  return writeCsv(layoutRows(job, layout));
}

function start(laid: LaidBoard): string[] {
  return [laid.board, String(laid.copy)];
}

function pieceEnd(piece: LaidPiece, named: Named, shop: Shop): string[] {
  const part = named.parts.get(piece.part);
  return [
    piece.showFace ?? '',
    liesAcross(piece, part) ? 'across' : 'along',
    piece.strip ? String(piece.strip.index + 1) : '',
    piece.strip ? String(piece.strip.of) : '',
    piece.run ? (part?.run ?? '') : '',
    piece.run ? String(piece.run.run) : '',
    piece.run ? String(piece.run.order + 1) : '',
    part ? String(part.leftEnd) : '',
    part ? String(part.rightEnd) : '',
    part ? decimalLength(part.length, shop) : '',
    part ? decimalLength(part.width, shop) : '',
  ];
}
