import { inches } from '../../../src/base/units/tick.ts';
import type { ComesOut } from '../../../src/decide/buy/comes-out/completer.ts';
import type { Choice } from '../../../src/flow/choice/choice.ts';
import type { Solve } from '../../../src/flow/choice/progress.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import { defaultShop } from '../../../src/flow/shop/shop.ts';
import type { Board } from '../../../src/flow/stock/board.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../../laws/random-board.ts';
import { type Seeded, seeded } from '../../laws/seeded.ts';

/** A job of sticks: boards and parts of one width, so that only lengths matter and trying everything is quick. */
export interface StickYard {
  readonly owned: Job;
  readonly yard: readonly Board[];
}

const width = inches(4);
const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) };

/** A random one: 2 to 6 parts, none or one board owned, 3 to 6 yard boards, some with a knot that parts them in two. */
export function stickYard(seed: number): StickYard {
  const random = seeded(seed);
  const parts = Array.from({ length: random.whole(2, 6) }, (_, index) => ({
    ...plainPart({ name: `part ${index + 1}`, length: inches(random.whole(8, 40)), width }),
    quality: 'clear-2' as const,
  }));
  const owned = Array.from({ length: random.whole(0, 1) }, (_, index) => stick(random, `owned ${index + 1}`));
  const yard = Array.from({ length: random.whole(3, 6) }, (_, index) => ({
    ...stick(random, `yard ${index + 1}`),
    cost: random.whole(8, 60),
  }));
  return { owned: { name: 'sticks', shop, parts, boards: owned }, yard };
}

function stick(random: Seeded, name: string): Board {
  const length = inches(random.whole(20, 72));
  const knot = {
    kind: 'loose knot' as const,
    face: 'through' as const,
    x: inches(random.whole(4, 16)),
    y: 0,
    length: inches(2),
    width,
  };
  return {
    ...plainBoard({ name, length, width }),
    surface: 'S4S',
    defects: random.chance(0.4) ? [knot] : [],
  };
}

/** The clear lengths of a board. A knot is wider than any kerf, so pieces beside it cost no kerf there. */
function clearLengths(board: Board): number[] {
  const [knot] = board.defects;
  return knot === undefined ? [board.length] : [knot.x, board.length - knot.x - knot.length];
}

/** Whether the parts can be cut from the boards, by trying every place for every part. n pieces need n − 1 kerfs. */
export function packs(parts: readonly Part[], boards: readonly Board[]): boolean {
  const kerf = shop.crosscutKerf;
  const room = boards.flatMap((board) =>
    Array.from({ length: board.quantity }, () => clearLengths(board).map((length) => length + kerf)).flat(),
  );
  const lengths = parts
    .flatMap((part) => Array.from({ length: part.quantity }, () => part.length + kerf))
    .sort((a, b) => b - a);
  const place = (index: number): boolean => {
    if (index === lengths.length) return true;
    const need = lengths[index]!;
    const tried = new Set<number>();
    for (let at = 0; at < room.length; at += 1) {
      if (room[at]! < need || tried.has(room[at]!)) continue;
      tried.add(room[at]!);
      room[at]! -= need;
      const fits = place(index + 1);
      room[at]! += need;
      if (fits) return true;
    }
    return false;
  };
  return place(0);
}

/** Whether a job of sticks comes out of its boards, by trying everything. */
export const stickComesOut: ComesOut = ({ parts, boards }) =>
  packs(parts, boards) ? boards.map(() => 0) : null;

/** Every choice of yard boards (copies of each row) that completes the job together with what is owned. */
export function everyChoice({ owned, yard }: StickYard): { taken: number[]; money: number }[] {
  const choices: { taken: number[]; money: number }[] = [];
  const extend = (taken: number[]): void => {
    if (taken.length < yard.length) {
      for (let copies = 0; copies <= yard[taken.length]!.quantity; copies += 1) extend([...taken, copies]);
      return;
    }
    const bought = yard.map((board, row) => ({ ...board, quantity: taken[row]! }));
    if (!packs(owned.parts, [...owned.boards, ...bought])) return;
    choices.push({ taken, money: taken.reduce((sum, copies, row) => sum + copies * yard[row]!.cost, 0) });
  };
  extend([]);
  return choices.sort((a, b) => a.money - b.money);
}

/**
 * A stand-in for the solver: the cheapest subset of the job's boards that packs, found by trying all. Its pieces have no
 * places: only which boards are used matters to those who ask.
 */
// eslint-disable-next-line require-yield
export function* stickSteps(job: Job): Solve {
  return stickSolve(job);
}

/** The same at once. */
export function stickSolve(job: Job): Choice {
  const copies = job.boards.flatMap((board, index) =>
    Array.from({ length: board.quantity }, (_, copy) => ({
      board: { ...board, quantity: 1 },
      index,
      copy: copy + 1,
    })),
  );
  let best: { used: typeof copies; money: number } | null = null;
  for (let set = 0; set < 2 ** copies.length; set += 1) {
    const used = copies.filter((_, at) => (set >> at) & 1);
    const money = used.reduce((sum, { board }) => sum + board.cost, 0);
    if (best !== null && (money > best.money || (money === best.money && used.length >= best.used.length)))
      continue;
    if (
      packs(
        job.parts,
        used.map(({ board }) => board),
      )
    )
      best = { used, money };
  }
  if (best === null) {
    const short = job.parts.map((_, part) => ({ part, copies: 1, why: 'does not fit' }));
    return { patterns: [], short, proof: { value: 0, bound: 0, gap: 0, proven: true } };
  }
  const piece = { part: 0, copy: 1, showFace: null, x: 0, y: 0, length: 1, width: 1 };
  return {
    patterns: best.used.map(({ index, copy }) => ({ board: index, copy, pieces: [piece] })),
    short: [],
    proof: { value: best.money, bound: best.money, gap: 0, proven: true },
  };
}
