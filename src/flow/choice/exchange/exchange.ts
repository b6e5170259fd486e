import type { FlatColumns } from '../flat-columns.ts';

/** Temperature at the start and at the end, in money. */
export interface Cooling {
  readonly from: number;
  readonly to: number;
}

/** One annealing over columns laid on boards, as plain data, for whichever thread works it out. */
export interface Exchange {
  readonly columns: FlatColumns;
  /** All columns, those that are likelier to be laid first. */
  readonly order: Int32Array;
  /** Copies of each group; each is a slot. */
  readonly copies: Int32Array;
  /** Pieces of each kind. */
  readonly demand: Int32Array;
  /** What an open piece of each kind costs. */
  readonly price: Float64Array;
  /** Column in each slot to begin with; −1: none. */
  readonly start: Int32Array;
  readonly moves: number;
  readonly cooling: Cooling;
  readonly seed: number;
}

/** What an annealing came to. */
export interface Exchanged {
  /** Column in each slot of the cheapest state met, open pieces priced in; −1: none. */
  readonly chosen: Int32Array;
  /** Columns looked at: what the work is counted by. */
  readonly looks: number;
}

/** Works out several annealings, at the same time where there are threads for it; the answers in their order. None depends on another. */
export type ExchangeTogether = (tasks: readonly Exchange[]) => Generator<void, Exchanged[], void>;
