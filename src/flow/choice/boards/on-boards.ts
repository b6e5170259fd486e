import type { Column } from '../column.ts';
import { type Pool, addToPool, emptyPool } from '../generate.ts';
import type { Instance } from '../instance.ts';
import type { Store } from '../store.ts';

/**
 * Share of a board's cost that is still to be paid when it is used. Next to nothing, but not nothing: with boards for
 * free every pattern is tied with every other, and the simplex goes in circles.
 */
export const shareLeft = 0.05;

/** The job on a few boards that are paid for, nearly: what is left to be minimised is what they leave uncovered. */
export interface OnBoards {
  readonly instance: Instance;
  /** Group of the whole job for each group here. */
  readonly groups: readonly number[];
  /** What is paid for a copy of each group here before it is used. */
  readonly paid: readonly number[];
  readonly store: Store;
}

function moved(column: Column, group: number, cost: number): Column {
  return { ...column, group, cost: column.cost + cost };
}

/**
 * The job on the boards taken, with all patterns and caps known of them.
 * @param withOthers the other boards stay at hand, at their full cost
 */
export function onBoards(whole: Instance, store: Store, copies: Int32Array, withOthers: boolean): OnBoards {
  const groups = [...copies.keys()].filter((g) => withOthers || copies[g]! > 0);
  const paid = groups.map((g) => (copies[g]! > 0 ? (1 - shareLeft) * whole.groups[g]!.cost : 0));
  const instance: Instance = {
    ...whole,
    groups: groups.map((g, index) => {
      const group = whole.groups[g]!;
      return { ...group, copies: copies[g]! || group.copies, cost: group.cost - paid[index]! };
    }),
  };
  const at = new Map(groups.map((g, index) => [g, index]));
  const take = (pool: Pool): Pool => {
    const here = emptyPool();
    for (const column of pool.columns) {
      const index = at.get(column.group);
      if (index !== undefined) addToPool(here, moved(column, index, -paid[index]!));
    }
    return here;
  };
  const caps = [...store.caps.values()].flatMap((row) => {
    const group = at.get(row.group);
    return group === undefined ? [] : [[`${group}|${row.kind}|${row.perCopy}`, { ...row, group }] as const];
  });
  return {
    instance,
    groups,
    paid,
    store: {
      pool: take(store.pool),
      relaxed: take(store.relaxed),
      caps: new Map(caps),
      unfit: store.unfit,
      counted: store.counted,
    },
  };
}

/** The columns as the whole job has them. */
export function backToWhole({ groups, paid }: OnBoards, columns: readonly Column[]): Column[] {
  return columns.map((column) => moved(column, groups[column.group]!, paid[column.group]!));
}

/** Keeps what was learnt on the boards for the whole job. */
export function keepLearnt(store: Store, here: OnBoards): void {
  for (const column of backToWhole(here, here.store.pool.columns)) addToPool(store.pool, column);
  for (const column of backToWhole(here, here.store.relaxed.columns)) addToPool(store.relaxed, column);
  for (const row of here.store.caps.values()) {
    const group = here.groups[row.group]!;
    const key = `${group}|${row.kind}|${row.perCopy}`;
    if (!store.caps.has(key)) store.caps.set(key, { ...row, group });
  }
}
