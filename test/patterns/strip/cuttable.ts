import type { Rectangle } from '../../../src/base/geometry/rectangle.ts';
import type { Kind, Placement, Plate } from '../../../src/flow/patterns/plate.ts';

/**
 * Whether cuts edge to edge free all the pieces from the plate: tries every cut at every whole position that hits no
 * piece, the kerf allowed to run off either end. For tiny plates of whole numbers only.
 */
export function canBeCut(plate: Plate, pieces: readonly Rectangle[]): boolean {
  const known = new Map<string, boolean>();

  function free(r: Rectangle, depth: number): boolean {
    const inside = pieces.filter(
      (p) => p.x >= r.x && p.y >= r.y && p.x + p.length <= r.x + r.length && p.y + p.width <= r.y + r.width,
    );
    if (inside.length === 0) return true;
    if (inside.length === 1 && inside[0]!.length === r.length && inside[0]!.width === r.width) return true;
    const key = `${r.x} ${r.y} ${r.length} ${r.width} ${depth}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    known.set(key, false);
    const answer = crosscut(r, inside, depth) || rip(r, inside, depth);
    known.set(key, answer);
    return answer;
  }

  function crosscut(r: Rectangle, inside: readonly Rectangle[], depth: number): boolean {
    const next = depth % 2 === 1 ? depth : depth + 1;
    if (plate.stages !== 'any' && next > plate.stages) return false;
    const kerf = plate.crosscutKerf;
    for (let at = r.x - kerf + 1; at < r.x + r.length; at += 1) {
      if (kerf === 0 && at <= r.x) continue;
      if (inside.some((p) => p.x < at + kerf && p.x + p.length > at)) continue;
      const far = { ...r, x: at + kerf, length: r.x + r.length - at - kerf };
      const near = { ...r, length: at - r.x };
      if ((near.length <= 0 || free(near, next)) && (far.length <= 0 || free(far, next))) return true;
    }
    return false;
  }

  function rip(r: Rectangle, inside: readonly Rectangle[], depth: number): boolean {
    const next = depth === 0 ? 2 : depth % 2 === 0 ? depth : depth + 1;
    if (r.length < plate.shortestRip || (plate.stages !== 'any' && next > plate.stages)) return false;
    const kerf = plate.ripKerf;
    for (let at = r.y - kerf + 1; at < r.y + r.width; at += 1) {
      if (kerf === 0 && at <= r.y) continue;
      if (inside.some((p) => p.y < at + kerf && p.y + p.width > at)) continue;
      const far = { ...r, y: at + kerf, width: r.y + r.width - at - kerf };
      const near = { ...r, width: at - r.y };
      if ((near.width <= 0 || free(near, next)) && (far.width <= 0 || free(far, next))) return true;
    }
    return false;
  }

  return free({ x: 0, y: 0, length: plate.length, width: plate.width }, 0);
}

/** Everything wrong with a pattern of a tiny plate, in words; nothing when it is as it says and can be cut. */
export function wrongWith(plate: Plate, kinds: readonly Kind[], placements: readonly Placement[]): string[] {
  const wrong: string[] = [];
  const touches = (a: Rectangle, b: Rectangle): boolean =>
    a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width;
  placements.forEach((piece, index) => {
    const { kind, clearance, x, y, length, width } = piece;
    const said = `kind ${kind} at ${x},${y}`;
    if (!kinds[kind]?.shapes.some((shape) => shape.length === length && shape.width === width))
      wrong.push(`${said} has no such shape`);
    if (!kinds[kind]?.clearances.includes(clearance)) wrong.push(`${said} has no such clearance`);
    if (plate.clearances[clearance]?.some((r) => touches(r, piece))) wrong.push(`${said} is not clear`);
    if (x < 0 || y < 0 || x + length > plate.length || y + width > plate.width)
      wrong.push(`${said} sticks out`);
    if (placements.some((other, k) => k < index && touches(other, piece))) wrong.push(`${said} overlaps`);
  });
  if (wrong.length === 0 && !canBeCut(plate, placements)) wrong.push('cannot be cut');
  return wrong;
}
