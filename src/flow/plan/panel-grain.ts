import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import { deepestShortReturn, panelShape } from './panel-pieces.ts';
import type { MantelPlan } from './plan-mantel.ts';
import { wallCornerText } from './wall-corner.ts';

/** Where the grain of a leg's panels does not run on from the panels beside them, and why. */
export function grainLines({ mantel, legs, front }: MantelPlan, style: LengthStyle): string[] {
  return legs.flatMap((leg, index) => {
    const shape = panelShape(legs, index);
    if (index === front || shape.grain === 'edge-joined') return [];
    const end = index < front ? leg.right : leg.left;
    const neighbour = legs[index < front ? index + 1 : index - 1]!;
    const isLast = index === 0 || index === legs.length - 1;
    const why = (): string => {
      if (end.panelEnd === 'miter')
        return mantel.panelJoint === 'miter'
          ? 'they are mitered to each other, as asked'
          : `a wall corner of ${wallCornerText(end.turn)} is too far from square for a butt, so they are mitered`;
      if (end.turn < 0) return 'they meet in an inside corner';
      if (!isLast) return 'the leg has a corner at either end';
      return (
        `it is ${formatLengthWithUnit(shape.length, style)} long, and no return of more than ` +
        `${formatLengthWithUnit(deepestShortReturn, style)} is edge-joined with its grain across it`
      );
    };
    return [`${leg.name}: the grain of its panels runs along it, not as in ${neighbour.name}: ${why()}.`];
  });
}
