import { type Child, type Markup, html } from '../../../base/markup/element.ts';
import { boardPicture } from '../../../flow/sheet/board/board-svg.ts';
import { table, tickBox } from '../../../flow/sheet/page/table.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import { lumberHeads, measuredFeet } from '../../../flow/sheet/words/lumber-text.ts';
import { decimal, money } from '../../../flow/sheet/words/number-text.ts';
import { sizeText, unitWord } from '../../../flow/sheet/words/size-text.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import { answerPage, points, section } from '../page/answer-page.ts';
import type { YardAnswer } from './yard-answer.ts';
import {
  brokenWords,
  buysAny,
  coverWords,
  cutShort,
  differenceWords,
  noRunnerUp,
  ownedUsed,
  partsOn,
  partsText,
  planText,
  proofWords,
  spareWords,
  takenText,
  unnamedIn,
} from './yard-words.ts';

type Complete = Extract<YardAnswer, { kind: 'complete' }>;

/** The answer as a page to carry through the yard: what to take, ticked off; what else it could be; spares. */
export function yardPage(jobName: string, answer: YardAnswer, shop: Shop): string {
  const by = `Which boards to take, by mantelwright. Lengths in ${unitWord(shop)}. Money is what is spent at the yard: owned boards cost nothing more, offcuts earn nothing.`;
  return answerPage(jobName, 'which boards to take', [
    html('p', { class: 'by' }, by),
    answer.kind === 'short' ? shortBlock(answer) : completeBlocks(answer, shop),
    html(
      'footer',
      {},
      html(
        'p',
        {},
        'Measure each board and look at both faces before you pay: a knot that is not in the file is not in the plan.',
      ),
    ),
  ]);
}

function shortBlock({ short }: Extract<YardAnswer, { kind: 'short' }>): Child[] {
  return [
    html('p', { class: 'verdict' }, 'Not even all boards of the yard, with what is owned, complete the job.'),
    html(
      'section',
      { class: 'short', id: 'short' },
      html('h2', {}, 'Short'),
      points(short.map(({ part, copies, why }) => `${nameText(part)} × ${copies}: ${nameText(why, 300)}`)),
    ),
  ];
}

function completeBlocks(answer: Complete, shop: Shop): Child[] {
  const { yard, owned, best } = answer;
  const used = ownedUsed(owned, best);
  const unnamed = unnamedIn(best);
  return [
    html(
      'p',
      { class: 'verdict' },
      !buysAny(best)
        ? ''
        : [html('strong', {}, `Take ${takenText(yard, best.taken)}: ${planText(best)}.`), ' '],
      proofWords(best),
    ),
    ...brokenWords(answer.broken).map((words) => html('p', {}, words)),
    buysAny(best) && section('take', 'To take', takeTable(answer, shop)),
    unnamed !== null && html('p', {}, unnamed),
    used.length > 0 && html('p', {}, `With what is owned: ${partsText(used)}.`),
    answer.isCutShort && html('p', {}, cutShort),
    best.money > 0 &&
      (answer.runnerUps.length > 0 || !answer.isCutShort) &&
      section(
        'others',
        'What else it could be',
        answer.runnerUps.length > 0 ? runnerTable(answer) : html('p', {}, noRunnerUp),
      ),
    answer.spares !== null && sparesSection(answer),
    section('cuts', 'How the job comes out of them', pictures(answer)),
  ];
}

function takeTable({ yard, best }: Complete, shop: Shop): Markup {
  const parts = partsOn(best);
  const rows = best.taken.flatMap((copies, row) => {
    if (copies === 0) return [];
    const board = yard[row]!;
    return [
      [
        tickBox(),
        html('strong', {}, `${nameText(board.name)}${copies > 1 ? ` × ${copies}` : ''}`),
        sizeText(board, shop),
        decimal(copies * board.yardFeet, 2),
        decimal(copies * measuredFeet(board), 2),
        money(copies * board.cost),
        partsText(parts.get(best.at[row] ?? -1) ?? []),
      ],
    ];
  });
  return table(
    'boards to take',
    [
      { head: '' },
      { head: 'board' },
      { head: 'length × width', kind: 'keep' },
      { head: lumberHeads.tally, kind: 'figures' },
      { head: lumberHeads.measured, kind: 'figures' },
      { head: 'price', kind: 'figures' },
      { head: 'for' },
    ],
    rows,
  );
}

function runnerTable({ yard, best, runnerUps }: Complete): Markup {
  return table(
    'runner-ups',
    [{ head: 'more', kind: 'figures' }, { head: 'in all' }, { head: 'take' }, { head: 'against the best' }],
    runnerUps.map((plan) => [
      html('strong', {}, money(plan.money - best.money)),
      planText(plan),
      takenText(yard, plan.taken),
      differenceWords(yard, best, plan),
    ]),
  );
}

function sparesSection({ yard, spares }: Complete): Markup | null {
  if (spares === null) return null;
  return section(
    'spares',
    'Spare boards',
    points(spareWords(yard, spares)),
    spares.options.length > 0 &&
      table(
        'single spares',
        [{ head: 'one spare' }, { head: 'price', kind: 'figures' }, { head: 'what it adds' }],
        spares.options.map(({ row, price, covers }) => [
          nameText(yard[row]!.name),
          money(price),
          coverWords(yard, covers, spares.losses.length),
        ]),
      ),
  );
}

function pictures({ best, layout }: Complete): Markup[] {
  return layout.boards
    .filter(({ pieces }) => pieces.length > 0)
    .map((laid) =>
      html(
        'div',
        {},
        html('h3', {}, nameText(laid.board)),
        html('div', { class: 'diagram scroll' }, boardPicture(best.job, laid, false)),
      ),
    );
}
