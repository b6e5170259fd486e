import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { clean, escapeText } from '../../../src/base/markup/clean.ts';
import { content, html, svg, trusted } from '../../../src/base/markup/element.ts';

describe('elements', () => {
  it('escapes text and attribute values, and nothing twice', () => {
    expect(html('p', { title: `"a" & 'b'` }, '5 < 6 & ', html('b', {}, '>')).markup).toBe(
      '<p title="&quot;a&quot; &amp; &#39;b&#39;">5 &lt; 6 &amp; <b>&gt;</b></p>',
    );
  });

  it('closes empty SVG elements and gives void HTML elements no end tag', () => {
    expect(svg('rect', { x: 0, width: 4, rx: null, ry: false }).markup).toBe('<rect x="0" width="4"/>');
    expect(svg('g', {}, svg('path', { d: 'M0 0' })).markup).toBe('<g><path d="M0 0"/></g>');
    expect(html('br', {}).markup + html('td', {}).markup).toBe('<br><td></td>');
    expect(html('details', { open: true }).markup).toBe('<details open=""></details>');
  });

  it('flattens lists, drops null and false, writes 0', () => {
    expect(content(['a', ['b', null, false, undefined, 0], trusted('<hr>')]).markup).toBe('ab0<hr>');
  });

  it('refuses names and numbers that only a bug could send', () => {
    expect(() => html('p onclick=x', {})).toThrow('not a name');
    expect(() => svg('rect', { 'x y': 1 })).toThrow('not a name');
    expect(() => svg('rect', { x: Number.NaN })).toThrow('not a finite number');
  });
});

describe('hostile text', () => {
  it('shows a mark where a control character, a lone surrogate or an override stood', () => {
    expect(clean('a\u0000b\u001Bc\u0085d')).toBe('a\uFFFDb\uFFFDc\uFFFDd');
    expect(clean('x\uD83D y\uDE00 \u{1F600}')).toBe('x\uFFFD y\uFFFD \u{1F600}');
    expect(clean('abc\u202Efed')).toBe('abc\uFFFDfed');
    expect(clean('one\r\ntwo\rthree\tfour')).toBe('one\ntwo\nthree\tfour');
  });

  it('never leaves a character that could open a tag, an entity or a quote', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const escaped = escapeText(text);
        expect(escaped.replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toMatch(/[<>&"']/);
        expect(/\p{Surrogate}/u.test(escaped)).toBe(false);
      }),
    );
  });

  it('reads back as the cleaned text', () => {
    const back: ReadonlyMap<string, string> = new Map([
      ['&amp;', '&'],
      ['&lt;', '<'],
      ['&gt;', '>'],
      ['&quot;', '"'],
      ['&#39;', "'"],
    ]);
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const read = escapeText(text).replace(
          /&(?:amp|lt|gt|quot|#39);/g,
          (entity) => back.get(entity) ?? '',
        );
        expect(read).toBe(clean(text));
      }),
    );
  });
});
