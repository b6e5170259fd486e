import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/index.ts';
import { namesBelow } from './job-folder.ts';
import { type Ran, runIn, scratchFolder, testWorld } from './test-world.ts';

interface Place {
  readonly folder: string;
  run(...args: string[]): Promise<Ran>;
  read(name: string): string;
  change(name: string, from: string | RegExp, to: string): void;
}

/** The example as `new` makes it, and what a person does in it. */
async function example(): Promise<Place> {
  const cwd = scratchFolder();
  const run = (...args: string[]): Promise<Ran> => runIn(testWorld({ cwd }), ...args);
  expect(await run('new', 'job')).toMatchObject({ code: 0, err: '' });
  const folder = join(cwd, 'job');
  const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
  return {
    folder,
    run,
    read,
    change: (name, from, to) => {
      const text = read(name);
      const changed = text.replace(from, to);
      expect(changed).not.toBe(text);
      writeFileSync(join(folder, name), changed);
    },
  };
}

/** The front as a tape finds it a second time: 4 inches more. */
const widen = ({ change }: Place): void => change('legs.csv', /^front,([^,]+)/m, 'front,64');
const ownRow = `shelf,1,20,5,3/4${','.repeat(14)}mine,`;
const quick = ['--effort', '0'];
const pieceLength = (text: string, name: string): number =>
  (JSON.parse(text) as Layout).boards
    .flatMap(({ pieces }) => pieces)
    .filter(({ part }) => part === name)
    .reduce((sum, { length }) => sum + length, 0);

describe('measurements that changed after the plan', () => {
  it.each([['layout'], ['faces'], ['buy'], ['check', 'none.json'], ['rack put']])(
    'stop %s, which lists old and new and two mends, and touches no file',
    async (command, ...more) => {
      const job = await example();
      widen(job);
      const [parts, names] = [job.read('parts.csv'), namesBelow(job.folder)];
      const { code, out, err } = await job.run(...command.split(' '), 'job', ...more);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toMatch(/front facing +length \S+( \S+)?, now \S+/);
      expect(err).toMatch(/front top +length \S+.*, now /);
      expect(err).toMatch(/mend: take the new plan: mantelwright plan job\n/);
      expect(err).toContain('--keep-parts');
      expect(job.read('parts.csv')).toBe(parts);
      expect(namesBelow(job.folder)).toEqual(names);
    },
  );

  it('are mended by plan, which says old and new, and leaves what the person wrote', async () => {
    const job = await example();
    job.change('parts.csv', /^(front top,)1(,.*?,)yes,/m, '$12$25,stain');
    job.change('parts.csv', /$/, `${ownRow}\n`);
    const before = job.read('parts.csv');
    widen(job);
    const { code, out, err } = await job.run('plan', 'job');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/planned anew\n(?: .*\n)*? {2}front facing +length .*, now /);
    const after = job.read('parts.csv');
    expect(after).toMatch(/^front top,2,.*,5,stain,/m);
    expect(after.split('\n')).toContain(ownRow);
    expect(after.split('\n')).toHaveLength(before.split('\n').length);
    expect(await job.run('plan', 'job')).toMatchObject({ code: 0, err: '' });
    expect(job.read('parts.csv')).toBe(after);
    expect((await job.run('layout', 'job', ...quick)).err).not.toContain('no longer follow');
  });

  it('are mended by layout --replan', async () => {
    const job = await example();
    widen(job);
    const { code, out, err } = await job.run('layout', 'job', '--replan', '--json', ...quick);
    expect(code).not.toBe(2);
    expect(err).toMatch(/the new plan is taken\n(?: .*\n)*? {2}front facing/);
    const planned = await example();
    widen(planned);
    await planned.run('plan', 'job');
    expect(job.read('parts.csv')).toBe(planned.read('parts.csv'));
    expect(pieceLength(out, 'front facing')).toBe(
      pieceLength((await planned.run('layout', 'job', '--json', ...quick)).out, 'front facing'),
    );
  });

  it('are left aside with --keep-parts, by layout and then by check and rack put', async () => {
    const job = await example();
    const before = await job.run('layout', 'job', '--json', ...quick);
    widen(job);
    const kept = await job.run('layout', 'job', '--json', '--keep-parts', ...quick);
    expect(kept).toMatchObject({ code: before.code, out: before.out });
    expect(await job.run('check', 'job', 'job/out/layout.json', '--keep-parts')).toMatchObject({ code: 0 });
    expect(await job.run('rack', 'put', 'job', '--keep-parts')).toMatchObject({ code: 0, err: '' });
    expect(await job.run('layout', 'job', '--keep-parts', '--replan')).toMatchObject({ code: 2 });
  });

  it('that cannot be built stop it, too', async () => {
    const job = await example();
    job.change('mantel.csv', /^face height,.*$/m, 'face height,1,');
    expect((await job.run('layout', 'job')).code).toBe(2);
  });
});

describe('sizes changed by hand in planned rows', () => {
  it('stay, while plan reports and draws all the same, until --overwrite', async () => {
    const job = await example();
    job.change('parts.csv', /^front top,1,[^,]+/m, 'front top,1,50');
    const parts = job.read('parts.csv');
    const stays = await job.run('plan', 'job');
    expect(stays.code).toBe(2);
    expect(stays.out).toMatch(/front facing/);
    expect(namesBelow(join(job.folder, 'out'))).toEqual(['mantel-plan.svg', 'mantel-section.svg']);
    expect(stays.err).toMatch(/front top +length 50, changed by hand, now /);
    expect(job.read('parts.csv')).toBe(parts);
    const stopped = await job.run('layout', 'job');
    expect(stopped).toMatchObject({ code: 2, out: '' });
    expect(stopped.err).toContain('mantelwright plan job --overwrite');
    expect(await job.run('plan', 'job', '--overwrite')).toMatchObject({ code: 0, err: '' });
    expect(job.read('parts.csv')).not.toMatch(/^front top,1,50,/m);
    expect((await job.run('layout', 'job', ...quick)).code).toBe(0);
  });

  it('are free in a row whose cell "planned" was emptied', async () => {
    const job = await example();
    job.change('parts.csv', /^(front top,1,)[^,]+(.*,)"?length .*$/m, '$150$2');
    const { out, err } = await job.run('layout', 'job', '--json', ...quick);
    expect(err).not.toContain('no longer follow');
    // Glued up half an inch over-long.
    expect(pieceLength(out, 'front top') % (50.5 * 8128)).toBe(0);
  });
});

describe('a parts.csv that does not say which rows are planned', () => {
  const unmark = (job: Place): void => {
    const rows = job.read('parts.csv').split('\n');
    const bare = rows.map((row) => row.replace(/,"?(?:planned|length .*)$/, '')).join('\n');
    writeFileSync(join(job.folder, 'parts.csv'), bare);
  };

  it('is an error with the mend, which works', async () => {
    const job = await example();
    const marked = job.read('parts.csv');
    unmark(job);
    for (const command of ['layout', 'plan']) {
      const { code, err } = await job.run(command, 'job');
      expect(code).toBe(2);
      expect(err).toMatch(/the column "planned" is missing[\s\S]*mantelwright plan job --overwrite/);
    }
    expect((await job.run('plan', 'job', '--overwrite')).code).toBe(0);
    expect(job.read('parts.csv')).toBe(marked);
  });

  it('needs no such column without measurements', async () => {
    const job = await example();
    unmark(job);
    const bare = scratchFolder();
    for (const name of ['parts.csv', 'boards.csv', 'shop.csv'])
      writeFileSync(join(bare, name), job.read(name));
    expect((await runIn(testWorld(), 'layout', bare, ...quick)).code).toBe(0);
  });

  it('a record that was scribbled over is an error with its place', async () => {
    const job = await example();
    job.change('parts.csv', /length [^|]*\|/, 'lenght 3 |');
    const { code, err } = await job.run('layout', 'job');
    expect(code).toBe(2);
    expect(err).toMatch(/^parts\.csv:2:\d+: planned: /m);
  });
});

describe('boards that come later', () => {
  it('change no part and stop nobody; a facing wider than all of them may be glued up, and that is said', async () => {
    const job = await example();
    const boards = job.read('boards.csv');
    writeFileSync(join(job.folder, 'boards.csv'), 'board,quantity,length,width,thickness\nN,30,100,6,4/4\n');
    writeFileSync(join(job.folder, 'defects.csv'), 'board,kind,face,from,to,low,high\n');
    const narrow = await job.run('layout', 'job', ...quick);
    expect(narrow.code).toBe(0);
    expect(narrow.err).toMatch(
      /with the boards at hand "front facing" may be made in 2 strips or fewer, not 1/,
    );
    writeFileSync(join(job.folder, 'boards.csv'), boards);
    expect(await job.run('layout', 'job', ...quick)).toMatchObject({ code: 0, err: '' });
  });
});

describe('parts.csv of a place that writes 63,5', () => {
  it('keeps its semicolons, its commas and what was written in it', async () => {
    const job = await example();
    const [header, ...rows] = job.read('parts.csv').trimEnd().split('\n');
    const shop = 'setting;value\nunits;mm\n';
    writeFileSync(join(job.folder, 'shop.csv'), shop);
    writeFileSync(
      join(job.folder, 'mantel.csv'),
      'setting;value\nface height;160\nthickness;20,5\nledger section;20 x 70\n',
    );
    writeFileSync(join(job.folder, 'boards.csv'), 'board;length;width;thickness\nA;2600;240;27 mm\n');
    writeFileSync(join(job.folder, 'defects.csv'), 'board;kind;face;from;to;low;high\n');
    writeFileSync(
      join(job.folder, 'legs.csv'),
      'leg;along wall;projection;wall corner\nleft return;292,5;127;90\nfront;1524,5;190;90\nright return;228;127;\n',
    );
    expect(header).toMatch(/planned$/);
    expect(rows.length).toBeGreaterThan(5);
    writeFileSync(
      join(job.folder, 'parts.csv'),
      '\uFEFFnote;part;quantity;length;width;thickness;planned\r\nmine;shelf;1;500,25;100;20;\r\n',
    );
    expect((await job.run('plan', 'job')).code).toBe(0);
    const planned = job.read('parts.csv');
    expect(planned).toMatch(/^\uFEFFnote;part;/);
    expect(planned).toContain('mine;shelf;1;500,25;100;20;');
    expect(planned.split('\r\n').length).toBeGreaterThan(10);
    expect(planned).toMatch(/;front ledger;1;1524,5;/);
    job.change('legs.csv', '1524,5', '1600,5');
    expect((await job.run('layout', 'job')).err).toMatch(/front ledger +length 1524\.5, now 1600\.5/);
    expect((await job.run('plan', 'job')).code).toBe(0);
    const again = job.read('parts.csv').split('\r\n');
    const old = planned.split('\r\n');
    expect(again).toHaveLength(old.length);
    const changed = again.filter((row, index) => row !== old[index]);
    expect(changed.length).toBeGreaterThan(0);
    expect(changed.every((row) => row.includes(';front '))).toBe(true);
  });
});
