import { unreachable } from '../../../base/result/unreachable.ts';
import type { BrokenRun, Layout } from '../../cuts/layout.ts';
import type { Shop } from '../../shop/shop.ts';
import { nameText } from './named.ts';
import { money } from './number-text.ts';
import { sizeText, withUnit } from './size-text.ts';

/** Where the grain does not run on as was asked, why, and what it would cost to have it; a few sentences for each run. */
export function grainLines({ broken = [] }: Layout, shop: Shop): string[] {
  return broken.map((run) => {
    const doubt =
      run.inDoubt === null || run.why === 'money' || run.why === 'fewest short'
        ? []
        : [`With ${stretchWords(run.inDoubt)} no layout was found, though none is proven not to exist.`];
    const said = [
      `${nameText(run.run, 40)} is cut as ${stretchWords(run.stretches)}: ${whyWords(run, shop)}.`,
    ];
    return [...said, ...doubt, ...wholeWords(run, shop)].join(' ');
  });
}

/** `left cap | left facing + front facing`: what stays in one strip, joined; what does not, apart. */
export function stretchWords(stretches: BrokenRun['stretches']): string {
  return stretches.map((names) => names.map((name) => nameText(name, 40)).join(' + ')).join(' | ');
}

function whyWords({ why, clear, saves }: BrokenRun, shop: Shop): string {
  switch (why) {
    case 'no board':
      return `no board holds ${withUnit(clear.length, shop)} clear, ${withUnit(clear.width, shop)} wide, on one face`;
    case 'no layout':
      return 'with its grain whole these boards do not hold all parts (proven)';
    case 'not found':
      return 'with its grain whole no layout of all parts was found (that there is none is not proven)';
    case 'fewest short':
      return 'with its grain whole more parts would be short';
    case 'money':
      return `that saves ${money(saves ?? 0)} ("break grain" in shop.csv)`;
    default:
      return unreachable(why);
  }
}

function wholeWords({ whole }: BrokenRun, shop: Shop): string[] {
  if (whole === null) return [];
  return [
    `Whole, it takes one more board, at least ${sizeText(whole.board, shop)} rough and clear on one face: some ${money(whole.cost)} at the shop's price.`,
  ];
}
