import type { Goal } from './goal.ts';
import { fillInside } from './inside.ts';
import type { Net } from './net.ts';
import type { Traced } from './trace.ts';
import { traceBest } from './trace.ts';
import { countKinds } from './tree.ts';

/**
 * Lagrangian relaxation of the caps: with multipliers m ≥ 0,
 *
 *     z(m) = Σ m_k cap_k + max over patterns without caps of Σ (worth_k − m_k) n_k  ≥  best pattern within caps
 *
 * The inner maximum is one inside pass. A subgradient of z is cap − n (Held, Wolfe & Crowder 1974).
 */
export interface Relaxation {
  /** The least z found. */
  readonly bound: number;
  /** Multipliers near the least: the mean of those tried there, which are less of a corner than the best. */
  readonly multipliers: Float64Array;
  /** z of `multipliers`, and z of no multipliers at all. */
  readonly meanBound: number;
  readonly freeBound: number;
  /** The best pattern within caps met on the way: a traced tree whose pieces beyond the caps are left out. */
  readonly met: { readonly value: number; readonly traced: Traced };
  readonly work: number;
}

export interface RelaxationControl {
  readonly rounds: number;
  /** Steps after which no further round begins. */
  readonly work: number;
  /** Steps of one pass. */
  readonly passWork: number;
  /** No use in a bound below this. */
  readonly enough: number;
  /** A value that some pattern is known to reach. */
  readonly least: number;
}

/** Rounds whose bound is within this share of the least count for the mean. */
const nearness = 0.005;

/** Rounds without progress before less is hoped for. */
const patience = 8;

/**
 * Brings the bound down. Multipliers never exceed the worth of their kind: beyond that a kind is out of every pattern
 * already.
 * @param worth ≥ 0; 0 for kinds that do not count   @param table room for one inside table
 */
export function relaxCaps(
  net: Net,
  worth: Float64Array,
  caps: Float64Array,
  goal: Goal,
  control: RelaxationControl,
  table: Float64Array,
): Relaxation {
  const kinds = worth.length;
  const now = new Float64Array(kinds);
  const best = new Float64Array(kinds);
  const mean = new Float64Array(kinds);
  const evaluation = evaluator(net, worth, caps, table);
  const { counts } = evaluation;
  let bound = evaluation.at(now);
  const freeBound = bound;
  let work = control.passWork;
  const done = (multipliers: Float64Array, meanBound: number): Relaxation => {
    return { bound, multipliers, meanBound, freeBound, met: evaluation.met(), work };
  };
  if (bound <= control.enough || counts.every((count, kind) => count <= caps[kind]!)) return done(now, bound);

  // Where from: the densities that pieces are brought down to, as in the relaxation of a knapsack.
  for (const density of densities(net, worth, caps)) {
    if (work >= control.work) break;
    priceByArea(now, density, net, worth, goal);
    const value = evaluation.at(now);
    work += control.passWork;
    if (value < bound) {
      bound = value;
      best.set(now);
    }
  }
  now.set(best);

  let hope = 0.05 * bound;
  let stalled = 0;
  let level = bound;
  let averaged = 0;
  for (let round = 0; round < control.rounds && work < control.work; round++) {
    const value = evaluation.at(now);
    work += control.passWork;
    stalled = value < bound * (1 - 1e-4) ? 0 : stalled + 1;
    if (value <= bound) {
      bound = value;
      best.set(now);
    }
    if (bound < level * (1 - nearness)) {
      level = bound;
      averaged = 0;
    }
    if (value <= bound * (1 + nearness)) {
      averaged += 1;
      for (let kind = 0; kind < kinds; kind++) {
        mean[kind] = averaged === 1 ? now[kind]! : mean[kind]! + (now[kind]! - mean[kind]!) / averaged;
      }
    }
    if (stalled > patience) {
      hope /= 2;
      stalled = 0;
    }
    if (hope < 1e-4 * bound || bound <= control.enough) break;
    const aim = Math.max(bound - hope, control.least, evaluation.met().value);
    if (!descend(now, Math.max(0, value - aim), worth, caps, counts, goal)) break;
  }
  if (averaged === 0) return done(best, bound);
  for (let kind = 0; kind < kinds; kind++) {
    now[kind] = quantized(mean[kind]!, worth[kind]!, goal);
  }
  work += control.passWork;
  return done(now, evaluation.at(now));
}

/**
 * Multipliers brought towards none as far as the bound stays within a share of the least (z is convex). Smaller ones
 * leave more gain to each piece, so that waste costs a set of pieces dearly: that tells good sets from bad ones better
 * than the bound alone does, above all where nearly all pieces fit and the least bound is the sum of all worths.
 */
export function leanMultipliers(
  relaxation: Relaxation,
  worth: Float64Array,
  goal: Goal,
  share: number,
): Float64Array {
  const { bound, meanBound, freeBound, multipliers } = relaxation;
  const rise = freeBound - meanBound;
  const slack = bound * (1 + share) - meanBound;
  const kept = rise <= 0 ? 1 : 1 - Math.min(1, Math.max(0, slack / rise));
  return multipliers.map((multiplier, kind) => quantized(kept * multiplier, worth[kind]!, goal));
}

interface Evaluator {
  /** z at these multipliers; leaves the relaxed pattern's counts in `counts`. */
  readonly at: (multipliers: Float64Array) => number;
  readonly counts: Int32Array;
  readonly met: () => Relaxation['met'];
}

function evaluator(net: Net, worth: Float64Array, caps: Float64Array, table: Float64Array): Evaluator {
  const counts = new Int32Array(worth.length);
  const gain = new Float64Array(worth.length);
  let met: Relaxation['met'] = {
    value: -Infinity,
    traced: { trees: { left: [], right: [], rip: [], born: [] }, root: -1 },
  };
  const at = (multipliers: Float64Array): number => {
    let offset = 0;
    for (let kind = 0; kind < gain.length; kind++) {
      offset += multipliers[kind]! * caps[kind]!;
      gain[kind] = worth[kind]! - multipliers[kind]!;
    }
    fillInside(net, gain, table);
    const traced = traceBest(net, gain, table);
    countKinds(net, traced.trees, traced.root, counts);
    let within = 0;
    for (let kind = 0; kind < gain.length; kind++)
      within += worth[kind]! * Math.min(counts[kind]!, caps[kind]!);
    if (within > met.value) met = { value: within, traced };
    return offset + table[table.length - 1]!;
  };
  return { at, counts, met: () => met };
}

/** One subgradient step of length step / |slope|²; false when there is nowhere to go. */
function descend(
  now: Float64Array,
  step: number,
  worth: Float64Array,
  caps: Float64Array,
  counts: Int32Array,
  goal: Goal,
): boolean {
  let square = 0;
  for (let kind = 0; kind < now.length; kind++) {
    const slope = counts[kind]! - caps[kind]!;
    if (slope > 0 || now[kind]! > 0) square += slope * slope;
  }
  if (square === 0) return false;
  for (let kind = 0; kind < now.length; kind++) {
    const moved = now[kind]! + (step / square) * (counts[kind]! - caps[kind]!);
    now[kind] = quantized(moved, worth[kind]!, goal);
  }
  return true;
}

/** Area of the smallest shape of each kind, kerf included; Infinity for kinds that have no place. */
function areas(net: Net, kinds: number): Float64Array {
  const area = new Float64Array(kinds).fill(Infinity);
  const { kind, length, width } = net.leaves;
  for (let leaf = 0; leaf < kind.length; leaf++) {
    const size = (length[leaf]! + net.crosscutKerf) * (width[leaf]! + net.ripKerf);
    if (size < area[kind[leaf]!]!) area[kind[leaf]!] = size;
  }
  return area;
}

/**
 * Worths per area worth trying: where the plate is full when the densest pieces are taken first, or, when all fit, the
 * least density there is.
 */
function densities(net: Net, worth: Float64Array, caps: Float64Array): number[] {
  const area = areas(net, worth.length);
  const order = Array.from(worth.keys()).filter((kind) => worth[kind]! > 0 && area[kind]! < Infinity);
  const density = (kind: number): number => worth[kind]! / area[kind]!;
  order.sort((a, b) => density(b) - density(a) || a - b);
  if (order.length === 0) return [];
  let room = net.columns.far[net.columns.whole]! * net.rows.far[net.rows.whole]!;
  for (const kind of order) {
    room -= caps[kind]! * area[kind]!;
    if (room < 0) return [1.2 * density(kind), density(kind), 0.8 * density(kind)];
  }
  return [density(order.at(-1)!), 0.3 * density(order.at(-1)!)];
}

/** Multipliers that leave each kind no more gain than its area times the density. */
function priceByArea(
  multipliers: Float64Array,
  density: number,
  net: Net,
  worth: Float64Array,
  goal: Goal,
): void {
  const area = areas(net, worth.length);
  for (let kind = 0; kind < worth.length; kind++) {
    const gain = Math.min(worth[kind]!, density * area[kind]!);
    multipliers[kind] = quantized(worth[kind]! - gain, worth[kind]!, goal);
  }
}

/** A multiplier between 0 and the worth, in whole quanta, so that sums stay exact. */
function quantized(multiplier: number, worth: number, goal: Goal): number {
  return Math.min(worth, Math.max(0, Math.round(multiplier / goal.quantum) * goal.quantum));
}
