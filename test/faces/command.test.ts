import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/flow/cuts/layout.ts';
import { jobFolder } from '../command/job-folder.ts';
import { runIn, scratchFolder, testWorld } from '../command/test-world.ts';

const parts =
  'part,quantity,length,width,thickness,show,run,left end,right end\n' +
  'left,1,10,5,3/4,1,wrap,,45\nfront,1,40,5,3/4,2,wrap,45,45\nright,1,8,5,3/4,1,wrap,45,\n';
/** Long holds all and is plain; dear holds all and is fine; short holds front and left; tiny holds nothing. */
const boards =
  'board,quantity,length,width,thickness,surface,price,look A,look B\n' +
  'long,1,64,5 1/2,4/4,S4S,20,4,3\ndear,1,64,5 1/2,4/4,S4S,26,9,5\nshort,1,54,5 1/2,4/4,S4S,15,7,6\n' +
  'tiny,1,30,5 1/2,4/4,S4S,2,1,1\nthin,1,64,5 1/2,1/2,S4S,2,10,10\n';
const defects =
  'board,kind,face,from,to,low,high\ndear,sound knot,B,20,21,2,3\nlong,stain,A,0,1/2,0,1\nlong,loose knot,B,30,31,2,3\n';
const shop = (more = ''): string => `setting,value\nend trim,1/2\n${more}`;
const files = {
  'parts.csv': parts,
  'boards.csv': boards,
  'defects.csv': defects,
  'shop.csv': shop('own runs,may break\n'),
};

interface Choice {
  readonly board: string;
  readonly face: string;
  readonly possible: boolean;
  readonly extra: number;
  readonly wrapsWhole: boolean;
  readonly unbeaten: boolean;
  readonly why?: { readonly kind: string };
}

describe('faces', () => {
  it('weighs every face by hand-worked money: the plain board, the fine one, the run broken, and why not', async () => {
    const folder = jobFolder(files);
    const { code, out, err } = await runIn(testWorld(), 'faces', folder, '--json');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out) as {
      part: string;
      run: string[];
      choices: Choice[];
      cheapest: { value: number };
    };
    expect([answer.part, answer.run]).toEqual(['front', ['left', 'front', 'right']]);
    // Long's face A is clear but for a stain in the trim; its back has a loose knot, so neither face will do for the run.
    const told = answer.choices.map(({ board, face, possible, extra, wrapsWhole, why }) => [
      `${board} ${face}`,
      possible ? [Math.round(100 * extra) / 100, wrapsWhole] : why?.kind,
    ]);
    expect(answer.cheapest.value).toBe(26);
    expect(told).toEqual([
      ['long A', 'no clear stretch'],
      ['long B', 'no clear stretch'],
      ['dear A', [0, true]],
      ['dear B', [0, false]],
      ['short A', [-9, false]],
      ['short B', [-9, false]],
      ['tiny A', 'too short'],
      ['tiny B', 'too short'],
      ['thin A', 'too thin'],
      ['thin B', 'too thin'],
    ]);
    expect(
      answer.choices.filter(({ unbeaten }) => unbeaten).map(({ board, face }) => `${board} ${face}`),
    ).toEqual(['dear A', 'short A']);
    const page = readFileSync(join(folder, 'out', 'faces.html'), 'utf8');
    expect(page).toContain('aria-label="dear A as it will stand"');
    const table = readFileSync(join(folder, 'out', 'faces.csv'), 'utf8')
      .trimEnd()
      .split('\n');
    expect(table).toHaveLength(11);
  });

  it('tells it in words, and takes another part', async () => {
    const { code, out } = await runIn(testWorld(), 'faces', jobFolder(files), '--part', 'left');
    expect(code).toBe(0);
    expect(out).toMatch(/^Faces for left, in the run left \+ front \+ right/);
    expect(out).toMatch(/thin A: too thin/);
    expect(out).toMatch(/dear A +9\.0 +no more/);
  });

  it.each([
    [['faces', '--part', 'frnot'], /no part "frnot"[\s\S]*"front"/],
    [['layout', '--face', 'dear'], /board and its face[\s\S]*C1:A/],
    [['layout', '--face', 'daer:A'], /no board "daer"[\s\S]*"dear"/],
    [['layout', '--face', 'tiny:A'], /cannot show tiny:A: too short/],
  ])('%j is refused with what would be right', async ([command = '', ...rest], message) => {
    const { code, out, err } = await runIn(testWorld(), command, jobFolder(files), ...rest);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
  });
});

describe('the face that a layout shows', () => {
  const frontOf = (out: string): string => {
    const layout = JSON.parse(out) as {
      boards: { board: string; pieces: { part: string; showFace: string }[] }[];
    };
    const laid = layout.boards.find(({ pieces }) => pieces.some(({ part }) => part === 'front'));
    return `${laid?.board} ${laid?.pieces.find(({ part }) => part === 'front')?.showFace}`;
  };
  /** Two sound boards: the plain one cheaper by 6 of 20, that is 30 %. */
  const sound = { ...files, 'defects.csv': 'board,kind,face,from,to,low,high\n' };

  it('is the one asked for, with a word that the run is broken where it must be', async () => {
    const folder = jobFolder(files);
    const { code, out } = await runIn(testWorld(), 'layout', folder, '--face', 'short:B');
    expect(code).toBe(0);
    expect(out).toContain('front shows face B of short, as asked');
    expect(out).toContain('wrap is cut as left | front + right: no board holds');
    expect((await runIn(testWorld(), 'check', folder, join(folder, 'out', 'layout.json'))).code).toBe(0);
    expect(readFileSync(join(folder, 'out', 'sheet.html'), 'utf8')).toContain('as asked');
  });

  it.each([
    ['0', 'long A'],
    ['0.29', 'long A'],
    ['0.31', 'dear A'],
  ])('is the best look within a premium of %s: %s', async (premium, expected) => {
    const folder = jobFolder({ ...sound, 'shop.csv': shop(`face premium,${premium}\n`) });
    const { code, out } = await runIn(testWorld(), 'layout', folder, '--json');
    expect(code).toBe(0);
    expect(frontOf(out)).toBe(expected);
  });
});

describe('glue lines', () => {
  it('on what shows get a word, and strips of one board are offered in book order where they can be turned', async () => {
    const panel =
      'part,quantity,length,width,thickness,show,glue-up\npanel,1,40,10,3/4,yes,2\nback,1,20,10,3/4,,2\n';
    const pile = 'board,length,width,thickness,surface,price\na,96,6,4/4,S4S,30\nb,96,6,4/4,S4S,30\n';
    const flaw = (face: string): string => `board,kind,face,from,to,low,high\na,stain,${face},2,94,1,5\n`;
    const job = { 'parts.csv': panel, 'boards.csv': pile, 'shop.csv': shop('show tone,any\n') };
    const pinned = panel
      .replace('glue-up\n', 'glue-up,board\n')
      .replace('yes,2\n', 'yes,2,a\n')
      .replace(',,2\n', ',,2,\n');
    const plain = await runIn(
      testWorld(),
      'layout',
      jobFolder({ ...job, 'parts.csv': pinned, 'defects.csv': null }),
    );
    expect(plain.code).toBe(0);
    expect(plain.out).toContain('panel is edge-joined of 2 strips: a glue line shows along it.');
    expect(plain.out).toMatch(/in book order, turn strip 2 over about the joint like a page/);
    expect(plain.out).not.toContain('back is edge-joined');
    const folder = jobFolder({ ...job, 'parts.csv': pinned, 'defects.csv': flaw('B') });
    const stained = await runIn(testWorld(), 'layout', folder);
    expect(stained.out).toContain('Strip 2 cannot be turned over into book order: its face B is not clear.');
    expect((await runIn(testWorld(), 'check', folder, join(folder, 'out', 'layout.json'))).code).toBe(0);
  });
});

describe('the demo', () => {
  it('shows a trade-off: the face with the best look is not on the cheapest plan, and costs more', async () => {
    const hearth = fileURLToPath(new URL('../../fixtures/jobs/hearth', import.meta.url));
    const laid = async (...args: string[]): Promise<Layout> => {
      const out = join(scratchFolder(), 'out');
      const run = await runIn(
        testWorld(),
        'layout',
        hearth,
        '--out',
        out,
        '--effort',
        '0.1',
        '--json',
        ...args,
      );
      expect(run.code).toBe(0);
      return JSON.parse(run.out) as Layout;
    };
    const cheapest = await laid('--no-rack');
    const finest = await laid('--no-rack', '--face', 'C15:A');
    expect(cheapest.boards.map(({ board }) => board)).not.toContain('C15');
    expect(finest.proof.value).toBeGreaterThan(cheapest.proof.value + 1);
    const boards = readFileSync(join(hearth, 'boards.csv'), 'utf8').trimEnd().split('\n').slice(1);
    const looks = boards.map((row) => row.split(',').slice(9, 11).map(Number));
    const best = Math.max(...looks.flat());
    expect(boards.filter((_, index) => looks[index]!.includes(best)).map((row) => row.split(',')[0])).toEqual(
      ['C15'],
    );
  });
});
