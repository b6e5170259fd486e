import { overlaps } from '../../../base/geometry/rectangle.ts';
import { type Tick, ticks, ticksPerInch } from '../../../base/units/tick.ts';
import type { Job } from '../../stock/job.ts';
import type { Defect } from '../../stock/defect.ts';
import type { LaidBoard } from '../../cuts/layout.ts';
import { nameText, type Named, named as lookUp } from '../words/named.ts';
import { pieceLine, pieceWords } from '../words/piece-words.ts';
import { sizeText } from '../words/size-text.ts';
import type { Labelled } from './row-things.ts';
import { runSteps, type RunStep } from './run-order.ts';
import { wasteOf, type Waste } from './waste.ts';
import { continuedOffcut, continuedWordings, offcutWordings, pieceWordings } from './wordings.ts';

/** All that one board's diagram shows, gathered from job and layout. */
export interface BoardFacts {
  readonly laid: LaidBoard;
  readonly named: Named;
  readonly job: Job;
  readonly thickness: Tick;
  readonly defects: readonly Defect[];
  readonly waste: readonly Waste[];
  readonly steps: readonly RunStep[];
  readonly things: readonly Labelled[];
}

/** Gathers the facts. A board that the job does not know (it should) is shown without defects, as 1 in thick. */
export function boardFacts(job: Job, laid: LaidBoard): BoardFacts {
  const named = lookUp(job);
  const board = named.boards.get(laid.board);
  const pieces = laid.pieces.map((piece): Labelled => {
    const words = pieceWords(piece, named, job.shop);
    const { x, y, length, width } = piece;
    return {
      kind: 'piece',
      ...{ x, y, length, width },
      wordings: pieceWordings(words),
      continued: continuedWordings(words),
      line: pieceLine(words),
      kindLine: pieceLine(words, false),
      copy: words.copy,
    };
  });
  const offcuts = laid.offcuts.map((offcut): Labelled => {
    const id = nameText(offcut.id, 30);
    const size = sizeText(offcut, job.shop);
    const { x, y, length, width } = offcut;
    return {
      kind: 'offcut',
      ...{ x, y, length, width },
      wordings: offcutWordings(id, size),
      continued: continuedOffcut(id),
      line: `keep ${id}, ${size}`,
      kindLine: `keep ${id}, ${size}`,
      copy: '',
    };
  });
  return {
    laid,
    named,
    job,
    thickness: board?.dressedThickness ?? ticks(ticksPerInch),
    // A piece of the rack knows of knots that lay beside it, too.
    defects: (board?.defects ?? []).filter((defect) =>
      overlaps(defect, { x: 0, y: 0, length: laid.length, width: laid.width }),
    ),
    waste: wasteOf(laid),
    steps: runSteps(laid),
    things: [...pieces, ...offcuts].sort((a, b) => a.x - b.x || a.y - b.y),
  };
}
