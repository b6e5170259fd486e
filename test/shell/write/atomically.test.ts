import {
  chmodSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { printProblems } from '../../../src/shell/print-problem.ts';
import { writeAllAtomically, writeAtomically } from '../../../src/shell/write/atomically.ts';
import { jobFolder, scratchFolder } from '../read/job-folder.ts';

const scratch = scratchFolder();

async function words(path: string): Promise<string> {
  const written = await writeAtomically(path, 'new');
  return written.ok ? 'written' : printProblems(written.problems);
}

describe('a file is written whole', () => {
  it('new, and over an old one', async () => {
    const folder = jobFolder(scratch, 'plain', {});
    const path = join(folder, 'parts.csv');
    expect(await writeAtomically(path, 'one ½')).toEqual({ ok: true, value: undefined });
    expect(await writeAtomically(path, 'two')).toEqual({ ok: true, value: undefined });
    expect(readFileSync(path, 'utf8')).toBe('two');
    expect(readdirSync(folder)).toEqual(['parts.csv']);
  });

  it('keeps permissions, and a link a link', async () => {
    const folder = jobFolder(scratch, 'kept', { 'real.csv': 'old' });
    chmodSync(join(folder, 'real.csv'), 0o640);
    symlinkSync('real.csv', join(folder, 'link.csv'));
    expect(await words(join(folder, 'link.csv'))).toBe('written');
    expect(readFileSync(join(folder, 'real.csv'), 'utf8')).toBe('new');
    expect(statSync(join(folder, 'real.csv')).mode & 0o777).toBe(0o640);
    expect(readdirSync(folder).sort()).toEqual(['link.csv', 'real.csv']);
  });

  it('with a name as long as a file system takes', async () => {
    const folder = jobFolder(scratch, 'long', {});
    expect(await words(join(folder, 'x'.repeat(255)))).toBe('written');
    expect(await words(join(folder, 'x'.repeat(256)))).toContain('cannot be written: the name is too long');
  });
});

describe('what cannot be written', () => {
  it('where a folder of that name stands: nothing is left beside it', async () => {
    const folder = jobFolder(scratch, 'in the way', {});
    mkdirSync(join(folder, 'parts.csv'));
    expect(await words(join(folder, 'parts.csv'))).toBe(
      `${join(folder, 'parts.csv')}: cannot be written: a folder of that name is in the way\n` +
        '  mend: check the permissions and the room on the disk, or name another folder',
    );
    expect(readdirSync(folder)).toEqual(['parts.csv']);
  });

  it('no folder, and a file for a folder', async () => {
    const folder = jobFolder(scratch, 'none', { file: '' });
    expect(await words(join(folder, 'nowhere', 'a.csv'))).toContain(
      'cannot be written: no such file or folder',
    );
    expect(await words(join(folder, 'file', 'a.csv'))).toContain(
      'a part of the path is a file, not a folder',
    );
    expect(await words(join(folder, 'a\0b'))).toContain('the name holds a sign that no file name can');
  });

  it('a read-only folder', async () => {
    const folder = jobFolder(scratch, 'read-only', { 'parts.csv': 'old' });
    chmodSync(scratch, 0o755);
    chmodSync(folder, 0o555);
    const said = await asOrdinaryUser(() => words(join(folder, 'parts.csv')));
    chmodSync(folder, 0o755);
    expect(said).toContain('cannot be written: permission denied');
    expect(readdirSync(folder)).toEqual(['parts.csv']);
    expect(readFileSync(join(folder, 'parts.csv'), 'utf8')).toBe('old');
  });
});

describe('several files', () => {
  it('all or none: when one cannot be written, the others stay as they were', async () => {
    const folder = jobFolder(scratch, 'together', { 'boards.csv': 'old' });
    const file = (name: string): { path: string; file: string; text: string } => ({
      path: join(folder, name),
      file: name,
      text: 'new',
    });
    const refused = await writeAllAtomically([file('boards.csv'), file('nowhere/defects.csv')]);
    expect(refused).toEqual({
      ok: false,
      problems: [{ kind: 'not written', file: 'nowhere/defects.csv', code: 'ENOENT' }],
    });
    expect(readFileSync(join(folder, 'boards.csv'), 'utf8')).toBe('old');
    expect(readdirSync(folder)).toEqual(['boards.csv']);
    expect(await writeAllAtomically([file('boards.csv'), file('defects.csv')])).toMatchObject({ ok: true });
    expect(readdirSync(folder).sort()).toEqual(['boards.csv', 'defects.csv']);
    writeFileSync(join(folder, 'boards.csv'), '');
  });
});

/** The superuser may write anywhere, so the work is done as nobody where we are that. */
async function asOrdinaryUser<T>(work: () => Promise<T>): Promise<T> {
  if (process.geteuid?.() !== 0 || process.seteuid === undefined) return work();
  process.seteuid(65_534);
  try {
    return await work();
  } finally {
    process.seteuid(0);
  }
}
