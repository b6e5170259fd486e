import { writeCsv } from '../../../base/csv/write-csv.ts';
import { ticksPerInch } from '../../../base/units/tick.ts';
import { cellText, textColumns } from '../../../flow/sheet/text/columns.ts';
import { lumberHeads, measuredFeet } from '../../../flow/sheet/words/lumber-text.ts';
import { decimal, money } from '../../../flow/sheet/words/number-text.ts';
import { sizeText } from '../../../flow/sheet/words/size-text.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import type { YardAnswer } from './yard-answer.ts';
import type { Copies, YardPlan } from './yard-job.ts';
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

/** The answer for a terminal. No line end at the end. */
export function yardText(answer: YardAnswer, shop: Shop): string {
  if (answer.kind === 'short') return shortText(answer);
  const blocks = [
    [
      ...(buysAny(answer.best)
        ? [`Take ${takenText(answer.yard, answer.best.taken)}: ${planText(answer.best)}.`]
        : []),
      proofWords(answer.best),
      ...brokenWords(answer.broken),
    ],
    takenLines(answer, shop),
    [unnamedIn(answer.best)].filter((line) => line !== null),
    runnerLines(answer),
    spareLines(answer),
  ];
  return blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function shortText({ short }: Extract<YardAnswer, { kind: 'short' }>): string {
  return [
    'Not even all boards of the yard, with what is owned, complete the job. Short:',
    ...short.map(({ part, copies, why }) => `  ${cellText(part, 40)} × ${copies}: ${cellText(why, 300)}`),
  ].join('\n');
}

function takenLines({ owned, yard, best }: Complete, shop: Shop): string[] {
  const parts = partsOn(best);
  const bought = best.taken.flatMap((copies, row) => {
    if (copies === 0) return [];
    const board = yard[row]!;
    return [
      [
        `${board.name}${copies > 1 ? ` × ${copies}` : ''}`,
        sizeText(board, shop),
        decimal(copies * board.yardFeet, 2),
        decimal(copies * measuredFeet(board), 2),
        money(copies * board.cost),
        partsText(parts.get(best.at[row] ?? -1) ?? []),
      ],
    ];
  });
  const used = ownedUsed(owned, best);
  return [
    ...(bought.length === 0
      ? []
      : textColumns(
          [
            { head: 'take', most: 28 },
            { head: `length × width, ${shop.units}`, most: 40, right: true },
            { head: lumberHeads.tally, most: 12, right: true },
            { head: lumberHeads.measured, most: 12, right: true },
            { head: 'price', most: 14, right: true },
            { head: 'for', most: 90 },
          ],
          bought,
        )),
    ...(used.length === 0 ? [] : [`with what is owned: ${partsText(used)}`]),
  ];
}

function runnerLines({ yard, best, runnerUps, isCutShort }: Complete): string[] {
  if (runnerUps.length === 0) return best.money > 0 && !isCutShort ? [noRunnerUp] : [];
  return [
    'Runner-ups:',
    ...runnerUps.map(
      (plan) =>
        `  ${money(plan.money - best.money)} more (${planText(plan)}): ${differenceWords(yard, best, plan)}`,
    ),
  ];
}

function spareLines({ yard, spares, isCutShort }: Complete): string[] {
  if (isCutShort) return [cutShort];
  if (spares === null) return [];
  return [
    'Spares:',
    ...spareWords(yard, spares).map((words) => `  ${words}`),
    ...spares.options.map(
      ({ row, price, covers }) =>
        `  one spare, ${cellText(yard[row]!.name, 28)} for ${money(price)}, ${coverWords(yard, covers, spares.losses.length)}`,
    ),
  ];
}

/** The answer for a spreadsheet: one row for each board of each choice. */
export function yardCsv(answer: YardAnswer): string {
  const head = ['choice', 'money', 'more than the best', 'board', 'copies', 'price', 'for'];
  if (answer.kind === 'short') {
    const rows = answer.short.map(({ part, copies, why }) => [
      'short',
      '',
      '',
      part,
      String(copies),
      '',
      why,
    ]);
    return writeCsv([head, ...rows]);
  }
  const { yard, best, runnerUps, spares } = answer;
  const rowsOf = (choice: string, taken: Copies, total: number, plan: YardPlan | null): string[][] =>
    taken.flatMap((copies, row) => {
      if (copies === 0) return [];
      const board = yard[row]!;
      const parts = plan === null ? '' : partsText(partsOn(plan).get(plan.at[row] ?? -1) ?? []);
      const more = (total - best.money).toFixed(2);
      return [[choice, total.toFixed(2), more, board.name, String(copies), board.cost.toFixed(2), parts]];
    });
  const cheapest = spares?.cheapest ?? null;
  return writeCsv([
    head,
    ...rowsOf('best', best.taken, best.money, best),
    ...runnerUps.flatMap((plan, index) => rowsOf(`runner-up ${index + 1}`, plan.taken, plan.money, plan)),
    ...(cheapest === null ? [] : rowsOf('with spares', cheapest.copies, best.money + cheapest.money, null)),
  ]);
}

/** The answer for programs. Lengths in ticks; `for` names parts, one for each piece. */
export function yardJson(job: string, answer: YardAnswer): string {
  const common = { format: 'mantelwright yard 1', ticksPerInch, job };
  if (answer.kind === 'short')
    return `${JSON.stringify({ ...common, complete: false, short: answer.short })}\n`;
  const { yard, owned, best, runnerUps, spares } = answer;
  const boardsOf = (taken: Copies) =>
    taken.flatMap((copies, row) =>
      copies === 0 ? [] : [{ board: yard[row]!.name, copies, price: yard[row]!.cost }],
    );
  const planOf = (plan: YardPlan) => ({
    money: plan.money,
    atLeast: plan.atLeast,
    proven: plan.proven,
    more: plan.money - best.money,
    take: boardsOf(plan.taken),
    owned: ownedUsed(owned, plan),
    pieces: [...partsOn(plan)].map(([board, parts]) => ({ board: plan.job.boards[board]!.name, for: parts })),
  });
  return `${JSON.stringify({
    ...common,
    complete: true,
    ...(answer.isCutShort ? { stoppedEarly: true } : {}),
    broken: answer.broken,
    best: planOf(best),
    runnerUps: runnerUps.map(planOf),
    spares:
      spares === null
        ? null
        : {
            risk: 'any one taken board unusable',
            losses: spares.losses.map((row) => yard[row]!.name),
            survived: spares.survived.map((row) => yard[row]!.name),
            options: spares.options.map(({ row, price, covers }) => ({
              board: yard[row]!.name,
              price,
              covers: covers.map((lost) => yard[lost]!.name),
            })),
            cheapest:
              spares.cheapest === null
                ? null
                : { ...spares.cheapest, copies: undefined, take: boardsOf(spares.cheapest.copies) },
          },
  })}\n`;
}
