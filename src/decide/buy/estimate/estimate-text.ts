import { writeCsv } from '../../../base/csv/write-csv.ts';
import { ticksPerInch } from '../../../base/units/tick.ts';
import { cellText, textColumns } from '../../../flow/sheet/text/columns.ts';
import { decimal } from '../../../flow/sheet/words/number-text.ts';
import type { LumberEstimate } from './estimate.ts';
import { moneyFor } from './grade-price.ts';
import { askedRows, boardRows, ownedWords, spareLines, verdictWords } from './list-words.ts';
import { shoppingList } from './shopping-list.ts';
import { lumberName } from './lumber-wanted.ts';
import {
  type JobEstimate,
  costText,
  grainWords,
  methodWords,
  priceText,
  quantityText,
  shareText,
  thumbText,
  unfoundWords,
  yieldText,
} from './estimate-words.ts';
import { askedChances } from './summary.ts';

/** The estimate for a terminal. No line end at the end. */
export function estimateText(estimate: JobEstimate): string {
  const verdicts = estimate.lumber.map(verdictWords);
  const blocks = estimate.lumber
    .filter(({ grades }) => grades.length > 0)
    .flatMap((lumber) => [listLines(lumber), lumberLines(lumber)]);
  const thick = estimate.tooThick.map((name) => `${cellText(name, 40)}: thicker than any standard lumber`);
  return [verdicts, ...blocks, thick, methodWords(estimate)]
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

/** The shopping list: what to ask for, which boards to look for, spares. */
function listLines(lumber: LumberEstimate): string[] {
  const list = shoppingList(lumber);
  if (list === null) return [];
  const { shop } = lumber.wanted.job;
  const asked = textColumns(
    [
      { head: 'ask for', most: 90 },
      { head: 'cost', most: 16, right: true },
      { head: 'comes out', most: 10, right: true },
    ],
    askedRows(list),
  );
  const boards = textColumns(
    [
      { head: 'how many', most: 12, right: true },
      { head: `board at least, ${shop.units}`, most: 30, right: true },
      { head: 'in it', most: 60 },
      { head: 'for', most: 90 },
    ],
    boardRows(list, shop),
  );
  return [
    `Shopping list, ${lumberName(lumber.wanted)}:`,
    ...(list.asked.length === 0 ? [] : [...asked, '']),
    ...boards,
    ...spareLines(list, shop),
  ];
}

function lumberLines(lumber: LumberEstimate): string[] {
  const { wanted, grades } = lumber;
  const chances = askedChances.map((chance) => `${Math.round(chance * 100)} %`);
  const quantities = textColumns(
    [
      { head: 'grade', most: 10 },
      ...chances.map((head) => ({ head: `BF for ${head}`, most: 24, right: true })),
      ...chances.map((head) => ({ head: `cost, ${head}`, most: 14, right: true })),
      { head: 'yield', most: 24, right: true },
    ],
    grades.map((estimate) => [
      estimate.grade,
      ...estimate.summary.quantities.map(quantityText),
      ...estimate.summary.quantities.map((quantity) => costText(quantity, estimate.price)),
      yieldText(estimate),
    ]),
  );
  const thumbs = textColumns(
    [
      { head: 'rule of thumb', most: 30 },
      ...grades.map(({ grade }) => ({ head: `comes out, ${grade}`, most: 24, right: true })),
    ],
    (grades[0]?.thumbs ?? []).map((thumb, index) => [
      thumbText(thumb),
      ...grades.map(({ thumbs: own }) => shareText(own[index]!.chance)),
    ]),
  );
  return [
    `${lumberName(wanted)}: the parts alone are ${decimal(wanted.netBoardFeet, 1)} BF`,
    ...quantities,
    '',
    ...thumbs,
    '',
    ...grades.map(priceText),
    ...grades.flatMap(grainWords),
    ...grades.flatMap(unfoundWords),
  ];
}

/** The columns for a spreadsheet. */
const head = [
  ...[
    'species',
    'thickness',
    'grade',
    'what',
    'chance',
    'chance low',
    'chance high',
    'board feet',
    'low',
    'high',
  ],
  ...['brought home', 'price per bf', 'cost', 'yield', 'visits', 'seed'],
];

/** The estimate for a spreadsheet: one row for each thickness, grade and chance, then the rules of thumb. */
export function estimateCsv(estimate: JobEstimate): string {
  const number = (value: number | null, places: number): string =>
    value === null ? '' : value.toFixed(places);
  const rows = estimate.lumber.flatMap(({ wanted, grades }) =>
    grades.flatMap(({ grade, price, summary, thumbs }) => {
      const tail = [number(summary.yield, 4), String(summary.visits), String(estimate.seed)];
      const start = [wanted.species, wanted.nominalThickness, grade];
      const asked = summary.quantities.map(({ chance, boardFeet, low, high, broughtHome }) => [
        ...[...start, 'quantity for a chance', number(chance, 2), '', ''],
        ...[number(boardFeet, 1), number(low, 1), number(high, 1), number(broughtHome, 1)],
        number(price.perFoot, 2),
        number(moneyFor(broughtHome, price), 2),
        ...tail,
      ]);
      const thumb = thumbs.map(({ percent, boardFeet, chance }) => [
        ...[
          ...start,
          `net + ${percent} %`,
          number(chance.share, 4),
          number(chance.low, 4),
          number(chance.high, 4),
        ],
        ...[
          number(boardFeet, 0),
          '',
          '',
          '',
          number(price.perFoot, 2),
          number(moneyFor(boardFeet, price), 2),
        ],
        ...tail,
      ]);
      return [...asked, ...thumb];
    }),
  );
  const owned = estimate.lumber
    .filter(({ grades }) => grades.length === 0)
    .map(({ wanted }) => [
      wanted.species,
      wanted.nominalThickness,
      '',
      ownedWords,
      ...head.slice(4).map(() => ''),
    ]);
  return writeCsv([head, ...owned, ...rows]);
}

/** The estimate for programs. Board feet and money; null where the visits do not reach a chance. */
export function estimateJson(job: string, estimate: JobEstimate): string {
  return `${JSON.stringify({
    format: 'mantelwright estimate 1',
    ticksPerInch,
    job,
    seed: estimate.seed,
    visits: estimate.visits,
    ownedBoards: estimate.owned,
    tooThick: estimate.tooThick,
    method: methodWords(estimate),
    lumber: estimate.lumber.map((lumber) => {
      const { wanted, grades, mix } = lumber;
      return {
        species: wanted.species,
        thickness: wanted.nominalThickness,
        netBoardFeet: wanted.netBoardFeet,
        ownedSuffices: grades.length === 0,
        verdict: verdictWords(lumber),
        shoppingList: shoppingList(lumber),
        mix: mix === null ? null : { ...mix, visits: mix.visits.length },
        grades: grades.map(({ grade, price, summary, thumbs, expectedCost, unfound, visits }) => ({
          grade,
          price,
          ...summary,
          expectedCost,
          thumbs,
          unfound,
          draws: visits.map(({ cart, enough, broken }) => ({ cart, enough, broken })),
        })),
      };
    }),
  })}\n`;
}
