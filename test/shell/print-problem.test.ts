import { describe, expect, it } from 'vitest';
import { inches } from '../../src/index.ts';
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
];

describe('words for problems that no line of a file holds', () => {
  it.each(cases)('%o', (problem, head, mend) => {
    expect(printProblem(problem)).toBe(`${head}\n  mend: ${mend}`);
  });

  it('a plan’s problems in the plan’s own words, names in quotes', () => {
    expect(printProblem({ kind: 'corner out of range', leg: 'left', turn: 0 })).toBe(
      'leg "left": no mantel goes round a wall corner of 180°\n' +
        '  mend: a bevel gauge reads 90 on a square corner; from 5 to 179 can be built, either way ("inside 90" in an ' +
        'alcove). Two runs in line are one leg',
    );
  });

  it('lengths of a plan in the shop’s style', () => {
    const problem = { kind: 'leg too short', leg: 'left', lacking: inches(1.5) } as const;
    expect(printProblem(problem, { units: 'mm', printFraction: 32 })).toContain('by 38.1 mm or more\n');
  });

  it('one under the other', () => {
    const problem = { kind: 'no legs' } as const;
    expect(printProblems([problem, problem])).toBe(`${printProblem(problem)}\n\n${printProblem(problem)}`);
  });

  it('names that are too long or steer the terminal are shown short and still', () => {
    const said = printProblem({ kind: 'leg named twice', leg: `\u001B]0;x\u0007${'n'.repeat(10_000)}` });
    expect(said.split('\n')[0]).toBe(`two legs are called "\uFFFD]0;x\uFFFD${'n'.repeat(53)}…"`);
  });
});
