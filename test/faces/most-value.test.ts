import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { type FaceTable, type PossibleFace, faceTable } from '../../src/decide/faces/face-table.ts';
import { focusOf } from '../../src/decide/faces/focus.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';

function tableOf(job: Job): FaceTable {
  const focus = focusOf(job, null);
  if (!focus.ok) throw new Error('nothing to look at');
  return finish(faceTable(job, focus.value, (given) => layOutJob(given, { seed: 1, effort: 0 })));
}

function possible({ choices }: FaceTable): PossibleFace[] {
  return choices.filter((choice) => choice.kind === 'possible');
}

/** A board of so many copies, sizes in inches. */
function boardOf(name: string, quantity: number, length: number, width: number) {
  return {
    ...plainBoard({ name, quantity, length: inches(length), width: inches(width) }),
    cost: length * width,
  };
}

describe('faces under most value, on a board with both faces alike', () => {
  const shown = { ...plainPart({ name: 'front', length: inches(20), width: inches(4) }), show: 1 };
  const others = plainPart({ name: 'other', quantity: 2, length: inches(30), width: inches(6) });
  const shop = { ...defaultShop, goal: 'most value' as const };

  it.each([
    ['the part alone', [shown], 80],
    ['the part, though others are worth more', [shown, others], 80 + 180],
  ])('each layout is sound and tells the worth of what it lays out: %s', (_, parts, worth) => {
    const table = tableOf({ name: 'faces', shop, parts, boards: [boardOf('b', 1, 60, 8)] });
    const list = possible(table);
    expect(list.map(({ face }) => face)).toEqual(['A', 'B']);
    for (const { job, layout, value, bound } of list) {
      expect(verify(job, layout)).toEqual([]);
      expect([value, layout.proof.value, bound]).toEqual([worth, worth, layout.proof.bound]);
      expect(bound).toBeGreaterThanOrEqual(value);
    }
  });
});

describe('faces that break a run of unequal quantities', () => {
  it('are laid out, each copy of a stretch with the parts that it holds', () => {
    const part = (name: string, quantity: number, length: number) => ({
      ...plainPart({ name, quantity, length: inches(length), width: inches(4) }),
      run: 'wrap',
      show: 1,
    });
    const boards = [boardOf('long', 2, 96, 5), boardOf('short', 4, 45, 5)];
    const parts = [part('a', 2, 20), part('b', 2, 30), part('c', 1, 10)];
    const shop = { ...defaultShop, ownRuns: 'may break' as const };
    const list = possible(tableOf({ name: 'faces', shop, parts, boards }));
    expect(
      list.map(({ board, groups }) => `${board} ${groups.map((names) => names.join('+')).join(' ')}`),
    ).toEqual(['long a+b+c', 'long a+b+c', 'short a b+c', 'short a b+c']);
    for (const { job, layout } of list) expect(verify(job, layout)).toEqual([]);
  });
});
