import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { jobFolder } from './job-folder.ts';
import { runIn, testWorld } from './test-world.ts';

/**
 * Two boards worked by hand. Y1, 98 1/4 × 11 5/8: 8 whole feet × 11 5/8 / 12 = 7 3/4, tallied 8; it measures
 * 98 1/4 × 11 5/8 / 144 = 7.93. Y2, 5/4, 6 ft × 7 = 3 1/2: the first half of a tally goes down, so SM 3, 3.75 BF;
 * it measures 72 × 7 / 144 × 1 1/4 = 4.375. Y3, as Y2: its half goes up, SM 4, 5 BF.
 */
const rows = 'Y1,98 1/4,11 5/8,4/4,8.50/bf\nY2,72,7,5/4,8/bf\nY3,72,7,5/4,\n';
const head = 'board,length,width,thickness,price\n';
const texts = {
  'shop.csv': 'setting,value\nprice,6\n',
  'defects.csv': null,
  'parts.csv': 'part,quantity,length,width,thickness\nfront,1,90,10 1/2,3/4\nthick,2,60,5,1\n',
  'boards.csv': head + rows,
};
const prices = { Y1: 68, Y2: 30, Y3: 30 };

const answer = async (...args: string[]): Promise<Record<string, unknown>> =>
  JSON.parse((await runIn(testWorld(), ...args, '--json')).out) as Record<string, unknown>;

describe('board feet', () => {
  it('are the yard’s tally beside the measured content, and money follows the tally, in every command', async () => {
    const folder = jobFolder(texts);
    const tally = (await answer('tally', folder))['boards'] as Record<string, unknown>[];
    expect(tally.map(({ board, boardFeet, price }) => [board, boardFeet, price])).toEqual([
      ['Y1', 8, prices.Y1],
      ['Y2', 3.75, prices.Y2],
      ['Y3', 5, prices.Y3],
    ]);
    expect(tally[0]!['boardFeetMeasured']).toBeCloseTo((98.25 * 11.625) / 144, 9);
    expect(tally[1]!['boardFeetMeasured']).toBeCloseTo(4.375, 9);
    const layout = (await answer('layout', folder))['totals'] as Record<string, unknown>;
    expect(layout).toMatchObject({ boards: 3, boardFeet: 16.75, cost: 128 });
    expect(layout['boardFeetMeasured']).toBeCloseTo((98.25 * 11.625) / 144 + 2 * 4.375, 9);

    const yard = jobFolder({ ...texts, 'boards.csv': null, 'yard.csv': head + rows });
    const bought = (await answer('buy', yard))['best'] as { money: number; take: { price: number }[] };
    expect(bought.money).toBe(128);
    expect(bought.take.map(({ price }) => price)).toEqual(Object.values(prices));
  });

  it('are named on every page and table that shows them', async () => {
    const folder = jobFolder(texts);
    const tallied = await runIn(testWorld(), 'tally', folder);
    expect(tallied.out).toMatch(/BF, tally +BF, measured/);
    expect(tallied.out).toContain("16.75 BF by the yard's tally (16.68 BF measured), $128.00");
    const laid = await runIn(testWorld(), 'layout', folder);
    expect(laid.out).toMatch(/BF, tally +BF, measured/);
    expect(laid.out).toContain("16.75 BF by the yard's tally (16.68 BF measured), $128.00");
    const sheet = readFileSync(join(folder, 'out', 'sheet.html'), 'utf8');
    expect(sheet).toContain('BF, tally');
    const yard = jobFolder({ ...texts, 'boards.csv': null, 'yard.csv': head + rows });
    expect((await runIn(testWorld(), 'buy', yard)).out).toMatch(/BF, tally +BF, measured/);
  });
});
