import type { Grade } from '../../../trade/grades/rule.ts';
import type { DefectKind } from '../../../flow/stock/defect.ts';

/** Grades of which imaginary lumber can be drawn: those with published statistics. */
export const drawnGrades = ['FAS', 'Selects', '1C', '2A'] as const satisfies readonly Grade[];
export type DrawnGrade = (typeof drawnGrades)[number];

/** How the raw boards of one grade are drawn, before the grader accepts or refuses them. Inches and feet. */
export interface Population {
  /** The grader must give a board one of these. */
  readonly grades: readonly Grade[];
  /** Whole feet of length and how often; a yard's lumber runs a little over (see `overlength`). */
  readonly feet: readonly (readonly [feet: number, weight: number])[];
  /** Width: normal with this mean and deviation, cut off at `leastWidth` and 16 in. */
  readonly meanWidth: number;
  readonly widthDeviation: number;
  readonly leastWidth: number;
  /** Defects expected on a square foot of board, before acceptance; each board has its own share of it (0.5 to 1.5 ×). */
  readonly defectsPerFoot: number;
  /** Chance that a board shows pith, before acceptance. */
  readonly pith: number;
  /** Chance that a defect of one face lies on the board's poor face. */
  readonly poorFace: number;
}

/**
 * The population that stands in for the yard's pile.
 *
 * Published, and met by the boards that the grader accepts (a test holds the means near them): Wiedenbeck, Gatchell and
 * Walker 1995 (Forest Products Journal 45(3):45-50, red oak): mean surface measure FAS 9.1, Selects 7.5, 1 Common 6.3,
 * 2A Common 6.2 ft²; mean defect area 1.2, 2.3, 6.8, 9.8 % of the board, about 89 % of it unsound; main kinds wane,
 * unsound knots and bark pockets; pith in 9 % of 1 Common and 19 % of 2A boards.
 * Ours (no source): the shapes of the distributions of length and width, the sizes of single defects, how often each
 * kind goes through or lies on one face, and that defects lie anywhere with equal chance. The numbers here were set so
 * that the means above come out; they were not set by any yield.
 */
export const populations: ReadonlyMap<DrawnGrade, Population> = new Map<DrawnGrade, Population>([
  [
    'FAS',
    {
      grades: ['FAS'],
      feet: [
        [8, 3],
        [9, 2],
        [10, 5],
        [11, 2],
        [12, 5],
        [13, 2],
        [14, 3],
        [16, 3],
      ],
      meanWidth: 9,
      widthDeviation: 2.2,
      leastWidth: 6,
      defectsPerFoot: 0.75,
      pith: 0.01,
      poorFace: 0.6,
    },
  ],
  [
    'Selects',
    {
      grades: ['F1F', 'Selects'],
      feet: [
        [6, 1],
        [7, 1],
        [8, 4],
        [9, 2],
        [10, 5],
        [11, 2],
        [12, 4],
        [14, 2],
        [16, 2],
      ],
      meanWidth: 8.7,
      widthDeviation: 2,
      leastWidth: 4,
      defectsPerFoot: 0.8,
      pith: 0.02,
      poorFace: 0.85,
    },
  ],
  [
    '1C',
    {
      grades: ['1C'],
      feet: [
        [4, 1],
        [6, 2],
        [7, 1],
        [8, 4],
        [9, 2],
        [10, 5],
        [11, 2],
        [12, 4],
        [14, 2],
        [16, 2],
      ],
      meanWidth: 7.2,
      widthDeviation: 2,
      leastWidth: 3,
      defectsPerFoot: 1.5,
      pith: 0.1,
      poorFace: 0.7,
    },
  ],
  [
    '2A',
    {
      grades: ['2A'],
      feet: [
        [4, 1],
        [6, 2],
        [7, 1],
        [8, 4],
        [9, 2],
        [10, 5],
        [11, 2],
        [12, 4],
        [14, 2],
        [16, 2],
      ],
      meanWidth: 6.7,
      widthDeviation: 2,
      leastWidth: 3,
      defectsPerFoot: 1.05,
      pith: 0.2,
      poorFace: 0.7,
    },
  ],
]);

/** How one kind of defect is drawn. Sizes in inches: length along the board, width across it. */
export interface DefectShape {
  readonly kind: DefectKind;
  /** How often it comes, against the others. */
  readonly weight: number;
  readonly length: readonly [least: number, most: number];
  readonly width: readonly [least: number, most: number];
  /** Chance that it goes through; otherwise it shows on one face. */
  readonly through: number;
  readonly place: 'anywhere' | 'edge' | 'end';
}

/** Kinds and sizes of single defects. Main kinds after Wiedenbeck and others 1995; sizes and chances ours. */
export const defectShapes: readonly DefectShape[] = [
  { kind: 'loose knot', weight: 26, length: [0.75, 7], width: [0.75, 3.5], through: 0.6, place: 'anywhere' },
  { kind: 'bark pocket', weight: 20, length: [1, 10], width: [0.25, 1.5], through: 0.25, place: 'anywhere' },
  { kind: 'sound knot', weight: 14, length: [0.5, 4], width: [0.5, 2.5], through: 0.5, place: 'anywhere' },
  { kind: 'wane', weight: 26, length: [12, 96], width: [0.25, 2.5], through: 0.15, place: 'edge' },
  { kind: 'split', weight: 6, length: [2, 20], width: [0.25, 1], through: 1, place: 'end' },
  { kind: 'check', weight: 6, length: [2, 14], width: [0.25, 1], through: 0.3, place: 'end' },
  { kind: 'hole', weight: 6, length: [0.25, 1], width: [0.25, 1], through: 0.7, place: 'anywhere' },
  { kind: 'stain', weight: 9, length: [3, 24], width: [0.5, 2], through: 0.3, place: 'anywhere' },
  { kind: 'rot', weight: 4, length: [3, 18], width: [1, 4], through: 0.8, place: 'anywhere' },
];

/** Of the defects that may lie anywhere, this share lies at an edge: a sawyer turns the log so (ours). */
export const edgeShare = 0.4;

/** Pith runs along the board on one face. */
export const pithShape: DefectShape = {
  kind: 'pith',
  weight: 0,
  length: [8, 60],
  width: [0.5, 0.75],
  through: 0,
  place: 'anywhere',
};

/** Boards run over their whole feet by up to this many inches (ours). */
export const overlength = 3;
