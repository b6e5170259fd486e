import { describe, expect, test } from 'vitest';
import { describeFault } from '../../src/flow/check/describe-fault.ts';
import type { CheckProblem } from '../../src/flow/check/fault.ts';
import { verify } from '../../src/flow/check/verify.ts';
import { layOut } from '../../src/flow/cuts/lay-out.ts';
import { cuttableJob } from '../laws/cuttable-job.ts';
import { boardFaults } from './planted/boards.ts';
import type { Case } from './planted/case.ts';
import { cutFaults, offcutFaults } from './planted/cuts.ts';
import { faceFaults } from './planted/faces.ts';
import { pieceFaults } from './planted/pieces.ts';
import { runFaults } from './planted/runs.ts';
import { woodFaults } from './planted/woods.ts';
import { sumFaults } from './planted/sums.ts';

const plantedFaults = [
  ...pieceFaults,
  ...faceFaults,
  ...runFaults,
  ...boardFaults,
  ...cutFaults,
  ...offcutFaults,
  ...sumFaults,
  ...woodFaults,
];

/** Each fault is planted in this many right layouts. */
const wanted = 12;

const right: readonly Case[] = Array.from({ length: 300 }, (_, seed) => {
  const { job, choice } = cuttableJob(seed, { boards: 2, pieces: 12 });
  return { job, layout: layOut(job, choice) };
});

describe('the layouts before anything is planted', () => {
  test('are right', () => {
    for (const { job, layout } of right) expect(verify(job, layout)).toEqual([]);
  });
});

describe('a planted fault is reported', () => {
  test.each(plantedFaults.map((fault) => [fault.name, fault] as const))('%s', (_, fault) => {
    let planted = 0;
    for (const [seed, given] of right.entries()) {
      const spoilt = fault.plant(given);
      if (spoilt === null) continue;
      const found = verify(spoilt.job, spoilt.layout);
      const kinds = found.map(({ kind }) => kind);
      expect(
        kinds.some((kind) => fault.expected.includes(kind)),
        `seed ${seed}: reported ${JSON.stringify(kinds)}`,
      ).toBe(true);
      planted += 1;
      if (planted === wanted) break;
    }
    expect(planted, 'too few layouts to plant it in').toBe(wanted);
  });
});

describe('the words for faults', () => {
  test('say each in one line, without a hole', () => {
    const seen = new Map<CheckProblem['kind'], string>();
    for (const { plant } of plantedFaults) {
      for (const given of right) {
        const spoilt = plant(given);
        if (spoilt === null) continue;
        for (const found of verify(spoilt.job, spoilt.layout)) seen.set(found.kind, describeFault(found));
        break;
      }
    }
    for (const words of seen.values()) {
      expect(words).toMatch(/^[^\n]{10,}$/);
      expect(words).not.toMatch(/undefined|null|NaN|\[object/);
    }
    // All kinds but the one that needs a run beside other pieces: see replay.test.ts.
    expect(seen.size).toBeGreaterThanOrEqual(39);
  });
});
