import type { Rectangle } from '../../base/geometry/rectangle.ts';
import { type Tick, ticks } from '../../base/units/tick.ts';
import type { Board } from '../stock/board.ts';
import { carryDefects } from './carry.ts';
import { knotsBeside } from './knots-beside.ts';
import type { RackPiece } from './piece.ts';

const partsOfAUnitOfMoney = 10_000;

/**
 * The ledger's share: cost of the parent × offcut area / parent area, over the parent's rough outline, trims and
 * all. What kerf, trim and scrap cost stays with the job that made them. Rounded to 1/10,000 of a unit of money, so
 * that the journal holds it exactly.
 * @example ledgerShare({ cost: 40, length: 100, width: 6 }, { length: 25, width: 6 }) // 10
 */
export function ledgerShare(
  parent: { readonly cost: number; readonly length: number; readonly width: number },
  offcut: { readonly length: number; readonly width: number },
): number {
  const share = (offcut.length * offcut.width) / (parent.length * parent.width);
  return Math.round(parent.cost * share * partsOfAUnitOfMoney) / partsOfAUnitOfMoney;
}

/**
 * An offcut as the rack describes it, lying as it lay on its parent. Looks, tone, species and grade are the parent's.
 * @param thickness as it is then (see `offcutThickness`)
 * @param knotMargin what the shop keeps clear round knots
 */
export function offcutPiece(
  name: string,
  region: Rectangle,
  parent: Board,
  { thickness, knotMargin }: { readonly thickness: Tick; readonly knotMargin: Tick },
): RackPiece {
  return {
    name,
    length: ticks(region.length),
    width: ticks(region.width),
    dressedThickness: thickness,
    nominalThickness: parent.nominalThickness,
    nominalInches: parent.nominalInches,
    species: parent.species,
    grade: parent.grade,
    tone: parent.tone,
    lookA: parent.lookA,
    lookB: parent.lookB,
    cost: ledgerShare(parent, region),
    defects: carryDefects(parent.defects, region, 'as cut'),
    beside: knotsBeside(parent.defects, region, knotMargin),
    parent: { name: parent.name, x: ticks(region.x), y: ticks(region.y), turn: 'as cut' },
  };
}
