import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { jobFolder } from '../command/job-folder.ts';
import { type Ran, runIn, scratchFolder, testWorld } from '../command/test-world.ts';
import { journalAt } from './children.ts';

/** One clear board that is far too long for the one part, and a second job that an offcut of it serves. */
const first = {
  'parts.csv': 'part,quantity,length,width,thickness\nfront,1,40,5 1/2,3/4\n',
  'boards.csv':
    'board,quantity,length,width,thickness,surface,species,tone,look A,look B,price\nB1,1,96,7 1/4,4/4,rough,walnut,dark,8,3,48\n',
  'defects.csv': 'board,kind,face,from,to,low,high\nB1,sound knot,A,70,72,2,3\n',
};
const second = {
  'parts.csv': 'part,quantity,length,width,thickness,quality\nshelf,1,30,5,3/4,any\n',
  'boards.csv':
    'board,quantity,length,width,thickness,surface,species,price\nX1,1,96,7,4/4,rough,walnut,60\n',
  'defects.csv': null,
};

/** A folder with both jobs side by side, and the command run in it. */
function workshop(): { folder: string; rack: string; run: (...args: string[]) => Promise<Ran> } {
  const one = jobFolder(first);
  const folder = dirname(one);
  const two = join(folder, 'second');
  mkdirSync(two);
  for (const [name, text] of Object.entries(second)) if (text !== null) writeFileSync(join(two, name), text);
  return {
    folder,
    rack: join(folder, 'rack.csv'),
    run: (...args) => runIn(testWorld({ cwd: folder }), ...args),
  };
}

/** The layout command's answer. */
async function laidOut(run: (...args: string[]) => Promise<Ran>, ...args: string[]): Promise<Layout> {
  const { out, code, err } = await run('layout', ...args, '--json');
  expect([code, err.replace(/^.*used up by booked.*\n/, '')]).toEqual([0, '']);
  return JSON.parse(out) as Layout;
}

describe('rack put', () => {
  it('books a layout once: boards used up, offcuts on the rack, neither again', async () => {
    const { rack, run } = workshop();
    const before = await laidOut(run, 'job');
    const [offcut] = before.boards[0]?.offcuts ?? [];
    const put = await run('rack', 'put', 'job');
    expect(put.code).toBe(0);
    expect(put.out).toContain('used up  "B1"');
    expect(put.out).toContain(`kept     ${offcut?.id ?? ''}`);

    const [taken, ...kept] = journalAt(rack).entries;
    expect(taken).toMatchObject({
      occasion: { job: 'job' },
      deed: { action: 'take', name: 'B1', from: 'job' },
    });
    expect(kept.map(({ deed }) => (deed.action === 'put' ? deed.piece.name : ''))).toEqual(
      before.boards[0]?.offcuts.map(({ id }) => id),
    );

    const again = await run('rack', 'put', 'job');
    expect(again.code).toBe(2);
    expect(again.err).toContain('this layout is booked already: booking 1');
    expect(journalAt(rack).entries).toHaveLength(1 + kept.length);
    const next = await run('layout', 'job', '--json');
    expect(next.err).toContain('rack.csv: used up by booked layouts of this job: "B1"');
    // The same part once more comes from the first one's offcut; without the rack there is no wood for it.
    const boards = (JSON.parse(next.out) as Layout).boards.map(({ board }) => board);
    expect(boards).toEqual([kept[0]?.deed.action === 'put' ? kept[0].deed.piece.name : '']);
    expect((await run('layout', 'job', '--no-rack')).code).toBe(1);
  });

  it('refuses a layout that fails the check, and writes nothing', async () => {
    const { folder, run } = workshop();
    const layout = await laidOut(run, 'job');
    const moved = structuredClone(layout) as unknown as { boards: { pieces: { x: number }[] }[] };
    moved.boards[0]!.pieces[0]!.x += 1;
    writeFileSync(join(folder, 'moved.json'), JSON.stringify(moved));
    const { code, err } = await run('rack', 'put', 'job', '--layout', 'moved.json');
    expect(code).toBe(2);
    expect(err).toContain('was not booked');
    expect(() => readFileSync(join(folder, 'rack.csv'))).toThrow('ENOENT');
  });

  it('tells how to go on where there is no layout', async () => {
    const { run } = workshop();
    const { code, err } = await run('rack', 'put', 'job');
    expect(code).toBe(2);
    expect(err).toContain('mend: lay the job out first: mantelwright layout');
  });

  it('says in plain words what is wrong with the rack’s place', async () => {
    const { rack, run } = workshop();
    await laidOut(run, 'job');
    expect((await run('rack', 'put', 'job', '--rack', 'nowhere/rack.csv')).err).toMatch(
      /nowhere\/rack\.csv: no such file or folder\n$/,
    );
    mkdirSync(rack);
    const { code, err } = await run('layout', 'job');
    expect([code, err]).toEqual([2, expect.stringMatching(/^rack\.csv: this is a folder, not a file\n/)]);
  });
});

describe('a layout that was cut is booked, whatever else has changed', () => {
  it('with a part pinned to a piece of the rack', async () => {
    const { folder, rack, run } = workshop();
    await laidOut(run, 'job');
    await run('rack', 'put', 'job');
    const names = journalAt(rack).entries.flatMap(({ deed }) => (deed.action === 'put' ? [deed.piece] : []));
    const name = names.find(({ length, width }) => length > 31 * 8128 && width > 5.1 * 8128)?.name ?? '';
    const parts = `part,quantity,length,width,thickness,quality,board\nshelf,1,30,5,3/4,any,${name}\n`;
    writeFileSync(join(folder, 'second', 'parts.csv'), parts);
    const layout = await laidOut(run, 'second');
    expect(layout.boards.map(({ board }) => board)).toEqual([name]);
    const put = await run('rack', 'put', 'second');
    expect([put.code, put.err]).toEqual([0, '']);
    expect(put.out).toContain(`used up  "${name}" from the rack`);
    // The job can still be opened: its part is short now, and nothing tells the maker to list the piece as a board.
    const again = await run('layout', 'second');
    expect([again.code, again.err]).toEqual([1, '']);
    expect((await run('check', 'second', 'second/out/layout.json')).code).toBe(0);
    expect((await run('layout', 'second', '--no-rack')).code).toBe(1);
  });

  it('when a price has changed since: at those of today', async () => {
    const { folder, rack, run } = workshop();
    await laidOut(run, 'job');
    const boards = join(folder, 'job', 'boards.csv');
    writeFileSync(boards, readFileSync(boards, 'utf8').replace(',48\n', ',96\n'));
    writeFileSync(join(folder, 'job', 'shop.csv'), 'setting,value\noffcut credit,0.5\n');
    const put = await run('rack', 'put', 'job');
    expect([put.code, put.err]).toEqual([0, expect.stringMatching(/^\S*layout\.json: prices have changed/)]);
    const [taken] = journalAt(rack).entries;
    expect(taken?.deed).toMatchObject({ name: 'B1', piece: { cost: 96 } });
  });
});

describe('the rack as stock', () => {
  it('serves the next job, which pays its share; --no-rack leaves it out; check and put know it', async () => {
    const { folder, rack, run } = workshop();
    await laidOut(run, 'job');
    await run('rack', 'put', 'job');
    const layout = await laidOut(run, 'second');
    const [used] = layout.boards;
    const held = journalAt(rack).entries.flatMap(({ deed }) => (deed.action === 'put' ? [deed.piece] : []));
    expect(held.map(({ name }) => name)).toContain(used?.board);
    expect(used?.cost).toBe(held.find(({ name }) => name === used?.board)?.cost);
    // It was sawn off at both ends: no trim.
    expect(used?.area.trim).toBe(0);

    const sheet = readFileSync(join(folder, 'second', 'out', 'sheet.html'), 'utf8');
    expect(sheet).toContain(`Take from the rack: ${used?.board ?? ''}`);
    expect(sheet).toMatch(
      /That saves \$\d+\.\d\d, and \d+\.\d BF by the yard.{1,5}s tally: boards for \$[\d.]+, against \$60\.00/,
    );
    expect(sheet).toContain('New offcuts: ');

    expect((await run('check', 'second', 'second/out/layout.json')).code).toBe(0);
    const without = await laidOut(run, 'second', '--no-rack');
    expect(without.boards.map(({ board }) => board)).toEqual(['X1']);

    expect((await run('layout', 'second')).code).toBe(0);
    expect((await run('rack', 'put', 'second')).code).toBe(0);
    expect((await run('check', 'second', 'second/out/layout.json')).code).toBe(0);
    const list = await run('rack', 'list');
    expect(list.out).not.toContain(`${used?.board ?? ''}  `);
    // One undo gives the piece back, the next takes it off and gives the first job its board back.
    await run('rack', 'undo');
    expect((await run('rack', 'list')).out).toContain(used?.board);
    await run('rack', 'undo', 'job');
    expect((await run('rack', 'list')).out).toBe('rack.csv: no piece\n');
    expect((await run('layout', 'job')).code).toBe(0);
    expect((await run('rack', 'undo')).err).toContain('no booking is left to undo');
  });

  it('gives one offcut to one job only, though both were laid out with it', async () => {
    const { folder, run } = workshop();
    await laidOut(run, 'job');
    await run('rack', 'put', 'job');
    const third = join(folder, 'third');
    mkdirSync(third);
    for (const [name, text] of Object.entries(second))
      if (text !== null) writeFileSync(join(third, name), text);
    const [a, b] = [await laidOut(run, 'second'), await laidOut(run, 'third')];
    expect(a.boards[0]?.board).toBe(b.boards[0]?.board);
    expect((await run('rack', 'put', 'second')).code).toBe(0);
    const late = await run('rack', 'put', 'third');
    expect(late.code).toBe(2);
    expect(late.err).toContain('was taken off the rack before');
  });

  it('is the job’s own where its setting names one, else that of --rack, else beside the job', async () => {
    const { folder, run } = workshop();
    const other = scratchFolder();
    await laidOut(run, 'job', '--rack', join(other, 'r.csv'));
    await run('rack', 'put', 'job', '--rack', join(other, 'r.csv'));
    expect(journalAt(join(other, 'r.csv')).entries[0]?.occasion.job).toMatch(/^\.\.\/.*\/job$/);
    writeFileSync(join(folder, 'second', 'shop.csv'), `setting,value\nrack,../shop-rack.csv\n`);
    await run('layout', 'second');
    const put = await run('rack', 'put', 'second', '--rack', join(other, 'r.csv'));
    expect(put.err).toContain("the job's shop.csv names its rack: shop-rack.csv; --rack ");
    expect(journalAt(join(folder, 'shop-rack.csv')).entries[0]?.occasion.job).toBe('second');
  });

  it('tells of damaged lines by number and goes on; a file that is no rack ends the command', async () => {
    const { rack, run } = workshop();
    await laidOut(run, 'job');
    await run('rack', 'put', 'job');
    writeFileSync(rack, `${readFileSync(rack, 'utf8')}99,99,1,1,fling,,,Q,,,,,,,,,,,,,,,,,,,,,,.\n`);
    const { code, err } = await run('layout', 'second');
    expect(code).toBe(0);
    expect(err).toContain('rack.csv:4: damaged: no action is called fling; all other lines count');
    writeFileSync(rack, 'name\nx\n');
    const refused = await run('layout', 'second');
    expect(refused.code).toBe(2);
    expect(refused.err).toContain(
      'rack.csv: this is no rack: its first line lacks action, piece, length, width',
    );
    expect(readFileSync(rack, 'utf8')).toBe('name\nx\n');
  });
});

describe('rack list, take, discard, fix and labels', () => {
  it('list what is asked for', async () => {
    const { run } = workshop();
    const layout = await laidOut(run, 'job');
    await run('rack', 'put', 'job');
    const name = layout.boards[0]?.offcuts.find(({ width }) => width > 3 * 8128)?.id ?? '';
    const lists = async (...filter: string[]): Promise<boolean> =>
      (await run('rack', 'list', ...filter)).out.includes(name);
    expect(await lists()).toBe(true);
    expect(await lists('--species', 'Walnut', '--thickness', '4/4', '--long', '40', '--wide', '5')).toBe(
      true,
    );
    expect(await lists('--thickness', '3/4 in')).toBe(true);
    expect(await lists('--thickness', '5/4')).toBe(false);
    expect(await lists('--thickness', '1 in')).toBe(false);
    expect(await lists('--species', 'oak')).toBe(false);
    expect(await lists('--long', '80')).toBe(false);
    expect(await lists('--wide', '200 mm')).toBe(false);
    expect((await run('rack', 'list', '--long', 'far')).code).toBe(2);
    const { pieces } = JSON.parse((await run('rack', 'list', '--json')).out) as {
      pieces: { name: string }[];
    };
    expect(pieces.map((piece) => piece.name)).toContain(name);
  });

  it('fix, label, take and discard a piece', async () => {
    const { folder, run } = workshop();
    const layout = await laidOut(run, 'job');
    await run('rack', 'put', 'job');
    const name = layout.boards[0]?.offcuts.find(({ width }) => width > 3 * 8128)?.id ?? '';
    const fixed = await run(
      'rack',
      'fix',
      name.toLowerCase(),
      '--length',
      '20',
      '--turn',
      'end for end',
      '--tone',
      'red',
    );
    expect(fixed.out).toContain(`"${name}" is 20" x`);
    expect((await run('rack', 'fix', name, '--tone', 'red')).err).toContain('is like that already');
    expect((await run('rack', 'fix', name, '--turn', 'sideways')).code).toBe(2);
    expect((await run('rack', 'fix', name, '--look-a', '11')).code).toBe(2);
    expect((await run('rack', 'labels', '--only', name, '--out', 'l.html')).out).toBe('l.html: 1 label\n');
    const labels = readFileSync(join(folder, 'l.html'), 'utf8');
    expect(labels).toContain(`>${name}</h2>`);
    expect(labels).toContain('20 × 6 3/4 × 3/4 in');
    expect((await run('rack', 'labels', '--long', '90')).err).toContain('no piece to label');
    expect((await run('rack', 'discard', name, 'CCCCC')).err).toContain('no piece "CCCCC" is on the rack');
    expect((await run('rack', 'take', name, '--note', 'a shelf')).out).toContain(`take "${name}"`);
    expect((await run('rack', 'discard', name)).err).toContain('was taken off the rack before');
    expect(journalAt(join(folder, 'rack.csv')).notices).toEqual([]);
  });
});
