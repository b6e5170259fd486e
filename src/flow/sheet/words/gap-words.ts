import type { Job } from '../../stock/job.ts';
import { unreachable } from '../../../base/result/unreachable.ts';
import type { Layout, ProofCondition } from '../../cuts/layout.ts';
import type { Shop } from '../../shop/shop.ts';
import { nameText } from './named.ts';
import { counted, decimal, money, percent } from './number-text.ts';
import { sizeText, withUnit } from './size-text.ts';

/**
 * How close to the best possible the layout is, in plain words, and under what that holds. A bound is rounded to its safe
 * side (a least cost down, a most value up), so that the sentence stays true of the printed figures.
 */
export function gapSentence(job: Job, layout: Layout): string {
  if (job.shop.goal === 'least cost' && layout.short.length > 0) return shortSentences(job, layout);
  if (layout.boards.length === 0) return 'Nothing is laid out.';
  return job.shop.goal === 'most value' ? valueSentence(job, layout) : costSentence(job, layout);
}

function costSentence(job: Job, layout: Layout): string {
  const { value, bound, proven } = layout.proof;
  const these = costWords(job, value);
  const under = underWords(job, layout);
  if (proven) return `Proven: no layout of these boards can cost less${under}. This one costs ${these}.`;
  if (bound === null || bound <= 0)
    return `This layout costs ${these}. How little another could cost is not known.`;
  const least = money(Math.floor(bound * 100 + 1e-6) / 100);
  return `No layout of these boards can cost less than ${least}${under}. This one costs ${these}, at most ${percent((value - bound) / bound)} more.`;
}

function costWords({ shop }: Job, value: number): string {
  return `${money(value)}${shop.offcutCredit > 0 ? ' once its kept offcuts are credited' : ''}`;
}

function valueSentence(job: Job, layout: Layout): string {
  const { value, bound, proven } = layout.proof;
  const worth = decimal(value, 2);
  const under = underWords(job, layout);
  if (proven)
    return `Proven: no layout of these boards is worth more${under}. The parts of this one are worth ${worth}.`;
  if (bound === null) return `The parts of this layout are worth ${worth}.`;
  const most = decimal(Math.ceil(bound * 100 - 1e-6) / 100, 2);
  const less = bound > 0 ? `, at most ${percent((bound - value) / bound)} less` : '';
  return `No layout of these boards can be worth more than ${most}${under}. The parts of this one are worth ${worth}${less}.`;
}

/** That these boards do not hold the job, what is short, and what would mend it. Why each part is short stands beside it. */
function shortSentences(job: Job, layout: Layout): string {
  const { proven, value, toAdd } = layout.proof;
  const names = layout.short.map(
    ({ part, copies }) => `${nameText(part, 40)}${copies > 1 ? ` × ${copies}` : ''}`,
  );
  const copies = layout.short.reduce((sum, one) => sum + one.copies, 0);
  const first = proven
    ? `These boards cannot hold the job (proven${underWords(job, layout)}).`
    : 'No layout of all parts was found on these boards; that there is none is not proven.';
  const laid =
    layout.boards.length === 0 ? 'Nothing is laid out.' : `What is laid out costs ${costWords(job, value)}.`;
  return `${first} ${counted(copies, 'piece')} short: ${names.join(', ')}. ${addWords(job, toAdd)}${laid}`;
}

function addWords({ shop }: Job, toAdd: Layout['proof']['toAdd']): string {
  if (toAdd === undefined) return '';
  if (toAdd === null) return 'More than one board has to be added: see the command buy. ';
  const board = `one more board, at least ${sizeText(toAdd, shop)} rough and clear on one face, for parts ${withUnit(toAdd.thickness, shop)} thick`;
  return toAdd.least
    ? `The least to add: ${board}. `
    : `To add: ${board}; that would do, and a smaller one might. `;
}

/** `, with the grain unbroken and all that shows of one tone`: what the proof holds under. */
function underWords({ shop }: Job, { proof, broken = [] }: Layout): string {
  const words = (proof.under ?? []).map((condition) => conditionWords(condition, shop, broken.length > 0));
  if (words.length === 0) return '';
  const last = words.at(-1)!;
  return `, with ${words.length === 1 ? last : `${words.slice(0, -1).join(', ')} and ${last}`}`;
}

function conditionWords(condition: ProofCondition, { stages }: Shop, isBroken: boolean): string {
  switch (condition) {
    case 'grain unbroken':
      return isBroken ? 'the grain of the other runs unbroken' : 'the grain of each run unbroken';
    case 'grain broken as here':
      return 'the grain broken only where it is here';
    case 'one tone':
      return 'all that shows of one tone';
    case 'boards chosen for parts':
      return 'parts on the boards and faces chosen for them';
    case 'stages':
      return `no board cut in more than ${counted(Number(stages), 'stage')} (crosscuts and rips in turn)`;
    default:
      return unreachable(condition);
  }
}
