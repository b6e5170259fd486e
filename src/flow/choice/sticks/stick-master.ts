import { openPackingLp } from '../../../base/lp/packing-lp.ts';
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
}

export interface StickDuals {
  readonly kind: Float64Array;
  readonly stock: Float64Array;
  readonly objective: number;
  /** Use of each pattern, aligned with `patterns`; patterns that the restriction forbids have 0. */
  readonly use: Float64Array;
  readonly patterns: readonly Pattern[];
  readonly certified: boolean;
}

/**
 * The restricted master of a job of sticks through its dual, as `openMaster`:
 *   max Σ d_k π_k − Σ q_g μ_g   subject to   Σ a_kp π_k − μ_g ≤ c_p,  π_k ≤ penalty_k.
 * One master serves the whole search, since a fresh start costs far more pivots than a step from the last basis:
 * demands are the objective, and a pattern that a restriction forbids has its limit raised out of the way.
 */
export interface StickMaster {
  /** Turns to another restriction. */
  aim(at: Restriction): void;
  /** Adds a pattern unless it is there; says whether it did. */
  add(pattern: Pattern): boolean;
  solve(): StickDuals;
  readonly size: () => number;
}

export function openStickMaster(sticks: Sticks): StickMaster {
  const kinds = sticks.lengths.length;
  const all = wholeRemainder(sticks);
  const lp = openPackingLp([...all.demand, ...Array.from(all.copies, (copies) => -copies)]);
  const away = 2 * sticks.penalty[0]! * sticks.demand.reduce((sum, count) => sum + count, 0);
  sticks.penalty.forEach((limit, k) => lp.addRow({ indices: [k], coefficients: [1], limit }));
  let patterns: Pattern[] = [];
  let open: boolean[] = [];
  let keys = new Set<string>();
  let at: Restriction = { rest: all, banned: [] };
  let last: StickDuals | null = null;
  const most = 4 * kinds + 200;

  const allowed = (pattern: Pattern): boolean =>
    clipped(pattern, at.rest) === pattern && !isBanned(sticks, pattern, at.banned);

  const add = (pattern: Pattern): boolean => {
    const key = patternKey(pattern);
    if (keys.has(key)) return false;
    keys.add(key);
    patterns.push(pattern);
    open.push(true);
    lp.addRow({
      indices: [...pattern.kinds, kinds + pattern.stock],
      coefficients: [...pattern.counts, -1],
      limit: sticks.stocks[pattern.stock]!.cost,
    });
    return true;
  };

  /** Sheds the patterns that pay least. */
  const shed = (duals: StickDuals): void => {
    const loss = patterns.map(
      (p) => sticks.stocks[p.stock]!.cost + duals.stock[p.stock]! - patternWorth(p, duals.kind),
    );
    const bar = [...loss].sort((a, b) => a - b)[Math.floor(most / 2)]!;
    const stay = lp.keepRows((row) => row < kinds || loss[row - kinds]! < bar);
    const left = stay.flatMap((row) => (row < kinds ? [] : [row - kinds]));
    patterns = left.map((p) => patterns[p]!);
    open = left.map((p) => open[p]!);
    keys = new Set(patterns.map(patternKey));
  };

  return {
    add,
    size: () => patterns.length + kinds,
    aim(to) {
      at = to;
      const used = last === null ? [] : last.patterns.filter((_, p) => last!.use[p]! > 1e-9);
      if (last !== null && patterns.length > most) shed(last);
      at.rest.demand.forEach((count, k) => lp.setObjective(k, Math.max(0, count)));
      at.rest.copies.forEach((copies, g) => lp.setObjective(kinds + g, -Math.max(0, copies)));
      patterns.forEach((pattern, p) => {
        const fits = allowed(pattern);
        if (open[p] === fits) return;
        open[p] = fits;
        lp.setLimit(kinds + p, sticks.stocks[pattern.stock]!.cost + (fits ? 0 : away));
      });
      for (const pattern of used) {
        const own = clipped(pattern, at.rest);
        if (own !== null && own !== pattern && !isBanned(sticks, own, at.banned)) add(own);
      }
    },
    solve() {
      const { x, rowPrice, objective, certified } = lp.solve();
      const use = rowPrice.slice(kinds).map((value, p) => (open[p]! ? value : 0));
      last = {
        kind: x.slice(0, kinds),
        stock: x.slice(kinds),
        objective,
        use,
        patterns: [...patterns],
        certified,
      };
      return last;
    },
  };
}
