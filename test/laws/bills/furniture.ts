import { inches, ticks } from '../../../src/base/units/tick.ts';
import { type Random, whole } from '../../../src/base/random/random.ts';
import type { Part } from '../../../src/flow/parts/part.ts';
import { plainPart } from '../random-board.ts';

/** A size in inches on the 1/8 in grid. */
function between(stream: Random, least: number, most: number): number {
  return whole(stream, Math.round(8 * least), Math.round(8 * most)) / 8;
}

/** Rows of a bill: name, copies, length and width in inches, most strips of a glue-up, how it is looked at. */
type Row = readonly [
  name: string,
  quantity: number,
  length: number,
  width: number,
  glueUp: number,
  show: number,
];

function rowsToParts(prefix: string, rows: readonly Row[]): Part[] {
  return rows.map(([name, quantity, length, width, glueUp, show]) => ({
    ...plainPart({ name: `${prefix} ${name}`, length: ticks(inches(length)), width: ticks(inches(width)) }),
    quantity,
    glueUp,
    show,
    quality: show > 0 ? ('clear-1' as const) : ('sound' as const),
  }));
}

/** As many strips as a panel of this width is usually made of, and one more. */
function stripsFor(width: number): number {
  return Math.min(8, Math.max(2, Math.ceil(width / 4)));
}

const makers: readonly ((stream: Random) => Row[])[] = [
  function bookcase(stream) {
    const [height, width, depth] = [between(stream, 30, 72), between(stream, 22, 34), between(stream, 9, 13)];
    const panel = stripsFor(depth);
    return [
      ['side', 2, height, depth, panel, 1],
      ['shelf', whole(stream, 3, 5), width, depth - 0.25, panel, 1],
      ['top', 1, width + 1.5, depth + 0.75, panel, 1],
      ['rail', 2, width, 3, 1, 0],
      ['edge', whole(stream, 2, 4), width, 1.5, 1, 1],
    ];
  },
  function table(stream) {
    const [length, width] = [between(stream, 36, 66), between(stream, 20, 32)];
    return [
      ['top', 1, length, width, 8, 1],
      ['long apron', 2, length - 6, 3.5, 1, 1],
      ['short apron', 2, width - 6, 3.5, 1, 1],
      ['leg blank', 8, 28.5, 2.5, 1, 1],
      ['corner block', 4, 6.5, 2, 1, 0],
    ];
  },
  function cabinet(stream) {
    const [height, width, depth] = [
      between(stream, 26, 40),
      between(stream, 18, 30),
      between(stream, 12, 16),
    ];
    const panel = stripsFor(depth);
    return [
      ['side', 2, height, depth, panel, 1],
      ['top', 1, width + 2, depth + 1, panel, 1],
      ['bottom', 1, width - 1.5, depth - 0.5, panel, 0],
      ['door stile', 4, height - 4, 2.25, 1, 1],
      ['door rail', 4, width / 2 - 4, 2.25, 1, 1],
      ['door panel', 2, height - 8, width / 2 - 4, 3, 1],
    ];
  },
  function chest(stream) {
    const [length, height, depth] = [
      between(stream, 34, 48),
      between(stream, 14, 20),
      between(stream, 15, 20),
    ];
    return [
      ['front and back', 2, length, height, stripsFor(height), 1],
      ['end', 2, depth, height, stripsFor(height), 1],
      ['lid', 1, length + 1.5, depth + 1, stripsFor(depth), 1],
      ['skirt', 2, length + 1, 3, 1, 1],
      ['batten', 3, depth - 3, 2, 1, 0],
    ];
  },
  function bench(stream) {
    const [length, depth] = [between(stream, 36, 60), between(stream, 11, 15)];
    return [
      ['seat', 1, length, depth, stripsFor(depth), 1],
      ['leg panel', 2, 17, depth - 1, stripsFor(depth), 1],
      ['stretcher', 1, length - 8, 4, 1, 1],
      ['rail', 2, length - 4, 2.5, 1, 1],
    ];
  },
  function doors(stream) {
    const count = whole(stream, 2, 4);
    const [height, width] = [between(stream, 22, 32), between(stream, 12, 18)];
    return [
      ['stile', 2 * count, height, 2.25, 1, 1],
      ['rail', 2 * count, width - 4, 2.5, 1, 1],
      ['panel', count, height - 4.25, width - 4, 3, 1],
    ];
  },
  function drawers(stream) {
    const count = whole(stream, 3, 5);
    const [width, depth] = [between(stream, 14, 24), between(stream, 14, 18)];
    return [
      ['front', count, width, 6, 2, 1],
      ['side', 2 * count, depth, 5, 2, 0],
      ['back', count, width - 1.5, 4.25, 1, 0],
      ['runner', 2 * count, depth, 1.25, 1, 0],
    ];
  },
];

/** The bill of some pieces of furniture: few widths, many alike parts, wide panels that may be glued up. */
export function furnitureParts(stream: Random, pieces: number): Part[] {
  return Array.from({ length: pieces }, (_, index) => {
    const make = makers[whole(stream, 0, makers.length - 1)]!;
    return rowsToParts(`${make.name} ${index + 1}`, make(stream));
  }).flat();
}

/** Casings and mouldings: one width, many lengths. */
export function casingParts(stream: Random, rooms: number): Part[] {
  const width = between(stream, 2.25, 4);
  return Array.from({ length: rooms }, (_, room) => {
    const [door, window] = [between(stream, 28, 36), between(stream, 24, 60)];
    return rowsToParts(`room ${room + 1}`, [
      ['door side', 4, 81.5 + between(stream, 0, 2), width, 1, 1],
      ['door head', 2, door + 2 * width, width, 1, 1],
      ['window side', 2, between(stream, 40, 58), width, 1, 1],
      ['window head', 2, window + 2 * width, width, 1, 1],
    ]);
  }).flat();
}
