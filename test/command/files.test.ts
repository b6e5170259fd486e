import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardFileNames } from '../../src/shell/command/file-names.ts';
import { fileFault } from '../../src/shell/command/file-fault.ts';

const scratch = (): string => mkdtempSync(join(tmpdir(), 'mantelwright-files-'));

describe('names of drawings', () => {
  it('are harmless for any board name, and never meet', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ board: fc.string({ unit: 'binary' }), copy: fc.nat(3) })),
        (boards) => {
          const names = boardFileNames(boards);
          expect(names).toHaveLength(boards.length);
          expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
          for (const name of names) expect(name).toMatch(/^board-[^/\\:*?"<>|]*\.svg$/);
        },
      ),
    );
  });

  it('stay readable', () => {
    const boards = ['C1', 'c1', 'offcut 1', '../x', '<script>', '__proto__', '🪵', 'Böhle'];
    expect(boardFileNames(boards.map((board) => ({ board, copy: 1 })))).toEqual([
      'board-C1.svg',
      'board-c1-2.svg',
      'board-offcut 1.svg',
      'board-x.svg',
      'board-script.svg',
      'board-__proto__.svg',
      'board-🪵.svg',
      'board-Böhle.svg',
    ]);
    expect(boardFileNames([{ board: 'B'.repeat(10_000), copy: 12 }])[0]).toMatch(
      /^board-B{50}-copy-12\.svg$/,
    );
  });
});

describe('a failed file operation', () => {
  it('is told in plain words', () => {
    const missing = join(scratch(), 'none', 'a.txt');
    const read = (): unknown => {
      try {
        return readFileSync(missing);
      } catch (error) {
        return error;
      }
    };
    expect(fileFault(read())).toBe(`cannot open ${missing}: no such file or folder`);
    expect(fileFault(new Error('else'))).toBeNull();
    expect(fileFault('a string')).toBeNull();
  });
});
