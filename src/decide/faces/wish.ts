import { type Result, failure, success } from '../../base/result/result.ts';
import { nearestName } from '../../base/text/nearest-name.ts';
import type { Face } from '../../flow/stock/defect.ts';
import type { Job } from '../../flow/stock/job.ts';

/** A face of a board that the maker asks for. */
export interface FaceWish {
  readonly board: string;
  readonly face: Face;
}

/** What is wrong with what was asked for. */
export type WishProblem =
  | { readonly kind: 'no face named' }
  | { readonly kind: 'no such board'; readonly board: string; readonly nearest: string | null };

/**
 * Reads `C14:A`. The face stands behind the last colon, since a board may have colons in its own name.
 * @param text as the maker wrote it
 */
export function readWish(text: string, { boards }: Job): Result<FaceWish, WishProblem> {
  const found = /^(.*):\s*([AB])$/is.exec(text);
  if (found === null) return failure([{ kind: 'no face named' }]);
  const board = (found[1] ?? '').trim();
  const face = found[2]?.toUpperCase() === 'B' ? 'B' : 'A';
  const names = boards.map(({ name }) => name);
  if (names.includes(board)) return success({ board, face });
  return failure([{ kind: 'no such board', board, nearest: nearestName(board, names)?.name ?? null }]);
}
