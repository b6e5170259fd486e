import type { MessagePort } from 'node:worker_threads';
import type { GroupAsk, Job, Priced } from '../../index.ts';

// What the two threads share. They meet in memory, since neither listens to events while it works.

/** What the pricing thread is started with. */
export interface PricingWork {
  readonly port: MessagePort;
  /** One number: rises with every message, and wakes the thread. */
  readonly bell: Int32Array;
}

/** A job to make ready for, or asks about the last one. */
export type ToThread =
  | { readonly kind: 'job'; readonly job: Job }
  | { readonly kind: 'asks'; readonly lot: Int32Array; readonly asks: readonly GroupAsk[] };

/** Answers to the last asks of a lot, in their order. */
export interface FromThread {
  readonly answers: readonly Priced[];
}

/** A lot of asks in memory of both: how many are taken by either thread, how many the other has answered, how it stands. */
export const lotSize = 3;
export const takenAt = 0;
export const answeredAt = 1;
export const stateAt = 2;

/** How a lot stands: the other thread works on it, has posted its answers, or has failed. */
export const states = { open: 0, posted: 1, failed: 2 } as const;

/** Takes one of the asks for whoever calls; false when none is left. Each is taken once. */
export function takeOne(lot: Int32Array, asks: number): boolean {
  return Atomics.add(lot, takenAt, 1) < asks;
}
