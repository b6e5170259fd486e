import { shorten } from '../../base/markup/shorten.ts';
import { withoutControls } from '../../base/text/terminal-width.ts';
import { type LengthStyle, formatLengthWithUnit } from '../../base/units/format-length.ts';
import type { Tick } from '../../base/units/tick.ts';
import { angleText } from './angle-text.ts';
import { leastWallAngle, sharpestCorner } from './check-mantel.ts';
import type { PlanProblem } from './plan-problem.ts';
import { wallCornerText } from './wall-corner.ts';

interface Words {
  readonly says: string;
  readonly mend: string;
}

/** What is wrong with a mantel, and what mends it, in words for the maker. */
export function planProblemWords(problem: PlanProblem, style: LengthStyle): Words {
  // The table has one entry for each kind, so the entry found by the kind takes this very problem.
  const say = words[problem.kind] as (problem: PlanProblem, size: Size) => Words;
  return say(problem, (length) => formatLengthWithUnit(length, style));
}

type Size = (length: Tick) => string;
type Kind = PlanProblem['kind'];

const words: {
  readonly [K in Kind]: (problem: Extract<PlanProblem, { readonly kind: K }>, size: Size) => Words;
} = {
  'no legs': () => ({
    says: 'the mantel has no leg',
    mend: 'give one row for each flat run of wall, from left to right as you face it',
  }),
  'not above zero': (problem) => ({
    says: `${problem.leg === null ? 'the' : `leg ${named(problem.leg)}: the`} ${problem.size} must be above zero`,
    mend: `measure the ${problem.size} again`,
  }),
  'leg named twice': (problem) => ({
    says: `two legs are called ${named(problem.leg)}`,
    mend: 'give each leg a name of its own, since its parts are named after it',
  }),
  'corner out of range': (problem) => ({
    says: `leg ${named(problem.leg)}: no mantel goes round a wall corner of ${wallCornerText(problem.turn)}`,
    mend:
      `a bevel gauge reads 90 on a square corner; from ${180 - sharpestCorner} to 179 can be built, either way ` +
      '("inside 90" in an alcove). Two runs in line are one leg',
  }),
  'side wall out of range': (problem) => ({
    says: `the ${problem.side} end cannot die into a wall at ${angleText(problem.angle)}`,
    mend:
      `a bevel gauge reads 90 where the side wall is square; from ${leastWallAngle} to ${180 - leastWallAngle} can be ` +
      'built. Along a more slanting wall the mantel goes on as a leg of its own',
  }),
  'no depth': (problem, size) => ({
    says: `leg ${named(problem.leg)} stands off the wall by no more than its facing is thick`,
    mend: `the projection is that of the finished mantel, facing and all: more than ${size(problem.least)}`,
  }),
  'leg too short': (problem, size) => ({
    says: `leg ${named(problem.leg)} is too short for the corners at its ends, by ${size(problem.lacking)} or more`,
    mend: 'make it longer, let its neighbours stand off less, or end the mantel before it',
  }),
  'no hollow': (problem, size) => ({
    says: `a face of ${size(problem.faceHeight)} leaves nothing between the boards behind it`,
    mend: `make the face higher than ${size(problem.least)}, or the boards thinner`,
  }),
  'ledger too high': (problem, size) => ({
    says: `the ledger, ${size(problem.width)} high, does not fit in the hollow of ${size(problem.room)}`,
    mend: 'make the ledger lower, or the face higher',
  }),
  'ledger too thick': (problem, size) => ({
    says: `the ledger, ${size(problem.thickness)} thick, does not fit behind the facing of leg ${named(problem.leg)}`,
    mend: `make the ledger thinner than ${size(problem.room)}, or let the leg stand off more`,
  }),
  'legs cross': (problem) => ({
    says: `legs ${named(problem.leg)} and ${named(problem.other)} run into each other`,
    mend: 'check the lengths along the wall, and which corners are inside ones',
  }),
  'piece too long': (problem) => ({
    says: `${named(problem.piece)} would be longer than any board`,
    mend: 'check the corner at its end: it is nearly a turn back',
  }),
};

/** A name that came from a file, short enough for a message. */
function named(name: string): string {
  return `"${shorten(withoutControls(name), 60)}"`;
}
