import type { PlanPiece } from './piece.ts';
import type { MantelPlan } from './plan-mantel.ts';

/** The pieces of the facing's run, by name, in the groups that stay together. */
export type RunGroups = readonly (readonly string[])[];

/** The pieces whose grain can wrap the corners, in walking order; none when there is but one, or when they are glued up. */
export function facingRun(plan: MantelPlan): readonly PlanPiece[] {
  const pieces = plan.pieces.filter(({ kind }) => kind === 'facing' || kind === 'cap');
  return pieces.length > 1 && pieces.every(({ glueUp }) => glueUp === 1) ? pieces : [];
}

/** Beyond this many corners not every way to break is listed, only the breaks from the ends inwards. */
const mostCornersInFull = 6;

/**
 * Ways to break the facing's run when no board is long enough for it whole, the best first: whole; then by how few of the
 * front's own two corners are broken, how few corners in all, how far from the front they lie, the left before the right.
 * So the grain stops wrapping at a front corner only when nothing else helps.
 * @returns empty when there is no run
 */
export function breakRun(plan: MantelPlan): readonly RunGroups[] {
  const run = facingRun(plan);
  if (run.length === 0) return [];
  const front = run.findIndex(({ kind, leg }) => kind === 'facing' && leg === plan.front);
  return waysToBreak(
    run.map(({ name }) => name),
    front,
  );
}

/**
 * Ways to break any run into stretches, the best first by the same rules.
 * @param names its pieces in order   @param front which of them is the one most looked at
 * @example waysToBreak(['left', 'front'], 1) // [[['left', 'front']], [['left'], ['front']]]
 */
export function waysToBreak(names: readonly string[], front: number): readonly RunGroups[] {
  return waysToBreakAll([{ names, front }]).map(([groups]) => groups!);
}

/** A run's pieces in order, and which of them is the one most looked at. */
export interface RunPieces {
  readonly names: readonly string[];
  readonly front: number;
}

/** Some of the joints of some runs, broken, and how bad that is: least is best, compared figure by figure. */
interface Break {
  readonly joints: readonly (readonly number[])[];
  readonly cost: readonly [atFront: number, inAll: number, nearness: number];
}

/** Beyond so many ways for several runs together the worst are left out, but for the last, in which every piece is free. */
const mostWays = 512;

/**
 * Ways to break several runs at once, the best first: the rules of one run, counted over all of them; of equals those that
 * keep the first runs better come first.
 * @returns for each way the groups of each run
 */
export function waysToBreakAll(runs: readonly RunPieces[]): readonly (readonly RunGroups[])[] {
  let all: Break[] = [{ joints: [], cost: [0, 0, 0] }];
  for (const run of runs) {
    const own = breaksOf(run);
    const joined = all.flatMap(({ joints, cost }) =>
      own.map((one): Break => {
        const [atFront, inAll, nearness] = cost;
        const [front, count, near] = one.cost;
        return {
          joints: [...joints, ...one.joints],
          cost: [atFront + front, inAll + count, nearness + near],
        };
      }),
    );
    const sorted = joined.sort(compareBreaks);
    all = sorted.length > mostWays ? [...sorted.slice(0, mostWays - 1), sorted.at(-1)!] : sorted;
  }
  return all.map(({ joints }) => runs.map(({ names }, run) => grouped(names, joints[run]!)));
}

function breaksOf({ names, front }: RunPieces): Break[] {
  // Joint j lies between piece j and j + 1; the front's own are front - 1 and front.
  const joints = names.slice(1).map((_, joint) => joint);
  const away = (joint: number): number => (joint < front ? front - 1 - joint : joint - front);
  const ways = joints.length <= mostCornersInFull ? subsets(joints) : fromTheEnds(joints, away);
  return ways.map((broken) => ({
    joints: [broken],
    cost: [
      broken.filter((joint) => away(joint) === 0).length,
      broken.length,
      -broken.reduce((sum, joint) => sum + away(joint), 0),
    ],
  }));
}

function compareBreaks(a: Break, b: Break): number {
  const figures = ({ cost, joints }: Break): number[] => [
    ...cost,
    ...joints.map(({ length }) => length),
    ...joints.flat(),
  ];
  return compare(figures(a), figures(b));
}

function subsets(joints: readonly number[]): number[][] {
  return joints.reduce<number[][]>((all, joint) => [...all, ...all.map((one) => [...one, joint])], [[]]);
}

function fromTheEnds(joints: readonly number[], away: (joint: number) => number): number[][] {
  const farthestFirst = [...joints].sort((a, b) => away(b) - away(a) || a - b);
  return [0, ...joints.map((_, index) => index + 1)].map((count) =>
    farthestFirst.slice(0, count).sort((a, b) => a - b),
  );
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) {
    const difference = a[i]! - b[i]!;
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}

function grouped(names: readonly string[], broken: readonly number[]): RunGroups {
  const groups: string[][] = [[]];
  names.forEach((name, index) => {
    groups.at(-1)!.push(name);
    if (broken.includes(index)) groups.push([]);
  });
  return groups;
}
