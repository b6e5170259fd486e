import { writeCsv } from '../../../base/csv/write-csv.ts';
import { bothFeetText, lumberHeads } from '../../../flow/sheet/words/lumber-text.ts';
import { decimal, money } from '../../../flow/sheet/words/number-text.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import { sizeText } from '../../../flow/sheet/words/size-text.ts';
import { cellText, textColumns } from '../../../flow/sheet/text/columns.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import { claimWords, metWords, opinion } from './claim-words.ts';
import { findingWords, triedWords } from './finding-words.ts';
import { shownFaces, toldFindings } from './shown-faces.ts';
import type { TallyRow } from './tally.ts';

/** `4`, `4 + 5` where copies differ, `5 × 4` where they do not. */
export function measuresText(measures: readonly number[]): string {
  const [first = 0] = measures;
  if (measures.length === 1) return String(first);
  if (measures.every((measure) => measure === first)) return `${measures.length} × ${first}`;
  return measures.length <= 4
    ? measures.join(' + ')
    : `${measures.length} copies, ${measures.reduce((sum, measure) => sum + measure, 0)}`;
}

/** Board feet and surface measure of all rows of one kind. */
export function totalOf(rows: readonly TallyRow[]): {
  boards: number;
  measure: number;
  feet: number;
  measuredFeet: number;
  price: number;
} {
  return {
    boards: rows.reduce((sum, { board }) => sum + board.quantity, 0),
    measure: rows.reduce((sum, row) => sum + row.surfaceMeasures.reduce((all, each) => all + each, 0), 0),
    feet: rows.reduce((sum, { boardFeet }) => sum + boardFeet, 0),
    measuredFeet: rows.reduce((sum, { measuredBoardFeet }) => sum + measuredBoardFeet, 0),
    price: rows.reduce((sum, { price }) => sum + price, 0),
  };
}

/** The tally for a terminal: one line a board, what falls short of its claim, the totals. No line end at the end. */
export function tallyText(rows: readonly TallyRow[], shop: Shop): string {
  const columns = [
    { head: 'from', most: 8 },
    { head: 'board', most: 28 },
    { head: `length × width, ${shop.units}`, most: 40, right: true },
    { head: 'SM', most: 16, right: true },
    { head: lumberHeads.tally, most: 12, right: true },
    { head: lumberHeads.measured, most: 12, right: true },
    { head: 'price', most: 14, right: true },
    { head: 'claimed', most: 14 },
    { head: 'meets', most: 14 },
    { head: 'claim', most: 20 },
  ];
  const lines = textColumns(
    columns,
    rows.map((row) => [
      row.from,
      row.board.name,
      sizeText(row.board, shop),
      measuresText(row.surfaceMeasures),
      decimal(row.boardFeet, 2),
      decimal(row.measuredBoardFeet, 2),
      money(row.price),
      row.board.grade,
      metWords(row),
      claimWords(row.claim),
    ]),
  );
  return [lines, shortfalls(rows, shop), totals(rows), [opinion]]
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n');
}

function shortfalls(rows: readonly TallyRow[], shop: Shop): string[] {
  return rows.flatMap(({ claim, board }) => {
    if (claim.kind !== 'not met' && claim.kind !== 'not shown') return [];
    const heading = `${cellText(board.name, 28)}: ${claim.grade} ${claimWords(claim)}`;
    return [heading, ...findingWords(claim.finding, shop).map((words) => `  ${words}`)];
  });
}

function totals(rows: readonly TallyRow[]): string[] {
  return (['boards', 'rack', 'yard'] as const).flatMap((from) => {
    const list = rows.filter((row) => row.from === from);
    if (list.length === 0) return [];
    const { boards, measure, feet, measuredFeet, price } = totalOf(list);
    const name = { boards: 'owned', rack: 'on the rack', yard: 'at the yard' }[from];
    return [`${name}: ${boards} boards, SM ${measure}, ${bothFeetText(feet, measuredFeet)}, ${money(price)}`];
  });
}

/** The tally for a spreadsheet: one row for each way a told grade was tried on a face. Lengths and areas in words. */
export function tallyCsv(rows: readonly TallyRow[], shop: Shop): string {
  const head = [
    ...['from', 'board', 'quantity', 'surface measure', 'board feet, tally', 'board feet, measured', 'price'],
    ...['grade claimed', 'grade met', 'claim', 'grade tried', 'outcome', 'why', 'face', 'cuttings'],
  ];
  const body = rows.flatMap((row) => {
    const facts = [
      row.from,
      row.board.name,
      String(row.board.quantity),
      String(row.surfaceMeasures.reduce((sum, each) => sum + each, 0)),
      row.boardFeet.toFixed(2),
      row.measuredBoardFeet.toFixed(2),
      row.price.toFixed(2),
      row.board.grade,
      metWords(row),
      claimWords(row.claim),
    ];
    return toldFindings(row).flatMap((finding) => {
      const told = [...facts, finding.grade, finding.outcome, findingWords(finding, shop).join('; ')];
      const faces = shownFaces(finding);
      if (faces.length === 0) return [[...told, '', '']];
      return faces.map(({ face, tried, cuttings }) => [
        ...told,
        face,
        `${triedWords(tried)}: ${cuttings.map((cutting) => sizeText(cutting, shop)).join(' and ') || 'none'}`,
      ]);
    });
  });
  return writeCsv([head, ...body]);
}

/** A board's name for a heading. */
export function rowTitle({ board }: TallyRow): string {
  return `${nameText(board.name)}${board.quantity > 1 ? ` (${board.quantity} copies)` : ''}`;
}
