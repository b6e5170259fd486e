import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { defaultShop, inches, millimetres, ticks } from '../../../src/index.ts';
import { printProblems } from '../../../src/shell/print-problem.ts';
import { type JobOptions, readJob, readMantel, readShopOf } from '../../../src/shell/read/job.ts';
import type { JobAndYard } from '../../../src/shell/read/job-texts.ts';
import { jobFolder, scratchFolder } from './job-folder.ts';

const scratch = scratchFolder();
const parts = 'part,quantity,length,width,thickness\nFront,1,60 1/2,6,3/4\n';
const boards = 'board,length,width,thickness\nB1,96,6,4/4\n';

async function job(
  name: string,
  files: Readonly<Record<string, string | Uint8Array>>,
  options: JobOptions = {},
): Promise<JobAndYard> {
  const read = await readJob(jobFolder(scratch, name, files), options);
  if (!read.ok) throw new Error(printProblems(read.problems));
  return read.value;
}

async function words(folder: string, options: JobOptions = {}): Promise<string> {
  const read = await readJob(folder, options);
  return read.ok ? 'fine' : printProblems(read.problems);
}

describe('a job with nothing but what is needed', () => {
  it('takes its name from the folder and everything else from the defaults', async () => {
    expect(await job('hearth', { 'parts.csv': parts, 'boards.csv': boards })).toMatchObject({
      name: 'hearth',
      cautions: [],
      shop: defaultShop,
      parts: [
        {
          name: 'Front',
          quantity: 1,
          length: inches(60.5),
          width: inches(6),
          thickness: inches(0.75),
          species: '',
          grain: 'along',
          quality: 'clear-1',
          show: 0,
          accept: [],
          run: null,
          leftEnd: 0,
          rightEnd: 0,
          glueUp: 1,
          value: null,
          pin: null,
          note: '',
        },
      ],
      boards: [
        {
          name: 'B1',
          quantity: 1,
          length: inches(96),
          width: inches(6),
          nominalThickness: '4/4',
          nominalInches: 1,
          // By the rule: 6 in × 8 ft / 12 = 4.
          yardFeet: 4,
          // 4/4 dresses to 13/16 in: the published table of surfaced thickness.
          dressedThickness: ticks((8128 * 13) / 16),
          surface: 'rough',
          species: '',
          grade: '',
          // By hand: 96 × 6 / 144 = 4 board feet at 10.
          cost: 40,
          unpriced: true,
          lookA: 5,
          lookB: 5,
          tone: '',
          note: '',
          defects: [],
          origin: 'job',
        },
      ],
      yard: [],
    });
  });
});

describe('a job that says everything', () => {
  it('in a file as a spreadsheet of another country saves it', async () => {
    const read = await job('werkstatt', {
      'shop.csv':
        '\uFEFFsetting;value\r\nrip kerf;3,2\r\nUnits;MM\r\nprice;8,5/bf\r\nstages;any\r\nrack;../rack.csv\r\n',
      'parts.csv': [
        '\uFEFFPart;Quantity;Length;Width;Thickness;Species;Grain;Quality;Show;Accept;Run;Left End;Right End;Glue-up;Value;Board;Note',
        'Blende;2;1536,7;150;19;white ash;Any;Sound;yes;"sound knot <= 12,7; stain";front;miter 45;-22,5;3;99,5;B:1:b;"vorn; oben"',
        '',
      ].join('\r\n'),
      'boards.csv':
        'board;quantity;length;width;thickness;surface;species;grade;price;look a;LOOK B;tone;note\r\n' +
        'B:1;2;2438,4;152,4;26,5;s2s;oak;FAS;€ 42,50;9,5;0;red;\r\n' +
        'B:1:A;1;2438,4;152,4;26;rough;oak;;8,50/bf;;;;\r\n' +
        'used;0;1000;100;26;;;;;;;;\r\n',
      'defects.csv':
        'board;kind;face;from;to;low;high\r\nB:1;Sound Knot;a;10,1;20,2;0;5\r\nused;rot;THROUGH;1;2;1;2\r\n',
      'yard.csv': 'board;length;width;thickness;price\r\nY1;1000;200;4/4;30\r\n',
    });
    expect(read.shop).toEqual({
      ...defaultShop,
      units: 'mm',
      ripKerf: millimetres(3.2),
      pricePerBoardFoot: 8.5,
      stages: 'any',
      rack: '../rack.csv',
    });
    expect(read.parts).toEqual([
      {
        name: 'Blende',
        quantity: 2,
        length: millimetres(1536.7),
        width: millimetres(150),
        thickness: millimetres(19),
        species: 'white ash',
        grain: 'any',
        quality: 'sound',
        show: 1,
        accept: [
          { kind: 'sound knot', atMost: millimetres(12.7) },
          { kind: 'stain', atMost: null },
        ],
        run: 'front',
        leftEnd: 45,
        rightEnd: -22.5,
        glueUp: 3,
        value: 99.5,
        pin: { board: 'B:1', face: 'B' },
        note: 'vorn; oben',
      },
    ]);
    const [first, second, ...others] = read.boards;
    expect(others).toEqual([]);
    expect(first).toMatchObject({
      name: 'B:1',
      quantity: 2,
      length: millimetres(2438.4),
      nominalThickness: '26.5 mm',
      dressedThickness: millimetres(26.5),
      surface: 'S2S',
      cost: 42.5,
      lookA: 9.5,
      lookB: 0,
      defects: [
        {
          kind: 'sound knot',
          face: 'A',
          x: millimetres(10.1),
          y: 0,
          length: millimetres(10.1),
          width: millimetres(5),
        },
      ],
    });
    // By hand: 2438.4 × 152.4 mm = 96 × 6 in = 4 square feet; 26 mm rough counts as 26 / 25.4 in.
    expect(second?.cost).toBeCloseTo(4 * (26 / 25.4) * 8.5, 10);
    expect(read.yard.map(({ name, cost }) => [name, cost])).toEqual([['Y1', 30]]);
  });
});

describe('pins', () => {
  const pinned = (pin: string): string =>
    `part,quantity,length,width,thickness,board\nFront,1,60,6,3/4,${pin}\n`;
  const names = 'board,length,width,thickness\nB3,96,6,4/4\nB3:A,96,6,4/4\n';
  it.each([
    ['B3', { board: 'B3', face: null }],
    ['B3:B', { board: 'B3', face: 'B' }],
    ['B3: b', { board: 'B3', face: 'B' }],
    ['B3:A', { board: 'B3:A', face: null }],
    ['B3:A:A', { board: 'B3:A', face: 'A' }],
  ] as const)('%s', async (pin, expected) => {
    const read = await job(`pin ${pin}`, { 'parts.csv': pinned(pin), 'boards.csv': names });
    expect(read.parts[0]?.pin).toEqual(expected);
  });

  it('may name a board of the rack when the caller knows it', async () => {
    const files = { 'parts.csv': pinned('R7:A'), 'boards.csv': names };
    const read = await job('rack pin', files, { otherBoards: ['R7'] });
    expect(read.parts[0]?.pin).toEqual({ board: 'R7', face: 'A' });
  });
});

describe('names', () => {
  it.each([
    '__proto__',
    'constructor',
    '=1+1',
    '<script>',
    '../x',
    '😀 正面',
    'a"b',
    'x'.repeat(10_000),
    "'quoted'",
  ])('%s is kept as it is', async (name) => {
    const cell = `"${name.replaceAll('"', '""')}"`;
    const read = await job(`name ${name.length}`, {
      'parts.csv': `part,quantity,length,width,thickness,run,board\n${cell},1,60,6,3/4,${cell},${cell}\n`,
      'boards.csv': `board,length,width,thickness,tone\n${cell},96,6,4/4,${cell}\n`,
      'defects.csv': `board,kind,face,from,to,low,high\n${cell},rot,A,1,2,1,2\n`,
    });
    expect(read.parts[0]).toMatchObject({ name, run: name, pin: { board: name, face: null } });
    expect(read.boards[0]).toMatchObject({ name, tone: name });
    expect(read.boards[0]?.defects).toHaveLength(1);
  });
});

describe('rounding at the edge of a board', () => {
  it('a defect written to the end of a board stays inside it', async () => {
    // 96.1 in = 781,100.8 ticks: the board is rounded down, the defect's end up.
    const read = await job('edge', {
      'parts.csv': parts,
      'boards.csv': 'board,length,width,thickness\nB1,96.1,6.1,4/4\n',
      'defects.csv': 'board,kind,face,from,to,low,high\nB1,split,through,90,96.1,0,6.1\n',
    });
    const [board] = read.boards;
    const [defect] = board?.defects ?? [];
    expect(board?.length).toBe(781_100);
    expect([(defect?.x ?? 0) + (defect?.length ?? 0), defect?.width]).toEqual([board?.length, board?.width]);
  });
});

describe('what a caller may leave out or put in', () => {
  it('parts in hand instead of parts.csv', async () => {
    const { parts: planned } = await job('with parts', { 'parts.csv': parts, 'boards.csv': boards });
    const read = await job('without parts', { 'boards.csv': boards }, { parts: planned });
    expect(read.parts).toEqual(planned);
  });

  it('other file names', async () => {
    const read = await job(
      'renamed',
      { 'p.csv': parts, 'boards.csv': boards },
      { files: { parts: 'p.csv' } },
    );
    expect(read.parts).toHaveLength(1);
    expect(await words(join(scratch, 'renamed'), { files: { parts: 'q.csv' } })).toMatch(
      /^q\.csv: the job folder has/,
    );
  });

  it('no boards.csv, when boards come from elsewhere', async () => {
    expect((await job('boardless', { 'parts.csv': parts }, { boardsNeeded: false })).boards).toEqual([]);
  });

  it('no parts and no boards at all, as rows', async () => {
    const read = await job('empty', {
      'parts.csv': 'part,quantity,length,width,thickness\n',
      'boards.csv': 'board,length,width,thickness\n',
    });
    expect([read.parts, read.boards]).toEqual([[], []]);
  });
});

describe('folders and files that are none', () => {
  it('no folder', async () => {
    expect(await words(join(scratch, 'nowhere'))).toBe(
      `${join(scratch, 'nowhere')}: no such folder\n  mend: give the folder of a job, or make one: mantelwright new FOLDER`,
    );
  });

  it('a file for a folder', async () => {
    const path = join(scratch, 'file.txt');
    writeFileSync(path, '');
    expect(await words(path)).toContain('this is a file, not a job folder');
    expect(await words(join(path, 'below'))).toContain(
      'cannot be read: a part of the path is a file, not a folder',
    );
  });

  it('links that lead in a circle', async () => {
    const folder = jobFolder(scratch, 'circle', { 'parts.csv': parts });
    symlinkSync('boards.csv', join(folder, 'boards.csv'));
    expect(await words(folder)).toBe(
      'boards.csv: cannot be read: links lead in a circle\n  mend: check its name and its permissions',
    );
  });

  it('a name that no file can have', async () => {
    expect(await words('a\0b')).toContain('cannot be read: the name holds a sign that no file name can');
  });

  it('a file too large', async () => {
    const folder = jobFolder(scratch, 'large', {
      'parts.csv': parts,
      'boards.csv': Buffer.alloc(64 * 1024 * 1024 + 1),
    });
    expect(await words(folder)).toBe(
      'boards.csv: the file has 67,108,865 bytes, and the most is 67,108,864\n  mend: check that it is the right file',
    );
  });

  it('a folder for each file', async () => {
    const folder = jobFolder(scratch, 'folders', {});
    for (const name of ['shop.csv', 'parts.csv', 'boards.csv']) mkdirSync(join(folder, name));
    expect((await words(folder)).match(/this is a folder, not a file/g)).toHaveLength(3);
  });
});

describe('the mantel', () => {
  it('with everything said', async () => {
    const folder = jobFolder(scratch, 'mantel', {
      'shop.csv': 'setting,value\nunits,in\n',
      'mantel.csv':
        'setting,value,note\nface height,6,\nthickness,3/4,\nbottom,open,no panel below\nleft end,wall,\nright end,open,\n' +
        'left wall angle,87.5,\nright wall angle,inside 92°,\npanel joint,miter,\nface joint,miter,\nheight above the firebox opening,14,\nledger section,1 1/2 x 3 1/2,\nspecies,white oak,\n',
      'legs.csv':
        'leg,along wall,projection,wall corner\nleft,20 1/4,6,\nfront,60,6,inside 135\nright,9,6,92°\n',
    });
    const read = await readMantel(folder);
    expect(read).toEqual({
      ok: true,
      value: {
        shop: defaultShop,
        mantel: {
          faceHeight: inches(6),
          thickness: inches(0.75),
          bottom: 'open',
          leftEnd: 'wall',
          rightEnd: 'open',
          leftWallAngle: 87.5,
          rightWallAngle: 92,
          panelJoint: 'miter',
          faceJoint: 'miter',
          heightAboveOpening: inches(14),
          ledger: { thickness: inches(1.5), width: inches(3.5) },
          species: 'white oak',
        },
        cautions: [],
        legs: [
          { name: 'left', alongWall: inches(20.25), projection: inches(6), turn: 90 },
          { name: 'front', alongWall: inches(60), projection: inches(6), turn: -45 },
          { name: 'right', alongWall: inches(9), projection: inches(6), turn: 88 },
        ],
      },
    });
  });

  it('with as little said as can be', async () => {
    const folder = jobFolder(scratch, 'small mantel', {
      'mantel.csv': 'setting,value\nface height,6\nthickness,3/4\nledger section,none\n',
      'legs.csv': 'leg,along wall,projection,wall corner\nfront,60,6,\n',
    });
    const read = await readMantel(folder);
    expect(read.ok && read.value.mantel).toEqual({
      faceHeight: inches(6),
      thickness: inches(0.75),
      bottom: 'closed',
      leftEnd: 'capped',
      rightEnd: 'capped',
      leftWallAngle: 90,
      rightWallAngle: 90,
      panelJoint: 'butt',
      faceJoint: 'butt',
      heightAboveOpening: null,
      ledger: null,
      species: '',
    });
  });
});

describe('the shop alone', () => {
  it('shares given in percent, fractions, and any place of the unit', async () => {
    const folder = jobFolder(scratch, 'shop', {
      'shop.csv':
        'setting,value\noffcut credit,30%\nface premium,.05\nend trim,25.4\nprint fraction,64\nunits,mm\ngoal,\n',
    });
    expect(await readShopOf(folder)).toEqual({
      ok: true,
      value: {
        ...defaultShop,
        units: 'mm',
        offcutCredit: 0.3,
        facePremium: 0.05,
        endTrim: inches(1),
        printFraction: 64,
      },
    });
  });
});
