import type { ExchangeTogether } from './exchange/exchange.ts';
import type { PriceTogether } from './price-together.ts';
import type { Meter } from '../patterns/meter.ts';
import type { Kind, Plate } from '../patterns/plate.ts';
import type { Pricer } from '../patterns/strip/strip-pricer.ts';

/** A stretch of a kind that becomes one piece: all of it, but for runs, whose pieces follow one another. */
export interface Member {
  /** Index into the job's parts. */
  readonly part: number;
  /** Where it begins within the kind, along the board. */
  readonly offset: number;
  readonly length: number;
  readonly width: number;
}

/** One kind of blank to be cut: a part, one strip of a glue-up, or a whole run. */
export interface BlankKind {
  readonly members: readonly Member[];
  /** Strips per copy of the part: 1 unless glued up. */
  readonly strips: number;
  readonly length: number;
  readonly width: number;
  /** Pieces wanted. */
  readonly demand: number;
  /** What leaving out one piece costs in the master; far above any board under `least cost`. */
  readonly penalty: number;
}

/** Identical copies of one board. */
export interface StockGroup {
  /** Index into the job's boards. */
  readonly board: number;
  readonly copies: number;
  /**
   * What starting a copy costs at least: its price, less the credit for all its usable area as if nothing were cut
   * from it. Equal to the price when offcuts earn nothing.
   */
  readonly cost: number;
  /** Credit for each square tick of kept offcuts. */
  readonly rate: number;
  /**
   * Credit lost by one piece of each kind (see claimedAreas); with what long pieces beside each other lose, cost + Σ claims
   * is never above the true cost.
   */
  readonly claims: Float64Array;
  /** Each piece of these kinds beyond the first on one board loses so much credit more (see longBeside); null: none do. */
  readonly beside: { readonly kinds: readonly number[]; readonly credit: number } | null;
  readonly plate: Plate;
  /** The kinds as they may lie on this plate, aligned with the instance's kinds. */
  readonly kinds: readonly Kind[];
  readonly pricer: Pricer;
}

/** One way to make copies: so many strips of one kind make one. */
export interface Way {
  readonly kind: number;
  readonly strips: number;
  /** At least and at most so many copies are made so. */
  readonly least: number;
  readonly most: number;
  /** Strips that are laid already: fewer are wanted. */
  readonly laid: number;
}

/** Copies that may each be made in one of several ways. */
export interface Alternative {
  readonly copies: number;
  readonly ways: readonly Way[];
}

/** The job as the solver sees it: numbers only. */
export interface Instance {
  readonly kinds: readonly BlankKind[];
  /**
   * Kinds of which some may do for others: which way each copy is made is part of the search. A way's kind has as its demand the
   * most pieces that are of use; what is wanted is that the alternatives' copies be made.
   */
  readonly alternatives?: readonly Alternative[];
  readonly groups: readonly StockGroup[];
  /** Work done by all pricers of the instance. */
  readonly meter: Meter;
  /** Prices several boards, at the same time where there are threads for it. */
  readonly price: PriceTogether;
  /** Exchanges columns between boards, several times at once where there are threads for it. */
  readonly exchange: ExchangeTogether;
}

/** Whether the general guillotine engine prices some of the boards: it takes longer, and is not always certain. */
export function isOfGeneralEngine({ groups }: Instance): boolean {
  return groups.some(({ pricer }) => pricer.isGeneral);
}

/** Copies of boards in all. */
export function slotsOf({ groups }: Instance): number {
  return groups.reduce((sum, { copies }) => sum + copies, 0);
}

/** Pieces wanted in all: of copies that may be made in several ways about as many as there will be. */
export function piecesWanted({ kinds, alternatives = [] }: Instance): number {
  const either = new Set(alternatives.flatMap(({ ways }) => ways.map(({ kind }) => kind)));
  const plain = kinds.reduce((sum, { demand }, k) => sum + (either.has(k) ? 0 : demand), 0);
  return alternatives.reduce((sum, each) => sum + each.copies * usualStrips(each.ways), plain);
}

/** Of the numbers of strips that copies may be made of, the middle one. */
export function usualStrips(ways: readonly { readonly strips: number }[]): number {
  const counts = ways.map(({ strips }) => strips).sort((a, b) => a - b);
  return counts[Math.floor(counts.length / 2)] ?? 1;
}

/** Whether some board costs anything: under `most value`, and of a rack alone, none does. */
export function hasCosts({ groups }: Instance): boolean {
  return groups.some(({ cost }) => cost !== 0);
}
