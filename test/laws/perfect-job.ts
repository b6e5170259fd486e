import { inches, ticks, ticksPerInch } from '../../src/base/units/tick.ts';
import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Defect } from '../../src/flow/stock/defect.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import { cutAtRandom } from './cut-at-random.ts';
import { plainBoard, plainPart } from './random-board.ts';
import { type Seeded, seeded } from './seeded.ts';

/** 1/16 in, the grid of all sizes. */
const sixteenth = ticksPerInch / 16;

/** Full-kerf blade both ways: equal kerfs keep the area argument below exact. */
const kerf = defaultShop.ripKerf;

const rules = {
  crosscutKerf: kerf,
  ripKerf: kerf,
  shortestRip: 6 * ticksPerInch,
  stages: 4,
  grid: sixteenth,
  leastLength: 5 * ticksPerInch,
  leastWidth: 1.5 * ticksPerInch,
} as const;

export interface PerfectJob {
  readonly job: Job;
  /** The least possible cost: all source boards and no decoy. */
  readonly sourceCost: number;
}

/** (length + kerf)(width + kerf): pieces cut from a board, kerf added on, never sum to more than the board's own. */
function grownArea(shape: { readonly length: number; readonly width: number }): number {
  return (shape.length + kerf) * (shape.width + kerf);
}

/** A defect on the piece in a place that spoils it for every quality but `any`. */
function spoil(random: Seeded, piece: Rectangle): Defect {
  const { x, y, length, width } = piece;
  return { kind: random.pick(['rot', 'loose knot', 'hole'] as const), face: 'through', x, y, length, width };
}

interface Source {
  readonly outline: { readonly length: number; readonly width: number };
  readonly pieces: readonly Rectangle[];
  readonly defects: readonly Defect[];
}

/** Shares `pieces` over the sources as evenly as goes, cuts each, and spoils a piece of some while `spare` lasts. */
function cutSources(random: Seeded, sources: number, pieces: number): Source[] {
  const outlines = Array.from({ length: sources }, () => ({
    length: random.whole(72 * 16, 132 * 16) * sixteenth,
    width: random.whole(5 * 16, 11 * 16) * sixteenth,
  }));
  // Spoiled area stays under half the smallest source, so that no source can be spared.
  let spare = Math.min(...outlines.map(grownArea)) / 2;
  return outlines.map((outline, index) => {
    const wanted = Math.floor((pieces * (index + 1)) / sources) - Math.floor((pieces * index) / sources);
    const count = wanted + (random.chance(0.6) ? 1 : 0);
    const cut: Rectangle[] = cutAtRandom(random, { x: 0, y: 0, ...outline }, rules, count);
    cut.sort((a, b) => grownArea(a) - grownArea(b));
    const defects: Defect[] = [];
    while (cut.length > wanted && grownArea(cut[0] as Rectangle) < spare) {
      const [lost] = cut.splice(0, 1) as [Rectangle];
      spare -= grownArea(lost);
      defects.push(spoil(random, lost));
    }
    return { outline, pieces: cut, defects };
  });
}

/** Pieces of equal size become one part with a quantity; names are in the order of size, so they tell nothing. */
function partsOf(pieces: readonly Rectangle[]): Part[] {
  const counts = new Map<string, { length: number; width: number; count: number }>();
  for (const { length, width } of pieces) {
    const entry = counts.get(`${length} ${width}`) ?? { length, width, count: 0 };
    entry.count += 1;
    counts.set(`${length} ${width}`, entry);
  }
  const kinds = [...counts.values()].sort((a, b) => b.length - a.length || b.width - a.width);
  return kinds.map(({ length, width, count }, index) =>
    plainPart({ name: `part ${index + 1}`, length, width, quantity: count }),
  );
}

/**
 * A job whose optimum is known by construction: `sources` boards cut at random (edge to edge, 4 stages,
 * all trims 0) into about `pieces` pieces, so that nothing but kerf and marked defects is lost, with
 * `decoys` dearer boards beside them, all shuffled. Deterministic in the seed.
 *
 * Why `sourceCost` is least: write E for grown area (`grownArea`), D for the spoiled E. The pieces' E is
 * E(sources) − D, and a set of boards S can hold them only if E(S) ≥ E(sources) − D.
 * D is less than half the smallest source, so without a decoy S is all sources. Sources cost p·E, decoys
 * p·(1 + q)·E with q·E(smallest decoy) > D + rounding, so with a decoy S costs p·E(S) + p·q·E(decoys of S)
 * > p·(E(sources) − D) + p·D.
 */
export function perfectJob(given: {
  readonly seed: number;
  readonly sources: number;
  readonly pieces: number;
  readonly decoys: number;
}): PerfectJob {
  const random = seeded(given.seed);
  const sources = cutSources(random, given.sources, given.pieces);
  const lost = sources
    .flatMap((source) => source.defects)
    .reduce((sum, defect) => sum + grownArea(defect), 0);
  const decoys = Array.from({ length: given.decoys }, () => ({
    length: random.whole(72 * 16, 144 * 16) * sixteenth,
    width: random.whole(5 * 16, 12 * 16) * sixteenth,
  }));
  const perInch = 0.1 / ticksPerInch ** 2;
  const cents = (money: number): number => Math.round(money * 100) / 100;
  const leastDecoy = Math.min(...decoys.map(grownArea));
  const dearer = 1 + (1.05 * lost) / leastDecoy + 0.05;
  const made: Omit<Board, 'name'>[] = [
    ...sources.map(({ outline, defects }) => ({
      ...plainBoard({ name: '', ...outline }),
      defects,
      cost: cents(grownArea(outline) * perInch),
    })),
    ...decoys.map((outline) => ({
      ...plainBoard({ name: '', ...outline }),
      cost: cents(grownArea(outline) * perInch * dearer * (1 + 0.3 * random.next())),
    })),
  ];
  const sourceCost = cents(made.slice(0, given.sources).reduce((sum, board) => sum + board.cost, 0));
  const boards = made
    .map((board) => ({ board, key: random.next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ board }, index) => ({ ...board, name: `board ${index + 1}` }));
  const shop = {
    ...defaultShop,
    ripKerf: kerf,
    crosscutKerf: kerf,
    endTrim: ticks(0),
    edgeTrim: ticks(0),
    shortestRip: inches(6),
    shortestPiece: ticks(0),
  };
  const parts = partsOf(sources.flatMap((source) => source.pieces));
  return { job: { name: `perfect ${given.seed}`, shop, parts, boards }, sourceCost };
}
