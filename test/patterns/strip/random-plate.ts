import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Kind, Plate, Shape } from '../../../src/flow/patterns/plate.ts';
import { type Seeded, seeded } from '../../laws/seeded.ts';

/** A tiny plate, what may be cut from it and what each kind is worth: sizes in cells, all whole. */
export interface PlateCase {
  readonly plate: Plate;
  readonly kinds: readonly Kind[];
  readonly worth: Float64Array;
}

/** More than any tiny plate holds. */
export const asOftenAsItFits = 99;

/** A blocked rectangle; now and then it reaches past the plate, as a knot with its margin does. */
function blocked(random: Seeded, length: number, width: number): Rectangle {
  const over = random.chance(0.15) ? 1 : 0;
  const long = random.whole(1, Math.min(3, length));
  const wide = random.whole(1, Math.min(3, width));
  return {
    x: random.whole(-over, length - long + over),
    y: random.whole(-over, width - wide + over),
    length: long,
    width: wide,
  };
}

function randomKind(
  random: Seeded,
  plate: Pick<Plate, 'length' | 'width' | 'clearances'>,
  isFree: boolean,
): Kind {
  // Small shapes are commoner: only they leave room for others.
  const side = (most: number): number =>
    random.chance(0.6) ? random.whole(1, Math.max(1, Math.ceil(most / 2))) : random.whole(1, most + 1);
  const shape: Shape = { length: side(plate.length), width: side(plate.width) };
  const turned: Shape = { length: shape.width, width: shape.length };
  const all = plate.clearances.map((_, index) => index);
  return {
    shapes: random.chance(0.2) ? [shape, turned] : [shape],
    cap: isFree ? asOftenAsItFits : random.whole(1, 5),
    clearances: random.chance(0.7) ? all : all.filter(() => random.chance(0.6)),
  };
}

/**
 * Deterministic in its arguments. Each kind may be cut as often as it fits (`isFree`), or each up to 5 times. At most
 * 8 × 6 cells, kerfs 0 to 2, 1 to 4 kinds, 0 to 3 blocked rectangles, three stages or four.
 */
export function plateCase(seed: number, isFree: boolean): PlateCase {
  const random = seeded(seed);
  const length = random.whole(2, 8);
  const width = random.whole(1, 6);
  const flaws = Array.from({ length: random.pick([0, 0, 1, 1, 2, 3]) }, () => blocked(random, length, width));
  const clearances = Array.from({ length: random.whole(1, 2) }, () =>
    flaws.filter(() => random.chance(0.75)),
  );
  const plate: Plate = {
    length,
    width,
    crosscutKerf: random.pick([0, 1, 1, 2]),
    ripKerf: random.pick([0, 1, 1, 2]),
    shortestRip: random.pick([0, 0, 0, 1, 2, 3, 4, 5, 9]),
    stages: random.pick([3, 4, 4, 4]),
    clearances,
  };
  const kinds = Array.from({ length: random.whole(1, 4) }, () => randomKind(random, plate, isFree));
  const byArea = random.chance(0.3);
  const worth = Float64Array.from(kinds, ({ shapes }) => {
    const area = shapes[0]!.length * shapes[0]!.width;
    return byArea ? area : random.pick([0, -1, area, random.whole(1, 12), random.whole(1, 12)]);
  });
  return { plate, kinds, worth };
}

/** A case in one line, for the message of a failing test. */
export function printed({ plate, kinds, worth }: PlateCase): string {
  return JSON.stringify({ ...plate, kinds, worth: [...worth] });
}
