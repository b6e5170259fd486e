import { blankOf } from '../../flow/parts/blank.ts';
import type { Part } from '../../flow/parts/part.ts';
import { type RunGroups, waysToBreak } from '../../flow/plan/run-break.ts';
import type { Board } from '../../flow/stock/board.ts';
import type { Face } from '../../flow/stock/defect.ts';
import type { Job } from '../../flow/stock/job.ts';
import { faceHoldsRun, holdsRun, runStrip } from '../../flow/stock/run-strip.ts';
import { usable } from '../../flow/stock/usable.ts';
import type { Focus } from './focus.ts';
import type { Hindrance } from './hindrance.ts';

/** How a board's face may carry the lead: with its whole run, or with the stretch of it that the face can hold. */
export type Carriage =
  | { readonly kind: 'may'; readonly ways: readonly RunGroups[] }
  | { readonly kind: 'cannot'; readonly why: Hindrance };

/** So many ways to break a run are laid out, until one leaves nothing short. */
const mostWays = 3;

/**
 * Whether this face has room for the lead by itself, and which stretches of its run fit there with it, the best first:
 * the run whole, else broken by the rules of `waysToBreak`. Ways whose other stretches fit on no board come last.
 */
export function carriageOn(job: Job, focus: Focus, board: Board, face: Face): Carriage {
  const lead = job.parts[focus.lead]!;
  const why = hindranceFor(lead, board, face, job);
  if (why !== null) return { kind: 'cannot', why };
  if (focus.members.length === 1) return { kind: 'may', ways: [[[lead.name]]] };
  const parts = focus.members.map((index) => job.parts[index]!);
  const inGroup = (names: readonly string[]): Part[] => parts.filter(({ name }) => names.includes(name));
  const ways = waysToBreak(
    parts.map(({ name }) => name),
    focus.members.indexOf(focus.lead),
  ).filter((groups) => {
    const own = inGroup(groups.find((names) => names.includes(lead.name)) ?? []);
    return own.every((part) => isFree(part, board, face)) && faceHoldsRun(own, board, job.shop, face);
  });
  const restFits = (groups: RunGroups): boolean =>
    groups.every(
      (names) =>
        names.includes(lead.name) || job.boards.some((other) => holdsRun(inGroup(names), other, job.shop)),
    );
  const sorted = [...ways.filter(restFits), ...ways.filter((groups) => !restFits(groups))];
  return { kind: 'may', ways: sorted.slice(0, mostWays) };
}

function isFree({ pin }: Part, board: Board, face: Face): boolean {
  return pin === null || (pin.board === board.name && (pin.face === null || pin.face === face));
}

function hindranceFor(lead: Part, board: Board, face: Face, { shop }: Job): Hindrance | null {
  if (!isFree(lead, board, face)) return { kind: 'pinned elsewhere', ...lead.pin! };
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
