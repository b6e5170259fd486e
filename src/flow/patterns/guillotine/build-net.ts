import type { Kind, Plate } from '../plate.ts';
import type { Axis } from './axis.ts';
import type { Clearances } from './clearance.ts';
import { clearancesOn } from './clearance.ts';
import type { NetLimits } from './directions.ts';
import { choosePoints, direction, isPlaced } from './directions.ts';
import { leavesOf } from './leaves.ts';
import type { Net } from './net.ts';
import { anyCut, noCut, wasteOnly } from './net.ts';

/** The net to cut patterns from, and, where points had to be left out, one whose value is a bound. */
export interface NetPair {
  readonly pattern: Net;
  /** The same net when nothing was left out. */
  readonly bound: Net;
  /** Everything may lie anywhere and every workpiece may be cut either way. */
  readonly isPlain: boolean;
}

/**
 * Chooses the points and builds the axes.
 * @param trim whether a last cut that only frees a piece of waste counts as no stage (stages limited only)
 * @returns null when no kind can lie on the plate
 */
export function buildNets(
  plate: Plate,
  kinds: readonly Kind[],
  limits: NetLimits,
  trim: boolean,
): NetPair | null {
  const clearances = clearancesOn(plate, kinds);
  const shapes = kinds.flatMap((kind, index) =>
    clearances.freeOf[index]! < 0 && clearances.ofKind[index]!.length === 0
      ? []
      : kind.shapes.filter((shape) => shape.length <= plate.length && shape.width <= plate.width),
  );
  if (shapes.length === 0) return null;
  const placed = isPlaced(clearances);
  const build = (
    asked: Plate,
    side: 'pattern' | 'bound',
  ): { net: Net; complete: boolean; exact: boolean } => {
    const along = direction(asked, shapes, clearances, 'length');
    const across = direction(asked, shapes, clearances, 'width');
    const chosen = choosePoints(along, across, placed, asked.stages, limits);
    const columns = chosen.axis(along, chosen.along, side);
    const rows = chosen.axis(across, chosen.across, side);
    const net = assemble(asked, kinds, clearances, { columns, rows, placed, trim }, side);
    return { net, complete: chosen.complete, exact: across.exact };
  };
  const pattern = build(plate, 'pattern');
  const isPlain = !placed && !pattern.exact && plate.stages === 'any';
  if (pattern.complete) return { pattern: pattern.net, bound: pattern.net, isPlain };
  // Deeper nesting and shorter rips only raise the bound, and leave room for more points in one level.
  const bound = build({ ...plate, stages: 'any', shortestRip: 0 }, 'bound');
  return { pattern: pattern.net, bound: bound.net, isPlain };
}

function assemble(
  plate: Plate,
  kinds: readonly Kind[],
  clearances: Clearances,
  shape: { columns: Axis; rows: Axis; placed: boolean; trim: boolean },
  side: 'pattern' | 'bound',
): Net {
  const { columns, rows, placed, trim } = shape;
  const levels = plate.stages === 'any' ? 1 : plate.stages + 1;
  const crosscuts = new Uint8Array(levels);
  const rips = new Uint8Array(levels);
  if (plate.stages === 'any') {
    crosscuts[0] = anyCut;
    rips[0] = anyCut;
  } else {
    crosscuts[0] = trim ? wasteOnly : noCut;
    rips[0] = trim ? wasteOnly : noCut;
    for (let level = 1; level < levels; level++) {
      const isCrosscut = (plate.stages - level) % 2 === 0;
      crosscuts[level] = isCrosscut ? anyCut : noCut;
      rips[level] = isCrosscut ? noCut : anyCut;
    }
  }
  const ripFrom = plate.shortestRip > 0 ? plate.shortestRip + plate.crosscutKerf : 0;
  const { crosscutKerf, ripKerf } = plate;
  const bare = { columns, rows, levels, crosscuts, rips, ripFrom, crosscutKerf, ripKerf, placed };
  return { ...bare, leaves: leavesOf(bare, kinds, clearances, side) };
}
