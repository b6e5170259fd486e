import { setImmediate } from 'node:timers/promises';
import { parentPort, workerData } from 'node:worker_threads';
import type { Progress } from '../../index.ts';
import { pricingThread } from './pricing-thread.ts';
import { stepsOf } from './question.ts';
import type { Said, SolvingWork } from './solving-message.ts';

// A thread of its own: works at one question, and keeps posting what it has, so that it can be ended in the middle of a step.

/** Milliseconds between two words of progress. */
const betweenWords = 50;

/** The answer so far is worked out for at most a thirtieth of the time, and not more often than so many milliseconds. */
const shareOfSoFar = 1 / 30;
const betweenAnswers = 200;

const { question, stop } = workerData as SolvingWork;

function post(said: Said): void {
  parentPort!.postMessage(said);
}

/** Posts how the work stands now and then, and the answer so far where something new is said of it. */
function reporter(): (progress: Progress) => void {
  let wordsDue = 0;
  let answerDue = 0;
  let last = '';
  return ({ soFar, ...progress }) => {
    const now = performance.now();
    if (now >= wordsDue) {
      post({ kind: 'progress', progress });
      wordsDue = now + betweenWords;
    }
    const words = `${progress.doing} ${progress.value}`;
    if (soFar === undefined || now < answerDue || words === last) return;
    const answer = soFar();
    if (answer !== null) {
      post({ kind: 'so far', answer });
      last = words;
    }
    const after = performance.now();
    answerDue = after + Math.max(betweenAnswers, (after - now) / shareOfSoFar);
  };
}

const { open: thread, end } = pricingThread();
try {
  const steps = stepsOf(question, { stop: () => Atomics.load(stop, 0) !== 0, thread });
  const report = reporter();
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) {
      post({ kind: 'answer', answer: step.value });
      break;
    }
    report(step.value);
    await setImmediate();
  }
} catch (error) {
  post({ kind: 'fault', error });
} finally {
  end();
}
