import { firstLeaf } from './leaves.ts';
import type { Net } from './net.ts';
import { anyCut, noCut, statesPerLevel } from './net.ts';
import type { Trees } from './tree.ts';

/** The tree behind a table. `root` is −1 when the best is to cut nothing. */
export interface Traced {
  readonly trees: Trees;
  readonly root: number;
}

/**
 * Finds again how `fillInside` came to the value of the root: at each state the first way, in the order of
 * the recursion, that gives exactly the stored value. Splits are tried from the middle, which keeps the tree flat.
 */
export function traceBest(net: Net, gain: Float64Array, table: Float64Array): Traced {
  const trees = { left: [] as number[], right: [] as number[], rip: [] as number[], born: [] as number[] };
  const add = (left: number, right: number, rip: number, born: number): number => {
    trees.born.push(born);
    trees.rip.push(rip);
    trees.right.push(right);
    return trees.left.push(left) - 1;
  };
  const build = (from: number): number => {
    const { state, leaf, split, byRip } = unwrap(net, gain, table, from);
    if (leaf >= 0) return add(-1 - leaf, -1, -1, state);
    if (split < 0) return -1;
    const [first, second] = partsOf(net, state, split, byRip);
    const a = build(first);
    const b = build(second);
    if (a < 0 || b < 0) return Math.max(a, b);
    return add(a, b, byRip ? split : -1, state);
  };
  const root = build(table.length - 1);
  return { trees, root };
}

/** The two states that a split of a state makes. */
function partsOf(net: Net, state: number, split: number, byRip: boolean): [number, number] {
  const { columns, rows } = net;
  const row = state % rows.count;
  if (byRip) return [state - row + rows.first[split]!, state - row + rows.second[split]!];
  const column = Math.floor((state % statesPerLevel(net)) / rows.count);
  const base = state - column * rows.count;
  return [base + columns.first[split]! * rows.count, base + columns.second[split]! * rows.count];
}

interface Step {
  readonly state: number;
  /** −1 when it is not a leaf. */
  readonly leaf: number;
  /** −1 when it is not a split. */
  readonly split: number;
  readonly byRip: boolean;
}

/** Sheds waste and levels until the state's value comes from a leaf or a split. */
function unwrap(net: Net, gain: Float64Array, table: Float64Array, from: number): Step {
  const { columns, rows } = net;
  const level = statesPerLevel(net);
  let state = from;
  for (;;) {
    const value = table[state]!;
    const leaf = value > 0 ? leafWorth(net, gain, state, value) : -1;
    if (value <= 0 || leaf >= 0) return { state, leaf, split: -1, byRip: false };
    const stage = Math.floor(state / level);
    const column = Math.floor((state % level) / rows.count);
    const row = state % rows.count;
    const canRip = columns.size[column]! >= net.ripFrom && net.rips[stage] !== noCut;
    const inner: number[] = stage > 0 ? [state - level] : [];
    for (const side of [0, 1]) {
      const narrow = columns.narrower[2 * column + side]!;
      if (net.crosscuts[stage] !== noCut && narrow >= 0) inner.push(state + (narrow - column) * rows.count);
      const low = rows.narrower[2 * row + side]!;
      if (canRip && low >= 0) inner.push(state + low - row);
    }
    const next = inner.find((candidate) => table[candidate] === value);
    if (next === undefined) {
      const split = splitWorth(net, table, state, canRip && net.rips[stage] === anyCut);
      return { state, leaf: -1, ...split };
    }
    state = next;
  }
}

/** The leaf of a state whose gain is the value, or −1. */
function leafWorth(net: Net, gain: Float64Array, state: number, value: number): number {
  const { leaves } = net;
  for (let leaf = firstLeaf(leaves, state); leaves.state[leaf] === state; leaf++) {
    if (gain[leaves.kind[leaf]!] === value) return leaf;
  }
  return -1;
}

function splitWorth(
  net: Net,
  table: Float64Array,
  state: number,
  canRip: boolean,
): { split: number; byRip: boolean } {
  const value = table[state]!;
  const stage = Math.floor(state / statesPerLevel(net));
  const column = Math.floor((state % statesPerLevel(net)) / net.rows.count);
  const row = state % net.rows.count;
  const sum = (split: number, byRip: boolean): number => {
    const [first, second] = partsOf(net, state, split, byRip);
    return table[first]! + table[second]!;
  };
  if (net.crosscuts[stage] === anyCut) {
    const { splitStart } = net.columns;
    for (let split = splitStart[column + 1]! - 1; split >= splitStart[column]!; split--) {
      if (sum(split, false) === value) return { split, byRip: false };
    }
  }
  if (canRip) {
    const { splitStart } = net.rows;
    for (let split = splitStart[row + 1]! - 1; split >= splitStart[row]!; split--) {
      if (sum(split, true) === value) return { split, byRip: true };
    }
  }
  throw new Error('a table of values that no cut explains');
}
