import { mixedNumber } from '../../base/units/format-length.ts';
import {
  allowableWithdrawal,
  designGravity,
  leastPenetration,
  permanentLoad,
  screwDiameter,
} from '../../trade/fasteners.ts';
import { kilogramsPerPound } from '../../trade/weight.ts';
import type { PlanWeight } from './plan-weight.ts';

const quarterInchLag = 0.25;
const studs = 'spruce-pine-fir';

/** A weight range in the maker's unit: `31 lb`, `24 to 41 lb`, rounded up to whole pounds or kilograms. */
export function weightText(least: number, most: number, units: 'in' | 'mm'): string {
  const unit = units === 'mm' ? 'kg' : 'lb';
  const whole = (pounds: number): number => Math.ceil(units === 'mm' ? pounds * kilogramsPerPound : pounds);
  const [low, high] = [whole(least), whole(most)];
  return low === high ? `${high} ${unit}` : `${low} to ${high} ${unit}`;
}

/** What hangs on the wall, and what published figures say of the fasteners; a caution, not a design. */
export function hangingLines(weight: PlanWeight, hasLedger: boolean, units: 'in' | 'mm'): string[] {
  const screw = screwDiameter[10];
  const gravity = designGravity[studs];
  const perInch = (kind: 'wood screw' | 'lag screw', diameter: number): number =>
    allowableWithdrawal(kind, gravity, diameter, 1) * permanentLoad;
  const perThread = (kind: 'wood screw' | 'lag screw', diameter: number): string =>
    units === 'mm'
      ? `${Math.floor((perInch(kind, diameter) * kilogramsPerPound) / 2.54)} kg a centimetre`
      : `${Math.floor(perInch(kind, diameter))} lb an inch`;
  return [
    `The box weighs about ${weightText(weight.box.least, weight.box.most, units)} before anything stands on it` +
      `${hasLedger ? ', the ledger not counted' : ''}. It pulls its fasteners down and, since it stands off the wall, out.`,
    `For comparison (NDS 2018, 12.2, ${studs} studs, a load that stays): a No. 10 wood screw may be loaded straight out by ` +
      `${perThread('wood screw', screw)} of thread in the stud, a 1/4" lag screw by ` +
      `${perThread('lag screw', quarterInchLag)}; at least ${sizeText(leastPenetration('wood screw', screw), units)} and ` +
      `${sizeText(leastPenetration('lag screw', quarterInchLag), units)} of them must be in it. Plaster and gypsum board hold nothing.`,
    'Fasten into framing, or into sound masonry with anchors made for it. Where in doubt, and for any heavy load, ask a ' +
      'licensed professional.',
  ];
}

/** Inches up to the next sixteenth, or whole millimetres. */
function sizeText(count: number, units: 'in' | 'mm'): string {
  return units === 'mm' ? `${Math.ceil(count * 25.4)} mm` : `${mixedNumber(Math.ceil(count * 16), 16)}"`;
}
