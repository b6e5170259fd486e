import { decimal, money } from '../../../flow/sheet/words/number-text.ts';
import { nameText } from '../../../flow/sheet/words/named.ts';
import { sizeText } from '../../../flow/sheet/words/size-text.ts';
import type { Quality } from '../../../flow/parts/part.ts';
import type { Shop } from '../../../flow/shop/shop.ts';
import type { LumberEstimate } from './estimate.ts';
import { lumberName } from './lumber-wanted.ts';
import { listedChance } from './mix.ts';
import { type Asked, type BoardSought, type ShoppingList, shoppingList } from './shopping-list.ts';

/** Said where nothing has to be bought. */
export const ownedWords = 'what is owned suffices: nothing has to be bought';
const chanceText = `${Math.round(100 * listedChance)} %`;

/** `8.0 BF of FAS for the front, 24.5 BF of 1C for the rest` */
export function askedText({ first, grade, feet }: Asked): string {
  const rest = `${decimal(feet, 1)} BF of ${grade}`;
  if (first === null) return rest;
  return `${decimal(first.feet, 1)} BF of ${first.grade} for ${nameText(first.hardest, 60)}, ${rest} for the rest`;
}

/** What a line costs; words where a price is missing. */
export function askedCost({ cost }: Asked): string {
  return cost === null ? 'price not known' : money(cost);
}

/**
 * The estimate in one line: the cheapest line among those with a price, or that nothing has to be bought. What has no
 * price is compared by its board feet only.
 */
export function verdictWords(lumber: LumberEstimate): string {
  const list = shoppingList(lumber);
  const name = lumberName(lumber.wanted);
  if (list === null) return `${name}: ${ownedWords}.`;
  if (list.asked.length === 0) return `${name}: no grade gives the job in ${chanceText} of the piles.`;
  const priced = list.asked.filter(({ cost }) => cost !== null);
  const unpriced = lumber.grades.filter(({ price }) => price.perFoot === null).map(({ grade }) => grade);
  const example = unpriced.map((grade) => `${grade}=…`).join(',');
  const ask =
    unpriced.length === 0
      ? ''
      : ` No price is known of ${unpriced.join(', ')}: ask the yard, then compare with --prices ${example}.`;
  const [best, ...others] = priced;
  if (best === undefined) {
    const feet = list.asked.map(askedText).join(', or ');
    return `${name}: for a chance of ${chanceText} ask for ${feet}.${ask}`;
  }
  const beside = others.map((other) => `${askedText(other)}: ${askedCost(other)}`).join('; ');
  const than = others.length === 0 ? '' : `, the least of ${priced.length} (${beside})`;
  return `${name}: ask for ${askedText(best)}. For a chance of ${chanceText} it costs some ${askedCost(best)}${than}.${ask}`;
}

/** Rows of what to ask for: what, board feet, cost, odds. */
export function askedRows({ asked }: ShoppingList): string[][] {
  return asked.map((one) => [askedText(one), askedCost(one), `${Math.round(10 * listedChance)} of 10`]);
}

/** Rows of the boards to look for: how many, the smallest rough board, what of it must be good, what for. */
export function boardRows({ boards }: ShoppingList, shop: Shop): string[][] {
  return boards.map((board) => [
    board.count === 0 ? 'with others' : String(board.count),
    sizeText(board.least, shop),
    `${sizeText(board.clear, shop)} ${qualityWords[board.quality]}`,
    forText(board, shop),
  ]);
}

const qualityWords: Readonly<Record<Quality, string>> = {
  'clear-2': 'clear on both faces',
  'clear-1': 'clear on one face, its back sound',
  sound: 'sound',
  any: 'of any look',
};

function forText({ name, isStrip, broken }: BoardSought, shop: Shop): string {
  const what = `${isStrip ? 'a strip of ' : ''}${nameText(name, 60)}`;
  if (broken.length === 0) return what;
  return `${what}; broken, boards of ${broken.map((size) => sizeText(size, shop)).join(' and ')}`;
}

/** Two lines on spares: what more makes it surer, and which spare board helps the most. */
export function spareLines({ surer, boards }: ShoppingList, shop: Shop): string[] {
  const chance = surer === null ? '95 %' : `${Math.round(100 * surer.chance)} %`;
  const cost = surer === null || surer.cost === null ? '' : `, some ${money(surer.cost)}`;
  const more =
    surer === null
      ? `No quantity of it reaches a chance of ${chance}: see the boards before you pay, or take a better grade.`
      : surer.feet <= 0
        ? `The same quantity reaches a chance of ${chance}.`
        : `For a chance of ${chance} instead of ${chanceText} ask for ${decimal(surer.feet, 1)} BF more${cost}.`;
  const hardest = boards.reduce<BoardSought | null>(
    (best, one) =>
      best === null || one.clear.length * one.clear.width > best.clear.length * best.clear.width ? one : best,
    null,
  );
  if (hardest === null) return [more];
  return [
    more,
    `If you take one spare board, let it be at least ${sizeText(hardest.least, shop)}: nothing smaller replaces the one for ${nameText(hardest.name, 60)}.`,
  ];
}
