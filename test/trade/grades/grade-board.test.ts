import { describe, expect, it } from 'vitest';
import { ticks, ticksPerInch } from '../../../src/base/units/tick.ts';
import { defectKinds, isUnsound } from '../../../src/flow/stock/defect.ts';
import { surfaceMeasure } from '../../../src/trade/board-feet.ts';
import { cuttingUnit } from '../../../src/trade/grades/cutting-size.ts';
import { gradeBoard, gradeFinding } from '../../../src/trade/grades/grade-board.ts';
import { type MarkedDefect, gradedKinds, isUnsoundForGrade } from '../../../src/trade/grades/marked-board.ts';
import { casesOf, numberIn } from '../published.ts';

type Mark = [kind: string, face: MarkedDefect['face'], from: number, to: number, low: number, high: number];

/** A board in inches with marks in inches; `tick` more or less can be had by fractions of 1/8128. */
function board(length: number, width: number, ...marks: Mark[]) {
  const inTicks = (inches: number) => ticks(Math.round(inches * ticksPerInch));
  const defects = marks.map(([kind, face, from, to, low, high]): MarkedDefect => {
    const [x, y] = [inTicks(from), inTicks(low)];
    return { kind, face, x, y, length: inTicks(to) - x, width: inTicks(high) - y };
  });
  return Object.freeze({ length: inTicks(length), width: inTicks(width), defects: Object.freeze(defects) });
}

function gradeOf(marked: ReturnType<typeof board>): string | null {
  return gradeBoard(marked, surfaceMeasure(marked.length, marked.width)).grade;
}

function finding(marked: ReturnType<typeof board>, grade: 'FAS' | '1C' | '2A' | '2B' | '3A' | '3B') {
  return gradeFinding(marked, grade, surfaceMeasure(marked.length, marked.width));
}

const tick = 1 / ticksPerInch;

describe('least board of each grade, and one tick under', () => {
  it.each([
    ['FAS', 6, 96, 'Selects'],
    ['Selects', 4, 72, '1C'],
    ['1C', 3, 48, null],
  ])('%s: %d x %d in', (grade, width, length, narrower) => {
    expect(gradeOf(board(length, width))).toBe(grade);
    expect(gradeOf(board(length, width - tick))).toBe(narrower);
    expect(gradeOf(board(length - tick, width))).toBe(narrower);
  });

  it.each(casesOf('grade_example').filter(([, { given }]) => 'clear_percent' in given))(
    '%s',
    (_title, { given }) => {
      const clear = board(numberIn(given, 'length_ft') * 12, numberIn(given, 'width_in'));
      expect(finding(clear, 'FAS')).toMatchObject({ outcome: 'not met', largeEnough: false });
      expect(gradeOf(clear)).toBe('Selects');
    },
  );
});

describe('units of FAS', () => {
  // 6 in x 8 ft: SM 4, one cutting of 40 units: 80 in of the full width.
  const stainFrom = (from: number): Mark => ['stain', 'through', from, 96, 0, 6];

  it('just reached, and one tick short', () => {
    expect(finding(board(96, 6, stainFrom(80)), 'FAS').outcome).toBe('met');
    const short = finding(board(96, 6, stainFrom(80 - tick)), 'FAS');
    expect(short.outcome).toBe('not met');
    const [way] = short.faces[0]!.tried;
    expect(way!.found).toBe(way!.bound);
    expect(way!.found).toBeLessThan(way!.neededTimes100 / 100);
  });

  it('one cutting unit short', () => {
    const short = finding(board(96, 6, stainFrom(78)), 'FAS');
    expect(short.outcome).toBe('not met');
    expect(short.faces[0]!.tried[0]!.found).toBe(78 * 6 * ticksPerInch ** 2);
  });

  it('in one cutting more at 11/12', () => {
    // 8 in x 9 ft: SM 6, one cutting of 60 units or two of 66; the best two are 4 in and 3 in wide, 63 units.
    const cross: Mark = ['stain', 'through', 50, 55, 4, 5];
    const short = finding(board(108, 8, cross), 'FAS');
    expect(short.outcome).toBe('not met');
    const best = short.faces[0]!.tried.find(({ way }) => way.kind === 'extra cutting')!;
    expect([best.found, best.bound]).toEqual([63 * cuttingUnit, 63 * cuttingUnit]);
    // 8 in x 10 ft 10 in: SM 7, one of 70 or two of 77; 60 in and 65 in of full width make 83 1/3.
    const fits = finding(board(130, 8, ['stain', 'through', 60, 65, 4, 5]), 'FAS');
    const extra = fits.faces[0]!.tried.find(({ way }) => way.kind === 'extra cutting')!;
    expect(extra.cuttings.length).toBe(2);
    expect(extra.outcome).toBe('met');
    expect(fits.faces[0]!.tried[0]!.outcome).toBe('not met');
  });

  it('by the 97 % rule, when one piece is too short for a cutting', () => {
    // 6 in x 14 ft: SM 7, 81.48 units of 84 in two full-width pieces: 163 in of 168 in, knot of 5 in at most.
    const knot = (length: number): Mark => ['sound knot', 'through', 30, 30 + length, 2, 4];
    const met = finding(board(168, 6, knot(5)), 'FAS');
    const way = met.faces[0]!.tried.find((tried) => tried.way.kind === 'full width')!;
    expect([way.outcome, way.cuttings.length]).toEqual(['met', 2]);
    const over = finding(board(168, 6, knot(5.05)), 'FAS').faces[0]!.tried;
    expect(over.find((tried) => tried.way.kind === 'full width')!.outcome).toBe('not met');
  });
});

describe('which face counts', () => {
  // One face spoilt for FAS (a run of pinned stain along the middle), still good for 1C.
  const spoilt: Mark = ['stain', 'B', 0, 60, 3.5, 4];
  const ruined: Mark[] = [
    ['stain', 'B', 0, 96, 2, 2.5],
    ['stain', 'B', 0, 96, 5, 5.5],
  ];

  it('FAS from the poor face; F1F when the poor face is 1C; 2A when it is not', () => {
    expect(gradeOf(board(96, 8))).toBe('FAS');
    expect(gradeOf(board(96, 8, spoilt))).toBe('F1F');
    expect(['2A', '2B', '3A', '3B', null]).toContain(gradeOf(board(96, 8, ...ruined)));
  });

  it('turning the board over changes nothing', () => {
    const over = (mark: Mark): Mark => [
      mark[0],
      mark[1] === 'B' ? 'A' : 'B',
      ...(mark.slice(2) as [number, number, number, number]),
    ];
    for (const marks of [[spoilt], ruined]) {
      expect(gradeOf(board(96, 8, ...marks.map(over)))).toBe(gradeOf(board(96, 8, ...marks)));
    }
  });

  it('a clear cutting needs a sound back: a hole behind it counts, stain behind it does not', () => {
    const behind = (kind: string): Mark => [kind, 'B', 40, 41, 2, 4];
    expect(finding(board(96, 6, behind('hole')), 'FAS').faces.map(({ outcome }) => outcome)).toEqual([
      'not met',
      'not met',
    ]);
    expect(finding(board(96, 6, behind('stain')), 'FAS').faces.map(({ outcome }) => outcome)).toEqual([
      'met',
      'not met',
    ]);
  });

  it('2B takes sound cuttings where 2A asks for clear ones', () => {
    const knots = Array.from({ length: 7 }, (_, at): Mark => [
      'sound knot',
      'through',
      6 + 12 * at,
      9 + 12 * at,
      2,
      4,
    ]);
    const marked = board(96, 6, ...knots);
    expect(finding(marked, '2A').outcome).toBe('not met');
    expect(gradeOf(marked)).toBe('2B');
  });
});

describe('limits of the better grades (from memory)', () => {
  // 8 in x 12 ft: SM 8. Two cuttings of 80 units, three of 88.
  const limited = (...marks: Mark[]) => finding(board(144, 8, ...marks), 'FAS');

  it.each<[string, Mark, Mark]>([
    ['pith no longer in inches than the SM', ['pith', 'B', 0, 8, 0, 0.5], ['pith', 'B', 0, 8 + tick, 0, 0.5]],
    ['wane no longer than half the board', ['wane', 'B', 0, 72, 7.8, 8], ['wane', 'B', 0, 72 + tick, 7.8, 8]],
    [
      'splits no longer than twice the SM',
      ['split', 'B', 0, 16, 0, 0.2],
      ['split', 'B', 0, 16 + tick, 0, 0.2],
    ],
    [
      'a knot of a third of the SM',
      ['sound knot', 'B', 0, 2 + 2 / 3, 0, 2 + 2 / 3 - tick],
      ['sound knot', 'B', 0, 2.67, 0, 2.68],
    ],
    ['a quarter of the first foot unsound', ['rot', 'B', 0, 6, 0, 4], ['rot', 'B', 0, 6, 0, 4 + 2 * tick]],
  ])('%s, and just over', (_title, at, over) => {
    expect(limited(at).outcome).toBe('met');
    const beyond = limited(over);
    expect(beyond.outcome).toBe('not met');
    expect(beyond.faces.every(({ outcome }) => outcome === 'met')).toBe(true);
  });
});

describe('the low grades', () => {
  it('3A in any number of cuttings, 3B down to 36 square inches, below it nothing', () => {
    // Shake across the board every 27 in leaves cuttings of 24 in: 2 ft x 6 in = 12 units each.
    const bars = (step: number, width: number): Mark[] =>
      Array.from({ length: Math.ceil(96 / step) }, (_, at): Mark => [
        'shake',
        'through',
        at * step,
        at * step + width,
        0,
        6,
      ]);
    expect(finding(board(96, 6, ...bars(27, 3)), '3A').outcome).toBe('met');
    expect(finding(board(96, 6, ...bars(26.9, 3)), '3A').outcome).toBe('not met');
    expect(gradeOf(board(96, 6, ...bars(9, 3)))).toBe('3B');
    expect(gradeOf(board(96, 6, ...bars(8.9, 3)))).toBe(null);
  });
});

describe('kinds of defect', () => {
  it('knows every kind of the files, and agrees on what is unsound', () => {
    expect([...gradedKinds].sort()).toEqual([...defectKinds].sort());
    for (const kind of defectKinds) {
      const mark: MarkedDefect = { kind, face: 'A', x: 0, y: 0, length: 1, width: 1 };
      expect([kind, isUnsoundForGrade(mark)]).toEqual([kind, isUnsound(kind)]);
    }
  });
});
