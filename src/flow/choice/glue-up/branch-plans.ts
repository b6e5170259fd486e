import { choose } from '../choose.ts';
import { valueOf } from '../kinds.ts';
import type { Progress, SolveOptions } from '../progress.ts';
import { corePart } from './core-part.ts';
import { type Making, type MakingPlan, type Tried, bestOf, silent, solvePlan } from './making-plan.ts';
import { partMade } from './way-to-make.ts';

/** Some parts decided, by their way; null: not yet. No layout with these decisions costs less than the bound. */
interface Node {
  readonly decided: readonly (number | null)[];
  readonly bound: number;
}

/** What the search of plans is allowed. */
export interface PlanLimits {
  /** For the first bound, with nothing decided. */
  readonly root: SolveOptions;
  /** For each bound and each plan after it. */
  readonly each: SolveOptions;
  /** Decisions that may be taken. */
  readonly decisions: number;
}

/**
 * Best first search of the plans: the node of the least bound is taken, and its largest undecided part made in each of
 * its ways. A node's bound is that of the job in which undecided parts are replaced by what all their ways have in
 * common. Each new node is also tried as a layout, the rest of it as in the best plan so far. Parts of several copies
 * are never decided, since their copies may be made in different ways.
 * @returns the best plan found, and a bound on every layout however its parts are made; null where none is known
 */
export function* branchPlans(
  making: Making,
  start: Tried,
  limits: PlanLimits,
): Generator<Progress, { readonly best: Tried; readonly bound: number | null }, void> {
  const { job, ways, open } = making;
  const nothing = ways.map((list) => (list.length > 1 ? null : 0));
  const first = yield* boundOf(making, nothing, limits.root);
  if (first === null || job.shop.goal === 'most value') return { best: start, bound: first };
  let best = start;
  let nodes: Node[] = [{ decided: nothing, bound: first }];
  // Nodes with nothing left to decide, or none that may be decided.
  let closed = Infinity;
  const seen = new Set([start.plan.join()]);
  const stopped = (): boolean => limits.each.stop?.() === true;
  for (let turn = 0; turn < limits.decisions && !stopped(); turn += 1) {
    const node = nodes.shift();
    if (node === undefined || isMet(node.bound, best)) {
      if (node !== undefined) nodes.unshift(node);
      break;
    }
    const part = open.find((index) => node.decided[index] === null && job.parts[index]!.quantity === 1);
    if (part === undefined) {
      closed = Math.min(closed, node.bound);
      continue;
    }
    for (const way of ways[part]!.keys()) {
      const decided = node.decided.map((at, index) => (index === part ? way : at));
      const bound = yield* boundOf(making, decided, limits.each);
      if (bound === Infinity) continue;
      nodes.push({ decided, bound: Math.max(node.bound, bound ?? 0) });
      const plan: MakingPlan = decided.map((at, index) => at ?? best.plan[index]!);
      if (seen.has(plan.join())) continue;
      seen.add(plan.join());
      best = bestOf(job, [best, yield* solvePlan(making, plan, limits.each)]);
    }
    nodes = nodes.sort((a, b) => a.bound - b.bound);
  }
  return { best, bound: Math.min(closed, nodes[0]?.bound ?? Infinity) };
}

function isMet(bound: number, { choice }: Tried): boolean {
  return choice.short.length === 0 && bound >= choice.proof.value - 1e-7 * (1 + choice.proof.value);
}

/**
 * A bound on all layouts with these decisions. Infinity: proven that none lays out all parts. Null: nothing is known.
 * Pieces too short to rip have nothing in common that could be ripped from them, and are left out while undecided.
 */
function* boundOf(
  { job, ways }: Making,
  decided: readonly (number | null)[],
  options: SolveOptions,
): Generator<Progress, number | null, void> {
  const parts = job.parts.map((part, index) => {
    const at = decided[index];
    return at === null || at === undefined
      ? corePart(job, part, ways[index]!)
      : partMade(job, part, ways[index]![at]!);
  });
  const { short, proof } = yield* silent(choose({ ...job, parts }, options));
  if (job.shop.goal === 'most value') {
    // A part left out, since its ways have nothing in common, may be laid out whole for all the bound knows.
    const out = job.parts.filter(({ quantity }, index) => quantity > 0 && parts[index]!.quantity === 0);
    return out.reduce((sum, part) => sum + part.quantity * valueOf(part), proof.bound);
  }
  if (short.length === 0) return proof.bound;
  return proof.proven ? Infinity : null;
}
