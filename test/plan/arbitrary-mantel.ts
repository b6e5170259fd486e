import fc from 'fast-check';
import { type Tick, inches, ticks } from '../../src/base/units/tick.ts';
import type { Leg, Mantel } from '../../src/flow/plan/mantel.ts';
import { plainMantel } from './mantels.ts';

const sixteenths = (least: number, most: number): fc.Arbitrary<Tick> =>
  fc.integer({ min: least * 16, max: most * 16 }).map((count) => inches(count / 16));
const end = fc.constantFrom('capped', 'wall', 'open') as fc.Arbitrary<Mantel['leftEnd']>;

const wallAngle = fc.constantFrom(90, 90, 88, 93.5, 120);

/** Settings of a box mantel that fit together. */
export const anyMantel: fc.Arbitrary<Mantel> = fc.record({
  faceHeight: sixteenths(4, 10),
  thickness: fc.constantFrom(inches(0.75), inches(13 / 16), inches(1)),
  bottom: fc.constantFrom('closed', 'open'),
  leftEnd: end,
  rightEnd: end,
  leftWallAngle: wallAngle,
  rightWallAngle: wallAngle,
  panelJoint: fc.constantFrom('butt', 'miter'),
  faceJoint: fc.constantFrom('butt', 'miter'),
  heightAboveOpening: fc.constantFrom(null, inches(8), inches(14)),
  ledger: fc.constantFrom(null, { thickness: inches(0.75), width: inches(1.5) }),
  species: fc.constantFrom('', 'black walnut', 'oak', 'driftwood'),
}) as fc.Arbitrary<Mantel>;

const turn = fc.oneof(
  { weight: 3, arbitrary: fc.constant(90) },
  fc.constantFrom(45, 30, 60, 88, 92, 120, 135, -90, -45, -30),
  fc.integer({ min: 20, max: 110 }),
);

/** One to five legs; not every such mantel can be built. Lengths differ, so that there is one front. */
export const anyLegs: fc.Arbitrary<Leg[]> = fc
  .array(fc.record({ alongWall: sixteenths(6, 90), projection: sixteenths(3, 13), turn }), {
    minLength: 1,
    maxLength: 5,
  })
  .map((legs) =>
    legs.map((leg, index) => ({ ...leg, name: `leg ${index}`, alongWall: ticks(leg.alongWall + index) })),
  );

/** The same mantel seen in a mirror: left and right change places. */
export function mirrored(mantel: Mantel, legs: readonly Leg[]): [Mantel, Leg[]] {
  const turned = [...legs].reverse().map((leg, index) => ({
    ...leg,
    turn: legs[legs.length - 2 - index]?.turn ?? 90,
  }));
  const { leftEnd, rightEnd, leftWallAngle, rightWallAngle } = mantel;
  const swapped = {
    leftEnd: rightEnd,
    rightEnd: leftEnd,
    leftWallAngle: rightWallAngle,
    rightWallAngle: leftWallAngle,
  };
  return [{ ...mantel, ...swapped }, turned];
}

export { plainMantel };
