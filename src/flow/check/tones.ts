import type { Layout } from '../cuts/layout.ts';
import type { Part } from '../parts/part.ts';
import type { Board } from '../stock/board.ts';
import type { Job } from '../stock/job.ts';
import type { PieceFault } from './fault.ts';

/** All that shows comes from boards with one and the same word for their tone, unless the shop says `any`. */
export function toneFaults(
  job: Job,
  layout: Layout,
  parts: ReadonlyMap<string, Part>,
  boards: ReadonlyMap<string, Board>,
): PieceFault[] {
  if (job.shop.showTone === 'any') return [];
  const tones = new Set<string>();
  for (const { board, pieces } of layout.boards) {
    const tone = boards.get(board)?.tone;
    const shows = pieces.some(({ part }) => (parts.get(part)?.show ?? 0) > 0);
    if (tone !== undefined && shows) tones.add(tone);
  }
  return tones.size > 1 ? [{ kind: 'mixed tones', tones: [...tones] }] : [];
}
