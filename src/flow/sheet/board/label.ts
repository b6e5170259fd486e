import { type Markup, svg } from '../../../base/markup/element.ts';
import { type Box, freeBoxes, grown } from './box.ts';
import { lineAt, lineHeight, lineWidth, type Segment } from './text-line.ts';

/** One way to say something: lines of segments. */
export type Wording = readonly (readonly Segment[])[];

/** A wording that has found its place: the box on the paper it fills, at a type size, upright or turned. */
export interface PlacedLabel {
  readonly wording: Wording;
  readonly size: number;
  readonly turned: boolean;
  readonly box: Box;
}

/** Type sizes, tried from the largest: 30 is 8.5 point on paper, 20 is 5.7. */
const sizes = [30, 27, 24, 22, 20];
/** Large enough to be read over a hatch. */
const comfortable = [30, 27, 24];
const padding = 5;

/**
 * Finds room for the first wording that fits into `box`: upright and clear of everything first; then over the hatch
 * of defects (`soft`) in large type; then turned to read up the paper; small type over a hatch is the last resort.
 * Never over a hard obstacle, never out of the box.
 * @returns null when nothing fits
 */
export function placeLabel(
  wordings: readonly Wording[],
  box: Box,
  hard: readonly Box[],
  soft: readonly Box[],
): PlacedLabel | null {
  const inner = grown(box, -padding);
  const nearHard = hard.map((obstacle) => grown(obstacle, 3));
  const nearSoft = soft.map((obstacle) => grown(obstacle, 6));
  const least = { w: 10, h: 10 };
  const clear = freeBoxes(inner, [...nearHard, ...nearSoft], least);
  const overHatch = freeBoxes(inner, nearHard, least);
  return (
    firstFit(wordings, sizes, false, clear, inner) ??
    firstFit(wordings, comfortable, false, overHatch, inner) ??
    firstFit(wordings, sizes, true, clear, inner) ??
    firstFit(wordings, sizes, false, overHatch, inner) ??
    firstFit(wordings, sizes, true, overHatch, inner)
  );
}

function firstFit(
  wordings: readonly Wording[],
  tried: readonly number[],
  turned: boolean,
  rooms: readonly Box[],
  inner: Box,
): PlacedLabel | null {
  for (const size of tried) {
    for (const wording of wordings) {
      const extent = extentOf(wording, size, turned);
      const places = rooms.filter((room) => extent.w <= room.w && extent.h <= room.h);
      const boxes = places.map((room) => nearestTo(inner, room, extent));
      const best = boxes.sort((a, b) => offCentre(a, inner) - offCentre(b, inner))[0];
      if (best) return { wording, size, turned, box: best };
    }
  }
  return null;
}

function extentOf(wording: Wording, size: number, turned: boolean): { w: number; h: number } {
  const w = Math.max(...wording.map((line) => lineWidth(line, size)));
  const h = wording.length * lineHeight(size);
  return turned ? { w: h, h: w } : { w, h };
}

/** The place inside `room` whose middle is nearest to the middle of `whole`. */
function nearestTo(whole: Box, room: Box, extent: { w: number; h: number }): Box {
  const within = (wish: number, from: number, free: number): number =>
    Math.round(Math.max(from, Math.min(wish, from + free)));
  return {
    x: within(whole.x + (whole.w - extent.w) / 2, room.x, room.w - extent.w),
    y: within(whole.y + (whole.h - extent.h) / 2, room.y, room.h - extent.h),
    ...extent,
  };
}

function offCentre(box: Box, whole: Box): number {
  const dx = box.x + box.w / 2 - whole.x - whole.w / 2;
  const dy = box.y + box.h / 2 - whole.y - whole.h / 2;
  return dx * dx + dy * dy;
}

/** The label as SVG: lines centred in its box, with a white edge so that they read over a hatch. */
export function labelMark(label: PlacedLabel): Markup {
  const { box, size, turned, wording } = label;
  const run = turned ? box.h : box.w;
  const lines = wording.flatMap((line, index) =>
    lineAt(Math.round((run - lineWidth(line, size)) / 2), index * lineHeight(size), size, line),
  );
  const place = turned ? `translate(${box.x} ${box.y + box.h}) rotate(-90)` : `translate(${box.x} ${box.y})`;
  return svg('g', { transform: place }, lines);
}
