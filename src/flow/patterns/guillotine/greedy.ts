import type { Kind, Placement, Plate } from '../plate.ts';

/** A rest of the plate, kerf included at its far ends. */
interface Rest {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * A quick pattern, as by hand: the pieces in a fixed order, each into the rest that it fills best, the rest then cut in
 * two. Tried for several orders. Finds at once what is easy: a plate with room for everything.
 *
 * Only for plates where any rest may be cut either way and everything may lie anywhere.
 * @param worth by kind, kinds at 0 or less are not cut   @param clearance by kind, what it is placed under
 */
export function greedyPattern(
  plate: Plate,
  kinds: readonly Kind[],
  worth: ArrayLike<number>,
  caps: ArrayLike<number>,
  clearance: readonly number[],
): Placement[] {
  const wanted = kinds.flatMap((kind, index) =>
    worth[index]! > 0 && caps[index]! > 0 && clearance[index]! >= 0 && kind.shapes.length > 0 ? [index] : [],
  );
  const area = (kind: number): number => kinds[kind]!.shapes[0]!.length * kinds[kind]!.shapes[0]!.width;
  const orders: ((kind: number) => number)[] = [
    (kind) => area(kind),
    (kind) => worth[kind]! / area(kind),
    (kind) => kinds[kind]!.shapes[0]!.length,
    (kind) => kinds[kind]!.shapes[0]!.width,
    (kind) => worth[kind]!,
  ];
  let best: Placement[] = [];
  let most = 0;
  for (const order of orders) {
    const sorted = [...wanted].sort((a, b) => order(b) - order(a) || a - b);
    for (const rule of ['longer rest', 'larger rest'] as const) {
      const found = fill(plate, kinds, sorted, caps, clearance, rule);
      const value = found.reduce((sum, { kind }) => sum + worth[kind]!, 0);
      if (value > most) {
        most = value;
        best = found;
      }
    }
  }
  return best;
}

function fill(
  plate: Plate,
  kinds: readonly Kind[],
  order: readonly number[],
  caps: ArrayLike<number>,
  clearance: readonly number[],
  rule: 'longer rest' | 'larger rest',
): Placement[] {
  const { crosscutKerf, ripKerf } = plate;
  const rests: Rest[] = [{ x: 0, y: 0, length: plate.length + crosscutKerf, width: plate.width + ripKerf }];
  const placements: Placement[] = [];
  for (const kind of order) {
    for (let copy = 0; copy < caps[kind]!; copy++) {
      const place = bestPlace(rests, kinds[kind]!, crosscutKerf, ripKerf);
      if (place === null) break;
      const { x, y } = place.rest;
      const shape = kinds[kind]!.shapes[place.shape]!;
      placements.push({ kind, clearance: clearance[kind]!, x, y, length: shape.length, width: shape.width });
      rests.splice(
        rests.indexOf(place.rest),
        1,
        ...split(place.rest, shape.length + crosscutKerf, shape.width + ripKerf, rule),
      );
    }
  }
  return placements;
}

/** The rest and shape that leave the least in the tighter direction. */
function bestPlace(
  rests: readonly Rest[],
  { shapes }: Kind,
  crosscutKerf: number,
  ripKerf: number,
): { rest: Rest; shape: number } | null {
  let best: { rest: Rest; shape: number } | null = null;
  let least = Infinity;
  for (const rest of rests) {
    for (const [shape, { length, width }] of shapes.entries()) {
      const along = rest.length - length - crosscutKerf;
      const across = rest.width - width - ripKerf;
      if (along < 0 || across < 0 || Math.min(along, across) >= least) continue;
      least = Math.min(along, across);
      best = { rest, shape };
    }
  }
  return best;
}

/** What is left when a piece is cut from the near corner: by a crosscut first, or by a rip first. */
function split(rest: Rest, length: number, width: number, rule: 'longer rest' | 'larger rest'): Rest[] {
  const along = rest.length - length;
  const across = rest.width - width;
  const crosscutFirst = rule === 'longer rest' ? along > across : along * rest.width > across * rest.length;
  const beyond = { x: rest.x + length, y: rest.y, length: along, width: crosscutFirst ? rest.width : width };
  const above = { x: rest.x, y: rest.y + width, length: crosscutFirst ? length : rest.length, width: across };
  return [beyond, above].filter((left) => left.length > 0 && left.width > 0);
}
