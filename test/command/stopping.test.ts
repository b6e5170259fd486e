import { type ChildProcess, spawn } from 'node:child_process';
import { setTimeout } from 'node:timers/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '../rules/source-files.ts';
import { jobFolder } from './job-folder.ts';

// Real processes, of the built files, at jobs whose very first step would take many minutes. What is asserted is that
// and how they end, never when: a process that waits for its step outlasts the test.

/** A size in tenths of a millimetre, from a sequence without a common divisor. */
function tenths(least: number, most: number, at: number): string {
  return (least + ((at * 7919) % (10 * (most - least))) / 10).toFixed(1);
}

/** Boards and parts of tenths of a millimetre, in two stages. */
function slowJob(files: Record<string, string | null> = {}): string {
  const parts = Array.from(
    { length: 40 },
    (_, i) => `p${i},${1 + (i % 3)},${tenths(100, 900, i + 1)},${tenths(30, 140, i + 3)},19,1`,
  );
  const boards = Array.from(
    { length: 60 },
    (_, i) => `b${i},${tenths(2000, 4000, i + 1)},${tenths(150, 300, i + 5)},25,S4S,30`,
  );
  return jobFolder({
    'shop.csv': 'setting,value\nunits,mm\nstages,2\n',
    'parts.csv': `part,quantity,length,width,thickness,show\n${parts.join('\n')}\n`,
    'boards.csv': `board,length,width,thickness,surface,price\n${boards.join('\n')}\n`,
    'defects.csv': null,
    ...files,
  });
}

interface Ended {
  readonly code: number | null;
  readonly signal: string | null;
  readonly err: string;
}

function start(...args: string[]): { readonly child: ChildProcess; readonly ended: Promise<Ended> } {
  const child = spawn(process.execPath, [join(root, 'bin', 'mantelwright.js'), ...args], { stdio: 'pipe' });
  let err = '';
  child.stdout.resume();
  child.stderr.on('data', (text) => (err += String(text)));
  const ended = new Promise<Ended>((resolve) => {
    child.on('close', (code, signal) => {
      resolve({ code, signal, err });
    });
  });
  return { child, ended };
}

const yard =
  'board,length,width,thickness,surface,price\nY1,3000.1,200.3,25,S4S,30\nY2,2900.7,210.9,25,S4S,31\n';

describe('a time limit in the midst of one long step', () => {
  it.each(['layout', 'faces', 'buy'])(
    '%s ends, with what there is or with word that there is nothing',
    async (command) => {
      const folder = slowJob(command === 'buy' ? { 'yard.csv': yard } : {});
      const { code, err } = await start(command, folder, '--effort', '0', '--seconds', '1').ended;
      expect([0, 1, 2]).toContain(code);
      if (code === 2) expect(err).toMatch(/stopped at the time limit, and nothing was found yet/);
    },
    240_000,
  );
});

describe('Ctrl-C in the midst of one long step', () => {
  it('ends with what there is or with word that there is nothing', async () => {
    const { child, ended } = start('layout', slowJob(), '--effort', '0');
    await setTimeout(4000);
    child.kill('SIGINT');
    const { code, signal, err } = await ended;
    // Before the work has begun it ends the process as it would any other.
    if (signal === null) expect(err).toMatch(/stopped by Ctrl-C/);
    else expect([code, signal]).toEqual([null, 'SIGINT']);
  }, 240_000);

  it('twice ends it at once', async () => {
    const { child, ended } = start('layout', slowJob(), '--effort', '0');
    await setTimeout(4000);
    child.kill('SIGINT');
    await setTimeout(100);
    child.kill('SIGINT');
    const { code, signal } = await ended;
    expect([null, 'SIGINT', 2]).toEqual(expect.arrayContaining([code, signal]));
  }, 240_000);
});
