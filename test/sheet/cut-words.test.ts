import { describe, expect, it } from 'vitest';
import { area } from '../../src/base/geometry/rectangle.ts';
import { cutWords } from '../../src/flow/sheet/words/cut-words.ts';
import { named } from '../../src/flow/sheet/words/named.ts';
import { wasteOf } from '../../src/flow/sheet/board/waste.ts';
import { cutsRows } from '../../src/flow/sheet/table/cuts-rows.ts';
import { layoutRows } from '../../src/flow/sheet/table/layout-rows.ts';
import { layoutCsv } from '../../src/flow/sheet/table/layout-rows.ts';
import { hostileJob, hostileLayout, hostileNames } from './hostile-sample.ts';
import { mantelJob, mantelLayout } from './mantel-sample.ts';
import { randomBoard } from './random-layout.ts';

const layout = mantelLayout();

describe('cuts in words', () => {
  // Oak 2, copy 2: 96 × 11 rough; ends 1", edges 1/4"; 65" of bottom 5 1/2 wide and ledger 1 1/2 wide.
  const laid = layout.boards[2];
  const words = laid ? cutWords(laid, named(mantelJob), mantelJob.shop) : [];

  it('tell workpiece, place and what each side becomes, as worked by hand', () => {
    expect(
      words.map(({ step, saw, workpiece, at, sides: [near, far] }) => [
        step,
        saw,
        workpiece,
        at,
        `${near.size} ${near.becomes}`,
        `${far.size} ${far.becomes}`,
      ]),
    ).toEqual([
      [1, 'crosscut', '96 × 11', '7/8', '7/8 trim', '95 cut 2'],
      [2, 'crosscut', '95 × 11', '95', '94 cut 3', '7/8 trim'],
      [3, 'rip', '94 × 11', '1/8', '1/8 trim', '10 3/4 cut 4'],
      [4, 'rip', '94 × 10 3/4', '10 3/4', '10 1/2 cut 5', '1/8 trim'],
      [5, 'crosscut', '94 × 10 1/2', '66', '65 cut 6', '28 7/8 keep N-4'],
      [6, 'rip', '65 × 10 1/2', '5 3/4', '5 1/2 bottom', '4 7/8 cut 7'],
      [7, 'rip', '65 × 4 7/8', '7 3/8', '1 1/2 cut 8', '3 1/4 keep N-3'],
      [8, 'crosscut', '65 × 1 1/2', '59', '58 ledger', '6 7/8 scrap'],
    ]);
  });
});

describe('waste found by replaying the cuts', () => {
  const sum = (rectangles: readonly { x: number; y: number; length: number; width: number }[]): number =>
    rectangles.reduce((total, one) => total + area(one), 0);

  it('is just what the books say, trims apart', () => {
    for (const laid of layout.boards) {
      const waste = wasteOf(laid);
      expect(sum(waste.filter(({ trim }) => trim))).toBe(laid.area.trim);
      expect(sum(waste.filter(({ trim }) => !trim))).toBe(laid.area.scrap);
    }
  });

  it('fills the board with pieces, offcuts and kerf, on boards cut at random', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { laid } = randomBoard(seed);
      const all = sum(laid.pieces) + sum(laid.offcuts) + sum(wasteOf(laid)) + laid.area.kerf;
      expect(all).toBe(laid.area.board);
    }
  });
});

describe('tables for spreadsheets', () => {
  it('have a row for each piece and offcut, and one for each cut', () => {
    const things = layout.boards.reduce(
      (sum, { pieces, offcuts }) => sum + pieces.length + offcuts.length,
      0,
    );
    const cuts = layout.boards.reduce((sum, board) => sum + board.cuts.length, 0);
    const [head, ...rows] = layoutRows(mantelJob, layout);
    expect(rows).toHaveLength(things);
    expect(cutsRows(mantelJob, layout)).toHaveLength(cuts + 1);
    for (const row of rows) expect(row).toHaveLength(head?.length ?? 0);
  });

  it('give lengths as plain decimals of the job unit', () => {
    const row = layoutRows(mantelJob, layout).find(([, , , name]) => name === 'top shelf');
    expect(row?.slice(0, 9)).toEqual([
      'Oak 2',
      '1',
      'piece',
      'top shelf',
      '1',
      '1',
      '0.25',
      '66.5',
      '4.5625',
    ]);
    const metric = layoutRows(hostileJob, hostileLayout());
    expect(metric[0]?.[7]).toBe('length mm');
    expect(metric[1]?.slice(7, 9)).toEqual(['410', '60']);
  });

  it('hold hostile names as they were written, harmless once in a file', () => {
    const names = new Set(layoutRows(hostileJob, hostileLayout()).map((row) => row[3]));
    for (const name of hostileNames) expect(names.has(name)).toBe(true);
    const csv = layoutCsv(hostileJob, hostileLayout());
    expect(csv).toContain(",'=1+1,");
    expect(csv).not.toMatch(/(?:^|,)=1/m);
  });
});
