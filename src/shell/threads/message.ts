import { type MessagePort, receiveMessageOnPort } from 'node:worker_threads';
import type { Exchange, Exchanged, GroupAsk, Job, Priced } from '../../index.ts';

// What the two threads share. They meet in memory, since neither listens to events while it works.

/** What the pricing thread is started with. */
export interface PricingWork {
  readonly port: MessagePort;
  /** One number: rises with every message, and wakes the thread. */
  readonly bell: Int32Array;
}

/** What is to be answered: asks about the last job, or an annealing. */
export type Task =
  | { readonly kind: 'asks'; readonly asks: readonly GroupAsk[] }
  | { readonly kind: 'exchange'; readonly task: Exchange };

/** A job to make ready for, or a task with a number of its own. */
export type ToThread =
  | { readonly kind: 'job'; readonly job: Job }
  | (Task & { readonly number: number; readonly lot: Int32Array });

/** What came of the task of a number: answers to the last asks of a lot, in their order, or where an annealing ended. */
export interface FromThread {
  readonly number: number;
  readonly answers?: readonly Priced[];
  readonly exchanged?: Exchanged;
}

/** The posted answer of this number; what was posted before it is no longer wanted. Null when it is not there. */
export function received(port: MessagePort, number: number): FromThread | null {
  for (;;) {
    const said = receiveMessageOnPort(port)?.message as FromThread | undefined;
    if (said === undefined) return null;
    if (said.number === number) return said;
  }
}

/** A task in memory of both: how many asks are taken by either thread, how many steps the other has done, how it stands. */
export const lotSize = 3;
export const takenAt = 0;
export const doneAt = 1;
export const stateAt = 2;

/** How a lot stands: the other thread works on it, has posted its answers, or has failed. */
export const states = { open: 0, posted: 1, failed: 2 } as const;

/** Takes one of the asks for whoever calls; false when none is left. Each is taken once. */
export function takeOne(lot: Int32Array, asks: number): boolean {
  return Atomics.add(lot, takenAt, 1) < asks;
}
