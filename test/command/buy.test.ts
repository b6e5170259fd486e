import { cpSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { jobFolder, namesBelow } from './job-folder.ts';
import { runIn, testWorld } from './test-world.ts';

const boardsHead = 'board,quantity,length,width,thickness,surface,grade,price\n';
const yard = {
  'parts.csv': 'part,quantity,length,width,thickness\nfront,1,40,5 1/2,3/4\nside,2,30,5 1/2,3/4\n',
  'boards.csv': `${boardsHead}B1,1,48,6 1/2,4/4,rough,1C,20\n`,
  'yard.csv': `${boardsHead}Y1,1,72,7 1/4,4/4,rough,FAS,30\nY2,1,72,6 1/2,4/4,rough,1C,24\nY3,2,36,6 1/4,4/4,rough,2A,9\nY4,1,20,6 1/4,4/4,rough,,4\n`,
  'defects.csv': 'board,kind,face,from,to,low,high\nY2,sound knot,through,30,33,2,4\nY1,pith,B,0,72,0,1/2\n',
};
const json = (text: string): Record<string, unknown> => JSON.parse(text) as Record<string, unknown>;

describe('tally', () => {
  it('measures and grades boards and yard, in words, CSV, JSON and a page', async () => {
    const folder = jobFolder(yard);
    const { code, out, err } = await runIn(testWorld(), 'tally', folder);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/yard +Y1 +72 × 7 1\/4 +4 +4\.00 +3\.63 +\$30\.00 +FAS +\S+ +not met/);
    expect(out).toContain('a certified inspector grades lumber');
    expect(namesBelow(join(folder, 'out'))).toEqual(['tally.csv', 'tally.html']);
    const page = readFileSync(join(folder, 'out', 'tally.html'), 'utf8');
    expect(page).toContain('cuttings on face B');
    expect(page).not.toMatch(/https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
    const answer = json((await runIn(testWorld(), 'tally', folder, '--json')).out);
    expect(answer).toMatchObject({ format: 'mantelwright tally 1', ticksPerInch: 8128 });
    const boards = answer['boards'] as { board: string; surfaceMeasures: number[]; claim: string }[];
    expect(boards.map(({ board }) => board)).toEqual(['B1', 'Y1', 'Y2', 'Y3', 'Y4']);
    expect(boards.map(({ surfaceMeasures }) => surfaceMeasures)).toEqual([[2], [4], [3], [2, 2], [1]]);
  });

  it('needs neither parts nor boards of one’s own, but some board', async () => {
    const bare = { 'parts.csv': null, 'boards.csv': null, 'defects.csv': null };
    expect(
      (await runIn(testWorld(), 'tally', jobFolder({ ...bare, 'yard.csv': yard['yard.csv'] }))).code,
    ).toBe(0);
    const none = await runIn(testWorld(), 'tally', jobFolder(bare));
    expect(none.code).toBe(2);
    expect(none.err).toMatch(/no board to tally[\s\S]*yard\.csv/);
  });
});

describe('buy with a yard', () => {
  it('takes the cheapest boards that complete the job with what is owned', async () => {
    const folder = jobFolder(yard);
    const { code, out, err } = await runIn(testWorld(), 'buy', folder);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    // The front comes out of B1; each side out of a Y3.
    expect(out).toMatch(/^Take Y3 × 2: 2 boards, \$18\.00\.\nProven/);
    expect(out).toContain('Runner-ups:');
    expect(out).toContain('Spares:');
    expect(namesBelow(join(folder, 'out'))).toEqual(['buy.csv', 'buy.html']);
    expect(readFileSync(join(folder, 'boards.csv'), 'utf8')).toBe(yard['boards.csv']);
    const answer = json((await runIn(testWorld(), 'buy', folder, '--json')).out);
    expect(answer).toMatchObject({
      format: 'mantelwright yard 1',
      complete: true,
      best: { money: 18, proven: true, take: [{ board: 'Y3', copies: 2, price: 9 }], owned: ['B1'] },
    });
  });

  it('--take writes them into boards.csv; then nothing has to be bought', async () => {
    const folder = jobFolder(yard);
    const first = await runIn(testWorld(), 'buy', folder, '--take');
    expect(first.code).toBe(0);
    expect(first.out).toMatch(/taken "Y3" × 2/);
    expect(readFileSync(join(folder, 'boards.csv'), 'utf8')).toBe(
      `${yard['boards.csv']}Y3,2,36,6 1/4,4/4,rough,2A,9\n`,
    );
    const again = await runIn(testWorld(), 'buy', folder, '--take');
    expect(again.out).toContain('nothing has to be bought');
    expect(again.err).toContain('taken already, by boards.csv: "Y3"');
    expect((await runIn(testWorld(), 'layout', folder)).code).toBe(0);
    expect(namesBelow(folder).some((name) => name.endsWith('.part'))).toBe(false);
  });

  it('keeps the defects of a taken board, which stand under its name', async () => {
    const folder = jobFolder({
      ...yard,
      'yard.csv': `${boardsHead}Y2,1,72,6 1/2,4/4,rough,1C,24\n`,
      'parts.csv': 'part,quantity,length,width,thickness\nfront,1,40,5 1/2,3/4\nside,1,30,5 1/2,3/4\n',
      'defects.csv': 'board,kind,face,from,to,low,high\nY2,sound knot,through,32,35,2,4\n',
    });
    expect((await runIn(testWorld(), 'buy', folder, '--take')).code).toBe(0);
    const world = testWorld();
    const layout = json((await runIn(world, 'layout', folder, '--json')).out);
    const laid = (layout['boards'] as { board: string; pieces: { x: number; length: number }[] }[]).find(
      ({ board }) => board === 'Y2',
    );
    const [from, to] = [32 * 8128, 35 * 8128];
    expect(laid!.pieces.every(({ x, length }) => x + length <= from || x >= to)).toBe(true);
  });

  it('tells what is short when the whole yard does not suffice, and takes nothing', async () => {
    const folder = jobFolder({
      ...yard,
      'yard.csv': `${boardsHead}Y4,1,20,6 1/4,4/4,rough,,4\n`,
      'defects.csv': null,
    });
    const { code, out } = await runIn(testWorld(), 'buy', folder, '--take');
    expect(code).toBe(1);
    expect(out).toMatch(/Short:\n {2}side × 2/);
    expect(readFileSync(join(folder, 'boards.csv'), 'utf8')).toBe(yard['boards.csv']);
  });

  it('works without boards of one’s own, and refuses two boards of one name', async () => {
    const none = jobFolder({ ...yard, 'boards.csv': null });
    expect((await runIn(testWorld(), 'buy', none)).out).toMatch(/^Take Y/);
    const twice = jobFolder({
      ...yard,
      'defects.csv': null,
      'boards.csv': `${boardsHead}Y1,1,50,6 1/2,4/4,rough,1C,20\n`,
    });
    const refused = await runIn(testWorld(), 'buy', twice);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('list different boards as "Y1"');
  });
});

describe('the yard trip of the fixtures', () => {
  const trip = fileURLToPath(new URL('../../fixtures/jobs/yard-trip', import.meta.url));

  it('is bought, taken and laid out; then nothing has to be bought', async () => {
    const folder = join(jobFolder({}), 'yard-trip');
    cpSync(trip, folder, { recursive: true });
    const first = await runIn(testWorld(), 'buy', folder, '--take', '--effort', '0.2', '--json');
    expect({ code: first.code, complete: json(first.out)['complete'] }).toEqual({ code: 0, complete: true });
    const { best } = json(first.out) as {
      best: { money: number; take: { board: string; copies: number }[] };
    };
    const rows = readFileSync(join(folder, 'boards.csv'), 'utf8');
    for (const { board } of best.take) expect(rows).toMatch(new RegExp(`^${board},`, 'm'));
    expect((await runIn(testWorld(), 'layout', folder, '--effort', '0.2')).code).toBe(0);
    const again = await runIn(testWorld(), 'buy', folder);
    expect(again.out).toMatch(/^What is owned suffices: nothing has to be bought\./);
    const estimated = await runIn(testWorld(), 'buy', folder, '--estimate');
    expect(estimated.out).toContain('4/4 black cherry: what is owned suffices: nothing has to be bought.');
  });

  it('offers what is left of a row of which copies are owned, and keeps the two apart', async () => {
    const folder = jobFolder({
      'parts.csv': 'part,quantity,length,width,thickness\nside,2,30,5 1/2,3/4\n',
      'boards.csv': `${boardsHead}Y3,1,36,6 1/4,4/4,rough,2A,9\n`,
      'yard.csv': `${boardsHead}Y3,3,36,6 1/4,4/4,rough,2A,9\n`,
      'defects.csv': null,
    });
    const { code, out } = await runIn(testWorld(), 'buy', folder, '--take');
    expect(code).toBe(0);
    expect(out).toMatch(/^Take Y3: 1 board, \$9\.00\./);
    expect(readFileSync(join(folder, 'boards.csv'), 'utf8')).toMatch(/^Y3,2,/m);
  });

  it('is tallied: marks that bear out the claim, and marks that do not', async () => {
    const out = mkdtempSync(join(tmpdir(), 'mantelwright-trip-'));
    const { out: text } = await runIn(testWorld(), 'tally', trip, '--out', out);
    expect(text).toMatch(/^yard +Y2 .* 1C +1C +met$/m);
    expect(text).toMatch(/^yard +Y1 .* FAS +F1F +not met$/m);
    const page = readFileSync(join(out, 'tally.html'), 'utf8');
    expect(page).toContain('H1: too small for any grade');
  });
});

describe('buy without a yard', () => {
  const small = { ...yard, 'yard.csv': null, 'boards.csv': null, 'defects.csv': null };

  it('estimates board feet for each grade, in words, CSV, JSON, chart and page', async () => {
    const folder = jobFolder(small);
    const world = testWorld();
    const { code, out, err } = await runIn(
      world,
      'buy',
      folder,
      '--draws',
      '6',
      '--grades',
      '1C,2A',
      '--prices',
      '1C=6.4',
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/grade +BF for 50 % +BF for 80 % +BF for 95 %/);
    expect(out).toMatch(/^4\/4: ask for [\d.]+ BF of 1C\.[^\n]*No price is known of 2A/);
    expect(out).toContain('Shopping list, 4/4:');
    expect(out).toContain('1C at $6.40 a board foot, as given');
    expect(out).toContain('net + 30 %');
    expect(out).toContain('6 imaginary visits');
    expect(namesBelow(join(folder, 'out'))).toEqual(['buy-4-4.svg', 'buy.csv', 'buy.html']);
    expect(world.listeners()).toBe(0);
  });

  it('gives the same numbers for the same seed, as JSON', async () => {
    const folder = jobFolder(small);
    const args = ['buy', folder, '--draws', '4', '--grades', '2A', '--json', '--seed', '5'];
    const first = (await runIn(testWorld(), ...args)).out;
    expect((await runIn(testWorld(), ...args)).out).toBe(first);
    expect(json(first)).toMatchObject({ format: 'mantelwright estimate 1', seed: 5, visits: 4 });
  });

  it('counts what is owned first', async () => {
    const folder = jobFolder({ ...small, 'boards.csv': `${boardsHead}B1,3,48,6 1/2,4/4,rough,1C,20\n` });
    const { code, out } = await runIn(testWorld(), 'buy', folder, '--draws', '2', '--grades', '2A');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^4\/4: what is owned suffices: nothing has to be bought\.\n\n3 owned boards counted/,
    );
    expect(namesBelow(join(folder, 'out'))).toEqual(['buy.csv', 'buy.html']);
    expect(readFileSync(join(folder, 'out', 'buy.html'), 'utf8')).toContain('nothing has to be bought');
    const answer = json((await runIn(testWorld(), 'buy', folder, '--json')).out);
    expect(answer).toMatchObject({ lumber: [{ thickness: '4/4', ownedSuffices: true, grades: [] }] });
    const without = await runIn(
      testWorld(),
      'buy',
      folder,
      '--draws',
      '2',
      '--grades',
      '2A',
      '--nothing-owned',
    );
    expect(without.out).toContain('Nothing is counted as owned');
  });

  it.each<[string[], RegExp]>([
    [['--grades', 'AAA'], /Grades are FAS, Selects, 1C, 2A/],
    [['--prices', 'FAS'], /GRADE=MONEY/],
    [['--draws', '0'], /1 or more/],
    [['--take'], /--take needs a yard\.csv/],
  ])('%j is refused with what would be right', async (args, message) => {
    const { code, err } = await runIn(testWorld(), 'buy', jobFolder(small), ...args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
