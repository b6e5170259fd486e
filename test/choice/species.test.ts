import { describe, expect, it } from 'vitest';
import { inches, ticks } from '../../src/base/units/tick.ts';
import { chooseMatching } from '../../src/flow/choice/choose-matching.ts';
import { choose } from '../../src/flow/choice/choose.ts';
import { matchings } from '../../src/flow/choice/matchings.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { layOutJob } from '../../src/pipeline.ts';
import { plainBoard, plainPart } from '../laws/random-board.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';

const options = { seed: 1, effort: 0.01 };

/** Boards by quantity of a species, inches. */
const stack = (name: string, species: string, quantity: number, size: readonly number[], cost: number) =>
  plainBoard({
    ...{ name, species, quantity, cost, surface: 'S2S' as const },
    length: inches(size[0]!),
    width: inches(size[1]!),
  });

const part = (name: string, length: number, width: number, more: Partial<Part> = {}): Part =>
  plainPart({ name, ...more, length: inches(length), width: inches(width) });

/** A bookcase out of red oak and of a cheaper poplar; its sides are wider than any board. */
const bookcase: Job = {
  name: 'bookcase',
  shop: defaultShop,
  parts: [
    part('side', 72, 11, { quantity: 2, show: 1, glueUp: 3 }),
    part('top', 34, 11, { show: 1, glueUp: 3 }),
    part('shelf', 31, 10, { quantity: 3, show: 1, glueUp: 3 }),
    part('cleat', 30, 2, { quantity: 3, quality: 'sound' }),
  ],
  boards: [
    stack('oak long', 'red oak', 4, [120, 7.5], 50),
    stack('oak short', 'red oak', 3, [96, 6.25], 33),
    stack('oak wide', 'red oak', 2, [110, 8], 48),
    stack('poplar', 'poplar', 6, [97, 5.5], 15),
  ],
};

/** The species of the boards that give each piece of a part. */
function speciesOf(job: Job, layout: Layout, name: string): string[] {
  const of = new Map(job.boards.map((board) => [board.name, board.species]));
  return layout.boards.flatMap(({ board, pieces }) =>
    pieces.flatMap((piece) => (piece.part === name ? [of.get(board)!] : [])),
  );
}

function laidOut(job: Job): Layout {
  const { layout, faults } = finish(layOutJob(job, options));
  expect(faults.map((fault) => describeFault(fault))).toEqual([]);
  return layout;
}

describe('species', () => {
  it('of all that shows and names none is one, in every panel; what does not show may be of any', () => {
    const layout = laidOut(bookcase);
    expect(layout.short).toEqual([]);
    const shown = ['side', 'top', 'shelf'].flatMap((name) => speciesOf(bookcase, layout, name));
    expect(new Set(shown)).toEqual(new Set(['red oak']));
  });

  it('that a part names is taken alone, by every name that means it', () => {
    const parts = bookcase.parts.map((one) =>
      one.name === 'shelf' ? { ...one, species: 'yellow-poplar' } : one,
    );
    const job = { ...bookcase, parts };
    const layout = laidOut(job);
    expect(layout.short).toEqual([]);
    expect(new Set(speciesOf(job, layout, 'shelf'))).toEqual(new Set(['poplar']));
    expect(new Set(speciesOf(job, layout, 'side'))).toEqual(new Set(['red oak']));
  });

  it('that no board has leaves the part short, and says what the boards are', () => {
    const job = { ...bookcase, parts: [part('top', 20, 4, { species: 'white ash' })] };
    const { short } = laidOut(job);
    expect(short.map(({ why }) => why)).toEqual([
      'there are no boards of white ash; the boards are red oak, poplar',
    ]);
  });

  it('of a panel that does not show is one, too', () => {
    const parts = [part('back', 90, 12, { quantity: 2, glueUp: 3, quality: 'sound' })];
    const boards = [stack('oak', 'red oak', 3, [96, 6.25], 33), stack('poplar', 'poplar', 3, [97, 6.25], 15)];
    const job = { ...bookcase, parts, boards };
    const { boards: laid, short } = laidOut(job);
    expect(short).toEqual([]);
    for (const copy of [1, 2]) {
      const on = laid.flatMap(({ board, pieces }) =>
        pieces.flatMap((piece) => (piece.copy === copy ? [board] : [])),
      );
      expect(new Set(on).size).toBe(1);
    }
  });

  it('may be mixed where the shop says so, but in a panel', () => {
    const parts = [part('a', 90, 5, { show: 1 }), part('b', 90, 5, { show: 1 })];
    const boards = [stack('oak', 'red oak', 2, [96, 6.25], 33), stack('poplar', 'poplar', 1, [97, 6], 15)];
    const job = { ...bookcase, parts, boards };
    expect(laidOut(job).proof).toMatchObject({ value: 66, proven: true });
    const shop = { ...defaultShop, showSpecies: 'any' as const };
    expect(laidOut({ ...job, shop }).proof).toMatchObject({ value: 48, proven: true });
  });

  it('left open is sought in few ways: a part that names its own multiplies none', () => {
    const tones = ['warm', 'pale'];
    const boards = ['red oak', 'poplar'].flatMap((species) =>
      tones.map((tone) => ({ ...stack(`${species} ${tone}`, species, 2, [120, 8], 30), tone })),
    );
    const named = [part('a', 60, 6, { show: 1, species: 'red oak' }), part('b', 60, 6, { show: 1 })];
    const count = (parts: readonly Part[]): number => matchings({ ...bookcase, parts, boards }).able.length;
    expect(count(named.slice(0, 1))).toBe(2);
    expect(count(named.slice(1))).toBe(4);
    // Red oak warm or pale; poplar of either tone beside either oak, or the oak again in the same tone.
    expect(count(named)).toBe(6);
    expect(count([part('c', 60, 6, { species: 'poplar' })])).toBe(1);
  });
});

/** A job of a few boards of three woods, some without a name for it, and parts that show, hide, name a species or none. */
function mixedJob(seed: number): Job {
  const random = seeded(seed * 7_368_787);
  const inch = (least: number, most: number): number => inches(random.whole(least, most));
  const boards = Array.from({ length: random.whole(2, 4) }, (_, index) => ({
    ...plainBoard({ name: `B${index}`, length: 3 * inch(7, 16), width: inch(3, 7) }),
    species: random.pick(['red oak', 'poplar', 'Red  Oak', 'white oak', '']),
    tone: random.pick(['', '', 'warm']),
    quantity: random.whole(1, 2),
    cost: random.whole(5, 30),
  }));
  const parts = Array.from({ length: random.whole(1, 2) }, (_, index) => glued(random, index, inch));
  const shop = { ...defaultShop, endTrim: ticks(0) };
  return { name: `mixed ${seed}`, shop, parts, boards };
}

function glued(random: Seeded, index: number, inch: (least: number, most: number) => number): Part {
  return plainPart({
    ...{ name: `P${index}`, length: 3 * inch(5, 10), width: inch(3, 12), glueUp: random.whole(1, 3) },
    quantity: random.whole(1, 2),
    show: random.whole(0, 1),
    species: random.pick(['', '', 'oak', 'red oak', 'tulip poplar']),
  });
}

const plain = (species: string): string => species.toLowerCase().replace(/\s+/g, ' ');

describe('over 1,000 random jobs', () => {
  it('no layout mixes species in a panel, nor in what shows and names none', () => {
    const tally = { panels: 0, ofSeveral: 0, named: 0 };
    for (let seed = 1; seed <= 1000; seed += 1) {
      const job = mixedJob(seed);
      const { layout, faults } = finish(layOutJob(job, { seed: 1, effort: 0 }));
      expect(
        faults.map((fault) => describeFault(fault)),
        job.name,
      ).toEqual([]);
      const species = new Map(job.boards.map((board) => [board.name, plain(board.species)]));
      const parts = new Map(job.parts.map((one) => [one.name, one]));
      const panels = new Map<string, Set<string>>();
      const shown = new Set<string>();
      for (const { board, pieces } of layout.boards)
        for (const piece of pieces) {
          const wood = species.get(board)!;
          const asked = parts.get(piece.part)!;
          const key = `${piece.part} ${piece.copy}`;
          if (piece.strip !== undefined) panels.set(key, (panels.get(key) ?? new Set()).add(wood));
          if (asked.show > 0 && asked.species === '') shown.add(wood);
          if (asked.species === 'tulip poplar') expect(['poplar', ''], job.name).toContain(wood);
          if (asked.species === 'red oak') expect(['red oak', ''], job.name).toContain(wood);
          if (asked.species === 'oak') expect(['red oak', 'white oak', ''], job.name).toContain(wood);
          if (asked.species !== '') tally.named += 1;
        }
      for (const [panel, woods] of panels) expect(woods.size, `${job.name}: ${panel}`).toBe(1);
      expect(shown.size, job.name).toBeLessThanOrEqual(1);
      tally.panels += panels.size;
      if (new Set(species.values()).size > 1) tally.ofSeveral += panels.size;
    }
    expect(tally.panels).toBeGreaterThan(100);
    expect(tally.ofSeveral).toBeGreaterThan(100);
    expect(tally.named).toBeGreaterThan(100);
  }, 900_000);

  it('the answer is the least of what each species and tone alone would cost', () => {
    let compared = 0;
    for (let seed = 1; seed <= 120; seed += 1) {
      const job = mixedJob(seed);
      const single = { ...job, parts: job.parts.map((one) => ({ ...one, glueUp: 1, species: '', show: 1 })) };
      const best = finish(chooseMatching(single, options));
      const woods = new Set(job.boards.map((one) => JSON.stringify([plain(one.species), one.tone])));
      const each = [...woods].map((wood) => {
        const boards = single.boards.filter((one) => JSON.stringify([plain(one.species), one.tone]) === wood);
        return finish(choose({ ...single, boards }, options));
      });
      const whole = each.filter(({ short }) => short.length === 0);
      expect(best.short.length === 0, job.name).toBe(whole.length > 0);
      if (whole.length === 0) continue;
      const least = Math.min(...whole.map(({ proof }) => proof.value));
      expect(best.proof.value, job.name).toBeCloseTo(least, 6);
      expect(best.proof.bound, job.name).toBeLessThanOrEqual(least + 1e-6);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(10);
  });
});

describe('a tone that cannot hold what shows', () => {
  it('is left out of the bound when that is proven, glue-ups or not', () => {
    // Pale wood has room enough by area, and for each part alone, but not for both.
    const boards = [
      { ...stack('warm 1', 'red oak', 1, [60, 9], 30), tone: 'warm' },
      { ...stack('warm 2', 'red oak', 1, [60, 9], 30), tone: 'warm' },
      { ...stack('pale 1', 'red oak', 1, [60, 9], 10), tone: 'pale' },
      { ...stack('pale 2', 'red oak', 1, [40, 9], 10), tone: 'pale' },
    ];
    const parts = [part('shelf', 50, 7.25, { show: 1, glueUp: 2 }), part('back', 50, 4, { show: 1 })];
    const choice = finish(chooseMatching({ ...bookcase, parts, boards }, options));
    expect(choice.short).toEqual([]);
    expect(choice.proof).toMatchObject({ value: 60, bound: 60, proven: true });
  });
});
