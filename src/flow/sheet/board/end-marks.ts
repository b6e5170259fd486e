import { type Markup, svg } from '../../../base/markup/element.ts';
import type { Part } from '../../parts/part.ts';
import type { LaidPiece } from '../../cuts/layout.ts';
import { liesAcross } from '../words/named.ts';
import type { Box } from './box.ts';
import type { Frame } from './frame.ts';

/** A mitered end on the paper: the line of its short point, and where its angle may be written. */
export interface MiteredEnd {
  readonly mark: Markup;
  readonly degrees: string;
  /** Beside the line, inside the piece. */
  readonly room: Box;
}

const roomForAngle = 34;

/**
 * The mitered ends of a piece in one row. The blank is drawn at its long point; the second line, thickness ×
 * tan(angle) further in, is the short point. It lies on the face that does not show: dashed, as hidden lines
 * are, where that is underneath; solid where it is the face drawn.
 */
export function miteredEnds(
  piece: LaidPiece,
  part: Part | undefined,
  box: Box,
  frame: Frame,
  turned: boolean,
): MiteredEnd[] {
  if (part === undefined) return [];
  const across = liesAcross(piece, part);
  const [first, second] = turned ? [part.rightEnd, part.leftEnd] : [part.leftEnd, part.rightEnd];
  const isHidden = piece.showFace !== 'B';
  const ends: MiteredEnd[] = [];
  const add = (angle: number, atStart: boolean): void => {
    const degrees = Math.abs(angle);
    if (degrees === 0 || degrees >= 89) return;
    const inset = Math.max(
      3,
      Math.round((part.thickness * Math.tan((degrees * Math.PI) / 180)) / frame.unit),
    );
    const extent = across ? box.h : box.w;
    if (inset < extent) ends.push(endAt(box, across, atStart, inset, isHidden, `${formatDegrees(degrees)}°`));
  };
  const startShows = across || piece.x >= frame.from;
  const endShows = across || piece.x + piece.length <= frame.to;
  if (startShows) add(first, true);
  if (endShows) add(second, false);
  return ends;
}

function formatDegrees(degrees: number): string {
  return String(Math.round(degrees * 10) / 10);
}

function endAt(
  box: Box,
  across: boolean,
  atStart: boolean,
  inset: number,
  isHidden: boolean,
  degrees: string,
): MiteredEnd {
  const pen = {
    fill: 'none',
    stroke: '#000',
    'stroke-width': 3,
    ...(isHidden ? { 'stroke-dasharray': '10 6' } : {}),
  };
  if (across) {
    // Start is the near edge, at the bottom of the paper.
    const y = atStart ? box.y + box.h - inset : box.y + inset;
    const mark = svg('path', { d: `M${box.x} ${y}h${box.w}`, ...pen });
    return {
      mark,
      degrees,
      room: { x: box.x, y: atStart ? y - roomForAngle : y, w: box.w, h: roomForAngle },
    };
  }
  const x = atStart ? box.x + inset : box.x + box.w - inset;
  const mark = svg('path', { d: `M${x} ${box.y}v${box.h}`, ...pen });
  return { mark, degrees, room: { x: atStart ? x : x - roomForAngle, y: box.y, w: roomForAngle, h: box.h } };
}
