import { type Tick, ticks } from '../../base/units/tick.ts';
import { ticksUp } from '../../trade/miter.ts';
import { facingEdgeNote } from './face-joint.ts';
import type { Mantel } from './mantel.ts';
import { capOutline, facingOutline } from './outline.ts';
import type { PlanPiece } from './piece.ts';
import { type PlannedLeg, longPointLength } from './planned-leg.ts';
import { backScribe, endScribe, scribeNote } from './wall-contacts.ts';

/**
 * The boards that show, in the order one walks them: the left cap, a facing for each leg, the right cap. Each is as high as the
 * face and stands before the panels, whose edges it covers, so that only its own grain is seen from the front.
 * @param at `front`: index of the front leg; `widestBoard`: the widest at hand, null when unknown; `scribe`: left at a wall
 */
export function facingPieces(
  mantel: Mantel,
  legs: readonly PlannedLeg[],
  at: { readonly front: number; readonly widestBoard: Tick | null; readonly scribe: Tick },
): PlanPiece[] {
  const { front, widestBoard, scribe } = at;
  const glueUp = widestBoard === null ? 1 : Math.max(1, Math.ceil(mantel.faceHeight / widestBoard));
  const shared = {
    width: mantel.faceHeight,
    thickness: mantel.thickness,
    extraWidth: ticks(0),
    quality: 'clear-1',
    glueUp,
  } as const;
  const glueNote = glueUp > 1 ? ['no board is this wide: a glue line will show'] : [];
  const pieces: PlanPiece[] = legs.map((leg, index) => ({
    ...shared,
    name: `${leg.name} facing`,
    kind: 'facing',
    leg: index,
    length: ticksUp(longPointLength(leg)),
    leftEnd: leg.left.bevel,
    rightEnd: leg.right.bevel,
    show: index === front ? 3 : 2,
    extraLength: endScribe(leg, scribe),
    note: [
      ...glueNote,
      ...facingEdgeNote(mantel),
      ...insideNote(leg),
      ...scribeNote(leg, false, true, scribe),
    ].join('; '),
    outline: facingOutline(leg),
  }));
  const cap = (leg: PlannedLeg, index: number, side: 'left' | 'right'): PlanPiece => ({
    ...shared,
    name: `${side} cap`,
    kind: 'cap',
    leg: index,
    length: ticks(leg.projection - leg.gap),
    leftEnd: side === 'left' ? 0 : 45,
    rightEnd: side === 'left' ? 45 : 0,
    show: 2,
    extraLength: backScribe(leg, scribe),
    note: [...glueNote, ...facingEdgeNote(mantel), ...scribeNote(leg, true, false, scribe)].join('; '),
    outline: capOutline(leg, side),
  });
  const [first, last] = [legs[0], legs.at(-1)];
  if (first?.left.kind === 'capped') pieces.unshift(cap(first, 0, 'left'));
  if (last?.right.kind === 'capped') pieces.push(cap(last, legs.length - 1, 'right'));
  return pieces;
}

function insideNote(leg: PlannedLeg): string[] {
  const sides = [leg.left.turn < 0 ? ['left'] : [], leg.right.turn < 0 ? ['right'] : []].flat();
  return sides.length === 0
    ? []
    : [`inside corner: long point on the back at the ${sides.join(' and ')} end`];
}
