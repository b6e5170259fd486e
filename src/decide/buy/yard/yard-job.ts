import type { Choice } from '../../../flow/choice/choice.ts';
import { type Progress, retold, within } from '../../../flow/choice/progress.ts';
import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { ComesOut } from '../comes-out/completer.ts';
import type { Solvers } from '../solve-job.ts';

/** What may be bought: how many copies of each yard row, in the yard's order. */
export type Copies = readonly number[];

/** A way to complete the job: what is taken at the yard, and the layout that shows it suffices. */
export interface YardPlan {
  /** Copies taken of each yard row. */
  readonly taken: Copies;
  /** Money to be spent at the yard. */
  readonly money: number;
  /** No choice of allowed boards costs less: the solver's own word, or a bound's. */
  readonly proven: boolean;
  /** No choice of allowed boards costs less than this. */
  readonly atLeast: number;
  /** The job that was laid out (owned boards first, at no cost, then the yard's), and its layout. */
  readonly job: Job;
  readonly choice: Choice;
  /** Where each yard row stands among that job's boards; null for a row that was not allowed. */
  readonly at: readonly (number | null)[];
}

/**
 * The question put to the solver: complete the parts with boards that are owned, at no cost since they are paid for, and
 * yard boards at their price. Only the money to be spent now counts: offcut credit is left out, and so is the worth of
 * parts.
 */
export function yardJob(
  owned: Job,
  yard: readonly Board[],
  allowed: Copies,
): { readonly job: Job; readonly rows: readonly number[] } {
  const rows = yard.flatMap((_, row) => ((allowed[row] ?? 0) > 0 ? [row] : []));
  const known = new Set(owned.boards.map(({ name }) => name));
  const offered = rows.map((row) => ({
    ...yard[row]!,
    name: nameBeside(known, yard[row]!.name),
    quantity: allowed[row]!,
    cost: yard[row]!.cost,
  }));
  const boards = [...owned.boards.map((board) => ({ ...board, cost: 0 })), ...offered];
  return { job: { ...owned, shop: { ...owned.shop, goal: 'least cost', offcutCredit: 0 }, boards }, rows };
}

/** A row of which copies are owned already is told apart from them: a layout knows boards by their names. */
function nameBeside(known: ReadonlySet<string>, name: string): string {
  return known.has(name) ? nameBeside(known, `${name} at the yard`) : name;
}

/** What the cheapest choice is asked of: the bound only where the solver has no proof of its own. */
export type PlanSolvers = Pick<Solvers, 'cheapest' | 'least' | 'stop'>;

/**
 * The cheapest way to complete the job out of the allowed boards; null when it does not come out.
 * @param doing what is said of it
 */
export function* cheapestPlan(
  owned: Job,
  yard: readonly Board[],
  allowed: Copies,
  { cheapest, least, stop }: PlanSolvers,
  doing: string,
): Generator<Progress<YardPlan>, YardPlan | null, void> {
  const { job, rows } = yardJob(owned, yard, allowed);
  const none = (): number => 0;
  const steps = retold(cheapest(job), (said) => ({ ...said, doing: `${doing}: ${said.doing}` }));
  const choice = yield* within(steps, (found) =>
    found === null ? null : planOf(owned, yard, { job, rows }, found, none),
  );
  return planOf(owned, yard, { job, rows }, choice, stop?.() === true ? none : least);
}

/** What a layout of the yard's job takes; null where it lays out too little. */
function planOf(
  owned: Job,
  yard: readonly Board[],
  { job, rows }: ReturnType<typeof yardJob>,
  choice: Choice,
  least: Solvers['least'],
): YardPlan | null {
  if (choice.short.length > 0) return null;
  const taken = takenCopies(choice, owned.boards.length, rows, yard.length);
  const money = taken.reduce((sum, copies, row) => sum + copies * yard[row]!.cost, 0);
  const { bound } = choice.proof;
  const atLeast = Math.min(money, choice.proof.proven ? bound : Math.max(bound, least(job)));
  const proven = choice.proof.proven || atLeast >= money - 1e-7 * (1 + money);
  const at = yard.map((_, row) => {
    const place = rows.indexOf(row);
    return place < 0 ? null : owned.boards.length + place;
  });
  return { taken, money, proven, atLeast, job, choice, at };
}

/** Whether the job comes out of these boards, whatever they cost. */
export function suffices(owned: Job, yard: readonly Board[], bought: Copies, comesOut: ComesOut): boolean {
  return comesOut(yardJob(owned, yard, bought).job) !== null;
}

function takenCopies(choice: Choice, ownedRows: number, rows: readonly number[], yardRows: number): number[] {
  const taken = Array.from({ length: yardRows }, () => 0);
  for (const { board, pieces } of choice.patterns) {
    const row = rows[board - ownedRows];
    if (row !== undefined && pieces.length > 0) taken[row] = taken[row]! + 1;
  }
  return taken;
}
