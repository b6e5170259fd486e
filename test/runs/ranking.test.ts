import { describe, expect, it } from 'vitest';
import { parseLayout } from '../../src/flow/check/parse-layout.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { gapSentence } from '../../src/flow/sheet/words/gap-words.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { waysToBreak } from '../../src/flow/plan/run-break.ts';
import type { Shop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { leastCost, lengthsOf, narrowJob } from './narrow-job.ts';

const options = { seed: 1, effort: 0.05 };
const jobs = Array.from({ length: 100 }, (_, index) => narrowJob(index + 1));

/** The ways to break the run, the best first, and the least that each costs by brute force. */
function waysOf(job: Job): { stretches: readonly (readonly string[])[]; least: number }[] {
  const run = job.parts.filter((part) => part.run !== null);
  const front = run.findIndex(({ show }) => show === 3);
  return waysToBreak(
    run.map(({ name }) => name),
    front,
  ).map((stretches) => ({ stretches, least: leastCost(lengthsOf(job, stretches), job.boards) }));
}

function stretchesOf(job: Job, { broken }: Layout): readonly (readonly string[])[] {
  return broken?.[0]?.stretches ?? [job.parts.filter(({ run }) => run !== null).map(({ name }) => name)];
}

function withShop(job: Job, shop: Partial<Shop>): Job {
  return { ...job, shop: { ...job.shop, ...shop } };
}

describe('a run never costs a part', () => {
  it('goes down the ranking to the first break with which brute force lays out every part, and no further', () => {
    const seen = { whole: 0, broken: 0, short: 0 };
    for (const job of jobs) {
      const { layout, faults } = finish(layOutJob(job, options));
      expect(faults, job.name).toEqual([]);
      const best = waysOf(job).find(({ least }) => least < Infinity);
      expect(layout.short.length === 0, job.name).toBe(best !== undefined);
      if (best === undefined) {
        seen.short += 1;
        continue;
      }
      expect(stretchesOf(job, layout), job.name).toEqual(best.stretches);
      seen[best.stretches.length === 1 ? 'whole' : 'broken'] += 1;
      if (layout.proof.proven) expect(layout.proof.value, job.name).toBe(best.least);
      const why = layout.broken?.[0]?.why;
      if (why !== undefined) expect(['no board', 'no layout']).toContain(why);
    }
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(12);
  });

  it("a run of the maker's own holds as written, unless the shop lets it break", () => {
    let broken = 0;
    for (const given of jobs.slice(0, 60)) {
      const parts = given.parts.map((part) => ({ ...part, run: part.run === null ? null : 'mine' }));
      const job = { ...given, parts };
      const [whole, ...others] = waysOf(job);
      const held = finish(layOutJob(job, options)).layout;
      expect(held.broken).toBeUndefined();
      expect(held.short.length === 0).toBe(whole!.least < Infinity);
      if (held.short.length === 0 || others.every(({ least }) => least === Infinity)) continue;
      const free = finish(layOutJob(withShop(job, { ownRuns: 'may break' }), options));
      expect(free.faults).toEqual([]);
      expect(free.layout.short).toEqual([]);
      expect(verify(job, free.layout).map(({ kind }) => kind)).toContain('bad run');
      broken += 1;
    }
    expect(broken).toBeGreaterThan(5);
  });

  it('is broken for money only where the shop says so, and then is never dearer than any fixed break', () => {
    let cheaper = 0;
    for (const job of jobs.slice(0, 80)) {
      const ways = waysOf(job);
      const never = finish(layOutJob(job, options)).layout;
      const free = finish(layOutJob(withShop(job, { breakGrain: { least: 0, of: 'money' } }), options));
      expect(free.faults).toEqual([]);
      const least = Math.min(...ways.map((way) => way.least));
      if (least === Infinity) continue;
      expect(free.layout.short).toEqual([]);
      expect(free.layout.totals.cost, job.name).toBe(least);
      // Of ways that cost the same the best.
      expect(stretchesOf(job, free.layout)).toEqual(ways.find((way) => way.least === least)!.stretches);
      if (free.layout.totals.cost < never.totals.cost) {
        cheaper += 1;
        expect(free.layout.broken![0]!.why).toBe('money');
        const saved = never.totals.cost - free.layout.totals.cost;
        const at = (least: number) =>
          finish(layOutJob(withShop(job, { breakGrain: { least, of: 'money' } }), options)).layout;
        expect(at(saved + 1).totals.cost).toBe(never.totals.cost);
        expect(at(saved).totals.cost).toBeLessThan(never.totals.cost);
      }
    }
    expect(cheaper).toBeGreaterThan(5);
  });

  it('at the same effort no fixed break is cheaper', () => {
    for (const job of jobs.slice(80, 100)) {
      const free = finish(
        layOutJob(withShop(job, { breakGrain: { least: 0, of: 'share' } }), options),
      ).layout;
      for (const { stretches } of waysOf(job)) {
        const fixed = job.parts.map((part) => {
          const at = stretches.findIndex((names) => names.includes(part.name));
          return at < 0 ? part : { ...part, run: `own ${at}` };
        });
        const { layout } = finish(layOutJob({ ...job, parts: fixed }, options));
        if (layout.short.length === 0) expect(free.totals.cost).toBeLessThanOrEqual(layout.totals.cost);
      }
    }
  });
});

describe('boards that cannot hold the job', () => {
  it('are said to be so, without a bound or gap; the board to add would do, by brute force', () => {
    let added = 0;
    for (const job of jobs) {
      const { layout, job: laid, faults } = finish(layOutJob(job, options, undefined, true));
      expect(faults, job.name).toEqual([]);
      if (layout.short.length === 0) continue;
      expect(layout.proof).toMatchObject({ bound: null, gap: null, proven: true });
      const said = gapSentence(laid, layout);
      expect(said).toMatch(/^These boards cannot hold the job \(proven/);
      expect(said).not.toMatch(/%/);
      const { toAdd } = layout.proof;
      if (toAdd === null || toAdd === undefined) continue;
      added += 1;
      const costOn = (length: number): number => {
        const more = plainBoard({ name: 'more', length, width: toAdd.width });
        return Math.min(...waysOf({ ...job, boards: [...job.boards, more] }).map((way) => way.least));
      };
      expect(costOn(toAdd.length), job.name).toBeLessThan(Infinity);
      if (!toAdd.least) continue;
      expect(costOn(toAdd.length - 8128), job.name).toBe(Infinity);
    }
    expect(added).toBeGreaterThan(10);
  });

  it('are told the least board where it holds the smallest part just so: one of two pieces of 4 in on a board of 6 in', () => {
    const parts = ['a', 'b'].map((name) => plainPart({ name, length: 4 * 8128, width: 2 * 8128 }));
    const boards = [plainBoard({ name: 'B', length: 6 * 8128, width: 2 * 8128 })];
    const { layout } = finish(layOutJob({ ...jobs[0]!, parts, boards }, options, undefined, true));
    expect(layout.proof).toMatchObject({ proven: true, bound: null });
    expect(layout.proof.toAdd).toMatchObject({ length: 4 * 8128, width: 2 * 8128, least: true });
  });
});

describe('a broken run in the answer', () => {
  const job = jobs.find((one) => {
    const { layout } = finish(layOutJob(one, options));
    return layout.short.length === 0 && layout.broken?.some(({ stretches }) => stretches[0]!.length > 1);
  })!;
  const { layout } = finish(layOutJob(job, options));
  const kinds = (changed: Layout): string[] => verify(job, changed).map(({ kind }) => kind);

  it('is read back as it was written, and passes the check against the parts as they are', () => {
    const read = parseLayout(JSON.parse(JSON.stringify(layout)));
    expect(read).toEqual({ ok: true, value: layout });
    expect(verify(job, layout)).toEqual([]);
  });

  it('is a fault where it is not said, said wrongly, or said twice', () => {
    const { broken, ...unsaid } = layout;
    const [run] = broken!;
    expect(kinds(unsaid)).toContain('bad run');
    expect(kinds({ ...layout, broken: [run!, run!] })).toContain('bad run');
    const turned = { ...run!, stretches: [...run!.stretches].reverse() };
    expect(kinds({ ...layout, broken: [turned] })).toContain('bad run');
    expect(kinds({ ...layout, broken: [{ ...run!, stretches: [run!.stretches.flat()] }] })).toContain(
      'bad run',
    );
    expect(kinds({ ...layout, broken: [{ ...run!, run: 'other' }] })).toContain('bad run');
  });
});
