import { boardsTaken, leastFor } from './cart.ts';
import type { Visit } from './draw.ts';

/** Chances for which a quantity is given. */
export const askedChances = [0.5, 0.8, 0.95] as const;

/** A share of visits with its 95 % interval. */
export interface Share {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** Board feet to ask for at one chance; null where even the longest list of boards does not reach it. */
export interface Quantity {
  readonly chance: number;
  /** Take boards as long as each brings the cart nearer to so many (`boardsTaken`). */
  readonly boardFeet: number | null;
  /** 95 % interval of `boardFeet`, from the order of the visits alone; null: open at that end. */
  readonly low: number | null;
  readonly high: number | null;
  /** What comes home on average when so much is asked for; null with `boardFeet`. */
  readonly broughtHome: number | null;
  /** Of the visits that it completes, the share in which no run had to be broken; null with `boardFeet`. */
  readonly grainWhole: number | null;
}

/** What all visits for one grade say together. */
export interface Summary {
  readonly visits: number;
  /** Visits out of whose pile the job came. */
  readonly completed: number;
  readonly quantities: readonly Quantity[];
  /** Mean board feet that were just enough, over completed visits; null when there are none. */
  readonly meanEnough: number | null;
  /** Area of pieces over area of bought boards that were just enough, over completed visits together; null: none. */
  readonly yield: number | null;
  /** 95 % interval of the yield, from its spread between visits. */
  readonly yieldLow: number | null;
  readonly yieldHigh: number | null;
}

/** The least quantity that completes a visit, in half board feet; what is more completes it too. */
export function leastAsk({ cart, enough }: Visit): number {
  if (enough === null) return Infinity;
  return enough === 0 ? 0 : Math.ceil(2 * leastFor(cart, enough) - 1e-9) / 2;
}

/**
 * Share of visits that a quantity completes, with Wilson's interval at 95 %.
 * Source: E. B. Wilson, "Probable inference, the law of succession, and statistical inference" (1927).
 */
export function chanceOf(visits: readonly Visit[], boardFeet: number): Share {
  const done = visits.filter((visit) => leastAsk(visit) <= boardFeet).length;
  return shareOf(done, visits.length);
}

/** A share of a count with Wilson's 95 % interval. @param of > 0 */
export function shareOf(done: number, of: number): Share {
  const z = 1.96;
  const share = done / of;
  const centre = share + (z * z) / (2 * of);
  const spread = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  const scale = 1 + (z * z) / of;
  return {
    share,
    low: Math.max(0, (centre - spread) / scale),
    high: Math.min(1, (centre + spread) / scale),
  };
}

/** Mean board feet that come home when so much is asked for, over visits whose list of boards goes so far. */
export function broughtHome(visits: readonly Visit[], boardFeet: number): number {
  const carts = visits.flatMap(({ cart }) => {
    const taken = boardsTaken(cart, boardFeet);
    return (cart.at(-1) ?? 0) < boardFeet ? [] : [taken === 0 ? 0 : cart[taken - 1]!];
  });
  return carts.length === 0 ? boardFeet : mean(carts);
}

function grainWhole(visits: readonly Visit[], boardFeet: number): number | null {
  const done = visits.filter((visit) => leastAsk(visit) <= boardFeet);
  return done.length === 0 ? null : done.filter(({ broken }) => broken.length === 0).length / done.length;
}

/**
 * Sums up the visits for one grade.
 * @param visits not empty
 * @param thicknesses how many thicknesses the job is bought in: all of them must suffice at once, so each is given the
 * root of the chance asked for
 */
export function summarise(visits: readonly Visit[], thicknesses = 1): Summary {
  const asks = visits.map(leastAsk).sort((a, b) => a - b);
  const done = visits.filter(({ enough }) => enough !== null);
  const enough = done.map(({ cart, enough: count }) => (count === 0 ? 0 : cart[count! - 1]!));
  return {
    visits: visits.length,
    completed: done.length,
    quantities: askedChances.map((chance) => quantityFor(chance, chance ** (1 / thicknesses), asks, visits)),
    meanEnough: done.length === 0 ? null : mean(enough),
    ...yieldOf(done),
  };
}

/**
 * The quantity for a chance: the order statistic with at least that share of visits at or below it. Its interval comes
 * from the binomial spread of how many visits lie below the true one (normal approximation): no shape is assumed.
 */
function quantityFor(
  chance: number,
  share: number,
  asks: readonly number[],
  visits: readonly Visit[],
): Quantity {
  const count = asks.length;
  const spread = 1.96 * Math.sqrt(count * share * (1 - share));
  const at = (rank: number): number | null => {
    const ask = asks[Math.ceil(rank) - 1];
    return ask === undefined || ask === Infinity ? null : ask;
  };
  const boardFeet = at(count * share);
  return {
    chance,
    boardFeet,
    low: at(Math.max(1, count * share - spread)),
    high: at(count * share + spread + 1),
    broughtHome: boardFeet === null ? null : broughtHome(visits, boardFeet),
    grainWhole: boardFeet === null ? null : grainWhole(visits, boardFeet),
  };
}

/** Ratio of sums, its interval by the linearised variance of a ratio (Cochran, Sampling Techniques, section 2.11). */
function yieldOf(done: readonly Visit[]): Pick<Summary, 'yield' | 'yieldLow' | 'yieldHigh'> {
  const bought = done.filter(({ boardArea }) => boardArea > 0);
  if (bought.length === 0) return { yield: null, yieldLow: null, yieldHigh: null };
  const boards = bought.reduce((sum, { boardArea }) => sum + boardArea, 0);
  const ratio = bought.reduce((sum, { pieceArea }) => sum + pieceArea, 0) / boards;
  const squares = bought.reduce((sum, visit) => sum + (visit.pieceArea - ratio * visit.boardArea) ** 2, 0);
  const deviation =
    bought.length < 2 ? NaN : Math.sqrt((squares * bought.length) / (bought.length - 1)) / boards;
  const half = Number.isNaN(deviation) ? 1 : 1.96 * deviation;
  return { yield: ratio, yieldLow: Math.max(0, ratio - half), yieldHigh: Math.min(1, ratio + half) };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
