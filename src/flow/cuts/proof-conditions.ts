import { mayBreak } from '../parts/plan-parts.ts';
import type { Job } from '../stock/job.ts';
import type { Layout, ProofCondition } from './layout.ts';

/**
 * What was held fixed while the bound was sought, beside the rules of wood and saw: a layout without it may be better.
 * @param asked the job with its runs as they were asked for   @param layout of it
 */
export function proofConditions(asked: Job, { broken = [], short }: Omit<Layout, 'proof'>): ProofCondition[] {
  const { shop, parts, boards } = asked;
  const wanted = parts.filter(({ quantity }) => quantity > 0);
  const runs = [...new Set(wanted.flatMap(({ run }) => (run === null ? [] : [run])))].filter(
    (run) => wanted.filter((part) => part.run === run).length > 1,
  );
  // Where grain may be broken for any saving, every break was weighed; where parts are short, every break that is allowed.
  const isFree = shop.breakGrain?.least === 0 || (short.length > 0 && shop.goal === 'least cost');
  const held = runs.filter((run) => !isFree || !mayBreak(run, shop));
  const isBroken = (run: string): boolean => broken.some((one) => one.run === run);
  const shows = wanted.some(({ show }) => show > 0);
  const isOneTone = shop.showTone === 'one' && shows && new Set(boards.map(({ tone }) => tone)).size > 1;
  const conditions: [ProofCondition, boolean][] = [
    ['grain unbroken', held.some((run) => !isBroken(run))],
    ['grain broken as here', held.some(isBroken)],
    ['one tone', isOneTone],
    ['boards chosen for parts', wanted.some(({ pin }) => pin !== null)],
    ['stages', shop.stages !== 'any'],
  ];
  return conditions.flatMap(([condition, binds]) => (binds ? [condition] : []));
}
