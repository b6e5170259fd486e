import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobFolder } from './job-folder.ts';
import { runIn, testWorld } from './test-world.ts';

type Files = 'mantel.csv' | 'legs.csv';

/** Every cell that is measured or chosen, and other values of it. */
const cells: readonly (readonly [file: Files, row: string, column: number, values: fc.Arbitrary<string>])[] =
  [
    ...(['left', 'front', 'right'] as const).flatMap((leg) => [
      ['legs.csv', leg, 0, fc.constantFrom('a', 'b')] as const,
      ['legs.csv', leg, 1, fc.integer({ min: 20, max: 90 }).map(String)] as const,
      ['legs.csv', leg, 2, fc.integer({ min: 16, max: 40 }).map((quarters) => String(quarters / 4))] as const,
    ]),
    ...(['left', 'front'] as const).map(
      (leg) => ['legs.csv', leg, 3, fc.integer({ min: 80, max: 100 }).map(String)] as const,
    ),
    ['mantel.csv', 'face height', 1, fc.integer({ min: 10, max: 19 }).map((halves) => String(halves / 2))],
    ['mantel.csv', 'thickness', 1, fc.constantFrom('5/8 in', '3/4 in', '7/8 in', '1')],
    ['mantel.csv', 'bottom', 1, fc.constantFrom('closed', 'open')],
    ['mantel.csv', 'left end', 1, fc.constantFrom('capped', 'wall', 'open')],
    ['mantel.csv', 'right end', 1, fc.constantFrom('capped', 'wall', 'open')],
    ['mantel.csv', 'left wall angle', 1, fc.integer({ min: 85, max: 95 }).map(String)],
    ['mantel.csv', 'species', 1, fc.constantFrom('red oak', 'black walnut')],
    ['mantel.csv', 'panel joint', 1, fc.constantFrom('butt', 'miter')],
    ['mantel.csv', 'ledger section', 1, fc.constantFrom('none', '3/4 x 2', '3/4 x 3', '1 x 3')],
  ];

const measured: Readonly<Record<Files, string>> = {
  'legs.csv': 'leg,along wall,projection,wall corner\nleft,30,5,90\nfront,60,7,90\nright,25,6,\n',
  'mantel.csv':
    'setting,value\nface height,6\nthickness,13/16\nbottom,closed\nleft end,wall\nleft wall angle,92\nright end,capped\n' +
    'panel joint,butt\nledger section,3/4 x 2 1/2\nheight above opening,14\nspecies,white ash\n',
};
const files = {
  ...measured,
  'parts.csv': null,
  'defects.csv': null,
  'boards.csv': 'board,quantity,length,width,thickness,species,price\nA,30,200,11,5/4,white ash,20\n',
};

function withCell(text: string, row: string, column: number, value: string): string {
  return text
    .split('\n')
    .map((line) => {
      const list = line.split(',');
      return list[0] === row ? list.map((cell, index) => (index === column ? value : cell)).join(',') : line;
    })
    .join('\n');
}

/** The cut parts of a fresh folder with these measurements; null when they cannot be built. */
async function freshParts(now: Readonly<Record<Files, string>>): Promise<string | null> {
  const folder = jobFolder({ ...files, ...now });
  const { code } = await runIn(testWorld(), 'plan', folder);
  return code === 0 ? readFileSync(join(folder, 'parts.csv'), 'utf8') : null;
}

describe('a law of measurements', () => {
  it('changing any of them stops the layout, and the mend it names cuts what a fresh plan would', async () => {
    const change = fc.integer({ min: 0, max: cells.length - 1 }).chain((index) => {
      const [file, row, column, values] = cells[index]!;
      return values.map((value) => ({ file, row, column, value }));
    });
    const before = await freshParts(measured);
    expect(before).not.toBeNull();
    const seen = { stopped: 0, unbuildable: 0 };
    await fc.assert(
      fc.asyncProperty(change, async ({ file, row, column, value }) => {
        const now = { ...measured, [file]: withCell(measured[file], row, column, value) };
        const folder = jobFolder({ ...files, ...now, 'parts.csv': before! });
        const laid = await runIn(testWorld(), 'layout', folder, '--effort', '0');
        if (now[file] === measured[file]) {
          expect(laid).toMatchObject({ code: 0, err: '' });
          return;
        }
        expect(laid).toMatchObject({ code: 2, out: '' });
        expect(readFileSync(join(folder, 'parts.csv'), 'utf8')).toBe(before);
        const fresh = await freshParts(now);
        seen[fresh === null ? 'unbuildable' : 'stopped'] += 1;
        if (fresh === null) return;
        expect((await runIn(testWorld(), 'plan', folder)).code).toBe(0);
        expect(readFileSync(join(folder, 'parts.csv'), 'utf8')).toBe(fresh);
        // Measured back again, the first plan stops as well.
        writeFileSync(join(folder, file), measured[file]);
        expect((await runIn(testWorld(), 'check', folder, 'none.json')).err).toContain('no longer follow');
      }),
      { numRuns: 60 },
    );
    expect(seen.stopped).toBeGreaterThan(20);
  });

  it('what cuts nothing stops nothing', async () => {
    const before = await freshParts(measured);
    const higher = withCell(measured['mantel.csv'], 'height above opening', 1, '20');
    const folder = jobFolder({ ...files, 'mantel.csv': higher, 'parts.csv': before });
    expect(await runIn(testWorld(), 'layout', folder, '--effort', '0')).toMatchObject({ code: 0, err: '' });
    expect(readFileSync(join(folder, 'out', 'sheet.html'), 'utf8')).toMatch(/underside 20\b/);
  });
});
