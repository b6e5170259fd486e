import { unreachable } from '../../base/result/unreachable.ts';
import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import type { Tick } from '../../base/units/tick.ts';
import { sharpestCorner } from './check-mantel.ts';
import type { PlanProblem } from './plan-problem.ts';

/** What is wrong with a mantel, and what mends it, in words for the maker. */
export function planProblemWords(problem: PlanProblem, style: LengthStyle): { says: string; mend: string } {
  const size = (length: Tick): string => formatLengthWithUnit(length, style);
  switch (problem.kind) {
    case 'no legs':
      return {
        says: 'the mantel has no leg',
        mend: 'give one row for each flat run of wall, from left to right as you face it',
      };
    case 'not above zero':
      return {
        says: `${problem.leg === null ? 'the' : `leg ${problem.leg}: the`} ${problem.size} must be above zero`,
        mend: `measure the ${problem.size} again`,
      };
    case 'leg named twice':
      return {
        says: `two legs are called ${problem.leg}`,
        mend: 'give each leg a name of its own, since its parts are named after it',
      };
    case 'corner out of range':
      return {
        says: `leg ${problem.leg}: no mantel turns by ${problem.corner} degrees`,
        mend:
          `a square outside corner is 90, an inside one -90; between 1 and ${sharpestCorner} either way can be built. ` +
          'Two runs in line are one leg',
      };
    case 'leg too short':
      return {
        says: `leg ${problem.leg} is too short for the corners at its ends, by ${size(problem.lacking)} or more`,
        mend: 'make it longer, let its neighbours stand off less, or end the mantel before it',
      };
    case 'no hollow':
      return {
        says: `a face of ${size(problem.faceHeight)} leaves nothing between the boards behind it`,
        mend: `make the face higher than ${size(problem.least)}, or the boards thinner`,
      };
    case 'ledger too high':
      return {
        says: `the ledger, ${size(problem.width)} high, does not fit in the hollow of ${size(problem.room)}`,
        mend: 'make the ledger lower, or the face higher',
      };
    case 'ledger too thick':
      return {
        says: `the ledger, ${size(problem.thickness)} thick, does not fit behind the facing of leg ${problem.leg}`,
        mend: `make the ledger thinner than ${size(problem.room)}, or let the leg stand off more`,
      };
    case 'legs cross':
      return {
        says: `legs ${problem.leg} and ${problem.other} run into each other`,
        mend: 'check the lengths along the wall and the signs of the corners (an inside corner is negative)',
      };
    case 'piece too long':
      return {
        says: `${problem.piece} would be longer than any board`,
        mend: 'check the corner at its end: it is nearly a turn back',
      };
    default:
      return unreachable(problem);
  }
}
