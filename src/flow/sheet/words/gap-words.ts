import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { decimal, money, percent } from './number-text.ts';

/**
 * How close to the best possible the layout is, in plain words. A bound is rounded to its safe side (a least cost
 * down, a most value up), so that the sentence stays true of the printed figures.
 */
export function gapSentence(job: Job, layout: Layout): string {
  if (layout.boards.length === 0) return 'Nothing is laid out.';
  return job.shop.goal === 'most value' ? valueSentence(layout) : costSentence(job, layout);
}

function costSentence(job: Job, layout: Layout): string {
  const { value, bound, proven } = layout.proof;
  const credit = job.shop.offcutCredit > 0 ? ' once its kept offcuts are credited' : '';
  const these = `${money(value)}${credit}`;
  if (layout.short.length > 0)
    return `Parts are short, so there is no complete layout to compare with. This one costs ${these}.`;
  if (proven) return `Proven: no layout of these boards can cost less. This one costs ${these}.`;
  if (bound <= 0) return `This layout costs ${these}. How little another could cost is not known.`;
  const least = money(Math.floor(bound * 100 + 1e-6) / 100);
  return `No layout of these boards can cost less than ${least}. This one costs ${these}, at most ${percent((value - bound) / bound)} more.`;
}

function valueSentence(layout: Layout): string {
  const { value, bound, proven } = layout.proof;
  const worth = decimal(value, 2);
  if (proven)
    return `Proven: no layout of these boards is worth more. The parts of this one are worth ${worth}.`;
  const most = decimal(Math.ceil(bound * 100 - 1e-6) / 100, 2);
  const less = bound > 0 ? `, at most ${percent((bound - value) / bound)} less` : '';
  return `No layout of these boards can be worth more than ${most}. The parts of this one are worth ${worth}${less}.`;
}
