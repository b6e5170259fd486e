import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import type { PlacedPiece } from '../../src/flow/choice/choice.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import type { LaidPiece, Layout } from '../../src/flow/cuts/layout.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) };
const board = plainBoard({ name: 'board', length: inches(60), width: inches(8) });

/** A job of square-ended parts on one board, each with where it lies: part, copy, x, y, length, width in inches. */
function laidOut(rows: readonly (readonly [string, number, number, number, number, number])[]): {
  readonly job: Job;
  readonly layout: Layout;
} {
  const names = [...new Set(rows.map(([name]) => name))];
  const parts = names.map((name) => {
    const own = rows.filter(([other]) => other === name);
    const [, , , , length, width] = own[0]!;
    return plainPart({
      name,
      quantity: own.length,
      length: inches(length),
      width: inches(width),
      quality: 'any',
    });
  });
  const pieces = rows.map(([name, copy, x, y, length, width]): PlacedPiece => ({
    ...{
      part: names.indexOf(name),
      copy,
      x: inches(x),
      y: inches(y),
      length: inches(length),
      width: inches(width),
    },
    showFace: null,
  }));
  const job = { name: 'runs', shop, parts, boards: [board] };
  const proof = { value: 1, bound: 1, gap: 0, proven: true };
  return { job, layout: layOut(job, { patterns: [{ board: 0, copy: 1, pieces }], short: [], proof }) };
}

/** What the check says when these parts are a run after all, and their pieces say so as told. */
function saidOfRun(
  { job, layout }: { readonly job: Job; readonly layout: Layout },
  run: readonly string[],
  orderOf: (piece: LaidPiece) => number | null,
): string[] {
  const boards = layout.boards.map((laid) => ({
    ...laid,
    pieces: laid.pieces.map((piece) => {
      const order = orderOf(piece);
      return order === null ? piece : { ...piece, run: { run: 0, order } };
    }),
  }));
  const parts = job.parts.map((part) => (run.includes(part.name) ? { ...part, run: 'wrap' } : part));
  return verify({ ...job, parts }, { ...layout, boards }).map(({ kind }) => kind);
}

const kerf = 1 / 8;
const inRun = ({ part }: LaidPiece): number | null => ({ a: 0, b: 1, c: 2 })[part] ?? null;

describe('a cut between two pieces of a run', () => {
  it('may not go through wood beside them that becomes another piece', () => {
    const beside = laidOut([
      ['a', 1, 0, 0, 20, 3],
      ['b', 1, 20 + kerf, 0, 20, 4],
      ['d', 1, 0, 3 + kerf, 20, 3],
    ]);
    expect(saidOfRun(beside, ['a', 'b'], inRun)).toEqual(['slanted through a neighbour']);
  });

  it('may not free another piece beside a narrower one of the two, within the strip', () => {
    const within = laidOut([
      ['a', 1, 0, 0, 20, 3],
      ['b', 1, 20 + kerf, 0, 20, 8],
      ['d', 1, 0, 3 + kerf, 20, 4],
    ]);
    expect(saidOfRun(within, ['a', 'b'], inRun)).toEqual(['slanted through a neighbour']);
  });

  it('may leave wider pieces of the run farther along', () => {
    const ascending = laidOut([
      ['a', 1, 0, 0, 12, 3],
      ['b', 1, 12 + kerf, 0, 12, 4],
      ['c', 1, 24 + 2 * kerf, 0, 12, 5],
    ]);
    expect(saidOfRun(ascending, ['a', 'b', 'c'], inRun)).toEqual([]);
  });
});

describe('a piece without its run', () => {
  const two = laidOut([
    ['a', 1, 0, 0, 20, 4],
    ['b', 1, 20 + kerf, 0, 10, 4],
    ['b', 2, 40, 0, 10, 4],
  ]);
  const firstTwo = ({ part, copy }: LaidPiece): number | null => (part === 'a' ? 0 : copy === 1 ? 1 : null);

  it('is right where a copy of the run holds it alone', () => {
    expect(saidOfRun(two, ['a', 'b'], firstTwo)).toEqual([]);
  });

  it('is wrong where one copy too many lies so', () => {
    expect(saidOfRun(two, ['a', 'b'], () => null)).toEqual(['bad run', 'bad run']);
  });

  it('carries none: one piece makes no run', () => {
    expect(saidOfRun(two, ['b'], ({ part, copy }) => (part === 'b' && copy === 1 ? 0 : null))).toContain(
      'bad run',
    );
  });
});
