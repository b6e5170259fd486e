import { performance } from 'node:perf_hooks';
import highsPackage from 'highs';
import { buildInstance } from '../../src/flow/choice/build-instance.ts';
import type { Column } from '../../src/flow/choice/column.ts';
import { dive } from '../../src/flow/choice/dive.ts';
import { wholeRest } from '../../src/flow/choice/generate.ts';
import { areaWorth, greedy } from '../../src/flow/choice/greedy.ts';
import type { Instance } from '../../src/flow/choice/instance.ts';
import { solveNode } from '../../src/flow/choice/node.ts';
import { emptyStore } from '../../src/flow/choice/store.ts';
import type { Job } from '../../src/flow/stock/job.ts';

/** What the independent MIP solver made of the generated columns. */
export interface ByMip {
  readonly status: string;
  /** Cost of its choice among these columns; NaN when it found none. */
  readonly cost: number;
  readonly columns: number;
  readonly seconds: number;
}

/** The package's default export; its types describe the CommonJS file, whose default lies one level deeper. */
const loadHighs = highsPackage as unknown as typeof highsPackage.default;

/** Patterns made as the solver makes its first: greedy, column generation at the root, one dive. */
function columnsOf(instance: Instance, seconds: number): readonly Column[] {
  const start = performance.now();
  const store = emptyStore();
  const rounds = { first: 2, later: 6, until: Infinity, fine: false };
  const limits = { rounds: 200, enough: Infinity, until: Infinity, capped: true, counts: false };
  for (const steps of [
    greedy(instance, wholeRest(instance), store.pool, areaWorth(instance), { fine: false, fromPool: false }),
    solveNode(instance, wholeRest(instance), store, [], limits),
    dive(instance, wholeRest(instance), store.pool, rounds),
  ]) {
    while (steps.next().done !== true && performance.now() - start < 1000 * seconds);
  }
  return store.pool.columns;
}

/**
 * The master over these columns with whole uses, in CPLEX LP format: least cost, every piece once or more, no
 * more copies of a board than there are. One term a line, since readers cut long ones.
 */
function lpText(instance: Instance, columns: readonly Column[]): string {
  const terms = (of: (column: Column) => number): string =>
    columns.flatMap((column, c) => (of(column) === 0 ? [] : [`+ ${of(column)} x${c}`])).join('\n');
  const count = (column: Column, kind: number): number => column.counts[column.kinds.indexOf(kind)] ?? 0;
  const cover = instance.kinds.map(
    (kind, k) => `k${k}: ${terms((column) => count(column, k))} >= ${kind.demand}`,
  );
  const copies = instance.groups.flatMap((group, g) => {
    const used = terms((column) => (column.group === g ? 1 : 0));
    return used === '' ? [] : [`g${g}: ${used} <= ${group.copies}`];
  });
  const names = columns.map((_, c) => `x${c}`);
  return [
    'Minimize\ncost:',
    terms((column) => column.cost),
    'Subject To',
    ...cover,
    ...copies,
    'General',
    ...names,
    'End\n',
  ].join('\n');
}

/** Chooses among generated columns by an independent MIP solver; `seconds` bounds the making and the choosing each. */
export async function measureMip(job: Job, seconds: number): Promise<ByMip> {
  const instance = buildInstance(job);
  const columns = columnsOf(instance, seconds);
  const highs = await loadHighs();
  const start = performance.now();
  const { Status, Columns } = highs.solve(lpText(instance, columns), {
    time_limit: seconds,
    mip_rel_gap: 0,
    output_flag: false,
  });
  const times = columns.map((_, c) => {
    const found = Columns[`x${c}`];
    return found !== undefined && 'Primal' in found ? Math.round(found.Primal) : 0;
  });
  return {
    status: Status,
    cost: costOf(instance, columns, times),
    columns: columns.length,
    seconds: (performance.now() - start) / 1000,
  };
}

/** Cost of using the columns so often, worked anew; NaN when that leaves a piece out or uses a board too often. */
function costOf(instance: Instance, columns: readonly Column[], times: readonly number[]): number {
  const made = instance.kinds.map(() => 0);
  const used = instance.groups.map(() => 0);
  let cost = 0;
  columns.forEach((column, c) => {
    const uses = times[c] ?? 0;
    cost += uses * column.cost;
    used[column.group]! += uses;
    column.kinds.forEach((kind, i) => (made[kind]! += uses * column.counts[i]!));
  });
  const complete = instance.kinds.every((kind, k) => made[k]! >= kind.demand);
  const held = instance.groups.every((group, g) => used[g]! <= group.copies);
  return complete && held ? cost : NaN;
}
