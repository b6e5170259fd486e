import type { Candidates } from './candidates.ts';
import { admit, candidates, clearCandidates, makeRoom, settle } from './candidates.ts';
import type { CapCut } from './cut-to-caps.ts';
import { cutToCaps } from './cut-to-caps.ts';
import type { LabelStore } from './label-store.ts';
import { doubled } from '../doubled.ts';
import { copyLabel, growStore, labelStore } from './label-store.ts';
import { firstLeaf } from './leaves.ts';
import { anyCut, noCut, stateCount, statesPerLevel } from './net.ts';
import type { PassInput } from './pass-input.ts';

/** What a pass found. */
export interface PassResult {
  readonly store: LabelStore;
  /** The label of the root that is worth most, −1 when there is none. */
  readonly root: number;
  /** No pattern worth `threshold` or more is worth more than this; −Infinity when there is none at all. */
  readonly bound: number;
  /** Whether no label was dropped for want of room. */
  readonly isComplete: boolean;
  readonly work: number;
}

interface Pass extends PassInput, CapCut {
  readonly store: LabelStore;
  readonly set: Candidates;
  /** Labels of each state: `length` entries of `list` from `start`, by falling gain. */
  readonly start: Int32Array;
  readonly length: Int32Array;
  list: Int32Array;
  listed: number;
  keepNow: number;
  /** How many labels of a state are joined with others: all, until the pass must come to an end. */
  reach: number;
  /** Least gain that a label of the current state needs. */
  need: number;
  state: number;
  dropped: number;
}

/** Bounds of memory: labels of a pass, some 60 bytes each, and places where they are listed. Beyond, one a state. */
const mostLabels = 3e6;
const mostListed = 4e7;

/**
 * All sets of pieces, within their caps, that each state can hold and that may still become a pattern worth
 * the threshold: built from small states to large, as joins of two. A label is dropped
 * - when its gain + outside(state) + offset stays below the threshold: the Lagrangian bound of every pattern
 *   that holds it (the bound of Christofides & Hadjiconstantinou 1995 used as Viswanathan & Bagchi 1993 do);
 * - when another label of the state dominates it; a sum beyond a cap counts as the cap, so that labels need
 *   not be listed together with their subsets;
 * - when the state has `keep` better ones. Only this can lose a pattern: the bound tells.
 */
export function runLabelPass(input: PassInput): PassResult {
  const states = stateCount(input.net);
  const pass: Pass = {
    ...input,
    store: labelStore(input.lanes, 4096),
    set: candidates(input.lanes),
    start: new Int32Array(states),
    length: new Int32Array(states),
    list: new Int32Array(4096),
    listed: 0,
    keepNow: input.keep,
    reach: Infinity,
    need: 0,
    state: 0,
    dropped: -Infinity,
    steps: 0,
    lostGain: 0,
    lostWorth: 0,
  };
  const { net, inside, outside } = input;
  const level = statesPerLevel(net);
  const height = net.rows.count;
  const free = input.threshold - input.offset;
  for (let column = 0; column < net.columns.count; column++) {
    for (let stage = 0; stage < net.levels; stage++) {
      for (let row = 0; row < height; row++) {
        const state = stage * level + column * height + row;
        if (inside[state]! + outside[state]! < free) continue;
        pass.state = state;
        pass.need = free - outside[state]!;
        clearCandidates(pass.set);
        gather(pass, stage, column, row);
        finish(pass);
        if (pass.steps > input.work || pass.store.count > mostLabels || pass.listed > mostListed) {
          pass.keepNow = 1;
          pass.reach = 1;
        }
      }
    }
  }
  return resultOf(pass, states - 1);
}

/** Every candidate of the current state. */
function gather(pass: Pass, stage: number, column: number, row: number): void {
  const { columns, rows, crosscuts, rips, ripFrom } = pass.net;
  const height = rows.count;
  const { state } = pass;
  const canRip = columns.size[column]! >= ripFrom && rips[stage] !== noCut;
  addLeaves(pass);
  if (stage > 0) inherit(pass, state - statesPerLevel(pass.net));
  for (let side = 0; side < 2; side++) {
    const narrow = columns.narrower[2 * column + side]!;
    if (narrow >= 0 && crosscuts[stage] !== noCut) inherit(pass, state + (narrow - column) * height);
    const low = rows.narrower[2 * row + side]!;
    if (low >= 0 && canRip) inherit(pass, state + low - row);
  }
  if (crosscuts[stage] === anyCut) {
    const base = state - column * height;
    for (let split = columns.splitStart[column + 1]! - 1; split >= columns.splitStart[column]!; split--) {
      join(pass, base + columns.first[split]! * height, base + columns.second[split]! * height, -1);
    }
    pass.steps += 2 * (columns.splitStart[column + 1]! - columns.splitStart[column]!);
  }
  if (canRip && rips[stage] === anyCut) {
    const base = state - row;
    for (let split = rows.splitStart[row + 1]! - 1; split >= rows.splitStart[row]!; split--) {
      join(pass, base + rows.first[split]!, base + rows.second[split]!, split);
    }
    pass.steps += 2 * (rows.splitStart[row + 1]! - rows.splitStart[row]!);
  }
}

/** Makes sure of a free slot among the candidates; dropping some raises what is needed of the next. */
function reserve(pass: Pass): void {
  if (pass.set.labels.count < pass.set.room) return;
  noteDropped(pass, makeRoom(pass.set, pass.keepNow));
}

/** A set of this gain may have been lost: the bound must count on it. */
function noteLost(pass: Pass, gain: number): void {
  pass.dropped = Math.max(pass.dropped, gain + pass.outside[pass.state]! + pass.offset);
}

function noteDropped(pass: Pass, gain: number): void {
  if (gain === -Infinity) return;
  noteLost(pass, gain);
  pass.need = Math.max(pass.need, gain);
}

/** The pieces that fill the current state. */
function addLeaves(pass: Pass): void {
  const { leaves } = pass.net;
  const { lanes } = pass;
  for (let leaf = firstLeaf(leaves, pass.state); leaves.state[leaf] === pass.state; leaf++) {
    const kind = leaves.kind[leaf]!;
    const worth = pass.worth[kind]!;
    if (worth <= 0 || pass.gain[kind]! < pass.need) continue;
    reserve(pass);
    const { labels, origin } = pass.set;
    const base = labels.count * lanes.words;
    labels.vector.fill(0, base, base + lanes.words);
    const word = lanes.word[kind]!;
    if (word >= 0) labels.vector[base + word] = 1 << lanes.shift[kind]!;
    const slot = admit(pass.set, word >= 0 ? 0 : worth);
    if (slot < 0) continue;
    origin[slot] = -1;
    labels.worth[slot] = worth;
    labels.gain[slot] = pass.gain[kind]!;
    labels.left[slot] = -1 - leaf;
    labels.right[slot] = -1;
    labels.rip[slot] = -1;
    labels.born[slot] = pass.state;
  }
}

/** Takes over the labels of a smaller state that gain enough. */
function inherit(pass: Pass, from: number): void {
  const end = pass.start[from]! + pass.length[from]!;
  for (let at = pass.start[from]!; at < end; at++) {
    const label = pass.list[at]!;
    if (pass.store.gain[label]! < pass.need) break;
    if (at - pass.start[from]! >= pass.reach) {
      noteLost(pass, pass.store.gain[label]!);
      break;
    }
    reserve(pass);
    const { labels, origin } = pass.set;
    copyLabel(pass.store, label, labels, labels.count, pass.lanes.words);
    const slot = admit(pass.set, pass.store.free[label]!);
    if (slot >= 0) origin[slot] = label;
    pass.steps += 16;
  }
}

/** Joins every label of one state with every label of another, as far as the sums gain enough. */
function join(pass: Pass, stateA: number, stateB: number, rip: number): void {
  const lengthA = pass.length[stateA]!;
  const lengthB = pass.length[stateB]!;
  if (lengthA === 0 || lengthB === 0) return;
  const { list, lanes } = pass;
  const { gain, worth, free, vector } = pass.store;
  const { guard, room, words } = lanes;
  const startA = pass.start[stateA]!;
  const startB = pass.start[stateB]!;
  const mostB = gain[list[startB]!]!;
  for (let atA = 0; atA < lengthA; atA++) {
    const a = list[startA + atA]!;
    const gainA = gain[a]!;
    if (gainA + mostB < pass.need) break;
    if (atA >= pass.reach) {
      noteLost(pass, gainA + mostB);
      break;
    }
    for (let atB = stateA === stateB ? atA : 0; atB < lengthB; atB++) {
      const b = list[startB + atB]!;
      let sum = gainA + gain[b]!;
      if (sum < pass.need) break;
      if (atB >= pass.reach) {
        noteLost(pass, sum);
        break;
      }
      pass.steps += 16 + words;
      reserve(pass);
      const { labels } = pass.set;
      const base = labels.count * words;
      let over = 0;
      for (let word = 0; word < words; word++) {
        const counts = (vector[a * words + word]! + vector[b * words + word]!) | 0;
        labels.vector[base + word] = counts;
        over |= (counts + room[word]!) & guard[word]!;
      }
      let total = worth[a]! + worth[b]!;
      if (over !== 0) {
        pass.lostGain = 0;
        pass.lostWorth = 0;
        cutToCaps(pass, labels.vector, base);
        sum -= pass.lostGain;
        total -= pass.lostWorth;
        if (sum < pass.need) continue;
      }
      const slot = admit(pass.set, free[a]! + free[b]!);
      if (slot < 0) continue;
      pass.set.origin[slot] = -1;
      labels.worth[slot] = total;
      labels.gain[slot] = sum;
      labels.left[slot] = a;
      labels.right[slot] = b;
      labels.rip[slot] = rip;
      labels.born[slot] = pass.state;
    }
  }
}

/** Keeps the best candidates of the current state as its labels. */
function finish(pass: Pass): void {
  const { set, store, lanes, state } = pass;
  if (set.labels.count === 0) return;
  noteDropped(pass, settle(set, pass.keepNow));
  const { labels } = set;
  pass.steps += set.steps;
  set.steps = 0;
  while (pass.listed + labels.count > pass.list.length) pass.list = doubled(pass.list);
  pass.start[state] = pass.listed;
  pass.length[state] = labels.count;
  for (let slot = 0; slot < labels.count; slot++) {
    let label = set.origin[slot]!;
    if (label < 0) {
      if (store.count === store.worth.length) growStore(store);
      label = store.count++;
      copyLabel(labels, slot, store, label, lanes.words);
    }
    pass.list[pass.listed++] = label;
  }
}

function resultOf(pass: Pass, rootState: number): PassResult {
  let root = -1;
  const end = pass.start[rootState]! + pass.length[rootState]!;
  for (let at = pass.start[rootState]!; at < end; at++) {
    const label = pass.list[at]!;
    if (root < 0 || pass.store.worth[label]! > pass.store.worth[root]!) root = label;
  }
  const found = root < 0 ? -Infinity : pass.store.worth[root]!;
  return {
    store: pass.store,
    root,
    bound: Math.max(found, pass.dropped),
    isComplete: pass.dropped === -Infinity,
    work: pass.steps,
  };
}
