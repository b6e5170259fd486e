import { inches } from '../../../src/base/units/tick.ts';
import { defaultShop } from '../../../src/flow/shop/shop.ts';
import type { Job } from '../../../src/flow/stock/job.ts';
import { plainBoard, plainPart } from '../../laws/random-board.ts';
import { seeded } from '../../laws/seeded.ts';

/** A panel or two that may be glued up, smaller parts, and priced boards that just hold them or just do not. */
export function tightJob(seed: number): Job {
  const random = seeded(seed);
  const size = (long: readonly [number, number], wide: readonly [number, number]) => ({
    length: inches(random.whole(...long)),
    width: inches(random.whole(...wide)),
  });
  const panels = Array.from({ length: random.whole(1, 2) }, (_, index) =>
    plainPart({ name: `panel ${index}`, ...size([14, 24], [6, 9]), glueUp: random.whole(2, 3) }),
  );
  const rails = Array.from({ length: random.whole(0, 2) }, (_, index) =>
    plainPart({ name: `rail ${index}`, ...size([8, 20], [2, 3]), quantity: random.whole(1, 2) }),
  );
  const boards = Array.from({ length: random.whole(2, 3) }, (_, index) =>
    plainBoard({ name: `board ${index}`, ...size([18, 40], [4, 7]), cost: random.whole(5, 30) }),
  );
  const shop = { ...defaultShop, endTrim: inches(0), edgeTrim: inches(0) };
  return { name: 'tight', shop, parts: [...panels, ...rails], boards };
}
