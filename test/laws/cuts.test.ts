import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import { parseLayout } from '../../src/flow/check/parse-layout.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import { cuttableJobs } from './arbitraries.ts';

const many = { numRuns: 200 };

describe('every choice that can be cut', () => {
  test('is laid out, and the check finds nothing', () => {
    fc.assert(
      fc.property(cuttableJobs({ boards: 3, pieces: 14 }), ({ job, choice }) => {
        const layout = layOut(job, choice);
        expect(verify(job, layout).map((fault) => describeFault(fault))).toEqual([]);
      }),
      many,
    );
  });

  test('balances its areas to the last square tick', () => {
    fc.assert(
      fc.property(cuttableJobs({ boards: 3, pieces: 14 }), ({ job, choice }) => {
        for (const { area, length, width } of layOut(job, choice).boards) {
          const { parts, offcuts, kerf, trim, scrap } = area;
          expect(area.board).toBe(length * width);
          expect(parts + offcuts + kerf + trim + scrap).toBe(area.board);
          expect(Math.min(parts, offcuts, kerf, trim, scrap)).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('reads back from JSON as it was', () => {
    fc.assert(
      fc.property(cuttableJobs({ boards: 2, pieces: 8 }), ({ job, choice }) => {
        const layout = layOut(job, choice);
        expect(parseLayout(JSON.parse(JSON.stringify(layout)))).toEqual({ ok: true, value: layout });
      }),
      { numRuns: 50 },
    );
  });
});
