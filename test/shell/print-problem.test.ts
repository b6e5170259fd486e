import { describe, expect, it } from 'vitest';
import { inches, ticks } from '../../src/index.ts';
import { type Problem, printProblem, printProblems } from '../../src/shell/print-problem.ts';

// The problems that come from a file's lines have their exact words in fixtures/broken; these come from elsewhere.
const cases: readonly (readonly [problem: Problem, head: string, mend: string])[] = [
  [
    { kind: 'row too long', at: { file: 'parts.csv', line: 2, column: 1 }, most: 1_000_000 },
    'parts.csv:2:1: the row is longer than 1,000,000 characters',
    'look for a quotation mark that is never closed',
  ],
  [
    { kind: 'no folder', folder: 'hearht' },
    'hearht: no such folder',
    'give the folder of a job, or make one: mantelwright new FOLDER',
  ],
  [
    { kind: 'folder is a file', folder: 'parts.csv' },
    'parts.csv: this is a file, not a job folder',
    'give the folder that holds it',
  ],
  [
    { kind: 'file unreadable', file: 'shop.csv', code: 'EACCES' },
    'shop.csv: cannot be read: permission denied',
    'check its name and its permissions',
  ],
  [
    { kind: 'file unreadable', file: 'shop.csv', code: 'EWHATEVER' },
    'shop.csv: cannot be read: EWHATEVER',
    'check its name and its permissions',
  ],
  [
    { kind: 'file too large', file: 'shop.csv', bytes: 70_000_000, most: 67_108_864 },
    'shop.csv: the file has 70,000,000 bytes, and the most is 67,108,864',
    'check that it is the right file',
  ],
  [
    { kind: 'not written', file: 'out/sheet.html', code: 'ENOSPC' },
    'out/sheet.html: cannot be written: the disk is full',
    'check the permissions and the room on the disk, or name another folder',
  ],
  [{ kind: 'no legs' }, 'the mantel has no leg', 'give each run along a wall a line in legs.csv'],
  [
    { kind: 'not above zero', size: 'face height', leg: null },
    'face height must be more than 0',
    'correct the length',
  ],
  [
    { kind: 'not above zero', size: 'projection', leg: 'left' },
    'leg "left": projection must be more than 0',
    'correct the length',
  ],
  [{ kind: 'leg named twice', leg: 'left' }, 'two legs are named "left"', 'give each its own name'],
  [
    { kind: 'corner out of range', leg: 'left', corner: 0 },
    'leg "left": a corner of 0 degrees cannot be mitered',
    'give the angle turned to the next leg: 90 round a square corner, -90 into one',
  ],
  [
    { kind: 'leg too short', leg: 'left', lacking: inches(1.5) },
    'leg "left" is too short for its corners, by 1 1/2"',
    'make it longer, or its neighbours less deep',
  ],
  [
    { kind: 'no hollow', faceHeight: inches(1), least: inches(1.5) },
    'a face 1" high leaves no hollow between the panels',
    'make the face higher than 1 1/2", or the boards thinner',
  ],
  [
    { kind: 'ledger too high', width: inches(5), room: inches(4.5) },
    'a ledger 5" wide does not fit the hollow of 4 1/2"',
    'take a narrower ledger section',
  ],
  [
    { kind: 'ledger too thick', leg: 'left', thickness: inches(3), room: ticks(20_000) },
    'leg "left": a ledger 3" thick does not fit the depth of ~2 15/32"',
    'take a thinner ledger section, or a deeper leg',
  ],
  [
    { kind: 'legs cross', leg: 'left', other: 'right' },
    'the legs "left" and "right" run into each other',
    'check their lengths and corners',
  ],
  [
    { kind: 'piece too long', piece: 'front facing' },
    '"front facing" comes out longer than any piece may be',
    'check the unit of the legs',
  ],
];

describe('words for problems that no line of a file holds', () => {
  it.each(cases)('%o', (problem, head, mend) => {
    expect(printProblem(problem)).toBe(`${head}\n  mend: ${mend}`);
  });

  it('lengths of a plan in the shop’s style', () => {
    const problem = { kind: 'leg too short', leg: 'left', lacking: inches(1.5) } as const;
    expect(printProblem(problem, { units: 'mm', printFraction: 32 })).toContain('by 38.1 mm\n');
  });

  it('one under the other', () => {
    const problem = { kind: 'no legs' } as const;
    expect(printProblems([problem, problem])).toBe(`${printProblem(problem)}\n\n${printProblem(problem)}`);
  });

  it('names that are too long or steer the terminal are shown short and still', () => {
    const said = printProblem({ kind: 'leg named twice', leg: `\u001B]0;x\u0007${'n'.repeat(10_000)}` });
    expect(said.split('\n')[0]).toBe(`two legs are named "\uFFFD]0;x\uFFFD${'n'.repeat(54)}…"`);
  });
});
