import { counted, money, percent } from '../../../flow/sheet/words/number-text.ts';
import type { RunInStretches } from '../../../flow/choice/runs/break-way.ts';
import { stretchWords } from '../../../flow/sheet/words/grain-words.ts';
import { unnamedWood } from '../../../flow/sheet/words/wood-words.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { SpareAnswer } from './spares.ts';
import type { Copies, YardPlan } from './yard-job.ts';

/** `Y3, Y7 × 2`; `nothing` for no board. */
export function takenText(yard: readonly Board[], taken: Copies): string {
  const words = taken.flatMap((copies, row) =>
    copies === 0 ? [] : [`${nameText(yard[row]!.name, 40)}${copies > 1 ? ` × ${copies}` : ''}`],
  );
  return words.length === 0 ? 'nothing' : words.join(', ');
}

/** Whether a plan takes any board of the yard, be it for nothing. */
export function buysAny({ taken }: YardPlan): boolean {
  return taken.some((copies) => copies > 0);
}

/** How sure it is that no choice costs less. The bound is rounded down, so that the sentence stays true. */
export function proofWords(plan: YardPlan): string {
  if (!buysAny(plan)) return 'What is owned suffices: nothing has to be bought.';
  if (plan.proven)
    return `Proven: no choice of these boards completes the job for less than ${money(plan.money)}.`;
  const least = Math.floor(plan.atLeast * 100 + 1e-6) / 100;
  if (least <= 0) return 'The cheapest choice found; it is not proven that no other costs less.';
  return `No choice of these boards can cost less than ${money(least)}; this one is at most ${percent((plan.money - least) / least)} more.`;
}

/** Which runs are broken, and why; nothing where all are whole. */
export function brokenWords(broken: readonly RunInStretches[]): string[] {
  return broken.map(
    ({ run, stretches }) =>
      `${nameText(run, 40)} is cut as ${stretchWords(stretches)}: with a better grain no layout on these boards was found.`,
  );
}

/** What a runner-up does otherwise: boards left out and boards taken instead. */
export function differenceWords(yard: readonly Board[], best: YardPlan, other: YardPlan): string {
  const change = best.taken.map((copies, row) => other.taken[row]! - copies);
  const out = takenText(
    yard,
    change.map((by) => Math.max(0, -by)),
  );
  const instead = takenText(
    yard,
    change.map((by) => Math.max(0, by)),
  );
  return `without ${out}; instead ${instead}`;
}

/** What is to be said of boards without a species among those of a plan; null for nothing. */
export function unnamedIn({ job, choice }: YardPlan): string | null {
  return unnamedWood(
    job,
    choice.patterns.map(({ board }) => job.boards[board]!.name),
  );
}

/** The parts that come out of each board of a plan, by index of the board in the plan's job. */
export function partsOn(plan: YardPlan): ReadonlyMap<number, readonly string[]> {
  const parts = new Map<number, string[]>();
  for (const { board, pieces } of plan.choice.patterns) {
    const names = pieces.map(({ part }) => plan.job.parts[part]!.name);
    parts.set(board, [...(parts.get(board) ?? []), ...names]);
  }
  return parts;
}

/** `front, ledger × 2` */
export function partsText(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts]
    .map(([name, count]) => `${nameText(name, 40)}${count > 1 ? ` × ${count}` : ''}`)
    .join(', ');
}

/** Names of the owned boards that a plan uses. */
export function ownedUsed(owned: Job, plan: YardPlan): string[] {
  return plan.choice.patterns
    .filter(({ board, pieces }) => board < owned.boards.length && pieces.length > 0)
    .map(({ board }) => owned.boards[board]!.name);
}

/** What spare boards add, in sentences. */
export function spareWords(
  yard: readonly Board[],
  { losses, survived, repairs, options, cheapest }: SpareAnswer,
): string[] {
  const risk = 'If any one taken board turns out unusable once it is planed';
  if (survived.length === losses.length)
    return [`${risk}, the job still comes out of the others: no spare is needed.`];
  const lines: string[] = [];
  if (survived.length > 0)
    lines.push(`${takenText(yard, oneEach(yard, survived))} could be lost without harm.`);
  if (cheapest === null) {
    const lost = repairs.filter(({ repair }) => repair === null).map(({ lost: row }) => row);
    lines.push(
      `Nothing was found among the boards left at the yard that makes good the loss of ${takenText(yard, oneEach(yard, lost))}: look at ${lost.length === 1 ? 'that board' : 'those boards'} twice.`,
    );
    for (const { lost: row, repair } of repairs)
      if (repair !== null)
        lines.push(
          `The loss of ${nameText(yard[row]!.name, 40)}: ${takenText(yard, repair.copies)} for ${money(repair.money)} makes it good.`,
        );
  } else {
    const sure =
      cheapest.money <= cheapest.atLeast + 1e-6
        ? 'no spares that do so cost less'
        : cheapest.cheaperTried
          ? 'every cheaper set was tried, and the solver found none that does'
          : 'cheaper sets were not all tried';
    lines.push(
      `${risk}, ${takenText(yard, cheapest.copies)} for ${money(cheapest.money)} more makes it good (${sure}).`,
    );
  }
  if (options.length === 0) lines.push('No single spare makes any of these losses good.');
  return lines;
}

/** What one spare covers: `makes good the loss of Y2 or Y5 (2 of 4)`. */
export function coverWords(yard: readonly Board[], covers: readonly number[], of: number): string {
  const names = covers.map((row) => nameText(yard[row]!.name, 40));
  return `makes good the loss of ${names.join(' or ')} (${covers.length} of ${of})`;
}

/** Count and money of a plan: `3 boards, $96.40`. */
export function planText(plan: YardPlan): string {
  return `${counted(
    plan.taken.reduce((sum, copies) => sum + copies, 0),
    'board',
  )}, ${money(plan.money)}`;
}

function oneEach(yard: readonly Board[], rows: readonly number[]): Copies {
  return yard.map((_, row) => (rows.includes(row) ? 1 : 0));
}

/** What to say of an answer that was ended early. */
export const cutShort = 'Stopped early: not every other choice was looked for, and no spare boards.';

/** What to say where no runner-up was found. */
export const noRunnerUp =
  'No other choice of these boards was found to complete the job, but those that merely add boards.';
