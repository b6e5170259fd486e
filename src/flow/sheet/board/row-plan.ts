import type { Markup } from '../../../base/markup/element.ts';
import { cutTitle } from '../words/cut-words.ts';
import type { Box } from './box.ts';
import { type CutInRow, cutsInRow } from './cut-places.ts';
import { type MiteredEnd, miteredEnds } from './end-marks.ts';
import type { BoardFacts } from './facts.ts';
import { boxInRow, type Frame, sheetWidth } from './frame.ts';
import { placeRow, type RowPlaces } from './row-places.ts';
import { type ThingInRow, thingsInRow } from './row-things.ts';
import { runArrow, runsBackward } from './run-order.ts';

/** One row of a diagram with everything in its place; letters of call-outs are still to come. */
export interface RowPlan {
  readonly frame: Frame;
  readonly things: readonly ThingInRow[];
  readonly cuts: readonly CutInRow[];
  readonly places: RowPlaces;
  readonly ends: readonly MiteredEnd[];
  readonly arrows: readonly { mark: Markup; box: Box }[];
  readonly hatches: readonly Box[];
}

/** Finds every place in row `index`. */
export function planRow(
  facts: BoardFacts,
  frames: readonly Frame[],
  index: number,
  widestLetter: string,
): RowPlan {
  const frame = frames[index];
  if (!frame) throw new Error(`the diagram has no row ${index}`);
  const cuts = cutsInRow(facts.laid, frame, (cut) => cutTitle(cut, facts.job.shop));
  const things = thingsInRow(facts.things, frames, index);
  const arrows = facts.steps.flatMap((step) => runArrow(step, frame) ?? []);
  const hatches = facts.defects.flatMap((defect) => boxInRow(frame, defect) ?? []);
  const ends = facts.laid.pieces.flatMap((piece) => {
    const box = boxInRow(frame, piece);
    const part = facts.named.parts.get(piece.part);
    return box ? miteredEnds(piece, part, box, frame, runsBackward(piece, facts.steps)) : [];
  });
  const places = placeRow({
    board: frame.board,
    cuts,
    things,
    taken: arrows.map(({ box }) => box),
    hatches: [...hatches, ...ends.map(({ room }) => room)],
    room: { from: 4, to: sheetWidth - 4 },
    widestLetter,
  });
  return { frame, things, cuts, places, ends, arrows, hatches };
}
