import { blankOf, partWithBlank } from '../../parts/blank.ts';
import type { Part } from '../../parts/part.ts';
import type { Job } from '../../stock/job.ts';
import type { WayToMake } from './way-to-make.ts';

/**
 * No part is divided finer for the bound: of the demo's job six pieces bounded no better than two, after twenty times the
 * work.
 */
const mostPieces = 2;

/**
 * What every way to make a part has in it: m narrow pieces of its length. A bound on layouts with these instead of the
 * part is a bound on all layouts, however the part is made, since each of them becomes such a layout by ripping:
 *
 *   k strips, each w_k wide, hold m pieces of width c when each holds ⌈m / k⌉ of them, kerfs between:
 *   ⌈m / k⌉ (c + kerf) − kerf ≤ w_k,  so  c = min over k of ⌊(w_k + kerf) / ⌈m / k⌉⌋ − kerf,
 *
 * m chosen so that m c is largest. Ripping a piece once more is allowed where stages are 4 or more, the grain runs along
 * and the piece is long enough to rip; else nothing is in common, and the part is left out.
 */
export function corePart(job: Job, part: Part, ways: readonly WayToMake[]): Part {
  const { shop } = job;
  const nothing = { ...part, quantity: 0 };
  const mayRip = (shop.stages === 'any' || shop.stages >= 4) && part.grain === 'along';
  if (!mayRip || blankOf(part, shop, 1).length < shop.shortestRip) return nothing;
  let best = { pieces: 0, width: 0 };
  for (let pieces = 1; pieces <= mostPieces; pieces += 1) {
    const widths = ways.map(({ strips }) => {
      const each = Math.ceil(pieces / strips);
      return Math.floor((blankOf(part, shop, strips).width + shop.ripKerf) / each) - shop.ripKerf;
    });
    const width = Math.min(...widths);
    if (width > 0 && pieces * width > best.pieces * best.width) best = { pieces, width };
  }
  const { length } = blankOf(part, shop, 1);
  const core = partWithBlank(part, shop, { length, width: best.width });
  if (core.width <= 0) return nothing;
  const value = part.value ?? (part.length * part.width) / 8128 ** 2;
  return {
    ...core,
    quantity: part.quantity * best.pieces,
    value: value / best.pieces,
  };
}
