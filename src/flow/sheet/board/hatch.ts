import { unreachable } from '../../../base/result/unreachable.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import type { DefectKind } from '../../stock/defect.ts';
import type { Box } from './box.ts';

/**
 * The hatch of each kind of defect, told apart by its shape alone: a black-and-white copy, or a colour-blind
 * reader, loses nothing. Drawn line by line and clipped by arithmetic, so that the picture needs no pattern
 * definitions, whose names would clash when many boards stand on one page. Each likens what it stands for: rings
 * for a knot, waves for a shake, a zigzag for a split.
 */
export function hatch(kind: DefectKind, box: Box): Markup {
  switch (kind) {
    case 'sound knot':
      return lines(ring(box, 1) + ring(box, 0.62) + ring(box, 0.24));
    case 'loose knot':
      return lines(ring(box, 1) + cross(box, 0.7), 3);
    case 'hole':
      return svg('path', { d: ring(box, 1) });
    case 'check':
      return lines(dashes(box), 2);
    case 'split':
      return lines(zigzags(box), 2);
    case 'shake':
      return lines(waves(box), 2);
    case 'wane':
      return lines(slants(box, 12, 1), 2);
    case 'rot':
      return lines(slants(box, 11, 1) + slants(box, 11, -1), 2);
    case 'pith':
      return lines(beads(box), 9, true);
    case 'stain':
      return lines(dots(box, 10), 3, true);
    case 'sapwood':
      return lines(uprights(box, 14), 1);
    case 'bark pocket':
      return lines(chevrons(box), 2);
    default:
      return unreachable(kind);
  }
}

function lines(path: string, width = 2, round = false): Markup {
  const caps = round ? { 'stroke-linecap': 'round' } : {};
  return svg('path', {
    d: path === '' ? 'M0 0' : path,
    fill: 'none',
    stroke: '#000',
    'stroke-width': width,
    ...caps,
  });
}

/** An ellipse with the box's middle and `part` of its size. */
function ring(box: Box, part: number): string {
  const rx = Math.max(1, Math.round((box.w * part) / 2));
  const ry = Math.max(1, Math.round((box.h * part) / 2));
  const { x, y } = middle(box);
  return `M${x - rx} ${y}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0`;
}

function cross(box: Box, part: number): string {
  const dx = Math.round((box.w * part) / 2);
  const dy = Math.round((box.h * part) / 2);
  const { x, y } = middle(box);
  return `M${x - dx} ${y - dy}l${2 * dx} ${2 * dy}M${x - dx} ${y + dy}l${2 * dx} ${-2 * dy}`;
}

function middle(box: Box): { x: number; y: number } {
  return { x: Math.round(box.x + box.w / 2), y: Math.round(box.y + box.h / 2) };
}

/** Positions `step` apart and centred in an extent; always at least one. A huge extent gets a wider step. */
function positions(from: number, extent: number, step: number): number[] {
  const wide = Math.max(step, Math.ceil(extent / 400));
  const count = Math.max(1, Math.floor(extent / wide));
  const first = from + (extent - (count - 1) * wide) / 2;
  return Array.from({ length: count }, (_, index) => Math.round(first + index * wide));
}

function uprights(box: Box, step: number): string {
  return positions(box.x, box.w, step)
    .map((x) => `M${x} ${box.y}v${box.h}`)
    .join('');
}

/** Short dashes along the grain, every second row shifted. */
function dashes(box: Box): string {
  return staggered(box, 26, 8, (x, y, room) => `M${x} ${y}h${Math.min(14, room)}`);
}

function dots(box: Box, step: number): string {
  return staggered(box, step, step, (x, y) => `M${x} ${y}h0`);
}

/** Little roofs lying along the grain. */
function chevrons(box: Box): string {
  return staggered(box, 18, 14, (x, y, room) => {
    const half = Math.max(1, Math.min(4, Math.floor(box.h / 2) - 1));
    const length = Math.min(8, room);
    return `M${x} ${y - half}l${length} ${half}l${-length} ${half}`;
  });
}

/** Marks on a grid, every second row shifted by half a step; `room` is what the mark has to its right. */
function staggered(
  box: Box,
  stepX: number,
  stepY: number,
  mark: (x: number, y: number, room: number) => string,
): string {
  let path = '';
  positions(box.y, box.h, stepY).forEach((y, row) => {
    for (const centre of positions(box.x, box.w, stepX)) {
      const x = centre + (row % 2 === 0 ? -Math.round(stepX / 4) : Math.round(stepX / 4));
      const start = Math.max(box.x + 2, Math.min(x, box.x + box.w - 2));
      if (start < box.x + box.w) path += mark(start, y, box.x + box.w - start);
    }
  });
  return path;
}

/** A line along the grain with beads on it. */
function beads(box: Box): string {
  const y = middle(box).y;
  return positions(box.x, box.w, 22)
    .map((x) => `M${x} ${y}h0`)
    .join('');
}

function zigzags(box: Box): string {
  return positions(box.y, box.h, 16)
    .map((y) => along(box, y, 8, (up, dx, dy) => `l${dx} ${up ? -dy : dy}`))
    .join('');
}

function waves(box: Box): string {
  return positions(box.y, box.h, 14)
    .map((y) => along(box, y, 16, (up, dx, dy) => `q${Math.round(dx / 2)} ${up ? -dy : dy} ${dx} 0`))
    .join('');
}

/** A line along the grain made of equal steps, alternately up and down, the last one cut to fit. */
function along(
  box: Box,
  y: number,
  step: number,
  draw: (up: boolean, dx: number, dy: number) => string,
): string {
  const swing = Math.max(1, Math.min(8, Math.floor(box.h / 2)));
  const wide = Math.max(step, Math.ceil(box.w / 400));
  let path = `M${box.x} ${y + (step === 8 ? Math.floor(swing / 2) : 0)}`;
  let up = true;
  for (let x = 0; x < box.w; x += wide, up = !up) path += draw(up, Math.min(wide, box.w - x), swing);
  return path;
}

/** Slanting lines `step` apart, rising to the right (`lean` 1) or falling (−1), ending on the box's edges. */
function slants(box: Box, step: number, lean: 1 | -1): string {
  const wide = Math.max(step, Math.ceil((box.w + box.h) / 600));
  let path = '';
  for (let c = Math.min(wide, Math.ceil((box.w + box.h) / 2)); c < box.w + box.h; c += wide) {
    // On the line u + v = c, u from the left edge, v from the bottom (lean −1) or from the top (lean 1).
    const [fromU, toU] = [Math.max(0, c - box.h), Math.min(c, box.w)];
    const across = (u: number): number => (lean === 1 ? box.y + (c - u) : box.y + box.h - (c - u));
    path += `M${box.x + fromU} ${across(fromU)}L${box.x + toU} ${across(toU)}`;
  }
  return path;
}
