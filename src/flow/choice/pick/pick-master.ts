import { openPackingLp } from '../../../base/lp/packing-lp.ts';
import type { Column } from '../column.ts';
import { wholeRest } from '../generate.ts';
import type { Instance } from '../instance.ts';
import { wantedOf } from '../wanted.ts';

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
  /** Copies made in each way beyond the least, way by way. */
  readonly made: Float64Array;
}

/**
 * The master over columns that are all known, through its dual as `openMaster`, with least uses of groups and columns
 * barred for a while:
 *   max Σ d π − Σ most μ + Σ least ν   subject to   a_p π − μ_g + ν_g ≤ c_p,   ν_g − μ_g ≤ c_g,   π ≤ penalty,
 * and for copies of alternatives as there.
 */
export interface PickMaster {
  setDemand(kind: number, demand: number): void;
  /** Limits of the copies made in a way (numbered through all alternatives); `left` are the alternative's copies beyond the least of all its ways. */
  setWay(way: number, most: number): void;
  setCopies(alternative: number, left: number): void;
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
  const wanted = wantedOf(instance, wholeRest(instance));
  const { alternatives } = wanted;
  const ways = alternatives.flatMap((each) => each.ways);
  const firstCopies = kinds + 2 * groups;
  const firstWay = firstCopies + alternatives.length;
  const lp = openPackingLp([
    ...wanted.demand,
    ...instance.groups.map(({ copies }) => -copies),
    ...instance.groups.map(() => 0),
    ...alternatives.map(({ copies }) => copies),
    ...ways.map(({ most }) => -most),
  ]);
  instance.kinds.forEach(({ penalty }, k) => lp.addRow({ indices: [k], coefficients: [1], limit: penalty }));
  instance.groups.forEach(({ cost }, g) =>
    lp.addRow({ indices: [kinds + g, kinds + groups + g], coefficients: [-1, 1], limit: cost }),
  );
  alternatives.forEach((each, a) =>
    each.ways.forEach((way) =>
      lp.addRow({
        indices: [firstCopies + a, way.kind, firstWay + ways.indexOf(way)],
        coefficients: [1, -way.strips, -1],
        limit: 0,
      }),
    ),
  );
  const before = kinds + groups + ways.length;
  const away = instance.kinds.reduce((sum, { penalty, demand }) => sum + penalty * demand, 0);
  columns.forEach(({ kinds: used, counts, group, cost }, c) =>
    lp.addRow({
      indices: [...used, kinds + group, kinds + groups + group],
      coefficients: [...counts, -1, 1],
      limit: nudged(cost, c),
    }),
  );
  const cells = (before + columns.length) * (firstWay + ways.length);
  return {
    setDemand: (kind, demand) => lp.setObjective(kind, demand),
    setWay: (way, most) => lp.setObjective(firstWay + way, -most),
    setCopies: (alternative, left) => lp.setObjective(firstCopies + alternative, left),
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
        idle: rowPrice.subarray(kinds, kinds + groups),
        made: rowPrice.subarray(kinds + groups, before),
        kindPrice: x.subarray(0, kinds),
        groupPrice: Float64Array.from(instance.groups, (_, g) => x[kinds + g]! - x[kinds + groups + g]!),
        // Never more than what the costs as they are come to.
        objective: objective / (1 + mostSlack),
      };
    },
  };
}
