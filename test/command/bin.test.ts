import { type ChildProcess, spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/index.ts';
import { root } from '../rules/source-files.ts';
import { jobFolder } from './job-folder.ts';

// The real process: what only `bin` does. It runs the built files, as npm test has just built them.

interface Ended {
  readonly code: number | null;
  readonly signal: string | null;
  readonly out: string;
  readonly err: string;
}

function start(...args: string[]): ChildProcess {
  return spawn(process.execPath, [join(root, 'bin', 'mantelwright.js'), ...args], { stdio: 'pipe' });
}

async function ended(child: ChildProcess): Promise<Ended> {
  let out = '';
  let err = '';
  child.stdout?.on('data', (text) => (out += String(text)));
  child.stderr?.on('data', (text) => (err += String(text)));
  return new Promise((resolve) => child.on('close', (code, signal) => resolve({ code, signal, out, err })));
}

/** Many kinds of part: a search that would go on for long. */
function longJob(): string {
  const parts = Array.from({ length: 40 }, (_, i) => `p${i},2,${11 + i / 8},${2 + (i % 7) / 4},3/4`);
  const boards = Array.from({ length: 30 }, (_, i) => `b${i},${60 + i},${5 + (i % 9) / 2},4/4,${20 + i}`);
  return jobFolder({
    'parts.csv': `part,quantity,length,width,thickness\n${parts.join('\n')}\n`,
    'boards.csv': `board,length,width,thickness,price\n${boards.join('\n')}\n`,
    'defects.csv': null,
  });
}

describe('the process', () => {
  it('prints help, and ends with the exit code', async () => {
    expect(await ended(start('--help'))).toMatchObject({ code: 0, err: '' });
    expect(await ended(start('layout', 'nowhere'))).toMatchObject({ code: 2, out: '' });
  });

  it('finishes its files when the reader of stdout goes away', async () => {
    const folder = jobFolder();
    const child = start('layout', folder, '--effort', '0', '--json');
    child.stdout?.destroy();
    const { code, err } = await ended(child);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(await ended(start('check', folder, join(folder, 'out', 'layout.json')))).toMatchObject({
      code: 0,
    });
  });

  it('ends at Ctrl-C with the best layout so far', { timeout: 300_000 }, async () => {
    const folder = longJob();
    const { code, out, err } = await interrupted(2000, folder);
    expect(code).toBe(0);
    expect(err).toMatch(/stopped by Ctrl-C/);
    expect((JSON.parse(out) as Layout).short).toEqual([]);
    writeFileSync(join(folder, 'layout.json'), out);
    expect(await ended(start('check', folder, join(folder, 'layout.json')))).toMatchObject({ code: 0 });
  });
});

/** Presses Ctrl-C after a while; where that came before the solve had all laid out (a slow machine), after twice as long. */
async function interrupted(milliseconds: number, folder: string): Promise<Ended> {
  const child = start('layout', folder, '--effort', '100000', '--json');
  setTimeout(() => child.kill('SIGINT'), milliseconds);
  const result = await ended(child);
  const isTooSoon = result.signal === 'SIGINT' || result.code === 1 || result.code === 2;
  return isTooSoon && milliseconds < 100_000 ? interrupted(2 * milliseconds, folder) : result;
}
