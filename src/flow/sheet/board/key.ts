import { type Markup, svg } from '../../../base/markup/element.ts';
import { flagMark } from './flag.ts';
import { sheetWidth } from './frame.ts';
import type { Labelled } from './row-things.ts';
import { fitted, lineAt, lineWidth } from './text-line.ts';

/** A letter and what it stands for. */
export interface KeyEntry {
  readonly letter: string;
  readonly line: string;
}

const type = 24;
const step = 38;
const before = 54;

/**
 * One letter for each kind of thing, in the order in which they come up; the copies of a kind share it.
 * @example the line of three copies: `plug, 1 × 3/4 (1, 2, 3 of 12)`
 */
export function keyEntries(things: readonly Labelled[]): KeyEntry[] {
  const kinds = new Map<string, Labelled[]>();
  for (const thing of things) kinds.set(thing.kindLine, [...(kinds.get(thing.kindLine) ?? []), thing]);
  return [...kinds].map(([kindLine, members], index) => ({
    letter: letterFor(index),
    line: members.length === 1 ? (members[0]?.line ?? kindLine) : `${kindLine} (${copiesText(members)})`,
  }));
}

/** The letter of each kind, by its line. */
export function lettersByKind(things: readonly Labelled[]): ReadonlyMap<string, string> {
  const kinds = [...new Set(things.map(({ kindLine }) => kindLine))];
  return new Map(kinds.map((kindLine, index) => [kindLine, letterFor(index)]));
}

/** `1 to 5, 8 of 12`: runs of three and more drawn together. */
function copiesText(members: readonly Labelled[]): string {
  const [first = ''] = members.map(({ copy }) => copy);
  const total = / of (\d+)$/.exec(first)?.[1];
  const numbers = members.map(({ copy }) => Number.parseInt(copy, 10)).filter(Number.isFinite);
  if (total === undefined || numbers.length < members.length) return `${members.length} of them`;
  return `${drawnTogether(numbers)} of ${total}`;
}

function drawnTogether(numbers: readonly number[]): string {
  const runs: number[][] = [];
  for (const number of [...new Set(numbers)].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run?.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  return runs
    .map((run) => (run.length < 3 ? run.join(', ') : `${run[0] ?? ''} to ${run.at(-1) ?? ''}`))
    .join(', ');
}

/** The n-th letter of a key, from 0: a, b, … z, aa, ab, … */
export function letterFor(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letterFor(Math.floor(index / 26) - 1) + last;
}

const columns = 4;

/**
 * The key below a diagram, line by line on a grid of four columns: a long entry takes several.
 * @returns SVG from y = 0 down, and its height
 */
export function key(entries: readonly KeyEntry[]): { markup: Markup; height: number } {
  const columnWidth = Math.floor(sheetWidth / columns);
  const marks: Markup[] = [];
  let column = 0;
  let y = 0;
  for (const { letter, line } of entries) {
    const text = fitted(line, type, false, sheetWidth - before - 4);
    const span = Math.min(columns, Math.ceil((before + lineWidth([{ text }], type) + 20) / columnWidth));
    if (column + span > columns) [column, y] = [0, y + step];
    const x = column * columnWidth;
    const flag = {
      kind: 'call-out',
      text: letter,
      title: line,
      box: { x: x + 4, y, w: 40, h: 29 },
      leader: '',
    } as const;
    marks.push(svg('g', {}, flagMark(flag), lineAt(x + before, y, type, [{ text }])));
    column += span;
  }
  return { markup: svg('g', { 'aria-label': 'key to the letters' }, marks), height: y + step };
}
