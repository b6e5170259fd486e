import { type Markup, svg } from '../../../base/markup/element.ts';
import type { LaidBoard, LaidPiece } from '../../cuts/layout.ts';
import type { Box } from './box.ts';
import { boxInRow, type Frame } from './frame.ts';

/** Two pieces of a run that follow one another in their strip. */
export interface RunStep {
  readonly from: LaidPiece;
  readonly to: LaidPiece;
}

/** The consecutive pairs of every run on a board. */
export function runSteps(board: LaidBoard): RunStep[] {
  return board.pieces.flatMap((from) => {
    const to = board.pieces.find(
      (other) => from.run && other.run?.run === from.run.run && other.run.order === from.run.order + 1,
    );
    return to ? [{ from, to }] : [];
  });
}

/** Whether the piece lies in a run that goes towards the butt end, so that its left end is the far one. */
export function runsBackward(piece: LaidPiece, steps: readonly RunStep[]): boolean {
  return steps.some(({ from, to }) => (from === piece || to === piece) && to.x < from.x);
}

/** An arrowhead on the kerf between two pieces of a run, from the earlier to the later; null when out of the row. */
export function runArrow({ from, to }: RunStep, frame: Frame): { mark: Markup; box: Box } | null {
  const gapStart = Math.min(from.x + from.length, to.x + to.length);
  const gapEnd = Math.max(from.x, to.x);
  const gap = { x: gapStart, y: from.y, length: Math.max(1, gapEnd - gapStart), width: from.width };
  const shown = boxInRow(frame, gap);
  if (shown === null || gapStart < frame.from || gapEnd > frame.to) return null;
  const x = shown.x + Math.round(shown.w / 2);
  const y = shown.y + Math.round(shown.h / 2);
  const ahead = to.x > from.x ? 1 : -1;
  const mark = svg('path', {
    d: `M${x - 9 * ahead} ${y - 11}l${20 * ahead} 11l${-20 * ahead} 11z`,
    fill: '#fff',
    stroke: '#000',
    'stroke-width': 3,
    'stroke-linejoin': 'round',
  });
  return { mark, box: { x: x - 13, y: y - 13, w: 26, h: 26 } };
}
