import type { Job } from '../stock/job.ts';
import { jointInstance, jointJobOf } from './glue-up/joint-job.ts';
import type { Instance } from './instance.ts';
import {
  type PriceAsk,
  type PriceTogether,
  type Priced,
  metered,
  priceInTurn,
  priceOne,
} from './price-together.ts';
import type { Exchange, ExchangeTogether, Exchanged } from './exchange/exchange.ts';
import { exchangeColumns } from './exchange/exchange-columns.ts';
import { exchangeInTurn } from './exchange/exchange-in-turn.ts';
import { isSticks } from './sticks/to-sticks.ts';

/** An ask as plain data, for a thread that has made the same instance of the same job: its group by number. */
export interface GroupAsk extends Omit<PriceAsk, 'pricer'> {
  readonly group: number;
}

/** Asks that two threads answer at the same time: this one from the first on, the other from the last one back. */
export interface SharedAsks {
  /** Takes the next ask for this thread; false when none is left. */
  take(): boolean;
  /** Waits for the other's answers, to all that was not taken here, in the order of the asks; null when it does not answer. */
  others(): readonly Priced[] | null;
}

/** An annealing that the other thread is at. */
export interface SharedExchange {
  /** Waits for what it comes to; null when the thread does not answer. */
  other(): Exchanged | null;
}

/** A thread that has a job's instance, and answers what it is asked about it. One thing at a time: what it was at before is not answered any more. */
export interface OtherThread {
  /** Lets it begin with asks. Null when it cannot any more. */
  share(asks: readonly GroupAsk[]): SharedAsks | null;
  /** Lets it begin with an annealing. Null when it cannot any more. */
  exchange(task: Exchange): SharedExchange | null;
}

/**
 * Gives a thread a job to make ready for: at once, and without waiting. Null when there is no thread to be had. A thread
 * has one job at a time: what was opened before answers no more.
 */
export type OpenThread = (job: Job) => OtherThread | null;

/** With fewer groups, or fewer asks at a time, a thread costs as much as it saves (measured; see DEVELOPERS). */
export const fewestShared = { groups: 48, asks: 3 } as const;

/**
 * With more groups than this each has its thread, by its number even or odd: both would else list positions of nearly all
 * boards, and of so many that takes gigabytes.
 */
const mostOnBoth = 150;

/**
 * The instance with its asks shared with another thread, where that pays. Every answer and the work it took is the
 * same on either thread and both come together in the order of the asks, so a solve takes the same course and ends with the
 * same plan as with one thread, only sooner.
 */
export function withThread(job: Job, instance: Instance, open: OpenThread | undefined): Instance {
  const { length } = instance.groups;
  if (open === undefined || length < fewestShared.groups || isSticks(instance)) return instance;
  const thread = open(job);
  if (thread === null) return instance;
  const price = length > mostOnBoth ? priceByHalves(instance, thread) : priceOnTwo(instance, thread);
  return { ...instance, price, exchange: exchangeOnTwo(thread) };
}

/** The last annealing on the other thread, the others on this one. */
function exchangeOnTwo(thread: OtherThread): ExchangeTogether {
  return function* (tasks) {
    const last = tasks.length < 2 ? undefined : tasks.at(-1);
    const shared = last === undefined ? null : thread.exchange(last);
    const own = shared === null ? tasks : tasks.slice(0, -1);
    const answers = yield* exchangeInTurn(own);
    // What the other leaves unanswered is answered here.
    if (shared !== null) answers.push(shared.other() ?? (yield* exchangeColumns(last!)));
    return answers;
  };
}

/** Asks as plain data, their boards by number. */
function asData(asks: readonly PriceAsk[], numbers: ReadonlyMap<PriceAsk['pricer'], number>): GroupAsk[] {
  return asks.map(({ pricer, ...ask }) => ({ ...ask, group: numbers.get(pricer)! }));
}

function priceOnTwo({ groups, meter }: Instance, thread: OtherThread): PriceTogether {
  const numbers = new Map(groups.map(({ pricer }, g) => [pricer, g]));
  const inTurn = priceInTurn(meter);
  return (asks) => {
    if (asks.length < fewestShared.asks) return inTurn(asks);
    const shared = thread.share(asData(asks, numbers));
    if (shared === null) return inTurn(asks);
    const own: Priced[] = [];
    while (shared.take()) own.push(priceOne(asks[own.length]!, meter));
    const rest = asks.slice(own.length);
    // What the other leaves unanswered is answered here.
    const others = rest.length === 0 ? [] : (shared.others() ?? rest.map((ask) => priceOne(ask, meter)));
    return metered([...own, ...others], meter);
  };
}

/** Each board always on the same thread. */
function priceByHalves({ groups, meter }: Instance, thread: OtherThread): PriceTogether {
  const numbers = new Map(groups.map(({ pricer }, g) => [pricer, g]));
  const isOthers = (ask: PriceAsk): boolean => numbers.get(ask.pricer)! % 2 === 1;
  return (asks) => {
    const theirs = asks.filter(isOthers);
    const shared = theirs.length === 0 ? null : thread.share(asData(theirs, numbers));
    const own = asks.map((ask) => (isOthers(ask) ? null : priceOne(ask, meter)));
    // What the other leaves unanswered is answered here.
    const others = (shared?.others() ?? theirs.map((ask) => priceOne(ask, meter))).slice();
    return metered(
      own.map((answer) => answer ?? others.shift()!),
      meter,
    );
  };
}

/** The other thread's side: makes a job's instance, and answers asks about it one by one. */
export function answerer(job: Job): (ask: GroupAsk) => Priced {
  const { groups, meter } = jointInstance(jointJobOf(job));
  return ({ group, ...ask }) => priceOne({ ...ask, pricer: groups[group]!.pricer }, meter);
}
