import type { Cut } from './layout.ts';

export type CutKind = 'crosscut' | 'rip';

/**
 * How deep a workpiece is nested after one more cut. Odd stages are crosscuts, even ones rips; the board's first
 * crosscuts are stage 1, and a board that is ripped first goes to stage 2 at once. Cuts of the same kind one after
 * another share a stage. Trims do not count.
 * @param stage of the workpiece, 0 for the trimmed board
 */
export function stageAfter(stage: number, kind: CutKind): number {
  const isSame = (kind === 'crosscut') === (stage % 2 === 1);
  if (stage === 0) return kind === 'crosscut' ? 1 : 2;
  return isSame ? stage : stage + 1;
}

/** What a cut of this stage is for. */
export function purposeAt(stage: number): NonNullable<Cut['purpose']> {
  return (['section', 'strip', 'piece', 'rerip'] as const)[stage - 1] ?? 'deeper';
}
