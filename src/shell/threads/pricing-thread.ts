import { availableParallelism } from 'node:os';
import { MessageChannel, type MessagePort, Worker } from 'node:worker_threads';
import type { Exchange, GroupAsk, Job, OpenThread, SharedAsks, SharedExchange } from '../../index.ts';
import {
  type FromThread,
  type PricingWork,
  type Task,
  type ToThread,
  doneAt,
  lotSize,
  received,
  stateAt,
  states,
  takeOne,
} from './message.ts';

/** A thread that prices boards for solves, one after another. */
export interface PricingThread {
  /** For `SolveOptions`. The thread is started at the first call. */
  readonly open: OpenThread;
  /** Ends the thread, wherever it is. To be called on every way out; it may be called twice. */
  readonly end: () => void;
}

/** Milliseconds without one more answer after which a thread is given up. */
const patience = 60_000;

/**
 * One thread beside this one. Where there is no second processor, or the thread cannot start, dies or does not answer,
 * nobody notices but by the time it takes: this thread then does all.
 * @param script what the thread runs; null: nothing, as where this code runs from its sources
 */
export function pricingThread(script: URL | null = workerScript()): PricingThread {
  let running: Running | null = null;
  let isOver = script === null || availableParallelism() < 2;
  const end = (): void => {
    isOver = true;
    running?.end();
    running = null;
  };
  const open = (job: Job): ReturnType<OpenThread> => {
    if (isOver) return null;
    running ??= started(script!, end);
    const own = running;
    if (own === null) return null;
    // Only the job opened last is answered for: others are asked of nobody.
    own.job = job;
    own.post({ kind: 'job', job });
    return {
      share(asks) {
        return isOver || own.job !== job ? null : sharedWith(own, asks, end);
      },
      exchange(task) {
        return isOver || own.job !== job ? null : exchangedBy(own, task, end);
      },
    };
  };
  return { open, end };
}

function workerScript(): URL | null {
  return import.meta.url.endsWith('.ts') ? null : new URL('./pricing-worker.js', import.meta.url);
}

interface Running {
  /** The job opened last. */
  job: Job | null;
  /** Tasks given so far. */
  tasks: number;
  readonly port: MessagePort;
  readonly post: (message: ToThread) => void;
  readonly end: () => void;
}

/** Starts the thread; null when that fails. @param fails called when it ends by itself */
function started(script: URL, fails: () => void): Running | null {
  const { port1: port, port2 } = new MessageChannel();
  const bell = new Int32Array(new SharedArrayBuffer(4));
  try {
    const workerData: PricingWork = { port: port2, bell };
    // What it has to say goes nowhere: a fault of it is no fault of the answer.
    const worker = new Worker(script, { workerData, transferList: [port2], stdout: true, stderr: true });
    worker.on('error', fails).on('exit', fails).unref();
    return {
      job: null,
      tasks: 0,
      port,
      post(message) {
        port.postMessage(message);
        Atomics.add(bell, 0, 1);
        Atomics.notify(bell, 0);
      },
      end() {
        port.close();
        void worker.terminate();
      },
    };
  } catch {
    port.close();
    return null;
  }
}

/** A task given to the thread. */
interface Begun {
  readonly lot: Int32Array;
  /** Waits for what came of it; null when nothing does: the thread is given up then. */
  readonly said: () => FromThread | null;
}

function begin(running: Running, task: Task, giveUp: () => void): Begun {
  const lot = new Int32Array(new SharedArrayBuffer(4 * lotSize));
  const number = (running.tasks += 1);
  running.post({ ...task, number, lot });
  return {
    lot,
    said() {
      const said = isPosted(lot) ? received(running.port, number) : null;
      if (said === null) giveUp();
      return said;
    },
  };
}

function sharedWith(running: Running, asks: readonly GroupAsk[], giveUp: () => void): SharedAsks {
  const { lot, said } = begin(running, { kind: 'asks', asks }, giveUp);
  return {
    take: () => takeOne(lot, asks.length),
    others: () => said()?.answers ?? null,
  };
}

function exchangedBy(running: Running, task: Exchange, giveUp: () => void): SharedExchange {
  const { said } = begin(running, { kind: 'exchange', task }, giveUp);
  return { other: () => said()?.exchanged ?? null };
}

/** Waits until the other thread has posted its answers; false when it has failed, or gives no sign of life. */
function isPosted(lot: Int32Array): boolean {
  for (;;) {
    const answered = Atomics.load(lot, doneAt);
    const woken = Atomics.wait(lot, stateAt, states.open, patience);
    if (woken !== 'timed-out') return Atomics.load(lot, stateAt) === states.posted;
    if (Atomics.load(lot, doneAt) === answered) return false;
  }
}
