import { expect, test } from 'vitest';
import { html, svg } from '../../src/base/markup/element.ts';
import { wholeFractions } from '../../src/flow/sheet/page/whole-fractions.ts';

test('mixed numbers are held together in words, and left alone in drawings, attributes and names', () => {
  const page = html(
    'p',
    { title: '1 1/2' },
    'cut ~3 1/8" to 12 × 5 15/16, 1/2 and 7 holes, ',
    svg('svg', {}, svg('text', {}, '2 1/4')),
    html('b', {}, '<9 3/4>'),
  );
  expect(wholeFractions(page).markup).toBe(
    '<p title="1 1/2">cut <span class="keep">~3 1/8&quot;</span> to 12 × <span class="keep">5 15/16</span>, 1/2 and 7 holes, ' +
      '<svg><text>2 1/4</text></svg><b>&lt;<span class="keep">9 3/4</span>&gt;</b></p>',
  );
});
