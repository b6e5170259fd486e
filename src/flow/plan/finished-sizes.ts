import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import { type Tick, ticks } from '../../base/units/tick.ts';
import { backPath, outerPath } from './outline.ts';
import type { MantelPlan } from './plan-mantel.ts';
import { type PlannedLeg, outerLength } from './planned-leg.ts';
import { sideWallText } from './wall-corner.ts';
import { wallContacts } from './wall-contacts.ts';

/** The finished mantel's own extent seen from above, along the front and square to it, ticks. */
export function overallSize({ legs }: Pick<MantelPlan, 'legs'>): {
  readonly wide: Tick;
  readonly deep: Tick;
} {
  const points = [...backPath(legs), ...outerPath(legs)];
  const span = (values: readonly number[]): Tick =>
    ticks(Math.round(Math.max(...values) - Math.min(...values)));
  return { wide: span(points.map(({ x }) => x)), deep: span(points.map(({ y }) => y)) };
}

/** What the finished mantel measures: overall, and leg by leg its face, how far it stands off, and where it ends. */
export function finishedLines(plan: MantelPlan, style: LengthStyle): string[] {
  const size = (length: number): string => formatLengthWithUnit(ticks(Math.round(length)), style);
  const { wide, deep } = overallSize(plan);
  const { legs, mantel } = plan;
  return [
    `Overall, seen from above: ${size(wide)} along the front, ${size(deep)} square to it; ${size(mantel.faceHeight)} high.`,
    ...legs.map((leg, index) => {
      const face = `${leg.name}: face ${size(outerLength(leg))} long, ${size(leg.projection)} off the wall`;
      const ends = (['left', 'right'] as const).flatMap((side) => {
        const isFree = side === 'left' ? index === 0 : index === legs.length - 1;
        return isFree ? [`the ${side} end ${endWords(leg, side)}`] : [];
      });
      if (ends.length === 0) return `${face}.`;
      const where = ends.length === 1 ? 'from the wall corner' : 'from one to the other along the wall';
      return `${face}; ${ends.join(', ')}, ${size(leg.alongWall)} ${where}.`;
    }),
  ];
}

function endWords(leg: PlannedLeg, side: 'left' | 'right'): string {
  switch (leg[side].kind) {
    case 'capped':
      return 'stops free, its cap included';
    case 'wall':
      return 'dies into the side wall';
    default:
      return 'stops open';
  }
}

/** The gap at each wall contact, and how the wood is cut there. */
export function contactLines(plan: MantelPlan, style: LengthStyle): string[] {
  const size = (length: Tick): string => formatLengthWithUnit(length, style);
  return wallContacts(plan.legs, plan.room).map(({ leg, place, gap, scribe }) => {
    const left = scribe > 0 ? `; blanks ${size(scribe)} over-size there, to be scribed` : '';
    if (place === 'back')
      return gap > 0
        ? `${leg.name}, back: gap ${size(gap)} along its wall, so that the box slips over the breast.`
        : `${leg.name}, back: no gap${left}.`;
    const { bevel } = place === 'left end' ? leg.left : leg.right;
    return `${leg.name}, ${place}: no gap, wall ${sideWallText(bevel)}${left}.`;
  });
}
