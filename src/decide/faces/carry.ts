import { blankOf } from '../../flow/parts/blank.ts';
import { suits } from '../../flow/parts/match.ts';
import type { Part } from '../../flow/parts/part.ts';
import { mayBreak } from '../../flow/parts/plan-parts.ts';
import type { Board } from '../../flow/stock/board.ts';
import type { Face } from '../../flow/stock/defect.ts';
import type { Job } from '../../flow/stock/job.ts';
import { faceHoldsRun, runStrip } from '../../flow/stock/run-strip.ts';
import { usable } from '../../flow/stock/usable.ts';
import type { Focus } from './focus.ts';
import type { Hindrance } from './hindrance.ts';

/**
 * Why this face cannot carry the lead; null where it may. A run that may be broken is left to the layout, but for the lead itself;
 * one that must stay whole needs room here for all of it.
 */
export function hindranceOn(job: Job, focus: Focus, board: Board, face: Face): Hindrance | null {
  const lead = job.parts[focus.lead]!;
  const why = hindranceFor(lead, board, face, job);
  if (why !== null || lead.run === null || focus.members.length === 1 || mayBreak(lead.run, job.shop))
    return why;
  const run = focus.members.map((index) => job.parts[index]!);
  const other = run.find((part) => !isFree(part, board, face));
  if (other !== undefined) return { kind: 'pinned elsewhere', ...other.pin! };
  return faceHoldsRun(run, board, job.shop, face)
    ? null
    : { kind: 'no clear stretch', ...runStrip(run, job.shop) };
}

function isFree({ pin }: Part, board: Board, face: Face): boolean {
  return pin === null || (pin.board === board.name && (pin.face === null || pin.face === face));
}

function hindranceFor(lead: Part, board: Board, face: Face, { shop }: Job): Hindrance | null {
  if (!isFree(lead, board, face)) return { kind: 'pinned elsewhere', ...lead.pin! };
  if (!suits(lead, board)) return { kind: 'other species', has: board.species, asked: lead.species };
  if (board.dressedThickness < lead.thickness)
    return { kind: 'too thin', has: board.dressedThickness, needs: lead.thickness };
  const area = usable(board, shop);
  const blank = blankOf(lead, shop, lead.glueUp);
  const turned = { length: blank.width, width: blank.length };
  const lies = { along: [blank], across: [turned], any: [blank, turned] }[lead.grain];
  const sizes = lies.filter(({ length, width }) => length <= area.length && width <= area.width);
  if (sizes.length === 0) {
    const { length, width } = lies[0]!;
    return length > area.length
      ? { kind: 'too short', has: Math.max(0, area.length), needs: length }
      : { kind: 'too narrow', has: Math.max(0, area.width), needs: width };
  }
  // A glue-up or a turned part is left to the solver: this sieve only knows one strip along the grain.
  if (lead.glueUp > 1 || lead.grain !== 'along' || faceHoldsRun([lead], board, shop, face)) return null;
  return { kind: 'no clear stretch', ...runStrip([lead], shop) };
}
