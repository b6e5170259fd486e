import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { estimatePage } from '../../src/decide/buy/estimate/estimate-page.ts';
import { tallyPage } from '../../src/decide/buy/tally/tally-page.ts';
import { yardPage } from '../../src/decide/buy/yard/yard-page.ts';
import { defaultShop } from '../../src/flow/shop/shop.ts';
import { sampleEstimate, sampleTally, sampleYard } from '../decide/buy/samples.ts';
import { browserPath, openBrowser, openPage } from './browser.ts';

const hostile = (name: string): string =>
  `<script>document.title='owned'</script>"'&${name}${'x'.repeat(300)}`;
const estimate = { lumber: [sampleEstimate()], seed: 1, visits: 20, owned: 0, tooThick: [hostile('beam')] };

function tallied(named: (name: string) => string) {
  const { shop, rows } = sampleTally(named);
  return tallyPage(hostile('job'), rows, shop);
}

const pages = [
  ['tally', tallied((name) => name)],
  ['hostile tally', tallied(hostile)],
  ['estimate', estimatePage('<b>job</b>', estimate)],
  ['yard', yardPage('job', sampleYard(), defaultShop)],
  ['hostile yard', yardPage(hostile('job'), sampleYard(hostile), defaultShop)],
] as const;

describe.skipIf(browserPath === undefined)('the pages of buying in a browser', () => {
  let browser: Browser;
  beforeAll(async () => void (browser = await openBrowser()));
  afterAll(() => browser.close());

  it.each(pages)('%s: asks the network for nothing, says nothing, runs nothing', async (_name, html) => {
    const { page, asked, said } = await openPage(browser, html, 1000);
    expect({ asked, said }).toEqual({ asked: [], said: [] });
    expect(await page.title()).not.toBe('owned');
    expect(await page.evaluate(() => document.querySelectorAll('script, img, iframe, b').length)).toBe(0);
    await page.close();
  });

  it.each(pages)(
    '%s: no sideways scroll of the page on a phone; type large enough to read',
    async (_name, html) => {
      const { page } = await openPage(browser, html, 360);
      for (const width of [320, 390, 768]) {
        await page.setViewportSize({ width, height: 700 });
        expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
      }
      const smallest = await page.evaluate(() =>
        Math.min(
          ...Array.from(document.querySelectorAll('p, td, li, h1, h2, h3')).map((node) =>
            Number.parseFloat(getComputedStyle(node).fontSize),
          ),
        ),
      );
      expect(smallest).toBeGreaterThanOrEqual(12);
      await page.close();
    },
  );
});
