import { type Markup, svg } from '../../../base/markup/element.ts';
import { textWidth } from '../../../base/markup/text-width.ts';
import { ticksPerInch, ticksPerMillimetre } from '../../../base/units/tick.ts';
import type { Shop } from '../../shop/shop.ts';
import { type Frame, paperX, paperY } from './frame.ts';
import { textAt } from './text-line.ts';

/** Steps a ruler may be marked in: inches by the inch, the half foot and the foot; millimetres by tens. */
const inchSteps = [1, 2, 3, 6, 12, 24, 60, 120, 240, 600];
const millimetreSteps = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000];
const rulerType = 20;
const bar = 8;

/** Height that the ruler along the board takes: its bar, its ticks and its figures. */
export const rulerHeight = 46;
/** Width that the ruler across the board takes, its figures (to four places) and a gap included. */
export const widthRulerRoom = 74;

/**
 * The ruler along the board: a rod painted in alternate blocks, one to each figure, with ticks below.
 * @param top paper y of the rod
 */
export function lengthRuler(frame: Frame, top: number, shop: Shop): Markup {
  const { fine, coarse } = stepsFor(frame, shop, (value) => textWidth(String(value), rulerType, false) + 24);
  const base = top + bar;
  const inRow = (value: number): boolean => value >= frame.from && value <= frame.to;
  const blocks = multiples(coarse.ticks, frame.from - coarse.ticks, frame.to).flatMap((from, index) => {
    const isDark = Math.round(from / coarse.ticks) % 2 === 0;
    const [left, right] = [
      paperX(frame, Math.max(from, frame.from)),
      paperX(frame, Math.min(from + coarse.ticks, frame.to)),
    ];
    return isDark && right > left && index >= 0 ? [`M${left} ${top}H${right}V${base}H${left}z`] : [];
  });
  const ticks = multiples(fine.ticks, frame.from, frame.to)
    .filter(inRow)
    .map((at) => `M${paperX(frame, at)} ${base}v${at % coarse.ticks === 0 ? 13 : 7}`);
  const figures = multiples(coarse.ticks, frame.from, frame.to)
    .filter(inRow)
    .map((at) => figure(paperX(frame, at), base + 32, String(at / coarse.perUnit)));
  const whole = `M${frame.board.x} ${top}h${frame.board.w}v${bar}h${-frame.board.w}z`;
  return svg(
    'g',
    { 'aria-label': `ruler along the board in ${shop.units === 'mm' ? 'millimetres' : 'inches'}` },
    svg('path', { d: whole, fill: '#fff', stroke: '#000', 'stroke-width': 2 }),
    svg('path', { d: blocks.join(''), fill: '#000' }),
    svg('path', { d: ticks.join(''), stroke: '#000', 'stroke-width': 2 }),
    figures,
  );
}

/** The ruler across the board, from its near edge up. @param right paper x of the rod's right side */
export function widthRuler(frame: Frame, right: number, shop: Shop): Markup {
  const { fine, coarse } = stepsFor(frame, shop, () => rulerType + 8);
  const left = right - bar;
  const blocks = multiples(coarse.ticks, 0, frame.boardWidth).flatMap((from) => {
    const isDark = Math.round(from / coarse.ticks) % 2 === 0;
    const to = Math.min(from + coarse.ticks, frame.boardWidth);
    return isDark && to > from
      ? [`M${left} ${paperY(frame, from)}V${paperY(frame, to)}H${right}V${paperY(frame, from)}z`]
      : [];
  });
  const ticks = multiples(fine.ticks, 0, frame.boardWidth).map(
    (at) => `M${left} ${paperY(frame, at)}h${at % coarse.ticks === 0 ? -11 : -6}`,
  );
  const figures = multiples(coarse.ticks, 0, frame.boardWidth).map((at) => {
    const text = String(at / coarse.perUnit);
    return textAt(left - 15 - textWidth(text, rulerType, false), paperY(frame, at) + 7, rulerType, text);
  });
  return svg(
    'g',
    { 'aria-label': `ruler across the board in ${shop.units === 'mm' ? 'millimetres' : 'inches'}` },
    svg('path', {
      d: `M${left} 0h${bar}v${frame.board.h}h${-bar}z`,
      fill: '#fff',
      stroke: '#000',
      'stroke-width': 2,
    }),
    svg('path', { d: blocks.join(''), fill: '#000' }),
    svg('path', { d: ticks.join(''), stroke: '#000', 'stroke-width': 2 }),
    figures,
  );
}

interface Step {
  readonly ticks: number;
  readonly perUnit: number;
}

/** The finest ticks that stand 6 units apart, and the finest figures that stand as far apart as they need. */
function stepsFor(frame: Frame, shop: Shop, room: (value: number) => number): { fine: Step; coarse: Step } {
  const perUnit = shop.units === 'mm' ? ticksPerMillimetre : ticksPerInch;
  const steps = shop.units === 'mm' ? millimetreSteps : inchSteps;
  const farthest = Math.ceil(frame.boardLength / perUnit);
  const first = (apart: number, multipleOf: number): Step => {
    const step = steps.find((value) => (value * perUnit) / frame.unit >= apart && value % multipleOf === 0);
    return { ticks: (step ?? steps.at(-1) ?? 1) * perUnit, perUnit };
  };
  const fine = first(6, 1);
  return { fine, coarse: first(room(farthest), fine.ticks / perUnit) };
}

function multiples(step: number, from: number, to: number): number[] {
  const first = Math.max(0, Math.ceil(from / step));
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  return Array.from({ length: count }, (_, index) => (first + index) * step);
}

function figure(x: number, y: number, text: string): Markup {
  return textAt(x - Math.round(textWidth(text, rulerType, false) / 2), y, rulerType, text);
}
