import type { Choice } from '../../../flow/choice/choice.ts';
import { choose } from '../../../flow/choice/choose.ts';
import { matchings } from '../../../flow/choice/matchings.ts';
import type { Job } from '../../../flow/stock/job.ts';
import { alikeTogether } from './alike-parts.ts';
import { type Making, type Split, jobMade, makingsOf, splitsAlone, splitsOf } from './making.ts';
import { onGrid } from './on-grid.ts';

/** A job that comes out of its boards: area of the pieces on each of them, square ticks, in the order of the boards. */
export type ComingOut = readonly number[];

/** Whether a job comes out of its boards, whatever they cost: null where no layout was found. Deterministic. */
export type ComesOut = (job: Job) => ComingOut | null;

/** A longer search, where a glance leaves it open: enough for branching to mend what a first dive leaves out. */
const effortToSettle = 0.1;

/** Questions to the solver about one job in one species and tone; beyond so many nothing more is found but now and then. */
const mostAsked = 12;

/** Splits of one part that are left open, before the search turns back to the part before it. */
const mostOpen = 2;

/**
 * The real solver, asked only whether the job comes out of its boards, what shows in any species and tone, its parts whole or glued up
 * where they may be, each copy in its own way.
 */
export function completer(seed: number): ComesOut {
  return (job) => {
    const shop = { ...job.shop, goal: 'least cost' as const, offcutCredit: 0 };
    const free = { ...job, shop, boards: job.boards.map((board) => ({ ...board, cost: 0 })) };
    for (const asked of matchings(free).able) {
      const found = inOneMatching(onGrid({ ...asked, parts: alikeTogether(asked.parts) }), seed);
      if (found !== null) return found;
    }
    return null;
  };
}

/** What the solver says of one way to make the parts. */
type Answer =
  | { readonly kind: 'found'; readonly areas: ComingOut }
  /** Proven that there is no layout. */
  | { readonly kind: 'none' }
  /** No layout found: so much area was left over, square ticks. */
  | { readonly kind: 'open'; readonly missing: number };

/**
 * What even the common core of all ways does not come out of is refused; the parts all whole are mostly the answer; else
 * the ways are searched depth first, the largest part decided first, wherever the core of what is undecided has a layout.
 */
function inOneMatching(job: Job, seed: number): ComingOut | null {
  const makings = makingsOf(job);
  const known = new Map<string, Answer>();
  const ask = (splits: readonly Split[]): Answer => {
    const key = JSON.stringify(splits);
    const answer = known.get(key) ?? answerTo(jobMade(job, makings, splits), seed, 0);
    known.set(key, answer);
    return answer;
  };
  const visit = (splits: readonly Split[], at: number): ComingOut | null => {
    const answer = ask(splits);
    if (answer.kind !== 'found') return null;
    if (at === makings.length) return answer.areas;
    let left = mostOpen;
    for (const split of splitsOf(makings[at]!) ?? splitsAlone(makings[at]!)) {
      if (known.size >= mostAsked || left === 0) return null;
      const next = splits.map((decided, index) => (index === at ? split : decided));
      const found = visit(next, at + 1);
      if (found !== null) return found;
      if (ask(next).kind === 'open') left -= 1;
    }
    return null;
  };
  const first = makings.filter(({ ways }) => ways.length === 1).length;
  const core = makings.map((): Split => null);
  if (ask(core).kind === 'none') return null;
  const whole = ask(makings.map((making, at) => (at < first ? null : splitsAlone(making)[0]!)));
  if (whole.kind === 'found') return whole.areas;
  return visit(core, first) ?? settled(job, makings, known, seed);
}

/** A longer search for the way to make the parts that a glance left open with the least left over. */
function settled(
  job: Job,
  makings: readonly Making[],
  known: ReadonlyMap<string, Answer>,
  seed: number,
): ComingOut | null {
  const open = [...known].flatMap(([key, answer]) => {
    const splits = JSON.parse(key) as Split[];
    const isLeaf = splits.every((split, at) => split !== null || makings[at]!.ways.length === 1);
    return isLeaf && answer.kind === 'open' ? [{ splits, missing: answer.missing }] : [];
  });
  const [nearest] = open.sort((a, b) => a.missing - b.missing);
  if (nearest === undefined) return null;
  const answer = answerTo(jobMade(job, makings, nearest.splits), seed, effortToSettle);
  return answer.kind === 'found' ? answer.areas : null;
}

/**
 * A layout without shortage costs 0 and is proven best, so the solver stops there by itself; and a bound above 0 proves
 * that something must be short, so it is stopped there.
 */
function answerTo(job: Job, seed: number, effort: number): Answer {
  let refuted = false;
  const steps = choose(job, { seed, effort, stop: () => refuted });
  for (;;) {
    const step = steps.next();
    if (step.done !== true) {
      refuted = step.value.bound !== null && step.value.bound > 1e-6;
      continue;
    }
    const { short, proof } = step.value;
    if (short.length === 0) return { kind: 'found', areas: areasOn(job, step.value) };
    if (refuted || proof.proven) return { kind: 'none' };
    return { kind: 'open', missing: missingOf(job, step.value) };
  }
}

function missingOf({ parts }: Job, { short }: Choice): number {
  return short.reduce((sum, { part, copies }) => sum + copies * parts[part]!.length * parts[part]!.width, 0);
}

function areasOn({ boards }: Job, { patterns }: Choice): number[] {
  const area = boards.map(() => 0);
  for (const { board, pieces } of patterns)
    for (const { length, width } of pieces) area[board] = area[board]! + length * width;
  return area;
}
