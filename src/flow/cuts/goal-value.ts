import { ticksPerInch } from '../../base/units/tick.ts';
import type { Choice } from '../choice/choice.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import type { LaidBoard, LayoutProof } from './layout.ts';

/** A value and a bound closer than this share of the value count as equal, as they do for the solver. */
const zeroGap = 1e-7;

/** What one copy is worth under `most value`: as stated, else its finished face area in square inches. */
export function partValue(part: Part): number {
  return part.value ?? (part.length / ticksPerInch) * (part.width / ticksPerInch);
}

/**
 * What the goal counts: under `least cost` the boards' cost, less for each offcut its share (by area) of its board's
 * cost × the shop's credit; under `most value` the sum of the values of the copies laid out, a copy glued up of
 * several strips once.
 */
export function goalValue(job: Job, boards: readonly LaidBoard[]): number {
  if (job.shop.goal === 'most value') return laidValue(job, boards);
  return boards.reduce((total, board) => {
    const share = board.area.board === 0 ? 0 : board.area.offcuts / board.area.board;
    return total + board.cost * (1 - job.shop.offcutCredit * share);
  }, 0);
}

function laidValue(job: Job, boards: readonly LaidBoard[]): number {
  const values = new Map(job.parts.map((part) => [part.name, partValue(part)]));
  const copies = new Map<string, Set<number>>();
  for (const { part, copy } of boards.flatMap((board) => board.pieces)) {
    copies.set(part, (copies.get(part) ?? new Set()).add(copy));
  }
  return [...copies].reduce((total, [part, laid]) => total + (values.get(part) ?? 0) * laid.size, 0);
}

/**
 * The proof for the boards as laid out: the solver's bound against the value worked anew. Where the two agree to
 * rounding the bound is the value. A value of 0 away from its bound has gap 1. With parts short under `least cost` neither is.
 */
export function provenBy(
  job: Job,
  boards: readonly LaidBoard[],
  { short, proof: { bound }, cannotHold }: Choice,
): LayoutProof {
  const value = goalValue(job, boards);
  if (short.length > 0 && job.shop.goal === 'least cost')
    return { value, bound: null, gap: null, proven: cannotHold === true };
  const distance = Math.abs(value - bound);
  if (distance <= zeroGap * Math.max(1, Math.abs(value)))
    return { value, bound: value, gap: 0, proven: true };
  return { value, bound, gap: value === 0 ? 1 : distance / Math.abs(value), proven: false };
}
