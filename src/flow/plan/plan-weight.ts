import { solidBoardFeet } from '../../trade/board-feet.ts';
import { type Species, speciesCalled } from '../../trade/species.ts';
import { type WeightRange, weightPerBoardFoot } from '../../trade/weight.ts';
import type { PlanPiece } from './piece.ts';
import type { MantelPlan } from './plan-mantel.ts';

/** What a mantel weighs, and how that was reckoned. Weights in pounds at 12 % moisture content. */
export interface PlanWeight {
  /** The species that the maker's word can mean; empty when it means none of the table. */
  readonly species: readonly Species[];
  readonly perBoardFoot: WeightRange;
  /** Wood of the box itself: finished sizes from long point to long point, so a little over. */
  readonly boxBoardFeet: number;
  /** Wood of the ledger, which hangs on the wall by itself. */
  readonly ledgerBoardFeet: number;
  readonly box: WeightRange;
}

/** Board feet of the finished parts × the species' weight; a range where the species is not certain. */
export function planWeight(plan: MantelPlan): PlanWeight {
  const species = speciesCalled(plan.mantel.species);
  const perBoardFoot = weightPerBoardFoot(species);
  const boxBoardFeet = boardFeetOf(plan.pieces.filter(({ kind }) => kind !== 'ledger'));
  return {
    species,
    perBoardFoot,
    boxBoardFeet,
    ledgerBoardFeet: boardFeetOf(plan.pieces.filter(({ kind }) => kind === 'ledger')),
    box: { least: boxBoardFeet * perBoardFoot.least, most: boxBoardFeet * perBoardFoot.most },
  };
}

function boardFeetOf(pieces: readonly PlanPiece[]): number {
  return pieces.reduce(
    (sum, { length, width, thickness }) => sum + solidBoardFeet(length, width, thickness),
    0,
  );
}
