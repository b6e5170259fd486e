import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/index.ts';
import { shopSettings } from '../../src/shell/read/shop-settings.ts';
import { root } from '../rules/source-files.ts';
import { jobFolder, namesBelow } from './job-folder.ts';
import { runIn, testWorld } from './test-world.ts';

const hearth = join(root, 'fixtures', 'jobs', 'hearth');
const readHearth = (name: string): string => readFileSync(join(hearth, name), 'utf8');
const wall = { 'mantel.csv': readHearth('mantel.csv'), 'legs.csv': readHearth('legs.csv') };

describe('the command line', () => {
  it('prints help with examples and every setting, its default beside it', async () => {
    const { code, out, err } = await runIn(testWorld(), '--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('mantelwright layout my-mantel');
    const lines = out.split('\n');
    for (const { name, default: byDefault } of shopSettings)
      expect(lines.some((line) => line.startsWith(`  ${name} `) && line.includes(` ${byDefault} `))).toBe(
        true,
      );
  });

  it('prints the version of the package', async () => {
    const { code, out } = await runIn(testWorld(), '--version');
    const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    expect({ code, out }).toEqual({ code: 0, out: `${manifest.version}\n` });
  });

  it.each<[string[], RegExp]>([
    [['layuot', 'x'], /unknown command 'layuot'[\s\S]*layout/],
    [['layout', 'x', '--sed', '1'], /unknown option '--sed'[\s\S]*--seed/],
    [['layout'], /missing required argument/],
    [['layout', 'x', 'y'], /too many arguments/],
    [['layout', 'x', '--seed', '-1'], /0 or more|missing/],
    [['layout', 'x', '--seed', '1.5'], /whole number, 0 or more/],
    [['layout', 'x', '--effort', 'lots'], /number, 0 or more/],
    [['layout', 'x', '--seconds', '1e999'], /number, 0 or more/],
    [[], /Usage: mantelwright/],
  ])('%j is refused with what would be right', async (args, message) => {
    const { code, out, err } = await runIn(testWorld(), ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
  });

  it('tells a fault of its own in two lines, and where it arose only when asked', async () => {
    const broken = {
      write: () => {
        throw new Error('the sink broke\nand more');
      },
    };
    const plain = await runIn(testWorld({ stdout: broken }), '--help');
    expect(plain.code).toBe(70);
    expect(plain.err).toMatch(
      /^mantelwright: a fault of the program.*the sink broke\n {2}please report.*\n$/,
    );
    const traced = await runIn(testWorld({ stdout: broken, env: { MANTELWRIGHT_TRACE: '1' } }), '--help');
    expect(traced.err).toMatch(/^\s+at /m);
  });
});

describe('new', () => {
  it('makes the example, which can be laid out as it is', async () => {
    const world = testWorld();
    expect(await runIn(world, 'new', 'my mantel')).toMatchObject({ code: 0, err: '' });
    expect(world.out()).toMatch(
      /plan "my mantel"[\s\S]*buy "my mantel"[\s\S]*layout "my mantel"[\s\S]*rack put "my mantel"/,
    );
    const made = namesBelow(join(world.cwd, 'my mantel'));
    expect(made).toEqual(
      ['README.txt', 'boards.csv', 'defects.csv', 'legs.csv', 'mantel.csv', 'parts.csv', 'shop.csv'].sort(),
    );
    const planned = await runIn(testWorld({ cwd: world.cwd }), 'plan', 'my mantel');
    expect(planned).toMatchObject({ code: 0, err: '' });
  });

  it('makes blank files that only need filling in', async () => {
    const world = testWorld();
    expect((await runIn(world, 'new', 'job', '--blank')).code).toBe(0);
    const folder = join(world.cwd, 'job');
    expect(namesBelow(folder)).toEqual(
      ['README.txt', 'boards.csv', 'defects.csv', 'legs.csv', 'mantel.csv', 'shop.csv'].sort(),
    );
    const told = readFileSync(join(folder, 'README.txt'), 'utf8');
    for (const name of namesBelow(folder).filter((one) => one.endsWith('.csv'))) expect(told).toContain(name);
    expect(told).not.toContain('cherry');
    const unfilled = await runIn(testWorld(), 'plan', folder);
    expect(unfilled.code).toBe(2);
    expect(unfilled.err).toMatch(/face height/);
    for (const [name, text] of Object.entries(wall)) writeFileSync(join(folder, name), text);
    expect(await runIn(testWorld(), 'plan', folder)).toMatchObject({ code: 0, err: '' });
    const laid = await runIn(testWorld(), 'layout', folder, '--json');
    expect(laid.code).toBe(1);
    expect((JSON.parse(laid.out) as Layout).boards).toEqual([]);
  });

  it('overwrites nothing', async () => {
    const world = testWorld();
    mkdirSync(join(world.cwd, 'job'));
    writeFileSync(join(world.cwd, 'job', 'boards.csv'), 'mine');
    const { code, err, out } = await runIn(world, 'new', 'job');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/already holds boards\.csv/);
    expect(namesBelow(join(world.cwd, 'job'))).toEqual(['boards.csv']);
    expect(readFileSync(join(world.cwd, 'job', 'boards.csv'), 'utf8')).toBe('mine');
  });
});

describe('plan', () => {
  it('writes parts.csv and the drawings, and reports', async () => {
    const folder = jobFolder({ ...wall, 'parts.csv': null });
    const { code, out, err } = await runIn(testWorld(), 'plan', folder);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/front facing/);
    expect(namesBelow(join(folder, 'out'))).toEqual(['mantel-plan.svg', 'mantel-section.svg']);
    expect(readFileSync(join(folder, 'parts.csv'), 'utf8')).toMatch(/^part,quantity,length,width,thickness/);
    expect(await runIn(testWorld(), 'plan', folder)).toMatchObject({ code: 0, err: '' });
  });

  it('keeps a hand-edited parts.csv unless told otherwise', async () => {
    const folder = jobFolder({ ...wall });
    const mine = readFileSync(join(folder, 'parts.csv'), 'utf8');
    const before = namesBelow(folder);
    const refused = await runIn(testWorld(), 'plan', folder);
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(/--overwrite/);
    expect(refused.out).toMatch(/front facing/);
    expect(readFileSync(join(folder, 'parts.csv'), 'utf8')).toBe(mine);
    expect(namesBelow(folder).filter((name) => !name.startsWith('out'))).toEqual(before);
    expect(await runIn(testWorld(), 'plan', folder, '--overwrite')).toMatchObject({ code: 0, err: '' });
    const planned = readFileSync(join(folder, 'parts.csv'), 'utf8');
    expect(planned).toMatch(/^front facing,/m);
    // Rows of one's own stay.
    expect(planned).toMatch(/^front,1,40,5 1\/2,3\/4,/m);
  });

  it('breaks the run of the facing where no board holds it, and says where', async () => {
    const whole = jobFolder({
      ...wall,
      'parts.csv': null,
      'boards.csv': readHearth('boards.csv'),
      'defects.csv': null,
    });
    expect((await runIn(testWorld(), 'plan', whole)).out).not.toMatch(/No board at hand/);
    expect(readFileSync(join(whole, 'parts.csv'), 'utf8').match(/,facing,/g)).toHaveLength(5);
    const boards = 'board,length,width,thickness\nB1,93,9,4/4\nB2,93,9,4/4\n';
    const short = jobFolder({ ...wall, 'parts.csv': null, 'boards.csv': boards, 'defects.csv': null });
    const { out } = await runIn(testWorld(), 'plan', short);
    expect(out).toContain('left cap | left return facing + front facing | right return facing + right cap');
    expect(readFileSync(join(short, 'parts.csv'), 'utf8').match(/,facing,/g)).toHaveLength(5);
  });

  it('is laid out with its run broken on boards that were typed in after the plan, and says so', async () => {
    const folder = jobFolder({ ...wall, 'parts.csv': null, 'boards.csv': null, 'defects.csv': null });
    expect((await runIn(testWorld(), 'plan', folder)).code).toBe(0);
    const rows = Array.from({ length: 9 }, (_, index) => `B${index + 1},96,9,4/4\n`);
    writeFileSync(join(folder, 'boards.csv'), `board,length,width,thickness\n${rows.join('')}`);
    const { code, out } = await runIn(testWorld(), 'layout', folder, '--effort', '0');
    expect(code).toBe(0);
    expect(out).toMatch(
      /facing is cut as left cap \+ left return facing \| front facing .*: no board holds .* clear/,
    );
    expect(out).toMatch(/Whole, it takes one more board, at least/);
    expect((await runIn(testWorld(), 'check', folder, join(folder, 'out', 'layout.json'))).code).toBe(0);
  });

  it('says what cannot be built', async () => {
    const folder = jobFolder({
      ...wall,
      'legs.csv': 'leg,along wall,projection,wall corner\nfront,60,-3,\n',
    });
    const { code, out, err } = await runIn(testWorld(), 'plan', folder);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/projection/);
  });

  it('asks for the measurements when there are none', async () => {
    const { code, err } = await runIn(testWorld(), 'plan', jobFolder());
    expect(code).toBe(2);
    expect(err).toMatch(/mantel\.csv/);
  });
});

describe('layout', () => {
  it('writes the sheet, the tables, the answer and a drawing for each board, and says where', async () => {
    const folder = jobFolder();
    const { code, out, err } = await runIn(testWorld({ cwd: folder }), 'layout', '.');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('sheet: out/sheet.html\n');
    const written = namesBelow(join(folder, 'out'));
    const layout = JSON.parse(readFileSync(join(folder, 'out', 'layout.json'), 'utf8')) as Layout;
    const drawings = layout.boards.map(({ board }) => `board-${board}.svg`);
    expect(written).toEqual([...drawings, 'cuts.csv', 'layout.csv', 'layout.json', 'sheet.html'].sort());
    expect(await runIn(testWorld(), 'check', folder, join(folder, 'out', 'layout.json'))).toMatchObject({
      code: 0,
      err: '',
    });
  });

  it('takes away drawings of boards that are no longer cut, and nothing else', async () => {
    const folder = jobFolder();
    await runIn(testWorld(), 'layout', folder, '--effort', '0');
    writeFileSync(join(folder, 'out', 'board-mine.svg'), 'mine');
    writeFileSync(join(folder, 'parts.csv'), 'part,quantity,length,width,thickness\n');
    await runIn(testWorld(), 'layout', folder, '--effort', '0');
    expect(namesBelow(join(folder, 'out')).filter((name) => name.endsWith('.svg'))).toEqual([
      'board-mine.svg',
    ]);
  });

  it('prints one JSON object and nothing else with --json, on a terminal too', async () => {
    const { code, out } = await runIn(testWorld({ isTerminal: true }), 'layout', jobFolder(), '--json');
    expect(code).toBe(0);
    expect(out.endsWith('}\n')).toBe(true);
    expect((JSON.parse(out) as Layout).format).toBe('mantelwright layout 1');
  });

  it('plans first when there is no parts.csv', async () => {
    const folder = jobFolder({
      'parts.csv': null,
      'mantel.csv': 'setting,value\nface height,5\nthickness,3/4\nleft end,wall\nright end,wall\n',
      'legs.csv': 'leg,along wall,projection,wall corner\nfront,40,4,\n',
      'boards.csv': 'board,length,width,thickness\nB1,96,10,4/4\n',
    });
    const { code, out, err } = await runIn(testWorld(), 'layout', folder, '--json');
    expect(code).toBe(0);
    expect(err).toMatch(/parts\.csv: 3 parts, from the measurements/);
    expect((JSON.parse(out) as Layout).short).toEqual([]);
    expect(namesBelow(folder)).toContain('parts.csv');
    expect(namesBelow(join(folder, 'out'))).toContain('mantel-plan.svg');
    const sheet = readFileSync(join(folder, 'out', 'sheet.html'), 'utf8');
    expect(sheet).toContain('Distance from the fire');
    expect(sheet).toContain('The mantel in section');
  });

  it('leaves the mantel out of the sheet when the parts are no longer its own', async () => {
    const folder = jobFolder({ ...wall });
    expect((await runIn(testWorld(), 'layout', folder, '--keep-parts')).code).toBe(0);
    expect(readFileSync(join(folder, 'out', 'sheet.html'), 'utf8')).not.toContain('The mantel in section');
  });

  it('gives the same answer for the same seed and effort', async () => {
    const folder = jobFolder();
    const once = await runIn(testWorld(), 'layout', folder, '--seed', '3', '--json');
    const again = await runIn(testWorld(), 'layout', folder, '--seed', '3', '--json');
    expect(again.out).toBe(once.out);
  });

  it('keeps the best so far when interrupted, checked as any other', async () => {
    const folder = jobFolder();
    const pressed = testWorld({
      onInterrupt: (stop) => {
        stop();
        return () => undefined;
      },
    });
    const { code, out } = await runIn(pressed, 'layout', folder);
    expect(code).toBe(0);
    expect(out).toMatch(/stopped by Ctrl-C/);
    const checked = await runIn(testWorld(), 'check', folder, join(folder, 'out', 'layout.json'));
    expect(checked.code).toBe(0);
  });

  it('keeps the best so far at the time limit', async () => {
    const clock = { now: 0 };
    const world = testWorld({ now: () => (clock.now += 1000) });
    const { code, out } = await runIn(world, 'layout', jobFolder(), '--seconds', '1');
    expect(code).toBe(0);
    expect(out).toMatch(/stopped at the time limit/);
  });
});

describe('check', () => {
  it.each<[string, string, RegExp]>([
    ['no JSON', 'layout', /not JSON/],
    ['another object', '{"format":"else"}', /expected "mantelwright layout 1"/],
    ['null', 'null', /expected/],
  ])('refuses %s', async (_name, text, message) => {
    const folder = jobFolder({ 'layout.json': text });
    const { code, out, err } = await runIn(testWorld({ cwd: folder }), 'check', '.', 'layout.json');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
  });

  it('refuses a layout that is not there', async () => {
    const { code, err } = await runIn(testWorld(), 'check', jobFolder(), 'none.json');
    expect(code).toBe(2);
    expect(err).toMatch(/none\.json: no such file/);
  });

  it('finds a piece moved by one tick', async () => {
    const folder = jobFolder();
    const { out } = await runIn(testWorld(), 'layout', folder, '--effort', '0', '--json');
    const layout = JSON.parse(out) as { boards: { pieces: { x: number }[] }[] };
    const piece = layout.boards[0]?.pieces[0];
    if (piece === undefined) throw new Error('no piece to move');
    piece.x += 1;
    writeFileSync(join(folder, 'moved.json'), JSON.stringify(layout));
    const { code, err } = await runIn(testWorld({ cwd: folder }), 'check', '.', 'moved.json');
    expect(code).toBe(2);
    expect(err).toMatch(/^moved\.json: board B/m);
  });
});
