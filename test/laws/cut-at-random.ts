import type { Rectangle } from '../../src/base/geometry/rectangle.ts';
import type { Seeded } from './seeded.ts';

/** What a random cutting must obey; lengths in ticks. */
export interface CuttingRules {
  readonly crosscutKerf: number;
  readonly ripKerf: number;
  readonly shortestRip: number;
  readonly stages: number | 'any';
  /** Positions of cuts are whole multiples of this from the workpiece's end or edge. */
  readonly grid: number;
  readonly leastLength: number;
  readonly leastWidth: number;
  /** Chance that a cut runs its kerf off the workpiece's end or edge, so that only one piece is left; 0 when missing. */
  readonly runOff?: number;
}

/** A workpiece on its way: `stage` is how deep the cuts that made it nest (odd crosscut, even rip, 0 untouched). */
export interface Workpiece extends Rectangle {
  readonly stage: number;
}

/** The stage a workpiece reaches by one more cut: cuts of the same kind as the last do not nest deeper. */
function stageAfter(stage: number, kind: 'crosscut' | 'rip'): number {
  if (kind === 'crosscut') return stage % 2 === 1 ? stage : stage + 1;
  if (stage === 0) return 2;
  return stage % 2 === 0 ? stage : stage + 1;
}

/** One random cut of the workpiece, or null when no cut of that kind is allowed. Nothing but the kerf is lost. */
function cutOnce(
  random: Seeded,
  piece: Workpiece,
  kind: 'crosscut' | 'rip',
  rules: CuttingRules,
): readonly Workpiece[] | null {
  const stage = stageAfter(piece.stage, kind);
  if (rules.stages !== 'any' && stage > rules.stages) return null;
  if (kind === 'rip' && piece.length < rules.shortestRip) return null;
  const crosscut = kind === 'crosscut';
  const size = crosscut ? piece.length : piece.width;
  const kerf = crosscut ? rules.crosscutKerf : rules.ripKerf;
  const least = crosscut ? rules.leastLength : rules.leastWidth;
  const part = (from: number, to: number): Workpiece =>
    crosscut
      ? { ...piece, x: piece.x + from, length: to - from, stage }
      : { ...piece, y: piece.y + from, width: to - from, stage };
  if (kerf > 0 && size - kerf >= least && random.chance(rules.runOff ?? 0)) {
    const lost = random.whole(1, kerf);
    return [random.chance(0.5) ? part(0, size - lost) : part(lost, size)];
  }
  const low = Math.ceil(least / rules.grid);
  const high = Math.floor((size - kerf - least) / rules.grid);
  if (high < low) return null;
  const first = random.whole(low, high) * rules.grid;
  return [part(0, first), part(first + kerf, size)];
}

/**
 * Cuts a plate at random, edge to edge, nothing lost but kerf, until `count` workpieces are had or no cut fits.
 * Larger workpieces are cut sooner. Returns the workpieces, which together with the kerfs fill the plate.
 */
export function cutAtRandom(
  random: Seeded,
  plate: Rectangle,
  rules: CuttingRules,
  count: number,
): Workpiece[] {
  const pieces: Workpiece[] = [{ ...plate, stage: 0 }];
  const finished: Workpiece[] = [];
  while (pieces.length > 0 && pieces.length + finished.length < count) {
    const areas = pieces.map((piece) => piece.length * piece.width);
    let aim = random.next() * areas.reduce((sum, area) => sum + area, 0);
    let index = areas.findIndex((area) => (aim -= area) < 0);
    if (index < 0) index = pieces.length - 1;
    const [piece] = pieces.splice(index, 1) as [Workpiece];
    const order = random.chance(piece.stage === 0 ? 0.7 : 0.5)
      ? (['crosscut', 'rip'] as const)
      : (['rip', 'crosscut'] as const);
    const cut = cutOnce(random, piece, order[0], rules) ?? cutOnce(random, piece, order[1], rules);
    if (cut === null) finished.push(piece);
    else pieces.push(...cut);
  }
  return [...finished, ...pieces];
}
