import { ticks } from '../../base/units/tick.ts';
import { miterGain, radians } from '../../trade/miter.ts';
import type { Mantel } from './mantel.ts';
import type { PlanPiece } from './piece.ts';
import { type LegEnd, type PlannedLeg } from './planned-leg.ts';
import { pointOf } from './point.ts';

/**
 * The strips on the wall that the box slips over and hangs on, under the top panel: one along each leg. At an inside corner both
 * stop short by thickness × tan(φ/2), where their front edges meet, so that neither is in the other's way; at a free end they stop
 * where the carcass does.
 * A leg too short for one has none.
 */
export function ledgerPieces(mantel: Mantel, legs: readonly PlannedLeg[]): PlanPiece[] {
  const { ledger } = mantel;
  if (ledger === null) return [];
  return legs.flatMap((leg, index): PlanPiece[] => {
    const from = givenUp(leg.left, ledger.thickness);
    const to = leg.alongWall - givenUp(leg.right, ledger.thickness);
    const length = Math.floor(to - from + 1e-6);
    if (length <= 0) return [];
    const corner = (along: number, off: number) => pointOf(leg.frame, along, off);
    return [
      {
        name: `${leg.name} ledger`,
        kind: 'ledger',
        leg: index,
        length: ticks(length),
        width: ledger.width,
        thickness: ledger.thickness,
        leftEnd: 0,
        rightEnd: 0,
        extraLength: ticks(0),
        extraWidth: ticks(0),
        quality: 'sound',
        show: 0,
        glueUp: 1,
        note: 'on the wall; ease its ends so that the box slips over it',
        outline: [
          corner(from, 0),
          corner(to, 0),
          corner(to, ledger.thickness),
          corner(from, ledger.thickness),
        ],
      },
    ];
  });
}

function givenUp(end: LegEnd, thickness: number): number {
  if (end.kind === 'capped') return -end.carcass;
  // A side wall that leans over the leg is nearest at the ledger's front edge.
  if (end.kind === 'wall') return thickness * Math.tan(radians(Math.max(0, -end.bevel)));
  if (end.turn >= 0) return 0;
  return end.turn === -90 ? thickness : miterGain(thickness, -end.turn / 2);
}
