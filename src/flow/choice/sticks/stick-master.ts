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
  /** Elementary steps that the solve took, about. */
  readonly steps: number;
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
}

/**
 * Demands as the engine gets them, each a little more than it is: equal demands make a simplex stall for thousands of
 * pivots. At most 1e-6 each, so uses are right to about 1e-5; prices are judged with the true demands.
 */
function nudged(count: number, kind: number): number {
  return count <= 0 ? 0 : count + 1e-6 * ((kind * 0.6180339887) % 1);
}

/**
 * Share by which a pattern may seem dearer to the engine than it is: of sticks that all cost the same, too many patterns
 * are tight at once, and the simplex circles among them. Prices are judged without it, so bounds hold and lose as little.
 */
export const mostSlack = 1e-6;

function slack(order: number): number {
  return mostSlack * ((order * 0.7548776662) % 1);
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
  /** What the engine gets for its cost: see slack. */
  readonly limit: number;
  open: boolean;
}

/** How many patterns are worth keeping when some are shed: what is left out is found again when it is needed. */
function worthKeeping(kinds: number): number {
  return Math.ceil(1.3 * kinds) + 60;
}

/** Patterns beyond which the master sheds some: pivots in a tall program cost more than finding patterns anew. */
function tooMany(kinds: number): number {
  return 2 * worthKeeping(kinds);
}

function standing(
  sticks: Sticks,
  program: PackingLp,
  listed: Entry[],
  from: Restriction,
  earlier: StickDuals | null,
): StickMaster {
  const kinds = sticks.lengths.length;
  const groups = sticks.stocks.length;
  /** Rows before those of the patterns. */
  const before = kinds + groups;
  let added = listed.length;
  let lp = program;
  let entries = listed;
  const keys = new Set(entries.map(({ pattern }) => patternKey(pattern)));
  const away = 2 * sticks.penalty[0]! * sticks.demand.reduce((sum, count) => sum + count, 0);
  let at = from;
  let last = earlier;

  const add = (pattern: Pattern): boolean => {
    const key = patternKey(pattern);
    if (keys.has(key)) return false;
    keys.add(key);
    added += 1;
    const limit = sticks.stocks[pattern.stock]!.cost * (1 + slack(added));
    entries.push({ pattern, open: true, limit });
    lp.addRow({
      indices: [...pattern.kinds, kinds + pattern.stock, kinds + groups + pattern.stock],
      coefficients: [...pattern.counts, -1, 1],
      limit,
    });
    return true;
  };

  /** A program that stands where this one does, with the patterns that pay best, and those. */
  const best = (): { readonly lp: PackingLp; readonly entries: Entry[] } => {
    const duals = last;
    const most = worthKeeping(kinds);
    if (duals === null || entries.length <= most) {
      return { lp: lp.fork(() => true).lp, entries: entries.map((entry) => ({ ...entry })) };
    }
    const loss = entries.map(
      ({ pattern: p }) => sticks.stocks[p.stock]!.cost + duals.stock[p.stock]! - patternWorth(p, duals.kind),
    );
    const bar = [...loss].sort((a, b) => a - b)[most]!;
    const { lp: own, rows } = lp.fork((row) => row < before || loss[row - before]! < bar);
    return {
      lp: own,
      entries: rows.flatMap((row) => (row < before ? [] : [{ ...entries[row - before]! }])),
    };
  };

  return {
    add,
    fork() {
      const own = best();
      return standing(sticks, own.lp, own.entries, at, last);
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
        lp.setLimit(before + p, entry.limit + (fits ? 0 : away));
      });
      for (const pattern of used) {
        const own = clipped(pattern, at.rest);
        if (own !== null && own !== pattern && !isBanned(sticks, own, at.banned)) add(own);
      }
    },
    solve() {
      let shed = 0;
      if (entries.length > tooMany(kinds) && last !== null) {
        ({ lp, entries } = best());
        keys.clear();
        for (const { pattern } of entries) keys.add(patternKey(pattern));
        shed = kinds;
      }
      const { x, rowPrice, certified, pivots } = lp.solve();
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
        steps: (1 + pivots + shed) * (before + entries.length) * (kinds + 2 * groups),
      };
      return last;
    },
  };
}
