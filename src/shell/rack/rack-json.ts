import type { Held } from '../../index.ts';

/** Pieces of the rack for programs: one JSON object, lengths in ticks, cost in money. */
export function rackJson(pieces: readonly Held[]): string {
  const rows = pieces.map(({ piece, note, job, time }) => ({ ...piece, note, job, put: time }));
  return `${JSON.stringify({ format: 'mantelwright rack 1', ticksPerInch: 8128, pieces: rows })}\n`;
}
