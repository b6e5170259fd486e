import { type Child, type Markup, html } from '../../../base/markup/element.ts';
import { table } from '../../../flow/sheet/page/table.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import { bothFeetText, lumberHeads } from '../../../flow/sheet/words/lumber-text.ts';
import { decimal, money } from '../../../flow/sheet/words/number-text.ts';
import { sizeText, unitWord } from '../../../flow/sheet/words/size-text.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import type { GradeFinding } from '../../../trade/grades/grade-finding.ts';
import { answerPage, section } from '../page/answer-page.ts';
import { claimWords, metWords, opinion, ruleSource } from './claim-words.ts';
import { cuttingsPicture } from './cuttings-picture.ts';
import { findingWords, triedWords, unitsFound, unitsNeeded, wayWords } from './finding-words.ts';
import { shownFaces, toldFindings } from './shown-faces.ts';
import { measuresText, rowTitle, totalOf } from './tally-rows.ts';
import type { TallyRow } from './tally.ts';

/** The tally as a page: the list, then each board with what was found on its faces, drawn. */
export function tallyPage(jobName: string, rows: readonly TallyRow[], shop: Shop): string {
  return answerPage(jobName, 'tally', [
    html(
      'p',
      { class: 'by' },
      `Tally by mantelwright. Lengths in ${unitWord(shop)}; SM is surface measure, BF board feet.`,
    ),
    html('p', { class: 'verdict' }, opinion),
    section('tally', 'The boards', list(rows, shop), totals(rows)),
    section(
      'grades',
      'What each board meets',
      rows.map((row, index) => boardBlock(row, index + 1, shop)),
    ),
    html(
      'footer',
      {},
      html('p', {}, ruleSource),
      html('p', {}, 'A cutting unit is 1 in × 1 ft, 12 to a surface foot.'),
    ),
  ]);
}

function list(rows: readonly TallyRow[], shop: Shop): Markup {
  return table(
    'tally',
    [
      { head: 'board' },
      { head: 'from' },
      { head: 'length × width', kind: 'keep' },
      { head: 'SM', kind: 'figures' },
      { head: lumberHeads.tally, kind: 'figures' },
      { head: lumberHeads.measured, kind: 'figures' },
      { head: 'price', kind: 'figures' },
      { head: 'claimed' },
      { head: 'meets' },
      { head: 'claim' },
    ],
    rows.map((row, index) => [
      html('a', { href: `#board-${index + 1}` }, rowTitle(row)),
      row.from,
      sizeText(row.board, shop),
      measuresText(row.surfaceMeasures),
      decimal(row.boardFeet, 2),
      decimal(row.measuredBoardFeet, 2),
      money(row.price),
      nameText(row.board.grade === '' ? '–' : row.board.grade, 30),
      html('strong', {}, metWords(row)),
      claimWords(row.claim),
    ]),
  );
}

function totals(rows: readonly TallyRow[]): Child[] {
  return (['boards', 'rack', 'yard'] as const).map((from) => {
    const of = rows.filter((row) => row.from === from);
    if (of.length === 0) return null;
    const { boards, measure, feet, measuredFeet, price } = totalOf(of);
    const name = { boards: 'Owned', rack: 'On the rack', yard: 'At the yard' }[from];
    return html(
      'p',
      {},
      `${name}: ${boards} boards, SM ${measure}, ${bothFeetText(feet, measuredFeet)}, ${money(price)}.`,
    );
  });
}

function boardBlock(row: TallyRow, number: number, shop: Shop): Markup {
  const claim = claimWords(row.claim);
  const facts = [
    sizeText(row.board, shop),
    `SM ${measuresText(row.surfaceMeasures)}`,
    bothFeetText(row.boardFeet, row.measuredBoardFeet),
    ...(claim === '' ? [] : [`claimed ${nameText(row.board.grade, 30)}: ${claim}`]),
  ];
  return html(
    'section',
    { class: 'choice', id: `board-${number}` },
    html('h3', {}, `${rowTitle(row)}: ${metHeading(row)}`),
    html('p', { class: 'facts' }, facts.join(' · ')),
    toldFindings(row).map((finding) => findingBlock(row, finding, shop)),
  );
}

function metHeading(row: TallyRow): string {
  const words = metWords(row);
  return words === 'too small' ? 'too small for any grade' : `meets ${words}`;
}

function findingBlock(row: TallyRow, finding: GradeFinding, shop: Shop): Child[] {
  const words = { met: 'met', 'not met': 'not met', 'not shown': 'not settled' }[finding.outcome];
  const limits = findingWords(finding, shop).slice(
    0,
    finding.faces.length === 0 ? undefined : -finding.faces.length,
  );
  return [
    html(
      'p',
      {},
      html('strong', {}, `${finding.grade}: ${words}`),
      limits.length > 0 ? `; ${limits.join('; ')}` : '',
    ),
    finding.faces.length > 0 && waysTable(finding),
    shownFaces(finding).map(({ face, cuttings }) =>
      html('div', { class: 'diagram scroll' }, cuttingsPicture(row.board, shop, face, cuttings)),
    ),
  ];
}

function waysTable(finding: GradeFinding): Markup {
  const rows = finding.faces.flatMap(({ face, tried }) =>
    tried.map((way) => [
      face,
      wayWords(way),
      way.way.kind === 'clear face' ? '' : unitsNeeded(way),
      way.way.kind === 'clear face' ? triedWords(way) : unitsFound(way.found),
      way.found === way.bound ? 'proven the most' : `at most ${unitsFound(way.bound + 1)}`,
      { met: 'enough', 'not met': 'too little', 'not shown': 'not settled' }[way.outcome],
    ]),
  );
  return table(
    `cuttings for ${finding.grade}`,
    [
      { head: 'face' },
      { head: 'allowed' },
      { head: 'units needed', kind: 'figures' },
      { head: 'units found', kind: 'figures' },
      { head: 'how sure' },
      { head: 'result' },
    ],
    rows,
  );
}
