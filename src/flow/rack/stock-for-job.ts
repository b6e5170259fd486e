import type { Layout } from '../cuts/layout.ts';
import { isAskedFor } from '../parts/match.ts';
import type { Part } from '../parts/part.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import { speciesKey } from '../../trade/species.ts';
import { onRack, type Held, type Rack } from './fold.ts';
import { asBoard } from './piece.ts';

/** A job with the boards it really has left and the rack pieces that may serve it. */
export interface StockedJob {
  readonly job: Job;
  /** Copies of the job's own boards that are used up, by board name. */
  readonly usedUp: ReadonlyMap<string, number>;
  /** Names that no new offcut may have: those of the job's boards and of every piece that was ever on the rack. */
  readonly names: ReadonlySet<string>;
  /** Pieces on the rack that bear the name of a board of the job, and so were left out. */
  readonly nameClashes: readonly string[];
}

/**
 * The job's boards less those that its booked layouts used up.
 * @param key the job as the journal calls it
 */
export function boardsLeft(boards: readonly Board[], rack: Rack, key: string): readonly Board[] {
  const used = usedUp(rack, key);
  return boards
    .map((board) => ({ ...board, quantity: board.quantity - (used.get(board.name) ?? 0) }))
    .filter(({ quantity }) => quantity > 0);
}

/**
 * The job as the next layout finds it: its boards less those used up, and the rack's pieces as boards after them.
 * Of the rack, what can serve the job is taken: whatever a part is pinned to, and what is thick and long enough for at
 * least one part, of the species that the part names; where it names none, of a species among the job's own boards (any
 * species where one of them names none, or where there are no boards).
 */
export function stockedJob(job: Job, rack: Rack, key: string): StockedJob {
  const names = new Set(job.boards.map(({ name }) => name));
  const suits = suitability(job);
  const serving = onRack(rack).filter(({ piece }) => suits(piece));
  const boards = serving
    .filter(({ piece }) => !names.has(piece.name))
    .map(({ piece, note }) => asBoard(piece, note));
  return {
    job: { ...job, boards: [...boardsLeft(job.boards, rack, key), ...boards] },
    usedUp: usedUp(rack, key),
    names: new Set([...names, ...rack.pieces.keys()]),
    nameClashes: serving.map(({ piece }) => piece.name).filter((name) => names.has(name)),
  };
}

/**
 * The job that a layout was made from, whether it has been booked since or not: all boards of the job's files, and of
 * the rack's pieces those that the layout names, be they used up by now.
 */
export function jobOfLayout(job: Job, rack: Rack, layout: Layout): Job {
  const own = new Set(job.boards.map(({ name }) => name));
  const named = new Set(layout.boards.map(({ board }) => board));
  const pieces = [...rack.pieces.values()].filter(
    ({ piece }) => named.has(piece.name) && !own.has(piece.name),
  );
  return { ...job, boards: [...job.boards, ...pieces.map(({ piece, note }) => asBoard(piece, note))] };
}

/** The job with its own boards only. */
export function withoutRack(job: Job): Job {
  return { ...job, boards: job.boards.filter(({ origin }) => origin === 'job') };
}

function usedUp(rack: Rack, key: string): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { job, board } of rack.used) if (job === key) used.set(board, (used.get(board) ?? 0) + 1);
  return used;
}

function suitability({ parts, boards }: Job): (piece: Held['piece']) => boolean {
  const species = new Set(boards.map((board) => speciesKey(board.species)));
  const anySpecies = species.size === 0 || species.has('');
  const wanted = parts.filter(({ quantity }) => quantity > 0);
  const pinned = new Set(wanted.map(({ pin }) => pin?.board));
  const serves = (part: Part, piece: Held['piece']): boolean =>
    (part.species === ''
      ? anySpecies || species.has(speciesKey(piece.species))
      : isAskedFor(piece.species, part.species)) &&
    piece.dressedThickness >= part.thickness &&
    piece.length >= leastAlong(part);
  return (piece) => pinned.has(piece.name) || wanted.some((part) => serves(part, piece));
}

/** The least length of wood that a part could come from. */
function leastAlong({ grain, length, width, glueUp }: Part): number {
  return grain === 'along' ? length : Math.min(length, Math.floor(width / Math.max(1, glueUp)));
}
