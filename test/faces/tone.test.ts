import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { choose } from '../../src/flow/choice/choose.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { tonedJob } from './small-job.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';

const options = { seed: 1, effort: 0.01 };
const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) };

/** Two show parts; the two cheap boards differ in colour, the two warm ones cost more. By hand: 30 + 40 = 70. */
const mixed: Job = {
  name: 'two tones',
  shop,
  parts: [
    plainPart({ name: 'front', length: inches(40), width: inches(5), show: 2 }),
    plainPart({ name: 'side', length: inches(40), width: inches(5), show: 1 }),
    plainPart({ name: 'ledger', length: inches(40), width: inches(5) }),
  ],
  boards: [
    plainBoard({ name: 'W1', length: inches(44), width: inches(6), tone: 'warm', cost: 30 }),
    plainBoard({ name: 'P1', length: inches(44), width: inches(6), tone: 'pale', cost: 10 }),
    plainBoard({ name: 'W2', length: inches(44), width: inches(6), tone: 'warm', cost: 40 }),
  ],
};

describe('one tone for all that shows', () => {
  it('takes the dearer board that matches; what is hidden may have any tone', () => {
    const { layout, faults } = finish(layOutJob(mixed, options));
    expect(faults).toEqual([]);
    const boardOf = (part: string) => layout.boards.find(({ pieces }) => pieces[0]?.part === part)?.board;
    expect([boardOf('front'), boardOf('side')].sort()).toEqual(['W1', 'W2']);
    expect(boardOf('ledger')).toBe('P1');
    expect(layout.proof).toMatchObject({ value: 80, proven: true });
  });

  it('is off where the shop says so', () => {
    const parts = mixed.parts.slice(0, 2);
    const free = finish(layOutJob({ ...mixed, parts, shop: { ...shop, showTone: 'any' } }, options));
    expect(free.layout.proof.value).toBe(40);
    expect(free.faults).toEqual([]);
    expect(finish(layOutJob({ ...mixed, parts }, options)).layout.proof.value).toBe(70);
  });

  it('says what is short for want of a matching board, and how to mix', () => {
    const boards = mixed.boards.slice(0, 2);
    const { layout, faults } = finish(layOutJob({ ...mixed, boards }, options));
    expect(faults).toEqual([]);
    expect(layout.short.map(({ part }) => part).length).toBeGreaterThan(0);
    expect(layout.short.some(({ why }) => /tone .*show tone,any/.test(why))).toBe(true);
  });

  it('is held by the check: the same layout of mixed tones is a fault', () => {
    const parts = mixed.parts.slice(0, 2);
    const loose = { ...mixed, parts, shop: { ...shop, showTone: 'any' as const } };
    const { layout } = finish(layOutJob(loose, options));
    expect(verify(loose, layout)).toEqual([]);
    const faults = verify({ ...loose, shop }, layout);
    expect(faults.map(({ kind }) => kind)).toEqual(['mixed tones']);
    expect(describeFault(faults[0]!)).toContain('warm');
  });

  it('costs as much as the best of the tones solved one by one, and its bound stays below', () => {
    let mixedOnes = 0;
    for (const seed of [1, 2, 3, 4, 5, 6, 10, 16, 26, 27, 28, 33, 37, 42, 43, 48]) {
      const job = tonedJob(seed);
      const best = finish(chooseMatching(job, options));
      const tones = [...new Set(job.boards.map(({ tone }) => tone))];
      const each = tones.map((tone) => {
        const parts = job.parts.map((part) =>
          part.show > 0 ? { ...part, match: { species: null, tone } } : part,
        );
        return finish(choose({ ...job, parts }, options));
      });
      const whole = each.filter(({ short }) => short.length === 0);
      expect(best.short.length === 0).toBe(whole.length > 0);
      if (whole.length === 0) continue;
      const least = Math.min(...whole.map(({ proof }) => proof.value));
      expect(best.proof.value).toBeCloseTo(least, 6);
      expect(best.proof.bound).toBeLessThanOrEqual(least + 1e-6);
      if (each.every(({ proof }) => proof.proven)) expect(best.proof.proven).toBe(true);
      const free = finish(choose(job, options));
      if (free.proof.proven && free.proof.value < least - 1e-6) mixedOnes += 1;
    }
    expect(mixedOnes, 'jobs where one tone costs more').toBeGreaterThan(5);
  });
});
