import solver from 'javascript-lp-solver';

/** One row of the program: Σ coefficient[k] · x[index[k]] ≤ limit. */
export interface LpRow {
  readonly indices: readonly number[];
  readonly coefficients: readonly number[];
  readonly limit: number;
}

/** An optimum with its certificate: the price of every row proves it (strong duality, within tolerance). */
export interface LpAnswer {
  readonly x: Float64Array;
  /** Dual value of each row, ≥ 0, in the order the rows were added. */
  readonly rowPrice: Float64Array;
  readonly objective: number;
  /** How the answer was had: straight away, or after a fresh start because the first certificate failed. */
  readonly solves: number;
  /** Pivots of all starts: each costs about as many elementary steps as the program has rows times columns. */
  readonly pivots: number;
  /** False when no start gave a certificate within tolerance: then x is only a point, not an optimum. */
  readonly certified: boolean;
}

/**
 * max c·x with A x ≤ b, x ≥ 0, b ≥ 0: the form of a restricted master's dual, feasible at the origin, so no
 * artificial variables are needed. Rows are added while columns stay, and each solve starts from the last basis.
 */
export interface PackingLp {
  addRow(row: LpRow): void;
  solve(): LpAnswer;
  /** Changes the objective's coefficient of one column; the next solve starts from the last basis. */
  setObjective(column: number, cost: number): void;
  /** Changes the limit of one row, in the order the rows were added; the next solve starts from the last basis. */
  setLimit(row: number, limit: number): void;
  /**
   * A program of its own with the wanted rows, and all that are tight, standing at the last basis (one pivot per tight
   * row, which also sheds the rounding of earlier pivots). `rows` says which rows it has, in its order.
   */
  fork(wanted: (row: number) => boolean): { readonly lp: PackingLp; readonly rows: readonly number[] };
  readonly rowCount: () => number;
}

/** Relative tolerance of the certificate: feasibility of both sides and equality of both objectives. */
export const certificateTolerance = 1e-7;

interface EngineVariable {
  readonly index: number;
  readonly value: number;
}
interface EngineConstraint {
  addTerm(coefficient: number, variable: EngineVariable): EngineConstraint;
  setRightHandSide(limit: number): unknown;
  readonly slack: EngineVariable;
}
interface EngineModel {
  maximize(): EngineModel;
  addVariable(cost: number, id: string): EngineVariable;
  smallerThan(limit: number): EngineConstraint;
  solve(): unknown;
  setCost(cost: number, variable: EngineVariable): unknown;
  usePresolve: boolean;
  tableauInitialized: boolean;
  readonly tableau: {
    setModel(model: EngineModel): unknown;
    pivot: (row: number, column: number) => void;
    readonly matrix: Float64Array;
    readonly colByVarIndex: readonly number[];
    readonly rowByVarIndex: readonly number[];
    readonly width: number;
    readonly rhsColumn: number;
    readonly feasible: boolean;
  };
}

interface Started {
  readonly model: EngineModel;
  readonly variables: readonly EngineVariable[];
  readonly constraints: EngineConstraint[];
}

function start(objective: readonly number[]): Started {
  const { Model } = solver as unknown as { readonly Model: new () => EngineModel };
  const model = new Model().maximize();
  // Its presolve would fix columns for good by costs and limits that may change later.
  model.usePresolve = false;
  return {
    model,
    variables: objective.map((cost, j) => model.addVariable(cost, `x${j}`)),
    constraints: [],
  };
}

function addTo(started: Started, row: LpRow): void {
  const constraint = started.model.smallerThan(row.limit);
  row.indices.forEach((j, k) => {
    const variable = started.variables[j];
    const coefficient = row.coefficients[k] ?? 0;
    if (variable !== undefined && coefficient !== 0) constraint.addTerm(coefficient, variable);
  });
  started.constraints.push(constraint);
}

/** Reads the basis out of the engine's tableau: a basic variable's value stands in its row, a nonbasic one's price in the cost row. */
function read(
  started: Started,
  objective: readonly number[],
): Omit<LpAnswer, 'solves' | 'pivots' | 'certified'> {
  const { matrix, colByVarIndex, rowByVarIndex, width, rhsColumn } = started.model.tableau;
  const x = Float64Array.from(started.variables, (variable) => {
    const row = rowByVarIndex[variable.index] ?? -1;
    return row > 0 ? (matrix[row * width + rhsColumn] ?? 0) : 0;
  });
  const rowPrice = Float64Array.from(started.constraints, (constraint) => {
    const column = colByVarIndex[constraint.slack.index] ?? -1;
    return column > 0 ? Math.abs(matrix[column] ?? 0) : 0;
  });
  let value = 0;
  objective.forEach((cost, j) => (value += cost * (x[j] ?? 0)));
  return { x, rowPrice, objective: value };
}

/**
 * Checks an answer from scratch: A x ≤ b, x ≥ 0; y ≥ 0, Aᵀ y ≥ c; c·x = b·y, each within the tolerance
 * relative to the sizes involved.
 */
export function certifies(
  objective: readonly number[],
  rows: readonly LpRow[],
  x: Float64Array,
  rowPrice: Float64Array,
): boolean {
  const scale = 1 + objective.reduce((sum, cost, j) => sum + Math.abs(cost * (x[j] ?? 0)), 0);
  const covered = new Float64Array(objective.length);
  let dual = 0;
  for (const [i, row] of rows.entries()) {
    let used = 0;
    let size = 1 + Math.abs(row.limit);
    const price = rowPrice[i] ?? 0;
    if (price < -certificateTolerance) return false;
    row.indices.forEach((j, k) => {
      const term = (row.coefficients[k] ?? 0) * (x[j] ?? 0);
      used += term;
      size += Math.abs(term);
      covered[j] = (covered[j] ?? 0) + (row.coefficients[k] ?? 0) * price;
    });
    if (used - row.limit > certificateTolerance * size) return false;
    dual += row.limit * price;
  }
  let primal = 0;
  for (const [j, cost] of objective.entries()) {
    const value = x[j] ?? 0;
    if (value < -certificateTolerance * (1 + Math.abs(value))) return false;
    if (cost - (covered[j] ?? 0) > certificateTolerance * (1 + Math.abs(cost))) return false;
    primal += cost * value;
  }
  return Math.abs(primal - dual) <= certificateTolerance * scale;
}

/** A solve takes fewer pivots than there are rows and columns; one that takes so many times as many goes in circles. */
const pivotsPerLine = 8;

/**
 * Lets the engine solve, but not for ever: where costs and limits changed a lot its first phase can circle among ties
 * without end. An engine stopped so stands at some basis, which the certificate judges as any other.
 * @returns how many pivots it took
 */
function solveBounded({ model, variables, constraints }: Started): number {
  const { tableau } = model;
  const stalled = new Error('the simplex goes in circles');
  const { pivot } = tableau;
  const most = 500 + pivotsPerLine * (variables.length + constraints.length);
  let pivots = 0;
  tableau.pivot = (row, column) => {
    if (pivots === most) throw stalled;
    pivots += 1;
    pivot.call(tableau, row, column);
  };
  try {
    model.solve();
  } catch (error) {
    if (error !== stalled) throw error;
  } finally {
    tableau.pivot = pivot;
  }
  return pivots;
}

/** Opens a program over the given objective; see PackingLp. */
export function openPackingLp(objective: readonly number[]): PackingLp {
  return opened([...objective], [], start(objective));
}

function isTight(started: Started, row: number): boolean {
  return (started.model.tableau.colByVarIndex[started.constraints[row]!.slack.index] ?? -1) > 0;
}

function opened(objective: number[], rows: LpRow[], from: Started): PackingLp {
  let started = from;
  return {
    rowCount: () => rows.length,
    addRow(row) {
      rows.push(row);
      addTo(started, row);
    },
    setObjective(column, cost) {
      if (objective[column] === cost) return;
      objective[column] = cost;
      // Before the first solve the engine has no tableau yet to change.
      if (started.model.tableauInitialized) started.model.setCost(cost, started.variables[column]!);
      else started = restart(objective, rows, 1);
    },
    setLimit(index, limit) {
      const row = rows[index]!;
      if (row.limit === limit) return;
      rows[index] = { ...row, limit };
      started.constraints[index]!.setRightHandSide(limit);
    },
    fork(wanted) {
      const stay = rows.flatMap((_, i) => (wanted(i) || isTight(started, i) ? [i] : []));
      const kept = stay.map((i) => rows[i]!);
      const own = [...objective];
      return { lp: opened(own, kept, fromBasis(own, kept, started, stay)), rows: stay };
    },
    solve() {
      let pivots = 0;
      for (let solves = 1; ; solves += 1) {
        pivots += solveBounded(started);
        const answer = read(started, objective);
        const certified = certifies(objective, rows, answer.x, answer.rowPrice);
        if (certified || solves === 3) return { ...answer, solves, pivots, certified };
        started = restart(objective, rows, solves);
      }
    },
  };
}

/**
 * A fresh start from the basis of another: its basic columns are pivoted into its tight rows, each time by the largest
 * element there is. Rows or columns left over when elements vanish stay as they are.
 */
function fromBasis(
  objective: readonly number[],
  rows: readonly LpRow[],
  old: Started,
  stay: readonly number[],
): Started {
  const fresh = start(objective);
  for (const row of rows) addTo(fresh, row);
  const before = old.model.tableau;
  const basic = old.variables.flatMap((v, j) => ((before.rowByVarIndex[v.index] ?? -1) > 0 ? [j] : []));
  const tight = stay.flatMap((i, at) => (isTight(old, i) ? [at] : []));
  fresh.model.tableau.setModel(fresh.model);
  fresh.model.tableauInitialized = true;
  const left = new Set(basic);
  for (const at of tight) {
    const { matrix, rowByVarIndex, colByVarIndex, width } = fresh.model.tableau;
    const row = rowByVarIndex[fresh.constraints[at]!.slack.index] ?? -1;
    let best = -1;
    let size = 1e-7;
    for (const j of left) {
      const column = colByVarIndex[fresh.variables[j]!.index] ?? -1;
      const here = column > 0 && row > 0 ? Math.abs(matrix[row * width + column] ?? 0) : 0;
      if (here <= size) continue;
      size = here;
      best = j;
    }
    if (best < 0) continue;
    fresh.model.tableau.pivot(row, colByVarIndex[fresh.variables[best]!.index]!);
    left.delete(best);
  }
  return fresh;
}

/**
 * A fresh start after a failed certificate: rows in another order (another pivot path), and the second time
 * with limits nudged apart by less than the tolerance, which breaks the ties that make a simplex stall.
 */
function restart(objective: readonly number[], rows: readonly LpRow[], attempt: number): Started {
  const fresh = start(objective);
  const nudge = attempt === 1 ? 0 : certificateTolerance / 100;
  for (const [i, row] of rows.entries()) {
    addTo(fresh, { ...row, limit: row.limit + nudge * (1 + Math.abs(row.limit)) * ((i % 17) / 17) });
  }
  return fresh;
}
