import { type Tick, inches, ticks, ticksPerInch } from '../../src/base/units/tick.ts';
import type { Part, Quality } from '../../src/flow/parts/part.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import { type Defect, type DefectKind, defectKinds } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { handMethod } from '../bench/hand-method.ts';
import { plainBoard, plainPart } from './random-board.ts';
import { type Seeded, seeded } from './seeded.ts';

/** 1/16 in, the grid of all sizes. */
const sixteenth = ticksPerInch / 16;

/** A size between two numbers of inches, on the 1/16 in grid, in ticks. */
function size(random: Seeded, least: number, most: number): number {
  return random.whole(Math.round(least * 16), Math.round(most * 16)) * (ticksPerInch / 16);
}

/** How often each kind of defect turns up, and how long and wide it is in inches. From memory, no source. */
const flaws: readonly (readonly [DefectKind, number, number, number])[] = [
  ['sound knot', 5, 2, 1.5],
  ['loose knot', 2, 2, 1.5],
  ['check', 3, 8, 0.5],
  ['wane', 3, 14, 1],
  ['split', 2, 8, 0.5],
  ['stain', 2, 6, 2],
  ['sapwood', 2, 20, 1],
  ['bark pocket', 1, 2, 0.75],
  ['hole', 1, 0.5, 0.5],
  ['rot', 1, 5, 2],
];

/** A defect somewhere on the board: checks and splits at an end, wane and sapwood at an edge, knots mostly through. */
function flaw(random: Seeded, board: { readonly length: number; readonly width: number }): Defect {
  const weights = flaws.map(([, weight]) => weight);
  let aim = random.next() * weights.reduce((sum, weight) => sum + weight, 0);
  const row = flaws.find(([, weight]) => (aim -= weight) < 0) ?? flaws[0];
  const [kind, , long, wide] = row as (typeof flaws)[number];
  const length = Math.min(board.length, size(random, long / 2, long * 1.5));
  const width = Math.min(board.width, size(random, Math.max(wide / 2, 0.25), wide * 1.5));
  const atEnd = kind === 'check' || kind === 'split';
  const atEdge = kind === 'wane' || kind === 'sapwood';
  const along = board.length - length;
  const across = board.width - width;
  const snap = (free: number): number => Math.floor((random.next() * free) / 508) * 508;
  const x = atEnd ? (random.chance(0.5) ? 0 : along) : snap(along);
  const y = atEdge ? (random.chance(0.5) ? 0 : across) : snap(across);
  const through = random.chance(kind === 'sound knot' || kind === 'split' ? 0.6 : 0.35);
  return { kind, face: through ? 'through' : random.pick(['A', 'B'] as const), x, y, length, width };
}

/** A rough 4/4 board, 4 to 11 in wide, 6 to 12 ft long, 1 to 4 defects, $7 to $14 a board foot by its looks. */
function board(random: Seeded, index: number): Board {
  const outline = { length: size(random, 72, 144), width: size(random, 4, 11) };
  const defects = Array.from({ length: random.whole(1, 4) }, () => flaw(random, outline));
  const boardFeet = (outline.length * outline.width) / (144 * ticksPerInch ** 2);
  const perFoot = 7 + 7 * random.next();
  return {
    ...plainBoard({ name: `board ${index + 1}`, ...outline }),
    surface: random.pick(['rough', 'S2S', 'S3S'] as const),
    cost: Math.round(boardFeet * perFoot * 100) / 100,
    lookA: random.whole(0, 10),
    lookB: random.whole(0, 10),
    defects,
  };
}

interface Role {
  readonly weight: number;
  readonly quality: Quality;
  readonly show: number;
  readonly lengths: readonly [number, number];
  readonly widths: readonly [number, number];
}

/** The parts of a mantel, in inches: facings, soffit, returns, caps, ledgers, blocks. */
const roles: readonly Role[] = [
  { weight: 2, quality: 'clear-1', show: 2, lengths: [50, 70], widths: [4.5, 6.5] },
  { weight: 3, quality: 'clear-1', show: 1, lengths: [20, 48], widths: [3, 6] },
  { weight: 2, quality: 'clear-1', show: 1, lengths: [8, 18], widths: [4.5, 6.5] },
  { weight: 1, quality: 'clear-2', show: 1, lengths: [8, 28], widths: [2, 4] },
  { weight: 2, quality: 'sound', show: 0, lengths: [14, 54], widths: [1.75, 4.5] },
  { weight: 2, quality: 'any', show: 0, lengths: [5, 20], widths: [1.5, 4] },
];

function part(random: Seeded, index: number, stretch: number): Part {
  // The first parts are one of each role, so that small jobs have them all.
  const role = index < roles.length ? roles[index] : pickWeighted(random);
  const { quality, show, lengths, widths } = role as Role;
  const stretched = (value: number, by: number, most: number): number =>
    Math.min(most * ticksPerInch, Math.round((value * by) / 508) * 508);
  // Clear parts stay within what boards with a few flaws still hold.
  const isClear = quality === 'clear-1' || quality === 'clear-2';
  const length = stretched(size(random, ...lengths), stretch, isClear ? 72 : 90);
  const width = stretched(size(random, ...widths), Math.sqrt(stretch), isClear ? 6.5 : 7.5);
  return plainPart({ name: `part ${index + 1}`, quality, show, length, width });
}

function pickWeighted(random: Seeded): Role {
  const bag = roles.flatMap((role) => Array.from({ length: role.weight }, () => role));
  return random.pick(bag);
}

function areaOf(shapes: readonly { length: number; width: number; quantity: number }[]): number {
  return shapes.reduce((sum, shape) => sum + shape.quantity * shape.length * shape.width, 0);
}

/** The parts with quantities: one of each kind, the other copies mostly to the shorter kinds. */
function partsFor(seed: number, kinds: number, pieces: number, stretch: number): Part[] {
  const random = seeded(seed ^ 0x2f6e2b1);
  const parts = Array.from({ length: kinds }, (_, index) => part(random, index, stretch));
  const quantities = parts.map(() => 1);
  for (let spare = pieces - kinds; spare > 0;) {
    const index = random.whole(0, kinds - 1);
    const long = (parts[index] as Part).length > 48 * ticksPerInch;
    if (long && random.chance(0.8)) continue;
    quantities[index] = (quantities[index] ?? 0) + 1;
    spare -= 1;
  }
  return parts.map((kind, index) => ({ ...kind, quantity: quantities[index] ?? 1 }));
}

/** The parts a little smaller both ways, sizes still on 1/16 in. */
function shrunk(parts: readonly Part[], by: number): Part[] {
  const smaller = (size: number): Tick => ticks(Math.max(1, Math.floor((size * by) / sixteenth)) * sixteenth);
  return parts.map((kind) => ({ ...kind, length: smaller(kind.length), width: smaller(kind.width) }));
}

/** Whether all pieces can be had: a person who works carefully by hand gets them. */
function canBeHad(job: Job): boolean {
  return handMethod(job)?.short.length === 0;
}

/**
 * A realistic generated job: `boards` rough hardwood boards of random width, length, price and flaws, and
 * `kinds` part kinds of a mantel with `pieces` copies in all, a few of them long wide show parts, sizes on
 * 1/16 in. Part sizes are stretched until the boards hold about twice the area needed, and where the boards do not
 * hold them all they are then shrunk, 3 % at a time, until they do: every part can be had (of two boards or more).
 * Deterministic in its arguments.
 */
export function mantelJob(
  seed: number,
  given: { readonly kinds: number; readonly boards: number; readonly pieces: number },
): Job {
  const random = seeded(seed);
  const boards = Array.from({ length: given.boards }, (_, index) => board(random, index));
  const wanted = areaOf(boards) / 2;
  let stretch = 1;
  let parts = partsFor(seed, given.kinds, given.pieces, stretch);
  for (let round = 0; round < 6; round += 1) {
    stretch = Math.min(1.8, Math.max(0.4, stretch * (wanted / areaOf(parts)) ** 0.7));
    parts = partsFor(seed, given.kinds, given.pieces, stretch);
  }
  const shop = { ...defaultShop, endTrim: inches(1 / 2), shortestPiece: ticks(0) };
  let job: Job = { name: `mantel ${seed}`, shop, parts, boards };
  for (let round = 0; round < 20 && !canBeHad(job); round += 1)
    job = { ...job, parts: shrunk(job.parts, 0.97) };
  return job;
}

/** Clear boards as a yard sells them by quantity: length and width in inches, dollars a board foot. */
const yardSizes: readonly (readonly [number, number, number])[] = [
  [96, 5.5, 8],
  [96, 7.25, 8.5],
  [120, 9.25, 9.5],
  [72, 11.25, 10],
];

/**
 * A job of the same parts on clear boards bought by quantity, of one size or of several, as many of each as there are
 * pieces. Deterministic in its arguments.
 */
export function yardJob(
  seed: number,
  given: { readonly kinds: number; readonly pieces: number; readonly sizes: number },
): Job {
  const random = seeded(seed);
  const first = random.whole(0, yardSizes.length - 1);
  const boards = Array.from({ length: given.sizes }, (_, index) => {
    const [length, width, perFoot] = yardSizes[
      (first + index) % yardSizes.length
    ] as (typeof yardSizes)[number];
    return {
      ...plainBoard({ name: `size ${index + 1}`, length: inches(length), width: inches(width) }),
      quantity: given.pieces,
      cost: Math.round(((length * width) / 144) * perFoot * 100) / 100,
    };
  });
  const fits = ({ length, width }: Part): boolean =>
    boards.some((board) => board.length >= length + 2 * inches(1 / 2) && board.width >= width);
  const parts = partsFor(seed, given.kinds, given.pieces, 1).map((kind) => {
    const half = { ...kind, width: ticks(Math.round(kind.width / 2 / sixteenth) * sixteenth) };
    return fits(kind) ? kind : half;
  });
  const shop = { ...defaultShop, endTrim: inches(1 / 2), shortestPiece: ticks(0) };
  return { name: `yard ${seed}`, shop, parts, boards };
}

/** The kinds the generator above knows, for tests that look at all of them. */
export const generatedDefectKinds = defectKinds.filter((kind) => flaws.some(([known]) => known === kind));
