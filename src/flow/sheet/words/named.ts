import { clean } from '../../../base/markup/clean.ts';
import { isolate, shorten } from '../../../base/markup/shorten.ts';
import type { Part } from '../../parts/part.ts';
import type { Board } from '../../stock/board.ts';
import type { Job } from '../../stock/job.ts';
import type { LaidBoard, LaidPiece } from '../../cuts/layout.ts';

/** Any user's text on one line, kept to `most` characters and to its own reading order; something even when empty. */
export function nameText(name: string, most = 60): string {
  const text = isolate(clean(shorten(name, most)));
  return text === '' ? '(no name)' : text;
}

/** Parts and boards of a job by name; the first wins where two have one name. A Map, since names are any text. */
export interface Named {
  readonly parts: ReadonlyMap<string, Part>;
  readonly boards: ReadonlyMap<string, Board>;
}

/** Looks a job's parts and boards up by name. */
export function named(job: Job): Named {
  const first = <T extends { readonly name: string }>(items: readonly T[]): Map<string, T> =>
    new Map([...items].reverse().map((item) => [item.name, item]));
  return { parts: first(job.parts), boards: first(job.boards) };
}

/** `Oak 3`, or `Oak 3, copy 2` where the job has several of it. */
export function boardTitle(laid: LaidBoard, board: Board | undefined, most = 60): string {
  const several = laid.copy > 1 || (board !== undefined && board.quantity > 1);
  return `${nameText(laid.board, most)}${several ? `, copy ${laid.copy}` : ''}`;
}

/** Which copy a piece is, `2 of 4`; empty where there is only one. */
export function copyText(piece: LaidPiece, part: Part | undefined): string {
  if (part === undefined) return piece.copy > 1 ? `no. ${piece.copy}` : '';
  return part.quantity > 1 || piece.copy > 1 ? `${piece.copy} of ${part.quantity}` : '';
}

/** Whether the piece lies with its part's length across the board. */
export function liesAcross(piece: LaidPiece, part: Part | undefined): boolean {
  if (part === undefined || part.grain === 'along') return false;
  if (part.grain === 'across') return true;
  const along = Math.abs(piece.length - part.length) + Math.abs(piece.width - part.width);
  const across = Math.abs(piece.length - part.width) + Math.abs(piece.width - part.length);
  return across < along;
}

/** The piece's own length and width (as the part names them), whichever way it lies on the board; ticks. */
export function ownSize(piece: LaidPiece, part: Part | undefined): { length: number; width: number } {
  return liesAcross(piece, part)
    ? { length: piece.width, width: piece.length }
    : { length: piece.length, width: piece.width };
}
