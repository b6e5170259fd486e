import { type SpawnSyncReturns, execFileSync, spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '../rules/source-files.ts';
import { jobFolder } from './job-folder.ts';

// The real process on real files: runs the built program.

/** Runs the command with its standard output (and perhaps error) going to a file. */
function runInto(
  file: string,
  args: readonly string[],
  cwd: string,
  errorsToo = false,
): SpawnSyncReturns<string> {
  const handle = openSync(file, 'w');
  try {
    return spawnSync(process.execPath, [join(root, 'bin', 'mantelwright.js'), ...args], {
      cwd,
      stdio: ['ignore', handle, errorsToo ? handle : 'pipe'],
      encoding: 'utf8',
    });
  } finally {
    closeSync(handle);
  }
}

const full = 'mantelwright: cannot write standard output: the disk is full\n';

describe.runIf(process.platform === 'linux')('standard output on a full disk', () => {
  it('is a failure that is told, with no stack trace', () => {
    const folder = jobFolder();
    for (const args of [['--help'], ['layout', folder, '--effort', '0', '--json'], ['tally', folder]]) {
      const { status, stderr } = runInto('/dev/full', args, folder);
      expect({ args, status, stderr }).toEqual({ args, status: 2, stderr: full });
    }
  });

  it('and standard error too: the exit code still tells', () => {
    expect(runInto('/dev/full', ['layout', 'nowhere'], tmpdir(), true).status).toBe(2);
    expect(runInto('/dev/full', ['--help'], tmpdir(), true).status).toBe(2);
  });

  it('says whether the booking was made', () => {
    const folder = jobFolder();
    const home = dirname(folder);
    runInto('/dev/null', ['layout', 'job', '--effort', '0'], home);
    const put = runInto('/dev/full', ['rack', 'put', 'job'], home);
    expect([put.status, put.stderr]).toEqual([
      2,
      `rack.csv: booking 1 was made; do not make it again\n${full}`,
    ]);
    expect(readFileSync(join(home, 'rack.csv'), 'utf8')).toContain('take');
    const undo = runInto('/dev/full', ['rack', 'undo', 'job'], home);
    expect([undo.status, undo.stderr]).toEqual([
      2,
      `rack.csv: booking 2 was made; do not make it again\n${full}`,
    ]);
  });

  it('says that nothing was taken at the yard', () => {
    const folder = jobFolder({
      'boards.csv': 'board,length,width,thickness,price\nB2,48,6 1/2,4/4,20\n',
      'yard.csv': 'board,length,width,thickness,price\nY1,72,7 1/4,4/4,30\n',
      'defects.csv': null,
    });
    const before = readFileSync(join(folder, 'boards.csv'), 'utf8');
    const { status, stderr } = runInto('/dev/full', ['buy', '.', '--take', '--effort', '0'], folder);
    expect([status, stderr]).toEqual([2, `boards.csv: nothing was taken\n${full}`]);
    expect(readFileSync(join(folder, 'boards.csv'), 'utf8')).toBe(before);
  });

  it('cut short on a small disk is no success', (context) => {
    const mount = mkdtempSync(join(tmpdir(), 'mantelwright-small-'));
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=8k', 'small', mount], { stdio: 'pipe' });
    } catch {
      rmSync(mount, { recursive: true });
      context.skip('mounting a small tmpfs is not permitted here');
      return;
    }
    try {
      const folder = jobFolder({
        'parts.csv': 'part,quantity,length,width,thickness\nslat,40,10,1,3/4\n',
      });
      const { status, stderr } = runInto(
        join(mount, 'a.json'),
        ['layout', folder, '--effort', '0', '--json'],
        folder,
      );
      expect([status, stderr]).toEqual([2, full]);
      expect(readFileSync(join(mount, 'a.json')).length).toBeGreaterThan(4000);
    } finally {
      execFileSync('umount', [mount]);
      rmSync(mount, { recursive: true });
    }
  });
});

describe('standard output to a slow reader', () => {
  it('gets all of it, even through a pipe that is set not to wait', () => {
    const folder = jobFolder({ 'parts.csv': 'part,quantity,length,width,thickness\nslat,320,3,1/2,3/4\n' });
    const args = ['layout', folder, '--effort', '0', '--json'];
    // The shell's reader sleeps first, so that the pipe fills up.
    const script =
      'const {spawn}=require("child_process");' +
      `const c=spawn(process.execPath,${JSON.stringify([join(root, 'bin', 'mantelwright.js'), ...args])},{stdio:["ignore","pipe","inherit"]});` +
      'let n="";setTimeout(()=>c.stdout.on("data",d=>n+=d),1500);c.on("close",code=>{JSON.parse(n);console.log(code,n.length)});';
    const { stdout } = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' });
    const [code, length] = stdout.trim().split(' ').map(Number);
    expect(code).toBe(0);
    expect(length).toBeGreaterThan(65_536);
  });
});
