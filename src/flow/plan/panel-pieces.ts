import { type Tick, inches } from '../../base/units/tick.ts';
import { ticksUp } from '../../trade/miter.ts';
import { angleText } from './angle-text.ts';
import { faceBevel, meetsFace, panelEdgeNote } from './face-joint.ts';
import type { Mantel } from './mantel.ts';
import { panelCorners, panelOutline } from './outline.ts';
import type { PlanPiece } from './piece.ts';
import { type PlannedLeg, panelEdges } from './planned-leg.ts';
import { backScribe, endScribe, scribeNote } from './wall-contacts.ts';
import { turnBy } from './turn.ts';

/** Strips narrower than this make a fussy panel; wider ones tend to cup. Common practice, no source. */
const comfortableStrip = inches(4);
/**
 * A return no deeper than this is a short one. By the measurements alone, so that boards bought later never make other parts:
 * a panel may be glued up of as many strips as it needs. Common practice, no source.
 */
export const deepestShortReturn = inches(10);

/** How a leg's panels are made. `edge-joined`: their grain runs along the front, to whose back edge they are glued. */
export type PanelGrain = 'along the leg' | 'edge-joined';

interface PanelShape {
  readonly length: Tick;
  readonly width: Tick;
  readonly grain: PanelGrain;
}

/**
 * Top and bottom panels. With butted long edges they lie behind the facing and between it and the wall (or the gap along it), flush with the facing's
 * edges, so their width is the leg's depth less the gap; with mitered ones they reach the facing's outer face.
 * A short return (an end leg round an outside corner, no deeper than `deepestShortReturn`) has its grain parallel with
 * the leg it is joined to and is edge-joined to it, so that the whole top moves as one; a longer one keeps its own grain.
 * Where the maker asks for mitered panels, short returns are mitered too.
 */
export function panelPieces(mantel: Mantel, legs: readonly PlannedLeg[], scribe: Tick): PlanPiece[] {
  const kinds = mantel.bottom === 'closed' ? (['top', 'bottom'] as const) : (['top'] as const);
  return kinds.flatMap((kind) =>
    legs.map((leg, index): PlanPiece => {
      const shape = panelShape(legs, index);
      const [ends, back] = [endScribe(leg, scribe), backScribe(leg, scribe)];
      const isAlong = shape.grain === 'along the leg';
      return {
        name: `${leg.name} ${kind}`,
        kind,
        leg: index,
        length: shape.length,
        width: shape.width,
        thickness: mantel.thickness,
        ...panelBevels(mantel, legs, index, shape.grain),
        extraLength: isAlong ? ends : back,
        extraWidth: isAlong ? back : ends,
        quality: 'clear-1',
        show: 1,
        glueUp: Math.max(1, Math.ceil(shape.width / comfortableStrip)),
        note: [
          ...panelNote(legs, index, shape.grain, kind),
          ...panelEdgeNote(mantel, leg),
          ...scribeNote(leg, true, true, scribe),
        ].join('; '),
        outline: panelOutline(leg),
      };
    }),
  );
}

/** Bevels at the ends of a panel, along its own grain: where they meet a facing or cap and the long edges are mitered. */
function panelBevels(
  { faceJoint }: Mantel,
  legs: readonly PlannedLeg[],
  index: number,
  grain: PanelGrain,
): { readonly leftEnd: number; readonly rightEnd: number } {
  const bevel = (isBeveled: boolean): number => (isBeveled && faceJoint === 'miter' ? faceBevel : 0);
  const leg = legs[index]!;
  // Across its leg a short return's outer end lies at its own facing.
  if (grain === 'edge-joined') return { leftEnd: bevel(index === 0), rightEnd: bevel(index > 0) };
  return { leftEnd: bevel(meetsFace(leg, 'left')), rightEnd: bevel(meetsFace(leg, 'right')) };
}

/** The blank of a leg's panel and the way of its grain. */
export function panelShape(legs: readonly PlannedLeg[], index: number): PanelShape {
  const leg = legs[index]!;
  const corners = panelCorners(leg);
  const turn = shortReturnTurn(legs, index);
  if (turn !== null) {
    const joined = extent(corners, turn);
    if (joined.width <= deepestShortReturn) return { ...joined, grain: 'edge-joined' };
  }
  return { ...extent(corners, 0), grain: 'along the leg' };
}

/** Degrees between an end leg and the leg its panel butts against, when it may be a short return. */
function shortReturnTurn(legs: readonly PlannedLeg[], index: number): number | null {
  const leg = legs[index]!;
  if (index === 0 && leg.right.panelEnd === 'butts' && leg.right.turn > 0) return leg.right.turn;
  if (index === legs.length - 1 && leg.left.panelEnd === 'butts' && leg.left.turn > 0) return -leg.left.turn;
  return null;
}

/** Length and width of the rectangle that holds the panel, its length turned by so many degrees from the leg. */
function extent(
  corners: readonly (readonly [along: number, off: number])[],
  turn: number,
): { length: Tick; width: Tick } {
  const { sin, cos } = turnBy(turn);
  const span = (values: readonly number[]): Tick => ticksUp(Math.max(...values) - Math.min(...values));
  return {
    length: span(corners.map(([along, off]) => along * cos - off * sin)),
    width: span(corners.map(([along, off]) => along * sin + off * cos)),
  };
}

/** Degrees a panel's end is cut off square, seen from above; positive when its front edge is the longer. */
export function panelAngle(leg: PlannedLeg, side: 'left' | 'right'): number {
  const { panel, bend } = leg[side];
  const { atBack } = panel;
  const { back } = panelEdges(leg);
  const [atFront, front] = bend === undefined ? [panel.atFront, leg.panelFront] : [bend, leg.depth];
  return (Math.atan2(atFront - atBack, front - back) * 180) / Math.PI;
}

function panelNote(
  legs: readonly PlannedLeg[],
  index: number,
  grain: PanelGrain,
  kind: 'top' | 'bottom',
): string[] {
  const leg = legs[index]!;
  const notes: string[] = [];
  if (grain === 'edge-joined') {
    const neighbour = legs[index === 0 ? 1 : index - 1]!;
    notes.push(`grain along the ${neighbour.name}, edge-joined to the back of ${neighbour.name} ${kind}`);
  }
  for (const side of ['left', 'right'] as const) {
    const angle = panelAngle(leg, side);
    if (Math.abs(angle) < 0.05) continue;
    const what = leg[side].panelEnd === 'miter' ? 'mitered' : 'cut';
    notes.push(
      `${side} end ${what} ${angleText(angle)} across its width, long point at the ${angle > 0 ? 'front' : 'wall'}` +
        (leg[side].bend === undefined
          ? ''
          : `, through its beveled edge at the facing's ${angleText(leg[side].bevel)}`),
    );
  }
  return notes;
}
