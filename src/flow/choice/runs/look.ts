import type { Job } from '../../stock/job.ts';
import type { Choice } from '../choice.ts';
import { chooseMatching } from '../choose-matching.ts';
import { type Progress, type SolveOptions, retold } from '../progress.ts';

/** What a look at a job says: a layout of all its parts; that there is none, proven; or neither. */
export type Seen =
  | { readonly kind: 'whole'; readonly choice: Choice }
  | { readonly kind: 'none' }
  | { readonly kind: 'open'; readonly choice: Choice };

/**
 * What all boards together cost while only this is asked, whether they hold the parts. So little beside what a missing piece
 * costs that hardly a part of one can be left open by the bound unseen; yet not nothing, since then all patterns tie.
 */
const costOfAll = 0.02;

/**
 * Looks whether all parts of a job can be laid out, whatever the boards cost. Ends as soon as that is known.
 * @param effort 0 for a glance
 */
export function* look(
  job: Job,
  effort: number,
  { seed, stop, thread }: SolveOptions,
): Generator<Progress<never>, Seen, void> {
  const total = job.boards.reduce((sum, { cost, quantity }) => sum + cost * quantity, 0);
  const boards = job.boards.map((board) => ({
    ...board,
    cost: total > 0 ? (board.cost * costOfAll) / total : 0,
  }));
  const asked: Job = { ...job, boards, shop: { ...job.shop, goal: 'least cost', offcutCredit: 0 } };
  const options = { seed, effort, thread, untilKnown: true, ...(stop === undefined ? {} : { stop }) };
  const steps = chooseMatching(asked, options);
  const choice = yield* retold(steps, () => ({
    doing: 'how far the grain can run on',
    value: null,
    bound: null,
  }));
  if (choice.short.length === 0) return { kind: 'whole', choice: atCost(job, choice) };
  return choice.cannotHold === true ? { kind: 'none' } : { kind: 'open', choice };
}

/** The choice at what its boards cost; of other layouts nothing is known. */
function atCost({ boards }: Job, choice: Choice): Choice {
  const value = choice.patterns.reduce((sum, { board }) => sum + boards[board]!.cost, 0);
  const proven = value === 0;
  return { ...choice, proof: { value, bound: 0, gap: proven ? 0 : 1, proven } };
}
