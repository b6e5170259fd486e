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
  /** Whether it lies over the hatch or the dashes of a defect, which would read as a stroke through the words. */
  readonly overHatch: boolean;
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
  const extents = new Map(sizes.map((size) => [size, wordings.map((wording) => extentOf(wording, size))]));
  const fit = (tried: readonly number[], turned: boolean, rooms: readonly Box[]): PlacedLabel | null => {
    const place = firstFit({ wordings, extents, inner }, tried, turned, rooms);
    return place === null ? null : { ...place, overHatch: rooms === overHatch };
  };
  return (
    fit(sizes, false, clear) ??
    fit(comfortable, false, overHatch) ??
    fit(sizes, true, clear) ??
    fit(sizes, false, overHatch) ??
    fit(sizes, true, overHatch)
  );
}

/** What is to be placed, its extents upright by type size, and the box whose middle it should be near. */
interface Wanted {
  readonly wordings: readonly Wording[];
  readonly extents: ReadonlyMap<number, readonly Extent[]>;
  readonly inner: Box;
}

interface Extent {
  readonly w: number;
  readonly h: number;
}

function firstFit(
  { wordings, extents, inner }: Wanted,
  tried: readonly number[],
  turned: boolean,
  rooms: readonly Box[],
): Omit<PlacedLabel, 'overHatch'> | null {
  for (const size of tried) {
    for (const [index, wording] of wordings.entries()) {
      const upright = extents.get(size)?.[index] ?? { w: Infinity, h: Infinity };
      const extent = turned ? { w: upright.h, h: upright.w } : upright;
      const places = rooms.filter((room) => extent.w <= room.w && extent.h <= room.h);
      const boxes = places.map((room) => nearestTo(inner, room, extent));
      const best = boxes.sort((a, b) => offCentre(a, inner) - offCentre(b, inner))[0];
      if (best) return { wording, size, turned, box: best };
    }
  }
  return null;
}

function extentOf(wording: Wording, size: number): Extent {
  return {
    w: Math.max(...wording.map((line) => lineWidth(line, size))),
    h: wording.length * lineHeight(size),
  };
}

/** The place inside `room` whose middle is nearest to the middle of `whole`. */
function nearestTo(whole: Box, room: Box, extent: Extent): Box {
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

/** The label as SVG: lines centred in its box, each on a white ground where it lies over a hatch. */
export function labelMark(label: PlacedLabel): Markup {
  const { box, size, turned, wording, overHatch } = label;
  const run = turned ? box.h : box.w;
  const grounds = wording.map((line, index) => {
    const width = lineWidth(line, size);
    const x = Math.round((run - width) / 2) - 3;
    const height = lineHeight(size);
    return svg('rect', { x, y: index * height, width: width + 6, height, fill: '#fff' });
  });
  const lines = wording.flatMap((line, index) =>
    lineAt(Math.round((run - lineWidth(line, size)) / 2), index * lineHeight(size), size, line),
  );
  const place = turned ? `translate(${box.x} ${box.y + box.h}) rotate(-90)` : `translate(${box.x} ${box.y})`;
  return svg('g', { transform: place }, overHatch && grounds, lines);
}
