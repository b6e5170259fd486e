import type { Kind, Placement, Plate, PlatePattern } from '../plate.ts';
import type { NetPair } from './build-net.ts';
import { buildNets } from './build-net.ts';
import { clearancesOn } from './clearance.ts';
import type { NetLimits } from './directions.ts';
import { greedyPattern } from './greedy.ts';
import { passWork } from './net.ts';
import { searchNet } from './search.ts';
import { layOut } from './tree.ts';

/** How long to search and when to stop. */
export interface GuillotineOptions {
  /** Elementary steps to spend, about: a step is some nanoseconds. At least one pass is always made. */
  readonly work: number;
  /** Same seed and work, same answer. */
  readonly seed: number;
  /** A pattern worth this much is enough: the search ends with it. */
  readonly target?: number;
  /** Only patterns worth more than this are wanted; with none the pattern is empty, and the bound is at least this. */
  readonly floor?: number;
  /**
   * Both a good pattern and a good bound (the default), or only one of them: the other is then what comes of itself.
   * Makes a difference on thinned plates alone, where the two are sought apart.
   */
  readonly seek?: 'both' | 'pattern' | 'bound';
}

/** The best pattern found. */
export interface GuillotineAnswer {
  readonly pattern: PlatePattern;
  /** No pattern within the caps is worth more than this (or than the floor). */
  readonly bound: number;
  /** The bound is met: by the pattern, or by the floor when the pattern is empty. */
  readonly proven: boolean;
  /** Steps spent. */
  readonly work: number;
}

/** A plate made ready to be asked many times with other worths. */
export interface PreparedPlate {
  /**
   * Whether cut places had to be left out to stay within the limits. Patterns can be cut all the same and bounds hold,
   * but better patterns may exist between the places kept, and the bound counts on room that is not there.
   */
  readonly isThinned: boolean;
  /** Steps of one pass over all workpieces, about the least that a question costs. */
  readonly passWork: number;
  /**
   * The pattern worth most.
   * @param worth of one piece by kind; kinds worth 0 or less are not cut
   * @param caps by kind, whole; where left out or larger, the kinds' own
   */
  readonly price: (
    worth: ArrayLike<number>,
    caps: ArrayLike<number> | undefined,
    options: GuillotineOptions,
  ) => GuillotineAnswer;
}

/** What a plate is prepared for. */
export interface PrepareOptions {
  readonly limits?: NetLimits;
  /**
   * With limited stages: whether a last cut that only frees a piece of waste is free, as in the "non-exact" problems of
   * the literature. Off, every cut takes a stage.
   */
  readonly freeTrim?: boolean;
}

/** Enough for every published problem in full; about a second a pass. */
const usualLimits: NetLimits = { passWork: 1e9, states: 1.2e7 };

/**
 * Makes a plate ready: chooses the cut places and lists the workpieces. Any number of stages, or the plate's; kerf,
 * clearances and shortest rip as the plate says.
 */
export function prepareGuillotine(
  plate: Plate,
  kinds: readonly Kind[],
  { limits = usualLimits, freeTrim = false }: PrepareOptions = {},
): PreparedPlate {
  const nets = buildNets(plate, kinds, limits, freeTrim);
  if (nets === null) {
    const price = (): GuillotineAnswer => ({ pattern: nothing, bound: 0, proven: true, work: 0 });
    return { isThinned: false, passWork: 0, price };
  }
  const coarser = new Map<number, NetPair>();
  /** Nets for a search of so many steps: label passes and multipliers take a hundred passes or so. */
  const netsFor = (work: number): NetPair => {
    const most = 2 ** Math.floor(Math.log2(Math.max(leastPassWork, work / 2000)));
    const known = coarser.get(most);
    if (known !== undefined) return known;
    const made = buildNets(plate, kinds, { ...limits, passWork: most }, freeTrim) ?? nets;
    coarser.set(most, made);
    return made;
  };
  return {
    isThinned: nets.bound !== nets.pattern,
    passWork: workOfPass(nets),
    price: (worth, caps, options) => {
      const demand = clampedTo(plate, kinds, worth, caps);
      const ask = (on: NetPair, work: number): GuillotineAnswer =>
        priceOn(on, plate, kinds, demand, { ...options, work });
      const isCapped = demand.caps.some((cap, kind) => cap < demand.most[kind]!);
      const isAffordable = workOfPass(nets) <= Math.max(leastPassWork, options.work / 60);
      if (!isCapped || isAffordable) return ask(nets, options.work);
      // One look at all places: enough when the caps do not bind. Else a search among fewer.
      const first = ask(nets, 1);
      if (first.proven || first.pattern.value >= (options.target ?? Infinity)) return first;
      return better(first, ask(netsFor(options.work), options.work - first.work));
    },
  };
}

/** A net whose pass takes fewer steps than this is not made coarser. */
const leastPassWork = 2e5;

function workOfPass({ pattern: { columns, rows, levels } }: NetPair): number {
  return passWork(columns, rows, levels);
}

/** The better pattern and the better bound of two answers to one question. */
function better(first: GuillotineAnswer, second: GuillotineAnswer): GuillotineAnswer {
  const pattern = first.pattern.value > second.pattern.value ? first.pattern : second.pattern;
  const bound = Math.max(pattern.value, Math.min(first.bound, second.bound));
  // An answer is proven by its own bound, which may be the floor.
  const proven = second.proven || bound <= pattern.value;
  return { pattern, bound, proven, work: first.work + second.work };
}

const nothing: PlatePattern = { placements: [], value: 0 };

interface Demand {
  readonly worth: Float64Array;
  readonly caps: Float64Array;
  readonly most: Float64Array;
}

/** Worths ≥ 0, and caps no larger than what the plate could hold. */
function clampedTo(
  plate: Plate,
  kinds: readonly Kind[],
  worths: ArrayLike<number>,
  limits: ArrayLike<number> | undefined,
): Demand {
  const most = Float64Array.from(kinds, (kind) => mostOf(plate, kind));
  const caps = most.map((all, kind) =>
    Math.max(0, Math.min(all, kinds[kind]!.cap, limits?.[kind] ?? Infinity)),
  );
  const worth = caps.map((cap, kind) => (cap > 0 && worths[kind]! > 0 ? worths[kind]! : 0));
  return { worth, caps, most };
}

function priceOn(
  nets: NetPair,
  plate: Plate,
  kinds: readonly Kind[],
  demand: Demand,
  options: GuillotineOptions,
): GuillotineAnswer {
  const { worth, caps } = demand;
  const floor = Math.max(0, options.floor ?? 0);
  const value = (placements: readonly Placement[]): number => {
    return placements.reduce((sum, { kind }) => sum + worth[kind]!, 0);
  };
  let placements: readonly Placement[] = nets.isPlain
    ? greedyPattern(plate, kinds, worth, caps, clearancesOn(plate, kinds).freeOf)
    : [];
  if (value(placements) <= floor) placements = [];
  const known = Math.max(floor, value(placements));
  const target = options.target !== undefined && options.target > floor ? options.target : Infinity;
  const isThinned = nets.bound !== nets.pattern;
  const seek = isThinned ? (options.seek ?? 'both') : 'pattern';
  const question = { ...demand, floor: known, target, seed: options.seed };
  let work = 0;
  let bound = demand.worth.reduce((sum, each, kind) => sum + each * caps[kind]!, 0);
  if (seek !== 'bound') {
    const found = searchNet(nets.pattern, { ...question, work: options.work * (seek === 'both' ? 0.6 : 1) });
    if (found.root >= 0) placements = layOut(nets.pattern, found.trees, found.root, caps);
    work += found.work;
    if (!isThinned) bound = found.bound;
  }
  const best = Math.max(floor, value(placements));
  if (seek !== 'pattern') {
    const share = seek === 'both' ? 0.4 : 1;
    const found = searchNet(nets.bound, {
      ...question,
      floor: best,
      target: Infinity,
      work: options.work * share,
    });
    work += found.work;
    bound = found.bound;
  }
  bound = Math.max(best, bound);
  return { pattern: { placements, value: value(placements) }, bound, proven: bound <= best, work };
}

/** No more copies of a kind than this fit on the plate: by rows where it has one shape, by area where it has more. */
function mostOf(plate: Plate, { shapes }: Kind): number {
  const length = plate.length + plate.crosscutKerf;
  const width = plate.width + plate.ripKerf;
  const fitting = shapes
    .map((shape) => ({ length: shape.length + plate.crosscutKerf, width: shape.width + plate.ripKerf }))
    .filter((shape) => shape.length <= length && shape.width <= width);
  const [only] = fitting;
  if (only === undefined) return 0;
  if (fitting.length === 1) return Math.floor(length / only.length) * Math.floor(width / only.width);
  return Math.floor((length * width) / Math.min(...fitting.map((shape) => shape.length * shape.width)));
}
