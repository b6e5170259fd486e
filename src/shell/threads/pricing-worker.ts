import { receiveMessageOnPort, workerData } from 'node:worker_threads';
import {
  type Exchange,
  type GroupAsk,
  type Job,
  type Priced,
  answerer,
  exchangeColumns,
} from '../../index.ts';
import {
  type FromThread,
  type PricingWork,
  type ToThread,
  doneAt,
  stateAt,
  states,
  takeOne,
  takenAt,
} from './message.ts';

// A thread of its own: makes each job's instance, and answers asks from the last one back, as long as some are left.

type Answer = (ask: GroupAsk) => Priced;

const { port, bell } = workerData as PricingWork;

function answerLot(answer: Answer, number: number, lot: Int32Array, asks: readonly GroupAsk[]): void {
  const answers: Priced[] = [];
  while (takeOne(lot, asks.length)) {
    answers.unshift(answer(asks[asks.length - 1 - answers.length]!));
    Atomics.add(lot, doneAt, 1);
  }
  if (answers.length > 0) port.postMessage({ number, answers } satisfies FromThread);
}

function anneal(number: number, lot: Int32Array, task: Exchange): void {
  const steps = exchangeColumns(task);
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) Atomics.add(lot, doneAt, 1);
  port.postMessage({ number, exchanged: step.value } satisfies FromThread);
}

/** Works at a task, and says how it ended. */
function ending(lot: Int32Array, work: () => void): void {
  let state: number = states.failed;
  try {
    work();
    state = states.posted;
  } finally {
    Atomics.store(lot, stateAt, state);
    Atomics.notify(lot, stateAt);
  }
}

/** Answers whatever comes; a job's instance is made when there is nothing to answer, or when it is asked about. */
function serve(): never {
  let job: Job | null = null;
  let answer: Answer | null = null;
  for (;;) {
    const rung = Atomics.load(bell, 0);
    const message = receiveMessageOnPort(port)?.message as ToThread | undefined;
    if (message?.kind === 'job') {
      job = message.job;
      answer = null;
    } else if (message?.kind === 'exchange') {
      const { number, lot, task } = message;
      ending(lot, () => {
        anneal(number, lot, task);
      });
    } else if (message?.kind === 'asks') {
      const { number, lot, asks } = message;
      // All taken already: it came too late, or belongs to a job that is done with.
      if (Atomics.load(lot, takenAt) >= asks.length) continue;
      ending(lot, () => {
        answer ??= answerer(job!);
        answerLot(answer, number, lot, asks);
      });
    } else if (job !== null && answer === null) answer = answerer(job);
    else Atomics.wait(bell, 0, rung);
  }
}

serve();
