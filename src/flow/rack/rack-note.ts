import { formatLength } from '../../base/units/format-length.ts';
import { ticks } from '../../base/units/tick.ts';
import type { LaidBoard, Layout } from '../cuts/layout.ts';
import { decimal, money } from '../sheet/words/number-text.ts';
import { nameText } from '../sheet/words/named.ts';
import type { Job } from '../stock/job.ts';

/** What is said of the rack, for the sheet's notes. */
export interface RackNote {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** More offcuts than this are not named one by one: the sheet has a table of them. */
const mostNamed = 12;

/** The boards of a layout that came from the rack. */
export function rackBoardsOf(job: Job, layout: Layout): readonly LaidBoard[] {
  const fromRack = new Set(job.boards.filter(({ origin }) => origin === 'rack').map(({ name }) => name));
  return layout.boards.filter(({ board }) => fromRack.has(board));
}

/**
 * Which pieces of the rack a layout uses, what they save against the same job without the rack, and which offcuts are
 * new. null when it neither uses nor leaves any.
 * @param without the best layout found without the rack; null when none was sought (no rack piece is used)
 */
export function rackNote(job: Job, layout: Layout, without: Layout | null): RackNote | null {
  const used = rackBoardsOf(job, layout);
  const left = layout.boards.flatMap(({ offcuts }) => offcuts);
  const size = ({ length, width }: { length: number; width: number }): string =>
    [length, width].map((one) => formatLength(ticks(one), job.shop)).join(' × ');
  const lines: string[] = [];
  if (used.length > 0) {
    const pieces = used.map((board) => `${nameText(board.board, 20)} (${size(board)})`);
    lines.push(`Take from the rack: ${pieces.join(', ')}.`);
    lines.push(...(without === null ? [] : savingLines(job, layout, without, used)));
  }
  if (left.length > 0) {
    const pieces = left.slice(0, mostNamed).map((offcut) => `${nameText(offcut.id, 20)} (${size(offcut)})`);
    const more = left.length > mostNamed ? ` and ${left.length - mostNamed} more, listed on the sheet` : '';
    lines.push(
      `New offcuts: ${pieces.join(', ')}${more}. When all is cut, "mantelwright rack put" books them.`,
    );
  }
  return lines.length === 0 ? null : { heading: 'The rack', lines };
}

function savingLines(job: Job, layout: Layout, without: Layout, used: readonly LaidBoard[]): string[] {
  const copies = (given: Layout): number => given.short.reduce((sum, { copies: short }) => sum + short, 0);
  const lines: string[] = [];
  const fewer = copies(without) - copies(layout);
  if (fewer > 0)
    lines.push(`Without the rack ${fewer} more ${fewer === 1 ? 'piece' : 'pieces'} would be short.`);
  else if (job.shop.goal === 'most value') lines.push(valueLine(layout, without));
  else lines.push(costLine(job, layout, without));
  const share = used.reduce((sum, { cost }) => sum + cost, 0);
  lines.push(`The rack's pieces count at their share of what their boards cost: ${money(share)}.`);
  return lines;
}

/** Money by the goal: boards less what kept offcuts earn back; both told where they differ. */
function costLine(job: Job, layout: Layout, without: Layout): string {
  const saved = without.proof.value - layout.proof.value;
  const feet = without.totals.boardFeet - layout.totals.boardFeet;
  const wood = feet > 0.05 ? `, and ${decimal(feet, 1)} BF by the yard's tally` : '';
  const boards = `boards for ${money(layout.totals.cost)}, against ${money(without.totals.cost)} for the best layout found without the rack`;
  const credited =
    job.shop.offcutCredit > 0
      ? `; once kept offcuts are credited, ${money(layout.proof.value)} against ${money(without.proof.value)}`
      : '';
  const lead = saved > 0.005 ? `That saves ${money(saved)}${wood}` : 'That saves no money';
  return `${lead}: ${boards}${credited}.`;
}

function valueLine(layout: Layout, without: Layout): string {
  const more = layout.proof.value - without.proof.value;
  return `The parts laid out are worth ${decimal(layout.proof.value, 2)}, ${decimal(more, 2)} more than in the best layout found without the rack.`;
}
