import { type Tick, ticks } from '../../base/units/tick.ts';
import type { PlannedLeg } from './planned-leg.ts';

/** Where the finished mantel meets a wall. */
export interface WallContact {
  readonly leg: PlannedLeg;
  /** Its back along its own wall, or an end that dies into a side wall. */
  readonly place: 'back' | 'left end' | 'right end';
  readonly gap: Tick;
}

/** Every contact with a wall: each leg's back, and the ends that die into a side wall, from left to right. */
export function wallContacts(legs: readonly PlannedLeg[]): WallContact[] {
  const none = ticks(0);
  return legs.flatMap((leg): WallContact[] => [
    ...(leg.left.kind === 'wall' ? [{ leg, place: 'left end', gap: none } as const] : []),
    { leg, place: 'back', gap: leg.gap },
    ...(leg.right.kind === 'wall' ? [{ leg, place: 'right end', gap: none } as const] : []),
  ]);
}
