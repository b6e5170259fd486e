import { type Markup, svg } from '../../../base/markup/element.ts';
import type { Defect } from '../../stock/defect.ts';
import type { Box } from './box.ts';
import { hatch } from './hatch.ts';

/**
 * One defect: its hatch says the kind, its outline the face: solid for face A (the face drawn), dashed for face
 * B (seen through the board, as hidden lines are drawn), double where it goes through.
 */
export function defectMark(kind: Defect['kind'], face: Defect['face'], box: Box): Markup[] {
  return [hatch(kind, box), ...outline(face, box)];
}

function outline(face: Defect['face'], box: Box): Markup[] {
  const rect = (by: number, more: Record<string, string | number>): Markup =>
    svg('rect', {
      x: box.x + by,
      y: box.y + by,
      width: Math.max(1, box.w - 2 * by),
      height: Math.max(1, box.h - 2 * by),
      fill: 'none',
      stroke: '#000',
      ...more,
    });
  if (face === 'B') return [rect(0, { 'stroke-width': 3, 'stroke-dasharray': '9 6' })];
  if (face === 'A') return [rect(0, { 'stroke-width': 3 })];
  return [rect(0, { 'stroke-width': 2 }), rect(-5, { 'stroke-width': 2 })];
}
