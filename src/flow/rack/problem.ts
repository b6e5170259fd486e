import type { ProblemBase } from '../../base/result/result.ts';

/** What can be wrong with a journal that still loads; lines count from 1. Nothing but what is named is left out. */
export type JournalNotice =
  | (ProblemBase & {
      readonly kind: 'torn tail';
      readonly line: number;
      readonly lines: number;
      readonly text: string;
    })
  | (ProblemBase & {
      readonly kind: 'damaged line';
      readonly line: number;
      readonly why: string;
      readonly text: string;
    })
  | (ProblemBase & { readonly kind: 'unknown column'; readonly name: string })
  | (ProblemBase & {
      readonly kind: 'booking with gaps';
      readonly booking: number;
      readonly there: number;
      readonly of: number;
    })
  | (ProblemBase & {
      readonly kind: 'entry out of place';
      readonly line: number;
      readonly name: string;
      readonly why: Misfit;
    });

/** Why an entry does not fit what the journal says before it. */
export type Misfit =
  | 'not on the rack'
  | 'already on the rack'
  | 'taken before'
  | 'discarded before'
  | 'no such booking'
  | 'undone before'
  | 'said twice';

/** What makes a file no journal at all. */
export type NoJournal = ProblemBase & {
  readonly kind: 'no journal';
  /** The needed columns that its first line does not name. */
  readonly missing: readonly string[];
};

/** Why a booking cannot be made; nothing has been written. */
export type BookingProblem =
  | (ProblemBase & { readonly kind: 'booked before'; readonly booking: number; readonly time: string })
  | (ProblemBase & { readonly kind: 'board used up'; readonly board: string })
  | (ProblemBase & { readonly kind: 'board unknown'; readonly board: string })
  | (ProblemBase & {
      readonly kind: 'piece not on the rack';
      readonly name: string;
      readonly where: 'taken' | 'discarded' | 'unknown';
      readonly near: string | null;
    })
  | (ProblemBase & { readonly kind: 'name too long'; readonly name: string })
  | (ProblemBase & { readonly kind: 'piece as it is'; readonly name: string })
  | (ProblemBase & { readonly kind: 'nothing to undo' });
