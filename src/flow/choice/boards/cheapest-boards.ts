import { openPackingLp } from '../../../base/lp/packing-lp.ts';
import type { BoardCut, Refuted } from './board-cut.ts';

/** One copy of a group's board. Copies of one group follow one another and are taken in that order. */
interface Slot {
  readonly group: number;
  readonly cost: number;
  /** Copies of the same group before it. */
  readonly before: number;
}

/** A set of boards and the least that a plan with exactly these can cost, as far as the cuts tell. */
export interface BoardSet {
  readonly copies: Int32Array;
  readonly bound: number;
}

/** What is asked: costs and copies by group, and all that is known of sets of boards. */
export interface BoardQuestion {
  readonly cost: ArrayLike<number>;
  readonly copies: ArrayLike<number>;
  readonly cuts: readonly BoardCut[];
  readonly refuted: readonly Refuted[];
  /** Sets that bound to this or more are of no interest. */
  readonly cutoff: number;
  /** No set bounds to less than this, as was proven before: the search ends with the first that comes so near. */
  readonly floor: number;
  readonly mostNodes: number;
}

/** A cut over slots: least − Σ worth · taken must be paid. `order` has the slots by cost per worth, cheapest first. */
interface SlotCut {
  readonly least: number;
  readonly worth: Float64Array;
  readonly order: Int32Array;
}

function slotsOf(cost: ArrayLike<number>, copies: ArrayLike<number>): Slot[] {
  return Array.from({ length: cost.length }, (_, group) =>
    Array.from({ length: copies[group]! }, (_unused, before) => ({ group, cost: cost[group]!, before })),
  ).flat();
}

function slotCut(slots: readonly Slot[], least: number, worth: Float64Array): SlotCut {
  const order = [...slots.keys()].filter((s) => worth[s]! > 0);
  order.sort((a, b) => slots[a]!.cost / worth[a]! - slots[b]!.cost / worth[b]!);
  return { least, worth, order: Int32Array.from(order) };
}

/**
 * The mix of cuts that bounds best while boards may be taken in part: multipliers from the linear program
 *   max Σ λ_i least_i − Σ μ_s   subject to   Σ λ_i worth_is − μ_s ≤ cost_s,   Σ λ_i ≤ 1.
 */
function mixedCut(slots: readonly Slot[], cuts: readonly SlotCut[]): SlotCut {
  const lp = openPackingLp([...cuts.map(({ least }) => Math.max(0, least)), ...slots.map(() => -1)]);
  slots.forEach(({ cost }, s) => {
    const indices = cuts.flatMap(({ worth }, i) => (worth[s]! > 0 ? [i] : []));
    const coefficients = indices.map((i) => cuts[i]!.worth[s]!);
    lp.addRow({ indices: [...indices, cuts.length + s], coefficients: [...coefficients, -1], limit: cost });
  });
  lp.addRow({ indices: [...cuts.keys()], coefficients: cuts.map(() => 1), limit: 1 });
  const { x } = lp.solve();
  const worth = new Float64Array(slots.length);
  let least = 0;
  let sum = 0;
  cuts.forEach((cut, i) => {
    const share = Math.max(0, x[i]!);
    sum += share;
    least += share * cut.least;
    cut.worth.forEach((each, s) => (worth[s]! += share * each));
  });
  // Multipliers that sum to a trifle more than 1 would no longer mix: any mix of valid cuts is valid, certified or not.
  const scale = sum > 1 ? 1 / sum : 1;
  return slotCut(
    slots,
    least * scale,
    worth.map((each) => each * scale),
  );
}

/**
 * The set of boards that bounds to least: cost of the boards plus the most that any cut says must be paid beside.
 * Branch and bound over copies, every node bounded by each cut alone with boards taken in part. Null when no set bounds below the
 * cutoff. `isExact` is false when the nodes ran out: then the bound is that of the mixed cut, or the floor, and the set merely good.
 */
export function cheapestBoards(question: BoardQuestion): { set: BoardSet | null; isExact: boolean } {
  const slots = slotsOf(question.cost, question.copies);
  const bySlot = (worth: (slot: Slot) => number): Float64Array => Float64Array.from(slots, worth);
  const cuts = [
    ...question.cuts.map(({ least, worth }) =>
      slotCut(
        slots,
        least,
        bySlot(({ group }) => worth[group]!),
      ),
    ),
    ...question.refuted.map(({ copies, least }) =>
      slotCut(
        slots,
        least,
        bySlot(({ group, before }) => (before >= copies[group]! ? least : 0)),
      ),
    ),
  ];
  if (cuts.length > 0) cuts.unshift(mixedCut(slots, cuts));
  return searchSets(slots, cuts, question);
}

/** What one cut still asks for: cost of the cheapest way to pay it, boards taken in part; `need` is what is left to be paid. */
function payCut({ worth, order }: SlotCut, slots: readonly Slot[], state: Int8Array, need: number): number {
  let cost = 0;
  for (let i = 0; i < order.length && need > 0; i += 1) {
    const s = order[i]!;
    if (state[s] !== free) continue;
    const each = worth[s]!;
    // Beyond this the rest is cheaper left unpaid.
    if (slots[s]!.cost >= each) break;
    const take = Math.min(1, need / each);
    cost += take * slots[s]!.cost;
    need -= take * each;
  }
  return cost + Math.max(0, need);
}

const free = 0;
const taken = 1;
const barred = 2;

function searchSets(
  slots: readonly Slot[],
  cuts: readonly SlotCut[],
  question: BoardQuestion,
): { set: BoardSet | null; isExact: boolean } {
  const state = new Int8Array(slots.length);
  const needs = Float64Array.from(cuts, ({ least }) => least);
  const enough = question.floor + 1e-9 * (1 + Math.abs(question.floor));
  let best: BoardSet | null = null;
  let cutoff = question.cutoff;
  let nodes = 0;
  let hot = 0;
  const bind = (s: number, sign: number): void => {
    for (let i = 0; i < cuts.length; i += 1) needs[i] = needs[i]! + sign * cuts[i]!.worth[s]!;
  };
  /** Bound of the node; stops at the first cut that reaches the cutoff. The cut that bounds most is tried first next time. */
  const boundOf = (spent: number): { bound: number; cut: number } => {
    let most = 0;
    let cut = hot;
    for (let k = -1; k < cuts.length; k += 1) {
      const i = k < 0 ? hot : k;
      if (i >= cuts.length || needs[i]! <= 0) continue;
      const here = payCut(cuts[i]!, slots, state, needs[i]!);
      if (here > most) {
        most = here;
        cut = i;
        if (spent + most >= cutoff) break;
      }
    }
    hot = cut;
    return { bound: spent + most, cut };
  };
  const isOpen = (s: number): boolean =>
    state[s] === free && (slots[s]!.before === 0 || state[s - 1] === taken);
  const visit = (spent: number): void => {
    nodes += 1;
    if (nodes > question.mostNodes || (best !== null && best.bound <= enough)) return;
    const { bound, cut } = boundOf(spent);
    if (bound >= cutoff) return;
    // As it stands, with nothing more taken.
    let unpaid = 0;
    for (let i = 0; i < cuts.length; i += 1) if (needs[i]! > unpaid) unpaid = needs[i]!;
    if (spent + unpaid < cutoff) {
      cutoff = spent + unpaid;
      best = { copies: copiesTaken(slots, state, question.copies.length), bound: cutoff };
    }
    if (unpaid <= 0 || cuts.length === 0) return;
    const next = cuts[cut]!.order.find(isOpen) ?? [...state.keys()].find(isOpen) ?? -1;
    if (next < 0) return;
    state[next] = taken;
    bind(next, -1);
    visit(spent + slots[next]!.cost);
    bind(next, 1);
    const later: number[] = [];
    for (let s = next; s < slots.length && slots[s]!.group === slots[next]!.group; s += 1) {
      state[s] = barred;
      later.push(s);
    }
    visit(spent);
    for (const s of later) state[s] = free;
  };
  visit(0);
  return { set: best, isExact: nodes <= question.mostNodes };
}

function copiesTaken(slots: readonly Slot[], state: Int8Array, groups: number): Int32Array {
  const copies = new Int32Array(groups);
  slots.forEach(({ group }, s) => (copies[group]! += state[s] === taken ? 1 : 0));
  return copies;
}
