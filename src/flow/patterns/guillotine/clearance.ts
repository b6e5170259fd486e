import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import { overlaps } from '../../../base/geometry/rectangle.ts';
import type { Kind, Plate } from '../plate.ts';

/** What the kinds must avoid on the plate, brought down to what matters. */
export interface Clearances {
  /** For each kind, the clearances (indices of the plate's) that something on the plate may spoil; empty: lies anywhere. */
  readonly ofKind: readonly (readonly number[])[];
  /** For each kind, a clearance that nothing spoils, or -1. */
  readonly freeOf: readonly number[];
  /** The blocks of each of the plate's clearances that lie on the plate. */
  readonly blocks: readonly (readonly Rectangle[])[];
}

/** Sorts the clearances of each kind: one that has no block on the plate frees the kind from all others. */
export function clearancesOn(plate: Plate, kinds: readonly Kind[]): Clearances {
  const whole = { x: 0, y: 0, length: plate.length, width: plate.width };
  const blocks = plate.clearances.map((list) =>
    list.filter((block) => block.length > 0 && block.width > 0 && overlaps(block, whole)),
  );
  const freeOf = kinds.map(
    (kind) => kind.clearances.find((clearance) => blocks[clearance]?.length === 0) ?? -1,
  );
  const ofKind = kinds.map((kind, index) =>
    freeOf[index]! >= 0 ? [] : kind.clearances.filter((clearance) => blocks[clearance] !== undefined),
  );
  return { ofKind, freeOf, blocks };
}
