/** mantelwright's public door, in flow order. */
export * from './base/units/tick.ts';
