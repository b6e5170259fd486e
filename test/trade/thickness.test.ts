import { describe, expect, it } from 'vitest';
import { inches, millimetres, ticks, ticksPerInch } from '../../src/base/units/tick.ts';
import { dressingLoss, parseThickness, surfacedThickness } from '../../src/trade/thickness.ts';
import { casesOf, numberIn } from './published.ts';

describe('thickness', () => {
  it.each(casesOf('surfaced_thickness'))('%s', (_title, { given, expect: asked }) => {
    const rough = numberIn(given, 'rough_in');
    const s2s = numberIn(asked, 's2s_in');
    expect(surfacedThickness.find((row) => row.rough === rough)?.s2s).toBe(s2s);
    expect(rough * ticksPerInch - dressingLoss(inches(rough))).toBe(inches(s2s));
    const asWritten = rough < 1 ? `${rough}` : `${rough * 4}/4`;
    expect(parseThickness(asWritten, 'rough')).toEqual({
      nominalInches: Math.max(1, rough),
      dressed: inches(s2s),
    });
  });

  it('the loss is the table, row by row', () => {
    for (const { rough, s2s } of surfacedThickness)
      expect(inches(rough) - dressingLoss(inches(rough))).toBe(inches(s2s));
  });

  const read: [text: string, surface: 'rough' | 'S2S' | 'S4S', nominal: number, dressed: number][] = [
    ['4/4', 'S2S', 1, inches(13 / 16)],
    [' 5/4 ', 'S4S', 1.25, inches(1 + 1 / 16)],
    ['5⁄4', 'rough', 1.25, inches(1 + 1 / 16)],
    ['13/16', 'S2S', 1, inches(13 / 16)],
    ['3/4', 'S4S', 1, inches(0.75)],
    ['3/4 in', 'rough', 1, inches(9 / 16)],
    ['0.75', 'S2S', 1, inches(0.75)],
    ['1 3/4"', 'S2S', 2, inches(1.75)],
    ['20 mm', 'S2S', 1, millimetres(20)],
    ['27 mm', 'rough', 27 / 25.4, ticks(27 * 320 - 1524)],
    ['1/8', 'rough', 1, 0],
    ['4.5', 'S4S', 4.75, inches(4.5)],
  ];
  it.each(read)('reads %s %s', (text, surface, nominalInches, dressed) => {
    expect(parseThickness(text, surface)).toEqual({ nominalInches, dressed });
  });

  it('a bare number is in the job’s unit, a bare fraction in inches', () => {
    const metric = { unit: 'mm', decimalComma: true } as const;
    expect(parseThickness('20,5', 'S2S', metric)?.dressed).toBe(millimetres(20.5));
    expect(parseThickness('13/16', 'S2S', metric)?.dressed).toBe(inches(13 / 16));
    expect(parseThickness('4/4', 'rough', metric)?.dressed).toBe(inches(13 / 16));
  });

  it.each(['', ' ', 'thick', '0', '0/4', '-1', '4/0', '1e3', '__proto__', '4/4/4', '=1+1', '9'.repeat(5000)])(
    'refuses %j',
    (text) => {
      expect(parseThickness(text, 'rough')).toBeNull();
      expect(parseThickness(text, 'S2S')).toBeNull();
    },
  );
});
