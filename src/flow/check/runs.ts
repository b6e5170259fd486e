import type { LaidBoard, LaidPiece, Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import type { PieceFault } from './fault.ts';

/** Two neighbours of a run on one board, `near` closer to the butt end, and the kerf that must lie between them. */
export interface Meeting {
  readonly near: LaidPiece;
  readonly far: LaidPiece;
  readonly kerf: number;
}

interface Member {
  readonly on: LaidBoard;
  readonly piece: LaidPiece;
  readonly part: Part | undefined;
}

/**
 * kerf / cos(steeper of the two meeting ends), up to the next whole tick. The 10⁻⁶ keeps the last bits of a cosine
 * from adding a tick.
 */
function slantedKerf(kerf: number, first: Part | undefined, second: Part | undefined): number {
  const steeper = Math.max(Math.abs(first?.rightEnd ?? 0), Math.abs(second?.leftEnd ?? 0));
  return Math.ceil(kerf / Math.cos((Math.PI / 180) * steeper) - 1e-6);
}

/** The pieces of each run, in its order. */
function members(layout: Layout, parts: ReadonlyMap<string, Part>): Map<number, Member[]> {
  const runs = new Map<number, Member[]>();
  for (const on of layout.boards) {
    for (const piece of on.pieces) {
      if (piece.run === undefined) continue;
      const list = runs.get(piece.run.run) ?? [];
      list.push({ on, piece, part: parts.get(piece.part) });
      runs.set(piece.run.run, list);
    }
  }
  for (const list of runs.values())
    list.sort((a, b) => (a.piece.run?.order ?? 0) - (b.piece.run?.order ?? 0));
  return runs;
}

/** All places on a board where neighbours of a run meet. Pieces on different boards never meet. */
export function meetingsOn(
  laid: LaidBoard,
  layout: Layout,
  parts: ReadonlyMap<string, Part>,
  crosscutKerf: number,
): Meeting[] {
  return [...members(layout, parts).values()].flatMap((list) =>
    list.slice(1).flatMap((second, index) => {
      const first = list[index];
      if (first === undefined || first.on !== laid || second.on !== laid) return [];
      const kerf = slantedKerf(crosscutKerf, first.part, second.part);
      const inOrder = first.piece.x <= second.piece.x;
      const [near, far] = inOrder ? [first.piece, second.piece] : [second.piece, first.piece];
      return [{ near, far, kerf }];
    }),
  );
}

/**
 * Each run: its parts in file order with none left out, orders 0, 1, 2 …, one board, one face, one strip, all going
 * the same way along the board, exactly the bevel kerf between neighbours. A piece must carry its run, unless it is the
 * one that a copy of the run holds alone. (That a slanted cut parts them is the replay's business.)
 */
export function runFaults(job: Job, layout: Layout, parts: ReadonlyMap<string, Part>): PieceFault[] {
  const runs = members(layout, parts);
  const faults: PieceFault[] = [];
  const say = (run: number, why: string): void => void faults.push({ kind: 'bad run', run, why });
  for (const [run, list] of runs) {
    if (list.some(({ piece }, index) => piece.run?.order !== index))
      say(run, 'its order has a gap or a double');
    for (const why of wrongWith(list, job.shop.crosscutKerf)) say(run, why);
  }
  const held = heldByCopies(job);
  return [...faults, ...missingMembers(held, runs), ...straysOf(held, layout, parts)];
}

function wrongWith(list: readonly Member[], crosscutKerf: number): string[] {
  const [first, second] = list;
  if (first === undefined) return [];
  const found = new Set<string>();
  if (list.some(({ on }) => on !== first.on)) found.add('it is spread over several boards');
  const faces = new Set(list.map(({ piece }) => piece.showFace));
  if (faces.size > 1) found.add('its pieces show different faces');
  if (second === undefined || found.has('it is spread over several boards')) return [...found];
  const goesUp = second.piece.x > first.piece.x;
  for (const [index, later] of list.entries()) {
    const earlier = list[index - 1];
    if (earlier === undefined) continue;
    const kerf = slantedKerf(crosscutKerf, earlier.part, later.part);
    const [near, far] = goesUp ? [earlier.piece, later.piece] : [later.piece, earlier.piece];
    const between = far.x - (near.x + near.length);
    if (between !== kerf) found.add(`its pieces ${index} and ${index + 1} are ${between} apart, not ${kerf}`);
    const isNested =
      (near.y >= far.y && near.y + near.width <= far.y + far.width) ||
      (far.y >= near.y && far.y + far.width <= near.y + near.width);
    if (!isNested) found.add(`its pieces ${index} and ${index + 1} are not in one strip`);
  }
  return [...found];
}

/** Copies of one run that hold the same parts. */
interface Held {
  readonly run: string;
  /** Names, in file order. */
  readonly parts: readonly string[];
  readonly copies: number;
}

/** What the copies of all runs hold: the n-th copy of a run the parts of that run wanted at least n times. */
function heldByCopies(job: Job): Held[] {
  const names = new Set(job.parts.flatMap(({ run }) => (run === null ? [] : [run])));
  return [...names].flatMap((run) => {
    const own = job.parts.filter((part) => part.run === run && part.quantity > 0);
    const steps = [...new Set(own.map(({ quantity }) => quantity))].sort((a, b) => a - b);
    return steps.map((step, index) => ({
      run,
      parts: own.filter(({ quantity }) => quantity >= step).map(({ name }) => name),
      copies: step - (steps[index - 1] ?? 0),
    }));
  });
}

/** Copies of a run are matched with those laid, each once. A part that a copy holds alone makes no run. */
function missingMembers(held: readonly Held[], runs: ReadonlyMap<number, readonly Member[]>): PieceFault[] {
  const keyOf = (run: string | null, parts: readonly string[]): string => JSON.stringify([run, parts]);
  const left = new Map(
    held.filter(({ parts }) => parts.length > 1).map(({ run, parts, copies }) => [keyOf(run, parts), copies]),
  );
  return [...runs].flatMap(([run, list]): PieceFault[] => {
    const key = keyOf(
      list[0]?.part?.run ?? null,
      list.map(({ piece }) => piece.part),
    );
    const copies = left.get(key) ?? 0;
    left.set(key, copies - 1);
    return copies > 0 ? [] : [{ kind: 'bad run', run, why: 'it does not hold its parts in their order' }];
  });
}

/** Pieces of a run's part that carry no run, beyond the copies of the run that hold that part alone. */
function straysOf(held: readonly Held[], layout: Layout, parts: ReadonlyMap<string, Part>): PieceFault[] {
  const left = new Map(held.filter((one) => one.parts.length === 1).map((one) => [one.parts[0], one.copies]));
  const pieces = layout.boards.flatMap((on) => on.pieces);
  return pieces.flatMap(({ part, copy, run }): PieceFault[] => {
    if (run !== undefined || (parts.get(part)?.run ?? null) === null) return [];
    const copies = left.get(part) ?? 0;
    left.set(part, copies - 1);
    if (copies > 0) return [];
    return [{ kind: 'bad run', run: -1, why: `${part} copy ${copy} is not laid as part of its run` }];
  });
}
