import { type Markup, svg } from '../../../base/markup/element.ts';
import { withUnit } from '../words/size-text.ts';
import { buttEnd } from './butt-end.ts';
import type { BoardFacts } from './facts.ts';
import { flagMark } from './flag.ts';
import { labelMark, placeLabel } from './label.ts';
import type { RowPlan } from './row-plan.ts';
import { boardOutline, defectMarks, thingMarks, wasteMarks } from './row-shapes.ts';
import type { Labelled } from './row-things.ts';
import { lengthRuler, rulerHeight, widthRuler, widthRulerRoom } from './ruler.ts';

/** The row as SVG with the board's far edge at y = 0, and how far it reaches above and below the board's edges. */
export function drawRow(
  facts: BoardFacts,
  plan: RowPlan,
  letterOf: (thing: Labelled) => string,
): { markup: Markup; above: number; below: number } {
  const { frame, places } = plan;
  const { shop } = facts.job;
  const isFirst = frame.from === 0;
  const below = places.depth.below;
  const rod = frame.board.x - (places.depth.left > 0 ? places.depth.left + 8 : 8);
  const letters = places.callOuts.flatMap(({ things: [first], flag }) =>
    first ? [{ ...flag, text: letterOf(first.thing) }] : [],
  );
  const flags = [...places.flags, ...letters];
  const markup = svg(
    'g',
    { 'aria-label': `from ${withUnit(frame.from, shop)} to ${withUnit(frame.to, shop)} along the board` },
    isFirst && buttEnd(frame, facts.thickness, rod - widthRulerRoom),
    widthRuler(frame, rod, shop),
    wasteMarks(facts, frame),
    thingMarks(plan),
    defectMarks(facts, frame),
    plan.cuts.map(({ kerf, title }) =>
      svg('rect', { x: kerf.x, y: kerf.y, width: kerf.w, height: kerf.h }, svg('title', {}, title)),
    ),
    plan.ends.map(({ mark }) => mark),
    boardOutline(frame),
    flags.flatMap(({ leader, kind }) => (leader === '' ? [] : [leaderMark(leader, kind)])),
    plan.arrows.map(({ mark }) => mark),
    flags.map(flagMark),
    svg(
      'g',
      { 'paint-order': 'stroke', stroke: '#fff', 'stroke-width': 5, 'stroke-linejoin': 'round' },
      places.labels.map(({ label }) => labelMark(label)),
      angleMarks(plan),
    ),
    lengthRuler(frame, frame.board.h + below + 8, shop),
  );
  return { markup, above: places.depth.above, below: below + 8 + rulerHeight };
}

function leaderMark(path: string, kind: 'cut' | 'call-out'): Markup {
  const dotted = kind === 'call-out' ? { 'stroke-dasharray': '2 5', 'stroke-linecap': 'round' } : {};
  return svg('path', { d: path, fill: 'none', stroke: '#000', 'stroke-width': 2, ...dotted });
}

/** The angles of mitered ends, written where all else has left room. */
function angleMarks(plan: RowPlan): Markup[] {
  const taken = [
    ...plan.places.labels.map(({ label }) => label.box),
    ...[...plan.places.flags, ...plan.places.callOuts.map(({ flag }) => flag)].map(({ box }) => box),
    ...plan.arrows.map(({ box }) => box),
  ];
  const marks: Markup[] = [];
  for (const { degrees, room } of plan.ends) {
    const label = placeLabel([[[{ text: degrees }]]], room, taken, plan.hatches);
    if (!label) continue;
    taken.push(label.box);
    marks.push(labelMark(label));
  }
  return marks;
}
