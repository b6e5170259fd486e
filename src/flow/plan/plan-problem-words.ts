import { shorten } from '../../base/markup/shorten.ts';
import { withoutControls } from '../../base/text/terminal-width.ts';
import { unreachable } from '../../base/result/unreachable.ts';
import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import type { Tick } from '../../base/units/tick.ts';
import { angleText } from './angle-text.ts';
import { leastWallAngle, sharpestCorner } from './check-mantel.ts';
import type { PlanProblem } from './plan-problem.ts';
import { wallCornerText } from './wall-corner.ts';

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
        says: `${problem.leg === null ? 'the' : `leg ${named(problem.leg)}: the`} ${problem.size} must be above zero`,
        mend: `measure the ${problem.size} again`,
      };
    case 'leg named twice':
      return {
        says: `two legs are called ${named(problem.leg)}`,
        mend: 'give each leg a name of its own, since its parts are named after it',
      };
    case 'corner out of range':
      return {
        says: `leg ${named(problem.leg)}: no mantel goes round a wall corner of ${wallCornerText(problem.turn)}`,
        mend:
          `a bevel gauge reads 90 on a square corner; from ${180 - sharpestCorner} to 179 can be built, either way ` +
          '("inside 90" in an alcove). Two runs in line are one leg',
      };
    case 'side wall out of range':
      return {
        says: `the ${problem.side} end cannot die into a wall at ${angleText(problem.angle)}`,
        mend:
          `a bevel gauge reads 90 where the side wall is square; from ${leastWallAngle} to ${180 - leastWallAngle} can be ` +
          'built. Along a more slanting wall the mantel goes on as a leg of its own',
      };
    case 'no depth':
      return {
        says: `leg ${named(problem.leg)} stands off the wall by no more than its facing is thick`,
        mend: `the projection is that of the finished mantel, facing and all: more than ${size(problem.least)}`,
      };
    case 'leg too short':
      return {
        says: `leg ${named(problem.leg)} is too short for the corners at its ends, by ${size(problem.lacking)} or more`,
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
        says: `the ledger, ${size(problem.thickness)} thick, does not fit behind the facing of leg ${named(problem.leg)}`,
        mend: `make the ledger thinner than ${size(problem.room)}, or let the leg stand off more`,
      };
    case 'legs cross':
      return {
        says: `legs ${named(problem.leg)} and ${named(problem.other)} run into each other`,
        mend: 'check the lengths along the wall, and which corners are inside ones',
      };
    case 'piece too long':
      return {
        says: `${named(problem.piece)} would be longer than any board`,
        mend: 'check the corner at its end: it is nearly a turn back',
      };
    default:
      return unreachable(problem);
  }
}

/** A name that came from a file, short enough for a message. */
function named(name: string): string {
  return `"${shorten(withoutControls(name), 60)}"`;
}
