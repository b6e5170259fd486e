import { type Markup, svg } from '../../../base/markup/element.ts';
import { type Outline, wallPath } from '../outline.ts';
import type { MantelPlan } from '../plan-mantel.ts';
import type { LegEnd } from '../planned-leg.ts';
import { pointOf } from '../point.ts';
import { hatched } from './hatching.ts';
import { type Paper, closedPath, openPath } from './paper.ts';

/** Drawing units: how deep the wall is hatched, and how far a side wall goes on past the face of the mantel. */
export const wallBand = 60;
const sideWallPast = 50;
const pastEnd = 40;

/** A hatched band along the walls, the side walls that the mantel runs into, and their faces as heavy lines. */
export function wallBands(plan: MantelPlan, paper: Paper): Markup {
  const path = extended(plan, paper, 0);
  const sides = [sideWall(plan, paper, 'left'), sideWall(plan, paper, 'right')].filter(
    (side) => side !== null,
  );
  const area = (outline: Outline): Markup =>
    svg('path', { d: closedPath(paper, outline), fill: hatched('plan', 'wall'), stroke: 'none' });
  const face = (line: Outline): Markup =>
    svg('path', { d: openPath(paper, line), fill: 'none', stroke: '#000', 'stroke-width': 6 });
  return svg(
    'g',
    { 'aria-label': 'wall' },
    area([...path, ...backOf(plan, paper)]),
    sides.map(({ outline }) => area(outline)),
    face(path),
    sides.map((side) => face(side.face)),
  );
}

/** A wall goes on past an end that no side wall closes. */
function extended({ legs }: MantelPlan, paper: Paper, off: number): Outline {
  const [first, last] = [legs[0]!, legs.at(-1)!];
  const on = (end: LegEnd): number => (end.kind === 'wall' ? 0 : pastEnd * paper.unit);
  const path = wallPath(legs);
  return [
    pointOf(first.frame, -on(first.left), off),
    ...path.slice(1, -1),
    pointOf(last.frame, last.alongWall + on(last.right), off),
  ];
}

/** The back of the band from right to left, parallel with the wall's face, mitered at the corners. */
function backOf(plan: MantelPlan, paper: Paper): Outline {
  const { legs } = plan;
  const deep = wallBand * paper.unit;
  const shy = (turn: number | undefined): number =>
    turn === undefined ? 0 : deep * Math.tan((turn * Math.PI) / 360);
  const back = legs.flatMap((leg, index) => {
    const next = index < legs.length - 1 ? leg.right.turn : undefined;
    return [
      pointOf(leg.frame, shy(legs[index - 1]?.right.turn), -deep),
      pointOf(leg.frame, leg.alongWall - shy(next), -deep),
    ];
  });
  const ends = extended(plan, paper, -deep);
  return [ends.at(-1)!, ...back.slice(1, -1).reverse(), ends[0]!];
}

/** The wall that an end of kind `wall` runs into. */
function sideWall(
  { legs }: MantelPlan,
  paper: Paper,
  side: 'left' | 'right',
): { outline: Outline; face: Outline } | null {
  const leg = side === 'left' ? legs[0]! : legs.at(-1)!;
  if (leg[side].kind !== 'wall') return null;
  const deep = wallBand * paper.unit;
  const near = side === 'left' ? 0 : leg.alongWall;
  const far = side === 'left' ? -deep : leg.alongWall + deep;
  const out = leg.projection + sideWallPast * paper.unit;
  // Out of square it leans away from the leg, or over it.
  const lean = Math.tan((leg[side].bevel * Math.PI) / 180) * (side === 'left' ? -1 : 1);
  const at = (along: number, off: number) => pointOf(leg.frame, along + off * lean, off);
  return {
    outline: [at(near, -deep), at(far, -deep), at(far, out), at(near, out)],
    face: [at(near, 0), at(near, out)],
  };
}
