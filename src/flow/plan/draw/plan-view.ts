import { type LengthStyle, formatLengthWithUnit } from '../../../base/units/format-length.ts';
import { type Tick, inches, millimetres } from '../../../base/units/tick.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import { overallSize } from '../finished-sizes.ts';
import { outerPath, panelOutline, wallPath } from '../outline.ts';
import type { MantelPlan } from '../plan-mantel.ts';
import { panelShape } from '../panel-pieces.ts';
import type { PlannedLeg } from '../planned-leg.ts';
import { type Point, pointOf } from '../point.ts';
import { hatchPatterns, hatched } from './hatching.ts';
import { cornerWords } from './corner-words.ts';
import { dimensionAway, legSizes } from './leg-sizes.ts';
import { legend, legendHeight } from './legend.ts';
import { badge, headed, lettered, sizeOnDrawing } from './lettering.ts';
import { type Paper, type Spot, boundsOf, closedPath, spotOf } from './paper.ts';
import { type PieceKey, pieceKeys } from './piece-keys.ts';
import { wallBand, wallBands } from './wall-band.ts';

const paperWidth = 1840;
const margin = 220;
const tallest = 1100;
const headHeight = 60;

/**
 * The mantel from above, wall at the top and room at the bottom, as an SVG document: walls, facings with their miters, panels
 * with the way of their grain, ledgers dashed, each piece numbered and listed below, the faces, walls and depths dimensioned.
 * Whole-number coordinates; legible in black and white.
 */
export function drawPlanView(plan: MantelPlan, style: LengthStyle): string {
  const keys = pieceKeys(plan);
  const { paper, bottom } = layOut(plan);
  const legendTop = bottom + 40;
  const height = legendTop + legendHeight(keys.length) + 20;
  const title = 'Plan of the mantel, seen from above';
  return svg(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${paperWidth} ${height}`,
      width: '184mm',
      height: `${Math.round(height / 10)}mm`,
      role: 'img',
      'aria-label': `${title}: ${plan.legs.map(({ name }) => name).join(', ')}`,
    },
    svg('title', {}, title),
    hatchPatterns('plan'),
    svg('rect', { width: paperWidth, height, fill: '#fff' }),
    headed(`Seen from above, finished ${overallText(plan, style)}`, style),
    wallBands(plan, paper),
    wood(plan, paper),
    plan.legs.map((_, index) => legSizes(plan, index, paper, style)),
    cornerWords(plan, paper, style),
    keys.map((key) => badge(key.number, badgeSpot(plan, key, paper))),
    scaleBar({ x: paperWidth - 40, y: 56 }, paper, style),
    legend(plan, keys, 40, legendTop, style),
  ).markup;
}

/** Overall sizes of the finished mantel: along the front, square to it, and its height. */
function overallText(plan: MantelPlan, style: LengthStyle): string {
  const { wide, deep } = overallSize(plan);
  return [wide, deep, plan.mantel.faceHeight].map((size) => sizeOnDrawing(size, style)).join(' × ');
}

/** The scale at which all of it fits, and where the drawing ends. */
function layOut(plan: MantelPlan): { paper: Paper; bottom: number } {
  const bounds = boundsOf([...wallPath(plan.legs), ...outerPath(plan.legs)]);
  const wide = bounds.right - bounds.left;
  const tall = bounds.high - bounds.low;
  const unit = Math.max(wide / (paperWidth - 2 * margin), tall / tallest);
  const top = headHeight + wallBand + dimensionAway + 10;
  const spare = paperWidth - wide / unit;
  const origin = {
    x: Math.round(spare / 2 - bounds.left / unit),
    y: Math.round(top + bounds.high / unit),
  };
  return { paper: { unit, origin }, bottom: top + Math.round(tall / unit) + dimensionAway + 60 };
}

function wood(plan: MantelPlan, paper: Paper): Markup {
  const { legs, pieces } = plan;
  const faces = pieces.filter(({ kind }) => kind === 'facing' || kind === 'cap');
  const ledgers = pieces.filter(({ kind }) => kind === 'ledger');
  return svg(
    'g',
    { stroke: '#000', 'stroke-linejoin': 'round' },
    legs.map((leg, index) => [
      svg('path', { d: closedPath(paper, panelOutline(leg)), fill: '#fff', 'stroke-width': 3 }),
      grainArrow(plan, leg, index, paper),
    ]),
    ledgers.map(({ outline }) =>
      svg('path', {
        d: closedPath(paper, outline),
        fill: 'none',
        'stroke-width': 3,
        'stroke-dasharray': '14 8',
      }),
    ),
    faces.map(({ outline }) =>
      svg('path', {
        d: closedPath(paper, outline),
        ...(plan.mantel.faceJoint === 'butt'
          ? { fill: hatched('plan', 'facing'), 'stroke-width': 4 }
          : // Under the mitered edges of the top.
            { fill: 'none', 'stroke-width': 3, 'stroke-dasharray': '4 6' }),
      }),
    ),
  );
}

/** Middle of a leg's panel. */
function panelMiddle(leg: PlannedLeg): Point {
  const corners = panelOutline(leg);
  const mean = (of: (corner: Point) => number): number =>
    corners.reduce((sum, corner) => sum + of(corner), 0) / corners.length;
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) };
}

/** A thin two-headed arrow along the grain of the panel, as long as the panel lets it be. */
function grainArrow(plan: MantelPlan, leg: PlannedLeg, index: number, paper: Paper): Markup {
  const shape = panelShape(plan.legs, index);
  const neighbour = plan.legs[index === 0 ? 1 : index - 1];
  const heading = shape.grain === 'edge-joined' && neighbour ? neighbour.frame.heading : leg.frame.heading;
  // Longer than the badge upon it, where the panel lets it be.
  const half = Math.min(0.38 * shape.length, Math.max(0.12 * shape.length, 52 * paper.unit));
  const head = 14 * paper.unit;
  const frame = { origin: panelMiddle(leg), heading };
  const at = (along: number, off: number): string => {
    const { x, y } = spotOf(paper, pointOf(frame, along, off));
    return `${x} ${y}`;
  };
  const barbs = [half, -half].map((tip) => {
    const neck = tip - Math.sign(tip) * head;
    return `M${at(neck, head / 2)}L${at(tip, 0)}L${at(neck, -head / 2)}`;
  });
  return svg('path', {
    d: `M${at(-half, 0)}L${at(half, 0)}${barbs.join('')}`,
    fill: 'none',
    'stroke-width': 2,
    'aria-label': 'way of the grain',
  });
}

function badgeSpot(plan: MantelPlan, { piece }: PieceKey, paper: Paper): Spot {
  const leg = plan.legs[piece.leg]!;
  const at = (along: number, off: number): Spot => spotOf(paper, pointOf(leg.frame, along, off));
  switch (piece.kind) {
    case 'facing': {
      const middle = (leg.alongWall + leg.right.carcass - leg.left.carcass) / 2;
      return at(middle, leg.projection - piece.thickness / 2);
    }
    case 'cap': {
      const within = piece.leftEnd === 0 ? piece.thickness / 2 : leg.alongWall - piece.thickness / 2;
      return at(within, leg.depth / 2);
    }
    case 'ledger':
      return at(leg.alongWall / 2, (-wallBand / 2) * paper.unit);
    case 'top':
    case 'bottom':
      return spotOf(paper, panelMiddle(leg));
  }
}

/** A bar of one foot or 300 mm, its right end at the spot. */
function scaleBar(right: Spot, paper: Paper, style: LengthStyle): Markup {
  const bar: Tick = style.units === 'mm' ? millimetres(300) : inches(12);
  const left = right.x - Math.max(1, Math.round(bar / paper.unit));
  const middle = Math.round((left + right.x) / 2);
  return svg(
    'g',
    {},
    svg('path', {
      d: `M${left} ${right.y - 12}V${right.y}H${right.x}V${right.y - 12}`,
      stroke: '#000',
      'stroke-width': 3,
      fill: 'none',
    }),
    lettered(formatLengthWithUnit(bar, style), { x: middle, y: right.y - 18 }),
  );
}
