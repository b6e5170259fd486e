import { content, type Markup, svg } from '../../../base/markup/element.ts';
import { sansSerif } from '../../../base/markup/text-width.ts';
import type { Job } from '../../stock/job.ts';
import type { LaidBoard } from '../../cuts/layout.ts';
import { boardCaption } from '../words/board-caption.ts';
import { boardTitle } from '../words/named.ts';
import { unitWord } from '../words/size-text.ts';
import { type BoardFacts, boardFacts } from './facts.ts';
import { sheetWidth } from './frame.ts';
import { key, keyEntries, lettersByKind } from './key.ts';
import { legend } from './legend.ts';
import { type Plan, planBoard } from './plan-board.ts';
import { drawRow } from './row.ts';
import type { Scale } from './scale.ts';
import { fitted, lineAt, lineWidth, type Segment } from './text-line.ts';

const margin = 6;
const rowGap = 34;
const captionStep = 40;

/**
 * One board's diagram as a whole SVG file, to scale: 1 drawing unit is 0.1 mm when printed 184 mm wide.
 * Face A up, butt end left, near edge at the bottom. All coordinates are whole numbers.
 * @param laid one of the layout's boards
 */
export function boardSvg(job: Job, laid: LaidBoard): string {
  return `${boardPicture(job, laid, true).markup}\n`;
}

/** The diagram as an element, with its caption or (under a heading that says the same) without. */
export function boardPicture(job: Job, laid: LaidBoard, withCaption: boolean): Markup {
  const facts = boardFacts(job, laid);
  const plan = planBoard(facts);
  const { markup, height } = stacked([
    caption(facts, plan.scale, withCaption),
    ...rowBlocks(facts, plan),
    ...keyBlock(plan),
    legend(facts, plan.lettered.length > 0),
  ]);
  const title = `Board ${boardTitle(laid, facts.named.boards.get(laid.board))}: cutting diagram`;
  return svg(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${sheetWidth} ${height}`,
      ...(withCaption ? { width: `${sheetWidth / 10}mm`, height: `${height / 10}mm` } : {}),
      role: 'group',
      'aria-label': title,
      'font-family': sansSerif,
    },
    svg('title', {}, title),
    svg('rect', { width: sheetWidth, height, fill: '#fff' }),
    markup,
  );
}

/** A part of the diagram, drawn from y = 0 down. */
interface Block {
  readonly markup: Markup;
  readonly height: number;
}

function stacked(blocks: readonly Block[]): Block {
  let y = margin;
  const parts = blocks.map(({ markup, height }) => {
    const placed = svg('g', { transform: `translate(0 ${y})` }, markup);
    y += height;
    return placed;
  });
  // Whole millimetres, so that the file can state its size on paper.
  return { markup: content(parts), height: Math.ceil((y + margin) / 10) * 10 };
}

function rowBlocks(facts: BoardFacts, plan: Plan): Block[] {
  const letters = lettersByKind(plan.lettered);
  return plan.rows.map((rowPlan, index) => {
    const row = drawRow(facts, rowPlan, (thing) => letters.get(thing.kindLine) ?? '');
    const top = row.above + (index === 0 ? 4 : rowGap);
    return {
      markup: svg('g', { transform: `translate(0 ${top})` }, row.markup),
      height: top + rowPlan.frame.board.h + row.below + (index === plan.rows.length - 1 ? 16 : 0),
    };
  });
}

function keyBlock(plan: Plan): Block[] {
  if (plan.lettered.length === 0) return [];
  const { markup, height } = key(keyEntries(plan.lettered));
  return [{ markup, height: height + 8 }];
}

/** Name line, then the facts, wrapped to the sheet's width, then how to read the drawing. */
function caption(facts: BoardFacts, scale: Scale, withNames: boolean): Block {
  const lines: Segment[][] = [];
  if (withNames) {
    const { title, facts: words } = boardCaption(facts.job, facts.laid);
    lines.push([{ text: fitted(title, 32, true, sheetWidth - 8), bold: true }]);
    let line = '';
    for (const word of words) {
      const longer = line === '' ? word : `${line} · ${word}`;
      if (line !== '' && lineWidth([{ text: longer }], 24) > sheetWidth - 16) {
        lines.push([{ text: line }]);
        line = word;
      } else line = longer;
    }
    lines.push([{ text: fitted(line, 24, false, sheetWidth - 8) }]);
  }
  lines.push([{ text: scaleText(facts, scale) }]);
  const typeOf = (index: number): number => (withNames && index === 0 ? 32 : 24);
  return {
    markup: content(lines.map((line, index) => lineAt(4, index * captionStep, typeOf(index), line))),
    height: lines.length * captionStep + 4,
  };
}

function scaleText(facts: BoardFacts, scale: Scale): string {
  const rows = scale.reaches.length > 1 ? `, in ${scale.reaches.length} rows` : '';
  const units = unitWord(facts.job.shop);
  return `Face A up, butt end left, near edge below. Scale 1 : ${scale.ratio} at full size${rows}. Sizes as cut, length × width, in ${units}.`;
}
