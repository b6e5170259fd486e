import type { BlankKind } from '../../../flow/choice/instance.ts';
import { kindsOf } from '../../../flow/choice/kinds.ts';
import { blankOf } from '../../../flow/parts/blank.ts';
import type { Part } from '../../../flow/parts/part.ts';
import type { Job } from '../../../flow/stock/job.ts';

/** Something the buyer looks for in the pile: a blank, or the strip of a run, that must come out of one board. */
export interface Wanted {
  /** The parts it is for: one, or those of a run. */
  readonly parts: readonly Part[];
  /** Along the board, ticks. */
  readonly length: number;
  readonly width: number;
  /** Set for a blank that may lie either way. */
  readonly mayTurn: boolean;
  /** How many equal strips it may be made of instead, each as wide as said; none for what must be whole. */
  readonly strips: readonly { readonly count: number; readonly width: number }[];
}

/** What a piece is called when it is looked for: its part, or the run it is the strip of. */
export function wantedName({ parts }: Pick<Wanted, 'parts'>): string {
  return parts.length > 1 ? `the run ${parts[0]!.run ?? ''}` : parts[0]!.name;
}

/**
 * The cut list as a buyer carries it in his head: longest first, the wider of equals first; every copy on its own, a run
 * as the one strip that it is cut from, just as the solver sees it.
 */
export function wantedPieces(job: Job): Wanted[] {
  return kindsOf(job)
    .filter(({ strips }) => strips === 1)
    .flatMap((kind) => {
      const piece = wanted(kind, job);
      return Array.from({ length: kind.demand }, () => piece);
    })
    .sort((a, b) => b.length - a.length || b.width - a.width);
}

function wanted({ members, length, width }: BlankKind, job: Job): Wanted {
  const parts = members.map(({ part }) => job.parts[part]!);
  const [only] = parts;
  if (only === undefined || parts.length > 1) return { parts, length, width, mayTurn: false, strips: [] };
  const across = only.grain === 'across';
  const strips = Array.from({ length: only.glueUp - 1 }, (_, index) => ({
    count: index + 2,
    width: blankOf(only, job.shop, index + 2).width,
  }));
  return {
    parts,
    length: across ? width : length,
    width: across ? length : width,
    mayTurn: only.grain === 'any',
    strips: across ? [] : strips,
  };
}
