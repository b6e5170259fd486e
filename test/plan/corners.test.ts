import { describe, expect, it } from 'vitest';
import { runPast } from '../../src/flow/plan/corner.ts';
import { leg, pieceOf, planned, sizeOf, upTicks } from './mantels.ts';

const root2 = Math.SQRT2;

describe('how far the carcass runs past the wall corner, by hand', () => {
  it('square: by the neighbour’s projection', () => {
    expect(runPast(8, 8, 90)).toBe(8);
    expect(runPast(8, 5, 90)).toBe(5);
  });
  it('45 degrees, both 8: 8 tan 22.5 = 8 (√2 - 1)', () => {
    expect(runPast(8, 8, 45)).toBeCloseTo(8 * (root2 - 1), 12);
  });
  it('135 degrees, both 8: 8 tan 67.5 = 8 (√2 + 1)', () => {
    expect(runPast(8, 8, 135)).toBeCloseTo(8 * (root2 + 1), 12);
  });
  it('45 degrees, 6 beside 8: 8 √2 - 6 one way, 6 √2 - 8 the other', () => {
    expect(runPast(6, 8, 45)).toBeCloseTo(8 * root2 - 6, 12);
    expect(runPast(8, 6, 45)).toBeCloseTo(6 * root2 - 8, 12);
  });
  it('inside square: short by the neighbour’s projection', () => {
    expect(runPast(8, 5, -90)).toBe(-5);
  });
});

describe('facings at corners', () => {
  it('one thickness a mitered end at a square corner (common practice, no source)', () => {
    const plan = planned({}, [leg('left', 14, 8.75), leg('front', 60, 8.75), leg('right', 14, 8.75)]);
    // Carcass 60 + 8 + 8, and one thickness for each of two mitered ends.
    expect(sizeOf(plan, 'front facing')).toEqual([60 + 16 + 2 * 0.75, 6.5]);
    // Carcass 14 + 8, and one thickness for its one mitered end.
    expect(sizeOf(plan, 'left facing')).toEqual([14 + 8 + 0.75, 6.5]);
    expect(pieceOf(plan, 'left facing')).toMatchObject({ leftEnd: 0, rightEnd: 45 });
    expect(pieceOf(plan, 'front facing')).toMatchObject({ leftEnd: 45, rightEnd: 45 });
  });

  it('unequal projections, square: each runs past by the other’s', () => {
    const plan = planned({}, [leg('left', 11.5, 5.75), leg('front', 60, 8.25), leg('right', 9, 4.75)]);
    expect(sizeOf(plan, 'left facing')[0]).toBe(11.5 + 7.5 + 0.75);
    expect(sizeOf(plan, 'front facing')[0]).toBe(60 + 5 + 4 + 1.5);
    expect(sizeOf(plan, 'right facing')[0]).toBe(9 + 7.5 + 0.75);
  });

  it('turned by 45: bevels of 22.5, gaining 3/4 (√2 - 1) an end', () => {
    const plan = planned({}, [leg('left', 20, 8.75, 45), leg('front', 48, 8.75)]);
    const past = 8 * (root2 - 1);
    const gain = 0.75 * (root2 - 1);
    expect(pieceOf(plan, 'front facing').length).toBe(upTicks(48 + past + gain));
    expect(pieceOf(plan, 'left facing').length).toBe(upTicks(20 + past + gain));
    expect(pieceOf(plan, 'left facing').rightEnd).toBe(22.5);
    // 20 + 3.3137 + 0.3107
    expect(pieceOf(plan, 'left facing').length / 8128).toBeCloseTo(23.6244, 3);
  });

  it('turned by 45 with unequal projections', () => {
    const plan = planned({}, [leg('left', 30, 6.75, 45), leg('front', 50, 8.75)]);
    expect(sizeOf(plan, 'left facing')[0]).toBeCloseTo(30 + (8 * root2 - 6) + 0.75 * (root2 - 1), 3);
    expect(sizeOf(plan, 'front facing')[0]).toBeCloseTo(50 + (6 * root2 - 8) + 0.75 * (root2 - 1), 3);
  });

  it('turned by 135: bevels of 67.5, gaining 3/4 (√2 + 1) an end', () => {
    const plan = planned({}, [leg('front', 48, 4.75, 135), leg('right', 20, 4.75)]);
    const both = (4 + 0.75) * (root2 + 1);
    expect(pieceOf(plan, 'front facing').length).toBe(upTicks(48 + both));
    expect(pieceOf(plan, 'right facing')).toMatchObject({
      length: upTicks(20 + both),
      leftEnd: 67.5,
      rightEnd: 0,
    });
  });

  it('inside square corner: the long point is on the back, and nothing is gained', () => {
    const plan = planned({}, [leg('front', 50, 8.75, -90), leg('right', 20, 6.75)]);
    expect(sizeOf(plan, 'front facing')[0]).toBe(50 - 6);
    expect(sizeOf(plan, 'right facing')[0]).toBe(20 - 8);
    expect(pieceOf(plan, 'front facing')).toMatchObject({ leftEnd: 0, rightEnd: -45 });
    expect(pieceOf(plan, 'right facing')).toMatchObject({ leftEnd: -45, rightEnd: 0 });
  });

  it('an inside and an outside corner on one leg: long points on opposite faces', () => {
    const plan = planned({}, [leg('left', 30, 5.75, -90), leg('front', 50, 8.75), leg('right', 12, 6.75)]);
    // Inner face: from 5 past the left corner to 6 past the right one; the outer face gains 3/4 on the right only.
    expect(sizeOf(plan, 'front facing')[0]).toBe(50 - 5 + 6 + 0.75);
    expect(pieceOf(plan, 'front facing')).toMatchObject({ leftEnd: -45, rightEnd: 45 });
  });

  it('an inside corner of 45 degrees', () => {
    const plan = planned({}, [leg('front', 50, 8.75, -45), leg('right', 30, 8.75)]);
    // (8 - 8 cos 45) / sin -45 = -8 (√2 - 1): short of the corner by as much as an outside one runs past.
    expect(sizeOf(plan, 'front facing')[0]).toBeCloseTo(50 - 8 * (root2 - 1), 3);
  });
});

describe('free ends', () => {
  const legs = [leg('beam', 72, 8.75)];
  it('capped: as long as the finished mantel; the cap is as long as it stands off; the panel one thickness less at each cap', () => {
    const plan = planned({ leftEnd: 'capped', rightEnd: 'capped' }, legs);
    expect(sizeOf(plan, 'beam facing')).toEqual([72, 6.5]);
    expect(sizeOf(plan, 'left cap')).toEqual([8.75, 6.5]);
    expect(pieceOf(plan, 'left cap')).toMatchObject({ leftEnd: 0, rightEnd: 45 });
    expect(pieceOf(plan, 'right cap')).toMatchObject({ leftEnd: 45, rightEnd: 0 });
    expect(sizeOf(plan, 'beam top')).toEqual([70.5, 8]);
  });
  it('wall and open: square and no longer than the leg', () => {
    const plan = planned({ leftEnd: 'wall', rightEnd: 'open' }, legs);
    expect(sizeOf(plan, 'beam facing')).toEqual([72, 6.5]);
    expect(pieceOf(plan, 'beam facing')).toMatchObject({ leftEnd: 0, rightEnd: 0 });
    expect(plan.pieces.filter(({ kind }) => kind === 'cap')).toEqual([]);
  });
});
