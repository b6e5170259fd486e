import { ticks, ticksPerInch } from '../../src/base/units/tick.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { type Shop, defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import { type Defect, defectKinds } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from './random-board.ts';
import { type Seeded, seeded } from './seeded.ts';

/** Names that harm whoever keys a plain object by them. */
const names = ['__proto__', 'constructor', '', ' ', '=1+1', '<b>', '🪵', 'toString', 'a,b', '"'];

function named(random: Seeded, index: number): string {
  return index < names.length && random.chance(0.5) ? names[index]! : `no. ${index}`;
}

/** Inches, sometimes with some odd ticks, to ticks. */
function length(random: Seeded, values: readonly number[]): Shop['endTrim'] {
  const whole = Math.round(random.pick(values) * ticksPerInch);
  return ticks(Math.max(0, whole + (random.chance(0.2) ? random.whole(-3, 3) : 0)));
}

function hostileShop(random: Seeded): Shop {
  return {
    ...defaultShop,
    ripKerf: length(random, [0, ...Array<number>(8).fill(1 / 8), 2]),
    crosscutKerf: length(random, [0, ...Array<number>(12).fill(1 / 8), 30]),
    endTrim: length(random, [0, 0, 0, 0, 1 / 16, 1, 1, 1, 1, 40]),
    edgeTrim: length(random, [0, 0, 0, 1 / 16, 1 / 4, 1 / 4, 4]),
    shortestRip: length(random, [0, 0, 0, 0, 8, 8, 12, 12, 200]),
    shortestPiece: length(random, [0, 6]),
    lengthAllowance: length(random, [0, 0, 0, 0, 1 / 4, 1 / 4, 20]),
    widthAllowance: length(random, [0, 0, 0, 1 / 8, 1 / 8, 3]),
    leastOffcutLength: length(random, [0, 1, 12]),
    leastOffcutWidth: length(random, [0, 1, 2]),
    offcutCredit: random.pick([0, 0, 0.3, 1]),
    showTone: random.pick(['one', 'any'] as const),
    goal: random.pick(['least cost', 'least cost', 'most value'] as const),
    stages: random.pick([1, 2, 3, 4, 4, 4, 5]),
    knotMargin: length(random, [0, 0, 1 / 2, 5]),
  };
}

function hostileDefect(random: Seeded, board: { readonly length: number; readonly width: number }): Defect {
  const isAll = random.chance(0.1);
  const long = isAll ? board.length : random.whole(1, Math.max(1, Math.floor(board.length / 3)));
  const wide = isAll ? board.width : random.whole(1, board.width);
  return {
    kind: random.pick(defectKinds),
    face: random.pick(['A', 'B', 'through'] as const),
    x: random.whole(0, board.length - long),
    y: random.whole(0, board.width - wide),
    length: long,
    width: wide,
  };
}

function hostileBoard(random: Seeded, index: number): Board {
  // One in ten is a sliver.
  const isSliver = random.chance(0.1);
  const outline = {
    length: Math.max(1, length(random, isSliver ? [0, 1, 8] : [20, 30, 36.3, 40])),
    width: Math.max(1, length(random, isSliver ? [0, 1, 3] : [5.5, 5.5, 8])),
  };
  return {
    ...plainBoard({ name: named(random, index), ...outline }),
    quantity: random.pick([1, 1, 1, 2, 40]),
    surface: random.pick(['rough', 'S2S', 'S3S', 'S4S'] as const),
    dressedThickness: length(random, [...Array<number>(8).fill(1), 1 / 8]),
    cost: random.pick([0, 1e-3, 7, 41.337, 1e6]),
    tone: random.pick(['', '', '__proto__', 'red']),
    origin: random.pick(['job', 'job', 'rack'] as const),
    defects: Array.from({ length: random.pick([0, 0, 1, 3, 8]) }, () => hostileDefect(random, outline)),
  };
}

function hostilePart(random: Seeded, index: number, boards: readonly Board[]): Part {
  const outline = {
    length: Math.max(1, length(random, [1, 2, 6, 6, 11.9, 11.9, 18, 60])),
    width: Math.max(1, length(random, [1, 2, 2, 2, 3.25, 5, 12])),
  };
  const end = (): number => random.pick([0, 0, 0, 22.5, -45, 89]);
  const board = random.pick([...boards.map(({ name }) => name), 'nowhere']);
  return {
    ...plainPart({ name: named(random, index), ...outline }),
    quantity: random.pick([0, 1, 1, 1, 2, 3]),
    thickness: length(random, [...Array<number>(12).fill(3 / 4), 2]),
    grain: random.pick(['along', 'along', 'across', 'any'] as const),
    quality: random.pick(['clear-2', 'clear-1', 'sound', 'any'] as const),
    show: random.pick([0, 0, 1, 2]),
    accept: random.chance(0.2)
      ? [{ kind: random.pick(defectKinds), atMost: random.pick([null, ticks(0), ticks(9999)]) }]
      : [],
    run: random.chance(0.3) ? random.pick(['__proto__', 'r']) : null,
    leftEnd: end(),
    rightEnd: end(),
    glueUp: random.pick([1, 1, 1, 2, 3]),
    value: random.pick([null, null, 0, 1, 1e9]),
    pin: random.chance(0.1) ? { board, face: random.pick([null, 'A', 'B'] as const) } : null,
  };
}

/**
 * A job that no sane person would write and any reader may hand over: kerfs wider than boards, trims that leave nothing,
 * parts that fit nowhere, boards all flaw, runs of unequal copies, pins to no board, odd names.
 * Deterministic in its arguments.
 */
export function hostileJob(
  seed: number,
  size: { readonly boards: number; readonly parts: number; readonly runs: boolean },
): Job {
  const random = seeded(seed);
  const boards = Array.from({ length: size.boards }, (_, index) => hostileBoard(random, index));
  const made = Array.from({ length: size.parts }, (_, index) => hostilePart(random, index, boards));
  const parts = size.runs ? made : made.map((part) => ({ ...part, run: null }));
  const shop = hostileShop(random);
  // The most valuable set from one board is the general engine's alone, which looks for it at length.
  const goal = boards.length === 1 ? 'least cost' : shop.goal;
  return { name: `hostile ${seed}`, shop: { ...shop, goal }, parts, boards };
}
