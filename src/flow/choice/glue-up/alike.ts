import { gathered } from '../../../base/lists/gathered.ts';
import type { Part } from '../../parts/part.ts';

/** A key under which free parts coincide that may take each other's place: all but their names, numbers and notes. */
function alikeKey(part: Part): string {
  const { length, width, thickness, grain, quality, show, accept, glueUp, value, pin } = part;
  const { leftEnd, rightEnd, extraLength = 0, extraWidth = 0 } = part;
  return JSON.stringify([
    ...[length, width, thickness, grain, quality, show, accept, glueUp],
    ...[value, pin, part.species, part.match ?? null],
    ...[leftEnd, rightEnd, extraLength, extraWidth],
  ]);
}

/** Indices of parts that are alike, in order of first sight; a part of a run is like no other. */
export function alikeParts(parts: readonly Part[]): number[][] {
  const keyOf = (index: number): string =>
    parts[index]!.run === null ? alikeKey(parts[index]!) : `run ${index}`;
  return [...gathered(parts.keys(), keyOf).values()];
}
