import { type Markup, html } from '../../../base/markup/element.ts';
import { table, tickBox } from '../../../flow/sheet/page/table.ts';
import { decimal } from '../../../flow/sheet/words/number-text.ts';
import { unitWord } from '../../../flow/sheet/words/size-text.ts';
import { answerPage, points, section } from '../page/answer-page.ts';
import { chanceChart } from './chance-chart.ts';
import type { GradeEstimate, LumberEstimate } from './estimate.ts';
import { lumberName } from './lumber-wanted.ts';
import {
  type JobEstimate,
  costText,
  methodWords,
  priceText,
  quantityText,
  shareText,
  thumbText,
  grainWords,
  unfoundWords,
  yieldText,
} from './estimate-words.ts';
import { askedRows, boardRows, spareLines, verdictWords } from './list-words.ts';
import { shoppingList } from './shopping-list.ts';
import { askedChances } from './summary.ts';

/** The estimate as a page: what to ask for, the chart, the rule of thumb beside it, how it was made. */
export function estimatePage(jobName: string, estimate: JobEstimate): string {
  return answerPage(jobName, 'what to buy', [
    html('p', { class: 'by' }, 'What to buy, by mantelwright. BF is board feet as a yard tallies them.'),
    estimate.lumber.map((lumber) => html('p', { class: 'verdict' }, verdictWords(lumber))),
    estimate.tooThick.map((name) =>
      html('p', { class: 'short' }, `${name}: thicker than any standard lumber; buy it apart.`),
    ),
    estimate.lumber.map((lumber, index) => listSection(lumber, index + 1)),
    estimate.lumber.map((lumber, index) => lumber.grades.length > 0 && lumberSection(lumber, index + 1)),
    section('method', 'How this was estimated', points(methodWords(estimate))),
    html(
      'footer',
      {},
      html(
        'p',
        {},
        'An estimate for a shopping list, not a promise: at the yard, measure boards and mark what you see.',
      ),
    ),
  ]);
}

/** The shopping list, on a page of its own when printed. */
function listSection(lumber: LumberEstimate, number: number): Markup | null {
  const list = shoppingList(lumber);
  if (list === null) return null;
  const { shop } = lumber.wanted.job;
  return html(
    'section',
    { id: `list-${number}`, class: 'list' },
    html('h2', {}, `Shopping list, ${lumberName(lumber.wanted)}`),
    list.asked.length > 0 &&
      table(
        'what to ask for',
        [
          { head: '' },
          { head: 'ask for' },
          { head: 'cost', kind: 'figures' },
          { head: 'comes out', kind: 'figures' },
        ],
        askedRows(list).map((row) => [tickBox(), ...row]),
      ),
    html('h3', {}, 'Boards to look for'),
    table(
      'boards to look for',
      [
        { head: 'how many', kind: 'figures' },
        { head: `at least, ${unitWord(shop)}`, kind: 'keep' },
        { head: 'in it' },
        { head: 'for' },
      ],
      boardRows(list, shop),
    ),
    html('h3', {}, 'Spares'),
    spareLines(list, shop).map((line) => html('p', {}, line)),
  );
}

function lumberSection(lumber: LumberEstimate, number: number): Markup {
  const { wanted, grades } = lumber;
  return section(
    `lumber-${number}`,
    `${lumberName(wanted)} lumber, grade by grade`,
    html('p', {}, `The parts alone are ${decimal(wanted.netBoardFeet, 1)} BF.`),
    quantities(grades),
    html('div', { class: 'chart' }, chanceChart(lumber)),
    thumbs(grades),
    points([
      ...grades.map((estimate) => `${priceText(estimate)}.`),
      ...grades
        .flatMap((grade) => [...grainWords(grade), ...unfoundWords(grade)])
        .map((words) => `${words}.`),
    ]),
  );
}

function quantities(grades: readonly GradeEstimate[]): Markup {
  const chances = askedChances.map((chance) => `${Math.round(chance * 100)} %`);
  return table(
    'board feet to ask for',
    [
      { head: 'grade' },
      ...chances.map((head) => ({ head: `BF for ${head}`, kind: 'figures' as const })),
      ...chances.map((head) => ({ head: `cost, ${head}`, kind: 'figures' as const })),
      { head: 'yield', kind: 'figures' },
    ],
    grades.map((estimate) => [
      html('strong', {}, estimate.grade),
      ...estimate.summary.quantities.map(quantityText),
      ...estimate.summary.quantities.map((quantity) => costText(quantity, estimate.price)),
      yieldText(estimate),
    ]),
  );
}

function thumbs(grades: readonly GradeEstimate[]): Markup {
  return table(
    'rules of thumb and the chance that they suffice',
    [
      { head: 'rule of thumb' },
      ...grades.map(({ grade }) => ({ head: `comes out, ${grade}`, kind: 'figures' as const })),
    ],
    (grades[0]?.thumbs ?? []).map((thumb, index) => [
      thumbText(thumb),
      ...grades.map(({ thumbs: own }) => shareText(own[index]!.chance)),
    ]),
  );
}
