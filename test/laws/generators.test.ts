import { describe, expect, test } from 'vitest';
import { ticksPerInch } from '../../src/base/units/tick.ts';
import { handMethod } from '../bench/hand-method.ts';
import { perfectJob } from './perfect-job.ts';
import { mantelJob } from './random-job.ts';

function area(shapes: readonly { length: number; width: number; quantity: number }[]): number {
  return shapes.reduce((sum, shape) => sum + shape.quantity * shape.length * shape.width, 0);
}

describe('perfectJob', () => {
  test('is the same for the same seed, and has the pieces and boards asked for', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      const given = { seed, sources: 3, pieces: 25, decoys: 5 };
      const { job, sourceCost } = perfectJob(given);
      expect(perfectJob(given)).toEqual({ job, sourceCost });
      expect(job.boards).toHaveLength(8);
      const pieces = job.parts.reduce((sum, part) => sum + part.quantity, 0);
      expect(pieces).toBeGreaterThanOrEqual(23);
      expect(pieces).toBeLessThanOrEqual(28);
    }
  });

  test('the area argument holds with the rounded prices: no cheaper set of boards has the grown area', () => {
    const kerf = 1016;
    const grown = (s: { length: number; width: number }): number => (s.length + kerf) * (s.width + kerf);
    for (let seed = 1; seed <= 40; seed += 1) {
      const { job, sourceCost } = perfectJob({ seed, sources: 4, pieces: 30, decoys: 4 });
      const need = job.parts.reduce((sum, part) => sum + part.quantity * grown(part), 0);
      let least = Infinity;
      for (let set = 0; set < 1 << job.boards.length; set += 1) {
        const chosen = job.boards.filter((_, index) => (set >> index) & 1);
        const held = chosen.reduce((sum, board) => sum + grown(board), 0);
        if (held >= need)
          least = Math.min(
            least,
            chosen.reduce((sum, board) => sum + board.cost, 0),
          );
      }
      expect(least).toBeCloseTo(sourceCost, 6);
    }
  });
});

describe('mantelJob', () => {
  test('holds about twice the area needed, all sizes on 1/16 in, 1 to 4 defects a board', () => {
    const shares: number[] = [];
    for (let seed = 1; seed <= 40; seed += 1) {
      const job = mantelJob(seed, { kinds: 10, boards: 14, pieces: 30 });
      expect(job).toEqual(mantelJob(seed, { kinds: 10, boards: 14, pieces: 30 }));
      expect(job.parts.reduce((sum, part) => sum + part.quantity, 0)).toBe(30);
      for (const shape of [...job.parts, ...job.boards]) {
        expect((shape.length * 16) % ticksPerInch).toBe(0);
        expect((shape.width * 16) % ticksPerInch).toBe(0);
      }
      for (const board of job.boards) {
        expect(board.defects.length).toBeGreaterThanOrEqual(1);
        for (const defect of board.defects) {
          expect(defect.x).toBeGreaterThanOrEqual(0);
          expect(defect.x + defect.length).toBeLessThanOrEqual(board.length);
          expect(defect.y + defect.width).toBeLessThanOrEqual(board.width);
        }
      }
      shares.push(area(job.boards) / area(job.parts));
    }
    shares.sort((a, b) => a - b);
    expect(shares[20]).toBeGreaterThan(1.8);
    expect(shares[20]).toBeLessThan(2.2);
  });

  test('every piece can be had: some way of cutting the boards gives them all', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const job = mantelJob(seed, { kinds: 10, boards: 14, pieces: 18 });
      expect(handMethod(job)?.short, `seed ${seed}`).toEqual([]);
    }
  });
});
