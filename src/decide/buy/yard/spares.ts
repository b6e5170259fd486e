import type { Board } from '../../../flow/stock/board.ts';
import type { Job } from '../../../flow/stock/job.ts';
import type { Progress } from '../../../flow/choice/progress.ts';
import type { Solvers } from '../solve-job.ts';
import { type Copies, type YardPlan, cheapestPlan, suffices } from './yard-job.ts';

/** What one spare board is good for. */
export interface SpareOption {
  /** Row of the yard. */
  readonly row: number;
  readonly price: number;
  /** Rows of taken boards whose loss it makes good. */
  readonly covers: readonly number[];
}

/** The spare boards that make good the loss of any one taken board. */
export interface SpareSet {
  readonly copies: Copies;
  readonly money: number;
  /** No set that does so costs less than this: the solver's bound on the dearest single repair. */
  readonly atLeast: number;
  /** Whether every cheaper set was tried, and the solver found no layout with it. */
  readonly cheaperTried: boolean;
}

/** What makes one loss good. */
export interface Repair {
  /** Row of the lost board. */
  readonly lost: number;
  /** null where the solver found none among what is left at the yard. */
  readonly repair: { readonly copies: Copies; readonly money: number; readonly atLeast: number } | null;
}

/** What spare boards add to a choice. */
export interface SpareAnswer {
  /** Rows of taken boards; each may turn out unusable (one copy of it). */
  readonly losses: readonly number[];
  /** Losses that the job survives without any spare. */
  readonly survived: readonly number[];
  /** For each other loss alone, the cheapest boards that make it good. */
  readonly repairs: readonly Repair[];
  /** Single spares that cover at least one loss, cheapest first. */
  readonly options: readonly SpareOption[];
  /** null: for some loss no repair was found, or no spare is needed (all losses survived). */
  readonly cheapest: SpareSet | null;
}

/** Sets of spares tried before the search settles for the best one known. */
const mostSets = 60;

/**
 * Against the risk that any one taken board turns out unusable once it is planed: which single spares help against the
 * loss of which board, and the cheapest set of spares that makes good every such loss.
 *
 * For each loss alone the solver gives the cheapest repair; the dearest of these bounds every set from below, and all of
 * them together are a set that does. Between the two, sets are tried cheapest first.
 */
export function* spareAnswer(
  owned: Job,
  yard: readonly Board[],
  plan: YardPlan,
  solvers: Solvers,
): Generator<Progress, SpareAnswer, void> {
  const losses = plan.taken.flatMap((copies, row) => (copies > 0 ? [row] : []));
  const left = yard.map(({ quantity }, row) => quantity - plan.taken[row]!);
  const withSpares = (lost: number | null, spares: Copies): number[] =>
    plan.taken.map((copies, row) => copies - (row === lost ? 1 : 0) + spares[row]!);
  const tried = new Map<string, boolean>();
  const survives = (lost: number, spares: Copies): boolean => {
    const bought = withSpares(lost, spares);
    const key = bought.join(' ');
    const known = tried.get(key) ?? suffices(owned, yard, bought, solvers.comesOut);
    tried.set(key, known);
    return known;
  };
  const say = (doing: string): Progress => ({ doing, value: plan.money, bound: null });
  const none = yard.map(() => 0);
  const survived: number[] = [];
  const repairs: Repair[] = [];
  for (const lost of losses) {
    yield say(`without ${yard[lost]!.name}`);
    const repair = survives(lost, none)
      ? null
      : yield* repairOf(owned, yard, withSpares(lost, none), left, solvers);
    // What one solver does not see the other may: a layout is a layout.
    if (survives(lost, none) || repair?.copies.every((copies) => copies === 0) === true) survived.push(lost);
    else repairs.push({ lost, repair });
  }
  const options: SpareOption[] = [];
  for (const row of byPrice(yard, left)) {
    yield say(`${yard[row]!.name} as a spare`);
    const spare = none.map((_, at) => (at === row ? 1 : 0));
    const covers = repairs.filter(({ lost }) => survives(lost, spare)).map(({ lost }) => lost);
    if (covers.length > 0) options.push({ row, price: yard[row]!.cost, covers });
  }
  const cheapest = repairs.length === 0 ? null : yield* cheapestSet(yard, left, repairs, survives, say);
  return { losses, survived, repairs, options, cheapest };
}

/** The cheapest boards to add so that the job comes out of what is left after a loss; their price in `money`. */
function* repairOf(
  owned: Job,
  yard: readonly Board[],
  kept: Copies,
  left: Copies,
  solvers: Solvers,
): Generator<Progress, Repair['repair'], void> {
  const keptBoards = yard.flatMap((board, row) =>
    kept[row]! > 0 ? [{ ...board, quantity: kept[row]! }] : [],
  );
  const withKept = { ...owned, boards: [...owned.boards, ...keptBoards] };
  const plan = yield* cheapestPlan(withKept, yard, left, solvers, 'making good a loss');
  return plan === null ? null : { copies: plan.taken, money: plan.money, atLeast: plan.atLeast };
}

function byPrice(yard: readonly Board[], left: Copies): number[] {
  return yard
    .flatMap((_, row) => (left[row]! > 0 ? [row] : []))
    .sort((a, b) => yard[a]!.cost - yard[b]!.cost);
}

function* cheapestSet(
  yard: readonly Board[],
  left: Copies,
  repairs: readonly Repair[],
  survives: (lost: number, spares: Copies) => boolean,
  say: (doing: string) => Progress,
): Generator<Progress, SpareSet | null, void> {
  const found = repairs.map(({ repair }) => repair);
  if (found.some((repair) => repair === null)) return null;
  const together = yard.map((_, row) => Math.max(...found.map((repair) => repair!.copies[row]!)));
  const price = (copies: Copies): number =>
    copies.reduce((sum, count, row) => sum + count * yard[row]!.cost, 0);
  const atLeast = Math.max(...found.map((repair) => repair!.atLeast));
  const hardestFirst = [...repairs].sort((a, b) => b.repair!.money - a.repair!.money);
  const sets = setsByPrice(yard, left, atLeast, price(together));
  for (const spares of sets.slice(0, mostSets)) {
    yield say('spare boards together');
    if (hardestFirst.every(({ lost }) => survives(lost, spares))) {
      return { copies: spares, money: price(spares), atLeast, cheaperTried: true };
    }
  }
  return { copies: together, money: price(together), atLeast, cheaperTried: sets.length <= mostSets };
}

/**
 * The cheapest sets of boards left, cheapest first, whose price is at least `from` and below `below`; one more than are
 * ever tried tells that there were more. More than three of one row as spares is not looked into.
 */
function setsByPrice(yard: readonly Board[], left: Copies, from: number, below: number): Copies[] {
  const tolerance = 1e-9 * (1 + below);
  let sets: { readonly copies: Copies; readonly money: number }[] = [];
  const extend = (row: number, copies: readonly number[], money: number): void => {
    const dearest = sets.length > mostSets ? sets[mostSets]!.money : Infinity;
    if (money >= below - tolerance || money > dearest) return;
    if (row < yard.length) {
      for (let count = 0; count <= Math.min(3, left[row]!); count += 1) {
        extend(row + 1, [...copies, count], money + count * yard[row]!.cost);
      }
    } else if (money >= from - tolerance) {
      sets = [...sets, { copies, money }].sort((a, b) => a.money - b.money).slice(0, mostSets + 1);
    }
  };
  extend(0, [], 0);
  return sets.map(({ copies }) => copies);
}
