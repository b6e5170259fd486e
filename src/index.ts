/** mantelwright's public door, in flow order. */
export * from './base/units/tick.ts';
export * from './base/units/read-length.ts';
export * from './base/units/format-length.ts';
export * from './base/units/write-length.ts';
export type * from './base/units/rounded-quotient.ts';
