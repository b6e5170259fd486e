import { type Column, besideCost, columnKey } from './column.ts';
import { countedInAll, isOvercounted } from './counted-kinds.ts';
import { type Pool, type Rest, addToPool, fitsRest, likelyColumns } from './generate.ts';
import { type GroupRow, besideRows, sideRow } from './group-row.ts';
import type { Instance } from './instance.ts';
import { type Master, openMaster } from './master.ts';
import { wantedOf } from './wanted.ts';
import type { Store } from './store.ts';

/** A master with more columns for each of its rows is opened afresh with the likelier ones. */
const mostColumnsPerRow = 8;

/** A master kept open from round to round, and how much of the store it has. */
export interface OpenMaster {
  readonly master: Master;
  readonly rows: readonly GroupRow[];
  readonly columns: Column[];
  readonly keys: Set<string>;
  readonly caps: number;
  /** Kinds counted when it was opened. */
  readonly counted: number;
  pool: number;
  relaxed: number;
}

/** Opens a master without columns for a node's rows and the caps met so far. */
export function openedAt(
  instance: Instance,
  rest: Rest,
  store: Store,
  branching: readonly GroupRow[],
): OpenMaster {
  // A cap met where fewer were wanted does not hold here.
  const caps = [...store.caps.values()].filter(({ kind, perCopy }) => perCopy >= rest.demand[kind]!);
  const rows = [...branching, ...besideRows(instance, rest), ...caps];
  const master = openMaster(
    {
      ...wantedOf(instance, rest),
      penalty: instance.kinds.map((kind) => kind.penalty),
      copies: [...rest.copies],
    },
    rows.map(sideRow),
  );
  return {
    master,
    rows,
    columns: [],
    keys: new Set(),
    caps: store.caps.size,
    counted: countedInAll(store.counted),
    pool: 0,
    relaxed: 0,
  };
}

/** Brings the store's new columns in; a cap met since then needs a master of its own. */
export function broughtUp(
  open: OpenMaster,
  instance: Instance,
  rest: Rest,
  store: Store,
  branching: readonly GroupRow[],
): OpenMaster {
  const most = mostColumnsPerRow * (instance.kinds.length + instance.groups.length);
  const isStale =
    open.caps !== store.caps.size ||
    open.counted !== countedInAll(store.counted) ||
    open.columns.length > most;
  const here = isStale ? openedAt(instance, rest, store, branching) : open;
  const { pool, relaxed } = store;
  if (here.pool === 0) {
    for (const column of likelyColumns(instance, rest, pool)) addColumn(here, instance, column);
    here.pool = pool.columns.length;
  }
  for (; here.pool < pool.columns.length; here.pool += 1) {
    const column = pool.columns[here.pool]!;
    if (fitsRest(column, rest)) addColumn(here, instance, column);
  }
  for (; here.relaxed < relaxed.columns.length; here.relaxed += 1) {
    const column = relaxed.columns[here.relaxed]!;
    if (rest.copies[column.group]! === 0) continue;
    if (!isOvercounted(instance, store.counted, rest.demand, column)) addColumn(here, instance, column);
  }
  return here;
}

function addColumn({ master, columns, keys }: OpenMaster, { groups }: Instance, column: Column): void {
  master.add({ ...column, cost: column.cost - besideCost(column, groups[column.group]!) });
  columns.push(column);
  keys.add(columnKey(column));
}

/** Keeps a column, and sees that the master gets it: one that was left out as unlikely comes in now. False when the master has it. */
export function bringIn(open: OpenMaster, instance: Instance, pool: Pool, column: Column): boolean {
  if (addToPool(pool, column)) return true;
  if (column.kinds.length === 0 || open.keys.has(columnKey(column))) return false;
  addColumn(open, instance, column);
  return true;
}
