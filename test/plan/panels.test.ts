import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { leg, pieceOf, planned, sizeOf } from './mantels.ts';

const breast = (depth: number) => [
  leg('left', depth, 5.75),
  leg('front', 60, 8.25),
  leg('right', depth, 5.75),
];

describe('panels', () => {
  it('butted: the front runs on behind the returns’ facings, as wide as its projection', () => {
    expect(sizeOf(planned({}, breast(9)), 'front top')).toEqual([60 + 5 + 5, 7.5]);
  });

  it('short returns have their grain along the front: 5 long, 9 deep, edge-joined', () => {
    const plan = planned({}, breast(9));
    expect(sizeOf(plan, 'left top')).toEqual([5, 9]);
    expect(pieceOf(plan, 'left top').note).toContain('edge-joined to the back of front top');
    expect(pieceOf(plan, 'left bottom').note).toContain('edge-joined to the back of front bottom');
  });

  it('longer ones have their own grain along the leg', () => {
    const plan = planned({}, breast(14));
    expect(sizeOf(plan, 'left top')).toEqual([14, 5]);
    expect(pieceOf(plan, 'left top').note).toBe('');
  });

  it('what is short depends on the measurements alone, whatever the boards', () => {
    expect(sizeOf(planned({}, breast(9), { widestBoard: inches(8.5) }), 'left top')).toEqual([5, 9]);
    expect(sizeOf(planned({}, breast(14), { widestBoard: inches(14) }), 'left top')).toEqual([14, 5]);
  });

  it('mitered: from the wall corner to the corner of the carcass, short returns too', () => {
    const plan = planned({ panelJoint: 'miter' }, breast(9));
    expect(sizeOf(plan, 'front top')).toEqual([70, 7.5]);
    expect(sizeOf(plan, 'left top')).toEqual([9 + 7.5, 5]);
    // Front: 5 past over 7.5 of width, arctan 2/3; return: 7.5 past over 5.
    expect(pieceOf(plan, 'front top').note).toContain(
      'left end mitered 33.7° across its width, long point at the front',
    );
    expect(pieceOf(plan, 'left top').note).toContain('right end mitered 56.3°');
  });

  it('equal projections miter at 45', () => {
    const plan = planned({ panelJoint: 'miter' }, [leg('front', 60, 8.75), leg('right', 20, 8.75)]);
    expect(pieceOf(plan, 'right top').note).toContain('left end mitered 45°');
  });

  it('a corner far from square is mitered even when butts are asked for', () => {
    const plan = planned({}, [leg('front', 48, 8.75, 45), leg('right', 20, 8.75)]);
    expect(pieceOf(plan, 'right top').note).toContain('left end mitered 22.5°');
    expect(sizeOf(plan, 'right top')[1]).toBe(8);
  });

  it('a corner not quite square is butted, its ends cut to the angle', () => {
    const plan = planned({}, [leg('front', 60, 8.75, 88), leg('right', 30, 8.75)]);
    expect(pieceOf(plan, 'right top').note).toContain(
      'left end cut 2° across its width, long point at the wall',
    );
    expect(sizeOf(plan, 'right top')).toEqual([30, 8]);
    // Edge-joined, grain along the front: corners (0,0), (6,0), (6,8) and (8 cot 88, 8), seen along a line at 88 degrees.
    const joined = planned({}, [leg('front', 60, 8.75, 88), leg('right', 6, 8.75)]);
    const [sin, cos] = [Math.sin((88 * Math.PI) / 180), Math.cos((88 * Math.PI) / 180)];
    const [length, width] = sizeOf(joined, 'right top');
    expect(length).toBeCloseTo(8 * sin + 6 * cos, 3);
    expect(width).toBeCloseTo(6 * sin, 3);
  });

  it('inside corner: the front runs on to the wall, the other butts against its front edge', () => {
    const plan = planned({}, [leg('front', 60, 8.75, -90), leg('right', 30, 6.75)]);
    expect(sizeOf(plan, 'front top')).toEqual([60, 8]);
    expect(sizeOf(plan, 'right top')).toEqual([30 - 8, 6]);
  });

  it('open bottom: no bottom panels', () => {
    const plan = planned({ bottom: 'open' }, breast(9));
    expect(plan.pieces.some(({ kind }) => kind === 'bottom')).toBe(false);
  });

  it('wide panels may be glued up, 4 in a strip or less; facings only when no board is wide enough', () => {
    const plan = planned({ faceHeight: inches(9) }, [leg('front', 60, 9.75)], { widestBoard: inches(8) });
    expect(pieceOf(plan, 'front top').glueUp).toBe(3);
    expect(pieceOf(plan, 'front facing')).toMatchObject({
      glueUp: 2,
      note: 'no board is this wide: a glue line will show',
    });
    expect(pieceOf(planned({}, [leg('front', 60, 4.75)]), 'front top').glueUp).toBe(1);
  });
});

describe('ledger', () => {
  it('along each wall, stopping short by a thickness where two would meet in an inside corner', () => {
    const plan = planned({}, [leg('left', 30, 5.75, -90), leg('front', 50, 8.75), leg('right', 12, 6.75)]);
    expect(sizeOf(plan, 'left ledger')).toEqual([29.25, 3]);
    expect(sizeOf(plan, 'front ledger')).toEqual([49.25, 3]);
    expect(sizeOf(plan, 'right ledger')).toEqual([12, 3]);
    expect(pieceOf(plan, 'front ledger')).toMatchObject({
      quality: 'sound',
      show: 0,
      thickness: inches(0.75),
    });
  });
  it('none when none is asked for', () => {
    const plan = planned({ ledger: null }, [leg('front', 50, 8.75)]);
    expect(plan.pieces.some(({ kind }) => kind === 'ledger')).toBe(false);
  });
});
