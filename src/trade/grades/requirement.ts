import { ticksPerInch } from '../../base/units/tick.ts';
import type { CuttingSize } from './cutting-size.ts';
import type { FaceRule } from './rule.ts';

/**
 * One way in which a face can make its grade: so many cuttings together reaching so many units.
 * `full width`: each cutting takes the whole width of the board and may be of any length (the 97 % rule).
 * `clear face`: nothing on the whole face.
 */
export type Way =
  | { readonly kind: 'clear face' }
  | {
      readonly kind: 'cuttings' | 'extra cutting' | 'full width' | 'one cutting';
      /** Infinity: no limit. */
      readonly atMost: number;
      /** Hundredths of a cutting unit, so that 11.64 a foot stays whole. */
      readonly hundredthsOfUnit: number;
    };

/** What a requirement depends on. */
export interface Measured {
  /** Whole square feet, as tallied. */
  readonly surfaceMeasure: number;
  /** Ticks. */
  readonly length: number;
  readonly width: number;
}

const ticksPerFoot = 12 * ticksPerInch;

/** How many cuttings a grade allows; one for boards of 1 ft SM in the Common grades, as the step table has it. */
function cuttingsAllowed(rule: FaceRule, { surfaceMeasure, length }: Measured): number {
  if (rule.allowed === null) return Infinity;
  const { plus, per, most } = rule.allowed;
  const standard = Math.min(most, Math.floor((surfaceMeasure + plus) / per));
  if (rule.grade === '2A' || rule.grade === '2B') return Math.max(1, standard);
  // Long boards: over 17 ft and 16 ft SM, one more for each further 4 ft SM, at most 7.
  if (length <= 17 * ticksPerFoot || surfaceMeasure <= 16) return standard;
  return Math.min(7, standard + Math.floor((surfaceMeasure - 16) / 4));
}

/**
 * The ways in which one face of a board can make a grade; any one of them suffices.
 * @returns none when the rule has no word for a board of that size (FAS under 4 ft SM, small Selects over 3)
 * Source: TRADE 2.3 (S18: chart, its extra-cutting and special-yield rows; S15: long boards, NHLA 2015 rules p. 22; S20:
 * the formulas are floored). The 97 % rule's words "full width, any length" are the chart's.
 */
export function waysToMake(rule: FaceRule, measured: Measured): readonly Way[] {
  const { surfaceMeasure } = measured;
  const units = (perFoot: number): number => Math.round(surfaceMeasure * perFoot * 100);
  const small = smallBoardWays(rule, surfaceMeasure, units);
  if (small !== null) return small;
  const allowed = cuttingsAllowed(rule, measured);
  if (allowed < 1) return [];
  const ways: Way[] = [{ kind: 'cuttings', atMost: allowed, hundredthsOfUnit: units(rule.unitsPerFoot) }];
  const { extra } = rule;
  if (extra !== null && surfaceMeasure >= extra.from && surfaceMeasure <= extra.to) {
    ways.push({ kind: 'extra cutting', atMost: allowed + 1, hundredthsOfUnit: units(extra.unitsPerFoot) });
  }
  const wideEnough = measured.width >= 6 * ticksPerInch;
  if (rule.grade === 'FAS' && wideEnough && surfaceMeasure >= 6 && surfaceMeasure <= 12) {
    ways.push({ kind: 'full width', atMost: 2, hundredthsOfUnit: units(11.64) });
  }
  return ways;
}

/** The chart's special rules for small boards; null where the general rule holds. */
function smallBoardWays(
  rule: FaceRule,
  surfaceMeasure: number,
  units: (perFoot: number) => number,
): readonly Way[] | null {
  if (surfaceMeasure < 1) return [];
  if (rule.name === 'small Selects') {
    if (surfaceMeasure > 3) return [];
    return [{ kind: 'clear face' }, { kind: 'one cutting', atMost: 1, hundredthsOfUnit: units(11) }];
  }
  if (rule.grade === '1C' && surfaceMeasure === 1) return [{ kind: 'clear face' }];
  if (rule.grade === '1C' && surfaceMeasure === 2) {
    return [{ kind: 'cuttings', atMost: 1, hundredthsOfUnit: units(9) }];
  }
  if ((rule.grade === '2A' || rule.grade === '2B') && surfaceMeasure === 1) {
    return [{ kind: 'cuttings', atMost: 1, hundredthsOfUnit: units(8) }];
  }
  return null;
}

/** The 97 % rule's cuttings: full width, any length. */
export function fullWidthSize(boardWidth: number): CuttingSize {
  return { leastSizes: [{ width: boardWidth, length: 0 }], leastArea: 0 };
}
