import { parentPort, workerData } from 'node:worker_threads';
import { completer } from '../../index.ts';
import { type VisitDone, type VisitWork, visitOf } from './visit-task.ts';

// A thread of its own: draws its share of the visits and posts each as it is done.
const { tasks, share, of } = workerData as VisitWork;
tasks.forEach((task, index) => {
  const comesOut = completer(task.seed);
  for (let visit = task.from; visit < task.to; visit += 1) {
    if (visit % of !== share) continue;
    const drawn = visitOf(task, visit, comesOut);
    parentPort?.postMessage({ task: index, visit, drawn } satisfies VisitDone);
  }
});
