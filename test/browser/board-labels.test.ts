import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardSvg } from '../../src/flow/sheet/board/board-svg.ts';
import { hostileJob, hostileLayout } from '../sheet/hostile-sample.ts';
import { mantelJob, mantelLayout } from '../sheet/mantel-sample.ts';
import { randomBoard } from '../sheet/random-layout.ts';
import { browserPath, openBrowser, openPage } from './browser.ts';
import { labelFaults } from './label-faults.ts';

const seeds = Array.from({ length: 40 }, (_, index) => index + 1);

describe.skipIf(browserPath === undefined)('the lettering of board diagrams, as a browser draws it', () => {
  let browser: Browser;
  beforeAll(async () => void (browser = await openBrowser()));
  afterAll(() => browser.close());

  const faultsOf = async (drawings: readonly string[], face = ''): Promise<string[]> => {
    // One drawing unit to the pixel, so that faults are told in drawing units.
    const style = `<style>body{margin:0} svg{display:block;width:1840px} ${face}</style>`;
    const { page, asked, said } = await openPage(browser, `${style}${drawings.join('')}`, 1840);
    expect({ asked, said }).toEqual({ asked: [], said: [] });
    const faults = await labelFaults(page);
    await page.close();
    return faults;
  };

  it('overlaps nowhere on a mantel of four boards', async () => {
    expect(await faultsOf(mantelLayout().boards.map((laid) => boardSvg(mantelJob, laid)))).toEqual([]);
  });

  it('overlaps nowhere in a wider face either', async () => {
    const drawings = mantelLayout().boards.map((laid) => boardSvg(mantelJob, laid));
    expect(await faultsOf(drawings, `text{font-family:'DejaVu Sans',Verdana}`)).toEqual([]);
  });

  it('overlaps nowhere with hostile names', async () => {
    expect(await faultsOf(hostileLayout().boards.map((laid) => boardSvg(hostileJob, laid)))).toEqual([]);
  });

  it('overlaps nowhere on boards cut at random', async () => {
    const drawings = seeds.map((seed) => {
      const { job, laid } = randomBoard(seed);
      return boardSvg(job, laid);
    });
    expect(await faultsOf(drawings)).toEqual([]);
  });

  it('would be caught if it did', async () => {
    const text = (x: number, y: number, words: string): string =>
      `<text x="${x}" y="${y}" font-size="30">${words}</text>`;
    const svg = `<svg viewBox="0 0 1840 100">${text(10, 50, 'one')}${text(30, 60, 'two')}${text(1800, 50, 'three')}</svg>`;
    const faults = await faultsOf([svg]);
    expect(faults).toEqual(['drawing 1: "one" over "two"', 'drawing 1: "three" leaves the drawing sideways']);
  });
});
