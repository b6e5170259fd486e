import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Plate } from '../../../src/flow/patterns/plate.ts';

/** A run that lies on a plate: its members from the butt end on, and the kerf that goes between each and the next. */
export interface PlacedRun {
  /** Index of the run among the kinds. */
  readonly kind: number;
  readonly members: readonly Rectangle[];
  readonly kerfs: readonly number[];
}

/**
 * What to make of the ways to cut a tiny plate, by trying every cut at every whole position: nothing here knows of
 * rasters, strips or sections. A workpiece is a leftover, a piece, or is cut in two edge to edge; the kerf may run off
 * either end of it. Depths count as the rules do: crosscuts stand at odd depths, rips at even ones, and a cut of the
 * kind that made the workpiece nests no deeper. All sizes must be small whole numbers.
 */
export interface Making<T> {
  /** What a workpiece that is cut no further is as a leftover. */
  readonly leftover: (length: number, width: number) => T;
  /** What a side is that the kerf eats up, and a member of a run, which is counted with its run. */
  readonly nothing: T;
  /** What a workpiece of exactly this outline is as a piece. */
  readonly piece: (x: number, y: number, length: number, width: number) => T;
  /** What a whole run is. */
  readonly run?: (kind: number) => T;
  readonly both: (near: T, far: T) => T;
  readonly better: (a: T, b: T) => T;
}

/** What may be cut beside single pieces. */
export interface RunsOnPlate {
  readonly placed: readonly PlacedRun[];
  /** Whether a plate may hold several runs; each is then sought on every workpiece, which takes far longer. */
  readonly several: boolean;
}

/** A workpiece: pieces may lie only from `low` to `high` of it; the run that must come out of it, −1 for none. */
interface Workpiece extends Rectangle {
  readonly depth: number;
  readonly low: number;
  readonly high: number;
  readonly run: number;
}

/** One way to cut a workpiece; where it goes between two members of a run, pieces keep to the wider one's height. */
interface Blade {
  readonly at: number;
  readonly kerf: number;
  readonly within?: Rectangle;
}

/** The depth after one more cut; `any` nesting is counted as depth 0 throughout. */
function deeper(plate: Plate, depth: number, isCrosscut: boolean): number {
  if (plate.stages === 'any') return 0;
  if (isCrosscut) return depth % 2 === 1 ? depth : depth + 1;
  return depth > 0 && depth % 2 === 0 ? depth : depth + (depth === 0 ? 2 : 1);
}

function holds(outer: Rectangle, inner: Rectangle): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.length <= outer.x + outer.length &&
    inner.y + inner.width <= outer.y + outer.width
  );
}

function numberOf({ x, y, length, width, depth, low, high, run }: Workpiece): number {
  const outline = (((depth * 32 + x) * 32 + y) * 32 + length) * 32 + width;
  // Most workpieces are plain: their numbers stay small, which makes the whole far quicker.
  if (run < 0 && low === 0 && high === width) return outline;
  return -(((outline * 32 + low) * 32 + high) * 4096 + run + 2);
}

const none: readonly number[] = [];

/** The indices of the run's members that lie in the workpiece. */
function membersIn({ placed }: RunsOnPlate, piece: Workpiece): readonly number[] {
  if (piece.run < 0) return none;
  return placed[piece.run]!.members.flatMap((member, m) => (holds(piece, member) ? [m] : []));
}

/** The plain crosscuts or rips that hit no member of the run and part no two neighbours. */
function plainBlades(
  piece: Workpiece,
  members: readonly Rectangle[],
  isCrosscut: boolean,
  kerf: number,
): Blade[] {
  const size = isCrosscut ? piece.length : piece.width;
  const origin = isCrosscut ? piece.x : piece.y;
  const blades: Blade[] = [];
  const isFree = (at: number): boolean => {
    const ends = members.map((m) => (isCrosscut ? [m.x, m.length] : [m.y, m.width]) as [number, number]);
    const isBehind = ends.every(([start]) => start >= origin + at + kerf);
    return isBehind || ends.every(([start, extent]) => start + extent <= origin + at);
  };
  for (let at = kerf === 0 ? 1 : 1 - kerf; at < size; at += 1) {
    if (members.length === 0 || isFree(at)) blades.push({ at, kerf });
  }
  return blades;
}

/** The cuts between neighbours of the run: exactly their kerf, and nothing beside the wider of the two. */
function slantedBlades(piece: Workpiece, run: PlacedRun, members: readonly number[]): Blade[] {
  return members.slice(1).flatMap((second): Blade[] => {
    const [near, far] = [run.members[second - 1]!, run.members[second]!];
    const within = near.width >= far.width ? near : far;
    const stick = members.some(
      (m) => !holds({ ...piece, y: within.y, width: within.width }, run.members[m]!),
    );
    return stick ? [] : [{ at: near.x + near.length - piece.x, kerf: run.kerfs[second - 1]!, within }];
  });
}

/** The workpiece with its pieces kept to the height of the given rectangle. */
function keptTo(piece: Workpiece, { y, width }: Rectangle): Workpiece {
  const from = y - piece.y;
  return { ...piece, low: Math.max(piece.low, from), high: Math.min(piece.high, from + width) };
}

/** The side of a cut workpiece from `from` to `to`, counted from the workpiece's own end or edge. */
function sideOf(piece: Workpiece, isCrosscut: boolean, from: number, to: number, depth: number): Workpiece {
  // Written out: spreading the workpiece takes several times as long.
  const { x, y, length, width, low, high, run } = piece;
  if (isCrosscut) return { x: x + from, y, length: to - from, width, depth, low, high, run };
  const rest = to - from;
  return {
    x,
    y: y + from,
    length,
    width: rest,
    depth,
    low: Math.min(rest, Math.max(0, low - from)),
    high: low === 0 && high === width ? rest : Math.max(0, Math.min(rest, high - from)),
    run,
  };
}

/** Everything that can be made of the plate; workpieces too small for any piece (`least`) are leftovers at once. */
export function makeAll<T>(
  plate: Plate,
  least: { readonly length: number; readonly width: number },
  how: Making<T>,
  runs: RunsOnPlate = { placed: [], several: false },
): T {
  const known = new Map<number, T | null>();
  const most = plate.stages === 'any' ? 0 : plate.stages;

  /** Null when the run cannot be had. */
  function solve(piece: Workpiece): T | null {
    const members = membersIn(runs, piece);
    if (piece.run >= 0 && members.length === 0) return solve({ ...piece, run: -1 });
    if (members.length === 0 && (piece.length < least.length || piece.width < least.width))
      return how.leftover(piece.length, piece.width);
    const number = numberOf(piece);
    const before = known.get(number);
    if (before !== undefined) return before;
    let best = uncut(piece, members);
    for (const isCrosscut of [true, false]) {
      for (const blade of bladesFor(piece, members, isCrosscut))
        best = either(best, cut(piece, isCrosscut, blade));
    }
    known.set(number, best);
    return best;
  }

  function either(a: T | null, b: T | null): T | null {
    if (a === null || b === null) return a ?? b;
    return how.better(a, b);
  }

  function uncut(piece: Workpiece, members: readonly number[]): T | null {
    const { x, y, length, width } = piece;
    if (members.length > 0) {
      const only = runs.placed[piece.run]!.members[members[0]!]!;
      return members.length === 1 && holds(only, piece) ? how.nothing : null;
    }
    const isOpen = piece.low === 0 && piece.high === width;
    const alone = isOpen
      ? how.better(how.leftover(length, width), how.piece(x, y, length, width))
      : how.leftover(length, width);
    return runs.several ? either(alone, withRun(piece)) : alone;
  }

  function withRun(piece: Workpiece): T | null {
    const open = { ...piece, y: piece.y + piece.low, width: piece.high - piece.low };
    let best: T | null = null;
    runs.placed.forEach(({ kind, members }, run) => {
      if (!members.every((member) => holds(open, member))) return;
      const rest = solve({ ...piece, run });
      if (rest !== null) best = either(best, how.both(how.run!(kind), rest));
    });
    return best;
  }

  function bladesFor(piece: Workpiece, members: readonly number[], isCrosscut: boolean): Blade[] {
    if (deeper(plate, piece.depth, isCrosscut) > most) return [];
    if (!isCrosscut && piece.length < plate.shortestRip) return [];
    const run = runs.placed[piece.run];
    const here = members.map((m) => run!.members[m]!);
    const plain = plainBlades(piece, here, isCrosscut, isCrosscut ? plate.crosscutKerf : plate.ripKerf);
    return isCrosscut && run !== undefined ? [...plain, ...slantedBlades(piece, run, members)] : plain;
  }

  function cut(whole: Workpiece, isCrosscut: boolean, { at, kerf, within }: Blade): T | null {
    const piece = within === undefined ? whole : keptTo(whole, within);
    const size = isCrosscut ? piece.length : piece.width;
    const depth = deeper(plate, piece.depth, isCrosscut);
    const near = at > 0 ? solve(sideOf(piece, isCrosscut, 0, at, depth)) : how.nothing;
    if (near === null) return null;
    const far = at + kerf < size ? solve(sideOf(piece, isCrosscut, at + kerf, size, depth)) : how.nothing;
    return far === null ? null : how.both(near, far);
  }

  const { length, width } = plate;
  const board: Workpiece = { x: 0, y: 0, length, width, depth: 0, low: 0, high: width, run: -1 };
  const alone = solve(board);
  const answer = runs.several ? alone : either(alone, withRun(board));
  if (answer === null) throw new Error('a plate without a run can always be left as it is');
  return answer;
}
