import { readFileSync, rmSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { boardSvg } from '../../src/flow/sheet/board/board-svg.ts';
import { sheetHtml } from '../../src/flow/sheet/page/sheet-html.ts';
import { cutsCsv } from '../../src/flow/sheet/table/cuts-rows.ts';
import { layoutCsv } from '../../src/flow/sheet/table/layout-rows.ts';
import { summaryText } from '../../src/flow/sheet/text/summary-text.ts';
import { hostileJob, hostileLayout } from '../sheet/hostile-sample.ts';
import { mantelJob, mantelLayout } from '../sheet/mantel-sample.ts';
import { changedPath, expectGolden, firstDifference } from './golden.ts';

const layout = mantelLayout();

/** Elements on lines of their own, so that a change shows as the lines that changed. */
function lineByLine(markup: string): string {
  return `${markup.replaceAll('><', '>\n<').trim()}\n`;
}

/** The page without its style and with the diagrams (goldens of their own) left out. */
function fragment(page: string): string {
  const body = /<body>(.*)<\/body>/s.exec(page)?.[1] ?? '';
  return lineByLine(body.replace(/<svg xmlns.*?<\/svg>/gs, '<svg/>'));
}

describe('goldens of the sheet', () => {
  const names = ['wrapped-face', 'glued-panel', 'ledger', 'long-strip'];
  it.each(layout.boards.map((board, index) => [names[index] ?? '', board] as const))(
    'board %s',
    (name, board) => {
      expectGolden(`sheet/board-${name}.svg`, lineByLine(boardSvg(mantelJob, board)));
    },
  );

  it('a board of hostile names', () => {
    const [board] = hostileLayout().boards;
    if (!board) throw new Error('the sample has boards');
    expectGolden('sheet/board-hostile.svg', lineByLine(boardSvg(hostileJob, board)));
  });

  it('the page', () => {
    expectGolden('sheet/sheet.html', fragment(sheetHtml(mantelJob, layout)));
  });

  it('the tables', () => {
    expectGolden('sheet/layout.csv', layoutCsv(mantelJob, layout));
    expectGolden('sheet/cuts.csv', cutsCsv(mantelJob, layout));
  });

  it('the summary', () => {
    expectGolden('sheet/summary.txt', `${summaryText(mantelJob, layout)}\n`);
    expectGolden('sheet/summary-hostile.txt', `${summaryText(hostileJob, hostileLayout())}\n`);
  });
});

describe('the golden rule', () => {
  it('fails on a missing golden', () => {
    if (process.env['ACCEPT_GOLDEN'] === '1') return;
    expect(() => expectGolden('sheet/never-made.txt', 'x')).toThrow('golden sheet/never-made.txt is missing');
    const written = new URL('../../fixtures/golden/sheet/never-made.changed.txt', import.meta.url);
    expect(readFileSync(written, 'utf8')).toBe('x');
    rmSync(written);
  });

  it('names the changed file and the first changed line', () => {
    expect(changedPath('a/b.svg')).toBe('a/b.changed.svg');
    expect(firstDifference('a\nb\nc', 'a\nx\nc')).toBe(2);
    expect(firstDifference('a', 'a\nb')).toBe(2);
  });
});
