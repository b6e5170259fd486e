import type { Column } from '../column.ts';
import { type Pool, addToPool, emptyPool } from '../generate.ts';
import type { Instance } from '../instance.ts';
import type { Store } from '../node.ts';

/** The job on a few boards that are paid for already: what is left to be minimised is all but the boards' own cost. */
export interface OnBoards {
  readonly instance: Instance;
  /** Group of the whole job for each group here. */
  readonly groups: readonly number[];
  readonly store: Store;
}

function moved(column: Column, group: number, cost: number): Column {
  return { ...column, group, cost: column.cost + cost };
}

/** The job on the boards taken, with all patterns and caps known of them. */
export function onBoards(whole: Instance, store: Store, copies: Int32Array): OnBoards {
  const groups = [...copies.keys()].filter((g) => copies[g]! > 0);
  const instance: Instance = {
    ...whole,
    groups: groups.map((g) => ({ ...whole.groups[g]!, copies: copies[g]!, cost: 0 })),
  };
  const at = new Map(groups.map((g, index) => [g, index]));
  const take = (pool: Pool): Pool => {
    const here = emptyPool();
    for (const column of pool.columns) {
      const index = at.get(column.group);
      if (index !== undefined) addToPool(here, moved(column, index, -whole.groups[column.group]!.cost));
    }
    return here;
  };
  const caps = [...store.caps.values()].flatMap((row) => {
    const group = at.get(row.group);
    return group === undefined ? [] : [[`${group}|${row.kind}`, { ...row, group }] as const];
  });
  return {
    instance,
    groups,
    store: { pool: take(store.pool), relaxed: take(store.relaxed), caps: new Map(caps) },
  };
}

/** The columns as the whole job has them. */
export function backToWhole(whole: Instance, { groups }: OnBoards, columns: readonly Column[]): Column[] {
  return columns.map((column) => {
    const group = groups[column.group]!;
    return moved(column, group, whole.groups[group]!.cost);
  });
}

/** Keeps what was learnt on the boards for the whole job. */
export function keepLearnt(whole: Instance, store: Store, here: OnBoards): void {
  for (const column of backToWhole(whole, here, here.store.pool.columns)) addToPool(store.pool, column);
  for (const column of backToWhole(whole, here, here.store.relaxed.columns)) addToPool(store.relaxed, column);
  for (const row of here.store.caps.values()) {
    const group = here.groups[row.group]!;
    const key = `${group}|${row.kind}`;
    if (!store.caps.has(key)) store.caps.set(key, { ...row, group });
  }
}
