import { ticksPerInch } from '../../base/units/tick.ts';
import type { CuttingSize, LeastSize } from './cutting-size.ts';
import type { CuttingKind } from './marked-board.ts';

/** The standard hardwood grades, best first. `below grade`: under No. 3B Common. */
export const grades = ['FAS', 'F1F', 'Selects', '1C', '2A', '2B', '3A', '3B'] as const;
export type Grade = (typeof grades)[number];

/** The grades that set a cutting rule of their own; F1F and Selects ask FAS of the better face, 1C of the poor one. */
export type RuledGrade = Exclude<Grade, 'F1F' | 'Selects'>;

/** The rules for one face: a grade's own, FAS as asked of a better face, and the one cutting of small Selects. */
export type RuleName = RuledGrade | 'better face' | 'small Selects';

/** What one face must yield: the rows of the published summary chart. */
export interface FaceRule {
  readonly name: RuleName;
  readonly grade: RuledGrade;
  readonly cutting: CuttingSize;
  readonly cuttings: CuttingKind;
  /** Cutting units wanted for each surface foot, out of 12. */
  readonly unitsPerFoot: number;
  /** Cuttings allowed: floor((SM + plus) / per), at most `most`; null: any number. */
  readonly allowed: { readonly plus: number; readonly per: number; readonly most: number } | null;
  /** One cutting more is allowed for SM in [from, to] when this many units a foot are reached. */
  readonly extra: { readonly from: number; readonly to: number; readonly unitsPerFoot: number } | null;
}

/** Least size of a whole board, ticks. */
export const leastBoard: ReadonlyMap<Grade, LeastSize> = new Map([
  ['FAS', inchesByFeet(6, 8)],
  ['F1F', inchesByFeet(6, 8)],
  ['Selects', inchesByFeet(4, 6)],
  ['1C', inchesByFeet(3, 4)],
  ['2A', inchesByFeet(3, 4)],
  ['2B', inchesByFeet(3, 4)],
  ['3A', inchesByFeet(3, 4)],
  ['3B', inchesByFeet(3, 4)],
]);

const fas: FaceRule = {
  name: 'FAS',
  grade: 'FAS',
  cutting: { leastSizes: [inchesByFeet(4, 5), inchesByFeet(3, 7)], leastArea: 0 },
  cuttings: 'clear',
  unitsPerFoot: 10,
  allowed: { plus: 0, per: 4, most: 4 },
  extra: { from: 6, to: 15, unitsPerFoot: 11 },
};

const oneCommon: FaceRule = {
  name: '1C',
  grade: '1C',
  cutting: { leastSizes: [inchesByFeet(4, 2), inchesByFeet(3, 3)], leastArea: 0 },
  cuttings: 'clear',
  unitsPerFoot: 8,
  allowed: { plus: 1, per: 3, most: 5 },
  extra: { from: 3, to: 10, unitsPerFoot: 9 },
};

const twoCommon: FaceRule = {
  name: '2A',
  grade: '2A',
  cutting: { leastSizes: [inchesByFeet(3, 2)], leastArea: 0 },
  cuttings: 'clear',
  unitsPerFoot: 6,
  allowed: { plus: 0, per: 2, most: 7 },
  extra: { from: 2, to: 7, unitsPerFoot: 8 },
};

/**
 * The cutting rules of the standard grades. From memory: a better face's cuttings need no sound back, since the poor face
 * has a rule of its own (the older text of Selects: "the reverse side of the board not below No. 1 Common, or the
 * reverse side of the cuttings sound"); Selects of 2 and 3 ft SM, judged by the better face alone, need one.
 * Source: reprint of the summary chart of the NHLA rules (TRADE 2.3, S18), with its known misprint of 60 2/3 % for
 * No. 1 Common put right (66 2/3 %, 8 units of 12).
 */
export const faceRules: ReadonlyMap<RuleName, FaceRule> = new Map<RuleName, FaceRule>([
  ['FAS', fas],
  ['better face', { ...fas, name: 'better face', cuttings: 'clear face' }],
  ['small Selects', { ...fas, name: 'small Selects' }],
  ['1C', oneCommon],
  ['2A', twoCommon],
  ['2B', { ...twoCommon, name: '2B', grade: '2B', cuttings: 'sound' }],
  ['3A', { ...twoCommon, name: '3A', grade: '3A', unitsPerFoot: 4, allowed: null, extra: null }],
  [
    '3B',
    {
      name: '3B',
      grade: '3B',
      cutting: {
        leastSizes: [{ width: 1.5 * ticksPerInch, length: 0 }],
        leastArea: 36 * ticksPerInch * ticksPerInch,
      },
      cuttings: 'sound',
      unitsPerFoot: 3,
      allowed: null,
      extra: null,
    },
  ],
]);

function inchesByFeet(inches: number, feet: number): LeastSize {
  return { width: inches * ticksPerInch, length: feet * 12 * ticksPerInch };
}
