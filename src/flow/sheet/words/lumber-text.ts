import { boardFeet } from '../../../trade/board-feet.ts';
import type { Board } from '../../stock/board.ts';
import { decimal } from './number-text.ts';

/** How much wood, with its unit: `8.00 BF`. */
export function lumberText(feet: number): string {
  return `${decimal(feet, 2)} BF`;
}

/** Heads of the two columns that say how much wood a board is: what the yard charges for, and what it measures. */
export const lumberHeads = { tally: 'BF, tally', measured: 'BF, measured' } as const;

/** Board feet that one copy of a board really measures. */
export function measuredFeet({
  length,
  width,
  nominalInches,
}: Pick<Board, 'length' | 'width' | 'nominalInches'>): number {
  return boardFeet(length, width, nominalInches);
}

/** Both figures of some lumber, each named: `43.00 BF by the yard's tally (42.03 BF measured)`. */
export function bothFeetText(tallied: number, measured: number): string {
  return `${lumberText(tallied)} by the yard's tally (${lumberText(measured)} measured)`;
}
