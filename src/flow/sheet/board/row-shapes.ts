import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import { type Markup, svg } from '../../../base/markup/element.ts';
import { withUnit } from '../words/size-text.ts';
import type { Box } from './box.ts';
import { defectMark } from './defect-mark.ts';
import type { BoardFacts } from './facts.ts';
import { boxInRow, type Frame } from './frame.ts';
import type { RowPlan } from './row-plan.ts';

/** Waste is crossed out, as on the bench; trims are greyed too. */
export function wasteMarks(facts: BoardFacts, frame: Frame): Markup {
  return svg(
    'g',
    { 'aria-label': 'trims and scrap' },
    facts.waste.flatMap((waste) => {
      const box = boxInRow(frame, waste);
      if (box === null) return [];
      const { x, y, w, h } = box;
      const fill = waste.trim ? '#c4c4c4' : '#ececec';
      return [
        svg('rect', { x, y, width: w, height: h, fill }, svg('title', {}, waste.trim ? 'trim' : 'scrap')),
        svg('path', { d: crossing(box), stroke: '#000', 'stroke-width': 1, fill: 'none' }),
      ];
    }),
  );
}

/** Narrower than this a cross would look like more cuts. */
const narrowestCrossed = 14;

/** A cross from corner to corner; several side by side in a long narrow leftover. */
function crossing({ x, y, w, h }: Box): string {
  if (Math.min(w, h) < narrowestCrossed) return `M${x} ${y}`;
  const isLong = w >= h;
  const count = Math.max(1, Math.min(20, Math.round(Math.max(w, h) / Math.min(w, h) / 4)));
  let path = '';
  for (let index = 0; index < count; index += 1) {
    const from = Math.round(((isLong ? w : h) * index) / count);
    const extent = Math.round(((isLong ? w : h) * (index + 1)) / count) - from;
    const [left, top, width, height] = isLong ? [x + from, y, extent, h] : [x, y + from, w, extent];
    path += `M${left} ${top}l${width} ${height}M${left} ${top + height}l${width} ${-height}`;
  }
  return path;
}

/** Pieces in a plain outline, offcuts to keep in a plain and a broken one. */
export function thingMarks(plan: RowPlan): Markup[] {
  return plan.things.map(({ thing, box }) => {
    const isKept = thing.kind === 'offcut' && box.w > 16 && box.h > 16;
    const pen = { fill: 'none', stroke: '#000', 'stroke-width': 2 };
    return svg(
      'g',
      { 'aria-label': thing.line },
      svg('title', {}, thing.line),
      svg('rect', { x: box.x, y: box.y, width: box.w, height: box.h, fill: '#fff' }),
      svg('path', { d: openOutline(plan.frame, thing, box, 0), ...pen }),
      isKept &&
        svg('path', { d: openOutline(plan.frame, thing, box, 5), ...pen, 'stroke-dasharray': '18 8' }),
    );
  });
}

/** A box's outline, `inset` further in, without a side where the row breaks off and the thing goes on. */
function openOutline(frame: Frame, rectangle: Rectangle, box: Box, inset: number): string {
  const left = box.x + (rectangle.x >= frame.from ? inset : 0);
  const right = box.x + box.w - (rectangle.x + rectangle.length <= frame.to ? inset : 0);
  const [top, bottom] = [box.y + inset, box.y + box.h - inset];
  const startSide = rectangle.x >= frame.from ? `V${top}` : `M${left} ${top}`;
  const endSide = rectangle.x + rectangle.length <= frame.to ? `V${bottom}` : `M${right} ${bottom}`;
  return `M${left} ${bottom}${startSide}H${right}${endSide}H${left}`;
}

/** Every defect of the row, whatever lies over it, since the maker must find it on the board. */
export function defectMarks(facts: BoardFacts, frame: Frame): Markup[] {
  return facts.defects.flatMap((defect) => {
    const box = boxInRow(frame, defect);
    if (box === null) return [];
    const where = defect.face === 'through' ? 'through' : `on face ${defect.face}`;
    const { shop } = facts.job;
    const title = `${defect.kind} ${where}, ${withUnit(defect.x, shop)} from the butt end, ${withUnit(defect.y, shop)} from the near edge`;
    return [
      svg('g', { 'aria-label': title }, svg('title', {}, title), defectMark(defect.kind, defect.face, box)),
    ];
  });
}

/** The board's outline; where the row breaks off inside the board, a torn edge instead of an end. */
export function boardOutline(frame: Frame): Markup {
  const { x, y, w, h } = frame.board;
  const right = x + w;
  const isStart = frame.from === 0;
  const isEnd = frame.to === frame.boardLength;
  const tear = (at: number): string => {
    const mid = y + Math.round(h / 2);
    return `M${at} ${y - 10}V${mid - 12}l10 6l-20 12l10 6V${y + h + 10}`;
  };
  const edges = `M${x} ${y}H${right}M${x} ${y + h}H${right}`;
  const ends = `${isStart ? `M${x} ${y}v${h}` : ''}${isEnd ? `M${right} ${y}v${h}` : ''}`;
  const torn = `${isStart ? '' : tear(x)}${isEnd ? '' : tear(right)}`;
  return svg(
    'g',
    { fill: 'none', stroke: '#000', 'stroke-linecap': 'square' },
    svg('path', { d: edges + ends, 'stroke-width': 5 }),
    torn !== '' && svg('path', { d: torn, 'stroke-width': 2 }),
  );
}
