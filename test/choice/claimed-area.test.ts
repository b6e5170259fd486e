import { describe, expect, test } from 'vitest';
import { claimedAreas } from '../../src/flow/choice/claimed-area.ts';
import type { BlankKind } from '../../src/flow/choice/instance.ts';
import type { Kind, Plate } from '../../src/flow/patterns/plate.ts';
import { type Seeded, seeded } from '../laws/seeded.ts';
import { keptOffcuts } from '../patterns/strip/every-cut.ts';

/** A plate of whole cells, most of it long pieces that lie one above the other, some short ones. */
function plateOf(random: Seeded): { plate: Plate; kinds: Kind[]; keep: { length: number; width: number } } {
  const plate: Plate = {
    length: random.whole(4, 9),
    width: random.whole(3, 8),
    crosscutKerf: random.pick([0, 0, 1]),
    ripKerf: random.pick([0, 0, 1]),
    shortestRip: random.pick([0, 0, 2]),
    stages: random.pick([3, 4, 'any'] as const),
    clearances: [[]],
  };
  const kinds = Array.from({ length: random.whole(1, 3) }, (): Kind => {
    const isLong = random.chance(0.7);
    const length = isLong
      ? random.whole(Math.ceil(plate.length / 2), plate.length)
      : random.whole(1, plate.length);
    const width = random.whole(1, Math.max(1, Math.ceil(plate.width / 2)));
    const along = { length, width };
    const shapes = random.chance(0.15) ? [along, { length: width, width: length }] : [along];
    return { shapes, cap: random.whole(1, 3), clearances: [0] };
  });
  return { plate, kinds, keep: { length: random.whole(1, 4), width: random.whole(1, 4) } };
}

function blankOf({ shapes, cap }: Kind, part: number): BlankKind {
  const { length, width } = shapes[0]!;
  return { members: [{ part, offset: 0, length, width }], strips: 1, length, width, demand: cap, penalty: 1 };
}

describe('the area that pieces keep kept offcuts from', () => {
  test('leaves room for the kept offcuts of every way to cut every tiny plate, and often for no more', () => {
    const tally = { tight: 0, beside: 0, tightBeside: 0 };
    for (let seed = 1; seed <= 6000; seed += 1) {
      const { plate, kinds, keep } = plateOf(seeded(seed * 17));
      const { areas, beside } = claimedAreas(
        plate,
        kinds,
        kinds.map((kind, k) => blankOf(kind, k)),
        keep,
      );
      const all = plate.length * plate.width;
      for (const { counts, area } of keptOffcuts(plate, kinds, keep)) {
        const long = beside === null ? 0 : beside.kinds.reduce((sum, kind) => sum + counts[kind]!, 0);
        const extra = Math.max(0, long - 1) * (beside?.area ?? 0);
        const claimed = counts.reduce((sum, count, k) => sum + count * areas[k]!, extra);
        expect(
          area + claimed,
          `seed ${seed}: ${counts.join()} ${JSON.stringify({ plate, kinds, keep, beside })}`,
        ).toBeLessThanOrEqual(all + 1e-9);
        const isTight = area + claimed > all - 1e-9 && counts.some((count) => count > 0);
        if (isTight && area > 0) tally.tight += 1;
        if (extra > 0) tally.beside += 1;
        if (extra > 0 && isTight) tally.tightBeside += 1;
      }
      // No claim is less than the piece itself.
      kinds.forEach(({ shapes }, k) =>
        expect(areas[k]!).toBeGreaterThanOrEqual(shapes[0]!.length * shapes[0]!.width - 1e-9),
      );
    }
    expect(tally.tight).toBeGreaterThan(5000);
    expect(tally.beside).toBeGreaterThan(200);
    expect(tally.tightBeside).toBeGreaterThan(50);
  });
});
