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

/**
 * The cut list as a buyer carries it in his head: longest first, the wider of equals first; every copy on its own.
 * A run counts as one strip, its miter kerfs between (kerf over the cosine of the bevel, as the saw takes it).
 */
export function wantedPieces(job: Job): Wanted[] {
  const runs = new Map<string, Part[]>();
  const wanted: Wanted[] = [];
  for (const part of job.parts) {
    if (part.run !== null) runs.set(part.run, [...(runs.get(part.run) ?? []), part]);
    else for (let copy = 0; copy < part.quantity; copy += 1) wanted.push(single(part, job));
  }
  for (const parts of runs.values()) {
    const copies = Math.min(...parts.map(({ quantity }) => quantity));
    for (let copy = 0; copy < copies; copy += 1) wanted.push(runStrip(parts, job));
  }
  return wanted.sort((a, b) => b.length - a.length || b.width - a.width);
}

function single(part: Part, job: Job): Wanted {
  const blank = blankOf(part, job.shop, 1);
  const across = part.grain === 'across';
  const [length, width] = across ? [blank.width, blank.length] : [blank.length, blank.width];
  const strips = Array.from({ length: part.glueUp - 1 }, (_, index) => ({
    count: index + 2,
    width: blankOf(part, job.shop, index + 2).width,
  }));
  return { parts: [part], length, width, mayTurn: part.grain === 'any', strips: across ? [] : strips };
}

function runStrip(parts: readonly Part[], job: Job): Wanted {
  const blanks = parts.map((part) => blankOf(part, job.shop, 1));
  const kerfs = parts.slice(1).reduce((sum, part) => {
    const bevel = (Math.abs(part.leftEnd) * Math.PI) / 180;
    return sum + Math.ceil(job.shop.crosscutKerf / Math.cos(bevel));
  }, 0);
  return {
    parts,
    length: blanks.reduce((sum, { length }) => sum + length, kerfs),
    width: Math.max(...blanks.map(({ width }) => width)),
    mayTurn: false,
    strips: [],
  };
}
