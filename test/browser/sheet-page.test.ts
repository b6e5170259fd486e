import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheetHtml } from '../../src/flow/sheet/page/sheet-html.ts';
import { hostileJob, hostileLayout } from '../sheet/hostile-sample.ts';
import { mantelJob, mantelLayout } from '../sheet/mantel-sample.ts';
import { browserPath, openBrowser, openPage } from './browser.ts';
import { labelFaults } from './label-faults.ts';

const pages = [
  ['mantel', sheetHtml(mantelJob, mantelLayout())],
  ['hostile', sheetHtml(hostileJob, hostileLayout())],
] as const;

describe.skipIf(browserPath === undefined)('the sheet in a browser', () => {
  let browser: Browser;
  beforeAll(async () => void (browser = await openBrowser()));
  afterAll(() => browser.close());

  it.each(pages)('%s: asks the network for nothing, says nothing, runs nothing', async (_name, html) => {
    const { page, asked, said } = await openPage(browser, html, 1000);
    expect({ asked, said }).toEqual({ asked: [], said: [] });
    expect(await page.title()).not.toBe('owned');
    expect(await page.evaluate(() => document.querySelectorAll('script, img, iframe').length)).toBe(0);
    expect(await page.evaluate(() => document.compatMode)).toBe('CSS1Compat');
    await page.close();
  });

  it.each(pages)('%s: no sideways scroll of the page from 320 to 1400 px', async (_name, html) => {
    const { page } = await openPage(browser, html, 360);
    for (const width of [320, 360, 414, 768, 1400]) {
      await page.setViewportSize({ width, height: 700 });
      const { whole, shown } = await page.evaluate(() => ({
        whole: document.documentElement.scrollWidth,
        shown: innerWidth,
      }));
      expect({ width, whole }).toEqual({ width, whole: shown });
    }
    await page.close();
  });

  it.each(pages)('%s: on a phone only diagrams scroll, inside their own box', async (_name, html) => {
    const { page } = await openPage(browser, html, 360);
    const scrolling = await page.evaluate(() =>
      Array.from(document.querySelectorAll('.scroll'))
        .filter((box) => box.scrollWidth > box.clientWidth + 1)
        .map((box) => box.className),
    );
    expect(new Set(scrolling)).toEqual(new Set(['diagram scroll']));
    const small = await page.evaluate(() =>
      Array.from(document.querySelectorAll('p, td, li, h1, h2, h3'))
        .map((node) => Number.parseFloat(getComputedStyle(node).fontSize))
        .filter((size) => size < 12),
    );
    expect(small).toEqual([]);
    await page.close();
  });

  it.each(pages)('%s: diagrams stay clear of overlaps inside the page', async (_name, html) => {
    const { page } = await openPage(browser, html, 1840 + 600);
    await page.addStyleTag({
      content: 'main{max-width:none!important;padding:0!important} .diagram svg{width:1840px!important}',
    });
    expect(await labelFaults(page)).toEqual([]);
    await page.close();
  });

  it('prints on Letter and A4, one board to a page or fewer, nothing wider than the paper', async () => {
    const [[, html]] = pages;
    const { page } = await openPage(browser, html, 800);
    for (const format of ['Letter', 'A4'] as const) {
      const pdf = (await page.pdf({ format })).toString('latin1');
      const count = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
      // Front matter, four boards (one with more cuts than a page holds), settings, parts.
      expect(count).toBeGreaterThanOrEqual(6);
      expect(count).toBeLessThanOrEqual(9);
    }
    await page.emulateMedia({ media: 'print' });
    // A4 less the margins of 13 mm, in CSS pixels: 184 mm.
    await page.setViewportSize({ width: Math.floor((184 / 25.4) * 96), height: 1000 });
    const { whole, shown } = await page.evaluate(() => ({
      whole: document.documentElement.scrollWidth,
      shown: innerWidth,
    }));
    expect(whole).toBe(shown);
    await page.close();
  });

  it('draws to the stated scale when printed', async () => {
    const [[, html]] = pages;
    const { page } = await openPage(browser, html, 900);
    await page.emulateMedia({ media: 'print' });
    const width = await page.evaluate(
      () => document.querySelector('.diagram svg')?.getBoundingClientRect().width ?? 0,
    );
    expect((width / 96) * 25.4).toBeCloseTo(184, 0);
    await page.close();
  });

  it('is read by a parser of XML, drawing by drawing', async () => {
    const { page } = await openPage(browser, '<p>parser</p>', 400);
    for (const [, html] of pages) {
      const drawings = html.match(/<svg xmlns.*?<\/svg>/gs) ?? [];
      expect(drawings.length).toBeGreaterThan(2);
      const faults = await page.evaluate(
        (texts) =>
          texts.map(
            (text) =>
              new DOMParser().parseFromString(text, 'image/svg+xml').querySelector('parsererror')
                ?.textContent ?? '',
          ),
        drawings,
      );
      expect(faults.filter((fault) => fault !== '')).toEqual([]);
    }
    await page.close();
  });
});
