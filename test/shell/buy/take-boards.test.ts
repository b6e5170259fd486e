import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Board } from '../../../src/index.ts';
import { defaultShop, inches } from '../../../src/index.ts';
import { offersOf } from '../../../src/shell/buy/offers.ts';
import { takeBoards, withBoards } from '../../../src/shell/buy/take-boards.ts';
import { readBoards } from '../../../src/shell/read/boards.ts';
import { plainBoard } from '../../laws/random-board.ts';

const yardBoard = (name: string, more: Partial<Board> = {}): Board =>
  plainBoard({
    name,
    length: inches(96.5),
    width: inches(7.25),
    surface: 'rough',
    grade: 'FAS',
    cost: 41.5,
    lookA: 8,
    note: 'straight',
    ...more,
  });

function added(text: string, boards: readonly Board[], shop = defaultShop): string {
  const written = withBoards('boards.csv', text, boards, shop);
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  return written.value;
}

/** What the reader makes of the text. */
function readBack(text: string, shop = defaultShop) {
  const { value, problems } = readBoards('boards.csv', text, shop);
  expect(problems).toEqual([]);
  // What a yard counts depends on the other boards of the file: exact halves go up and down by turns.
  return value!.boards.map(({ yardFeet, ...board }) => {
    expect(yardFeet).toBeGreaterThan(0);
    return board;
  });
}

function bare({ defects, yardFeet, ...board }: Board): Omit<Board, 'defects' | 'yardFeet'> {
  expect([defects, yardFeet > 0]).toEqual([[], true]);
  return board;
}

describe('taking boards', () => {
  const short = 'board,length,width,thickness\nB1,72,7 1/4,4/4\n';

  it('adds rows that read back as the boards that were taken, with columns the file did not have', () => {
    const text = added(short, [
      yardBoard('Y1'),
      yardBoard('Y2', { quantity: 2, surface: 'S2S', tone: 'warm' }),
    ]);
    const [own, first, second] = readBack(text);
    expect(own).toEqual(readBack(short)[0]);
    expect(first).toEqual(bare(yardBoard('Y1')));
    expect(second).toEqual(bare(yardBoard('Y2', { quantity: 2, surface: 'S2S', tone: 'warm' })));
  });

  it('keeps what was there, in its order of columns and as it was written', () => {
    const text = 'note,width,board,thickness,length\n"a, b",7 1/4,B1,4/4,6\' 1/2"\n';
    const lines = added(text, [yardBoard('Y1', { note: '' })]).split('\n');
    expect(lines[1]).toMatch(/^"a, b",7 1\/4,B1,4\/4,/);
    expect(lines[1]).toContain('6\' 1/2"'.replaceAll('"', '""'));
  });

  it.each([
    ['semicolons and decimal commas', 'board;length;width;thickness;price\nB1;72,5;7,25;4/4;30,5\n'],
    ['CRLF', 'board,length,width,thickness\r\nB1,72,7 1/4,4/4\r\n'],
    ['a byte-order mark', '\uFEFFboard,length,width,thickness\nB1,72,7 1/4,4/4\n'],
    ['tabs', 'board\tlength\twidth\tthickness\nB1\t72\t7 1/4\t4/4\n'],
    ['no line end at the end', 'board,length,width,thickness\nB1,72,7 1/4,4/4'],
  ])('keeps %s', (_what, text) => {
    const taken = yardBoard('Y1', { length: inches(96.5), cost: 41.25, note: 'a;b,c\td' });
    const written = added(text, [taken]);
    expect(readBack(written)).toEqual([readBack(text)[0], bare(taken)]);
    expect(written.startsWith('\uFEFF')).toBe(text.startsWith('\uFEFF'));
    expect(written.includes('\r\n')).toBe(text.includes('\r\n'));
  });

  it('writes the price paid to the cent', () => {
    expect(readBack(added(short, [yardBoard('Y1', { cost: 16.333333333333336 })]))[1]!.cost).toBe(16.33);
  });

  it('to the cent in a new file, too', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'mantelwright-take-'));
    await takeBoards(folder, [yardBoard('Y1', { cost: 16.333333333333336 })], defaultShop, 'boards.csv');
    expect(readFileSync(join(folder, 'boards.csv'), 'utf8')).toContain(',16.33,');
  });

  it.each(['1', '1,0', '1,00', '', '1e0', '+1'])('adds to a quantity written as %j', (quantity) => {
    const text = `board;quantity;length;width;thickness\nY2;${quantity};96,5;7,25;4/4\n`;
    expect(readBack(added(text, [yardBoard('Y2', { quantity: 2 })]))[0]!.quantity).toBe(3);
  });

  it('adds copies to a row of the same name', () => {
    const once = added(short, [yardBoard('Y1', { quantity: 2 })]);
    expect(readBack(added(once, [yardBoard('Y1', { quantity: 3 })]))[1]!.quantity).toBe(5);
    const withoutQuantity = 'board,length,width,thickness\nY1,96 1/2,7 1/4,4/4\n';
    expect(readBack(added(withoutQuantity, [yardBoard('Y1')])).map(({ quantity }) => quantity)).toEqual([2]);
  });

  it.each(['__proto__', '=1+1', '<b>&"', 'a "quoted", name', "O'Neil; co", '松\u0301 🌲', 'two\nlines'])(
    'keeps the name %j',
    (name) => {
      const boards = readBack(added(short, [yardBoard(name)]));
      expect(boards[1]!.name).toBe(name.trim());
    },
  );

  it('writes millimetres for a shop in millimetres', () => {
    const shop = { ...defaultShop, units: 'mm' as const };
    const metric = 'board,length,width,thickness\nB1,2000,180,20 mm\n';
    const taken = yardBoard('Y1', { nominalThickness: '4/4' });
    expect(readBack(added(metric, [taken], shop), shop)[1]).toEqual(bare(taken));
  });
});

describe('what a yard still offers', () => {
  it('is its list less what was taken before; another board of that name clashes', () => {
    const yard = [yardBoard('Y1', { quantity: 3 }), yardBoard('Y2'), yardBoard('Y3')];
    const owned = [yardBoard('Y1', { quantity: 2 }), yardBoard('Y3', { length: inches(50) })];
    const offers = offersOf(yard, owned);
    expect(offers.yard.map(({ quantity }) => quantity)).toEqual([1, 1, 1]);
    expect(offers.taken).toEqual(['Y1']);
    expect(offers.clashes).toEqual(['Y3']);
  });
});
