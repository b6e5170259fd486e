import { ticks } from '../../base/units/tick.ts';
import type { Progress, SolveOptions } from '../choice/progress.ts';
import { look } from '../choice/runs/look.ts';
import { blankOf } from '../parts/blank.ts';
import type { Part } from '../parts/part.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import { roughSize } from '../stock/usable.ts';
import type { BoardToAdd, Layout } from './layout.ts';

interface Size {
  readonly length: number;
  readonly width: number;
}

/** A longer or wider board than this is hard to come by: 16 ft and 12 in, the longest of the grading rule and common practice. */
const longest = 16 * 12 * 8128;
const widest = 12 * 8128;

/** More pieces than this are no matter of one board. */
const mostShort = 8;

/** So many boards smaller than one that will do in any case are tried. */
const mostTried = 5;

/**
 * One more board with which all parts can be laid out; null where no single one was found. One that holds all that is short will do
 * in any case, whatever lies on the others; smaller ones that hold one part's blank are tried at a glance, the smallest first.
 * @param job as it was laid out   @param layout of it, with parts short
 */
export function* leastToAdd(
  job: Job,
  layout: Omit<Layout, 'proof'>,
  options: SolveOptions,
): Generator<Progress<never>, BoardToAdd | null, void> {
  const missing = missingPieces(job, layout);
  const sure =
    missing.length > mostShort ? [] : boardsFor(missing, job, hasRun(job, layout)).filter(isToBeHad);
  const all = job.parts.filter(({ quantity }) => quantity > 0);
  const thickness = Math.max(...all.map((part) => part.thickness));
  const single = all.map((part) => roughSize(sizeOf(part, job), job.shop)).filter(isToBeHad);
  const enough = sure.length === 0 ? null : sure.reduce((a, b) => (area(b) < area(a) ? b : a));
  const smaller = distinct(single)
    .filter((size) => enough === null || area(size) < area(enough))
    .sort((a, b) => area(a) - area(b));
  const like = shownOn(job, layout);
  for (const size of smaller.slice(0, mostTried)) {
    if (like === undefined || options.stop?.() === true) break;
    const boards = [...job.boards, boardOf(size, thickness, like)];
    const seen = yield* look({ ...job, boards }, 0, options);
    if (seen.kind === 'whole') return { ...size, thickness, least: isLeast(size, single) };
  }
  return enough === null ? null : { ...enough, thickness, least: isLeast(enough, single) };
}

/** No board narrower or shorter than this holds any part: with less nothing is gained. */
function isLeast({ length, width }: Size, single: readonly Size[]): boolean {
  return single.every((other) => other.length >= length && other.width >= width);
}

/** Whether parts of a run are short: they must lie one after another. */
function hasRun({ parts }: Job, { short }: Pick<Layout, 'short'>): boolean {
  return parts.some(({ name, run }) => run !== null && short.some(({ part }) => part === name));
}

/** A board that something that shows lies on, else any: what is added must match it. */
function shownOn({ parts, boards }: Job, layout: Pick<Layout, 'boards'>): Board | undefined {
  const shown = new Set(parts.filter(({ show }) => show > 0).map(({ name }) => name));
  const on = layout.boards.find(({ pieces }) => pieces.some(({ part }) => shown.has(part)));
  return boards.find(({ name }) => name === on?.board) ?? boards[0];
}

/** What is short, each piece by itself. */
function missingPieces(job: Job, { short }: Pick<Layout, 'short'>): Size[] {
  const parts = new Map(job.parts.map((part) => [part.name, part]));
  return short.flatMap(({ part, copies }) => {
    const known = parts.get(part);
    return known === undefined ? [] : Array.from({ length: copies }, () => sizeOf(known, job));
  });
}

/** As a piece of it lies, its grain along the board. */
function sizeOf(part: Part, { shop }: Job): Size {
  const { length, width } = blankOf(part, shop, 1);
  return part.grain === 'across' ? { length: width, width: length } : { length, width };
}

/** Rough boards that hold all pieces: end to end in one strip, and side by side. */
function boardsFor(pieces: readonly Size[], { shop }: Job, inOneRow: boolean): Size[] {
  const sum = (of: (piece: Size) => number, kerf: number): number =>
    pieces.reduce((total, piece) => total + of(piece) + kerf, -kerf);
  const most = (of: (piece: Size) => number): number => Math.max(...pieces.map(of));
  // A piece is part of a run at most at its ends: the kerf of the steepest miter does for all of them.
  const inRow = {
    length: sum(({ length }) => length, 2 * shop.crosscutKerf),
    width: most(({ width }) => width),
  };
  const sideBySide = { length: most(({ length }) => length), width: sum(({ width }) => width, shop.ripKerf) };
  return (inOneRow ? [inRow] : [inRow, sideBySide]).map((size) => roughSize(size, shop));
}

function isToBeHad({ length, width }: Size): boolean {
  return length <= longest && width <= widest;
}

function area({ length, width }: Size): number {
  return length * width;
}

function distinct(sizes: readonly Size[]): Size[] {
  return [...new Map(sizes.map((size) => [`${size.length} ${size.width}`, size])).values()];
}

/** A clear board of that size and thickness, of the wood of another. */
function boardOf({ length, width }: Size, thickness: number, like: Board): Board {
  return {
    ...like,
    name: `${like.name} and one more`,
    quantity: 1,
    length: ticks(length),
    width: ticks(width),
    dressedThickness: ticks(thickness),
    surface: 'rough',
    cost: 0,
    defects: [],
    origin: 'job',
  };
}
