import { inches, ticks } from '../../src/base/units/tick.ts';
import { boardFeet } from '../../src/trade/board-feet.ts';
import type { Board } from '../../src/flow/stock/board.ts';
import type { Part } from '../../src/flow/parts/part.ts';

/** Any fields of a shape with a name; sizes may be plain numbers of ticks. */
type Given<T extends { name: string }> = Partial<Omit<T, 'length' | 'width'>> & {
  readonly name: string;
  readonly length: number;
  readonly width: number;
};

/** A 4/4 board, S4S, without defects, 1 money per copy: what a test says otherwise goes over it. */
export function plainBoard(given: Given<Board>): Board {
  return {
    quantity: 1,
    nominalThickness: '4/4',
    nominalInches: 1,
    yardFeet: boardFeet(ticks(given.length), ticks(given.width), given.nominalInches ?? 1),
    dressedThickness: inches(13 / 16),
    surface: 'S4S',
    species: 'red oak',
    grade: '',
    cost: 1,
    lookA: 5,
    lookB: 5,
    tone: '',
    note: '',
    defects: [],
    origin: 'job',
    ...given,
    length: ticks(given.length),
    width: ticks(given.width),
  };
}

/** A 3/4 in clear-1 part, one copy, square ends, grain along: what a test says otherwise goes over it. */
export function plainPart(given: Given<Part>): Part {
  return {
    quantity: 1,
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
    ...given,
    length: ticks(given.length),
    width: ticks(given.width),
  };
}
