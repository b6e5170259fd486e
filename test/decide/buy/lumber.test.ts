import { describe, expect, it } from 'vitest';
import { random } from '../../../src/base/random/random.ts';
import { type DrawnBoard, drawBoard } from '../../../src/decide/buy/lumber/draw-board.ts';
import { type DrawnGrade, drawnGrades, populations } from '../../../src/decide/buy/lumber/population.ts';
import { isUnsound, liesOn } from '../../../src/flow/stock/defect.ts';
import { gradeBoard } from '../../../src/trade/grades/grade-board.ts';
import { unionArea } from '../../../src/trade/grades/union-area.ts';

const each = 150;

function pile(grade: DrawnGrade, seed: number, count = each): DrawnBoard[] {
  const stream = random(seed);
  return Array.from({ length: count }, () => drawBoard(stream, grade));
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Share of the two faces that defects cover, or only unsound ones. */
function covered(board: DrawnBoard, which: 'all' | 'unsound'): number {
  const on = (face: 'A' | 'B'): number =>
    unionArea(board.defects.filter((d) => liesOn(d, face) && (which === 'all' || isUnsound(d.kind))));
  return (on('A') + on('B')) / (2 * board.length * board.width);
}

/**
 * Wiedenbeck, Gatchell and Walker 1995, Forest Products Journal 45(3):45-50, red oak: mean surface measure, ft², and
 * mean defect area, % of the board. Read here as the mean of both faces.
 */
const published: readonly (readonly [DrawnGrade, number, number])[] = [
  ['FAS', 9.1, 1.2],
  ['Selects', 7.5, 2.3],
  ['1C', 6.3, 6.8],
  ['2A', 6.2, 9.8],
];

describe('imaginary lumber', () => {
  const piles = new Map(drawnGrades.map((grade) => [grade, pile(grade, 11)]));

  it.each(published)(
    '%s: mean surface measure and defect area near the published',
    (grade, measure, percent) => {
      const boards = piles.get(grade)!;
      expect(Math.abs(mean(boards.map(({ surfaceMeasure }) => surfaceMeasure)) / measure - 1)).toBeLessThan(
        0.1,
      );
      expect(Math.abs((100 * mean(boards.map((board) => covered(board, 'all')))) / percent - 1)).toBeLessThan(
        0.3,
      );
    },
  );

  it('most of the defect area is unsound, about 89 % in the published boards', () => {
    const boards = [...piles.values()].flat();
    const share = mean(boards.map((b) => covered(b, 'unsound'))) / mean(boards.map((b) => covered(b, 'all')));
    expect(share).toBeGreaterThan(0.82);
    expect(share).toBeLessThan(0.96);
  });

  it('pith shows in some 9 % of 1C and 19 % of 2A boards', () => {
    const share = (grade: DrawnGrade): number =>
      mean(piles.get(grade)!.map(({ defects }) => Number(defects.some(({ kind }) => kind === 'pith'))));
    expect(share('1C')).toBeGreaterThan(0.03);
    expect(share('1C')).toBeLessThan(0.15);
    expect(share('2A')).toBeGreaterThan(0.1);
    expect(share('2A')).toBeLessThan(0.3);
  });

  it('is given its grade by the grader of the tally, with all the effort that takes', () => {
    for (const grade of drawnGrades) {
      for (const board of piles.get(grade)!.slice(0, 25)) {
        const graded = gradeBoard(board, board.surfaceMeasure, { effort: 4000, aim: 'enough' });
        expect(populations.get(grade)!.grades).toContain(graded.grade);
      }
    }
  });

  it('keeps its defects on the board, in whole quarters of an inch', () => {
    for (const board of [...piles.values()].flat()) {
      for (const { x, y, length, width } of board.defects) {
        expect(Math.min(x, y, board.length - x - length, board.width - y - width)).toBeGreaterThanOrEqual(0);
        expect([x, y, length, width].every((value) => value % 2032 === 0)).toBe(true);
      }
    }
  });

  it('comes again from the same seed, and differs from another', () => {
    expect(pile('2A', 5, 3)).toEqual(pile('2A', 5, 3));
    expect(pile('2A', 5, 3)).not.toEqual(pile('2A', 6, 3));
  });
});
