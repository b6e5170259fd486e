import type { BoardPattern, Choice, PlacedPiece } from '../../src/flow/choice/choice.ts';
import { blankOf } from '../../src/flow/parts/blank.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { usable } from '../../src/flow/stock/usable.ts';
import { type Blank, type Habit, type OpenBoard, openBoard, placeOn } from './hand-board.ts';

/** What a person looks at when the next board is taken from the stack. */
type Taste = 'clear wood for the money' | 'price';

/** The ways a careful person tries on paper; the cheapest layout of them counts. */
const ways: readonly (readonly [Habit, Taste])[] = [
  ['rip first', 'clear wood for the money'],
  ['crosscut first', 'clear wood for the money'],
  ['rip first', 'price'],
  ['crosscut first', 'price'],
];

/**
 * The hand method that the solver is held against: the longest blank first (of equals the widest), into the tightest
 * strip that is already ripped, else as a new strip beside one, else from the cheapest board that holds it, by cost per
 * clear area or outright.
 * Defects are stepped over, each cut takes its kerf, a blank narrower than its strip is ripped once more where that is
 * long enough to be safe. Done once ripping boards along their whole length and once crosscutting them to the long
 * blanks first; at the end each board is given back if a cheaper one holds the same blanks. The cheapest layout of the
 * four counts.
 * @returns null where the job asks what this method does not know: glue-ups, runs, grain across, most value, few stages
 */
export function handMethod(job: Job): Choice | null {
  const { stages, goal } = job.shop;
  const plain = job.parts.every(
    (part) => part.run === null && part.glueUp === 1 && part.grain === 'along' && part.pin === null,
  );
  if (!plain || goal !== 'least cost' || (stages !== 'any' && stages < 4)) return null;
  const tries = ways.map(([habit, taste]) => layByHabit(job, habit, taste));
  return tries.reduce((a, b) => (rank(job, b) < rank(job, a) ? b : a));
}

/** Missing copies weigh more than all boards together. */
function rank(job: Job, choice: Choice): number {
  const all = job.boards.reduce((sum, board) => sum + board.cost * board.quantity, 1);
  const missing = choice.short.reduce((sum, { copies }) => sum + copies, 0);
  return missing * all + costOf(job, choice.patterns);
}

function costOf(job: Job, patterns: readonly BoardPattern[]): number {
  return patterns.reduce((sum, { board }) => sum + (job.boards[board]?.cost ?? 0), 0);
}

/** All blanks, one for each copy, longest first. */
function blanksOf(job: Job): Blank[] {
  const blanks = job.parts.flatMap((part, index) =>
    Array.from({ length: part.quantity }, (_, copy) => ({
      part: index,
      copy: copy + 1,
      ...blankOf(part, job.shop, 1),
    })),
  );
  return blanks.sort((a, b) => b.length - a.length || b.width - a.width);
}

/** Boards not started, the next to be taken first. */
function stack(job: Job, taste: Taste): { board: number; copy: number }[] {
  const rate = job.boards.map((board) => {
    if (taste === 'price') return board.cost;
    const { length, width } = usable(board, job.shop);
    const lost = board.defects.reduce((sum, defect) => sum + defect.length * defect.width, 0);
    const clear = Math.max(0, length) * Math.max(0, width) - lost;
    return clear > 0 ? board.cost / clear : Infinity;
  });
  return job.boards
    .flatMap((board, index) =>
      Array.from({ length: board.quantity }, (_, copy) => ({ board: index, copy: copy + 1 })),
    )
    .sort((a, b) => (rate[a.board] ?? 0) - (rate[b.board] ?? 0));
}

function layByHabit(job: Job, habit: Habit, taste: Taste): Choice {
  const waiting = stack(job, taste);
  const started: OpenBoard[] = [];
  const missing = new Map<number, number>();
  for (const blank of blanksOf(job)) {
    if (placeOn(job, started, blank, habit)) continue;
    const found = waiting.findIndex(({ board, copy }) => {
      const fresh = openBoard(job, board, copy, habit);
      if (fresh === null || !placeOn(job, [fresh], blank, habit)) return false;
      started.push(fresh);
      return true;
    });
    if (found >= 0) waiting.splice(found, 1);
    else missing.set(blank.part, (missing.get(blank.part) ?? 0) + 1);
  }
  const kept = giveBack(job, started, waiting, habit);
  return {
    patterns: renumbered(kept.map(({ board, copy, pieces }) => ({ board, copy, pieces }))),
    short: [...missing].map(([part, copies]) => ({ part, copies, why: 'no board holds it' })),
    proof: { value: costOf(job, kept), bound: 0, gap: 1, proven: false },
  };
}

/** Copies of a part are counted in the order of the boards, so that missing ones are the last. */
function renumbered(patterns: readonly BoardPattern[]): BoardPattern[] {
  const counts = new Map<number, number>();
  const next = (piece: PlacedPiece): PlacedPiece => {
    const copy = (counts.get(piece.part) ?? 0) + 1;
    counts.set(piece.part, copy);
    return { ...piece, copy };
  };
  return patterns.map((pattern) => ({ ...pattern, pieces: pattern.pieces.map(next) }));
}

/** Dearest board first: its blanks are tried on the cheaper boards still in the stack, the cheapest first. */
function giveBack(
  job: Job,
  started: readonly OpenBoard[],
  waiting: { board: number; copy: number }[],
  habit: Habit,
): OpenBoard[] {
  const cost = (board: number): number => job.boards[board]?.cost ?? 0;
  const kept = [...started];
  const dearest = kept.map((_, index) => index).sort((a, b) => cost(kept[b]!.board) - cost(kept[a]!.board));
  for (const index of dearest) {
    const held = kept[index]!;
    const blanks: Blank[] = [...held.pieces].sort((a, b) => b.length - a.length || b.width - a.width);
    const cheaper = waiting
      .filter(({ board }) => cost(board) < cost(held.board))
      .sort((a, b) => cost(a.board) - cost(b.board));
    for (const other of cheaper) {
      const fresh = openBoard(job, other.board, other.copy, habit);
      const [first, ...rest] = blanks;
      if (fresh === null || first === undefined || !placeOn(job, [fresh], first, habit)) continue;
      if (!rest.every((blank) => placeOn(job, [fresh], blank, habit))) continue;
      kept[index] = fresh;
      waiting.splice(waiting.indexOf(other), 1, { board: held.board, copy: held.copy });
      break;
    }
  }
  return kept;
}
