import type { Progress } from '../../index.ts';
import type { Question } from './question.ts';

/** What the solving thread is started with. */
export interface SolvingWork {
  readonly question: Question;
  /** One number: other than 0 when the work should end. */
  readonly stop: Int32Array;
}

/** What the solving thread says: how it stands, the answer it would give now, its answer, or how it failed. */
export type Said =
  | { readonly kind: 'progress'; readonly progress: Progress }
  | { readonly kind: 'so far'; readonly answer: unknown }
  | { readonly kind: 'answer'; readonly answer: unknown }
  | { readonly kind: 'fault'; readonly error: unknown };
