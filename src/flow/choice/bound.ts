import { type Rectangle, overlaps } from '../../base/geometry/rectangle.ts';
import { blockedForAll, grownArea, leastClaim } from './areas.ts';
import { wholeRest } from './generate.ts';
import type { Instance, StockGroup } from './instance.ts';
import { dueFor } from './wanted.ts';

/** One kind of board as a knapsack sees it. */
interface Cover {
  readonly copies: number;
  readonly cost: number;
  readonly area: number;
}

/** Most nodes of the knapsack search, and most boards looked at in all of them; beyond it the continuous relaxation stands. */
const mostNodes = 200_000;
const mostLooks = 1e8;

/** A board of the knapsack, and what is still wanted and was spent before it. */
interface Node {
  readonly from: number;
  readonly wanted: number;
  readonly spent: number;
}

/**
 * Least cost of boards whose areas sum to at least `need`: branch and bound, boards by cost per area, each node
 * bounded by the continuous relaxation of what follows. Exact unless the nodes run out; a lower bound always. The open
 * nodes are a list and not calls within calls: of thousands of boards these would be too many.
 */
function leastCover(covers: readonly Cover[], need: number): number {
  const sorted = [...covers].sort((a, b) => a.cost / a.area - b.cost / b.area);
  let looks = 0;
  const relaxed = (from: number, wanted: number): number => {
    let cost = 0;
    let i = from;
    for (; i < sorted.length && wanted > 0; i += 1) {
      const { copies, area, cost: each } = sorted[i]!;
      const take = Math.min(copies, wanted / area);
      cost += take * each;
      wanted -= take * area;
    }
    looks += i - from;
    return wanted > 1e-9 * need ? Infinity : cost;
  };
  let best = Infinity;
  let nodes = 0;
  const open: Node[] = [{ from: 0, wanted: need, spent: 0 }];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    const { from, wanted, spent } = node;
    nodes += 1;
    if (nodes > mostNodes || looks > mostLooks) return relaxed(0, need);
    if (wanted <= 1e-9 * need) {
      best = Math.min(best, spent);
      continue;
    }
    if (spent + relaxed(from, wanted) >= best - 1e-9) continue;
    const { copies, area, cost } = sorted[from]!;
    // The last one put on the list is the first to be looked at: with as many copies as are of use.
    for (let take = 0; take <= Math.min(copies, Math.ceil(wanted / area)); take += 1) {
      open.push({ from: from + 1, wanted: wanted - take * area, spent: spent + take * cost });
    }
  }
  return best;
}

/**
 * Area of the plate that no piece can claim: rectangles blocked under every clearance, less a kerf each way, since
 * the kerf beside a piece may lie over a defect. Of overlapping rectangles only one counts.
 */
export function lostArea(group: StockGroup): number {
  const { plate } = group;
  const counted: Rectangle[] = [];
  for (const r of blockedForAll(group)) {
    const x = Math.max(0, r.x + plate.crosscutKerf);
    const y = Math.max(0, r.y + plate.ripKerf);
    const length = Math.min(plate.length, r.x + r.length) - x;
    const width = Math.min(plate.width, r.y + r.width) - y;
    const lost = { x, y, length, width };
    if (length > 0 && width > 0 && !counted.some((other) => overlaps(other, lost))) counted.push(lost);
  }
  return counted.reduce((sum, { length, width }) => sum + length * width, 0);
}

/**
 * A bound from areas alone: the least cost of boards whose usable area, grown by a kerf each way and less what
 * defects take, holds the pieces' areas, grown likewise. Each piece with the kerf beside it claims
 * (length + kerf)(width + kerf) of the grown board, and no two claims overlap. Of copies that may be made in several ways each
 * claims what it does in the smallest.
 * Needs no pattern at all; valid only when every piece must be laid out (`least cost`, nothing short).
 */
export function areaBound(instance: Instance): number {
  const first = instance.groups[0];
  if (first === undefined) return 0;
  const areas = Float64Array.from(instance.kinds, (kind) => leastClaim(first, kind));
  const whole = wholeRest(instance);
  const need = dueFor(instance, whole, areas);
  const covers = instance.groups
    .filter((group) => group.plate.length > 0 && group.plate.width > 0)
    .map((group) => ({
      copies: group.copies,
      cost: group.cost,
      area: grownArea(group, group.plate) - lostArea(group),
    }));
  const cost = leastCover(covers, need);
  const claims = Float64Array.from(instance.kinds, (_, k) =>
    instance.groups.reduce((least, group) => Math.min(least, group.claims[k]!), Infinity),
  );
  return cost === Infinity ? 0 : cost + dueFor(instance, whole, claims);
}
