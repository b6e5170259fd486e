import { type Column, type Prices, columnKey, columnLoss, columnOf, columnWorth } from './column.ts';
import type { Instance } from './instance.ts';
import { type MasterAnswer, openMaster } from './master.ts';

/** The columns found so far, each once. */
export interface Pool {
  readonly columns: Column[];
  readonly keys: Set<string>;
  /** Prices of the last master over these columns, by which the likelier ones are told; null before the first. */
  prices: Prices | null;
}

/** Most columns that a master opens with, for each of its rows: many more cost time and seldom come into use. */
const columnsPerRow = 4;

/** The columns that can be cut from what is left; of many, those that the last prices make least dear. */
export function likelyColumns(instance: Instance, rest: Rest, { columns, prices }: Pool): Column[] {
  const fitting = columns.filter((column) => fitsRest(column, rest));
  const most = columnsPerRow * (instance.kinds.length + instance.groups.length);
  if (fitting.length <= most || prices === null) return fitting;
  const dear = fitting.map((column) => columnLoss(column, prices));
  const order = [...fitting.keys()].sort((a, b) => dear[a]! - dear[b]! || a - b);
  return order
    .slice(0, most)
    .sort((a, b) => a - b)
    .map((at) => fitting[at]!);
}

/** A pool with no columns yet. */
export function emptyPool(): Pool {
  return { columns: [], keys: new Set(), prices: null };
}

/** Adds a column unless the pool has one like it; says whether it did. */
export function addToPool(pool: Pool, column: Column): boolean {
  const key = columnKey(column);
  if (column.kinds.length === 0 || pool.keys.has(key)) return false;
  pool.keys.add(key);
  pool.columns.push(column);
  return true;
}

/** What is still to be cut, and from what. */
export interface Rest {
  readonly demand: Int32Array;
  readonly copies: Int32Array;
}

/** Everything still to be cut, from every copy of every board. */
export function wholeRest(instance: Instance): Rest {
  return {
    demand: Int32Array.from(instance.kinds, (kind) => kind.demand),
    copies: Int32Array.from(instance.groups, (group) => group.copies),
  };
}

/** Whether the column can be cut from what is left, no piece too many. */
export function fitsRest(column: Column, rest: Rest): boolean {
  return (
    rest.copies[column.group]! > 0 && column.kinds.every((kind, i) => column.counts[i]! <= rest.demand[kind]!)
  );
}

/**
 * How many patterns end a round: the master moves on before the other groups are priced at stale duals. One for every
 * five groups, at least eight.
 */
function enoughPatterns(instance: Instance): number {
  return Math.max(8, Math.ceil(instance.groups.length / 5));
}

/** Relative size below which a reduced cost counts as zero. */
export const reducedCostTolerance = 1e-7;

export interface Generated {
  readonly answer: MasterAnswer;
  /** The columns of the last master, aligned with `answer.use`. */
  readonly columns: readonly Column[];
  readonly rounds: number;
}

/** With more groups than this only those in play are priced, and how near its due the best pattern of such a group must come. */
const mostPriced = 40;
const nearDue = 0.95;

/** Groups of which some pattern met before nearly pays at these prices: others would hardly give one that does. */
function inPlay({ groups }: Instance, pool: Pool, { kindPrice, groupPrice }: MasterAnswer): boolean[] {
  if (groups.length <= mostPriced) return groups.map(() => true);
  const near = groups.map(() => false);
  for (const column of pool.columns) {
    const due = column.cost + groupPrice[column.group]!;
    if (columnWorth(column, kindPrice) >= nearDue * due) near[column.group] = true;
  }
  return near;
}

/**
 * Column generation with the capped pattern search: solve the master, price every group with what is left,
 * add the patterns of negative reduced cost, until a round finds none, `rounds` are done or the meter
 * passes `until`.
 * Yields after each round. The result is a good set of columns; the bound is another matter (node.ts).
 */
export function* generateColumns(
  instance: Instance,
  rest: Rest,
  pool: Pool,
  limits: { readonly rounds: number; readonly until: number; readonly fine: boolean },
): Generator<void, Generated, void> {
  const columns = likelyColumns(instance, rest, pool);
  const master = openMaster({
    demand: [...rest.demand],
    penalty: instance.kinds.map((kind) => kind.penalty),
    copies: [...rest.copies],
  });
  for (const column of columns) master.add(column);
  for (let round = 1; ; round += 1) {
    const answer = master.solve();
    if (round > limits.rounds || instance.meter.spent > limits.until)
      return { answer, columns, rounds: round };
    let found = 0;
    const enough = enoughPatterns(instance);
    const isInPlay = inPlay(instance, pool, answer);
    const turns = [...instance.groups.keys()]
      .map((turn) => (turn + round * enough) % instance.groups.length)
      .filter((g) => rest.copies[g] !== 0 && isInPlay[g]);
    // So many at a time as are needed at least, whatever they bring.
    for (let turn = 0; turn < turns.length && found < enough;) {
      const now = turns.slice(turn, turn + enough - found);
      turn += now.length;
      for (const column of pricedNow(instance, now, answer, rest, limits.fine)) {
        const gain = columnWorth(column, answer.kindPrice) - column.cost - answer.groupPrice[column.group]!;
        if (gain <= reducedCostTolerance * (1 + instance.groups[column.group]!.cost)) continue;
        if (!addToPool(pool, column)) continue;
        columns.push(column);
        master.add(column);
        found += 1;
      }
    }
    yield;
    if (found === 0) return { answer, columns, rounds: round };
  }
}

/** Of each of these groups, at most, a pattern within the caps that is worth more than it costs. */
function pricedNow(
  instance: Instance,
  groups: readonly number[],
  { kindPrice, groupPrice }: MasterAnswer,
  rest: Rest,
  fine: boolean,
): Column[] {
  const answers = instance.price(
    groups.map((g) => {
      const { pricer, cost } = instance.groups[g]!;
      const worth = worthOn(instance, g, kindPrice, rest);
      const target = cost + groupPrice[g]!;
      const how = fine ? 'fine' : 'rough';
      return { pricer, how, worth, target, slack: 0, caps: rest.demand, glanceFirst: true };
    }),
  );
  return answers.flatMap(({ pattern }, i) => {
    const g = groups[i]!;
    return pattern === null ? [] : [columnOf(g, pattern.placements, instance.groups[g]!)];
  });
}

/** Worth of a piece of each kind on one group: its dual less the credit it costs; 0 for a kind not wanted any more. */
export function worthOn(instance: Instance, g: number, price: Float64Array, rest: Rest): Float64Array {
  const { claims } = instance.groups[g]!;
  return price.map((each, k) => (rest.demand[k]! > 0 ? each - claims[k]! : 0));
}
