import { usable } from '../../stock/usable.ts';
import type { Job } from '../../stock/job.ts';
import type { BoardPattern, Choice, PlacedPiece, Short } from '../choice.ts';
import { whyShort } from '../short.ts';
import type { WayToMake } from './way-to-make.ts';

/**
 * The choice with every k strips of a part as one copy of it, in the order in which they were laid. Strips that make no
 * whole copy are not cut: boards that held nothing else are left, and the bound is given up.
 * @param choice of the job whose parts are made in these ways, aligned with the job's parts
 */
export function glueTogether(job: Job, choice: Choice, ways: readonly WayToMake[]): Choice {
  const stripsOf = (part: number): number => ways[part]?.strips ?? 1;
  const laid = new Map<number, number>();
  for (const { part } of choice.patterns.flatMap(({ pieces }) => pieces))
    laid.set(part, (laid.get(part) ?? 0) + 1);
  const isUsed = ({ part, copy }: PlacedPiece): boolean => {
    const strips = stripsOf(part);
    return copy <= strips * Math.floor((laid.get(part) ?? 0) / strips);
  };
  const patterns = choice.patterns.map((pattern) => ({
    ...pattern,
    pieces: pattern.pieces.filter(isUsed).map((piece) => asStrip(piece, stripsOf(piece.part))),
  }));
  const short = job.parts.flatMap((part, index): Short[] => {
    const strips = stripsOf(index);
    const said = choice.short.find((one) => one.part === index);
    if (strips === 1) return said === undefined ? [] : [said];
    const copies = part.quantity - Math.floor((laid.get(index) ?? 0) / strips);
    const why = `${whyShort(job, index)}; nor were there boards for all ${strips} strips of a glue-up`;
    return copies > 0 ? [{ part: index, copies, why }] : [];
  });
  const kept = patterns.filter(({ pieces }) => pieces.length > 0);
  const isWhole = choice.patterns.every(({ pieces }) => pieces.every(isUsed));
  return { patterns: kept, short, proof: isWhole ? choice.proof : unproven(job, kept) };
}

function asStrip(piece: PlacedPiece, strips: number): PlacedPiece {
  if (strips === 1) return piece;
  const copy = Math.ceil(piece.copy / strips);
  return { ...piece, copy, strip: { index: (piece.copy - 1) % strips, of: strips } };
}

/** What these patterns come to by the solver's measure (see StockGroup), with the bound that always holds. */
function unproven(job: Job, patterns: readonly BoardPattern[]): Choice['proof'] {
  if (job.shop.goal === 'most value') {
    const copies = new Set(
      patterns.flatMap(({ pieces }) => pieces.map(({ part, copy }) => `${part} ${copy}`)),
    );
    const worth = (index: number): number => {
      const part = job.parts[index]!;
      return part.value ?? (part.length * part.width) / 8128 ** 2;
    };
    const value = [...copies].reduce((sum, key) => sum + worth(Number(key.split(' ')[0])), 0);
    const bound = job.parts.reduce((sum, part, index) => sum + part.quantity * worth(index), 0);
    return { value, bound, gap: value === 0 ? 1 : (bound - value) / value, proven: false };
  }
  const value = patterns.reduce((sum, { board, pieces }) => {
    const on = job.boards[board]!;
    const rate = (job.shop.offcutCredit * on.cost) / (on.length * on.width);
    const area = usable(on, job.shop);
    const cut = pieces.reduce((total, { length, width }) => total + length * width, 0);
    return sum + on.cost - rate * (area.length * area.width - cut);
  }, 0);
  // Boards for nothing are no proof that no other parts could be laid out on them.
  return { value, bound: value === 0 ? -1 : 0, gap: 1, proven: false };
}
