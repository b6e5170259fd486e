import { inches, ticks, type Tick } from '../../src/base/units/tick.ts';
import type { Part } from '../../src/flow/parts/part.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Defect } from '../../src/flow/stock/defect.ts';

/** A part with the defaults of a parts file. */
export function partOf(
  name: string,
  quantity: number,
  length: Tick,
  width: Tick,
  more: Partial<Part> = {},
): Part {
  return {
    name,
    quantity,
    length,
    width,
    thickness: inches(3 / 4),
    species: '',
    grain: 'along',
    quality: 'clear-1',
    show: 0,
    accept: [],
    run: null,
    leftEnd: 0,
    rightEnd: 0,
    glueUp: 1,
    value: null,
    pin: null,
    note: '',
    ...more,
  };
}

/** A rough 4/4 board. */
export function boardOf(name: string, length: Tick, width: Tick, more: Partial<Board> = {}): Board {
  return {
    name,
    quantity: 1,
    length,
    width,
    nominalThickness: '4/4',
    nominalInches: 1,
    yardFeet: Math.max(1, Math.round((length * width) / (8128 * 8128 * 144))),
    dressedThickness: inches(13 / 16),
    surface: 'rough',
    species: 'white oak',
    grade: 'No. 1 Common',
    cost: Math.round(((length * width) / (8128 * 8128 * 144)) * 1200) / 100,
    lookA: 5,
    lookB: 5,
    tone: '',
    note: '',
    defects: [],
    origin: 'job',
    ...more,
  };
}

/** A defect from inches: along the board from, to; across it low, high. */
export function flaw(
  kind: Defect['kind'],
  face: Defect['face'],
  from: number,
  to: number,
  low: number,
  high: number,
): Defect {
  const tick = (value: number): number => ticks(Math.round(value * 8128));
  return { kind, face, x: tick(from), length: tick(to - from), y: tick(low), width: tick(high - low) };
}
