import { expect } from 'vitest';
import type { Visit } from '../../../src/decide/buy/estimate/draw.ts';
import { type LumberEstimate, gradeEstimate } from '../../../src/decide/buy/estimate/estimate.ts';
import { lumberWanted } from '../../../src/decide/buy/estimate/lumber-wanted.ts';
import { tally } from '../../../src/decide/buy/tally/tally.ts';
import { leastMoney } from '../../../src/decide/buy/yard/least-money.ts';
import { type YardAnswer, yardAnswer } from '../../../src/decide/buy/yard/yard-answer.ts';
import { finish } from '../../../src/flow/choice/progress.ts';
import { completer } from '../../../src/decide/buy/comes-out/completer.ts';
import { solver } from '../../../src/decide/buy/solve-job.ts';
import { readJobTexts } from '../../../src/shell/read/job-texts.ts';
import { mantelJob } from '../../sheet/mantel-sample.ts';
import { stickYard } from './stick-yard.ts';

/** Four boards of our own: one of each kind of claim. */
const boards = `board,quantity,length,width,thickness,surface,grade,price
A1,1,145 1/2,9 1/4,4/4,rough,FAS,91.59
A2,2,121 1/4,7 1/2,4/4,rough,1C,40.42
A3,1,122,6 3/8,5/4,rough,FAS,52.93
A4,1,73 1/2,9 3/8,4/4,rough,rustic,
`;
const defects = `board,kind,face,from,to,low,high
A1,check,through,0,3 1/2,3,6
A1,sound knot,A,88,89 1/4,1 1/2,2 5/8
A1,sapwood,B,0,145 1/2,0,1 1/8
A2,loose knot,through,46,48 1/4,4 1/2,6 3/4
A2,wane,B,100,121 1/4,0,3/4
A2,hole,A,18,18 1/4,2,2 1/4
A3,stain,A,60,66,0,1 1/2
A4,pith,B,4,40,4,5
`;

/** Its tally. @param named what to call the boards instead */
export function sampleTally(named: (name: string) => string = (name) => name) {
  const of = (file: string, text: string | null) => ({ file, text });
  const files = { boards: of('boards.csv', boards), defects: of('defects.csv', defects) };
  const none = { shop: of('shop.csv', null), parts: of('parts.csv', null), yard: of('yard.csv', null) };
  const { value, problems } = readJobTexts('sample', { ...files, ...none }, { parts: [] });
  expect(problems).toEqual([]);
  const renamed = value.boards.map((board) => ({ ...board, name: named(board.name) }));
  return { shop: value.shop, rows: [...tally({ ...value, boards: renamed }, [])] };
}

/** Visits made up by hand: asks rise by `step`, and the last `failed` of 20 piles do not give the job. */
function visits(first: number, step: number, failed: number): Visit[] {
  return Array.from({ length: 20 }, (_, index) => {
    const before = first + step * index;
    const done = index < 20 - failed;
    return {
      cart: [before, before + 9, before + 17],
      enough: done ? 2 : null,
      pieceArea: done ? 55 : 0,
      boardArea: done ? 100 + index : 0,
      unfound: done ? [] : ['the run facing'],
      broken: [],
      sought: [],
      before: 0,
    };
  });
}

/** An estimate of two grades from those visits. */
export function sampleEstimate(): LumberEstimate {
  const wanted = lumberWanted(mantelJob).wanted[0]!;
  const price = { perFoot: 9.8, source: 'given', range: null } as const;
  return {
    wanted,
    mix: null,
    grades: [
      gradeEstimate(wanted, 'FAS', price, visits(14, 1, 0)),
      gradeEstimate(wanted, '1C', { ...price, perFoot: 6.4 }, visits(18, 2, 5)),
    ],
  };
}

/** A yard answer with runner-ups and spares. @param named what to call the boards instead */
export function sampleYard(named: (name: string) => string = (name) => name): YardAnswer {
  const { owned, yard } = stickYard(3);
  const boards = yard.map((board) => ({ ...board, name: named(board.name) }));
  return finish(
    yardAnswer(owned, boards, 2, {
      cheapest: solver({ seed: 1, effort: 0.3 }),
      comesOut: completer(1),
      least: leastMoney(1),
    }),
  )!;
}
