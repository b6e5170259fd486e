import type { LaidPiece, Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import type { PieceFault } from './fault.ts';
import { woodCalled } from './woods.ts';

interface Laid {
  readonly piece: LaidPiece;
  readonly on: { readonly board: string; readonly copy: number };
}

/**
 * Copies of every part: each at most once (a glued-up copy in all its strips), and laid + short = wanted. Under the
 * goal `most value` parts may be left out unsaid.
 */
export function copyFaults(
  job: Job,
  layout: Layout,
  parts: ReadonlyMap<string, Part>,
  boards: ReadonlyMap<string, Board>,
): PieceFault[] {
  const laid = new Map<string, Laid[]>();
  for (const { board, copy, pieces } of layout.boards) {
    for (const piece of pieces) {
      const list = laid.get(piece.part) ?? [];
      list.push({ piece, on: { board, copy } });
      laid.set(piece.part, list);
    }
  }
  const short = new Map<string, number>();
  const faults: PieceFault[] = [];
  for (const { part, copies } of layout.short) {
    const say = (why: string): void => void faults.push({ kind: 'bad short', part, why });
    if (!parts.has(part)) say('there is no such part');
    if (!Number.isInteger(copies) || copies < 1) say(`${copies} is not a number of copies`);
    if (short.has(part)) say('it is listed twice');
    short.set(part, copies);
  }
  for (const part of job.parts) {
    const pieces = laid.get(part.name) ?? [];
    faults.push(...ofOnePart(part, pieces, boards));
    const counted = new Set(pieces.map(({ piece }) => piece.copy)).size;
    const missing = short.get(part.name) ?? 0;
    const sum = counted + missing;
    if (job.shop.goal === 'most value' ? sum > part.quantity : sum !== part.quantity) {
      const { name, quantity: wanted } = part;
      faults.push({ kind: 'wrong count', part: name, wanted, laid: counted, short: missing });
    }
  }
  return faults;
}

function ofOnePart(part: Part, pieces: readonly Laid[], boards: ReadonlyMap<string, Board>): PieceFault[] {
  const faults: PieceFault[] = [];
  const copies = new Map<number, Laid[]>();
  for (const entry of pieces) {
    const { copy } = entry.piece;
    if (!Number.isInteger(copy) || copy < 1 || copy > part.quantity) {
      const piece = { part: part.name, copy, on: entry.on };
      faults.push({ kind: 'no such part copy', piece, quantity: part.quantity });
    }
    copies.set(copy, [...(copies.get(copy) ?? []), entry]);
  }
  for (const [copy, entries] of copies) {
    const strips = entries.filter(({ piece }) => piece.strip !== undefined);
    if (strips.length > 0) {
      const why = wrongStrips(part, entries, boards);
      if (why !== null) faults.push({ kind: 'bad glue-up', part: part.name, copy, why });
      continue;
    }
    for (const { on } of entries.slice(1)) {
      faults.push({ kind: 'copy twice', piece: { part: part.name, copy, on } });
    }
  }
  return faults;
}

/** What is wrong with the strips of one glued-up copy; null when nothing is. */
function wrongStrips(
  part: Part,
  entries: readonly Laid[],
  boards: ReadonlyMap<string, Board>,
): string | null {
  const of = entries[0]?.piece.strip?.of ?? 0;
  if (entries.some(({ piece }) => piece.strip?.of !== of)) return 'its strips disagree on their number';
  if (!Number.isInteger(of) || of < 1 || of > part.glueUp) {
    return `${of} strips, where the part allows ${part.glueUp}`;
  }
  const indices = new Set(entries.map(({ piece }) => piece.strip?.index ?? -1));
  const isWhole = Array.from({ length: of }, (_, index) => index).every((index) => indices.has(index));
  if (entries.length !== of || !isWhole) return 'a strip is missing or there twice';
  const woods = entries.flatMap(({ on }) => boards.get(on.board) ?? []);
  if (new Set(woods.map(({ species }) => woodCalled(species))).size > 1)
    return 'its strips come from boards of different species';
  const tones = new Set(woods.map(({ tone }) => tone));
  return tones.size > 1 ? 'its strips come from boards of different tones' : null;
}
