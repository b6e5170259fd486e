import { describe, expect, test } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import { perfectJob } from '../laws/perfect-job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { mantelJob } from '../laws/random-job.ts';
import { handMethod } from './hand-method.ts';

describe('the hand method', () => {
  test('lays out generated mantels and perfect jobs so that the independent check has nothing against it', () => {
    for (let seed = 1; seed <= 25; seed += 1) {
      const jobs = [
        mantelJob(seed, { kinds: 10, boards: 14, pieces: 18 }),
        perfectJob({ seed, sources: 3, pieces: 25, decoys: 5 }).job,
      ];
      for (const job of jobs) {
        const choice = handMethod(job);
        expect(choice).not.toBeNull();
        if (choice !== null) expect(verify(job, layOut(job, choice))).toEqual([]);
      }
    }
  });

  test('two strips beside each other, the board that gives most for its money, a knot stepped over', () => {
    const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) };
    const part = plainPart({ name: 'a', length: inches(40), width: inches(3), quantity: 2 });
    const knot = {
      kind: 'sound knot',
      face: 'through',
      x: 0,
      y: 0,
      length: inches(2),
      width: inches(3),
    } as const;
    const boards = [
      plainBoard({ name: 'dear', length: inches(96), width: inches(6.125), cost: 50 }),
      plainBoard({ name: 'good', length: inches(48), width: inches(6.125), cost: 20, defects: [knot] }),
    ];
    const choice = handMethod({ name: 'two', shop, parts: [part], boards });
    expect(choice?.patterns.map(({ board, pieces }) => [board, pieces.map(({ x, y }) => [x, y])])).toEqual([
      [
        1,
        [
          [inches(2), inches(0)],
          [inches(0), inches(3.125)],
        ],
      ],
    ]);
  });

  test('leaves alone what it does not know', () => {
    const job = mantelJob(1, { kinds: 3, boards: 3, pieces: 3 });
    const parts = job.parts.map((part) => ({ ...part, glueUp: 2 }));
    expect(handMethod({ ...job, parts })).toBeNull();
  });
});
