import { openPackingLp } from '../../../base/lp/packing-lp.ts';
import type { Column } from '../column.ts';
import type { Instance } from '../instance.ts';

/** Work of a pivot for each cell of the program, in the meter's units. */
const workPerCell = 0.06;

export interface PickDuals {
  readonly use: Float64Array;
  /** Copies of each group that must be used and hold nothing. */
  readonly idle: Float64Array;
  readonly kindPrice: Float64Array;
  /** What a copy of a group must earn beside its cost. */
  readonly groupPrice: Float64Array;
  readonly objective: number;
}

/**
 * The master over columns that are all known, through its dual as `openMaster`, with least uses of groups and columns
 * barred for a while:
 *   max Σ d π − Σ most μ + Σ least ν   subject to   a_p π − μ_g + ν_g ≤ c_p,   ν_g − μ_g ≤ c_g,   π ≤ penalty.
 */
export interface PickMaster {
  setDemand(kind: number, demand: number): void;
  setMost(group: number, copies: number): void;
  setLeast(group: number, copies: number): void;
  setBarred(column: number, isBarred: boolean): void;
  solve(): PickDuals;
}

/**
 * Costs as the engine gets them, a little more than they are: boards that cost the same make too many columns tight at
 * once, and a simplex circles among them.
 */
const mostSlack = 1e-7;

function nudged(cost: number, order: number): number {
  return cost * (1 + mostSlack * ((order * 0.7548776662) % 1));
}

/** Opens the master of these columns, all pieces wanted and all boards free. */
export function openPickMaster(instance: Instance, columns: readonly Column[]): PickMaster {
  const kinds = instance.kinds.length;
  const groups = instance.groups.length;
  const lp = openPackingLp([
    ...instance.kinds.map(({ demand }) => demand),
    ...instance.groups.map(({ copies }) => -copies),
    ...instance.groups.map(() => 0),
  ]);
  instance.kinds.forEach(({ penalty }, k) => lp.addRow({ indices: [k], coefficients: [1], limit: penalty }));
  instance.groups.forEach(({ cost }, g) =>
    lp.addRow({ indices: [kinds + g, kinds + groups + g], coefficients: [-1, 1], limit: cost }),
  );
  const before = kinds + groups;
  const away = instance.kinds.reduce((sum, { penalty, demand }) => sum + penalty * demand, 0);
  columns.forEach(({ kinds: used, counts, group, cost }, c) =>
    lp.addRow({
      indices: [...used, kinds + group, kinds + groups + group],
      coefficients: [...counts, -1, 1],
      limit: nudged(cost, c),
    }),
  );
  const cells = (before + columns.length) * (before + groups);
  return {
    setDemand: (kind, demand) => lp.setObjective(kind, Math.max(0, demand)),
    setMost: (group, copies) => lp.setObjective(kinds + group, -copies),
    setLeast: (group, copies) => lp.setObjective(kinds + groups + group, copies),
    setBarred(column, isBarred) {
      lp.setLimit(before + column, nudged(columns[column]!.cost, column) + (isBarred ? away : 0));
    },
    solve() {
      const { x, rowPrice, objective, pivots } = lp.solve();
      instance.meter.spent += workPerCell * cells * (pivots + 2);
      return {
        use: rowPrice.subarray(before),
        idle: rowPrice.subarray(kinds, before),
        kindPrice: x.subarray(0, kinds),
        groupPrice: Float64Array.from(instance.groups, (_, g) => x[kinds + g]! - x[kinds + groups + g]!),
        // Never more than what the costs as they are come to.
        objective: objective / (1 + mostSlack),
      };
    },
  };
}
