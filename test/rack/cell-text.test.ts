import { describe, expect, it } from 'vitest';
import { cellLength, lengthOfCell, placeOfCell } from '../../src/flow/rack/cell-length.ts';
import { cellDefects, defectsOfCell } from '../../src/flow/rack/cell-list.ts';
import { cellName, cellText, textOfCell } from '../../src/flow/rack/cell-text.ts';
import { inches, ticks } from '../../src/base/units/tick.ts';
import type { Defect } from '../../src/flow/stock/defect.ts';

describe('text in a cell of the rack', () => {
  it.each(['=', '+', '-', '@', '\uFF1D', '\uFF0B', '\uFF0D', '\uFF20', "'"])(
    'that begins with %s is never run',
    (sign) => {
      for (const write of [cellText, cellName]) {
        const cell = write(`${sign}1+1`);
        expect(cell).toBe(`'${sign}1+1`);
        expect(textOfCell(cell)).toBe(`${sign}1+1`);
      }
    },
  );
});

describe('places in a cell of the rack', () => {
  it('may lie before the end or edge; sizes may not', () => {
    expect(placeOfCell(cellLength(ticks(-inches(1.5)), 'in'))).toBe(-inches(1.5));
    expect(lengthOfCell('-1 1/2 in')).toBeNull();
    const knot: Defect = { kind: 'sound knot', face: 'A', x: -9000, y: 20, length: 500, width: 600 };
    for (const unit of ['in', 'mm'] as const)
      expect(defectsOfCell(cellDefects([knot], unit))).toEqual([knot]);
  });

  it('take a point for a point and a comma for one, as a spreadsheet left it', () => {
    expect(lengthOfCell('1.234 mm')).toBe(lengthOfCell('1,234 mm'));
    expect(lengthOfCell('1.234 mm')).toBe(ticks(Math.round(1.234 * 320)));
  });
});
