import type { CountedKinds } from './counted-kinds.ts';
import type { Unfit } from './exact-pattern.ts';
import { type Pool, emptyPool } from './generate.ts';
import type { GroupRow } from './group-row.ts';

/** What the search keeps from node to node. */
export interface Store {
  /** Patterns that keep the caps: these may be cut. */
  readonly pool: Pool;
  /** Patterns that use some kind more often than it is wanted: they only tighten the bound's bookkeeping. */
  readonly relaxed: Pool;
  /** Caps met so far: group and kind. */
  readonly caps: Map<string, GroupRow>;
  readonly unfit: Unfit;
  readonly counted: CountedKinds;
}

/** A store with nothing in it yet; what was learnt of the same plates before is passed on. */
export function emptyStore(known: Pick<Store, 'unfit' | 'counted'> | null = null): Store {
  const { unfit, counted } = known ?? { unfit: new Map(), counted: new Map() };
  return { pool: emptyPool(), relaxed: emptyPool(), caps: new Map(), unfit, counted };
}
