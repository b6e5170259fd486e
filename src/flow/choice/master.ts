import { openPackingLp } from '../../base/lp/packing-lp.ts';
import type { Column } from './column.ts';
import type { Alternative } from './instance.ts';

/** A row of branching or of a cap: Σ coefficient(column) · λ ≤ limit. */
export interface SideRow {
  readonly coefficient: (column: Column) => number;
  readonly limit: number;
  /** What missing the row by one costs; nothing: it may not be missed. */
  readonly priceAtMost?: number;
}

/** What the master needs to know beside its columns. */
export interface MasterData {
  /** Pieces wanted of each kind. */
  readonly demand: readonly number[];
  /** Cost of leaving one piece of each kind out. */
  readonly penalty: readonly number[];
  /** Copies of each group. */
  readonly copies: readonly number[];
  /** Copies made in one of several ways, of kinds that are not wanted otherwise. */
  readonly alternatives?: readonly Alternative[];
}

export interface MasterAnswer {
  /** Use of each column, aligned with the columns given. */
  readonly use: Float64Array;
  /** Dual value of one piece of each kind. */
  readonly kindPrice: Float64Array;
  /** Dual value of one copy of each group. */
  readonly groupPrice: Float64Array;
  readonly sidePrice: Float64Array;
  /** Copies made in each way beyond the least, alternative by alternative. */
  readonly made: Float64Array;
  readonly objective: number;
  readonly certified: boolean;
  /** Pivots it took. */
  readonly pivots: number;
}

/**
 * The restricted master, kept open while columns come in:
 *   min Σ c_p λ_p + Σ M_k s_k   subject to  Σ a_kp λ_p + s_k ≥ d_k,  Σ_{p of g} λ_p ≤ q_g,  side rows ≤,  λ, s ≥ 0.
 * It is solved through its dual
 *   max Σ d_k π_k − Σ q_g μ_g − Σ r σ   subject to  Σ a_kp π_k − μ_g − Σ coefficient σ ≤ c_p,  π_k ≤ M_k,
 * which is feasible at the origin, and whose row prices are the λ. The σ of rows that ask for a least use (r < 0) are held
 * below a price above that of any plan, so that it stays bounded where they ask for too much.
 *
 * Of an alternative q copies are made, n_w ≤ most_w in way w, of strips_w pieces each: Σ a_kp λ_p + s_k ≥ d_k + strips_w n_w for its
 * kind k, and Σ_w n_w ≥ q. In the dual that is a price ρ of a copy and τ_w of the limit: + q ρ − Σ most_w τ_w in the objective, and
 * ρ − τ_w ≤ strips_w π_k for each way.
 */
export interface Master {
  add(column: Column): void;
  solve(): MasterAnswer;
}

/** Opens a restricted master without columns; `sides` are its branching and cap rows. See Master for the program it solves. */
export function openMaster(data: MasterData, sides: readonly SideRow[] = []): Master {
  const kinds = data.demand.length;
  const groups = data.copies.length;
  const alternatives = data.alternatives ?? [];
  const limited = alternatives.flatMap(({ copies, ways }) => ways.filter(({ most }) => most < copies));
  const lp = openPackingLp([
    ...data.demand,
    ...data.copies.map((copies) => -copies),
    ...sides.map((side) => -side.limit),
    ...alternatives.map((alternative) => alternative.copies),
    ...limited.map(({ most }) => -most),
  ]);
  data.penalty.forEach((limit, k) => lp.addRow({ indices: [k], coefficients: [1], limit }));
  // Rows that ask for a least use may ask for more than there is: missed by one, they cost more than any plan.
  const dear = 1 + data.penalty.reduce((sum, each, k) => sum + each * Math.max(0, data.demand[k]!), 0);
  const asking = sides.flatMap((side, s) => (side.limit < 0 ? [kinds + groups + s] : []));
  for (const index of asking) lp.addRow({ indices: [index], coefficients: [1], limit: dear });
  const soft = sides.flatMap(({ priceAtMost: limit }, s) => (limit === undefined ? [] : [{ s, limit }]));
  for (const { s, limit } of soft) lp.addRow({ indices: [kinds + groups + s], coefficients: [1], limit });
  const before = kinds + asking.length + soft.length;
  alternatives.forEach(({ ways }, a) => {
    const price = kinds + groups + sides.length + a;
    for (const way of ways) {
      const limit = limited.indexOf(way);
      const over = limit < 0 ? [] : [kinds + groups + sides.length + alternatives.length + limit];
      lp.addRow({
        indices: [price, way.kind, ...over],
        coefficients: [1, -way.strips, ...over.map(() => -1)],
        limit: 0,
      });
    }
  });
  const all = before + alternatives.reduce((sum, { ways }) => sum + ways.length, 0);
  return {
    add(column) {
      const indices = [...column.kinds, kinds + column.group];
      const coefficients = [...column.counts, -1];
      sides.forEach((side, s) => {
        const coefficient = side.coefficient(column);
        if (coefficient === 0) return;
        indices.push(kinds + groups + s);
        coefficients.push(-coefficient);
      });
      lp.addRow({ indices, coefficients, limit: column.cost });
    },
    solve() {
      const { x, rowPrice, objective, certified, pivots } = lp.solve();
      return {
        use: rowPrice.subarray(all),
        made: rowPrice.slice(before, all),
        kindPrice: x.slice(0, kinds),
        groupPrice: x.slice(kinds, kinds + groups),
        sidePrice: x.slice(kinds + groups, kinds + groups + sides.length),
        objective,
        certified,
        pivots,
      };
    },
  };
}
