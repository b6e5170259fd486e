/** mantelwright's public door, in flow order. */
export * from './base/units/tick.ts';
export * from './base/units/read-length.ts';
export * from './base/units/format-length.ts';
export * from './base/units/write-length.ts';
export type * from './base/units/rounded-quotient.ts';
export type { Place, ProblemBase, Result } from './base/result/result.ts';
export { failure, success } from './base/result/result.ts';
export * from './base/result/unreachable.ts';
export * from './base/csv/read-csv.ts';
export * from './base/csv/write-csv.ts';
