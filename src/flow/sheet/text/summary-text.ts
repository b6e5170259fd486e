import type { Job } from '../../stock/job.ts';
import type { LaidBoard, Layout } from '../../cuts/layout.ts';
import { thicknessText, yieldOf } from '../words/board-caption.ts';
import { gapSentence } from '../words/gap-words.ts';
import { grainLines } from '../words/grain-words.ts';
import { named as lookUp, type Named } from '../words/named.ts';
import { bothFeetText, lumberHeads, measuredFeet } from '../words/lumber-text.ts';
import { counted, decimal, money, percent } from '../words/number-text.ts';
import { sharesInTenths, shareKinds, shareNames, tenthsText, totalAreas } from '../words/shares.ts';
import { sizeText } from '../words/size-text.ts';
import { cellText, textColumns } from './columns.ts';

/**
 * The layout in short, for a terminal: the boards with their yield, the totals, how near the best it is, what is
 * short and why. Plain text without colour codes; user text in it cannot steer the terminal. No line end at the end.
 */
export function summaryText(job: Job, layout: Layout): string {
  const named = lookUp(job);
  const blocks = [
    ...(layout.boards.length > 0 ? [boardLines(job, layout, named)] : []),
    totalLines(layout),
    [gapSentence(job, layout), ...grainLines(layout, job.shop)],
    ...(layout.short.length > 0 ? [shortLines(layout)] : []),
  ];
  return blocks.map((lines) => lines.join('\n')).join('\n\n');
}

function boardLines(job: Job, layout: Layout, named: Named): string[] {
  const unit = job.shop.units;
  const columns = [
    { head: 'board', most: 32 },
    { head: `length × width, ${unit}`, most: 40, right: true },
    { head: 'thickness', most: 30 },
    { head: 'pieces', most: 8, right: true },
    { head: lumberHeads.tally, most: 12, right: true },
    { head: lumberHeads.measured, most: 12, right: true },
    { head: 'cost', most: 16, right: true },
    { head: 'yield', most: 12, right: true },
  ];
  return textColumns(
    columns,
    layout.boards.map((laid) => {
      const board = named.boards.get(laid.board);
      return [
        titleText(laid, named),
        sizeText(laid, job.shop),
        board ? thicknessText(board, job) : '',
        String(laid.pieces.length),
        board ? decimal(board.yardFeet, 2) : '',
        board ? decimal(measuredFeet(board), 2) : '',
        money(laid.cost),
        percent(yieldOf(laid)),
      ];
    }),
  );
}

/** The copy goes behind the shortened name, so that it is never cut off. */
function titleText(laid: LaidBoard, named: Named): string {
  const board = named.boards.get(laid.board);
  const several = laid.copy > 1 || (board !== undefined && board.quantity > 1);
  return several ? `${cellText(laid.board, 20)}, copy ${laid.copy}` : cellText(laid.board, 30);
}

function totalLines(layout: Layout): string[] {
  const { totals } = layout;
  const lines = [
    `${counted(totals.boards, 'board')}, ${bothFeetText(totals.boardFeet, totals.boardFeetMeasured)}, ${money(totals.cost)}; ${counted(totals.setups, 'saw setting')}.`,
  ];
  if (layout.boards.length > 0) {
    const tenths = sharesInTenths(totalAreas(layout.boards));
    const shares = shareKinds.map((kind) => `${shareNames[kind]} ${tenthsText(tenths[kind])}`);
    const waste = tenths.kerf + tenths.trim + tenths.scrap;
    lines.push(`${sentence(shares.join(', '))}. Waste ${tenthsText(waste)}.`);
  }
  return lines;
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function shortLines(layout: Layout): string[] {
  return [
    'Short:',
    ...layout.short.map(
      ({ part, copies, why }) =>
        `  ${cellText(part, 40)}: ${counted(copies, 'copy', 'copies')}; ${cellText(why, 200)}`,
    ),
  ];
}
