import { type Child, html, type Markup } from '../../../base/markup/element.ts';
import type { Job } from '../../stock/job.ts';
import type { Layout } from '../../cuts/layout.ts';
import { type CutPlace, type MiterEnd, type Setup, setupList } from '../../cuts/setup-list.ts';
import { boardTitle, type Named, nameText } from '../words/named.ts';
import { withUnit } from '../words/size-text.ts';
import { tickBox } from './table.ts';

/**
 * The cut list setting by setting: each fence and stop position once, with the cuts made at it. A cut can be made
 * only when those before it on its board are: the numbers say so.
 */
export function setupSection(job: Job, layout: Layout, named: Named): Markup {
  const list = setupList(layout, job);
  const places = (cuts: readonly CutPlace[]): string => cutsByBoard(cuts, layout, named);
  const setups = (heading: string, setting: string, found: readonly Setup[]): (Markup | false)[] => [
    found.length > 0 && html('h3', {}, heading),
    ...found.map(({ position, cuts }) => entry(`${setting} ${withUnit(position, job.shop)}`, places(cuts))),
  ];
  const entries: Child[] = [
    list.trims.length > 0 && html('h3', {}, 'Trims first'),
    list.trims.length > 0 && entry('square the ends, straighten the rough edges', places(list.trims)),
    setups('Rips', 'fence', list.rips),
    setups('Crosscuts', 'stop', list.crosscuts),
    list.miters.length > 0 && html('h3', {}, 'Miters, after the blanks are cut'),
    list.miters.map(({ angle, ends }) =>
      entry(`saw at ${tenth(angle)}° from square`, endsText(ends, layout, named)),
    ),
  ];
  return html(
    'section',
    { id: 'settings' },
    html('h2', {}, 'The cuts, setting by setting'),
    html(
      'p',
      { class: 'how' },
      'Each position of fence and stop once, over all boards. The measure is from fence or stop to the near side of the kerf, trims aside. ',
      'Follow the numbers on each board: a later cut needs the ones before it.',
    ),
    html('div', { class: 'settings' }, entries),
  );
}

function entry(setting: string, text: string): Markup {
  return html(
    'div',
    { class: 'setup' },
    html('p', {}, tickBox(), ' ', html('span', { class: 'setting' }, setting)),
    html('p', {}, text),
  );
}

function tenth(degrees: number): string {
  return String(Math.round(degrees * 10) / 10);
}

/** `Oak 1: 3, 4; Oak 2, copy 1: 6`. */
function cutsByBoard(cuts: readonly CutPlace[], layout: Layout, named: Named): string {
  return layout.boards
    .flatMap((laid) => {
      const mine = cuts.filter(({ board, copy }) => board === laid.board && copy === laid.copy);
      if (mine.length === 0) return [];
      const steps = mine.map(({ cut }) => cut.step).join(', ');
      return [
        `${boardTitle(laid, named.boards.get(laid.board))}: ${mine.length === 1 ? 'cut' : 'cuts'} ${steps}`,
      ];
    })
    .join('; ');
}

function endsText(ends: readonly MiterEnd[], layout: Layout, named: Named): string {
  return ends
    .map(({ part, copy, end, from, isInRun }) => {
      const quantity = named.parts.get(part)?.quantity ?? 1;
      const which = quantity > 1 ? ` (${copy} of ${quantity})` : '';
      const laid = layout.boards.find(
        ({ board, copy: of }) => from !== null && board === from.board && of === from.copy,
      );
      const where = laid ? `, from ${boardTitle(laid, named.boards.get(laid.board), 30)}` : ', once glued up';
      return `${nameText(part)}${which}, ${end} end${where}${isInRun ? ', in its run' : ''}`;
    })
    .join('; ');
}
