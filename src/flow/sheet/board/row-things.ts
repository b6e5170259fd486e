import type { Rectangle } from '../../../base/geometry/rectangle.ts';
import type { Box } from './box.ts';
import { boxInRow, type Frame } from './frame.ts';
import type { Wording } from './label.ts';

/** A piece or kept offcut that carries a label somewhere in the diagram. */
export interface Labelled extends Rectangle {
  readonly kind: 'piece' | 'offcut';
  readonly wordings: readonly Wording[];
  /** For the part of it in another row, when it is broken between rows. */
  readonly continued: readonly Wording[];
  /** One line, for titles and spoken names. */
  readonly line: string;
  /** The same without the copy: things of one kind share a call-out's letter. */
  readonly kindLine: string;
  /** `2 of 4`; empty where there is one only. */
  readonly copy: string;
}

/** What of a labelled thing shows in one row. */
export interface ThingInRow {
  readonly thing: Labelled;
  readonly box: Box;
  /** This row shows the largest part of it, so its label stands here. */
  readonly isMain: boolean;
}

/** The labelled things that show in row `index`, in order along the board. */
export function thingsInRow(
  things: readonly Labelled[],
  frames: readonly Frame[],
  index: number,
): ThingInRow[] {
  const frame = frames[index];
  if (!frame) return [];
  return things.flatMap((thing) => {
    const box = boxInRow(frame, thing);
    return box === null ? [] : [{ thing, box, isMain: mainRow(thing, frames) === index }];
  });
}

function mainRow(thing: Rectangle, frames: readonly Frame[]): number {
  const shown = frames.map(({ from, to }) => Math.min(to, thing.x + thing.length) - Math.max(from, thing.x));
  return shown.indexOf(Math.max(...shown));
}
