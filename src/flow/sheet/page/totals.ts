import { content, html, type Markup, svg } from '../../../base/markup/element.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { areaText } from '../words/area-text.ts';
import { gapSentence } from '../words/gap-words.ts';
import { grainLines } from '../words/grain-words.ts';
import { bothFeetText } from '../words/lumber-text.ts';
import { counted, money } from '../words/number-text.ts';
import {
  type ShareKind,
  shareKinds,
  shareNames,
  sharesInTenths,
  tenthsText,
  totalAreas,
} from '../words/shares.ts';
import { table } from './table.ts';

const barWidth = 1800;
const barHeight = 60;

/** The totals: how near the best, what it costs, and where the wood goes, all five figures of it. */
export function totalsSection(job: Job, layout: Layout): Markup {
  const { totals } = layout;
  const areas = totalAreas(layout.boards);
  const tenths = sharesInTenths(areas);
  const waste = tenths.kerf + tenths.trim + tenths.scrap;
  return html(
    'section',
    { id: 'totals' },
    html('p', { class: 'verdict' }, gapSentence(job, layout)),
    ...grainLines(layout, job.shop).map((line) => html('p', {}, line)),
    html(
      'p',
      {},
      `${counted(totals.boards, 'board')}, ${bothFeetText(totals.boardFeet, totals.boardFeetMeasured)}, `,
      html('strong', {}, money(totals.cost)),
      `. ${counted(totals.setups, 'saw setting')}.`,
    ),
    layout.boards.length > 0 &&
      content(
        bar(tenths),
        table(
          'where the wood goes',
          [
            { head: 'Where the wood goes' },
            { head: 'share', kind: 'figures' },
            { head: 'area', kind: 'figures' },
          ],
          shareKinds.map((kind) => [
            content(swatch(kind), ` ${shareNames[kind]}`),
            tenthsText(tenths[kind]),
            areaText(areas[kind], job.shop),
          ]),
          true,
        ),
        html(
          'p',
          {},
          `Waste, that is all but parts and kept offcuts: ${tenthsText(waste)}. Board area ${areaText(areas.board, job.shop)}.`,
        ),
      ),
  );
}

function bar(tenths: Readonly<Record<ShareKind, number>>): Markup {
  let x = 0;
  const blocks = shareKinds.map((kind) => {
    const w = Math.round((barWidth * tenths[kind]) / 1000);
    const block = shareBlock(kind, x, w, barHeight);
    x += w;
    return block;
  });
  const words = shareKinds.map((kind) => `${shareNames[kind]} ${tenthsText(tenths[kind])}`).join(', ');
  return svg(
    'svg',
    {
      class: 'bar',
      viewBox: `0 0 ${barWidth} ${barHeight}`,
      preserveAspectRatio: 'none',
      role: 'img',
      'aria-label': words,
    },
    svg('title', {}, words),
    blocks,
    svg('rect', {
      ...{ x: 2, y: 2, width: barWidth - 4, height: barHeight - 4 },
      ...{ fill: 'none', stroke: '#000', 'stroke-width': 4 },
    }),
  );
}

function swatch(kind: ShareKind): Markup {
  return svg(
    'svg',
    { class: 'swatch', viewBox: '0 0 92 36', 'aria-hidden': 'true' },
    shareBlock(kind, 0, 92, 36),
    svg('rect', { x: 2, y: 2, width: 88, height: 32, fill: 'none', stroke: '#000', 'stroke-width': 4 }),
  );
}

/** A block drawn as its kind is drawn on the boards: parts plain, offcuts broken-lined, kerf black, waste crossed. */
function shareBlock(kind: ShareKind, x: number, w: number, h: number): Markup {
  const fills = { parts: '#fff', offcuts: '#fff', kerf: '#000', trim: '#c4c4c4', scrap: '#ececec' } as const;
  const outline = { fill: 'none', stroke: '#000', 'stroke-width': 3 };
  const isWaste = kind === 'trim' || kind === 'scrap';
  return svg(
    'g',
    {},
    svg('rect', {
      x,
      y: 0,
      width: w,
      height: h,
      fill: fills[kind],
      stroke: '#000',
      'stroke-width': w > 0 ? 2 : 0,
    }),
    kind === 'offcuts' &&
      w > 14 &&
      svg('rect', { x: x + 6, y: 6, width: w - 12, height: h - 12, ...outline, 'stroke-dasharray': '18 8' }),
    isWaste &&
      w > 0 &&
      svg('path', { d: `M${x} 0l${w} ${h}M${x} ${h}l${w} ${-h}`, ...outline, 'stroke-width': 1 }),
  );
}
