import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultShop, readLength, runTogether } from '../../../src/index.ts';
import { printCaution, printProblems } from '../../../src/shell/print-problem.ts';
import { readBoards } from '../../../src/shell/read/boards.ts';
import { readLegs, readMantelSettings } from '../../../src/shell/read/mantel.ts';
import { readParts } from '../../../src/shell/read/parts.ts';
import type { Reading } from '../../../src/shell/read/problem.ts';
import { readShop } from '../../../src/shell/read/shop.ts';
import { jobFolder } from '../../command/job-folder.ts';
import { runIn, testWorld } from '../../command/test-world.ts';

/** First lines of what is said, cautions marked. */
function said({ problems, cautions = [] }: Reading<unknown>): string[] {
  return [
    ...(problems.length > 0 ? [printProblems(problems)] : []),
    ...cautions.map((one) => printCaution(one)),
  ].map((text) => text.split('\n')[0]!);
}

const parts = (row: string, header = 'part,quantity,length,width,thickness'): string[] =>
  said(readParts('parts.csv', `${header}\n${row}\n`, defaultShop, null));
const boards = (rows: string, shop = defaultShop, header = 'board,length,width,thickness'): string[] =>
  said(readBoards('boards.csv', `${header}\n${rows}\n`, shop));
const shop = (row: string): string[] => said(readShop('shop.csv', `setting,value\n${row}\n`));
const legs = (row: string): string[] =>
  said(readLegs('legs.csv', `leg,along wall,projection,wall corner\n${row},\n`, defaultShop));

describe('entries that are hardly meant are questioned', () => {
  it('a whole number run into its fraction', () => {
    expect(parts('a,1,581/4,6,3/4')).toEqual([
      'parts.csv:2:5: length: "581/4" is an improper fraction: is 58 1/4 meant?',
    ]);
    expect(parts('a,1,58 1/4,11/8,3/4')).toEqual([
      'parts.csv:2:12: caution: width: "11/8" is an improper fraction: is 1 1/8 meant?',
    ]);
    expect(parts('a,1,58 1/4,6,5/4')).toEqual([]);
    expect(boards('B,581/4,6,4/4')).toHaveLength(1);
    expect(boards('B,58,6,10/4')).toEqual([]);
    expect(shop('knot margin,101/2')).toHaveLength(1);
  });

  it('never one whose numerator ends in no proper fraction, and what is offered is a length', () => {
    fc.assert(
      fc.property(fc.nat(999), fc.constantFrom(2, 4, 8, 16, 32, 64), fc.nat(63), (whole, under, over) => {
        const meant = runTogether(`${whole}${over}/${under}`);
        if (over > 0 && over < under && whole > 0 && Number(`${whole}${over}`) > under)
          expect(meant).not.toBeNull();
        if (meant === null) return;
        const read = readLength(meant, { unit: 'in', decimalComma: false, round: 'nearest' });
        expect(read.ok && read.value > 0).toBe(true);
        expect(meant.replace(' ', '')).toBe(`${whole}${over}/${under}`);
      }),
    );
    expect(runTogether('3/4')).toBeNull();
    expect(runTogether('144/4')).toBeNull();
    expect(runTogether('5811/16')).toBe('58 11/16');
  });

  it('a decimal comma in a file of commas', () => {
    expect(parts('a,1,"58,25",6,3/4')).toEqual(['parts.csv:2:5: length: "58,25" has a comma']);
    expect(parts('a,1,58,25,6,3/4')[0]).toContain('the row has 6 cells');
    const header = 'part,quantity,length,width,thickness,note';
    expect(parts('a,1,58,25,3,3/4', header)).toEqual([
      'parts.csv:2:13: caution: note: "3/4" stands alone as a note: did a decimal comma part a number of this row?',
    ]);
    expect(parts('a,1,58.25,3,3/4,12', header)).toEqual([]);
    const [, ...more] = printProblems(
      readParts('parts.csv', 'part,quantity,length,width,thickness\na,1,58,25,6,3/4\n', defaultShop, null)
        .problems,
    ).split('mend');
    expect(more.join()).toContain('58.25 for 58,25');
  });

  it('breast, face, boards and kerfs beyond what is usual; and refused beyond what can be', () => {
    expect(legs('front,360,6')).toEqual([]);
    expect(legs('front,361,6')).toEqual(['legs.csv:2:7: caution: along wall: "361" is more than 360"']);
    expect(legs('front,5842,6')).toEqual(['legs.csv:2:7: along wall: "5842" is more than 1200"']);
    const face = (height: string): string[] =>
      said(
        readMantelSettings(
          'mantel.csv',
          `setting,value\nface height,${height}\nthickness,3/4\n`,
          defaultShop,
        ),
      );
    expect(face('24')).toEqual([]);
    expect(face('24 1/2')).toEqual(['mantel.csv:2:13: caution: face height: "24 1/2" is more than 24"']);
    expect(boards('B,96,25,4/4')).toEqual(['boards.csv:2:6: caution: width: "25" is more than 24"']);
    expect(boards('B,6,96,4/4')).toHaveLength(1);
    expect(boards('B,7,9,4/4\nC,60,8,4/4')).toEqual([
      'boards.csv:2:5: caution: width: "9" makes the board wider than it is long',
    ]);
    expect(boards('B,2438,6,4/4')).toEqual(['boards.csv:2:3: length: "2438" is more than 720"']);
    expect(shop('rip kerf,3/8')).toEqual([]);
    expect(shop('rip kerf,7/16')).toEqual(['shop.csv:2:10: caution: rip kerf: "7/16" is more than 3/8"']);
    expect(shop('crosscut kerf,3.2')).toEqual(['shop.csv:2:15: crosscut kerf: "3.2" is more than 1"']);
  });

  it('units that leave nothing of any board, or little of every board', () => {
    const metric = { ...defaultShop, units: 'mm' as const };
    expect(boards('B,96,7.25,4/4\nC,120,6,4/4', metric)).toEqual([
      'boards.csv:2:3: length: "96" and all other boards are too small to cut from: are millimetres meant?',
    ]);
    expect(boards('B,96,7.25,4/4\nC,2400,160,4/4', metric)).toEqual([]);
    expect(boards('B,10,7,4/4')).toHaveLength(1);
  });

  it('and the command goes on over a caution, which it says once', async () => {
    const folder = jobFolder({ 'shop.csv': 'setting,value\nrip kerf,7/16\n' });
    const { code, err } = await runIn(testWorld({ cwd: folder }), 'layout', '.', '--effort', '0');
    expect([code, err.split('\n').slice(0, 3)]).toEqual([
      0,
      [
        'shop.csv:2:10: caution: rip kerf: "7/16" is more than 3/8"',
        '  2 | rip kerf,7/16',
        '    |          ^^^^',
      ],
    ]);
    expect(err.match(/caution/g)).toHaveLength(1);
  });
});

describe('points in a file of decimal commas', () => {
  const semicolons = (cells: string): string[] =>
    said(readBoards('boards.csv', `board;length;width;thickness;price\n${cells}\n`, defaultShop));

  it('may part thousands: they are refused, in money as in lengths', () => {
    expect(semicolons('B;96;7;4/4;1.234')).toEqual(['boards.csv:2:12: price: "1.234" may be 1234 or 1,234']);
    expect(semicolons('B;96;7;4/4;1.234/bf')).toHaveLength(1);
    expect(semicolons('B;1.234 mm;160 mm;20 mm;30')).toHaveLength(1);
    expect(semicolons('B;96;7;1.125;30')).toHaveLength(1);
    for (const plain of ['1234', '1234,5', '12.5', '0.125', '1,234', '12,50'])
      expect(semicolons(`B;96;7;4/4;${plain}`)).toEqual([]);
  });

  it('and mean decimals elsewhere', () => {
    expect(boards('B,96,7,4/4,1.234', defaultShop, 'board,length,width,thickness,price')).toEqual([]);
  });
});
