import { describe, expect, it } from 'vitest';
import { sheetHtml } from '../../src/flow/sheet/page/sheet-html.ts';
import { summaryText } from '../../src/flow/sheet/text/summary-text.ts';
import { layoutOf } from './saw.ts';
import { hostileJob, hostileLayout } from './hostile-sample.ts';
import { mantelJob, mantelLayout } from './mantel-sample.ts';

const pages = [sheetHtml(mantelJob, mantelLayout()), sheetHtml(hostileJob, hostileLayout())];
/** Which of the texts a page lacks: short to read when a test fails, unlike the page. */
const lacking = (page: string, ...texts: readonly string[]): string[] =>
  texts.filter((text) => !page.includes(text));
const elements = (page: string): Set<string> =>
  new Set([...page.matchAll(/<([a-z][a-z0-9]*)/g)].map(([, name = '']) => name));

describe('the sheet', () => {
  it('is one file that asks for nothing and runs nothing', () => {
    for (const page of pages) {
      const bare = page.replaceAll('xmlns="http://www.w3.org/2000/svg"', '');
      expect(bare).not.toMatch(/(?:src|href)="(?!#)|url\(|@import|https?:/);
      const used = elements(page);
      for (const name of ['script', 'iframe', 'img', 'link', 'object', 'form', 'base'])
        expect(used.has(name)).toBe(false);
      expect(bare.replace(/"[^"]*"/g, '""').match(/<[^>]*\son[a-z]+=/g)).toBeNull();
      expect(
        lacking(page, `content="default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;"`),
      ).toEqual([]);
      expect(page).toMatch(/^<!doctype html>\n<html lang="en">/);
    }
  });

  it('closes what it opens, whatever the names', () => {
    for (const page of pages) {
      const open: string[] = [];
      for (const [, slash, name = '', selfClosing] of page.matchAll(
        /<(\/?)([a-zA-Z][a-zA-Z0-9]*)[^>]*?(\/?)>/g,
      )) {
        if (['meta', 'br'].includes(name) || selfClosing === '/') continue;
        if (slash === '') open.push(name);
        else expect(open.pop()).toBe(name);
      }
      expect(open).toEqual([]);
    }
  });

  it('has every link lead somewhere, and no name twice', () => {
    for (const page of pages) {
      const ids = [...page.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const [, target] of page.matchAll(/href="#([^"]*)"/g)) expect(ids).toContain(target);
    }
  });

  it('says the verdict, the five figures, the shorts, the check', () => {
    const [page = ''] = pages;
    expect(lacking(page, 'No layout of all parts was found on these boards')).toEqual([]);
    for (const words of [
      'parts (the yield)',
      'kept offcuts',
      'kerf',
      'trim',
      'defects and scrap',
      'Waste, that is all but',
    ])
      expect(lacking(page, words)).toEqual([]);
    expect(lacking(page, '1 copy short; no board has 120')).toEqual([]);
    expect(lacking(page, 'replayed one by one')).toEqual([]);
  });

  it('gives a caution for the saw, and for fire and wall where no plan has said it better', () => {
    const [page = ''] = pages;
    for (const heading of [
      'Near a fire, on a wall.',
      'Short pieces.',
      'Narrow rips.',
      'Wood under stress.',
      'Dust and finish.',
    ])
      expect(lacking(page, heading)).toEqual([]);
    const said = sheetHtml(mantelJob, mantelLayout(), {
      cautions: ['<12" from the opening>', { heading: 'Hanging', lines: ['a', 'b'] }],
    });
    expect(lacking(said, '&lt;12&quot; from the opening&gt;')).toEqual([]);
    expect(lacking(said, '<strong>Hanging.</strong> a b')).toEqual([]);
    expect(lacking(said, 'Near a fire, on a wall.')).toHaveLength(1);
    expect(said.replace(/<svg.*?<\/svg>/gs, '')).not.toMatch(/\b(?:is safe|complies|compliant)\b/);
  });

  it('carries drawings and notes', () => {
    const svg = '<?xml version="1.0"?>\n<svg viewBox="0 0 1 1"><title>plan</title></svg>';
    const page = sheetHtml(mantelJob, mantelLayout(), {
      drawings: [{ title: 'Plan & section', svg }],
      notes: ['mind the cat'],
    });
    expect(lacking(page, '<figcaption>Plan &amp; section</figcaption><svg viewBox="0 0 1 1">')).toEqual([]);
    expect(lacking(page, '<?xml')).toHaveLength(1);
    expect(lacking(page, 'mind the cat')).toEqual([]);
  });

  it('escapes the running head so that no name can end the style', () => {
    const [, page = ''] = pages;
    const style = /<style>(.*?)<\/style>/s.exec(page)?.[1] ?? '';
    expect(style).toContain('@top-left { content: "\\3c \\2f \\74 ');
    expect(style.split('{').length).toBe(style.split('}').length);
  });

  it('stands even with nothing to show', () => {
    const job = { name: '', shop: mantelJob.shop, parts: [], boards: [] };
    const empty = layoutOf(job, [], { value: 0, bound: 0 });
    expect(sheetHtml(job, empty)).toContain('Nothing is laid out.');
    expect(summaryText(job, empty)).toContain('0 boards');
  });
});

describe('the summary for the terminal', () => {
  it('keeps its columns and steers no terminal, whatever the names', () => {
    const text = summaryText(hostileJob, hostileLayout());
    // eslint-disable-next-line no-control-regex
    expect(text).not.toMatch(/[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/);
    for (const line of text.split('\n')) expect(line.length).toBeLessThan(500);
    expect(text).not.toMatch(/ $/m);
  });
});
