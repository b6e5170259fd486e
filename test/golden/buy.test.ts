import { describe, it } from 'vitest';
import { chanceChart } from '../../src/decide/buy/estimate/chance-chart.ts';
import { estimateText } from '../../src/decide/buy/estimate/estimate-text.ts';
import { cuttingsPicture } from '../../src/decide/buy/tally/cuttings-picture.ts';
import { shownFaces, toldFindings } from '../../src/decide/buy/tally/shown-faces.ts';
import { tallyCsv, tallyText } from '../../src/decide/buy/tally/tally-rows.ts';
import { sampleEstimate, sampleTally } from '../decide/buy/samples.ts';
import { expectGolden } from './golden.ts';

const lineByLine = (markup: string): string => `${markup.replaceAll('><', '>\n<').trim()}\n`;

describe('goldens of buying', () => {
  const { shop, rows } = sampleTally();

  it('a tally, in words and as CSV', () => {
    expectGolden('buy/tally.txt', `${tallyText(rows, shop)}\n`);
    expectGolden('buy/tally.csv', tallyCsv(rows, shop));
  });

  it('the cuttings of a No. 1 Common board', () => {
    const row = rows.find(({ board }) => board.name === 'A2')!;
    const [shown] = shownFaces(toldFindings(row)[0]!);
    const picture = cuttingsPicture(row.board, shop, shown!.face, shown!.cuttings);
    expectGolden('buy/cuttings.svg', lineByLine(picture.markup));
  });

  it('an estimate, in words and as a chart', () => {
    const lumber = sampleEstimate();
    const estimate = { lumber: [lumber], seed: 1, visits: 20, owned: 3, tooThick: [] };
    expectGolden('buy/estimate.txt', `${estimateText(estimate)}\n`);
    expectGolden('buy/chances.svg', lineByLine(chanceChart(lumber).markup));
  });
});
