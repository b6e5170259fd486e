import { nearestName, seenCharacters, withoutControls } from '../index.ts';
import type { ChangedColumn, JobFile, Range, Wanted } from './read/problem.ts';

/** What to do about each file when it is not there. */
export const mendOfMissing: Readonly<Record<JobFile, string>> = {
  shop: 'write it: setting,value',
  parts: 'write it by hand, or let "mantelwright plan" make it from mantel.csv and legs.csv',
  boards: 'list the boards at hand in it: board,length,width,thickness',
  defects: 'list the defects in it: board,kind,face,from,to,low,high',
  yard: 'list the boards on offer in it: board,length,width,thickness,price',
  mantel: 'write it (setting,value: face height, thickness ...), or write parts.csv by hand',
  legs: 'write it (leg,along wall,projection,wall corner), or write parts.csv by hand',
};

/** What to do about a column that an older file has in another form. */
export const mendOfChanged: Readonly<Record<ChangedColumn, string>> = {
  'wall corner':
    'give there what a bevel gauge reads on the two walls: 90, 92 where the corner is blunt, inside 90 in an alcove, nothing in ' +
    'the last row (where an older file gave the angle turned: 180 less that). "projection" and "along wall" are of the finished ' +
    "mantel now: to an older file's add the thickness of the boards, to each projection, and to the length along the wall at a cap",
};

/** What a cell should have been. */
export const nounOf: Readonly<Record<Wanted, string>> = {
  number: 'number',
  'whole number': 'whole number',
  share: 'number',
  price: 'price',
  saving: 'saving',
  angle: 'angle',
  corner: 'angle of a corner',
  stages: 'whole number',
  show: 'answer',
  section: 'section',
};

/** How such a cell is written. */
export const exampleOf: Readonly<Record<Wanted, string>> = {
  number: 'a plain number like 2 or 2.5',
  'whole number': 'a whole number like 2',
  share: 'a number from 0 to 1, like 0.25, or 25%',
  price: 'a number like 42.50; in boards.csv 8.50/bf is a price per board foot',
  saving: 'never, money like 25, or a share of the cost like 5 %',
  angle: 'degrees, like 45 or -22.5; a square end is empty',
  corner: 'what a bevel gauge reads, like 90, 92 or inside 90',
  stages: 'a whole number like 4, or any',
  show: 'yes, no, or a number: the more, the more the part is looked at',
  section: 'thickness x width, like 1 1/2 x 3 1/2, or none',
};

/** The numbers that are allowed, to stand after `must be`. */
export function rangeWords({ above, least, most, below }: Range): string {
  if (above !== undefined && below !== undefined) return `more than ${above} and less than ${below}`;
  if (least !== undefined && most !== undefined) return `from ${least} to ${grouped(most)}`;
  return least === undefined ? 'another number' : `${least} or more`;
}

/** A mend for a name of which one of these was meant: the nearest, then all. */
export function nearestOf(nearest: string | undefined, known: readonly string[]): string {
  const all = `known are ${known.join(', ')}`;
  return nearest === undefined ? all : `write ${quoted(nearest)}, the nearest; ${all}`;
}

/** The known name that may well have been meant, in quotes; null when all are far off. */
export function closeTo(written: string, known: readonly string[]): string | null {
  // One number is as good a guess as another.
  if (/^\d+$/.test(written)) return null;
  const nearest = nearestName(written, known);
  return nearest !== undefined && nearest.slips <= written.length / 2 ? quoted(nearest.name) : null;
}

/** Text from a file in quotes, short enough for a message. */
export function quoted(text: string): string {
  return `"${short(text)}"`;
}

const longestQuoted = 60;

/** Text from a file, short enough for a message and steering nothing. */
export function short(text: string): string {
  // What a person sees as one character may be many: cut roughly first, so that a huge cell costs nothing.
  const line = withoutControls(text.slice(0, 8 * longestQuoted));
  const seen = seenCharacters(line);
  if (seen.length <= longestQuoted && line.length === text.length) return line;
  return `${seen
    .slice(0, longestQuoted)
    .map((character) => character.text)
    .join('')}…`;
}

/** A whole number with its digits in groups of three. */
export function grouped(number: number): string {
  return String(number).replace(/\B(?=(?:\d{3})+$)/g, ',');
}
