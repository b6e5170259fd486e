import type { Rectangle } from '../../base/geometry/rectangle.ts';
import type { Cut, LaidBoard, Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Shop } from '../shop/shop.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import type { SumFault } from './fault.ts';
import { takesOnlyTrim, trimmed } from './outline.ts';
import { countPositions } from './positions.ts';

/** Sums of money and shares may differ by this much of their size: the last bits depend on the order of adding. */
const rounding = 1e-9;

/** A value and a bound that differ by less than this share of the value count as equal: a zero gap. */
const zeroGap = 1e-9;

function isClose(said: number, right: number): boolean {
  return Math.abs(said - right) <= rounding * Math.max(1, Math.abs(right));
}

function sumOf(regions: readonly Rectangle[]): number {
  return regions.reduce((total, { length, width }) => total + length * width, 0);
}

/** Areas and cost of one board, exact. `kerf` and `scrap` come from the replay; null when it failed. */
export function boardSumFaults(
  laid: LaidBoard,
  board: Board,
  usable: Rectangle,
  found: { readonly kerf: number; readonly scrap: number } | null,
): SumFault[] {
  const on = { board: laid.board, copy: laid.copy };
  const faults: SumFault[] = [];
  const whole = board.length * board.width;
  const right = {
    board: whole,
    parts: sumOf(laid.pieces),
    offcuts: sumOf(laid.offcuts),
    trim: whole - usable.length * usable.width,
    ...(found ?? {}),
  };
  for (const [what, area] of Object.entries(right)) {
    const said = laid.area[what as keyof typeof laid.area];
    if (said !== area) faults.push({ kind: 'wrong area', on, what, said, right: area });
  }
  const { parts, offcuts, kerf, trim, scrap } = laid.area;
  const together = parts + offcuts + kerf + trim + scrap;
  if (together !== laid.area.board) {
    faults.push({ kind: 'wrong area', on, what: 'sum', said: laid.area.board, right: together });
  }
  if (!isClose(laid.cost, board.cost)) {
    faults.push({ kind: 'wrong cost', on, said: laid.cost, right: board.cost });
  }
  return faults;
}

/** Everything under `totals`, worked anew from the boards and pieces. */
export function totalFaults(layout: Layout, boards: ReadonlyMap<string, Board>, shop: Shop): SumFault[] {
  const isTrim = (laid: LaidBoard, cut: Cut): boolean => {
    const board = boards.get(laid.board);
    return board !== undefined && takesOnlyTrim(cut, trimmed(board, shop));
  };
  const used = layout.boards.flatMap(({ board }) => boards.get(board) ?? []);
  const squareInches = 8128 * 8128;
  const area = sumOf(layout.boards.map(({ length, width }) => ({ x: 0, y: 0, length, width })));
  const parts = sumOf(layout.boards.flatMap((board) => board.pieces));
  const offcuts = sumOf(layout.boards.flatMap((board) => board.offcuts));
  const right = {
    boards: layout.boards.length,
    boardFeet: used.reduce((sum, { yardFeet }) => sum + yardFeet, 0),
    // One board foot is 144 square inches an inch thick; thinner stock is sold as an inch.
    boardFeetMeasured: used.reduce(
      (sum, { length, width, nominalInches }) =>
        sum + (length * width * Math.max(nominalInches, 1)) / (144 * squareInches),
      0,
    ),
    cost: used.reduce((sum, { cost }) => sum + cost, 0),
    yield: area > 0 ? parts / area : 0,
    waste: area > 0 ? 1 - (parts + offcuts) / area : 0,
    setups: countPositions(layout.boards, isTrim),
  };
  return Object.entries(right).flatMap(([what, total]) => {
    const said = layout.totals[what as keyof typeof right];
    return isClose(said, total) ? [] : [{ kind: 'wrong total' as const, what, said, right: total }];
  });
}

/** What the goal counts, worked anew. */
function goal(job: Job, layout: Layout, boards: ReadonlyMap<string, Board>): number {
  let value = 0;
  if (job.shop.goal === 'most value') {
    const counted = new Set<string>();
    const parts = new Map<string, Part>(job.parts.map((part) => [part.name, part]));
    for (const { part, copy } of layout.boards.flatMap((board) => board.pieces)) {
      const known = parts.get(part);
      const key = JSON.stringify([part, copy]);
      if (known === undefined || counted.has(key)) continue;
      counted.add(key);
      value += known.value ?? (known.length * known.width) / (8128 * 8128);
    }
    return value;
  }
  for (const laid of layout.boards) {
    const board = boards.get(laid.board);
    if (board === undefined) continue;
    const kept = sumOf(laid.offcuts) / (board.length * board.width);
    value += board.cost - job.shop.offcutCredit * kept * board.cost;
  }
  return value;
}

/** The proof: value as the goal counts it, bound on its right side, gap by its formula, proven only without a gap. */
export function proofFaults(job: Job, layout: Layout, boards: ReadonlyMap<string, Board>): SumFault[] {
  const { value, bound, gap, proven } = layout.proof;
  const faults: SumFault[] = [];
  const right = goal(job, layout, boards);
  if (!isClose(value, right)) faults.push({ kind: 'wrong proof', what: 'value', said: value, right });
  if (layout.short.length > 0 && job.shop.goal === 'least cost') {
    // Nothing bounds the cost of a layout of other parts than these.
    for (const [what, said] of [
      ['bound', bound],
      ['gap', gap],
    ] as const)
      if (said !== null) faults.push({ kind: 'wrong proof', what, said, right: null });
    return faults;
  }
  if (bound === null || gap === null)
    return [
      ...faults,
      { kind: 'wrong proof', what: bound === null ? 'bound' : 'gap', said: null, right: 'a number' },
    ];
  const slack = zeroGap * Math.max(1, Math.abs(value));
  const over = job.shop.goal === 'most value' ? value - bound : bound - value;
  if (!(over <= slack)) faults.push({ kind: 'bound on the wrong side', value, bound });
  const apart = Math.abs(value - bound);
  const share = apart <= slack ? 0 : value === 0 ? 1 : apart / Math.abs(value);
  if (!(Math.abs(gap - share) <= zeroGap)) {
    faults.push({ kind: 'wrong proof', what: 'gap', said: gap, right: share });
  }
  if (proven && share !== 0) faults.push({ kind: 'not proven', gap: share });
  return faults;
}
