import type { Random } from '../../../base/random/random.ts';
import type { StickSolve } from './generate-sticks.ts';
import type { Pattern } from './sticks.ts';

export interface BranchOptions {
  readonly target: () => number;
  readonly offer: (patterns: readonly Pattern[]) => void;
  readonly raise: (bound: number) => void;
  readonly until: number;
  readonly stream: Random;
  readonly bound: number;
}
export function* branchSticks(_solve: StickSolve, _options: BranchOptions): Generator<void, void, void> {
  yield;
}
