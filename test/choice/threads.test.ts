import { describe, expect, it } from 'vitest';
import type { Choice } from '../../src/flow/choice/choice.ts';
import { choose } from '../../src/flow/choice/choose.ts';
import {
  type GroupAsk,
  type OpenThread,
  type SharedAsks,
  type SharedExchange,
  answerer,
  fewestShared,
} from '../../src/flow/choice/other-thread.ts';
import type { Exchange } from '../../src/flow/choice/exchange/exchange.ts';
import { exchangeColumns } from '../../src/flow/choice/exchange/exchange-columns.ts';
import { finish } from '../../src/flow/choice/progress.ts';
import { mantelJob } from '../laws/random-job.ts';

// No thread here: stand-ins that take their share of the asks as a thread might.

const effort = 0.02;
const job = mantelJob(5, { kinds: 12, boards: 48, pieces: 24 });

function solved(thread?: OpenThread): Choice {
  return finish(choose(job, { seed: 1, effort, thread }));
}

type Share = (asks: readonly GroupAsk[]) => SharedAsks | null;

/** Anneals as a thread would. */
function exchanging(task: Exchange): SharedExchange {
  return { other: () => finish(exchangeColumns(task)) };
}

const neverExchanges = (): SharedExchange => ({ other: () => null });

/** A stand-in that has the job's instance, and leaves `own(of)` of the asks to the solve; the rest it answers from the last one back. */
function leaving(own: (of: number) => number, lots: number[] = []): OpenThread {
  return (given) => {
    const answer = answerer(given);
    return {
      share(asks) {
        lots.push(asks.length);
        let left = own(asks.length);
        const rest = asks.slice(left);
        return {
          take: () => left-- > 0,
          others: () => rest.toReversed().map(answer).toReversed(),
        };
      },
      exchange: exchanging,
    };
  };
}

describe('a solve that shares its pricing', () => {
  const alone = solved();

  it.each([
    ['leaves all of it to the other', () => 0],
    ['halves it', (of: number) => of >> 1],
    ['does all of it', (of: number) => of],
    ['does all but one', (of: number) => of - 1],
  ])('comes to the same choice, value and bound when it %s', (_how, own) => {
    const lots: number[] = [];
    expect(solved(leaving(own, lots))).toEqual(alone);
    expect(lots.length).toBeGreaterThan(3);
    expect(Math.min(...lots)).toBeGreaterThanOrEqual(fewestShared.asks);
  });

  const broken: readonly (readonly [string, () => Share])[] = [
    ['never answers', () => () => ({ take: takes(2), others: () => null })],
    ['is gone when it is asked', () => () => null],
    [
      'is gone after a few lots',
      () => {
        let lots = 0;
        return (asks) => {
          if (++lots < 3) return { take: takes(asks.length), others: () => null };
          return lots === 3 ? { take: takes(1), others: () => null } : null;
        };
      },
    ],
  ];

  it.each(broken)('comes to the same where the other %s', (_how, share) => {
    expect(solved(() => ({ share: share(), exchange: neverExchanges }))).toEqual(alone);
    expect(solved(() => ({ share: share(), exchange: () => null }))).toEqual(alone);
  });

  it('leaves one of two annealings to the other', () => {
    let exchanged = 0;
    const open = leaving(() => 0);
    const counting: OpenThread = (given) => ({
      share: open(given)!.share,
      exchange(task) {
        exchanged += 1;
        return exchanging(task);
      },
    });
    expect(solved(counting)).toEqual(alone);
    expect(exchanged).toBeGreaterThan(0);
  });

  it('does without where there is no thread, and asks for none where the job is small', () => {
    expect(solved(() => null)).toEqual(alone);
    const small = mantelJob(5, { kinds: 6, boards: 12, pieces: 10 });
    const opened: unknown[] = [];
    finish(
      choose(small, {
        seed: 1,
        effort: 0,
        thread: (given) => {
          opened.push(given);
          return null;
        },
      }),
    );
    expect(opened).toEqual([]);
  });
});

describe('a solve of very many boards that shares its pricing', () => {
  const many = mantelJob(5, { kinds: 12, boards: 152, pieces: 48 });
  const solvedMany = (thread?: OpenThread): Choice => finish(choose(many, { seed: 1, effort: 0.02, thread }));
  const alone = solvedMany();

  it('asks the other about every second board alone, and comes to the same', () => {
    const asked = new Set<number>();
    const open: OpenThread = (given) => {
      const answer = answerer(given);
      return {
        share(asks) {
          for (const { group } of asks) asked.add(group % 2);
          return { take: () => false, others: () => asks.map(answer) };
        },
        exchange: exchanging,
      };
    };
    expect(solvedMany(open)).toEqual(alone);
    expect([...asked]).toEqual([1]);
  });

  it('comes to the same where the other is gone, or never answers', () => {
    expect(solvedMany(() => ({ share: () => null, exchange: () => null }))).toEqual(alone);
    const never = (): SharedAsks => ({ take: () => false, others: () => null });
    expect(solvedMany(() => ({ share: never, exchange: neverExchanges }))).toEqual(alone);
  });
});

function takes(count: number): () => boolean {
  let left = count;
  return () => left-- > 0;
}
