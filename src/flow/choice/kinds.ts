import { gathered } from '../../base/lists/gathered.ts';
import { bevelKerf } from '../../trade/miter.ts';
import { blankOf } from '../parts/blank.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../stock/job.ts';
import type { BlankKind, Member } from './instance.ts';

/** Worth of one copy under `most value`: as given, else its face area in square inches. */
export function valueOf(part: Part): number {
  return part.value ?? (part.length * part.width) / 8128 ** 2;
}

/** Pieces wanted in all. */
export function piecesIn(kinds: readonly BlankKind[]): number {
  return kinds.reduce((sum, { demand }) => sum + demand, 0);
}

/**
 * The pieces of a run laid one after another from one strip, in file order, each corner's bevel kerf between them
 * (the steeper of the two ends that meet).
 */
function runMembers(job: Job, parts: readonly number[]): Member[] {
  const members: Member[] = [];
  let offset = 0;
  for (const [order, part] of parts.entries()) {
    const here = job.parts[part]!;
    const before = order === 0 ? null : job.parts[parts[order - 1]!]!;
    if (before !== null) {
      const bevel = Math.max(Math.abs(before.rightEnd), Math.abs(here.leftEnd));
      offset += Math.max(0, bevelKerf(job.shop.crosscutKerf, bevel));
    }
    const blank = blankOf(here, job.shop, 1);
    members.push({ part, offset, ...blank });
    offset += blank.length;
  }
  return members;
}

/**
 * What is cut as one: each copy of a free part by itself, each copy of a run together. The n-th copy of a run holds the
 * parts of that run wanted more than n times.
 */
function cutTogether(job: Job): { readonly parts: readonly number[]; readonly copies: number }[] {
  const wanted = [...job.parts.keys()].filter((index) => job.parts[index]!.quantity > 0);
  const byRun = gathered(wanted, (index) => job.parts[index]!.run);
  const free = byRun.get(null) ?? [];
  const groups: { parts: number[]; copies: number }[] = free.map((index) => ({
    parts: [index],
    copies: job.parts[index]!.quantity,
  }));
  byRun.delete(null);
  for (const members of byRun.values()) {
    const most = Math.max(...members.map((index) => job.parts[index]!.quantity));
    let last: { parts: number[]; copies: number } | null = null;
    for (let copy = 0; copy < most; copy += 1) {
      const parts = members.filter((index) => job.parts[index]!.quantity > copy);
      if (last !== null && last.parts.length === parts.length) last.copies += 1;
      else groups.push((last = { parts, copies: 1 }));
    }
  }
  return groups;
}

/** The kinds of a job, each with what leaving one piece out costs. */
export function kindsOf(job: Job): BlankKind[] {
  const all = job.boards.reduce((sum, board) => sum + board.cost * board.quantity, 0) + 1;
  const values = job.parts.map(valueOf);
  const least = Math.min(...values.filter((value, p) => value > 0 && job.parts[p]!.quantity > 0));
  return cutTogether(job).map(({ parts, copies }) => {
    const members = runMembers(job, parts);
    const last = members[members.length - 1]!;
    const value = parts.reduce((sum, part) => sum + values[part]!, 0);
    // Under `least cost` every piece outweighs all the boards together, and a more valuable piece outweighs a lesser one.
    const penalty = job.shop.goal === 'most value' ? value : all * (value > 0 ? value / least : 1);
    return {
      members,
      strips: 1,
      length: last.offset + last.length,
      width: Math.max(...members.map((member) => member.width)),
      demand: copies,
      penalty,
    };
  });
}
