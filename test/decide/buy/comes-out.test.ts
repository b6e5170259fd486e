import { describe, expect, it } from 'vitest';
import { inches } from '../../../src/base/units/tick.ts';
import { alikeTogether } from '../../../src/decide/buy/comes-out/alike-parts.ts';
import { completer } from '../../../src/decide/buy/comes-out/completer.ts';
import { makingsOf, splitsAlone, splitsOf } from '../../../src/decide/buy/comes-out/making.ts';
import { onGrid } from '../../../src/decide/buy/comes-out/on-grid.ts';
import { choose } from '../../../src/flow/choice/choose.ts';
import { kindsOf } from '../../../src/flow/choice/kinds.ts';
import { finish } from '../../../src/flow/choice/progress.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import { defaultShop } from '../../../src/flow/shop/shop.ts';
import type { Board } from '../../../src/flow/stock/board.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../../laws/random-board.ts';
import { stickComesOut, stickYard } from './stick-yard.ts';
import { tightJob } from './tight-job.ts';

const part = (name: string, length: number, width: number, more: Partial<Part> = {}): Part =>
  plainPart({ ...more, name, length: inches(length), width: inches(width) });
const board = (name: string, length: number, width: number, more: Partial<Board> = {}): Board =>
  plainBoard({ ...more, name, length: inches(length), width: inches(width) });
const jobOf = (parts: readonly Part[], boards: readonly Board[] = []): Job => ({
  name: 'job',
  shop: { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) },
  parts,
  boards,
});
const comesOut = completer(1);

describe('whether a job comes out', () => {
  it('is what trying everything says, for 100 yards of sticks', () => {
    let out = 0;
    for (let seed = 1; seed <= 100; seed += 1) {
      const { owned, yard } = stickYard(seed);
      const job = { ...owned, boards: [...owned.boards, ...yard] };
      const tried = stickComesOut(job) !== null;
      expect([seed, comesOut(job) !== null]).toEqual([seed, tried]);
      if (tried) out += 1;
    }
    expect(out).toBeGreaterThan(30);
    expect(out).toBeLessThan(100);
  });

  it('is true wherever the layout’s own solver lays out all parts, glued up or whole; and more area is never cut than lies there', () => {
    let [out, refused] = [0, 0];
    for (let seed = 1; seed <= 40; seed += 1) {
      const job = tightJob(seed);
      const found = comesOut(job);
      const { short, proof } = finish(choose(job, { seed: 1, effort: 0.2 }));
      if (short.length === 0) expect([seed, found === null]).toEqual([seed, false]);
      if (found === null) refused += 1;
      else {
        out += 1;
        // A proven answer with parts short: there is no layout.
        expect([seed, short.length > 0 && proof.proven]).toEqual([seed, false]);
        job.boards.forEach(({ length, width }, index) =>
          expect(found[index]).toBeLessThanOrEqual(length * width),
        );
        const wanted = job.parts.reduce((sum, each) => sum + each.quantity * each.length * each.width, 0);
        expect(found.reduce((sum, area) => sum + area, 0)).toBeGreaterThanOrEqual(wanted);
      }
    }
    expect(Math.min(out, refused)).toBeGreaterThan(8);
  });

  it('lets each copy of a part be made in its own way', () => {
    const panels = [part('panel', 20, 8, { quantity: 2, glueUp: 2 })];
    const wide = board('wide', 20, 8);
    const narrow = (name: string): Board => board(name, 20.5, 4.25);
    expect(comesOut(jobOf(panels, [wide, narrow('a'), narrow('b')]))).not.toBe(null);
    expect(comesOut(jobOf(panels, [wide, narrow('a')]))).toBe(null);
    expect(comesOut(jobOf(panels, [wide, narrow('a'), board('scant', 20.5, 4.125)]))).toBe(null);
  });

  it('heeds neither price nor goal', () => {
    const parts = [part('a', 20, 4, { value: 0 }), part('b', 20, 4)];
    const job = jobOf(parts, [board('one', 20, 4, { cost: 99 })]);
    const most: Job = { ...job, shop: { ...job.shop, goal: 'most value' } };
    expect([comesOut(job), comesOut(most)]).toEqual([null, null]);
  });
});

describe('what the question is made of', () => {
  it('alike parts count as one, whatever their names, and so do alike runs; what nobody wants is left out', () => {
    const parts = [
      part('top', 70, 7.5, { glueUp: 2, note: 'above' }),
      part('bottom', 70, 7.5, { glueUp: 2, show: 1 }),
      part('left', 70, 7.5, { run: 'face', glueUp: 2 }),
      part('right', 70, 7.5, { run: 'face', glueUp: 2 }),
      part('port', 70, 7.5, { run: 'second', glueUp: 2 }),
      part('starboard', 70, 7.5, { run: 'second', glueUp: 2 }),
      part('alone', 70, 7.5, { run: 'third', glueUp: 2 }),
      part('none', 70, 7.5, { glueUp: 2, quantity: 0 }),
      part('sound', 70, 7.5, { glueUp: 2, quality: 'sound' }),
    ];
    const together = alikeTogether(parts);
    expect(together.map(({ name, quantity }) => [name, quantity])).toEqual([
      ['top', 2],
      ['left', 2],
      ['right', 2],
      ['alone', 1],
      ['sound', 1],
    ]);
  });

  it('copies are split over the ways, all in one way first; of many copies nothing else', () => {
    const boards = [board('b', 80, 9)];
    const making = (quantity: number) =>
      makingsOf(jobOf([part('top', 70, 7.5, { glueUp: 2, quantity })], boards))[0]!;
    expect(splitsOf(making(2))).toEqual([
      [2, 0],
      [0, 2],
      [1, 1],
    ]);
    expect(splitsOf(making(9))).toBe(null);
    expect(splitsAlone(making(9))).toEqual([
      [9, 0],
      [0, 9],
    ]);
  });

  it('a run becomes at most 1/64 in longer, and its length a whole step of the grid', () => {
    const run = { run: 'face', leftEnd: 45, rightEnd: 45 };
    const job = jobOf([part('left', 6, 5, run), part('front', 40, 5, run), part('shelf', 20, 8)]);
    const [before, after] = [job, onGrid(job)].map((given) => kindsOf(given).map(({ length }) => length));
    after!.forEach((length, index) => {
      expect(length % 127).toBe(0);
      expect(length - before![index]!).toBeGreaterThanOrEqual(0);
      expect(length - before![index]!).toBeLessThan(127);
    });
    expect(after).not.toEqual(before);
    const odd = jobOf([...job.parts, plainPart({ name: 'odd', length: 100_003, width: 9999 })]);
    expect(onGrid(odd)).toEqual(odd);
  });
});
