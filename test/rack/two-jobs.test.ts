import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { type Ran, runIn, scratchFolder, testWorld } from '../command/test-world.ts';
import { journalAt } from './children.ts';

const jobs = fileURLToPath(new URL('../../fixtures/jobs', import.meta.url));

describe('the story of two jobs', () => {
  it('the second uses offcuts of the first, and its sheet says what they saved against the same job without', async () => {
    const cwd = scratchFolder();
    for (const name of ['hearth', 'hearth-second'])
      cpSync(join(jobs, name), join(cwd, name), { recursive: true });
    const run = (...args: string[]): Promise<Ran> => runIn(testWorld({ cwd }), ...args);
    const layout = async (...args: string[]): Promise<Layout> => {
      const { code, out, err } = await run('layout', ...args, '--effort', '0.1', '--json');
      expect([code, err]).toEqual([0, expect.not.stringContaining('rack.csv:')]);
      return JSON.parse(out) as Layout;
    };

    // What lies in the fixtures is what plan makes of the measurements.
    expect((await run('plan', 'hearth-second', '--overwrite')).code).toBe(0);
    expect(readFileSync(join(cwd, 'hearth-second', 'parts.csv'), 'utf8')).toBe(
      readFileSync(join(jobs, 'hearth-second', 'parts.csv'), 'utf8'),
    );

    const first = await layout('hearth');
    expect(first.short).toEqual([]);
    const left = first.boards.flatMap(({ offcuts }) => offcuts.map(({ id }) => id));
    expect(left.length).toBeGreaterThan(0);
    expect((await run('rack', 'put', 'hearth')).code).toBe(0);

    const without = await layout('hearth-second', '--no-rack');
    const second = await layout('hearth-second');
    const used = second.boards.map(({ board }) => board).filter((board) => left.includes(board));
    expect(used.length).toBeGreaterThan(0);
    expect(second.short).toEqual([]);
    expect(second.proof.value).toBeLessThan(without.proof.value);

    const sheet = readFileSync(join(cwd, 'hearth-second', 'out', 'sheet.html'), 'utf8');
    const saved = (without.proof.value - second.proof.value).toFixed(2);
    for (const name of used) expect(sheet).toMatch(new RegExp(`Take from the rack: (?:(?!</li>).)*${name}`));
    expect(sheet).toContain(`That saves $${saved}`);

    expect((await run('rack', 'put', 'hearth-second')).code).toBe(0);
    const journal = journalAt(join(cwd, 'rack.csv'));
    expect(journal.notices).toEqual([]);
    const takenFromRack = journal.entries.flatMap(({ deed }) =>
      deed.action === 'take' && deed.from === 'rack' ? [deed.name] : [],
    );
    expect(takenFromRack.sort()).toEqual(used.sort());
    expect((await run('check', 'hearth', 'hearth/out/layout.json')).code).toBe(0);
    expect((await run('check', 'hearth-second', 'hearth-second/out/layout.json')).code).toBe(0);
  });
});
