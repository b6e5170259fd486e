import { execFileSync } from 'node:child_process';
import { symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { printProblems } from '../../../src/shell/print-problem.ts';
import { readTextFile } from '../../../src/shell/read/text-file.ts';
import { runIn, testWorld } from '../../command/test-world.ts';
import { jobFolder, scratchFolder } from './job-folder.ts';

const scratch = scratchFolder();

async function words(path: string): Promise<string> {
  const read = await readTextFile(path, 'it');
  return read.ok ? String(read.value) : printProblems(read.problems).split('\n')[0]!;
}

describe.runIf(process.platform === 'linux')('what is no file is refused, and not waited for', () => {
  it('a pipe, a device, a link to one, a socket of another program', async () => {
    const folder = jobFolder(scratch, 'odd', {});
    execFileSync('mkfifo', [join(folder, 'pipe')]);
    symlinkSync('pipe', join(folder, 'link'));
    symlinkSync('/dev/zero', join(folder, 'endless'));
    expect(await words(join(folder, 'pipe'))).toBe('it: this is a pipe, not a file');
    expect(await words(join(folder, 'link'))).toBe('it: this is a pipe, not a file');
    expect(await words(join(folder, 'endless'))).toBe('it: this is a device, not a file');
    expect(await words('/dev/tty')).toMatch(/a device|cannot be read/);
    expect(await words(folder)).toBe('it: this is a folder, not a file');
  });

  it('too much, by its size or by what it goes on giving', async () => {
    const folder = jobFolder(scratch, 'large', { huge: '' });
    truncateSync(join(folder, 'huge'), 2 ** 40);
    expect(await words(join(folder, 'huge'))).toBe(
      'it: the file has 1,099,511,627,776 bytes, and the most is 67,108,864',
    );
    // Made up by the system as it is read: its size says 0.
    expect(await words('/proc/self/status')).toMatch(/^Name:/);
  });

  it('in every file of a job, as the rack, as a layout', async () => {
    const good = { 'parts.csv': 'part,quantity,length,width,thickness\na,1,10,3,3/4\n' };
    for (const name of ['shop.csv', 'parts.csv', 'boards.csv', 'defects.csv', 'yard.csv']) {
      const folder = jobFolder(scratch, `job ${name}`, name === 'parts.csv' ? {} : good);
      execFileSync('mkfifo', [join(folder, name)]);
      const { code, err } = await runIn(testWorld(), 'layout', folder);
      expect([code, err]).toEqual([2, expect.stringContaining(`${name}: this is a pipe, not a file\n`)]);
    }
    const folder = jobFolder(scratch, 'whole', {
      ...good,
      'boards.csv': 'board,length,width,thickness\nB,60,6,4/4\n',
    });
    execFileSync('mkfifo', [join(scratch, 'rack.csv')]);
    const rack = await runIn(testWorld(), 'layout', folder);
    expect([rack.code, rack.err]).toEqual([
      2,
      expect.stringContaining('rack.csv: this is a pipe, not a file\n'),
    ]);
    execFileSync('rm', [join(scratch, 'rack.csv')]);
    const check = await runIn(testWorld(), 'check', folder, '/dev/zero');
    expect([check.code, check.err]).toEqual([
      2,
      expect.stringContaining('/dev/zero: this is a device, not a file'),
    ]);
    for (const args of [['list'], ['take', 'ABCD']]) {
      const booked = await runIn(testWorld(), 'rack', ...args, '--rack', '/dev/full');
      expect([booked.code, booked.err]).toEqual([
        2,
        expect.stringContaining('this is a device, not a file\n'),
      ]);
    }
    writeFileSync(join(scratch, 'sparse.csv'), '');
    truncateSync(join(scratch, 'sparse.csv'), 2 ** 40);
    const large = await runIn(testWorld(), 'rack', 'list', '--rack', join(scratch, 'sparse.csv'));
    expect([large.code, large.err]).toEqual([2, expect.stringContaining('larger than 67,108,864 bytes')]);
  });
});
