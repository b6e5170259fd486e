import { mkdirSync, mkdtempSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardFileNames } from '../../src/shell/command/file-names.ts';
import { fileFault } from '../../src/shell/command/file-fault.ts';
import { writeTogether } from '../../src/shell/command/write-together.ts';

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
          for (const name of names) expect(name).toMatch(/^board-[A-Za-z0-9][A-Za-z0-9-]*\.svg$/);
        },
      ),
    );
  });

  it('stay readable', () => {
    const boards = ['C1', 'c1', 'offcut 1', '../x', '<script>', '__proto__', '🪵', 'Kirschbaum Böhle'];
    expect(boardFileNames(boards.map((board) => ({ board, copy: 1 })))).toEqual([
      'board-C1.svg',
      'board-c1-2.svg',
      'board-offcut-1.svg',
      'board-x.svg',
      'board-script.svg',
      'board-proto.svg',
      'board-unnamed.svg',
      'board-Kirschbaum-Bohle.svg',
    ]);
    expect(boardFileNames([{ board: 'B'.repeat(10_000), copy: 12 }])[0]).toHaveLength(6 + 40 + 8 + 4);
  });
});

describe('files written together', () => {
  it('make their folder and replace what was there', async () => {
    const folder = join(scratch(), 'a', 'b');
    await writeTogether(folder, [{ name: 'x.txt', text: 'old' }]);
    await writeTogether(folder, [
      { name: 'x.txt', text: 'new' },
      { name: 'y.txt', text: '' },
    ]);
    expect(readFileSync(join(folder, 'x.txt'), 'utf8')).toBe('new');
    expect(readdirSync(folder).sort()).toEqual(['x.txt', 'y.txt']);
  });

  it('leave the old ones and no scraps when one of them cannot be written', async () => {
    const folder = scratch();
    writeFileSync(join(folder, 'x.txt'), 'old');
    const unwritable = { name: 'z.txt', text: Symbol('no text') as unknown as string };
    await expect(writeTogether(folder, [{ name: 'x.txt', text: 'new' }, unwritable])).rejects.toThrow();
    expect(readFileSync(join(folder, 'x.txt'), 'utf8')).toBe('old');
    expect(readdirSync(folder)).toEqual(['x.txt']);
  });

  it('leave no scraps when a place is taken by a folder', async () => {
    const folder = scratch();
    mkdirSync(join(folder, 'x.txt'));
    const written = writeTogether(folder, [{ name: 'x.txt', text: 'new' }]);
    await expect(written.catch((error: unknown) => fileFault(error))).resolves.toMatch(
      /x\.txt: a folder of that name is in the way/,
    );
    expect(readdirSync(folder)).toEqual(['x.txt']);
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
