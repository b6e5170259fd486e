import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import { drawPlanView } from '../../src/flow/plan/draw/plan-view.ts';
import { drawSection } from '../../src/flow/plan/draw/section.ts';
import { planMantel } from '../../src/flow/plan/plan-mantel.ts';
import { anyLegs, anyMantel } from './arbitrary-mantel.ts';
import { leg, planned } from './mantels.ts';

const style = { units: 'in', printFraction: 32 } as const;
const metric = { units: 'mm', printFraction: 32 } as const;

/** The words of a drawing, in order. */
function textsOf(drawing: string): string[] {
  return [...drawing.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) =>
    (text ?? '').replaceAll('&quot;', '"').replaceAll('&amp;', '&'),
  );
}

/** What keeps a drawing from being well-formed: a tag closed out of turn; null when nothing does. */
function tagFault(drawing: string): string | null {
  const open: string[] = [];
  for (const [whole, closing, name, empty] of drawing.matchAll(/<(\/?)([A-Za-z]+)(?:\s[^<>]*?)?(\/?)>/g)) {
    if (closing === '/') {
      if (open.pop() !== name) return whole;
    } else if (empty !== '/') open.push(name!);
  }
  return open.length === 0 ? null : `left open: ${open.join(' ')}`;
}

const legs = [leg('left', 14.75, 8.75), leg('front', 60, 8.25), leg('right', 6, 8.75)];

describe('the plan view', () => {
  const drawing = drawPlanView(planned({ leftEnd: 'capped' }, legs), style);

  it('has a title, a label, and stands alone', () => {
    expect(drawing).toContain('<title>Plan of the mantel, seen from above</title>');
    expect(drawing).toContain('aria-label="Plan of the mantel, seen from above: left, front, right"');
    expect(drawing.replace('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(
      /https?:|@import|<image|<script/,
    );
  });

  it('carries every face, wall and depth', () => {
    const texts = textsOf(drawing);
    // Faces: 14 + 7.5 + 2 × 3/4 of cap and corner; 60 + 16 + 2 × 3/4; 6 + 7.5 + 3/4. Depths: what it stands off.
    for (const size of ['23"', '77 1/2"', '14 1/4"', 'wall 60", gap 0"', '8 3/4"', '8 1/4"'])
      expect(texts).toContain(size);
    expect(texts).toContain('end at 14 3/4", gap 0"');
    expect(texts).toContain('end at 6", gap 0"');
    expect(texts).toContain('Seen from above, finished 77 1/2" × 23" × 6 1/2"');
    // A cap, two corners, and the end in the side wall.
    expect(texts.filter((text) => text === 'saw 45°')).toHaveLength(3);
    expect(texts.filter((text) => text === 'wall 90°')).toHaveLength(2);
    expect(texts).toContain('wall 90°, saw 0°');
  });

  it('numbers each piece once on the drawing and once in the key', () => {
    const texts = textsOf(drawing);
    // 4 faces, 3 tops (the bottoms under them), 3 ledgers.
    for (let number = 1; number <= 10; number += 1)
      expect(texts.filter((text) => text === String(number))).toHaveLength(2);
    expect(texts).not.toContain('11');
    expect(texts).toContain('77 1/2 × 6 1/2 × 3/4');
    expect(texts).toContain('grain along front, edge-joined to it');
  });

  it('cuts a long name, but not what the piece is', () => {
    const long = textsOf(
      drawPlanView(planned({}, [leg('the long wall beside the old oak door', 60, 8.75)]), style),
    );
    expect(long).toContain('the long wall beside th… facing');
    expect(long).toContain('the long wall beside th… top (bottom alike)');
  });

  it('an inside corner has its size beside the face, since dimension lines would cross there', () => {
    const inside = textsOf(
      drawPlanView(planned({}, [leg('front', 60, 8.75, -90), leg('right', 30, 6.75)]), style),
    );
    expect(inside).toContain('face 53 1/4"');
    expect(inside).toContain('left end 45° inside bevel, right end square');
  });

  it('draws to scale', () => {
    const beam = drawPlanView(planned({ ledger: null }, [leg('beam', 60, 12.75, 0)]), style);
    // 60 in fill the 1400 units between the margins; the panel is 12 in deep, the facing 3/4 before it.
    expect(beam).toContain(`M220 210L1620 210L1620 490L220 490Z`);
  });
});

describe('the section', () => {
  it('carries the sizes and the height above the opening', () => {
    const texts = textsOf(drawSection(planned({}, legs), style));
    for (const size of ['8 1/4"', '7 1/2"', '6 1/2"', '5"', '13 1/2"', 'front ledger, 3/4" × 3"'])
      expect(texts).toContain(size);
    expect(texts).toContain('top of the firebox opening');
  });

  it('says so when the height is not given, or not to scale', () => {
    const unknown = textsOf(drawSection(planned({ heightAboveOpening: null }, legs), style));
    expect(unknown).toContain('height above the firebox opening: not given');
    const far = textsOf(drawSection(planned({ heightAboveOpening: inches(40) }, legs), metric));
    expect(far).toContain('top of the firebox opening, not drawn to scale');
    expect(far).toContain('1016');
    expect(far).toContain('Section through front, sizes in mm');
  });
});

describe('every drawing', () => {
  it('is well-formed and at whole-number coordinates, whatever the mantel and its names', () => {
    fc.assert(
      fc.property(
        anyMantel,
        anyLegs,
        fc.array(fc.string({ unit: 'binary' }), { minLength: 5, maxLength: 5 }),
        (mantel, given, names) => {
          const named = given.map((one, index) => ({ ...one, name: `${names[index]}<b>&"'${index}` }));
          const result = planMantel(mantel, named);
          if (!result.ok) return;
          for (const drawing of [drawPlanView(result.value, style), drawSection(result.value, metric)]) {
            expect(tagFault(drawing)).toBeNull();
            expect(drawing).not.toContain('<b>');
            expect(drawing).not.toMatch(/NaN|Infinity|undefined/);
            const broken = [...drawing.matchAll(/ (?:d|x|y|cx|cy|r|width|height|viewBox)="([^"]*)"/g)].filter(
              ([, numbers]) => /\d\.\d|e[+-]?\d/.test(numbers ?? ''),
            );
            expect(broken).toEqual([]);
          }
        },
      ),
      { numRuns: 80 },
    );
  });
});
