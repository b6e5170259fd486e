import { describe, expect, it } from 'vitest';
import { inches, millimetres, ticksPerInch } from '../../src/base/units/tick.ts';
import type { Leg, Mantel } from '../../src/flow/plan/mantel.ts';
import { type MantelPlan, type PlanOptions, planMantel } from '../../src/flow/plan/plan-mantel.ts';
import { sawAngles } from '../../src/flow/plan/saw-angles.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import { readLegs } from '../../src/shell/read/mantel.ts';
import { pieceOf, plainMantel } from './mantels.ts';

// Mantels worked by hand with a pocket calculator, seven figures carried; each size holds to 1/64 in.
const sixtyFourth = inches(1 / 64);
const ticksPerMillimetre = millimetres(1);

/** A plan from a legs file as a person writes it. */
function measured(
  mantel: Partial<Mantel>,
  rows: string,
  units: 'in' | 'mm' = 'in',
  options: PlanOptions = {},
): MantelPlan {
  const text = `leg,along wall,projection,wall corner\n${rows}`;
  const legs = readLegs('legs.csv', text, { ...defaultShop, units });
  expect(legs.problems).toEqual([]);
  const result = planMantel(
    { ...plainMantel, ledger: null, ...mantel },
    legs.value as readonly Leg[],
    options,
  );
  if (!result.ok) throw new Error(`not planned: ${JSON.stringify(result.problems)}`);
  return result.value;
}

/** Length, width, left and right bevel of each piece, to 1/64 in. @param unit ticks */
function expectPieces(
  plan: MantelPlan,
  unit: number,
  sizes: readonly (readonly [name: string, length: number, width: number, left: number, right: number])[],
): void {
  for (const [name, length, width, left, right] of sizes) {
    const piece = pieceOf(plan, name);
    expect(Math.abs(piece.length - unit * length), `length of ${name}`).toBeLessThanOrEqual(sixtyFourth);
    expect(Math.abs(piece.width - unit * width), `width of ${name}`).toBeLessThanOrEqual(sixtyFourth);
    expect([piece.leftEnd, piece.rightEnd], `ends of ${name}`).toEqual([left, right]);
  }
}

/**
 * Boards 3/4, a left return that ends free, a front between a blunt corner (92) and a sharp one (88), a right return that dies
 * into a side wall which leans away from it (92). Carcass: 7 - 3/4 = 6 1/4 and 8 - 3/4 = 7 1/4 deep.
 *   92: turned 88, sin 0.9993908, cos 0.0348995, tan 44 = 0.9656888
 *   88: turned 92, sin 0.9993908, cos -0.0348995, tan 46 = 1.0355303; side wall: tan 2 = 0.0349208
 */
const outOfSquare = 'left,12,7,92\nfront,60,8,88\nright,19,7,\n';
const outOfSquareMantel = { leftEnd: 'capped', rightEnd: 'wall', rightWallAngle: 92 } as const;

describe('corners of 92 and 88, one end into a wall of 92', () => {
  const plan = measured(outOfSquareMantel, outOfSquare);

  it('has bevels of 44 where the corner is blunt and of 46 where it is sharp', () => {
    const angles = sawAngles(plan).map(({ wall, bevels }) => [wall, ...bevels.map(({ degrees }) => degrees)]);
    expect(angles).toEqual([
      [null, 45, 45],
      ['92°', 44, 44],
      ['88°', 46, 46],
      ['inside 92°', 2],
    ]);
  });

  it('has facings to 1/64', () => {
    expectPieces(plan, ticksPerInch, [
      // As deep as the return stands off its wall: it is the finished mantel that stands off 7.
      ['left cap', 7, 6.5, 0, 45],
      // 12 to the cap's outer face; past the corner (7.25 - 6.25 × 0.0348995) / 0.9993908 = 7.03616; 0.75 × 0.9656888 = 0.72427.
      ['left facing', 12 + 7.03616 + 0.72427, 6.5, 45, 44],
      // (6.25 - 7.25 × 0.0348995) / 0.9993908 = 6.00063, and 0.72427; (6.25 + 7.25 × 0.0348995) / 0.9993908 = 6.50699, and
      // 0.75 × 1.0355303 = 0.77665.
      ['front facing', 6.00063 + 0.72427 + 60 + 6.50699 + 0.77665, 6.5, 44, 46],
      // (7.25 + 6.25 × 0.0348995) / 0.9993908 = 7.47267; the wall leans away by 7 × 0.0349208 = 0.24445 at the outer face.
      ['right facing', 0.77665 + 7.47267 + 19 + 0.24445, 6.5, 46, 2],
    ]);
  });

  it('has panels to 1/64', () => {
    expectPieces(plan, ticksPerInch, [
      // From the back of the cap to the line of the front's wall; at its front edge 6.25 × 0.0348995 / 0.9993908 less.
      ['left top', 12 - 0.75, 6.25, 0, 0],
      // Its ends follow the returns' facings: 6.25 / 0.9993908 = 6.25381 at the wall on the left, 6.50699 in front on the right.
      ['front top', 6.25381 + 60 + 6.50699, 7.25, 0, 0],
      // 6.25 × 0.0348995 / 0.9993908 = 0.21826 over the front's line, 6.25 × 0.0349208 = 0.21826 with the leaning wall.
      ['right top', 0.21826 + 19 + 0.21826, 6.25, 0, 0],
    ]);
  });

  it('slips over the breast with a gap at its sides, and is no larger outside for it', () => {
    const fitted = measured(outOfSquareMantel, outOfSquare, 'in', {
      room: { fitGap: inches(1 / 8), scribe: inches(0) },
    });
    for (const name of ['left facing', 'front facing', 'right facing', 'front top'])
      expect(pieceOf(fitted, name)).toEqual(pieceOf(plan, name));
    expectPieces(fitted, ticksPerInch, [
      ['left cap', 7 - 0.125, 6.5, 0, 45],
      ['left top', 12 - 0.75, 6.25 - 0.125, 0, 0],
      ['right top', 0.21826 + 19 + 0.21826, 6.25 - 0.125, 0, 0],
    ]);
  });
});

/**
 * Boards 20 mm: an alcove's wall (inside 90), a front, a splayed cheek (135) that stops open. Carcass 140, 160 and 160 deep.
 * Inside 90: each carcass stops short by the other's depth. 135: turned 45, 160 × (√2 - 1) = 66.274 past, 20 × (√2 - 1) = 8.284.
 */
describe('corners of inside 90 and 135, in millimetres', () => {
  const plan = measured(
    { thickness: millimetres(20), faceHeight: millimetres(160), leftEnd: 'wall', rightEnd: 'open' },
    'side,900,160,inside 90\nfront,1500,180,135°\ncheek,400,180,\n',
    'mm',
  );
  it('to 1/64 in', () => {
    expectPieces(plan, ticksPerMillimetre, [
      ['side facing', 900 - 160, 160, 0, -45],
      ['front facing', 1500 - 140 + 66.274 + 8.284, 160, -45, 22.5],
      ['cheek facing', 8.284 + 66.274 + 400, 160, 22.5, 0],
      // The front's panel runs on to the alcove's wall, the side's butts against its front edge.
      ['side top', 900 - 160, 140, 0, 0],
      ['front top', 1500 + 66.274, 160, 0, 0],
    ]);
    expect(sawAngles(plan).map(({ wall }) => wall)).toEqual(['inside 90°', '135°']);
  });
});

describe('square corners, in millimetres', () => {
  // Boards 20: returns of 150 (130 deep) and a front of 170 (150 deep), both ends capped.
  const rows = 'left,300,150,90\nfront,1500,170,\nright,300,150,\n';
  const metric = {
    thickness: millimetres(20),
    faceHeight: millimetres(160),
    leftEnd: 'capped',
    rightEnd: 'capped',
  } as const;
  it('mitered panels, from corner to corner of the carcass', () => {
    expectPieces(measured({ ...metric, panelJoint: 'miter' }, rows, 'mm'), ticksPerMillimetre, [
      // Overall: 1500 and twice 150, to the tick.
      ['front facing', 1800, 160, 45, 45],
      ['left facing', 300 + 170, 160, 45, 45],
      ['right cap', 150, 160, 45, 0],
      ['front top', 1500 + 2 * 130, 150, 0, 0],
      ['left top', 300 - 20 + 150, 130, 0, 0],
    ]);
  });
  it('butted panels, a return longer than a board is wide', () => {
    expectPieces(measured(metric, rows, 'mm'), ticksPerMillimetre, [
      ['front top', 1500 + 2 * 130, 150, 0, 0],
      ['left top', 300 - 20, 130, 0, 0],
    ]);
  });
});

describe('a beam between two walls', () => {
  it('whose right one leans over it (88): long points on the back and at the wall', () => {
    const plan = measured({ leftEnd: 'wall', rightEnd: 'wall', rightWallAngle: 88 }, 'beam,60,8,\n');
    // 7.25 × tan 2 = 0.25318 short at the facing's back, its longer face; 60 along the wall.
    expectPieces(plan, ticksPerInch, [
      ['beam facing', 60 - 0.25318, 6.5, 0, -2],
      ['beam top', 60, 7.25, 0, 0],
    ]);
  });
});

/**
 * Long edges mitered: boards 3/4, a left return 9 to its cap and 5 off the wall, a front 60 and 8 off, its right end open. The
 * panels' long points reach the outer faces, so they are as wide as the mantel stands off.
 */
describe('long edges mitered', () => {
  const plan = measured(
    { faceJoint: 'miter', leftEnd: 'capped', rightEnd: 'open' },
    'left,9,5,90\nfront,60,8,\n',
  );
  it('facings as with butted edges, panels out to the faces, beveled where they meet facing and cap', () => {
    expectPieces(plan, ticksPerInch, [
      ['left cap', 5, 6.5, 0, 45],
      ['left facing', 9 + 8, 6.5, 45, 45],
      ['front facing', 5 + 60, 6.5, 45, 0],
      // It runs on to the return's outer face: 60 + 5, and is 8 wide.
      ['front top', 65, 8, 45, 0],
      // Edge-joined, its grain across the leg: 5 long, from the front's wall to the cap's outer face 9 wide.
      ['left top', 5, 9, 45, 0],
    ]);
    expect(pieceOf(plan, 'front facing').note).toContain('top and bottom edges beveled 45°');
    expect(pieceOf(plan, 'front top').note).toContain(
      'beveled 45° at the edge at the facing and the left end',
    );
    expect(pieceOf(plan, 'left top').note).toContain('the left end of the leg');
  });
  it('mitered panels of unequal depth, from wall corner to carcass corner to the outer corner', () => {
    const mitered = measured(
      { faceJoint: 'miter', panelJoint: 'miter', leftEnd: 'open', rightEnd: 'open' },
      'left,20,5,90\nfront,60,8,\n',
    );
    expectPieces(mitered, ticksPerInch, [
      ['left top', 20 + 8, 5, 0, 0],
      ['front top', 60 + 5, 8, 0, 0],
    ]);
    // Up to the carcass's corner 7.25 over 4.25: arctan 1.70588 = 59.6; from there out the facings' own 45.
    expect(pieceOf(mitered, 'left top').note).toContain('right end mitered 59.6°');
  });
});
