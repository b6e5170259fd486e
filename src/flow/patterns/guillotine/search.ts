import type { Random } from '../../../base/random/random.ts';
import { random, uniform } from '../../../base/random/random.ts';
import type { Goal } from './goal.ts';
import { above, below, goalOf, tightened } from './goal.ts';
import { fillInside } from './inside.ts';
import type { PassResult } from './label-pass.ts';
import { runLabelPass } from './label-pass.ts';
import type { Lanes } from './lanes.ts';
import { packLanes } from './lanes.ts';
import type { Relaxation } from './multipliers.ts';
import { leanMultipliers, relaxCaps } from './multipliers.ts';
import type { Net } from './net.ts';
import { passWork, stateCount } from './net.ts';
import { fillOutside } from './outside.ts';
import type { Trees } from './tree.ts';

/** One question to a net. */
export interface Question {
  /** By kind, ≥ 0; kinds that are not to be cut have 0. */
  readonly worth: Float64Array;
  /** By kind, whole, no more than `most`. */
  readonly caps: Float64Array;
  /** By kind, what the plate could hold at most. */
  readonly most: Float64Array;
  /** Patterns worth no more than this are of no interest: the floor, or a pattern known already. */
  readonly floor: number;
  /** A pattern worth this much ends the search. */
  readonly target: number;
  readonly work: number;
  readonly seed: number;
}

/** The best tree found (root −1: none better than the floor) and what no pattern of the net can exceed. */
export interface Finding {
  readonly value: number;
  readonly trees: Trees;
  readonly root: number;
  readonly bound: number;
  readonly work: number;
}

interface Search {
  readonly net: Net;
  readonly question: Question;
  readonly goal: Goal;
  readonly lanes: Lanes;
  readonly inside: Float64Array;
  /** Empty until the first label pass. */
  outside: Float64Array;
  /** The gains and the offset of the multipliers that the tables are filled for. */
  gain: Float64Array;
  offset: number;
  value: number;
  trees: Trees;
  root: number;
  bound: number;
  work: number;
}

/** Shares by which the bounds of the multipliers in turn may stand above the least. */
const leanShares = [0.004, 0.001];

/**
 * The best pattern of a net within caps. First the Lagrangian bound; its patterns, cut down to the caps, are the first
 * answers. Then label passes that look only for what is better than the best known and no worse than a guess not far
 * below the bound. A pass that dropped nothing for want of room settles its question: either it finds the best, or the
 * bound comes down. Otherwise the next pass guides by other multipliers, lowers the guess, or keeps more labels.
 */
export function searchNet(net: Net, question: Question): Finding {
  const { worth, caps } = question;
  const all = worth.reduce((sum, each, kind) => sum + each * caps[kind]!, 0);
  const goal = goalOf(worth, all);
  const search: Search = {
    net,
    question,
    goal,
    lanes: packLanes(caps, question.most),
    inside: new Float64Array(stateCount(net)),
    outside: new Float64Array(0),
    gain: worth,
    offset: 0,
    value: Math.max(0, question.floor),
    trees: { left: [], right: [], rip: [], born: [] },
    root: -1,
    bound: all,
    work: 0,
  };
  if (!isOpen(search)) return findingOf(search);
  const control = {
    rounds: 150,
    work: question.work * 0.3,
    passWork: passWork(net.columns, net.rows, net.levels),
    enough: search.value,
    least: search.value,
  };
  const relaxation = relaxCaps(net, worth, caps, goal, control, search.inside);
  search.work = relaxation.work;
  lower(search, relaxation.bound);
  if (relaxation.met.value > search.value) {
    search.value = relaxation.met.value;
    search.trees = relaxation.met.traced.trees;
    search.root = relaxation.met.traced.root;
  }
  if (isOpen(search)) refine(search, relaxation);
  return findingOf(search);
}

function findingOf({ value, trees, root, bound, work }: Search): Finding {
  return { value, trees, root, bound: Math.max(bound, value), work };
}

function lower(search: Search, bound: number): void {
  search.bound = Math.min(search.bound, tightened(search.goal, bound));
}

function isOpen({ bound, goal, value, question, work }: Search): boolean {
  return bound >= above(goal, value) && value < question.target && work < question.work;
}

/** How many labels a pass keeps, what it looks for, and by which multipliers; all change from pass to pass. */
interface Course {
  keep: number;
  /** Share of the bound by which the guess lies below it. */
  depth: number;
  /** Index into `leanShares`. */
  guide: number;
  shaken: boolean;
  /** Steps of the last failed pass by each guide. */
  readonly spent: number[];
}

/** Up to this many labels a state every guide is tried; beyond, the one whose passes are shorter. */
const manyGuides = 8;

/** Label passes until nothing is open. */
function refine(search: Search, relaxation: Relaxation): void {
  const { question, goal } = search;
  const stream = random(question.seed);
  search.outside = new Float64Array(search.inside.length);
  const course: Course = { keep: 2, depth: 0.003, guide: 0, shaken: false, spent: [] };
  let guided = '';
  while (isOpen(search)) {
    const { guide, shaken, keep } = course;
    if (guided !== `${guide}` || shaken) {
      const multipliers = leanMultipliers(relaxation, question.worth, goal, leanShares[guide]!);
      fillTables(search, shaken ? shake(multipliers, question.worth, goal, stream) : multipliers);
      guided = `${guide}`;
    }
    const least = above(goal, search.value);
    const threshold = Math.max(least, tightened(goal, search.bound * (1 - course.depth)));
    const result = look(search, threshold, keep);
    const isBetter = take(search, result);
    // Whatever a pass did not keep for its bound is worth less than the threshold.
    lower(search, Math.max(below(goal, threshold), result.bound, search.value));
    if (isBetter && above(goal, search.value) > threshold) continue;
    if (threshold > least) course.depth *= 2;
    if (result.isComplete) continue;
    if (result.root < 0 && threshold > least) {
      // Nothing yet: a few more labels while that is cheap.
      if (keep < 16 && 80 * result.work < question.work) course.keep *= 2;
    } else widen(course, result.work, question.work - search.work);
  }
}

/** After a pass that found nothing and proved nothing: another guide, or more labels as far as the work allows. */
function widen(course: Course, spent: number, left: number): void {
  const before = course.spent[course.guide] ?? 0;
  course.spent[course.guide] = spent;
  if (course.keep <= manyGuides && course.guide + 1 < leanShares.length) {
    course.guide += 1;
    return;
  }
  const best = course.spent.indexOf(Math.min(...course.spent));
  course.guide = course.keep < manyGuides ? 0 : best;
  // Four times the labels make up to sixteen times the joins; where they hardly did, few states were full.
  const isSaturated = course.keep > manyGuides && spent < 1.5 * before;
  if (4 * spent < left) course.keep *= isSaturated ? 32 : 4;
  else course.shaken = true;
}

function fillTables(search: Search, multipliers: Float64Array): void {
  const { net, question } = search;
  search.gain = question.worth.map((each, kind) => each - multipliers[kind]!);
  search.offset = question.caps.reduce((sum, cap, kind) => sum + cap * multipliers[kind]!, 0);
  fillInside(net, search.gain, search.inside);
  fillOutside(net, search.inside, search.outside);
  search.work += 3 * passWork(net.columns, net.rows, net.levels);
}

/** Other multipliers near these: up to a hundredth of each worth away. */
function shake(multipliers: Float64Array, worth: Float64Array, goal: Goal, stream: Random): Float64Array {
  return multipliers.map((multiplier, kind) => {
    const moved = multiplier + 0.02 * (uniform(stream) - 0.5) * worth[kind]!;
    return Math.min(worth[kind]!, Math.max(0, Math.round(moved / goal.quantum) * goal.quantum));
  });
}

function look(search: Search, threshold: number, keep: number): PassResult {
  const { net, lanes, question, gain, inside, outside, offset } = search;
  const { worth, caps } = question;
  const work = question.work - search.work;
  const result = runLabelPass({
    net,
    lanes,
    worth,
    caps,
    gain,
    inside,
    outside,
    offset,
    threshold,
    keep,
    work,
  });
  search.work += result.work;
  return result;
}

/** Takes over a better pattern. */
function take(search: Search, { root, store }: PassResult): boolean {
  if (root < 0 || store.worth[root]! <= search.value) return false;
  search.value = store.worth[root]!;
  search.trees = store;
  search.root = root;
  return true;
}
