import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Choice } from '../../../src/flow/choice/choice.ts';
import { choose } from '../../../src/flow/choice/choose.ts';
import { type GroupAsk, type OpenThread, answerer } from '../../../src/flow/choice/other-thread.ts';
import { columnTable } from '../../../src/flow/choice/column-table.ts';
import type { Exchange } from '../../../src/flow/choice/exchange/exchange.ts';
import { exchangeColumns } from '../../../src/flow/choice/exchange/exchange-columns.ts';
import { finish } from '../../../src/flow/choice/progress.ts';
import { pricingThread } from '../../../src/shell/threads/pricing-thread.ts';
import { mantelJob } from '../../laws/random-job.ts';
import { root } from '../../rules/source-files.ts';

// The real thread. It runs the built files, as npm test has just built them.
const script = join(root, 'dist', 'shell', 'threads', 'pricing-worker.js');

const job = mantelJob(2, { kinds: 20, boards: 48, pieces: 36 });

function solved(thread?: OpenThread): Choice {
  return finish(choose(job, { seed: 1, effort: 0.05, thread }));
}

/** Counts the lots of which the other thread answered some. */
function counted(open: OpenThread, answers: number[]): OpenThread {
  return (given) => {
    const thread = open(given);
    if (thread === null) return null;
    return {
      share(asks) {
        const shared = thread.share(asks);
        if (shared === null) return null;
        return {
          take: shared.take,
          others: () => {
            const others = shared.others();
            answers.push(others?.length ?? -1);
            return others;
          },
        };
      },
      exchange: (task) => thread.exchange(task),
    };
  };
}

/** Solves with one thread of this script beside; gives the choice and how many answers came from there, lot by lot. */
function solvedWith(text: string): { readonly choice: Choice; readonly answers: number[] } {
  const path = join(mkdtempSync(join(tmpdir(), 'mantelwright-test-')), 'worker.mjs');
  writeFileSync(path, text);
  const answers: number[] = [];
  const { open, end } = pricingThread(pathToFileURL(path));
  const choice = solved(counted(open, answers));
  end();
  return { choice, answers };
}

const alone = solved();
const worth = Float64Array.from(job.parts, ({ length, width }) => length * width);

/** Two boards for three kinds: one pattern of each, and one of two kinds on the second. */
const annealing: Exchange = {
  columns: columnTable(
    [
      { group: 0, placements: [], kinds: [0], counts: [2], cost: 5 },
      { group: 1, placements: [], kinds: [1], counts: [1], cost: 4 },
      { group: 1, placements: [], kinds: [1, 2], counts: [1, 1], cost: 4 },
    ],
    2,
    3,
  ).flat,
  order: Int32Array.of(2, 0, 1),
  copies: Int32Array.of(1, 1),
  demand: Int32Array.of(2, 1, 1),
  price: Float64Array.of(4, 4, 2),
  start: Int32Array.of(-1, -1),
  moves: 3000,
  cooling: { from: 3, to: 0.1 },
  seed: 1,
};

describe.runIf(availableParallelism() > 1)('the pricing thread', () => {
  it('answers its share, and the choice is the same as with one thread', () => {
    expect(existsSync(script), 'not built: npm run build').toBe(true);
    const answers: number[] = [];
    const { open, end } = pricingThread(pathToFileURL(script));
    const thread = counted(open, answers);
    // Of what nobody takes here it answers all: then it has started, and there is no doubt that it gets a share below.
    const asks = [0, 1].map((group): GroupAsk => ({ group, how: 'rough', worth, target: 0, slack: 0 }));
    expect(open(job)?.share(asks)?.others()).toEqual(asks.map(answerer(job)));
    expect(solved(thread)).toEqual(alone);
    expect(Math.max(...answers)).toBeGreaterThan(1);
    expect(Math.min(...answers)).toBeGreaterThan(0);
    end();
    end();
    expect(open(job)).toBe(null);
  });

  it('anneals as this thread does, and passes over what is no longer wanted', () => {
    const { open, end } = pricingThread(pathToFileURL(script));
    const thread = open(job);
    const alike = finish(exchangeColumns(annealing));
    expect(new Set(alike.chosen).size).toBeGreaterThan(1);
    expect(thread?.exchange(annealing)?.other()).toEqual(alike);
    const asks = [0, 1].map((group): GroupAsk => ({ group, how: 'rough', worth, target: 0, slack: 0 }));
    thread?.exchange(annealing);
    expect(thread?.share(asks)?.others()).toEqual(asks.map(answerer(job)));
    thread?.share(asks);
    expect(thread?.exchange({ ...annealing, seed: 2 })?.other()).toEqual(
      finish(exchangeColumns({ ...annealing, seed: 2 })),
    );
    end();
    expect(thread?.exchange(annealing)).toBe(null);
  });

  it('answers for the job opened last, and for no other', () => {
    const { open, end } = pricingThread(pathToFileURL(script));
    const first = open(job);
    open({ ...job });
    expect(first?.share([])).toBe(null);
    end();
  });

  it.each([
    ['cannot be read', 'this is no script'],
    ['ends at once', ''],
    ['fails at once', 'throw new Error("broken")'],
    [
      'takes asks and fails',
      `import { receiveMessageOnPort, workerData } from 'node:worker_threads';
      for (;;) {
        const lot = receiveMessageOnPort(workerData.port)?.message.lot;
        if (lot === undefined) continue;
        Atomics.add(lot, 0, 3);
        Atomics.store(lot, 2, 2);
        Atomics.notify(lot, 2);
      }`,
    ],
  ])('is done without when it %s', (_how, text) => {
    const { choice, answers } = solvedWith(text);
    expect(choice).toEqual(alone);
    expect(answers.filter((count) => count > 0)).toEqual([]);
  });

  it('is not there for code that runs from its sources', () => {
    const { open, end } = pricingThread();
    expect(open(job)).toBe(null);
    end();
  });
});
