import { type PackingLp, openPackingLp } from '../../../base/lp/packing-lp.ts';
import {
  type Pattern,
  type Remainder,
  type Sticks,
  clipped,
  patternKey,
  patternWorth,
  wholeRemainder,
} from './sticks.ts';

/** Arcs that may not be used: for each kind −Infinity where a piece of it may not begin, by length left. */
export type Banned = readonly (Float64Array | undefined)[];

/** Whether the pattern, cut longest first, uses a banned arc. */
export function isBanned(sticks: Sticks, pattern: Pattern, banned: Banned): boolean {
  if (banned.length === 0) return false;
  let room = sticks.stocks[pattern.stock]!.length;
  for (let i = 0; i < pattern.kinds.length; i += 1) {
    const kind = pattern.kinds[i]!;
    for (let copy = 0; copy < pattern.counts[i]!; copy += 1) {
      if (banned[kind]?.[room] === -Infinity) return true;
      room -= sticks.lengths[kind]!;
    }
  }
  return false;
}

/** Where the search stands: what is left, and what may not be cut. */
export interface Restriction {
  readonly rest: Remainder;
  readonly banned: Banned;
  /** At least so many sticks of each stock are used; empty: 0. */
  readonly least: readonly number[];
}

export interface StickDuals {
  readonly kind: Float64Array;
  /** What a stick must earn beside its cost: the price of its scarcity less that of having to be used. */
  readonly stock: Float64Array;
  /** What scarcities and uses that must be are worth in all: the part of the objective beside the pieces'. */
  readonly fixed: number;
  readonly objective: number;
  /** Use of each pattern, aligned with `patterns`; patterns that the restriction forbids have 0. */
  readonly use: Float64Array;
  readonly patterns: readonly Pattern[];
  /** Sticks of each stock that must be used and hold nothing. */
  readonly idle: Float64Array;
  readonly certified: boolean;
}

/**
 * The restricted master of a job of sticks through its dual, as `openMaster`:
 *   max Σ d_k π_k − Σ q_g μ_g + Σ l_g ν_g   subject to   Σ a_kp π_k − μ_g + ν_g ≤ c_p,  ν_g − μ_g ≤ c_g,  π_k ≤ penalty_k,
 * with l_g the least use of stock g.
 * It can turn to another restriction from its last basis, since a fresh start costs far more pivots: demands are the
 * objective, and a pattern that the restriction forbids has its limit raised out of the way.
 */
export interface StickMaster {
  /** Turns to another restriction. */
  aim(at: Restriction): void;
  /** Adds a pattern unless it is there; says whether it did. */
  add(pattern: Pattern): boolean;
  solve(): StickDuals;
  /** A master of its own that stands where this one does; of many patterns it takes only those that pay best. */
  fork(): StickMaster;
  readonly size: () => number;
}

/**
 * Demands as the engine gets them, each a little more than it is: equal demands make a simplex stall for thousands of
 * pivots. At most 1e-6 each, so uses are right to about 1e-5; prices are judged with the true demands.
 */
function nudged(count: number, kind: number): number {
  return count <= 0 ? 0 : count + 1e-6 * ((kind * 0.6180339887) % 1);
}

/** Opens the restricted master of a job of sticks, without columns. */
export function openStickMaster(sticks: Sticks): StickMaster {
  const all = wholeRemainder(sticks);
  const lp = openPackingLp([
    ...Array.from(all.demand, nudged),
    ...Array.from(all.copies, (copies) => -copies),
    ...sticks.stocks.map(() => 0),
  ]);
  sticks.penalty.forEach((limit, k) => lp.addRow({ indices: [k], coefficients: [1], limit }));
  const kinds = sticks.lengths.length;
  const groups = sticks.stocks.length;
  sticks.stocks.forEach(({ cost }, g) =>
    lp.addRow({ indices: [kinds + g, kinds + groups + g], coefficients: [-1, 1], limit: cost }),
  );
  return standing(sticks, lp, [], { rest: all, banned: [], least: [] }, null);
}

/** A pattern in the master, and whether the restriction allows it. */
interface Entry {
  readonly pattern: Pattern;
  open: boolean;
}

function standing(
  sticks: Sticks,
  lp: PackingLp,
  entries: Entry[],
  from: Restriction,
  earlier: StickDuals | null,
): StickMaster {
  const kinds = sticks.lengths.length;
  const groups = sticks.stocks.length;
  /** Rows before those of the patterns. */
  const before = kinds + groups;
  const keys = new Set(entries.map(({ pattern }) => patternKey(pattern)));
  const away = 2 * sticks.penalty[0]! * sticks.demand.reduce((sum, count) => sum + count, 0);
  let at = from;
  let last = earlier;

  const add = (pattern: Pattern): boolean => {
    const key = patternKey(pattern);
    if (keys.has(key)) return false;
    keys.add(key);
    entries.push({ pattern, open: true });
    lp.addRow({
      indices: [...pattern.kinds, kinds + pattern.stock, kinds + groups + pattern.stock],
      coefficients: [...pattern.counts, -1, 1],
      limit: sticks.stocks[pattern.stock]!.cost,
    });
    return true;
  };

  return {
    add,
    size: () => entries.length + kinds,
    fork() {
      const most = Math.ceil(1.3 * kinds) + 60;
      const duals = last;
      if (duals === null || entries.length <= most) {
        const { lp: own } = lp.fork(() => true);
        return standing(
          sticks,
          own,
          entries.map((entry) => ({ ...entry })),
          at,
          last,
        );
      }
      const loss = entries.map(
        ({ pattern: p }) =>
          sticks.stocks[p.stock]!.cost + duals.stock[p.stock]! - patternWorth(p, duals.kind),
      );
      const bar = [...loss].sort((a, b) => a - b)[most]!;
      const { lp: own, rows } = lp.fork((row) => row < before || loss[row - before]! < bar);
      const left = rows.flatMap((row) => (row < before ? [] : [{ ...entries[row - before]! }]));
      return standing(sticks, own, left, at, last);
    },
    aim(to) {
      at = to;
      const used = last === null ? [] : last.patterns.filter((_, p) => last!.use[p]! > 1e-9);
      at.rest.demand.forEach((count, k) => lp.setObjective(k, nudged(count, k)));
      at.rest.copies.forEach((copies, g) => lp.setObjective(kinds + g, -Math.max(0, copies)));
      sticks.stocks.forEach((_, g) => lp.setObjective(kinds + groups + g, at.least[g] ?? 0));
      entries.forEach((entry, p) => {
        const { pattern } = entry;
        const fits = clipped(pattern, at.rest) === pattern && !isBanned(sticks, pattern, at.banned);
        if (entry.open === fits) return;
        entry.open = fits;
        lp.setLimit(before + p, sticks.stocks[pattern.stock]!.cost + (fits ? 0 : away));
      });
      for (const pattern of used) {
        const own = clipped(pattern, at.rest);
        if (own !== null && own !== pattern && !isBanned(sticks, own, at.banned)) add(own);
      }
    },
    solve() {
      const { x, rowPrice, certified } = lp.solve();
      let fixed = 0;
      let pieces = 0;
      at.rest.demand.forEach((count, k) => (pieces += Math.max(0, count) * x[k]!));
      const stock = Float64Array.from(sticks.stocks, (_, g) => {
        const scarce = x[kinds + g]!;
        const due = x[kinds + groups + g]!;
        fixed += (at.least[g] ?? 0) * due - Math.max(0, at.rest.copies[g]!) * scarce;
        return scarce - due;
      });
      last = {
        kind: x.slice(0, kinds),
        stock,
        fixed,
        objective: pieces + fixed,
        idle: rowPrice.slice(kinds, before),
        use: rowPrice.slice(before).map((value, p) => (entries[p]!.open ? value : 0)),
        patterns: entries.map((entry) => entry.pattern),
        certified,
      };
      return last;
    },
  };
}
