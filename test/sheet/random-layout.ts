import { inches, millimetres, ticks } from '../../src/base/units/tick.ts';
import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import type { LaidBoard } from '../../src/flow/cuts/layout.ts';
import { defaultShop, type Shop } from '../../src/flow/shop/shop.ts';
import { defectKinds } from '../../src/flow/stock/defect.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Job } from '../../src/flow/stock/job.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import { Saw } from './saw.ts';
import { boardOf, partOf } from './stock-of.ts';

/** A small generator of chance numbers that gives the same ones for the same seed (a linear congruence). */
function chance(seed: number): (below: number) => number {
  let state = (seed * 2654435761) >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const words = [
  'top',
  'left return facing',
  'cleat',
  'x',
  'inner corner block, upper',
  'shelf',
  'plug',
  'front bottom panel',
];

/** One board cut at random, deep and small, with flaws at random: for looking at labels, not at yield. */
export function randomBoard(seed: number): { job: Job; laid: LaidBoard } {
  const pick = chance(seed);
  const isMetric = pick(3) === 0;
  const unit = (value: number): number => (isMetric ? millimetres(value * 25) : inches(value));
  const shop: Shop = { ...defaultShop, units: isMetric ? 'mm' : 'in' };
  const length = ticks(unit(20 + pick(173)));
  const width = ticks(unit(3 + pick(40) / 4));
  const defects = Array.from({ length: pick(7) }, () => {
    const [w, h] = [unit((1 + pick(48)) / 4), unit((1 + pick(10)) / 4)];
    const kind = defectKinds[pick(defectKinds.length)] ?? 'stain';
    const face = (['A', 'B', 'through'] as const)[pick(3)] ?? 'A';
    const [x, y] = [pick(Math.max(1, length - w)), pick(Math.max(1, width - h))];
    return { kind, face, x, y, length: Math.min(w, length - x), width: Math.min(h, width - y) };
  });
  const surface = (['rough', 'S2S', 'S3S', 'S4S'] as const)[pick(4)] ?? 'rough';
  const board: Board = boardOf(`board ${seed}`, length, width, { defects, surface });
  const saw = new Saw(board, shop);
  const parts = new Map<string, Part>();
  const least = unit(0.75);
  const cutUp = (work: Rectangle, depth: number, isCrosscut: boolean): void => {
    const extent = isCrosscut ? work.length : work.width;
    const kerf = isCrosscut ? shop.crosscutKerf : shop.ripKerf;
    if (depth === 0 || pick(5) === 0 || extent < 2 * least + kerf) return settle(work);
    const size = Math.floor(least + ((extent - 2 * least - kerf) * pick(1000)) / 1000);
    const { part, rest } = isCrosscut ? saw.crosscut(work, size) : saw.rip(work, size);
    const again = pick(2) === 0;
    cutUp(part, depth - 1, again ? isCrosscut : !isCrosscut);
    cutUp(rest, depth - 1, again ? isCrosscut : !isCrosscut);
  };
  const settle = (where: Rectangle): void => {
    const fate = pick(8);
    if (fate === 0) return;
    if (fate === 1) return saw.keep(where, `board ${seed}-${saw.offcuts.length}`);
    const name = `${words[pick(words.length)] ?? 'x'} ${parts.size + 1}`;
    const ends = pick(4) === 0 ? { leftEnd: 45, rightEnd: [0, 22.5, 45][pick(3)] ?? 0 } : {};
    parts.set(name, partOf(name, 1 + pick(3), ticks(where.length), ticks(where.width), ends));
    const strip = pick(5) === 0 ? { strip: { index: pick(2), of: 2 } } : {};
    saw.piece(where, name, 1, ([null, 'A', 'B'] as const)[pick(3)] ?? null, strip);
  };
  cutUp(saw.trimmed(), 2 + pick(5), true);
  return {
    job: { name: `random ${seed}`, shop, parts: [...parts.values()], boards: [board] },
    laid: saw.done(),
  };
}
