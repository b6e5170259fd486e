import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { planParts } from '../../src/flow/parts/plan-parts.ts';
import { leg, planned } from './mantels.ts';

/**
 * A double return counted by hand, seen from above (inches). Boards 3/4 thick, face 6 high, closed bottom, caps at the back
 * ends, butted panels, a ledger 3/4 × 3.
 *
 *      cap ▐ left ┌────────────────────────────┐ right ▐ cap
 *          ▐ 8 3/4│       breast, 60 wide      │18 3/4 ▐
 *          ▐5 3/4 └────────────────────────────┘ 5 3/4 ▐
 *          ▐_______________ front, 7 3/4 off____________▐
 */
describe('a double return, counted by hand', () => {
  const plan = planned({ faceHeight: inches(6), leftEnd: 'capped', rightEnd: 'capped' }, [
    leg('left', 8.75, 5.75),
    leg('front', 60, 7.75),
    leg('right', 18.75, 5.75),
  ]);
  const counted: [name: string, length: number, width: number, left: number, right: number, show: number][] =
    [
      ['left cap', 5 + 0.75, 6, 0, 45, 2],
      ['left facing', 0.75 + 8 + 7 + 0.75, 6, 45, 45, 2],
      ['front facing', 0.75 + 5 + 60 + 5 + 0.75, 6, 45, 45, 3],
      ['right facing', 0.75 + 7 + 18 + 0.75, 6, 45, 45, 2],
      ['right cap', 5 + 0.75, 6, 45, 0, 2],
      // The left return is 8 deep: grain along the front, edge-joined. The right one, 18 deep, keeps its own.
      ['left top', 5, 8, 0, 0, 1],
      ['front top', 5 + 60 + 5, 7, 0, 0, 1],
      ['right top', 18, 5, 0, 0, 1],
      ['left bottom', 5, 8, 0, 0, 1],
      ['front bottom', 5 + 60 + 5, 7, 0, 0, 1],
      ['right bottom', 18, 5, 0, 0, 1],
      ['left ledger', 8, 3, 0, 0, 0],
      ['front ledger', 60, 3, 0, 0, 0],
      ['right ledger', 18, 3, 0, 0, 0],
    ];

  it('has these parts and no others', () => {
    expect(
      planParts(plan).map(({ name, length, width, leftEnd, rightEnd, show }) => [
        name,
        length / inches(1),
        width / inches(1),
        leftEnd,
        rightEnd,
        show,
      ]),
    ).toEqual(counted);
  });

  it('all of one thickness, all grain along, one each', () => {
    for (const part of planParts(plan)) {
      expect(part).toMatchObject({
        thickness: inches(0.75),
        grain: 'along',
        quantity: 1,
        pin: null,
        value: null,
      });
      expect(part.quality).toBe(part.name.endsWith('ledger') ? 'sound' : 'clear-1');
      expect(part.run).toBe(/facing|cap/.test(part.name) ? 'facing' : null);
    }
  });
});
