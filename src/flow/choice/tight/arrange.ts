import { overlaps } from '../../../base/geometry/rectangle.ts';
import type { Kind, Placement, Plate } from '../../patterns/plate.ts';
import type { Block } from './block.ts';

/** A flaw as a block sees it: where it must come to lie. */
export interface Flaw {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

export interface Bench {
  readonly plate: Plate;
  readonly kinds: readonly Kind[];
  /** By number, less the count of kinds. */
  readonly flaws: readonly Flaw[];
  /** Orders left to be tried. */
  steps: number;
}

/**
 * Lays the pieces of a pattern on the plate: at every level the parts are put in such an order that every flaw comes to lie where it
 * is. Null when no order does within the steps, or some piece would not be clear.
 * @param block the whole board; its parts are sections, theirs strips, theirs stacks
 */
export function arrange(block: Block, bench: Bench): Placement[] | null {
  const cells: { readonly block: Block; readonly x: number; readonly y: number }[] = [];
  const { plate, kinds, flaws } = bench;
  const hasFlaw = (part: Block): boolean => part.kinds.length > 0 && part.kinds.at(-1)! >= kinds.length;
  /** Puts a block at a place, all in it; false when its flaws cannot lie right. What it put down meanwhile is taken back. */
  const put = (here: Block, x: number, y: number, isAlong: boolean): boolean => {
    const before = cells.length;
    if (here.parts.length === 0) {
      if (hasFlaw(here) && !holds(here, x, y, flaws[here.kinds[0]! - kinds.length]!)) return false;
      cells.push({ block: here, x, y });
      return true;
    }
    if (inOrder([...here.parts], x, y, isAlong, -1)) return true;
    cells.length = before;
    return false;
  };
  /** Parts without flaws are put down in the order listed between those with: only which come first matters. */
  const inOrder = (left: Block[], x: number, y: number, isAlong: boolean, last: number): boolean => {
    if (left.length === 0) return true;
    const isFree = !left.some(hasFlaw);
    for (let i = 0; i < left.length; i += 1) {
      const next = left[i]!;
      const flawed = hasFlaw(next);
      if (!flawed && !isFree && i < last) continue;
      bench.steps -= 1;
      if (bench.steps < 0) return false;
      const before = cells.length;
      const rest = left.filter((_, k) => k !== i);
      if (put(next, x, y, !isAlong)) {
        const behindX = isAlong ? x + next.length : x;
        const behindY = isAlong ? y : y + next.width;
        if (inOrder(rest, behindX, behindY, isAlong, flawed ? -1 : i)) return true;
      }
      cells.length = before;
      if (isFree) return false;
    }
    return false;
  };
  if (!put(block, 0, 0, true)) return null;
  const placements: Placement[] = [];
  for (const { block: piece, x, y } of cells) {
    const kind = piece.kinds[0]!;
    if (kind >= kinds.length) continue;
    const length = piece.length - plate.crosscutKerf;
    const width = piece.width - plate.ripKerf;
    const at = { x, y, length, width };
    if (x + length > plate.length || y + width > plate.width) return null;
    const clearance = kinds[kind]!.clearances.find((c) => !plate.clearances[c]!.some((r) => overlaps(r, at)));
    if (clearance === undefined) return null;
    placements.push({ kind, clearance, ...at });
  }
  return placements;
}

/** Whether the flaw lies within the block that stands for it. */
function holds({ length, width }: Block, x: number, y: number, flaw: Flaw): boolean {
  return x <= flaw.x && y <= flaw.y && x + length >= flaw.x + flaw.length && y + width >= flaw.y + flaw.width;
}
