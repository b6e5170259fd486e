import { type Tick, ticks } from '../../base/units/tick.ts';
import type { PlannedLeg } from './planned-leg.ts';

/** What is left free at the walls, and what is left on the wood there, ticks. */
export interface WallRoom {
  /** Along each side of the breast. */
  readonly fitGap: Tick;
  /** On a blank that meets a wall without a gap. */
  readonly scribe: Tick;
}

/** A mantel without a gap and nothing to scribe. */
export const noRoom: WallRoom = { fitGap: ticks(0), scribe: ticks(0) };

/** Where the finished mantel meets a wall. */
export interface WallContact {
  readonly leg: PlannedLeg;
  /** Its back along its own wall, or an end that dies into a side wall. */
  readonly place: 'back' | 'left end' | 'right end';
  readonly gap: Tick;
  /** Left on the blanks there. */
  readonly scribe: Tick;
}

/** Every contact with a wall: each leg's back, and the ends that die into a side wall, from left to right. */
export function wallContacts(legs: readonly PlannedLeg[], { scribe }: WallRoom): WallContact[] {
  return legs.flatMap((leg): WallContact[] => {
    const end = (side: 'left' | 'right'): WallContact[] =>
      leg[side].kind === 'wall' ? [{ leg, place: `${side} end`, gap: ticks(0), scribe }] : [];
    return [
      ...end('left'),
      { leg, place: 'back', gap: leg.gap, scribe: backScribe(leg, scribe) },
      ...end('right'),
    ];
  });
}

/** What is left on the back edges along a leg's wall: nothing where there is a gap. */
export function backScribe({ gap }: Pick<PlannedLeg, 'gap'>, scribe: Tick): Tick {
  return gap > 0 ? ticks(0) : scribe;
}

/** What is left on a leg's length at both its ends together: where they die into a side wall. */
export function endScribe({ left, right }: Pick<PlannedLeg, 'left' | 'right'>, scribe: Tick): Tick {
  return ticks([left, right].filter(({ kind }) => kind === 'wall').length * scribe);
}

/** Where a blank is larger than its piece, to be scribed. */
export function scribeNote(leg: PlannedLeg, back: boolean, ends: boolean, scribe: Tick): string[] {
  if (scribe === 0) return [];
  const sides = (['left', 'right'] as const).filter((side) => ends && leg[side].kind === 'wall');
  const places = [...sides.map((side) => `${side} end`), ...(back && leg.gap === 0 ? ['back'] : [])];
  return places.length === 0
    ? []
    : [`blank over-size at the ${places.join(' and the ')}, to scribe to the wall`];
}
