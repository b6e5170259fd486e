import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import { overlaps } from '../../../src/base/geometry/rectangle.ts';
import type { Kind, Placement, Plate, PlatePattern } from '../../../src/flow/patterns/plate.ts';

/**
 * What is wrong with a pattern, in words; nothing when it can be cut: pieces of the right shape on the plate, clear
 * of what they must avoid, within their caps, the value the sum of the worths, and free by guillotine cuts that keep
 * kerfs, stages and the shortest rip. The cuts are sought here from the pieces alone.
 * @param freeTrim with limited stages: whether a piece may be freed of waste by cuts beyond the last stage
 */
export function patternFaults(
  plate: Plate,
  kinds: readonly Kind[],
  worth: readonly number[],
  { placements, value }: PlatePattern,
  freeTrim = false,
): string[] {
  const faults: string[] = [];
  const counts = kinds.map(() => 0);
  for (const piece of placements) {
    const kind = kinds[piece.kind]!;
    counts[piece.kind]! += 1;
    const name = `piece of kind ${piece.kind} at ${piece.x}, ${piece.y}`;
    if (!kind.shapes.some(({ length, width }) => length === piece.length && width === piece.width)) {
      faults.push(`${name} has no shape of its kind`);
    }
    if (!kind.clearances.includes(piece.clearance)) faults.push(`${name} under a clearance not its own`);
    if (plate.clearances[piece.clearance]!.some((block) => overlaps(block, piece))) {
      faults.push(`${name} is not clear`);
    }
  }
  for (const [kind, count] of counts.entries()) {
    if (count > kinds[kind]!.cap) faults.push(`${count} of kind ${kind}`);
  }
  const sum = counts.reduce((total, count, kind) => total + count * worth[kind]!, 0);
  if (Math.abs(sum - value) > 1e-9 * Math.abs(sum)) faults.push(`value ${value}, pieces worth ${sum}`);
  const whole = { x: 0, y: 0, length: plate.length, width: plate.width };
  const canCut = canFree(plate, whole, placements, plate.stages === 'any' ? 0 : 1, freeTrim, new Map());
  return canCut ? faults : [...faults, 'not free by guillotine cuts'];
}

/** Whether cuts free all pieces from the region; stage as in the brute force. */
function canFree(
  plate: Plate,
  region: Rectangle,
  pieces: readonly Placement[],
  stage: number,
  freeTrim: boolean,
  known: Map<string, boolean>,
): boolean {
  const [only] = pieces;
  if (only === undefined) return true;
  const far = region.x + region.length;
  const high = region.y + region.width;
  const isOn = (piece: Rectangle): boolean =>
    piece.x >= region.x &&
    piece.x + piece.length <= far &&
    piece.y >= region.y &&
    piece.y + piece.width <= high;
  if (!pieces.every(isOn)) return false;
  if (pieces.length === 1 && only.length === region.length && only.width === region.width) return true;
  if (plate.stages !== 'any' && stage > plate.stages) {
    const canRip = region.length >= plate.shortestRip || only.width === region.width;
    return freeTrim && pieces.length === 1 && canRip;
  }
  const key = `${region.x},${region.y},${region.length},${region.width},${stage}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const next = (part: Rectangle, inside: readonly Placement[], nextStage: number): boolean =>
    canFree(plate, part, inside, nextStage, freeTrim, known);
  let can = stage > 0 && next(region, pieces, stage + 1);
  if (!can && stage % 2 === (stage > 0 ? 1 : 0)) can = crosscuts();
  if (!can && stage % 2 === 0 && region.length >= plate.shortestRip) can = rips();
  known.set(key, can);
  return can;

  function crosscuts(): boolean {
    const kerf = plate.crosscutKerf;
    const places = pieces.flatMap((piece) => [piece.x - kerf, piece.x + piece.length]);
    places.push(region.x + plate.shortestRip, far - plate.shortestRip - kerf);
    return [...new Set(places)].some((at) => {
      if (at >= far || at + kerf < region.x || (at <= region.x && at + kerf <= region.x)) return false;
      if (pieces.some((piece) => piece.x < at + kerf && piece.x + piece.length > at)) return false;
      if (kerf === 0 && pieces.some((piece) => piece.x < at && piece.x + piece.length > at)) return false;
      const near = { ...region, length: at - region.x };
      const rest = { ...region, x: at + kerf, length: far - at - kerf };
      const isNear = (piece: Placement): boolean => piece.x < at;
      return (
        next(near, pieces.filter(isNear), stage) &&
        next(
          rest,
          pieces.filter((piece) => !isNear(piece)),
          stage,
        )
      );
    });
  }

  function rips(): boolean {
    const kerf = plate.ripKerf;
    const places = pieces.flatMap((piece) => [piece.y - kerf, piece.y + piece.width]);
    return [...new Set(places)].some((at) => {
      if (at >= high || at + kerf < region.y || (at <= region.y && at + kerf <= region.y)) return false;
      if (pieces.some((piece) => piece.y < at + kerf && piece.y + piece.width > at)) return false;
      if (kerf === 0 && pieces.some((piece) => piece.y < at && piece.y + piece.width > at)) return false;
      const low = { ...region, width: at - region.y };
      const rest = { ...region, y: at + kerf, width: high - at - kerf };
      const isLow = (piece: Placement): boolean => piece.y < at;
      return (
        next(low, pieces.filter(isLow), stage) &&
        next(
          rest,
          pieces.filter((piece) => !isLow(piece)),
          stage,
        )
      );
    });
  }
}
