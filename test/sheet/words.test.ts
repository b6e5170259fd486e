import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Areas } from '../../src/flow/cuts/layout.ts';
import { gapSentence } from '../../src/flow/sheet/words/gap-words.ts';
import { nameText } from '../../src/flow/sheet/words/named.ts';
import { counted, decimal, money, ordinal, percent } from '../../src/flow/sheet/words/number-text.ts';
import { shareKinds, sharesInTenths } from '../../src/flow/sheet/words/shares.ts';
import { mantelJob, mantelLayout } from './mantel-sample.ts';

describe('figures', () => {
  it('money to the cent, thousands apart', () => {
    expect([0, 1204.5, -3.005, 1_000_000, 0.995].map(money)).toEqual([
      '$0.00',
      '$1,204.50',
      '-$3.01',
      '$1,000,000.00',
      '$1.00',
    ]);
  });

  it('percent never says none or all of what is not quite that', () => {
    expect([0, 0.0004, 0.714, 0.9999, 1].map(percent)).toEqual([
      '0.0 %',
      'under 0.1 %',
      '71.4 %',
      'over 99.9 %',
      '100.0 %',
    ]);
  });

  it('counts, ordinals, decimals', () => {
    expect([counted(1, 'board'), counted(2, 'copy', 'copies'), counted(1000, 'cut')]).toEqual([
      '1 board',
      '2 copies',
      '1,000 cuts',
    ]);
    expect([1, 2, 3, 4, 11, 12, 13, 21, 102, 111].map(ordinal).join(' ')).toBe(
      '1st 2nd 3rd 4th 11th 12th 13th 21st 102nd 111th',
    );
    expect([decimal(1234.567, 2), decimal(-0.001, 2), decimal(12, 0)]).toEqual(['1,234.57', '0.00', '12']);
  });
});

describe('the five shares', () => {
  it('add up to exactly 100.0 %, each within a tenth of its true value', () => {
    const share = fc.integer({ min: 0, max: 1e9 });
    fc.assert(
      fc.property(share, share, share, share, share, (parts, offcuts, kerf, trim, scrap) => {
        const board = parts + offcuts + kerf + trim + scrap;
        fc.pre(board > 0);
        const areas: Areas = { board, parts, offcuts, kerf, trim, scrap };
        const tenths = sharesInTenths(areas);
        expect(shareKinds.reduce((sum, kind) => sum + tenths[kind], 0)).toBe(1000);
        for (const kind of shareKinds)
          expect(Math.abs(tenths[kind] - (areas[kind] / board) * 1000)).toBeLessThan(1);
      }),
    );
  });

  it('are all nought without a board', () => {
    const none: Areas = { board: 0, parts: 0, offcuts: 0, kerf: 0, trim: 0, scrap: 0 };
    expect(sharesInTenths(none)).toEqual({ parts: 0, offcuts: 0, kerf: 0, trim: 0, scrap: 0 });
  });
});

describe('the gap in plain words', () => {
  const layout = { ...mantelLayout(), short: [] };
  const at = (value: number, bound: number): string =>
    gapSentence(mantelJob, {
      ...layout,
      proof: { value, bound, gap: (value - bound) / value, proven: value === bound },
    });

  it('says what no layout can beat, rounded to the safe side', () => {
    // 376.499 rounds down to 376.49, since 376.50 would be more than is proven; 3.501 / 376.499 = 0.93 %
    expect(at(380, 376.499)).toBe(
      'No layout of these boards can cost less than $376.49. This one costs $380.00, at most 0.9 % more.',
    );
  });

  it('says Proven only when it is', () => {
    expect(at(380, 380)).toBe('Proven: no layout of these boards can cost less. This one costs $380.00.');
    expect(at(380, 379.999)).not.toContain('Proven');
  });

  it('claims nothing of a bound of nothing', () => {
    expect(at(380, 0)).toContain('is not known');
  });

  it('names the credit when offcuts earn some', () => {
    const job = { ...mantelJob, shop: { ...mantelJob.shop, offcutCredit: 0.5 } };
    expect(gapSentence(job, layout)).toContain('once its kept offcuts are credited');
  });

  it('names what was held fixed, in the order of how much it matters', () => {
    const proof = { value: 380, bound: 376.499, gap: 0.01, proven: false };
    const under = ['grain unbroken', 'one tone', 'stages'] as const;
    expect(gapSentence(mantelJob, { ...layout, proof: { ...proof, under } })).toContain(
      'less than $376.49, with the grain of each run unbroken, all that shows of one tone and no board cut in more than 4 stages',
    );
  });

  it('says with parts short that the boards cannot hold the job, proven or not, and the board to add', () => {
    const lacking = mantelLayout();
    expect(lacking.short.length).toBeGreaterThan(0);
    const said = gapSentence(mantelJob, lacking);
    expect(said).toMatch(
      /^No layout of all parts was found on these boards; that there is none is not proven\./,
    );
    expect(said).toContain(lacking.short[0]!.part);
    expect(said).not.toMatch(/%|at most/);
    const toAdd = { length: 50 * 8128, width: 6.25 * 8128, thickness: 6096, least: true };
    const proof = { ...lacking.proof, proven: true, toAdd };
    const proven = gapSentence(mantelJob, { ...lacking, proof });
    expect(proven).toMatch(/^These boards cannot hold the job \(proven\)/);
    expect(proven).toContain(
      'The least to add: one more board, at least 50 × 6 1/4 rough and clear on one face',
    );
    expect(
      gapSentence(mantelJob, { ...lacking, proof: { ...proof, toAdd: { ...toAdd, least: false } } }),
    ).toContain('that would do, and a smaller one might');
  });

  it('turns round under most value', () => {
    const job = { ...mantelJob, shop: { ...mantelJob.shop, goal: 'most value' as const } };
    const proof = { value: 2700, bound: 2721.001, gap: 0.01, proven: false };
    expect(gapSentence(job, { ...layout, proof })).toBe(
      'No layout of these boards can be worth more than 2,721.01. The parts of this one are worth 2,700.00, at most 0.8 % less.',
    );
  });
});

describe('names', () => {
  it('are shortened, cleaned, kept to their own reading order, and never empty', () => {
    expect(nameText('x'.repeat(10_000), 5)).toBe('xxxx…');
    expect(nameText('a\u0000\u202Eb')).toBe('a\uFFFD\uFFFDb');
    expect(nameText('מדף')).toBe('\u2068מדף\u2069');
    expect(nameText(' \n ')).toBe('(no name)');
  });
});
