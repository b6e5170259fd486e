import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { Layout } from '../../src/index.ts';
import { jobFolder, namesBelow, plainJob } from './job-folder.ts';
import { type Ran, runIn, scratchFolder, testWorld } from './test-world.ts';

/** Lays a job out quickly, its files in a folder of their own. */
async function layOut(folder: string, ...more: string[]): Promise<Ran & { readonly outFolder: string }> {
  const outFolder = join(scratchFolder(), 'out');
  const ran = await runIn(testWorld(), 'layout', folder, '--effort', '0', '--out', outFolder, ...more);
  expect(ran.err).not.toMatch(/^\s+at /m);
  return { ...ran, outFolder };
}

const layoutOf = (ran: Ran): Layout => JSON.parse(ran.out) as Layout;

/** What a layout is like whatever the names and the spelling of its files. */
const figures = (ran: Ran): unknown => {
  const { boards, totals } = layoutOf(ran);
  return { totals, sizes: boards.map(({ pieces }) => pieces.map(({ length, width }) => [length, width])) };
};

describe('the plain job', () => {
  it('is laid out whole', async () => {
    const ran = await layOut(jobFolder(), '--json');
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(layoutOf(ran).short).toEqual([]);
  });
});

describe('spreadsheets of all kinds give the same layout', () => {
  const respelt = (change: (text: string) => string): Record<string, string> =>
    Object.fromEntries(Object.entries(plainJob).map(([name, text]) => [name, change(text)]));
  const decimals = (text: string): string =>
    text
      .replace(/(\d+) 1\/2/g, '$1.5')
      .replace(/(\d+) 1\/4/g, '$1.25')
      .replace(/\b3\/4/g, '0.75')
      .replace(/1\/8/g, '0.125');
  it.each([
    ['with a byte-order mark', respelt((text) => `\uFEFF${text}`)],
    ['with CRLF', respelt((text) => text.replaceAll('\n', '\r\n'))],
    ['with CR', respelt((text) => text.replaceAll('\n', '\r'))],
    ['without a last line end', respelt((text) => text.trimEnd())],
    ['with decimal points', respelt(decimals)],
    ['with semicolons', respelt((text) => text.replaceAll(',', ';'))],
    [
      'with semicolons and decimal commas',
      respelt((text) => decimals(text.replaceAll(',', ';')).replaceAll('.', ',')),
    ],
    ['with tabs and quotes', respelt((text) => text.replace(/[^,\n]+/g, '"$&"').replaceAll(',', '\t'))],
  ])('%s', async (_name, changes) => {
    const plain = await layOut(jobFolder(), '--json');
    const ran = await layOut(jobFolder(changes), '--json');
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(figures(ran)).toEqual(figures(plain));
  });
});

describe('bad input is refused with the place and the mend, and nothing is written', () => {
  const parts = (row: string): Record<string, string> => ({
    'parts.csv': `part,quantity,length,width,thickness\n${row}\n`,
  });
  const boards = (row: string): Record<string, string> => ({
    'boards.csv': `board,length,width,thickness\nB1,72,7,4/4\n${row}\n`,
    'defects.csv': '',
  });
  it.each<[string, Record<string, string | Buffer | null>, RegExp]>([
    ['empty parts', { 'parts.csv': '' }, /^parts\.csv.*empty/],
    ['empty boards', { 'boards.csv': '' }, /^boards\.csv.*empty/],
    ['empty shop', { 'shop.csv': '' }, /^shop\.csv.*empty/],
    ['empty defects', { 'defects.csv': '' }, /^defects\.csv.*empty/],
    ['no boards.csv', { 'boards.csv': null }, /^boards\.csv/],
    ['no parts.csv and no mantel.csv', { 'parts.csv': null }, /^parts\.csv/],
    ['a part twice', parts('a,1,20,3,3/4\na,1,10,3,3/4'), /^parts\.csv:3:1: /],
    ['a negative length', parts('a,1,-20,3,3/4'), /^parts\.csv:2:5: /],
    ['a width of zero', parts('a,1,20,0,3/4'), /^parts\.csv:2:8: /],
    ['a thickness of zero', parts('a,1,20,3,0'), /^parts\.csv:2:10: /],
    ['a negative quantity', parts('a,-1,20,3,3/4'), /^parts\.csv:2:3: /],
    ['words for a length', parts('a,1,long,3,3/4'), /^parts\.csv:2:5: /],
    ['a board of no length', boards('B2,0,6,4/4'), /^boards\.csv:3:4: /],
    ['a board twice', boards('B1,50,6,4/4'), /^boards\.csv:3:1: /],
    [
      'an unknown column',
      { 'boards.csv': 'board,lenght,width,thickness\nB1,72,7,4/4\n' },
      /"lenght"[\s\S]*length/,
    ],
    ['an unknown setting', { 'shop.csv': 'setting,value\nrip curve,1/8\n' }, /"rip curve"[\s\S]*rip kerf/],
    ['a negative kerf', { 'shop.csv': 'setting,value\nrip kerf,-1/8\n' }, /^shop\.csv:2:10: /],
    [
      "a defect past its board's end",
      { 'defects.csv': 'board,kind,face,from,to,low,high\nB1,check,A,70,73,0,2\n' },
      /^defects\.csv:2:15: /,
    ],
    [
      'a defect of a board that is not there',
      { 'defects.csv': 'board,kind,face,from,to,low,high\nB9,check,A,0,3,0,2\n' },
      /^defects\.csv:2:1: /,
    ],
    ['a picture', { 'parts.csv': Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 74, 70]) }, /^parts\.csv/],
    ['a quote never closed', parts('"a,1,20,3,3/4'), /^parts\.csv:2:1: /],
  ])('%s', async (_name, changes, message) => {
    const folder = jobFolder(changes);
    const before = namesBelow(folder);
    const ran = await runIn(testWorld(), 'layout', folder);
    expect(ran.err).toMatch(message);
    expect(ran.err).toContain('mend: ');
    expect(ran.err).not.toMatch(/^\s+at /m);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(namesBelow(folder)).toEqual(before);
  });

  it('all problems at once', async () => {
    const ran = await layOut(jobFolder(parts('a,1,-20,0,3/4')));
    expect(ran.err.match(/mend: /g)).toHaveLength(2);
  });
});

describe('names of all kinds harm nothing', () => {
  const names = [
    '__proto__',
    'constructor',
    '=1+1',
    '<script>alert(1)</script>',
    '../x',
    '-rf',
    "a'b",
    '🪵',
    '  a  b',
    'x'.repeat(10_000),
  ];
  const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
  const changes = {
    'parts.csv': `part,quantity,length,width,thickness\n${names.map((name) => `${quoted(name)},1,12,5,3/4\n`).join('')}`,
    'boards.csv': `board,length,width,thickness,price\n${names.map((name) => `${quoted(name)},20,6,4/4,${quoted('5')}\n`).join('')}`,
    'defects.csv': `board,kind,face,from,to,low,high\n${names.map((name) => `${quoted(name)},hole,A,0,1,0,1\n`).join('')}`,
  };

  it('as parts, boards and boards with defects', async () => {
    const folder = jobFolder(changes);
    const ran = await layOut(folder, '--json');
    expect(ran).toMatchObject({ code: 0, err: '' });
    const layout = layoutOf(ran);
    const laid = layout.boards.flatMap(({ pieces }) => pieces.map(({ part }) => part));
    expect([...laid].sort()).toEqual(names.map((name) => name.trim()).sort());
    const written = namesBelow(ran.outFolder);
    expect(written.filter((name) => name.endsWith('.svg'))).toHaveLength(layout.boards.length);
    for (const name of written) {
      const text = readFileSync(join(ran.outFolder, name), 'utf8');
      if (/\.(?:html|svg)$/.test(name)) expect(text).not.toContain('<script>alert');
      if (name.endsWith('.csv')) expect(text).not.toMatch(/(?:^|[,"])=1/m);
    }
    writeFileSync(join(folder, 'layout.json'), ran.out);
    const checked = await runIn(testWorld({ cwd: folder }), 'check', '.', 'layout.json');
    expect(checked).toMatchObject({ code: 0, err: '' });
  });
});

describe('what cannot be had is said, and the rest is laid out', () => {
  const parts = (row: string): string => `${plainJob['parts.csv'] ?? ''}${row}\n`;
  it.each([
    ['longer than every board', parts('beam,1,90,5,3/4'), 'beam'],
    ['wider than every board', parts('panel,1,20,12,3/4'), 'panel'],
    ['thicker than every board', parts('block,2,20,5,1 1/2'), 'block'],
  ])('a part %s', async (_name, text, part) => {
    const ran = await layOut(jobFolder({ 'parts.csv': text }), '--json');
    expect(ran).toMatchObject({ code: 1, err: '' });
    const { short, boards } = layoutOf(ran);
    expect(short.map((entry) => entry.part)).toEqual([part]);
    expect(short[0]?.why).not.toBe('');
    expect(boards.flatMap(({ pieces }) => pieces)).toHaveLength(3);
  });

  it('no boards at all', async () => {
    const folder = jobFolder({ 'boards.csv': 'board,length,width,thickness\n', 'defects.csv': null });
    const ran = await layOut(folder, '--json');
    expect(ran.code).toBe(1);
    expect(layoutOf(ran)).toMatchObject({ boards: [], totals: { boards: 0, cost: 0, yield: 0, waste: 0 } });
    expect(layoutOf(ran).short.reduce((sum, { copies }) => sum + copies, 0)).toBe(3);
    expect((await layOut(folder)).code).toBe(1);
  });

  it('no parts at all', async () => {
    const folder = jobFolder({ 'parts.csv': 'part,quantity,length,width,thickness\n' });
    const ran = await layOut(folder, '--json');
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(layoutOf(ran)).toMatchObject({ boards: [], short: [], proof: { value: 0, gap: 0 } });
    expect((await layOut(folder)).code).toBe(0);
  });

  it('neither', async () => {
    const ran = await layOut(
      jobFolder({
        'parts.csv': 'part,quantity,length,width,thickness\n',
        'boards.csv': 'board,length,width,thickness\n',
        'defects.csv': null,
      }),
      '--json',
    );
    expect(ran).toMatchObject({ code: 0, err: '' });
  });

  it('a kerf of zero is a kerf', async () => {
    const shop = 'setting,value\nrip kerf,0\ncrosscut kerf,0\nend trim,0\nedge trim,0\n';
    const ran = await layOut(
      jobFolder({
        'shop.csv': shop,
        'parts.csv': 'part,quantity,length,width,thickness\na,6,12,7 1/4,3/4\n',
        'boards.csv': 'board,length,width,thickness\nB1,72,7 1/4,4/4\n',
        'defects.csv': null,
      }),
      '--json',
    );
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(layoutOf(ran).totals.yield).toBe(1);
  });
});

describe('folders that refuse', () => {
  const root = process.getuid?.() === 0;
  const nobody = 65534;
  afterEach(() => {
    if (root) process.seteuid?.(0);
  });

  /** Root may write anywhere, so it steps down for the length of a test. */
  const stepDown = (): void => {
    if (root) process.seteuid?.(nobody);
  };

  it.each([['nowhere'], ['job/parts.csv']])('%s is no job folder', async (name) => {
    const world = testWorld({ cwd: join(jobFolder(), '..') });
    const ran = await runIn(world, 'layout', name);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toMatch(/no such folder|a file, not a job folder/);
  });

  it('an unreadable job folder', async () => {
    const folder = jobFolder();
    chmodSync(folder, 0);
    stepDown();
    const ran = await runIn(testWorld(), 'layout', folder);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toMatch(/permission denied/);
  });

  const readOnly = (): string => {
    const folder = jobFolder();
    chmodSync(join(folder, '..'), 0o755);
    chmodSync(folder, 0o555);
    return folder;
  };

  it('a read-only job folder is told where the result cannot go', async () => {
    const folder = readOnly();
    const before = namesBelow(folder);
    stepDown();
    const ran = await runIn(testWorld(), 'layout', folder, '--effort', '0');
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toMatch(/out.*permission denied/);
    expect(namesBelow(folder)).toEqual(before);
  });

  it('a read-only job folder is no hindrance to --json', async () => {
    const folder = readOnly();
    stepDown();
    const ran = await runIn(testWorld(), 'layout', folder, '--effort', '0', '--json');
    expect(ran.code).toBe(0);
    expect(layoutOf(ran).short).toEqual([]);
    expect(ran.err).toMatch(/permission denied/);
  });

  it('a read-only --out keeps what it holds', async () => {
    const out = scratchFolder();
    writeFileSync(join(out, 'sheet.html'), 'old');
    chmodSync(out, 0o555);
    stepDown();
    const ran = await runIn(
      testWorld(),
      'layout',
      jobFolderReadable(),
      '--effort',
      '0',
      '--out',
      out,
      '--json',
    );
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(namesBelow(out)).toEqual(['sheet.html']);
    expect(readFileSync(join(out, 'sheet.html'), 'utf8')).toBe('old');
  });

  it('an --out that is a file', async () => {
    const folder = jobFolder();
    const ran = await runIn(
      testWorld(),
      'layout',
      folder,
      '--effort',
      '0',
      '--out',
      join(folder, 'parts.csv'),
    );
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toContain('parts.csv');
    expect(readFileSync(join(folder, 'parts.csv'), 'utf8')).toBe(plainJob['parts.csv']);
  });

  /** Made before stepping down, readable by anyone. */
  function jobFolderReadable(): string {
    if (root) process.seteuid?.(0);
    const folder = jobFolder();
    chmodSync(join(folder, '..'), 0o755);
    stepDown();
    return folder;
  }
});
