import { describe, expect, it } from 'vitest';
import { inches } from '../../src/base/units/tick.ts';
import type { Cut, LaidPiece } from '../../src/flow/cuts/layout.ts';
import { offcutThickness } from '../../src/flow/cuts/offcut-thickness.ts';

const whole = { x: 0, y: 0, length: 100, width: 8 };
const section = (at: number): Cut => ({
  step: 1,
  kind: 'crosscut',
  region: whole,
  at,
  kerf: 1,
  purpose: 'section',
});
const piece = (part: string, x: number): LaidPiece => ({
  part,
  copy: 1,
  ...{ x, y: 0, length: 10, width: 4 },
  showFace: 'A',
});
const thickness = new Map([
  ['thick', inches(13 / 16)],
  ['usual', inches(3 / 4)],
  ['thin', inches(1 / 2)],
]);
const offcut = (x: number) => ({ x, y: 4, length: 10, width: 4 });

describe('how thick an offcut is', () => {
  const of = (cuts: readonly Cut[], pieces: readonly LaidPiece[], x: number, dressed = inches(13 / 16)) =>
    offcutThickness({ cuts, pieces }, offcut(x), thickness, dressed);

  it('as thick as the parts of its board, which was planed for them', () => {
    expect(of([], [piece('usual', 0)], 0)).toBe(inches(3 / 4));
    expect(of([section(20), section(40)], [piece('usual', 0)], 60)).toBe(inches(3 / 4));
    expect(of([], [piece('thick', 0)], 0)).toBe(inches(13 / 16));
    expect(of([], [piece('usual', 0), piece('thin', 10)], 0)).toBe(inches(3 / 4));
  });

  it('of several thicknesses, as the thickest of its own section, else of the board', () => {
    const pieces = [piece('usual', 0), piece('thin', 30)];
    const cuts = [section(20), section(50)];
    expect(of(cuts, pieces, 5)).toBe(inches(3 / 4));
    expect(of(cuts, pieces, 30)).toBe(inches(1 / 2));
    expect(of(cuts, pieces, 60)).toBe(inches(3 / 4));
  });

  it('never thicker than its board, and as the board is where nothing is known', () => {
    expect(of([], [piece('thick', 0)], 0, inches(3 / 4))).toBe(inches(3 / 4));
    expect(of([], [piece('nobody knows', 0)], 0)).toBe(inches(13 / 16));
    expect(of([], [], 0)).toBe(inches(13 / 16));
  });
});
