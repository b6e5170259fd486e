import type { Random } from '../../../src/base/random/random.ts';
import { chance, whole } from '../../../src/base/random/random.ts';
import type { Kind, Plate } from '../../../src/flow/patterns/plate.ts';

/** A plate small enough for the brute force, with what may go with it: kerf, blocks, a shortest rip, stages. */
export interface Case {
  readonly plate: Plate;
  readonly kinds: readonly Kind[];
  readonly worth: readonly number[];
}

/** Draws a case. */
export function randomCase(stream: Random): Case {
  const length = whole(stream, 3, 9);
  const width = whole(stream, 2, 6);
  const clearanceCount = whole(stream, 1, 2);
  const hasBlocks = chance(stream, 0.6);
  const clearances = Array.from({ length: clearanceCount }, () =>
    Array.from({ length: hasBlocks ? whole(stream, 0, 3) : 0 }, () => ({
      x: whole(stream, 0, length - 1),
      y: whole(stream, 0, width - 1),
      length: whole(stream, 1, 3),
      width: whole(stream, 1, 2),
    })),
  );
  const kinds = Array.from({ length: whole(stream, 1, 3) }, (): Kind => {
    const shape = {
      length: whole(stream, 1, Math.min(5, length)),
      width: whole(stream, 1, Math.min(4, width)),
    };
    const turned = { length: shape.width, width: shape.length };
    const isTurnable = chance(stream, 0.25) && shape.length !== shape.width;
    return {
      shapes: isTurnable ? [shape, turned] : [shape],
      cap: whole(stream, 1, 3),
      clearances: clearanceCount === 1 ? [0] : chance(stream, 0.3) ? [0, 1] : [whole(stream, 0, 1)],
    };
  });
  return {
    plate: {
      length,
      width,
      crosscutKerf: chance(stream, 0.5) ? 0 : whole(stream, 1, 2),
      ripKerf: chance(stream, 0.5) ? 0 : 1,
      shortestRip: chance(stream, 0.6) ? 0 : whole(stream, 1, length + 1),
      stages: chance(stream, 0.7) ? 'any' : whole(stream, 1, 4),
      clearances,
    },
    kinds,
    worth: kinds.map(() => whole(stream, 1, 12)),
  };
}
