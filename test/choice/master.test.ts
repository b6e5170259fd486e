import { describe, expect, it } from 'vitest';
import type { Column } from '../../src/flow/choice/column.ts';
import { openMaster } from '../../src/flow/choice/master.ts';

const column = (counts: readonly number[]): Column => ({
  group: 0,
  placements: [],
  kinds: counts.flatMap((count, kind) => (count > 0 ? [kind] : [])),
  counts: counts.filter((count) => count > 0),
  cost: 0,
});

describe('the restricted master', () => {
  const data = { demand: [4, 3], penalty: [5, 7], copies: [2] };

  it('uses no more boards than there are, even where a row asks for more', () => {
    const master = openMaster(data, [{ coefficient: () => -1, limit: -3 }]);
    master.add(column([1, 1]));
    master.add(column([2, 0]));
    const { use, objective, certified } = master.solve();
    expect(certified).toBe(true);
    expect(use.length).toBe(2);
    expect(use.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(2 + 1e-9);
    // Dearer than leaving every piece out: a search cuts such a node off.
    expect(objective).toBeGreaterThan(4 * 5 + 3 * 7);
  });

  it('keeps a row that asks for what there is', () => {
    const asked = (least: number): number => {
      const master = openMaster(data, [
        { coefficient: (c) => (c.counts.length === 1 ? -1 : 0), limit: -least },
      ]);
      master.add(column([1, 1]));
      master.add(column([2, 0]));
      const { use, objective } = master.solve();
      expect(use[1]).toBeGreaterThanOrEqual(least - 1e-9);
      return objective;
    };
    // Two of the first save 24; one of each saves 22, two of the second 20.
    expect([asked(0.5), asked(1), asked(2)]).toEqual([41 - 23, 41 - 22, 41 - 20]);
  });
});
