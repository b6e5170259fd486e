import { describe, expect, it } from 'vitest';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { blankOf, partWithBlank } from '../../src/flow/parts/blank.ts';
import { planMantel } from '../../src/flow/plan/plan-mantel.ts';
import { planParts } from '../../src/flow/parts/plan-parts.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { leg, plainMantel } from '../plan/mantels.ts';

// Default allowances: 1/4 for each free miter; panels glued up 1/2 longer and 1/4 wider; 1/8 for the joints of each strip.
const shop = defaultShop;
const size = (blank: { length: number; width: number }): number[] => [
  blank.length / inches(1),
  blank.width / inches(1),
];

describe('blanks', () => {
  const part = plainPart({ name: 'p', length: inches(30), width: inches(8), leftEnd: 45, rightEnd: 22.5 });

  it('a free piece is over-long for each mitered end, a piece of a run is exact', () => {
    expect(size(blankOf(part, shop, 1))).toEqual([30.5, 8]);
    expect(size(blankOf({ ...part, rightEnd: 0 }, shop, 1))).toEqual([30.25, 8]);
    expect(size(blankOf({ ...part, run: 'facing' }, shop, 1))).toEqual([30, 8]);
  });

  it('a panel is glued up over-long and over-wide, each strip wider by its joints', () => {
    // 30 + 2 × 1/4 + 1/2; (8 + 1/4) / 3 + 1/8.
    expect(size(blankOf(part, shop, 3))).toEqual([31, 8.25 / 3 + 0.125]);
  });

  it('what is left to be scribed is on every blank, in a run too', () => {
    const fitted = { ...part, run: 'facing', extraLength: inches(0.25), extraWidth: inches(0.125) };
    expect(size(blankOf(fitted, shop, 1))).toEqual([30.25, 8.125]);
    expect(size(blankOf({ ...fitted, run: null }, shop, 2))).toEqual([31.25, 8.375 / 2 + 0.125]);
  });

  it('a strip asked for as a part has the strip as its blank', () => {
    const fitted = { ...part, extraLength: inches(0.25), extraWidth: inches(0.5) };
    const strip = blankOf(fitted, shop, 3);
    expect(blankOf(partWithBlank(fitted, shop, strip), shop, 1)).toEqual(strip);
  });
});

describe('a layout with allowances', () => {
  it('cuts the blanks, and the independent check asks for the same ones', () => {
    const parts = [
      plainPart({ name: 'shelf', length: inches(30), width: inches(9), glueUp: 2 }),
      plainPart({ name: 'cap', length: inches(14), width: inches(3), leftEnd: 45 }),
      plainPart({ name: 'back', length: inches(20), width: inches(3), extraWidth: inches(0.25) }),
    ];
    const boards = [plainBoard({ name: 'B', length: inches(100), width: inches(6), quantity: 2 })];
    const job: Job = { name: 'j', shop, parts, boards };
    const solve = layOutJob(job, { seed: 1, effort: 0.1 });
    let step = solve.next();
    while (step.done !== true) step = solve.next();
    const { layout, faults } = step.value;
    expect(faults).toEqual([]);
    expect(layout.short).toEqual([]);
    const pieces = layout.boards.flatMap((board) => board.pieces);
    const of = (name: string) => pieces.filter((piece) => piece.part === name).map(size);
    expect(of('shelf')).toEqual([
      [30.5, 9.25 / 2 + 0.125],
      [30.5, 9.25 / 2 + 0.125],
    ]);
    expect(of('cap')).toEqual([[14.25, 3]]);
    expect(of('back')).toEqual([[20, 3.25]]);
    // The same layout under other allowances is refused, each by each.
    for (const other of ['miterAllowance', 'gluedLengthAllowance', 'gluedWidthAllowance'] as const)
      expect(
        verify({ ...job, shop: { ...shop, [other]: ticks(0) } }, layout).map(({ kind }) => kind),
      ).toContain('wrong size');
  });
});

describe('a planned mantel', () => {
  it('has what is to be scribed where an end or a back meets a wall, and a gap at the sides of the breast', () => {
    const legs = [leg('left', 8, 5.75), leg('front', 60, 8.25)];
    const room = { fitGap: inches(1 / 8), scribe: inches(1 / 4) };
    const plan = planMantel({ ...plainMantel, leftEnd: 'capped', rightEnd: 'wall' }, legs, { room });
    const parts = plan.ok ? planParts(plan.value) : [];
    const extra = parts.map(({ name, extraLength = 0, extraWidth = 0 }) => [
      name,
      extraLength / inches(1),
      extraWidth / inches(1),
    ]);
    expect(extra).toEqual([
      // Along the breast's side there is a gap, so nothing is scribed there.
      ['left cap', 0, 0],
      ['left facing', 0, 0],
      ['front facing', 0.25, 0],
      ['left top', 0, 0],
      ['front top', 0.25, 0.25],
      ['left bottom', 0, 0],
      ['front bottom', 0.25, 0.25],
      ['left ledger', 0, 0],
      ['front ledger', 0, 0],
    ]);
    // A return 8 deep is edge-joined; its length lies across the leg: 5 less the gap.
    expect(parts.find(({ name }) => name === 'left top')).toMatchObject({
      length: inches(5 - 1 / 8),
      width: inches(8 - 0.75),
    });
  });
});
