import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, lstatSync, readFileSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { printProblems } from '../../../src/shell/print-problem.ts';
import { writeAtomically } from '../../../src/shell/write/atomically.ts';
import { besideName } from '../../../src/shell/write/beside.ts';
import { makeFolder } from '../../../src/shell/write/make-folder.ts';
import { jobFolder as job } from '../../command/job-folder.ts';
import { runIn, testWorld } from '../../command/test-world.ts';
import { jobFolder, scratchFolder } from '../read/job-folder.ts';

const scratch = scratchFolder();

async function words(path: string): Promise<string> {
  const written = await writeAtomically(path, 'new');
  return written.ok ? 'written' : printProblems(written.problems);
}

describe.runIf(process.platform === 'linux')('outputs go to files alone', () => {
  it('a pipe or a device stays what it is, through links, too', async () => {
    const folder = jobFolder(scratch, 'odd', {});
    const pipe = join(folder, 'pipe');
    execFileSync('mkfifo', [pipe]);
    symlinkSync('/dev/full', join(folder, 'device'));
    // A link into the system's own table of open files leads to no path.
    const stdout = spawnSync('readlink', ['/dev/stdout'], { encoding: 'utf8' }).stdout;
    expect(stdout).toContain('/proc');
    expect(await words(pipe)).toContain('this is a pipe, and is not written over; nothing was written');
    expect(await words(join(folder, 'device'))).toContain('this is a device, and is not written over');
    expect(lstatSync(pipe).isFIFO()).toBe(true);
    expect(lstatSync('/dev/full').isCharacterDevice()).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['device', 'pipe']);
  });

  it('nor is one of several written when one of them is no file', async () => {
    const folder = job();
    execFileSync('mkdir', [join(folder, 'out')]);
    symlinkSync('/dev/full', join(folder, 'out', 'cuts.csv'));
    const { code, err } = await runIn(testWorld({ cwd: folder }), 'layout', '.', '--effort', '0');
    expect([code, err]).toEqual([2, expect.stringContaining('out/cuts.csv: this is a device')]);
    expect(readdirSync(join(folder, 'out'))).toEqual(['cuts.csv']);
  });

  it('a folder that the system lets nobody make is refused at once', async () => {
    await expect(makeFolder('/proc/nothing/here')).rejects.toMatchObject({ code: 'ENOENT' });
    const { code, err } = await runIn(testWorld(), 'tally', job(), '--out', '/proc/nothing');
    expect([code, err]).toEqual([2, expect.stringContaining('/proc/nothing: cannot be written')]);
    await makeFolder(join(scratch, 'a', 'b', 'c'));
    await makeFolder(join(scratch, 'a', 'b', 'c'));
    expect(existsSync(join(scratch, 'a', 'b', 'c'))).toBe(true);
  });
});

describe('what a killed write left behind', () => {
  it('is swept by the next write into that folder, and nothing else is', async () => {
    const folder = jobFolder(scratch, 'swept', {});
    const dead = spawnSync(
      process.execPath,
      [
        '-e',
        `import(${JSON.stringify(join(import.meta.dirname, '../../../dist/shell/write/beside.js'))}).then(async ({ besideName }) => {
          require('fs').writeFileSync(besideName(${JSON.stringify(join(folder, 'sheet.html'))}), 'half');
          process.kill(process.pid, 'SIGKILL');
        })`,
      ],
      { encoding: 'utf8' },
    );
    expect(dead.signal).toBe('SIGKILL');
    const [left = ''] = readdirSync(folder);
    expect(left).toMatch(/^\.sheet\.html\..*\.part$/);
    // This process is alive, and so is what it is writing.
    const own = besideName(join(folder, 'a.csv'));
    writeFileSync(own, 'half');
    writeFileSync(join(folder, '.mine.part'), '');
    expect(await words(join(folder, 'sheet.html'))).toBe('written');
    expect(readdirSync(folder)).not.toContain(left);
    expect(existsSync(own)).toBe(true);
    expect(readdirSync(folder)).toContain('.mine.part');
  });
});

describe('a rack is never written over', () => {
  const journal = 'entry,booking,line,of,action,time,job,piece,length,width,end\n';

  it('by a result of its name, by labels, through a link', async () => {
    const folder = jobFolder(scratch, 'racks', { 'layout.json': journal });
    symlinkSync('layout.json', join(folder, 'link.html'));
    for (const name of ['layout.json', 'link.html']) {
      expect(await words(join(folder, name))).toContain('this is a rack of offcuts, and is not written over');
      expect(readFileSync(join(folder, 'layout.json'), 'utf8')).toBe(journal);
    }
  });

  it('whose name a result has is refused before anything is worked out', async () => {
    for (const name of [
      'out/layout.json',
      'out/cuts.csv',
      'boards.csv',
      'x/board-B1.svg',
      'OUT/SHEET.HTML',
    ]) {
      const folder = job({ 'shop.csv': `setting,value\nrack,${name}\n` });
      const { code, err } = await runIn(testWorld({ cwd: folder }), 'layout', '.');
      expect([name, code, err]).toEqual([name, 2, expect.stringContaining('not for a rack')]);
      expect(existsSync(join(folder, 'out'))).toBe(false);
    }
    const folder = job();
    const { code, err } = await runIn(
      testWorld({ cwd: dirname(folder) }),
      'rack',
      'list',
      '--rack',
      'job/parts.csv',
    );
    expect([code, err]).toEqual([2, expect.stringContaining('not for a rack')]);
  });

  it('and labels go to a page, not over a table', async () => {
    const folder = job();
    const { code, err } = await runIn(testWorld({ cwd: folder }), 'rack', 'labels', '--out', 'boards.csv');
    expect([code, err]).toEqual([2, expect.stringContaining('.html')]);
  });
});
