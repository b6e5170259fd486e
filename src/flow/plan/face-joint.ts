import type { Mantel } from './mantel.ts';
import type { PlannedLeg } from './planned-leg.ts';

/** Degrees that the long edges of facing, top and bottom are beveled at, where they are mitered. */
export const faceBevel = 45;

/** Whether a panel's end meets the inside of a facing or cap, and so is beveled like its long edge where those are mitered. */
export function meetsFace(leg: PlannedLeg, side: 'left' | 'right'): boolean {
  const { kind, panelEnd, turn } = leg[side];
  return kind === 'capped' || (panelEnd === 'runs on' && turn > 0);
}

/** How the long edges of a facing or cap are cut. */
export function facingEdgeNote({ faceJoint, bottom }: Mantel): string[] {
  if (faceJoint === 'butt') return [];
  const edges = bottom === 'closed' ? 'top and bottom edges' : 'top edge';
  return [`${edges} beveled ${faceBevel}°, long point on the show face`];
}

/** Which edges of a leg's panels are beveled to facing and caps. */
export function panelEdgeNote({ faceJoint }: Mantel, leg: PlannedLeg): string[] {
  if (faceJoint === 'butt') return [];
  const ends = (['left', 'right'] as const).filter((side) => meetsFace(leg, side));
  const places = ['edge at the facing', ...ends.map((side) => `${side} end of the leg`)];
  return [`beveled ${faceBevel}° at the ${places.join(' and the ')}, long point on the show face`];
}

/** How the mitered long edges are cut and glued, for the report. */
export function faceJointLines({ faceJoint, bottom }: Mantel): string[] {
  if (faceJoint === 'butt') return [];
  const panels = bottom === 'closed' ? 'top and bottom' : 'top';
  return [
    `Long edges of facing and ${panels}: saw ${faceBevel}°, show face up, so that the long points lie on the show faces; with ` +
      'every panel end that meets a facing or cap. Cut them after gluing up and trimming to width, before the ends.',
    'To glue them, lay facing and panel show face up, long points touching, and tape along the joint; turn both over, glue, fold ' +
      'them up against a square block every foot or so, and clamp lightly. Try it dry first: a square block glued to a board, ' +
      'its outer corner cut off so that no glue holds it, is all the jig it takes.',
  ];
}
